//! An unknown bar: laws, the axle of the scenarios, contradictions, and what each family is known for.
#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::unknown::{
    Bar, Bath, Cause, Clue, Error, Fracture, Heat, Kind, Magnet, Purpose, Quench, Skin, Sorted,
    Span, Spark, Test,
};
use proptest::prelude::*;
use proptest::sample::select;

fn span(low: Option<f64>, high: Option<f64>) -> Span {
    Span::new(low, high).unwrap()
}

fn between(low: f64, high: f64) -> Span {
    span(Some(low), Some(high))
}

fn over(low: f64) -> Span {
    span(Some(low), None)
}

fn under(high: f64) -> Span {
    span(None, Some(high))
}

fn bar(clues: &[Clue]) -> Bar {
    clues.iter().fold(Bar::default(), |bar, clue| bar.with(*clue))
}

fn sort(clues: &[Clue]) -> Sorted {
    bar(clues).sort()
}

fn likeliest(sorted: &Sorted) -> Kind {
    sorted.families().first().unwrap().0
}

fn next(sorted: &Sorted) -> Option<Test> {
    sorted.advice().map(|advice| advice.test)
}

const AXLE: [Clue; 2] = [Clue::Spark(Spark::Forks), Clue::Skin(Skin::Hard)];

/// Scenario 16: bright spark, some forks, the skin files hard and 5 mm in it files soft. Practitioner report:
/// induction hardened medium carbon; a coupon from the middle, first in oil, then in water.
#[test]
fn an_axle_is_likely_medium_carbon_and_wants_a_coupon_then_water() {
    let found = sort(&AXLE);
    assert_eq!(likeliest(&found), Kind::MediumCarbon);
    assert!(found.chance(Kind::MediumCarbon) > 0.5);
    assert_eq!((next(&found), found.quench()), (Some(Test::CouponOil), Quench::OilFirst));
    // A coupon that 55 cuts.
    let oil = sort(&[AXLE[0], AXLE[1], Clue::Coupon(Bath::Oil, between(50.0, 55.0))]);
    assert_eq!((likeliest(&oil), next(&oil)), (Kind::MediumCarbon, Some(Test::CouponWater)));
    assert!(oil.clashes().is_empty());
    // "Coupon at 55 or so: about 0.45 % C: hammers, hardy tools, shafts to about 50; not cutting edges."
    for coupon in [
        Clue::Coupon(Bath::Oil, Span::about(55.0).unwrap()),
        Clue::Coupon(Bath::Oil, between(53.0, 58.0)),
    ] {
        let done = sort(&[AXLE[0], AXLE[1], coupon]);
        let carbon = done.carbon();
        assert!(carbon.low < 0.45 && 0.45 < carbon.high, "{carbon:?}");
        assert!((carbon.mid - 0.45).abs() < 0.05 && carbon.chance > 0.9, "{carbon:?}");
        let uses: Vec<Purpose> = done.uses().collect();
        assert!(uses.contains(&Purpose::Hammers) && uses.contains(&Purpose::Shafts), "{uses:?}");
        let avoids: Vec<Purpose> = done.avoids().collect();
        assert!(avoids.contains(&Purpose::Edges) && avoids.contains(&Purpose::Safety));
        let [_, oil, _] = done.promise().oil;
        assert!((52.0..=58.0).contains(&oil), "{oil}");
    }
}

