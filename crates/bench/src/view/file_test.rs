//! The file test page.

use biteband_evidence::{Assessment, Outcome, Shape, Target};
use biteband_quantity::sort_by_number;

use super::ridge::{KeyView, RuleRow, RuleView, ridge};
use super::{Chip, Problem, reading};
use crate::answer::{
    Assessed, FileAnswer, FileOutcome, FileQuestion, StrokeInput, assessed, build, parse_target,
    with_scale,
};
use crate::format;
use crate::state::{App, Field, FileTestState, HandChoice, list_of_grades, number};
use crate::words::{Gauge, Language, Phrase};

/// Everything the page shows.
#[derive(Clone, Debug, PartialEq)]
pub struct FileTestView {
    /// The verdict in words.
    pub say: String,
    /// The band, or that there is none.
    pub number: String,
    /// Unit behind the band; empty where there is no band.
    pub unit: &'static str,
    /// What the band means; empty where there is none.
    pub level: String,
    /// Chances about the target.
    pub odds: Option<OddsView>,
    /// Files that disagree.
    pub conflicts: Vec<ConflictView>,
    /// Keys and ridge.
    pub rule: RuleView,
    /// The next step, in one line.
    pub next: String,
    /// Its reason; empty where the step says it itself.
    pub next_why: String,
    /// The file to stroke next, for a mark on its row.
    pub next_grade: Option<f64>,
    /// What the band takes for granted, and what it cannot say.
    pub notes: Vec<String>,
    /// The band on other scales.
    pub scales: Vec<ScaleRow>,
    /// Whether a stroke can be taken back.
    pub can_undo: bool,
    /// Whether there is anything to clear.
    pub can_clear: bool,
    /// Whether the hardness of a known piece can be read, so that a file can be proved on it.
    pub can_prove: bool,
    /// Spots to choose from: those stroked and one fresh one.
    pub spots: Vec<(u8, Chip)>,
    /// Hands to choose from.
    pub hands: Vec<(HandChoice, Chip)>,
    /// What the chosen hand means.
    pub hand_meaning: String,
    /// Proofs so far.
    pub proofs: Vec<ProofView>,
    /// Files to prove.
    pub proof_files: Vec<(f64, Chip)>,
    /// Instruments to choose from.
    pub instruments: Vec<Chip>,
    /// Readings so far, each with its width.
    pub readings: Vec<ProofView>,
    /// Problems of fields that were left.
    pub problems: Vec<(Field, Problem)>,
    /// A problem of the answer as a whole.
    pub problem: Option<Problem>,
}

impl FileTestView {
    /// The problem of a field, if it has one.
    #[must_use]
    pub fn problem_of(&self, field: Field) -> Option<&Problem> {
        self.problems.iter().find(|(f, _)| *f == field).map(|(_, problem)| problem)
    }
}

/// Chances about the target.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OddsView {
    /// Per cent under, in, over; together 100.
    pub percent: [u32; 3],
    /// The same in words.
    pub labels: [String; 3],
    /// In one sentence.
    pub verdict: String,
}

/// Files that disagree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConflictView {
    /// What is odd about it.
    pub why: String,
    /// Likely causes, the likeliest first.
    pub causes: Vec<String>,
    /// The band with either file set aside.
    pub without: Vec<String>,
}

/// The band on another scale.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ScaleRow {
    /// Name of the scale.
    pub name: String,
    /// Band with unit.
    pub shown: String,
    /// Short name of the table.
    pub table: &'static str,
}

/// A proof or a reading.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ProofView {
    /// Its place in the list.
    pub index: usize,
    /// In words.
    pub text: String,
}

const OUTCOMES: [(&str, Outcome); 3] =
    [("bites", Outcome::Bite), ("slight", Outcome::Slight), ("skates", Outcome::Skate)];

