//! Between the pages and the card: what was typed comes back as it was, and what was found before a heat is history.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use biteband_bench::card::{
    Card, EntryKind, SaidOf, Sheets, Standing, again, facts, file, moment, moment_ms, said,
    said_of_card,
};
use biteband_bench::format::Units;
use biteband_bench::state::{
    Action, App, ClaimAction, ClaimField, Field, HandChoice, PartAction, PartField, PartStage,
    Saved, SteelAction, SteelField, TemperAction, TemperField, UnknownField, reduce, text,
};
use biteband_bench::view::hand;
use biteband_bench::words::{FactLabel, Language};

/// 2026-03-02 14:00 UTC.
const NOON: i64 = 1_772_460_000_000;

fn act(app: &App, action: impl Into<Action>) -> App {
    reduce(app, action.into())
}

fn type_in(app: &App, field: Field, text: &str) -> App {
    reduce(app, Action::Edit(field, text.into()))
}

fn stroke(app: &App, grade: f64, outcome: &'static str) -> App {
    reduce(app, Action::Stroke { grade, outcome })
}

/// The pawl of the boatyard, as typed on the pages.
fn pawl() -> App {
    let mut app = act(&App::default(), PartAction::Ready);
    for (field, text) in [
        (Field::Part(PartField::Name), "Capstan pawl"),
        (Field::Part(PartField::Origin), "offcut from bar 7"),
        (Field::Part(PartField::Notes), "Chamfer the nose.\nFit to the wheel."),
        (Field::Steel(SteelField::Query), "4140"),
        (Field::Steel(SteelField::Size), "50 mm"),
        (Field::Steel(SteelField::Length), "80 mm"),
        (Field::Steel(SteelField::Litres), "14 L"),
        (Field::Steel(SteelField::BathTemperature), "35 °C"),
        (Field::Target, "50-54 HRC"),
        (Field::Temper(TemperField::AsQuenched), "56 HRC"),
    ] {
        app = type_in(&app, field, text);
    }
    app = act(&app, Action::Steel(SteelAction::Movement("good")));
    app = act(&app, Action::Saw(UnknownField::Spark, "forks"));
    app = stroke(&stroke(&app, 55.0, "skates"), 60.0, "bites");
    act(&app, PartAction::Begin { id: "pawl-0001".into(), now_ms: NOON })
}

#[test]
fn what_stands_on_the_pages_is_the_card() {
    let card = Card::of(&pawl().saved);
    assert_eq!((card.id.as_str(), card.name.as_str()), ("pawl-0001", "Capstan pawl"));
    assert_eq!(card.created, "2026-03-02T14:00:00Z");
    assert_eq!(
        (card.steel.name.as_str(), card.steel.origin.as_str()),
        ("4140", "offcut from bar 7")
    );
    assert_eq!((card.section.size.as_str(), card.section.length.as_str()), ("50 mm", "80 mm"));
    assert_eq!((card.bath.litres.as_str(), card.bath.movement.as_str()), ("14 L", "good"));
    assert_eq!(card.target, "50-54 HRC");
    assert_eq!(card.tempering.as_quenched, "56 HRC");
    assert_eq!(card.files.strokes.len(), 2);
    assert_eq!(card.seen[UnknownField::Spark as usize], "forks");
    assert!(card.notes.ends_with("Fit to the wheel."));
}

#[test]
fn a_card_that_is_put_away_and_taken_again_stands_as_it_stood() {
    let app = pawl();
    let app = act(&app, PartAction::Tempered("205C/2h".into()));
    let app = stroke(&app, 55.0, "bites");
    let app = act(&app, PartAction::Stamp(NOON));
    let card = Card::of(&app.saved);
    let away = act(&app, PartAction::PutAway(None));
    assert!(!away.saved.part.in_hand());
    assert_eq!(away.saved.steel.query, "");
    assert_eq!(away.saved.part.text(PartField::Name), "");
    let back = act(&away, PartAction::Take(Box::new(card.clone())));
    assert_eq!(Card::of(&back.saved), card);
    assert_eq!(back.saved.file_test.target_text, "50-54 HRC");
    assert_eq!(back.saved.steel.target, "50-54 HRC");
}

