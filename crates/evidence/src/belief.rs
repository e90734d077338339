//! A belief over hardness: a density on a grid.

use alloc::vec::Vec;

use biteband_quantity::{confined, sort_by_number};

use libm::{exp, fabs, sqrt};

use crate::error::{Error, What, within};
use crate::interval::{Interval, Level};
use crate::quadrature::{Axis, STEP, offset, whole_below};
use crate::target::{Odds, Target};

/// The least hardness a belief may reach down to, in HRC: ISO 6508-1 ends the scale there.
pub const AXIS_LOW: f64 = 10.0;
/// The greatest hardness a belief may reach up to, in HRC: above every quenched steel.
pub const AXIS_HIGH: f64 = 80.0;

/// A probability density over hardness in HRC, given every 0.25 HRC.
///
/// # Accuracy
/// Against a fine integration of the model, limits of intervals are within 0.003 HRC with one spot and within 0.015 HRC with several, chances within
/// 0.0005 (`tests/reference/file_test`).
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Belief {
    axis: Axis,
    density: Vec<f64>,
    /// The probability of lying below each grid point.
    below: Vec<f64>,
}

impl Belief {
    /// The belief with a density proportional to the weights, unless they are nowhere positive.
    pub(crate) fn from_weights(axis: Axis, mut density: Vec<f64>) -> Result<Self, Error> {
        let highest = density.iter().copied().fold(0.0, f64::max);
        if !(highest > 0.0 && highest.is_finite()) {
            return Err(Error::NothingLeft);
        }
        // The weights are brought near 1 first, so that a sum of very small ones keeps its digits.
        for value in &mut density {
            *value /= highest;
        }
        let mass = trapezoid(&density);
        let mut below = cumulative(&density);
        let whole = below.last().copied().unwrap_or(0.0);
        if !(mass > 0.0 && mass.is_finite() && whole > 0.0) {
            return Err(Error::NothingLeft);
        }
        for (value, chance) in density.iter_mut().zip(&mut below) {
            *value /= mass;
            *chance /= whole;
        }
        Ok(Self { axis, density, below })
    }

