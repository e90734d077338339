//! The rules of the house that no compiler checks.

use std::collections::BTreeMap;
use std::error::Error;
use std::fs;
use std::path::{Path, PathBuf};

type Outcome<T = ()> = Result<T, Box<dyn Error>>;

/// Who may use whom: a crate may use those above it in this list, and those on the last line not each other.
const LADDER: &[&[&str]] = &[
    &["biteband-quantity"],
    &["biteband-hardness"],
    &["biteband-steel"],
    &["biteband-evidence"],
    &["biteband-bench"],
    &["biteband-cli", "biteband-js", "biteband-web"],
];

/// These check the others or build them, and nothing may depend on them.
const OUTSIDE: &[&str] = &["biteband-tests", "biteband-xtask"];

/// The core works without an operating system, so that it gives the same bits everywhere.
const CORE: &[&str] = &["quantity", "hardness", "steel", "evidence"];

const MOST_LINES: usize = 600;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Every file of the project as text; what is built and what is no text is left out.
fn texts() -> Outcome<Vec<(String, String)>> {
    let mut found = Vec::new();
    let mut open = vec![(root(), String::new())];
    while let Some((folder, prefix)) = open.pop() {
        for entry in fs::read_dir(folder)? {
            let entry = entry?;
            let file_name = entry.file_name().to_string_lossy().into_owned();
            let name = format!("{prefix}{file_name}");
            if entry.file_type()?.is_dir() {
                let built = ["target", "dist", "node_modules", "shots", ".git"];
                if !built.contains(&file_name.as_str()) {
                    open.push((entry.path(), format!("{name}/")));
                }
            } else if let Ok(text) = fs::read_to_string(entry.path()) {
                found.push((name, text));
            }
        }
    }
    found.sort();
    Ok(found)
}

/// The workspace's members by package name, with their normal and build dependencies on each other.
fn members() -> Outcome<BTreeMap<String, Vec<String>>> {
    let workspace: toml::Table = fs::read_to_string(root().join("Cargo.toml"))?.parse()?;
    let folders = workspace
        .get("workspace")
        .and_then(|table| table.get("members"))
        .and_then(toml::Value::as_array)
        .ok_or("the workspace lists no members")?;
    let mut members = BTreeMap::new();
    for folder in folders.iter().filter_map(toml::Value::as_str) {
        let manifest: toml::Table =
            fs::read_to_string(root().join(folder).join("Cargo.toml"))?.parse()?;
        let name = manifest
            .get("package")
            .and_then(|package| package.get("name"))
            .and_then(toml::Value::as_str)
            .ok_or_else(|| format!("{folder} has no name"))?;
        let used = ["dependencies", "build-dependencies"]
            .iter()
            .filter_map(|kind| manifest.get(*kind)?.as_table())
            .flat_map(toml::Table::keys)
            .filter(|used| used.starts_with("biteband-"))
            .cloned()
            .collect();
        members.insert(name.to_owned(), used);
    }
    Ok(members)
}

fn height(name: &str) -> Option<usize> {
    LADDER.iter().position(|rung| rung.contains(&name))
}

#[test]
fn crates_depend_only_downward() -> Outcome {
    for (name, used) in members()? {
        assert!(
            height(&name).is_some() || OUTSIDE.contains(&name.as_str()),
            "{name} has no place on the ladder"
        );
        for other in used {
            let below = match (height(&other), height(&name)) {
                (Some(lower), Some(upper)) => lower < upper,
                (Some(_), None) => true,
                (None, _) => false,
            };
            assert!(below, "{name} must not depend on {other}");
        }
    }
    Ok(())
}

#[test]
fn core_crates_say_no_std() {
    for name in CORE {
        let library = root().join("crates").join(name).join("src/lib.rs");
        if let Ok(text) = fs::read_to_string(library) {
            let says = text.lines().any(|line| line == "#![no_std]");
            assert!(says, "crates/{name}/src/lib.rs must say #![no_std]");
        }
    }
}

#[test]
fn no_hand_written_file_is_too_long() -> Outcome {
    let hand_written = |name: &str, text: &str| {
        let kind = name.rsplit_once('.').map_or("", |(_, kind)| kind);
        let source = ["rs", "mjs", "js", "css", "html", "toml", "py"].contains(&kind);
        let generated = text.lines().take(5).any(|line| line.contains("xtask tables"));
        source && !generated && !name.contains("/data/")
    };
    let long: Vec<String> = texts()?
        .into_iter()
        .filter(|(name, text)| hand_written(name, text) && text.lines().count() > MOST_LINES)
        .map(|(name, text)| format!("{name}: {}", text.lines().count()))
        .collect();
    assert!(long.is_empty(), "files of more than {MOST_LINES} lines: {}", long.join(", "));
    Ok(())
}

#[test]
fn no_file_speaks_of_unfinished_work_or_of_one_machine() -> Outcome {
    // Written in two halves, or this file would be the first to break the rule.
    let forbidden = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("XX", "X"),
        concat!("/wo", "rk/"),
        concat!("/ro", "ot/"),
        concat!("/ho", "me/"),
        concat!("/tm", "p/"),
        concat!("C:", "\\Users"),
        concat!("registry.", "npmjs"),
        concat!("index.", "crates.io"),
        concat!("static.", "crates.io"),
        concat!("deb.", "debian.org"),
        concat!("files.", "pythonhosted"),
        concat!("\"reso", "lved\":"),
    ];
    let mut found = Vec::new();
    for (name, text) in texts()? {
        for (at, line) in text.lines().enumerate() {
            if let Some(word) = forbidden.iter().find(|word| line.contains(**word)) {
                found.push(format!("{name}:{} says {word}", at + 1));
            }
        }
    }
    assert!(found.is_empty(), "{}", found.join("\n"));
    Ok(())
}
