//! What to do next with a part.

use biteband_evidence::Target;
use biteband_evidence::step::{Action, AsQuenched, Choice, Part, Stage};
use biteband_steel::reach::{Attained, Prepared, Quench, Steel};
use biteband_steel::section::Place;
use biteband_steel::temper::{Aim, How, LEVEL_WIDTH, Temper, Tempering, TemperingError, Way, plan};
use serde::Deserialize;

use super::file_question::{FileQuestion, build};
use super::heat::Speech;
use super::next_answer::NextStepAnswer;
use super::next_said::Asked;
use super::reach::steel_of;
use super::temper::{HELD, Learnt, TemperQuestion, learned, tempering_refused};
use super::temper_ages;
use super::temper_answer::TemperAnswer;
use super::temper_said::Job;
use crate::format::{self, Units, fixed};
use crate::refusal::Refusal;
use crate::section::{SectionInput, parse_bath};
use crate::tempers::parse_tempers;
use crate::words::{Language, NextRefusal, NextStep};

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
#[expect(clippy::struct_excessive_bools, reason = "each is a question of its own")]
pub struct NextQuestion {
    /// Any designation of a grade; without it and a composition nothing is said of tempers.
    pub steel: Option<String>,
    /// In place of it, mass percent of a heat, or limits.
    pub composition: Option<String>,
    /// What files and instruments said, and the target.
    pub evidence: FileQuestion,
    /// `bought`, `quenched` or `tempered`; absent for tempered if there are tempers, otherwise quenched.
    pub stage: Option<String>,
    /// Tempers so far, in their order: `205C/2h`.
    pub done: Vec<String>,
    /// Own results with this steel: `53 HRC@220C/2h`, the temperatures as the oven's dial showed them.
    pub learn: Vec<String>,
    /// Checks of the oven: `240C=231.9C`, `240C=tin`.
    pub oven: Vec<String>,
    /// How long a further temper is held: `1h`; two hours if not given.
    pub held: Option<String>,
    /// The section, for what hardening gives.
    pub section: SectionInput,
    /// The bath, for what hardening gives.
    pub quench: Option<String>,
    /// What steel and process promise is left out.
    pub no_prior: bool,
    /// The part is at its final size and may not be hardened again.
    pub at_size: bool,
    /// It was heated well above its window.
    pub overheated: bool,
    /// There is no time left today for a full temper.
    pub hurried: bool,
    /// Units of the texts.
    pub units: Units,
}

/// Says what to do next with a part.
///
/// # Errors
/// A refusal: no target, a steel, section, bath, stroke, reading or temper that cannot be read or taken, checks of the oven
/// that contradict each other.
///
/// # Example
/// ```
/// use biteband_bench::answer::{FileQuestion, NextQuestion, next, parse_reading};
/// use biteband_bench::words::Language;
/// let language = Language::English;
/// let question = NextQuestion {
///     steel: Some("4140".into()),
///     evidence: FileQuestion {
///         readings: vec![parse_reading(language, "32 HRC").unwrap()],
///         target: Some("38-40 HRC".into()),
///         ..Default::default()
///     },
///     done: vec!["1100F/2h".into()],
///     ..Default::default()
/// };
/// // Too soft cannot be mended by tempering.
/// assert_eq!(next(language, &question).unwrap().action, "harden");
/// ```
pub fn next(language: Language, question: &NextQuestion) -> Result<NextStepAnswer, Refusal> {
    answered(language, question, false)
}

