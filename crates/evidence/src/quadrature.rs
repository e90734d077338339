//! Sums in place of integrals, on the lattice of the belief grid.
//!
//! Every bias is normal and every integrand is smooth on the scale of a stroke, so the plain trapezoid rule with nodes on multiples of the grid step
//! converges faster than any power: with a spacing `h` and a standard deviation `s` its relative error is about `exp(-2 pi^2 s^2 / h^2)`.
//! A Gauss-Hermite rule has fewer nodes, but they fall between the points of the lattice; here every latent margin meets the lattice of its file, so
//! that chances are computed once per lattice point and looked up ever after.

use alloc::vec::Vec;

use libm::{ceil, exp, fabs, floor, sqrt};

use crate::conditions::Shift;

/// The step of the belief grid, in HRC.
pub(crate) const STEP: f64 = 0.25;

/// How far a normal weight is followed, in standard deviations; 7e-6 of it lies beyond.
const REACH: f64 = 4.5;

/// The whole number nearest below a value that is known to be small.
#[expect(clippy::cast_possible_truncation, reason = "grid places stay far below 2^31")]
pub(crate) fn whole_below(value: f64) -> i32 {
    floor(value) as i32
}

/// The whole number nearest above a value that is known to be small.
#[expect(clippy::cast_possible_truncation, reason = "grid places stay far below 2^31")]
pub(crate) fn whole_above(value: f64) -> i32 {
    ceil(value) as i32
}

/// The number of places from `first` up to and including `last`, 0 if they are the wrong way round.
pub(crate) fn places(first: i32, last: i32) -> usize {
    usize::try_from(last - first + 1).unwrap_or(0)
}

/// A stretch of the lattice of multiples of the step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Axis {
    pub(crate) first: i32,
    pub(crate) last: i32,
}

impl Axis {
    /// The shortest stretch that holds both limits, in HRC.
    pub(crate) fn spanning(low: f64, high: f64) -> Self {
        Self { first: whole_below(low / STEP), last: whole_above(high / STEP) }
    }

    pub(crate) fn len(self) -> usize {
        places(self.first, self.last)
    }

    pub(crate) fn low(self) -> f64 {
        f64::from(self.first) * STEP
    }

    pub(crate) fn high(self) -> f64 {
        f64::from(self.last) * STEP
    }

    /// The hardness at a place counted from the low end, in HRC.
    pub(crate) fn value(self, place: usize) -> f64 {
        f64::from(self.first + i32::try_from(place).unwrap_or(0)) * STEP
    }

    pub(crate) fn values(self) -> impl Iterator<Item = f64> {
        (self.first..=self.last).map(|place| f64::from(place) * STEP)
    }
}

/// Weights on neighbouring places of the lattice; they add to 1.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Weights {
    pub(crate) first: i32,
    pub(crate) weights: Vec<f64>,
}

impl Weights {
    /// The last place that carries a weight.
    pub(crate) fn last(&self) -> i32 {
        let more = i32::try_from(self.weights.len()).unwrap_or(1);
        self.first + more - 1
    }

    /// The weights of a mixture of normal distributions, each widened by `extra` variance.
    pub(crate) fn mixture(shifts: &[Shift], extra: f64) -> Self {
        let reach = |shift: &Shift| REACH * sqrt(shift.variance + extra);
        let low = shifts.iter().map(|s| s.mean - reach(s)).fold(f64::INFINITY, f64::min);
        let high = shifts.iter().map(|s| s.mean + reach(s)).fold(f64::NEG_INFINITY, f64::max);
        let axis = Axis::spanning(low, high);
        let mut weights = alloc::vec![0.0; axis.len()];
        for shift in shifts {
            let variance = shift.variance + extra;
            let part: Vec<f64> = axis.values().map(|b| bell(b - shift.mean, variance)).collect();
            let total: f64 = part.iter().sum();
            for (weight, value) in weights.iter_mut().zip(&part) {
                *weight += shift.weight * value / total;
            }
        }
        Self { first: axis.first, weights }
    }

    /// The weights of one normal distribution about zero.
    pub(crate) fn normal(sd: f64) -> Self {
        Self::mixture(&[Shift { weight: 1.0, mean: 0.0, variance: sd * sd }], 0.0)
    }

    /// Places and weights, softest first.
    pub(crate) fn iter(&self) -> impl Iterator<Item = (i32, f64)> + Clone + '_ {
        (self.first..).zip(self.weights.iter().copied())
    }
}

/// The normal density up to its constant; without variance everything lies at zero.
fn bell(distance: f64, variance: f64) -> f64 {
    if variance < 1e-9 {
        return if fabs(distance) < STEP / 2.0 { 1.0 } else { 0.0 };
    }
    exp(-0.5 * distance * distance / variance)
}

/// Nodes of a normal distribution about zero, spaced by the greatest multiple of the step that is at most `spacing`; the weights add to 1.
pub(crate) fn spaced(sd: f64, spacing: f64) -> Vec<(i32, f64)> {
    let stride = whole_below(spacing / STEP).max(1);
    let count = whole_below(REACH * sd / (STEP * f64::from(stride))).max(0);
    let mut nodes: Vec<(i32, f64)> = (-count..=count)
        .map(|n| {
            let place = n * stride;
            (place, bell(f64::from(place) * STEP, sd * sd))
        })
        .collect();
    let total: f64 = nodes.iter().map(|(_, weight)| weight).sum();
    for (_, weight) in &mut nodes {
        *weight /= total;
    }
    nodes
}

/// A point of the rule for several spots: which of the three nodes each spot has, and the weight of the point.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Patch {
    pub(crate) nodes: Vec<usize>,
    pub(crate) weight: f64,
}

