//! Baths against published checks of the heat balance and the worked case of the trade.
#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_quantity::{Celsius, Kilograms};
use biteband_steel::bath::{Bath, Error, Quench, Verdict, heat_given, tank};
use biteband_steel::quench::Medium;
use biteband_steel::section::{Section, Shape};
use proptest::prelude::*;

fn quench(medium: Medium, litres: f64, celsius: f64, flash: Option<f64>, kg: f64) -> Quench {
    let bath = Bath::new(medium, litres, celsius, flash).unwrap();
    bath.quench(Kilograms::new(kg).unwrap(), Celsius::new(850.0).unwrap()).unwrap()
}

fn near(found: f64, expected: f64, by: f64) {
    assert!((found - expected).abs() <= by, "{found} for {expected}");
}

/// Source: 580 kJ/kg by quadrature of EN 1993-1-2 (SciPy); 1 kg in 8.35 L of mineral oil 40.5 K, the published
/// rise of the one-to-one rule being 38 K (70 °F; 72 °F by its own figures); in 4 L 85 K; vegetable oil 36 K.
#[test]
fn the_balance_of_one_kilogram() {
    near(heat_given(850.0), 580.44, 0.05);
    let rise = |medium, litres| quench(medium, litres, 20.0, None, 1.0).rise.get();
    near(rise(Medium::Oil, 8.35), 40.5, 0.1);
    near(rise(Medium::Oil, 8.35), 38.0, 3.0);
    near(rise(Medium::Oil, 4.0), 85.0, 0.6);
    near(rise(Medium::VegetableOil, 8.35), 36.0, 0.4);
    // 72 °F is 40 K.
    near(rise(Medium::Oil, 8.345), 72.0 / 1.8, 1.0);
    // Water takes 4.18 kJ/kgK (any table of water).
    near(rise(Medium::Water, 10.0), 580.44 / 41.7, 0.05);
}

/// Source: worked case of the trade: a die of 2.7 kg (6 lb) in 4 L at 50 °C: about 240 K, to near 290 °C, past the
/// flash point of mineral oils; 22 to 25 L needed.
#[test]
fn a_pail_is_not_enough_for_a_die() {
    let pail = quench(Medium::Oil, 4.0, 50.0, None, 2.7);
    near(pail.rise.get(), 240.0, 15.0);
    near(pail.peak.get(), 290.0, 15.0);
    near(pail.by_rule.get(), 22.5, 0.1);
    assert_eq!(pail.verdict, Verdict::FireRisk);
    let flash = pail.flash.unwrap();
    assert!(flash.assumed && flash.margin.get() < 0.0 && flash.below_guide);
    // From 50 °C the balance asks for more than the rule, from 40 °C for the same.
    assert!(pail.needed.unwrap().get() > 30.0);
    near(quench(Medium::Oil, 25.0, 40.0, None, 2.7).needed.unwrap().get(), 23.0, 0.5);
    assert_eq!(quench(Medium::Oil, 25.0, 40.0, None, 2.7).verdict, Verdict::Enough);
    // Vegetable oil: near its flash point of 290 °C too.
    assert_eq!(quench(Medium::VegetableOil, 4.0, 50.0, None, 2.7).verdict, Verdict::FireRisk);
}

