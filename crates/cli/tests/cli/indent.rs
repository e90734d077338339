//! `biteband indent`: worked numbers, rules, refusals.
//!
//! Numbers come from `tests/reference/indentation/checks.csv`, where each names its source, or from the
//! standard named beside the check.

use std::path::Path;

use crate::common::{biteband, json};
use serde_json::Value;

fn near(value: &Value, wanted: f64, give: f64) -> bool {
    value.as_f64().is_some_and(|value| (value - wanted).abs() <= give)
}

/// The first number in a text, behind a mark.
fn after(text: &str, mark: &str) -> Option<String> {
    let rest = text.split_once(mark)?.1.trim_start();
    Some(rest.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect())
}

#[test]
fn worked_numbers_of_the_reference_file() {
    let path =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/indentation/checks.csv");
    let mut asked = 0;
    for row in csv::Reader::from_path(path).unwrap().records() {
        let row = row.unwrap();
        let (inputs, computed) = (&row[2], row[4].split([' ', ';']).next().unwrap());
        let force = after(inputs, "F=").map(|force| format!("{force}N"));
        let arguments: Vec<String> = match &row[1] {
            "HV" => {
                let d = after(inputs, "d=").unwrap();
                vec!["vickers".into(), "--force".into(), force.unwrap(), "--d1".into(), d + "mm"]
            }
            "HBW" => {
                let d = after(inputs, "d=").unwrap();
                ["brinell", "--ball", "10mm", "--force", "29.42kN", "--d", &(d + "mm")]
                    .map(str::to_owned)
                    .to_vec()
            }
            "HK" => {
                let d = after(inputs, "L=").unwrap();
                vec!["knoop".into(), "--force".into(), force.unwrap(), "--d".into(), d + "mm"]
            }
            "HRC" | "HRB" => {
                let (scale, depth) = (row[1].to_owned(), after(inputs, "h =").unwrap() + "mm");
                vec!["rockwell".into(), "--scale".into(), scale, "--depth".into(), depth]
            }
            _ => continue,
        };
        let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
        let answer = json(&[&["indent"], &words[..]].concat()).json();
        let wanted: f64 = computed.parse().unwrap();
        assert!(near(&answer["value"], wanted, wanted * 2e-4), "{words:?} {wanted}: {answer}");
        asked += 1;
    }
    // HV 2, HBW 9, HK 2, HRC and HRB one each.
    assert_eq!(asked, 15);
}

#[test]
fn fields_that_the_contract_names() {
    let run = json(&[
        "indent",
        "vickers",
        "--force",
        "30kgf",
        "--d1",
        "0.301mm",
        "--d2",
        "0.305mm",
        "--thickness",
        "1mm",
    ]);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    let answer = run.json();
    for field in ["value", "scale", "corrected", "valid", "limits"] {
        assert!(answer.get(field).is_some(), "{field}");
    }
    assert_eq!(answer["designation"], "606 HV30");
    // ISO 6507-1: 1.5 diagonals, read.
    let limit = &answer["limits"][0];
    assert_eq!((&limit["rule"], &limit["holds"]), (&"thickness".into(), &true.into()));
    assert!(near(&limit["needed"], 1.5 * 0.303, 1e-9) && limit["seen"] == "seen");
}

/// ISO 6507-1, curved-surface annex: 824 HV on a ball of 10 mm is 810 HV10, 323 HV in a bore of 5 mm with a
/// diagonal along the axis 347 HV30 (recalled).
#[test]
fn vickers_on_curves() {
    let ball = ["indent", "vickers", "--force", "98.07N", "--d1", "0.15mm", "--round", "10mm"];
    let ball = json(&[&ball[..], &["--sphere"]].concat()).json();
    assert!(near(&ball["value"], 824.0, 0.5) && near(&ball["corrected"], 810.0, 0.5));
    assert_eq!(ball["designation"], "810 HV10");
    let bore = ["indent", "vickers", "--force", "294.2N", "--d1", "0.415mm", "--round", "5mm"];
    let bore = json(&[&bore[..], &["--bore", "--along-axis"]].concat()).json();
    assert!(near(&bore["corrected"], 347.0, 0.5), "{bore}");
    assert!(near(&bore["correction"]["factor"], 1.075, 0.001));
}

/// ASTM E18: 55 HRC read on 10 mm, add 1.5; 30 HRC on 6.4 mm, add 5.0, which ISO 6508-1 leaves blank.
#[test]
fn rockwell_on_rounds() {
    let ask = |value, round| {
        json(&["indent", "rockwell", "--scale", "HRC", "--value", value, "--round", round]).json()
    };
    let pin = ask("55", "10mm");
    assert!(near(&pin["corrected"], 56.5, 1e-9) && pin["valid"] == true);
    let thin = ask("30", "6.4mm");
    assert!(near(&thin["corrected"], 35.0, 1e-9) && thin["valid"] == false, "{thin}");
    assert!(thin["verdict"].as_str().unwrap().contains("too round"));
}

/// ASTM E18-19, example X2.3: mean 40.63, range 0.17.
#[test]
fn several_readings() {
    let block = "40.61,40.72,40.65,40.61,40.55";
    let series =
        json(&["indent", "rockwell", "--scale", "HRC", "--readings", block]).json()["series"]
            .clone();
    assert!(near(&series["mean"], 40.628, 1e-9) && near(&series["range"], 0.17, 1e-9));
    assert!(series["outlier"].is_null() && near(&series["level"], 0.95, 0.0));
    let commas = ["indent", "rockwell", "--scale", "HRC", "--readings", "40,61;40,72"];
    assert!(near(&json(&commas).json()["series"]["n"], 2.0, 0.0));
}

