//! From the data files of `hardness` to static arrays: `cargo xtask tables`.
//!
//! The data files are the publication; the generated module is a copy that the compiler can use.
//! Every number keeps its printed decimals as an integer and a count of decimals, so that dividing gives
//! the same double as the printed text. Nothing is averaged, mended or filled in here.

use crate::generated::Module;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};

type Failure = Box<dyn std::error::Error>;

#[derive(Deserialize)]
struct TablesFile {
    table: Vec<TableEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableEntry {
    id: String,
    short: String,
    title: String,
    source: String,
    class: String,
    row: String,
    rows: usize,
    material: String,
    conditions: String,
    scales: BTreeMap<String, Vec<String>>,
    recalled: BTreeMap<String, String>,
    remarks: Vec<String>,
}

#[derive(Deserialize)]
struct Policy {
    class: Vec<ClassEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ClassEntry {
    material: String,
    hardness: Order,
    tensile: Option<Order>,
}

#[derive(Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Order {
    order: Vec<String>,
    reason: String,
}

#[derive(Deserialize)]
struct SourcesFile {
    source: Vec<SourceEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SourceEntry {
    id: String,
    kind: String,
    body: String,
    title: String,
    edition: String,
    seen: String,
    note: String,
}

/// One printed number: its digits as an integer, how many stand after the point, and its parentheses.
#[derive(Clone, Copy)]
struct Cell {
    digits: i32,
    decimals: u32,
    parenthesised: bool,
}

struct Column {
    heading: String,
    cells: Vec<Option<Cell>>,
}

fn data_path(root: &Path, name: &str) -> PathBuf {
    root.join("crates/hardness/data").join(name)
}

/// The module of `hardness` with its tables and sources.
///
/// # Errors
///
/// What contradicts itself in the data files.
pub(crate) fn generate(root: &Path) -> Result<Vec<Module>, Failure> {
    Ok(vec![(root.join("crates/hardness/src/generated.rs"), text(root)?)])
}

fn text(root: &Path) -> Result<String, Failure> {
    let read = |name: &str| -> Result<String, Failure> {
        fs::read_to_string(data_path(root, name)).map_err(|e| format!("{name}: {e}").into())
    };
    let tables: TablesFile = toml::from_str(&read("tables.toml")?)?;
    let policy: Policy = toml::from_str(&read("policy.toml")?)?;
    let sources: SourcesFile = toml::from_str(&read("sources.toml")?)?;

    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/hardness/data; edit the data files, not this.\n\n\
         use crate::axis::{Axis, Scale};\n\
         use crate::convert::{Class, Order};\n\
         use crate::material::Material;\n\
         use crate::source::{Seen, Source, SourceId};\n\
         use crate::table::{Column, Packed, Table, TableId};\n\n",
    );
    let mut everything = String::new();
    for name in ["tables.toml", "policy.toml", "sources.toml"] {
        everything.push_str(&read(name)?);
    }
    for entry in &tables.table {
        everything.push_str(&read(&format!("tables/{}.csv", entry.id))?);
    }
    for folder in ["curvature", "indentation"] {
        for name in crate::project::files_below(&data_path(root, folder))? {
            everything.push_str(&read(&format!("{folder}/{name}"))?);
        }
    }
    writeln!(out, "/// Changes with every change of the data files.")?;
    writeln!(out, "pub static DATA_VERSION: &str = {:?};\n", fingerprint(&everything))?;
    let source_index = |id: &str| -> Result<usize, Failure> {
        let found = sources.source.iter().position(|s| s.id == id);
        found.ok_or_else(|| format!("source {id} is not in sources.toml").into())
    };
    writeln!(out, "pub(crate) static SOURCES: &[Source] = &[")?;
    for s in &sources.source {
        let seen = match s.seen.as_str() {
            "seen" => "Seen",
            "part" => "Part",
            "recalled" => "Recalled",
            "ours" => "Ours",
            other => return Err(format!("source {}: seen = {other}", s.id).into()),
        };
        writeln!(
            out,
            "    Source {{ key: {:?}, kind: {:?}, body: {:?}, title: {:?}, edition: {:?}, seen: Seen::{seen}, note: {:?} }},",
            s.id, s.kind, s.body, s.title, s.edition, s.note
        )?;
    }
    writeln!(out, "];\n")?;

    writeln!(out, "pub(crate) static TABLES: &[Table] = &[")?;
    for entry in &tables.table {
        write_table(&mut out, root, entry, source_index(&entry.source)?)
            .map_err(|e| format!("{}: {e}", entry.id))?;
    }
    writeln!(out, "];\n")?;

