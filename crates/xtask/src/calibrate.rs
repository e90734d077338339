//! Fits the tempering regression, `cargo xtask calibrate`: the program is a bin of `biteband-tests`, because it needs the
//! formula of `biteband-steel` and its data.

use crate::process::{cargo, run as run_program};
use crate::{Outcome, generated, project};

/// Fits and writes coefficients and tables, or with `--check` fails when those that are written differ.
///
/// The development build is as quick as a release build: the core is compiled well in both, and this one is there
/// already when the tests run.
///
/// # Errors
///
/// A fit that fails, or coefficients that differ.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    run_program(
        cargo()
            .args([
                "run",
                "--locked",
                "--quiet",
                "--package",
                "biteband-tests",
                "--bin",
                "calibrate",
                "--",
            ])
            .args(arguments)
            .current_dir(project::root()),
    )?;
    if arguments.is_empty() { generated::write() } else { Ok(()) }
}
