//! The file of parts: one JSON text with everything that is known of them, the same for the page, the command line and
//! whoever reads it with something else. `crates/bench/schema/biteband-parts-1.schema.json` describes it.
//!
//! [`read`] is the checker. It believes nothing: size, encoding, nesting, the form, its version, every text, name, number
//! and picture are looked at, and what does not pass is refused with its place in the file. It changes nothing.
//!
//! ```
//! use biteband_bench::card::{Card, file};
//! use biteband_bench::words::Language;
//!
//! let pawl = Card { id: "pawl-0001".into(), name: "Capstan pawl".into(), ..Card::default() };
//! let text = file::write(&[pawl.clone()], 1_794_492_180_000);
//! assert_eq!(file::read(Language::English, text.as_bytes()).unwrap(), [pawl]);
//! let cut = &text[..text.len() / 2];
//! assert_eq!(file::read(Language::English, cut.as_bytes()).unwrap_err().code, "bench.parts_cut");
//! ```

use std::io::{self, Read};

use serde::{Deserialize, Serialize};
use serde_json::Value;
use serde_json::error::Category;

use super::check::check;
use super::scan::{self, Wrong};
use super::{Card, Entry, moment, versions};
use crate::format;
use crate::refusal::Refusal;
use crate::state::{Damage, Step, migrate};
use crate::words::{Language, PartRefusal, Shape};

pub use super::check::{
    MOST_ENTRIES, MOST_NAME, MOST_NOTES, MOST_PHOTO, MOST_PHOTOS, MOST_STROKES, MOST_TEXT,
};

/// What a file says that it is.
pub const FORMAT: &str = "biteband-parts";
pub use super::record::SCHEMA;
/// The largest file that is read, in bytes. A part with as many and as large photos as it may have fits into it.
pub const MOST_BYTES: usize = 64 << 20;
/// The most parts in one file.
pub const MOST_PARTS: usize = 2_000;

/// The steps so far, each on the list of cards: the first entry brings version 1 to 2. Version 1 is the first, so there is
/// none.
const STEPS: [Step; SCHEMA as usize - 1] = [];

#[derive(Serialize)]
struct Written<'a> {
    format: &'a str,
    schema: u32,
    app: String,
    data: String,
    exported: String,
    parts: &'a [Card],
}

/// What every version has had and will have.
#[derive(Deserialize)]
struct Head {
    format: Option<Value>,
    schema: Option<Value>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Document<Parts> {
    #[serde(rename = "format")]
    _format: String,
    #[serde(rename = "schema")]
    _schema: u32,
    #[serde(default, rename = "app")]
    _app: String,
    #[serde(default, rename = "data")]
    _data: String,
    #[serde(default, rename = "exported")]
    _exported: String,
    parts: Parts,
}

/// The file of some parts, with the moment of the export in milliseconds.
#[must_use]
pub fn write(parts: &[Card], now_ms: i64) -> String {
    let (app, data) = versions();
    let exported = moment(now_ms);
    let written = Written { format: FORMAT, schema: SCHEMA, app, data, exported, parts };
    // Texts and numbers can always be written.
    let mut text = indented(&serde_json::to_string(&written).unwrap_or_default());
    text.push('\n');
    text
}

/// A text in lines, each as far in as it is deep. The library's own second writer would weigh as much as its first.
fn indented(text: &str) -> String {
    let mut out = String::with_capacity(text.len() * 2);
    let (mut depth, mut quoted, mut escaped) = (0_usize, false, false);
    let mut signs = text.chars().peekable();
    let line = |out: &mut String, depth: usize| {
        out.push('\n');
        out.extend(std::iter::repeat_n("  ", depth));
    };
    while let Some(sign) = signs.next() {
        if quoted {
            quoted = escaped || sign != '"';
            escaped = !escaped && sign == '\\';
            out.push(sign);
            continue;
        }
        match sign {
            '{' | '[' => {
                out.push(sign);
                if let Some(end) = signs.next_if(|next| matches!(next, '}' | ']')) {
                    out.push(end);
                } else {
                    depth += 1;
                    line(&mut out, depth);
                }
            }
            '}' | ']' => {
                depth = depth.saturating_sub(1);
                line(&mut out, depth);
                out.push(sign);
            }
            ',' => {
                out.push(sign);
                line(&mut out, depth);
            }
            ':' => out.push_str(": "),
            _ => {
                quoted = sign == '"';
                out.push(sign);
            }
        }
    }
    out
}

/// The files of all parts: one, or several in their order where one would be larger than what is read again.
#[must_use]
pub fn write_all(parts: &[Card], now_ms: i64) -> Vec<String> {
    let whole = write(parts, now_ms);
    let fits = whole.len() <= MOST_BYTES && scan::scan(&whole, MOST_PARTS, false).is_ok();
    if parts.len() < 2 || fits {
        return vec![whole];
    }
    let (first, second) = parts.split_at(parts.len() / 2);
    let mut files = write_all(first, now_ms);
    files.extend(write_all(second, now_ms));
    files
}

/// Takes the bytes of a file in, and not one more than shows that it is too large.
///
/// # Errors
/// What the stream says.
pub fn take(stream: impl Read) -> io::Result<Vec<u8>> {
    let most = u64::try_from(MOST_BYTES).unwrap_or(u64::MAX).saturating_add(1);
    let mut bytes = Vec::new();
    stream.take(most).read_to_end(&mut bytes)?;
    Ok(bytes)
}

/// Reads the parts of a file.
///
/// # Errors
/// A refusal that says what is wrong, at which place, what would be accepted and what to do.
pub fn read(language: Language, bytes: &[u8]) -> Result<Vec<Card>, Refusal> {
    read_with(language, bytes, &STEPS)
}

/// How many there are in a list of cards: entries of the story, strokes of files, photos.
#[must_use]
pub fn counts(parts: &[Card]) -> Counts {
    let strokes = |card: &Card| {
        let past = card.story.iter().filter_map(Entry::test);
        past.chain([&card.files]).map(|files| files.strokes.len()).sum::<usize>()
    };
    Counts {
        parts: parts.len(),
        entries: parts.iter().map(|card| card.story.len()).sum(),
        strokes: parts.iter().map(strokes).sum(),
        photos: parts.iter().map(|card| card.photos.len()).sum(),
    }
}

/// What a file holds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Counts {
    /// Parts.
    pub parts: usize,
    /// Entries of their stories.
    pub entries: usize,
    /// Strokes of files, those of the stories among them.
    pub strokes: usize,
    /// Photos.
    pub photos: usize,
}

