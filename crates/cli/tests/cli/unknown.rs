//! `biteband unknown`: the axle of the scenarios, both spellings of the coupons, contradictions, refusals.

use crate::common::{biteband, json};
use serde_json::Value;

const AXLE: [&str; 5] = ["unknown", "--spark", "forks", "--skin", "hard"];

fn axle(more: &[&str]) -> Value {
    json(&[&AXLE, more].concat()).json()
}

fn keys<'a>(list: &'a Value, field: &str) -> Vec<&'a str> {
    list.as_array().unwrap().iter().map(|one| one[field].as_str().unwrap()).collect()
}

/// Scenario 16: bright spark, some forks, skin hard, 5 mm in soft: likely induction-hardened medium carbon (1045 or
/// 1541 class, practitioner report). Coupon from the middle, oil, then water.
#[test]
fn an_axle_is_likely_medium_carbon_and_the_coupon_is_next() {
    let answer = axle(&[]);
    assert_eq!(answer["families"][0]["family"], "medium_carbon");
    assert!(answer["families"][0]["chance"].as_f64().unwrap() > 0.5);
    assert_eq!(answer["next"]["test"], "coupon_oil");
    assert!(answer["next"]["how"].as_str().unwrap().contains("middle of the bar"));
    assert_eq!(answer["quench"]["key"], "oil_first");
    // Nothing is recommended before a coupon was quenched.
    assert_eq!(answer["use"], Value::Array(Vec::new()));
    let text = biteband(&AXLE);
    assert_eq!(text.code, 0);
    assert!(text.out.contains("Likely medium carbon (1045, 1541)"), "{}", text.out);
    // Each car may differ; never for parts on which safety hangs.
    assert!(text.out.contains("The next axle may be another"), "{}", text.out);
    assert!(text.out.contains("Lifting, steering, brakes, pressure: never."), "{}", text.out);
}

/// Scenario 16: coupon at 55 or so is about 0.45 % C: hammers, hardy tools, shafts to about 50; not cutting edges. If
/// 55 cuts the coupon from the oil, water is next.
#[test]
fn a_coupon_at_55_is_good_for_hammers_and_not_for_edges() {
    let answer = axle(&["--coupon", "oil:55 HRC"]);
    let at = |field: &str| answer["carbon"][field].as_f64().unwrap();
    assert!(at("low") < 0.45 && 0.45 < at("high") && (at("mid") - 0.45).abs() < 0.05);
    let uses = keys(&answer["use"], "purpose");
    assert!(uses.contains(&"hammers") && uses.contains(&"shafts"), "{uses:?}");
    let shafts = keys(&answer["use"], "text");
    let to = shafts.iter().find_map(|text| text.split("to about ").nth(1)).unwrap();
    let to: f64 = to.split(' ').next().unwrap().parse().unwrap();
    assert!((48.0..=52.0).contains(&to), "{to}");
    assert!(keys(&answer["avoid"], "purpose").contains(&"edges"));
    let soft = axle(&["--coupon", "oil:50-55 HRC"]);
    assert_eq!(soft["next"]["test"], "coupon_water");
}

#[test]
fn chances_add_to_one_and_percents_to_a_hundred() {
    for more in [&[][..], &["--magnet", "sticks"], &["--coupon", "water:>60 HRC"]] {
        let answer = axle(more);
        let families = answer["families"].as_array().unwrap();
        assert_eq!(families.len(), 16);
        let sum: f64 = families.iter().map(|one| one["chance"].as_f64().unwrap()).sum();
        assert!((sum - 1.0).abs() < 1e-9, "{sum}");
        let percent: u64 = families.iter().map(|one| one["percent"].as_u64().unwrap()).sum();
        assert_eq!(percent, 100);
    }
}

