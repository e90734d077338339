//! One indentation with everything that is known about it.

use alloc::vec::Vec;
use core::fmt;

use super::check::{Check, Cited};
use super::error::Error;
use super::formula;
use super::generated::{ISO_4545_1, ISO_6506_1, ISO_6507_1, ISO_6508_1};
use crate::axis::Scale;
use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres, Shown};

/// A test: the scale with its indenter and force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Test {
    /// Vickers diamond.
    Vickers {
        /// Test force.
        force: KilogramsForce,
    },
    /// Knoop diamond.
    Knoop {
        /// Test force.
        force: KilogramsForce,
    },
    /// Carbide ball.
    Brinell {
        /// The ball.
        ball: BallMillimetres,
        /// Test force.
        force: KilogramsForce,
    },
    /// A Rockwell scale, which fixes indenter and force.
    Rockwell {
        /// The scale; one that is not Rockwell is refused where it is used.
        scale: Scale,
    },
}

impl Test {
    /// Vickers with a force in kgf, as in HV10.
    ///
    /// # Errors
    /// [`Error::Quantity`].
    pub fn vickers(kgf: f64) -> Result<Self, Error> {
        Ok(Self::Vickers { force: KilogramsForce::new(kgf)? })
    }

    /// Knoop with a force in kgf.
    ///
    /// # Errors
    /// [`Error::Quantity`].
    pub fn knoop(kgf: f64) -> Result<Self, Error> {
        Ok(Self::Knoop { force: KilogramsForce::new(kgf)? })
    }

    /// Brinell with a ball in mm and a force in kgf, as in HBW 10/3000.
    ///
    /// # Errors
    /// [`Error::Quantity`].
    pub fn brinell(ball: f64, kgf: f64) -> Result<Self, Error> {
        Ok(Self::Brinell { ball: BallMillimetres::new(ball)?, force: KilogramsForce::new(kgf)? })
    }

    /// A Rockwell scale.
    ///
    /// # Errors
    /// [`Error::NotByDepth`] for a scale of another kind.
    pub fn rockwell(scale: Scale) -> Result<Self, Error> {
        formula::rockwell_scale(scale).map(|_| Self::Rockwell { scale })
    }

    /// The scale of its numbers.
    #[must_use]
    pub const fn scale(self) -> Scale {
        match self {
            Self::Vickers { .. } => Scale::Hv,
            Self::Knoop { .. } => Scale::Hk,
            Self::Brinell { .. } => Scale::Hbw,
            Self::Rockwell { scale } => scale,
        }
    }

    /// The standard that defines its number, and how the definition was known.
    #[must_use]
    pub const fn cited(self) -> Cited {
        match self {
            Self::Vickers { .. } => Cited::seen(ISO_6507_1),
            Self::Knoop { .. } => Cited::seen(ISO_4545_1),
            Self::Brinell { .. } => Cited::seen(ISO_6506_1),
            Self::Rockwell { .. } => Cited::recalled(ISO_6508_1),
        }
    }
}

/// The symbol with its conditions: HRC, HV10, HK0.1, HBW 10/3000.
impl fmt::Display for Test {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rockwell { scale } => scale.fmt(f),
            Self::Vickers { force } | Self::Knoop { force } => {
                write!(f, "{}{}", self.scale(), Shown(force.get()))
            }
            Self::Brinell { ball, force } => {
                write!(f, "{} {}/{}", self.scale(), Shown(ball.get()), Shown(force.get()))
            }
        }
    }
}

/// An indentation: the number, the mark it leaves, and the rules against what is known of its place.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Indentation {
    /// The test.
    pub test: Test,
    /// The number on the test's scale.
    pub value: f64,
    /// Depth; of a Rockwell test the depth left under the preload.
    pub depth: Millimetres,
    /// Mean diagonal (Vickers), long diagonal (Knoop), mean diameter (Brinell); a Rockwell number does not
    /// tell the size of its mark.
    pub size: Option<Millimetres>,
    /// Rules, kept and broken.
    pub checks: Vec<Check>,
    /// The standard that defines the number.
    pub cited: Cited,
}

