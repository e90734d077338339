//! Cards in words: facts, story, side by side, as a text, as a table; looked for and put in order.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use biteband_bench::card::{
    Card, ClaimSheet, Entry, EntryKind, FileSheet, Photo, ResultSheet, SaidOf, Standing, again,
    compare, csv, day, demo, entry_of_files, facts, file, find, said_of_card, story, text,
    versions,
};
use biteband_bench::state::App;
use biteband_bench::words::{FactLabel, Language};
use proptest::prelude::*;

const ENGLISH: Language = Language::English;

fn parts() -> Vec<Card> {
    demo::parts(ENGLISH)
}

fn fact(card: &Card, of: FactLabel) -> String {
    facts(card, ENGLISH)
        .into_iter()
        .find(|fact| fact.of == of)
        .map(|fact| fact.text)
        .unwrap_or_default()
}

/// A card with something in every field.
fn full() -> Card {
    file::read(ENGLISH, include_bytes!("stored/cards-1.json")).unwrap().remove(0)
}

#[test]
fn every_fact_of_a_card_is_told_in_its_order() {
    let card = full();
    let told = facts(&card, ENGLISH);
    let order: Vec<FactLabel> = told.iter().map(|fact| fact.of).collect();
    let mut sorted = order.clone();
    sorted.sort();
    assert_eq!(order, sorted);
    let whole: Vec<&str> = told.iter().map(|fact| fact.text.as_str()).collect();
    let whole = whole.join("\n");
    for part in [
        "4140",
        "offcut from bar 7",
        "50 mm round, 80 mm long",
        "nose: 52 HRC min",
        "oil, moved quickly, 14 L at 35 °C, flash point 180 °C",
        "230 °C, 2 h at heat",
        "at its final size",
        "50 skates, 55 bites; 52, 53 HRC (Rockwell on the bench",
        "the 55 file on a piece of 53 HRC bites",
        "54 HRC, give or take 2 (not counted in)",
        "53 HRC after 205 °C / 2 h (4140)",
        "skin ground off",
        "Fit to the wheel.",
        "as Capstan pawl of 2024: Hardened 855 °C, 40 min, oil",
        "1 photo: The old one, worn",
    ] {
        assert!(whole.contains(part), "{part}: {whole}");
    }
    let (app, data) = versions();
    assert!(fact(&card, FactLabel::Says).ends_with(&format!("(Biteband {app}, data {data})")));
    assert!(facts(&Card::default(), ENGLISH).is_empty());
}

/// The pages start with oil, mild movement, nothing against the air and a quenched part; none of that was done to a part
/// before it was in the fire or someone chose otherwise.
#[test]
fn what_no_one_chose_is_no_fact() {
    use FactLabel as F;
    let treatment = |card: &Card| [F::Bath, F::Air, F::Stage].map(|of| fact(card, of));
    let mut app = App::default();
    app.saved.steel.query = "1018".into();
    app.saved.steel.size = "20 mm".into();
    let mut card = Card::of(&app.saved);
    card.claim.paper = "60 HRC".into();
    assert_eq!((card.bath.medium.as_str(), card.tempering.stage.as_str()), ("oil", "quenched"));
    assert_eq!(treatment(&card), ["", "", ""]);
    let plain = text::plain(&card, ENGLISH, 0);
    assert!(!plain.contains("oil") && !plain.contains("quenched"), "{plain}");
    let empty = Card { id: card.id.clone(), ..Card::default() };
    let rows = compare(&card, &empty, ENGLISH);
    assert!(rows.iter().all(|row| !row.a.contains("oil") && !row.a.contains("quenched")));
    // What was chosen is told, and only that.
    let mut chosen = card.clone();
    chosen.bath.medium = "water".into();
    chosen.tempering.stage = "bought".into();
    assert_eq!(treatment(&chosen), ["water", "", "as bought"]);
    chosen.bath.movement = "good".into();
    chosen.bath.protection = "foil".into();
    assert_eq!(fact(&chosen, F::Bath), "water, moved quickly");
    assert!(!fact(&chosen, F::Air).is_empty());
    // A part that was in the fire has its bath, and so has one that is made like it.
    let heat = Entry { kind: EntryKind::Hardened, what: "855 °C".into(), ..Entry::default() };
    let hardened = Card { story: vec![heat], ..card.clone() };
    let whole = ["oil, moved gently", "nothing", "quenched"];
    assert_eq!(treatment(&hardened), whole);
    let next = hardened.as_recipe("second-one", "Second", 0);
    assert_eq!(treatment(&next), ["oil, moved gently", "nothing", "as bought"]);
    card.tempering.as_quenched = "56 HRC".into();
    assert_eq!(treatment(&card), whole);
}

