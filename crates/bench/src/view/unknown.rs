//! The page of unknown bars: one test after the other, and what they make of the bar.

use std::fmt::Write as _;

use biteband_evidence::unknown::{Fracture, Magnet, Skin, Spark, Test};

use super::section::{BandRow, BandView};
use super::{Chip, Problem};
use crate::answer::{UnknownAnswer, UnknownCarbon, UnknownQuestion, readable, unknown as answered};
use crate::format::{self, tenth};
use crate::state::{App, Field, UnknownField};
use crate::words::{Language, Unknown, UnknownPage};

/// Families that have a line of their own, as far as they reach this share of a hundred.
const LINES: usize = 5;
const LEAST_PERCENT: u32 = 3;

/// Bands of a set of files as questions have them; files of the trade set divide there.
const BANDS: [(&str, UnknownPage); 6] = [
    ("<40 HRC", UnknownPage::Below40),
    ("40-45 HRC", UnknownPage::From40),
    ("45-50 HRC", UnknownPage::From45),
    ("50-55 HRC", UnknownPage::From50),
    ("55-60 HRC", UnknownPage::From55),
    (">60 HRC", UnknownPage::Over60),
];

/// Everything the page shows.
#[derive(Clone, Debug, PartialEq)]
pub struct UnknownView {
    /// The tests, in the order of their cost.
    pub steps: Vec<TestView>,
    /// In large letters.
    pub verdict: String,
    /// What stands below it.
    pub say: Vec<String>,
    /// Whether clues contradict each other.
    pub conflict: bool,
    /// What may be behind a contradiction, likeliest first.
    pub causes: Vec<String>,
    /// What is said when no test is worth its trouble any more.
    pub settled: Option<String>,
    /// The carbon on its rule; nothing where a coupon would not tell it.
    pub carbon: Option<BandView>,
    /// Families with their shares; empty before the first answer and while clues contradict each other.
    pub families: Vec<FamilyRow>,
    /// Bath and promised hardness; empty likewise.
    pub quench: Vec<String>,
    /// What the bar is good for.
    pub uses: Vec<String>,
    /// What not to make of it.
    pub avoid: Vec<String>,
    /// What it is never for.
    pub caution: String,
    /// What has to be known of this bar.
    pub notes: Vec<String>,
    /// What it rests on, and where that stands.
    pub why: Vec<String>,
    /// What a tap does that puts another bar in hand; nothing where there is none.
    pub turn: Option<UnknownPage>,
}

/// A test with its answers.
#[derive(Clone, Debug, PartialEq)]
pub struct TestView {
    /// Which.
    pub field: UnknownField,
    /// Its name.
    pub title: String,
    /// Its answer so far.
    pub said: Option<String>,
    /// How it is done.
    pub how: String,
    /// What it is good for.
    pub why: String,
    /// Where it can hurt.
    pub cautions: Vec<String>,
    /// Its answers.
    pub choices: Vec<Chip>,
    /// Whether a hardness may be typed.
    pub typed: bool,
    /// What is wrong with what was typed.
    pub problem: Option<Problem>,
    /// Whether it is the one to do next.
    pub next: bool,
    /// Whether it stands open.
    pub open: bool,
}

/// A family and its share.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FamilyRow {
    /// Name.
    pub name: String,
    /// Share of a hundred.
    pub percent: u32,
}

const fn test_of(field: UnknownField) -> Test {
    match field {
        UnknownField::Magnet => Test::Magnet,
        UnknownField::Spark => Test::Spark,
        UnknownField::Found => Test::Found,
        UnknownField::Skin => Test::Skin,
        UnknownField::Oil => Test::CouponOil,
        UnknownField::Snap => Test::Snap,
        UnknownField::Water => Test::CouponWater,
    }
}

