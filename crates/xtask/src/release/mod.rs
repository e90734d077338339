//! What is handed out: page, single file, npm package and command line in one folder, with their sums.
//!
//! The same sources and tools give the same bytes: names are in order, packed files carry no time of their own,
//! and the program does not tell where it was compiled.

mod archive;
mod check;
mod notices;

pub(crate) use check::run as check;
pub(crate) use notices::text as notices;

use crate::process::{Steps, answer, cargo, find, run as run_program, without_places};
use crate::tools::{self, NeedsNode};
use crate::{Outcome, budget, digest, npm, page, project, single_file};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const VERSION: &str = env!("CARGO_PKG_VERSION");
const SUMS: &str = "SHA256SUMS";
/// Under which name the licences of others go along.
pub(crate) const NOTICES: &str = "LICENSES-OF-OTHERS.txt";
/// How the names of licences begin, those of others included.
const LICENCES: &str = "LICENSE";
/// The project's texts that go along, and their names there. The later ones are those to which the first has links.
const TEXTS: &[(&str, &str)] = &[
    ("README.md", "README.md"),
    ("CHANGELOG.md", "CHANGELOG.md"),
    ("LICENSE-APACHE", "LICENSE-APACHE"),
    ("LICENSE-MIT", "LICENSE-MIT"),
    ("crates/cli/README.md", "docs/command-line.md"),
    ("crates/js/npm/README.md", "docs/javascript.md"),
    ("DEVELOPERS.md", "docs/developers.md"),
    ("web/screenshots/file-test.png", "docs/file-test.png"),
];

/// `cargo xtask release`.
///
/// # Errors
///
/// On a wrong option, when node is missing, or when a part of the release cannot be made.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    let out = out_folder(arguments)?;
    place(&out)?;
    // A page that was not made smaller is over its limits, and a bundle without its package would be taken for
    // the whole under the same name.
    if find("node").is_none() || find("npm").is_none() {
        return Err("a release needs Node.js with npm, which make the page smaller and pack the npm package. \
                    Without them `cargo xtask app --build-only` and `cargo xtask single-file` make a larger \
                    page, and `cargo build --profile cli -p biteband-cli` the command line"
            .into());
    }
    let mut steps = Steps::new();
    let tools = steps.take("Looking for the build tools", || tools::toolbox(NeedsNode::Yes))?;
    steps.take("The page and its size limits", || {
        page::build(&tools)?;
        budget::check(&project::dist())
    })?;
    steps.take("The page as one file", single_file::run)?;
    steps.take("The npm package", npm::build)?;
    let program = steps.take("The command line", command_line)?;
    let folder = steps.take("Laying out the bundle", || lay(&out, &program))?;
    steps.summary();
    println!("\nThe release lies in {}; HOW-TO.txt says what is what.", folder.display());
    Ok(())
}

fn out_folder(arguments: &[String]) -> Outcome<PathBuf> {
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [] => Ok(project::root().join("target/release-bundle")),
        ["--out", folder] => Ok(PathBuf::from(folder)),
        ["--out"] => Err("--out needs a folder, as in --out ../handed-out".into()),
        [other, ..] => Err(format!("release does not know {other}").into()),
    }
}

/// Builds the command line as a bench PC wants it, and returns the program.
fn command_line() -> Outcome<PathBuf> {
    run_program(
        cargo()
            .args(["build", "--locked", "--profile", "cli", "--package", "biteband-cli"])
            .current_dir(project::root())
            .envs(without_places(&host()?)),
    )?;
    Ok(project::cargo_target().join("cli").join(program_file("biteband")))
}

fn program_file(stem: &str) -> String {
    format!("{stem}{}", std::env::consts::EXE_SUFFIX)
}

/// A file of the bundle, under its name there.
#[derive(Clone, Debug, PartialEq)]
struct Piece {
    name: String,
    bytes: Vec<u8>,
    is_program: bool,
}

impl Piece {
    fn new(name: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self { name: name.into(), bytes: bytes.into(), is_program: false }
    }

    fn program(name: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self { is_program: true, ..Self::new(name, bytes) }
    }

    /// The rights of the file where a system knows such.
    fn mode(&self) -> u32 {
        if self.is_program { 0o755 } else { 0o644 }
    }
}

/// What was built, before it is laid out.
#[derive(Debug)]
struct Built {
    /// The machine and system that the program is for.
    target: String,
    page: Vec<Piece>,
    single_file: Vec<u8>,
    package: Piece,
    program: Vec<u8>,
    notices: String,
    texts: Vec<Piece>,
}