#[test]
fn a_wanted_number_stands_with_the_scale_that_it_counts_on() {
    let mut card = parts().remove(0);
    for (typed, told) in [
        ("50-54", "50-54 HRC"),
        ("58 min", "58 min HRC"),
        ("500 HV min", "500 HV min"),
        ("hard as can be", "hard as can be"),
        (" ", ""),
    ] {
        card.target = typed.into();
        assert_eq!(fact(&card, FactLabel::Wanted), told, "{typed}");
    }
    card.target = "50-54".into();
    assert!(text::plain(&card, ENGLISH, 0).contains("50-54 HRC"));
}

#[test]
fn a_paper_is_judged_by_what_the_card_holds() {
    let bar = &parts()[4];
    let said = said_of_card(bar, ENGLISH);
    assert_eq!((said.len(), said[0].of), (1, SaidOf::Claim));
    assert_eq!(said[0].standing, Standing::NotProved);
    // 190 HBW is annealed stock: 28 HRC is 271 HBW (ASTM E140 Table 1).
    let mut soft = bar.clone();
    soft.claim.readings[0].text = "190 HBW".into();
    assert_eq!(said_of_card(&soft, ENGLISH)[0].standing, Standing::Disagrees);
    soft.claim.readings.clear();
    assert!(said_of_card(&soft, ENGLISH).is_empty());
    // What files said counts when it is said to count.
    soft.files = parts()[0].files.clone();
    let of =
        |card: &Card| said_of_card(card, ENGLISH).iter().map(|said| said.of).collect::<Vec<_>>();
    assert_eq!(of(&soft), [SaidOf::Files]);
    soft.claim.with_files = true;
    assert_eq!(of(&soft), [SaidOf::Files, SaidOf::Claim]);
    assert!(fact(&soft, FactLabel::PaperSays).starts_with("Disagrees"));
    // A part whose steel is no grade here still has a paper.
    soft.steel.name = "bar from the heap".into();
    assert_eq!(of(&soft), [SaidOf::Files, SaidOf::Claim]);
    soft.claim.paper = "nonsense".into();
    assert_eq!(of(&soft), [SaidOf::Files]);
}

#[test]
fn the_story_tells_steel_heats_and_tests_with_local_days() {
    let pawl = &parts()[0];
    let lines = story(pawl, ENGLISH, 60);
    let titles: Vec<&str> = lines.iter().map(|line| line.title.as_str()).collect();
    assert_eq!(titles, ["Steel", "Hardened", "Filed", "Tempered", "Filed"]);
    assert_eq!(lines[0].what, "4140, offcut from bar 7, 50 mm round, 80 mm long");
    assert_eq!(lines[1].date, "10 Nov 2026");
    assert_eq!(lines[2].what, "55 skates 2×, 60 bites");
    assert!(lines[2].said.contains("HRC") && lines[2].versions.starts_with("Biteband"));
    assert_eq!(lines[2].outdated, "");
    assert_eq!(lines[4].date, "now");
    // 23:30 in Greenwich is the day after in Berlin and the same day in New York.
    assert_eq!(day("2026-11-12T23:30:00Z", ENGLISH, 60), "13 Nov 2026");
    assert_eq!(day("2026-11-12T23:30:00Z", ENGLISH, -300), "12 Nov 2026");
    assert_eq!(day("2027-01-01T04:59:00Z", ENGLISH, -300), "31 Dec 2026");
    assert_eq!(day("", ENGLISH, 0), "");
}

#[test]
fn an_old_answer_is_asked_again() {
    let mut pawl = parts().remove(0);
    let filed = pawl.story.iter().position(|entry| entry.files.is_some()).unwrap();
    let same = again(&pawl, filed, ENGLISH).unwrap();
    assert!(same.same && same.now == same.then, "{same:?}");
    let entry = &mut pawl.story[filed];
    (entry.app, entry.data) = ("0.0.1".into(), "old".into());
    (entry.low, entry.high, entry.said) = (Some(50.0), Some(58.0), "50 – 58 HRC".into());
    assert!(story(&pawl, ENGLISH, 0)[filed + 1].outdated.contains("Biteband 0.0.1 with data old"));
    let other = again(&pawl, filed, ENGLISH).unwrap();
    assert!(!other.same, "{other:?}");
    assert!(other.text.contains("Said then: 50 – 58 HRC. Says today: 53"), "{}", other.text);
    assert_eq!(again(&pawl, 0, ENGLISH), None, "a heat rests on no strokes");
    assert_eq!(again(&pawl, 99, ENGLISH), None);
    let claim = parts().remove(4);
    let said = said_of_card(&claim, ENGLISH).remove(0);
    let paper = Entry {
        said: said.text,
        scale: said.scale,
        low: said.low,
        high: said.high,
        claim: Some(claim.claim.clone()),
        ..Entry::default()
    };
    let card = Card { story: vec![paper], claim: ClaimSheet::default(), ..claim };
    assert!(again(&card, 0, ENGLISH).unwrap().same);
}

