//! Why no number is given for an indentation.

use core::fmt;

use crate::axis::Scale;
use biteband_quantity::{OutOfBounds, Shown};

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A length or a force outside its bounds, negative, nought or not a number.
    Quantity(OutOfBounds),
    /// A number that the scale refuses.
    Hardness(crate::Error),
    /// A hardness that is not a finite number above nought.
    NotAHardness {
        /// As given.
        given: f64,
    },
    /// One or two sizes make a reading.
    SizeCount {
        /// How many were given.
        given: usize,
    },
    /// Diagonals further apart than 5 % of their mean: a tilted surface or a damaged diamond. Level the
    /// part and test again.
    UnequalDiagonals {
        /// First diagonal in mm.
        first: f64,
        /// Second diagonal in mm.
        second: f64,
    },
    /// A Brinell indentation as wide as the ball or wider: a larger ball or a smaller force.
    NotBelowBall {
        /// Mean diameter in mm.
        diameter: f64,
        /// Ball in mm.
        ball: f64,
    },
    /// A hardness at which the ball sinks in beyond its half: a larger ball or a smaller force.
    BallSinks {
        /// The hardness.
        hardness: f64,
        /// Ball in mm.
        ball: f64,
        /// Smallest hardness this test can give, the number of an indentation as wide as the ball.
        smallest: f64,
    },
    /// Only Rockwell numbers come from a depth.
    NotByDepth {
        /// The scale asked for.
        scale: Scale,
    },
    /// Rockwell numbers come from a depth, not from the size of a mark.
    NotBySize {
        /// The scale asked for.
        scale: Scale,
    },
    /// A Rockwell number at or above the scale's zero depth.
    NoDepth {
        /// The scale.
        scale: Scale,
        /// The number.
        given: f64,
        /// The number at no depth at all.
        zero: f64,
    },
    /// Velocities that no rebound has: both finite, the impact above nought, the rebound not above it.
    Velocity {
        /// Impact in m/s.
        impact: f64,
        /// Rebound in m/s.
        rebound: f64,
    },
    /// No correction for this scale on this shape: test with a scale that has one, or grind a flat.
    NoRoundTable {
        /// The scale.
        scale: Scale,
    },
    /// Smaller than the smallest diameter of the table: a lighter scale or a flat ground on the part.
    TooSmall {
        /// The scale.
        scale: Scale,
        /// Diameter in mm.
        diameter: f64,
        /// Smallest diameter with a correction, in mm.
        smallest: f64,
    },
    /// A reading, or a number on the flat, for which the table of corrections has no row.
    OutsideRoundTable {
        /// The scale.
        scale: Scale,
        /// The number.
        given: f64,
        /// Lowest number that the table serves at this diameter.
        low: f64,
        /// Highest.
        high: f64,
    },
    /// A Vickers diagonal too long for the curvature: a smaller force.
    TooCurved {
        /// Mean diagonal over the diameter of the surface.
        ratio: f64,
        /// Largest ratio of the printed table.
        largest: f64,
    },
    /// A number of readings that no statement can be made from.
    ReadingCount {
        /// How many were given.
        given: usize,
        /// Fewest.
        least: usize,
        /// Most.
        most: usize,
    },
    /// A standard uncertainty that is negative or not a number.
    Uncertainty {
        /// As given.
        given: f64,
    },
    /// A chance outside 0 to 1, or no degree of freedom.
    NoQuantile {
        /// The chance.
        chance: f64,
        /// The degrees of freedom.
        freedom: u32,
    },
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Quantity(inside) => inside.code(),
            Self::Hardness(inside) => inside.code(),
            Self::NotAHardness { .. } => "indentation.not_a_hardness",
            Self::SizeCount { .. } => "indentation.size_count",
            Self::UnequalDiagonals { .. } => "indentation.unequal_diagonals",
            Self::NotBelowBall { .. } => "indentation.not_below_ball",
            Self::BallSinks { .. } => "indentation.ball_sinks",
            Self::NotByDepth { .. } => "indentation.not_by_depth",
            Self::NotBySize { .. } => "indentation.not_by_size",
            Self::NoDepth { .. } => "indentation.no_depth",
            Self::Velocity { .. } => "indentation.velocity",
            Self::NoRoundTable { .. } => "indentation.no_round_table",
            Self::TooSmall { .. } => "indentation.too_small",
            Self::OutsideRoundTable { .. } => "indentation.outside_round_table",
            Self::TooCurved { .. } => "indentation.too_curved",
            Self::ReadingCount { .. } => "indentation.reading_count",
            Self::Uncertainty { .. } => "indentation.uncertainty",
            Self::NoQuantile { .. } => "indentation.no_quantile",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Quantity(ref inside) => inside.fmt(f),
            Self::Hardness(ref inside) => inside.fmt(f),
            Self::NotAHardness { given } => {
                write!(f, "a hardness of {} is not a finite number above nought", Shown(given))
            }
            Self::SizeCount { given } => {
                write!(f, "{given} sizes were given; a reading is made from one or two")
            }
            Self::UnequalDiagonals { first, second } => write!(
                f,
                "diagonals of {} and {} mm differ by more than 5 % of their mean",
                Shown(first),
                Shown(second)
            ),
            Self::NotBelowBall { diameter, ball } => write!(
                f,
                "an indentation of {} mm is not smaller than its ball of {} mm",
                Shown(diameter),
                Shown(ball)
            ),
            Self::BallSinks { hardness, ball, smallest } => write!(
                f,
                "at {} HBW the ball of {} mm sinks in beyond its half; this test ends at {} HBW",
                Shown(hardness),
                Shown(ball),
                Shown(smallest)
            ),
            Self::NotByDepth { scale } => write!(f, "{scale} is not measured by a depth"),
            Self::NotBySize { scale } => write!(f, "{scale} is not measured by the size of a mark"),
            Self::NoDepth { scale, given, zero } => write!(
                f,
                "{} {scale} has no depth; the scale is {} at no depth at all",
                Shown(given),
                Shown(zero)
            ),
            Self::Velocity { impact, rebound } => write!(
                f,
                "a rebound of {} m/s after an impact of {} m/s does not happen",
                Shown(rebound),
                Shown(impact)
            ),
            Self::NoRoundTable { scale } => {
                write!(f, "no correction for {scale} on this shape is known here")
            }
            Self::TooSmall { scale, diameter, smallest } => write!(
                f,
                "a diameter of {} mm is below the {} mm where corrections of {scale} begin",
                Shown(diameter),
                Shown(smallest)
            ),
            Self::OutsideRoundTable { scale, given, low, high } => write!(
                f,
                "{} {scale} is outside the corrections for this diameter, which serve {} to {}",
                Shown(given),
                Shown(low),
                Shown(high)
            ),
            Self::TooCurved { ratio, largest } => write!(
                f,
                "a diagonal of {} times the diameter is beyond the {} of the printed table",
                Shown(ratio),
                Shown(largest)
            ),
            Self::ReadingCount { given, least, most } => {
                write!(f, "{given} readings were given; {least} to {most} are needed")
            }
            Self::Uncertainty { given } => write!(
                f,
                "a standard uncertainty of {} is not a finite number from nought up",
                Shown(given)
            ),
            Self::NoQuantile { chance, freedom } => write!(
                f,
                "Student's t has no limit for a chance of {} with {freedom} degrees of freedom",
                Shown(chance)
            ),
        }
    }
}

impl core::error::Error for Error {}

impl From<OutOfBounds> for Error {
    fn from(inside: OutOfBounds) -> Self {
        Self::Quantity(inside)
    }
}

impl From<crate::Error> for Error {
    fn from(inside: crate::Error) -> Self {
        Self::Hardness(inside)
    }
}
