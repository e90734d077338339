//! Worked cases of the bench about tempering and the next step, through the answers that the command line, the page and the
//! npm package all print.
//!
//! Numbers beside the checks are those of the sources named there; "common practice, no source" where there is none.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_bench::answer::{
    ConditionsInput, FileQuestion, NextQuestion, NextStepAnswer, StrokeInput, TemperAnswer,
    TemperQuestion, next, parse_reading, parse_strokes, temper,
};
use biteband_bench::section::SectionInput;
use biteband_bench::words::Language;

const ENGLISH: Language = Language::English;

#[expect(clippy::unnecessary_wraps, reason = "the fields of a question may be left out")]
fn text(text: &str) -> Option<String> {
    Some(text.to_owned())
}

fn tempered(question: &TemperQuestion) -> TemperAnswer {
    temper(ENGLISH, question).unwrap()
}

fn of(steel: &str) -> TemperQuestion {
    TemperQuestion { steel: text(steel), ..TemperQuestion::default() }
}

fn strokes(written: &str) -> Vec<StrokeInput> {
    parse_strokes(ENGLISH, written).unwrap()
}

fn filed(written: &str, target: &str, ground: Option<bool>) -> FileQuestion {
    FileQuestion {
        strokes: strokes(written),
        conditions: ConditionsInput { skin_ground: ground, ..ConditionsInput::default() },
        target: text(target),
        ..FileQuestion::default()
    }
}

fn read(reading: &str, target: &str) -> FileQuestion {
    FileQuestion {
        readings: vec![parse_reading(ENGLISH, reading).unwrap()],
        target: text(target),
        ..FileQuestion::default()
    }
}

fn none(target: &str) -> FileQuestion {
    FileQuestion { target: text(target), ..FileQuestion::default() }
}

fn after(steel: &str, evidence: FileQuestion, done: &[&str]) -> NextQuestion {
    NextQuestion {
        steel: text(steel),
        evidence,
        done: done.iter().map(|&one| one.to_owned()).collect(),
        ..NextQuestion::default()
    }
}

fn step(question: &NextQuestion) -> NextStepAnswer {
    let answer = next(ENGLISH, question).unwrap();
    let first = answer.options.first().unwrap();
    assert_eq!(first.action, answer.action);
    assert!(first.open, "what may not be done is not advised");
    // What can hurt or cannot be undone stands with the act.
    if matches!(answer.action, "temper" | "harden" | "grind") {
        assert!(!first.caution.is_empty() && !first.undone.is_empty(), "{first:?}");
    }
    answer
}

fn celsius(answer: &TemperAnswer) -> Vec<f64> {
    answer.plan.iter().map(|step| step.celsius).collect()
}

/// Common practice, no source: 4140, oil quenched and drawn near 220 °C for an hour or two, is at 50 to 55 HRC.
#[test]
fn the_pawl_after_its_first_temper() {
    for held in ["1h", "2h"] {
        let answer = tempered(&TemperQuestion { at: text("220C"), held: text(held), ..of("4140") });
        let found = answer.hardness.unwrap();
        assert!(found.low < 55.0 && found.high > 50.0, "{held}: {found:?}");
    }
}

/// Common practice, no source: from 50-55 back to the middle forties lies between 350 and 480 °C, on the far side of the range
/// that makes it brittle.
#[test]
fn the_pawl_drawn_back_to_the_middle_forties() {
    let question =
        TemperQuestion { target: text("44-47 HRC"), done: vec!["220C/2h".into()], ..of("4140") };
    let answer = tempered(&question);
    let plan = celsius(&answer);
    assert!(plan.iter().all(|at| (350.0..=480.0).contains(at)), "{plan:?}");
    assert!(answer.warnings.iter().any(|warning| warning.contains("brittle")), "{answer:?}");
    let next = step(&after("4140", filed("50:k,k 55:b,b", "44-47 HRC", Some(true)), &["220C/2h"]));
    assert_eq!(next.action, "temper");
    let at = next.options.first().unwrap().temper.as_ref().unwrap().celsius;
    assert!((350.0..=480.0).contains(&at), "{at}");
}