/// Makes the page.
#[must_use]
pub fn unknown(app: &App, language: Language) -> UnknownView {
    let seen = &app.saved.unknown.now;
    let label = |label: UnknownPage| language.unknown_page(label).to_owned();
    // What cannot be read is left out, so that the rest still says what it can.
    let problem = |field: UnknownField| {
        let text = seen.text(field).trim();
        if text.is_empty() { None } else { readable(language, test_of(field), text).err() }
    };
    let given = |field: UnknownField| {
        let text = seen.text(field).trim();
        (!text.is_empty() && problem(field).is_none()).then(|| text.to_owned())
    };
    let question = UnknownQuestion {
        magnet: given(UnknownField::Magnet),
        spark: given(UnknownField::Spark),
        found: given(UnknownField::Found),
        skin: given(UnknownField::Skin),
        oil: given(UnknownField::Oil),
        water: given(UnknownField::Water),
        snap: given(UnknownField::Snap),
        units: app.saved.settings.units,
    };
    let nothing = question == UnknownQuestion { units: question.units, ..Default::default() };
    // Every text that is handed on was found readable.
    let Ok(answer) = answered(language, &question) else { return empty(&label) };
    let steps = UnknownField::ALL.into_iter().map(|field| {
        let typing = app.session.active == Some(Field::Unknown(field));
        let refused = problem(field).filter(|_| !typing);
        let text = seen.text(field);
        step(language, &answer, Step { field, text, typing, problem: refused.map(Problem::from) })
    });
    let steps: Vec<TestView> = steps.collect();
    let mut view = said(language, answer, nothing, &label);
    view.steps = steps;
    view.turn = match (seen.is_empty(), app.saved.unknown.last.is_empty()) {
        (false, _) => Some(UnknownPage::NewBar),
        (true, false) => Some(UnknownPage::LastBar),
        (true, true) => None,
    };
    view
}

/// A test as it stands on the page.
struct Step<'a> {
    field: UnknownField,
    text: &'a str,
    typing: bool,
    problem: Option<Problem>,
}

fn step(language: Language, answer: &UnknownAnswer, step: Step<'_>) -> TestView {
    let Step { field, text, typing, problem } = step;
    let test = test_of(field);
    let say = |phrase: Unknown<'_>| language.unknown(phrase).into_owned();
    let (title, why) = (say(Unknown::Title(test)), say(Unknown::Why(test)));
    let next = answer.next.as_ref().is_some_and(|next| next.test == test.key());
    let how = match &answer.next {
        Some(advised) if next => advised.how.clone(),
        _ => say(Unknown::How { test, heat: &answer.heat }),
    };
    let choices = choices(language, test, text.trim());
    let chosen = choices.iter().find(|chip| chip.on).map(|chip| chip.label.clone());
    let written = text.trim();
    let said = chosen.or_else(|| (!written.is_empty()).then(|| written.to_owned()));
    let typed = matches!(test, Test::Found | Test::CouponOil | Test::CouponWater);
    let hurts: &[Unknown<'_>] = match test {
        Test::Magnet => &[],
        Test::Spark | Test::Found | Test::Skin => &[Unknown::Eyes],
        Test::CouponOil => &[Unknown::OilFire, Unknown::Fumes],
        Test::CouponWater => &[Unknown::Fumes],
        Test::Snap => &[Unknown::Snapping],
    };
    let cautions = hurts.iter().map(|caution| say(*caution)).collect();
    let open = next || typing || problem.is_some();
    TestView { field, title, said, how, why, cautions, choices, typed, problem, next, open }
}

/// A test and its answer in words; empty where nothing was tried.
pub(crate) fn seen_in_words(language: Language, field: UnknownField, text: &str) -> String {
    let (test, text) = (test_of(field), text.trim());
    if text.is_empty() {
        return String::new();
    }
    let chosen = choices(language, test, text).into_iter().find(|chip| chip.on);
    let answer = chosen.map_or_else(|| text.to_owned(), |chip| chip.label);
    format!("{}: {answer}", language.unknown(Unknown::Title(test)))
}

fn choices(language: Language, test: Test, chosen: &str) -> Vec<Chip> {
    let chip = |key: &'static str, label: String| Chip { key, label, on: key == chosen };
    let say = |phrase: Unknown<'_>| language.unknown(phrase).into_owned();
    let label = |label: UnknownPage| language.unknown_page(label).to_owned();
    let bands = || BANDS.iter().map(|&(key, words)| chip(key, label(words)));
    match test {
        Test::Magnet => {
            Magnet::ALL.iter().map(|one| chip(one.key(), say(Unknown::Magnet(*one)))).collect()
        }
        Test::Spark => {
            Spark::ALL.iter().map(|one| chip(one.key(), say(Unknown::Spark(*one)))).collect()
        }
        Test::Skin => {
            Skin::ALL.iter().map(|one| chip(one.key(), say(Unknown::Skin(*one)))).collect()
        }
        Test::Snap => {
            Fracture::ALL.iter().map(|one| chip(one.key(), say(Unknown::Fracture(*one)))).collect()
        }
        Test::Found => {
            let file = [("bites", UnknownPage::Bites), ("skates", UnknownPage::Skates)];
            let file = file.into_iter().map(|(key, words)| chip(key, label(words)));
            file.chain(bands()).collect()
        }
        Test::CouponOil | Test::CouponWater => bands().collect(),
    }
}

