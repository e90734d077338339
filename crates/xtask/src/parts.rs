//! Cuts the page's module into the first module and the parts that are loaded when their page is opened.
//!
//! `web/src/rooms.rs` marks what begins a part; what only that part reaches, code and data, goes into its file.
//! Trunk has linked and bound the module as a whole by then. This takes the linked module once more, cuts it,
//! binds the first module, and puts the result in the place of trunk's: one script and the modules beside it.
//!
//! Every part lies there twice. Packed it is what the page loads and keeps on the device, the first module only keeps; its name has an ending of
//! its own, so that no host takes it for something to unpack on the way. The plain module beside it is for browsers
//! of before 2023, which cannot unpack: they fetch it when it is needed and keep none.

use crate::post_build::optimise;
use crate::process::{find, run as run_program};
use crate::{Outcome, bindings, digest, project, tools};
use std::fs;
use std::num::NonZeroU64;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_split_cli_support::{Options, transform};

/// The name under which the first module asks for its loaders.
const LINK: &str = "./__wasm_split.js";
/// A module smaller than this stands inside the script: a request of its own would cost more than its bytes.
const SMALL: usize = 300;
/// The endings of a part's plain module and of its packed one.
const PLAIN: &str = ".wasm";
const PACKED: &str = ".part";
/// What the names of the functions hold by which the standard library prints a float.
const FLOAT_PRINTER: &[u8] = b"core3fmt5float";
/// How the script fetches a part, by the name of its plain module, and how it holds one; the single file holds
/// them all.
const FETCHED: &str = "part(\"./";
const LOADERS: &str = "
const unpacks = typeof DecompressionStream === \"function\";
async function part(name) {
    if (unpacks) name = name.replace(/wasm$/, \"part\");
    const answer = await fetch(new URL(name, import.meta.url));
    if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
    if (!unpacks) return answer.arrayBuffer();
    return new Response(answer.body.pipeThrough(new DecompressionStream(\"gzip\"))).arrayBuffer();
}
async function held(text) {
    return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}
function load(read) {
    return () => {
        const src = read();
        src.catch(() => {});
        return async (imports) => WebAssembly.instantiate(await src, imports);
    };
}
";

/// What stands once for each part, and the call of `load` that does the same.
const SHORTER: [(&str, &str); 2] = [
    ("makeLoad(() => {\nconst src = ", "makeLoad(load(() => "),
    (
        ";\nsrc.catch(() => {});\nreturn async (imports) => (WebAssembly.instantiate(await src, imports));\n}\n",
        ")",
    ),
];

/// Replaces script and module of a page that trunk has built by those that are cut into parts.
///
/// # Errors
///
/// When the page or its linked module is not found, a release prints a float with the standard library, or a tool fails.
pub(crate) fn cut(page: &Path, profile: &str) -> Outcome {
    let stem = stem(page)?;
    let linked =
        project::cargo_target().join(format!("wasm32-unknown-unknown/{profile}/biteband-web.wasm"));
    let place = project::cargo_target().join("page-parts");
    if place.exists() {
        fs::remove_dir_all(&place)?;
    }
    let module = fs::read(&linked).map_err(|error| {
        format!("{}: {error}; is it the page of this folder?", linked.display())
    })?;
    // A debugging build prints everything that way.
    if profile == "release" {
        without_float_printer(&module)?;
    }
    let parts = split(&module, &place, &stem)?;
    run_program(
        Command::new(tools::wasm_bindgen()?)
            .args([
                "--target",
                "web",
                "--no-typescript",
                "--keep-lld-exports",
                "--out-name",
                &stem,
                "--out-dir",
            ])
            .arg(&place)
            .arg(place.join("first.wasm")),
    )?;
    fs::remove_file(place.join("first.wasm"))?;
    if let Some(optimiser) = find("wasm-opt").filter(|_| profile == "release") {
        optimise(&place, &optimiser)?;
    }
    bindings::count(&place, &format!("{stem}.js"))?;

    let glue = fs::read_to_string(place.join(format!("{stem}.js")))?;
    let mut script = join(&glue, &fs::read_to_string(place.join(LINK))?)?;
    for path in parts {
        let made = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let bytes = fs::read(&path)?;
        if bytes.len() < SMALL {
            script = hold(&script, &made, &bytes)?;
        } else {
            let name = part_name(&stem, &made);
            script = script.replace(&format!("{FETCHED}{made}\""), &format!("{FETCHED}{name}\""));
            fs::write(page.join(packed_name(&name)), pack(&bytes, profile)?)?;
            fs::write(page.join(name), bytes)?;
        }
    }
    for (theirs, ours) in SHORTER {
        script = script.replace(theirs, ours);
    }
    fs::write(page.join(format!("{stem}.js")), script)?;
    let first = format!("{stem}_bg{PLAIN}");
    let bytes = fs::read(place.join(&first))?;
    fs::write(page.join(packed_name(&first)), pack(&bytes, profile)?)?;
    fs::write(page.join(first), bytes)?;
    fs::remove_dir_all(place)?;
    Ok(())
}

/// Cuts a linked module; the first module becomes `first.wasm`, the other ones are returned.
fn split(module: &[u8], place: &Path, stem: &str) -> Outcome<Vec<PathBuf>> {
    let (first, glue) = (place.join("first.wasm"), format!("./{stem}.js"));
    let mut options = Options::new(module);
    options.output_dir = place;
    options.main_out_path = &first;
    options.link_name = LINK;
    options.main_module = &glue;
    let cut = transform(options).map_err(|error| format!("the module cannot be cut: {error:#}"))?;
    Ok(cut.split_modules)
}

/// Refuses a module that prints a float with the standard library: one `{value}` brings 8 kB of packed code along.
fn without_float_printer(module: &[u8]) -> Outcome {
    if module.windows(FLOAT_PRINTER.len()).any(|place| place == FLOAT_PRINTER) {
        return Err("the page prints a float with the standard library; \
                    write it with Shown, format::exact or format::fixed"
            .into());
    }
    Ok(())
}

/// What script and module of the page are called, without their endings.
fn stem(page: &Path) -> Outcome<String> {
    let names = project::files_below(page)?;
    let mut stems = names.iter().filter_map(|name| name.strip_suffix("_bg.wasm"));
    match (stems.next(), stems.next()) {
        (Some(stem), None) => Ok(stem.to_owned()),
        _ => Err(format!("{} does not hold exactly one module", page.display()).into()),
    }
}

/// `split_mark.wasm` is the part `mark`; `chunk_6.wasm` is what several parts share.
fn part_name(stem: &str, made: &str) -> String {
    format!("{stem}-{}", made.trim_start_matches("split_").replace("chunk_", "shared-"))
}

/// What the packed form of a plain module is called.
fn packed_name(plain: &str) -> String {
    plain.strip_suffix(PLAIN).unwrap_or(plain).to_owned() + PACKED
}

/// A module as a gzip stream, which carries a checksum. A page under development is packed fast and badly.
fn pack(bytes: &[u8], profile: &str) -> Outcome<Vec<u8>> {
    let mut options = zopfli::Options::default();
    if profile == "debug" {
        options.iteration_count = NonZeroU64::MIN;
    }
    let mut packed = Vec::new();
    zopfli::compress(options, zopfli::Format::Gzip, bytes, &mut packed)?;
    Ok(packed)
}

/// The part whose packed form a file of the page is, by its name: `mark`, or `shared` for what several share.
pub(crate) fn packed_part(name: &str) -> Option<&str> {
    part_of(name.strip_suffix(PACKED)?)
}

/// Whether a file of the page is the plain module of a part.
pub(crate) fn is_plain_part(name: &str) -> bool {
    name.strip_suffix(PLAIN).and_then(part_of).is_some()
}

fn part_of(stem: &str) -> Option<&str> {
    let (_, part) = stem.rsplit_once('-')?;
    if part.ends_with("_bg") {
        return None;
    }
    let shared = part.bytes().all(|digit| digit.is_ascii_digit());
    Some(if shared { "shared" } else { part })
}

/// One script of the two: the glue of the first module, and the loaders of the parts, which ask each other for
/// their functions.
fn join(glue: &str, link: &str) -> Outcome<String> {
    let mut script = String::new();
    let mut asked: Vec<&str> = Vec::new();
    for line in glue.lines() {
        let import = line.strip_prefix("import * as ").and_then(|rest| rest.split_once(" from "));
        match import {
            Some((name, from)) if from.contains(LINK) => asked.push(name),
            _ => script.extend([line, "\n"]),
        }
    }
    let mut loaders: Vec<&str> = Vec::new();
    script.push_str(LOADERS);
    for line in link.lines().filter(|line| !line.starts_with("import { initSync }")) {
        match line.strip_prefix("export const ") {
            Some(rest) => {
                loaders.extend(rest.split_once(" = ").map(|(name, _)| name));
                script.extend(["const ", rest, "\n"]);
            }
            None => script.extend([line.trim(), "\n"]),
        }
    }
    script.extend(["const loaders = { ", &loaders.join(", "), " };\n"]);
    for name in asked {
        script.extend(["const ", name, " = loaders;\n"]);
    }
    // The module is compiled from its bytes, so that it may also come from inside the script.
    for (theirs, ours) in [
        ("fetch(new URL(\"./", FETCHED),
        (".wasm\", import.meta.url))", ".wasm\")"),
        (
            "WebAssembly.instantiateStreaming(src, imports)",
            "WebAssembly.instantiate(await src, imports)",
        ),
    ] {
        if loaders.is_empty() || !script.contains(theirs) {
            return Err(format!("the loaders of the parts do not say `{theirs}`").into());
        }
        script = script.replace(theirs, ours);
    }
    Ok(script)
}

/// Puts the bytes of a part into the script in the place of its address.
///
/// # Errors
///
/// When the script does not fetch such a part.
pub(crate) fn hold(script: &str, name: &str, bytes: &[u8]) -> Outcome<String> {
    let fetched = format!("{FETCHED}{name}\")");
    if !script.contains(&fetched) {
        return Err(format!("the script does not fetch {name}").into());
    }
    Ok(script.replace(&fetched, &format!("held(\"{}\")", digest::base64(bytes))))
}

/// The files of the parts that a script fetches.
pub(crate) fn fetched(script: &str) -> Vec<String> {
    let places = script.split(FETCHED).skip(1);
    places.filter_map(|rest| Some(rest.split_once("\")")?.0.to_owned())).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use flate2::read::GzDecoder;
    use std::io::Read as _;

    const GLUE: &str = "import * as import1 from \"./__wasm_split.js\"\nfunction initSync() {}\n\
                        export { initSync, go as default };";
    const LINKED: &str = "import { initSync } from \"./x.js\";\n\
        export const __wasm_split_load_mark = wrap(() => {\n\
        const src = fetch(new URL(\"./split_mark.wasm\", import.meta.url));\n\
        return async (imports) => (WebAssembly.instantiateStreaming(src, imports));\n}, []);\n";

    #[test]
    fn glue_and_loaders_become_one_script_without_imports() {
        let script = join(GLUE, LINKED).unwrap();
        assert!(!script.lines().any(|line| line.starts_with("import")), "{script}");
        assert!(
            script
                .contains("const loaders = { __wasm_split_load_mark };\nconst import1 = loaders;")
        );
        assert!(script.contains("WebAssembly.instantiate(await src, imports)"));
        assert_eq!(fetched(&script), ["split_mark.wasm"]);
    }

    #[test]
    fn a_module_that_prints_floats_the_standard_way_is_refused() {
        // The name as the compiler writes it, in either of its spellings.
        for name in
            ["_RNvXs7_NtNtCsgX_4core3fmt5floatdNtB7_7Display3fmt", "_ZN4core3fmt5float29exact17hE"]
        {
            let module = [b"\0asm".as_slice(), name.as_bytes(), b"more"].concat();
            let refused = without_float_printer(&module).unwrap_err();
            assert!(refused.to_string().contains("Shown"), "{refused}");
        }
        without_float_printer(b"\0asm core3fmt9Formatter").unwrap();
    }

    #[test]
    fn loaders_of_another_kind_are_refused() {
        assert!(join(GLUE, "export const a = 1;\n").is_err());
        assert!(join(GLUE, "").is_err());
    }

    #[test]
    fn a_part_can_stand_inside_the_script() {
        let script = join(GLUE, LINKED).unwrap();
        let held = hold(&script, "split_mark.wasm", b"\0asm").unwrap();
        assert!(held.contains("held(\"AGFzbQ==\")") && fetched(&held).is_empty());
        assert!(hold(&script, "split_other.wasm", b"").is_err());
    }

    #[test]
    fn files_are_named_after_their_parts() {
        let name = part_name("biteband-web-0f", "split_mark.wasm");
        assert_eq!(name, "biteband-web-0f-mark.wasm");
        assert!(is_plain_part(&name) && packed_part(&name).is_none());
        let packed = packed_name(&name);
        assert_eq!(packed, "biteband-web-0f-mark.part");
        assert_eq!(packed_part(&packed), Some("mark"));
        assert!(!is_plain_part(&packed));
        let shared = packed_name(&part_name("biteband-web-0f", "chunk_6.wasm"));
        assert_eq!(packed_part(&shared), Some("shared"));
        for other in ["biteband-web-0f_bg.wasm", "boot.js"] {
            assert!(!is_plain_part(other) && packed_part(other).is_none(), "{other}");
        }
    }

    #[test]
    fn a_packed_part_is_a_gzip_stream_of_the_same_bytes() {
        let bytes: Vec<u8> = (0..5_000_u32).flat_map(|n| (n % 251).to_le_bytes()).collect();
        for profile in ["release", "debug"] {
            let packed = pack(&bytes, profile).unwrap();
            // RFC 1952: the two marks of the format, and deflate as the method.
            assert_eq!(packed.get(..3), Some(&[0x1f, 0x8b, 8][..]));
            assert!(packed.len() < bytes.len() / 4, "{}", packed.len());
            let mut plain = Vec::new();
            GzDecoder::new(&packed[..]).read_to_end(&mut plain).unwrap();
            assert_eq!(plain, bytes);
        }
    }

    #[test]
    fn the_script_unpacks_where_the_browser_can_and_names_the_plain_module_otherwise() {
        let script = join(GLUE, LINKED).unwrap();
        let ending = packed_name(PLAIN).replace('.', "");
        assert!(script.contains(&format!("name.replace(/wasm$/, \"{ending}\")")), "{script}");
        assert!(script.contains("new DecompressionStream(\"gzip\")"));
    }
}
