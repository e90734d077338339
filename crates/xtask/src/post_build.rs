//! What happens to a built page before it may be served: the module is cut into parts and made smaller, the
//! service worker is written.

use crate::lean::lean;
use crate::process::run as run_program;
use crate::{Outcome, digest, parts, project};
use std::fmt::Write as _;
use std::fs;
use std::path::Path;
use std::process::Command;

/// `cargo xtask post-build`: as trunk's hook on the folder that trunk names, or with `--dist DIR` on any built page,
/// where only the service worker is written anew.
///
/// # Errors
///
/// When the folder is no built page, or an option is wrong.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match (words.as_slice(), std::env::var_os("TRUNK_STAGING_DIR")) {
        (["--dist", folder], _) => write_worker(Path::new(folder)),
        ([], Some(staging)) => hook(Path::new(&staging)),
        _ => Err("post-build needs --dist DIR when trunk does not call it".into()),
    }
}

fn hook(folder: &Path) -> Outcome {
    let profile = std::env::var("TRUNK_PROFILE").unwrap_or_else(|_| "release".to_owned());
    parts::cut(folder, &profile)?;
    if profile == "debug" {
        // A page under development must never be served from yesterday's cache.
        fs::copy(folder.join("sw-kill.js"), folder.join("sw.js"))?;
        return Ok(());
    }
    let made_lean =
        |name: &&String| ["js", "css"].iter().any(|end| project::has_extension(name, end));
    for name in project::files_below(folder)?.iter().filter(made_lean) {
        let path = folder.join(name);
        fs::write(&path, lean(&fs::read_to_string(&path)?))?;
    }
    write_worker(folder)
}

/// Lets wasm-opt shrink every module of a folder in place.
///
/// # Errors
///
/// When wasm-opt fails or a file cannot be replaced.
pub(crate) fn optimise(folder: &Path, optimiser: &Path) -> Outcome {
    let names = project::files_below(folder)?;
    for name in names.iter().filter(|name| project::has_extension(name, "wasm")) {
        let module = folder.join(name);
        let smaller = folder.join("smaller.wasm");
        run_program(
            Command::new(optimiser)
                .args([
                    "-Oz",
                    // Who made a module and for which processor: dozens of parts would each carry it.
                    "--strip-producers",
                    "--strip-target-features",
                    "--one-caller-inline-max-function-size=50",
                    "--reorder-functions-by-name",
                ])
                .arg(&module)
                .arg("-o")
                .arg(&smaller),
        )?;
        fs::rename(smaller, module)?;
    }
    Ok(())
}

/// Writes `sw.js` from its template with the exact files of the folder.
fn write_worker(folder: &Path) -> Outcome {
    let template = fs::read_to_string(project::root().join("web/static/sw.template.js"))?;
    let files = kept_files(folder)?;
    fs::write(folder.join("sw.js"), fill(&lean(&template), &files)?)?;
    Ok(())
}

/// The files that the page keeps on the device, by address and hash. The start page is kept under its folder's
/// address, because some hosts answer `index.html` with a redirect, which a worker may not hand on.
fn kept_files(folder: &Path) -> Outcome<Vec<(String, String)>> {
    let names = project::files_below(folder)?;
    if !names.iter().any(|name| name == "index.html") {
        return Err(format!("{} holds no built page", folder.display()).into());
    }
    let mut files = Vec::new();
    for name in names.iter().filter(|name| is_kept(name)) {
        let integrity = digest::integrity(&fs::read(folder.join(name))?);
        let address = if name == "index.html" { "./" } else { name };
        files.push((address.to_owned(), integrity));
    }
    Ok(files)
}

/// Workers are never kept, or the browser could not see a new one. Of a module the packed form is kept. The large icons are
/// fetched by the system when it puts the page on its home screen, and kept by it; the page shows none of them.
pub(crate) fn is_kept(name: &str) -> bool {
    !matches!(name, "sw.js" | "sw-kill.js")
        && !project::has_extension(name, "wasm")
        && !name.ends_with("-512.png")
}

fn fill(template: &str, files: &[(String, String)]) -> Outcome<String> {
    let mut list = String::from("const FILES = [\n");
    for (address, integrity) in files {
        writeln!(list, "  [{address:?}, {integrity:?}],")?;
    }
    list.push_str("];");
    let version = digest::short(list.as_bytes());
    let mut filled = template.to_owned();
    for (blank, value) in [
        ("const VERSION = \"\";", format!("const VERSION = \"{version}\";")),
        ("const FILES = [];", list),
    ] {
        if filled.matches(blank).count() != 1 {
            return Err(format!("the service worker's template must say `{blank}` once").into());
        }
        filled = filled.replace(blank, &value);
    }
    Ok(filled)
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEMPLATE: &str = "const VERSION = \"\";\nconst FILES = [];\n";

    fn files(hash: &str) -> Vec<(String, String)> {
        vec![("./".to_owned(), hash.to_owned()), ("boot.js".to_owned(), "sha256-b".to_owned())]
    }

    #[test]
    fn worker_names_every_file_with_its_hash() {
        let filled = fill(TEMPLATE, &files("sha256-a")).unwrap();
        assert!(filled.contains("[\"./\", \"sha256-a\"],\n  [\"boot.js\", \"sha256-b\"],"));
        assert!(!filled.contains("VERSION = \"\""));
    }

    #[test]
    fn another_content_is_another_version() {
        let version =
            |hash| fill(TEMPLATE, &files(hash)).unwrap().lines().next().map(str::to_owned);
        assert_ne!(version("sha256-a"), version("sha256-c"));
        assert_eq!(version("sha256-a"), version("sha256-a"));
    }

    #[test]
    fn template_without_its_blanks_is_refused() {
        assert!(fill("const FILES = [];", &files("a")).is_err());
    }

    #[test]
    fn workers_are_not_kept() {
        assert!(!is_kept("sw.js") && !is_kept("sw-kill.js") && is_kept("icons/icon.svg"));
    }

    #[test]
    fn icons_of_the_home_screen_are_left_to_the_system() {
        assert!(!is_kept("icons/icon-512.png") && !is_kept("icons/icon-maskable-512.png"));
        assert!(is_kept("icons/icon-192.png"));
    }

    #[test]
    fn every_module_is_kept_packed() {
        assert!(is_kept("biteband-web-0f-mark.part") && is_kept("biteband-web-0f_bg.part"));
        assert!(!is_kept("biteband-web-0f-mark.wasm") && !is_kept("biteband-web-0f_bg.wasm"));
    }
}
