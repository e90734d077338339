//! The hardness that tempering leaves, and tempers for a hardness.

use biteband_evidence::Target;
use biteband_hardness::{Axis, Choice, Reading, Scale, convert, designation};
use biteband_quantity::Celsius;
use biteband_steel::furnace::OvenOffset;
use biteband_steel::hardenability::{fifty_percent_martensite, initial_hardness};
use biteband_steel::reach::Steel;
use biteband_steel::temper::{
    Measured, Oven, Taught, TaughtError, Tempering, TemperingError, ages,
};
use biteband_steel::{Element, Grade, Hardening, Interval};
use serde::Deserialize;

use super::file_question::parse_target;
use super::heat::Speech;
use super::reach::steel_of;
use super::temper_ages;
use super::temper_answer::{LearnedAnswer, OwnPoint, TemperAnswer};
use super::temper_said::Job;
use crate::format::{self, Units, fixed};
use crate::measure::{Kind, parse_time, read};
use crate::refusal::Refusal;
use crate::section::SectionInput;
use crate::tempers::{parse_tempers, temper as one_temper};
use crate::words::{Language, TemperRefusal, Tempers};

pub(super) const HRC: Axis = Axis::Hardness(Scale::Hrc);

/// A single wanted number is meant within this on either side, HRC.
const ABOUT: f64 = 1.0;
/// The Rockwell C scale ends here.
const SCALE_END: f64 = 20.0;
/// A check of an oven is worth no more than this, K at 95 %.
const LEAST_WIDTH: f64 = 2.0;
/// Hardness as quenched beyond half and full martensite is taken within this, HRC: what heats and instruments differ by. Ours.
const ABOUT_QUENCHED: f64 = 3.0;
/// A reading or a file test that is given as one number is good to this, HRC.
const MEASURED: f64 = 1.0;
/// A short low temper that carries a part over the night: °C and minutes; common practice, no source.
pub(super) const SNAP: (f64, f64) = (150.0, 60.0);
/// Results within this of the book agree with it, HRC.
const AGREES: f64 = 1.0;
/// A difference of the dial from here on is told, K.
const TOLD: f64 = 5.0;
/// A temper is held for so long unless something else is said, in minutes.
pub(crate) const HELD: f64 = 120.0;

/// What is asked: a temper, a target, or both.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct TemperQuestion {
    /// Any designation of a grade.
    pub steel: Option<String>,
    /// In place of it, mass percent of a heat, or limits.
    pub composition: Option<String>,
    /// Temperature of the metal: `220C`.
    pub at: Option<String>,
    /// Time at heat, of the temper or of each temper of the plan: `2h`; two hours if not given.
    pub held: Option<String>,
    /// Further tempers, in their order: `300C/1h`.
    pub then: Vec<String>,
    /// Tempers that a part to be drawn back has had: `205C/2h`.
    pub done: Vec<String>,
    /// Hardness that was measured as quenched: `57 HRC`.
    pub as_quenched: Option<String>,
    /// Wanted hardness on any scale: `45 HRC`, `50-54 HRC`.
    pub target: Option<String>,
    /// Own results with this steel: `53 HRC@220C/2h`, the temperatures as the oven's dial showed them.
    pub learn: Vec<String>,
    /// Checks of the oven: `240C=231.9C`, `240C=tin`.
    pub oven: Vec<String>,
    /// The section, for the time to heat through.
    pub section: SectionInput,
    /// How many times each temper is done; what the grade wants if not given.
    pub times: Option<u8>,
    /// There is no time left today for the full temper.
    pub hurried: bool,
    /// Units of the texts; numbers stay in °C and hours.
    pub units: Units,
}

/// Says what tempering leaves, or how to temper for a hardness.
///
/// # Errors
/// A refusal: a steel that is not known or not tempered, a temper that cannot be read or is above the change, a target that
/// no temper gives.
///
/// # Example
/// ```
/// use biteband_bench::answer::{TemperQuestion, temper};
/// use biteband_bench::words::Language;
/// let question = TemperQuestion {
///     steel: Some("4140".into()),
///     target: Some("45 HRC".into()),
///     held: Some("2h".into()),
///     ..Default::default()
/// };
/// // Common practice, no source: the middle forties lie between 350 and 480 °C.
/// let answer = temper(Language::English, &question).unwrap();
/// let first = answer.plan.first().unwrap();
/// assert!((350.0..480.0).contains(&first.celsius));
/// ```
pub fn temper(language: Language, question: &TemperQuestion) -> Result<TemperAnswer, Refusal> {
    asked(language, question, false)
}

