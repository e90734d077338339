//! Labels and sentences of the page of claims; loaded with it, as [`super::Mark`].

use super::{Language, Side, claim_page_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum ClaimPage {
    Says,
    SaysHint,
    Measured,
    MeasuredHint,
    Instrument,
    Usual,
    AddReading,
    Kept,
    Change,
    Witnesses,
    Files,
    ToFiles,
    Details,
    Steel,
    SteelHint,
    Place,
    ClaimedPlace,
    Skin,
    Core,
    RuleTitle,
    RuleProved,
    RuleSimple,
    RuleU,
    RuleOwn,
    Level,
    LevelHint,
    LevelInstead,
    Empty,
    Example,
    Typing,
    NeedsReading,
    Agrees,
    Disagrees,
    NotProved,
    NotMeasured,
    Drawn,
    DoubtTitle,
    DoubtSource,
    DoubtHalf,
    DoubtShare,
    SettleTitle,
    OthersTitle,
    BestTitle,
    PaperTitle,
    Why,
    Understood,
    Risk,
    Sources,
    NewClaim,
    LastClaim,
    NoStroke,
    ReadingsApart,
    EitherSide,
    OpenSide,
    PaperWrong,
}

/// A sentence. Numbers come with their unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum ClaimSays<'a> {
    Is { written: &'a str, becomes: &'a str, half: &'a str },
    TheySay { said: &'a str },
    Measured { shown: &'a str },
    Below { high: &'a str },
    Above { low: &'a str },
    Side(Side),
    Softer { percent: &'a str },
    Inside { percent: &'a str },
    Harder { percent: &'a str },
    Strokes { strokes: usize, files: usize },
    Expected { mean: &'a str, sd: &'a str },
    FromSteel { steel: &'a str },
}

impl Language {
    /// A label of the page of claims.
    #[must_use]
    pub const fn claim_page(self, label: ClaimPage) -> &'static str {
        match self {
            Self::English => claim_page_english::label(label),
        }
    }

    /// A sentence of the page of claims.
    #[must_use]
    pub fn claim_says(self, phrase: ClaimSays<'_>) -> String {
        match self {
            Self::English => claim_page_english::say(phrase),
        }
    }
}