#[test]
fn every_verdict_has_its_reason() {
    let verdict =
        |medium, litres, celsius, flash, kg| quench(medium, litres, celsius, flash, kg).verdict;
    assert_eq!(verdict(Medium::Oil, 9.0, 25.0, Some(180.0), 1.0), Verdict::Enough);
    // Cold oil stays below 80 °C with less than the rule asks for.
    assert_eq!(verdict(Medium::Oil, 7.5, 20.0, Some(180.0), 1.0), Verdict::TooSmall);
    assert_eq!(verdict(Medium::Oil, 5.0, 40.0, Some(180.0), 1.0), Verdict::TooHot);
    // 60 K below 120 °C is 60 °C.
    let low = quench(Medium::Oil, 9.0, 25.0, Some(120.0), 1.0);
    near(low.limit.get(), 60.0, 1e-9);
    assert_eq!(low.verdict, Verdict::FireRisk);
    assert!(low.flash.unwrap().below_guide && !low.flash.unwrap().assumed);
    assert_eq!(verdict(Medium::UnknownOil, 100.0, 25.0, Some(250.0), 1.0), Verdict::DoNotUse);
    assert_eq!(verdict(Medium::Water, 10.0, 20.0, None, 1.0), Verdict::Enough);
    assert_eq!(verdict(Medium::Water, 4.0, 20.0, None, 1.0), Verdict::TooHot);
    assert_eq!(verdict(Medium::Brine, 6.0, 20.0, None, 1.0), Verdict::TooSmall);
    assert!(quench(Medium::Water, 10.0, 20.0, Some(100.0), 1.0).flash.is_none());
    // The start is already at the limit: no volume helps.
    let hot = quench(Medium::Oil, 100.0, 70.0, Some(130.0), 1.0);
    assert!(hot.by_balance.is_none() && hot.needed.is_none());
}

#[test]
fn baths_that_are_none_are_refused() {
    let refused = |medium, litres, celsius| Bath::new(medium, litres, celsius, None).unwrap_err();
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(refused(Medium::Oil, bad, 20.0), Error::Quantity(_)));
    }
    assert!(matches!(refused(Medium::Oil, 10.0, 300.0), Error::Quantity(_)));
    assert_eq!(
        refused(Medium::Oil, 10.0, 300.0).to_string(),
        "oil bath of 300 °C is outside -10 to 79 °C: colder oil does not flow, and its peak may be 80 °C at most"
    );
    assert!(matches!(refused(Medium::Water, 10.0, 60.0), Error::Quantity(_)));
    for medium in [Medium::Air, Medium::Salt, Medium::Polymer] {
        assert_eq!(refused(medium, 10.0, 20.0), Error::NoHeatBalance { medium });
    }
    assert!(Bath::new(Medium::Oil, 10.0, 20.0, Some(20.0)).is_err());
    let bath = Bath::new(Medium::Oil, 10.0, 20.0, None).unwrap();
    let cold = bath.quench(Kilograms::new(1.0).unwrap(), Celsius::new(500.0).unwrap());
    assert!(matches!(cold, Err(Error::Quantity(_))));
}

#[test]
fn the_tank_covers_the_part_upright() {
    let flat = Section::new(Shape::Flat { width: 200.0, thickness: 10.0 }, Some(60.0)).unwrap();
    let found = tank(&flat).unwrap();
    near(found.liquid, 350.0, 1e-9);
    near(found.long, 160.0, 1e-9);
    near(found.wide, 110.0, 1e-9);
    near(found.wall, 437.5, 1e-9);
    near(found.litres.get(), 6.16, 1e-9);
    assert!(tank(&Section::new(Shape::Plate { thickness: 10.0 }, Some(60.0)).unwrap()).is_none());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn more_steel_or_less_oil_is_never_cooler(
        kg in 0.01..50.0_f64, litres in 0.5..500.0_f64, celsius in 0.0..70.0_f64, more in 1.0..4.0_f64,
    ) {
        let base = quench(Medium::Oil, litres, celsius, None, kg);
        let heavier = quench(Medium::Oil, litres, celsius, None, kg * more);
        let larger = quench(Medium::Oil, litres * more, celsius, None, kg);
        prop_assert!(heavier.rise >= base.rise && larger.rise <= base.rise);
        prop_assert!(heavier.needed >= base.needed);
        prop_assert!(base.verdict != Verdict::Enough || base.peak.get() <= 80.0);
    }

    #[test]
    fn no_number_panics(
        kg in any::<f64>(), litres in any::<f64>(), celsius in any::<f64>(), flash in any::<Option<f64>>(),
        from in any::<f64>(),
    ) {
        for medium in Medium::ALL.iter().copied() {
            if let (Ok(bath), Ok(kg), Ok(from)) =
                (Bath::new(medium, litres, celsius, flash), Kilograms::new(kg), Celsius::new(from))
            {
                let _ = bath.quench(kg, from);
            }
        }
        let _ = heat_given(from);
    }
}
