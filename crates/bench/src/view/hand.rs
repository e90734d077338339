//! What is in hand, for the top of every page.

use crate::answer::with_scale;
use crate::state::{App, ClaimField, PartField};
use crate::words::{Language, Phrase, Ui};

/// The part in hand, or that there is none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandView {
    /// Its name.
    pub name: String,
    /// Its steel and what is wanted of it, or what its paper says.
    pub line: String,
}

/// Makes the lines.
#[must_use]
pub fn hand(app: &App, language: Language) -> HandView {
    let part = &app.saved.part;
    if !part.in_hand() {
        let label = |ui| language.label(ui).to_owned();
        return HandView { name: label(Ui::Brand), line: label(Ui::QuickLookUp) };
    }
    let name = part.text(PartField::Name).trim();
    let name = if name.is_empty() { language.label(Ui::NoName) } else { name };
    let steel = &app.saved.steel;
    let steel = if steel.by_composition { &steel.own_name } else { &steel.query };
    let target = app.saved.file_test.target_text.trim();
    let paper = app.saved.claim.text(ClaimField::Says).trim();
    let wants = match (target, paper) {
        ("", "") => String::new(),
        ("", paper) => language.say(Phrase::PaperSays { paper }).into_owned(),
        (target, _) => language.say(Phrase::Wants { target: &with_scale(target) }).into_owned(),
    };
    let both = [steel.trim(), &wants];
    let both: Vec<&str> = both.into_iter().filter(|text| !text.is_empty()).collect();
    HandView { name: name.to_owned(), line: both.join(" · ") }
}
