//! The test that tells most for its trouble.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;
use libm::{floor, log2};

use super::bar::Bar;
use super::cell::Cell;
use super::clue::{Bath, Clue, Fracture, Magnet, Skin, Spark, Test};
use super::family::Kind;
use super::span::Span;

/// A test that takes away less doubt than this, in bits, is not worth its trouble.
///
/// # Source
/// Our choice.
pub const LEAST_FALL: f64 = 0.12;

/// Limits of hardness that files of a set divide by, in HRC.
const LIMITS: [f64; 5] = [40.0, 45.0, 50.0, 55.0, 60.0];

/// Classes of carbon in which the doubt is counted, in mass percent.
const CLASS: f64 = 0.1;

/// The next test.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Advice {
    /// Which.
    pub test: Test,
    /// By how much it is expected to lower the doubt, in bits.
    pub fall: f64,
    /// The doubt now, in bits.
    pub doubt: f64,
}

/// How much trouble a test is, against the spark at a wheel that stands ready.
///
/// # Source
/// Our choice.
const fn trouble(test: Test) -> f64 {
    match test {
        Test::Magnet => 0.1,
        Test::Spark | Test::Found => 1.0,
        Test::Skin => 2.0,
        Test::CouponOil => 4.0,
        Test::Snap => 0.5,
        Test::CouponWater => 3.0,
    }
}

/// Shannon's entropy in bits of shares that are brought to a sum of 1.
fn doubt(shares: &[f64]) -> f64 {
    let sum: f64 = shares.iter().sum();
    let of = |share: &f64| if *share > 0.0 { -share / sum * log2(share / sum) } else { 0.0 };
    shares.iter().map(of).sum()
}

/// The class in which a cell is counted: its family and, where carbon decides, a tenth of a percent.
fn classes(cells: &[Cell]) -> (Vec<usize>, usize) {
    let mut known: Vec<(Kind, f64)> = Vec::new();
    let place = |cell: &Cell| {
        let kind = cell.family.kind;
        let tenth = cell.carbon().map_or(0.0, |carbon| floor(carbon / CLASS));
        let same = |one: &(Kind, f64)| one.0 == kind && (one.1 - tenth).abs() < 0.5;
        known.iter().position(same).unwrap_or_else(|| {
            known.push((kind, tenth));
            known.len() - 1
        })
    };
    let places: Vec<usize> = cells.iter().map(place).collect();
    (places, known.len())
}

fn answers(test: Test) -> Vec<Clue> {
    let spans = || {
        let ends = LIMITS.iter().map(|&limit| Some(limit));
        let lows = core::iter::once(None).chain(ends.clone());
        let highs = ends.chain(core::iter::once(None));
        // The limits are inside the range and rise, so every span is one.
        lows.zip(highs).filter_map(|(low, high)| Span::new(low, high).ok())
    };
    match test {
        Test::Magnet => Magnet::ALL.iter().map(|&answer| Clue::Magnet(answer)).collect(),
        Test::Spark => Spark::ALL.iter().map(|&answer| Clue::Spark(answer)).collect(),
        Test::Skin => Skin::ALL.iter().map(|&answer| Clue::Skin(answer)).collect(),
        Test::Snap => Fracture::ALL.iter().map(|&answer| Clue::Snap(answer)).collect(),
        Test::Found => spans().map(Clue::Found).collect(),
        Test::CouponOil => spans().map(|span| Clue::Coupon(Bath::Oil, span)).collect(),
        Test::CouponWater => spans().map(|span| Clue::Coupon(Bath::Water, span)).collect(),
    }
}

/// Whether a test can be made now: a coupon has to be there before it is snapped, and water comes after oil.
fn is_open(bar: &Bar, test: Test) -> bool {
    let oil = bar.coupon(Bath::Oil).is_some();
    let untried = bar.clue(test).is_none();
    match test {
        Test::Snap => untried && (oil || bar.coupon(Bath::Water).is_some()),
        Test::CouponWater => untried && oil,
        Test::Found => untried && bar.clue(Test::Skin) != Some(&Clue::Skin(Skin::Hard)),
        _ => untried,
    }
}

pub(super) fn advice(bar: &Bar, cells: &[Cell], weights: &[f64]) -> Option<Advice> {
    let (places, count) = classes(cells);
    let doubt_of = |weights: &[f64]| {
        let mut shares = alloc::vec![0.0; count];
        for (place, weight) in places.iter().zip(weights) {
            if let Some(share) = shares.get_mut(*place) {
                *share += weight;
            }
        }
        doubt(&shares)
    };
    let now = doubt_of(weights);
    let fall = |test: Test| {
        let then: f64 = answers(test)
            .iter()
            .map(|clue| {
                let chances = cells.iter().map(|cell| cell.chance(clue, bar.last()));
                let after: Vec<f64> = chances.zip(weights).map(|(chance, w)| chance * w).collect();
                after.iter().sum::<f64>() * doubt_of(&after)
            })
            .sum();
        now - then
    };
    let open = Test::ALL.iter().copied().filter(|test| is_open(bar, *test));
    let falls: Vec<(Test, f64)> = open.map(|test| (test, fall(test))).collect();
    let mut worth: Vec<(Test, f64)> =
        falls.into_iter().filter(|(_, fall)| *fall >= LEAST_FALL).collect();
    sort_by_number(&mut worth, |(test, fall)| -fall / trouble(*test));
    worth.first().map(|&(test, fall)| Advice { test, fall, doubt: now })
}