/// O1 punch, 64-65 as quenched, wants 58-60: low first, then small steps. Printed sheets have 60 to 62 HRC near 205 °C; a
/// practitioner's start is 190 °C with 10 to 15 °C more at a time.
#[test]
fn the_punch_is_drawn_back_in_small_steps() {
    let answer =
        tempered(&TemperQuestion { target: text("58-60 HRC"), held: text("1h"), ..of("O1") });
    let plan = celsius(&answer);
    assert!((185.0..=250.0).contains(&plan.first().copied().unwrap()), "{plan:?}");
    assert!((10.0..=25.0).contains(&answer.step_k.unwrap()));
    assert!(answer.fall_per_10k.unwrap() > 0.2 && answer.fall_per_10k.unwrap() < 1.0);
    assert!(plan.is_sorted());
    // Twice is advised for O1.
    assert_eq!(answer.plan.first().unwrap().times, 2);
}

/// Common practice, no source: a range that makes the steel brittle is gone past in one step where that leaves what is wanted,
/// also where a single sheet has the range (D2 and A2: 260 to 400 °C). The planner and the next step say the same.
#[test]
fn a_plan_stops_nowhere_inside_a_brittle_range_that_it_can_go_past() {
    for (steel, target) in
        [("D2", "54-56 HRC"), ("A2", "54-56 HRC"), ("O1", "50-52 HRC"), ("W1", "50-52 HRC")]
    {
        let answer = tempered(&TemperQuestion { target: text(target), ..of(steel) });
        let range = answer.brittle.first().unwrap();
        let first = celsius(&answer).first().copied().unwrap();
        assert!(first > range.core_high_c, "{steel}: {first} {range:?}");
        assert!(answer.warnings.iter().any(|one| one.contains("go past it in one step")));
        let question = NextQuestion { stage: text("quenched"), ..after(steel, none(target), &[]) };
        let advised = step(&question).options.first().unwrap().temper.clone().unwrap();
        assert!(advised.celsius > range.core_high_c, "{steel}: {advised:?}");
        // Nobody measured the part, so both expect the same of it.
        let (plan, next) = (&answer.plan.first().unwrap().expect, advised.expect.as_ref().unwrap());
        assert!((advised.celsius - first).abs() < 3.0, "{steel}: {first} {advised:?}");
        assert!((plan.low - next.low).abs() < 1.0 && (plan.high - next.high).abs() < 1.0);
    }
}

/// Common practice, no source: bars are sold annealed, or pre-hard at 28 to 34 HRC. What is wanted harder is hardened; what was
/// sold pre-hard and is soft is a matter between buyer and seller, and is not hardened to find out.
#[test]
fn a_bar_as_bought_is_hardened_for_work_that_no_bar_is_sold_for() {
    let bought = |steel, evidence| {
        step(&NextQuestion { stage: text("bought"), ..after(steel, evidence, &[]) })
    };
    for evidence in [none("58-60 HRC"), read("22 HRC", "58-60 HRC")] {
        let answer = bought("O1", evidence);
        assert_eq!((answer.action, answer.diagnosis), ("harden", "never_hardened"));
    }
    let answer = bought("4140", read("22 HRC", "28-32 HRC"));
    assert_eq!((answer.action, answer.diagnosis), ("change_target", "too_soft"));
    assert!(answer.why.contains("Do not harden a bought part to find out"), "{}", answer.why);
}

/// 304 is austenitic (EN 10088-1): no heat hardens it.
#[test]
fn nothing_is_hardened_that_does_not_harden() {
    let answer = step(&after("304", read("25 HRC", "40-45 HRC"), &[]));
    assert_eq!((answer.action, answer.diagnosis), ("change_plan", "out_of_reach"));
    assert!(!answer.options.iter().any(|one| one.action == "harden"));
    assert!(answer.why.contains("does not harden"), "{}", answer.why);
}

/// 4140 wanted at 38-40, tempered at 1100 °F, reads 32. Trade association notes: 1100 °F gives 305 HB, which is 32 HRC.
#[test]
fn gone_too_far() {
    let question = TemperQuestion { at: text("1100F"), held: text("2h"), ..of("4140") };
    let found = tempered(&question).hardness.unwrap();
    assert!(found.low < 32.0 && found.high > 32.0, "{found:?}");
    let answer = step(&after("4140", read("32 HRC", "38-40 HRC"), &["1100F/2h"]));
    assert_eq!((answer.action, answer.diagnosis), ("harden", "gone_too_far"));
    assert!(!answer.options.iter().any(|one| one.action == "temper"));
    // The same notes have 39 to 40 HRC at 900 °F (482 °C).
    let again = answer.options.first().unwrap().temper.as_ref().unwrap().celsius;
    assert!((420.0..=500.0).contains(&again), "{again}");
}

