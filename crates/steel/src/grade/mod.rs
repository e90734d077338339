//! Grades of steel: what their standards and the handbooks say of each.

mod designation;
mod find;
mod nearest;
mod own;
mod search;
mod spelling;

pub use designation::{Closeness, Designation, System};
pub use find::{Error, Found, How, find};
pub use own::{OwnGrade, OwnGradeError};
pub use search::search;

use crate::composition::{CompositionLimits, Element, Interval};
use crate::generated::grades::GRADES;
use crate::keyed::keyed;
use crate::quenchant::Quenchant;
use crate::source::Cited;

keyed! {
    /// What kind of steel a grade is.
    Family {
        /// Plain carbon steel.
        Carbon = "carbon",
        /// With sulphur or lead for easy turning.
        FreeMachining = "free-machining",
        /// Low-alloy steel.
        Alloy = "alloy",
        /// Tool steel.
        Tool = "tool",
        /// Stainless steel.
        Stainless = "stainless",
        /// Precipitation-hardening stainless steel.
        PhStainless = "ph-stainless",
        /// Structural steel.
        Structural = "structural",
    }
}

keyed! {
    /// How a grade becomes hard.
    Hardening {
        /// By quenching, the whole section as far as it goes.
        Through = "through",
        /// Only in a carburized case; does not harden through.
        Case = "case",
        /// By ageing after the mill's solution treatment.
        Age = "age",
        /// Not by any heat treatment.
        None = "none",
    }
}

keyed! {
    /// What the hardness after tempering is worked out from.
    TemperMethod {
        /// The regression for low-alloy steels.
        Regression = "regression",
        /// The same at the edge of its range, with a wider band.
        RegressionEdge = "regression_edge",
        /// A printed tempering curve.
        Curve = "curve",
        /// The usual low temper of a case.
        Case = "case",
        /// The ages of the 17-4 type.
        AgeTable = "age_table",
        /// Nothing: the grade does not harden.
        None = "none",
    }
}

keyed! {
    /// How near the curve's steel is to the grade.
    CurveCloseness {
        /// The grade's own curve.
        Own = "own",
        /// Of a grade much like it.
        Sibling = "sibling",
        /// Of a grade that stays below it.
        SiblingLow = "sibling_low",
        /// No curve is known: a trial piece decides.
        None = "none",
    }
}

keyed! {
    /// Whether tempering is to be done more than once.
    DoubleTemper {
        /// Once is enough.
        No = "no",
        /// Twice is better.
        Recommended = "recommended",
        /// Twice.
        Yes = "yes",
        /// Three times.
        Triple = "triple",
        /// Three times for large sections.
        TripleForLarge = "triple for large",
    }
}

keyed! {
    /// What cooling below room temperature is worth.
    Cryo {
        /// Nothing.
        No = "no",
        /// A matter of choice.
        Optional = "optional",
        /// Can help.
        Possible = "possible",
        /// Helps.
        Useful = "useful",
    }
}

/// Brinell hardness of the bar as it is bought: lowest, typical and highest, as far as stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supplied {
    /// Lowest, in HBW.
    pub min: Option<f64>,
    /// Typical, in HBW.
    pub typical: Option<f64>,
    /// Highest, in HBW.
    pub max: Option<f64>,
}

/// A grade of steel. What a cell of the data leaves open is `None` or an empty text, and never guessed.
///
/// # Example
/// ```
/// use biteband_steel::{Element, Grade, Hardening, Quenchant};
/// let steel = Grade::by_key("4140").unwrap();
/// assert_eq!(steel.hardening(), Hardening::Through);
/// assert_eq!(steel.quenchants().first(), Some(&Quenchant::Oil));
/// let carbon = steel.limits().range(Element::C).unwrap();
/// assert_eq!((carbon.low, carbon.high), (0.38, 0.43));
/// ```
#[derive(Debug)]
pub struct Grade {
    pub(crate) key: &'static str,
    pub(crate) name: &'static str,
    pub(crate) family: Family,
    pub(crate) hardening: Hardening,
    pub(crate) limits: &'static [(Element, Option<f64>, Option<f64>)],
    pub(crate) other: &'static str,
    pub(crate) composition_standard: &'static str,
    pub(crate) composition_note: &'static str,
    pub(crate) composition_cited: Cited,
    pub(crate) preheat: &'static [Interval],
    pub(crate) window: Option<Interval>,
    pub(crate) quenchants: &'static [Quenchant],
    pub(crate) soak: &'static str,
    pub(crate) heat_cited: Cited,
    pub(crate) supplied: Supplied,
    pub(crate) supplied_note: &'static str,
    pub(crate) supplied_cited: Cited,
    pub(crate) as_quenched: Option<Interval>,
    pub(crate) as_quenched_note: &'static str,
    pub(crate) as_quenched_cited: Cited,
    pub(crate) temper_range: Option<Interval>,
    pub(crate) avoid: Option<Interval>,
    pub(crate) avoid_why: &'static str,
    pub(crate) temper_cited: Cited,
    pub(crate) working: Option<Interval>,
    pub(crate) typical_use: &'static str,
    pub(crate) working_cited: Cited,
    pub(crate) temper_method: TemperMethod,
    pub(crate) curve_from: Option<&'static str>,
    pub(crate) curve_closeness: Option<CurveCloseness>,
    pub(crate) double_temper: DoubleTemper,
    pub(crate) cryo: Cryo,
    pub(crate) section_note: &'static str,
    pub(crate) hazards: &'static str,
    pub(crate) notes: &'static str,
}

