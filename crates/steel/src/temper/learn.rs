//! Learning from own results: how far this heat and this oven are off what is expected.

use alloc::vec::Vec;
use core::fmt;

use libm::{exp, sqrt};

use super::cholesky::Cholesky;

/// Most results that are taken: more would be slow, and the newest hundreds say it all.
const MOST: usize = 200;

/// How results of one steel scatter about what is expected of it, and hang together. In HRC where nothing else is
/// said.
///
/// The residual of a heat is one number for the whole heat, a part that drifts with temperature, and a part that
/// grows above 450 °C; a single result scatters about that.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Standard deviation of what is the same at every temperature.
    pub level: f64,
    /// Standard deviation of what drifts with temperature.
    pub drift: f64,
    /// Over how many K the drift forgets, as the standard deviation of a bell.
    pub reach: f64,
    /// Standard deviation of what grows by every 100 K above 450 °C.
    pub hot: f64,
    /// Standard deviation of a single result about its heat.
    pub scatter: f64,
}

impl Spread {
    /// Covariance of a heat's residuals at two temperatures in °C, without the scatter of single results.
    #[must_use]
    pub fn covariance(&self, a: f64, b: f64) -> f64 {
        let apart = (a - b) / self.reach;
        let above = |celsius: f64| (celsius - 450.0).max(0.0) / 100.0;
        self.level * self.level
            + self.drift * self.drift * exp(-0.5 * apart * apart)
            + self.hot * self.hot * above(a) * above(b)
    }

    /// Standard deviation of a single result at a temperature in °C.
    #[must_use]
    pub fn sd(&self, celsius: f64) -> f64 {
        sqrt(self.covariance(celsius, celsius) + self.scatter * self.scatter)
    }
}

/// What is expected of tempers, from a regression or from a tabulated curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// The hottest temper, in °C.
    pub celsius: f64,
    /// The middle of the expectation, in HRC.
    pub hrc: f64,
    /// How it changes when the oven is hotter by one K, in HRC per K.
    pub slope: f64,
    /// Standard deviation from what is not known of the composition, in HRC: the same sign for the whole heat.
    pub composition_sd: f64,
}

impl Point {
    /// Standard deviation of a single result in an oven without error, in HRC.
    #[must_use]
    pub fn sd(&self, spread: &Spread) -> f64 {
        let alone = spread.sd(self.celsius);
        sqrt(alone * alone + self.composition_sd * self.composition_sd)
    }
}

/// What is known of an oven before its results: by how many K it is hotter than it says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oven {
    /// The middle, in K; positive when the oven is hotter than it says.
    pub mean_k: f64,
    /// Standard deviation, in K.
    pub sd_k: f64,
}

impl Oven {
    /// A kitchen oven that nobody checked: such ovens were found from 17 K below to 22 K above what they said.
    ///
    /// Source: `data/methods.csv`, `biteband-temper`.
    pub const UNCHECKED: Self = Self { mean_k: 0.0, sd_k: 12.0 };
}

/// A hardness that was measured after tempering.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OwnResult {
    /// What was expected of the tempers as the oven was set.
    pub expected: Point,
    /// As measured, in HRC.
    pub hrc: f64,
    /// Standard deviation of the measurement, in HRC.
    pub sd: f64,
    /// Which heat, counted from nought.
    pub heat: usize,
    /// Which oven, counted from nought.
    pub oven: usize,
}

/// Why nothing can be learned.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LearnError {
    /// A result, a spread or an oven with something that is no number, or a negative standard deviation.
    NoNumber,
    /// A result names a heat or an oven that is not there.
    Unknown {
        /// Which result, counted from nought.
        result: usize,
    },
    /// More results than are taken.
    TooMany {
        /// As given.
        given: usize,
        /// Most.
        most: usize,
    },
    /// The results contradict each other beyond calculation: nothing scatters at all.
    Singular,
}

impl LearnError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoNumber => "temper.learn_no_number",
            Self::Unknown { .. } => "temper.learn_unknown",
            Self::TooMany { .. } => "temper.learn_too_many",
            Self::Singular => "temper.learn_singular",
        }
    }
}

