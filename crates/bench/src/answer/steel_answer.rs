//! The answer about a steel as it is exchanged. Temperatures are in °C, shares in mass percent; what the data
//! leave open is `None`.

use serde::Serialize;

use super::cited::CitedAnswer;

/// A grade's card, with how near the name asked for is to it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SteelAnswer {
    /// Short stable name of the grade.
    pub key: &'static str,
    /// Name of the grade for people.
    pub name: &'static str,
    /// `carbon`, `free-machining`, `alloy`, `tool`, `stainless`, `ph-stainless`, `structural`.
    pub family: &'static str,
    /// Name, kind and hardening in words.
    pub title: String,
    /// The designation that was recognised.
    pub designation: &'static str,
    /// Who gives it: `aisi_sae`, `uns`, `en_name`, `en_number`, `bs`, `jis`, `gb`, `shop name`.
    pub system: &'static str,
    /// `same`, `near` or `approximate`.
    pub closeness: &'static str,
    /// The same in words.
    pub closeness_text: String,
    /// `exact`, or `spelling` when spaces, signs or words around the name were forgiven.
    pub how: &'static str,
    /// Whether the pair of name and grade was read or recalled.
    pub seen: &'static str,
    /// What has to be known of the name; empty when nothing.
    pub note: &'static str,
    /// Other grades that the name can mean. When there are any, it is ambiguous.
    pub candidates: Vec<CandidateAnswer>,
    /// Keys of grades that are near to the designation too.
    pub also_near: Vec<&'static str>,
    /// The condition that a British letter behind the name states.
    pub condition: Option<ConditionAnswer>,
    /// Sentences about the name: what it leads to, whether it is ambiguous, its condition.
    pub verdict: Vec<String>,
    /// Composition limits.
    pub composition: CompositionAnswer,
    /// How to harden.
    pub hardening: HardeningAnswer,
    /// The bar as it is bought.
    pub supplied: SuppliedAnswer,
    /// Hardness as quenched.
    pub as_quenched: AsQuenchedAnswer,
    /// How to temper.
    pub tempering: TemperingAnswer,
    /// Tempering range to avoid.
    pub avoid: Option<AvoidAnswer>,
    /// Usual working hardness and use.
    pub working: WorkingAnswer,
    /// Ages of the 17-4 type; empty for every other grade.
    pub ages: Vec<AgeAnswer>,
    /// How deep it hardens, in words; empty when nothing is stated.
    pub section: String,
    /// What can go wrong.
    pub hazards: Vec<String>,
    /// Where sources disagree, and what else is to be known.
    pub notes: Vec<String>,
    /// What to bear in mind.
    pub cautions: Vec<String>,
    /// What the card rests on.
    pub sources: Vec<SteelSource>,
}

/// A source of a card.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SteelSource {
    /// Stable name.
    pub id: &'static str,
    /// Title.
    pub title: &'static str,
    /// Whether it was read or recalled.
    pub seen: &'static str,
}

/// Another grade that a name can mean, or a match of a search.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CandidateAnswer {
    /// The designation as it is written.
    pub designation: &'static str,
    /// Who gives it.
    pub system: &'static str,
    /// Key of the grade.
    pub key: &'static str,
    /// Name of the grade.
    pub name: &'static str,
    /// `same`, `near` or `approximate`.
    pub closeness: &'static str,
    /// The same in words.
    pub closeness_text: String,
    /// What has to be known of the name.
    pub note: &'static str,
    /// Whether the pair was read or recalled.
    pub seen: &'static str,
}

/// A condition letter of BS 970.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ConditionAnswer {
    /// The letter.
    pub letter: char,
    /// Lowest and highest HBW.
    pub hbw_low: f64,
    /// See above; the last letter has no highest.
    pub hbw_high: Option<f64>,
    /// Lowest tensile strength in MPa.
    pub tensile_low: f64,
    /// Highest.
    pub tensile_high: Option<f64>,
    /// Stable names.
    pub sources: &'static [&'static str],
    /// Read or recalled.
    pub seen: &'static str,
}

/// Composition limits of a grade.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CompositionAnswer {
    /// The standard whose limits these are.
    pub standard: &'static str,
    /// The elements of which a limit is stated.
    pub elements: Vec<ElementAnswer>,
    /// Limits beyond single elements.
    pub other: &'static str,
    /// Where other editions and sheets differ.
    pub note: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// Limits of one element in mass percent.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ElementAnswer {
    /// Chemical symbol.
    pub element: &'static str,
    /// Lowest share.
    pub min: Option<f64>,
    /// Highest share.
    pub max: Option<f64>,
}

/// A temperature or a range of them in °C.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct TemperatureStep {
    /// Lowest.
    pub low_c: f64,
    /// Highest.
    pub high_c: f64,
}

