//! Cards of a file beside those that are there: nothing is lost, and the same file twice does nothing.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use biteband_bench::answer::StrokeInput;
use biteband_bench::card::file::{self, MOST_NAME};
use biteband_bench::card::merge::{Applied, Choice, Fate, apply, holds, plan};
use biteband_bench::card::{Card, Entry, EntryKind, Photo, Zone, demo};
use biteband_bench::words::Language;
use proptest::prelude::*;
use serde_json::Value;

const ENGLISH: Language = Language::English;

fn pawl() -> Card {
    demo::parts(ENGLISH).remove(0)
}

/// No picture of a card here is kept apart from it.
fn lost(photo: &Photo) -> bool {
    photo.data.is_empty()
}

fn fate(mine: &Card, theirs: &Card) -> Fate {
    let mine = std::slice::from_ref(mine);
    plan(ENGLISH, mine, vec![theirs.clone()], &lost).cards.remove(0).fate
}

fn run(mine: &[Card], theirs: &[Card], choice: Choice) -> Applied {
    let mut next = 0;
    apply(
        ENGLISH,
        plan(ENGLISH, mine, theirs.to_vec(), &lost),
        |_| choice,
        || {
            next += 1;
            format!("imported-{next:04}-{}", mine.len())
        },
    )
}

/// What is there after an import.
fn after(mine: &[Card], done: &Applied) -> Vec<Card> {
    let mut all = mine.to_vec();
    for card in &done.store {
        match all.iter_mut().find(|own| own.id == card.id) {
            Some(own) => own.clone_from(card),
            None => all.push(card.clone()),
        }
    }
    all
}

/// Something that somebody did to a card.
type Change = fn(&mut Card, Zone);

fn remark(what: &str) -> Entry {
    Entry { at: "2026-11-20T08:00:00Z".into(), what: what.into(), ..Entry::default() }
}

#[test]
fn fates_are_told_apart() {
    let mine = pawl();
    let mut older = mine.clone();
    older.story.pop();
    older.files = older.story.last().unwrap().files.clone().unwrap();
    older.story.pop();
    older.tempering.done = String::new();
    older.tempering.stage = "quenched".into();
    // The file test of before the temper is an entry of the history since.
    assert_eq!(fate(&mine, &older), Fate::Older);
    assert!(matches!(fate(&older, &mine), Fate::Newer { .. }));
    assert_eq!(fate(&mine, &mine), Fate::Same);
    let asked_again =
        Card { changed: String::new(), revision: 99, said: Vec::new(), ..mine.clone() };
    assert_eq!(fate(&mine, &asked_again), Fate::Same);
    assert_eq!(fate(&mine, &Card { id: "other-0001".into(), ..mine.clone() }), Fate::New);
    let more = Card { notes: format!("{} And oil it.", mine.notes), ..mine.clone() };
    assert!(matches!(fate(&mine, &more), Fate::Newer { .. }));
    let less = Card { notes: String::new(), ..more };
    assert_eq!(fate(&mine, &less), Fate::Older);
}

#[test]
fn whatever_would_lose_something_is_a_conflict() {
    let mine = pawl();
    let zone = Zone { place: "tail".into(), target: "45 HRC max".into() };
    let changes: [(&str, Change); 13] = [
        ("notes", |card, _| card.notes = "Something else.".into()),
        ("name", |card, _| card.name = "Pawl".into()),
        ("target", |card, _| card.target = "52 HRC min".into()),
        ("steel", |card, _| card.steel.name = "4340".into()),
        ("section", |card, _| card.section.shape = biteband_bench::state::ShapeKind::Square),
        ("stroke", |card, _| card.files.strokes[0].outcome = "bites".into()),
        ("taken back", |card, _| {
            card.files.strokes.pop();
            card.notes.push_str(" More.");
        }),
        ("story", |card, _| card.story[0].what = "900 °C".into()),
        ("story shorter", |card, zone| {
            card.story.pop();
            card.zones.push(zone);
        }),
        ("bath", |card, _| card.bath.medium = "water".into()),
        ("skin", |card, _| card.files.conditions.skin_ground = Some(false)),
        ("begun", |card, _| {
            card.begun = vec!["tail".into()];
            card.notes.clear();
        }),
        ("seen", |card, _| {
            card.seen = vec!["sticks".into()];
            card.notes.clear();
        }),
    ];
    for (name, change) in changes {
        let mut theirs = mine.clone();
        change(&mut theirs, zone.clone());
        let Fate::Conflict { mine: own, rows } = fate(&mine, &theirs) else {
            panic!("{name}: {:?}", fate(&mine, &theirs).key());
        };
        assert_eq!(*own, mine, "{name}");
        assert!(rows.iter().any(|row| row.differs && row.a != row.b), "{name}: {rows:?}");
        assert!(rows.iter().any(|row| !row.differs), "{name}");
    }
}

