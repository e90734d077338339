//! Labels of the page of steels; loaded with it, as [`super::Mark`].

use super::{Language, steel_page_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum SteelPage {
    Query,
    QueryHint,
    Suggestions,
    Several,
    ByName,
    ByComposition,
    How,
    Own,
    OwnHint,
    OwnName,
    Keep,
    KeptBars,
    Forget,
    Shape,
    Round,
    Tube,
    Square,
    Hexagon,
    Flat,
    Plate,
    Diameter,
    Outside,
    Inside,
    Side,
    AcrossFlats,
    Thickness,
    Width,
    Length,
    SizeHint,
    LengthHint,
    BathTitle,
    Medium,
    Movement,
    Litres,
    LitresHint,
    BathTemperature,
    BathTemperatureHint,
    FlashPoint,
    FlashPointHint,
    Target,
    TargetHint,
    Kind,
    KindHint,
    KindTitle,
    KindRows,
    AirTitle,
    Protection,
    Open,
    Coated,
    Foil,
    Charcoal,
    Atmosphere,
    OvenTitle,
    Dial,
    Truth,
    DialHint,
    AddCheck,
    NeedsOwn,
    NeedsName,
    NeedsDegrees,
    Remove,
    Empty,
    NoSection,
    Typing,
    Across,
    WaysTitle,
    RecipeTitle,
    Harden,
    Preheat,
    HeatThrough,
    Hold,
    Timer,
    OnCard,
    OnCardShort,
    Bath,
    Tank,
    Grind,
    Temper,
    DialSays,
    CardTitle,
    WhyTitle,
    SourcesTitle,
}

/// A note beside a line of the recipe.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum RecipeNote<'a> {
    PastMagnet { range: &'a str },
    OrMore { litres: &'a str },
    Rises { rise: &'a str, peak: &'a str },
    Width { half: &'a str },
}

impl Language {
    /// A note beside a line of the recipe.
    #[must_use]
    pub fn recipe(self, note: RecipeNote<'_>) -> String {
        match self {
            Self::English => steel_page_english::recipe(note),
        }
    }

    /// A label of the page of steels.
    #[must_use]
    pub const fn steel_page(self, label: SteelPage) -> &'static str {
        match self {
            Self::English => steel_page_english::say(label),
        }
    }
}
