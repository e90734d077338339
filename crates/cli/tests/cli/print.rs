//! `biteband print`: files, formats, numbering, refusals.

use std::fs;
use std::path::{Path, PathBuf};

use crate::common::{biteband, json, run};

fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    // What an earlier run left would pass for what this one writes.
    let _: std::io::Result<()> = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}

/// Root of a drawing: width and height as written, and every text.
fn read(svg: &str) -> (String, String, Vec<String>) {
    let document = roxmltree::Document::parse(svg).unwrap();
    let root = document.root_element();
    let size = |name: &str| root.attribute(name).unwrap().to_owned();
    let texts = root.descendants().filter(|node| node.has_tag_name("text"));
    let texts = texts.filter_map(|node| node.text().map(str::to_owned));
    (size("width"), size("height"), texts.collect())
}

#[test]
fn one_drawing_goes_to_stdout_in_its_true_size() {
    for (paper, width, height) in [("a4", "210mm", "297mm"), ("letter", "215.9mm", "279.4mm")] {
        for command in [
            &["print", "strip", "--from", "40..65", "--scales", "HV,HBW,Rm"][..],
            &["print", "chart", "--from", "40-65", "--base", "hrc", "--scales", "HV,HBW,Rm"],
            &["print", "file-card", "--set", "40,45,50,55,60,65"],
            &["print", "thickness"],
        ] {
            let done = biteband(&[command, &["--paper", paper]].concat());
            assert_eq!((done.code, done.err.as_str()), (0, ""), "{command:?}");
            let (w, h, texts) = read(&done.out);
            assert_eq!((w.as_str(), h.as_str()), (width, height));
            assert!(texts.iter().any(|text| text.contains("estimate")), "{texts:?}");
        }
    }
}

#[test]
fn the_chart_of_the_command_line_prints_the_rows_of_the_standard() {
    // ASTM E140 Table 1, row 52: 544 HV, 512 HBW, 76.8 HRA; row 62: HBW 688 in parentheses.
    let done = biteband(&["print", "chart", "--from", "50..62", "--scales", "HV,HBW,HRA"]);
    let (_, _, texts) = read(&done.out);
    for says in ["544", "512", "76", ".8", "(688", ")"] {
        assert!(texts.iter().any(|text| text == says), "{says}: {texts:?}");
    }
}

#[test]
fn several_drawings_are_numbered_and_a_page_holds_all() {
    let folder = folder("print-files");
    let chart = ["print", "chart", "--from", "20..68", "--scales", "HV,HBW"];
    let done = run(&[&chart[..], &["--out", "wall.svg"]].concat(), b"", &folder);
    assert_eq!((done.code, done.out.as_str()), (0, "wall-1.svg\nwall-2.svg\n"), "{}", done.err);
    let done = run(&[&chart[..], &["--out", "wall.html"]].concat(), b"", &folder);
    assert_eq!((done.code, done.out.as_str()), (0, "wall.html\n"));
    let written = run(&[&["--json"], &chart[..], &["--out", "wall"]].concat(), b"", &folder).json();
    assert_eq!(written["written"][1], "wall-2");
    assert_eq!(names(&folder), ["wall-1", "wall-1.svg", "wall-2", "wall-2.svg", "wall.html"]);
    let page = fs::read_to_string(folder.join("wall.html")).unwrap();
    for number in ["wall-1.svg", "wall-2.svg"] {
        let svg = fs::read_to_string(folder.join(number)).unwrap();
        read(&svg);
        assert!(page.contains(&svg));
    }
    assert!(page.contains("@page{size:A4"));
}

#[test]
fn several_drawings_on_stdout_are_refused_with_the_way_out_and_json_holds_them() {
    let chart = ["print", "chart", "--from", "20..68", "--scales", "HV"];
    let done = biteband(&chart);
    assert_eq!((done.code, done.out.as_str()), (2, ""));
    assert!(done.err.contains("2 sheets") && done.err.contains("--format html"), "{}", done.err);
    let page = biteband(&[&chart[..], &["--format", "html"]].concat());
    assert_eq!((page.code, page.out.matches("<svg").count()), (0, 2));
    let sheets = json(&chart).json();
    assert_eq!(sheets["sheets"].as_array().unwrap().len(), 2);
    read(sheets["sheets"][1]["svg"].as_str().unwrap());
}

#[test]
fn what_cannot_be_drawn_says_why_and_what_instead() {
    for (arguments, code, name) in [
        (&["strip", "--from", "40 up"][..], 2, "bench.unreadable_span"),
        (&["strip", "--from", "-5..65"], 2, "bench.unreadable_span"),
        (&["strip", "--from", "65..40"], 1, "hardness.backward_range"),
        (&["strip", "--from", "40..165"], 1, "hardness.outside_scale"),
        (&["strip", "--from", "50..50"], 1, "bench.print_no_span"),
        (&["strip", "--from", "40..65", "--scales", "HV,HX"], 2, "bench.unknown_scale"),
        (&["strip", "--from", "40..65", "--base", "HX"], 2, "bench.unknown_scale"),
        (&["strip", "--from", "40..65", "--scales", "HV,HV"], 2, "bench.unreadable_scales"),
        (&["strip", "--from", "40..65", "--scales", "HRC"], 1, "hardness.same_scale"),
        (&["strip", "--from", "40..65", "--scales", "HL"], 1, "hardness.no_table"),
        (&["chart", "--from", "60..65", "--scales", "Rm"], 1, "hardness.outside_tables"),
        (&["chart", "--from", "40..65", "--step", "0"], 2, "bench.unreadable_step"),
        (&["chart", "--from", "40..65", "--step", "-1"], 2, "bench.unreadable_step"),
        (&["chart", "--from", "40..65", "--step", "0.0001"], 2, "bench.unreadable_step"),
        (&["file-card", "--set", "fine"], 2, "bench.unreadable_grades"),
        (&["file-card", "--set", "40,99"], 1, "evidence.out_of_range"),
    ] {
        let refused = json(&[&["print"], arguments].concat()).refused(code);
        assert_eq!(refused["code"], name, "{arguments:?}");
        assert!(!refused["instead"].as_str().unwrap().is_empty(), "{refused}");
    }
    let nowhere = biteband(&["print", "file-card", "--out", "no/such/folder/card.svg"]);
    assert_eq!(nowhere.code, 3);
    assert!(nowhere.err.contains("no/such/folder/card.svg") && nowhere.err.contains("folder"));
}

#[test]
fn strength_in_ksi_is_read_and_shown_in_ksi() {
    let strip = ["--units", "inch", "print", "strip", "--base", "Rm", "--from", "100..250"];
    let done = biteband(&[&strip[..], &["--scales", "HV,HBW"]].concat());
    assert_eq!(done.code, 0, "{}", done.err);
    let (_, _, texts) = read(&done.out);
    for says in ["Rm, ksi", "Scales side by side, 100 – 250 ksi", "200"] {
        assert!(texts.iter().any(|text| text == says), "{says}: {texts:?}");
    }
}
