//! What is answered about the hardness that a section can reach; field names are stable, numbers unrounded.

use std::collections::BTreeMap;

use serde::Serialize;

/// The hardness from the skin to the middle, as quenched.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReachAnswer {
    /// Key of the grade; absent for a composition.
    pub steel: Option<&'static str>,
    /// What the name stands for, and how near it is to the grade; empty for a composition.
    pub understood: Vec<String>,
    /// Steel, section and bath in one line.
    pub asked: String,
    /// Skin, half and middle against what is wanted, or what they reach.
    pub verdict: String,
    /// The numbers in one sentence.
    pub say: String,
    /// Key of the shape, ruling size and mass.
    pub section: SectionAnswer,
    /// The bath and its severity.
    pub quench: QuenchAnswer,
    /// `h-band`, `astm-a255`, `astm-a255-outside-range` or `published-range`.
    pub method: &'static str,
    /// Where the hardness comes from, in words.
    pub basis: String,
    /// Places from the skin inward.
    pub positions: Vec<PositionAnswer>,
    /// `yes`, `no` or `maybe` for each place, when a hardness is wanted.
    pub target: Option<BTreeMap<&'static str, &'static str>>,
    /// What is wanted, HRC.
    pub wanted: Option<WantedAnswer>,
    /// What can be done where it is not sure.
    pub ways_out: Vec<WayOutAnswer>,
    /// Usual hardness of the kind of part, when one was named.
    pub parts: Vec<PartAnswer>,
    /// Bars of this grade on record near this size.
    pub on_record: Vec<String>,
    /// What else is to be known.
    pub notes: Vec<String>,
    /// Where work can hurt, or go wrong.
    pub cautions: Vec<String>,
    /// Stable names.
    pub sources: Vec<&'static str>,
}

/// The section as it was understood.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SectionAnswer {
    /// `round`, `tube`, `plate`, `square`, `hexagon` or `flat`.
    pub shape: &'static str,
    /// The size through which the heat must leave.
    pub ruling_mm: f64,
    /// Which size that is.
    pub ruled_by: &'static str,
    /// The long round whose middle cools in the same time.
    pub round_mm: f64,
    /// Absent without a length.
    pub mass_kg: Option<f64>,
    /// In words.
    pub text: String,
}

/// The bath as it was understood.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct QuenchAnswer {
    /// Key of what is in the tank.
    pub medium: &'static str,
    /// Key of how it is moved.
    pub movement: &'static str,
    /// Severity H in 1/inch; absent where none is published.
    pub severity: Option<SeverityAnswer>,
    /// How it stands to the grade: `named`, `between`, `sharper`, `milder`; absent for a composition.
    pub fit: Option<&'static str>,
    /// `low`, `raised` or `high`.
    pub crack_risk: Option<&'static str>,
    /// In words.
    pub text: String,
}

/// Severity H, 1/inch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct SeverityAnswer {
    /// As little as it may be.
    pub low: f64,
    /// The published figure.
    pub mid: f64,
    /// As much as it may be.
    pub high: f64,
}

/// A place of the section. HRC; an end that is absent is not known.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PositionAnswer {
    /// `skin`, `three_quarter`, `half`, `middle` or `bore`.
    #[serde(rename = "where")]
    pub place: &'static str,
    /// The same in words.
    pub name: String,
    /// The place of the end-quench bar that cools alike, in mm; absent where no severity is published.
    pub jominy_mm: Option<SeverityAnswer>,
    /// The same by conduction alone.
    pub second_opinion_mm: Option<f64>,
    /// Softest to be expected.
    pub low: Option<f64>,
    /// Middle of the expectation.
    pub mid: Option<f64>,
    /// Hardest to be expected.
    pub high: Option<f64>,
    /// Some of it lies below 20 HRC, where the scale ends.
    pub below_20: bool,
    /// `band` holds 95 of 100 bars; `range` is a published one.
    pub meaning: &'static str,
    /// Chance that at least the wanted hardness is reached; absent for published ranges.
    pub chance: Option<f64>,
    /// `yes`, `no` or `maybe`.
    pub target: Option<&'static str>,
    /// As shown.
    pub shown: String,
}

/// What is wanted.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WantedAnswer {
    /// Lowest, HRC.
    pub low: Option<f64>,
    /// Highest, HRC.
    pub high: Option<f64>,
    /// As shown.
    pub shown: String,
}

/// Something that can be done.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WayOutAnswer {
    /// `smaller_section`, `other_grade`, `faster_quench`, `skin_only` or `lower_target`.
    pub way: &'static str,
    /// Ruling size that is sure, in mm.
    pub sure_mm: Option<f64>,
    /// Ruling size that is more likely than not, in mm.
    pub likely_mm: Option<f64>,
    /// Keys of grades.
    pub grades: Vec<&'static str>,
    /// Key of the medium.
    pub medium: Option<&'static str>,
    /// Key of the movement.
    pub movement: Option<&'static str>,
    /// Hardness that is sure, HRC.
    pub hrc: Option<f64>,
    /// In words.
    pub text: String,
}

/// Usual hardness of one zone of a kind of part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PartAnswer {
    /// The part.
    pub part: &'static str,
    /// Its zone.
    pub zone: &'static str,
    /// Lowest, HRC.
    pub hrc_low: Option<f64>,
    /// Highest, HRC.
    pub hrc_high: Option<f64>,
    /// Caution, possibly empty.
    pub caution: &'static str,
    /// In words.
    pub text: String,
}