    writeln!(out, "pub(crate) static CLASSES: &[Class] = &[")?;
    for class in &policy.class {
        let order = |order: &Order| -> Result<String, Failure> {
            let mut ids = Vec::new();
            for id in &order.order {
                let (place, entry) = (0_usize..)
                    .zip(&tables.table)
                    .find(|(_, table)| &table.id == id)
                    .ok_or("policy names an unknown table")?;
                if entry.class != class.material {
                    return Err(format!("{id} is a table of {}", entry.class).into());
                }
                ids.push(format!("TableId({place})"));
            }
            let (ids, reason) = (ids.join(", "), &order.reason);
            Ok(format!("Order {{ tables: &[{ids}], reason: {reason:?} }}"))
        };
        let hardness = order(&class.hardness)?;
        let tensile = order(class.tensile.as_ref().unwrap_or(&Order::default()))?;
        let material = material(&class.material);
        writeln!(
            out,
            "    Class {{ material: {material}, hardness: {hardness}, tensile: {tensile} }},"
        )?;
    }
    writeln!(out, "];")?;
    Ok(out)
}

/// Eight hexadecimal digits that change with the text (FNV-1a, 64 bits, the upper half).
fn fingerprint(text: &str) -> String {
    let hash = text.bytes().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    });
    format!("{:08x}", hash >> 32)
}

fn write_table(
    out: &mut String,
    root: &Path,
    entry: &TableEntry,
    source: usize,
) -> Result<(), Failure> {
    let columns = read_table(&data_path(root, &format!("tables/{}.csv", entry.id)))?;
    let row = columns.iter().find(|c| c.heading == entry.row).ok_or("no row column")?;
    let rows: Vec<Cell> =
        row.cells.iter().map(|c| c.ok_or("the row scale has a gap")).collect::<Result<_, _>>()?;
    if rows.len() != entry.rows {
        return Err(format!("{} rows, {} expected", rows.len(), entry.rows).into());
    }
    for known in entry.scales.keys().chain(entry.recalled.keys()) {
        if !columns.iter().any(|c| &c.heading == known) {
            return Err(format!("tables.toml names a column {known} that is not printed").into());
        }
    }
    let row_decimals = rows.iter().map(|c| c.decimals).max().unwrap_or(0);
    let row_values: Vec<i32> =
        rows.iter().map(|c| c.digits * 10_i32.pow(row_decimals - c.decimals)).collect();
    // Ascending by the row scale, whichever way the print runs, so that one search serves every table.
    let mut order: Vec<usize> = (0..rows.len()).collect();
    order.sort_by_key(|&i| row_values.get(i).copied());
    let row_axis = entry.scales.get(&entry.row).and_then(|s| s.first()).ok_or("no row scale")?;
    let sorted: Vec<i32> = order.iter().filter_map(|&i| row_values.get(i).copied()).collect();
    if sorted.windows(2).any(|w| w.first() == w.last()) {
        return Err("two rows share one value".into());
    }
    writeln!(
        out,
        "    Table {{\n        key: {:?}, short: {:?}, title: {:?}, source: SourceId({source}),\n        class: {},\n        material: {:?},\n        conditions: {:?},\n        remarks: &{:?},\n        row_axis: {}, rows: {},\n        columns: &[",
        entry.id,
        entry.short,
        entry.title,
        material(&entry.class),
        entry.material,
        entry.conditions,
        entry.remarks,
        axis(row_axis)?,
        packed(&sorted, row_decimals),
    )?;
    for column in &columns {
        let Some(scales) = entry.scales.get(&column.heading) else { continue };
        let recalled = entry.recalled.get(&column.heading).map(String::as_str);
        let text = column_text(column, &order, &sorted, row_decimals, recalled)
            .map_err(|e| format!("column {}: {e}", column.heading))?;
        for scale in scales {
            writeln!(
                out,
                "            Column {{ axis: {}, printed: {:?}, {text} }},",
                axis(scale)?,
                column.heading
            )?;
        }
    }
    writeln!(out, "        ],\n    }},")?;
    Ok(())
}

