//! The page of parts: what lies in storage as a list, the card in hand, what is to be exported, what an import would do.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use std::collections::BTreeMap;

use biteband_bench::card::find::Order;
use biteband_bench::card::merge::{Choice, plan};
use biteband_bench::card::{Card, Said, Standing, Zone, demo, write_record};
use biteband_bench::state::{
    Action, App, Field, Page, PartAction, PartField, SteelField, TemperField, reduce,
};
use biteband_bench::view::{
    Clock, Exported, Kept, PartsView, chooser, exports, fact_groups, file_name, import, part_card,
    part_in_hand, parts,
};
use biteband_bench::words::Language;

const ENGLISH: Language = Language::English;
/// 2026-11-12 23:30 UTC, in a shop that is an hour ahead.
const LATE: Clock = Clock { now_ms: 1_794_526_200_000, east_min: 60 };

fn act(app: &App, action: impl Into<Action>) -> App {
    reduce(app, action.into())
}

fn type_in(app: &App, field: Field, text: &str) -> App {
    reduce(app, Action::Edit(field, text.into()))
}

fn card(id: &str, name: &str, changed: &str, standing: Standing) -> Card {
    Card {
        id: id.into(),
        name: name.into(),
        changed: changed.into(),
        revision: 1,
        said: vec![Said { standing, ..Said::default() }],
        ..Card::default()
    }
}

fn kept(cards: &[Card]) -> Vec<Kept> {
    cards.iter().map(|card| Kept::Card(Box::new(card.clone()))).collect()
}

fn shop() -> Vec<Kept> {
    let mut pawl = card("part-0001", "Capstan pawl", "2026-11-12T08:00:00Z", Standing::TooHard);
    pawl.steel.name = "4140".into();
    pawl.target = "50-54 HRC".into();
    let mut bushing =
        card("part-0002", "Drill-jig bushing", "2026-11-03T08:00:00Z", Standing::Inside);
    bushing.steel.name = "O1".into();
    let mut shaft = card("part-0003", "Shaft bar", "2025-10-28T23:30:00Z", Standing::NotProved);
    shaft.claim.paper = "28-32 HRC".into();
    kept(&[shaft, bushing, pawl])
}

fn list(app: &App, kept: &[Kept], order: Order) -> PartsView {
    let own = part_in_hand(app, kept, None, ENGLISH);
    parts(app, (own.as_ref(), kept), (order, false), ENGLISH, LATE)
}

#[test]
fn a_row_says_how_the_part_stands_in_words_and_when_it_was_changed_in_local_time() {
    let view = list(&App::default(), &shop(), Order::Changed);
    let rows: Vec<[&str; 4]> =
        view.rows.iter().map(|row| [&*row.name, &*row.standing, &*row.line, &*row.date]).collect();
    assert_eq!(
        rows,
        [
            ["Capstan pawl", "too hard", "4140 · wants 50-54 HRC", "12 Nov"],
            ["Drill-jig bushing", "in the band", "O1", "3 Nov"],
            // After midnight in the shop, and of another year.
            ["Shaft bar", "not proved", "paper says 28-32 HRC", "29 Oct 2025"],
        ]
    );
    assert!(view.empty.is_none() && view.shown.is_empty() && view.more.is_empty());
}

#[test]
fn rows_are_found_by_any_word_and_put_in_any_order() {
    let kept = shop();
    let names = |view: PartsView| view.rows.into_iter().map(|row| row.name).collect::<Vec<_>>();
    let by = |order| names(list(&App::default(), &kept, order));
    assert_eq!(by(Order::Name), ["Capstan pawl", "Drill-jig bushing", "Shaft bar"]);
    assert_eq!(by(Order::Standing), ["Capstan pawl", "Shaft bar", "Drill-jig bushing"]);
    assert_eq!(by(Order::Steel), ["Shaft bar", "Capstan pawl", "Drill-jig bushing"]);
    let search = |text: &str| type_in(&App::default(), Field::Part(PartField::Search), text);
    let found = list(&search("o1 bushing"), &kept, Order::Changed);
    assert_eq!(found.shown, "1 of 3 parts");
    assert_eq!(names(found), ["Drill-jig bushing"]);
    let none = list(&search("anvil"), &kept, Order::Changed);
    assert!(none.rows.is_empty() && none.empty.is_some());
    assert!(none.searched, "what is looked for can be changed");
}

