//! The programs that the build needs beyond cargo: installed where they are missing, at fixed versions.

use crate::process::{answer, cargo, find, path_with, run};
use crate::{Outcome, project};
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The target of page and npm package.
pub(crate) const WASM: &str = "wasm32-unknown-unknown";
/// Must equal the `wasm-bindgen` of the workspace: the two halves speak a private language.
const WASM_BINDGEN: &str = "0.2.129";
const TRUNK: &str = "0.21.14";

/// What a page build runs with.
#[derive(Debug)]
pub(crate) struct Toolbox {
    /// The packages of the browser tests, where node and npm are there.
    pub(crate) node_modules: Option<PathBuf>,
    /// PATH with the tools in front.
    pub(crate) path: OsString,
}

/// Makes sure of the compiler's wasm target.
///
/// # Errors
///
/// When it is missing and cannot be added.
pub(crate) fn wasm_target() -> Outcome {
    let place = answer(Command::new("rustc").args(["--print", "target-libdir", "--target", WASM]));
    if place.is_some_and(|place| Path::new(&place).is_dir()) {
        return Ok(());
    }
    println!("Adding the compiler's target {WASM}.");
    run(Command::new("rustup").args(["target", "add", WASM])).map_err(|error| {
        format!("{error}; the page needs the compiler's target {WASM}, which rustup can add").into()
    })
}

/// Makes sure of everything for a page build. With `NeedsNode::Yes` a missing node or npm is an error;
/// otherwise the build goes on without the optimiser.
///
/// # Errors
///
/// When something is missing and cannot be installed.
pub(crate) fn toolbox(node: NeedsNode) -> Outcome<Toolbox> {
    wasm_target()?;
    let mut folders = vec![
        cargo_tool("wasm-bindgen", "wasm-bindgen-cli", WASM_BINDGEN, &[])?,
        // Trunk's own features fetch from the network; everything it needs is here already.
        cargo_tool("trunk", "trunk", TRUNK, &["--no-default-features"])?,
    ];
    let node_modules = match (npm_packages(), node) {
        (Ok(place), _) => Some(place),
        (Err(error), NeedsNode::Yes) => return Err(error),
        (Err(error), NeedsNode::No) => {
            println!("Going on without wasm-opt, so the page will be larger: {error}.");
            None
        }
    };
    folders.extend(node_modules.iter().map(|place| place.join(".bin")));
    Ok(Toolbox { node_modules, path: path_with(&folders)? })
}

/// Makes sure of wasm-bindgen alone and returns it.
///
/// # Errors
///
/// When it is missing and cannot be installed.
pub(crate) fn wasm_bindgen() -> Outcome<PathBuf> {
    wasm_target()?;
    Ok(cargo_tool("wasm-bindgen", "wasm-bindgen-cli", WASM_BINDGEN, &[])?.join("wasm-bindgen"))
}

/// Makes sure of the npm packages and returns the wasm-opt among them.
///
/// # Errors
///
/// When node or npm is missing or the packages cannot be installed.
pub(crate) fn wasm_opt() -> Outcome<PathBuf> {
    Ok(npm_packages()?.join(".bin/wasm-opt"))
}

/// Whether a build may do without node.
#[derive(Clone, Copy, Debug)]
pub(crate) enum NeedsNode {
    /// It may not.
    Yes,
    /// It may.
    No,
}

/// The folder with a tool of exactly this version: one already on PATH, else our own, installed if needed.
fn cargo_tool(name: &str, package: &str, version: &str, more: &[&str]) -> Outcome<PathBuf> {
    let own = project::tools().join("bin");
    for place in [Some(own.join(name)), find(name)].into_iter().flatten() {
        let right = answer(Command::new(&place).arg("--version"))
            .is_some_and(|text| text.split_whitespace().any(|word| word == version));
        if let (true, Some(folder)) = (right, place.parent()) {
            return Ok(folder.to_path_buf());
        }
    }
    println!("Installing {package} {version}; this takes some minutes, once.");
    run(cargo()
        .args(["install", "--locked", "--force", "--version", version, package])
        .args(more)
        .arg("--root")
        .arg(project::tools())
        .arg("--target-dir")
        .arg(project::tools().join("build"))
        // A tool that runs for seconds is not worth minutes of optimising.
        .env("CARGO_PROFILE_RELEASE_LTO", "off")
        .env("CARGO_PROFILE_RELEASE_CODEGEN_UNITS", "16")
        .env("CARGO_PROFILE_RELEASE_OPT_LEVEL", "1")
        .env_remove("CARGO_TARGET_DIR"))?;
    Ok(own)
}

/// The folder of the npm packages, installed from the lock file if they are not the ones it names.
fn npm_packages() -> Outcome<PathBuf> {
    if find("node").is_none() || find("npm").is_none() {
        return Err("node and npm were not found".into());
    }
    let place = project::npm();
    let modules = place.join("node_modules");
    let source = project::root().join("tests/browser");
    let lock = fs::read(source.join("package-lock.json"))?;
    let stamp = place.join("installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) && modules.is_dir() {
        return Ok(modules);
    }
    println!("Installing the npm packages for the optimiser and the browser tests.");
    fs::create_dir_all(&place)?;
    for name in ["package.json", "package-lock.json"] {
        fs::copy(source.join(name), place.join(name))?;
    }
    run(Command::new("npm")
        .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"])
        .current_dir(&place))?;
    fs::write(stamp, lock)?;
    Ok(modules)
}

/// A Chromium to test in.
///
/// # Errors
///
/// When there is none and it cannot be installed; the text says how to get one.
pub(crate) fn chromium() -> Outcome<PathBuf> {
    if let Some(given) = std::env::var_os("BITEBAND_CHROMIUM") {
        return Ok(given.into());
    }
    let known = || ["chromium", "chromium-browser", "google-chrome"].into_iter().find_map(find);
    if let Some(place) = known() {
        return Ok(place);
    }
    let debian = Path::new("/etc/debian_version").exists();
    let administrator = answer(Command::new("id").arg("-u")).as_deref() == Some("0");
    if debian && administrator {
        println!("Installing Chromium for the browser tests.");
        run(Command::new("apt-get").args(["update", "--quiet"]))?;
        run(Command::new("apt-get")
            .args(["install", "--yes", "--quiet", "--no-install-recommends", "chromium"])
            .env("DEBIAN_FRONTEND", "noninteractive"))?;
    }
    known().ok_or_else(|| {
        "the browser tests need Chromium: install it (on Debian: apt-get install chromium), or set \
         BITEBAND_CHROMIUM to its path"
            .into()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bindgen_tool_is_the_version_of_the_workspace() {
        let manifest = fs::read_to_string(project::root().join("Cargo.toml")).unwrap();
        assert!(manifest.contains(&format!("wasm-bindgen = \"={WASM_BINDGEN}\"")));
    }
}
