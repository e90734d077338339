//! The page of parts: what lies in storage as a list, the choice on top of every page, what is to be exported, and what
//! an import would do.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;

use super::{Chip, Clock};
use crate::answer::with_scale;
use crate::card::find::{Order, matches, sort, standing};
use crate::card::merge::{Choice, Fate, Plan};
use crate::card::{
    Card, Row, Sheets, Standing, file, moment, moment_ms, read_record, said_of_card,
};
use crate::state::{App, Damage, PartField};
use crate::words::{Language, PartWords, PartsPage, PartsSays, Phrase, Ui};

/// So many rows stand before the card of the part in hand.
const FEW: usize = 5;
/// So many parts are offered on top of the other pages.
const LAST: usize = 6;

/// What lies under one key of the store.
#[derive(Clone, Debug, PartialEq)]
pub enum Kept {
    /// A card.
    Card(Box<Card>),
    /// Something that cannot be read as one.
    Damaged(DamagedView),
}

/// A card that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DamagedView {
    /// Its key.
    pub key: String,
    /// What it is called in a list.
    pub title: String,
    /// Why, and what can be done.
    pub why: &'static str,
    /// What is stored.
    pub text: String,
}

impl Kept {
    /// Reads what lies under a key.
    #[must_use]
    pub fn read(key: String, text: String, language: Language) -> Self {
        let why = match read_record(&text) {
            Ok(card) => return Self::Card(Box::new(card)),
            Err(Damage::Newer(_)) => PartsPage::NewerWhy,
            Err(Damage::Unreadable) => PartsPage::DamagedWhy,
        };
        let title = language.parts(PartsSays::Unread { key: &key });
        Self::Damaged(DamagedView { key, title, why: language.parts_page(why), text })
    }

    /// The card, where it is one.
    #[must_use]
    pub fn card(&self) -> Option<&Card> {
        match self {
            Self::Card(card) => Some(card),
            Self::Damaged(_) => None,
        }
    }
}

/// The card of the part in hand as it stands on the pages, with what the tool says of it; nothing without one. What it
/// said `before` of the same sheets is not worked out again.
#[must_use]
pub fn part_in_hand(
    app: &App,
    kept: &[Kept],
    before: Option<&Card>,
    language: Language,
) -> Option<Card> {
    if !app.saved.part.in_hand() {
        return None;
    }
    let mut card = Card::of(&app.saved);
    card.said = match before.filter(|before| same_sheets(before, &card)) {
        Some(before) => before.said.clone(),
        None => said_of_card(&card, language),
    };
    if let Some(stored) = kept.iter().filter_map(Kept::card).find(|one| one.id == card.id) {
        card.changed.clone_from(&stored.changed);
        card.revision = stored.revision;
    }
    Some(card)
}

/// Whether two cards hold the same of everything that an answer rests on.
fn same_sheets(one: &Card, other: &Card) -> bool {
    one.files == other.files
        && one.claim == other.claim
        && one.target == other.target
        && one.steel == other.steel
}

/// The list of the cards.
#[derive(Clone, Debug, PartialEq)]
pub struct PartsView {
    /// By what it can be ordered.
    pub orders: Vec<(Order, Chip)>,
    /// Whether there is enough to look for something among it.
    pub searched: bool,
    /// A row for each card.
    pub rows: Vec<PartRow>,
    /// How many of all are shown; empty where that is all of them.
    pub shown: String,
    /// What the key says that shows all of them; empty without one.
    pub more: String,
    /// What is said instead of rows.
    pub empty: Option<&'static str>,
    /// Cards that cannot be read.
    pub damaged: Vec<DamagedView>,
    /// Whether there are parts of the demonstration.
    pub demo: bool,
    /// Whether what stands on the pages can be made a part.
    pub begins: bool,
}

