//! `biteband indent`.

use std::io;

use biteband_bench::Refusal;
use biteband_bench::answer::{IndentAnswer, IndentQuestion, indent, parse_readings};
use biteband_bench::format::Units;
use biteband_bench::words::{IndentRefusal, Language, Phrase};
use biteband_hardness::indentation::Error;
use biteband_hardness::{Table, decimal};

use crate::args::{IndentCommand, OnPart};
use crate::convert::table;
use crate::output::{Output, Stop};
use crate::words;

pub(crate) fn run(output: &mut Output, command: IndentCommand) -> Result<(), Stop> {
    let question = question(output.language, output.units, command)?;
    let answer = indent(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn question(
    language: Language,
    units: Units,
    command: IndentCommand,
) -> Result<IndentQuestion, Refusal> {
    let two =
        |first: Option<String>, second: Option<String>| first.into_iter().chain(second).collect();
    let (part, question) = match command {
        IndentCommand::Vickers { force, d1, d2, along_axis, part } => {
            let sizes = two(d1, d2);
            (part, IndentQuestion { kind: "vickers".into(), force, sizes, along_axis, ..blank() })
        }
        IndentCommand::Brinell { ball, force, d, d2, material, part } => {
            let sizes = two(d, d2);
            let kind = "brinell".into();
            (part, IndentQuestion { kind, ball, force, sizes, material, ..blank() })
        }
        IndentCommand::Knoop { force, d, part } => {
            let sizes = two(d, None);
            (part, IndentQuestion { kind: "knoop".into(), force, sizes, ..blank() })
        }
        IndentCommand::Rockwell { scale, depth, mark, part } => {
            (part, IndentQuestion { kind: "rockwell".into(), scale, depth, mark, ..blank() })
        }
    };
    let OnPart { value, readings, round, bore, sphere, thickness, edge, next } = part;
    let value = value.map(|text| number(language, &text)).transpose()?;
    let readings = readings.map(|text| parse_readings(language, &text)).transpose()?;
    let readings = readings.unwrap_or_default();
    Ok(IndentQuestion {
        value,
        readings,
        round,
        bore,
        sphere,
        thickness,
        edge,
        next,
        units,
        ..question
    })
}

fn blank() -> IndentQuestion {
    IndentQuestion::default()
}

/// A number that was read, with point or comma.
fn number(language: Language, text: &str) -> Result<f64, Refusal> {
    decimal(text).ok_or_else(|| {
        let error = Error::NotAHardness { given: f64::NAN };
        let [message, allowed, instead] = language.indent_refused(IndentRefusal::Core(&error));
        Refusal {
            code: "bench.unreadable_value",
            message: message.into_owned(),
            given: text.to_owned(),
            allowed: allowed.into_owned(),
            instead: instead.into_owned(),
        }
    })
}

fn print(output: &mut Output, answer: &IndentAnswer) -> io::Result<()> {
    let language = output.language;
    output.line(&answer.designation)?;
    if let Some(correction) = &answer.correction {
        output.text(0, &correction.text)?;
    }
    if let Some(series) = &answer.series {
        output.text(0, &series.text)?;
        if let Some(outlier) = &series.outlier {
            output.text(0, &outlier.text)?;
        }
    }
    output.line("")?;
    output.text(0, &answer.verdict)?;
    // That a number is on its scale is worth a line only when it is not.
    let worth =
        answer.limits.iter().filter(|limit| !(limit.holds && limit.rule.starts_with("scale")));
    output.list(worth.map(|limit| limit.text.as_str()))?;
    if !answer.thinnest.is_empty() {
        let rules: Vec<&str> = answer.thinnest.iter().map(|rule| rule.text.as_str()).collect();
        output.text(0, &words::thinnest(language, &rules.join("; ")))?;
    }
    if !answer.notes.is_empty() {
        output.line("")?;
        output.list(answer.notes.iter().map(String::as_str))?;
    }
    if !answer.converted.is_empty() {
        output.line("")?;
        for found in &answer.converted {
            let half = biteband_bench::format::outward_high(found.half_width);
            let short = table(found.table).map_or(found.table, Table::short);
            output.line(&format!("  {:<12} ± {half:<4} {short}", found.shown))?;
            let has = |flag| found.flags.contains(&flag);
            let (parenthesised, recalled) = (has("parenthesised"), has("recalled"));
            let notes = language.say(Phrase::TableNotes { parenthesised, recalled });
            if !notes.is_empty() {
                output.text(6, &notes)?;
            }
        }
    }
    if !answer.machine.limits.is_empty() {
        output.line("")?;
        output.list(answer.machine.limits.iter().map(|limit| limit.text.as_str()))?;
    }
    if !answer.machine.text.is_empty() {
        output.text(0, &answer.machine.text)?;
    }
    for caution in &answer.cautions {
        output.text(0, caution)?;
    }
    output.line("")?;
    output.text(0, &words::see_source(language, &answer.sources.join(", ")))
}