/// The bundle's own folder below this one; what stands there must be a bundle, because it will be replaced.
fn place(out: &Path) -> Outcome<PathBuf> {
    let folder = out.join(format!("biteband-{VERSION}"));
    if folder.exists() && !folder.join(SUMS).exists() {
        let shown = folder.display();
        return Err(format!("{shown} is no release: move it away, or name another folder").into());
    }
    Ok(folder)
}

/// Lays the bundle out below a folder, in place of one that was there, and returns its own folder.
fn lay(out: &Path, program: &Path) -> Outcome<PathBuf> {
    let folder = place(out)?;
    let fresh = out.join(format!(".biteband-{VERSION}.new"));
    remove(&fresh)?;
    for piece in arrange(gather(program)?)? {
        let path = fresh.join(&piece.name);
        fs::create_dir_all(path.parent().unwrap_or(&fresh))?;
        fs::write(&path, &piece.bytes)?;
        if piece.is_program {
            make_runnable(&path, piece.mode())?;
        }
    }
    remove(&folder)?;
    fs::rename(fresh, &folder)?;
    Ok(folder)
}

#[cfg(unix)]
fn make_runnable(path: &Path, mode: u32) -> Outcome {
    use std::os::unix::fs::PermissionsExt as _;
    Ok(fs::set_permissions(path, fs::Permissions::from_mode(mode))?)
}

#[cfg(not(unix))]
fn make_runnable(_: &Path, _: u32) -> Outcome {
    Ok(())
}

fn remove(folder: &Path) -> Outcome {
    if folder.exists() {
        fs::remove_dir_all(folder)?;
    }
    Ok(())
}

/// The target that the compiler makes programs for unless told otherwise: that of this machine.
fn host() -> Outcome<String> {
    let said = answer(Command::new("rustc").arg("-vV")).unwrap_or_default();
    let target = said.lines().find_map(|line| line.strip_prefix("host: "));
    Ok(target.ok_or("rustc does not say which machine it is for")?.to_owned())
}

fn gather(program: &Path) -> Outcome<Built> {
    let root = project::root();
    let manifest = read(&project::npm_package().join("package.json"), "cargo xtask npm")?;
    let changelog = fs::read_to_string(root.join("CHANGELOG.md"))?;
    agree(VERSION, &manifest, &changelog)?;
    let mut page = Vec::new();
    let dist = project::dist();
    read(&dist.join("index.html"), "cargo xtask app --build-only")?;
    for name in project::files_below(&dist)? {
        page.push(Piece::new(&name, fs::read(dist.join(&name))?));
    }
    let mut texts = Vec::new();
    for (name, there) in TEXTS {
        let bytes = fs::read(root.join(name)).map_err(|error| format!("{name}: {error}"))?;
        texts.push(Piece::new(*there, bytes));
    }
    Ok(Built {
        target: host()?,
        page,
        single_file: read(&project::single_file(), "cargo xtask single-file")?,
        package: package()?,
        program: read(program, "cargo build --profile cli -p biteband-cli")?,
        notices: notices()?,
        texts,
    })
}

/// A built file; the command is the one that makes it.
fn read(path: &Path, command: &str) -> Outcome<Vec<u8>> {
    fs::read(path)
        .map_err(|error| format!("{}: {error}; it is made by `{command}`", path.display()).into())
}

/// The npm package as npm would hand it out.
fn package() -> Outcome<Piece> {
    let place = project::root().join("target/npm-packed");
    remove(&place)?;
    fs::create_dir_all(&place)?;
    run_program(
        Command::new("npm")
            .args(["pack", "--silent", "--ignore-scripts", "--offline", "--pack-destination"])
            .arg(&place)
            .current_dir(project::npm_package()),
    )?;
    match project::files_below(&place)?.as_slice() {
        [name] => Ok(Piece::new(name, fs::read(place.join(name))?)),
        _ => Err("npm did not pack one file".into()),
    }
}

/// Page, command line and npm package go out under one version, and the changelog tells of it.
fn agree(version: &str, manifest: &[u8], changelog: &str) -> Outcome {
    let manifest: serde_json::Value = serde_json::from_slice(manifest)?;
    let package = manifest.get("version").and_then(serde_json::Value::as_str).unwrap_or("none");
    if package != version {
        return Err(format!(
            "the npm package has the version {package}, everything else {version}"
        )
        .into());
    }
    if !changelog.lines().any(|line| line == format!("## {version}")) {
        return Err(format!("CHANGELOG.md has no heading for the version {version}").into());
    }
    Ok(())
}

