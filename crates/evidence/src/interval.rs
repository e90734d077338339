//! Intervals of hardness and their level.

use crate::error::{Error, What, within};

/// The level of an interval.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Level(f64);

impl Level {
    /// The level every answer has unless another is asked for.
    pub const P95: Self = Self(0.95);

    /// A level.
    ///
    /// # Valid for
    /// 0.5 to 0.999.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn new(level: f64) -> Result<Self, Error> {
        within(What::Level, level, 0.5, 0.999).map(Self)
    }

    /// The level, between 0 and 1.
    #[must_use]
    pub const fn get(self) -> f64 {
        self.0
    }
}

impl Default for Level {
    fn default() -> Self {
        Self::P95
    }
}

/// An interval of hardness.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Interval {
    low: f64,
    high: f64,
}

impl Interval {
    pub(crate) const fn new(low: f64, high: f64) -> Self {
        Self { low, high }
    }

    /// The lower limit, in HRC.
    #[must_use]
    pub const fn low(&self) -> f64 {
        self.low
    }

    /// The upper limit, in HRC.
    #[must_use]
    pub const fn high(&self) -> f64 {
        self.high
    }

    /// The width, in HRC.
    #[must_use]
    pub const fn width(&self) -> f64 {
        self.high - self.low
    }
}