/// The curve alone, with what it rests on, where neither a temper nor a target is given.
///
/// # Errors
/// A refusal as of [`temper`].
pub(crate) fn temper_curve(
    language: Language,
    question: &TemperQuestion,
) -> Result<TemperAnswer, Refusal> {
    asked(language, question, true)
}

fn asked(
    language: Language,
    question: &TemperQuestion,
    curve_alone: bool,
) -> Result<TemperAnswer, Refusal> {
    let speech = Speech { language, units: question.units };
    let (steel, understood) = steel_of(
        language,
        question.units,
        question.steel.as_deref(),
        question.composition.as_deref(),
    )?;
    let held = match question.held.as_deref() {
        None => HELD,
        Some(text) => read(language, Kind::Time, text, parse_time)?.get(),
    };
    let list = |texts: &[String]| {
        let mut all = Vec::new();
        for text in texts {
            all.extend(parse_tempers(language, text, Some(held))?);
        }
        Ok::<_, Refusal>(all)
    };
    let mut given = Vec::new();
    if let Some(text) = &question.at {
        given.extend(parse_tempers(language, text, Some(held))?);
    }
    given.extend(list(&question.then)?);
    let done = list(&question.done)?;
    let target = question.target.as_deref().map(str::trim).filter(|text| !text.is_empty());
    let target = target.map(|text| wanted(language, text).map(|aim| (text, aim))).transpose()?;
    if given.is_empty() && target.is_none() && !curve_alone {
        return Err(refused(speech, "bench.nothing_asked", "", TemperRefusal::NothingAsked));
    }
    if let Some(grade) = steel.grade().filter(|grade| grade.hardening() == Hardening::Age) {
        return temper_ages::answer(
            speech,
            question,
            grade,
            understood,
            target.map(|(_, aim)| aim),
        );
    }
    let mut tempering = Tempering::of(&steel).map_err(|error| {
        tempering_refused(speech, &error, question.steel.as_deref().unwrap_or(""))
    })?;
    let quenched = quenched_of(speech, &steel, question)?;
    if let Some(hrc) = quenched {
        tempering = tempering.with_as_quenched(hrc, MEASURED);
    }
    let checks = speech.checks(&question.oven)?;
    let learnt = learned(speech, &tempering, &question.learn, checks.as_ref())?;
    let times = question.times.unwrap_or_else(|| tempering.times()).clamp(1, 4);
    let job =
        Job { speech, question, steel: &steel, learnt: &learnt, checks, held, times, quenched };
    job.answer(understood, &given, &done, target)
}

/// The hardness after one temper, in HRC: median and both ends of the band. For rows of a table: a grade, or a composition
/// as it is written, °C, minutes, and the hardness as quenched in HRC.
///
/// # Errors
/// A refusal as of [`temper`].
///
/// # Example
/// ```
/// use biteband_bench::answer::tempered;
/// use biteband_bench::words::Language;
/// let [median, low, high] =
///     tempered(Language::English, Some("4140"), "", 220.0, 60.0, None).unwrap();
/// assert!(low < median && median < high);
/// ```
pub fn tempered(
    language: Language,
    steel: Option<&str>,
    composition: &str,
    celsius: f64,
    minutes: f64,
    as_quenched: Option<f64>,
) -> Result<[f64; 3], Refusal> {
    let speech = Speech { language, units: Units::Metric };
    let composition = steel.is_none().then_some(composition);
    let (steel, _) = steel_of(language, Units::Metric, steel, composition)?;
    let refuse = |error: TemperingError| tempering_refused(speech, &error, "");
    let mut tempering = Tempering::of(&steel).map_err(refuse)?;
    if let Some(hrc) = as_quenched {
        let given = format!("{} HRC", format::exact(hrc));
        quenched_at(speech, &steel, &given, hrc)?;
        tempering = tempering.with_as_quenched(hrc, MEASURED);
    }
    let temper = one_temper(language, "", celsius, minutes)?;
    let found = tempering.band(&[temper]).map_err(refuse)?;
    Ok([found.median, found.low, found.high])
}

