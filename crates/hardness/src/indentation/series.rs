//! Several readings of one thing.

use alloc::vec::Vec;

use super::check::Cited;
use super::error::Error;
use super::generated::{GRUBBS, JCGM_100};
use super::student::{MOST, student_t};
use crate::axis::{Axis, Reading, Scale};

/// Share of a normal distribution within one standard deviation, to which ISO 6508-1 widens a mean.
const ONE_SIGMA: f64 = 0.682_7;

/// Readings of one scale on one place, in the order taken.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Series {
    scale: Scale,
    readings: Vec<f64>,
}

/// How far the readings lie apart; needs two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Largest minus smallest.
    pub range: f64,
    /// Standard deviation of one reading.
    pub deviation: f64,
    /// Standard uncertainty of the mean: the deviation over the root of the count.
    pub of_mean: f64,
    /// The same, widened for the small count to a chance of 68.27 % by Student's t, as ISO 6508-1 does.
    pub of_mean_widened: f64,
    /// Half width around the mean that holds the true mean with 95 %, by Student's t. Scatter only: a
    /// machine that reads high does so in every reading.
    pub half_width_95: f64,
    /// Where the rule stands.
    pub cited: Cited,
}

/// A reading that does not belong to the others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outlier {
    /// Which, counted from 0 in the order taken.
    pub index: usize,
    /// The reading.
    pub value: f64,
    /// Its distance from the mean in standard deviations.
    pub distance: f64,
    /// The distance that five of a hundred clean series exceed.
    pub critical: f64,
    /// Where the test stands.
    pub cited: Cited,
}

/// Standard uncertainties put together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Budget {
    /// Root of the sum of squares.
    pub combined: f64,
    /// Twice that: about 95 %.
    pub expanded: f64,
    /// Which term weighs most, counted from 0.
    pub largest: usize,
    /// Where the rule stands.
    pub cited: Cited,
}

impl Series {
    /// Takes 1 to 1000 readings of one scale.
    ///
    /// # Errors
    /// [`Error::ReadingCount`]; [`Error::Hardness`] for a number that the scale does not have.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::{Scale, indentation::Series};
    /// // ASTM E18-19, example X2.3.
    /// let block = Series::new(Scale::Hrc, &[40.61, 40.72, 40.65, 40.61, 40.55])?;
    /// assert!((block.mean() - 40.63).abs() < 0.005);
    /// assert!((block.spread().unwrap().range - 0.17).abs() < 1e-9);
    /// assert!(block.outlier().is_none());
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    pub fn new(scale: Scale, readings: &[f64]) -> Result<Self, Error> {
        if readings.is_empty() || readings.len() > MOST {
            return Err(Error::ReadingCount { given: readings.len(), least: 1, most: MOST });
        }
        let take = |value: &f64| Reading::new(Axis::Hardness(scale), *value).map(Reading::value);
        let readings = readings.iter().map(take).collect::<Result<_, _>>()?;
        Ok(Self { scale, readings })
    }

    /// The scale of the readings.
    #[must_use]
    pub const fn scale(&self) -> Scale {
        self.scale
    }

    /// The readings in the order taken.
    #[must_use]
    pub fn readings(&self) -> &[f64] {
        &self.readings
    }

    /// Their mean.
    #[must_use]
    pub fn mean(&self) -> f64 {
        self.readings.iter().sum::<f64>() / count(self.readings.len())
    }

    /// Their spread; `None` for a single reading.
    ///
    /// # Source
    /// `jcgm-100`, 4.2; the widened form by the budget of `iso-6508-1`.
    #[must_use]
    pub fn spread(&self) -> Option<Spread> {
        let freedom = u32::try_from(self.readings.len()).ok()?.checked_sub(1)?;
        let (wide, wider) = (student_t(ONE_SIGMA, freedom).ok()?, student_t(0.95, freedom).ok()?);
        let mean = self.mean();
        let squares: f64 = self.readings.iter().map(|value| (value - mean) * (value - mean)).sum();
        let deviation = libm::sqrt(squares / f64::from(freedom));
        let of_mean = deviation / libm::sqrt(count(self.readings.len()));
        let largest = self.readings.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let smallest = self.readings.iter().copied().fold(f64::INFINITY, f64::min);
        Some(Spread {
            range: largest - smallest,
            deviation,
            of_mean,
            of_mean_widened: wide * of_mean,
            half_width_95: wider * of_mean,
            cited: Cited::seen(JCGM_100),
        })
    }

