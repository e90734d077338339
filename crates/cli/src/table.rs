//! `biteband table` and `biteband source`.

use std::io;

use biteband_bench::answer::{
    SourceAnswer, TableAnswer, TableListing, sources, table as whole, tables,
};
use biteband_bench::words::Phrase;
use serde::Serialize;

use crate::output::{Output, Stop};

#[derive(Serialize)]
struct Tables {
    tables: Vec<TableListing>,
}

#[derive(Serialize)]
struct Sources {
    sources: Vec<SourceAnswer>,
}

pub(crate) fn table(output: &mut Output, id: Option<&str>) -> Result<(), Stop> {
    if let Some(id) = id {
        let table = whole(output.language, id)?;
        if output.json {
            output.object(&table)?;
        } else {
            print_table(output, &table)?;
        }
        return Ok(());
    }
    let list = tables();
    if output.json {
        output.object(&Tables { tables: list })?;
        return Ok(());
    }
    for table in list {
        output.line(table.id)?;
        output.text(2, table.title)?;
        let columns = table.columns.join(" ");
        output.text(2, &format!("{} x {}: {columns}", table.rows, table.row_scale))?;
    }
    Ok(())
}

pub(crate) fn source(output: &mut Output, id: Option<&str>) -> Result<(), Stop> {
    let list = sources(output.language, id)?;
    if output.json {
        match (id, list.first()) {
            (Some(_), Some(one)) => output.object(one)?,
            _ => output.object(&Sources { sources: list })?,
        }
        return Ok(());
    }
    for source in list {
        output.line(&format!("{} ({}, {})", source.id, source.kind, source.seen))?;
        let parts = [source.body, source.title, source.edition];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        output.text(2, &parts.join(". "))?;
        if !source.note.is_empty() {
            output.text(2, source.note)?;
        }
    }
    Ok(())
}

fn print_table(output: &mut Output, table: &TableAnswer) -> io::Result<()> {
    let language = output.language;
    output.text(0, table.title)?;
    output.line("")?;
    let width = |column: usize, heading: &str| {
        let cells = table.rows.iter().filter_map(|row| row.printed.get(column));
        cells.map(|cell| cell.chars().count()).fold(heading.chars().count(), usize::max)
    };
    let widths: Vec<usize> = table.columns.iter().enumerate().map(|(i, h)| width(i, h)).collect();
    let row = |cells: &mut dyn Iterator<Item = &str>| {
        let cells: Vec<String> =
            cells.zip(&widths).map(|(cell, &width)| format!("{cell:>width$}")).collect();
        cells.join("  ")
    };
    output.line(&row(&mut table.columns.iter().copied()))?;
    for printed in table.rows.iter().map(|row| &row.printed) {
        output.line(&row(&mut printed.iter().map(String::as_str)))?;
    }
    output.line("")?;
    let cells = || table.rows.iter().flat_map(|row| &row.printed);
    let mut legend = |sample: &str, mark: char, parenthesised: bool| {
        if !cells().any(|cell| cell.contains(mark)) {
            return Ok(());
        }
        let note = Phrase::TableNotes { parenthesised, recalled: !parenthesised };
        output.text(0, &format!("{sample} {}", language.say(note)))
    };
    legend("(9)", '(', true)?;
    legend("9~", '~', false)?;
    output.text(0, table.material)?;
    output.text(0, table.conditions)?;
    output.list(table.remarks.iter().copied())?;
    output.text(0, &crate::words::see_source(language, table.source))
}