/// The quenched end by ASTM A255-10 as printed in a handbook: hardness of martensite against carbon. A deep-hardening
/// coupon comes out there or a little below, so the carbon read back has to be the printed one.
#[test]
fn a_coupon_gives_the_carbon_that_the_standard_has_for_its_hardness() {
    for (carbon, hrc) in [(0.20, 44.4), (0.30, 50.5), (0.40, 56.3), (0.45, 58.9), (0.50, 61.2)] {
        let coupon = between(hrc - 1.5, hrc + 1.5);
        let found = sort(&[Clue::Coupon(Bath::Oil, coupon), Clue::Coupon(Bath::Water, coupon)]);
        let band = found.carbon();
        assert!(band.low < carbon && carbon < band.high, "{carbon}: {band:?}");
        assert!((band.mid - carbon).abs() < 0.06, "{carbon}: {band:?}");
    }
    // Above 0.6 % the hardness says no more: "about 65".
    let glass = sort(&[Clue::Coupon(Bath::Oil, over(63.0))]).carbon();
    assert!(glass.low > 0.45 && glass.high > 0.95, "{glass:?}");
}

/// Common practice, no source: what each family is known for at the bench.
#[test]
fn families_answer_as_they_are_known() {
    let sticks = Clue::Magnet(Magnet::Sticks);
    let cases: [(&[Clue], Kind); 8] = [
        (&[Clue::Magnet(Magnet::None), Clue::Spark(Spark::Plain)], Kind::AusteniticStainless),
        (&[Clue::Magnet(Magnet::None), Clue::Spark(Spark::Bursts)], Kind::Manganese),
        (&[sticks, Clue::Spark(Spark::Bushy)], Kind::CastIron),
        (&[sticks, Clue::Spark(Spark::Spears), Clue::Found(Span::SKATES)], Kind::HighSpeed),
        (
            &[sticks, Clue::Spark(Spark::Straw), Clue::Coupon(Bath::Oil, under(40.0))],
            Kind::LowCarbon,
        ),
        (
            &[sticks, Clue::Spark(Spark::Spears), Clue::Coupon(Bath::Oil, between(55.0, 60.0))],
            Kind::LowAlloy,
        ),
        (
            &[Clue::Coupon(Bath::Oil, under(45.0)), Clue::Coupon(Bath::Water, over(60.0))],
            Kind::MediumCarbon,
        ),
        (
            &[
                sticks,
                Clue::Spark(Spark::Forks),
                Clue::Found(between(42.0, 48.0)),
                Clue::Coupon(Bath::Oil, over(60.0)),
            ],
            Kind::Spring,
        ),
    ];
    for (clues, kind) in cases {
        let found = sort(clues);
        assert_eq!(likeliest(&found), kind, "{clues:?}: {:?}", found.families());
    }
}

/// Common practice, no source: soft in oil and hard in water is a shallow plain carbon steel, and no contradiction.
#[test]
fn soft_in_oil_and_hard_in_water_is_shallow() {
    let clues = [Clue::Coupon(Bath::Oil, under(40.0)), Clue::Coupon(Bath::Water, over(60.0))];
    let found = sort(&clues);
    let plain = found.chance(Kind::MediumCarbon) + found.chance(Kind::HighCarbon);
    assert!(plain > 0.9, "{plain}");
    assert_eq!(found.quench(), Quench::Water);
    assert!(found.clashes().is_empty());
    assert_eq!(sort(&[Clue::Coupon(Bath::Oil, over(60.0))]).quench(), Quench::Oil);
}

/// Scenario 9: 28 to 32 HRC as found fits bought pre-hard bar, most often low alloy.
#[test]
fn bar_at_28_to_32_as_found_is_likeliest_low_alloy() {
    assert_eq!(likeliest(&sort(&[Clue::Found(between(28.0, 32.0))])), Kind::LowAlloy);
}

/// Scenario 20: cast iron is no steel: it does not harden by the quench and suits no tool.
#[test]
fn cast_iron_is_not_to_be_quenched() {
    let found = sort(&[Clue::Spark(Spark::Bushy), Clue::Magnet(Magnet::Sticks)]);
    assert!(found.chance(Kind::CastIron) > 0.5);
    assert_eq!(found.quench(), Quench::Neither);
    let avoids: Vec<Purpose> = found.avoids().collect();
    for purpose in [Purpose::Hammers, Purpose::Chisels, Purpose::Edges, Purpose::Springs] {
        assert!(avoids.contains(&purpose), "{purpose:?}");
    }
}

