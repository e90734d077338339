//! The part in hand: its name, what of its card no page holds, and how cards change. Without a part in hand the pages
//! are a quick look-up.

use std::any::Any;
use std::rc::Rc;

use serde::{Deserialize, Serialize};

use super::texts::Texts;
use super::{Action, App, OwnResult, Saved, TemperField};
use crate::card::{
    Card, Entry, EntryKind, Photo, Rest, ResultSheet, Sheets, Zone, entry_of_claim, entry_of_files,
    moment, name_of_name,
};
use crate::tempers::parse_tempers;
use crate::words::Language;

/// A field of the page of parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartField {
    /// What the part is called.
    Name,
    /// Where its steel comes from.
    Origin,
    /// Remarks.
    Notes,
    /// A place that is wanted otherwise.
    ZonePlace,
    /// Its wanted hardness.
    ZoneTarget,
    /// Something for the story.
    Remark,
    /// How it was hardened, in words.
    Hardened,
    /// A temper that it had.
    Tempered,
    /// What to look for among the cards.
    Search,
}

impl PartField {
    /// All of them. Those of the part in hand come first.
    pub const ALL: [Self; 9] = [
        Self::Name,
        Self::Origin,
        Self::Notes,
        Self::ZonePlace,
        Self::ZoneTarget,
        Self::Remark,
        Self::Hardened,
        Self::Tempered,
        Self::Search,
    ];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Name => "part-name",
            Self::Origin => "part-origin",
            Self::Notes => "part-notes",
            Self::ZonePlace => "part-place",
            Self::ZoneTarget => "part-wanted",
            Self::Remark => "part-remark",
            Self::Hardened => "part-hardened",
            Self::Tempered => "part-tempered",
            Self::Search => "part-search",
        }
    }
}

/// The part in hand as it is stored: its id, what of its card no page holds, then the texts of the fields in the order of
/// [`PartField::ALL`].
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PartState {
    texts: Texts,
}

const ID: usize = 0;
const WRITTEN: usize = 1;
const FIELDS: usize = 2;

impl PartState {
    /// Its id; empty without a part in hand.
    #[must_use]
    pub fn id(&self) -> &str {
        self.texts.at(ID)
    }

    /// Whether there is a part in hand.
    #[must_use]
    pub fn in_hand(&self) -> bool {
        !self.id().is_empty()
    }

    /// What of its card no page holds.
    pub(crate) fn written(&self) -> &str {
        self.texts.at(WRITTEN)
    }

    pub(crate) fn write(&mut self, text: String) {
        self.texts.put(WRITTEN, text);
    }

    pub(crate) fn name_it(&mut self, id: &str) {
        self.texts.put(ID, id.to_owned());
    }

    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: PartField) -> &str {
        self.texts.at(FIELDS + field as usize)
    }

    pub(crate) fn edit(&mut self, field: PartField, text: String) {
        self.texts.put(FIELDS + field as usize, text);
    }

    /// Keeps a result of the part in hand, and forgets another.
    pub(super) fn learn(&mut self, new: Option<OwnResult>, old: Option<&OwnResult>) {
        if !self.in_hand() {
            return;
        }
        let mut rest = Rest::of(self);
        rest.results.extend(new.map(ResultSheet::from));
        if let Some(old) = old.cloned().map(ResultSheet::from) {
            rest.results.retain(|kept| *kept != old);
        }
        rest.keep(self);
    }
}

