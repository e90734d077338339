//! From what is known of unknown bars to static arrays: part of `cargo xtask tables`.

use crate::Outcome;
use crate::generated::{Module, number};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

/// The module of families, their answers and their uses.
///
/// # Errors
///
/// A row that cannot be read, a family or a source that is not known, shares that do not add up.
pub(crate) fn generate(root: &Path) -> Outcome<Vec<Module>> {
    let known = sources(root)?;
    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/evidence/data/families.csv, observations.csv and \
         purposes.csv; edit those files, not this.\n\n\
         use super::clue::{Fracture, Magnet, Skin, Spark};\n\
         use super::family::{Family, Fit, Found, Heat, Kind, Purpose, Quenched, Row};\n\n",
    );
    let kinds = families(root, &known, &mut out)?;
    answers(root, &known, &kinds, &mut out)?;
    purposes(root, &known, &kinds, &mut out)?;
    Ok(vec![(root.join("crates/evidence/src/unknown/generated.rs"), out)])
}

/// A file of this data: its headings and rows.
struct Sheet {
    name: &'static str,
    headings: Vec<String>,
    rows: Vec<csv::StringRecord>,
}

impl Sheet {
    fn read(root: &Path, name: &'static str) -> Outcome<Self> {
        let path = root.join("crates/evidence/data").join(name);
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path)?;
        let headings = reader.headers()?.iter().map(str::to_owned).collect();
        let rows = reader.records().collect::<Result<_, _>>()?;
        Ok(Self { name, headings, rows })
    }

    fn cell<'a>(&self, row: &'a csv::StringRecord, heading: &str) -> Outcome<&'a str> {
        let place = self.headings.iter().position(|one| one == heading);
        let cell = place.and_then(|place| row.get(place));
        cell.ok_or_else(|| format!("{}: no column {heading}", self.name).into())
    }

    /// A number that is there and no word.
    fn number(&self, row: &csv::StringRecord, heading: &str) -> Outcome<String> {
        number(self.cell(row, heading)?)
            .map_err(|error| format!("{}, {heading}: {error}", self.name).into())
    }

    fn check_source(&self, row: &csv::StringRecord, known: &BTreeSet<String>) -> Outcome {
        let source = self.cell(row, "source")?;
        if known.contains(source) {
            Ok(())
        } else {
            Err(format!("{}: {source} is no source", self.name).into())
        }
    }
}

fn sources(root: &Path) -> Outcome<BTreeSet<String>> {
    let mut reader = csv::Reader::from_path(root.join("crates/steel/data/methods.csv"))?;
    let mut all = BTreeSet::new();
    for record in reader.records() {
        all.insert(record?.get(0).unwrap_or_default().to_owned());
    }
    Ok(all)
}

/// `low_carbon` as `LowCarbon`.
fn variant(key: &str) -> String {
    let words = key.split('_').map(|word| {
        let mut signs = word.chars();
        signs.next().into_iter().flat_map(char::to_uppercase).chain(signs).collect::<String>()
    });
    words.collect()
}

fn adds_up(what: &str, shares: &[f64], whole: f64) -> Outcome {
    let sum: f64 = shares.iter().sum();
    if (sum - whole).abs() < 1e-9 {
        Ok(())
    } else {
        Err(format!("{what} add up to {sum} and not to {whole}").into())
    }
}

fn families(root: &Path, known: &BTreeSet<String>, out: &mut String) -> Outcome<Vec<String>> {
    let sheet = Sheet::read(root, "families.csv")?;
    out.push_str("pub(super) static FAMILIES: &[Family] = &[\n");
    let (mut kinds, mut priors) = (Vec::new(), Vec::new());
    for row in &sheet.rows {
        sheet.check_source(row, known)?;
        let number = |heading: &str| sheet.number(row, heading);
        let (key, hardens) = (sheet.cell(row, "key")?, sheet.cell(row, "hardens")?);
        let quenched = if hardens == "carbon" {
            format!(
                "Quenched::Carbon {{ carbon: ({}, {}), oil: {}, water: {} }}",
                number("carbon_low")?,
                number("carbon_high")?,
                number("oil_loss")?,
                number("water_loss")?,
            )
        } else {
            format!(
                "Quenched::Fixed {{ mean: {}, sd: {} }}",
                number("quenched")?,
                number("quenched_sd")?
            )
        };
        let prior = number("prior")?;
        writeln!(
            out,
            "    Family {{ kind: Kind::{}, prior: {prior}, heat: Heat::{}, quenched: {quenched}, \
             found: Found {{ share: {}, hard: ({}, {}), soft: ({}, {}) }} }},",
            variant(key),
            variant(hardens),
            number("hard_share")?,
            number("hard")?,
            number("hard_sd")?,
            number("soft")?,
            number("soft_sd")?,
        )?;
        kinds.push(key.to_owned());
        priors.push(prior.parse()?);
    }
    out.push_str("];\n\n");
    adds_up("families.csv: the priors", &priors, 1.0)?;
    Ok(kinds)
}

fn answers(root: &Path, known: &BTreeSet<String>, kinds: &[String], out: &mut String) -> Outcome {
    let sheet = Sheet::read(root, "observations.csv")?;
    for (test, name, list) in [
        ("magnet", "Magnet", "MAGNETS"),
        ("spark", "Spark", "SPARKS"),
        ("skin", "Skin", "SKINS"),
        ("grain", "Fracture", "GRAINS"),
    ] {
        writeln!(out, "pub(super) static {list}: &[Row<{name}>] = &[")?;
        let mut sums = vec![0.0; kinds.len()];
        for row in &sheet.rows {
            if sheet.cell(row, "test")? != test {
                continue;
            }
            sheet.check_source(row, known)?;
            let mut shares = Vec::new();
            for (kind, sum) in kinds.iter().zip(&mut sums) {
                let percent: f64 = sheet.number(row, kind)?.parse()?;
                *sum += percent;
                shares.push(format!("{:?}", percent / 100.0));
            }
            let answer = variant(sheet.cell(row, "answer")?);
            writeln!(out, "    ({name}::{answer}, [{}]),", shares.join(", "))?;
        }
        for (kind, sum) in kinds.iter().zip(sums) {
            adds_up(&format!("observations.csv: the answers of {kind} to {test}"), &[sum], 100.0)?;
        }
        out.push_str("];\n\n");
    }
    Ok(())
}

fn purposes(root: &Path, known: &BTreeSet<String>, kinds: &[String], out: &mut String) -> Outcome {
    let sheet = Sheet::read(root, "purposes.csv")?;
    out.push_str("pub(super) static FITS: &[Fit] = &[\n");
    for row in &sheet.rows {
        sheet.check_source(row, known)?;
        let least = match sheet.cell(row, "least")? {
            "" => "None".to_owned(),
            _ => format!("Some({})", sheet.number(row, "least")?),
        };
        let mut suits = Vec::new();
        for kind in sheet.cell(row, "suits")?.split(';').filter(|kind| !kind.is_empty()) {
            if !kinds.iter().any(|one| one == kind) {
                return Err(format!("purposes.csv: {kind} is no family").into());
            }
            suits.push(format!("Kind::{}", variant(kind)));
        }
        writeln!(
            out,
            "    Fit {{ purpose: Purpose::{}, least: {least}, warn: {}, suits: &[{}] }},",
            variant(sheet.cell(row, "key")?),
            sheet.cell(row, "warn")? == "yes",
            suits.join(", "),
        )?;
    }
    out.push_str("];\n");
    Ok(())
}