#[test]
fn two_cards_stand_side_by_side() {
    let parts = parts();
    let rows = compare(&parts[0], &parts[3], ENGLISH);
    let row = |label: &str| rows.iter().find(|row| row.label == label).unwrap();
    assert_eq!((row("Steel").a.as_str(), row("Steel").b.as_str()), ("4140", "4340"));
    assert!(row("Steel").differs && !row("The part is").differs);
    assert!(rows.iter().all(|row| row.differs == (row.a != row.b)));
    assert!(compare(&parts[0], &parts[0], ENGLISH).iter().all(|row| !row.differs));
    // A fact that only one has stands against an empty place.
    let drift = compare(&parts[0], &parts[1], ENGLISH);
    assert!(drift.iter().any(|row| row.a.is_empty() && row.b == "struck end: 45 HRC max"));
}

#[test]
fn cards_are_found_by_words_in_any_place_and_order() {
    let parts = parts();
    let found = |search: &str| {
        let found = parts.iter().filter(|card| find::matches(card, search, ENGLISH));
        found.map(|card| card.name.as_str()).collect::<Vec<_>>()
    };
    assert_eq!(found("pawl"), ["Capstan pawl"]);
    assert_eq!(found("  PAWL  capstan "), ["Capstan pawl"]);
    assert_eq!(found("4140"), ["Capstan pawl", "Shaft bar, bought pre-hard"]);
    assert_eq!(found("4140 merchant"), ["Shaft bar, bought pre-hard"]);
    assert_eq!(found("struck"), ["Stern-bush drift"]);
    assert_eq!(found("contradictory"), ["Latch spring"]);
    assert_eq!(found("torch"), ["Stern-bush drift"]);
    assert_eq!(found("").len(), parts.len());
    assert!(found("nowhere").is_empty());
    let sorted = |order| {
        let mut sorted = parts.clone();
        sorted.reverse();
        find::sort(&mut sorted, order);
        sorted.iter().map(|card| card.id.clone()).collect::<Vec<_>>()
    };
    assert_eq!(sorted(find::Order::Name)[..2], ["demo-unknown-axle", "demo-capstan-pawl"]);
    assert_eq!(sorted(find::Order::Changed)[..2], ["demo-capstan-pawl", "demo-jig-bushing"]);
    assert_eq!(sorted(find::Order::Steel)[..2], ["demo-unknown-axle", "demo-latch-spring"]);
    assert_eq!(sorted(find::Order::Standing)[0], "demo-latch-spring");
    assert_eq!(sorted(find::Order::Standing)[6], "demo-bush-drift");
}

#[test]
fn the_demonstration_is_believed_and_its_answers_are_worked_out() {
    let parts = parts();
    let standings: Vec<Standing> = parts
        .iter()
        .map(|card| card.said.first().map(|said| said.standing).unwrap_or_default())
        .collect();
    // It shows each way in which a part can stand at the start of a day.
    for standing in [
        Standing::Inside,
        Standing::TooHard,
        Standing::NotProved,
        Standing::Contradictory,
        Standing::Nothing,
    ] {
        assert!(standings.contains(&standing), "{standing:?}: {standings:?}");
    }
    for card in &parts {
        assert_eq!(card.said, said_of_card(card, ENGLISH), "{}", card.name);
        for (place, entry) in card.story.iter().enumerate() {
            assert!(!entry.at.is_empty(), "{}", card.name);
            if let Some(files) = &entry.files {
                let then = Card { files: files.clone(), story: Vec::new(), ..card.clone() };
                let mut app = App::default();
                then.put(&mut app.saved);
                let made = entry_of_files(&app, ENGLISH).unwrap();
                assert_eq!(
                    (&entry.said, entry.low),
                    (&made.said, made.low),
                    "{} {place}",
                    card.name
                );
            }
        }
        let moments: Vec<&String> = card.story.iter().map(|entry| &entry.at).collect();
        assert!(moments.is_sorted() && *moments.last().unwrap() <= &card.changed, "{}", card.name);
    }
    file::read(ENGLISH, file::write(&parts, 0).as_bytes()).unwrap();
}