/// Makes the page.
#[must_use]
pub fn file_test(app: &App, language: Language) -> FileTestView {
    let state = &app.saved.file_test;
    let mut problems = field_problems(app, language);
    let question = question(app, state, &problems);
    let known =
        !(question.strokes.is_empty() && question.readings.is_empty()) || question.prior.is_some();
    let (outcome, found, wanted) = match assessed(language, &question) {
        Ok(Assessed { outcome, found, target }) => (Ok(outcome), Some(found), target),
        Err(refusal) => (Err(refusal), None, None),
    };
    let found = found.filter(|f| known && f.contradictions().is_empty() && f.clashes().is_empty());
    let can_prove = number(&state.proof_known_text).is_some()
        && !problems.iter().any(|(field, _)| *field == Field::ProofKnown);
    // A field that is still being typed in is not scolded.
    problems.retain(|(field, _)| {
        app.session.left.contains(field) && app.session.active != Some(*field)
    });
    let mut view = FileTestView {
        say: language.say(Phrase::NothingStroked).into_owned(),
        number: language.say(Phrase::NothingStrokedNumber).into_owned(),
        unit: "",
        level: String::new(),
        odds: None,
        conflicts: Vec::new(),
        rule: rule(language, state, found.as_ref(), wanted, None, &[]),
        next: String::new(),
        next_why: String::new(),
        next_grade: None,
        notes: Vec::new(),
        scales: Vec::new(),
        can_undo: !state.past.is_empty(),
        can_clear: !(state.now.strokes.is_empty()
            && state.now.proofs.is_empty()
            && state.now.readings.is_empty()),
        can_prove,
        spots: spots(language, state),
        hands: hands(language, state),
        hand_meaning: language.say(Phrase::HandMeaning(hand(state.hand))).into_owned(),
        proofs: proofs(language, state),
        proof_files: proof_files(state),
        instruments: reading::instruments(language, state),
        readings: reading::readings(language, state),
        problems,
        problem: None,
    };
    match outcome {
        Err(refusal) => view.problem = Some(refusal.into()),
        Ok(FileOutcome::Refused(refused)) => {
            view.say = if refused.contradictions.is_empty() {
                language.gauge(Gauge::Mixed).into_owned()
            } else {
                language.say(Phrase::MixedFiles).into_owned()
            };
            view.number = language.say(Phrase::NoNumber).into_owned();
            view.next = refused.next.say;
            view.conflicts = refused
                .contradictions
                .into_iter()
                .map(|c| ConflictView {
                    why: c.why,
                    causes: c.causes.into_iter().map(|cause| cause.text).collect(),
                    without: if c.without_harder == c.without_softer {
                        vec![c.without_harder]
                    } else {
                        vec![c.without_harder, c.without_softer]
                    },
                })
                .chain(refused.clashes.into_iter().map(reading::conflict))
                .collect();
        }
        Ok(FileOutcome::Answered(answer)) => {
            let marks = reading::marks(&answer.readings);
            fill(app, language, &mut view, *answer, known);
            view.rule = rule(language, state, found.as_ref(), wanted, Some(&view.number), &marks);
        }
    }
    let aside = strokes_aside(state);
    if !aside.is_empty() {
        let list: Vec<String> = aside.iter().map(|grade| format::exact(*grade)).collect();
        view.notes.insert(
            0,
            language.say(Phrase::StrokesAside { grades: &list.join(", ") }).into_owned(),
        );
    }
    view
}

fn fill(app: &App, language: Language, view: &mut FileTestView, answer: FileAnswer, known: bool) {
    if known {
        view.say = answer.verdict;
        if !(answer.band.open_low && answer.band.open_high) {
            view.number = answer.band.shown;
            view.unit = answer.band.scale;
            view.level = language.say(Phrase::LevelMeaning).into_owned();
        }
        view.notes = answer.notes;
        view.odds = answer.target.map(|target| {
            let percent = format::percents([target.under, target.inside, target.over]);
            let [under, inside, over] = percent;
            let wanted = &with_scale(&app.saved.file_test.target_text);
            OddsView {
                percent,
                labels: [
                    language.say(Phrase::OddsUnder { percent: under }).into_owned(),
                    language
                        .say(Phrase::OddsInside { percent: inside, target: wanted })
                        .into_owned(),
                    language.say(Phrase::OddsOver { percent: over }).into_owned(),
                ],
                verdict: target.verdict,
            }
        });
        view.scales = answer
            .scales
            .into_iter()
            .filter_map(|row| {
                let axis = biteband_hardness::Axis::find(row.scale)?;
                let table = biteband_hardness::TableId::find(row.table)?.get()?.short();
                let name = language.say(Phrase::AxisName(axis)).into_owned();
                Some(ScaleRow { name, shown: row.shown, table })
            })
            .collect();
    }
    let lead = answer.next.say.strip_suffix(&answer.next.why).map(str::trim).unwrap_or_default();
    if lead.is_empty() {
        view.next = answer.next.say;
    } else {
        lead.clone_into(&mut view.next);
        view.next_why = answer.next.why;
    }
    view.next_grade = answer.next.file;
}

