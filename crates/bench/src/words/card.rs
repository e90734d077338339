//! What is said on part cards; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use super::{Language, card_english};

/// A sentence on a card.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum CardWords<'a> {
    Band { band: &'a str },
    Stroke { file: &'a str, word: &'a str, count: usize },
}

impl Language {
    /// Says a phrase of a card.
    #[must_use]
    pub fn card(self, phrase: CardWords<'_>) -> Cow<'static, str> {
        match self {
            Self::English => card_english::say(phrase),
        }
    }
}
