//! Cards from a file beside those that are there.
//!
//! One rule stands above the others: nothing of what is there is lost. A card replaces another without a question only
//! where it holds everything of it ([`holds`]); everything else is a conflict, shown side by side, and unless told
//! otherwise both are kept.
//!
//! ```
//! use biteband_bench::card::merge::{Fate, apply, plan};
//! use biteband_bench::card::Card;
//! use biteband_bench::words::Language;
//!
//! let mine = Card { id: "pawl-0001".into(), notes: "Chamfer the nose.".into(), ..Card::default() };
//! let theirs = Card { notes: "Chamfer the nose. Fit to the wheel.".into(), ..mine.clone() };
//! let plan = plan(Language::English, &[mine], vec![theirs.clone()], &|_| false);
//! assert!(matches!(plan.cards[0].fate, Fate::Newer { .. }));
//! let done = apply(Language::English, plan, |_| Default::default(), || unreachable!());
//! assert_eq!((done.store[0].notes.as_str(), done.replaced.len()), (theirs.notes.as_str(), 1));
//! ```

use super::facts::{Row, compare};
use super::{
    BathSheet, Card, ClaimSheet, ConditionsSheet, Entry, ExpectedSheet, FileSheet, Photo,
    ReadingSheet, SectionSheet, SteelSheet, TemperSheet, Zone, name_of_name,
};
use crate::words::{Language, PartWords};

/// What becomes of a card of the file.
#[derive(Clone, Debug, PartialEq)]
pub enum Fate {
    /// There is none like it: it is added.
    New,
    /// It is there already.
    Same,
    /// The one that is there holds all of it and more: nothing is done.
    Older,
    /// It holds all of the one that is there and more: it takes its place.
    Newer {
        /// The one that is there.
        mine: Box<Card>,
    },
    /// The one that is there holds all of it, but pictures of it are lost; the file has them.
    Pictures {
        /// The one that is there.
        mine: Box<Card>,
        /// The photos whose pictures come back, by their ids.
        lost: Vec<String>,
    },
    /// Either holds something that the other lacks.
    Conflict {
        /// The one that is there.
        mine: Box<Card>,
        /// Both side by side: `a` is the one that is there, `b` that of the file.
        rows: Vec<Row>,
    },
}

impl Fate {
    /// Stable name.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        match self {
            Self::New => "new",
            Self::Same => "same",
            Self::Older => "older",
            Self::Newer { .. } => "newer",
            Self::Pictures { .. } => "pictures",
            Self::Conflict { .. } => "conflict",
        }
    }
}

/// A card of the file with what becomes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned {
    /// The card of the file.
    pub card: Card,
    /// What becomes of it.
    pub fate: Fate,
}

/// What an import would do.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Plan {
    /// The cards of the file in its order.
    pub cards: Vec<Planned>,
}

/// What to do where two cards are at odds.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Choice {
    /// The card of the file becomes a part of its own.
    #[default]
    KeepBoth,
    /// The card of the file is left out.
    KeepMine,
    /// The card of the file takes the place of the one that is there.
    TakeTheirs,
}

/// What an import does.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Applied {
    /// Cards to store, each under its own id.
    pub store: Vec<Card>,
    /// Cards whose place they take, so that it can be undone.
    pub replaced: Vec<Card>,
}

/// Says what an import would do, and does nothing. `lost` says of a photo of mine whether its picture is no longer there.
#[must_use]
pub fn plan(
    language: Language,
    mine: &[Card],
    theirs: Vec<Card>,
    lost: &dyn Fn(&Photo) -> bool,
) -> Plan {
    let cards = theirs.into_iter().map(|card| {
        let fate = fate(language, mine, &card, lost);
        Planned { card, fate }
    });
    Plan { cards: cards.collect() }
}

fn fate(language: Language, mine: &[Card], theirs: &Card, lost: impl Fn(&Photo) -> bool) -> Fate {
    let Some(own) = mine.iter().find(|own| own.id == theirs.id) else {
        return Fate::New;
    };
    match (holds(own, theirs), holds(theirs, own)) {
        (true, same) => {
            let has = |id: &str| theirs.photos.iter().any(|p| p.id == id && !p.data.is_empty());
            let back = own.photos.iter().filter(|photo| lost(photo) && has(&photo.id));
            let lost: Vec<String> = back.map(|photo| photo.id.clone()).collect();
            match (lost.is_empty(), same) {
                (false, _) => Fate::Pictures { mine: Box::new(own.clone()), lost },
                (true, true) => Fate::Same,
                (true, false) => Fate::Older,
            }
        }
        (false, true) => Fate::Newer { mine: Box::new(own.clone()) },
        // What was kept beside it when this file was imported before is there.
        (false, false) if mine.iter().any(|copy| is_copy(language, copy, theirs)) => Fate::Same,
        (false, false) => {
            Fate::Conflict { mine: Box::new(own.clone()), rows: compare(own, theirs, language) }
        }
    }
}