macro_rules! read {
    ($($(#[$doc:meta])* $name:ident: $type:ty,)+) => {
        impl Grade {
            $($(#[$doc])* #[must_use] pub const fn $name(&self) -> $type { self.$name })+
        }
    };
}

read! {
    /// Short stable name, as in `4140`.
    key: &'static str,
    /// Name for people.
    name: &'static str,
    /// What kind of steel it is.
    family: Family,
    /// How it becomes hard.
    hardening: Hardening,
    /// Limits beyond single elements, as printed: niobium, sums, limits by size.
    other: &'static str,
    /// The standard whose limits these are.
    composition_standard: &'static str,
    /// Where other editions and sheets differ.
    composition_note: &'static str,
    /// Where the composition stands.
    composition_cited: Cited,
    /// Preheating in °C, one range for each step in its order; a single temperature is a range of no width.
    preheat: &'static [Interval],
    /// Hardening temperature in °C, of the metal; for an ageing grade the mill's solution treatment.
    window: Option<Interval>,
    /// Usual media, the usual one first.
    quenchants: &'static [Quenchant],
    /// Soaking time, as printed.
    soak: &'static str,
    /// Where preheat, hardening temperature, media and soak stand.
    heat_cited: Cited,
    /// Hardness of the bar as bought.
    supplied: Supplied,
    /// In which condition that is.
    supplied_note: &'static str,
    /// Where the supplied hardness stands.
    supplied_cited: Cited,
    /// Hardness as quenched in HRC, small section; of a case grade that of the core.
    as_quenched: Option<Interval>,
    /// Under which circumstances that is.
    as_quenched_note: &'static str,
    /// Where the as-quenched hardness stands.
    as_quenched_cited: Cited,
    /// Usual tempering range in °C; for an ageing grade the ages.
    temper_range: Option<Interval>,
    /// Tempering range to avoid, in °C.
    avoid: Option<Interval>,
    /// Why; may also say why nothing has to be avoided.
    avoid_why: &'static str,
    /// Where the tempering ranges stand.
    temper_cited: Cited,
    /// Usual working hardness in HRC; of a case grade that of the case.
    working: Option<Interval>,
    /// What it is used for.
    typical_use: &'static str,
    /// Where working hardness and use stand.
    working_cited: Cited,
    /// What the hardness after tempering is worked out from.
    temper_method: TemperMethod,
    /// Key of the grade whose printed curve is used.
    curve_from: Option<&'static str>,
    /// How near that curve is; `None` where no curve is asked for.
    curve_closeness: Option<CurveCloseness>,
    /// Whether it is to be tempered more than once.
    double_temper: DoubleTemper,
    /// What cold treatment is worth.
    cryo: Cryo,
    /// How deep it hardens, in words.
    section_note: &'static str,
    /// Further notes, where sources disagree.
    notes: &'static str,
}

impl Grade {
    /// Every grade, in the order of the data file.
    #[must_use]
    pub fn all() -> &'static [Self] {
        &GRADES
    }

    /// The grade with exactly this key. What a person typed goes through [`find`].
    #[must_use]
    pub fn by_key(key: &str) -> Option<&'static Self> {
        GRADES.iter().find(|grade| grade.key == key)
    }

    /// Limits of the composition in mass percent, ladle analysis.
    #[must_use]
    pub fn limits(&self) -> CompositionLimits {
        CompositionLimits::of_checked(self.limits)
    }

    /// What can go wrong, one text each.
    pub fn hazards(&self) -> impl Iterator<Item = &'static str> {
        self.hazards.split(';').map(str::trim).filter(|text| !text.is_empty())
    }

    /// Every designation that leads to this grade, in the order of the data file.
    pub fn designations(&self) -> impl Iterator<Item = &'static Designation> {
        let key = self.key;
        Designation::all().iter().filter(move |designation| designation.grade().key == key)
    }
}

impl PartialEq for Grade {
    fn eq(&self, other: &Self) -> bool {
        self.key == other.key
    }
}

impl Eq for Grade {}
