//! What is said about the next step; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_evidence::step::Diagnosis;

use super::{Language, next_english};

/// An act, with what belongs to it in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Act<'a> {
    Accept,
    ClearUp,
    Stroke { grade: &'a str },
    Read,
    Grind,
    Temper { told: &'a str },
    Snap { at: &'a str, time: &'a str },
    Harden { again: bool, temper: &'a str },
    Age { told: &'a str },
    ChangeTarget { range: &'a str },
    ChangePlan,
    ChangeSteel,
}

/// A sentence about the next step. Hardness, temperatures and times come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum NextStep<'a> {
    /// What to do, in one line.
    Do(Act<'a>),
    /// How it is done, in what order.
    How(Act<'a>),
    /// What cannot be undone.
    Undone(Act<'a>),
    /// Where it can hurt.
    Caution(Act<'a>),
    /// How the part stands.
    Stands(Diagnosis),
    /// Likely causes, the likeliest first.
    Causes(Diagnosis),
    Chances {
        under: &'a str,
        inside: &'a str,
        over: &'a str,
    },
    After {
        under: &'a str,
        inside: &'a str,
        over: &'a str,
    },
    IfBest,
    /// After a temper that may leave it too hard: the chance with the tempers that would follow.
    Further {
        inside: &'a str,
    },
    NeverHardens,
    AtSize,
    NoSteel,
    NoCurve {
        why: &'a str,
    },
    Weighed,
    Today,
    UseDecides,
    Expected {
        about: &'a str,
        band: &'a str,
    },
    OnlyInside,
    Planned,
    TakenQuenched,
    Others,
}

/// Why there is no next step.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum NextRefusal<'a> {
    NoTarget,
    Stage { given: &'a str },
    StageAgainstTempers,
}

impl Language {
    /// Says a phrase about the next step; empty where there is nothing to say.
    #[must_use]
    pub fn next_step(self, phrase: NextStep<'_>) -> Cow<'static, str> {
        match self {
            Self::English => next_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn next_refused(self, what: NextRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => next_english::refuse(what),
        }
    }
}