/// Everything under its place in the bundle, in the order of the names, the sums last.
fn arrange(built: Built) -> Outcome<Vec<Piece>> {
    let program = format!("bin/{}", program_file(&format!("biteband-{}", built.target)));
    let how_to = include_str!("how-to.txt")
        .replace("{version}", VERSION)
        .replace("{target}", &built.target)
        .replace("{program}", &program)
        .replace("{package}", &built.package.name);
    let mut pieces = vec![Piece::new("HOW-TO.txt", how_to), Piece::new(NOTICES, built.notices)];
    for text in built.texts {
        pieces.push(if text.name == "README.md" { linked(&text)? } else { text });
    }
    // Whoever hands on the page, the file or the program alone hands on the licences with it.
    let single_file = licensed(built.single_file, &pieces)?;
    let mut page = built.page;
    page.extend(pieces.iter().filter(|piece| piece.name.starts_with(LICENCES)).cloned());
    let mut with_program: Vec<Piece> =
        pieces.iter().filter(|piece| piece.name.starts_with(LICENCES)).cloned().collect();
    with_program
        .extend(pieces.iter().filter(|piece| piece.name == "docs/command-line.md").cloned());
    with_program.push(Piece::program(program_file("biteband"), built.program.clone()));
    pieces.extend([
        Piece::new(format!("biteband-{VERSION}-page.zip"), archive::zip(page.clone())?),
        Piece::new(format!("biteband-{VERSION}-{}.zip", built.target), archive::zip(with_program)?),
        Piece::new("biteband.html", single_file),
        Piece::program(program, built.program),
        built.package,
    ]);
    let below = |piece: Piece| Piece { name: format!("page/{}", piece.name), ..piece };
    pieces.extend(page.into_iter().map(below));
    pieces.sort_by(|one, other| one.name.cmp(&other.name));
    pieces.push(Piece::new(SUMS, sums(&pieces)));
    Ok(pieces)
}

/// The single file with the licences behind it, where no browser shows them and every editor does.
fn licensed(mut page: Vec<u8>, pieces: &[Piece]) -> Outcome<Vec<u8>> {
    for piece in pieces.iter().filter(|piece| piece.name.starts_with(LICENCES)) {
        // What ends a comment would put the rest of a licence onto the page.
        if ["-->", "--!>"].iter().any(|end| find_in(&piece.bytes, end.as_bytes())) {
            return Err(format!("{} would end a comment early inside HTML", piece.name).into());
        }
        page.extend_from_slice(format!("\n<!-- {}\n\n", piece.name).as_bytes());
        page.extend_from_slice(&piece.bytes);
        page.extend_from_slice(b"\n-->\n");
    }
    Ok(page)
}

fn find_in(text: &[u8], part: &[u8]) -> bool {
    text.windows(part.len()).any(|place| place == part)
}

/// The project's description with its links led to where their files lie in the bundle.
fn linked(readme: &Piece) -> Outcome<Piece> {
    let mut text = std::str::from_utf8(&readme.bytes)?.to_owned();
    for (name, there) in TEXTS {
        text = text.replace(&format!("]({name})"), &format!("]({there})"));
    }
    let links = text.split("](").skip(1).filter_map(|rest| rest.split(')').next());
    let has = |link: &str| TEXTS.iter().any(|(_, there)| *there == link);
    match links
        .into_iter()
        .find(|link| !link.contains("://") && !link.starts_with('#') && !has(link))
    {
        Some(lost) => {
            Err(format!("README.md has a link to {lost}, which does not go along").into())
        }
        None => Ok(Piece::new(&readme.name, text)),
    }
}