/// Several coupons behind one option, an option for each, and limits in other spellings are the same question.
#[test]
fn coupons_may_stand_behind_one_option_or_each_behind_its_own() {
    let one = axle(&["--coupon", "oil:50-55 HRC", "water:>60 HRC"]);
    assert_eq!(one["understood"][2], "Coupon in oil: 50 to 55 HRC");
    assert_eq!(one["understood"][3], "Coupon in water: 60 HRC or more");
    for other in [
        &["--coupon", "oil:50-55 HRC", "--coupon", "water:>60 HRC"][..],
        &["--coupon", "water:60 HRC min", "oil: 50..55"],
        &["--coupon=WATER:60+", "--coupon=Oil:50,0-55,0"],
    ] {
        assert_eq!(axle(other), one, "{other:?}");
    }
}

#[test]
fn a_contradiction_ends_with_its_exit_code_and_recommends_nothing() {
    let clues = ["unknown", "--magnet", "sticks", "--spark", "bursts", "--coupon", "oil:<40 HRC"];
    let run = json(&clues);
    let answer = run.json();
    assert_eq!(run.refused(1)["code"], "unknown.clash");
    assert_eq!(answer["clashes"][0]["first"], "spark");
    assert_eq!(answer["clashes"][0]["second"], "coupon_oil");
    assert_eq!(answer["use"], Value::Array(Vec::new()));
    assert_eq!(
        (&answer["next"]["test"], &answer["next"]["again"]),
        (&"coupon_oil".into(), &true.into())
    );
    let text = biteband(&clues);
    assert_eq!(text.code, 1);
    // Common practice, no source: what makes a coupon soft.
    for cause in ["quenched too cold", "lost carbon", "cut from the skin"] {
        assert!(text.out.contains(cause), "{}", text.out);
    }
    assert!(!text.out.contains("Good for"), "{}", text.out);
}

/// Common practice, no source: soft in oil and hard in water is a shallow plain steel and no contradiction.
#[test]
fn soft_in_oil_and_hard_in_water_is_water_hardening() {
    let answer = json(&["unknown", "--coupon", "oil:<45 HRC", "water:>60 HRC"]).json();
    assert_eq!(
        (&answer["quench"]["key"], &answer["clashes"]),
        (&"water".into(), &Value::Array(Vec::new()))
    );
}

#[test]
fn what_cannot_be_read_is_refused_with_what_would_be() {
    for (arguments, exit, code, allowed) in [
        (&["unknown", "--spark", "blue"][..], 2, "bench.unknown_answer", "forks"),
        (&["unknown", "--magnet", ":"], 2, "bench.unknown_answer", "sticks"),
        (&["unknown", "--skin", "thick"], 2, "bench.unknown_answer", "hard"),
        (&["unknown", "--snap", "flew"], 2, "bench.unknown_answer", "coarse"),
        (&["unknown", "--coupon", "50-55 HRC"], 2, "bench.unreadable_coupon", "oil:"),
        (&["unknown", "--coupon", "lard:50 HRC"], 2, "bench.unreadable_coupon", "oil:"),
        (&["unknown", "--coupon", "oil:50", "oil:55"], 2, "bench.unreadable_coupon", "one"),
        (&["unknown", "--coupon", "oil:10-10 HRC"], 1, "unknown.upside_down", "HRC"),
    ] {
        let refused = json(arguments).refused(exit);
        assert_eq!(refused["code"], code, "{refused}");
        assert!(refused["allowed"].as_str().unwrap().contains(allowed), "{refused}");
        assert!(!refused["instead"].as_str().unwrap().is_empty(), "{refused}");
    }
    assert_eq!(
        json(&["unknown", "--coupon", "oil:soft"]).refused(1)["code"],
        "designation.no_number"
    );
    assert_eq!(biteband(&["unknown", "--coupon"]).code, 2);
}

#[test]
fn temperatures_follow_the_units() {
    let metric = axle(&[])["next"]["how"].to_string();
    let inch = axle(&["--units", "inch"])["next"]["how"].to_string();
    assert!(metric.contains("790 – 815 °C"), "{metric}");
    // 790 and 815 °C are 1454 and 1499 °F, and people set 5 °F.
    assert!(inch.contains("1455 – 1500 °F"), "{inch}");
}