fn read_with(language: Language, bytes: &[u8], steps: &[Step]) -> Result<Vec<Card>, Refusal> {
    let refuse = |code, given: String, what: PartRefusal<'_>| refusal(language, code, given, what);
    if bytes.len() > MOST_BYTES {
        // How much larger is not known: no more of it was taken in.
        let most = megabytes(MOST_BYTES);
        let given = format!("> {most}");
        return Err(refuse("bench.parts_too_large", given, PartRefusal::TooLarge { most: &most }));
    }
    // What some editors put before a text is no part of it.
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let text = str::from_utf8(bytes).map_err(|error| {
        let valid = bytes.get(..error.valid_up_to()).unwrap_or_default();
        let line = valid.split(|byte| *byte == b'\n').count();
        refuse("bench.parts_not_text", String::new(), PartRefusal::NotText { line })
    })?;
    if text.trim().is_empty() {
        return Err(refuse("bench.parts_empty", String::new(), PartRefusal::Empty));
    }
    look_over(language, text, false)?;
    let head: Head =
        serde_json::from_str(text).map_err(|error| head_refused(language, text, &error))?;
    // A list of the fields in their order would be read as well.
    let object = text.trim_start().starts_with('{');
    match head.format.as_ref().filter(|_| object) {
        Some(Value::String(format)) if format == FORMAT => {}
        other => {
            let found =
                other.map(|found| format::shortened(&found.to_string())).unwrap_or_default();
            let what = PartRefusal::NotParts { found: &found };
            return Err(refuse("bench.parts_other_format", found.clone(), what));
        }
    }
    let found = head.schema.unwrap_or_default();
    let unversioned = || refuse("bench.parts_no_version", shown(&found), PartRefusal::NoVersion);
    let version = match found.as_u64() {
        None | Some(0) => return Err(unversioned()),
        Some(version) => u32::try_from(version).unwrap_or(u32::MAX),
    };
    let newest = u32::try_from(steps.len()).unwrap_or_default() + 1;
    if version > newest {
        let given = shown(&found);
        let what = PartRefusal::Newer { found: &given, known: newest };
        return Err(refuse("bench.parts_newer", given.clone(), what));
    }
    let cards = if version == newest {
        typed(language, text)?
    } else {
        let old: Document<Value> = shaped(language, text)?;
        let parts = migrate(version, old.parts, steps).map_err(|damage| match damage {
            Damage::Unreadable | Damage::Newer(_) => unversioned(),
        })?;
        // Through the same door as a file of this version.
        let raised = serde_json::json!({ "format": FORMAT, "schema": newest, "parts": parts });
        typed(language, &raised.to_string())?
    };
    check(language, &cards)?;
    Ok(cards)
}