#[test]
fn what_was_begun_to_be_typed_waits_for_the_part_to_come_back() {
    let begun = [
        (Field::Part(PartField::ZonePlace), "struck end"),
        (Field::Part(PartField::ZoneTarget), "45 HRC max"),
        (Field::Part(PartField::Remark), "Ran hot on"),
        (Field::Part(PartField::Hardened), "845 °C, oil at"),
        (Field::Part(PartField::Tempered), "205C/"),
        (Field::Reading, "52, 5"),
    ];
    let app = begun.iter().fold(pawl(), |app, (field, text)| type_in(&app, *field, text));
    let app = type_in(&app, Field::PriorSd, "3.5");
    let card = Card::of(&app.saved);
    let other = act(&app, PartAction::Take(Box::new(Card::of(&bar().saved))));
    for (field, _) in begun {
        assert_eq!(text(&other, field), "", "{field:?} belongs to the other part");
    }
    assert_ne!(text(&other, Field::PriorSd), "3.5");
    let back = act(&other, PartAction::Take(Box::new(card.clone())));
    for (field, typed) in begun {
        assert_eq!(text(&back, field), typed);
    }
    assert_eq!(Card::of(&back.saved), card);
    let told = facts(&card, Language::English);
    let told = told.iter().find(|fact| fact.of == FactLabel::Typed).unwrap();
    for (_, typed) in begun {
        assert!(told.text.contains(typed), "{}", told.text);
    }
    // What another part is made after is done; what is only begun is not among it.
    assert!(card.as_recipe("part-0009", "Second", NOON).begun.is_empty());
}

#[test]
fn a_part_that_goes_on_as_a_second_one_has_a_name_that_can_be_read_again() {
    let app = type_in(&pawl(), Field::Part(PartField::Name), &"x".repeat(file::MOST_NAME));
    let app = act(&app, PartAction::Fork("pawl-0002".into()));
    let card = Card::of(&app.saved);
    assert!(card.name.ends_with("… (2)"), "{}", card.name);
    assert_eq!(
        file::read(Language::English, file::write(std::slice::from_ref(&card), NOON).as_bytes())
            .unwrap(),
        [card]
    );
}

#[test]
fn the_quick_look_up_comes_back_whole_and_the_shop_s_own_things_stay() {
    let mut quick = type_in(&App::default(), Field::Target, "58 HRC min");
    quick = stroke(&stroke(&quick, 65.0, "skates"), 60.0, "skates");
    quick = act(&quick, Action::Undo);
    let sheets = Sheets::of(&quick.saved);
    let card = Card::of(&pawl().saved);
    let mut app = act(&quick, PartAction::Take(Box::new(card)));
    app = type_in(&app, Field::Steel(SteelField::Dial), "240 °C");
    app = type_in(&app, Field::Steel(SteelField::Truth), "231.9 °C");
    app = act(&app, Action::Steel(SteelAction::AddCheck));
    let back = act(&app, PartAction::PutAway(Some(Box::new(sheets))));
    assert_eq!(back.saved.file_test, quick.saved.file_test);
    assert_eq!(back.saved.steel.target, "");
    assert_eq!(back.saved.steel.checks.len(), 1, "the oven is the shop's, not the part's");
}

