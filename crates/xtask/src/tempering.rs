//! From printed tempering curves, embrittling ranges and temper colours to static arrays: part of `cargo xtask tables`.

use crate::Outcome;
use crate::generated::{Module, number};
use crate::sheet::{Row, Sheet, SourceKeys, interval, parts};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

/// Printed curves, the points on them, statements on brittleness, statements on colours; the data grow by
/// changing both.
const SHEETS: usize = 51;
const POINTS: usize = 336;
const BRITTLE: usize = 6;
const COLOURS: usize = 13;

const FAMILIES: [&str; 7] =
    ["carbon", "free-machining", "alloy", "tool", "stainless", "ph-stainless", "structural"];

const HEAD: &str = "\
// Written by `cargo xtask tables` from crates/steel/data; edit the data files, not this.

use crate::composition::Interval;
use crate::grade::Family;
use crate::source::{Cited, Confidence};
use crate::temper::{BrittleKind, BrittleRow, Colour, ColourRow, SheetPoint, Sheet};
use biteband_hardness::Seen;
";

/// The module of tempering.
///
/// # Errors
///
/// A row that cannot be read, a curve that runs backwards in temperature, or a number of rows that is not expected.
pub(crate) fn generate(root: &Path) -> Outcome<Vec<Module>> {
    let folder = root.join("crates/steel/data");
    let keys = SourceKeys::read(&folder)?;
    let steels = Sheet::read(&folder, "steels", None)?;
    let grades: BTreeSet<String> =
        steels.all().map(|row| row.get("key").map(str::to_owned)).collect::<Outcome<_>>()?;
    let text = format!(
        "{HEAD}{}{}{}",
        curves(&folder, &keys, &grades)?,
        brittle(&folder, &keys, &grades)?,
        colours(&folder, &keys)?
    );
    Ok(vec![(root.join("crates/steel/src/generated/tempering.rs"), text)])
}

fn curves(folder: &Path, keys: &SourceKeys, grades: &BTreeSet<String>) -> Outcome<String> {
    let mut out = String::from("\npub(crate) static SHEETS: &[Sheet] = &[\n");
    let (mut ids, mut total) = (BTreeSet::new(), 0);
    let sheet = Sheet::read(folder, "temper-curves", Some(SHEETS))?;
    for row in sheet.all() {
        if !ids.insert(row.get("id")?) {
            return Err(row.says("two sheets of this name").into());
        }
        if !grades.contains(row.get("key")?) {
            return Err(row.says("no grade of this key").into());
        }
        let curve = Curve::read(row)?;
        total += curve.count;
        writeln!(
            out,
            "    Sheet {{ id: {:?}, key: {:?}, name: {:?}, lineage: {:?}, hardened: {}, quench: {:?}, hours: {}, tempers: {}, start: {},\n        points: &[{}],\n        cited: {}, note: {:?} }},",
            row.get("id")?,
            row.get("key")?,
            row.get("name")?,
            row.get("lineage")?,
            row.interval("hardened_min_c", "hardened_max_c")?,
            row.get("quench")?,
            row.option("hours")?,
            row.option("tempers")?,
            curve.start,
            curve.points,
            keys.cited(row, ["source", "status", "conf"])?,
            row.get("note")?,
        )?;
    }
    if total != POINTS {
        return Err(format!("temper-curves.csv: {total} points, {POINTS} expected").into());
    }
    out.push_str("];\n");
    Ok(out)
}

/// The points of a sheet as literals.
struct Curve {
    start: String,
    points: String,
    count: usize,
}

impl Curve {
    /// `start:65;150:64;205:60-63;482:45-49?`: °C, then HRC or its ends; a question mark behind a value in doubt.
    fn read(row: Row<'_>) -> Outcome<Self> {
        let (mut start, mut points, mut last) = ("None".to_owned(), Vec::new(), f64::MIN);
        let mut count = 0;
        for cell in parts(row.get("points")?) {
            let (at, hrc) = cell.split_once(':').ok_or_else(|| row.says(cell))?;
            let doubted = hrc.ends_with('?');
            let hrc = hrc.trim_end_matches('?');
            let (low, high) = hrc.split_once('-').unwrap_or((hrc, hrc));
            if low.parse::<f64>()? > high.parse::<f64>()? {
                return Err(row.says(&format!("{low} above {high}")).into());
            }
            count += 1;
            if at == "start" {
                start = format!("Some({})", interval(low, high)?);
                continue;
            }
            let celsius: f64 = at.parse()?;
            if celsius <= last {
                return Err(row.says(&format!("{at} °C is out of order")).into());
            }
            last = celsius;
            points.push(format!(
                "SheetPoint {{ celsius: {}, low: {}, high: {}, doubted: {doubted} }}",
                number(at)?,
                number(low)?,
                number(high)?
            ));
        }
        if points.len() < 2 {
            return Err(row.says("a curve has two points or more").into());
        }
        Ok(Self { start, points: points.join(", "), count })
    }
}

fn brittle(folder: &Path, keys: &SourceKeys, grades: &BTreeSet<String>) -> Outcome<String> {
    let mut out = String::from("\npub(crate) static BRITTLE: &[BrittleRow] = &[\n");
    for row in Sheet::read(folder, "embrittling", Some(BRITTLE))?.all() {
        let (low, _) = row.ends("low_c", "high_c")?;
        let named: Vec<&str> = parts(row.get("grades")?).collect();
        if let Some(unknown) = named.iter().find(|key| !grades.contains(**key)) {
            return Err(row.says(&format!("{unknown} is no grade")).into());
        }
        let mut families = Vec::new();
        for family in parts(row.get("families")?) {
            if !FAMILIES.contains(&family) {
                return Err(row.says(&format!("{family} is no family")).into());
            }
            families.push(format!("Family::{}", crate::sheet::variant(family)));
        }
        if named.is_empty() == families.is_empty() {
            return Err(row.says("a statement is on grades or on families").into());
        }
        writeln!(
            out,
            "    BrittleRow {{ kind: BrittleKind::{}, low: {low}, high: {}, grades: &{named:?}, families: &[{}], cited: {}, note: {:?} }},",
            row.word("kind", &["tempered_martensite", "reversible"])?,
            number(row.get("high_c")?)?,
            families.join(", "),
            keys.cited(row, ["source", "status", "conf"])?,
            row.get("note")?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}

fn colours(folder: &Path, keys: &SourceKeys) -> Outcome<String> {
    let mut out = String::from("\npub(crate) static COLOURS: &[ColourRow] = &[\n");
    for row in Sheet::read(folder, "temper-colours", Some(COLOURS))?.all() {
        row.ends("low_c", "high_c")?;
        writeln!(
            out,
            "    ColourRow {{ colour: Colour::{}, celsius: {}, cited: {}, note: {:?} }},",
            row.word(
                "colour",
                &["light_straw", "straw", "dark_straw", "brown", "purple", "blue", "light_blue"]
            )?,
            interval(row.get("low_c")?, row.get("high_c")?)?,
            keys.cited(row, ["source", "status", "conf"])?,
            row.get("note")?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}
