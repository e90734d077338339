//! Tables and sources as data.

use biteband_hardness::{Seen, Source, SourceId, Table, TableId};
use serde::Serialize;

use crate::format;
use crate::refusal::Refusal;
use crate::words::{Language, Phrase};

/// A standard, paper, data set or own working.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SourceAnswer {
    /// Stable name.
    pub id: &'static str,
    /// Standard, paper, data set, own working.
    pub kind: &'static str,
    /// Author or publisher.
    pub body: &'static str,
    /// Title.
    pub title: &'static str,
    /// Edition and part.
    pub edition: &'static str,
    /// `seen`, `part`, `recalled` or `ours`.
    pub seen: &'static str,
    /// What was read, what was recalled and how it was checked.
    pub note: &'static str,
}

/// The name of a standard as people say it: "ISO 6508-1", "ASTM E18".
pub(crate) fn standard(source: &Source) -> String {
    let title = source.title();
    let name = title.split_once(',').map_or(title, |(name, _)| name);
    if source.body().starts_with("ASTM") { format!("ASTM {name}") } else { name.to_owned() }
}

fn source_answer(s: &'static Source) -> SourceAnswer {
    SourceAnswer {
        id: s.key(),
        kind: s.kind(),
        body: s.body(),
        title: s.title(),
        edition: s.edition(),
        seen: s.seen().key(),
        note: s.note(),
    }
}

/// The sources of the scales, tables and tests; those of steels left out.
pub(crate) fn hardness_sources() -> Vec<SourceAnswer> {
    SourceId::all().map(|(_, source)| source_answer(source)).collect()
}

/// Every source, or the one asked for.
///
/// # Errors
/// A refusal that lists the names.
pub fn sources(language: Language, wanted: Option<&str>) -> Result<Vec<SourceAnswer>, Refusal> {
    let mut all = hardness_sources();
    all.extend(biteband_steel::sources().iter().map(source_answer));
    let Some(name) = wanted else { return Ok(all) };
    let found: Vec<SourceAnswer> =
        all.iter().filter(|s| s.id.eq_ignore_ascii_case(name.trim())).cloned().collect();
    if found.is_empty() {
        let known: Vec<&str> = all.iter().map(|s| s.id).collect();
        return Err(Refusal::new(
            "bench.unknown_source",
            language.say(Phrase::UnknownSource { given: name }),
            name,
            known.join(", "),
            language.say(Phrase::NotInTableInstead),
        ));
    }
    Ok(found)
}

/// A table in a list of tables.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TableListing {
    /// Stable name.
    pub id: &'static str,
    /// Short name.
    pub short: &'static str,
    /// Title.
    pub title: &'static str,
    /// Stable name of the standard.
    pub source: &'static str,
    /// Symbol of the row scale.
    pub row_scale: &'static str,
    /// Number of rows.
    pub rows: usize,
    /// Symbols of its columns.
    pub columns: Vec<&'static str>,
    /// Whether its numbers were read or recalled.
    pub seen: &'static str,
}

/// A table whole, as printed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TableAnswer {
    /// Stable name.
    pub id: &'static str,
    /// Title.
    pub title: &'static str,
    /// Stable name of the standard.
    pub source: &'static str,
    /// Materials it is valid for.
    pub material: &'static str,
    /// Test conditions of the columns.
    pub conditions: &'static str,
    /// Oddities of the print.
    pub remarks: Vec<&'static str>,
    /// Symbols of the columns, in print order.
    pub columns: Vec<&'static str>,
    /// Rows from hard to soft.
    pub rows: Vec<TableRow>,
}

/// A printed row.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TableRow {
    /// One entry for each column; absent where the print has a dash.
    pub values: Vec<Option<f64>>,
    /// The same as printed: decimals and parentheses kept, `~` behind a recalled number.
    pub printed: Vec<String>,
}

fn seen(table: &Table) -> &'static str {
    table.source().map_or(Seen::Recalled, Source::seen).key()
}

/// Every table in short.
#[must_use]
pub fn tables() -> Vec<TableListing> {
    TableId::all()
        .map(|(_, t)| TableListing {
            id: t.key(),
            short: t.short(),
            title: t.title(),
            source: t.source().map_or("", |s| s.key()),
            row_scale: t.row_axis().symbol(),
            rows: t.rows().count(),
            columns: t.columns().map(|(axis, _)| axis.symbol()).collect(),
            seen: seen(t),
        })
        .collect()
}

/// One table whole.
///
/// # Errors
/// A refusal that lists the names.
pub fn table(language: Language, name: &str) -> Result<TableAnswer, Refusal> {
    let id = super::parse_table(language, name)?;
    let Some(t) = id.get() else {
        return Err(Refusal::new("bench.unknown_table", "", name, "", ""));
    };
    let axes: Vec<_> = t.columns().map(|(axis, _)| axis).collect();
    let mut rows: Vec<TableRow> = (0..t.rows().count())
        .map(|row| {
            let cells: Vec<_> = axes.iter().map(|&axis| t.cell(row, axis)).collect();
            let printed = cells.iter().map(|cell| match cell {
                None => "-".to_owned(),
                Some(c) => {
                    let number = format::fixed(c.value, c.decimals);
                    let number = if c.marks.parenthesised { format!("({number})") } else { number };
                    if c.marks.recalled { format!("{number}~") } else { number }
                }
            });
            TableRow {
                printed: printed.collect(),
                values: cells.iter().map(|c| c.map(|c| c.value)).collect(),
            }
        })
        .collect();
    rows.reverse();
    Ok(TableAnswer {
        id: t.key(),
        title: t.title(),
        source: t.source().map_or("", |s| s.key()),
        material: t.material(),
        conditions: t.conditions(),
        remarks: t.remarks().to_vec(),
        columns: axes.iter().map(|a| a.symbol()).collect(),
        rows,
    })
}