#[test]
fn the_person_s_files_and_hand_stay_when_a_part_is_put_away() {
    let own = type_in(&App::default(), Field::Grades, "62 58 50");
    let own = act(&own, Action::SetHand(HandChoice::Careful));
    let part = act(&own, PartAction::Begin { id: "pin-0001".into(), now_ms: NOON });
    let away = act(&stroke(&part, 58.0, "bites"), PartAction::PutAway(None));
    assert!(away.saved.file_test.now.strokes.is_empty());
    assert_eq!(away.saved.file_test.grades, [62.0, 58.0, 50.0]);
    assert_eq!(away.saved.file_test.hand, HandChoice::Careful);
    // A card with nothing found brings no other files, one with strokes those that made them.
    let bare = Card { id: "pin-0003".into(), ..Card::of(&App::default().saved) };
    let taken = act(&away, PartAction::Take(Box::new(bare)));
    assert_eq!(taken.saved.file_test.grades_text, "62 58 50");
    let taken = act(&away, PartAction::Take(Box::new(Card::of(&pawl().saved))));
    assert_eq!(taken.saved.file_test.grades.len(), 6);
    // A new part is tested with the same files.
    let next = act(&away, PartAction::BeginEmpty { id: "pin-0002".into(), now_ms: NOON });
    assert_eq!(next.saved.file_test.grades_text, "62 58 50");
}

#[test]
fn what_was_found_before_a_temper_is_history_and_the_tempers_add_up() {
    let app = act(&pawl(), PartAction::Tempered("205C/2h".into()));
    assert!(app.saved.file_test.now.strokes.is_empty());
    let app = stroke(&stroke(&app, 50.0, "skates"), 55.0, "bites");
    let app = type_in(&app, Field::Part(PartField::Tempered), "230C/2h");
    let app = act(&app, PartAction::AddTempered);
    assert_eq!(app.saved.temper.text(TemperField::Done), "205C/2h, 230C/2h");
    assert_eq!(app.saved.temper.planner().stage, PartStage::Tempered);
    let story = Card::of(&app.saved).story;
    let kinds: Vec<EntryKind> = story.iter().map(|entry| entry.kind).collect();
    let (filed, tempered) = (EntryKind::Filed, EntryKind::Tempered);
    assert_eq!(kinds, [filed, tempered, filed, tempered]);
    assert_eq!(story[0].what, "55 skates, 60 bites");
    assert!(!story[0].app.is_empty() && !story[0].data.is_empty());
    // The band is the same that the page said, and what lies between the two files is in it.
    let (low, high) = (story[0].low.unwrap(), story[0].high.unwrap());
    assert!(low < 55.0 && high > 60.0, "{low} {high}");
    assert_eq!(story[0].files.as_ref().unwrap().strokes.len(), 2);
}

#[test]
fn hardened_again_no_temper_counts_any_more() {
    let app = act(&pawl(), PartAction::Tempered("205C/2h".into()));
    let app = act(&app, PartAction::Hardened("855 °C, 40 min, oil".into()));
    assert_eq!(app.saved.temper.text(TemperField::Done), "");
    assert_eq!(app.saved.temper.planner().stage, PartStage::Quenched);
    assert_eq!(Card::of(&app.saved).story.len(), 3);
}

#[test]
fn a_file_test_that_is_cleared_is_history_until_it_is_taken_back() {
    let app = pawl();
    let cleared = act(&app, Action::StartAgain);
    assert_eq!(Card::of(&cleared.saved).story.len(), 1);
    assert!(cleared.saved.file_test.now.strokes.is_empty());
    let back = act(&cleared, Action::Undo);
    assert!(Card::of(&back.saved).story.is_empty());
    assert_eq!(Card::of(&back.saved).files, Card::of(&app.saved).files);
}

