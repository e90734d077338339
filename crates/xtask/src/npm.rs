//! The npm package: built from `crates/js` for node and for browsers.

use crate::process::{Steps, cargo, find, run as run_program, without_places};
use crate::{Outcome, post_build, project, release, tools};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// `cargo xtask npm`.
///
/// # Errors
///
/// When the build or the example fails.
pub(crate) fn run() -> Outcome {
    let mut steps = Steps::new();
    steps.take("Building the npm package", build)?;
    steps.take("Running the npm package's example", test)
}

/// Builds the package into `target/npm-package/`.
///
/// # Errors
///
/// When node is missing, or the compiler, wasm-bindgen or wasm-opt fails.
pub(crate) fn build() -> Outcome {
    let bindgen = tools::wasm_bindgen()?;
    run_program(
        cargo()
            .args(["build", "--locked", "--release", "--package", "biteband-js"])
            .args(["--target", tools::WASM])
            .envs(without_places(tools::WASM))
            .current_dir(project::root()),
    )?;
    let module = project::cargo_target().join("wasm32-unknown-unknown/release/biteband_js.wasm");
    let package = project::npm_package();
    if package.exists() {
        fs::remove_dir_all(&package)?;
    }
    for (target, folder) in [("nodejs", "node"), ("web", "web")] {
        run_program(
            Command::new(&bindgen)
                .args(["--target", target, "--out-name", "biteband", "--out-dir"])
                .arg(package.join(folder))
                .arg(&module),
        )?;
    }
    post_build::optimise(&package, &tools::wasm_opt()?)?;
    for name in own_files()? {
        let copy = package.join(&name);
        fs::create_dir_all(copy.parent().unwrap_or(&package))?;
        fs::copy(source().join(&name), copy)?;
    }
    for name in ["LICENSE-APACHE", "LICENSE-MIT"] {
        fs::copy(project::root().join(name), package.join(name))?;
    }
    fs::write(package.join(release::NOTICES), release::notices()?)?;
    Ok(())
}

/// Runs every `*.mjs` script that lies beside the package's manifest, against the built package.
///
/// # Errors
///
/// When node is missing or a script fails.
pub(crate) fn test() -> Outcome {
    if find("node").is_none() {
        return Err("the npm package is tried with node, which was not found".into());
    }
    let package = project::npm_package();
    for script in own_files()?.iter().filter(|name| project::has_extension(name, "mjs")) {
        run_program(Command::new("node").arg(package.join(script)).current_dir(&package))?;
    }
    parity(&package)
}

/// The same questions to the core as a program and to the package in node: the answers must be equal
/// to the last bit.
fn parity(package: &Path) -> Outcome {
    let root = project::root();
    let folder = root.join("tests/parity");
    let questions = folder.join("questions.jsonl");
    let answers = project::cargo_target().join("parity.jsonl");
    run_program(
        cargo()
            .args(["run", "--locked", "--quiet", "--package", "biteband-tests", "--bin", "parity"])
            .arg("--")
            .arg(&questions)
            .stdout(fs::File::create(&answers)?)
            .current_dir(&root),
    )?;
    run_program(
        Command::new("node")
            .arg(folder.join("parity.mjs"))
            .args([package, &questions, &answers])
            .current_dir(&root),
    )
}

/// The files of that folder.
fn own_files() -> Outcome<Vec<String>> {
    if source().is_dir() { project::files_below(&source()) } else { Ok(Vec::new()) }
}

/// What the package holds beside the built module: manifest, description, example.
fn source() -> PathBuf {
    project::root().join("crates/js/npm")
}
