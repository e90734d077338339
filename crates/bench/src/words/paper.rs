//! Labels of the page of sheets to print; loaded with it, as [`super::Mark`].

use super::{Language, paper_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum Paper {
    What,
    Strip,
    Chart,
    Card,
    Thickness,
    Size,
    Span,
    SpanHint,
    Scales,
    Print,
    Why,
}

impl Language {
    /// A label of the page of sheets to print.
    #[must_use]
    pub const fn paper(self, paper: Paper) -> &'static str {
        match self {
            Self::English => paper_english::say(paper),
        }
    }
}