/// Whether a card is the one that an earlier import made of another.
fn is_copy(language: Language, copy: &Card, theirs: &Card) -> bool {
    let name = imported(language, &theirs.name);
    copy.id != theirs.id
        && copy.name == name
        && holds(copy, &Card { name: copy.name.clone(), ..theirs.clone() })
}

/// What a card is called that is kept beside the one that was there.
fn imported(language: Language, name: &str) -> String {
    name_of_name(name, &|name| language.part(PartWords::Imported { name }).into_owned())
}

/// Does it: `choose` says what to do in a conflict by the id of the card, `new_id` gives a card that is kept beside
/// another its id.
pub fn apply(
    language: Language,
    plan: Plan,
    choose: impl Fn(&str) -> Choice,
    mut new_id: impl FnMut() -> String,
) -> Applied {
    let mut done = Applied::default();
    for Planned { card, fate } in plan.cards {
        match fate {
            Fate::Same | Fate::Older => {}
            Fate::New => done.store.push(card),
            Fate::Newer { mine } => done.replace(card, *mine),
            Fate::Pictures { mine, lost } => {
                let mut whole = *mine.clone();
                whole.bring_back(&card, |photo| lost.contains(&photo.id));
                done.store.push(whole);
                done.replaced.push(*mine);
            }
            Fate::Conflict { mine, .. } => match choose(&card.id) {
                Choice::KeepMine => {}
                Choice::TakeTheirs => done.replace(card, *mine),
                Choice::KeepBoth => {
                    let name = imported(language, &card.name);
                    done.store.push(Card { id: new_id(), name, ..card });
                }
            },
        }
    }
    done
}

impl Applied {
    fn replace(&mut self, mut card: Card, mine: Card) {
        card.bring_back(&mine, |photo| photo.data.is_empty());
        // Whoever holds the card of the old number learns that it was changed.
        card.revision = card.revision.max(mine.revision) + 1;
        self.store.push(card);
        self.replaced.push(mine);
    }
}

impl Card {
    /// Takes pictures from another card of the same part: of the photos that lack theirs.
    fn bring_back(&mut self, from: &Self, lacks: impl Fn(&Photo) -> bool) {
        for photo in &mut self.photos {
            if lacks(photo)
                && let Some(other) = from.photos.iter().find(|other| other.id == photo.id)
            {
                photo.data.clone_from(&other.data);
            }
        }
    }
}

/// Whether a card holds everything that another holds: each text, each stroke, each entry. What the tool says of it is
/// not looked at, because it says it again; nor is when and how often it was changed.
#[must_use]
pub fn holds(outer: &Card, inner: &Card) -> bool {
    let Card {
        id: _,
        changed: _,
        revision: _,
        said: _,
        name,
        created,
        demo,
        recipe_of,
        recipe,
        steel,
        section,
        kind,
        target,
        zones,
        bath,
        tempering,
        files,
        claim,
        seen,
        notes,
        story,
        photos,
        begun,
    } = inner;
    let texts = [
        (&outer.name, name),
        (&outer.created, created),
        (&outer.recipe_of, recipe_of),
        (&outer.kind, kind),
        (&outer.target, target),
    ];
    let zone = |own: &Zone, other: &Zone| own == other;
    // Only one that is at odds counts: a mark of the demonstration is no text of the person's.
    outer.demo == *demo
        && texts.into_iter().all(|(own, other)| said(own, other))
        && steel_holds(&outer.steel, steel)
        && section_holds(&outer.section, section)
        && bath_holds(&outer.bath, bath)
        && begins(&outer.zones, zones, zone)
        && begins(&outer.recipe, recipe, |own, other| own == other)
        && begins(&outer.story, story, entry_holds)
        && tempering_holds(&outer.tempering, tempering, outer.story.len() > story.len())
        && (files_hold(&outer.files, files) || buried(&outer.story, story.len(), files))
        && claim_holds(&outer.claim, claim)
        && answers_hold(&outer.seen, seen)
        && grown(&outer.notes, notes)
        && answers_hold(&outer.begun, begun)
        && photos.iter().all(|photo| outer.photos.iter().any(|own| photo_holds(own, photo)))
}

/// The same text, or none where there is one.
fn said(outer: &str, inner: &str) -> bool {
    inner.is_empty() || outer == inner
}

/// The same text with something behind it.
fn grown(outer: &str, inner: &str) -> bool {
    outer.starts_with(inner)
}

/// A switch that is on in one is on in the other.
const fn on(outer: bool, inner: bool) -> bool {
    !inner || outer
}

/// The same list with something behind it.
fn begins<T>(outer: &[T], inner: &[T], same: impl Fn(&T, &T) -> bool) -> bool {
    inner.len() <= outer.len() && outer.iter().zip(inner).all(|(own, other)| same(own, other))
}

fn all(texts: &[(&String, &String)]) -> bool {
    texts.iter().all(|(outer, inner)| said(outer, inner))
}

