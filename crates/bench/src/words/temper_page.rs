//! Labels of the temper planner and of the panel of the next step; loaded with them, as [`super::Mark`].

use super::{Language, temper_page_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum TemperPage {
    // What is asked.
    Held,
    HeldHint,
    At,
    AtHint,
    Given,
    NoSection,
    NoChecks,
    OnSteel,
    Ask,
    Typing,
    DoneTitle,
    Stage,
    Bought,
    Quenched,
    Tempered,
    Done,
    DoneHint,
    AsQuenched,
    AsQuenchedHint,
    Switches,
    AtSize,
    Overheated,
    Hurried,

    // The plan.
    StepsTitle,
    StepThen,
    OnDial,
    InMetal,
    Expect,

    // The curve.
    CurveTitle,
    CurveTable,
    Temperature,
    About,
    Band,
    Wanted,
    Brittle,
    First,
    Legend,
    KeyMedian,
    KeyBand,
    KeyBook,
    KeyBrittle,
    KeyOwn,
    KeySteps,
    KeyLooked,
    BrittleEach,
    Colour,

    // Own results.
    ResultsTitle,
    ResultsWhy,
    Measured,
    MeasuredHint,
    After,
    AfterHint,
    Keep,
    Kept,
    Remove,
    Book,
    NeedsMeasured,
    OfOther,

    // The next step.
    WhatNow,
    NoTarget,
    TargetTyping,
    NoSteel,
    SteelUnread,
    ResultsLeftOut,
    ToPlan,
    ToSteel,
    Undone,
    Others,
    NotNow,
    Weighing,
}

/// A sentence with figures. Temperatures, times and hardness come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum TemperSaid<'a> {
    /// What is planned.
    Asked {
        steel: &'a str,
        target: &'a str,
    },
    /// The first temper in large letters.
    First {
        dial: bool,
        at: &'a str,
        time: &'a str,
        times: u8,
    },
    /// What a temper leaves, in large letters.
    Leaves {
        about: &'a str,
    },
    /// How often and how long each temper of the plan is.
    Each {
        time: &'a str,
        times: u8,
    },
    HeatThrough {
        minutes: &'a str,
    },
    Section {
        shape: &'a str,
        sizes: &'a str,
    },
    Checks {
        count: usize,
    },
    TakeTarget {
        target: &'a str,
    },
    Result {
        hardness: &'a str,
        temper: &'a str,
    },
    OfSteel {
        steel: &'a str,
    },
    Curve {
        each: &'a str,
        points: &'a str,
    },
    CurvePoint {
        at: &'a str,
        about: &'a str,
        band: &'a str,
    },
    CurveWanted {
        wanted: &'a str,
    },
    CurveBrittle {
        range: &'a str,
    },
    CurveOwn {
        points: &'a str,
    },
    CurveSteps {
        steps: &'a str,
    },
    /// What the next step goes by.
    GoesBy {
        steel: &'a str,
        target: &'a str,
    },
}

impl Language {
    /// A label of the temper planner.
    #[must_use]
    pub const fn temper_page(self, label: TemperPage) -> &'static str {
        match self {
            Self::English => temper_page_english::say(label),
        }
    }

    /// A sentence of the temper planner.
    #[must_use]
    pub fn temper_said(self, phrase: TemperSaid<'_>) -> String {
        match self {
            Self::English => temper_page_english::said(phrase),
        }
    }
}