#[test]
fn the_part_in_hand_is_shown_as_it_stands_on_the_pages_also_before_it_was_stored() {
    let app = type_in(&App::default(), Field::Part(PartField::Name), "New pin");
    let app = act(&app, PartAction::Begin { id: "part-0009".into(), now_ms: LATE.now_ms });
    let view = list(&app, &shop(), Order::Name);
    let here: Vec<&str> = view.rows.iter().filter(|row| row.here).map(|row| &*row.name).collect();
    assert_eq!((view.rows.len(), here), (4, vec!["New pin"]));
    // With one in hand a long list does not push its card down, unless something is looked for.
    let many: Vec<Card> = (0..9)
        .map(|n| card(&format!("part-100{n}"), &format!("Pin {n}"), "", Standing::Nothing))
        .collect();
    let view = list(&app, &kept(&many), Order::Name);
    assert_eq!((view.rows.len(), view.more.as_str()), (5, "Show all 10"));
    let own = part_in_hand(&app, &[], None, ENGLISH);
    let whole = (Order::Name, true);
    let whole = parts(&app, (own.as_ref(), &kept(&many)), whole, ENGLISH, LATE);
    assert_eq!(whole.rows.len(), 10);
    assert_eq!(list(&App::default(), &kept(&many), Order::Name).rows.len(), 9);
}

#[test]
fn what_is_no_card_is_listed_with_its_text_and_the_reason() {
    let good = card("part-0001", "Pin", "", Standing::Nothing);
    let text = write_record(&good);
    let read = |text: &str| Kept::read("part-0001".into(), text.into(), ENGLISH);
    assert_eq!(read(&text).card(), Some(&good));
    let newer = read(&text.replacen("\"schema\":1", "\"schema\":7", 1));
    let half = text.get(..text.len() / 2).unwrap();
    let cut = read(half);
    let view = list(&App::default(), &[newer, cut], Order::Changed);
    assert!(view.rows.is_empty());
    let [newer, cut] = view.damaged.as_slice() else { panic!("{:?}", view.damaged) };
    assert!(newer.why.contains("newer version") && !cut.why.contains("newer version"));
    assert_eq!(cut.text, half);
}

#[test]
fn a_part_is_offered_only_where_something_stands_on_the_pages_and_none_is_in_hand() {
    let begins = |app: &App| list(app, &[], Order::Changed).begins;
    assert!(!begins(&App::default()));
    // The person's own files are no part.
    assert!(!begins(&type_in(&App::default(), Field::Grades, "62 58 54 50")));
    for field in
        [Field::Target, Field::Steel(SteelField::Query), Field::Temper(TemperField::AsQuenched)]
    {
        assert!(begins(&type_in(&App::default(), field, "50-54 HRC")), "{field:?}");
    }
    let stroked = act(&App::default(), Action::Stroke { grade: 55.0, outcome: "bites" });
    assert!(begins(&stroked));
    assert!(!begins(&act(&stroked, PartAction::Begin { id: "part-0001".into(), now_ms: 0 })));
}

#[test]
fn what_is_said_follows_every_stroke_and_is_not_worked_out_twice() {
    let app = type_in(&App::default(), Field::Target, "50-54 HRC");
    let app = act(&app, PartAction::Begin { id: "part-0001".into(), now_ms: 0 });
    let first = part_in_hand(&app, &[], None, ENGLISH).unwrap();
    let app = act(&app, Action::Stroke { grade: 40.0, outcome: "bites" });
    let app = act(&app, Action::Stroke { grade: 45.0, outcome: "bites" });
    let stroked = part_in_hand(&app, &[], Some(&first), ENGLISH).unwrap();
    assert!(first.said.is_empty() && stroked.said[0].standing == Standing::TooSoft, "{stroked:?}");
    // What was said before of the same strokes is taken over, whatever it was.
    let mark = Said { text: "as before".into(), ..stroked.said[0].clone() };
    let before = Card { said: vec![mark.clone()], ..stroked };
    let noted = type_in(&app, Field::Part(PartField::Notes), "Soft.");
    let noted = part_in_hand(&noted, &[], Some(&before), ENGLISH).unwrap();
    assert_eq!((noted.notes.as_str(), &noted.said), ("Soft.", &vec![mark]));
}

