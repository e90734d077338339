//! The panel of the next step: one act first, with its reason, its chances and its caution; the others behind it.

use super::steel_asked::{Named, asked, checks, given, medium, section};
use super::temper::{done, results, stages};
use super::{Chip, Problem, file_test};
use crate::answer::{NextQuestion, NextStepAnswer, OptionAnswer, next};
use crate::measure::parse_time;
use crate::refusal::Refusal;
use crate::state::{App, Field, PartStage, TemperAction, TemperField};
use crate::words::{Language, NextStep, TemperPage, TemperSaid};

/// Everything the panel shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct NextView {
    /// The inputs are worth showing: something is wanted of the part.
    pub asks: bool,
    /// What was done to the part last.
    pub stages: Vec<(PartStage, Chip)>,
    /// The tempers so far are asked for.
    pub tempered: bool,
    /// What else counts: each with what a tap does.
    pub switches: Vec<(TemperAction, Chip)>,
    /// Steel and target that it goes by.
    pub goes_by: String,
    /// What is missing.
    pub missing: Vec<String>,
    /// A problem of the tempers so far.
    pub done_problem: Option<Problem>,
    /// Why there is no next step.
    pub problem: Option<Problem>,
    /// The next step.
    pub step: Option<StepView>,
}

/// The next step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StepView {
    /// How the part stands.
    pub stands: String,
    /// What to do.
    pub act: ActView,
    /// Likely causes of how it stands, the likeliest first.
    pub causes: String,
    /// What own results taught.
    pub learned: Vec<String>,
    /// The other acts, the best first.
    pub others: Vec<ActView>,
    /// What it takes for granted.
    pub notes: Vec<String>,
    /// How the acts are weighed.
    pub weighing: String,
    /// Sources: name and whether it was read.
    pub sources: Vec<String>,
}

/// One act.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ActView {
    /// Stable name.
    pub action: &'static str,
    /// What to do.
    pub text: String,
    /// What the oven's dial shows then.
    pub dial: String,
    /// How.
    pub how: String,
    /// The chances.
    pub chances: String,
    /// What cannot be undone.
    pub undone: String,
    /// Where it can hurt.
    pub caution: String,
    /// Whether it may be done.
    pub open: bool,
}

/// Makes the panel.
#[must_use]
pub fn next_step(app: &App, language: Language) -> NextView {
    let state = &app.saved.temper;
    let planner = state.planner();
    let label = |label: TemperPage| language.temper_page(label).to_owned();
    let switch = |key, name, on| Chip { key, label: label(name), on };
    let mut view = NextView {
        stages: stages(planner.stage, language),
        tempered: planner.stage == PartStage::Tempered,
        switches: vec![
            (
                TemperAction::AtSize(!planner.at_size),
                switch("at-size", TemperPage::AtSize, planner.at_size),
            ),
            (
                TemperAction::Overheated(!planner.overheated),
                switch("overheated", TemperPage::Overheated, planner.overheated),
            ),
            (
                TemperAction::Hurried(!planner.hurried),
                switch("hurried", TemperPage::Hurried, planner.hurried),
            ),
        ],
        ..NextView::default()
    };
    let mut evidence = file_test::asked(app, language);
    let own = given(&app.saved.file_test.target_text);
    if evidence.target.is_none() && own.is_some() {
        view.missing.push(label(TemperPage::TargetTyping));
        return view;
    }
    // The hardness that is wanted on the page Steel holds here too, as long as none is given here.
    let told = evidence.target.is_some();
    evidence.target = evidence.target.or_else(|| given(&app.saved.steel.target));
    let Some(target) = evidence.target.clone() else {
        view.missing.push(label(TemperPage::NoTarget));
        return view;
    };
    view.asks = true;
    let tempers = done(state, language).unwrap_or_else(|refusal| {
        if app.session.active != Some(Field::Temper(TemperField::Done)) {
            view.done_problem = Some(refusal.into());
        }
        Vec::new()
    });
    let found = asked(app, language);
    let named = found.named.clone().unwrap_or_default();
    if found.named.is_none() {
        let unread = found.problem.is_some() || !found.suggestions.is_empty();
        let which = if unread { TemperPage::SteelUnread } else { TemperPage::NoSteel };
        view.missing.push(label(which));
    } else {
        let name = found.card.as_ref().map(|card| card.name.to_owned());
        let name = name.or_else(|| given(&app.saved.steel.own_name));
        let name = name.or_else(|| given(&app.saved.steel.own)).unwrap_or_default();
        view.goes_by = language.temper_said(TemperSaid::GoesBy { steel: &name, target: &target });
    }
    let learn = results(app, language, &named).into_iter().map(|(_, text)| text).collect();
    let question = NextQuestion {
        evidence,
        stage: Some(planner.stage.key().to_owned()),
        done: tempers,
        learn,
        oven: checks(&app.saved.steel),
        ..base(app, language, named)
    };
    match answered(language, &question) {
        Ok((answer, whole)) => {
            if !whole {
                view.missing.push(label(TemperPage::ResultsLeftOut));
            }
            let (mut step, now) = step(language, answer, view.missing.is_empty());
            // The chances as it is stand under the verdict already, where the target is given there.
            if !told && !now.is_empty() {
                step.stands = format!("{} {now}", step.stands);
            }
            view.step = Some(step);
        }
        Err(refusal) => view.problem = Some(refusal.into()),
    }
    view
}