fn empty(label: &dyn Fn(UnknownPage) -> String) -> UnknownView {
    UnknownView {
        steps: Vec::new(),
        verdict: String::new(),
        say: vec![label(UnknownPage::Empty)],
        conflict: false,
        causes: Vec::new(),
        settled: None,
        carbon: None,
        families: Vec::new(),
        quench: Vec::new(),
        uses: Vec::new(),
        avoid: Vec::new(),
        caution: String::new(),
        notes: Vec::new(),
        why: Vec::new(),
        turn: None,
    }
}

fn said(
    language: Language,
    answer: UnknownAnswer,
    nothing: bool,
    label: &dyn Fn(UnknownPage) -> String,
) -> UnknownView {
    let mut view = empty(label);
    let next = answer.next.as_ref();
    let next = next.map(|next| format!("{}: {}", label(UnknownPage::NextIs), next.name));
    view.verdict = answer.verdict;
    view.caution = language.unknown(Unknown::Critical).into_owned();
    if nothing {
        view.say.extend(next);
        return view;
    }
    view.conflict = answer.refused.is_some();
    view.say = match answer.clashes.first() {
        Some(clash) => clash.without.to_vec(),
        None => vec![answer.carbon.text.clone()],
    };
    view.say.extend(next);
    view.causes = answer.clashes.into_iter().next().map(|clash| clash.why).unwrap_or_default();
    view.settled = answer.settled;
    view.uses = answer.uses.into_iter().map(|one| one.text).collect();
    view.avoid = answer.avoid.into_iter().map(|one| one.text).collect();
    view.notes = answer.notes;
    // The last note says what the chances are worth: it belongs to the reasons.
    view.why.extend(view.notes.pop());
    view.why.extend(answer.understood);
    view.why.push(label(UnknownPage::RestsOn));
    if !view.conflict {
        view.carbon = answer.carbon.told.then(|| carbon(language, &answer.carbon));
        view.families = families(&answer.families, label);
        view.quench = vec![answer.quench.text];
        view.quench.extend(Some(answer.promise.text).filter(|text| !text.is_empty()));
    }
    view
}

fn families(
    all: &[crate::answer::UnknownFamily],
    label: &dyn Fn(UnknownPage) -> String,
) -> Vec<FamilyRow> {
    let own = all.iter().take(LINES).filter(|family| family.percent >= LEAST_PERCENT);
    let mut rows: Vec<FamilyRow> = own
        .map(|family| FamilyRow { name: family.name.clone(), percent: family.percent })
        .collect();
    let rest = 100_u32.saturating_sub(rows.iter().map(|row| row.percent).sum());
    if rest > 0 {
        rows.push(FamilyRow { name: label(UnknownPage::Others), percent: rest });
    }
    rows
}

/// Ends of the rule of carbon in mass percent, its width and the margin for the numbers.
const END: f64 = 1.2;
const WIDTH: f64 = 320.0;
const MARGIN: f64 = 14.0;

fn x(carbon: f64) -> f64 {
    MARGIN + (carbon / END).clamp(0.0, 1.0) * (WIDTH - 2.0 * MARGIN)
}

/// The carbon as a band on a rule.
fn carbon(language: Language, carbon: &UnknownCarbon) -> BandView {
    let (left, right) = (x(carbon.low), x(carbon.high));
    let shown = [carbon.low, carbon.high].map(|end| format::fixed(end, 2));
    let name = format!(
        "{} {}",
        language.unknown_page(UnknownPage::CarbonPlace),
        format::dash(&shown[0], &shown[1])
    );
    let mut edge = format!("M{} 38H{}", tenth(MARGIN), tenth(WIDTH - MARGIN));
    let mut numbers = Vec::new();
    for step in 0..=12_u8 {
        let (at, long) = (x(f64::from(step) / 10.0), step % 2 == 0);
        // Writing into a String cannot fail.
        let _ = write!(edge, "M{} 38v{}", tenth(at), if long { 9 } else { 5 });
        if long {
            numbers.push((at, format::fixed(f64::from(step) / 10.0, 1)));
        }
    }
    let row = BandRow {
        name_y: 15.0,
        band_y: 21.0,
        name: name.clone(),
        shown: shown.join(" – "),
        band: Some((left, (right - left).max(2.0))),
        mid: Some(format!("M{} 18v17", tenth(x(carbon.mid)))),
        open: false,
    };
    BandView {
        rows: vec![row],
        edge,
        numbers,
        numbers_y: 62.0,
        height: 66.0,
        goal_height: 0.0,
        goal: None,
        ridge: String::new(),
        label: name,
    }
}