/// Common practice, no source: a coupon that stays soft after a bursting spark was quenched too cold or had lost
/// its carbon; nothing that the magnet leaves alone hardens; water is never milder than oil.
#[test]
fn clues_that_do_not_go_together_are_named_with_causes() {
    let sticks = Clue::Magnet(Magnet::Sticks);
    let soft = Clue::Coupon(Bath::Oil, under(40.0));
    let glass = Clue::Coupon(Bath::Oil, over(60.0));
    let cases: [(&[Clue], Test, Test, Cause); 4] = [
        (&[sticks, Clue::Spark(Spark::Bursts), soft], Test::Spark, Test::CouponOil, Cause::Cold),
        (&[Clue::Magnet(Magnet::None), glass], Test::Magnet, Test::CouponOil, Cause::MagnetOnSkin),
        (
            &[glass, Clue::Coupon(Bath::Water, between(40.0, 45.0))],
            Test::CouponOil,
            Test::CouponWater,
            Cause::Steam,
        ),
        (&[glass, Clue::Snap(Fracture::Bent)], Test::CouponOil, Test::Snap, Cause::Decarburised),
    ];
    for (clues, first, second, cause) in cases {
        let found = sort(clues);
        let clash = found.clashes().first().unwrap();
        assert_eq!((clash.first, clash.second), (first, second), "{clues:?}");
        assert!(clash.causes.contains(&cause), "{clash:?}");
    }
    // Whatever goes together says nothing: every likely pair of spark and coupon.
    for (spark, low) in
        [(Spark::Straw, 32.0), (Spark::Forks, 52.0), (Spark::Bursts, 60.0), (Spark::Spears, 52.0)]
    {
        let found =
            sort(&[sticks, Clue::Spark(spark), Clue::Coupon(Bath::Oil, between(low, low + 5.0))]);
        assert!(found.clashes().is_empty(), "{spark:?}: {:?}", found.clashes());
    }
}

#[test]
fn spans_that_say_nothing_or_stand_upside_down_are_refused() {
    assert_eq!(Span::new(None, None), Err(Error::Open));
    assert!(matches!(Span::new(Some(60.0), Some(55.0)), Err(Error::UpsideDown { .. })));
    assert!(matches!(Span::new(Some(55.0), Some(55.0)), Err(Error::UpsideDown { .. })));
    for limit in [9.9, 75.1, f64::NAN, f64::INFINITY] {
        let error = Span::new(Some(limit), None).unwrap_err();
        assert_eq!(error.code(), "unknown.out_of_range");
        assert!(error.to_string().contains("10 to 75"), "{error}");
    }
}

/// The next test goes by cost and by what it tells: nothing that was done, water and break only after oil.
#[test]
fn the_next_test_is_one_that_can_be_made() {
    let mut seen = Bar::default();
    let answers = [
        (Test::Magnet, Clue::Magnet(Magnet::Sticks)),
        (Test::Spark, Clue::Spark(Spark::Forks)),
        (Test::Found, Clue::Found(under(40.0))),
        (Test::CouponOil, Clue::Coupon(Bath::Oil, between(50.0, 55.0))),
        (Test::CouponWater, Clue::Coupon(Bath::Water, between(55.0, 60.0))),
    ];
    for (test, clue) in answers {
        let found = seen.sort();
        assert_eq!(next(&found), Some(test));
        seen = seen.with(clue);
    }
    assert_eq!(next(&seen.sort()), None);
}

fn any_span() -> impl Strategy<Value = Span> {
    (10.0..70.0, 0.5..20.0, 0..4_u8).prop_map(|(low, wide, open): (f64, f64, u8)| match open {
        0 => over(low),
        1 => under(low),
        _ => between(low, (low + wide).min(75.0)),
    })
}