/// The question as far as its fields can be read; what cannot be read is left out, not guessed.
fn question(app: &App, state: &FileTestState, problems: &[(Field, Problem)]) -> FileQuestion {
    let broken = |field: Field| problems.iter().any(|(f, _)| *f == field);
    let known = |stroke: &&StrokeInput| has(&state.grades, stroke.file);
    let prior = (state.prior_on && !broken(Field::PriorMean) && !broken(Field::PriorSd))
        .then(|| number(&state.prior_mean_text).zip(number(&state.prior_sd_text)))
        .flatten();
    let target = (!state.target_text.trim().is_empty() && !broken(Field::Target))
        .then(|| state.target_text.clone());
    FileQuestion {
        set: state.grades.clone(),
        tolerance: number(&state.tolerance_text).filter(|_| !broken(Field::Tolerance)),
        hand: Some(state.hand.key().to_owned()),
        yes_no: false,
        strokes: state.now.strokes.iter().filter(known).cloned().collect(),
        proved: state.now.proofs.iter().filter(|p| has(&state.grades, p.file)).cloned().collect(),
        conditions: state.conditions,
        prior,
        target,
        readings: state.now.readings.clone(),
        units: app.saved.settings.units,
    }
}

/// The question as it stands, for the next step.
pub(crate) fn asked(app: &App, language: Language) -> FileQuestion {
    question(app, &app.saved.file_test, &field_problems(app, language))
}

fn has(grades: &[f64], grade: f64) -> bool {
    grades.iter().any(|g| g.total_cmp(&grade).is_eq())
}

fn strokes_aside(state: &FileTestState) -> Vec<f64> {
    let mut aside: Vec<f64> = state
        .now
        .strokes
        .iter()
        .map(|s| s.file)
        .filter(|grade| !has(&state.grades, *grade))
        .collect();
    sort_by_number(&mut aside, |grade| *grade);
    aside.dedup_by(|a, b| a.total_cmp(b).is_eq());
    aside
}

fn field_problems(app: &App, language: Language) -> Vec<(Field, Problem)> {
    let state = &app.saved.file_test;
    let mut problems = Vec::new();
    let target = state.target_text.trim();
    if !target.is_empty()
        && let Err(refusal) = parse_target(language, target)
    {
        problems.push((Field::Target, refusal.into()));
    }
    let probe = |question: FileQuestion| build(language, &question).err().map(Problem::from);
    let unreadable = |given: &str| Problem {
        message: language
            .say(Phrase::NotListOfGrades { given: &format::shortened(given) })
            .into_owned(),
        instead: language.say(Phrase::NotListOfGradesInstead).into_owned(),
    };
    let not_a_number = || Problem {
        message: language.say(Phrase::NotANumber).into_owned(),
        instead: language.say(Phrase::NotANumberInstead).into_owned(),
    };
    match list_of_grades(&state.grades_text) {
        None => problems.push((Field::Grades, unreadable(&state.grades_text))),
        Some(set) => {
            if let Some(problem) = probe(FileQuestion { set, ..FileQuestion::default() }) {
                problems.push((Field::Grades, problem));
            }
        }
    }
    match number(&state.tolerance_text) {
        None => problems.push((Field::Tolerance, not_a_number())),
        tolerance => {
            if let Some(problem) = probe(FileQuestion { tolerance, ..FileQuestion::default() }) {
                problems.push((Field::Tolerance, problem));
            }
        }
    }
    if state.prior_on {
        let (mean, sd) = (number(&state.prior_mean_text), number(&state.prior_sd_text));
        if mean.is_none() {
            problems.push((Field::PriorMean, not_a_number()));
        }
        if sd.is_none() {
            problems.push((Field::PriorSd, not_a_number()));
        }
        if let (Some(mean), Some(sd)) = (mean, sd) {
            let with =
                |prior| probe(FileQuestion { prior: Some(prior), ..FileQuestion::default() });
            // One at a time, so that the message stands at the field that is wrong.
            if let Some(problem) = with((mean, 2.0)) {
                problems.push((Field::PriorMean, problem));
            } else if let Some(problem) = with((mean, sd)) {
                problems.push((Field::PriorSd, problem));
            }
        }
    }
    problems.extend(reading::problem(language, state).map(|problem| (Field::Reading, problem)));
    let known_text = state.proof_known_text.trim();
    if known_text.is_empty() {
        return problems;
    }
    match number(known_text) {
        None => problems.push((Field::ProofKnown, not_a_number())),
        Some(known) => {
            let proof = crate::answer::ProofInput { file: 65.0, known, outcome: "bites".into() };
            if let Some(problem) =
                probe(FileQuestion { proved: vec![proof], ..FileQuestion::default() })
            {
                problems.push((Field::ProofKnown, problem));
            }
        }
    }
    problems
}

