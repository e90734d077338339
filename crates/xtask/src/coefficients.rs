//! From the coefficients of the tempering regression to constants: part of `cargo xtask tables`.

use crate::Outcome;
use crate::generated::{Module, number};
use std::fmt::Write as _;
use std::path::Path;

/// What the name of a coefficient of the spread begins with.
const SPREAD: &str = "spread_";

/// The module of fitted coefficients.
///
/// # Errors
///
/// A row that cannot be read.
pub(crate) fn generate(root: &Path) -> Outcome<Vec<Module>> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(root.join("crates/steel/data/tempering-coefficients.csv"))?;
    let (mut fitted, mut spread) = (String::new(), String::new());
    for record in reader.records() {
        let record = record?;
        let field = |column: usize| record.get(column).unwrap_or_default();
        let (name, value) = (field(0), number(field(1))?);
        match name.strip_prefix(SPREAD) {
            Some(name) => writeln!(spread, "    {name}: {value},")?,
            None => writeln!(fitted, "    {name}: {value},")?,
        }
    }
    let text = format!(
        "// Written by `cargo xtask tables` from crates/steel/data/tempering-coefficients.csv; edit that file, not \
         this.\n\n\
         use super::formula::Coefficients;\n\
         use super::learn::Spread;\n\n\
         pub(super) const FITTED: Coefficients = Coefficients {{\n{fitted}}};\n\n\
         pub(super) const SPREAD: Spread = Spread {{\n{spread}}};\n"
    );
    Ok(vec![(root.join("crates/steel/src/temper/generated.rs"), text)])
}