#[test]
fn moments_are_named_once_and_entries_come_back() {
    let app = type_in(&pawl(), Field::Part(PartField::Remark), "Scale on the nose.");
    let app = act(&act(&app, PartAction::AddRemark), PartAction::Stamp(NOON));
    let app = act(&app, PartAction::Stamp(NOON + 86_400_000));
    assert_eq!(Card::of(&app.saved).story[0].at, "2026-03-02T14:00:00Z");
    let gone = act(&app, PartAction::RemoveEntry(0));
    assert!(Card::of(&gone.saved).story.is_empty());
    let back = act(&gone, PartAction::PutBackEntry);
    assert_eq!(Card::of(&back.saved), Card::of(&app.saved));
    // An empty field asks for its text.
    let empty = act(&back, PartAction::AddRemark);
    assert_eq!(empty.session.missing, Some(Field::Part(PartField::Remark)));
}

#[test]
fn zones_are_kept_and_forgotten_without_loss() {
    let app = act(&pawl(), PartAction::AddZone);
    assert_eq!(app.session.missing, Some(Field::Part(PartField::ZonePlace)));
    let app = type_in(&app, Field::Part(PartField::ZonePlace), "struck end");
    let app = type_in(&app, Field::Part(PartField::ZoneTarget), "45 HRC max");
    let app = act(&app, PartAction::AddZone);
    let zones = Card::of(&app.saved).zones;
    assert_eq!((zones[0].place.as_str(), zones[0].target.as_str()), ("struck end", "45 HRC max"));
    let gone = act(&app, PartAction::RemoveZone(0));
    assert!(Card::of(&gone.saved).zones.is_empty());
    assert_eq!(gone.saved.part.text(PartField::ZoneTarget), "45 HRC max");
}

#[test]
fn a_recipe_takes_what_is_to_be_done_and_nothing_that_was_found() {
    let app = act(&pawl(), PartAction::Tempered("205C/2h".into()));
    let app = stroke(&app, 55.0, "bites");
    let card = Card::of(&app.saved);
    let copy = card.as_recipe("pawl-0002", "Capstan pawl 2", NOON);
    assert_eq!((copy.steel.clone(), copy.target.as_str()), (card.steel.clone(), "50-54 HRC"));
    assert_eq!((copy.recipe_of.as_str(), copy.recipe.len()), ("Capstan pawl", 2));
    assert!(copy.story.is_empty() && copy.files.is_empty() && copy.tempering.done.is_empty());
    assert_eq!(copy.tempering.stage, "bought");
}

#[test]
fn results_of_tempering_stay_with_the_part_and_with_the_shop() {
    let app = type_in(&pawl(), Field::Temper(TemperField::Measured), "53 HRC");
    let app = type_in(&app, Field::Temper(TemperField::After), "220 °C / 2 h");
    let app = act(&app, TemperAction::AddResult);
    let card = Card::of(&app.saved);
    assert_eq!(card.tempering.results[0].hardness, "53 HRC");
    let away = act(&app, PartAction::PutAway(None));
    assert_eq!(away.saved.temper.planner().results.len(), 1, "the oven is the shop's");
    // On another device the results come with the card.
    let other = act(&App::default(), PartAction::Take(Box::new(card)));
    assert_eq!(other.saved.temper.planner().results.len(), 1);
    let gone = act(&other, TemperAction::RemoveResult(0));
    assert!(Card::of(&gone.saved).tempering.results.is_empty());
}

#[test]
fn the_card_says_how_the_part_stands_and_who_says_so() {
    let app = pawl();
    let now = said(&app, Language::English);
    assert_eq!(now[0].standing, Standing::NotProved);
    assert!(now[0].text.contains("HRC") && !now[0].data.is_empty());
    let odd = stroke(&stroke(&app, 40.0, "bites"), 40.0, "bites");
    assert_eq!(said(&odd, Language::English)[0].standing, Standing::Contradictory);
    assert!(said(&App::default(), Language::English).is_empty());
}

#[test]
fn the_card_is_written_and_read_without_loss() {
    let app = act(&pawl(), PartAction::Tempered("205C/2h".into()));
    let card = Card { said: said(&app, Language::English), ..Card::of(&app.saved) };
    let text = serde_json::to_string(&card).unwrap();
    assert_eq!(serde_json::from_str::<Card>(&text).unwrap(), card);
    let odd = text.replacen("\"name\"", "\"nmae\"", 1);
    assert!(serde_json::from_str::<Card>(&odd).is_err(), "a slip in a name is not passed over");
}