fn rule(
    language: Language,
    state: &FileTestState,
    found: Option<&Assessment>,
    wanted: Option<Target>,
    band: Option<&str>,
    marks: &[(f64, f64)],
) -> RuleView {
    let count = |grade: f64, outcome: &str| {
        let same = |s: &&StrokeInput| s.file.total_cmp(&grade).is_eq() && s.outcome == outcome;
        state.now.strokes.iter().filter(same).count()
    };
    let rows = state.grades.iter().map(|&grade| {
        let label = format::exact(grade);
        let keys = OUTCOMES.map(|(key, outcome)| {
            let count = count(grade, key);
            let word = language.say(Phrase::Outcome(outcome));
            KeyView {
                outcome: key,
                label: language.say(Phrase::StrokeCount { word: &word, count }).into_owned(),
                spoken: language.say(Phrase::StrokeKey { word: &word, grade: &label }).into_owned(),
                count,
            }
        });
        RuleRow { grade, label, keys }
    });
    let shape = found.map_or(Shape::Unknown, |f| f.band().shape());
    let band = band.unwrap_or("?");
    let label = language.say(Phrase::RidgeLabel { band }).into_owned();
    let belief = found.map(Assessment::belief);
    let ridge = ridge(&state.grades, belief, shape, wanted, marks, label);
    RuleView { rows: rows.collect(), ridge }
}

fn spots(language: Language, state: &FileTestState) -> Vec<(u8, Chip)> {
    let most = state.now.strokes.iter().filter_map(|s| s.spot).max().unwrap_or(0);
    let offered = most.saturating_add(1).max(state.now.spot).clamp(1, 4);
    (1..=offered)
        .map(|spot| {
            let label = language.say(Phrase::SpotNumber(spot)).into_owned();
            (spot, Chip { key: "spot", label, on: spot == state.now.spot })
        })
        .collect()
}

const fn hand(choice: HandChoice) -> biteband_evidence::Hand {
    match choice {
        HandChoice::Careful => biteband_evidence::Hand::Careful,
        HandChoice::Practised => biteband_evidence::Hand::Practised,
        HandChoice::Casual => biteband_evidence::Hand::Casual,
    }
}

fn hands(language: Language, state: &FileTestState) -> Vec<(HandChoice, Chip)> {
    HandChoice::ALL
        .into_iter()
        .map(|choice| {
            let label = language.say(Phrase::Hand(hand(choice))).into_owned();
            (choice, Chip { key: choice.key(), label, on: state.hand == choice })
        })
        .collect()
}

fn proofs(language: Language, state: &FileTestState) -> Vec<ProofView> {
    let word = |key: &str| {
        let found = OUTCOMES.into_iter().find(|(name, _)| *name == key);
        found.map(|(_, outcome)| language.say(Phrase::Outcome(outcome))).unwrap_or_default()
    };
    let line = |(index, proof): (usize, &crate::answer::ProofInput)| {
        let (grade, known) = (format::exact(proof.file), format::exact(proof.known));
        let outcome = word(&proof.outcome);
        let phrase = Phrase::ProofLine { grade: &grade, known: &known, outcome: &outcome };
        ProofView { index, text: language.say(phrase).into_owned() }
    };
    state.now.proofs.iter().enumerate().map(line).collect()
}

fn proof_files(state: &FileTestState) -> Vec<(f64, Chip)> {
    let chosen = state.proof_file.filter(|grade| has(&state.grades, *grade));
    let chosen = chosen.or(state.grades.first().copied());
    state
        .grades
        .iter()
        .map(|&grade| {
            let on = chosen.is_some_and(|c| c.total_cmp(&grade).is_eq());
            (grade, Chip { key: "file", label: format::exact(grade), on })
        })
        .collect()
}