#[test]
fn what_cannot_be_answered_says_why_and_what_instead() {
    for (arguments, code, name) in [
        (&["vickers", "--d1", "0.3mm"][..], 2, "bench.missing_force"),
        (&["vickers", "--force", "30kgf"], 2, "bench.missing_measurement"),
        (&["vickers", "--force", "30", "--d1", "0.3mm"], 2, "bench.unreadable_unit"),
        (&["vickers", "--force", "30kgf", "--d1", "0.3"], 2, "bench.unreadable_unit"),
        (&["vickers", "--force", "heavy", "--d1", "0.3mm"], 2, "bench.unreadable_force"),
        (&["vickers", "--force", "30kgf", "--d1", "-0.3mm"], 2, "bench.unreadable_length"),
        (&["vickers", "--force", "30kgf", "--d1", "15in"], 1, "hardness.outside_scale"),
        (&["vickers", "--force", "30kgf", "--d1", "0mm"], 1, "quantity.out_of_bounds"),
        (
            &["vickers", "--force", "30kgf", "--d1", "0.3mm", "--d2", "0.012in"],
            1,
            "bench.mixed_units",
        ),
        (
            &["vickers", "--force", "30kgf", "--d1", "0.30mm", "--d2", "0.33mm"],
            1,
            "indentation.unequal_diagonals",
        ),
        (
            &["vickers", "--force", "30kgf", "--d1", "0.3mm", "--round", "1mm"],
            1,
            "indentation.too_curved",
        ),
        (&["vickers", "--force", "30kgf", "--d1", "0.3mm", "--bore"], 2, "bench.missing_round"),
        (&["brinell", "--force", "3000kgf", "--d", "3mm"], 2, "bench.missing_ball"),
        (
            &["brinell", "--ball", "10mm", "--force", "3000kgf", "--d", "10mm"],
            1,
            "indentation.not_below_ball",
        ),
        (
            &["brinell", "--ball", "10mm", "--force", "3000kgf", "--value", "10"],
            1,
            "indentation.ball_sinks",
        ),
        (
            &[
                "brinell",
                "--ball",
                "10mm",
                "--force",
                "3000kgf",
                "--d",
                "3mm",
                "--material",
                "wood",
            ],
            2,
            "bench.unknown_metal",
        ),
        (
            &["brinell", "--ball", "10mm", "--force", "3000kgf", "--d", "3mm", "--round", "50mm"],
            1,
            "indentation.no_round_table",
        ),
        (&["knoop", "--d", "0.1mm"], 2, "bench.missing_force"),
        (&["rockwell", "--value", "52"], 2, "bench.missing_scale"),
        (&["rockwell", "--scale", "HRX", "--value", "52"], 2, "bench.unknown_scale"),
        (&["rockwell", "--scale", "HV", "--value", "52"], 1, "indentation.not_by_depth"),
        (&["rockwell", "--scale", "HRC", "--value", "hard"], 2, "bench.unreadable_value"),
        (&["rockwell", "--scale", "HRC", "--value", "101"], 1, "indentation.no_depth"),
        (&["rockwell", "--scale", "HRC", "--readings", "a"], 2, "bench.unreadable_readings"),
        (&["rockwell", "--scale", "HRC", "--readings", "52,99"], 1, "hardness.outside_scale"),
        (
            &["rockwell", "--scale", "HRC", "--value", "52", "--depth", "0.1mm"],
            2,
            "bench.unreadable_question",
        ),
        (
            &["rockwell", "--scale", "HRC", "--value", "52", "--round", "5mm"],
            1,
            "indentation.too_small",
        ),
        (
            &["rockwell", "--scale", "HRC", "--value", "52", "--round", "12mm", "--bore"],
            1,
            "indentation.no_round_table",
        ),
    ] {
        let refused = json(&[&["indent"], arguments].concat()).refused(code);
        assert_eq!(refused["code"], name, "{arguments:?}");
        assert!(!refused["instead"].as_str().unwrap().is_empty(), "{refused}");
    }
}

#[test]
fn both_readings_of_a_bare_number_are_spelled_out() {
    let run = biteband(&["indent", "rockwell", "--scale", "HRC", "--value", "52", "--round", "12"]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("12 mm and 12 in") && run.err.contains("12mm or 12in"), "{}", run.err);
}

#[test]
fn units_change_the_text_and_not_the_numbers() {
    let ask = |units| {
        json(&[
            "--units",
            units,
            "indent",
            "rockwell",
            "--scale",
            "HRC",
            "--value",
            "52",
            "--thickness",
            "0.032in",
        ])
        .json()
    };
    let (metric, inch) = (ask("metric"), ask("inch"));
    let table = |answer: &Value| {
        let limits = answer["limits"].as_array().unwrap().clone();
        limits.into_iter().find(|limit| limit["rule"] == "thickness_table").unwrap()
    };
    // ASTM E18: 0.032 in serves 52 HRC and more.
    assert!(table(&metric)["holds"] == true && near(&table(&metric)["needed"], 0.8128, 1e-9));
    assert_eq!(table(&metric)["needed"], table(&inch)["needed"]);
    assert!(table(&inch)["text"].as_str().unwrap().contains("0.032 in"));
    assert!(table(&metric)["text"].as_str().unwrap().contains("0.813 mm"));
    assert_eq!(metric["valid"], false, "ten depths are 0.96 mm");
}