pub(super) fn refused(
    speech: Speech,
    code: &'static str,
    given: &str,
    what: TemperRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = speech.language.temper_refused(what);
    Refusal::new(code, message, format::shortened(given), allowed, instead)
}

/// Why the hardness as quenched is none of this steel, for a page that shows it at its field.
pub(crate) fn not_as_quenched(language: Language, question: &TemperQuestion) -> Option<Refusal> {
    let speech = Speech { language, units: question.units };
    let (name, composition) = (question.steel.as_deref(), question.composition.as_deref());
    let (steel, _) = steel_of(language, question.units, name, composition).ok()?;
    quenched_of(speech, &steel, question).err()
}

fn quenched_of(
    speech: Speech,
    steel: &Steel,
    question: &TemperQuestion,
) -> Result<Option<f64>, Refusal> {
    let Some(text) = question.as_quenched.as_deref() else { return Ok(None) };
    quenched_at(speech, steel, text, hrc_of(speech.language, text)?).map(Some)
}

/// A hardness as quenched that a steel of this carbon can have: from half martensite to all of it, a few HRC about that, and
/// what is known of the grade.
fn quenched_at(speech: Speech, steel: &Steel, text: &str, hrc: f64) -> Result<f64, Refusal> {
    let Some(carbon) = steel.limits().range(Element::C) else { return Ok(hrc) };
    let known = steel.grade().and_then(Grade::as_quenched);
    let low = fifty_percent_martensite(carbon.low) - ABOUT_QUENCHED;
    let high = initial_hardness(carbon.high) + ABOUT_QUENCHED;
    let low = known.map_or(low, |known| low.min(known.low)).round();
    let high = known.map_or(high, |known| high.max(known.high)).round();
    if hrc >= low && hrc <= high {
        return Ok(hrc);
    }
    let what = TemperRefusal::NotQuenched {
        given: &format::shortened(text),
        range: &speech.units.range(HRC, Some(low), Some(high)),
        harder: hrc > high,
    };
    Err(refused(speech, "temper.not_as_quenched", text, what))
}

/// Reads a wanted hardness; a single number is meant within one on either side.
///
/// # Errors
/// A refusal: no hardness, or one below the end of the scale, as of a conversion.
pub(crate) fn wanted(language: Language, text: &str) -> Result<Target, Refusal> {
    let target = match parse_target(language, text) {
        Err(refusal) if refusal.code == "bench.target_not_a_range" => {
            let about = format!("{text} +-{}", format::exact(ABOUT));
            parse_target(language, &about).or_else(|_| {
                // A number on another scale has its own width there.
                let hrc = hrc_of(language, text)?;
                Target::between(hrc - ABOUT, hrc + ABOUT)
                    .map_err(|error| Refusal::of_evidence(language, &error))
            })
        }
        other => other,
    }?;
    let middle = match (target.low(), target.high()) {
        (Some(low), Some(high)) => Some(f64::midpoint(low, high)),
        (low, high) => low.or(high),
    };
    if let Some(middle) = middle.filter(|middle| *middle < SCALE_END) {
        let refuse = |error| Refusal::of_hardness(language, &error);
        let soft = Reading::new(HRC, middle).map_err(refuse)?;
        let _ = convert(soft, Axis::Hardness(Scale::Hv), Choice::STEEL).map_err(refuse)?;
    }
    Ok(target)
}

/// A single hardness on any scale, in HRC.
pub(crate) fn hrc_of(language: Language, text: &str) -> Result<f64, Refusal> {
    let parsed = match designation::parse(text) {
        Err(designation::Error::NoScale) => designation::parse(&format!("{text} HRC")),
        other => other,
    }
    .map_err(|error| Refusal::of_designation(language, text, &error))?;
    let written = parsed.designation();
    let (Some(low), Some(high)) = written.amount.limits() else {
        let what = TemperRefusal::AsQuenched { given: &format::shortened(text) };
        let [message, allowed, instead] = language.temper_refused(what);
        return Err(Refusal::new("bench.not_one_number", message, text, allowed, instead));
    };
    let value = f64::midpoint(low, high);
    if written.axis == HRC {
        return Ok(value);
    }
    let refuse = |error| Refusal::of_hardness(language, &error);
    let reading = Reading::new(written.axis, value).map_err(refuse)?;
    Ok(convert(reading, HRC, Choice::STEEL).map_err(refuse)?.at.value)
}

