//! From the quenched rounds on record to a static array: part of `cargo xtask tables`.

use crate::Outcome;
use crate::generated::{Module, number};
use std::fmt::Write as _;
use std::path::Path;

/// The module of quenched rounds.
///
/// # Errors
///
/// A row that cannot be read.
pub(crate) fn generate(root: &Path) -> Outcome<Vec<Module>> {
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
    Ok(vec![(root.join("crates/steel/src/reach/generated.rs"), out)])
}