/// O1 form tool, quenched from the magnet point; the 40 file bites.
#[test]
fn did_not_harden() {
    let quenched = |ground| NextQuestion {
        stage: text("quenched"),
        ..after("O1", filed("40:b,b 45:b", "58-62 HRC", ground), &[])
    };
    let answer = step(&quenched(None));
    assert_eq!((answer.action, answer.diagnosis), ("grind", "not_hard"));
    let answer = step(&quenched(Some(true)));
    assert_eq!(answer.action, "harden");
    assert!(answer.why.contains("not hot enough"), "{}", answer.why);
}

/// A soft skin over hard steel: ground off, the files skate, and it is only tempered.
#[test]
fn soft_skin_over_hard_steel() {
    let question = |written, ground| NextQuestion {
        stage: text("quenched"),
        ..after("1084", filed(written, "56-60 HRC", ground), &[])
    };
    assert_eq!(step(&question("50:b 55:b 60:b", Some(false))).action, "grind");
    assert_eq!(step(&question("55:k 60:k,k 65:k", Some(true))).action, "temper");
}

/// An ordinary file skates after the quench and bites after 205 °C, twice an hour: as expected, no failure.
#[test]
fn one_ordinary_file() {
    let evidence = FileQuestion {
        set: vec![63.0],
        tolerance: Some(3.0),
        ..filed("63:b,b", "57-62 HRC", Some(true))
    };
    let answer = step(&after("1084", evidence, &["2x 205C/1h"]));
    assert_eq!(answer.action, "accept", "{answer:?}");
}

/// As quenched the 65 file skates: temper it today.
#[test]
fn as_quenched_is_tempered_today() {
    let question = NextQuestion {
        stage: text("quenched"),
        ..after("W1", filed("65:k,k", "60-63 HRC", Some(true)), &[])
    };
    let answer = step(&question);
    assert_eq!(answer.action, "temper");
    assert!(answer.notes.iter().any(|note| note.contains("today")));
    let tonight = step(&NextQuestion { hurried: true, ..question });
    assert_eq!(tonight.action, "snap_temper");
}

/// A part at its size is not hardened again, whatever it lacks.
#[test]
fn at_its_size_it_stays() {
    let question =
        NextQuestion { at_size: true, ..after("4140", read("32 HRC", "38-40 HRC"), &["1100F/2h"]) };
    let answer = step(&question);
    assert_ne!(answer.action, "harden");
    assert!(answer.options.iter().any(|one| one.action == "harden" && !one.open));
}

/// Contradictory files are cleared up first.
#[test]
fn contradictory_files() {
    let evidence = filed("40:k 45:b,b 50:k,k 55:b 60:b", "44-48 HRC", Some(true));
    assert_eq!(step(&after("O1", evidence, &["400C/1h"])).action, "clear_up");
}

/// 4140, 50 mm round in oil, 58 HRC wanted: no quench gets it there. Modern Steels and Their Properties (recalled) has about 49
/// HRC at the skin.
#[test]
fn what_the_section_does_not_reach() {
    let question = NextQuestion {
        stage: text("quenched"),
        section: SectionInput { round: text("50mm"), ..SectionInput::default() },
        quench: text("oil"),
        ..after("4140", read("49 HRC", "60-62 HRC"), &[])
    };
    assert_eq!(step(&question).action, "change_plan");
}

/// Spring strip, 1075: about 45-50 HRC comes from the middle of the range.
/// Common practice, no source: springs of carbon steel are drawn at 350 to 450 °C.
#[test]
fn strip_springs() {
    let answer =
        tempered(&TemperQuestion { target: text("45-49 HRC"), held: text("1h"), ..of("1075") });
    let plan = celsius(&answer);
    assert!(plan.iter().all(|at| (320.0..=460.0).contains(at)), "{plan:?}");
    // Plain carbon steel: the colour is told with its temperature, as a check.
    let low = tempered(&TemperQuestion { at: text("230C"), held: text("5min"), ..of("1075") });
    assert!(low.colour.is_some_and(|colour| colour.contains("°C") && colour.contains("straw")));
    assert!(tempered(&TemperQuestion { at: text("230C"), ..of("O1") }).colour.is_none());
}