    /// A belief in which every hardness between two limits is equally likely.
    ///
    /// # Units
    /// HRC; the limits are widened to the next multiple of 0.25 HRC.
    ///
    /// # Valid for
    /// 10 to 80 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`], [`Error::BeliefUpsideDown`].
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Belief, Level};
    /// let belief = Belief::flat(40.0, 60.0)?;
    /// assert!((belief.interval(Level::P95).low() - 40.5).abs() < 1e-9);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn flat(low: f64, high: f64) -> Result<Self, Error> {
        let axis = span(low, high)?;
        Self::from_weights(axis, alloc::vec![1.0; axis.len()])
    }

    /// A normal belief about a mean, from a tester's reading or from what the steel and the process predict.
    ///
    /// # Units
    /// HRC; it reaches 5 standard deviations to either side, cut off at 10 and 80 HRC.
    ///
    /// # Valid for
    /// A mean of 20 to 72 HRC, a standard deviation of 0.3 to 20 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn normal(mean: f64, sd: f64) -> Result<Self, Error> {
        let mean = within(What::PriorMean, mean, 20.0, 72.0)?;
        let sd = within(What::PriorSd, sd, 0.3, 20.0)?;
        let low = f64::max(mean - 5.0 * sd, AXIS_LOW);
        let high = f64::min(mean + 5.0 * sd, AXIS_HIGH);
        let axis = span(low, high)?;
        Self::from_weights(axis, axis.values().map(|h| normal_weight(h, mean, sd)).collect())
    }

    /// The belief after evidence with the given likelihood.
    ///
    /// # Units
    /// The likelihood takes a hardness in HRC and gives any multiple of the chance of the evidence; what is negative or not a number counts as 0.
    ///
    /// # Errors
    /// [`Error::NothingLeft`] when the evidence excludes every hardness.
    pub fn reweighed(&self, likelihood: impl Fn(f64) -> f64) -> Result<Self, Error> {
        let density =
            self.density().map(|(hrc, density)| density * f64::max(likelihood(hrc), 0.0)).collect();
        Self::from_weights(self.axis, density)
    }

    /// The belief of two independent pieces of evidence, on the stretch of hardness that both speak about.
    ///
    /// # Errors
    /// [`Error::NothingLeft`] when they share no possible hardness.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::Belief;
    /// let both = Belief::normal(50.0, 2.0)?.combined(&Belief::normal(54.0, 2.0)?)?;
    /// assert!((both.mean() - 52.0).abs() < 1e-3);
    /// assert!((both.sd() - 2.0 / 2.0_f64.sqrt()).abs() < 1e-3);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn combined(&self, other: &Self) -> Result<Self, Error> {
        let axis = Axis {
            first: self.axis.first.max(other.axis.first),
            last: self.axis.last.min(other.axis.last),
        };
        let density = self
            .part(axis)
            .zip(other.part(axis))
            .map(|(one, another)| one * another)
            .collect::<Vec<f64>>();
        if density.len() < 2 {
            return Err(Error::NothingLeft);
        }
        Self::from_weights(axis, density)
    }

    fn part(&self, axis: Axis) -> impl Iterator<Item = f64> + '_ {
        let skipped = usize::try_from(axis.first - self.axis.first).unwrap_or(0);
        self.density.iter().copied().skip(skipped).take(axis.len())
    }

    /// The grid: hardness in HRC and density per HRC, softest first, every 0.25 HRC.
    #[must_use]
    pub fn density(&self) -> impl DoubleEndedIterator<Item = (f64, f64)> + '_ {
        let values = self.density.iter().copied().enumerate();
        values.map(|(place, density)| (self.axis.value(place), density))
    }

    /// The softest hardness on the axis, in HRC.
    #[must_use]
    pub fn lowest(&self) -> f64 {
        self.axis.low()
    }

    /// The hardest hardness on the axis, in HRC.
    #[must_use]
    pub fn highest(&self) -> f64 {
        self.axis.high()
    }

    /// The densities at both ends of the axis as fractions of the greatest density.
    pub(crate) fn ends(&self) -> (f64, f64) {
        let most = self.density.iter().copied().fold(0.0, f64::max);
        let low = self.density.first().copied().unwrap_or(0.0);
        let high = self.density.last().copied().unwrap_or(0.0);
        (low / most, high / most)
    }

    /// The softest and hardest hardness whose density is at least a fraction of the greatest, in HRC, between grid points on a straight line.
    pub(crate) fn reach(&self, fraction: f64) -> (f64, f64) {
        let most = self.density.iter().copied().fold(0.0, f64::max);
        let enough = fraction * most;
        let first = |points: &mut dyn Iterator<Item = (f64, f64)>, from: f64| {
            let mut before = None;
            for (hrc, density) in points {
                if density >= enough {
                    return before.map_or(hrc, |(last, less): (f64, f64)| {
                        last + (hrc - last) * (enough - less) / (density - less)
                    });
                }
                before = Some((hrc, density));
            }
            from
        };
        let low = first(&mut self.density(), self.lowest());
        let high = first(&mut self.density().rev(), self.highest());
        (low, high)
    }

    /// The piece that begins at a grid point: the chance below it and the density at both ends, to be joined by a straight line.
    ///
    /// The densities are scaled so that the straight piece holds what the curved one does.
    fn piece(&self, place: usize) -> Option<(f64, f64, f64)> {
        let below = *self.below.get(place)?;
        let mass = self.below.get(place + 1)? - below;
        let (left, right) = (*self.density.get(place)?, *self.density.get(place + 1)?);
        let straight = STEP * 0.5 * (left + right);
        let scale = if straight > 0.0 { mass / straight } else { 0.0 };
        Some((below, left * scale, right * scale))
    }

    /// The hardness below which the part lies with the given probability, in HRC.
    ///
    /// A probability outside 0 to 1 gives the nearer end of the axis.
    #[must_use]
    pub fn quantile(&self, probability: f64) -> f64 {
        if probability.is_nan() || probability <= 0.0 {
            return self.lowest();
        }
        let place = self.below.partition_point(|below| *below < probability).saturating_sub(1);
        let Some((below, left, right)) = self.piece(place) else {
            return self.highest();
        };
        let rest = probability - below;
        // The root of left*t + (right-left)*t^2/(2*STEP) = rest, in the form that does not cancel.
        let slope = (right - left) / STEP;
        let divisor = left + sqrt(f64::max(left * left + 2.0 * slope * rest, 0.0));
        let along = if divisor > 0.0 { 2.0 * rest / divisor } else { STEP };
        self.axis.value(place) + confined(along, 0.0, STEP)
    }

    /// The probability that the part is softer than `hrc`.
    #[must_use]
    pub fn probability_below(&self, hrc: f64) -> f64 {
        if hrc.is_nan() || hrc <= self.lowest() {
            return 0.0;
        }
        if hrc >= self.highest() {
            return 1.0;
        }
        let place = offset(whole_below((hrc - self.lowest()) / STEP));
        let Some((below, left, right)) = self.piece(place) else {
            return 1.0;
        };
        let along = hrc - self.axis.value(place);
        let inside = along * (left + (right - left) * 0.5 * along / STEP);
        f64::min(below + inside, 1.0)
    }

    /// The equal-tailed interval of a level.
    pub fn interval(&self, level: Level) -> Interval {
        let tail = 0.5 * (1.0 - level.get());
        Interval::new(self.quantile(tail), self.quantile(1.0 - tail))
    }

    /// The shortest interval of a level.
    ///
    /// It leaves out what is least likely, on whichever side it lies: a slip of the pen, which the lapse rate admits at every hardness, then does not
    /// stretch the interval to one side as it does between equal tails.
    /// Where a slip explains much of the belief many intervals are equally short; each HRC between the middle and the median therefore counts as
    /// 0.1 HRC of width.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{FileSet, FileTest, Level, Outcome};
    /// let set = FileSet::trade();
    /// let belief = FileTest::new(set.clone())
    ///     .with_stroke(set.find(65.0)?, Outcome::Bite)?
    ///     .with_stroke(set.find(60.0)?, Outcome::Bite)?
    ///     .with_stroke(set.find(55.0)?, Outcome::Skate)?
    ///     .belief()?;
    /// // A slip at the 55 file, with a chance of 0.7 %, would leave everything from 30 to 55 HRC open.
    /// assert!(belief.interval(Level::P95).low() < 43.0);
    /// assert!(belief.shortest(Level::P95).low() > 51.0);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn shortest(&self, level: Level) -> Interval {
        let median = self.median();
        let spare = 1.0 - level.get();
        let from =
            |tail: f64| Interval::new(self.quantile(tail), self.quantile(tail + level.get()));
        let cost = |tail: f64| {
            let found = from(tail);
            found.width() + 0.1 * fabs(0.5 * (found.low() + found.high()) - median)
        };
        // Either end at a grid point is tried first, then the best is refined between its neighbours.
        let ends = self.below.iter().flat_map(|below| [*below, below - level.get()]);
        let mut tails: Vec<f64> = ends.filter(|tail| (0.0..=spare).contains(tail)).collect();
        tails.push(0.0);
        tails.push(spare);
        sort_by_number(&mut tails, |tail| *tail);
        // Most of a far tail is one and the same chance; neighbours this near need no trial of their own.
        tails.dedup_by(|more, less| *more - *less < 1e-4);
        let mut best = (0, f64::INFINITY);
        for (place, tail) in tails.iter().enumerate() {
            let cost = cost(*tail);
            if cost < best.1 {
                best = (place, cost);
            }
        }
        let mut low = tails.get(best.0.saturating_sub(1)).copied().unwrap_or(0.0);
        let mut high = tails.get(best.0 + 1).copied().unwrap_or(spare);
        for _ in 0..20 {
            let third = (high - low) / 3.0;
            if cost(low + third) <= cost(high - third) {
                high -= third;
            } else {
                low += third;
            }
        }
        from(0.5 * (low + high))
    }

    /// The hardness that is as likely too high as too low, in HRC.
    #[must_use]
    pub fn median(&self) -> f64 {
        self.quantile(0.5)
    }

    /// The mean, in HRC.
    #[must_use]
    pub fn mean(&self) -> f64 {
        let middle = 0.5 * (self.lowest() + self.highest());
        let moments: Vec<f64> = self.density().map(|(h, p)| p * (h - middle)).collect();
        middle + trapezoid(&moments)
    }

    /// The standard deviation, in HRC.
    #[must_use]
    pub fn sd(&self) -> f64 {
        let mean = self.mean();
        let moments: Vec<f64> = self.density().map(|(h, p)| p * (h - mean) * (h - mean)).collect();
        sqrt(trapezoid(&moments))
    }

    /// The chances of being under, inside and over a target.
    ///
    /// A side on which the target has no limit has no chance.
    pub fn odds(&self, target: Target) -> Odds {
        let under = target.low().map_or(0.0, |low| self.probability_below(low));
        let not_over = target.high().map_or(1.0, |high| self.probability_below(high));
        Odds::new(under, f64::max(not_over - under, 0.0), 1.0 - f64::max(not_over, under))
    }
}