/// Something that happened to a card; moments are the device's clock in milliseconds.
#[derive(Clone, Debug, PartialEq)]
pub enum PartAction {
    /// What stands on the pages becomes a part.
    Begin {
        /// Its id.
        id: String,
        /// Now.
        now_ms: i64,
    },
    /// A new part with empty pages.
    BeginEmpty {
        /// Its id.
        id: String,
        /// Now.
        now_ms: i64,
    },
    /// Takes a part in hand.
    Take(Box<Card>),
    /// Puts the part away; the quick look-up stands as it was left, or empty where none was.
    PutAway(Option<Box<Sheets>>),
    /// The part gets another id, because another tab changed the card of the old one.
    Fork(String),
    /// Keeps the place that was typed.
    AddZone,
    /// Forgets one.
    RemoveZone(usize),
    /// Puts what was typed into the story.
    AddRemark,
    /// It was hardened, as typed; what was found before is history.
    AddHardened,
    /// It was tempered, as typed.
    AddTempered,
    /// It was tempered like this.
    Tempered(String),
    /// It was hardened like this.
    Hardened(String),
    /// Takes an entry out of the story.
    RemoveEntry(usize),
    /// Puts it back.
    PutBackEntry,
    /// Adds a photograph.
    AddPhoto(Photo),
    /// Says what one shows: its id and the words.
    NamePhoto(String, String),
    /// Takes one away.
    RemovePhoto(String),
    /// Names the moment of what has none yet.
    Stamp(i64),
    /// From now on a file test that is cleared becomes history.
    Ready,
    /// Something is to be told.
    Tell(PartNotice),
    /// It was read.
    Dismiss(PartNotice),
}

/// Something that the keeping of cards said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PartNotice {
    /// Another tab changed the same card, so the part goes on here as a second one.
    Forked,
    /// The card could not be written.
    NotWritten,
    /// The stored card could not be read; it is kept aside and written anew from what the page holds.
    Damaged,
    /// The stored card was written by a newer version; it is kept aside.
    Newer,
    /// The clock stands before the last change of the card.
    ClockBack,
}

/// Whether something in the story still lacks its moment.
#[must_use]
pub fn unstamped(saved: &Saved) -> bool {
    saved.part.in_hand() && Rest::of(&saved.part).story.iter().any(|entry| entry.at.is_empty())
}

/// A change of a card. It brings along what does it, and what it is is known to that alone, so that only the parts that
/// make one hold the code: a card is much to copy, to compare and to drop.
#[derive(Clone, Debug)]
pub struct PartChange {
    action: Rc<dyn Any>,
    does: fn(&mut App, &dyn Any),
}

impl PartialEq for PartChange {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.action, &other.action)
    }
}

impl PartChange {
    pub(super) fn apply(self, app: &mut App) {
        (self.does)(app, &*self.action);
    }
}

impl From<PartAction> for Action {
    fn from(action: PartAction) -> Self {
        let does = |app: &mut App, action: &dyn Any| {
            if let Some(action) = action.downcast_ref::<PartAction>() {
                change(app, action.clone());
            }
        };
        Self::Part(PartChange { action: Rc::new(action), does })
    }
}

/// What makes history of a file test; nothing until the part that does is there.
#[derive(Clone, Copy, Debug, Default)]
pub struct History(Option<fn(&mut App, bool)>);

impl PartialEq for History {
    fn eq(&self, other: &Self) -> bool {
        self.0.is_some() == other.0.is_some()
    }
}

impl Eq for History {}

impl History {
    /// A file test of the part in hand is about to be cleared, or was brought back.
    pub(super) fn turn(app: &mut App, cleared: bool) {
        if app.saved.part.in_hand()
            && let Self(Some(turn)) = app.session.history
        {
            turn(app, cleared);
        }
    }
}

fn turn(app: &mut App, cleared: bool) {
    if cleared {
        bury(app);
        return;
    }
    // Brought back, it is no history any more.
    let now = Card::of(&app.saved).files;
    with_rest(app, |rest| {
        if rest.story.last().is_some_and(|last| last.files.as_ref().is_some_and(|f| f.same(&now))) {
            rest.story.pop();
        }
    });
}

/// Makes the file test history, if there is anything in it.
fn bury(app: &mut App) {
    if let Some(entry) = entry_of_files(app, Language::default()) {
        with_rest(app, |rest| rest.story.push(entry));
    }
}

