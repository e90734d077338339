//! What to do next with a part.

use biteband_evidence::step::{
    Action, AsQuenched, Choice, Diagnosis, Part, Situation, Softening, Stage, next_step,
};
use biteband_evidence::{FileTest, Odds, Target};
use biteband_quantity::Celsius;
use biteband_steel::Family;
use biteband_steel::furnace::OvenOffset;
use biteband_steel::reach::{Attained, Prepared, Quench, Steel};
use biteband_steel::section::Place;
use biteband_steel::temper::brittle::{self, BrittleKind};
use biteband_steel::temper::{Aim, How, LEVEL_WIDTH, Temper, Tempering, TemperingError, Way, plan};
use serde::Deserialize;

use super::file_question::{FileQuestion, build};
use super::file_test::PROVED;
use super::heat::Speech;
use super::next_answer::{AdvisedTemper, NextStepAnswer, OptionAnswer};
use super::reach::steel_of;
use super::temper::{Learnt, learned, tempering_refused};
use crate::format::{self, Units, fixed};
use crate::refusal::Refusal;
use crate::section::{SectionInput, parse_bath};
use crate::tempers::parse_tempers;
use crate::words::{Act, Language, NextRefusal, NextStep};

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
    /// How long a further temper is held: `1h`; absent for an hour.
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

/// A further temper is held for so long unless something else is said, in minutes.
const HELD: f64 = 60.0;

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
    let stage = stage(language, question.stage.as_deref(), done.is_empty())?;
    let held = match question.held.as_deref() {
        None => HELD,
        Some(text) => {
            use crate::measure::{Kind, parse_time, read};
            read(language, Kind::Time, text, parse_time)?.get()
        }
    };
    let named = match (&question.steel, &question.composition) {
        (None, None) => None,
        (steel, composition) => {
            Some(steel_of(language, question.units, steel.as_deref(), composition.as_deref())?)
        }
    };
    let (steel, understood) = match named {
        Some((steel, understood)) => (Some(steel), understood),
        None => (None, Vec::new()),
    };
    let hardened = match &steel {
        Some(steel) => as_quenched(language, question, steel)?,
        None => None,
    };
    let mut notes = Vec::new();
    let (tempering, tempering_refusal) = match &steel {
        None => {
            notes.push(language.next_step(NextStep::NoSteel).into_owned());
            (None, None)
        }
        Some(steel) => match Tempering::of(steel) {
            Ok(tempering) => (Some(tempering), None),
            Err(error) => (None, Some(tempering_refused(speech, &error, ""))),
        },
    };
    if let Some(refusal) = &tempering_refusal {
        let why = format!("{} {}", refusal.message, refusal.instead);
        notes.push(language.next_step(NextStep::NoCurve { why: &why }).into_owned());
    }
    let checks = speech.checks(&question.oven)?;
    let learnt = match &tempering {
        Some(tempering) => Some(learned(speech, tempering, &question.learn, checks.as_ref())?),
        None => None,
    };
    let brittle = steel.as_ref().and_then(brittle_core);
    // What was done and what is advised are settings of the same oven.
    let oven = learnt.as_ref().map(|learnt| learnt.taught.oven_set());
    let part = oven.as_ref().map(|oven| Part { steel: oven, done: &done, hardened, brittle });
    // After hardening again the part has had no temper.
    let fresh = learnt.as_ref().zip(tempering.as_ref()).and_then(|(learnt, tempering)| {
        let aim = Aim { low: target.low(), high: target.high() };
        let how = How { done: &[], minutes: held, times: tempering.times(), over: None };
        Some(plan(&learnt.taught.oven_set(), aim, how).ok()?.steps.first()?.temper)
    });
    let expected = expected(question, stage, &done, hardened, learnt.as_ref());
    if let Some((mean, sd)) = expected
        && test.prior().expected().is_none()
    {
        let half = LEVEL_WIDTH * sd;
        let band =
            format::dash(&format::outward_low(mean - half), &format::outward_high(mean + half));
        let about = format!("{} HRC", fixed(mean, 0));
        let said = NextStep::Expected { about: &about, band: &format!("{band} HRC") };
        notes.push(language.next_step(said).into_owned());
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
        brittle,
        sources,
        checks: checks.as_ref().filter(|_| learnt.as_ref().is_some_and(|learnt| learnt.checked)),
    };
    let found = asked.step(part.as_ref())?;
    let unreached = |choice: &Choice| matches!(choice.action, Action::Temper(temper) if asked.advised(temper).dial_c.is_none());
    if learnt.as_ref().is_some_and(|learnt| learnt.checked) && found.choices.iter().any(unreached) {
        // No check reaches the temper: the oven is as good as unchecked there.
        return next(language, &NextQuestion { oven: Vec::new(), ..question.clone() });
    }
    let learned = learnt.as_ref().map(|learnt| learnt.said(speech)).unwrap_or_default();
    Ok(asked.answer(&found, steel.as_ref(), understood, learned, notes))
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