    /// The reading that stands out, by the two-sided test of Grubbs at 5 %; needs three readings.
    ///
    /// The test names a reading to look at again. It does not say that it may be left out: a soft spot
    /// is an outlier too.
    ///
    /// # Source
    /// `grubbs`.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::{Scale, indentation::Series};
    /// let readings = Series::new(Scale::Hrc, &[58.0, 58.5, 58.2, 52.1, 58.3])?;
    /// assert_eq!(readings.outlier().map(|found| found.index), Some(3));
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    #[must_use]
    pub fn outlier(&self) -> Option<Outlier> {
        let freedom = u32::try_from(self.readings.len()).ok()?.checked_sub(2)?;
        let n = count(self.readings.len());
        let t = student_t(1.0 - 0.05 / n, freedom).ok()?;
        let critical = (n - 1.0) * t / libm::sqrt(n * (f64::from(freedom) + t * t));
        let (mean, deviation) = (self.mean(), self.spread()?.deviation);
        let away = |value: f64| (value - mean).abs();
        let far = self.readings.iter().copied().enumerate();
        let (index, value) = far.max_by(|(_, a), (_, b)| away(*a).total_cmp(&away(*b)))?;
        // Readings that are all the same leave a deviation of a few last bits, in which nothing stands out.
        let distance = away(value) / deviation.max(1e-9);
        (distance > critical).then_some(Outlier {
            index,
            value,
            distance,
            critical,
            cited: Cited::recalled(GRUBBS),
        })
    }

    /// The uncertainty of the mean with what the machine and the reference add.
    ///
    /// The terms are, in this order: scatter of the mean, machine, reference, resolution. A single reading
    /// has no scatter of its own; the machine's term then has to hold it.
    ///
    /// # Units
    /// `machine` and `reference`: standard uncertainties; `resolution`: the step of the display.
    ///
    /// # Errors
    /// [`Error::Uncertainty`] for a negative number or one that is not finite.
    ///
    /// # Source
    /// `jcgm-100`, 5.1; the step counts as its root of twelfth, as in H.6.
    pub fn budget(&self, machine: f64, reference: f64, resolution: f64) -> Result<Budget, Error> {
        let scatter = self.spread().map_or(0.0, |spread| spread.of_mean_widened);
        combine(&[scatter, machine, reference, resolution / libm::sqrt(12.0)])
    }
}

/// Puts standard uncertainties of one quantity together that do not depend on each other.
///
/// # Errors
/// [`Error::Uncertainty`] for a negative term or one that is not finite; [`Error::ReadingCount`] without
/// terms or with more than a thousand.
///
/// # Source
/// `jcgm-100`, 5.1.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::combine;
/// // JCGM 100, H.6: scale, repeatability, block.
/// let budget = combine(&[0.5, 0.20, 0.11])?;
/// assert!((budget.combined - 0.55).abs() < 0.005 && budget.largest == 0);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn combine(terms: &[f64]) -> Result<Budget, Error> {
    if terms.is_empty() || terms.len() > MOST {
        return Err(Error::ReadingCount { given: terms.len(), least: 1, most: MOST });
    }
    // A square root of the largest double is out of reach of any hardness and keeps the squares finite.
    let bad = |term: &&f64| !(**term >= 0.0 && **term < 1e150);
    if let Some(given) = terms.iter().copied().find(|term| bad(&term)) {
        return Err(Error::Uncertainty { given });
    }
    let combined = libm::sqrt(terms.iter().map(|term| term * term).sum());
    let (mut largest, mut most) = (0, 0.0);
    for (index, term) in terms.iter().enumerate() {
        if *term > most {
            (largest, most) = (index, *term);
        }
    }
    Ok(Budget { combined, expanded: 2.0 * combined, largest, cited: Cited::seen(JCGM_100) })
}

/// A count of readings as a number; there are a thousand at most.
fn count(readings: usize) -> f64 {
    u32::try_from(readings).map_or(f64::MAX, f64::from)
}
