//! `biteband reach`: the contract's fields, what is printed, refusals with their way out.

use crate::common::{biteband, json};

const PAWL: &[&str] = &["reach", "4140", "--round", "50mm", "--quench", "oil"];

/// The fields that the contract names. Handbook table of the mass effect, recalled: 49, 43 and 38 HRC as quenched.
#[test]
fn a_target_against_a_section() {
    let answer = json(&[PAWL, &["--target", "50 HRC"][..]].concat()).json();
    assert_eq!(answer["target"]["middle"], "no");
    assert_ne!(answer["target"]["skin"], "yes");
    assert_eq!(answer["method"], "h-band");
    for place in answer["positions"].as_array().unwrap() {
        let on_record = match place["where"].as_str().unwrap() {
            "skin" => 49.0,
            "half" => 43.0,
            "middle" => 38.0,
            _ => continue,
        };
        let end = |name: &str| place[name].as_f64().unwrap();
        assert!(end("low") <= on_record && on_record <= end("high"), "{place}");
        assert!(end("low") < end("mid") && end("mid") < end("high"), "{place}");
        assert!((0.0..=1.0).contains(&end("chance")));
    }
    let ways = answer["ways_out"].as_array().unwrap();
    let way = |kind: &str| ways.iter().find(|way| way["way"] == kind).unwrap();
    assert!(way("smaller_section")["likely_mm"].as_f64().unwrap() >= 25.0);
    assert!(way("other_grade")["grades"].as_array().unwrap().contains(&"4340".into()));
    assert!(way("skin_only")["hrc"].is_null());
}

#[test]
fn what_is_printed_is_short_and_said_once() {
    let told = biteband(&[PAWL, &["--target", "50 HRC"][..]].concat());
    assert_eq!(told.code, 0);
    assert!(told.out.starts_with("4140, 50 mm round, oil moved gently\n\nSkin maybe, middle no\n"));
    let words = told.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(words.matches("licensed engineer").count(), 1, "{words}");
    assert!(told.out.contains("- Quench cracking from water or from overheating.\n"));
    let ambiguous = biteband(&["reach", "45", "--round", "20mm", "--quench", "water"]).out;
    assert!(ambiguous.starts_with("AMBIGUOUS: 45 is the name of more than one steel."));
    // Alike all through: nothing is said twice, and nothing of a softer core.
    let thin = biteband(&["reach", "1075", "--plate", "1mm", "--quench", "oil"]).out;
    assert!(thin.contains("62 – 65 HRC, all through") && !thin.contains("core"), "{thin}");
}

/// 650 HV is 58 HRC to the nearest: ASTM E140 Table 1 has 653 HV for 58 HRC.
#[test]
fn sizes_and_targets_in_every_unit() {
    let ask = &["reach", "4140", "--round", "1-1/2in", "--quench", "oil", "--target", "650 HV min"];
    let inch = json(&[&ask[..], &["--units", "inch"]].concat()).json();
    let metric = json(ask).json();
    assert_eq!(inch["positions"], metric["positions"]);
    assert!((inch["section"]["ruling_mm"].as_f64().unwrap() - 38.1).abs() < 1e-9);
    assert_eq!(inch["section"]["text"], "1.5 in round");
    assert_eq!(inch["wanted"]["shown"], "58 HRC min");
    // Places of the end-quench bar are counted in sixteenths of an inch.
    let told = biteband(&[&ask[..], &["--units", "inch"]].concat()).out;
    assert!(told.contains("J9") && !told.contains(" mm"), "{told}");
    let comma = json(&["reach", "4140", "--round", "25,4mm", "--quench", "oil"]).json();
    assert_eq!(comma["section"]["ruling_mm"], 25.4);
}

#[test]
fn refusals_name_the_way_out() {
    let round: &[&str] = &["--round", "20mm", "--quench", "oil"];
    for (arguments, exit, code, way) in [
        (&[&["reach", "9999"], round].concat()[..], 1, "steel.unknown_grade", "composition"),
        (&[&["reach", "304"], round].concat(), 1, "reach.does_not_harden", "Take another steel"),
        (&[&["reach", "17-4PH"], round].concat(), 1, "reach.ages", "Age it"),
        (&[&["reach", "W1"], round].concat(), 1, "reach.too_mild", "papers name"),
        (
            &["reach", "O1", "--round", "20mm", "--quench", "water"],
            1,
            "reach.never_in_this",
            "papers name",
        ),
        (
            &["reach", "4140", "--round", "20mm", "--quench", "used oil"],
            1,
            "quench.unknown_oil",
            "quench oil",
        ),
        (
            &["reach", "4140", "--round", "20mm", "--quench", "lava"],
            2,
            "bench.unreadable_bath",
            "tank",
        ),
        (&["reach", "4140", "--round", "20mm"], 2, "bench.missing_quench", "tank"),
        (&["reach", "4140", "--quench", "oil"], 2, "bench.missing_section", "shape"),
        (
            &["reach", "4140", "--round", "0mm", "--quench", "oil"],
            1,
            "quantity.out_of_bounds",
            "unit",
        ),
        (&["reach", "4140", "--round", "2m", "--quench", "oil"], 1, "section.size", "unit"),
        (
            &["reach", "4140", "--tube", "20mm,25mm", "--quench", "oil"],
            1,
            "section.wall",
            "outside first",
        ),
        (
            &[&["reach", "4140", "--part", "teapot"], round].concat(),
            1,
            "steel.unknown_part",
            "other words",
        ),
        (
            &[&["reach", "S7", "--part", "cold chisel", "--target", "62 HRC"], round].concat(),
            1,
            "reach.beyond_part",
            "working end only",
        ),
        (
            &[&["reach", "--composition", "C=0.41,Mn=0.85,Cr=100"], round].concat(),
            1,
            "steel.share_outside",
            "decimal point",
        ),
    ] {
        let refused = json(arguments).refused(exit);
        assert_eq!(refused["code"], code, "{refused}");
        assert!(refused["instead"].as_str().unwrap().contains(way), "{refused}");
    }
    assert_eq!(biteband(&["reach"]).code, 2);
    assert_eq!(biteband(&[&["reach", "4140", "--composition", "C=0.4"], round].concat()).code, 2);
}