fn shown(found: &Value) -> String {
    if found.is_null() { String::new() } else { format::shortened(&found.to_string()) }
}

pub(super) fn megabytes(bytes: usize) -> String {
    format!("{} MB", bytes >> 20)
}

pub(super) fn refusal(
    language: Language,
    code: &'static str,
    given: impl Into<String>,
    what: PartRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = language.part_refused(what);
    Refusal::new(code, message, given, allowed, instead)
}

fn look_over(language: Language, text: &str, placed: bool) -> Result<(), Refusal> {
    scan::scan(text, MOST_PARTS, placed).map_err(|found| {
        let (line, column) = scan::place(text, found.at);
        match found.what {
            Wrong::TooDeep => {
                let what = PartRefusal::TooDeep { line, column, most: scan::MOST_DEEP };
                refusal(language, "bench.parts_too_deep", "", what)
            }
            Wrong::TooMuch => {
                let (parts, inner) = (MOST_PARTS, scan::MOST_INNER);
                let what = PartRefusal::TooMuch { line, column, parts, inner };
                refusal(language, "bench.parts_too_much", "", what)
            }
            Wrong::Misplaced { field, found, wanted } => {
                let place = format::shortened(&field);
                let what = PartRefusal::Shape { place: &place, line, found, wanted };
                refusal(language, "bench.parts_shape", "", what)
            }
        }
    })
}

fn typed(language: Language, text: &str) -> Result<Vec<Card>, Refusal> {
    look_over(language, text, true)?;
    let document: Document<Vec<Card>> = shaped(language, text)?;
    Ok(document.parts)
}

fn head_refused(language: Language, text: &str, error: &serde_json::Error) -> Refusal {
    if error.classify() == Category::Data {
        let found = PartRefusal::NotParts { found: "" };
        return refusal(language, "bench.parts_other_format", format::shortened(text), found);
    }
    broken(language, text, error)
}

/// A text that is no JSON, or ends too early.
fn broken(language: Language, text: &str, error: &serde_json::Error) -> Refusal {
    let (line, column) = (error.line(), error.column());
    // Of a number that ends in the middle the parser says that it is none.
    let in_number = text.ends_with(['.', '-', '+', 'e', 'E'])
        && scan::byte(text, line, column) + 1 >= text.len();
    if error.is_eof() || in_number {
        let what = PartRefusal::Cut { line, column };
        refusal(language, "bench.parts_cut", "", what)
    } else {
        let what = PartRefusal::NotJson { line, column };
        refusal(language, "bench.parts_not_json", "", what)
    }
}

/// Reads a type, and names the place where the text is otherwise.
fn shaped<'a, T: Deserialize<'a>>(language: Language, text: &'a str) -> Result<T, Refusal> {
    serde_json::from_str(text).map_err(|error| {
        if error.classify() != Category::Data {
            return broken(language, text, &error);
        }
        let at = scan::byte(text, error.line(), error.column());
        misshapen(language, &scan::path(text, at), &error)
    })
}

