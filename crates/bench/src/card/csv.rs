//! Results as a table for a spreadsheet: a row for each entry of each story, and one for each answer of today.
//!
//! RFC 4180: commas between, quotes where they are needed, lines end with CR LF, the first row holds the headings. A text
//! that a spreadsheet would take for a formula (it begins with `=`, `+`, `-`, `@` or a tab) gets an apostrophe in front, so
//! that nothing that stands in a name is run.

use biteband_quantity::Shown;

use super::{Card, EntryKind, SaidOf, found, said_of_card};
use crate::words::Language;

/// The headings.
pub const HEADINGS: [&str; 11] =
    ["part", "id", "date", "kind", "what", "said", "scale", "low", "high", "app", "data"];

/// The table of some cards.
///
/// `date` is a moment in UTC, `kind` one of `hardened`, `tempered`, `filed`, `claimed`, `remark`, and `now` for an answer of
/// today; `low` and `high` are unrounded and empty where the band is open.
///
/// ```
/// use biteband_bench::card::{Card, csv};
/// use biteband_bench::words::Language;
/// let part = Card { id: "part-0001".into(), name: "=1+1".into(), ..Card::default() };
/// let table = csv::results(&[part], Language::English);
/// assert_eq!(table, "part,id,date,kind,what,said,scale,low,high,app,data\r\n");
/// ```
#[must_use]
pub fn results(cards: &[Card], language: Language) -> String {
    let mut table =
        ::csv::WriterBuilder::new().terminator(::csv::Terminator::CRLF).from_writer(Vec::new());
    let mut write = |row: [String; 11]| {
        // A list in memory takes every row, and all have as many fields.
        let _: Result<(), ::csv::Error> = table.write_record(row);
    };
    write(HEADINGS.map(str::to_owned));
    for card in cards {
        for entry in &card.story {
            write([
                harmless(&card.name),
                card.id.clone(),
                entry.at.clone(),
                kind(entry.kind).to_owned(),
                harmless(&entry.what),
                harmless(&entry.said),
                entry.scale.clone(),
                end(entry.low),
                end(entry.high),
                harmless(&entry.app),
                harmless(&entry.data),
            ]);
        }
        for said in said_of_card(card, language) {
            let what = match said.of {
                SaidOf::Files => found(&card.files, language),
                SaidOf::Claim => card.claim.paper.clone(),
            };
            write([
                harmless(&card.name),
                card.id.clone(),
                card.changed.clone(),
                "now".to_owned(),
                harmless(&what),
                harmless(&said.text),
                said.scale,
                end(said.low),
                end(said.high),
                said.app,
                said.data,
            ]);
        }
    }
    let bytes = table.into_inner().unwrap_or_default();
    String::from_utf8(bytes).unwrap_or_default()
}

const fn kind(kind: EntryKind) -> &'static str {
    match kind {
        EntryKind::Hardened => "hardened",
        EntryKind::Tempered => "tempered",
        EntryKind::Filed => "filed",
        EntryKind::Claimed => "claimed",
        EntryKind::Remark => "remark",
    }
}

fn end(end: Option<f64>) -> String {
    end.map(|end| Shown(end).to_string()).unwrap_or_default()
}

/// A text that no spreadsheet runs.
fn harmless(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}
