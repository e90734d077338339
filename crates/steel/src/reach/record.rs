//! Quenched bars on record: what single bars of a grade were found to be.
//!
//! One bar cannot tell whether it differs from the method because of its grade or because of its own heat
//! and bath; half of the difference is taken over for other bars of the grade.

use alloc::vec::Vec;

use libm::log;

use super::generated::BARS;
use crate::quenchant::Quenchant;
use crate::section::Place;

/// Share of the difference that is taken over. Ours: leaving one size out and going by the half of its
/// neighbours brings the RMS over 39 readings from 4.1 to 3.4 HRC.
pub const WEIGHT: f64 = 0.5;

/// A long round of one heat, quenched and cut.
#[derive(Debug, PartialEq)]
pub struct Bar {
    pub(super) key: &'static str,
    pub(super) quenchant: Quenchant,
    pub(super) diameter: f64,
    /// At the surface, half radius and centre.
    pub(super) hrc: [f64; 3],
}

impl Bar {
    /// Bars of a grade in this medium, thinnest first.
    pub fn of(key: &str, medium: Quenchant) -> impl Iterator<Item = &'static Self> {
        BARS.iter().filter(move |bar| bar.key == key && bar.quenchant == medium)
    }

    /// Diameter in mm.
    #[must_use]
    pub const fn diameter(&self) -> f64 {
        self.diameter
    }

    /// HRC at the surface, at half radius and at the centre.
    #[must_use]
    pub const fn hardness(&self) -> [f64; 3] {
        self.hrc
    }

    /// HRC of a place; between two places that were read, the mean of both.
    pub(super) const fn at(&self, place: Place) -> f64 {
        let [surface, half, centre] = self.hrc;
        match place {
            Place::Skin => surface,
            Place::ThreeQuarter => f64::midpoint(surface, half),
            Place::Half => half,
            Place::Middle | Place::Bore => centre,
        }
    }
}

/// What a bar on record differs from the method at each of [`Place::SOLID`], in HRC.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Off {
    quenchant: Quenchant,
    diameter: f64,
    hrc: [Option<f64>; 4],
}

/// What every bar of a grade differs from `method`, which says what the method gives for a round in a gently
/// moved bath, as those on record were.
pub(super) fn differences(
    key: &str,
    method: impl Fn(Quenchant, f64) -> [Option<f64>; 4],
) -> Vec<Off> {
    let bars = BARS.iter().filter(|bar| bar.key == key);
    bars.map(|bar| {
        let mut off = method(bar.quenchant, bar.diameter);
        for (off, place) in off.iter_mut().zip(Place::SOLID) {
            *off = off.map(|method| bar.at(place) - method);
        }
        Off { quenchant: bar.quenchant, diameter: bar.diameter, hrc: off }
    })
    .collect()
}

/// By how much a round of `round` mm is to be moved at a place, in HRC: half of what the bars on record
/// differ. Between two bars the difference goes straight with the logarithm of the diameter; outside the bars,
/// by more than the rounding of inches, nothing is moved.
pub(super) fn shift(bars: &[Off], medium: Quenchant, place: Place, round: f64) -> f64 {
    let place = if place == Place::Bore { Place::Middle } else { place };
    let Some(index) = Place::SOLID.iter().position(|one| *one == place) else { return 0.0 };
    let off = |bar: &Off| bar.hrc.get(index).copied().flatten();
    let of_medium = || bars.iter().filter(|bar| bar.quenchant == medium);
    let below = of_medium().rev().find(|bar| bar.diameter <= round * 1.001);
    let above = of_medium().find(|bar| bar.diameter >= round * 0.999);
    let moved = match (below.and_then(off).zip(below), above.and_then(off).zip(above)) {
        (Some((low, below)), Some((high, above))) if above.diameter > below.diameter * 1.01 => {
            let share = log(round / below.diameter) / log(above.diameter / below.diameter);
            low + share.clamp(0.0, 1.0) * (high - low)
        }
        (Some((low, _)), Some(_)) => low,
        _ => 0.0,
    };
    WEIGHT * moved
}
