//! The README says what the command does: its examples run, and it names every field of the JSON.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use crate::common::{biteband, json, run};
use serde_json::Value;

/// Parts as the first version wrote them.
const CARDS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../bench/tests/stored/cards-1.json");

const README: &str = include_str!("../../README.md");

/// The text of every fenced block of a kind.
fn blocks(kind: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut lines = README.lines();
    while let Some(line) = lines.next() {
        if line.strip_prefix("```") == Some(kind) {
            let block: Vec<&str> = lines.by_ref().take_while(|line| *line != "```").collect();
            found.push(block.join("\n"));
        } else if line.starts_with("```") {
            for line in lines.by_ref() {
                if line == "```" {
                    break;
                }
            }
        }
    }
    found
}

/// Words between spaces; what stands in quotes is one word.
fn arguments(command: &str) -> Vec<String> {
    let mut words = vec![String::new()];
    let mut quoted = false;
    for c in command.chars() {
        match c {
            '"' => quoted = !quoted,
            ' ' if !quoted => words.push(String::new()),
            _ => words.last_mut().unwrap().push(c),
        }
    }
    words
}

/// Line by line; `...` stands for any lines, and at the end of a line for any rest of it.
fn is_as_shown(shown: &[&str], printed: &[&str]) -> bool {
    match (shown.split_first(), printed.split_first()) {
        (None, None) => true,
        (Some((&"...", rest)), _) => {
            (0..=printed.len()).any(|skipped| is_as_shown(rest, &printed[skipped..]))
        }
        (Some((line, rest)), Some((own, others))) => {
            let same = match line.strip_suffix("...") {
                Some(start) => own.starts_with(start.trim_end()),
                None => line == own,
            };
            same && is_as_shown(rest, others)
        }
        _ => false,
    }
}

#[test]
fn examples_print_what_is_shown() {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("readme");
    // Parts are not written over those of an earlier run.
    let _: std::io::Result<()> = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    fs::write(folder.join("readings.csv"), blocks("csv").concat() + "\n").unwrap();
    let mut examples = 0;
    for block in blocks("console") {
        for example in block.split("$ biteband ").skip(1) {
            let mut shown: Vec<&str> = example.lines().collect();
            let command = arguments(shown.remove(0));
            let code = match shown.last().and_then(|line| line.strip_prefix("[exit ")) {
                Some(code) => {
                    let code = code.trim_end_matches(']').parse().unwrap();
                    shown.pop();
                    code
                }
                None => 0,
            };
            let words: Vec<&str> = command.iter().map(String::as_str).collect();
            let done = run(&words, b"", &folder);
            let printed = format!("{}{}", done.out, done.err);
            assert_eq!(done.code, code, "{command:?}\n{printed}");
            let lines: Vec<&str> = printed.lines().collect();
            assert!(is_as_shown(&shown, &lines), "{command:?}\n{printed}");
            examples += 1;
        }
    }
    assert!(examples >= 7, "{examples}");
}

fn keys(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(fields) => {
            for (key, value) in fields {
                found.insert(key.clone());
                keys(value, found);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| keys(item, found)),
        _ => {}
    }
}

#[test]
fn every_field_of_the_json_is_described() {
    let mut found = BTreeSet::new();
    for arguments in [
        &["convert", "HV 700 +-50", "--to", "HRC,HBW,Rm"][..],
        &["convert", "52 HRC"],
        &["convert", "15 HRC"],
        &["file", "--bites", "55", "--skates", "50", "--target", "50-54 HRC"],
        &["file", "--bites", "45", "--skates", "50"],
        &["file", "--bites", "40,45", "--reading", "ultrasonic: 640 HV"],
        &["indent", "rockwell", "--scale", "HRC", "--readings", "58,58.5,58.2,52.1,58.3"],
        &["indent", "rockwell", "--scale", "HRC", "--value", "48", "--thickness", "0.6mm"],
        &["indent", "vickers", "--force", "30kgf", "--d1", "0.3mm", "--round", "12mm"],
        &["steel", "EN24T"],
        &["steel", "H13"],
        &["steel", "A2"],
        &["steel", "17-4PH"],
        &["steel", "--list"],
        &["steel", "--find", "silver"],
        &["steel", "--target", "cold chisel"],
        &["jominy", "4340"],
        &["jominy", "1095"],
        &[
            "heat",
            "O1",
            "--round",
            "25mm",
            "--length",
            "80mm",
            "--quench",
            "oil:6L@25C",
            "--oven",
            "790C=magnet",
        ],
        &["heat", "4140"],
        &["reach", "4140", "--round", "50mm", "--quench", "oil", "--target", "50 HRC"],
        &["reach", "O1", "--tube", "22mm,12mm", "--quench", "oil", "--part", "drill bushing"],
        &["temper", "4140", "--at", "220C", "--target", "45 HRC", "--learn", "53 HRC@220C/2h"],
        &["temper", "17-4PH", "--at", "482C"],
        &["temper", "O1", "--target", "58-60 HRC", "--oven", "240C=tin"],
        &["next", "4140", "--reading", "53 HRC", "--done", "205C/2h", "--target", "44-46 HRC"],
        &["claim", "HV 700 +-50", "--measured", "58 HRC", "--steel", "O1"],
        &["claim", "52 HRC / 400 HB"],
        &["unknown", "--spark", "forks", "--coupon", "oil:50-55 HRC"],
        &["unknown", "--spark", "bursts", "--coupon", "oil:<40 HRC"],
        &["table", "astm-e140-t1"],
        &["table", "--list"],
        &["source", "astm-e140"],
        &["source", "--list"],
        &["print", "chart", "--from", "20..68"],
        &["part", "show", CARDS],
        &["part", "check", CARDS],
        &["part", "print", CARDS],
        &["part", "export", CARDS],
        &["part", "import", CARDS, "--into", "nowhere.json", "--dry-run"],
    ] {
        keys(&json(arguments).json(), &mut found);
    }
    for key in &found {
        let named = [format!("`{key}`"), format!("`{key}[]`"), format!("`{{\"{key}\"")];
        assert!(named.iter().any(|named| README.contains(named)), "{key} is not in the README");
    }
    assert!(found.len() > 40);
}

#[test]
fn every_option_of_the_help_is_described() {
    let commands: [&[&str]; 26] = [
        &["convert"],
        &["file"],
        &["table"],
        &["source"],
        &["print", "strip"],
        &["print", "chart"],
        &["print", "file-card"],
        &["print", "thickness"],
        &["indent", "vickers"],
        &["indent", "brinell"],
        &["indent", "knoop"],
        &["indent", "rockwell"],
        &["steel"],
        &["jominy"],
        &["heat"],
        &["reach"],
        &["temper"],
        &["next"],
        &["unknown"],
        &["claim"],
        &["part", "new"],
        &["part", "show"],
        &["part", "print"],
        &["part", "export"],
        &["part", "import"],
        &["part", "check"],
    ];
    for command in commands {
        let help = biteband(&[command, &["--help"]].concat());
        assert_eq!(help.code, 0);
        for word in help.out.split_whitespace().filter(|word| word.starts_with("--")) {
            let option = word.trim_end_matches(|c: char| !c.is_ascii_alphabetic());
            assert!(README.contains(option), "{option} is not in the README");
        }
    }
}
