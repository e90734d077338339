//! What is answered about a claim.

use biteband_evidence::claim::Verdict;
use biteband_hardness::Axis;
use serde::Serialize;

use super::convert::Note;
use crate::words::Side;

/// Whether the paper holds.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClaimAnswer {
    /// What the paper says.
    pub claim: ClaimedAnswer,
    /// `agrees`, `disagrees` or `not proved`.
    pub verdict: &'static str,
    /// The verdict in words, with the chances.
    pub verdict_text: String,
    /// Chance that the part is softer than the paper says; absent before anything was measured.
    pub under: Option<f64>,
    /// Chance that it is as the paper says.
    pub inside: Option<f64>,
    /// Chance that it is harder.
    pub over: Option<f64>,
    /// The rule in standard form.
    pub rule: String,
    /// The rule in words.
    pub rule_text: String,
    /// The scale in which both are held against each other.
    pub scale: &'static str,
    /// The paper's lower limit in that scale.
    pub low: Option<f64>,
    /// The paper's upper limit in that scale.
    pub high: Option<f64>,
    /// What was measured, taken together; absent where a side is open.
    pub estimate: Option<EstimateAnswer>,
    /// What readings were understood as.
    pub readings: Vec<MeasuredAnswer>,
    /// What the doubt is made of, the greatest first.
    pub doubt: Vec<DoubtAnswer>,
    /// What would settle it best.
    pub settle: SettleAnswer,
    /// Every way to settle it, the best first.
    pub ways: Vec<SettleAnswer>,
    /// The best chance that can be had, before anything is measured.
    pub achievable: Vec<AchievableAnswer>,
    /// What the rule costs over many parts; absent for a claim open on a side and before anything was measured.
    pub risk: Option<RiskAnswer>,
    /// What is to be said of the paper itself.
    pub paper: Vec<PaperAnswer>,
    /// Stable name of the grade.
    pub steel: Option<&'static str>,
    /// What names were taken for.
    pub understood: Vec<String>,
    /// What the answer takes for granted.
    pub notes: Vec<String>,
    /// Cautions of the work itself.
    pub cautions: Vec<String>,
    /// Stable names of the sources.
    pub sources: Vec<&'static str>,
}

/// What the paper says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClaimedAnswer {
    /// Symbol of the scale, `Rm` for tensile strength.
    pub scale: &'static str,
    /// Low end; absent for a maximum.
    pub low: Option<f64>,
    /// High end; absent for a minimum.
    pub high: Option<f64>,
    /// In standard form.
    pub understood: String,
    /// The step to which the paper rounds.
    pub step: f64,
    /// Where the text strays from the standard form, and what it leaves open.
    pub notes: Vec<Note>,
}

/// What was measured, taken together.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct EstimateAnswer {
    /// The middle.
    pub value: f64,
    /// Its standard uncertainty.
    pub u: f64,
    /// Low end of the 95 % band.
    pub low: f64,
    /// High end of the 95 % band.
    pub high: f64,
    /// The claim's window over 4 standard uncertainties; absent where the claim is open on a side.
    pub capability: Option<f64>,
    /// Rounded by the rule of the scale, a band outward.
    pub shown: String,
}

/// One entry of readings.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MeasuredAnswer {
    /// Stable name of the instrument.
    pub instrument: &'static str,
    /// The numbers with their scale.
    pub understood: String,
    /// Each reading in the scale of the answer; the end of the table where it lies beyond.
    pub values: Vec<f64>,
    /// `softer` or `harder` than the end of the tables, where the readings lie beyond it.
    pub beyond: Option<&'static str>,
    /// Standard uncertainty of a single reading.
    pub u_random: f64,
    /// What all readings of the instrument share.
    pub u_shared: f64,
    /// Of the conversion; absent for readings in the claim's own scale.
    pub u_conversion: Option<f64>,
    /// Whether the uncertainty was taken from the kind of instrument; otherwise it was written.
    pub assumed: bool,
    /// Stable name of the table.
    pub table: Option<&'static str>,
    /// In words.
    pub shown: String,
}

/// A source of doubt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct DoubtAnswer {
    /// Stable name.
    pub source: &'static str,
    /// Standard uncertainty in the scale of the answer.
    pub u: f64,
    /// Share of the variance; all add to 1.
    pub share: f64,
    /// The same in whole per cent; all add to 100.
    pub percent: u32,
    /// What it is.
    pub text: String,
    /// Half of its width at 95 % with its unit.
    pub shown: String,
}

/// A way to settle it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SettleAnswer {
    /// `tester`, `known_piece`, `more_places`, `stroke`; of the best also `none`, `agree`, `ask` or `same_place`.
    pub method: &'static str,
    /// The chance that it leads to a verdict; absent where nothing is to be done.
    pub chance: Option<f64>,
    /// What to do.
    pub text: String,
    /// Why.
    pub why: String,
}

/// The best chance that can be had.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AchievableAnswer {
    /// `measured`, `files` or `tester`.
    pub with: &'static str,
    /// Standard uncertainty in the scale of the answer.
    pub u: f64,
    /// Chance of lying inside for a part in the middle of what the paper says; 1 where it is open on a side.
    pub chance: f64,
    /// In words.
    pub text: String,
}

/// What the rule costs over many parts.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RiskAnswer {
    /// Bad parts among those made that would be accepted.
    pub bad_accepted: f64,
    /// Good parts among those made that would be rejected.
    pub good_rejected: f64,
    /// In words.
    pub text: String,
}

/// Something about the paper itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PaperAnswer {
    /// Stable name.
    pub code: &'static str,
    /// In words.
    pub text: String,
    /// Whether the paper cannot be right, whatever is measured.
    pub wrong: bool,
}

/// An answer with what the page draws.
pub(crate) struct Claimed {
    pub(crate) answer: ClaimAnswer,
    /// The scale in which both are held against each other.
    pub(crate) work: Axis,
    /// Nothing before anything was measured.
    pub(crate) found: Option<ClaimFound>,
}

/// What was measured, taken together, in the scale of the answer.
pub(crate) struct ClaimFound {
    pub(crate) verdict: Verdict,
    /// Where the part most likely lies.
    pub(crate) side: Option<Side>,
    /// The belief: a number and how dense it is there, softest first.
    pub(crate) density: Vec<(f64, f64)>,
    /// Low end of the band; nothing where it is open.
    pub(crate) low: Option<f64>,
    /// High end likewise.
    pub(crate) high: Option<f64>,
}
