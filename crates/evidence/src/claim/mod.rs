//! Whether what a paper says agrees with what was measured.
//!
//! [`Stated`] is what the paper says, [`Rule`] how sure one has to be, [`Verdict`] what comes of both.
//! [`Budget`] says what the doubt is made of, [`settled_by_reading`] and its siblings how likely another measurement
//! ends it, [`risks`] what a rule costs in the long run.
//!
//! Nothing here knows a scale: limits, estimates and uncertainties are numbers of one and the same scale, a [`Belief`]
//! holds HRC or whatever its maker wrote on its axis.
//!
//! # Source
//! `jcgm-106`: conformance probability, guard bands, global risks; `jcgm-100`: the combination of variances.

mod budget;
mod risk;
mod settle;

pub use budget::{Budget, FileDoubt, Share, Source};
pub use risk::{Risks, risks, risks_of_filling};
pub use settle::{settled_by_better, settled_by_reading, settled_by_stroke};

use crate::belief::Belief;
use crate::interval::Level;
use crate::model::{normal_below, phi};
use crate::target::Odds;

/// Standard uncertainty of one pass of graded files, in HRC.
///
/// # Source
/// `file-model`: half the central 68 % of the belief after one pass of the trade set by a practised hand.
pub const FILES_PASS: f64 = 2.05;

/// Standard uncertainties in an expanded one, `U = 2u`.
const COVERAGE: f64 = 2.0;

/// Points at which the rounding of a limit is averaged, as many to either side of its middle.
const ROUNDINGS: i32 = 4;

/// The limits that a paper states, with the step to which it rounds them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stated {
    low: Option<f64>,
    high: Option<f64>,
    low_step: f64,
    high_step: f64,
}

impl Stated {
    /// Limits on one side or on both, taken as exact; `None` without a limit, with one that is no number, or where the
    /// lower is not below the upper.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::claim::Stated;
    /// // JCGM 106, 7.4: 13.6 with u = 1.8 against 12.5 to 16.3.
    /// let oil = Stated::new(Some(12.5), Some(16.3)).unwrap();
    /// assert!((oil.odds_normal(13.6, 1.8).inside() - 0.663).abs() < 0.0005);
    /// assert!(Stated::new(Some(16.3), Some(12.5)).is_none());
    /// ```
    #[must_use]
    pub fn new(low: Option<f64>, high: Option<f64>) -> Option<Self> {
        let sound = match (low, high) {
            (Some(low), Some(high)) => low < high && low.is_finite() && high.is_finite(),
            (Some(one), None) | (None, Some(one)) => one.is_finite(),
            (None, None) => false,
        };
        sound.then_some(Self { low, high, low_step: 0.0, high_step: 0.0 })
    }

    /// The same limits as rounded by the paper: each may be off by half of its step, anywhere alike.
    #[must_use]
    pub const fn rounded(mut self, low_step: f64, high_step: f64) -> Self {
        (self.low_step, self.high_step) = (low_step.abs(), high_step.abs());
        self
    }

    /// The lower limit.
    #[must_use]
    pub const fn low(&self) -> Option<f64> {
        self.low
    }

    /// The upper limit.
    #[must_use]
    pub const fn high(&self) -> Option<f64> {
        self.high
    }

    /// The standard uncertainty of the coarser rounding: the step over the root of 12.
    #[must_use]
    pub fn rounding(&self) -> f64 {
        let low = self.low.map_or(0.0, |_| self.low_step);
        let high = self.high.map_or(0.0, |_| self.high_step);
        f64::max(low, high) / libm::sqrt(12.0)
    }

    /// Whether a value lies inside or on a limit.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        self.low.is_none_or(|low| value >= low) && self.high.is_none_or(|high| value <= high)
    }

    /// The limits drawn in by a guard band, out if it is negative; `None` where nothing is left between.
    #[must_use]
    pub fn guarded(&self, guard: f64) -> Option<Self> {
        let drawn = Self::new(self.low.map(|low| low + guard), self.high.map(|high| high - guard))?;
        Some(drawn.rounded(self.low_step, self.high_step))
    }

    /// The chances by a law that tells what lies below a value; rounding is averaged over its step.
    pub fn odds_by(&self, below: impl Fn(f64) -> f64) -> Odds {
        let chance = |limit: f64, step: f64| {
            if step <= 0.0 {
                return below(limit);
            }
            let count = f64::from(2 * ROUNDINGS + 1);
            let at = |place: i32| below(limit + step * f64::from(place) / count);
            (-ROUNDINGS..=ROUNDINGS).map(at).sum::<f64>() / count
        };
        let under = self.low.map_or(0.0, |low| chance(low, self.low_step));
        let over = self.high.map_or(0.0, |high| 1.0 - chance(high, self.high_step));
        // Limits nearer than their rounding may overlap, which no chance survives as such.
        let inside = f64::max(1.0 - under - over, 0.0);
        let whole = under + inside + over;
        Odds::new(under / whole, inside / whole, over / whole)
    }

    /// The chances by a belief.
    pub fn odds(&self, belief: &Belief) -> Odds {
        self.odds_by(|value| belief.probability_below(value))
    }

    /// The chances by an estimate and its standard uncertainty, both in the unit of the limits.
    ///
    /// # Source
    /// `jcgm-106`, 7.
    pub fn odds_normal(&self, estimate: f64, u: f64) -> Odds {
        self.odds_by(|value| normal_below(value, estimate, u))
    }

    /// The best chance of being found inside with a standard uncertainty: of an estimate in the middle, 1 where one
    /// side is open.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::claim::Stated;
    /// let window = Stated::new(Some(58.0), Some(62.0)).unwrap();
    /// assert!((window.best(1.0) - 0.954).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn best(&self, u: f64) -> f64 {
        match (self.low, self.high) {
            (Some(low), Some(high)) => self.odds_normal(0.5 * (low + high), u).inside(),
            _ => 1.0,
        }
    }

    /// The measurement capability index: the window over 4 standard uncertainties; `None` where one side is open.
    ///
    /// # Source
    /// `jcgm-106`, 7.6.
    #[must_use]
    pub fn capability(&self, u: f64) -> Option<f64> {
        self.low.zip(self.high).map(|(low, high)| (high - low) / (4.0 * u))
    }
}

