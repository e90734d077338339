//! History: a file test or a claim with what was said of it, as an entry of the story.

use super::said::{of_claim, of_files};
use super::{Card, Entry, EntryKind, FileSheet, Said};
use crate::format;
use crate::state::App;
use crate::view::file_test_asked;
use crate::words::{CardWords, Language, Phrase};

/// The versions of program and data that give the answers now.
#[must_use]
pub fn versions() -> (String, String) {
    (env!("CARGO_PKG_VERSION").to_owned(), biteband_hardness::DATA_VERSION.to_owned())
}

impl From<Said> for Entry {
    fn from(said: Said) -> Self {
        Self {
            said: said.text,
            scale: said.scale,
            low: said.low,
            high: said.high,
            app: said.app,
            data: said.data,
            ..Self::default()
        }
    }
}

/// The file test of the pages as an entry, its moment still open; nothing where nothing was found.
#[must_use]
pub fn entry_of_files(app: &App, language: Language) -> Option<Entry> {
    let files = FileSheet::of(&app.saved.file_test);
    if files.is_empty() {
        return None;
    }
    let said = of_files(&file_test_asked(app, language), language).unwrap_or_default();
    Some(Entry {
        kind: EntryKind::Filed,
        what: found(&files, language),
        files: Some(files),
        ..Entry::from(said)
    })
}

/// The claim of the pages as an entry, its moment still open; nothing where nothing was claimed and measured.
#[must_use]
pub fn entry_of_claim(app: &App, language: Language) -> Option<Entry> {
    let card = Card::of(&app.saved);
    let said = of_claim(&card, app, language)?;
    Some(Entry {
        kind: EntryKind::Claimed,
        what: card.claim.paper.trim().to_owned(),
        files: card.claim.with_files.then_some(card.files),
        claim: Some(card.claim),
        ..Entry::from(said)
    })
}

/// What files and instruments found, in words: `50 skates 2×, 55 bites; 52, 53 HRC`.
#[must_use]
pub fn found(files: &FileSheet, language: Language) -> String {
    let mut groups: Vec<(f64, &str, usize)> = Vec::new();
    for stroke in &files.strokes {
        let same = groups.iter_mut().find(|(file, outcome, _)| {
            file.total_cmp(&stroke.file).is_eq() && *outcome == stroke.outcome
        });
        match same {
            Some((_, _, count)) => *count += 1,
            None => groups.push((stroke.file, &stroke.outcome, 1)),
        }
    }
    biteband_quantity::sort_by_number(&mut groups, |(file, _, _)| *file);
    let strokes = groups.iter().map(|(file, outcome, count)| {
        let word = match *outcome {
            "bites" => language.say(Phrase::Outcome(biteband_evidence::Outcome::Bite)),
            "skates" => language.say(Phrase::Outcome(biteband_evidence::Outcome::Skate)),
            _ => language.say(Phrase::Outcome(biteband_evidence::Outcome::Slight)),
        };
        let file = format::exact(*file);
        language.card(CardWords::Stroke { file: &file, word: &word, count: *count }).into_owned()
    });
    let strokes: Vec<String> = strokes.collect();
    let readings = files.readings.iter().map(|reading| reading.text.trim().to_owned());
    let all = Some(strokes.join(", ")).filter(|text| !text.is_empty()).into_iter().chain(readings);
    all.collect::<Vec<_>>().join("; ")
}
