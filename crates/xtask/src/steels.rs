//! From the data files on steels to static arrays: part of `cargo xtask tables`.
//!
//! Grades, their designations, hardness by kind of part, conditions, depth and sources. Every number is written as
//! it is printed, an empty cell stays empty; what does not fit together is refused here.

use crate::generated::{Module, number};
use crate::sheet::{Row, Sheet, SourceKeys, interval, parts, variant};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

type Failure = Box<dyn std::error::Error>;

const ELEMENTS: [&str; 14] =
    ["C", "Mn", "Si", "P", "S", "Ni", "Cr", "Mo", "V", "W", "Co", "Cu", "B", "Pb"];

/// Rows of each file; the data grow by changing both.
const ROWS: [(&str, usize); 7] = [
    ("steels", 78),
    ("equivalents", 600),
    ("target-hardness", 107),
    ("17-4ph-conditions", 8),
    ("bs-conditions", 8),
    ("bolt-classes", 9),
    ("through", 60),
];

const HEAD: &str =
    "// Written by `cargo xtask tables` from crates/steel/data; edit the data files, not this.\n\n";

/// The modules of `steel`.
///
/// # Errors
///
/// What contradicts itself in the data files, with the row.
pub(crate) fn generate(root: &Path) -> Result<Vec<Module>, Failure> {
    let data = Data::read(&root.join("crates/steel/data"))?;
    let texts = [
        ("grades", grades(&data)?),
        ("designations", designations(&data)?),
        ("targets", targets(&data)?),
        ("conditions", conditions(&data)?),
        ("sources", sources(&data)?),
        ("through", through(&data)?),
    ];
    let folder = root.join("crates/steel/src/generated");
    Ok(texts
        .into_iter()
        .map(|(name, text)| (folder.join(format!("{name}.rs")), format!("{HEAD}{text}")))
        .collect())
}

struct Data {
    steels: Sheet,
    equivalents: Sheet,
    targets: Sheet,
    ages: Sheet,
    letters: Sheet,
    bolts: Sheet,
    through: Sheet,
    sources: Sheet,
    methods: Sheet,
    source_keys: SourceKeys,
}

impl Data {
    fn read(folder: &Path) -> Result<Self, Failure> {
        let sheet = |name: &'static str| {
            let known = ROWS.iter().find(|(known, _)| *known == name);
            Sheet::read(folder, name, known.map(|(_, rows)| *rows))
        };
        Ok(Self {
            steels: sheet("steels")?,
            equivalents: sheet("equivalents")?,
            targets: sheet("target-hardness")?,
            ages: sheet("17-4ph-conditions")?,
            letters: sheet("bs-conditions")?,
            bolts: sheet("bolt-classes")?,
            through: sheet("through")?,
            sources: sheet("sources")?,
            methods: sheet("methods")?,
            source_keys: SourceKeys::read(folder)?,
        })
    }

    /// Where a grade stands in the array, as an expression.
    fn grade(&self, key: &str) -> Result<String, Failure> {
        let found = self.steels.rows.iter().position(|row| row.get(0) == Some(key));
        let place = found.ok_or_else(|| format!("{key} is no grade"))?;
        Ok(format!("&GRADES[{place}]"))
    }

    fn grades(&self, list: &str) -> Result<String, Failure> {
        let all: Vec<String> = parts(list).map(|key| self.grade(key)).collect::<Result<_, _>>()?;
        Ok(format!("&[{}]", all.join(", ")))
    }

    /// The same for one of the groups of a grade.
    fn group(&self, row: Row<'_>, name: &str) -> Result<String, Failure> {
        let of = |part: &str| format!("{name}_{part}");
        let (source, status, confidence) = (of("src"), of("status"), of("conf"));
        self.cited(row, [&source, &status, &confidence])
    }

    /// Sources, status and confidence of a group of cells.
    fn cited(&self, row: Row<'_>, columns: [&str; 3]) -> Result<String, Failure> {
        self.source_keys.cited(row, columns)
    }
}

fn grades(data: &Data) -> Result<String, Failure> {
    let mut out = format!(
        "use crate::composition::{{Element, Interval}};\n\
         use crate::grade::{{Cryo, CurveCloseness, DoubleTemper, Family, Grade, Hardening, Supplied, TemperMethod}};\n\
         use crate::quenchant::Quenchant;\n\
         use crate::source::{{Cited, Confidence}};\n\
         use biteband_hardness::Seen;\n\n\
         pub(crate) static GRADES: [Grade; {}] = [\n",
        data.steels.rows.len()
    );
    let mut keys = BTreeSet::new();
    for row in data.steels.all() {
        if !keys.insert(row.get("key")?) {
            return Err(row.says("two grades of this key").into());
        }
        grade(&mut out, data, row)?;
    }
    out.push_str("];\n");
    Ok(out)
}

