//! What each command prints on stdout and stderr, and with which code it ends.
//!
//! Numbers are those of the printed tables, named beside each check.

use std::fs;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::common::{Run, biteband, json, run};
use serde_json::Value;

fn is(value: &Value, wanted: f64) -> bool {
    value.as_f64().is_some_and(|value| value.total_cmp(&wanted).is_eq())
}

fn has(value: &Value, fields: &[&str]) {
    for field in fields {
        assert!(value.get(field).is_some(), "{field}: {value}");
    }
}

#[test]
fn a_reading_converts_by_its_printed_row() {
    let done = json(&["convert", "52 HRC", "--to", "HV,HBW,HRA"]);
    assert_eq!(done.code, 0);
    let answer = done.json();
    has(&answer, &["input", "results", "refusals", "cautions"]);
    has(&answer["input"], &["scale", "low", "high"]);
    // ASTM E140 Table 1, row 52: 544 HV, 512 HBW, 76.8 HRA.
    for (result, wanted) in answer["results"].as_array().unwrap().iter().zip([544.0, 512.0, 76.8]) {
        has(result, &["scale", "value", "low", "high", "width_level", "table", "basis", "flags"]);
        assert!(is(&result["value"], wanted), "{result}");
        assert_eq!(result["table"], "astm-e140-t1");
        assert_eq!(result["basis"], "row 52");
        assert!(result["low"].as_f64() < result["value"].as_f64());
        assert!(result["value"].as_f64() < result["high"].as_f64());
        assert!(is(&result["width_level"], 0.95));
    }
    assert_eq!(done.err, "");
}

#[test]
fn a_range_converts_by_its_limits() {
    let answer = json(&["convert", "38-42 HRC", "--to", "HBW"]).json();
    let result = &answer["results"][0];
    // ASTM E140 Table 1, rows 38 and 42.
    assert!(is(&result["low"], 353.0) && is(&result["high"], 390.0));
    assert!(result["value"].is_null() && result["width_level"].is_null());
    assert!(is(&answer["input"]["low"], 38.0) && is(&answer["input"]["high"], 42.0));
}

#[test]
fn text_has_name_number_width_table_and_row_on_one_line() {
    let done = biteband(&["convert", "52", "HRC", "--to", "HV"]);
    assert_eq!(done.code, 0);
    // ASTM E140 Table 1, row 52; the width of a Vickers number is 3 % times 1.96.
    let line = done.out.lines().find(|line| line.contains("Vickers")).unwrap();
    assert_eq!(
        line.split_whitespace().collect::<Vec<_>>().join(" "),
        "Vickers 544 HV ± 32 E140 T1, row 52"
    );
    assert!(done.out.contains("Other tables:"));
    assert!(done.out.contains("ASTM E140 Table 1"));
    assert!(done.out.lines().all(|line| line.chars().count() <= 80), "{}", done.out);
}

#[test]
fn flags_are_said_in_words() {
    // ASTM E140 Table 1 prints HBW at 62 HRC in parentheses.
    let done = biteband(&["convert", "62 HRC", "--to", "HBW"]);
    assert!(done.out.contains("In parentheses in print"), "{}", done.out);
    let flags = json(&["convert", "62 HRC", "--to", "HBW"]).json()["results"][0]["flags"].clone();
    assert_eq!(flags, serde_json::json!(["parenthesised"]));
}

#[test]
fn units_change_the_text_and_not_the_numbers() {
    let ask = |units| {
        let question =
            ["convert", "40 HRC", "--to", "Rm", "--table", "astm-a370-hrc", "--units", units];
        (biteband(&question).out, json(&question).json()["results"][0]["value"].clone())
    };
    let ((metric, mpa), (inch, same)) = (ask("metric"), ask("inch"));
    // ASTM A370, row 40: 1250 MPa, 181 ksi.
    assert!(is(&mpa, 1250.0) && mpa == same);
    assert!(metric.contains("MPa") && !metric.contains("ksi"), "{metric}");
    assert!(inch.contains("ksi"), "{inch}");
}

