//! `biteband file`.

use std::io::{self, Write};

use biteband_bench::Refusal;
use biteband_bench::answer::{
    ConditionsInput, FileAnswer, FileOutcome, FileQuestion, FileRefused, StrokeInput, TargetAnswer,
    assess, parse_prior, parse_proofs, parse_reading, parse_strokes, promised,
};
use biteband_bench::format;
use biteband_bench::state::list_of_grades;
use biteband_bench::words::{Language, Phrase, Ui};
use biteband_evidence::Error;
use biteband_hardness::{Axis, Scale};

use crate::args::{FileArgs, FileCommand, SkinName};
use crate::output::{Output, Stop, tell};
use crate::words;

pub(crate) fn run(output: &mut Output, command: FileCommand) -> Result<(), Stop> {
    let FileCommand { evidence: mut args, steel, done } = command;
    let of_steel = args.prior.as_deref().is_some_and(is_steel);
    let promise = match steel.filter(|_| of_steel) {
        Some(steel) => {
            args.prior = None;
            Some(promised(output.language, &steel, &done)?)
        }
        None => None,
    };
    let mut question = question(output, args)?;
    question.prior = question.prior.or(promise);
    let answered = assess(output.language, &question)
        .map_err(|refusal| words::with_option_for_set(output.language, refusal))?;
    match answered {
        FileOutcome::Answered(answer) => {
            if output.json {
                output.object(&answer)?;
            } else {
                print(
                    output,
                    &answer,
                    question.strokes.is_empty() && question.readings.is_empty(),
                )?;
            }
            Ok(())
        }
        FileOutcome::Refused(refused) => {
            if output.json {
                output.object(&refused)?;
                output.flush()?;
            }
            explain(output.language, &refused)?;
            Err(Stop::Told)
        }
    }
}

/// Whether what the grade promises is meant.
fn is_steel(prior: &str) -> bool {
    prior.trim().eq_ignore_ascii_case("steel")
}

pub(crate) fn question(output: &Output, args: FileArgs) -> Result<FileQuestion, Refusal> {
    let language = output.language;
    let set = match args.set.as_deref() {
        None => Vec::new(),
        Some(text) if text.trim().is_empty() => {
            return Err(Refusal::of_evidence(language, &Error::NoFiles));
        }
        Some(text) => grades(language, text)?,
    };
    let mut strokes = one_stroke_each(language, &args)?;
    if let Some(text) = &args.strokes {
        strokes.extend(parse_strokes(language, text)?);
    }
    let proved = match &args.proved {
        Some(text) => parse_proofs(language, text)?,
        None => Vec::new(),
    };
    let prior = match args.prior.as_deref().map(str::trim) {
        None => None,
        Some(text) if is_steel(text) => {
            return Err(words::no_prior_of_steel(language));
        }
        Some(text) => Some(parse_prior(language, text)?),
    };
    let readings: Result<Vec<_>, _> =
        args.readings.iter().map(|text| parse_reading(language, text)).collect();
    Ok(FileQuestion {
        set,
        tolerance: args.tolerance,
        hand: args.hand,
        yes_no: args.yes_no,
        strokes,
        proved,
        conditions: ConditionsInput {
            skin_ground: args.skin.map(|skin| skin == SkinName::Ground),
            edge: args.edge,
            finish_differs: args.finish_differs,
            carbide_rich: args.carbide_rich,
        },
        prior,
        target: args.target,
        readings: readings?,
        units: output.units,
    })
}

pub(crate) fn grades(language: Language, text: &str) -> Result<Vec<f64>, Refusal> {
    list_of_grades(text).ok_or_else(|| Refusal {
        code: "bench.unreadable_grades",
        message: language
            .say(Phrase::NotListOfGrades { given: &format::shortened(text) })
            .into_owned(),
        given: format::shortened(text),
        allowed: "40,45,50,55,60,65".to_owned(),
        instead: language.say(Phrase::NotListOfGradesInstead).into_owned(),
    })
}

/// `--bites`, `--skates` and `--slight`: one stroke for each grade, every grade in one of them.
fn one_stroke_each(language: Language, args: &FileArgs) -> Result<Vec<StrokeInput>, Refusal> {
    let lists = [("bites", &args.bites), ("skates", &args.skates), ("slight", &args.slight)];
    let mut strokes: Vec<StrokeInput> = Vec::new();
    for (outcome, list) in lists {
        let Some(text) = list.as_deref().filter(|text| !text.trim().is_empty()) else { continue };
        for file in grades(language, text)? {
            let other = |stroke: &StrokeInput| {
                stroke.file.total_cmp(&file).is_eq() && stroke.outcome != outcome
            };
            if strokes.iter().any(other) {
                return Err(words::grade_twice(language, file));
            }
            strokes.push(StrokeInput { file, outcome: outcome.to_owned(), spot: None });
        }
    }
    Ok(strokes)
}

