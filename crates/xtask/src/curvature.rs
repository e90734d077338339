//! From the data files on indentations to static arrays: part of `cargo xtask tables`.
//!
//! Corrections for round parts, force-diameter indices, limits of machines, comparisons between
//! laboratories. Every number is written as it is printed; nothing is filled in here.

use crate::generated::{Module, number};
use serde::Deserialize;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

type Failure = Box<dyn std::error::Error>;

/// The tables of corrections, in the order in which they are written.
const ROUND: [&str; 4] = ["cad", "bfg", "superficial-n", "superficial-t"];

/// The sources that the code of indentations names; each becomes a constant.
const NAMED: [&str; 14] = [
    "iso-6506-1",
    "iso-6507-1",
    "iso-6508-1",
    "iso-4545-1",
    "astm-e10",
    "astm-e18",
    "astm-e92",
    "iso-6508-2",
    "jcgm-100",
    "astm-a956",
    "grubbs",
    "indentation-defaults",
    "vickers-geometry",
    "rockwell-ranges",
];

#[derive(Deserialize)]
struct SourcesFile {
    source: Vec<SourceEntry>,
}

#[derive(Deserialize)]
struct SourceEntry {
    id: String,
}

/// The module of `hardness` about indentations.
///
/// # Errors
///
/// What contradicts itself in the data files.
pub(crate) fn generate(root: &Path) -> Result<Vec<Module>, Failure> {
    Ok(vec![(root.join("crates/hardness/src/indentation/generated.rs"), text(root)?)])
}

fn text(root: &Path) -> Result<String, Failure> {
    let data = root.join("crates/hardness/data");
    let sources: SourcesFile = toml::from_str(&fs::read_to_string(data.join("sources.toml"))?)?;
    let sources = Sources(sources.source.into_iter().map(|source| source.id).collect());
    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/hardness/data; edit the data files, not this.\n\n\
         use super::brinell::{IndexRow, Material};\n\
         use super::check::Cited;\n\
         use super::machine::{Between, LimitKind, LimitRow};\n\
         use super::round::RoundTable;\n\
         use super::e18::Thinnest;\n\
         use crate::axis::Scale;\n\
         use crate::source::{Seen, SourceId};\n\n",
    );
    for id in NAMED {
        let name = id.replace('-', "_").to_uppercase();
        writeln!(out, "pub(super) const {name}: SourceId = {};", sources.id(id)?)?;
    }
    writeln!(out, "\npub(super) static ROUND: &[RoundTable] = &[")?;
    for name in ROUND {
        let path = data.join(format!("curvature/{name}.csv"));
        round_table(&mut out, &path, &sources).map_err(|e| format!("{name}: {e}"))?;
    }
    writeln!(out, "];\n\npub(super) static INDEX: &[IndexRow] = &[")?;
    for row in rows(&data.join("indentation/brinell-index.csv"), 7)? {
        let [material, from, at_from, indices, ball, source, seen] = fields(&row)?;
        writeln!(
            out,
            "    IndexRow {{ material: Material::{material}, from: {}, at_from: {}, indices: &[{}], smallest_ball: {}, cited: {} }},",
            number(from)?,
            yes(at_from)?,
            list(indices)?,
            number(ball)?,
            sources.cited(source, seen)?
        )?;
    }
    writeln!(out, "];\n\npub(super) static LIMITS: &[LimitRow] = &[")?;
    for row in rows(&data.join("indentation/machine-limits.csv"), 10)? {
        let [kind, scales_, from, at_from, to, fixed, per_depth, percent, source, seen] =
            fields(&row)?;
        let or_nought = |text: &str| number(if text.is_empty() { "0" } else { text });
        writeln!(
            out,
            "    LimitRow {{ kind: LimitKind::{kind}, scales: &[{}], from: {}, at_from: {}, to: {}, fixed: {}, per_depth: {}, percent: {}, cited: {} }},",
            scales(scales_)?,
            number(from)?,
            yes(at_from)?,
            number(to)?,
            or_nought(fixed)?,
            or_nought(per_depth)?,
            or_nought(percent)?,
            sources.cited(source, seen)?
        )?;
    }
    writeln!(out, "];\n\npub(super) static BETWEEN: &[Between] = &[")?;
    for row in rows(&data.join("indentation/interlaboratory.csv"), 7)? {
        let [scale, block, mean, within, between, source, seen] = fields(&row)?;
        writeln!(
            out,
            "    Between {{ scale: {}, block: {}, mean: {}, within: {}, between: {}, cited: {} }},",
            scales(scale)?,
            number(block)?,
            number(mean)?,
            number(within)?,
            number(between)?,
            sources.cited(source, seen)?
        )?;
    }
    writeln!(out, "];\n\npub(super) static THINNEST: &[Thinnest] = &[")?;
    thinnest(&mut out, &data.join("indentation/e18-thickness.csv"))?;
    writeln!(out, "];")?;
    Ok(out)
}