#[test]
fn one_scale_answered_and_one_refused_ends_well() {
    let question = ["convert", "62 HRC", "--to", "Rm,HV"];
    let done = json(&question);
    assert_eq!(done.code, 0);
    let answer = done.json();
    // ASTM E140 Table 1, row 62: 746 HV. No table has a strength there.
    assert!(is(&answer["results"][0]["value"], 746.0));
    assert_eq!(answer["results"].as_array().unwrap().len(), 1);
    assert_eq!(answer["refusals"][0]["code"], "hardness.outside_tables");
    let text = biteband(&question);
    assert_eq!(text.code, 0);
    assert!(text.out.contains("746 HV") && !text.out.contains("Specify hardness"));
    assert!(text.err.contains("Specify hardness"), "{}", text.err);
    assert!(done.err == text.err);
}

#[test]
fn scales_that_nobody_asked_for_are_not_complained_about() {
    let done = biteband(&["convert", "52 HRC"]);
    assert_eq!((done.code, done.err.as_str()), (0, ""));
}

#[test]
fn language_is_known_or_refused_as_usage() {
    assert_eq!(biteband(&["convert", "52 HRC", "--lang", "en-GB"]).code, 0);
    assert_eq!(biteband(&["convert", "52 HRC", "--lang", "xx"]).code, 2);
    assert_eq!(biteband(&["convert", "52 HRC", "--units", "cubit"]).code, 2);
    assert_eq!(biteband(&["convert"]).code, 2);
    assert_eq!(biteband(&["mystery"]).code, 2);
    assert_eq!(biteband(&[]).code, 2);
    assert_eq!(biteband(&["--version"]).code, 0);
}

#[test]
fn material_without_tables_is_refused() {
    let ask = |material| json(&["convert", "52 HRC", "--material", material]);
    assert_eq!(ask("carbon-alloy-steel").code, 0);
    assert_eq!(ask("cast-iron").refused(1)["code"], "bench.no_material");
}

#[test]
fn a_bracket_of_files_gives_a_band_and_the_fields_of_the_contract() {
    let done = json(&[
        "file",
        "--bites",
        "55,60,65",
        "--skates",
        "40,45,50",
        "--target",
        "50-54 HRC",
        "--skin",
        "ground",
    ]);
    assert_eq!(done.code, 0);
    let answer = done.json();
    has(&answer, &["band", "median", "target", "contradictions", "next"]);
    has(&answer["band"], &["scale", "low", "high", "level", "open_low", "open_high"]);
    has(&answer["target"], &["under", "inside", "over"]);
    has(&answer["next"], &["file", "why", "expected_width"]);
    let number = |value: &Value| value.as_f64().unwrap();
    let band = &answer["band"];
    assert!(number(&band["low"]) < 50.0 && number(&band["high"]) > 55.0);
    let sum: f64 =
        ["under", "inside", "over"].map(|side| number(&answer["target"][side])).iter().sum();
    assert!((sum - 1.0).abs() < 1e-12);
    // One pass of the six files: the bracket's middle, file-test simulation moved down by one file.
    assert!((number(&answer["median"]) - 52.5).abs() < 0.3);
}

#[test]
fn strokes_and_lists_say_the_same() {
    let lists = json(&["file", "--bites", "55,60", "--skates", "45,50", "--slight", "65"]).out;
    let strokes = json(&["file", "--strokes", "45:k 50:k 55:b 60:b 65:s"]).out;
    assert_eq!(lists, strokes);
    let twice = json(&["file", "--bites", "55", "--strokes", "55:b 50:k"]).out;
    assert_eq!(twice, json(&["file", "--strokes", "55:b,b 50:k"]).out);
}