/// The three nodes of a spot, in standard deviations: the nodes of Gauss-Hermite's rule of three points.
pub(crate) const SPOT_NODES: [f64; 3] = [-1.732_050_807_568_877_2, 0.0, 1.732_050_807_568_877_2];

/// The rule for the biases of several spots, exact for every polynomial of degree 5.
///
/// Up to three spots take all products of the rule of three points (9 and 27 points).
/// Four spots take the rule of the same nodes in which two of the four are moved at a time (25 points instead of 81).
///
/// # Source
/// Stroud, Approximate Calculation of Multiple Integrals, 1971, rule of degree 5 for the normal weight with `2 n^2 + 1` points, whose axis points
/// vanish for `n = 4`; from memory, its moments are checked by a test.
pub(crate) fn patches(spots: usize) -> Vec<Patch> {
    const CENTRE: usize = 1;
    if spots < 2 {
        return alloc::vec![Patch { nodes: alloc::vec![CENTRE], weight: 1.0 }];
    }
    if spots == 4 {
        let mut rule = alloc::vec![Patch { nodes: alloc::vec![CENTRE; 4], weight: 1.0 / 3.0 }];
        for one in 0..4 {
            for other in (one + 1)..4 {
                for (a, b) in [(0, 0), (0, 2), (2, 0), (2, 2)] {
                    let nodes = (0..4)
                        .map(|spot| {
                            if spot == one {
                                a
                            } else if spot == other {
                                b
                            } else {
                                CENTRE
                            }
                        })
                        .collect();
                    rule.push(Patch { nodes, weight: 1.0 / 36.0 });
                }
            }
        }
        return rule;
    }
    let mut rule = alloc::vec![Patch { nodes: Vec::new(), weight: 1.0 }];
    for _ in 0..spots {
        let mut wider = Vec::new();
        for patch in &rule {
            for (node, weight) in [(0, 1.0 / 6.0), (1, 2.0 / 3.0), (2, 1.0 / 6.0)] {
                let mut nodes = patch.nodes.clone();
                nodes.push(node);
                wider.push(Patch { nodes, weight: patch.weight * weight });
            }
        }
        rule = wider;
    }
    rule
}

/// A distance on the lattice that is known not to be negative.
pub(crate) fn offset(distance: i32) -> usize {
    usize::try_from(distance).unwrap_or(0)
}

/// Multiplies one function into another, place by place.
pub(crate) fn multiply(product: &mut [f64], factor: &[f64]) {
    for (value, more) in product.iter_mut().zip(factor) {
        *value *= more;
    }
}

/// Adds stretches of `source` to `sum`, place by place: for each term the stretch that begins at its start, times its factor.
///
/// Four terms are added in one go, because reading and writing `sum` costs as much as the arithmetic.
pub(crate) fn add_stretches(sum: &mut [f64], source: &[f64], terms: &[(i32, f64)]) {
    let len = sum.len();
    let stretch = |start: i32| {
        let from = usize::try_from(start).ok()?;
        source.get(from..from + len)
    };
    for four in terms.chunks(4) {
        if let &[(a, fa), (b, fb), (c, fc), (d, fd)] = four
            && let (Some(a), Some(b), Some(c), Some(d)) =
                (stretch(a), stretch(b), stretch(c), stretch(d))
        {
            for ((((target, a), b), c), d) in sum.iter_mut().zip(a).zip(b).zip(c).zip(d) {
                *target += fa * a + fb * b + fc * c + fd * d;
            }
            continue;
        }
        for (start, factor) in four {
            for (target, value) in sum.iter_mut().zip(stretch(*start).unwrap_or_default()) {
                *target += factor * value;
            }
        }
    }
}

/// A whole power by repeated squaring, the same on every machine.
pub(crate) const fn power(base: f64, exponent: u32) -> f64 {
    let (mut result, mut square, mut rest) = (1.0, base, exponent);
    while rest > 0 {
        if rest & 1 == 1 {
            result *= square;
        }
        square *= square;
        rest >>= 1;
    }
    result
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rule_for_spots_keeps_every_moment_up_to_degree_five() {
        for spots in 2..=4 {
            let rule = patches(spots);
            let moment = |powers: &[u32]| -> f64 {
                rule.iter()
                    .map(|patch| {
                        let product: f64 = patch
                            .nodes
                            .iter()
                            .zip(powers)
                            .map(|(node, exponent)| power(SPOT_NODES[*node], *exponent))
                            .product();
                        patch.weight * product
                    })
                    .sum()
            };
            for (powers, expected) in [
                ([0, 0, 0, 0], 1.0),
                ([1, 0, 0, 0], 0.0),
                ([2, 0, 0, 0], 1.0),
                ([1, 1, 0, 0], 0.0),
                ([2, 2, 0, 0], 1.0),
                ([4, 0, 0, 0], 3.0),
                ([3, 1, 0, 0], 0.0),
                ([3, 2, 0, 0], 0.0),
            ] {
                assert!((moment(&powers) - expected).abs() < 1e-12, "{spots} spots, {powers:?}");
            }
        }
    }

    #[test]
    fn lattice_weights_keep_mean_and_variance() {
        for sd in [0.3, 0.5, 0.7, 1.0, 1.5] {
            let weights = Weights::normal(sd);
            let sum: f64 = weights.iter().map(|(_, w)| w).sum();
            let mean: f64 = weights.iter().map(|(b, w)| w * f64::from(b) * STEP).sum();
            let variance: f64 =
                weights.iter().map(|(b, w)| w * f64::from(b) * f64::from(b) * STEP * STEP).sum();
            assert!((sum - 1.0).abs() < 1e-12);
            assert!(mean.abs() < 1e-12);
            assert!((variance / (sd * sd) - 1.0).abs() < 3e-4, "{sd}: {variance}");
        }
    }
}