/// A temperature without its unit is asked about, with both readings.
#[test]
fn a_temperature_without_a_unit() {
    let question = TemperQuestion { at: text("400"), ..of("4140") };
    let refusal = temper(ENGLISH, &question).unwrap_err();
    assert_eq!(refusal.code, "bench.unreadable_unit");
    assert!(refusal.message.contains("400 °C") && refusal.message.contains("400 °F"));
    // 25 °F of difference is 14 K; 25 °F of temperature is no temper at all.
    let cold = TemperQuestion { at: text("25F"), ..of("4140") };
    assert_eq!(temper(ENGLISH, &cold).unwrap_err().code, "temper.temperature_outside");
}

/// Several tempers: the hottest decides, a later cooler one changes nothing and it is said.
#[test]
fn later_cooler_tempers_change_nothing() {
    let one = tempered(&TemperQuestion { at: text("400C/2h"), ..of("4140") });
    let both = tempered(&TemperQuestion {
        at: text("400C/2h"),
        then: vec!["250C/2h".into()],
        ..of("4140")
    });
    let median = |answer: &TemperAnswer| answer.hardness.as_ref().unwrap().median;
    assert!((median(&one) - median(&both)).abs() < 0.2);
    assert!(both.notes.iter().any(|note| note.contains("next to nothing")), "{:?}", both.notes);
    let twice = tempered(&TemperQuestion { at: text("2x 400C/2h"), ..of("4140") });
    assert!(median(&twice) < median(&one));
}

/// An own result moves the plan, is told in plain words, and can be left out.
#[test]
fn the_last_part_came_out_soft() {
    let book = TemperQuestion { target: text("48-52 HRC"), held: text("2h"), ..of("4140") };
    let learnt = TemperQuestion { learn: vec!["49 HRC@220C/2h".into()], ..book.clone() };
    let (book, learnt) = (tempered(&book), tempered(&learnt));
    assert!(celsius(&learnt).first() < celsius(&book).first(), "{learnt:?}");
    let learned = learnt.learned.unwrap();
    assert!(learned.text.iter().any(|text| text.contains("softer than the book")), "{learned:?}");
    assert!(learned.offset_hrc < 0.0 && learned.oven_k > 0.0);
}

/// Tool steels: printed sheets, disagreeing ones shown as such, never beyond their ends.
#[test]
fn printed_curves_of_tool_steels() {
    let h13 = tempered(&TemperQuestion { at: text("2x 650C/2h"), ..of("H13") });
    assert!(h13.warnings.iter().any(|warning| warning.contains("disagree")), "{:?}", h13.warnings);
    assert!(h13.sheets.len() > 1);
    let beyond = temper(ENGLISH, &TemperQuestion { at: text("740C/2h"), ..of("O1") }).unwrap_err();
    assert!(beyond.code.starts_with("temper."), "{beyond:?}");
    assert!(!beyond.instead.is_empty());
}

/// Steel that turns brittle on a slow cooling is told the range: 375 to 575 °C for steels with manganese or nickel and chromium
/// and without molybdenum (from memory; `embrittling.csv`).
#[test]
fn slow_cooling_names_its_range() {
    let own = TemperQuestion {
        composition: text("C=0.4,Mn=0.85,Cr=1"),
        at: text("450C/1h"),
        ..TemperQuestion::default()
    };
    let answer = tempered(&own);
    let told = |text: &String| text.contains("375 – 575 °C") && text.contains("cool in water");
    assert!(answer.warnings.iter().any(told), "{:?}", answer.warnings);
}

/// A part that was tempered hotter than the brittle range is not told to step past it.
#[test]
fn a_brittle_range_that_lies_behind_is_not_stepped_over() {
    let ahead = TemperQuestion { target: text("30-34 HRC"), held: text("1h"), ..of("4140") };
    let behind = TemperQuestion { done: vec!["540C/1h".into()], ..ahead.clone() };
    let steps_over = |question: &TemperQuestion| {
        tempered(question).warnings.iter().any(|text| text.contains("On the way lies"))
    };
    assert!(steps_over(&ahead) && !steps_over(&behind));
}

/// H900 of 17-4PH is one hour at 482 °C (AMS 5604): eight are refused in whatever way they are written.
#[test]
fn the_time_of_an_age_counts_however_it_is_written() {
    for at in ["482C/8h", "482C 8h", "482C @ 8h", "482C for 8h"] {
        let question = TemperQuestion { at: text(at), ..of("17-4PH") };
        assert!(temper(ENGLISH, &question).is_err(), "{at}");
    }
    for at in ["482C/1h", "482C 1h", "482C"] {
        let answer = tempered(&TemperQuestion { at: text(at), ..of("17-4PH") });
        assert_eq!(answer.ages.first().unwrap().name, "H900", "{at}");
    }
}