/// A time in minutes, in hours from one and a half on.
pub(crate) fn time(minutes: f64) -> String {
    if minutes >= 89.5 {
        format!("{} h", format::plain((minutes / 6.0).round() / 10.0))
    } else {
        format!("{} min", fixed(minutes, 0))
    }
}

/// Why a steel has no hardness after tempering.
pub(super) fn tempering_refused(speech: Speech, error: &TemperingError, given: &str) -> Refusal {
    let range = |range: Option<Interval>| {
        range.map(|range| speech.units.temperatures(range.low, range.high)).unwrap_or_default()
    };
    let hrc = |range: Option<Interval>| {
        range
            .map(|range| speech.units.range(HRC, Some(range.low), Some(range.high)))
            .unwrap_or_default()
    };
    let refuse = |given: &str, what: TemperRefusal<'_>| refused(speech, error.code(), given, what);
    match error {
        TemperingError::DoesNotHarden { grade } => {
            refuse(given, TemperRefusal::DoesNotHarden { steel: grade.name() })
        }
        TemperingError::Ages { grade } => {
            let each = ages::all().map(|age| {
                let steps: Vec<String> = age
                    .steps()
                    .iter()
                    .map(|(celsius, hours)| {
                        format!("{} {}", speech.celsius(*celsius), time(60.0 * hours))
                    })
                    .collect();
                let least = age.hrc_min().map(|hrc| format!("{} HRC", fixed(hrc, 0)));
                speech
                    .language
                    .tempers(Tempers::Ages17 {
                        name: age.name(),
                        at: &steps.join(", "),
                        least: &least.unwrap_or_default(),
                    })
                    .into_owned()
            });
            let each = each.collect::<Vec<_>>().join("; ");
            refuse(given, TemperRefusal::Ages { steel: grade.name(), ages: &each })
        }
        TemperingError::CaseOnly { grade } => refuse(
            given,
            TemperRefusal::CaseOnly {
                steel: grade.name(),
                range: &range(grade.temper_range()),
                working: &hrc(grade.working()),
            },
        ),
        TemperingError::NoCurve { grade } => refuse(
            given,
            TemperRefusal::NoCurve { steel: grade.name(), range: &range(grade.temper_range()) },
        ),
        TemperingError::Regression(inside) => {
            refuse(given, TemperRefusal::Composition { why: &inside.to_string() })
        }
        TemperingError::Sheets(inside) => {
            refuse(given, TemperRefusal::OutsideSheets { why: &inside.to_string() })
        }
        TemperingError::AboveAc1 { celsius, ac1 } => {
            let (at, ac1) = (speech.celsius(*celsius), speech.celsius(*ac1));
            refuse(&at, TemperRefusal::AboveAc1 { at: &at, ac1: &ac1 })
        }
    }
}

/// A steel with what own results taught of it, and how its temperatures are meant.
pub(super) struct Learnt<'a> {
    pub(super) taught: Taught<'a>,
    /// The oven was checked: results and plans are in the metal's temperatures, as the checks have them. Otherwise they are
    /// in those of the dial.
    pub(super) checked: bool,
}

