//! What is said about hardenability; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_steel::hardenability::Error;

use super::{Language, harden_english};

/// A sentence about the end-quench curve.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Harden<'a> {
    // Where the curve comes from.
    FromBand { band: &'a str },
    FromLimits,
    FromHeat { error: &'a str },

    // What it rests on, and where it ends.
    OutsideRange { element: &'a str, given: &'a str, low: &'a str, high: &'a str },
    Residuals { list: &'a str },
    Vanadium,
    Shallow,
    Deep,
    MiddleOpen,
    Below20,
    AtMost { hrc: &'a str },
    End { at: &'a str },

    // What to bear in mind.
    BarIsNotPart,
    AnyBar,

    // Labels of the text.
    IdealDiameter { low: &'a str, mid: &'a str, high: &'a str },
    Columns,
}

/// Why there is no curve.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum HardenRefusal<'a> {
    NoSteel,
    SteelTwice,
    /// With what the grade's own data say of its hardness, as `64 – 67 HRC`, and of its depth.
    Core {
        error: &'a Error,
        published: Option<&'a str>,
        depth: &'a str,
    },
}

impl Language {
    /// Says a phrase about hardenability.
    #[must_use]
    pub fn harden(self, phrase: Harden<'_>) -> Cow<'static, str> {
        match self {
            Self::English => harden_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn harden_refused(self, what: HardenRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => harden_english::refuse(what),
        }
    }
}
