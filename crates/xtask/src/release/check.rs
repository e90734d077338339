//! Whether a bundle made from what is already built can be used as HOW-TO.txt says.

use super::{LICENCES, NOTICES, Piece, SUMS, VERSION, host, lay, program_file, remove};
use crate::process::{answer, cargo, run as run_program};
use crate::{Outcome, project};
use std::fs;
use std::io::Cursor;
use std::path::Path;
use std::process::Command;
use zip::ZipArchive;

/// Lays a bundle out twice, with the program of a test build, which no bundle is handed out with, and opens it.
///
/// # Errors
///
/// When something is not built, or the bundle cannot be used.
pub(crate) fn run() -> Outcome {
    run_program(
        cargo()
            .args(["build", "--locked", "--package", "biteband-cli"])
            .current_dir(project::root()),
    )?;
    let program = project::cargo_target().join("debug").join(program_file("biteband"));
    let place = project::root().join("target/release-check");
    remove(&place)?;
    let bundle = lay(&place.join("first"), &program)?;
    let again = lay(&place.join("second"), &program)?;
    let sums = fs::read_to_string(bundle.join(SUMS))?;
    if sums != fs::read_to_string(again.join(SUMS))? {
        return Err("two bundles of the same things are not the same".into());
    }
    whole(&bundle, &sums)?;
    page(&bundle, &place.join("page"))?;
    command_line(&bundle, &place.join("command-line"))?;
    package(&bundle, &place.join("package"))?;
    println!("The bundle of {} files opens and runs: {}", sums.lines().count(), bundle.display());
    Ok(())
}

/// Every file that lies there is named with its sum, and no other.
fn whole(bundle: &Path, sums: &str) -> Outcome {
    let found = files(bundle)?.into_iter().filter(|piece| piece.name != SUMS).collect::<Vec<_>>();
    if super::sums(&found) == sums {
        Ok(())
    } else {
        Err(format!("{SUMS} is not of {}", bundle.display()).into())
    }
}

/// Every file below a folder, in the order of the names.
fn files(folder: &Path) -> Outcome<Vec<Piece>> {
    let names = project::files_below(folder)?;
    names.iter().map(|name| Ok(Piece::new(name, fs::read(folder.join(name))?))).collect()
}

/// The packed page is the built one with the licences beside it.
fn page(bundle: &Path, place: &Path) -> Outcome {
    unpack(&bundle.join(format!("biteband-{VERSION}-page.zip")), place)?;
    let packed = files(place)?;
    let is_licence = |piece: &&Piece| piece.name.starts_with(LICENCES);
    let (licences, page): (Vec<&Piece>, Vec<&Piece>) = packed.iter().partition(is_licence);
    if page != files(&project::dist())?.iter().collect::<Vec<_>>() {
        Err("the page of the bundle is not the built page".into())
    } else if licences.len() != 3 {
        Err("the page of the bundle comes without its three licences".into())
    } else if packed != files(&bundle.join("page"))? {
        Err("the packed page of the bundle is not the one that lies there".into())
    } else {
        Ok(())
    }
}

/// The program runs as it comes out of its packed file, and as it lies there.
fn command_line(bundle: &Path, place: &Path) -> Outcome {
    let target = host()?;
    unpack(&bundle.join(format!("biteband-{VERSION}-{target}.zip")), place)?;
    let lying = bundle.join("bin").join(program_file(&format!("biteband-{target}")));
    for program in [place.join(program_file("biteband")), lying] {
        let said = answer(Command::new(&program).args(["table", "--list"])).unwrap_or_default();
        if !said.contains("E140") {
            return Err(format!("{} does not list its tables", program.display()).into());
        }
    }
    Ok(())
}

/// The package can be installed, has its licences with it, and its example runs.
fn package(bundle: &Path, place: &Path) -> Outcome {
    fs::create_dir_all(place)?;
    fs::write(place.join("package.json"), "{\"private\": true, \"type\": \"module\"}\n")?;
    fs::write(
        place.join("by-name.js"),
        "import { version } from \"biteband\";\nconsole.log(version());\n",
    )?;
    run_program(
        Command::new("npm")
            .args([
                "install",
                "--silent",
                "--offline",
                "--ignore-scripts",
                "--no-audit",
                "--no-fund",
            ])
            .arg(bundle.join(format!("biteband-{VERSION}.tgz")))
            .current_dir(place),
    )?;
    let installed = place.join("node_modules/biteband");
    for name in ["LICENSE-APACHE", "LICENSE-MIT", NOTICES] {
        if !installed.join(name).is_file() {
            return Err(format!("the npm package comes without {name}").into());
        }
    }
    for (script, told) in
        [(installed.join("example.mjs"), "HBW"), (place.join("by-name.js"), VERSION)]
    {
        let said = answer(Command::new("node").arg(&script).current_dir(place)).unwrap_or_default();
        if !said.contains(told) {
            return Err(format!("{} does not say {told}", script.display()).into());
        }
    }
    Ok(())
}

fn unpack(packed: &Path, place: &Path) -> Outcome {
    ZipArchive::new(Cursor::new(fs::read(packed)?))?.extract(place)?;
    Ok(())
}