#[test]
fn choices_do_what_they_say() {
    let mine = pawl();
    let theirs = Card { notes: "Something else.".into(), ..mine.clone() };
    let (own, other) = (std::slice::from_ref(&mine), std::slice::from_ref(&theirs));
    assert_eq!(run(own, other, Choice::KeepMine), Applied::default());
    let taken = run(own, other, Choice::TakeTheirs);
    assert_eq!(
        (taken.store[0].notes.as_str(), &taken.replaced),
        ("Something else.", &vec![mine.clone()])
    );
    assert!(taken.store[0].revision > mine.revision);
    let both = run(own, other, Choice::default());
    assert!(both.replaced.is_empty());
    assert_eq!(both.store[0].id, "imported-0001-1");
    assert_eq!(both.store[0].name, "Capstan pawl (imported)");
    // Once more does nothing, and neither does it after the copy was worked on.
    let mut all = after(own, &both);
    assert_eq!(run(&all, other, Choice::default()), Applied::default());
    all[1].story.push(remark("Fitted."));
    assert_eq!(run(&all, other, Choice::default()), Applied::default());
}

#[test]
fn pictures_that_are_lost_come_back_and_nothing_else_changes() {
    let photo = |id: &str, data: &str| Photo {
        id: id.into(),
        data: data.into(),
        text: "Nose".into(),
        ..Photo::default()
    };
    let mine = Card {
        photos: vec![photo("photo-0001", ""), photo("photo-0002", "b3du"), photo("photo-0003", "")],
        ..pawl()
    };
    let there = [photo("photo-0001", "bG9zdA=="), photo("photo-0002", ""), photo("photo-0003", "")];
    let same = Card { photos: there.to_vec(), ..mine.clone() };
    let mut older = same.clone();
    older.notes.clear();
    for theirs in [same, older] {
        let Fate::Pictures { lost, mine: own } = fate(&mine, &theirs) else {
            panic!("{}", fate(&mine, &theirs).key())
        };
        assert_eq!((lost, *own), (vec!["photo-0001".to_owned()], mine.clone()));
        let done = run(std::slice::from_ref(&mine), &[theirs], Choice::KeepMine);
        assert_eq!(done.replaced, std::slice::from_ref(&mine));
        let mut whole = mine.clone();
        whole.photos[0].data = "bG9zdA==".into();
        assert_eq!(done.store, [whole]);
    }
    // Where the picture is kept apart, nothing is lost.
    let theirs = Card { photos: there.to_vec(), ..mine.clone() };
    let planned = plan(ENGLISH, &[mine], vec![theirs], &|_| false).cards.remove(0);
    assert_eq!(planned.fate, Fate::Same);
}

#[test]
fn a_name_stays_as_short_as_a_name_may_be() {
    let mine = Card { name: "x".repeat(MOST_NAME), ..pawl() };
    let theirs = Card { notes: "Otherwise.".into(), ..mine.clone() };
    let mine = Card { notes: "So.".into(), ..mine };
    let done = run(std::slice::from_ref(&mine), std::slice::from_ref(&theirs), Choice::KeepBoth);
    let written = file::write(&done.store, 0);
    assert_eq!(file::read(ENGLISH, written.as_bytes()).unwrap(), done.store);
    assert!(done.store[0].name.ends_with("x… (imported)"), "{}", done.store[0].name);
    // The second time it is there already.
    assert_eq!(run(&after(&[mine], &done), &[theirs], Choice::KeepBoth).store, []);
}

#[test]
fn pictures_that_are_kept_apart_stay() {
    let photo = Photo { id: "photo-0001".into(), data: "AAAA".into(), ..Photo::default() };
    let mine = Card { photos: vec![photo.clone()], ..pawl() };
    let mut theirs = mine.clone();
    theirs.photos[0].data.clear();
    theirs.story.push(remark("Fitted."));
    let done = run(&[mine], &[theirs], Choice::default());
    assert_eq!(done.store[0].photos, [photo]);
}

