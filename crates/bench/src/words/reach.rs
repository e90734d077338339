//! What is said about the hardness that a section can reach.

use std::borrow::Cow;

use biteband_steel::quench::{Medium, Movement};
use biteband_steel::reach::{Error, Fit, Verdict};
use biteband_steel::section::{Place, Why};
use biteband_steel::transform::CrackReason;

use super::{Language, reach_english};

/// How likely a place reaches what is wanted, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Likely {
    Yes,
    Likely,
    Open,
    Unlikely,
    No,
}

impl Likely {
    /// From the verdict, and from the chance where there is one.
    #[must_use]
    pub fn of(verdict: Verdict, chance: Option<f64>) -> Self {
        match (verdict, chance) {
            (Verdict::Yes, _) => Self::Yes,
            (Verdict::No, _) => Self::No,
            (Verdict::Maybe, Some(chance)) if chance >= 2.0 / 3.0 => Self::Likely,
            (Verdict::Maybe, Some(chance)) if chance <= 1.0 / 3.0 => Self::Unlikely,
            (Verdict::Maybe, _) => Self::Open,
        }
    }
}

/// A sentence about what is reached. Sizes and hardness come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Reach<'a> {
    // What was asked.
    Round { size: &'a str, long: Option<&'a str> },
    Tube { outer: &'a str, inner: &'a str, long: Option<&'a str> },
    Plate { size: &'a str, long: Option<&'a str> },
    Square { size: &'a str, long: Option<&'a str> },
    Hexagon { size: &'a str, long: Option<&'a str> },
    Flat { width: &'a str, thickness: &'a str, long: Option<&'a str> },
    OwnComposition,
    Bath { medium: Medium, movement: Movement },
    MediumName(Medium),
    MovementName(Movement),
    Ruled { by: Why, size: &'a str, round: &'a str },

    // The verdict.
    Places { skin: Likely, half: Option<Likely>, inside: Likely, bore: bool },
    Wants { wanted: &'a str, skin: &'a str, inside: &'a str, bore: bool },
    Found { skin: &'a str, through: bool },
    Reaches { skin: &'a str, inside: &'a str, bore: bool },
    PlaceName(Place),
    Unknown,
    UpTo { hrc: &'a str },
    From { hrc: &'a str },
    Below20,

    // Where it comes from.
    FromBand { band: &'a str },
    FromLimits,
    Published { range: &'a str, seen: &'a str },
    ThroughTo { size: &'a str, medium: &'a str, mark: &'a str, note: &'a str },
    NotThroughFrom { size: &'a str },
    Shell { depth: &'a str },
    DepthOpen,
    DepthUnknown,
    SecondOpinion { hrc: &'a str, place: Place },
    OnRecord { size: &'a str, medium: &'a str, readings: &'a str },
    Moved,

    // Ways out.
    Smaller { sure: Option<&'a str>, likely: Option<&'a str> },
    OtherGrades { sure: &'a str, likely: &'a str, medium: Medium },
    Faster { medium: Medium, movement: Movement, verdict: Verdict, fit: Option<Fit>, same: bool },
    SkinOnly(Verdict),
    Lower { hrc: &'a str },

    // Notes and cautions.
    TemperTakes,
    SoftenLater,
    CoreOnly,
    CutFromCore,
    BandMeaning,
    CornersCoolFaster,
    ShapeUnchecked,
    MildSeverity,
    Cracks(CrackReason),
    SharperThanNamed { named: &'a str },
    OutsideRange,
    PartRow { zone: &'a str, range: &'a str },
}

/// Why nothing is said about a section.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum ReachRefusal<'a> {
    Core { error: &'a Error, named: &'a str, ages: &'a str },
    NoQuench,
    UnknownPart { given: &'a str },
    BeyondPart { part: &'a str, zones: &'a str, several: bool, caution: &'a str },
}

impl Language {
    /// Says a phrase about what is reached.
    #[must_use]
    pub fn reach(self, phrase: Reach<'_>) -> Cow<'static, str> {
        match self {
            Self::English => reach_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn reach_refused(self, what: ReachRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => reach_english::refuse(what),
        }
    }
}