#[test]
fn moments_agree_with_the_calendar() {
    // date -u -d "2026-11-12 14:03" +%s of GNU coreutils: 1794492180.
    assert_eq!(moment(1_794_492_180_000), "2026-11-12T14:03:00Z");
    assert_eq!(moment_ms("2026-11-12T14:03:00Z"), Some(1_794_492_180_000));
    assert_eq!(moment_ms("2026-11-12T15:03:00+01:00"), Some(1_794_492_180_000));
    assert_eq!(moment_ms("12 Nov"), None);
    assert_eq!(moment(i64::MAX), "");
}

#[test]
fn a_wanted_hardness_is_one_for_the_part_and_two_without() {
    let app = type_in(&pawl(), Field::Steel(SteelField::Target), "52 HRC");
    assert_eq!(app.saved.file_test.target_text, "52 HRC");
    let quick = type_in(&App::default(), Field::Steel(SteelField::Target), "52 HRC");
    assert_eq!(quick.saved.file_test.target_text, "");
}

#[test]
fn the_top_of_every_page_names_the_part_its_steel_and_what_is_wanted_or_claimed() {
    let line = |app: &App| hand(app, Language::English).line;
    assert_eq!(hand(&pawl(), Language::English).name, "Capstan pawl");
    assert_eq!(line(&pawl()), "4140 · wants 50-54 HRC");
    // A bare number counts as HRC, and stands so; the field keeps what was typed.
    let bare = type_in(&pawl(), Field::Target, "50-54");
    assert_eq!(line(&bare), "4140 · wants 50-54 HRC");
    assert_eq!(bare.saved.file_test.target_text, "50-54");
    let unwanted = type_in(&bar(), Field::Target, "");
    assert_eq!(line(&unwanted), "4140 · paper says 28-32 HRC");
    let nameless = type_in(&pawl(), Field::Part(PartField::Name), " ");
    assert_eq!(hand(&nameless, Language::English).name, "Part without a name");
    assert_eq!(line(&App::default()), "Quick look-up");
}

#[test]
fn without_a_part_in_hand_no_card_changes() {
    let app = App::default();
    for action in [
        PartAction::AddZone,
        PartAction::AddRemark,
        PartAction::Tempered("205C/2h".into()),
        PartAction::RemoveEntry(0),
    ] {
        assert_eq!(act(&app, action).saved, Saved::default());
    }
}

/// A pre-hard bar whose paper says 28-32 HRC, read once.
fn bar() -> App {
    let app = type_in(&pawl(), Field::Claim(ClaimField::Says), "28-32 HRC");
    let app = type_in(&app, Field::Claim(ClaimField::Measured), "288 HBW +-8");
    let app = act(&app, ClaimAction::AddReading);
    act(&app, ClaimAction::Place("skin"))
}

#[test]
fn a_claim_is_part_of_the_card_and_comes_back() {
    let app = bar();
    let card = Card::of(&app.saved);
    assert_eq!((card.claim.paper.as_str(), card.claim.place.as_str()), ("28-32 HRC", "skin"));
    assert_eq!(card.claim.readings[0].text, "288 HBW +-8");
    let says = said_of_card(&card, Language::English);
    assert_eq!((says[1].of, says[1].scale.as_str()), (SaidOf::Claim, "HRC"));
    let other = act(&App::default(), PartAction::Take(Box::new(card.clone())));
    assert_eq!(Card::of(&other.saved).claim, card.claim);
    assert_eq!(other.saved.claim, app.saved.claim);
    for rule in ["simple", "U", "guarded:0.9", "3sigma"] {
        let mut ruled = card.clone();
        ruled.claim.rule = rule.into();
        let back = act(&App::default(), PartAction::Take(Box::new(ruled)));
        assert_eq!(Card::of(&back.saved).claim.rule, rule);
    }
}