fn grade(out: &mut String, data: &Data, row: Row<'_>) -> Result<(), Failure> {
    let group = |name: &str| data.group(row, name);
    writeln!(
        out,
        "    Grade {{\n        key: {:?}, name: {:?}, family: Family::{}, hardening: Hardening::{},\n        limits: &[{}],",
        row.get("key")?,
        row.get("name")?,
        row.word(
            "family",
            &[
                "carbon",
                "free-machining",
                "alloy",
                "tool",
                "stainless",
                "ph-stainless",
                "structural"
            ]
        )?,
        row.word("hardening", &["through", "case", "age", "none"])?,
        limits(row)?,
    )?;
    writeln!(
        out,
        "        other: {:?}, composition_standard: {:?}, composition_note: {:?}, composition_cited: {},",
        row.get("other")?,
        row.get("comp_standard")?,
        row.get("comp_note")?,
        group("comp")?,
    )?;
    writeln!(
        out,
        "        preheat: &[{}], window: {}, quenchants: &[{}], soak: {:?}, heat_cited: {},",
        preheat(row)?,
        row.interval("aust_min_c", "aust_max_c")?,
        quenchants(row)?,
        row.get("soak")?,
        group("aust")?,
    )?;
    let (min, max) = row.ends("supplied_hbw_min", "supplied_hbw_max")?;
    row.ends("supplied_hbw_typ", "supplied_hbw_max")?;
    row.ends("supplied_hbw_min", "supplied_hbw_typ")?;
    writeln!(
        out,
        "        supplied: Supplied {{ min: {min}, typical: {}, max: {max} }}, supplied_note: {:?}, supplied_cited: {},",
        row.option("supplied_hbw_typ")?,
        row.get("supplied_note")?,
        group("supplied")?,
    )?;
    writeln!(
        out,
        "        as_quenched: {}, as_quenched_note: {:?}, as_quenched_cited: {},",
        row.interval("asq_min_hrc", "asq_max_hrc")?,
        row.get("asq_note")?,
        group("asq")?,
    )?;
    writeln!(
        out,
        "        temper_range: {}, avoid: {}, avoid_why: {:?}, temper_cited: {},",
        row.interval("temper_min_c", "temper_max_c")?,
        row.interval("avoid_min_c", "avoid_max_c")?,
        row.get("avoid_why")?,
        group("temper")?,
    )?;
    writeln!(
        out,
        "        working: {}, typical_use: {:?}, working_cited: {},",
        row.interval("work_min_hrc", "work_max_hrc")?,
        row.get("typical_use")?,
        group("work")?,
    )?;
    tempering(out, data, row)
}

/// How the hardness after tempering is found, and the notes.
fn tempering(out: &mut String, data: &Data, row: Row<'_>) -> Result<(), Failure> {
    let curve = row.get("curve_from")?;
    let curve_from = if curve.is_empty() {
        "None".to_owned()
    } else {
        data.grade(curve)?;
        format!("Some({curve:?})")
    };
    let curve_closeness = match row.get("curve_closeness")? {
        "" => "None".to_owned(),
        _ => format!(
            "Some(CurveCloseness::{})",
            row.word("curve_closeness", &["own", "sibling", "sibling_low", "none"])?
        ),
    };
    writeln!(
        out,
        "        temper_method: TemperMethod::{}, curve_from: {curve_from}, curve_closeness: {curve_closeness}, double_temper: DoubleTemper::{}, cryo: Cryo::{},",
        row.word(
            "temper_method",
            &["regression", "regression_edge", "curve", "case", "age_table", "none"]
        )?,
        row.word("double_temper", &["no", "recommended", "yes", "triple", "triple for large"])?,
        row.word("cryo", &["no", "optional", "possible", "useful"])?,
    )?;
    writeln!(
        out,
        "        section_note: {:?}, hazards: {:?}, notes: {:?},\n    }},",
        row.get("section_note")?,
        row.get("hazards")?,
        row.get("notes")?,
    )?;
    Ok(())
}

/// The elements of which a limit is stated.
fn limits(row: Row<'_>) -> Result<String, Failure> {
    let mut stated = Vec::new();
    for element in ELEMENTS {
        let column = element.to_lowercase();
        let (low, high) = row.ends(&format!("{column}_min"), &format!("{column}_max"))?;
        if low != "None" || high != "None" {
            stated.push(format!("(Element::{element}, {low}, {high})"));
        }
    }
    if row.get("c_max")?.is_empty() {
        return Err(row.says("no highest carbon").into());
    }
    Ok(stated.join(", "))
}

