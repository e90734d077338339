//! Labels of the page of unknown bars; loaded with it, as [`super::Mark`].

use super::{Language, unknown_page_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum UnknownPage {
    Empty,
    NotTried,
    NextIs,
    Answer,
    Typed,
    TypedHint,
    Below40,
    From40,
    From45,
    From50,
    From55,
    Over60,
    Bites,
    Skates,
    Carbon,
    CarbonPlace,
    Families,
    Others,
    GoodFor,
    NotFor,
    Quench,
    Causes,
    Why,
    RestsOn,
    NewBar,
    LastBar,
}

impl Language {
    /// A label of the page of unknown bars.
    #[must_use]
    pub const fn unknown_page(self, label: UnknownPage) -> &'static str {
        match self {
            Self::English => unknown_page_english::say(label),
        }
    }
}
