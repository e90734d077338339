//! Worked cases of the bench and mistakes that people make, through the command line.
//!
//! The numbers are those of the printed tables and of the cases; each is named beside its check.

use crate::common::{biteband, json};

/// The reading, the scales asked for, and what stdout must say.
#[test]
fn conversions_inside_the_tables() {
    for (reading, to, says) in [
        // ASTM E140 Table 1, rows 38 and 42.
        ("38-42 HRC", "HBW", "353 – 390 HBW"),
        // Row 39: 362 HBW.
        ("363 HBW", "HRC", "39 HRC"),
        // Rows 58 (653 HV) and 62 (746 HV).
        ("HV 700 +-50", "HRC", "58 – 62 HRC"),
        // Rows 28 and 32: pre-hard bar.
        ("28-32 HRC", "HBW", "271 – 301 HBW"),
    ] {
        let done = biteband(&["convert", reading, "--to", to]);
        assert_eq!(done.code, 0, "{reading}: {}", done.err);
        assert!(done.out.contains(says), "{reading}: {}", done.out);
    }
    let pins = biteband(&["convert", "HV 700 +-50", "--to", "HRC"]).out;
    assert!(pins.contains("HV10 or HV30") && pins.contains("skin or core"), "{pins}");
}

#[test]
fn conversions_that_nobody_published_name_the_end_and_the_way_out() {
    for (reading, to, says) in [
        // ASTM E140 Table 1 ends at 20 HRC = 226 HBW = 238 HV.
        ("HRC 15", "HBW", &["20 HRC = 226 HBW", "HRB"][..]),
        ("HRC 15", "HV", &["20 HRC = 238 HV", "HRB"]),
        // ASTM E140 Table 2 ends at 100 HRB = 240 HBW.
        ("HRB 110", "HBW", &["from 10 to 100", "240 HBW"]),
        // ISO 18265 Table A.1 ends at 2180 MPa, ASTM A370 at 59 HRC = 2420 MPa.
        ("62 HRC", "Rm", &["2180 MPa", "59 HRC = 2420 MPa", "Specify hardness"]),
    ] {
        let done = biteband(&["convert", reading, "--to", to]);
        assert_eq!((done.code, done.out.as_str()), (1, ""), "{reading}");
        let told = done.err.split_whitespace().collect::<Vec<_>>().join(" ");
        for word in says {
            assert!(told.contains(word), "{reading}: {told}");
        }
        json(&["convert", reading, "--to", to]).refused(1);
    }
}

#[test]
fn files_in_all_their_moods() {
    for (arguments, code, says, silent) in [
        // An O1 bit, 58 to 60 wanted: between 55 and 60, not proved.
        (
            &["file", "--bites", "60,65", "--skates", "55", "--target", "58-60 HRC"][..],
            0,
            &["Between your 55 and 60 files", "Not proved either way"][..],
            "In the band you want",
        ),
        // The rule of the trade, common practice without a source.
        (
            &["file", "--skates", "50", "--bites", "55"],
            0,
            &["Between your 50 and 55 files"],
            "50 – 55 HRC",
        ),
        // A ground pin: the 45 and the 50 exclude each other, and no number is given.
        (
            &["file", "--skates", "40,50", "--bites", "45,55,60"],
            1,
            &["The 45 bites", "The 50 skates", "known hardness"],
            "19 of 20",
        ),
        // W1 as quenched: above about 65, no upper number, temper today.
        (
            &["file", "--skates", "65"],
            0,
            &["Harder than your 65 file", "or more", "temper it today"],
            "–  HRC",
        ),
        // 4140 of the rack: below about 40, pre-hard 28 to 32 HRC is 271 to 301 HBW (ASTM E140 Table 1).
        (
            &["file", "--bites", "40"],
            0,
            &[
                "Softer than your 40 file",
                "far softer",
                "28-32 HRC, 271-301 HBW",
                "Do not harden it to find out",
            ],
            "not hardened",
        ),
        // One ordinary file of about 63 HRC.
        (
            &["file", "--set", "63", "--tolerance", "3", "--skates", "63"],
            0,
            &["Harder than your 63 file", "does not prove the middle"],
            " – 6",
        ),
    ] {
        let done = biteband(arguments);
        assert_eq!(done.code, code, "{arguments:?}: {}", done.err);
        let told = format!("{}{}", done.out, done.err);
        let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
        for word in says {
            assert!(told.contains(word), "{arguments:?}: {told}");
        }
        assert!(!told.contains(silent), "{arguments:?}: {told}");
        assert!(told.contains("eye protection"), "{told}");
    }
}