#[test]
fn the_text_stands_alone() {
    for card in parts().iter().chain([&full(), &Card::default()]) {
        let text = text::plain(card, ENGLISH, 60);
        for line in text.lines() {
            assert!(line.chars().count() <= text::COLUMNS, "{line}");
            assert_eq!(line.trim_end(), line);
        }
        // Degrees and plus-minus are on every keyboard that matters, the rest is plain.
        let odd = text.chars().find(|sign| !sign.is_ascii() && !"°±".contains(*sign));
        assert_eq!(odd, None, "{text}");
        let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(text.contains("licensed engineer"), "{text}");
        assert!(text.contains(&format!("Biteband {}, tables {}", versions().0, versions().1)));
    }
    let text = text::plain(&parts()[0], ENGLISH, 60);
    let at = |part: &str| text.find(part).unwrap_or_else(|| panic!("{part}: {text}"));
    let places = [
        at("PART: Capstan pawl"),
        at("Steel: 4140"),
        at("Wanted: 50-54 HRC"),
        at("WHAT WAS DONE, IN ORDER"),
        at("10 Nov 2026 Hardened: 855 °C"),
        at("10 Nov 2026 Filed: 55 skates 2x, 60 bites"),
        at("11 Nov 2026 Tempered: 205 °C / 2 h"),
        at("WHAT WAS FOUND"),
        at("Found now: 50 skates 2x, 55 bites 2x"),
        at("That says: "),
        at("A file test is a judgement by hand"),
    ];
    assert!(places.is_sorted(), "{text}");
    let bar = text::plain(&parts()[4], ENGLISH, 60);
    assert!(!bar.contains("judgement by hand"), "no file touched it: {bar}");
}

#[test]
fn nothing_in_a_table_is_run_by_a_spreadsheet() {
    let mut card = full();
    for (sign, place) in ["=1+1", "+1", "-1", "@sum(a1)", "\tx"].iter().zip(0..) {
        let what = format!("{sign}, \"so\"\nand on");
        card.story.insert(place, Entry { what, said: (*sign).into(), ..Entry::default() });
    }
    card.name = "=HYPERLINK(\"http://example.invalid\")<script>".into();
    let table = csv::results(std::slice::from_ref(&card), ENGLISH);
    assert!(table.ends_with("\r\n"));
    let mut reader = ::csv::Reader::from_reader(table.as_bytes());
    assert_eq!(reader.headers().unwrap().iter().collect::<Vec<_>>(), csv::HEADINGS);
    let rows: Vec<::csv::StringRecord> = reader.records().collect::<Result<_, _>>().unwrap();
    // Eight entries and one answer of today.
    assert_eq!(rows.len(), 9);
    for row in &rows {
        assert_eq!(row.len(), 11);
        assert!(
            row.iter().all(|cell| !cell.starts_with(['=', '+', '-', '@', '\t', '\r'])),
            "{row:?}"
        );
        assert_eq!(&row[0], "'=HYPERLINK(\"http://example.invalid\")<script>");
    }
    assert_eq!(&rows[0][4], "'=1+1, \"so\"\nand on");
    let filed = rows.iter().find(|row| &row[3] == "filed").unwrap();
    assert_eq!(filed.iter().skip(6).take(3).collect::<Vec<_>>(), ["HRC", "53.2", "61.4"]);
    let now = rows.last().unwrap();
    assert_eq!(
        (&now[3], &now[4], &now[2]),
        ("now", "50 skates, 55 bites; 52, 53 HRC", "2026-11-12T14:03:00Z")
    );
}

proptest! {
    #[test]
    fn any_texts_are_told_without_panic(
        name in ".{0,40}", notes in ".{0,80}", target in ".{0,20}", size in ".{0,20}", paper in ".{0,20}",
    ) {
        let mut card = full();
        (card.name, card.notes, card.target) = (name, notes.clone(), target);
        card.section.size = size;
        card.claim.paper = paper;
        card.tempering.results = vec![ResultSheet { hardness: notes, ..ResultSheet::default() }];
        card.photos = vec![Photo::default()];
        card.seen = vec![card.name.clone(); 9];
        card.files = FileSheet { hand: card.name.clone(), ..card.files };
        let _ = (facts(&card, ENGLISH), story(&card, ENGLISH, 0), text::plain(&card, ENGLISH, 0));
        let _ = csv::results(std::slice::from_ref(&card), ENGLISH);
        prop_assert!(find::matches(&card, &card.name, ENGLISH));
    }
}