#[test]
fn every_condition_changes_the_answer_or_its_notes() {
    let plain = ["file", "--bites", "55", "--skates", "50"];
    let base = json(&plain).out;
    for extra in [
        &["--skin", "on"][..],
        &["--skin", "ground"],
        &["--edge"],
        &["--finish-differs"],
        &["--carbide-rich"],
        &["--yes-no"],
        &["--hand", "careful"],
        &["--hand", "casual"],
        &["--tolerance", "3"],
        &["--prior", "N(54,2)"],
        &["--proved", "55@53:b,55@57:k"],
        &["--target", "50-54"],
    ] {
        let done = json(&[&plain[..], extra].concat());
        assert_eq!(done.code, 0, "{extra:?}: {}", done.err);
        assert!(done.out != base, "{extra:?}");
    }
}

#[test]
fn contradictory_files_end_with_one_and_name_both() {
    let done = json(&["file", "--skates", "40,50", "--bites", "45,55,60"]);
    let refused = done.refused(1);
    assert_eq!(refused["code"], "evidence.contradiction");
    let object = done.json();
    has(&object, &["refused", "contradictions", "next"]);
    assert!(object.get("band").is_none());
    let pair = &object["contradictions"][0];
    has(pair, &["harder", "softer", "why"]);
    assert!(is(&pair["harder"], 50.0) && is(&pair["softer"], 45.0));
    let text = biteband(&["file", "--skates", "40,50", "--bites", "45,55,60"]);
    assert_eq!((text.code, text.out.as_str()), (1, ""));
    for word in ["45", "50", "worn", "known hardness"] {
        assert!(text.err.contains(word), "{}", text.err);
    }
}

#[test]
fn open_bands_have_their_unit_beside_the_number() {
    let hard = biteband(&["file", "--skates", "65"]).out;
    assert!(hard.contains(" HRC or more"), "{hard}");
    let soft = biteband(&["file", "--bites", "40"]).out;
    assert!(soft.contains("below ") && soft.contains(" HRC\n"), "{soft}");
}

#[test]
fn no_stroke_yet_still_says_which_file_to_take() {
    let done = biteband(&["file", "--target", "50-54 HRC"]);
    assert_eq!(done.code, 0);
    assert!(
        done.out.contains("No stroke yet") && done.out.contains("Next stroke: the "),
        "{}",
        done.out
    );
}

#[test]
fn the_promise_of_a_steel_is_not_made_up() {
    let refused = json(&["file", "--bites", "55", "--prior", "steel"]).refused(2);
    assert_eq!(refused["code"], "cli.prior_without_steel");
    // Printed sheets have O1 at 62 HRC after 205 °C: a part that the 60 file does not bite is taken for about that.
    let with = ["file", "--skates", "60", "--prior", "steel", "--steel", "O1", "--done", "205C/2h"];
    let median = |answer: &serde_json::Value| answer["median"].as_f64();
    let promised = json(&with).json();
    assert!(median(&promised).is_some_and(|hrc| (60.5..64.0).contains(&hrc)), "{promised}");
    // The files alone leave the upper end open.
    assert!(median(&json(&["file", "--skates", "60"]).json()).is_none());
}

#[test]
fn tables_and_sources_are_data() {
    let table = json(&["table", "astm-e140-t1"]).json();
    assert_eq!(table["columns"][0], "HRC");
    let rows = table["rows"].as_array().unwrap();
    // ASTM E140 Table 1 runs from 68 HRC = 940 HV to 20 HRC = 238 HV in 49 rows.
    assert_eq!(rows.len(), 49);
    assert!(is(&rows[0]["values"][0], 68.0) && is(&rows[0]["values"][1], 940.0));
    assert!(is(&rows[48]["values"][0], 20.0) && is(&rows[48]["values"][1], 238.0));
    let text = biteband(&["table", "astm-e140-t1"]);
    assert_eq!(text.code, 0);
    assert!(text.out.lines().all(|line| line.chars().count() <= 80), "{}", text.out);
    // The print sets 739 HBW at 65 HRC in parentheses.
    assert!(text.out.contains("(739)"), "{}", text.out);

    let list = json(&["table", "--list"]).json();
    let names: Vec<&str> =
        list["tables"].as_array().unwrap().iter().filter_map(|t| t["id"].as_str()).collect();
    for name in &names {
        assert_eq!(json(&["table", name]).code, 0, "{name}");
    }
    let sources = json(&["source", "--list"]).json();
    for source in sources["sources"].as_array().unwrap() {
        let id = source["id"].as_str().unwrap();
        assert_eq!(json(&["source", id]).json()["id"], id);
        assert_eq!(biteband(&["source", id]).code, 0);
    }
    assert_eq!(json(&["table", "astm-e140-t10"]).refused(2)["code"], "bench.unknown_table");
    assert_eq!(json(&["source", "hearsay"]).refused(2)["code"], "bench.unknown_source");
    assert_eq!(biteband(&["table"]).code, 2);
}