/// The fields of a column literal: values in row order without the gaps, and which of them carry a mark.
fn column_text(
    column: &Column,
    order: &[usize],
    sorted: &[i32],
    row_decimals: u32,
    recalled: Option<&str>,
) -> Result<String, Failure> {
    let decimals = column.cells.iter().flatten().map(|c| c.decimals).max().unwrap_or(0);
    if decimals > 1 {
        return Err("no scale is printed with more than one decimal".into());
    }
    let (mut rows, mut values) = (Vec::new(), Vec::new());
    let (mut parenthesised, mut from_memory) = (Vec::new(), Vec::new());
    for (position, &original) in order.iter().enumerate() {
        let Some(Some(cell)) = column.cells.get(original) else { continue };
        if cell.parenthesised {
            parenthesised.push(values.len());
        }
        let key = sorted.get(position).copied().unwrap_or_default();
        let key = f64::from(key) / f64::from(10_i32.pow(row_decimals));
        if recalled.is_some_and(|spec| is_recalled(spec, key).unwrap_or(false)) {
            from_memory.push(values.len());
        }
        rows.push(position);
        values.push(cell.digits * 10_i32.pow(decimals - cell.decimals));
    }
    if let Some(spec) = recalled {
        is_recalled(spec, 0.0)?;
        if from_memory.is_empty() {
            return Err(format!("recalled = {spec} marks no cell").into());
        }
    }
    if values.windows(2).any(|w| w.first() > w.last()) {
        return Err("falls while the row scale rises".into());
    }
    Ok(format!(
        "rows: &{rows:?}, values: {}, parenthesised: &{parenthesised:?}, recalled: &{from_memory:?}",
        packed(&values, decimals)
    ))
}

fn packed(values: &[i32], decimals: u32) -> String {
    format!("Packed {{ decimals: {decimals}, values: &{values:?} }}")
}

/// Reads "all", "20..38" or "odd 21..33" against one row value.
fn is_recalled(spec: &str, row: f64) -> Result<bool, Failure> {
    if spec == "all" {
        return Ok(true);
    }
    let (odd, range) = match spec.strip_prefix("odd ") {
        Some(rest) => (true, rest),
        None => (false, spec),
    };
    let (low, high) = range.split_once("..").ok_or_else(|| format!("recalled = {spec}"))?;
    let (low, high): (f64, f64) = (low.parse()?, high.parse()?);
    Ok(row >= low && row <= high && (!odd || row % 2.0 != 0.0))
}

/// `cartridge-brass` as the variant `CartridgeBrass`; a name that is none does not compile.
fn material(key: &str) -> String {
    let word = |word: &str| {
        let (first, rest) = word.split_at(word.len().min(1));
        first.to_uppercase() + rest
    };
    format!("Material::{}", key.split('-').map(word).collect::<String>())
}

fn axis(name: &str) -> Result<String, Failure> {
    let variant = match name {
        "Rm" => return Ok("Axis::Tensile".to_owned()),
        "HRC" => "Hrc",
        "HRA" => "Hra",
        "HRD" => "Hrd",
        "HR15N" => "Hr15n",
        "HR30N" => "Hr30n",
        "HR45N" => "Hr45n",
        "HRB" => "Hrb",
        "HRE" => "Hre",
        "HRF" => "Hrf",
        "HRG" => "Hrg",
        "HRH" => "Hrh",
        "HRK" => "Hrk",
        "HR15T" => "Hr15t",
        "HR30T" => "Hr30t",
        "HR45T" => "Hr45t",
        "HR15W" => "Hr15w",
        "HBW 10/500" => "Hbw500",
        "HV" => "Hv",
        "HBW" => "Hbw",
        "HBS" => "Hbs",
        "HK" => "Hk",
        "HSc" => "Scleroscope",
        other => return Err(format!("no scale is called {other}").into()),
    };
    Ok(format!("Axis::Hardness(Scale::{variant})"))
}

fn read_table(path: &Path) -> Result<Vec<Column>, Failure> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path)?;
    let mut columns: Vec<Column> = reader
        .headers()?
        .iter()
        .map(|heading| Column { heading: heading.to_owned(), cells: Vec::new() })
        .collect();
    for record in reader.records() {
        let record = record?;
        for (column, text) in columns.iter_mut().zip(record.iter()) {
            column.cells.push(cell(text).map_err(|e| format!("{}: {e}", column.heading))?);
        }
    }
    Ok(columns)
}

fn cell(text: &str) -> Result<Option<Cell>, Failure> {
    if text.is_empty() {
        return Ok(None);
    }
    let (number, parenthesised) = match text.strip_suffix('*') {
        Some(rest) => (rest, true),
        None => (text, false),
    };
    let decimals = number.split_once('.').map_or(0, |(_, fraction)| fraction.len());
    let digits: i16 = number.replace('.', "").parse().map_err(|e| format!("{text}: {e}"))?;
    Ok(Some(Cell { digits: digits.into(), decimals: u32::try_from(decimals)?, parenthesised }))
}