#[test]
fn the_choice_on_top_offers_the_part_in_hand_and_the_six_changed_last() {
    let many: Vec<Card> = (1..=9)
        .map(|n| {
            let day = format!("2026-11-0{n}T08:00:00Z");
            card(&format!("part-100{n}"), &format!("Pin {n}"), &day, Standing::Nothing)
        })
        .collect();
    let mut app = App::default();
    many[0].put(&mut app.saved);
    let own = part_in_hand(&app, &[], None, ENGLISH);
    let rows = chooser(own.as_ref(), &kept(&many), ENGLISH, LATE);
    let names: Vec<&str> = rows.iter().map(|row| &*row.name).collect();
    assert_eq!(names, ["Pin 1", "Pin 9", "Pin 8", "Pin 7", "Pin 6", "Pin 5", "Pin 4"]);
    assert!(rows[0].here);
}

#[test]
fn facts_stand_with_the_page_that_changes_them_and_the_story_with_its_keys() {
    let parts = demo::parts(ENGLISH);
    let pawl = parts.iter().find(|card| card.name.contains("pawl")).unwrap();
    let mut app = App::default();
    pawl.put(&mut app.saved);
    let card = part_in_hand(&app, &[], None, ENGLISH).unwrap();
    let view = part_card(&app, &card, ENGLISH, LATE);
    let groups = fact_groups(&card, ENGLISH);
    let pages: Vec<Page> =
        groups.iter().filter_map(|group| group.change).map(|(page, _)| page).collect();
    for page in [Page::Steel, Page::FileTest, Page::Temper] {
        assert!(pages.contains(&page), "{pages:?}");
    }
    let own: Vec<bool> = view.story.iter().map(|row| !row.remove.is_empty()).collect();
    let entries: Vec<bool> = view.story.iter().map(|row| row.line.entry.is_some()).collect();
    assert_eq!(own, entries, "what is made of the pages is changed there");
    assert!(entries.contains(&true) && !view.demo.is_empty() && !view.put_back);
    let place = entries.iter().position(|own| *own).unwrap();
    let gone = act(&app, PartAction::RemoveEntry(view.story[place].line.entry.unwrap()));
    let card = part_in_hand(&gone, &[], None, ENGLISH).unwrap();
    assert!(part_card(&gone, &card, ENGLISH, LATE).put_back);
}

#[test]
fn a_struck_end_is_cautioned_while_it_is_typed() {
    let mut card = card("part-0001", "Drift", "", Standing::Nothing);
    let said = |card: &Card, typed: &str| {
        let mut app = App::default();
        card.put(&mut app.saved);
        let app = type_in(&app, Field::Part(PartField::ZonePlace), typed);
        part_card(&app, card, ENGLISH, LATE).struck
    };
    assert_eq!(said(&card, "nose"), "");
    // job.md: struck end at most 45 HRC and softer than the hammer.
    assert!(said(&card, "Struck end").contains("45 HRC"));
    card.zones.push(Zone { place: "hammer face".into(), target: "45 HRC max".into() });
    assert!(said(&card, "").contains("softer than the hammer"));
}

#[test]
fn a_temper_that_cannot_be_read_stays_typed_and_is_not_put_on_the_card() {
    let app = act(&App::default(), PartAction::Begin { id: "part-0001".into(), now_ms: 0 });
    let field = Field::Part(PartField::Tempered);
    let problems = |app: &App| {
        let card = part_in_hand(app, &[], None, ENGLISH).unwrap();
        part_card(app, &card, ENGLISH, LATE).problems
    };
    let empty = act(&app, PartAction::AddTempered);
    assert_eq!(problems(&empty).len(), 1);
    let odd = act(&type_in(&app, field, "400 for a while"), PartAction::AddTempered);
    assert!(Card::of(&odd.saved).story.is_empty());
    assert_eq!(odd.saved.part.text(PartField::Tempered), "400 for a while");
    assert_eq!(problems(&odd).len(), 1);
    let typing = act(&odd, Action::Enter(field));
    assert!(problems(&typing).is_empty(), "not while it is being typed");
    let good = act(&type_in(&app, field, "205 °C / 2 h"), PartAction::AddTempered);
    assert_eq!(Card::of(&good.saved).tempering.done, "205 °C / 2 h");
    assert!(problems(&good).is_empty());
}

