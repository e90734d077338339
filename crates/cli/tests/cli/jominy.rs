//! `biteband jominy`: published bands, the standard's example, refusals with their way out.

use crate::common::{biteband, json};
use serde_json::Value;

fn point(answer: &Value, sixteenths: f64) -> &Value {
    let curve = answer["curve"].as_array().unwrap();
    curve.iter().find(|point| point["sixteenths"] == sixteenths).unwrap()
}

/// SAE J1268, 5140H: seen in part in a reprint, J1 60 to 53 and J9 48 to 31 HRC.
#[test]
fn a_grade_with_a_band_answers_with_it() {
    let answer = json(&["jominy", "5140"]).json();
    assert_eq!(answer["steel"], "5140");
    assert_eq!((&answer["method"], &answer["h_band"]), (&"h-band".into(), &"5140H".into()));
    for (sixteenths, low, high) in [(1.0, 53.0, 60.0), (9.0, 31.0, 48.0), (24.0, 20.0, 34.0)] {
        let point = point(&answer, sixteenths);
        assert_eq!((&point["low"], &point["high"]), (&low.into(), &high.into()));
        assert_eq!(point["mid"], f64::midpoint(low, high));
    }
    // Behind the last printed lower edge.
    let soft = point(&answer, 32.0);
    assert_eq!((&soft["low"], &soft["mid_at_most"]), (&Value::Null, &true.into()));
}

/// ASTM A255, worked example 4118 modified: an ideal diameter of 1.93 to 1.95 in.
#[test]
fn the_example_of_the_standard() {
    let heat = "C=0.22,Mn=0.80,Si=0.18,Ni=0.10,Cr=0.43,Mo=0.25,Cu=0.10,V=0.05";
    let answer = json(&["jominy", "--composition", heat]).json();
    let mid = answer["ideal_diameter_mm"]["mid"].as_f64().unwrap() / 25.4;
    assert!((1.93..=1.95).contains(&mid), "{mid}");
    assert_eq!(answer["method"], "astm-a255");
    assert_eq!(answer["steel"], Value::Null);
    // Independently worked out: 40.6 HRC at J3, below 20 at J12.
    assert!((point(&answer, 3.0)["mid"].as_f64().unwrap() - 40.6).abs() < 0.1);
    assert_eq!(point(&answer, 12.0)["mid"], Value::Null);
    let text = biteband(&["jominy", "--composition", heat, "--units", "inch"]);
    assert!(text.out.contains("1.9 in"), "{}", text.out);
}

#[test]
fn outside_the_range_of_the_standard_is_said() {
    let answer = json(&["jominy", "4340"]).json();
    assert_eq!(answer["method"], "astm-a255-outside-range");
    assert_eq!(answer["confidence"], "low");
    assert_eq!(answer["outside"][0]["element"], "Ni");
    let told = biteband(&["jominy", "4340"]).out;
    assert!(told.contains("Outside the range of the standard: 1.825 % Ni"), "{told}");
}

#[test]
fn refusals_name_the_way_out() {
    for (arguments, exit, code, way) in [
        (&["jominy", "1095"][..], 1, "hardenability.high_carbon", "64 – 67 HRC"),
        (&["jominy", "D2"], 1, "hardenability.published", "61 – 64 HRC"),
        (&["jominy", "304"], 1, "hardenability.not_hardened", "card"),
        (&["jominy", "12L14"], 1, "hardenability.open_carbon", "certificate"),
        (&["jominy", "--composition", "C=0.4,Mn=0.8,B=0.002"], 1, "hardenability.boron", "trial"),
        (&["jominy", "--composition", "C=0.4,Mn=0.8,Cr=5"], 1, "hardenability.outside", "trial"),
        (&["jominy", "--composition", "C=0.4"], 1, "hardenability.missing", "Mn"),
        (&["jominy", "--composition", "C=0.05,Mn=0.4"], 1, "hardenability.low_carbon", "Case"),
    ] {
        let refused = json(arguments).refused(exit);
        assert_eq!(refused["code"], code, "{refused}");
        assert!(refused["instead"].as_str().unwrap().contains(way), "{refused}");
    }
    assert_eq!(biteband(&["jominy"]).code, 2);
    assert_eq!(biteband(&["jominy", "4140", "--composition", "C=0.4,Mn=0.8"]).code, 2);
}
