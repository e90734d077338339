//! A look over the text of a file before it is read: how deep it is nested, how much it holds, and that lists and objects
//! stand only where a file of parts has them. It takes no memory, whatever the file is.
//!
//! What follows reads a list in place of an object as its fields in order, and an object in place of a name as that name;
//! neither is in the schema, so both end here.

use std::fmt::Write as _;

use crate::words::Shape;

/// The most lists and objects inside one another.
pub(super) const MOST_DEEP: usize = 32;
/// The most lists and objects.
pub(super) const MOST_INNER: usize = 200_000;
/// How deep the cards lie: the document, its list, the card.
const CARD_DEPTH: usize = 3;

/// Fields that hold lists.
const LISTS: [&str; 12] = [
    "parts", "recipe", "zones", "results", "strokes", "proofs", "readings", "seen", "said",
    "story", "photos", "begun",
];
/// Fields that hold objects.
const OBJECTS: [&str; 8] =
    ["steel", "section", "bath", "tempering", "files", "claim", "conditions", "expected"];

/// What is wrong, and at which byte.
pub(super) struct Found {
    pub(super) at: usize,
    pub(super) what: Wrong,
}

pub(super) enum Wrong {
    TooDeep,
    TooMuch,
    /// A list or an object where something else belongs; no field within a list.
    Misplaced {
        field: String,
        found: Shape,
        wanted: Shape,
    },
}

/// Looks over a text; `most_parts` cards are let through. Whether lists and objects stand where this version of the form
/// has them is looked at only with `placed`.
pub(super) fn scan(text: &str, most_parts: usize, placed: bool) -> Result<(), Found> {
    let mut depth: usize = 0;
    let (mut inner, mut cards) = (0_usize, 0_usize);
    // One bit for each level: whether it is a list.
    let mut lists: u64 = 0;
    let mut string: Option<(usize, bool)> = None;
    let mut last: (usize, usize) = (0, 0);
    let mut after_colon = false;
    for (at, byte) in text.bytes().enumerate() {
        if let Some((start, escaped)) = string {
            string = match byte {
                _ if escaped => Some((start, false)),
                b'\\' => Some((start, true)),
                b'"' => {
                    last = (start, at);
                    None
                }
                _ => string,
            };
            continue;
        }
        match byte {
            b'"' => {
                string = Some((at + 1, false));
                after_colon = false;
            }
            b':' => after_colon = true,
            b'[' | b'{' => {
                let list = byte == b'[';
                let field = if after_colon { text.get(last.0..last.1) } else { None };
                let in_list = depth > 0 && lists & 1 == 1;
                if placed && depth > 0 && !fits(field, in_list, list) {
                    let found = if list { Shape::List } else { Shape::Object };
                    let field = field.unwrap_or_default().to_owned();
                    let wanted = belongs(&field);
                    return Err(Found { at, what: Wrong::Misplaced { field, found, wanted } });
                }
                depth += 1;
                inner += 1;
                cards += usize::from(depth == CARD_DEPTH && !list);
                lists = lists << 1 | u64::from(list);
                if depth > MOST_DEEP {
                    return Err(Found { at, what: Wrong::TooDeep });
                }
                if inner > MOST_INNER || cards > most_parts {
                    return Err(Found { at, what: Wrong::TooMuch });
                }
                after_colon = false;
            }
            b']' | b'}' => {
                depth = depth.saturating_sub(1);
                lists >>= 1;
                after_colon = false;
            }
            b',' => after_colon = false,
            _ => {}
        }
    }
    Ok(())
}

/// Whether a list or an object may stand there.
fn fits(field: Option<&str>, in_list: bool, list: bool) -> bool {
    match field {
        Some(field) if list => LISTS.contains(&field),
        Some(field) => OBJECTS.contains(&field),
        // In a list of this form stand objects and texts.
        None => in_list && !list,
    }
}

/// What belongs to a field; to none, which is an entry of a list, an object.
fn belongs(field: &str) -> Shape {
    if LISTS.contains(&field) {
        Shape::List
    } else if field.is_empty() || OBJECTS.contains(&field) {
        Shape::Object
    } else {
        Shape::Text
    }
}

/// Line and column of a byte, both from 1.
pub(super) fn place(text: &str, at: usize) -> (usize, usize) {
    let before = text.get(..at).unwrap_or(text);
    let line = before.bytes().filter(|byte| *byte == b'\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
    (line, column)
}

/// The byte of a line and a column as the parser counts them: lines from 1, columns as bytes behind the start of the line.
pub(super) fn byte(text: &str, line: usize, column: usize) -> usize {
    let before = text.split('\n').take(line.saturating_sub(1));
    before.map(|line| line.len() + 1).sum::<usize>() + column
}

/// The value that ends before a byte, or is to begin there: `parts[0].files.strokes[2].outcome`. Behind the name of a field
/// that is that field; nothing for the document itself.
pub(super) fn path(text: &str, at: usize) -> String {
    let mut levels: Vec<Level<'_>> = Vec::new();
    let (mut string, mut escaped) = (None, false);
    for (index, byte) in text.bytes().enumerate().take(at) {
        if let Some(start) = string {
            match byte {
                _ if escaped => escaped = false,
                b'\\' => escaped = true,
                b'"' => {
                    string = None;
                    if let Some(Level::Object { field, named: named @ false }) = levels.last_mut() {
                        (*field, *named) = (text.get(start..index), true);
                    }
                }
                _ => {}
            }
            continue;
        }
        match byte {
            b'"' => string = Some(index + 1),
            b'{' => levels.push(Level::Object { field: None, named: false }),
            b'[' => levels.push(Level::List(0)),
            b']' | b'}' => drop(levels.pop()),
            b',' => match levels.last_mut() {
                Some(Level::Object { named, .. }) => *named = false,
                Some(Level::List(place)) => *place += 1,
                None => {}
            },
            _ => {}
        }
    }
    let mut path = String::new();
    for level in levels {
        match level {
            Level::Object { field: Some(field), .. } => {
                if !path.is_empty() {
                    path.push('.');
                }
                path.push_str(field);
            }
            Level::Object { field: None, .. } => {}
            Level::List(place) => drop(write!(path, "[{place}]")),
        }
    }
    path
}

enum Level<'a> {
    /// Its last field, and whether that was named since the last comma.
    Object { field: Option<&'a str>, named: bool },
    /// The place of its entry.
    List(usize),
}
