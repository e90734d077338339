//! The ages of the 17-4 type, in the place of tempers.

use biteband_evidence::Target;
use biteband_steel::condition::PhAge;
use biteband_steel::temper::ages::{self, AgeError};
use biteband_steel::temper::{Temper, TemperingError};
use biteband_steel::{Grade, Interval};

use super::heat::{Speech, joined};
use super::temper::{TemperQuestion, tempering_refused, time};
use super::temper_answer::{AgeOption, TemperAnswer};
use crate::format::{exact, fixed};
use crate::refusal::Refusal;
use crate::tempers::parse_tempers;
use crate::words::Tempers;

/// A target without an upper limit is met by the next minimum of this many HRC.
const OPEN: f64 = 4.0;

/// What an age leaves, or the ages for a hardness. An age that is asked for without a time is held as its standard has it.
///
/// # Errors
/// A refusal: no age of the table, or a temper that cannot be read.
pub(super) fn answer(
    speech: Speech,
    question: &TemperQuestion,
    grade: &'static Grade,
    understood: Vec<String>,
    target: Option<Target>,
) -> Result<TemperAnswer, Refusal> {
    let language = speech.language;
    let mut answer = TemperAnswer {
        steel: Some(grade.key()),
        understood,
        method: "age_table",
        ..TemperAnswer::default()
    };
    let mut said = Vec::new();
    if let Some(text) = &question.at {
        let held = question.held.as_deref().map(|text| {
            use crate::measure::{Kind, parse_time, read};
            read(language, Kind::Time, text, parse_time).map(biteband_quantity::Minutes::get)
        });
        let held = held.transpose()?;
        let steps = |usual: Option<f64>| {
            let mut steps = parse_tempers(language, text, usual)?;
            for text in &question.then {
                steps.extend(parse_tempers(language, text, usual)?);
            }
            Ok(steps)
        };
        let (steps, timed) = match steps(held) {
            // Any time will do: the age has its own.
            Err(Refusal { code: "bench.missing_time", .. }) => (steps(Some(60.0))?, false),
            steps => (steps?, true),
        };
        let age = found(&steps, timed)
            .map_err(|_| tempering_refused(speech, &TemperingError::Ages { grade }, text))?;
        said.push(option(speech, age, ("asked", ""), &mut answer));
    }
    if let Some(target) = target {
        let low = target.low().unwrap_or(0.0);
        let aim = Interval { low, high: target.high().unwrap_or(low + OPEN) };
        let for_it = ages::for_hardness(aim);
        let most = target.high().map(|high| format!("{} HRC", exact(high))).unwrap_or_default();
        let each = [(for_it.meets, "meets"), (for_it.harder, "harder"), (for_it.softer, "softer")];
        for (age, role) in each {
            said.extend(age.map(|age| option(speech, age, (role, &most), &mut answer)));
        }
    }
    if said.is_empty() {
        return Err(tempering_refused(speech, &TemperingError::Ages { grade }, grade.key()));
    }
    answer.verdict = joined(said.into_iter());
    answer.notes.push(language.tempers(Tempers::LeastOnly).into_owned());
    answer.cautions.push(language.tempers(Tempers::HotMetal).into_owned());
    Ok(answer)
}

/// The age of these steps; without a time the one of the temperature.
fn found(steps: &[Temper], timed: bool) -> Result<&'static PhAge, AgeError> {
    if timed {
        return ages::after(steps);
    }
    let with_its_time = |age: &'static PhAge| {
        let whole: Option<Vec<Temper>> = steps
            .iter()
            .zip(age.steps())
            .map(|(step, (_, hours))| Temper::new(step.celsius(), 60.0 * hours).ok())
            .collect();
        whole.and_then(|whole| ages::after(&whole).ok())
    };
    ages::all().find_map(with_its_time).map_or_else(|| ages::after(steps), Ok)
}

fn option(
    speech: Speech,
    age: &'static PhAge,
    (role, most): (&'static str, &str),
    answer: &mut TemperAnswer,
) -> String {
    let steps = age.steps().iter();
    let at = steps.map(|(celsius, hours)| {
        let at = speech.celsius(*celsius);
        speech.language.tempers(Tempers::One { at: &at, time: &time(60.0 * hours) }).into_owned()
    });
    let at = at.collect::<Vec<_>>().join(", ");
    let least = age.hrc_min().map(|hrc| format!("{} HRC", fixed(hrc, 0))).unwrap_or_default();
    let text = speech
        .language
        .tempers(Tempers::Age { name: age.name(), at: &at, least: &least, most, role })
        .into_owned();
    answer.ages.push(AgeOption {
        name: age.name(),
        role,
        least_hrc: age.hrc_min(),
        cited: age.cited().into(),
        text: text.clone(),
    });
    for key in age.cited().sources {
        if !answer.sources.contains(key) {
            answer.sources.push(key);
        }
    }
    text
}