/// A card in a list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartRow {
    /// By which it is taken in hand.
    pub id: String,
    /// Name.
    pub name: String,
    /// Steel and wanted hardness, or what its paper says.
    pub line: String,
    /// How it stands.
    pub standing: String,
    /// The same for the style sheet.
    pub class: &'static str,
    /// When it was changed last; empty where that is not known.
    pub date: String,
    /// What else is to be known: it is in hand, it is invented.
    pub marks: Vec<&'static str>,
    /// Whether it is the part in hand.
    pub here: bool,
}

/// Makes the list, with the card of the part in hand as it stands; `whole` shows also what would push that card down.
#[must_use]
pub fn parts(
    app: &App,
    (own, kept): (Option<&Card>, &[Kept]),
    (order, whole): (Order, bool),
    language: Language,
    clock: Clock,
) -> PartsView {
    let mut cards = cards(own, kept);
    let all = cards.len();
    let search = app.saved.part.text(PartField::Search).trim().to_owned();
    cards.retain(|card| matches(card, &search, language));
    sort(&mut cards, order);
    let found = cards.len();
    let hand = own.map(|card| card.id.as_str()).unwrap_or_default();
    let short = !hand.is_empty() && !whole && search.is_empty() && found > FEW;
    if short {
        cards.truncate(FEW);
    }
    let chip = |one: Order| {
        let label = language.parts_page(PartsPage::Sort(one)).to_owned();
        (one, Chip { key: one.key(), label, on: one == order })
    };
    let empty = match (all, found) {
        (0, _) => Some(PartsPage::Empty),
        (_, 0) => Some(PartsPage::NoneFound),
        _ => None,
    };
    let damaged = kept.iter().filter_map(|one| match one {
        Kept::Damaged(damaged) => Some(damaged.clone()),
        Kept::Card(_) => None,
    });
    PartsView {
        orders: Order::ALL.map(chip).to_vec(),
        searched: all > FEW || !search.is_empty(),
        shown: if found < all {
            language.parts(PartsSays::Shown { shown: found, all })
        } else {
            String::new()
        },
        more: if short { language.parts(PartsSays::ShowAll { all }) } else { String::new() },
        empty: empty.map(|label| language.parts_page(label)),
        demo: kept.iter().filter_map(Kept::card).any(|card| card.demo),
        rows: cards.iter().map(|card| row(card, hand, language, clock)).collect(),
        damaged: damaged.collect(),
        begins: hand.is_empty() && something_stands(app),
    }
}

/// The choice on top of every page: the part in hand, then those that were changed last.
#[must_use]
pub fn chooser(
    own: Option<&Card>,
    kept: &[Kept],
    language: Language,
    clock: Clock,
) -> Vec<PartRow> {
    let hand = own.map(|card| card.id.as_str()).unwrap_or_default();
    let mut cards = cards(own, kept);
    sort(&mut cards, Order::Changed);
    let own = cards.iter().filter(|card| card.id == hand);
    let others = cards.iter().filter(|card| card.id != hand);
    let shown = own.chain(others.take(LAST));
    shown.map(|card| row(card, hand, language, clock)).collect()
}

/// All cards, that of the part in hand as it stands on the pages.
fn cards<'a>(own: Option<&'a Card>, kept: &'a [Kept]) -> Vec<&'a Card> {
    let id = own.map(|card| card.id.as_str()).unwrap_or_default();
    let others = kept.iter().filter_map(Kept::card).filter(|card| card.id != id);
    others.chain(own).collect()
}

fn row(card: &Card, hand: &str, language: Language, clock: Clock) -> PartRow {
    let here = card.id == hand;
    let of = standing(&card.said);
    let marks = [(here, PartsPage::InHand), (card.demo, PartsPage::Demo)];
    let marks = marks.into_iter().filter(|(on, _)| *on).map(|(_, label)| label);
    PartRow {
        id: card.id.clone(),
        name: name_of(card, language),
        line: line(card, language),
        standing: language.part(PartWords::Standing(of)).into_owned(),
        class: class(of),
        date: short_day(&card.changed, language, clock),
        marks: marks.map(|label| language.parts_page(label)).collect(),
        here,
    }
}

