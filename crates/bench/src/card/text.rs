//! A card as a text that stands alone: for a forum, a letter, or the shop that does the heat treatment.
//!
//! Plain lines of 76 columns without markup; a single word that is longer stays whole, so that an address stays one.

use super::facts::{StoryLine, facts, story};
use super::{Card, SaidOf, said_of_card, versions};
use crate::format::wrapped;
use crate::words::{About, FactLabel, Language, PartWords, Print};

/// The longest line, in letters.
pub const COLUMNS: usize = 76;

/// The text, with days in a time zone that lies so many minutes east of Greenwich.
///
/// ```
/// use biteband_bench::card::{demo, text};
/// use biteband_bench::words::Language;
/// let pawl = &demo::parts(Language::English)[0];
/// let text = text::plain(pawl, Language::English, 60);
/// assert!(text.starts_with("PART: Capstan pawl\n"));
/// assert!(text.contains("Hardened: 855 °C"));
/// ```
#[must_use]
pub fn plain(card: &Card, language: Language, offset_minutes: i32) -> String {
    let say = |words: PartWords<'_>| language.part(words).into_owned();
    let no_name = say(PartWords::NoName);
    let name = Some(card.name.trim()).filter(|name| !name.is_empty()).unwrap_or(&no_name);
    let mut page = Lines(String::new());
    page.text(0, &say(PartWords::Part { name }));
    if card.demo {
        page.text(0, &say(PartWords::Demo));
    }
    let told = facts(card, language);
    let tell = |page: &mut Lines, wanted: &[FactLabel]| {
        let mut any = false;
        for fact in told.iter().filter(|fact| wanted.contains(&fact.of)) {
            page.text(2, &format!("{}: {}", fact.label, fact.text));
            any = true;
        }
        any
    };
    page.heading(&say(PartWords::WhatIs));
    if !tell(&mut page, &WHAT_IT_IS) {
        page.text(2, &say(PartWords::Nothing));
    }
    page.heading(&say(PartWords::WhatDone));
    let mut any = tell(&mut page, &HOW);
    for line in story(card, language, offset_minutes).iter().filter(|line| line.entry.is_some()) {
        page.text(2, &entry(line));
        any = true;
    }
    if !any {
        page.text(2, &say(PartWords::Nothing));
    }
    page.heading(&say(PartWords::WhatFound));
    if !tell(&mut page, &FOUND) {
        page.text(2, &say(PartWords::Nothing));
    }
    for label in [FactLabel::Notes, FactLabel::Recipe] {
        for fact in told.iter().filter(|fact| fact.of == label) {
            page.heading(&fact.label.to_uppercase());
            fact.text.lines().for_each(|line| page.text(2, line));
        }
    }
    page.0.push('\n');
    let (app, data) = versions();
    page.text(0, &say(PartWords::WhoSays { app: &app, data: &data }));
    let by_files = said_of_card(card, language).iter().any(|said| said.of == SaidOf::Files);
    if by_files || card.story.iter().any(|entry| entry.files.is_some()) {
        page.text(0, &say(PartWords::Judgement));
        page.text(0, &language.print(Print::CardCaution));
    }
    page.text(0, language.about(About::CautionCritical));
    page.0
}

const WHAT_IT_IS: [FactLabel; 7] = [
    FactLabel::Steel,
    FactLabel::Composition,
    FactLabel::Origin,
    FactLabel::Section,
    FactLabel::Kind,
    FactLabel::Wanted,
    FactLabel::Zones,
];
const HOW: [FactLabel; 5] = [
    FactLabel::Bath,
    FactLabel::Air,
    FactLabel::Stage,
    FactLabel::Tempers,
    FactLabel::Circumstances,
];
const FOUND: [FactLabel; 10] = [
    FactLabel::AsQuenched,
    FactLabel::Files,
    FactLabel::Conditions,
    FactLabel::OwnFiles,
    FactLabel::Expected,
    FactLabel::Says,
    FactLabel::Paper,
    FactLabel::PaperSays,
    FactLabel::Results,
    FactLabel::Seen,
];

fn entry(line: &StoryLine) -> String {
    let head = format!("{} {}", line.date, line.title);
    let mut text = format!("{}: {}", head.trim(), line.what);
    if !line.said.is_empty() {
        text.push_str(" -> ");
        text.push_str(&line.said);
    }
    if !line.versions.is_empty() {
        text.push_str(" (");
        text.push_str(&line.versions);
        text.push(')');
    }
    text
}

/// Lines of a text in the making.
struct Lines(String);

impl Lines {
    fn heading(&mut self, text: &str) {
        self.0.push('\n');
        self.text(0, text);
    }

    /// Text broken at spaces behind a margin; what follows the first line stands two further in.
    fn text(&mut self, margin: usize, text: &str) {
        self.0.push_str(&wrapped(COLUMNS, [margin, margin + 2], &keyboard(text)));
        self.0.push('\n');
    }
}

/// The signs of print as every keyboard has them; letters, degrees and plus-minus stay.
fn keyboard(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            '\u{2010}'..='\u{2015}' | '\u{2212}' | '·' => plain.push('-'),
            '×' => plain.push('x'),
            '→' => plain.push_str("->"),
            '…' => plain.push_str("..."),
            '\u{2018}' | '\u{2019}' => plain.push('\''),
            '\u{201c}'..='\u{201e}' => plain.push('"'),
            sign if sign.is_control() || sign.is_whitespace() => plain.push(' '),
            sign => plain.push(sign),
        }
    }
    plain
}
