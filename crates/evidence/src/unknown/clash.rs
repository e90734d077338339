//! Clues that no family explains together.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;
use biteband_steel::keyed;

use super::bar::{Bar, weights};
use super::cell::Cell;
use super::clue::{Bath, Clue, Test};
use super::family::Kind;

/// Below this share of what it has where it fits best, a clue is odd beside the others.
///
/// # Source
/// Our choice.
pub const ODD_BELOW: f64 = 0.05;

keyed! {
    /// What may be behind clues that do not go together.
    Cause {
        /// The coupon was quenched too cold, as the magnet let go, or cooled on the way.
        Cold = "cold",
        /// The coupon lost its carbon in the fire.
        Decarburised = "decarburised",
        /// The coupon came from the skin.
        FromSkin = "from_skin",
        /// The spark came from the skin, or from a wheel with other metal in it.
        SparkOfSkin = "spark_of_skin",
        /// Paint, plating or cold work under the magnet.
        MagnetOnSkin = "magnet_on_skin",
        /// Steam kept the water off the coupon.
        Steam = "steam",
        /// The coupons were mixed up, or the bar is two steels welded.
        TwoSteels = "two_steels",
    }
}

/// Two tests whose answers hardly go together in any family.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Clash {
    /// The cheaper test.
    pub first: Test,
    /// The dearer one.
    pub second: Test,
    /// What the odder of the two is worth beside the rest: 0 to [`ODD_BELOW`].
    pub odds: f64,
    /// What may be behind it, likeliest first.
    pub causes: Vec<Cause>,
}

const fn causes_of(test: Test) -> &'static [Cause] {
    match test {
        Test::Magnet => &[Cause::MagnetOnSkin],
        Test::Spark => &[Cause::SparkOfSkin],
        Test::Found | Test::Skin => &[Cause::FromSkin],
        Test::CouponOil => &[Cause::Cold, Cause::Decarburised, Cause::FromSkin],
        Test::CouponWater => &[Cause::Cold, Cause::Steam, Cause::Decarburised, Cause::FromSkin],
        Test::Snap => &[Cause::Decarburised, Cause::Cold],
    }
}

/// Whether the coupon in oil is plainly softer than the one in water: a slow oil does that to every shallow steel, so
/// however far apart they are, it is no contradiction.
fn is_shallow(bar: &Bar) -> bool {
    let (oil, water) = (bar.coupon(Bath::Oil), bar.coupon(Bath::Water));
    let (oil, water) = (oil.and_then(|span| span.high()), water.and_then(|span| span.low()));
    oil.zip(water).is_some_and(|(oil, water)| oil <= water)
}

/// The clashes, the worst first.
pub(super) fn clashes(bar: &Bar, cells: &[Cell]) -> Vec<Clash> {
    // What fits nothing on the list fits "something else", which would explain any contradiction away.
    let named: Vec<Cell> =
        cells.iter().filter(|cell| cell.family.kind != Kind::Other).copied().collect();
    let counted: Vec<Clue> = bar.clues().iter().filter(|clue| bar.counts(clue)).copied().collect();
    let worth = |clue: &Clue, beside: &dyn Fn(&Clue) -> bool| {
        let others = counted.iter().filter(|other| beside(other));
        let rest = others.fold(Bar::default(), |bar, other| bar.with(*other));
        let chances: Vec<f64> = named.iter().map(|cell| cell.chance(clue, bar.last())).collect();
        let best = chances.iter().copied().fold(0.0, f64::max);
        let shares = weights(&rest, &named);
        shares.iter().zip(&chances).map(|(share, chance)| share * chance).sum::<f64>() / best
    };
    let mut found: Vec<Clash> = Vec::new();
    for clue in &counted {
        let odds = worth(clue, &|other| other != clue);
        if odds >= ODD_BELOW {
            continue;
        }
        // Its counterpart is the one without which it would be the least odd.
        let without = |other: &Clue| worth(clue, &|third| third != clue && third != other);
        let mut others: Vec<(Test, f64)> = counted
            .iter()
            .filter(|other| *other != clue)
            .map(|other| (other.test(), without(other)))
            .collect();
        sort_by_number(&mut others, |(_, worth)| -*worth);
        let Some((other, _)) = others.first() else { continue };
        let (first, second) = (clue.test().min(*other), clue.test().max(*other));
        if second == Test::CouponWater && is_shallow(bar) {
            continue;
        }
        if let Some(known) = found.iter_mut().find(|one| (one.first, one.second) == (first, second))
        {
            known.odds = known.odds.min(odds);
            continue;
        }
        let mut causes: Vec<Cause> = Vec::new();
        let both = [second, first].into_iter().flat_map(causes_of);
        for cause in both.chain(&[Cause::TwoSteels]) {
            if !causes.contains(cause) {
                causes.push(*cause);
            }
        }
        found.push(Clash { first, second, odds, causes });
    }
    sort_by_number(&mut found, |clash| clash.odds);
    found
}