#[test]
fn after_the_worn_file_is_out_the_rest_says_forty_to_forty_five() {
    let answer = json(&["file", "--skates", "40", "--bites", "45,55,60"]).json();
    let limit = |end: &str| answer["band"][end].as_f64().unwrap();
    // Two points either way about each file: SAE J864.
    assert!((limit("low") - 40.0).abs() < 2.0 && (limit("high") - 45.0).abs() < 2.0);
}

/// What people and scripts get wrong: arguments, exit code, code of the refusal, a word of the way out.
#[test]
fn mistakes_are_answered_with_a_way_out() {
    for (arguments, exit, code, word) in [
        (&["convert", "52 HRX"][..], 1, "designation.unknown_scale", "HRC"),
        (&["convert", "52 HRC", "--to", "HRX"], 2, "bench.unknown_scale", "HBW"),
        (&["convert", "52 HRC", "--table", "mine"], 2, "bench.unknown_table", "astm-e140-t1"),
        (&["convert", "52 HRC 544 HV"], 1, "designation.two_scales", "measured"),
        (&["convert", "52"], 1, "designation.no_scale", "HRC"),
        (&["convert", ""], 1, "designation.empty", "52 HRC"),
        (&["convert", "54-50 HRC"], 1, "designation.backward_range", "50 to 54"),
        (&["convert", "58/62 HRC"], 1, "designation.slash_range", "58 to 62"),
        (&["convert", "NaN HRC"], 1, "designation.no_number", "52 HRC"),
        (&["convert", "1e308 HRC"], 1, "", ""),
        (&["convert", "1000000 HRC"], 1, "hardness.outside_scale", "HV"),
        (&["convert", "60 Shore A"], 1, "designation.rubber_scale", "HSc"),
        (&["convert", "52 HRC", "--to", "HRC"], 1, "hardness.same_scale", "another scale"),
        (&["convert", "68 HRC", "--to", "HBW"], 1, "hardness.outside_tables", "HRC"),
        (&["convert", "--", "-5 HRC"], 1, "designation.negative", "38-42"),
        (&["file", "--set", ""], 1, "evidence.no_files", "grade"),
        (&["file", "--set", "50,50"], 1, "evidence.equal_grades", "Keep one"),
        (&["file", "--set", "hard"], 2, "bench.unreadable_grades", "40 45 50"),
        (&["file", "--set", "5"], 1, "evidence.out_of_range", "30 to 70"),
        (&["file", "--bites", "48"], 1, "evidence.no_such_file", "--set"),
        (&["file", "--strokes", "48:b"], 1, "evidence.no_such_file", "40, 45"),
        (&["file", "--bites", "50", "--skates", "50"], 2, "cli.grade_twice", "50:b,k"),
        (&["file", "--strokes", "50=b"], 2, "bench.unreadable_strokes", "55:b"),
        (&["file", "--strokes", "50:x"], 2, "bench.unknown_outcome", "skates"),
        (&["file", "--proved", "55:b"], 2, "bench.unreadable_proofs", "55@53:b"),
        (&["file", "--proved", "55@5:b"], 1, "evidence.out_of_range", "20 to 72"),
        (&["file", "--prior", "about 54"], 2, "bench.unreadable_prior", "N(54,2)"),
        (&["file", "--prior", "N(54,0)"], 1, "evidence.out_of_range", ""),
        (&["file", "--hand", "bold"], 2, "bench.unknown_hand", "careful"),
        (&["file", "--tolerance", "NaN"], 1, "evidence.out_of_range", "0 to 5"),
        (&["file", "--tolerance", "1e308"], 1, "evidence.out_of_range", "0 to 5"),
        (
            &["file", "--bites", "55", "--target", "54-50 HRC"],
            1,
            "designation.backward_range",
            "50 to 54",
        ),
        (&["file", "--bites", "55", "--target", "54 HRC"], 1, "bench.target_not_a_range", "50-54"),
        (&["file", "--bites", "55", "--target", "hard"], 1, "", ""),
        (
            &["file", "--yes-no", "--slight", "55"],
            1,
            "evidence.slight_in_yes_no",
            "bites or skates",
        ),
    ] {
        let done = json(arguments);
        let refused = done.refused(exit);
        if !code.is_empty() {
            assert_eq!(refused["code"], code, "{arguments:?}");
        }
        let told = format!("{refused} {}", done.err);
        assert!(told.len() < 2000, "{arguments:?}: {told}");
        assert!(told.contains(word), "{arguments:?}: {told}");
    }
}