fn base(app: &App, language: Language, named: Named) -> NextQuestion {
    let (steel, temper) = (&app.saved.steel, &app.saved.temper);
    let planner = temper.planner();
    let section = section(steel).filter(|section| section.read(language).is_ok());
    NextQuestion {
        steel: named.steel,
        composition: named.composition,
        // As long as in the plan, so that both speak of the same temper.
        held: given(temper.text(TemperField::Held)).filter(|text| parse_time(text).is_ok()),
        quench: section.is_some().then(|| medium(steel)),
        section: section.unwrap_or_default(),
        at_size: planner.at_size,
        overheated: planner.overheated,
        hurried: planner.hurried,
        units: app.saved.settings.units,
        ..NextQuestion::default()
    }
}

/// The answer, and whether own results are in it: where they cannot be counted, it goes without, and where checks of the
/// oven contradict each other, without those too.
fn answered(
    language: Language,
    question: &NextQuestion,
) -> Result<(NextStepAnswer, bool), Refusal> {
    let refusal = match next(language, question) {
        Ok(answer) => return Ok((answer, true)),
        Err(refusal) => refusal,
    };
    let mut bare = NextQuestion { learn: Vec::new(), ..question.clone() };
    let found = next(language, &bare).or_else(|_| {
        bare.oven.clear();
        next(language, &bare)
    });
    found.map(|answer| (answer, false)).map_err(|_| refusal)
}

/// The step, and the chances as the part is.
fn step(language: Language, answer: NextStepAnswer, steel: bool) -> (StepView, String) {
    let [stands, now, _, causes] = answer.parts;
    let mut acts = answer.options.iter().map(act);
    let first = acts.next().unwrap_or_default();
    let weighing = language.next_step(NextStep::Weighed).into_owned();
    let unnamed = language.next_step(NextStep::NoSteel);
    let notes = answer.notes.into_iter();
    let sources = answer.sources.iter().filter_map(|key| biteband_steel::source(key));
    let view = StepView {
        stands,
        act: first,
        causes,
        learned: answer.learned,
        others: acts.collect(),
        // That the steel is missing stands above, with the way to it.
        notes: notes.filter(|note| *note != weighing && (steel || *note != unnamed)).collect(),
        weighing,
        sources: sources
            .map(|source| format!("{}: {} ({})", source.key(), source.title(), source.seen().key()))
            .collect(),
    };
    (view, now)
}

fn act(option: &OptionAnswer) -> ActView {
    ActView {
        action: option.action,
        text: option.text.clone(),
        dial: option.dial.clone(),
        how: option.how.clone(),
        chances: option.chances.clone(),
        undone: option.undone.clone(),
        caution: option.caution.clone(),
        open: option.open,
    }
}