/// The range that makes the steel brittle where all sources agree, °C.
fn brittle_core(steel: &Steel) -> Option<(f64, f64)> {
    let ranges = match steel.grade() {
        Some(grade) => brittle::ranges(grade),
        None => brittle::ranges_of(Family::Alloy, &steel.limits()),
    };
    let found = ranges.iter().find(|one| one.kind == BrittleKind::TemperedMartensite)?;
    found.core.map(|core| (core.low, core.high))
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

struct Asked<'a> {
    speech: Speech,
    question: &'a NextQuestion,
    test: &'a FileTest,
    target: Target,
    stage: Stage,
    hardened: Option<AsQuenched>,
    expected: Option<(f64, f64)>,
    held: f64,
    /// The first temper after hardening again.
    fresh: Option<Temper>,
    /// Tempers that make the steel brittle, °C.
    brittle: Option<(f64, f64)>,
    /// Where the tempering stands.
    sources: &'static [&'static str],
    /// The oven as it was checked, where its checks reach everything that was learned.
    checks: Option<&'a OvenOffset>,
}

impl Asked<'_> {
    fn advised(&self, temper: Temper) -> AdvisedTemper {
        let metal = Celsius::new(temper.celsius()).ok();
        let dial = metal.and_then(|metal| self.checks?.dial_for(metal).ok());
        AdvisedTemper {
            celsius: temper.celsius(),
            dial_c: dial.map(Celsius::get),
            hours: temper.hours(),
        }
    }

    fn step(&self, part: Option<&Part<'_>>) -> Result<biteband_evidence::step::Step, Refusal> {
        next_step(&Situation {
            test: self.test,
            target: self.target,
            stage: self.stage,
            softening: part.map(|part| part as &dyn Softening),
            minutes: self.held,
            hardened: self.hardened,
            expected: self.expected,
            may_harden: !self.question.at_size,
            overheated: self.question.overheated,
            hurried: self.question.hurried,
        })
        .map_err(|error| Refusal::of_evidence(self.speech.language, &error))
    }

    fn say(&self, phrase: NextStep<'_>) -> String {
        self.speech.language.next_step(phrase).into_owned()
    }

    fn answer(
        &self,
        found: &biteband_evidence::step::Step,
        steel: Option<&Steel>,
        understood: Vec<String>,
        learned: Vec<String>,
        mut notes: Vec<String>,
    ) -> NextStepAnswer {
        let options: Vec<OptionAnswer> =
            found.choices.iter().map(|choice| self.option(choice)).collect();
        let first = options.first();
        let now = found.now;
        let chances = self.chances(now, false);
        let stroked = found.diagnosis != Diagnosis::Unmeasured;
        let causes = self.say(NextStep::Causes(found.diagnosis));
        let why = [
            self.say(NextStep::Stands(found.diagnosis)),
            if stroked { chances } else { String::new() },
            first.map(|first| first.how.clone()).unwrap_or_default(),
            causes,
        ];
        let parts = why.clone();
        let why = super::heat::joined(why.into_iter());
        let open_question = found.diagnosis == Diagnosis::Unclear
            && first.is_some_and(|first| first.action == "accept");
        if open_question {
            notes.push(self.say(NextStep::UseDecides));
        }
        if self.stage == Stage::Quenched {
            notes.push(self.say(NextStep::Today));
        }
        notes.push(self.say(NextStep::Weighed));
        let caution = first.map(|first| first.caution.clone()).unwrap_or_default();
        let mut sources = vec!["file-model"];
        sources.extend(self.sources);
        NextStepAnswer {
            steel: steel.and_then(Steel::grade).map(biteband_steel::Grade::key),
            understood,
            verdict: first.map(|first| first.text.clone()).unwrap_or_default(),
            action: first.map_or("stroke", |first| first.action),
            why,
            diagnosis: found.diagnosis.key(),
            now: now.into(),
            options,
            learned,
            notes,
            cautions: vec![caution].into_iter().filter(|text| !text.is_empty()).collect(),
            sources,
            parts,
        }
    }

    fn chances(&self, odds: Odds, after: bool) -> String {
        let [under, inside, over] = [odds.under(), odds.inside(), odds.over()].map(percent);
        let (under, inside, over) = (under.as_str(), inside.as_str(), over.as_str());
        self.say(if after {
            NextStep::After { under, inside, over }
        } else {
            NextStep::Chances { under, inside, over }
        })
    }

    fn option(&self, choice: &Choice) -> OptionAnswer {
        let temper = match choice.action {
            Action::Temper(temper) | Action::Snap(temper) => Some(temper),
            Action::Harden => self.fresh,
            _ => None,
        };
        let grade = match choice.action {
            Action::Stroke(_, grade) => Some(grade),
            _ => None,
        };
        let at = temper.map(|one| self.speech.celsius(one.celsius())).unwrap_or_default();
        let held = temper.map(time).unwrap_or_default();
        let written = grade.map(format::exact).unwrap_or_default();
        let range = match choice.action {
            Action::ChangeTarget { low, high } => format!(
                "{} HRC",
                format::dash(&format::outward_low(low), &format::outward_high(high))
            ),
            _ => String::new(),
        };
        let fresh = self
            .fresh
            .map(|one| format!("{} for {}", self.speech.celsius(one.celsius()), time(one)));
        let fresh = fresh.unwrap_or_default();
        let act = match choice.action {
            Action::Accept => Act::Accept,
            Action::ClearUp => Act::ClearUp,
            Action::Stroke(..) => Act::Stroke { grade: &written },
            Action::Read => Act::Read,
            Action::Grind => Act::Grind,
            Action::Temper(_) => Act::Temper { at: &at, time: &held },
            Action::Snap(_) => Act::Snap { at: &at, time: &held },
            Action::Harden => Act::Harden { again: self.stage != Stage::Bought, temper: &fresh },
            Action::ChangeTarget { .. } => Act::ChangeTarget { range: &range },
            Action::ChangePlan => Act::ChangePlan,
        };
        let measures = matches!(act, Act::ClearUp | Act::Stroke { .. } | Act::Read | Act::Grind);
        let chances = match act {
            Act::ChangeTarget { .. } | Act::ChangePlan => String::new(),
            Act::Accept => self.chances(choice.odds, false),
            _ => self.chances(choice.odds, true),
        };
        let best = if measures { self.say(NextStep::IfBest) } else { String::new() };
        let mut how = self.say(NextStep::How(act));
        if let (Act::Temper { .. }, Some(temper), Some((low, high))) = (act, temper, self.brittle) {
            let range = self.speech.units.temperatures(low, high);
            let inside = temper.celsius() >= low && temper.celsius() <= high;
            if inside || temper.celsius() > high {
                how = format!("{how} {}", self.say(NextStep::Brittle { range: &range, inside }));
            }
        }
        if !choice.open && matches!(act, Act::Harden { again: true, .. }) {
            how = format!("{} {how}", self.say(NextStep::AtSize));
        }
        OptionAnswer {
            action: choice.action.key(),
            under: choice.odds.under(),
            inside: choice.odds.inside(),
            over: choice.odds.over(),
            worth: choice.worth,
            open: choice.open,
            temper: temper.map(|one| self.advised(one)),
            file: grade,
            text: self.say(NextStep::Do(act)),
            how,
            chances: super::heat::joined([chances, best].into_iter()),
            undone: self.say(NextStep::Undone(act)),
            caution: self.say(NextStep::Caution(act)),
        }
    }
}

/// A chance in whole percent; what is not certain is not called so.
pub(super) fn percent(chance: f64) -> String {
    rounded_percent(chance, (100.0 * chance).round())
}

/// A chance as it was rounded to whole percent, likewise.
pub(crate) fn rounded_percent(chance: f64, whole: f64) -> String {
    if whole < 1.0 && chance > 0.0 {
        "under 1 %".to_owned()
    } else if chance < PROVED && (100.0 * PROVED..96.0).contains(&whole) {
        // What is not proved must not look as if it were.
        "just under 95 %".to_owned()
    } else if whole > 99.0 && chance < 1.0 {
        "over 99 %".to_owned()
    } else {
        format!("{} %", fixed(whole, 0))
    }
}

fn time(temper: Temper) -> String {
    super::temper::time(temper.minutes())
}