/// The sentence of the parser as a place and what is wrong there.
fn misshapen(language: Language, path: &str, error: &serde_json::Error) -> Refusal {
    let line = error.line();
    let sentence = error.to_string();
    let sentence = sentence.split(" at line ").next().unwrap_or_default();
    let named = || sentence.split('`').nth(1).unwrap_or_default().to_owned();
    let given = format::shortened(sentence.split(", expected").next().unwrap_or_default());
    // The path of a field that does not exist ends in that field.
    let of = |field: &str| {
        let outer = path.strip_suffix(field).map_or(path, |outer| outer.trim_end_matches('.'));
        if outer.is_empty() || outer == "." { FORMAT.to_owned() } else { outer.to_owned() }
    };
    if sentence.starts_with("unknown field") {
        let field = format::shortened(&named());
        let place = of(&named());
        let what = PartRefusal::Field { place: &place, field: &field, line };
        return refusal(language, "bench.parts_field", field.clone(), what);
    }
    if sentence.starts_with("missing field") {
        let field = named();
        let place = of(&field);
        let what = PartRefusal::Missing { place: &place, field: &field, line };
        return refusal(language, "bench.parts_field_missing", "", what);
    }
    if sentence.starts_with("duplicate field") {
        let field = named();
        let place = of(&field);
        let what = PartRefusal::Double { place: &place, field: &field, line };
        return refusal(language, "bench.parts_field_twice", field.clone(), what);
    }
    if sentence.starts_with("unknown variant") {
        let known = sentence.split(", expected ").nth(1).unwrap_or_default();
        let known = known.trim_start_matches("one of ").replace('`', "");
        let what = PartRefusal::OneOf { place: path, known: &known };
        return refusal(language, "bench.parts_name", format::shortened(&named()), what);
    }
    let (found, wanted) = sentence.split_once(", expected ").unwrap_or((sentence, ""));
    let found = found.split_once(": ").map_or("", |(_, found)| found);
    let (found, wanted) = (found_shape(found), wanted_shape(wanted));
    let what = PartRefusal::Shape { place: path, line, found, wanted };
    refusal(language, "bench.parts_shape", given, what)
}

fn found_shape(found: &str) -> Shape {
    let kinds = [
        ("string", Shape::Text),
        ("integer", Shape::Number),
        ("floating", Shape::Number),
        ("boolean", Shape::Switch),
        ("sequence", Shape::List),
        ("map", Shape::Object),
        ("null", Shape::Nothing),
        ("unit", Shape::Nothing),
    ];
    kinds.into_iter().find(|(start, _)| found.starts_with(start)).map_or(Shape::Other, |one| one.1)
}

fn wanted_shape(wanted: &str) -> Shape {
    match wanted {
        "a string" | "string or map" => Shape::Text,
        "f64" => Shape::Number,
        "u8" | "u32" | "u64" => Shape::Whole,
        "a boolean" => Shape::Switch,
        "a sequence" => Shape::List,
        _ if wanted.starts_with("struct") => Shape::Object,
        _ if wanted.contains("enum") => Shape::Text,
        _ => Shape::Other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Steps from a made-up first form, in which a part was called a piece, to a made-up third.
    fn rename(mut parts: Value) -> Value {
        for card in parts.as_array_mut().into_iter().flatten() {
            if let Some(card) = card.as_object_mut()
                && let Some(name) = card.remove("piece")
            {
                card.insert("name".into(), name);
            }
        }
        parts
    }

    fn mark(mut parts: Value) -> Value {
        for card in parts.as_array_mut().into_iter().flatten() {
            card["notes"] = "raised".into();
        }
        parts
    }

    #[test]
    fn lines_are_as_the_library_writes_them() {
        let cards =
            [Card { name: "a\\\" , {[b]}: \u{e9}".into(), ..Card::default() }, Card::default()];
        let text = serde_json::to_string(&cards).unwrap();
        assert_eq!(indented(&text), serde_json::to_string_pretty(&cards).unwrap());
    }

    const OLD: &str =
        r#"{"format":"biteband-parts","schema":1,"parts":[{"id":"pawl-0001","piece":"Pawl"}]}"#;

    #[test]
    fn older_files_are_raised_step_by_step_and_then_checked_like_any_other() {
        let language = Language::English;
        let steps: [Step; 2] = [rename, mark];
        let cards = read_with(language, OLD.as_bytes(), &steps).unwrap();
        assert_eq!((cards[0].name.as_str(), cards[0].notes.as_str()), ("Pawl", "raised"));
        let second = OLD.replace("\"schema\":1", "\"schema\":2").replace("piece", "name");
        let cards = read_with(language, second.as_bytes(), &steps).unwrap();
        assert_eq!((cards[0].name.as_str(), cards[0].notes.as_str()), ("Pawl", "raised"));
        // A field of the first form is none of the third.
        let third = OLD.replace("\"schema\":1", "\"schema\":3");
        let refused = read_with(language, third.as_bytes(), &steps).unwrap_err();
        assert_eq!(refused.code, "bench.parts_field");
        let odd = OLD.replace("\"Pawl\"", "7");
        let refused = read_with(language, odd.as_bytes(), &steps).unwrap_err();
        assert_eq!(refused.code, "bench.parts_shape");
        let fourth = OLD.replace("\"schema\":1", "\"schema\":4");
        let refused = read_with(language, fourth.as_bytes(), &steps).unwrap_err();
        assert_eq!(refused.code, "bench.parts_newer");
    }
}
