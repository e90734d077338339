//! Data files to static arrays, `cargo xtask tables`: which modules there are, and what their makers share.

use crate::{
    Outcome, coefficients, curvature, hardenability, project, quenching, sorting, steels, tables,
    tempering,
};
use std::fs;
use std::path::{Path, PathBuf};

/// A module and its text.
pub(crate) type Module = (PathBuf, String);

type Maker = fn(&Path) -> Outcome<Vec<Module>>;

const MAKERS: [Maker; 8] = [
    tables::generate,
    curvature::generate,
    steels::generate,
    hardenability::generate,
    quenching::generate,
    tempering::generate,
    coefficients::generate,
    sorting::generate,
];

/// Writes every generated module.
///
/// # Errors
///
/// A data file that contradicts itself, by name; a file that cannot be written.
pub(crate) fn write() -> Outcome {
    for make in MAKERS {
        for (path, text) in make(&project::root())? {
            fs::write(&path, text)?;
            println!("wrote {}", path.display());
        }
    }
    Ok(())
}

/// Fails when a generated module is not what the data files say.
///
/// # Errors
///
/// The first module that differs.
pub(crate) fn check() -> Outcome {
    for make in MAKERS {
        for (path, text) in make(&project::root())? {
            if fs::read_to_string(&path).is_ok_and(|written| written == text) {
                continue;
            }
            let path = path.display();
            return Err(
                format!("{path} differs from the data files; run `cargo xtask tables`").into()
            );
        }
    }
    Ok(())
}

/// A number in the form of a Rust literal; the digits stay those of the print.
pub(crate) fn number(text: &str) -> Outcome<String> {
    let value: f64 = text.parse().map_err(|e| format!("{text}: {e}"))?;
    Ok(format!("{value:?}"))
}