/// The claim of the part in hand is about to give way to another one, or comes back.
pub(super) fn turn_claim(app: &mut App) {
    if !app.saved.part.in_hand() {
        return;
    }
    if let Some(entry) = entry_of_claim(app, Language::default()) {
        with_rest(app, |rest| rest.story.push(entry));
    } else if app.saved.claim.is_empty() {
        let mut back = app.saved.claim.clone();
        back.turn();
        let back = back.sheet();
        with_rest(app, |rest| {
            if rest.story.last().is_some_and(|last| last.claim.as_ref() == Some(&back)) {
                rest.story.pop();
            }
        });
    }
}

fn with_rest(app: &mut App, work: impl FnOnce(&mut Rest)) {
    let mut rest = Rest::of(&app.saved.part);
    work(&mut rest);
    rest.keep(&mut app.saved.part);
}

fn change(app: &mut App, action: PartAction) {
    match action {
        PartAction::Begin { id, now_ms } => begin(&mut app.saved, &id, now_ms),
        PartAction::BeginEmpty { id, now_ms } => {
            Sheets::empty(&app.saved).put(&mut app.saved);
            clear(&mut app.saved.part);
            begin(&mut app.saved, &id, now_ms);
        }
        PartAction::Take(card) => {
            card.put(&mut app.saved);
            app.session.choosing = false;
        }
        PartAction::PutAway(sheets) => {
            let empty = || Sheets::empty(&app.saved);
            sheets.map_or_else(empty, |sheets| *sheets).put(&mut app.saved);
            clear(&mut app.saved.part);
            app.session.choosing = false;
        }
        PartAction::Fork(id) => {
            let part = &mut app.saved.part;
            part.name_it(&id);
            let name =
                name_of_name(part.text(PartField::Name).trim(), &|name| format!("{name} (2)"));
            part.edit(PartField::Name, name);
        }
        PartAction::Tell(notice) => {
            if !app.session.parts.contains(&notice) {
                app.session.parts.push(notice);
            }
        }
        PartAction::Dismiss(notice) => app.session.parts.retain(|shown| *shown != notice),
        PartAction::Ready => app.session.history = History(Some(turn)),
        PartAction::Stamp(now_ms) => with_rest(app, |rest| {
            let at = moment(now_ms);
            for entry in &mut rest.story {
                if entry.at.is_empty() {
                    entry.at.clone_from(&at);
                }
            }
        }),
        other => on_card(app, other),
    }
}

/// What needs a part in hand.
fn on_card(app: &mut App, action: PartAction) {
    if !app.saved.part.in_hand() {
        return;
    }
    let mut missing = None;
    match action {
        PartAction::AddZone => missing = add_zone(app),
        PartAction::RemoveZone(index) => {
            let mut rest = Rest::of(&app.saved.part);
            if index < rest.zones.len() {
                // What is forgotten stands in the fields, so that a slip costs nothing.
                let Zone { place, target } = rest.zones.remove(index);
                rest.keep(&mut app.saved.part);
                app.saved.part.edit(PartField::ZonePlace, place);
                app.saved.part.edit(PartField::ZoneTarget, target);
            }
        }
        PartAction::AddRemark => {
            missing = typed(app, PartField::Remark, |app, what| {
                let remark = Entry { what, ..Entry::default() };
                with_rest(app, |rest| rest.story.push(remark));
            });
        }
        PartAction::AddHardened => {
            missing = typed(app, PartField::Hardened, |app, what| hardened(app, &what));
        }
        PartAction::AddTempered => {
            let text = app.saved.part.text(PartField::Tempered).trim();
            // Whether it can be read is the same in every language; the page says what is wrong.
            if text.is_empty() || parse_tempers(Language::default(), text, None).is_ok() {
                missing = typed(app, PartField::Tempered, tempered);
            } else {
                missing = Some(PartField::Tempered);
            }
        }
        PartAction::Hardened(what) => hardened(app, &what),
        PartAction::Tempered(what) => tempered(app, what),
        PartAction::RemoveEntry(index) => with_rest(app, |rest| {
            if index < rest.story.len() {
                rest.taken = Some((index, rest.story.remove(index)));
            }
        }),
        PartAction::PutBackEntry => with_rest(app, |rest| {
            if let Some((index, entry)) = rest.taken.take() {
                rest.story.insert(index.min(rest.story.len()), entry);
            }
        }),
        PartAction::AddPhoto(photo) => with_rest(app, |rest| rest.photos.push(photo)),
        PartAction::NamePhoto(id, text) => with_rest(app, |rest| {
            if let Some(photo) = rest.photos.iter_mut().find(|photo| photo.id == id) {
                photo.text = text;
            }
        }),
        PartAction::RemovePhoto(id) => with_rest(app, |rest| rest.photos.retain(|p| p.id != id)),
        _ => {}
    }
    app.session.missing = missing.map(super::Field::Part);
}

