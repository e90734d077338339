//! What own results say about heats and ovens.

use biteband_steel::Element::{C, Cr, Mn, Mo, Si};
use biteband_steel::temper::{LearnError, Learned, Oven, OwnResult, Point, Spread, Temper};
use proptest::prelude::*;

use super::{number, reference, steel};

fn spread() -> Spread {
    steel(&[(C, 0.45)]).spread()
}

fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').map(|word| word.parse().unwrap()).collect()
}

fn parsed(text: &str) -> OwnResult {
    let [heat, oven, celsius, hrc, slope, composition_sd, off, sd] =
        <[f64; 8]>::try_from(numbers(text)).unwrap();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "small counts")]
    let (heat, oven) = (heat as usize, oven as usize);
    let expected = Point { celsius, hrc, slope, composition_sd };
    OwnResult { expected, hrc: hrc + off, sd, heat, oven }
}

/// The joint normal law of all unknowns, worked out by another program (`make.py`).
#[test]
fn the_law_is_that_of_an_independent_working() {
    let rows = reference("learning.csv");
    assert_eq!(rows.len(), 40);
    for row in rows {
        let ovens: Vec<Oven> = row["ovens"]
            .split(';')
            .map(|text| {
                let [mean_k, sd_k] = <[f64; 2]>::try_from(numbers(text)).unwrap();
                Oven { mean_k, sd_k }
            })
            .collect();
        let mut results: Vec<OwnResult> = row["results"].split(';').map(parsed).collect();
        let plan = results.pop().unwrap();
        let heats = vec![spread(); row["heats"].parse().unwrap()];
        let learned = Learned::new(&heats, &ovens, &results).unwrap();
        let shift = learned.plan(plan.heat, plan.oven, &plan.expected).unwrap();
        let heat = learned.heat(plan.heat, &plan.expected).unwrap();
        let oven = learned.oven(plan.oven).unwrap();
        for (found, name) in [
            (shift.mean, "shift"),
            (shift.sd, "shift_sd"),
            (heat.mean, "heat"),
            (heat.sd, "heat_sd"),
            (oven.mean, "oven"),
            (oven.sd, "oven_sd"),
        ] {
            assert!((found - number(&row, name)).abs() < 1e-6, "{name} {found}: {row:?}");
        }
    }
}

const FLAT: Point = Point { celsius: 200.0, hrc: 55.0, slope: -0.01, composition_sd: 0.0 };
const STEEP: Point = Point { celsius: 240.0, hrc: 45.0, slope: -0.09, composition_sd: 0.0 };

/// A result of a heat that is `heat` HRC harder than expected, in an oven that is `oven` K hotter than it says.
fn result(expected: Point, heat: f64, oven: f64, (which, place): (usize, usize)) -> OwnResult {
    let hrc = expected.hrc + heat + expected.slope * oven;
    OwnResult { expected, hrc, sd: 0.3, heat: which, oven: place }
}

/// One result cannot tell: heat and oven take their shares by the widths known beforehand.
#[test]
fn one_result_is_divided_by_what_was_known_before() {
    let (spread, oven) = (spread(), Oven::UNCHECKED);
    let one = result(STEEP, -2.0, 0.0, (0, 0));
    let learned = Learned::new(&[spread], &[oven], &[one]).unwrap();
    let heat = spread.level.powi(2) + spread.drift.powi(2);
    let hot = (STEEP.slope * oven.sd_k).powi(2);
    let all = heat + hot + spread.scatter.powi(2) + 0.3_f64.powi(2);
    let found = learned.heat(0, &STEEP).unwrap();
    assert!((found.mean - -2.0 * heat / all).abs() < 1e-9);
    assert!((found.sd - (heat * (1.0 - heat / all)).sqrt()).abs() < 1e-9);
    let kelvin = learned.oven(0).unwrap().mean;
    assert!((kelvin * STEEP.slope - -2.0 * hot / all).abs() < 1e-9);
}