/// The answer; `beyond` where no check of the oven reaches the temper, and it is as good as unchecked there.
fn answered(
    language: Language,
    question: &NextQuestion,
    beyond: bool,
) -> Result<NextStepAnswer, Refusal> {
    let speech = Speech { language, units: question.units };
    let target = question.evidence.target.as_deref().map(str::trim).filter(|text| !text.is_empty());
    let Some(written) = target else {
        return Err(refused(language, "bench.missing_target", "", NextRefusal::NoTarget));
    };
    let target = super::temper::wanted(language, written)?;
    let test = build(language, &question.evidence)?;
    let mut done = Vec::new();
    for text in &question.done {
        done.extend(parse_tempers(language, text, None)?);
    }
    let unsaid = question.stage.as_deref().is_none_or(|given| given.trim().is_empty());
    let stage = stage(language, question.stage.as_deref(), done.is_empty())?;
    let held = held(language, question)?;
    let (steel, understood) = named(language, question)?.unzip();
    let hardened = match &steel {
        Some(steel) => as_quenched(language, question, steel)?,
        None => None,
    };
    let mut notes = Vec::new();
    let found = steel.as_ref().map(Tempering::of);
    let never = matches!(found, Some(Err(TemperingError::DoesNotHarden { .. })));
    let (tempering, aged) = tempering_or_ages(speech, found, target, &mut notes);
    // As it comes from the solution heat, or as it does not harden at all, it is as it is bought.
    let stage = match stage {
        Stage::Quenched if aged.is_some() || never => Stage::Bought,
        stage => stage,
    };
    if unsaid && stage == Stage::Quenched {
        notes.push(language.next_step(NextStep::TakenQuenched).into_owned());
    }
    let checks = speech.checks(&question.oven)?;
    let learnt = match &tempering {
        Some(tempering) => {
            Some(learned(speech, tempering, &question.learn, checks.as_ref().filter(|_| !beyond))?)
        }
        None => None,
    };
    let times = tempering.as_ref().map_or(1, Tempering::times);
    let plain = TemperQuestion::default();
    let job = match (&steel, &learnt) {
        (Some(steel), Some(learnt)) => Some(Job {
            speech,
            question: &plain,
            steel,
            learnt,
            checks,
            held,
            times,
            quenched: None,
        }),
        _ => None,
    };
    let over = job.as_ref().and_then(Job::brittle_range);
    let brittle = over.map(|range| (range.low, range.high));
    // What was done and what is advised are settings of the same oven.
    let oven = learnt.as_ref().map(|learnt| learnt.taught.oven_set());
    let part =
        oven.as_ref().map(|oven| Part { steel: oven, done: &done, times, hardened, brittle });
    // After hardening again the part has had no temper.
    let fresh = learnt.as_ref().and_then(|learnt| {
        let aim = Aim { low: target.low(), high: target.high() };
        let how = How { done: &[], minutes: held, times, over };
        plan(&learnt.taught.oven_set(), aim, how).ok()?.steps.first().copied()
    });
    let expected = expected(question, stage, &done, hardened, learnt.as_ref());
    if test.prior().expected().is_none() {
        notes.extend(expected.map(|expected| promise(language, expected)));
    }
    let sources = tempering.as_ref().map_or(&[][..], |tempering| match tempering.way() {
        Way::Regression(regression) => regression.cited().sources,
        Way::Sheets(_) => &["temper-sheets"],
    });
    let asked = Asked {
        speech,
        question,
        test: &test,
        target,
        stage,
        hardened,
        expected,
        held,
        fresh,
        brittle: over,
        done: &done,
        sources,
        job: job.as_ref(),
        aged: aged.as_ref(),
        never,
    };
    let found = asked.step(part.as_ref())?;
    let unreached = |choice: &Choice| {
        let Action::Temper(temper) = choice.action else { return false };
        job.as_ref().is_some_and(|job| job.learnt.checked && job.width(temper.celsius()).is_none())
    };
    if found.choices.iter().any(unreached) {
        return answered(language, question, true);
    }
    let learned = learnt.as_ref().map(|learnt| learnt.said(speech)).unwrap_or_default();
    Ok(asked.answer(&found, steel.as_ref(), understood.unwrap_or_default(), learned, notes))
}

/// How long a further temper is held, in minutes.
fn held(language: Language, question: &NextQuestion) -> Result<f64, Refusal> {
    use crate::measure::{Kind, parse_time, read};
    match question.held.as_deref() {
        None => Ok(HELD),
        Some(text) => Ok(read(language, Kind::Time, text, parse_time)?.get()),
    }
}

/// The steel, if one is named, and what its name was taken for.
fn named(
    language: Language,
    question: &NextQuestion,
) -> Result<Option<(Steel, Vec<String>)>, Refusal> {
    let (steel, composition) = (question.steel.as_deref(), question.composition.as_deref());
    if steel.is_none() && composition.is_none() {
        return Ok(None);
    }
    steel_of(language, question.units, steel, composition).map(Some)
}

/// What tempers do to a steel, or its ages for the target, or else a note why nothing is said of them.
fn tempering_or_ages(
    speech: Speech,
    found: Option<Result<Tempering, TemperingError>>,
    target: Target,
    notes: &mut Vec<String>,
) -> (Option<Tempering>, Option<TemperAnswer>) {
    let mut note = |phrase| notes.push(speech.language.next_step(phrase).into_owned());
    let Some(found) = found else {
        note(NextStep::NoSteel);
        return (None, None);
    };
    match found {
        Ok(tempering) => (Some(tempering), None),
        Err(TemperingError::Ages { grade }) => {
            let plain = TemperQuestion::default();
            (None, temper_ages::answer(speech, &plain, grade, Vec::new(), Some(target)).ok())
        }
        Err(error) => {
            let refusal = tempering_refused(speech, &error, "");
            let why = format!("{} {}", refusal.message, refusal.instead);
            note(NextStep::NoCurve { why: &why });
            (None, None)
        }
    }
}

