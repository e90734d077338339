//! The wanted hardness and the chance of meeting it.

use crate::error::{Error, What, within};

/// The wanted hardness, closed on one side or on both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target {
    low: Option<f64>,
    high: Option<f64>,
}

impl Target {
    /// A target between two limits.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Valid for
    /// 10 to 75 HRC, `low` below `high`.
    ///
    /// # Errors
    /// [`Error::OutOfRange`], [`Error::TargetUpsideDown`].
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Error, Target};
    /// assert!(Target::between(50.0, 54.0).is_ok());
    /// assert_eq!(
    ///     Target::between(54.0, 50.0),
    ///     Err(Error::TargetUpsideDown { low: 54.0, high: 50.0 })
    /// );
    /// ```
    pub fn between(low: f64, high: f64) -> Result<Self, Error> {
        let (low, high) = (limit(low)?, limit(high)?);
        if low < high {
            Ok(Self { low: Some(low), high: Some(high) })
        } else {
            Err(Error::TargetUpsideDown { low, high })
        }
    }

    /// A target with a lower limit only.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Valid for
    /// 10 to 75 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn at_least(low: f64) -> Result<Self, Error> {
        Ok(Self { low: Some(limit(low)?), high: None })
    }

    /// A target with an upper limit only.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Valid for
    /// 10 to 75 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn at_most(high: f64) -> Result<Self, Error> {
        Ok(Self { low: None, high: Some(limit(high)?) })
    }

    /// The lower limit in HRC, if there is one.
    #[must_use]
    pub const fn low(&self) -> Option<f64> {
        self.low
    }

    /// The upper limit in HRC, if there is one.
    #[must_use]
    pub const fn high(&self) -> Option<f64> {
        self.high
    }
}

fn limit(given: f64) -> Result<f64, Error> {
    within(What::TargetLimit, given, 10.0, 75.0)
}

/// The chances of being under, inside and over a target; they add to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Odds {
    under: f64,
    inside: f64,
    over: f64,
}

impl Odds {
    pub(crate) const fn new(under: f64, inside: f64, over: f64) -> Self {
        Self { under, inside, over }
    }

    /// The chance of being softer than the target.
    #[must_use]
    pub const fn under(&self) -> f64 {
        self.under
    }

    /// The chance of being inside the target.
    #[must_use]
    pub const fn inside(&self) -> f64 {
        self.inside
    }

    /// The chance of being harder than the target.
    #[must_use]
    pub const fn over(&self) -> f64 {
        self.over
    }

    /// The doubt about the three, Shannon's entropy in bits: 0 when one is certain, 1.585 when all are equally likely.
    ///
    /// # Source
    /// Definition.
    #[must_use]
    pub fn doubt(&self) -> f64 {
        [self.under, self.inside, self.over]
            .iter()
            .map(|&p| if p > 0.0 { -p * libm::log2(p) } else { 0.0 })
            .sum()
    }
}
