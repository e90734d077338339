//! What is said about heating and quenching; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_quantity::OutOfBounds;
use biteband_steel::furnace::{self, KnownPoint, Protection, RuleOfHold};
use biteband_steel::quench::Medium;
use biteband_steel::transform::{CrackReason, TransformError};

use super::{Language, heat_english};

/// Where the window lies against the point at which a magnet lets go.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Magnet {
    /// It begins below that point.
    Below,
    Past,
    /// So far above that the magnet is no help.
    Far,
}

/// What is wrong with a bath.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum BathFault<'a> {
    /// Less than the rule asks for.
    Rule {
        rule: &'a str,
    },
    TooHot {
        limit: &'a str,
    },
    NearFlash {
        flash: &'a str,
        assumed: bool,
    },
    PastFlash {
        flash: &'a str,
        assumed: bool,
    },
}

/// A list to tick off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum List {
    BeforeHeating,
    BeforeQuench,
    After,
    Oven,
}

impl List {
    /// All of them, in the order of the work.
    pub const ALL: [Self; 4] = [Self::Oven, Self::BeforeHeating, Self::BeforeQuench, Self::After];

    /// Stable name.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::BeforeHeating => "before_heating",
            Self::BeforeQuench => "before_quench",
            Self::After => "after",
            Self::Oven => "oven",
        }
    }
}

/// A sentence about heating. Temperatures, sizes, times and volumes come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Heat<'a> {
    // What to do.
    HeatTo { range: &'a str },
    HeatAt { at: &'a str },
    ThenThrough { minutes: &'a str },
    ThenHold { minutes: &'a str },
    BathEnough,

    // The window.
    Window { range: &'a str, case: bool },
    WindowByFormula { range: &'a str, ac3: &'a str, spread: &'a str },
    NoWindow { at: &'a str },
    CrossCheck { range: &'a str, ac3: &'a str, spread: &'a str, apart: &'a str, agrees: bool },
    Magnet { place: Magnet, low: &'a str, high: &'a str, point: &'a str },
    BelowWindow { at: &'a str, range: &'a str },
    AboveWindow { at: &'a str, range: &'a str },
    Preheat { steps: &'a [&'a str] },
    Protection(Protection),
    NotInTheOpen,
    MarkLow,

    // Times.
    Through { low: &'a str, high: &'a str, from: &'a str, size: &'a str, within: &'a str },
    AtLeast,
    TooHotToTell { most: &'a str },
    NothingToHeat,
    Soak(&'a str),
    Rule { rule: RuleOfHold, minutes: &'a str },
    TradeDisagrees { low: &'a str, high: &'a str },
    NoRules,
    HoldTaken { minutes: &'a str, own: bool },
    HoldUnknown,
    Lost { minutes: &'a str, low: &'a str, high: &'a str, protected: bool },
    Grind { grind: &'a str },

    // The quench.
    NamedMedia { media: &'a str },
    FitBetween { medium: Medium },
    FitSharper { medium: Medium },
    FitMilder { medium: Medium },
    Crack(CrackReason),
    CrackHigh,
    CrackRaised,

    // The bath.
    Enough { litres: &'a str, rise: &'a str, peak: &'a str, needed: &'a str, limit: &'a str },
    Stop { litres: &'a str, rise: &'a str, peak: &'a str, fault: BathFault<'a> },
    StopUnknownOil,
    Needed { needed: &'a str, rule: &'a str, balance: &'a str },
    StartsTooHot { limit: &'a str },
    SafeSide,
    StartAssumed { start: &'a str },
    FlashAssumed { flash: &'a str },
    BelowGuide { flash: &'a str },
    Margin { margin: &'a str, flash: &'a str },
    NoVolume,
    NoBalance { medium: Medium },
    Tank { long: &'a str, wide: &'a str, liquid: &'a str, wall: &'a str, litres: &'a str },
    TankMore,

    // What is missing.
    GiveSection,
    GiveLength,
    GiveQuench,
    CaseOnly,
    NoMassOfPlate,

    // The oven.
    Dial { at: &'a str, dial: &'a str, offset: &'a str, over: bool, width: &'a str },
    NotCheckedThere { at: &'a str, low: &'a str, high: &'a str },
    Point { point: KnownPoint, at: &'a str, width: &'a str },

    // Where work can hurt.
    Burns,
    Fumes,
    Lead,
    OilFire,
    CookingOil,
    Steam,
    Brine,
    HotSalt,
    Charcoal,
    Gas,
    TemperAtOnce { stop: &'a str },
    LocalCodes,
    ListTitle(List),
}

/// Why there is no answer about a heat.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum HeatRefusal<'a> {
    NoSteel,
    SteelTwice,
    DoesNotHarden { grade: &'a str },
    Ages { grade: &'a str },
    Never { grade: &'a str, medium: Medium, named: &'a str },
    NoFormula { error: &'a TransformError },
    Protection { given: &'a str },
    OvenPair { given: &'a str },
    Oven(&'a furnace::Error),
    Outside(OutOfBounds),
}

impl Language {
    /// Says a phrase about heating.
    #[must_use]
    pub fn heat(self, phrase: Heat<'_>) -> Cow<'static, str> {
        match self {
            Self::English => heat_english::say(phrase),
        }
    }

    /// What to look at.
    #[must_use]
    pub fn heat_list(self, list: List) -> &'static [&'static str] {
        match self {
            Self::English => heat_english::items(list),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn heat_refused(self, what: HeatRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => heat_english::refuse(what),
        }
    }
}
