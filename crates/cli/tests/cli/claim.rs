//! `biteband claim`.

use crate::common::{biteband, json};

const ONE: &str = "28-32 HRC";

#[test]
fn an_answer_is_an_answer_whatever_its_verdict() {
    // 190 HBW is annealed stock: 28 HRC is 271 HBW (ASTM E140 Table 1).
    for (reading, rule, verdict) in [
        ("190 HBW", "guarded:0.95", "disagrees"),
        ("288 HBW +-8", "guarded:0.95", "not proved"),
        ("288 HBW +-8", "simple", "agrees"),
    ] {
        let done = json(&["claim", ONE, "--measured", reading, "--rule", rule]);
        assert_eq!(done.code, 0, "{}", done.err);
        let answer = done.json();
        assert_eq!(answer["verdict"], verdict, "{reading} {rule}");
        assert_eq!(answer["rule"], rule);
        let chance = |name: &str| answer[name].as_f64().unwrap();
        assert!((chance("under") + chance("inside") + chance("over") - 1.0).abs() < 1e-9);
        for field in ["source", "u", "share"] {
            assert!(!answer["doubt"][0][field].is_null(), "{field}");
        }
        for field in ["method", "why"] {
            assert!(answer["settle"][field].is_string(), "{field}");
        }
        let shares = answer["doubt"].as_array().unwrap().iter();
        let sum: f64 = shares.map(|one| one["share"].as_f64().unwrap()).sum();
        assert!((sum - 1.0).abs() < 1e-9);
    }
}

#[test]
fn before_anything_is_measured_the_best_chance_is_told() {
    let answer = json(&["claim", ONE]).json();
    assert_eq!(answer["verdict"], "not proved");
    assert!(answer["inside"].is_null() && answer["estimate"].is_null());
    // sqrt(0.3^2 / 3 + 0.4^2 + 0.5^2) = 0.66: 2 Phi(2 / 0.66) - 1 = 0.998, less for the rounding.
    let chance = answer["achievable"][0]["chance"].as_f64().unwrap();
    assert!(chance > 0.98 && chance < 0.998, "{chance}");
    let text = biteband(&["claim", ONE]);
    assert!(text.out.starts_with("Nothing was measured yet."), "{}", text.out);
}

#[test]
fn readings_files_and_places_are_taken_together() {
    let alone = json(&["claim", "50-54 HRC", "--files", "50:k 55:b"]).json();
    let both = json(&[
        "claim",
        "50-54 HRC",
        "--files",
        "50:k 55:b",
        "--measured",
        "52 HRC",
        "--reading",
        "615 HV10",
    ])
    .json();
    assert_eq!(both["readings"].as_array().unwrap().len(), 2);
    assert!(both["inside"].as_f64().unwrap() > alone["inside"].as_f64().unwrap());
    let listed = json(&["claim", "50-54 HRC", "--skates", "50", "--bites", "55"]).json();
    assert_eq!(listed["inside"], alone["inside"]);
    // Strokes under both names, or a target beside the claim, are a slip.
    let twice = biteband(&["claim", ONE, "--files", "40:b", "--strokes", "40:b"]);
    assert_eq!(twice.code, 2);
    let target = json(&["claim", ONE, "--target", "30-31 HRC"]).refused(2);
    assert_eq!(target["code"], "cli.claim_is_the_target");
}

#[test]
fn the_text_tells_verdict_doubt_and_what_settles_it() {
    let done = biteband(&["claim", ONE, "--measured", "288 HBW +-8", "--steel", "4140"]);
    assert_eq!(done.code, 0);
    for part in [
        "Not proved: most likely as the paper says.",
        "Have it read in HRC.",
        "Conversion HBW → HRC",
        "Rounding of the paper",
        "at best",
        "271 – 301 HBW",
        "Sources: jcgm-106",
    ] {
        assert!(done.out.contains(part), "{part}\n{}", done.out);
    }
    let total: u32 = done
        .out
        .lines()
        .filter(|line| line.starts_with("  ") && line.ends_with(" %") && line.contains('±'))
        .filter_map(|line| line.split_whitespace().rev().nth(1)?.parse::<u32>().ok())
        .sum();
    assert_eq!(total, 100);
    // A certificate for the skin, measured in the core.
    let core = biteband(&["claim", "48-52 HRC", "--measured", "41 HRC", "--place", "core"]);
    assert!(core.out.contains("Measure where the paper's number was measured."), "{}", core.out);
    let core = biteband(&[
        "claim",
        "48-52 HRC",
        "--measured",
        "41 HRC",
        "--place",
        "core",
        "--claimed-place",
        "core",
    ]);
    assert!(core.out.starts_with("Disagrees"), "{}", core.out);
}

#[test]
fn what_cannot_end_it_is_no_way_to_settle_it() {
    let done = biteband(&["claim", ONE, "--measured", "32 HRC"]);
    let flat = done.out.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("Other ways") && !flat.contains("chance of 0 %"), "{}", done.out);
}

#[test]
fn what_is_no_claim_is_refused() {
    for (arguments, exit, code, word) in [
        (&["claim", "28-32"][..], 2, "bench.missing_scale", "271 – 301 HBW"),
        (&["claim", "32-28 HRC"], 1, "designation.backward_range", "28 to 32"),
        (&["claim", "75 HRC min"], 1, "hardness.outside_scale", "HV"),
        (&["claim", "1200 HV min"], 1, "bench.claim_beyond_steel", "nitrided"),
        (&["claim", "10.9"], 1, "bench.claim_is_class", "1000 MPa"),
        (&["claim", "condition", "A"], 2, "bench.unknown_condition", "BS 970"),
        (&["claim", ONE, "--measured", "30 HRC +-0"], 2, "bench.unreadable_uncertainty", "u=4"),
        (&["claim", ONE, "--measured", "780 HLD"], 1, "hardness.no_table", "which scale"),
        (&["claim", ONE, "--rule", "fair"], 2, "bench.unknown_rule", "guarded:0.95"),
        (&["claim", ONE, "--place", "rim"], 2, "bench.unknown_place", "core"),
        (&["claim", ONE, "--files", "48:b"], 1, "evidence.no_such_file", "--set"),
        (&["claim", ONE, "--files", "40:k 45:b 50:k"], 1, "evidence.contradiction", "No number"),
        (
            &["claim", ONE, "--measured", "30 HRC", "--measured", "45 HRC"],
            1,
            "evidence.clash",
            "known hardness",
        ),
    ] {
        let done = json(arguments);
        let refused = done.refused(exit);
        assert_eq!(refused["code"], code, "{arguments:?}");
        assert!(format!("{refused} {}", done.err).contains(word), "{arguments:?}: {refused}");
    }
    assert_eq!(biteband(&["claim"]).code, 2);
}