/// `650 then 790-815`.
fn preheat(row: Row<'_>) -> Result<String, Failure> {
    let text = row.get("preheat_c")?;
    let steps = text.split(" then ").filter(|step| !step.is_empty()).map(|step| {
        let (low, high) = step.split_once('-').unwrap_or((step, step));
        interval(low, high).map_err(|error| row.says(&error.to_string()).into())
    });
    Ok(steps.collect::<Result<Vec<_>, Failure>>()?.join(", "))
}

fn quenchants(row: Row<'_>) -> Result<String, Failure> {
    const KNOWN: [&str; 9] =
        ["water", "brine", "oil", "fast_oil", "polymer", "salt", "air", "plate", "interrupted_oil"];
    let words: Vec<&str> = parts(row.get("quench")?).filter(|word| *word != "none").collect();
    if let Some(unknown) = words.iter().find(|word| !KNOWN.contains(word)) {
        return Err(row.says(&format!("{unknown} is no medium")).into());
    }
    if words.is_empty() != (row.get("hardening")? == "none") {
        return Err(row
            .says("a medium belongs to every grade that hardens, and to no other")
            .into());
    }
    let words: Vec<String> =
        words.into_iter().map(|word| format!("Quenchant::{}", variant(word))).collect();
    Ok(words.join(", "))
}

