//! What is said of sections and baths that cannot be taken.

use std::borrow::Cow;

use biteband_steel::section::Error;

use super::{Language, section_english};

/// Why there is no section, or no bath.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum SectionRefusal<'a> {
    Shapes { none: bool },
    Pair { given: &'a str },
    Medium { given: &'a str },
    BathPart { given: &'a str, part: &'a str },
    Core(&'a Error),
}

impl Language {
    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn section_refused(self, what: SectionRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => section_english::refuse(what),
        }
    }
}
