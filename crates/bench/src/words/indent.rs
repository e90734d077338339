//! What is said about indentations; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_hardness::Scale;
use biteband_hardness::indentation::{Error, Extent};
use biteband_quantity::OutOfBounds;

use super::{Language, indent_english};

/// A sentence about an indentation.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Indent<'a> {
    // The verdict.
    Kept,
    NothingChecked,
    Broken { rules: &'a str },

    // The short name of a rule, for the verdict and for lists.
    RuleName(&'a str),

    // A rule against what was given.
    Thickness { times: f64, of: Extent, needed: &'a str, given: &'a str, holds: bool },
    ThicknessTable { needed: &'a str, given: &'a str, holds: bool },
    Thinnest { times: f64, of: Extent, needed: &'a str },
    ThinnestTable { needed: &'a str },
    Room { edge: bool, times: f64, needed: &'a str, given: &'a str, holds: bool },
    BrinellShare { smallest: bool, needed: &'a str, given: &'a str, holds: bool },
    ScaleEnd { low: bool, needed: &'a str, given: &'a str, holds: bool },
    Index { named: &'a str, given: &'a str, holds: bool },
    CorrectionLimit { needed: &'a str, given: &'a str, holds: bool },
    FromMemory,

    // Roundness.
    Added { amount: &'a str, half: &'a str, shown: &'a str, flat: &'a str },
    BeyondLast,
    Multiplied { factor: &'a str, shown: &'a str, flat: &'a str },

    // Other tests.
    Better { tests: &'a str },
    BetterNone,

    // Several readings, and the machine.
    Series { count: usize, mean: &'a str, range: &'a str, deviation: &'a str, half: &'a str },
    Outlier { value: &'a str, place: usize },
    MachineError { amount: &'a str, standard: &'a str },
    MachineSpread { amount: &'a str, standard: &'a str },
    AssumedUncertainty { amount: &'a str },

    // Notes.
    DoNotStack,
    FarSide,
    CaseNote,
    NoMark,
    NearHundredB,
    OtherIndex,
    OtherMetal,
}

/// Why there is no answer about an indentation.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum IndentRefusal<'a> {
    Quantity(OutOfBounds),
    UnknownKind { given: &'a str },
    UnknownMetal { given: &'a str },
    NoForce(Scale),
    NoBall,
    NoScale,
    NothingGiven,
    GivenTwice,
    NotOfThisTest { what: &'a str },
    MixedUnits,
    NotReadings { given: &'a str },
    ShapeWithoutRound,
    Core(&'a Error),
}

impl Language {
    /// Says a phrase about an indentation.
    #[must_use]
    pub fn indent(self, phrase: Indent<'_>) -> Cow<'static, str> {
        match self {
            Self::English => indent_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn indent_refused(self, what: IndentRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => indent_english::refuse(what),
        }
    }
}