fn any_clue() -> impl Strategy<Value = Clue> {
    prop_oneof![
        select(Magnet::ALL).prop_map(Clue::Magnet),
        select(Spark::ALL).prop_map(Clue::Spark),
        select(Skin::ALL).prop_map(Clue::Skin),
        select(Fracture::ALL).prop_map(Clue::Snap),
        any_span().prop_map(Clue::Found),
        any_span().prop_map(|span| Clue::Coupon(Bath::Oil, span)),
        any_span().prop_map(|span| Clue::Coupon(Bath::Water, span)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn chances_are_chances(clues in proptest::collection::vec(any_clue(), 0..10)) {
        let found = sort(&clues);
        let sum: f64 = found.families().iter().map(|one| one.1).sum();
        prop_assert!((sum - 1.0).abs() < 1e-9);
        prop_assert!(found.families().iter().all(|one| (0.0..=1.0).contains(&one.1)));
        prop_assert!(found.families().is_sorted_by(|one, other| one.1 >= other.1));
        let heats: f64 = Heat::ALL.iter().map(|heat| found.chance_of(*heat)).sum();
        prop_assert!((heats - 1.0).abs() < 1e-9);
        let carbon = found.carbon();
        prop_assert!(0.0 < carbon.low && carbon.low <= carbon.mid && carbon.mid <= carbon.high);
        prop_assert!(carbon.high < 1.2 && (carbon.chance - found.chance_of(Heat::Carbon)).abs() < 1e-9);
        for [low, mid, high] in [found.promise().oil, found.promise().water] {
            prop_assert!(10.0 <= low && low <= mid && mid <= high && high <= 75.0);
        }
        prop_assert!(found.uses().all(|purpose| !found.avoids().any(|other| other == purpose)));
        prop_assert!(found.avoids().any(|purpose| purpose == Purpose::Safety));
        prop_assert!(found.advice().is_none_or(|advice| advice.fall <= advice.doubt));
    }

    #[test]
    fn the_order_of_the_evidence_does_not_matter(
        clues in proptest::collection::vec(any_clue(), 0..7).prop_shuffle(),
        turn in 0..7_usize,
    ) {
        // One answer for each test: of two answers the later holds, and then the order is part of what was said.
        let once: Vec<Clue> = bar(&clues).clues().to_vec();
        let mut turned = once.clone();
        turned.rotate_left(turn.min(once.len()));
        turned.reverse();
        let (one, other) = (sort(&once), sort(&turned));
        prop_assert_eq!(one.families(), other.families());
        prop_assert_eq!(one.carbon(), other.carbon());
        prop_assert_eq!(one.clashes(), other.clashes());
    }

    /// With one coupon, whatever else was seen, a harder span never lowers the carbon. (With two coupons the softer
    /// one tells a shallow steel from a deep one, and that is not a matter of carbon alone.)
    #[test]
    fn a_harder_coupon_never_lowers_the_carbon(
        beside in proptest::collection::vec(any_clue(), 0..4),
        bath in select(Bath::ALL),
        low in 15.0..64.0_f64,
        wide in 1.0..10.0_f64,
        more in 0.1..15.0_f64,
        open in 0..3_u8,
    ) {
        let at = |low: f64| match open {
            0 => over(low),
            1 => under(low),
            _ => between(low, low + wide),
        };
        let coupons = |clue: &Clue| matches!(clue.test(), Test::CouponOil | Test::CouponWater | Test::Snap);
        let beside = beside.iter().filter(|clue| !coupons(clue));
        let beside = beside.fold(Bar::default(), |bar, clue| bar.with(*clue));
        let carbon = |span: Span| beside.clone().with(Clue::Coupon(bath, span)).sort().carbon().mid;
        let (softer, harder) = (carbon(at(low)), carbon(at((low + more).min(64.0))));
        prop_assert!(harder >= softer - 1e-9, "{} then {}", softer, harder);
    }
}