/// Steel and wanted hardness, or what its paper says.
pub(super) fn line(card: &Card, language: Language) -> String {
    let steel = if card.steel.by_composition { &card.steel.bar } else { &card.steel.name };
    let (target, paper) = (card.target.trim(), card.claim.paper.trim());
    let wants = match (target, paper) {
        ("", "") => String::new(),
        ("", paper) => language.parts(PartsSays::Paper { paper }),
        (target, _) => language.say(Phrase::Wants { target: &with_scale(target) }).into_owned(),
    };
    let both = [steel.trim(), &wants];
    let both: Vec<&str> = both.into_iter().filter(|text| !text.is_empty()).collect();
    both.join(" · ")
}

/// The name of a part, or that it has none.
#[must_use]
pub fn name_of(card: &Card, language: Language) -> String {
    match card.name.trim() {
        "" => language.label(Ui::NoName).to_owned(),
        name => name.to_owned(),
    }
}

const fn class(standing: Standing) -> &'static str {
    match standing {
        Standing::Inside => "state ok",
        Standing::TooSoft | Standing::TooHard | Standing::Disagrees | Standing::Contradictory => {
            "state todo"
        }
        Standing::Nothing | Standing::Measured | Standing::NotProved => "state",
    }
}

/// The day of a moment in local time, without the year where that is this one.
pub(super) fn short_day(text: &str, language: Language, clock: Clock) -> String {
    let local = |ms: i64| {
        let seconds = ms.div_euclid(1_000).saturating_add(clock.east_min.saturating_mul(60));
        OffsetDateTime::from_unix_timestamp(seconds).ok()
    };
    let day = moment_ms(text).and_then(local);
    match (day, local(clock.now_ms)) {
        (Some(day), Some(now)) if day.year() == now.year() => {
            language.parts(PartsSays::Day { day: day.day(), month: u8::from(day.month()) })
        }
        _ => crate::card::day(text, language, east(clock)),
    }
}

pub(super) fn east(clock: Clock) -> i32 {
    i32::try_from(clock.east_min).unwrap_or_default()
}

/// Whether anything of a part stands on the pages.
fn something_stands(app: &App) -> bool {
    let mut bare = app.saved.clone();
    Sheets::empty(&bare).put(&mut bare);
    Card::of(&app.saved) != Card::of(&bare)
}

/// What was exported, and when.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Exported {
    /// When, UTC.
    at: String,
    /// How often each card had been changed by then.
    cards: BTreeMap<String, u64>,
}

impl Exported {
    /// What is stored; of a text that is none, that nothing was exported.
    #[must_use]
    pub fn read(text: &str) -> Self {
        serde_json::from_str(text).unwrap_or_default()
    }

    /// As it is stored.
    #[must_use]
    pub fn write(&self) -> String {
        // Texts and numbers can always be written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// With cards that were exported now.
    #[must_use]
    pub fn with(mut self, cards: &[Card], now_ms: i64) -> Self {
        self.at = moment(now_ms);
        self.cards.extend(cards.iter().map(|card| (card.id.clone(), card.revision)));
        self
    }
}

/// What is said of exports.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ExportView {
    /// What was changed since the last one; empty without own parts.
    pub reminder: String,
    /// Whether something was.
    pub due: bool,
    /// Whether there is anything to export.
    pub any: bool,
}

/// Holds what lies in storage against what was exported. Parts of the demonstration need none.
#[must_use]
pub fn exports(kept: &[Kept], exported: &Exported, language: Language, clock: Clock) -> ExportView {
    let own = || kept.iter().filter_map(Kept::card).filter(|card| !card.demo);
    let changed = own().filter(|card| exported.cards.get(&card.id) != Some(&card.revision));
    let (parts, date) = (changed.count(), short_day(&exported.at, language, clock));
    let any = own().count() > 0;
    let reminder = match (any, parts, date.as_str()) {
        (false, ..) => String::new(),
        (_, _, "") => language.parts(PartsSays::NeverExported { parts }),
        (_, 0, date) => language.parts(PartsSays::AllExported { date }),
        (_, _, date) => language.parts(PartsSays::ChangedSince { parts, date }),
    };
    ExportView { reminder, due: parts > 0, any: kept.iter().any(|one| one.card().is_some()) }
}

