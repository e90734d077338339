//! Whether a bath suits a grade.

use super::through::sharpness;
use crate::composition::{Composition, CompositionLimits, Element, Interval};
use crate::grade::{Family, Grade};
use crate::quenchant::Quenchant;
use crate::transform::{CrackRisk, quench_crack};

/// How a bath stands to the media that a grade's sources name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// The usual one, or another that is named.
    Named,
    /// Between those that are named.
    Between,
    /// Sharper than all of them: the part may crack.
    Sharper,
    /// So much sharper that nobody quenches the grade in it.
    Never,
    /// Milder than all of them: it does not get hard.
    Milder,
}

impl Fit {
    /// How `medium` stands to the media of `grade`.
    ///
    /// A tool or stainless steel that its sources quench in oil, salt or air is not to go into water or
    /// brine, and one that they quench in air alone not into anything sharper than oil: it cracks, and the
    /// data for it do not exist. Common practice, no source.
    ///
    /// ```
    /// use biteband_steel::reach::Fit;
    /// use biteband_steel::{Grade, Quenchant};
    /// let fit = |key: &str, medium| Fit::of(Grade::by_key(key).unwrap(), medium);
    /// assert_eq!(fit("4140", Quenchant::Oil), Fit::Named);
    /// assert_eq!(fit("4140", Quenchant::Water), Fit::Sharper);
    /// assert_eq!(fit("O1", Quenchant::Water), Fit::Never);
    /// assert_eq!(fit("W1", Quenchant::Oil), Fit::Milder);
    /// ```
    #[must_use]
    pub fn of(grade: &Grade, medium: Quenchant) -> Self {
        let named = grade.quenchants();
        if named.contains(&medium) {
            return Self::Named;
        }
        let asked = sharpness(medium);
        let sharpest = named.iter().map(|one| sharpness(*one)).max();
        let mildest = named.iter().map(|one| sharpness(*one)).min();
        let (Some(sharpest), Some(mildest)) = (sharpest, mildest) else { return Self::Milder };
        if asked < mildest {
            Self::Milder
        } else if asked <= sharpest {
            Self::Between
        } else if matches!(grade.family(), Family::Tool | Family::Stainless | Family::PhStainless)
            && asked >= sharpness(Quenchant::Water)
        {
            Self::Never
        } else {
            Self::Sharper
        }
    }
}

/// The risk that a bath cracks a part, by the middle of the limits.
#[must_use]
pub fn crack_risk(limits: &CompositionLimits, medium: Quenchant) -> Option<CrackRisk> {
    let shares = Element::ALL.map(|element| (element, limits.range(element).map(Interval::middle)));
    let known: alloc::vec::Vec<(Element, f64)> =
        shares.into_iter().filter_map(|(element, share)| Some((element, share?))).collect();
    Some(quench_crack(&Composition::new(&known).ok()?, medium.into()))
}
