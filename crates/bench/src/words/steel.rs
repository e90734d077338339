//! What is said about grades of steel; the same pattern as [`super::Phrase`].
//!
//! The notes of the data stand as they were written down, in English, in °C and mm.

use std::borrow::Cow;

use biteband_hardness::Seen;
use biteband_steel::grade::{Closeness, OwnGradeError, System};
use biteband_steel::{
    CompositionError, Cryo, CurveCloseness, DoubleTemper, Family, Hardening, Quenchant,
};
use biteband_steel::{TemperMethod, target::Basis};

use super::{Language, steel_english};

/// A sentence or label about a steel. Ranges come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum SteelWords<'a> {
    // The name.
    Title { name: &'a str, family: Family, hardening: Hardening },
    System(System),
    Closeness(Closeness),
    Named { designation: &'a str, system: System, closeness: Closeness, grade: &'a str },
    Ambiguous { given: &'a str, others: &'a str, shown: &'a str },
    AlsoNear { grades: &'a str },
    Condition { letter: char, hbw: &'a str, tensile: &'a str },

    // What a figure rests on.
    Mark(Seen),
    Basis(Basis),

    // The groups of a card.
    Composition { limits: &'a str, other: &'a str, standard: &'a str },
    Limit { element: &'a str, low: Option<&'a str>, high: Option<&'a str> },
    Window { range: &'a str, hardening: Hardening },
    Preheat { steps: &'a str },
    QuenchIn { media: &'a str },
    Medium(Quenchant),
    Soak(&'a str),
    DoesNotHarden,
    Supplied { hardness: &'a str },
    Typical { hardness: &'a str },
    AsQuenched { range: &'a str, hardening: Hardening },
    NotStated,
    Tempering { range: &'a str, hardening: Hardening },
    Method { method: TemperMethod, curve: &'a str, closeness: Option<CurveCloseness> },
    Double(DoubleTemper),
    Cold(Cryo),
    Avoid { range: &'a str },
    Working { range: &'a str, hardening: Hardening },
    Use(&'a str),
    Age { name: &'a str, steps: &'a str, hardness: &'a str },
    AgeStep { temperature: &'a str, hours: &'a str },
    Section(&'a str),
    HazardsHead,
    NotesHead,

    // What is said with every card.
    Caution,
    DataInCelsius,

    // Targets.
    TargetRow { zone: &'a str, range: &'a str },
    FromGrades { grades: &'a str },
    TargetCaution,
}

/// Why there is no answer about a steel.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum SteelRefusal<'a> {
    NoGrade,
    UnknownGrade { given: &'a str, nearest: &'a str },
    UnknownPart { given: &'a str },
    NotComposition { given: &'a str },
    UnknownElement { given: &'a str },
    ElementTwice { element: &'a str },
    Composition(&'a CompositionError),
    OwnGrade(&'a OwnGradeError),
}

impl Language {
    /// Says a phrase about a steel.
    #[must_use]
    pub fn steel(self, phrase: SteelWords<'_>) -> Cow<'static, str> {
        match self {
            Self::English => steel_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn steel_refused(self, what: SteelRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => steel_english::refuse(what),
        }
    }
}