impl fmt::Display for LearnError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoNumber => f.write_str("a result needs numbers, and no deviation below nought"),
            Self::Unknown { result } => {
                write!(f, "result {} belongs to a heat or an oven that is not known", result + 1)
            }
            Self::TooMany { given, most } => {
                write!(
                    f,
                    "{given} results are more than the {most} that are taken; leave out the oldest"
                )
            }
            Self::Singular => f.write_str("results without any scatter cannot be weighed"),
        }
    }
}

impl core::error::Error for LearnError {}

/// A middle and a standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Normal {
    /// The middle.
    pub mean: f64,
    /// The standard deviation.
    pub sd: f64,
}

/// What own results say about heats and ovens.
///
/// Residuals of heats, errors of ovens and measurements are taken as normal and independent of each other; an oven
/// acts through the slope of the expectation. Where the data cannot tell heat from oven, the widths known beforehand
/// divide the difference.
///
/// # Source
/// The normal law, conditioned on the results; the spreads of heats are fitted to steels that were left out, see
/// [`Regression::spread`](super::Regression::spread).
///
/// # Example
/// ```
/// use biteband_steel::temper::{Learned, Oven, OwnResult, Point, Spread};
/// let spread = Spread { level: 1.0, drift: 0.0, reach: 100.0, hot: 0.0, scatter: 1.0 };
/// let at = Point { celsius: 300.0, hrc: 50.0, slope: -0.03, composition_sd: 0.0 };
/// let exact = Oven { mean_k: 0.0, sd_k: 0.0 };
/// let result = OwnResult { expected: at, hrc: 52.0, sd: 0.0, heat: 0, oven: 0 };
/// let learned = Learned::new(&[spread], &[exact], &[result])?;
/// // Heat and scatter are equally wide, so that half of the two points is the heat's.
/// let heat = learned.heat(0, &at).ok_or("no heat")?;
/// assert!((heat.mean - 1.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Learned {
    heats: Vec<Spread>,
    ovens: Vec<Oven>,
    results: Vec<OwnResult>,
    root: Cholesky,
    /// Differences from the expectation, whitened.
    white: Vec<f64>,
}

fn sound(results: &[OwnResult], heats: &[Spread], ovens: &[Oven]) -> bool {
    let width = |sd: f64| sd.is_finite() && sd >= 0.0;
    results.iter().all(|one| {
        let Point { celsius, hrc, slope, composition_sd } = one.expected;
        [celsius, hrc, slope, one.hrc].into_iter().all(f64::is_finite)
            && width(one.sd)
            && width(composition_sd)
    }) && heats.iter().all(|spread| {
        let widths = [spread.level, spread.drift, spread.hot, spread.scatter];
        widths.into_iter().all(width) && spread.reach.is_finite() && spread.reach > 0.0
    }) && ovens.iter().all(|oven| oven.mean_k.is_finite() && width(oven.sd_k))
}

impl Learned {
    /// Weighs results of one or more heats in one or more ovens.
    ///
    /// # Errors
    /// [`LearnError`]: something that is no number, a heat or an oven that is not there, more than 200 results, or
    /// results that do not scatter at all.
    pub fn new(
        heats: &[Spread],
        ovens: &[Oven],
        results: &[OwnResult],
    ) -> Result<Self, LearnError> {
        if results.len() > MOST {
            return Err(LearnError::TooMany { given: results.len(), most: MOST });
        }
        if !sound(results, heats, ovens) {
            return Err(LearnError::NoNumber);
        }
        let stray = |one: &OwnResult| one.heat >= heats.len() || one.oven >= ovens.len();
        if let Some(result) = results.iter().position(stray) {
            return Err(LearnError::Unknown { result });
        }
        let mut made = Self {
            heats: heats.to_vec(),
            ovens: ovens.to_vec(),
            results: results.to_vec(),
            root: Cholesky::default(),
            white: Vec::new(),
        };
        let rows: Vec<Vec<f64>> = (0_usize..)
            .zip(results)
            .map(|(row, one)| {
                let mut covariances = made.covariances(Some((one.heat, &one.expected)), {
                    Some((one.oven, one.expected.slope))
                });
                if let Some(own) = covariances.get_mut(row) {
                    let scatter = made.heats.get(one.heat).map_or(0.0, |heat| heat.scatter);
                    *own += scatter * scatter + one.sd * one.sd;
                }
                covariances
            })
            .collect();
        made.root = Cholesky::new(&rows).ok_or(LearnError::Singular)?;
        let off: Vec<f64> = results
            .iter()
            .map(|one| {
                let oven = ovens.get(one.oven).map_or(0.0, |oven| oven.mean_k);
                one.hrc - one.expected.hrc - one.expected.slope * oven
            })
            .collect();
        made.white = made.root.whiten(&off);
        Ok(made)
    }

