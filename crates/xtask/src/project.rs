//! Where things are.

use crate::Outcome;
use std::fs;
use std::path::{Path, PathBuf};

/// The folder with the workspace manifest. Cargo says at run time where the crate lies; the place where it was
/// compiled may be another checkout that shares the build folder.
pub(crate) fn root() -> PathBuf {
    let compiled = || PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    let here = std::env::var_os("CARGO_MANIFEST_DIR").map_or_else(compiled, PathBuf::from);
    here.ancestors().nth(2).map_or_else(|| here.clone(), Path::to_path_buf)
}

/// The built page.
pub(crate) fn dist() -> PathBuf {
    root().join("dist")
}

/// Where cargo puts what it builds; tools and packages have their own fixed places beside it.
pub(crate) fn cargo_target() -> PathBuf {
    std::env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// The build tools that are compiled from source.
pub(crate) fn tools() -> PathBuf {
    root().join("target/tools")
}

/// The packages of the browser tests and of the optimiser.
pub(crate) fn npm() -> PathBuf {
    root().join("target/npm")
}

/// The self-contained page.
pub(crate) fn single_file() -> PathBuf {
    root().join("target/single/biteband.html")
}

/// The npm package as it would be published.
pub(crate) fn npm_package() -> PathBuf {
    root().join("target/npm-package")
}

/// Every file below a folder, as paths relative to it with `/` between the parts, in order. Hidden ones are left
/// out: trunk builds in a hidden folder inside `dist/`, and leaves it there when a build fails.
///
/// # Errors
///
/// When a folder cannot be read.
pub(crate) fn files_below(folder: &Path) -> Outcome<Vec<String>> {
    let mut found = Vec::new();
    let mut open = vec![(folder.to_path_buf(), String::new())];
    while let Some((path, prefix)) = open.pop() {
        let entries =
            fs::read_dir(&path).map_err(|error| format!("reading {}: {error}", path.display()))?;
        for entry in entries {
            let entry = entry?;
            let name = entry.file_name().to_string_lossy().into_owned();
            if name.starts_with('.') {
                continue;
            }
            let name = format!("{prefix}{name}");
            if entry.file_type()?.is_dir() {
                open.push((entry.path(), format!("{name}/")));
            } else {
                found.push(name);
            }
        }
    }
    found.sort();
    Ok(found)
}

/// Whether a file's name ends in `.` and this.
pub(crate) fn has_extension(name: &str, extension: &str) -> bool {
    name.strip_suffix(extension).is_some_and(|stem| stem.ends_with('.'))
}