/// The name of a file with today's date: `biteband-parts-2026-11-12.json`; from the second of several on with its number.
#[must_use]
pub fn file_name(what: &str, end: &str, index: usize, clock: Clock) -> String {
    let local = moment(clock.now_ms.saturating_add(clock.east_min.saturating_mul(60_000)));
    let date = local.split('T').next().unwrap_or_default().to_owned();
    let number = if index == 0 { String::new() } else { format!("-{}", index + 1) };
    format!("biteband-{what}-{date}{number}.{end}")
}

/// What an import would do.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ImportView {
    /// How much is in the file.
    pub counts: String,
    /// Cards of one fate: what becomes of them, and their names.
    pub groups: Vec<(&'static str, Vec<String>)>,
    /// Cards that both sides changed.
    pub conflicts: Vec<ConflictRow>,
    /// What the key says that does it.
    pub apply: String,
    /// Said where nothing is to be done.
    pub nothing: Option<&'static str>,
}

/// A card that both sides changed.
#[derive(Clone, Debug, PartialEq)]
pub struct ConflictRow {
    /// Which.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Both side by side.
    pub rows: Vec<Row>,
    /// What can be done.
    pub choices: Vec<(Choice, Chip)>,
}

/// Tells what an import would do; `chosen` holds what the person chose so far.
#[must_use]
pub fn import(plan: &Plan, chosen: &BTreeMap<String, Choice>, language: Language) -> ImportView {
    let cards: Vec<Card> = plan.cards.iter().map(|one| one.card.clone()).collect();
    let file::Counts { parts, entries, strokes, photos } = file::counts(&cards);
    let counts = PartWords::Counts { parts, entries, strokes, photos };
    let choice = |id: &str| chosen.get(id).copied().unwrap_or_default();
    let (mut add, mut replace) = (0, 0);
    let mut groups = [
        PartsPage::Added,
        PartsPage::Raised,
        PartsPage::Pictures,
        PartsPage::Old,
        PartsPage::There,
    ]
    .map(|label| (language.parts_page(label), Vec::new()));
    let mut conflicts = Vec::new();
    for one in &plan.cards {
        let name = name_of(&one.card, language);
        let [added, raised, pictures, old, there] = &mut groups;
        match &one.fate {
            Fate::New => {
                add += 1;
                added.1.push(name);
            }
            Fate::Newer { .. } => {
                replace += 1;
                raised.1.push(name);
            }
            Fate::Pictures { .. } => {
                replace += 1;
                pictures.1.push(name);
            }
            Fate::Older => old.1.push(name),
            Fate::Same => there.1.push(name),
            Fate::Conflict { rows, .. } => {
                let own = choice(&one.card.id);
                match own {
                    Choice::KeepBoth => add += 1,
                    Choice::TakeTheirs => replace += 1,
                    Choice::KeepMine => {}
                }
                let choices = [Choice::KeepBoth, Choice::KeepMine, Choice::TakeTheirs];
                let choices = choices.map(|which| {
                    let label = language.parts_page(PartsPage::Pick(which)).to_owned();
                    (which, Chip { key: "", label, on: which == own })
                });
                conflicts.push(ConflictRow {
                    id: one.card.id.clone(),
                    name,
                    rows: rows.clone(),
                    choices: choices.to_vec(),
                });
            }
        }
    }
    let idle = add == 0 && replace == 0 && conflicts.is_empty();
    ImportView {
        counts: language.part(counts).into_owned(),
        groups: groups.into_iter().filter(|(_, names)| !names.is_empty()).collect(),
        conflicts,
        apply: language.parts(PartsSays::Apply { add, replace }),
        nothing: idle.then(|| language.parts_page(PartsPage::Nothing)),
    }
}
