//! What is said about tempering; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_steel::temper::TemperError;
use biteband_steel::temper::colour::Colour;

use super::{Language, temper_english};

/// A sentence about tempering. Temperatures, times and hardness come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Tempers<'a> {
    // One temper or several.
    Leaves { steel: &'a str, tempers: &'a str, about: &'a str, band: &'a str },
    OwnSteel,
    UpTo { high: &'a str },
    One { at: &'a str, time: &'a str },
    Counts { at: &'a str, time: &'a str },
    LaterTakes { at: &'a str, fall: Option<&'a str> },
    FullyHard,

    // A plan.
    First { at: &'a str, time: &'a str, times: u8, expect: &'a str, band: &'a str },
    ThenMeasure { step: &'a str, fall: Option<&'a str>, last: &'a str },
    NoMoreSteps,
    KnownEnds { at: &'a str, sheets: bool },
    StopWhen { wanted: &'a str },
    AtTheEnd { at: &'a str },
    Dial { dial: &'a str, metal: &'a str, width: &'a str },
    DialUnchecked { width: &'a str },
    DialLearned { dial: &'a str, metal: &'a str, width: &'a str },
    DialBeyond { at: &'a str, width: &'a str },
    SnapTonight { at: &'a str, time: &'a str },
    Step { at: &'a str, time: &'a str, times: u8, expect: &'a str, band: &'a str },

    // What it rests on.
    FromModel { spread: &'a str },
    FromModelEdge,
    FromSheets { count: usize, ends: &'a str },
    FromSibling { steel: &'a str, low: bool },
    SheetsApart { at: &'a str, each: &'a str },
    SheetTime { time: &'a str },
    PastPeak { at: &'a str },
    BandMeaning,
    BandOfSheets,
    AsQuenchedEntered { hrc: &'a str },
    AsQuenchedLeft,
    OutsideData { element: &'a str, given: &'a str, low: &'a str, high: &'a str },
    OutsideTimes,
    HyperEutectoid,
    HeatThrough { minutes: &'a str },
    HeatThroughUnknown,

    // What was learned.
    Learned { count: usize, offset: &'a str, harder: bool },
    Doubted { hrc: &'a str, offset: &'a str, harder: bool, most: &'a str },
    LearnedNothing { count: usize },
    LearnedOven { dial: &'a str, hotter: bool },
    LearnedSplit,

    // Embrittling ranges.
    InBrittle { at: &'a str, range: &'a str, spread: &'a str },
    StepsOver { range: &'a str, spread: &'a str, below: &'a str, above: &'a str },
    Disputed { spread: &'a str },
    SlowCooling { range: &'a str },
    BrittleSource { who: &'a str, range: &'a str },

    // Colours.
    Shade { first: Colour, last: Colour, spread: &'a str },
    ColoursOnlyCarbon,

    // Cautions and notes.
    TemperAtOnce,
    OilSmoke,
    HotMetal,
    Twice { times: u8 },
    OnlyDown,
    Ages17 { name: &'a str, at: &'a str, least: &'a str },
    LeastOnly,
    Age { name: &'a str, at: &'a str, least: &'a str, most: &'a str, role: &'a str },
    NearAc1 { ac1: &'a str },
}

/// What holds a target above everything that a plan may count on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Above {
    /// The steel gives no more at all.
    Steel,
    /// The steel gives it now and then.
    Middle,
    /// The tempers that the part has had.
    Done,
    /// An own result that is doubted.
    Doubted,
}

/// Why nothing is said about a temper.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum TemperRefusal<'a> {
    Temper {
        error: &'a TemperError,
        hot: &'a str,
        apart: Option<&'a str>,
    },
    NoTime,
    Unreadable,
    NothingAsked,
    AboveAc1 {
        at: &'a str,
        ac1: &'a str,
    },
    TargetAbove {
        target: &'a str,
        most: &'a str,
        band: &'a str,
        at: &'a str,
        quenched: Option<&'a str>,
        above: Above,
    },
    TargetBelow {
        target: &'a str,
        least: &'a str,
        at: &'a str,
    },
    DoesNotHarden {
        steel: &'a str,
    },
    Ages {
        steel: &'a str,
        ages: &'a str,
    },
    CaseOnly {
        steel: &'a str,
        range: &'a str,
        working: &'a str,
    },
    NoCurve {
        steel: &'a str,
        range: &'a str,
    },
    OutsideSheets {
        why: &'a str,
    },
    Composition {
        why: &'a str,
    },
    Learn {
        given: &'a str,
    },
    AsQuenched {
        given: &'a str,
    },
    NotQuenched {
        given: &'a str,
        range: &'a str,
        harder: bool,
    },
    Weigh {
        why: &'a str,
    },
}

impl Language {
    /// Says a phrase about tempering.
    #[must_use]
    pub fn tempers(self, phrase: Tempers<'_>) -> Cow<'static, str> {
        match self {
            Self::English => temper_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn temper_refused(self, what: TemperRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => temper_english::refuse(what),
        }
    }
}
