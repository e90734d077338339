//! From the severities of baths and the quenched rounds on record to static arrays: part of `cargo xtask tables`.

use crate::Outcome;
use crate::generated::{Module, number};
use std::fmt::Write as _;
use std::path::Path;

const MOVEMENTS: [&str; 6] = ["Still", "Mild", "Moderate", "Good", "Strong", "Violent"];

/// The modules of severities and of quenched rounds.
///
/// # Errors
///
/// A row that cannot be read, or a word that is not known.
pub(crate) fn generate(root: &Path) -> Outcome<Vec<Module>> {
    Ok(vec![severities(root)?, rounds(root)?])
}

fn severities(root: &Path) -> Outcome<Module> {
    let mut reader = csv::Reader::from_path(root.join("crates/steel/data/severities.csv"))?;
    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/steel/data/severities.csv; edit that file, not this.\n\n\
         use super::{Medium, Movement};\n\n\
         pub(super) static PRINTED: &[(Medium, Movement, f64, f64)] = &[\n",
    );
    for record in reader.records() {
        let record = record?;
        let field = |column: usize| record.get(column).unwrap_or_default();
        let medium = match field(0) {
            "water" => "Water",
            "brine" => "Brine",
            "oil" => "Oil",
            "vegetable_oil" => "VegetableOil",
            "air" => "Air",
            other => return Err(format!("severities.csv: {other} is no medium").into()),
        };
        let (low, high) = (number(field(2))?, number(field(3))?);
        let moved: Vec<&str> = MOVEMENTS
            .into_iter()
            .filter(|known| field(1) == "any" || known.eq_ignore_ascii_case(field(1)))
            .collect();
        if moved.is_empty() {
            return Err(format!("severities.csv: {} is no movement", field(1)).into());
        }
        for movement in moved {
            writeln!(out, "    (Medium::{medium}, Movement::{movement}, {low}, {high}),")?;
        }
    }
    out.push_str("];\n");
    Ok((root.join("crates/steel/src/quench/generated.rs"), out))
}

fn rounds(root: &Path) -> Outcome<Module> {
    let mut reader = csv::Reader::from_path(root.join("crates/steel/data/rounds.csv"))?;
    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/steel/data/rounds.csv; edit that file, not this.\n\n\
         use super::record::Bar;\n\
         use crate::quenchant::Quenchant;\n\n\
         pub(super) static BARS: &[Bar] = &[\n",
    );
    for record in reader.records() {
        let record = record?;
        let field = |column: usize| record.get(column).unwrap_or_default();
        let medium = match field(1) {
            "oil" => "Oil",
            "water" => "Water",
            other => return Err(format!("rounds.csv: {other} is no medium").into()),
        };
        writeln!(
            out,
            "    Bar {{ key: {:?}, quenchant: Quenchant::{medium}, diameter: {}, hrc: [{}, {}, {}] }},",
            field(0),
            number(&(field(2).parse::<f64>()? * 25.4).to_string())?,
            number(field(3))?,
            number(field(4))?,
            number(field(5))?,
        )?;
    }
    out.push_str("];\n");
    Ok((root.join("crates/steel/src/reach/generated.rs"), out))
}