// CSV.

fn csv(input: &[u8], extra: &[&str]) -> Run {
    let arguments = ["convert", "--csv", "-", "--column", "hardness"];
    run(&[&arguments[..], extra].concat(), input, Path::new("."))
}

#[test]
fn a_column_gets_numbers_widths_and_reasons() {
    let done = csv(
        b"part,hardness\npawl,52\n\"bar, \"\"pre-hard\"\"\",28-32\nspring,450 HV 10\ndrift,15\n",
        &["--from", "HRC", "--to", "HBW"],
    );
    assert_eq!(done.code, 0);
    let lines: Vec<&str> = done.out.lines().collect();
    assert_eq!(lines[0], "part,hardness,HBW,HBW_low,HBW_high,reason");
    // ASTM E140 Table 1, row 52: 512 HBW; 2 % times 1.96 is 20.
    assert_eq!(lines[1], "pawl,52,512,492,532,");
    // Rows 28 and 32.
    assert_eq!(lines[2], "\"bar, \"\"pre-hard\"\"\",28-32,,271,301,");
    // Between rows 45 (446 HV, 421 HBW) and 46 (458 HV, 432 HBW).
    assert!(lines[3].starts_with("spring,450 HV 10,425,"), "{}", lines[3]);
    assert!(lines[4].starts_with("drift,15,,,,\"15 HRC is below"), "{}", lines[4]);
    assert_eq!(lines.len(), 5);
    assert_eq!(done.err, "4 rows; 1 of them not or only partly converted, see the last column.\n");
}

#[test]
fn broken_rows_are_kept_with_a_reason_and_counted() {
    let done = csv(
        b"part,hardness\nshort\nlong,52,extra\nword,hard\nempty,\nbytes,\xff\xfe\ngood,52\nnan,NaN\nhuge,1e308\nminus,-5\n",
        &["--from", "HRC", "--to", "HV"],
    );
    assert_eq!(done.code, 0);
    assert!(!done.err.contains("panicked"));
    let lines: Vec<&str> = done.out.lines().collect();
    assert_eq!(lines.len(), 10);
    assert!(lines[1].starts_with("short,,,,,") && lines[1].contains("1 fields"), "{}", lines[1]);
    assert!(lines[2].starts_with("long,52,extra,,,,") && lines[2].contains("3 fields"));
    assert!(lines[3].starts_with("word,hard,,,,"));
    assert!(lines[4].ends_with("The cell is empty."));
    assert!(lines[5].contains("UTF-8"));
    // ASTM E140 Table 1, row 52.
    assert!(lines[6].starts_with("good,52,544,") && lines[6].ends_with(','));
    for line in [lines[3], lines[7], lines[8], lines[9]] {
        assert!(!line.ends_with(','), "{line}");
    }
    assert!(done.err.starts_with("9 rows; 8 of them"), "{}", done.err);
}