fn designations(data: &Data) -> Result<String, Failure> {
    const SYSTEMS: [&str; 8] =
        ["aisi_sae", "uns", "en_name", "en_number", "bs", "jis", "gb", "shop name"];
    let mut out = String::from(
        "use super::grades::GRADES;\n\
         use crate::grade::{Closeness, Designation, System};\n\
         use crate::source::{Cited, Confidence};\n\
         use biteband_hardness::Seen;\n\n\
         pub(crate) static DESIGNATIONS: &[Designation] = &[\n",
    );
    let mut known = BTreeSet::new();
    for row in data.equivalents.all() {
        let text = row.get("designation")?;
        let plain: String =
            text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_uppercase();
        if !known.insert(plain) {
            return Err(row.says("two designations of this spelling").into());
        }
        let system = match row.word("system", &SYSTEMS)?.as_str() {
            "ShopName" => "Shop".to_owned(),
            other => other.to_owned(),
        };
        let grade = |key: &str| data.grade(key).map_err(|error| row.says(&error.to_string()));
        writeln!(
            out,
            "    Designation {{ text: {text:?}, system: System::{system}, grade: {}, closeness: Closeness::{}, also_near: {}, note: {:?}, cited: {} }},",
            grade(row.get("key")?)?,
            row.word("closeness", &["same", "near", "approximate"])?,
            data.grades(row.get("also_near")?)?,
            row.get("note")?,
            data.cited(row, ["source", "status", "conf"])?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}

fn targets(data: &Data) -> Result<String, Failure> {
    let mut out = String::from(
        "use super::grades::GRADES;\n\
         use crate::source::{Cited, Confidence};\n\
         use crate::target::{Basis, Target};\n\
         use biteband_hardness::Seen;\n\n\
         pub(crate) static TARGETS: &[Target] = &[\n",
    );
    let mut zones = BTreeSet::new();
    for row in data.targets.all() {
        if !zones.insert((row.get("part")?, row.get("zone")?)) {
            return Err(row.says("two rows of this zone").into());
        }
        let (low, high) = row.ends("hrc_min", "hrc_max")?;
        if low == "None" && high == "None" {
            return Err(row.says("no hardness").into());
        }
        writeln!(
            out,
            "    Target {{ part: {:?}, zone: {:?}, hrc: ({low}, {high}), other_scale: {:?}, grades: {}, basis: Basis::{}, cited: {}, caution: {:?} }},",
            row.get("part")?,
            row.get("zone")?,
            row.get("other_scale")?,
            data.grades(row.get("typical_keys")?)?,
            row.word("source_type", &["standard", "published", "practice"])?,
            data.cited(row, ["source", "status", "conf"])?,
            row.get("caution")?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}

fn conditions(data: &Data) -> Result<String, Failure> {
    let mut out = String::from(
        "use crate::condition::{BoltClass, BsCondition, PhAge};\n\
         use crate::source::{Cited, Confidence};\n\
         use biteband_hardness::Seen;\n\n\
         pub(crate) static PH: &[PhAge] = &[\n",
    );
    for row in data.ages.all() {
        let split = |heading: &str| -> Result<Vec<String>, Failure> {
            row.get(heading)?.split(" then ").filter(|part| !part.is_empty()).map(number).collect()
        };
        let (celsius, hours) = (split("age_c")?, split("hours")?);
        if celsius.len() != hours.len() {
            return Err(row.says("a temperature without its hours").into());
        }
        let steps: Vec<String> =
            celsius.iter().zip(&hours).map(|(c, h)| format!("({c}, {h})")).collect();
        writeln!(
            out,
            "    PhAge {{ name: {:?}, steps: &[{}], hrc_min: {}, hbw_min: {}, tensile_min: {}, yield_min: {}, note: {:?}, cited: {} }},",
            row.get("condition")?,
            steps.join(", "),
            row.option("hrc_min")?,
            row.option("hbw_min")?,
            row.option("tensile_mpa_min")?,
            row.option("yield_mpa_min")?,
            row.get("note")?,
            data.cited(row, ["source", "status", "conf"])?,
        )?;
    }
    out.push_str("];\n\npub(crate) static BS: &[BsCondition] = &[\n");
    for row in data.letters.all() {
        let letter: char = row.get("letter")?.parse()?;
        let pair = |low: &str, high: &str| -> Result<String, Failure> {
            row.ends(low, high)?;
            Ok(format!("({}, {})", number(row.get(low)?)?, row.option(high)?))
        };
        writeln!(
            out,
            "    BsCondition {{ letter: {letter:?}, hbw: {}, tensile: {}, cited: {} }},",
            pair("hbw_min", "hbw_max")?,
            pair("tensile_mpa_min", "tensile_mpa_max")?,
            data.cited(row, ["source", "status", "conf"])?,
        )?;
    }
    out.push_str("];\n\npub(crate) static BOLTS: &[BoltClass] = &[\n");
    for row in data.bolts.all() {
        writeln!(
            out,
            "    BoltClass {{ name: {:?}, tensile: {}, cited: {} }},",
            row.get("class")?,
            number(row.get("tensile_mpa")?)?,
            data.cited(row, ["source", "status", "conf"])?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}

/// How thick a grade hardens through in a medium.
fn through(data: &Data) -> Result<String, Failure> {
    let mut out = String::from(
        "use crate::composition::Interval;\n\
         use crate::quenchant::Quenchant;\n\
         use crate::reach::Through;\n\
         use crate::source::{Cited, Confidence};\n\
         use biteband_hardness::Seen;\n\n\
         pub(crate) static THROUGH: &[Through] = &[\n",
    );
    for row in data.through.all() {
        data.grade(row.get("key")?)?;
        let (full, not_full) = row.ends("full_mm", "not_full_mm")?;
        let (core_low, core_high) = row.ends("core_min_hrc", "core_max_hrc")?;
        writeln!(
            out,
            "    Through {{ key: {:?}, quenchant: Quenchant::{}, full: {full}, not_full: {not_full}, shell: {}, core_low: {core_low}, core_high: {core_high}, cited: {}, note: {:?} }},",
            row.get("key")?,
            row.word("quench", &["water", "oil", "fast_oil", "salt", "air"])?,
            row.interval("shell_min_mm", "shell_max_mm")?,
            data.cited(row, ["source", "status", "conf"])?,
            row.get("note")?,
        )?;
    }
    out.push_str("];\n");
    Ok(out)
}

/// The sources of the grades, then those of the methods. The files of grades say where a source was read and
/// for what; a source from memory is marked so.
fn sources(data: &Data) -> Result<String, Failure> {
    let mut out = String::from(
        "use biteband_hardness::{Seen, Source};\n\npub(crate) static SOURCES: &[Source] = &[\n",
    );
    let dash = |text: &str| if text == "-" { String::new() } else { text.to_owned() };
    for row in data.sources.all() {
        let recalled = row.get("kind")? == "recalled";
        let seen = if recalled { "Recalled" } else { "Seen" };
        let (place, used) = (dash(row.get("where_seen")?), dash(row.get("used_for")?));
        let note = match (place.is_empty(), used.is_empty()) {
            (true, true) => String::new(),
            (false, true) => format!("Read: {place}."),
            (true, false) => format!("Used for: {used}."),
            (false, false) => format!("Read: {place}. Used for: {used}."),
        };
        source_line(&mut out, row, &[dash(row.get("publisher")?).as_str(), "", seen, &note])?;
    }
    for row in data.methods.all() {
        let seen = row.word("seen", &["seen", "part", "recalled", "ours"])?;
        let (edition, note) = (row.get("edition")?, row.get("note")?);
        source_line(&mut out, row, &[row.get("publisher")?, edition, &seen, note])?;
    }
    out.push_str("];\n");
    Ok(out)
}

fn source_line(out: &mut String, row: Row<'_>, rest: &[&str; 4]) -> Result<(), Failure> {
    let [publisher, edition, seen, note] = rest;
    let (key, kind, title) = (row.get("key")?, row.get("kind")?, row.get("title")?);
    if key.is_empty() || kind.is_empty() || title.is_empty() {
        return Err(row.says("a source needs key, kind and title").into());
    }
    writeln!(
        out,
        "    Source::new({key:?}, {kind:?}, {publisher:?}, {title:?}, {edition:?}, Seen::{seen}, {note:?}),"
    )?;
    Ok(())
}