/// Soft where the curve is steep and right where it is flat: that is the oven.
#[test]
fn two_slopes_tell_the_oven_from_the_heat() {
    let learn = |heat: f64, oven: f64| {
        let results = [FLAT, STEEP].map(|at| result(at, heat, oven, (0, 0)));
        Learned::new(&[spread()], &[Oven::UNCHECKED], &results).unwrap()
    };
    let hot_oven = learn(0.0, 25.0);
    let soft_heat = learn(-2.0, 0.0);
    let oven = |learned: &Learned| learned.oven(0).unwrap().mean;
    let heat = |learned: &Learned| learned.heat(0, &FLAT).unwrap().mean;
    // The flat result is right, so that the heat is near nought and the oven gets more than it would of one result alone.
    let one = result(STEEP, 0.0, 25.0, (0, 0));
    let alone = Learned::new(&[spread()], &[Oven::UNCHECKED], &[one]).unwrap();
    assert!(oven(&hot_oven) > 1.1 * oven(&alone), "{} {}", oven(&hot_oven), oven(&alone));
    assert!(heat(&hot_oven) > 0.7 * heat(&alone), "{} {}", heat(&hot_oven), heat(&alone));
    // A heat soft by two points at both places is another picture.
    assert!(oven(&soft_heat) < 0.6 * oven(&hot_oven), "{}", oven(&soft_heat));
    assert!(heat(&soft_heat) < 2.0 * heat(&hot_oven), "{}", heat(&soft_heat));
    // Both times less is left open than before.
    assert!(hot_oven.oven(0).unwrap().sd < Oven::UNCHECKED.sd_k);
}

/// Three steels all soft in one oven: they blame the oven, where one alone would blame itself as well. And three
/// results of one steel, soft in three ovens, blame the steel.
#[test]
fn several_steels_blame_the_oven_and_several_ovens_the_steel() {
    let one = [result(STEEP, 0.0, 20.0, (0, 0))];
    let alone = Learned::new(&[spread()], &[Oven::UNCHECKED], &one).unwrap();
    let steels = [0, 1, 2].map(|heat| result(STEEP, 0.0, 20.0, (heat, 0)));
    let in_one = Learned::new(&[spread(); 3], &[Oven::UNCHECKED], &steels).unwrap();
    assert!(in_one.oven(0).unwrap().mean > 1.3 * alone.oven(0).unwrap().mean);
    assert!(in_one.heat(0, &STEEP).unwrap().mean.abs() < alone.heat(0, &STEEP).unwrap().mean.abs());

    let ovens = [0, 1, 2].map(|oven| result(STEEP, -1.8, 0.0, (0, oven)));
    let in_three = Learned::new(&[spread()], &[Oven::UNCHECKED; 3], &ovens).unwrap();
    assert!(in_three.heat(0, &STEEP).unwrap().mean < 1.3 * alone.heat(0, &STEEP).unwrap().mean);
    assert!(in_three.oven(0).unwrap().mean < alone.oven(0).unwrap().mean);
}

/// What was learned close by carries over; far away and in another oven less of it does.
#[test]
fn evidence_fades_with_distance() {
    let heat = steel(&[(C, 0.41), (Mn, 0.85), (Si, 0.25), (Cr, 1.0), (Mo, 0.2)]);
    let at = |celsius: f64| heat.point(&[Temper::new(celsius, 120.0).unwrap()]);
    let exact = Oven { mean_k: 0.0, sd_k: 3.0 };
    let results =
        [OwnResult { expected: at(220.0), hrc: at(220.0).hrc - 3.0, sd: 0.5, heat: 0, oven: 0 }];
    let learned = Learned::new(&[heat.spread()], &[exact, Oven::UNCHECKED], &results).unwrap();
    let [near, middle, far] = [230.0, 330.0, 600.0].map(|to| learned.plan(0, 0, &at(to)).unwrap());
    assert!(near.mean < middle.mean && middle.mean < far.mean && far.mean < 0.0);
    assert!(near.sd < middle.sd && middle.sd < far.sd);
    let elsewhere = learned.plan(0, 1, &at(230.0)).unwrap();
    assert!(elsewhere.sd > near.sd);
}

