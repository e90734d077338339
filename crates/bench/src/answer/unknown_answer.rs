//! The answer about an unknown bar; what is asked and how it is worked out stands in `unknown`.

use serde::Serialize;

use crate::refusal::Refusal;

/// What a bar of unknown steel can be.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownAnswer {
    /// Only where clues contradict each other: which, and what to do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refused: Option<Refusal>,
    /// The answer in few words.
    pub verdict: String,
    /// Carbon, if it is a plain or low-alloy steel.
    pub carbon: UnknownCarbon,
    /// Every family, the likeliest first; the chances add to 1.
    pub families: Vec<UnknownFamily>,
    /// What a 6 mm coupon should come out at.
    pub promise: UnknownPromise,
    /// Oil or water.
    pub quench: UnknownQuench,
    /// What the bar is good for; empty while clues contradict each other and, of plain and low-alloy steel, before a
    /// coupon was quenched.
    #[serde(rename = "use")]
    pub uses: Vec<UnknownUse>,
    /// What not to make of it.
    pub avoid: Vec<UnknownUse>,
    /// The next test; absent when none is worth its trouble.
    pub next: Option<UnknownNext>,
    /// What to do then.
    pub settled: Option<String>,
    /// Clues that do not go together, the worst first.
    pub clashes: Vec<UnknownClash>,
    /// Sentences.
    pub notes: Vec<String>,
    /// Where work can hurt.
    pub cautions: Vec<String>,
    /// `high`, `medium` or `low`.
    pub confidence: &'static str,
    /// `seen`, `recalled` or `ours`.
    pub seen: &'static str,
    /// Stable names.
    pub sources: Vec<&'static str>,
    /// What was seen of the bar, in words.
    pub understood: Vec<String>,
    /// The heat of a coupon with its unit.
    #[serde(skip)]
    pub(crate) heat: String,
}

/// Carbon in mass percent.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownCarbon {
    /// Lower end.
    pub low: f64,
    /// As likely above as below.
    pub mid: f64,
    /// Upper end.
    pub high: f64,
    /// Share of bars between the ends, given a family that hardens by its carbon.
    pub level: f64,
    /// Chance of those families.
    pub chance: f64,
    /// The same in words.
    pub text: String,
    /// Whether a coupon tells it: plain and low-alloy steel is not far-fetched.
    #[serde(skip)]
    pub(crate) told: bool,
}

/// A family and its chance.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownFamily {
    /// Stable name.
    pub family: &'static str,
    /// Name for people.
    pub name: String,
    /// Chance, 0 to 1.
    pub chance: f64,
    /// The same in whole per cent that add to 100.
    pub percent: u32,
}

/// Hardness as quenched.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownPromise {
    /// In oil.
    pub oil: UnknownHardness,
    /// In water.
    pub water: UnknownHardness,
    /// The same in words; empty for a steel that a quench from a cherry red does not harden.
    pub text: String,
}

/// HRC of 95 % and their middle, from 10 to 75.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct UnknownHardness {
    /// Lower end.
    pub low: f64,
    /// As likely above as below.
    pub mid: f64,
    /// Upper end.
    pub high: f64,
}

impl From<[f64; 3]> for UnknownHardness {
    fn from([low, mid, high]: [f64; 3]) -> Self {
        Self { low, mid, high }
    }
}

/// The bath for parts of this bar.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct UnknownQuench {
    /// `oil_first`, `oil`, `water`, `own_heat`, `neither`.
    pub key: &'static str,
    /// The same in words, with its reason.
    pub text: String,
}

/// A use, or what to keep from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct UnknownUse {
    /// Stable name.
    pub purpose: &'static str,
    /// In words.
    pub text: String,
}

/// The next test.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownNext {
    /// Stable name.
    pub test: &'static str,
    /// Name for people.
    pub name: String,
    /// A test that was made and is to be repeated.
    pub again: bool,
    /// How it is done.
    pub how: String,
    /// What it is good for.
    pub why: String,
    /// By how much it is expected to lower the doubt, in bits; absent for a test that is repeated.
    pub fall_bits: Option<f64>,
}

/// Two tests whose answers hardly go together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct UnknownClash {
    /// The cheaper test.
    pub first: &'static str,
    /// The dearer one.
    pub second: &'static str,
    /// How likely the odder of the two is beside the rest, against where it fits best.
    pub odds: f64,
    /// In words.
    pub text: String,
    /// What the bar would be without the first, and without the second.
    pub without: [String; 2],
    /// Likely causes and what to do about each.
    pub why: Vec<String>,
}
