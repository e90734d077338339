//! The answer about an indentation as it is exchanged.

use serde::Serialize;

/// Hardness from an indentation.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct IndentAnswer {
    /// The number by the formula, as read, or the mean of the readings; not corrected for roundness.
    pub value: f64,
    /// Symbol of the scale.
    pub scale: &'static str,
    /// The number that a flat would give; absent without a round.
    pub corrected: Option<f64>,
    /// The corrected number, or the number, rounded by the rule of the scale.
    pub shown: String,
    /// The same with the conditions of the test: `640 HV30`, `229 HBW 10/3000`.
    pub designation: String,
    /// Whether every rule that could be checked is kept; where standards differ, the stricter too.
    pub valid: bool,
    /// In words.
    pub verdict: String,
    /// Rules against what was given.
    pub limits: Vec<LimitAnswer>,
    /// Thinnest sections for this mark, by every rule that is known.
    pub thinnest: Vec<ThinnestAnswer>,
    /// Size and depth of the mark.
    pub mark: MarkAnswer,
    /// What roundness does.
    pub correction: Option<CorrectionAnswer>,
    /// Tests that are valid where this one is not; empty when it is.
    pub better: Vec<BetterAnswer>,
    /// What several readings say.
    pub series: Option<SeriesAnswer>,
    /// What a verified tester may be off at this number.
    pub machine: MachineAnswer,
    /// The number on the usual scales, where a table of steel reaches them.
    pub converted: Vec<ConvertedAnswer>,
    /// Sentences.
    pub notes: Vec<String>,
    /// What to bear in mind.
    pub cautions: Vec<String>,
    /// Stable names.
    pub sources: Vec<&'static str>,
}

/// A rule against what was given.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LimitAnswer {
    /// Stable name.
    pub rule: &'static str,
    /// What the rule asks for.
    pub needed: f64,
    /// What was given.
    pub given: f64,
    /// `mm`, or the scale for its own ends.
    pub unit: &'static str,
    /// Whether it is kept.
    pub holds: bool,
    /// Who makes it.
    pub source: &'static str,
    /// `seen`, `recalled` or `ours`.
    pub seen: &'static str,
    /// In words.
    pub text: String,
}

/// A thinnest section.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ThinnestAnswer {
    /// Stable name.
    pub rule: &'static str,
    /// In mm.
    pub needed: f64,
    /// Who makes it.
    pub source: &'static str,
    /// `seen` or `recalled`.
    pub seen: &'static str,
    /// In words.
    pub text: String,
}

/// The mark.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MarkAnswer {
    /// Mean diagonal, long diagonal or mean diameter in mm; absent for Rockwell.
    pub size: Option<f64>,
    /// Depth in mm, of a Rockwell test that left under the preload.
    pub depth: f64,
}

/// What roundness does.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CorrectionAnswer {
    /// What is added to the number.
    pub amount: f64,
    /// What the number is multiplied with; only for Vickers.
    pub factor: Option<f64>,
    /// Half of the width in which the correction lies, in the scale's own numbers.
    pub half_width: f64,
    /// Where it stands.
    pub source: &'static str,
    /// `seen`, `recalled` or `ours`.
    pub seen: &'static str,
    /// In words.
    pub text: String,
}

/// A test that is valid where the one asked about is not.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BetterAnswer {
    /// With its conditions: `HR30N`, `HV10`.
    pub test: String,
    /// What it would read.
    pub value: f64,
    /// The same, rounded, with its scale.
    pub shown: String,
}

/// What several readings say.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SeriesAnswer {
    /// How many.
    pub n: usize,
    /// Their mean.
    pub mean: f64,
    /// Largest minus smallest; absent for one reading, as all below.
    pub range: Option<f64>,
    /// Standard deviation of one reading.
    pub sd: Option<f64>,
    /// Standard uncertainty of the mean from scatter, widened for the count.
    pub standard_uncertainty: Option<f64>,
    /// Half width around the mean at `level`, scatter only.
    pub half_width: Option<f64>,
    /// 0.95.
    pub level: f64,
    /// The reading that stands out.
    pub outlier: Option<OutlierAnswer>,
    /// Where the rule stands.
    pub source: &'static str,
    /// In words; empty for one reading.
    pub text: String,
}

/// A reading that stands out.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OutlierAnswer {
    /// Which, counted from 1 in the order taken.
    pub place: usize,
    /// The reading.
    pub value: f64,
    /// In words.
    pub text: String,
}

/// What a tester may be off.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MachineAnswer {
    /// What standards allow a verified tester.
    pub limits: Vec<MachineLimitAnswer>,
    /// One standard deviation to assume for a tester that is checked weekly; absent where there is none.
    pub standard_uncertainty: Option<f64>,
    /// Where that stands.
    pub source: Option<&'static str>,
    /// In words; empty where there is none.
    pub text: String,
}

/// What a standard allows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct MachineLimitAnswer {
    /// `error` of the mean of five, or `repeatability`, their range.
    pub kind: &'static str,
    /// In the scale's own numbers.
    pub amount: f64,
    /// Which standard.
    pub source: &'static str,
    /// `seen` or `recalled`.
    pub seen: &'static str,
    /// In words.
    pub text: String,
}

/// The number on another scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ConvertedAnswer {
    /// Symbol of the scale.
    pub scale: &'static str,
    /// Unrounded.
    pub value: f64,
    /// Half of the conversion's own width at 95 %.
    pub half_width: f64,
    /// Stable name of the table.
    pub table: &'static str,
    /// `parenthesised`, `recalled`.
    pub flags: Vec<&'static str>,
    /// Rounded by the rule of the scale.
    pub shown: String,
}