#[test]
fn what_cannot_be_weighed_is_refused() {
    let (spread, oven) = (spread(), Oven::UNCHECKED);
    let good = result(FLAT, 1.0, 0.0, (0, 0));
    let code = |heats: &[Spread], ovens: &[Oven], results: &[OwnResult]| {
        Learned::new(heats, ovens, results).unwrap_err().code()
    };
    let no_number = LearnError::NoNumber.code();
    assert_eq!(code(&[spread], &[oven], &[OwnResult { hrc: f64::NAN, ..good }]), no_number);
    assert_eq!(code(&[spread], &[oven], &[OwnResult { sd: -1.0, ..good }]), no_number);
    assert_eq!(code(&[spread], &[Oven { mean_k: 0.0, sd_k: f64::NAN }], &[good]), no_number);
    assert_eq!(code(&[Spread { reach: 0.0, ..spread }], &[oven], &[good]), no_number);
    let stray = LearnError::Unknown { result: 1 };
    for lost in [OwnResult { heat: 1, ..good }, OwnResult { oven: 1, ..good }] {
        assert_eq!(Learned::new(&[spread], &[oven], &[good, lost]).unwrap_err(), stray);
    }
    assert_eq!(code(&[spread], &[oven], &[good; 201]), "temper.learn_too_many");
    let none = Spread { scatter: 0.0, ..spread };
    let exact = OwnResult { sd: 0.0, ..good };
    assert_eq!(code(&[none], &[oven], &[exact, exact]), LearnError::Singular.code());
    let empty = Learned::new(&[spread], &[oven], &[]).unwrap();
    assert!(empty.plan(1, 0, &FLAT).is_none() && empty.plan(0, 1, &FLAT).is_none());
    assert!(empty.heat(1, &FLAT).is_none() && empty.oven(1).is_none());
}

prop_compose! {
    fn any_result()(
        celsius in 100.0..=700.0_f64, slope in -0.1..=0.0_f64, composition_sd in 0.0..=2.0_f64,
        off in -12.0..=12.0_f64, sd in 0.0..=3.0_f64, heat in 0..2_usize, oven in 0..2_usize,
    ) -> OwnResult {
        let expected = Point { celsius, hrc: 45.0, slope, composition_sd };
        OwnResult { expected, hrc: 45.0 + off, sd, heat, oven }
    }
}

proptest! {
    /// Evidence never makes a plan less certain than none, and more of it never less than less of it.
    #[test]
    fn more_results_never_widen(results in prop::collection::vec(any_result(), 1..8), plan in any_result()) {
        let heats = [spread(); 2];
        let ovens = [Oven::UNCHECKED, Oven { mean_k: 4.0, sd_k: 3.0 }];
        let sd = |known: &[OwnResult]| {
            let learned = Learned::new(&heats, &ovens, known).unwrap();
            let shift = learned.plan(plan.heat, plan.oven, &plan.expected).unwrap();
            let oven = learned.oven(plan.oven).unwrap();
            assert!(shift.mean.is_finite() && oven.mean.is_finite());
            (shift.sd, oven.sd)
        };
        let mut before = sd(&[]);
        let Point { slope, .. } = plan.expected;
        let alone = plan.expected.sd(&heats[0]).hypot(slope * ovens[plan.oven].sd_k);
        prop_assert!((before.0 - alone).abs() < 1e-9);
        for count in 1..=results.len() {
            let after = sd(&results[..count]);
            prop_assert!(after.0 <= before.0 + 1e-9 && after.1 <= before.1 + 1e-9);
            before = after;
        }
    }
}
