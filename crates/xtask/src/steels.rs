//! From the data files on steels to static arrays: part of `cargo xtask tables`.
//!
//! Grades, their designations, hardness by kind of part, conditions and sources. Every number is written as
//! it is printed, an empty cell stays empty; what does not fit together is refused here.

use crate::generated::{Module, number};
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

type Failure = Box<dyn std::error::Error>;

const ELEMENTS: [&str; 14] =
    ["C", "Mn", "Si", "P", "S", "Ni", "Cr", "Mo", "V", "W", "Co", "Cu", "B", "Pb"];

/// Rows of each file; the data grow by changing both.
const ROWS: [(&str, usize); 5] = [
    ("steels", 78),
    ("equivalents", 600),
    ("target-hardness", 107),
    ("17-4ph-conditions", 8),
    ("bs-conditions", 8),
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
    ];
    let folder = root.join("crates/steel/src/generated");
    Ok(texts
        .into_iter()
        .map(|(name, text)| (folder.join(format!("{name}.rs")), format!("{HEAD}{text}")))
        .collect())
}

/// A file of rows that know their headings.
struct Sheet {
    name: &'static str,
    headings: csv::StringRecord,
    rows: Vec<csv::StringRecord>,
}

#[derive(Clone, Copy)]
struct Row<'a> {
    sheet: &'a Sheet,
    cells: &'a csv::StringRecord,
}

impl<'a> Row<'a> {
    fn get(self, heading: &str) -> Result<&'a str, Failure> {
        let place = self.sheet.headings.iter().position(|known| known == heading);
        let cell = place.and_then(|place| self.cells.get(place));
        Ok(cell.ok_or_else(|| self.says(&format!("no column {heading}")))?.trim())
    }

    fn says(self, what: &str) -> String {
        format!("{}.csv, {}: {what}", self.sheet.name, self.cells.get(0).unwrap_or_default())
    }

    /// An optional number as a literal.
    fn option(self, heading: &str) -> Result<String, Failure> {
        option(self.get(heading)?).map_err(|error| self.says(&error.to_string()).into())
    }

    /// Lowest and highest as literals, in order.
    fn ends(self, low: &str, high: &str) -> Result<(String, String), Failure> {
        let (low_text, high_text) = (self.get(low)?, self.get(high)?);
        if !low_text.is_empty() && !high_text.is_empty() {
            let (low, high): (f64, f64) = (low_text.parse()?, high_text.parse()?);
            if low > high {
                return Err(self.says(&format!("{low} above {high}")).into());
            }
        }
        Ok((self.option(low)?, self.option(high)?))
    }

    /// Both ends or none, as an optional interval.
    fn interval(self, low: &str, high: &str) -> Result<String, Failure> {
        self.ends(low, high)?;
        match (self.get(low)?, self.get(high)?) {
            ("", "") => Ok("None".to_owned()),
            (low_text, high_text) if !low_text.is_empty() && !high_text.is_empty() => {
                Ok(format!("Some({})", interval(low_text, high_text)?))
            }
            _ => Err(self.says(&format!("only one of {low} and {high}")).into()),
        }
    }

    /// A word as the variant of an enumeration; one that is not known is refused.
    fn word(self, heading: &str, known: &[&str]) -> Result<String, Failure> {
        let word = self.get(heading)?;
        if known.contains(&word) {
            Ok(variant(word))
        } else {
            Err(self.says(&format!("{heading} = {word}; known are {}", known.join(", "))).into())
        }
    }
}

struct Data {
    steels: Sheet,
    equivalents: Sheet,
    targets: Sheet,
    ages: Sheet,
    letters: Sheet,
    sources: Sheet,
    methods: Sheet,
    source_keys: BTreeSet<String>,
}

impl Data {
    fn read(folder: &Path) -> Result<Self, Failure> {
        let sheet = |name: &'static str| -> Result<Sheet, Failure> {
            let path = folder.join(format!("{name}.csv"));
            let mut reader = csv::Reader::from_path(&path)
                .map_err(|error| format!("{}: {error}", path.display()))?;
            let headings = reader.headers()?.clone();
            let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>()?;
            if let Some((_, expected)) = ROWS.iter().find(|(known, _)| *known == name)
                && rows.len() != *expected
            {
                return Err(format!("{name}.csv: {} rows, {expected} expected", rows.len()).into());
            }
            for row in &rows {
                if row.iter().any(|cell| cell.contains("://") || cell.contains("www.")) {
                    return Err(format!("{name}.csv: a web address in {row:?}").into());
                }
            }
            Ok(Sheet { name, headings, rows })
        };
        let (sources, methods) = (sheet("sources")?, sheet("methods")?);
        let mut source_keys = BTreeSet::new();
        for row in sources.all().chain(methods.all()) {
            if !source_keys.insert(row.get("key")?.to_owned()) {
                return Err(row.says("two sources of this key").into());
            }
        }
        Ok(Self {
            steels: sheet("steels")?,
            equivalents: sheet("equivalents")?,
            targets: sheet("target-hardness")?,
            ages: sheet("17-4ph-conditions")?,
            letters: sheet("bs-conditions")?,
            sources,
            methods,
            source_keys,
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
    fn cited(
        &self,
        row: Row<'_>,
        [source, status, confidence]: [&str; 3],
    ) -> Result<String, Failure> {
        let keys: Vec<&str> = parts(row.get(source)?).collect();
        if keys.is_empty() {
            return Err(row.says(&format!("no {source}")).into());
        }
        if let Some(unknown) = keys.iter().find(|key| !self.source_keys.contains(**key)) {
            return Err(row.says(&format!("source {unknown} is in no list")).into());
        }
        let seen = match row.get(status)? {
            "seen" if keys == ["MEM"] => return Err(row.says("seen, but in no source").into()),
            "seen" => "Seen",
            "mixed" => "Part",
            "recalled" => "Recalled",
            other => return Err(row.says(&format!("{status} = {other}")).into()),
        };
        let confidence = row.word(confidence, &["high", "medium", "low"])?;
        Ok(format!(
            "Cited {{ sources: &{keys:?}, seen: Seen::{seen}, confidence: Confidence::{confidence} }}"
        ))
    }
}

impl Sheet {
    fn all(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|cells| Row { sheet: self, cells })
    }
}

fn parts(list: &str) -> impl Iterator<Item = &str> {
    list.split(';').map(str::trim).filter(|part| !part.is_empty())
}

fn option(text: &str) -> Result<String, Failure> {
    if text.is_empty() { Ok("None".to_owned()) } else { Ok(format!("Some({})", number(text)?)) }
}

fn interval(low: &str, high: &str) -> Result<String, Failure> {
    Ok(format!("Interval {{ low: {}, high: {} }}", number(low)?, number(high)?))
}

/// `fast_oil`, `free-machining` and `triple for large` as variants.
fn variant(word: &str) -> String {
    let part = |part: &str| {
        let (first, rest) = part.split_at(part.len().min(1));
        first.to_uppercase() + rest
    };
    word.split(['_', '-', ' ']).map(part).collect()
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
        "use crate::condition::{BsCondition, PhAge};\n\
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
