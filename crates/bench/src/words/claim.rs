//! What is said about claims; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_evidence::claim::{Rule, Source, Verdict};
use biteband_hardness::Axis;

use super::{Language, claim_english};

/// On which side of a claim a part most likely lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Side {
    Under,
    Inside,
    Over,
}

/// A way to settle a claim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Way<'a> {
    None,
    Agree,
    Ask,
    SamePlace,
    Tester { axis: Axis, again: bool },
    TensileTest,
    KnownPiece,
    MorePlaces,
    Stroke { grade: &'a str },
}

/// A sentence about a claim. Numbers come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Claim<'a> {
    WouldBe { whole: &'a str, become_: &'a str },
    Verdict { verdict: Verdict, side: Option<Side> },
    Measured { measured: &'a str, said: &'a str },
    MeasuredOpen { said: &'a str },
    Nothing,
    Chances { under: &'a str, inside: &'a str, over: &'a str },
    PaperWrong,
    Rule(Rule),
    GuardWidth { guard: &'a str },
    Reading { written: &'a str, becomes: &'a str, half: &'a str, assumed: bool },
    ReadingBeyond { written: &'a str, end: &'a str, above: bool },
    MeasuredBeyond { end: &'a str, above: bool, said: &'a str },
    Uneven { range: &'a str },
    Doubt { source: Source, scales: &'a str },
    Do(Way<'a>),
    Why(Way<'a>),
    WhyConversion { axis: Axis, percent: u32 },
    Settles { percent: &'a str },
    AchievableMeasured { chance: &'a str, half: &'a str },
    AchievableFiles { chance: &'a str, half: &'a str },
    AchievableTester { axis: Axis, chance: &'a str, half: &'a str },
    AchievableOpen,
    TooNarrow,
    Risk { bad: &'a str, good: &'a str },
    // The paper.
    Contradict { one: &'a str, other: &'a str, becomes: &'a str },
    NotComparable { one: &'a str, other: &'a str },
    SameThing { one: &'a str, other: &'a str },
    AboveReach { steel: &'a str, reach: &'a str, said: &'a str },
    DoesNotHarden { steel: &'a str },
    OnlyCase { steel: &'a str, core: &'a str, said: &'a str },
    WrongLetter { letter: char, means: &'a str, said: &'a str, fits: &'a str },
    Letter { letter: char, means: &'a str, strength: &'a str },
    BelowVerified,
    AboveBrinell,
    NoDiameter,
    AskPlace,
    SkinAgainstCore,
    Supplied { steel: &'a str, note: &'a str },
    // Notes.
    About { half: &'a str },
    InOtherScale { said: &'a str, there: &'a str },
    OpenBand,
    FilesReach { softest: &'a str },
    Beneath,
    OneTester,
    ConversionCaution,
    Strength,
    DoNotHarden,
}

/// Why a claim is not answered.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum ClaimRefusal<'a> {
    NoScale { one: &'a str, other: &'a str },
    BeyondSteel { given: &'a str, end: &'a str },
    Letter { given: char },
    Class { class: &'a str, strength: &'a str },
    Rule { given: &'a str },
    Place { given: &'a str },
}

impl Language {
    /// Says a phrase about a claim.
    #[must_use]
    pub fn claim(self, phrase: Claim<'_>) -> Cow<'static, str> {
        match self {
            Self::English => claim_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn claim_refused(self, what: ClaimRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => claim_english::refuse(what),
        }
    }
}