fn steel_holds(outer: &SteelSheet, inner: &SteelSheet) -> bool {
    let SteelSheet { name, grade, composition, bar, by_composition, origin } = inner;
    let empty = *inner == SteelSheet { origin: inner.origin.clone(), ..SteelSheet::default() };
    (empty || outer.by_composition == *by_composition)
        && all(&[
            (&outer.name, name),
            (&outer.grade, grade),
            (&outer.composition, composition),
            (&outer.bar, bar),
            (&outer.origin, origin),
        ])
}

fn section_holds(outer: &SectionSheet, inner: &SectionSheet) -> bool {
    let SectionSheet { shape, size, second, length } = inner;
    (*inner == SectionSheet::default() || outer.shape == *shape)
        && all(&[(&outer.size, size), (&outer.second, second), (&outer.length, length)])
}

fn bath_holds(outer: &BathSheet, inner: &BathSheet) -> bool {
    let BathSheet { medium, movement, litres, temperature, flash_point, protection } = inner;
    all(&[
        (&outer.medium, medium),
        (&outer.movement, movement),
        (&outer.litres, litres),
        (&outer.temperature, temperature),
        (&outer.flash_point, flash_point),
        (&outer.protection, protection),
    ])
}

/// With more history behind it the stage may have gone on, and tempers may have been added.
fn tempering_holds(outer: &TemperSheet, inner: &TemperSheet, later: bool) -> bool {
    let TemperSheet {
        stage,
        done,
        as_quenched,
        at,
        held,
        at_size,
        overheated,
        hurried,
        measured,
        after,
        results,
    } = inner;
    (later || said(&outer.stage, stage))
        && grown(&outer.done, done)
        && all(&[
            (&outer.as_quenched, as_quenched),
            (&outer.at, at),
            (&outer.held, held),
            (&outer.measured, measured),
            (&outer.after, after),
        ])
        && on(outer.at_size, *at_size)
        && on(outer.overheated, *overheated)
        && on(outer.hurried, *hurried)
        && begins(&outer.results, results, |own, other| own == other)
}

/// The file test of before is an entry of the history since.
fn buried(story: &[Entry], before: usize, files: &FileSheet) -> bool {
    let mut since = story.iter().skip(before).filter_map(Entry::test);
    !files.is_empty() && since.any(|past| files_hold(past, files))
}

fn files_hold(outer: &FileSheet, inner: &FileSheet) -> bool {
    let FileSheet {
        set,
        tolerance,
        hand,
        strokes,
        proofs,
        readings,
        spot: _,
        conditions,
        expected,
    } = inner;
    let ExpectedSheet { on: counts, mean, sd } = expected;
    let ConditionsSheet { skin_ground, edge, finish_differs, carbide_rich } = conditions;
    all(&[
        (&outer.set, set),
        (&outer.tolerance, tolerance),
        (&outer.hand, hand),
        (&outer.expected.mean, mean),
        (&outer.expected.sd, sd),
    ]) && on(outer.expected.on, *counts)
        && begins(&outer.strokes, strokes, |own, other| own == other)
        && begins(&outer.proofs, proofs, |own, other| own == other)
        && begins(&outer.readings, readings, reading_holds)
        && (skin_ground.is_none() || outer.conditions.skin_ground == *skin_ground)
        && on(outer.conditions.edge, *edge)
        && on(outer.conditions.finish_differs, *finish_differs)
        && on(outer.conditions.carbide_rich, *carbide_rich)
}

fn reading_holds(outer: &ReadingSheet, inner: &ReadingSheet) -> bool {
    outer == inner
}

fn claim_holds(outer: &ClaimSheet, inner: &ClaimSheet) -> bool {
    let ClaimSheet { paper, readings, with_files, steel, rule, place, claimed_place } = inner;
    all(&[
        (&outer.paper, paper),
        (&outer.steel, steel),
        (&outer.rule, rule),
        (&outer.place, place),
        (&outer.claimed_place, claimed_place),
    ]) && on(outer.with_files, *with_files)
        && begins(&outer.readings, readings, reading_holds)
}

fn answers_hold(outer: &[String], inner: &[String]) -> bool {
    inner
        .iter()
        .enumerate()
        .all(|(place, answer)| said(outer.get(place).map_or("", String::as_str), answer))
}

/// The same entry; one without a moment may have got it since.
fn entry_holds(outer: &Entry, inner: &Entry) -> bool {
    said(&outer.at, &inner.at) && *outer == Entry { at: outer.at.clone(), ..inner.clone() }
}

/// Pictures that are kept apart from their card count as the same.
fn photo_holds(outer: &Photo, inner: &Photo) -> bool {
    let apart = outer.data.is_empty() || inner.data.is_empty() || outer.data == inner.data;
    apart
        && outer.id == inner.id
        && grown(&outer.text, &inner.text)
        && said(&outer.at, &inner.at)
        && said(&outer.media_type, &inner.media_type)
}
