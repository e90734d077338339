//! A steel with what own results taught of it, and of the oven they came from.

use alloc::vec::Vec;

use libm::sqrt;

use super::cycle::Temper;
use super::learn::{LearnError, Learned, Normal, Oven, OwnResult};
use super::plan::{Predict, Predicted};
use super::tempering::{Tempering, TemperingError};
use crate::composition::Interval;

/// What was measured after tempers, with the temperatures as the oven was set.
#[derive(Clone, Debug, PartialEq)]
pub struct Measured {
    /// All tempers before it.
    pub tempers: Vec<Temper>,
    /// As measured, in HRC.
    pub hrc: f64,
    /// Standard deviation of the measurement, in HRC.
    pub sd: f64,
}

/// Why nothing is learned.
#[derive(Clone, Debug)]
pub enum TaughtError {
    /// Nothing is known of a temper.
    Tempering(TemperingError),
    /// The results cannot be weighed.
    Learn(LearnError),
}

/// A steel, an oven, and the results that they gave together.
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::reach::Steel;
/// use biteband_steel::temper::{Measured, Oven, Taught, Temper, Tempering};
/// let book = Tempering::of(&Steel::Grade(Grade::by_key("4140").unwrap()))?;
/// let tempers = vec![Temper::new(220.0, 120.0)?];
/// let soft = Measured { hrc: book.band(&tempers)?.median - 4.0, sd: 1.0, tempers: tempers.clone() };
/// let taught = Taught::new(&book, Oven::UNCHECKED, &[soft]).unwrap();
/// // Some of it is the steel's, some the oven's, which then is hotter than it says.
/// assert!(taught.heat().mean < 0.0 && taught.oven().mean > 0.0);
/// let next = taught.in_oven(&tempers)?;
/// assert!(next.median < book.band(&tempers)?.median - 1.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Taught<'a> {
    tempering: &'a Tempering,
    learned: Learned,
    results: Vec<Measured>,
}

impl<'a> Taught<'a> {
    /// Weighs results of one heat in one oven; without any the book alone speaks.
    ///
    /// # Errors
    /// [`TaughtError`]: a temper of which nothing is known, or results that are no numbers or too many.
    pub fn new(
        tempering: &'a Tempering,
        oven: Oven,
        results: &[Measured],
    ) -> Result<Self, TaughtError> {
        let own = |one: &Measured| {
            let expected = tempering.expected(&one.tempers).map_err(TaughtError::Tempering)?;
            Ok(OwnResult { expected, hrc: one.hrc, sd: one.sd, heat: 0, oven: 0 })
        };
        let all = results.iter().map(own).collect::<Result<Vec<_>, _>>()?;
        let learned =
            Learned::new(&[tempering.spread()], &[oven], &all).map_err(TaughtError::Learn)?;
        Ok(Self { tempering, learned, results: results.to_vec() })
    }

    /// The book.
    #[must_use]
    pub const fn tempering(&self) -> &'a Tempering {
        self.tempering
    }

    /// The results.
    #[must_use]
    pub fn results(&self) -> &[Measured] {
        &self.results
    }

    /// By how many HRC the heat is harder than the book, at the temper of the last result; nought without one.
    #[must_use]
    pub fn heat(&self) -> Normal {
        let at = self.results.last().and_then(|one| self.tempering.expected(&one.tempers).ok());
        at.and_then(|at| self.learned.heat(0, &at)).unwrap_or(Normal { mean: 0.0, sd: 0.0 })
    }

    /// By how many K the oven is hotter than it says.
    #[must_use]
    pub fn oven(&self) -> Normal {
        self.learned.oven(0).unwrap_or(Normal { mean: 0.0, sd: 0.0 })
    }

    /// The hardness after tempers of the metal.
    ///
    /// # Errors
    /// As [`Tempering::band`].
    pub fn in_metal(&self, tempers: &[Temper]) -> Result<Predicted, TemperingError> {
        let book = self.tempering.band(tempers)?;
        if self.results.is_empty() {
            return Ok(book);
        }
        let at = self.tempering.expected(tempers)?;
        let scatter = self.tempering.spread().scatter;
        Ok(self.learned.heat(0, &at).map_or(book, |heat| {
            let sd = sqrt(heat.sd * heat.sd + scatter * scatter).min(book.sd);
            Predicted::normal(at.hrc + heat.mean, sd)
        }))
    }

    /// The hardness after tempers as the oven is set.
    ///
    /// # Errors
    /// As [`Tempering::band`].
    pub fn in_oven(&self, tempers: &[Temper]) -> Result<Predicted, TemperingError> {
        let at = self.tempering.expected(tempers)?;
        match self.learned.plan(0, 0, &at) {
            Some(planned) => Ok(Predicted::normal(at.hrc + planned.mean, planned.sd)),
            None => self.tempering.band(tempers),
        }
    }

    /// The tempers as the oven is set, for plans.
    #[must_use]
    pub const fn oven_set(&self) -> InOven<'_> {
        InOven(self)
    }
}

impl Predict for Taught<'_> {
    fn predict(&self, tempers: &[Temper]) -> Option<Predicted> {
        self.in_metal(tempers).ok()
    }

    fn range(&self) -> Interval {
        self.tempering.range()
    }
}

/// A steel in an oven whose settings the temperatures are.
#[derive(Clone, Copy, Debug)]
pub struct InOven<'a>(&'a Taught<'a>);

impl Predict for InOven<'_> {
    fn predict(&self, tempers: &[Temper]) -> Option<Predicted> {
        self.0.in_oven(tempers).ok()
    }

    fn range(&self) -> Interval {
        self.0.tempering.range()
    }
}
