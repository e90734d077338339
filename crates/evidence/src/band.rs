//! A belief read out as a band, with open ends left open.

use libm::{fmax, fmin};

use crate::belief::Belief;
use crate::interval::Level;

/// The density at the end of the axis, as a fraction of the greatest, above which the band is open on that side.
///
/// `exp(-1.92)` is where a likelihood ratio of one free parameter excludes at 95 %: an end that is likelier than this has not been excluded by the
/// evidence, and where the axis stops is then our choice and not knowledge.
///
/// # Source
/// Definition: half of the 95 % point of chi-square with one degree of freedom, 3.841.
pub const OPEN_ABOVE: f64 = 0.146_5;

/// The density, as a fraction of the greatest, below which the limit of an open band does not reach.
///
/// Beyond it only a slip of the pen would explain the answers. On an open side the axis is long, so that a slip with a chance of a hundredth could
/// otherwise carry the limit of the other side ten points away, which a closed band, being the shortest interval, does not allow either.
///
/// # Source
/// Definition: `exp(-3.317)`, half of the 99 % point of chi-square with one degree of freedom, 6.635.
pub const SLIP_BELOW: f64 = 0.036_25;

/// What a band says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Nothing is known on either side.
    Unknown,
    /// Softer than a limit, perhaps far softer; HRC.
    Below(f64),
    /// Harder than a limit, perhaps much harder; HRC.
    Above(f64),
    /// Between two limits; HRC.
    Between(f64, f64),
}

/// A band of hardness at a level.
///
/// A closed band is the shortest interval of the level, see [`Belief::shortest`].
/// A band open on one side keeps the limit of the equal-tailed interval on the other: at 95 % the part lies beyond an only limit with a chance of
/// 2.5 %. It stops earlier where the density falls below [`SLIP_BELOW`] of its greatest.
/// A side is open when the belief's density at that end of the axis exceeds [`OPEN_ABOVE`] of its greatest; a normal prior far from the end keeps it
/// closed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Band {
    shape: Shape,
    level: Level,
    median: f64,
}

impl Band {
    /// The lower limit in HRC, unless the band is open there.
    #[must_use]
    pub const fn low(&self) -> Option<f64> {
        match self.shape {
            Shape::Above(low) | Shape::Between(low, _) => Some(low),
            Shape::Unknown | Shape::Below(_) => None,
        }
    }

    /// The upper limit in HRC, unless the band is open there.
    #[must_use]
    pub const fn high(&self) -> Option<f64> {
        match self.shape {
            Shape::Below(high) | Shape::Between(_, high) => Some(high),
            Shape::Unknown | Shape::Above(_) => None,
        }
    }

    /// Whether the band has no lower limit.
    #[must_use]
    pub const fn open_low(&self) -> bool {
        self.low().is_none()
    }

    /// Whether the band has no upper limit.
    #[must_use]
    pub const fn open_high(&self) -> bool {
        self.high().is_none()
    }

    /// What the band says, for matching.
    #[must_use]
    pub const fn shape(&self) -> Shape {
        self.shape
    }

    /// The level.
    #[must_use]
    pub const fn level(&self) -> Level {
        self.level
    }

    /// The median in HRC, unless a side is open: where the axis ends would then move it.
    #[must_use]
    pub const fn median(&self) -> Option<f64> {
        match self.shape {
            Shape::Between(..) => Some(self.median),
            Shape::Unknown | Shape::Below(_) | Shape::Above(_) => None,
        }
    }
}

impl Belief {
    /// The band of a level, open where the evidence does not bound it.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{FileSet, FileTest, Level, Outcome, Shape};
    /// let set = FileSet::trade();
    /// let mut test = FileTest::new(set.clone());
    /// for (file, _) in set.files() {
    ///     test = test.with_stroke(file, Outcome::Skate)?;
    /// }
    /// let Shape::Above(limit) = test.belief()?.band(Level::P95).shape() else { panic!("closed") };
    /// assert!((limit - 64.3).abs() < 0.1);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn band(&self, level: Level) -> Band {
        let (low, high) = self.ends();
        let tail = 0.5 * (1.0 - level.get());
        let shape = match (low > OPEN_ABOVE, high > OPEN_ABOVE) {
            (true, true) => Shape::Unknown,
            (true, false) => {
                Shape::Below(fmin(self.quantile(1.0 - tail), self.reach(SLIP_BELOW).1))
            }
            (false, true) => Shape::Above(fmax(self.quantile(tail), self.reach(SLIP_BELOW).0)),
            (false, false) => {
                let interval = self.shortest(level);
                Shape::Between(interval.low(), interval.high())
            }
        };
        Band { shape, level, median: self.median() }
    }
}
