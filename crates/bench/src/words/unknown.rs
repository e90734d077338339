//! What is said about an unknown bar; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_evidence::unknown::{
    Cause, Error, Fracture, Kind, Magnet, Purpose, Quench, Skin, Spark, Test,
};

use super::{Language, unknown_english};

/// How sure a family is, in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Sure {
    Nearly,
    Likely,
    Perhaps,
}

/// A sentence or label about an unknown bar. Hardness and temperatures come with their unit.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Unknown<'a> {
    // Names.
    Family(Kind),
    Magnet(Magnet),
    Spark(Spark),
    Skin(Skin),
    Fracture(Fracture),
    Test(Test),
    Title(Test),

    // What was understood.
    Seen { test: Test, answer: &'a str },
    About { hrc: &'a str },
    Between { low: &'a str, high: &'a str },
    AtLeast { low: &'a str },
    AtMost { high: &'a str },

    // The verdict.
    Nothing,
    Is { sure: Sure, family: Kind },
    OneOf { first: Kind, second: Kind },
    Disagree { first: Test, second: Test },
    Carbon { mid: &'a str, low: &'a str, high: &'a str, percent: u32 },
    CarbonHighOpen { low: &'a str, percent: u32 },
    NoCarbon { percent: u32 },
    Promise { oil: &'a str, water: &'a str },
    Quench(Quench),

    // What it is good for.
    Use { purpose: Purpose, to: &'a str },
    Avoid(Purpose),

    // What next.
    How { test: Test, heat: &'a str },
    Why(Test),
    Again { test: Test, heat: &'a str },
    AgainWhy,
    Settled,

    // Clues that do not go together.
    Clash { first: Test, second: Test },
    Without { test: Test, verdict: &'a str },
    Cause(Cause),

    // Notes.
    NoCoupon,
    FoundOfSkin,
    Coarse,
    Shallow,
    Saturated,
    CastIron,
    OwnHeat,
    PreHard,
    SoftSkin,
    OneBar,
    Judged,

    // Cautions.
    Critical,
    Eyes,
    Snapping,
    OilFire,
    Fumes,
}

/// Why a clue is not taken.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum UnknownRefusal<'a> {
    Answer { test: Test, given: &'a str, known: &'a str },
    Coupon { given: &'a str },
    CouponTwice { bath: &'a str },
    Span(&'a Error),
}

impl Language {
    /// Says a phrase about an unknown bar.
    #[must_use]
    pub fn unknown(self, phrase: Unknown<'_>) -> Cow<'static, str> {
        match self {
            Self::English => unknown_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn unknown_refused(self, what: UnknownRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => unknown_english::refuse(what),
        }
    }
}