/// Learns from results like `53 HRC@220C/2h`.
pub(super) fn learned<'a>(
    speech: Speech,
    tempering: &'a Tempering,
    texts: &[String],
    checks: Option<&OvenOffset>,
) -> Result<Learnt<'a>, Refusal> {
    let mut results = Vec::new();
    let mut width: f64 = 0.0;
    let mut checked = checks.is_some();
    for text in texts.iter().filter(|text| !text.trim().is_empty()) {
        let shown = format::shortened(text);
        let Some((hardness, tempers)) = text.split_once('@') else {
            let what = TemperRefusal::Learn { given: &shown };
            return Err(refused(speech, "bench.unreadable_result", text, what));
        };
        let hrc = hrc_of(speech.language, hardness)?;
        let tempers = parse_tempers(speech.language, tempers, None)?;
        results.push(Measured { tempers, hrc, sd: MEASURED });
    }
    for result in &mut results {
        for temper in &mut result.tempers {
            let offset =
                checks.and_then(|checks| checks.at(Celsius::new(temper.celsius()).ok()?).ok());
            match offset {
                Some(offset) => {
                    let metal = temper.celsius() + offset.kelvins.get();
                    *temper = one_temper(speech.language, "", metal, temper.minutes())?;
                    width = width.max(offset.half_width.get());
                }
                // A check that does not reach leaves the oven as it was: unknown.
                None => checked = false,
            }
        }
    }
    let oven = if checked {
        Oven { mean_k: 0.0, sd_k: 0.5 * width.max(LEAST_WIDTH) }
    } else {
        Oven::UNCHECKED
    };
    let taught = Taught::new(tempering, oven, &results).map_err(|error| match error {
        // A result at a temper that the book refuses teaches nothing, and the person is to know why.
        TaughtError::Tempering(error) => tempering_refused(speech, &error, &texts.join(", ")),
        TaughtError::Learn(error) => refused(
            speech,
            error.code(),
            &texts.join(", "),
            TemperRefusal::Weigh { why: &error.to_string() },
        ),
    })?;
    Ok(Learnt { taught, checked })
}

impl Learnt<'_> {
    /// What the results taught, with their places on the curve.
    pub(super) fn answer(&self, speech: Speech) -> Option<LearnedAnswer> {
        let results = self.taught.results();
        if results.is_empty() {
            return None;
        }
        let (heat, oven) = (self.taught.heat(), self.taught.oven());
        let points = results.iter().filter_map(|one| {
            let book = self.taught.tempering().band(&one.tempers).ok()?.median;
            let celsius = one.tempers.iter().map(|temper| temper.celsius()).reduce(f64::max)?;
            Some(OwnPoint { celsius, hrc: one.hrc, book })
        });
        Some(LearnedAnswer {
            count: results.len(),
            offset_hrc: heat.mean,
            offset_sd: heat.sd,
            oven_k: oven.mean,
            oven_sd: oven.sd,
            points: points.collect(),
            text: self.said(speech),
        })
    }

    /// The same in plain words; nothing without a result.
    pub(super) fn said(&self, speech: Speech) -> Vec<String> {
        let results = self.taught.results();
        if results.is_empty() {
            return Vec::new();
        }
        let say = |phrase: Tempers<'_>| speech.language.tempers(phrase).into_owned();
        let hrc = |value: f64| format!("{} HRC", fixed(value, 0));
        let (mut apart, mut text) = (Vec::new(), Vec::new());
        for (one, doubt) in results.iter().zip(self.taught.doubted()) {
            let Ok(book) = self.taught.tempering().band(&one.tempers) else { continue };
            // What the result was off, not what is left of it after it was shared out.
            let off = one.hrc - book.median;
            match doubt {
                None => apart.push(off),
                Some(most) => text.push(say(Tempers::Doubted {
                    hrc: &hrc(one.hrc),
                    offset: &hrc(off.abs()),
                    harder: off > 0.0,
                    most: &hrc(*most),
                })),
            }
        }
        let count = apart.len();
        if count == 0 {
            return text;
        }
        #[expect(clippy::cast_precision_loss, reason = "a handful of results")]
        let mean = apart.iter().sum::<f64>() / count as f64;
        if mean.abs() < AGREES {
            text.push(say(Tempers::LearnedNothing { count }));
            return text;
        }
        let offset = hrc(mean.abs().round());
        text.push(say(Tempers::Learned { count, offset: &offset, harder: mean > 0.0 }));
        let oven = self.taught.oven();
        if oven.mean.abs() >= oven.sd && oven.mean.abs() >= TOLD {
            let dial = speech.difference(oven.mean.abs());
            text.push(say(Tempers::LearnedOven { dial: &dial, hotter: oven.mean > 0.0 }));
        } else if !self.checked {
            text.push(say(Tempers::LearnedSplit));
        }
        text
    }
}