#[test]
fn bytes_that_are_not_text_pass_through_unchanged() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_biteband"))
        .args(["convert", "--csv", "-", "--column", "hardness", "--from", "HRC", "--to", "HV"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let input = b"hardness,note\n52,\xff\xfe\n";
    std::io::Write::write_all(&mut child.stdin.take().unwrap(), input).unwrap();
    let done = child.wait_with_output().unwrap();
    assert!(done.stdout.windows(6).any(|bytes| bytes == b"52,\xff\xfe,"));
}

#[test]
fn delimiters_decimal_commas_and_headings_of_all_kinds() {
    let done = csv(
        b"\xef\xbb\xbfHardness ;HV\r\n52,0;x\r\n",
        &["--from", "HRC", "--to", "HV", "--delimiter", ";"],
    );
    // ASTM E140 Table 1, row 52. The mark at the start of the file is no part of the heading.
    assert_eq!(done.out.lines().next().unwrap(), "Hardness ;HV;HV_converted;HV_low;HV_high;reason");
    assert_eq!(done.out.lines().nth(1).unwrap(), "52,0;x;544;512;576;");
    let tabs = csv(b"hardness\tx\n52\ty\n", &["--from", "HRC", "--to", "HV", "--delimiter", "tab"]);
    assert_eq!(tabs.out.lines().nth(1).unwrap(), "52\ty\t544\t512\t576\t");
    let quoted = csv(b"hardness,x\n\"52,0\",y\n", &["--from", "HRC", "--to", "HV"]);
    assert_eq!(quoted.out.lines().nth(1).unwrap(), "\"52,0\",y,544,512,576,");
    assert_eq!(csv(b"hardness\n52\n", &["--to", "HV", "--delimiter", "ab"]).code, 2);
}

#[test]
fn full_digits_are_those_of_the_json() {
    let done = csv(b"hardness\n52.5\n", &["--from", "HRC", "--to", "HV", "--digits", "full"]);
    let answer = json(&["convert", "52.5 HRC", "--to", "HV"]).json();
    let cells: Vec<f64> = done
        .out
        .lines()
        .nth(1)
        .unwrap()
        .split(',')
        .skip(1)
        .take(3)
        .map(|cell| cell.parse().unwrap())
        .collect();
    for (cell, field) in cells.iter().zip(["value", "low", "high"]) {
        assert!(is(&answer["results"][0][field], *cell), "{field}");
    }
}

#[test]
fn a_column_without_scale_needs_it_in_the_cells() {
    let done = csv(b"hardness\n52\n52 HRC\n", &["--to", "HV"]);
    assert!(done.out.lines().nth(1).unwrap().contains("has no scale"), "{}", done.out);
    // ASTM E140 Table 1, row 52.
    assert_eq!(done.out.lines().nth(2).unwrap(), "52 HRC,544,512,576,");
}

#[test]
fn input_files_that_cannot_be_used_end_with_three() {
    let missing =
        biteband(&["convert", "--csv", "no-such-file.csv", "--column", "a", "--to", "HV"]);
    assert_eq!(missing.code, 3);
    assert!(missing.err.contains("no-such-file.csv"), "{}", missing.err);
    let column = csv(b"part,rockwell\npawl,52\n", &["--from", "HRC", "--to", "HV"]);
    assert_eq!((column.code, column.out.as_str()), (3, ""));
    assert!(column.err.contains("hardness") && column.err.contains("part, rockwell"));
    assert_eq!(csv(b"", &["--from", "HRC", "--to", "HV"]).code, 3);
    let folder = biteband(&["convert", "--csv", ".", "--column", "a", "--to", "HV"]);
    assert_eq!(folder.code, 3);
    assert!(!folder.err.contains("panicked"));
}

#[test]
fn a_quote_left_open_is_told_with_its_line() {
    let short =
        csv(b"part,hardness\npawl,52\n\"bar,30\ndrift,40\n", &["--from", "HRC", "--to", "HV"]);
    assert_eq!(short.code, 0);
    assert!(short.out.contains("from line 3 to line"), "{}", short.out);
    let mut long = b"part,hardness\npawl,52\n\"bar,30\n".to_vec();
    long.extend(b"drift,40\n".repeat(3_000_000));
    let done = csv(&long, &["--from", "HRC", "--to", "HV"]);
    assert_eq!(done.code, 3);
    assert!(done.err.contains("line 3"), "{}", done.err);
    // What came before is written: ASTM E140 Table 1, row 52.
    assert!(done.out.contains("pawl,52,544,"));
}

#[test]
fn usage_of_the_csv_options_is_checked() {
    for arguments in [
        &["convert", "--csv", "-", "--to", "HV"][..],
        &["convert", "--csv", "-", "--column", "a"],
        &["convert", "52 HRC", "--csv", "-", "--column", "a", "--to", "HV"],
        &["convert", "52 HRC", "--column", "a"],
    ] {
        assert_eq!(biteband(arguments).code, 2, "{arguments:?}");
    }
    let scale = csv(b"hardness\n52\n", &["--from", "furlong", "--to", "HV"]);
    assert_eq!(scale.code, 2);
    assert!(scale.err.contains("furlong"));
}

#[test]
fn a_reader_that_closes_early_is_no_fault() {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("long.csv");
    fs::write(&path, format!("hardness\n{}", "52\n".repeat(200_000))).unwrap();
    let mut child = Command::new(env!("CARGO_BIN_EXE_biteband"))
        .args(["convert", "--column", "hardness", "--from", "HRC", "--to", "HV", "--csv"])
        .arg(&path)
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut start = [0; 16];
    let mut out = child.stdout.take().unwrap();
    out.read_exact(&mut start).unwrap();
    drop(out);
    let mut told = String::new();
    child.stderr.take().unwrap().read_to_string(&mut told).unwrap();
    assert_eq!((child.wait().unwrap().code(), told.as_str()), (Some(0), ""));
}

#[test]
fn a_reading_alone_makes_a_band_and_says_what_it_assumed() {
    let done = biteband(&["file", "--reading", "52, 53, 51.5 HRC"]);
    assert_eq!(done.code, 0, "{}", done.err);
    let said: Vec<&str> = done.out.lines().collect();
    assert_eq!(said[0], "By the readings alone");
    // The readings' mean is 52.2.
    let line = said.iter().find(|line| line.starts_with("- 52, 53, 51.5 HRC")).unwrap();
    assert!(line.contains("52.2 ±") && line.ends_with("assumed"), "{line}");
    let answer = json(&["file", "--reading", "bench: 353 HBW u=9"]).json();
    let reading = &answer["readings"][0];
    // ASTM E140 Table 1, row 38: 353 HBW.
    assert!(is(&reading["hrc"][0], 38.0) && reading["table"] == "astm-e140-t1", "{reading}");
    assert!(reading["instrument"] == "bench-brinell" && reading["assumed"] == false, "{reading}");
}

#[test]
fn a_reading_against_the_files_is_no_number_but_causes_and_a_next_step() {
    let done = json(&["file", "--bites", "40,45", "--reading", "ultrasonic: 640 HV"]);
    let refused = done.refused(1);
    assert_eq!(refused["code"], "evidence.clash");
    let answer = done.json();
    assert!(answer.get("band").is_none());
    let clash = &answer["clashes"][0];
    assert!(clash["harder"] == "readings[0]" && clash["softer"] == "files", "{clash}");
    assert!(clash["why"][0].as_str().unwrap().contains("soft skin"), "{clash}");
    assert!(done.err.contains("Without the files") && done.err.contains("Next:"), "{}", done.err);
}

#[test]
fn readings_that_cannot_be_counted_are_refused() {
    for (reading, code) in [
        ("leeb: 52 HRC", "bench.unknown_instrument"),
        ("portable-leeb: 780 HLD", "hardness.no_table"),
        ("bench-brinell: 52 HRC", "bench.reading_in_other_scale"),
        ("comparison: 52 HRC", "bench.known_piece_missing"),
        ("52-54 HRC", "bench.reading_not_one_number"),
    ] {
        let done = json(&["file", "--reading", reading]);
        let refused = done.refused(done.code);
        assert_eq!(refused["code"], code, "{reading}");
        assert!(refused["instead"] != "", "{refused}");
    }
}
