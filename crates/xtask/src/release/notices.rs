//! The licences of the crates that are compiled into what is handed out: most ask that their text goes along.

use crate::process::{answer, cargo};
use crate::{Outcome, project};
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

const HEADING: &str = "\
Biteband is made with the crates below, and with the standard library of Rust (MIT OR Apache-2.0).
Each crate stands with its version and the licence its manifest names; after that every text that lies in
the crates, once, under the names of those that hold it.
";
/// How the files begin that hold a licence or what a licence wants to be told.
const BEGINNINGS: [&str; 5] = ["licen", "copying", "copyright", "notice", "unlicense"];

#[derive(Debug, Deserialize)]
struct Metadata {
    packages: Vec<Package>,
}

#[derive(Clone, Debug, Deserialize, Eq, Ord, PartialEq, PartialOrd)]
struct Package {
    name: String,
    version: String,
    license: Option<String>,
    manifest_path: PathBuf,
    /// Where it was published; the project's own crates were not.
    source: Option<String>,
}

/// The crates inside the command line, the page and the npm package, and their licences.
///
/// # Errors
///
/// When cargo cannot say what is used, or a crate's text cannot be read.
pub(crate) fn text() -> Outcome<String> {
    let mut used = compiled_in(&["-p", "biteband-cli"])?;
    let wasm = ["-p", "biteband-web", "-p", "biteband-js", "--target", "wasm32-unknown-unknown"];
    used.extend(compiled_in(&wasm)?);
    let metadata = asked(&["metadata", "--locked", "--format-version", "1"])?;
    let metadata: Metadata = serde_json::from_str(&metadata)?;
    let mut found = Vec::new();
    for package in metadata.packages {
        let key = (package.name.clone(), package.version.clone());
        if package.source.is_some() && used.contains(&key) {
            let folder = package.manifest_path.parent().unwrap_or(Path::new("."));
            found.push((texts_in(folder)?, package));
        }
    }
    found.sort_by(|(_, one), (_, other)| one.cmp(other));
    Ok(told(&found))
}

/// Name and version of every crate whose code is in the result; macros only run while it is made.
fn compiled_in(choice: &[&str]) -> Outcome<BTreeSet<(String, String)>> {
    let tree =
        ["tree", "--locked", "-e", "normal,no-proc-macro", "--prefix", "none", "--format", "{p}"];
    let lines = asked(&[&tree, choice].concat())?;
    let pair = |line: &str| {
        let mut words = line.split_whitespace();
        Some((words.next()?.to_owned(), words.next()?.strip_prefix('v')?.to_owned()))
    };
    Ok(lines.lines().filter_map(pair).collect())
}

fn asked(arguments: &[&str]) -> Outcome<String> {
    answer(cargo().args(arguments).current_dir(project::root()))
        .ok_or_else(|| format!("`cargo {}` gave no answer", arguments.join(" ")).into())
}

fn texts_in(folder: &Path) -> Outcome<Vec<String>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().to_lowercase();
        if entry.file_type()?.is_file() && BEGINNINGS.iter().any(|begin| name.starts_with(begin)) {
            names.push(entry.path());
        }
    }
    names.sort();
    let mut texts = Vec::new();
    for name in names {
        let text = String::from_utf8_lossy(&fs::read(name)?).replace('\r', "");
        texts.push(text.trim().to_owned());
    }
    Ok(texts)
}

fn told(found: &[(Vec<String>, Package)]) -> String {
    let mut text = format!("{HEADING}\n");
    let mut holders: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for (texts, package) in found {
        let licence = package.license.as_deref().unwrap_or("named in its text");
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{} {}: {licence}", package.name, package.version);
        for own in texts {
            holders.entry(own).or_default().push(&package.name);
        }
    }
    let mut blocks: Vec<_> = holders.into_iter().map(|(own, names)| (names, own)).collect();
    blocks.sort();
    for (names, own) in blocks {
        let _ = writeln!(text, "\n{}\n{}\n\n{own}", "-".repeat(72), names.join(", "));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn package(name: &str, text: &str) -> (Vec<String>, Package) {
        let package = Package {
            name: name.to_owned(),
            version: "1.0.0".to_owned(),
            license: Some("MIT".to_owned()),
            manifest_path: PathBuf::new(),
            source: Some("registry".to_owned()),
        };
        (vec![text.to_owned()], package)
    }

    #[test]
    fn every_crate_is_named_and_a_common_text_stands_once() {
        let told =
            told(&[package("a", "Take it."), package("b", "Take it."), package("c", "Ask.")]);
        assert!(
            ["a 1.0.0: MIT", "b 1.0.0: MIT", "c 1.0.0: MIT"].iter().all(|line| told.contains(line))
        );
        assert_eq!(told.matches("Take it.").count(), 1);
        assert!(told.contains("\na, b\n\nTake it.") && told.contains("\nc\n\nAsk."));
    }

    #[test]
    fn crates_of_both_sides_are_there_and_macros_and_own_crates_are_not() {
        let text = text().unwrap();
        let line = |name: &str| text.lines().any(|line| line.starts_with(&format!("{name} ")));
        assert!(line("clap_builder") && line("yew") && line("libm"));
        assert!(!line("serde_derive") && !line("biteband-bench"));
    }
}