/// How to harden a grade.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HardeningAnswer {
    /// `through`, `case`, `age` or `none`.
    pub kind: &'static str,
    /// Lowest hardening temperature.
    pub low_c: Option<f64>,
    /// Highest hardening temperature.
    pub high_c: Option<f64>,
    /// Preheating, step by step.
    pub preheat: Vec<TemperatureStep>,
    /// Media, the usual one first.
    pub quench: Vec<&'static str>,
    /// As printed.
    pub soak: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// The bar as it is bought.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SuppliedAnswer {
    /// Lowest HBW.
    pub hbw_min: Option<f64>,
    /// Typical HBW.
    pub hbw_typical: Option<f64>,
    /// Highest HBW.
    pub hbw_max: Option<f64>,
    /// In which condition.
    pub note: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// Hardness as quenched; of a case grade that of the core.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AsQuenchedAnswer {
    /// Lowest HRC.
    pub hrc_low: Option<f64>,
    /// Highest HRC.
    pub hrc_high: Option<f64>,
    /// Under which circumstances.
    pub note: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// How to temper a grade.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TemperingAnswer {
    /// Lowest usual temperature.
    pub low_c: Option<f64>,
    /// Highest usual temperature.
    pub high_c: Option<f64>,
    /// `regression`, `regression_edge`, `curve`, `case`, `age_table` or `none`.
    pub method: &'static str,
    /// Key of the grade whose printed curve is used.
    pub curve_from: Option<&'static str>,
    /// `own`, `sibling`, `sibling_low` or `none`.
    pub curve_closeness: Option<&'static str>,
    /// `no`, `recommended`, `yes`, `triple` or `triple for large`.
    pub double_temper: &'static str,
    /// `no`, `optional`, `possible` or `useful`.
    pub cryo: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// A tempering range to avoid, or why there is none.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AvoidAnswer {
    /// Lowest; absent where only a reason is stated.
    pub low_c: Option<f64>,
    /// Highest.
    pub high_c: Option<f64>,
    /// Why.
    pub why: &'static str,
    /// In words.
    pub text: String,
}

/// Usual working hardness and use.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WorkingAnswer {
    /// Lowest HRC; of a case grade that of the case.
    pub hrc_low: Option<f64>,
    /// Highest HRC.
    pub hrc_high: Option<f64>,
    /// What it is used for.
    pub typical_use: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub basis: CitedAnswer,
    /// In words.
    pub text: String,
}

/// An age of the 17-4 type.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AgeAnswer {
    /// Name, as in H900.
    pub age: &'static str,
    /// Temperature in °C and hours of each step.
    pub steps: &'static [(f64, f64)],
    /// Least HRC.
    pub hrc_min: Option<f64>,
    /// Least HBW.
    pub hbw_min: Option<f64>,
    /// Least tensile strength in MPa.
    pub tensile_min: Option<f64>,
    /// Least yield strength in MPa.
    pub yield_min: Option<f64>,
    /// What of it was read.
    pub note: &'static str,
    /// Stable names.
    pub sources: &'static [&'static str],
    /// `seen`, `part` or `recalled`.
    pub seen: &'static str,
    /// In words.
    pub text: String,
}

/// A grade in a list.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SteelListing {
    /// Short stable name.
    pub key: &'static str,
    /// Name for people.
    pub name: &'static str,
    /// What kind of steel.
    pub family: &'static str,
    /// `through`, `case`, `age` or `none`.
    pub kind: &'static str,
    /// The name with kind and hardening in words.
    pub text: String,
}

/// Matches of a search; with the card when the text is a name by itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FindAnswer {
    /// The card of the grade, field by field, when the text is a designation.
    #[serde(flatten)]
    pub card: Option<SteelAnswer>,
    /// Designations that begin with the text, hold it or are a slip away from it, likeliest first.
    pub matches: Vec<CandidateAnswer>,
}

/// Working hardness of a zone of a kind of part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TargetRow {
    /// Kind of part.
    pub part: &'static str,
    /// Zone of it.
    pub zone: &'static str,
    /// Lowest HRC.
    pub hrc_low: Option<f64>,
    /// Highest HRC.
    pub hrc_high: Option<f64>,
    /// What the source says beside HRC.
    pub other_scale: &'static str,
    /// Keys of the grades it is usually made of.
    pub grades: Vec<&'static str>,
    /// `standard`, `published` or `practice`.
    pub basis: &'static str,
    /// What has to be said with it.
    pub caution: &'static str,
    /// Where it stands; of the figures, not of the bar.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words, without the caution.
    pub text: String,
}

/// Hardness by kind of part.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TargetsAnswer {
    /// Rows of the parts found, every zone of each.
    pub targets: Vec<TargetRow>,
    /// What to bear in mind.
    pub cautions: Vec<String>,
}
