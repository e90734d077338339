//! The hardness that a further temper leaves, and the chances that go with it.

use alloc::vec::Vec;

use biteband_steel::temper::{Predicted, Temper};
use libm::sqrt;

use crate::belief::Belief;
use crate::model::normal_below;
use crate::target::{Odds, Target};

/// The hardness after a further temper, in HRC: normal about a middle that moves with the hardness of today.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Softened {
    /// The middle for a part that is now at [`Self::from`].
    pub mean: f64,
    /// The hardness that the steel's curve gives for today.
    pub from: f64,
    /// How much of a part's difference from the curve today is left after the temper, 0 to 1.
    pub kept: f64,
    /// Standard deviation.
    pub sd: f64,
}

impl Softened {
    fn middle(&self, hrc: f64) -> f64 {
        self.mean + self.kept * (hrc - self.from)
    }

    /// What a part is left at that has so many HRC today, with this standard deviation.
    pub(super) fn leaves(&self, (hrc, sd): (f64, f64)) -> Predicted {
        let sd = self.kept * sd;
        Predicted::normal(self.middle(hrc), sqrt(sd * sd + self.sd * self.sd))
    }
}

/// What a further temper does to a steel.
pub trait Softening {
    /// What one more temper leaves, after all that were done; `None` outside what is known.
    fn after(&self, temper: Temper) -> Option<Softened>;

    /// The coldest and the hottest temper that is known, in °C.
    fn range(&self) -> (f64, f64);

    /// Tempers in °C that make the steel brittle, if there are any.
    fn brittle(&self) -> Option<(f64, f64)> {
        None
    }
}

/// A belief as parts of equal chance; every sum over a belief goes over these.
#[derive(Clone, Debug)]
pub(super) struct Parts(Vec<f64>);

/// So many that the chances of a sum are good to about 0.01.
const PARTS: u32 = 48;

impl Parts {
    pub(super) fn of(belief: &Belief) -> Self {
        let count = f64::from(PARTS);
        Self((0..PARTS).map(|part| belief.quantile((f64::from(part) + 0.5) / count)).collect())
    }

    /// The hardness of each part, in HRC.
    pub(super) fn values(&self) -> &[f64] {
        &self.0
    }

    /// Their middle as the belief stands now. A temper is barred by it also where a reading to come is weighed: a bar that
    /// moved with every possible reading would make the worth jump.
    pub(super) fn median(&self) -> f64 {
        self.0.get(self.0.len() / 2).copied().unwrap_or_default()
    }

    /// The chances after a temper, how far the part is to be expected above the target, in HRC, and the hardness to expect. No temper makes a part harder here: where the curve rises by secondary hardening,
    /// its middle says so, and that alone is followed.
    pub(super) fn after(
        &self,
        target: Target,
        weights: &[f64],
        softened: &Softened,
    ) -> (Odds, f64, Predicted) {
        let rises = softened.mean > softened.from;
        let mut sums = [0.0; 3];
        let (mut whole, mut above, mut first, mut second) = (0.0, 0.0, 0.0, 0.0);
        for (&hrc, &weight) in self.0.iter().zip(weights) {
            let middle = if rises { softened.middle(hrc) } else { softened.middle(hrc).min(hrc) };
            let under = target.low().map_or(0.0, |low| {
                if hrc < low && !rises { 1.0 } else { normal_below(low, middle, softened.sd) }
            });
            let over = target.high().map_or(0.0, |high| {
                if hrc <= high && !rises {
                    0.0
                } else {
                    1.0 - normal_below(high, middle, softened.sd)
                }
            });
            let over = over.min(1.0 - under);
            above += weight * target.high().map_or(0.0, |high| excess(middle - high, softened.sd));
            for (sum, chance) in sums.iter_mut().zip([under, 1.0 - under - over, over]) {
                *sum += weight * chance;
            }
            whole += weight;
            first += weight * middle;
            second += weight * middle * middle;
        }
        let whole: f64 = whole.max(1e-12);
        let mean = first / whole;
        let sd = sqrt((second / whole - mean * mean).max(0.0) + softened.sd * softened.sd);
        (odds(sums.map(|sum| sum / whole)), above / whole, Predicted::normal(mean, sd))
    }

    /// The chances as the part is.
    pub(super) fn now(&self, target: Target, weights: &[f64]) -> Odds {
        let mut sums = [0.0; 3];
        let mut whole = 0.0;
        for (&hrc, &weight) in self.0.iter().zip(weights) {
            // Neighbouring parts of the belief are half a point apart; a limit is blurred by as much.
            let under = target.low().map_or(0.0, |low| normal_below(low, hrc, BLUR));
            let over = target.high().map_or(0.0, |high| 1.0 - normal_below(high, hrc, BLUR));
            let over = over.min(1.0 - under);
            for (sum, chance) in sums.iter_mut().zip([under, 1.0 - under - over, over]) {
                *sum += weight * chance;
            }
            whole += weight;
        }
        odds(sums.map(|sum| sum / whole.max(1e-12)))
    }
}

/// The mean of what a normal law has above nought.
fn excess(mean: f64, sd: f64) -> f64 {
    let z = mean / sd.max(1e-6);
    let density = libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * core::f64::consts::PI);
    mean * (1.0 - normal_below(0.0, mean, sd)) + sd * density
}

/// Width over which a limit is blurred where single parts of a belief are held against it, in HRC.
const BLUR: f64 = 0.15;

pub(super) fn odds([under, inside, over]: [f64; 3]) -> Odds {
    Odds::new(under, inside, over)
}

/// The middle of several chances, each with its weight.
pub(super) fn mixed(all: &[(f64, Odds)]) -> Odds {
    let whole: f64 = all.iter().map(|(weight, _)| weight).sum();
    let mean = |read: fn(&Odds) -> f64| {
        all.iter().map(|(weight, odds)| weight * read(odds)).sum::<f64>() / whole.max(1e-12)
    };
    Odds::new(mean(Odds::under), mean(Odds::inside), mean(Odds::over))
}
