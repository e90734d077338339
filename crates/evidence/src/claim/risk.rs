//! What a rule costs in the long run.

use biteband_quantity::confined;

use super::Stated;
use crate::belief::normal_weight;
use crate::model::normal_below;

/// The chances of a part drawn from a process.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Risks {
    /// That it is bad and accepted: the risk of whoever takes it.
    pub consumer: f64,
    /// That it is good and rejected: the risk of whoever made it.
    pub producer: f64,
}

/// Pieces of the integral between two ends; even.
const PIECES: u32 = 2000;

/// The global risks of accepting where the estimate lies inside the acceptance limits.
///
/// # Units
/// All in one unit: `process` gives the density of true values per unit, which vanishes outside `span`; `u` is the
/// standard uncertainty of the estimate. Rounding of the limits is left out.
///
/// # Accuracy
/// Simpson's rule with 2000 pieces on each side of every limit: five figures for smooth laws.
///
/// # Source
/// `jcgm-106`, 9.5.
///
/// # Example
/// ```
/// use biteband_evidence::claim::{Stated, risks};
/// // The resistors of JCGM 106: N(1500, 0.12) ohm within 0.2, accepted within 0.18 with u = 0.04: 1 % and 7 %.
/// let bell = |y: f64| (-0.5 * ((y - 1500.0) / 0.12).powi(2)).exp() / (0.12 * std::f64::consts::TAU.sqrt());
/// let limits = |half: f64| Stated::new(Some(1500.0 - half), Some(1500.0 + half)).unwrap();
/// let found = risks(bell, (1499.0, 1501.0), &limits(0.2), &limits(0.18), 0.04);
/// assert!((found.consumer - 0.01).abs() < 0.005 && (found.producer - 0.07).abs() < 0.005);
/// ```
#[must_use]
pub fn risks(
    process: impl Fn(f64) -> f64,
    span: (f64, f64),
    stated: &Stated,
    accepted: &Stated,
    u: f64,
) -> Risks {
    let taken = |value: f64| {
        let under = accepted.low().map_or(0.0, |low| normal_below(low, value, u));
        let upto = accepted.high().map_or(1.0, |high| normal_below(high, value, u));
        f64::max(upto - under, 0.0)
    };
    let (from, to) = span;
    let low = stated.low().map_or(from, |low| confined(low, from, to));
    let high = stated.high().map_or(to, |high| confined(high, low, to));
    let bad = |value: f64| process(value) * taken(value);
    let lost = |value: f64| process(value) * (1.0 - taken(value));
    Risks {
        consumer: simpson(from, low, bad) + simpson(high, to, bad),
        producer: simpson(low, high, lost),
    }
}

/// The global risks for a normal process whose middle is that of the limits and which just fills them, 19 parts of 20
/// inside; `None` where one side is open.
///
/// # Units
/// As [`risks`].
#[must_use]
pub fn risks_of_filling(stated: &Stated, accepted: &Stated, u: f64) -> Option<Risks> {
    const FILLS: f64 = 1.959_963_984_540_054;
    let (low, high) = stated.low().zip(stated.high())?;
    let (mean, sd) = (0.5 * (low + high), 0.5 * (high - low) / FILLS);
    let height = sd * libm::sqrt(core::f64::consts::TAU);
    let process = |value: f64| normal_weight(value, mean, sd) / height;
    Some(risks(process, (mean - 8.0 * sd, mean + 8.0 * sd), stated, accepted, u))
}

fn simpson(from: f64, to: f64, density: impl Fn(f64) -> f64) -> f64 {
    if to <= from {
        return 0.0;
    }
    let step = (to - from) / f64::from(PIECES);
    let at = |place: u32| density(from + step * f64::from(place));
    let weighed = |place: u32| if place % 2 == 1 { 4.0 * at(place) } else { 2.0 * at(place) };
    let inner: f64 = (1..PIECES).map(weighed).sum();
    (inner + at(0) + at(PIECES)) * step / 3.0
}