#[test]
fn a_card_speaks_in_the_units_of_its_paper_wherever_it_is_read() {
    // ISO 18265 Table A.1: 285 HB is 965 MPa and 295 HB is 995, so 290 is 980 MPa or 142 ksi.
    for (paper, says, never) in
        [("145 ksi min", "142 ksi", "MPa"), ("1000 MPa min", "980 MPa", "ksi")]
    {
        let app = type_in(&pawl(), Field::Claim(ClaimField::Says), paper);
        let app = type_in(&app, Field::Claim(ClaimField::Measured), "290 HBW");
        let mut app = act(&app, ClaimAction::AddReading);
        for units in [Units::Metric, Units::Inch] {
            app.saved.settings.units = units;
            let said = said_of_card(&Card::of(&app.saved), Language::English).remove(1).text;
            assert!(said.contains(says) && !said.contains(never), "{said}");
            let story = Card::of(&act(&app, ClaimAction::Turn).saved).story;
            assert_eq!(story[0].said, said, "history says what was said");
        }
    }
}

#[test]
fn a_card_judges_its_paper_as_the_page_of_claims_does() {
    let counted = act(&bar(), ClaimAction::Files(true));
    // A reading beside the strokes does not count a second time.
    let read = type_in(&counted, Field::Reading, "30 HRC");
    let read = act(&read, Action::AddReading);
    let of = |app: &App| said_of_card(&Card::of(&app.saved), Language::English)[1].text.clone();
    assert_eq!(of(&counted), of(&read));
    // A comparison is kept with the piece it was compared with.
    let app = type_in(&bar(), Field::Claim(ClaimField::Measured), "29 30 HRC; 31 HRC; 31 31");
    let app = act(&act(&app, ClaimAction::Instrument("comparison")), ClaimAction::AddReading);
    let card = Card::of(&app.saved);
    assert_eq!(card.claim.readings.len(), 2);
    let story = Card::of(&act(&app, ClaimAction::Turn).saved).story;
    assert_eq!(story.len(), 1, "it can be said, so it is history");
    let mut parted = card.clone();
    parted.claim.readings[1].text = "29 30 HRC".into();
    parted.claim.readings[1].known = "31 HRC".into();
    parted.claim.readings[1].on_known = "31 31".into();
    let back = act(&App::default(), PartAction::Take(Box::new(parted)));
    assert_eq!(Card::of(&back.saved).claim, card.claim);
}

#[test]
fn a_claim_that_counts_the_files_is_said_again_with_them() {
    let turned = act(&act(&bar(), ClaimAction::Files(true)), ClaimAction::Turn);
    let card = Card::of(&turned.saved);
    assert_eq!(card.story[0].files.as_ref().map(|files| files.strokes.len()), Some(2));
    assert!(card.story[0].test().is_none(), "the strokes are those of the test that goes on");
    let again = again(&card, 0, Language::English).unwrap();
    assert!(again.same, "{}", again.text);
}

#[test]
fn a_claim_that_gives_way_to_another_is_history_until_it_is_taken_back() {
    let app = bar();
    let turned = act(&app, ClaimAction::Turn);
    let story = Card::of(&turned.saved).story;
    assert_eq!(
        (story.len(), story[0].kind, story[0].what.as_str()),
        (1, EntryKind::Claimed, "28-32 HRC")
    );
    assert_eq!(story[0].claim.as_ref(), Some(&Card::of(&app.saved).claim));
    assert!(!story[0].said.is_empty() && story[0].low.is_some());
    let back = act(&turned, ClaimAction::Turn);
    assert!(Card::of(&back.saved).story.is_empty());
    assert_eq!(Card::of(&back.saved).claim, Card::of(&app.saved).claim);
}
