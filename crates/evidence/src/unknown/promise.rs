//! The hardness to be expected of the quench, and the bath for it.

use super::bar::Bar;
use super::cell::Cell;
use super::clue::Bath;
use super::family::{Heat, Kind};

/// What a part is drawn back at least from its hardness as quenched, in HRC.
///
/// # Source
/// Common practice, no source.
pub const DRAWN_BACK: f64 = 5.0;

/// A quench that gains less than this over oil is not worth the risk of a crack, in HRC.
///
/// # Source
/// Common practice, no source.
const WORTH_WATER: f64 = 5.0;

/// A bar that stays below this in water does not harden, in HRC.
///
/// # Source
/// Common practice, no source: a good file still cuts it as if it were soft.
const HARDENS_FROM: f64 = 40.0;

/// Hardness as quenched of a 6 mm coupon from a cherry red, in HRC: the lower end, the middle and the upper end of
/// 95 %, from 10 to 75.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Promise {
    /// In oil.
    pub oil: [f64; 3],
    /// In water.
    pub water: [f64; 3],
}

/// What to quench parts of the bar in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quench {
    /// Not known yet: oil first, because water cracks what oil would harden.
    OilFirst,
    /// Oil is enough.
    Oil,
    /// Water, because oil stays well below it.
    Water,
    /// From the heat of its own family, which has to be known first.
    OwnHeat,
    /// It does not harden by a quench.
    Neither,
}

impl Quench {
    /// The word used in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::OilFirst => "oil_first",
            Self::Oil => "oil",
            Self::Water => "water",
            Self::OwnHeat => "own_heat",
            Self::Neither => "neither",
        }
    }
}

pub(super) fn promise(cells: &[Cell], weights: &[f64]) -> Promise {
    let in_bath = |bath: Bath| {
        let above = |limit: f64| -> f64 {
            cells
                .iter()
                .zip(weights)
                .map(|(cell, weight)| weight * cell.above(bath, limit, 0.0))
                .sum()
        };
        [0.975, 0.5, 0.025].map(|share| {
            // The chance of more falls with the limit.
            let (mut low, mut high) = (10.0, 75.0);
            for _ in 0..20 {
                let mid = f64::midpoint(low, high);
                if above(mid) > share { low = mid } else { high = mid }
            }
            f64::midpoint(low, high)
        })
    };
    Promise { oil: in_bath(Bath::Oil), water: in_bath(Bath::Water) }
}

pub(super) fn quench(bar: &Bar, families: &[(Kind, f64)], promise: &Promise) -> Quench {
    let chance = |heat: Heat| -> f64 {
        families.iter().filter(|found| found.0.heat() == heat).map(|found| found.1).sum()
    };
    if chance(Heat::Own) > 0.5 {
        return Quench::OwnHeat;
    }
    if chance(Heat::None) > 0.5 {
        return Quench::Neither;
    }
    let [_, water, _] = promise.water;
    let Some(oil) = bar.coupon(Bath::Oil) else {
        let soft = bar.coupon(Bath::Water).is_some() && water < HARDENS_FROM;
        return if soft { Quench::Neither } else { Quench::OilFirst };
    };
    if water < HARDENS_FROM {
        return Quench::Neither;
    }
    // An open end speaks for the side that it lies on.
    let shown = match (oil.low(), oil.high()) {
        (Some(low), Some(high)) => f64::midpoint(low, high),
        (Some(low), None) => low.max(water),
        (None, Some(high)) => high,
        (None, None) => water,
    };
    if water - shown >= WORTH_WATER { Quench::Water } else { Quench::Oil }
}