/// Every text of a card that a person may have typed, and every stroke.
fn texts(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::String(text) if !text.is_empty() => found.push(text.clone()),
        Value::Array(items) => items.iter().for_each(|item| texts(item, found)),
        Value::Object(fields) => {
            if fields.contains_key("outcome") {
                found.push(value.to_string());
            }
            fields.values().for_each(|value| texts(value, found));
        }
        _ => {}
    }
}

fn typed(card: &Card) -> Vec<String> {
    let mut value = serde_json::to_value(card).unwrap();
    let fields = value.as_object_mut().unwrap();
    // What the tool itself notes down.
    for own in ["said", "changed", "revision"] {
        fields.remove(own);
    }
    // Which of three stages it is in goes on with the history.
    fields["tempering"].as_object_mut().unwrap().remove("stage");
    let mut found = Vec::new();
    texts(&value, &mut found);
    found
}

fn word() -> impl Strategy<Value = String> {
    prop::sample::select(vec!["", "a", "ab", "abc", "b", "4140", "50 mm", "205 °C / 2 h"])
        .prop_map(str::to_owned)
}

fn stroke() -> impl Strategy<Value = StrokeInput> {
    (prop::sample::select(vec![50.0, 55.0]), prop::sample::select(vec!["bites", "skates"]))
        .prop_map(|(file, outcome)| StrokeInput { file, outcome: outcome.into(), spot: Some(1) })
}

/// One thing that somebody does to a card.
fn change() -> impl Strategy<Value = (u8, String, StrokeInput)> {
    (0..14_u8, word(), stroke())
}

fn changed(mut card: Card, changes: &[(u8, String, StrokeInput)]) -> Card {
    for (which, word, stroke) in changes {
        match which {
            0 => card.notes.push_str(word),
            1 => card.notes.clone_from(word),
            2 => card.files.strokes.push(stroke.clone()),
            3 => drop(card.files.strokes.pop()),
            4 => card.story.push(remark(word)),
            5 => drop(card.story.pop()),
            6 => {
                let files = std::mem::take(&mut card.files);
                let kind = EntryKind::Filed;
                card.story.push(Entry { kind, files: Some(files), ..remark("filed") });
            }
            7 => card.target.clone_from(word),
            8 => card.zones.push(Zone { place: word.clone(), target: "45 HRC".into() }),
            9 => card.steel.name.clone_from(word),
            10 => card.tempering.done.push_str(word),
            11 => card.seen = vec![word.clone()],
            12 => card.section.size.clone_from(word),
            _ => card.name.clone_from(word),
        }
    }
    card
}

fn changes() -> impl Strategy<Value = Vec<(u8, String, StrokeInput)>> {
    prop::collection::vec(change(), 0..6)
}

proptest! {
    #[test]
    fn no_import_with_the_usual_choices_loses_anything(
        base in changes(), ours in changes(), others in changes(),
    ) {
        let base = changed(Card { id: "card-0001".into(), ..Card::default() }, &base);
        let mine = changed(base.clone(), &ours);
        let theirs = changed(base, &others);
        let done = run(std::slice::from_ref(&mine), std::slice::from_ref(&theirs), Choice::default());
        let all = after(std::slice::from_ref(&mine), &done);
        let kept = typed(all.iter().find(|card| card.id == mine.id).unwrap());
        for text in typed(&mine) {
            prop_assert!(kept.iter().any(|own| own.contains(&text)), "{text} of {mine:?} in {all:?}");
        }
        // Nor of what was imported.
        let whole: Vec<String> = all.iter().flat_map(typed).collect();
        for text in typed(&theirs) {
            prop_assert!(whole.iter().any(|own| own.contains(&text)), "{text} of {theirs:?} in {all:?}");
        }
        // Once more does nothing.
        let again = run(&all, std::slice::from_ref(&theirs), Choice::default());
        prop_assert_eq!(again, Applied::default());
    }

    #[test]
    fn holding_goes_on(base in changes(), one in changes(), other in changes()) {
        let a = changed(Card { id: "card-0001".into(), ..Card::default() }, &base);
        let b = changed(a.clone(), &one);
        let c = changed(b.clone(), &other);
        prop_assert!(holds(&a, &a));
        if holds(&c, &b) && holds(&b, &a) {
            for text in typed(&a) {
                prop_assert!(typed(&c).iter().any(|own| own.contains(&text)), "{text}");
            }
        }
    }
}