/// What steel and treatment promise, in words.
fn promise(language: Language, (mean, sd): (f64, f64)) -> String {
    let half = LEVEL_WIDTH * sd;
    let band = format::dash(&format::outward_low(mean - half), &format::outward_high(mean + half));
    let about = format!("{} HRC", fixed(mean, 0));
    let said = NextStep::Expected { about: &about, band: &format!("{band} HRC") };
    language.next_step(said).into_owned()
}

/// What was done last, from its name or from the tempers.
fn stage(language: Language, given: Option<&str>, untempered: bool) -> Result<Stage, Refusal> {
    match (given.map(str::trim).unwrap_or_default(), untempered) {
        ("" | "quenched", true) => Ok(Stage::Quenched),
        ("bought", true) => Ok(Stage::Bought),
        ("tempered", _) | ("", false) => Ok(Stage::Tempered),
        (given @ ("quenched" | "bought"), false) => {
            Err(refused(language, "bench.unknown_stage", given, NextRefusal::StageAgainstTempers))
        }
        (given, _) => {
            let shown = format::shortened(given);
            let what = NextRefusal::Stage { given: &shown };
            Err(refused(language, "bench.unknown_stage", given, what))
        }
    }
}

fn refused(language: Language, code: &'static str, given: &str, what: NextRefusal<'_>) -> Refusal {
    let [message, allowed, instead] = language.next_refused(what);
    Refusal::new(code, message, format::shortened(given), allowed, instead)
}

/// What hardening gives at the skin, where files meet it: by section and bath, otherwise by the grade's own figures.
fn as_quenched(
    language: Language,
    question: &NextQuestion,
    steel: &Steel,
) -> Result<Option<AsQuenched>, Refusal> {
    let given = !question.section.is_empty();
    let bath = question.quench.as_deref().map(|text| parse_bath(language, text)).transpose()?;
    if let (true, Some(bath)) = (given, bath) {
        let section = question.section.read(language)?;
        let found = Prepared::new(steel.clone())
            .and_then(|steel| steel.reach(&Quench::new(section, bath.medium, bath.movement)?));
        if let Some(found) = found.ok().and_then(|found| found.at(Place::Skin)) {
            return Ok(of_band(found));
        }
    }
    let range = steel.grade().and_then(biteband_steel::Grade::as_quenched);
    // A published range is taken to hold nearly all bars.
    Ok(range.map(|range| AsQuenched {
        mean: range.middle(),
        sd: (0.25 * (range.high - range.low)).max(1.0),
    }))
}

/// What steel and process promise for today; of a part as bought nothing.
fn expected(
    question: &NextQuestion,
    stage: Stage,
    done: &[Temper],
    hardened: Option<AsQuenched>,
    learnt: Option<&Learnt<'_>>,
) -> Option<(f64, f64)> {
    if question.no_prior {
        return None;
    }
    match stage {
        Stage::Bought => None,
        Stage::Quenched => hardened.map(|found| (found.mean, found.sd)),
        Stage::Tempered => {
            let found = learnt?.taught.in_oven(done).ok()?;
            Some((found.median, found.sd))
        }
    }
}

/// What a grade promises after tempers as an oven was set, or as quenched without any: middle and standard deviation in HRC.
///
/// # Errors
/// A refusal: a steel that is not known, or of whose hardness nothing is.
///
/// # Example
/// ```
/// use biteband_bench::answer::promised;
/// use biteband_bench::words::Language;
/// let (mean, sd) = promised(Language::English, "4140", &["205C/2h".into()]).unwrap();
/// assert!((48.0..58.0).contains(&mean) && sd > 1.0);
/// ```
pub fn promised(language: Language, steel: &str, done: &[String]) -> Result<(f64, f64), Refusal> {
    let speech = Speech { language, units: Units::Metric };
    let question = NextQuestion::default();
    let (steel, _) = steel_of(language, Units::Metric, Some(steel), None)?;
    let mut tempers = Vec::new();
    for text in done {
        tempers.extend(parse_tempers(language, text, None)?);
    }
    if tempers.is_empty()
        && let Some(AsQuenched { mean, sd }) = as_quenched(language, &question, &steel)?
    {
        return Ok((mean, sd));
    }
    let refuse = |error: &TemperingError| tempering_refused(speech, error, "");
    let tempering = Tempering::of(&steel).map_err(|error| refuse(&error))?;
    let learnt = learned(speech, &tempering, &[], None)?;
    let found = learnt.taught.in_oven(&tempers).map_err(|error| refuse(&error))?;
    Ok((found.median, found.sd))
}

fn of_band(found: Attained) -> Option<AsQuenched> {
    let (low, mid, high) = (found.low?, found.mid?, found.high?);
    Some(AsQuenched { mean: mid, sd: (0.25 * (high - low)).max(0.8) })
}