fn span(low: f64, high: f64) -> Result<Axis, Error> {
    let low = within(What::BeliefLimit, low, AXIS_LOW, AXIS_HIGH)?;
    let high = within(What::BeliefLimit, high, AXIS_LOW, AXIS_HIGH)?;
    if low < high {
        Ok(Axis::spanning(low, high))
    } else {
        Err(Error::BeliefUpsideDown { low, high })
    }
}

/// The normal density up to its constant.
pub(crate) fn normal_weight(hrc: f64, mean: f64, sd: f64) -> f64 {
    let z = (hrc - mean) / sd;
    exp(-0.5 * z * z)
}

/// The integral up to each grid point, through the cubic of the four points around each piece.
///
/// Straight pieces would widen the belief by a variance of `STEP^2 / 6`, which a careful hand with many strokes would notice (0.01 HRC).
fn cumulative(values: &[f64]) -> Vec<f64> {
    let at = |place: usize| values.get(place).copied();
    let mut below = Vec::with_capacity(values.len());
    let mut sum = 0.0;
    below.push(sum);
    for (place, (left, right)) in values.iter().zip(values.iter().skip(1)).enumerate() {
        // At the ends of the axis the missing neighbour continues the piece in a straight line.
        let before = place.checked_sub(1).and_then(at).unwrap_or(2.0 * left - right);
        let after = at(place + 2).unwrap_or(2.0 * right - left);
        let mass = STEP / 24.0 * (13.0 * (left + right) - before - after);
        // Next to a sudden edge the cubic may swing below zero, where a chance can not go.
        sum += f64::max(mass, 0.0);
        below.push(sum);
    }
    below
}

/// The integral over the grid of straight pieces.
pub(crate) fn trapezoid(values: &[f64]) -> f64 {
    let all: f64 = values.iter().sum();
    let ends = values.first().copied().unwrap_or(0.0) + values.last().copied().unwrap_or(0.0);
    STEP * (all - 0.5 * ends)
}
