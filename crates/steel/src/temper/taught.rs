//! A steel with what own results taught of it, and of the oven they came from.

use alloc::vec::Vec;

use libm::{hypot, sqrt};

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

/// A result that is further from the book than this is doubted, in standard deviations of what is foretold of one: of
/// results that only scatter three in a thousand are. Ours.
pub const DOUBT: f64 = 3.0;

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
    /// The same without the results that are doubted, where there is one: they make nothing surer.
    firm: Option<Learned>,
    results: Vec<Measured>,
    doubted: Vec<Option<f64>>,
}

impl<'a> Taught<'a> {
    /// Weighs results of one heat in one oven; without any the book alone speaks.
    ///
    /// A result beyond [`DOUBT`] is taken for as coarse as puts it just there: it moves what is foretold by no more than one
    /// at that distance, by less the further away it is, and what it moves widens the band.
    ///
    /// # Errors
    /// [`TaughtError`]: a temper of which nothing is known, or results that are no numbers or too many.
    pub fn new(
        tempering: &'a Tempering,
        oven: Oven,
        results: &[Measured],
    ) -> Result<Self, TaughtError> {
        let spread = tempering.spread();
        let (mut all, mut doubted) = (Vec::new(), Vec::new());
        for one in results {
            let expected = tempering.expected(&one.tempers).map_err(TaughtError::Tempering)?;
            let off = (one.hrc - expected.hrc - expected.slope * oven.mean_k).abs();
            let foretold = hypot(hypot(expected.sd(&spread), expected.slope * oven.sd_k), one.sd);
            let most = DOUBT * foretold;
            let doubt = off > most;
            let coarser = sqrt((off * off - most * most).max(0.0)) / DOUBT;
            let sd = if doubt { hypot(one.sd, coarser) } else { one.sd };
            all.push(OwnResult { expected, hrc: one.hrc, sd, heat: 0, oven: 0 });
            doubted.push(doubt.then_some(most));
        }
        let weigh = |results: &[OwnResult]| {
            Learned::new(&[spread], &[oven], results).map_err(TaughtError::Learn)
        };
        let kept =
            all.iter().zip(&doubted).filter(|(_, doubt)| doubt.is_none()).map(|(one, _)| *one);
        let kept: Vec<OwnResult> = kept.collect();
        let firm = (kept.len() < all.len()).then(|| weigh(&kept)).transpose()?;
        let (learned, results) = (weigh(&all)?, results.to_vec());
        Ok(Self { tempering, learned, firm, results, doubted })
    }

    /// Of each result that is doubted how far from the book it would still have been believed, in HRC, see [`DOUBT`].
    #[must_use]
    pub fn doubted(&self) -> &[Option<f64>] {
        &self.doubted
    }

    /// What is learned of something: with a result that is doubted the band is that of the others, and wider by how far it
    /// moves the middle.
    fn weighed(&self, ask: impl Fn(&Learned) -> Option<Normal>) -> Option<Normal> {
        let all = ask(&self.learned)?;
        Some(match self.firm.as_ref().and_then(ask) {
            Some(firm) => Normal { sd: hypot(firm.sd, all.mean - firm.mean), ..all },
            None => all,
        })
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
        at.and_then(|at| self.weighed(|learned| learned.heat(0, &at)))
            .unwrap_or(Normal { mean: 0.0, sd: 0.0 })
    }

    /// By how many K the oven is hotter than it says; results that are doubted have no voice in it.
    #[must_use]
    pub fn oven(&self) -> Normal {
        let learned = self.firm.as_ref().unwrap_or(&self.learned);
        learned.oven(0).unwrap_or(Normal { mean: 0.0, sd: 0.0 })
    }

    /// Whether there is a result that is not doubted.
    #[must_use]
    pub fn believed(&self) -> bool {
        self.doubted.iter().any(Option::is_none)
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
        Ok(self.weighed(|learned| learned.heat(0, &at)).map_or(book, |heat| {
            let sd = sqrt(heat.sd * heat.sd + scatter * scatter);
            // What is learned narrows the book; only a doubt widens it.
            let sd = if self.firm.is_some() { sd.max(book.sd) } else { sd.min(book.sd) };
            Predicted::normal(at.hrc + heat.mean, sd)
        }))
    }

    /// The hardness after tempers as the oven is set.
    ///
    /// # Errors
    /// As [`Tempering::band`].
    pub fn in_oven(&self, tempers: &[Temper]) -> Result<Predicted, TemperingError> {
        let at = self.tempering.expected(tempers)?;
        match self.weighed(|learned| learned.plan(0, 0, &at)) {
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