fn begin(saved: &mut Saved, id: &str, now_ms: i64) {
    saved.part.name_it(id);
    // Of two wanted hardnesses the one of the file test holds; a part has one.
    let Saved { file_test, steel, .. } = saved;
    if file_test.target_text.trim().is_empty() {
        file_test.target_text.clone_from(&steel.target);
    } else {
        steel.target.clone_from(&file_test.target_text);
    }
    Rest { created: moment(now_ms), ..Rest::default() }.keep(&mut saved.part);
}

/// Leaves nothing of the part but what is looked for among the cards.
fn clear(part: &mut PartState) {
    let search = part.text(PartField::Search).to_owned();
    *part = PartState::default();
    part.edit(PartField::Search, search);
}

fn add_zone(app: &mut App) -> Option<PartField> {
    let part = &app.saved.part;
    let typed = |field| part.text(field).trim().to_owned();
    let zone = Zone { place: typed(PartField::ZonePlace), target: typed(PartField::ZoneTarget) };
    if zone.place.is_empty() {
        return Some(PartField::ZonePlace);
    }
    if zone.target.is_empty() {
        return Some(PartField::ZoneTarget);
    }
    with_rest(app, |rest| rest.zones.push(zone));
    for field in [PartField::ZonePlace, PartField::ZoneTarget] {
        app.saved.part.edit(field, String::new());
    }
    None
}

/// Does something with what was typed and empties the field; an empty one is handed back.
fn typed(
    app: &mut App,
    field: PartField,
    work: impl FnOnce(&mut App, String),
) -> Option<PartField> {
    let text = app.saved.part.text(field).trim().to_owned();
    if text.is_empty() {
        return Some(field);
    }
    app.saved.part.edit(field, String::new());
    work(app, text);
    None
}

/// What was found before a heat is history after it.
fn heated(app: &mut App, kind: EntryKind, what: &str) {
    bury(app);
    app.saved.file_test.fresh();
    let entry = Entry { kind, what: what.to_owned(), ..Entry::default() };
    with_rest(app, |rest| rest.story.push(entry));
}

fn hardened(app: &mut App, what: &str) {
    heated(app, EntryKind::Hardened, what);
    let temper = &mut app.saved.temper;
    temper.edit(TemperField::Done, String::new());
    temper.edit(TemperField::AsQuenched, String::new());
    temper.turn(super::PartStage::Quenched);
}

fn tempered(app: &mut App, what: String) {
    heated(app, EntryKind::Tempered, &what);
    let temper = &mut app.saved.temper;
    let tempered = temper.planner().stage == super::PartStage::Tempered;
    let before = temper.text(TemperField::Done).trim();
    // What is said to be done counts only once the part is tempered.
    let done = if before.is_empty() || !tempered { what } else { format!("{before}, {what}") };
    temper.edit(TemperField::Done, done);
    temper.turn(super::PartStage::Tempered);
}