#[test]
fn the_reminder_counts_own_parts_that_changed_since_their_export() {
    let mut cards = vec![
        card("part-0001", "Pin", "", Standing::Nothing),
        card("part-0002", "Pawl", "", Standing::Nothing),
    ];
    let demo = Card { demo: true, ..card("demo-0001", "Drift", "", Standing::Nothing) };
    let reminder = |cards: &[Card], exported: &Exported| {
        let view = exports(&kept(cards), exported, ENGLISH, LATE);
        (view.reminder, view.due)
    };
    let never = Exported::default();
    assert_eq!(reminder(std::slice::from_ref(&demo), &never), (String::new(), false));
    assert_eq!(reminder(&cards, &never).0, "2 parts on this device alone: none was ever exported.");
    let all = Exported::read(&never.with(&cards, LATE.now_ms).write());
    cards.push(demo);
    // Half past midnight in the shop.
    let same = "Nothing changed since the last export on 13 Nov.";
    assert_eq!(reminder(&cards, &all), (same.into(), false));
    cards[1].revision += 1;
    let changed = "1 part changed since the last export on 13 Nov.";
    assert_eq!(reminder(&cards, &all), (changed.into(), true));
    let one = all.with(&cards[1..2], LATE.now_ms);
    assert!(!reminder(&cards, &one).1);
    assert_eq!(Exported::read("[1"), Exported::default());
}

#[test]
fn files_are_named_by_the_local_day() {
    assert_eq!(file_name("parts", "json", 0, LATE), "biteband-parts-2026-11-13.json");
    assert_eq!(file_name("parts", "json", 1, LATE), "biteband-parts-2026-11-13-2.json");
}

#[test]
fn an_import_is_told_before_it_is_done_and_its_key_says_what_is_chosen() {
    let mine = [
        card("part-0001", "Pin", "", Standing::Nothing),
        card("part-0002", "Pawl", "", Standing::Nothing),
        card("part-0003", "Drift", "", Standing::Nothing),
    ];
    let mut theirs = vec![mine[0].clone(), mine[1].clone(), mine[2].clone()];
    theirs.push(card("part-0004", "Screw", "", Standing::Nothing));
    theirs[1].notes = "Fit to the wheel.".into();
    theirs[2].target = "54-58 HRC".into();
    let mut own = mine.to_vec();
    own[2].target = "50-54 HRC".into();
    let plan = plan(ENGLISH, &own, theirs, &|_| false);
    let mut chosen = BTreeMap::new();
    let view = import(&plan, &chosen, ENGLISH);
    let names: Vec<&[String]> = view.groups.iter().map(|(_, names)| &**names).collect();
    assert_eq!(names, [["Screw"], ["Pawl"], ["Pin"]]);
    assert_eq!(view.apply, "Import: 2 parts added, 1 brought up to the file");
    let [conflict] = view.conflicts.as_slice() else { panic!("{:?}", view.conflicts) };
    let target = conflict.rows.iter().find(|row| row.differs && row.b == "54-58 HRC").unwrap();
    assert_eq!((conflict.name.as_str(), target.a.as_str()), ("Drift", "50-54 HRC"));
    let on = conflict.choices.iter().find(|(_, chip)| chip.on).unwrap();
    assert_eq!(on.0, Choice::KeepBoth, "nothing is lost unless told so");
    chosen.insert("part-0003".to_owned(), Choice::KeepMine);
    assert_eq!(
        import(&plan, &chosen, ENGLISH).apply,
        "Import: 1 part added, 1 brought up to the file"
    );
    chosen.insert("part-0003".to_owned(), Choice::TakeTheirs);
    assert_eq!(
        import(&plan, &chosen, ENGLISH).apply,
        "Import: 1 part added, 2 brought up to the file"
    );
}

#[test]
fn a_file_with_nothing_new_says_so() {
    let mine = [card("part-0001", "Pin", "", Standing::Nothing)];
    let same = plan(ENGLISH, &mine, mine.to_vec(), &|_| false);
    assert!(import(&same, &BTreeMap::new(), ENGLISH).nothing.is_some());
}
