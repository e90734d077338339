//! What is answered to [`super::next`].

use biteband_evidence::Odds;
use serde::Serialize;

use super::temper_answer::AfterAnswer;

/// Chances of ending under, inside and over the target.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OddsAnswer {
    /// Too soft.
    pub under: f64,
    /// As wanted.
    pub inside: f64,
    /// Too hard.
    pub over: f64,
}

impl From<Odds> for OddsAnswer {
    fn from(odds: Odds) -> Self {
        Self { under: odds.under(), inside: odds.inside(), over: odds.over() }
    }
}

/// A temper that is advised.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AdvisedTemper {
    /// Of the metal, in °C.
    pub celsius: f64,
    /// What the oven's dial shows then, °C; absent without a check of the dial that reaches, and without own results.
    pub dial_c: Option<f64>,
    /// How well a checked dial is known there, K at 95 %.
    pub dial_half_width_c: Option<f64>,
    /// At heat each time, in hours.
    pub hours: f64,
    /// How many times.
    pub times: u8,
    /// The hardness to expect afterwards; absent for a short low temper.
    pub expect: Option<AfterAnswer>,
}

/// One thing that could be done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OptionAnswer {
    /// Stable name.
    pub action: &'static str,
    /// Chance of ending too soft.
    pub under: f64,
    /// Chance of ending as wanted.
    pub inside: f64,
    /// Chance of ending too hard.
    pub over: f64,
    /// The chance of a good part in the end, less all prices.
    pub worth: f64,
    /// Whether it may be done; what may not is shown and never advised.
    pub open: bool,
    /// The temper, if it is one.
    pub temper: Option<AdvisedTemper>,
    /// Grade of the file in HRC, if it is a stroke.
    pub file: Option<f64>,
    /// What to do.
    pub text: String,
    /// What the oven's dial has to show for a temper, or that nobody knows it there; empty for any other act.
    pub dial: String,
    /// How.
    pub how: String,
    /// The chances in words.
    pub chances: String,
    /// What cannot be undone; empty if all can.
    pub undone: String,
    /// Where it can hurt.
    pub caution: String,
    /// Stable names of the sources of what is said of brittle ranges.
    #[serde(skip)]
    pub sources: Vec<&'static str>,
}

/// The next step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NextStepAnswer {
    /// Stable name of the grade; absent for a composition or without a steel.
    pub steel: Option<&'static str>,
    /// What names were taken for.
    pub understood: Vec<String>,
    /// What to do, in one line.
    pub verdict: String,
    /// Stable name of the act.
    pub action: &'static str,
    /// How the part stands, and why this act.
    pub why: String,
    /// Stable name of how it stands.
    pub diagnosis: &'static str,
    /// The chances as it is.
    pub now: OddsAnswer,
    /// All acts, the best first.
    pub options: Vec<OptionAnswer>,
    /// What was learned from own results.
    pub learned: Vec<String>,
    /// What the answer takes for granted.
    pub notes: Vec<String>,
    /// Cautions of the act.
    pub cautions: Vec<String>,
    /// Stable names of the sources.
    pub sources: Vec<&'static str>,
    /// What `why` is joined from, for a page: how the part stands, the chances as it is, how it is done, likely causes.
    #[serde(skip)]
    pub parts: [String; 4],
}