    /// Covariance of every result with a heat at a point, with an oven that acts through a slope, or with both.
    fn covariances(&self, heat: Option<(usize, &Point)>, oven: Option<(usize, f64)>) -> Vec<f64> {
        let of_heat = |one: &OwnResult| match heat {
            Some((heat, at)) if heat == one.heat => self.heat_covariance(heat, at, &one.expected),
            _ => 0.0,
        };
        let of_oven = |one: &OwnResult| match oven {
            Some((oven, slope)) if oven == one.oven => {
                slope * one.expected.slope * self.oven_variance(oven)
            }
            _ => 0.0,
        };
        self.results.iter().map(|one| of_heat(one) + of_oven(one)).collect()
    }

    fn heat_covariance(&self, heat: usize, a: &Point, b: &Point) -> f64 {
        let spread = self.heats.get(heat);
        spread.map_or(0.0, |spread| spread.covariance(a.celsius, b.celsius))
            + a.composition_sd * b.composition_sd
    }

    fn oven_variance(&self, oven: usize) -> f64 {
        self.ovens.get(oven).map_or(0.0, |oven| oven.sd_k * oven.sd_k)
    }

    /// The normal law of something, from its variance before the results and its covariances with them.
    fn given(&self, mean: f64, variance: f64, covariances: &[f64]) -> Normal {
        let white = self.root.whiten(covariances);
        let by: f64 = white.iter().zip(&self.white).map(|(a, b)| a * b).sum();
        let known: f64 = white.iter().map(|a| a * a).sum();
        Normal { mean: mean + by, sd: sqrt((variance - known).max(0.0)) }
    }

    /// By how many HRC a heat is harder than expected at a point, without oven, scatter and measurement; `None` for
    /// a heat that is not there.
    #[must_use]
    pub fn heat(&self, heat: usize, at: &Point) -> Option<Normal> {
        self.heats.get(heat)?;
        let covariances = self.covariances(Some((heat, at)), None);
        Some(self.given(0.0, self.heat_covariance(heat, at, at), &covariances))
    }

    /// By how many K an oven is hotter than it says; `None` for an oven that is not there.
    #[must_use]
    pub fn oven(&self, oven: usize) -> Option<Normal> {
        let before = self.ovens.get(oven)?;
        let covariances = self.covariances(None, Some((oven, 1.0)));
        Some(self.given(before.mean_k, self.oven_variance(oven), &covariances))
    }

    /// What is to be added to the expectation of a planned temper in an oven, in HRC, and the standard deviation of a
    /// single result about it; the measurement comes on top. The deviation is never above the one without results.
    /// `None` for a heat or an oven that is not there.
    #[must_use]
    pub fn plan(&self, heat: usize, oven: usize, at: &Point) -> Option<Normal> {
        let (spread, before) = (self.heats.get(heat)?, self.ovens.get(oven)?);
        let covariances = self.covariances(Some((heat, at)), Some((oven, at.slope)));
        let variance = self.heat_covariance(heat, at, at)
            + at.slope * at.slope * self.oven_variance(oven)
            + spread.scatter * spread.scatter;
        Some(self.given(at.slope * before.mean_k, variance, &covariances))
    }
}