/// The standard normal number below which a chance lies, by halving; from -9 to 9.
///
/// # Example
/// ```
/// use biteband_evidence::claim::normal_quantile;
/// assert!((normal_quantile(0.95) - 1.644_853_627).abs() < 1e-8);
/// ```
#[must_use]
pub fn normal_quantile(chance: f64) -> f64 {
    let (mut low, mut high) = (-9.0, 9.0);
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if phi(middle) < chance {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// What was measured as one number.
///
/// For a normal law these are its mean and standard deviation; a chance of a slip far away moves neither.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// The median.
    pub value: f64,
    /// Half of the central 68.3 %.
    pub u: f64,
}

impl Estimate {
    /// The estimate of a belief.
    #[must_use]
    pub fn of(belief: &Belief) -> Self {
        const ONE: f64 = 0.841_344_746_068_542_9;
        let half = 0.5 * (belief.quantile(ONE) - belief.quantile(1.0 - ONE));
        Self { value: belief.median(), u: half }
    }
}

/// When a part counts as agreeing with its paper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rule {
    /// When the estimate lies inside; the risk is shared.
    Simple,
    /// When the chance of lying inside, or outside, reaches a level.
    Guarded(Level),
    /// When the estimate lies inside, or outside, by so many times the expanded uncertainty `U = 2u`.
    Band(f64),
}

/// What comes of a claim.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// What was measured bears the paper out.
    Agrees,
    /// What was measured contradicts the paper.
    Disagrees,
    /// Neither.
    NotProved,
}

impl Verdict {
    /// The word in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Agrees => "agrees",
            Self::Disagrees => "disagrees",
            Self::NotProved => "not proved",
        }
    }
}

impl Default for Rule {
    /// At a level of 95 %.
    fn default() -> Self {
        Self::Guarded(Level::P95)
    }
}

impl Rule {
    /// The width of the guard band on each side, in the unit of `u`; of a level that of one limit alone.
    ///
    /// # Source
    /// `jcgm-106`, 8.3; the factors of [`Rule::Band`] in use stand in `ilac-g8`.
    #[must_use]
    pub fn guard(&self, u: f64) -> f64 {
        match self {
            Self::Simple => 0.0,
            Self::Guarded(level) => normal_quantile(level.get()) * u,
            Self::Band(ratio) => ratio * COVERAGE * u,
        }
    }

    /// The chance that a part just accepted is bad, at one limit.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::claim::Rule;
    /// assert!((Rule::Band(1.0).worst_risk() - 0.02275).abs() < 1e-5);
    /// assert!((Rule::Simple.worst_risk() - 0.5).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn worst_risk(&self) -> f64 {
        phi(-self.guard(1.0))
    }

    /// The verdict about chances and the estimate behind them.
    #[must_use]
    pub fn judge(&self, stated: &Stated, odds: Odds, estimate: Estimate) -> Verdict {
        let Estimate { value, u } = estimate;
        match self {
            Self::Guarded(level) if odds.inside() >= level.get() => Verdict::Agrees,
            Self::Guarded(level) if 1.0 - odds.inside() >= level.get() => Verdict::Disagrees,
            Self::Guarded(_) => Verdict::NotProved,
            Self::Simple | Self::Band(_) => {
                let guard = self.guard(u);
                if stated.guarded(guard).is_some_and(|limits| limits.holds(value)) {
                    Verdict::Agrees
                } else if stated.guarded(-guard).is_some_and(|limits| limits.holds(value)) {
                    Verdict::NotProved
                } else {
                    Verdict::Disagrees
                }
            }
        }
    }

    /// The verdict about a belief.
    #[must_use]
    pub fn judge_belief(&self, stated: &Stated, belief: &Belief) -> Verdict {
        self.judge(stated, stated.odds(belief), Estimate::of(belief))
    }

    /// The verdict about an estimate with its standard uncertainty.
    #[must_use]
    pub fn judge_normal(&self, stated: &Stated, estimate: Estimate) -> Verdict {
        self.judge(stated, stated.odds_normal(estimate.value, estimate.u), estimate)
    }
}