/// One line for each scale: its first row in thousandths of an inch, then the least hardness of every row
/// in half points, where nought stands for any hardness.
fn thinnest(out: &mut String, path: &Path) -> Result<(), Failure> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path)?;
    let heads: Vec<String> = reader.headers()?.iter().map(str::to_owned).collect();
    let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>()?;
    let mils = |row: &csv::StringRecord| -> Result<u32, Failure> {
        let text = row.get(0).unwrap_or_default();
        let digits = text.strip_prefix("0.").filter(|digits| digits.len() == 3);
        Ok(digits.ok_or_else(|| format!("{text} is no thickness of three decimals"))?.parse()?)
    };
    for (column, scale) in heads.iter().enumerate().skip(2) {
        let mut first = None;
        let mut halves = Vec::new();
        for row in &rows {
            let at = mils(row)?;
            let least = match row.get(column).unwrap_or_default() {
                "-" if first.is_none() => continue,
                "X" => 0,
                text => u8::try_from(tenths(text)? / 5)?,
            };
            let start = *first.get_or_insert(at);
            if u32::try_from(halves.len())? * 2 + start != at {
                return Err(format!("{scale}: the rows should be 0.002 in apart").into());
            }
            if halves.last().is_some_and(|last| least > *last) {
                return Err(format!("{scale}: the least hardness rises at {at}").into());
            }
            halves.push(least);
        }
        let first = first.ok_or_else(|| format!("{scale} has no row"))?;
        let scale = scales(scale)?;
        writeln!(out, "    Thinnest {{ scale: {scale}, first: {first}, halves: &{halves:?} }},")?;
    }
    Ok(())
}

struct Sources(Vec<String>);

impl Sources {
    fn id(&self, id: &str) -> Result<String, Failure> {
        let found = self.0.iter().position(|known| known == id);
        let found = found.ok_or_else(|| format!("source {id} is not in sources.toml"))?;
        Ok(format!("SourceId({found})"))
    }

    fn cited(&self, id: &str, seen: &str) -> Result<String, Failure> {
        let seen = match seen {
            "seen" => "Seen",
            "recalled" => "Recalled",
            other => return Err(format!("seen = {other}").into()),
        };
        Ok(format!("Cited {{ source: {}, seen: Seen::{seen} }}", self.id(id)?))
    }
}

fn rows(path: &Path, columns: usize) -> Result<Vec<Vec<String>>, Failure> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path)?;
    if reader.headers()?.len() != columns {
        return Err(format!("{} should have {columns} columns", path.display()).into());
    }
    let records = reader.records().map(|row| Ok(row?.iter().map(str::to_owned).collect()));
    records.collect()
}

fn fields<const N: usize>(row: &[String]) -> Result<[&str; N], Failure> {
    let texts: Vec<&str> = row.iter().map(String::as_str).collect();
    texts.try_into().map_err(|_| "a row with another number of columns".into())
}

fn list(text: &str) -> Result<String, Failure> {
    let numbers: Vec<String> = text.split_whitespace().map(number).collect::<Result<_, _>>()?;
    Ok(numbers.join(", "))
}

fn yes(text: &str) -> Result<bool, Failure> {
    match text {
        "yes" => Ok(true),
        "no" => Ok(false),
        other => Err(format!("yes or no, not {other}").into()),
    }
}

/// HRC becomes `Scale::Hrc`; a scale that does not exist fails when the crate is compiled.
fn scales(text: &str) -> Result<String, Failure> {
    let scale = |symbol: &str| -> Result<String, Failure> {
        let rest = symbol.strip_prefix('H').ok_or_else(|| format!("{symbol} is no scale"))?;
        Ok(format!("Scale::H{}", rest.to_lowercase()))
    };
    let names: Vec<String> = text.split_whitespace().map(scale).collect::<Result<_, _>>()?;
    Ok(names.join(", "))
}

fn round_table(out: &mut String, path: &Path, sources: &Sources) -> Result<(), Failure> {
    let text = fs::read_to_string(path)?;
    let head = |key: &str| -> Result<&str, Failure> {
        let start = format!("# {key} = ");
        let found = text.lines().find_map(|line| line.strip_prefix(start.as_str()));
        found.ok_or_else(|| format!("no line {start}").into())
    };
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let diameters: Vec<&str> =
        lines.next().ok_or("no row of diameters")?.split(',').skip(1).collect();
    let (mut readings, mut cells) = (Vec::new(), Vec::new());
    for line in lines {
        let (reading, rest) = line.split_once(',').ok_or("a row without cells")?;
        readings.push(number(reading)?);
        let row: Vec<i32> = rest.split(',').map(tenths).collect::<Result<_, _>>()?;
        if row.len() != diameters.len() {
            return Err(format!("{reading}: {} cells", row.len()).into());
        }
        if row.windows(2).any(|pair| pair.first() < pair.last()) {
            return Err(format!("{reading}: the correction rises with the diameter").into());
        }
        cells.extend(row);
    }
    writeln!(
        out,
        "    RoundTable {{ scales: &[{}], readings: &[{}], diameters: &[{}], tenths: &{cells:?}, cited: {} }},",
        scales(head("scales")?)?,
        readings.join(", "),
        list(&diameters.join(" "))?,
        sources.cited(head("source")?, head("seen")?)?
    )?;
    Ok(())
}

fn tenths(text: &str) -> Result<i32, Failure> {
    let (whole, tenth) = text.split_once('.').unwrap_or((text, "0"));
    if tenth.len() != 1 {
        return Err(format!("{text}: one decimal at most").into());
    }
    Ok(whole.parse::<i32>()? * 10 + tenth.parse::<i32>()?)
}
