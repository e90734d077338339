//! What is said of a text that is no measure.

use std::borrow::Cow;

use biteband_quantity::OutOfBounds;

use super::{Language, measure_english};
use crate::measure::Kind;

/// Why a text is no measure, with what it was meant for.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Unmeasured<'a> {
    NoUnit { given: &'a str, kind: Kind },
    Text { given: &'a str, kind: Kind },
    Outside(OutOfBounds),
}

impl Language {
    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn unmeasured(self, what: Unmeasured<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => measure_english::refuse(what),
        }
    }
}