fn axis_name(language: Language, symbol: &str) -> String {
    Axis::find(symbol).map(|axis| language.say(Phrase::AxisName(axis))).unwrap_or_default().into()
}

/// "49 – 57 HRC", "60 HRC or more": the unit stands beside its number.
fn limits(language: Language, low: Option<f64>, high: Option<f64>, unit: &str) -> String {
    match (low.map(format::outward_low), high.map(format::outward_high)) {
        (Some(low), Some(high)) => format!("{} {unit}", format::dash(&low, &high)),
        (Some(low), None) => {
            language.say(Phrase::BandOr { low: &format!("{low} {unit}") }).into_owned()
        }
        (None, Some(high)) => {
            language.say(Phrase::BandBelow { high: &format!("{high} {unit}") }).into_owned()
        }
        (None, None) => language.say(Phrase::BandUnknown).into_owned(),
    }
}

fn print(output: &mut Output, answer: &FileAnswer, untouched: bool) -> io::Result<()> {
    let language = output.language;
    let say = |phrase: Phrase<'_>| language.say(phrase);
    let band = &answer.band;
    if untouched {
        output.text(0, &say(Phrase::NothingStrokedNumber))?;
    } else {
        output.text(0, &answer.verdict)?;
        output.text(0, &limits(language, band.low, band.high, band.scale))?;
    }
    if band.low.is_some() || band.high.is_some() {
        output.text(0, &say(Phrase::LevelMeaning))?;
    }
    // Without a stroke the chances would be those of the axis, not of the part.
    if let Some(target) = answer.target.as_ref().filter(|_| !untouched) {
        output.text(0, &target_line(language, target))?;
    }
    output.list(answer.readings.iter().map(|reading| reading.shown.as_str()))?;
    output.line("")?;
    output.text(0, &answer.next.say)?;
    for caution in &answer.cautions {
        output.text(0, caution)?;
    }
    output.line("")?;
    output.list(answer.notes.iter().map(String::as_str))?;
    if !answer.scales.is_empty() {
        output.line("")?;
        output.text(0, &say(Phrase::OtherScales))?;
        for there in &answer.scales {
            let name = axis_name(language, there.scale);
            output.line(&format!("  {name:<26} {}", there.shown))?;
        }
        output.text(2, &say(Phrase::OtherScalesWidth))?;
    }
    output.line("")?;
    output.text(0, &words::see_source(language, &answer.sources.join(", ")))
}

fn target_line(language: Language, target: &TargetAnswer) -> String {
    let [under, inside, over] = format::percents([target.under, target.inside, target.over]);
    let plain = |limit: Option<f64>| limit.map(format::plain);
    let unit = Axis::Hardness(Scale::Hrc).unit();
    let wanted = match (plain(target.low), plain(target.high)) {
        (Some(low), Some(high)) => format!("{} {unit}", format::dash(&low, &high)),
        (Some(one), None) => format!("{one} {unit} min"),
        (None, Some(one)) => format!("{one} {unit} max"),
        (None, None) => String::new(),
    };
    let mut parts = Vec::new();
    if target.low.is_some() {
        parts.push(language.say(Phrase::OddsUnder { percent: under }));
    }
    parts.push(language.say(Phrase::OddsInside { percent: inside, target: &wanted }));
    if target.high.is_some() {
        parts.push(language.say(Phrase::OddsOver { percent: over }));
    }
    let label = language.label(Ui::Target);
    format!("{label}: {}. {}", parts.join(", "), target.verdict)
}

/// Contradictory evidence: no number, the two files or readings, likely causes, what to do.
fn explain(language: Language, refused: &FileRefused) -> io::Result<()> {
    tell(&refused.refused.message)?;
    for contradiction in &refused.contradictions {
        if contradiction.why != refused.next.why {
            tell(&contradiction.why)?;
        }
    }
    if let Some(first) = refused.contradictions.first() {
        let mut err = io::stderr().lock();
        for cause in &first.causes {
            writeln!(err, "- {}", cause.text)?;
        }
        writeln!(err, "{}", first.without_harder)?;
        if first.without_softer != first.without_harder {
            writeln!(err, "{}", first.without_softer)?;
        }
    }
    for clash in &refused.clashes {
        if clash.text != refused.next.why {
            tell(&clash.text)?;
        }
        let mut err = io::stderr().lock();
        for cause in &clash.why {
            writeln!(err, "- {cause}")?;
        }
        writeln!(err, "{}\n{}", clash.without_harder, clash.without_softer)?;
    }
    tell(&format!("{}: {}", language.label(Ui::NextTitle), refused.next.say))?;
    for caution in &refused.cautions {
        tell(caution)?;
    }
    Ok(())
}
