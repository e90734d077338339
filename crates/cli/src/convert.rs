//! `biteband convert`.

use std::io;

use biteband_bench::answer::{ConvertAnswer, ConvertQuestion, Converted, convert};
use biteband_bench::format;
use biteband_bench::words::Phrase;
use biteband_hardness::{Axis, Table, TableId};

use crate::args::ConvertArgs;
use crate::output::{Output, Stop};
use crate::{sheet, words};

pub(crate) fn run(output: &mut Output, args: &ConvertArgs) -> Result<(), Stop> {
    if let (Some(path), Some(column)) = (&args.csv, &args.column) {
        return sheet::run(output, args, path, column);
    }
    let question = ConvertQuestion {
        text: args.text.join(" "),
        to: args.to.clone(),
        material: args.material.clone(),
        table: args.table.clone(),
        units: output.units,
    };
    let answer = convert(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    output.flush()?;
    // Of the usual scales, which nobody asked for by name, only those that answer are worth a line.
    if !args.to.is_empty() {
        for refusal in &answer.refusals {
            output.aside(refusal)?;
        }
    }
    Ok(())
}

pub(crate) fn table(key: &str) -> Option<&'static Table> {
    TableId::find(key).and_then(TableId::get)
}

fn print(output: &mut Output, answer: &ConvertAnswer) -> io::Result<()> {
    let language = output.language;
    output.text(0, &language.say(Phrase::Understood(&answer.input.understood)))?;
    let (asks, notes): (Vec<_>, Vec<_>) = answer.input.notes.iter().partition(|n| n.asks);
    output.list(asks.iter().map(|note| note.text.as_str()))?;
    output.line("")?;
    for found in &answer.results {
        result(output, found)?;
    }
    output.line("")?;
    output.text(0, &language.say(Phrase::WidthMeaning))?;
    output.list(notes.iter().map(|note| note.text.as_str()))?;
    for caution in &answer.cautions {
        output.line("")?;
        output.text(0, caution)?;
    }
    output.line("")?;
    let mut used: Vec<&str> = answer.results.iter().map(|found| found.table).collect();
    used.sort_unstable();
    used.dedup();
    for table in used.into_iter().filter_map(table) {
        output.text(0, &format!("{}: {}", table.short(), table.title()))?;
    }
    Ok(())
}

/// One scale: name, number with its width, table and row; below it what the print says of it.
fn result(output: &mut Output, found: &Converted) -> io::Result<()> {
    let language = output.language;
    let axis = Axis::find(found.scale);
    let name = axis.map(|axis| language.say(Phrase::AxisName(axis))).unwrap_or_default();
    let short = table(found.table).map_or(found.table, Table::short);
    // A single strength is shown as its range already.
    let range_shown = axis == Some(Axis::Tensile) && found.width_level.is_some();
    let half = match axis {
        Some(Axis::Tensile) => output.units.number(Axis::Tensile, found.half_width),
        _ => format::outward_high(found.half_width),
    };
    let number =
        if range_shown { found.shown.clone() } else { format!("{} ± {half}", found.shown) };
    output.line(&format!("  {name:<26} {number:<24} {short}, {}", found.basis))?;
    let has = |flag| found.flags.contains(&flag);
    let notes = language
        .say(Phrase::TableNotes { parenthesised: has("parenthesised"), recalled: has("recalled") });
    if !notes.is_empty() {
        output.text(6, &notes)?;
    }
    if has("repeated") {
        output.text(6, words::repeated(language))?;
    }
    if let Some(measured) = &found.measured {
        output.text(6, &measured.shown)?;
    }
    let others: Vec<String> = found
        .others
        .iter()
        .map(|other| {
            format!("{} ({})", other.shown, table(other.table).map_or(other.table, Table::short))
        })
        .collect();
    if others.is_empty() {
        output.text(6, &language.say(Phrase::OtherTablesNone))
    } else {
        output.text(6, &language.say(Phrase::OtherTables { span: &others.join(", ") }))
    }
}