impl Indentation {
    /// From one measured size, or from two that are averaged.
    ///
    /// A Brinell test outside 0.24 to 0.60 of the ball, or a number outside the scale, is computed and
    /// flagged: see [`Indentation::valid`].
    ///
    /// # Units
    /// Diagonals or diameters in mm.
    ///
    /// # Errors
    /// [`Error::SizeCount`]; [`Error::NotBySize`] for Rockwell; [`Error::UnequalDiagonals`] when two
    /// Vickers diagonals differ by more than 5 % of their mean; [`Error::NotBelowBall`].
    ///
    /// # Source
    /// `iso-6506-1`, `iso-6507-1`, `iso-4545-1`.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::indentation::{Indentation, Test, fitting};
    /// use biteband_quantity::Millimetres;
    /// // W. D. Callister, problem 6.51: the arithmetic is right, the test is not valid.
    /// let brinell =
    ///     Indentation::from_sizes(Test::brinell(10.0, 500.0)?, &[Millimetres::new(1.62)?])?;
    /// assert_eq!(brinell.value.round(), 241.0);
    /// assert!(!brinell.valid());
    /// assert_eq!(fitting(brinell.value, None)[0].to_string(), "HBW 10/3000");
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    pub fn from_sizes(test: Test, sizes: &[Millimetres]) -> Result<Self, Error> {
        let mean = match *sizes {
            [only] => only,
            [first, second] => mean(test, first.get(), second.get())?,
            _ => return Err(Error::SizeCount { given: sizes.len() }),
        };
        let value = match test {
            Test::Vickers { force } => formula::vickers(force, mean),
            Test::Knoop { force } => formula::knoop(force, mean),
            Test::Brinell { ball, force } => formula::brinell(ball, force, mean)?,
            Test::Rockwell { scale } => return Err(Error::NotBySize { scale }),
        };
        Self::new(test, value, Some(mean))
    }

    /// From the depth that a Rockwell machine measures, in mm.
    ///
    /// # Errors
    /// [`Error::NotByDepth`] for every other test.
    pub fn from_depth(test: Test, depth: Millimetres) -> Result<Self, Error> {
        let value = formula::rockwell(test.scale(), depth)?;
        Self::new(test, value, None)
    }

    /// The indentation that a hardness makes.
    ///
    /// # Errors
    /// [`Error::NotAHardness`], [`Error::NoDepth`], [`Error::BallSinks`], or [`Error::Quantity`] for a mark
    /// outside the bounds of lengths.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::indentation::{Indentation, Test};
    /// let vickers = Indentation::at(Test::vickers(30.0)?, 640.0)?;
    /// assert!((vickers.size.unwrap().get() - 0.2948).abs() < 0.0001);
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    pub fn at(test: Test, value: f64) -> Result<Self, Error> {
        let size = match test {
            Test::Vickers { force } => Some(formula::vickers_diagonal(force, value)?),
            Test::Knoop { force } => Some(formula::knoop_diagonal(force, value)?),
            Test::Brinell { ball, force } => Some(formula::brinell_diameter(ball, force, value)?),
            Test::Rockwell { .. } => None,
        };
        Self::new(test, value, size)
    }

    fn new(test: Test, value: f64, size: Option<Millimetres>) -> Result<Self, Error> {
        let depth = match (test, size) {
            (Test::Vickers { .. }, Some(size)) => formula::vickers_depth(size)?,
            (Test::Knoop { .. }, Some(size)) => formula::knoop_depth(size)?,
            (Test::Brinell { ball, .. }, Some(size)) => formula::brinell_depth(ball, size)?,
            _ => formula::rockwell_depth(test.scale(), value)?,
        };
        let mut made = Self { test, value, depth, size, checks: Vec::new(), cited: test.cited() };
        made.check_itself();
        Ok(made)
    }

    /// Whether every rule that could be checked is kept; where standards differ, the stricter too.
    #[must_use]
    pub fn valid(&self) -> bool {
        self.checks.iter().all(|check| check.holds)
    }
}

/// Largest difference of two Vickers diagonals as a share of their mean. Source: `iso-6507-1`, recalled.
const UNEQUAL: f64 = 0.05;

fn mean(test: Test, first: f64, second: f64) -> Result<Millimetres, Error> {
    let mean = f64::midpoint(first, second);
    if matches!(test, Test::Vickers { .. }) && (first - second).abs() > UNEQUAL * mean {
        return Err(Error::UnequalDiagonals { first, second });
    }
    Ok(Millimetres::new(mean)?)
}