/// A line for each piece, as `sha256sum --check` reads it.
fn sums(pieces: &[Piece]) -> String {
    let mut text = String::new();
    for piece in pieces {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{}  {}", digest::hex(&piece.bytes), piece.name);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    fn built() -> Built {
        Built {
            target: "shop-bench".to_owned(),
            page: vec![Piece::new("index.html", *b"page"), Piece::new("icons/icon.svg", *b"icon")],
            single_file: b"single".to_vec(),
            package: Piece::new("biteband-1.tgz", *b"package"),
            program: b"program".to_vec(),
            notices: "notices".to_owned(),
            texts: vec![
                Piece::new("README.md", *b"[commands](crates/cli/README.md)"),
                Piece::new("LICENSE-MIT", *b"abc"),
                Piece::new("docs/command-line.md", *b"commands"),
            ],
        }
    }

    #[test]
    fn every_part_has_its_place_and_the_sums_come_last() {
        let pieces = arrange(built()).unwrap();
        let names: Vec<&str> = pieces.iter().map(|piece| piece.name.as_str()).collect();
        let program = format!("bin/biteband-shop-bench{}", std::env::consts::EXE_SUFFIX);
        let (page, packed) =
            (format!("biteband-{VERSION}-page.zip"), format!("biteband-{VERSION}-shop-bench.zip"));
        let wanted = [
            "HOW-TO.txt",
            "LICENSE-MIT",
            NOTICES,
            "README.md",
            &program,
            &page,
            &packed,
            "biteband-1.tgz",
            "biteband.html",
            "docs/command-line.md",
            "page/LICENSE-MIT",
            &format!("page/{NOTICES}"),
            "page/icons/icon.svg",
            "page/index.html",
            SUMS,
        ];
        assert_eq!(names.iter().collect::<BTreeSet<_>>(), wanted.iter().collect());
        assert!(names.split_last().unwrap().1.is_sorted());
        assert_eq!(names.last(), Some(&SUMS));
        let programs = pieces.iter().filter(|piece| piece.is_program);
        assert!(programs.map(|piece| &piece.name).eq([&program]));
    }

    #[test]
    fn the_single_file_carries_the_licences_unless_they_would_be_shown() {
        let page = licensed(b"single".to_vec(), &arrange(built()).unwrap()).unwrap();
        let page = String::from_utf8(page).unwrap();
        assert!(page.starts_with("single\n<!-- LICENSE-MIT\n\nabc\n-->\n"), "{page}");
        assert!(page.ends_with("<!-- LICENSES-OF-OTHERS.txt\n\nnotices\n-->\n"), "{page}");
        let shown = Built { notices: "see --> there".to_owned(), ..built() };
        assert!(arrange(shown).unwrap_err().to_string().contains(NOTICES));
    }

    #[test]
    fn sums_name_every_other_file_by_its_published_hash() {
        let pieces = arrange(built()).unwrap();
        let (sums, others) = pieces.split_last().unwrap();
        let sums = std::str::from_utf8(&sums.bytes).unwrap();
        // FIPS 180-4, example "abc".
        let line = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  LICENSE-MIT";
        assert!(sums.lines().any(|said| said == line));
        let named = sums.lines().filter_map(|line| Some(line.split_once("  ")?.1));
        assert!(named.eq(others.iter().map(|piece| piece.name.as_str())));
    }

    #[test]
    fn how_to_has_no_blank_left_and_names_what_is_there() {
        let pieces = arrange(built()).unwrap();
        let how_to = &pieces.iter().find(|piece| piece.name == "HOW-TO.txt").unwrap().bytes;
        let how_to = std::str::from_utf8(how_to).unwrap();
        assert!(!how_to.contains(['{', '}']));
        let untold = |name: &str| name.contains('/') || name == "LICENSE-MIT";
        for piece in pieces.iter().filter(|piece| !untold(&piece.name)) {
            assert!(how_to.contains(&piece.name) || piece.name == "HOW-TO.txt", "{}", piece.name);
        }
    }

    #[test]
    fn links_of_the_description_lead_into_the_bundle_or_are_refused() {
        let text = |text: &str| linked(&Piece::new("README.md", text.as_bytes()));
        let moved = text("[a](crates/cli/README.md) [b](https://rustup.rs)").unwrap();
        assert_eq!(moved.bytes, b"[a](docs/command-line.md) [b](https://rustup.rs)");
        assert!(text("[a](tests/README.md)").unwrap_err().to_string().contains("tests/README.md"));
        let own = fs::read_to_string(project::root().join("README.md")).unwrap();
        assert!(text(&own).is_ok());
    }

    #[test]
    fn versions_that_differ_are_refused() {
        let (manifest, changelog) = (br#"{"version": "1.2.3"}"#, "# Changelog\n\n## 1.2.3\n");
        assert!(agree("1.2.3", manifest, changelog).is_ok());
        assert!(agree("1.2.4", manifest, changelog).unwrap_err().to_string().contains("1.2.3"));
        assert!(
            agree("1.2.3", manifest, "## 1.2.30\n").unwrap_err().to_string().contains("CHANGELOG")
        );
        assert!(agree("1.2.3", b"{}", changelog).is_err());
    }

    #[test]
    fn only_a_release_is_replaced() {
        let out = std::env::temp_dir().join(format!("biteband-release-{}", std::process::id()));
        let folder = place(&out).unwrap();
        fs::create_dir_all(&folder).unwrap();
        let refused = place(&out).is_err();
        fs::write(folder.join(SUMS), "").unwrap();
        let taken = place(&out).is_ok();
        remove(&out).unwrap();
        assert!(refused && taken);
    }

    #[test]
    fn options_are_read_and_wrong_ones_refused() {
        let read =
            |words: &[&str]| out_folder(&words.iter().map(ToString::to_string).collect::<Vec<_>>());
        assert!(read(&[]).unwrap().ends_with("target/release-bundle"));
        assert_eq!(read(&["--out", "there"]).unwrap(), Path::new("there"));
        assert!(read(&["--out"]).is_err() && read(&["there"]).is_err());
    }
}
