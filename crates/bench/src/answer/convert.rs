//! Converting a reading, a range or a tolerance.

use biteband_hardness::designation::{Amount, Designation, Remark};
use biteband_hardness::{
    Axis, Basis, Choice, Conversion, Error, Material, MeasuredStrength, Reading, Scale, Table,
    TableId, compare, convert as convert_one, convert_limits, designation, reachable,
};
use biteband_quantity::sort_by_number;
use serde::{Deserialize, Serialize};

use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Language, Phrase};

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct ConvertQuestion {
    /// The hardness as written: `52 HRC`, `38-42 HRC`, `HV 700 +-50`.
    pub text: String,
    /// Scales to convert to, by symbol; empty for the usual ones.
    pub to: Vec<String>,
    /// Material class by its stable name; `carbon-alloy-steel`, or that of the table, when absent.
    pub material: Option<String>,
    /// One table to use instead of the order of preference.
    pub table: Option<String>,
    /// Units of the texts; numbers stay in MPa.
    pub units: Units,
}

/// The answer: at least one scale was reached.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ConvertAnswer {
    /// What was understood.
    pub input: ConvertInput,
    /// Material class whose tables were asked.
    pub material: &'static str,
    /// One entry for each scale reached.
    pub results: Vec<Converted>,
    /// One entry for each scale not reached.
    pub refusals: Vec<Refusal>,
    /// What to bear in mind.
    pub cautions: Vec<String>,
}

/// What was understood.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ConvertInput {
    /// Symbol of the scale, `Rm` for tensile strength.
    pub scale: &'static str,
    /// Low end; absent for a maximum.
    pub low: Option<f64>,
    /// High end; absent for a minimum.
    pub high: Option<f64>,
    /// In standard form.
    pub understood: String,
    /// Where the text strays from the standard form, and what it leaves open.
    pub notes: Vec<Note>,
}

/// A note with a stable name.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Note {
    /// Stable name.
    pub code: &'static str,
    /// In words.
    pub text: String,
    /// Whether it asks for something that only the person or the paper's author can say.
    pub asks: bool,
}

/// A number or range on another scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Converted {
    /// Symbol of the scale, `Rm` for tensile strength.
    pub scale: &'static str,
    /// Unit behind the numbers.
    pub unit: &'static str,
    /// The converted number; absent for a range and where the print repeats a value.
    pub value: Option<f64>,
    /// Low end: of the conversion's own width around a single number, or the converted low limit.
    pub low: Option<f64>,
    /// High end, likewise.
    pub high: Option<f64>,
    /// The share of cases that low to high is meant to hold; absent for converted limits.
    pub width_level: Option<f64>,
    /// Half of the conversion's own width at 95 %: at the number, or at the limit where it is larger.
    pub half_width: f64,
    /// Stable name of the table.
    pub table: &'static str,
    /// Stable name of the standard the table is printed in.
    pub source: &'static str,
    /// `row 52`, `rows 52, 53`: where in the table the number stands.
    pub basis: String,
    /// `parenthesised`, `recalled`, `repeated`.
    pub flags: Vec<&'static str>,
    /// What other tables say.
    pub others: Vec<Other>,
    /// What measured steels had at this hardness; only for tensile strength, where they were measured.
    pub measured: Option<Measured>,
    /// The answer in words and figures, rounded by the rule of the scale.
    pub shown: String,
}

/// Tensile strength of measured steels at a hardness.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Measured {
    /// Middle in MPa.
    pub value: f64,
    /// Low end in MPa.
    pub low: f64,
    /// High end in MPa.
    pub high: f64,
    /// The share of heats meant.
    pub width_level: f64,
    /// Stable name of the data set.
    pub source: &'static str,
    /// In words.
    pub shown: String,
}

/// What another table says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Other {
    /// Stable name of the table.
    pub table: &'static str,
    /// Its number for a single reading.
    pub value: Option<f64>,
    /// Its low limit for a range.
    pub low: Option<f64>,
    /// Its high limit for a range.
    pub high: Option<f64>,
    /// Rounded by the rule of the scale.
    pub shown: String,
}

/// The scales that are shown when none are asked for.
#[must_use]
pub fn default_targets(material: Material, from: Axis) -> Vec<Axis> {
    const USUAL: [Axis; 6] = [
        Axis::Hardness(Scale::Hrc),
        Axis::Hardness(Scale::Hv),
        Axis::Hardness(Scale::Hbw),
        Axis::Hardness(Scale::Hra),
        Axis::Hardness(Scale::Hrb),
        Axis::Tensile,
    ];
    let reachable = reachable(material, from);
    // The tables of other metals are short, and their usual scales are others.
    if material != Material::CarbonAlloySteel {
        return reachable;
    }
    USUAL.into_iter().filter(|axis| *axis != from && reachable.contains(axis)).collect()
}

/// Reads the symbol of a scale.
///
/// # Errors
/// A refusal that lists the symbols.
pub fn parse_axis(language: Language, text: &str) -> Result<Axis, Refusal> {
    Axis::find(text).ok_or_else(|| {
        let known: Vec<&str> = Scale::ALL.iter().map(|s| s.symbol()).chain(["Rm"]).collect();
        Refusal::new(
            "bench.unknown_scale",
            language.say(Phrase::UnknownScale { given: &format::shortened(text) }),
            format::shortened(text),
            known.join(", "),
            language.say(Phrase::NotInTableInstead),
        )
    })
}

/// Reads the name of a table.
///
/// # Errors
/// A refusal that lists the names.
pub fn parse_table(language: Language, text: &str) -> Result<TableId, Refusal> {
    TableId::find(text).ok_or_else(|| {
        let known: Vec<&str> = TableId::all().map(|(_, t)| t.key()).collect();
        Refusal::new(
            "bench.unknown_table",
            language.say(Phrase::UnknownTable { given: &format::shortened(text) }),
            format::shortened(text),
            known.join(", "),
            language.say(Phrase::NotInTableInstead),
        )
    })
}

/// Which tables may answer: those of a class of materials, or one table.
///
/// # Errors
/// A refusal when a name is unknown, when the class has no table and why, or when the table is one of
/// another class.
pub fn choose(
    language: Language,
    material: Option<&str>,
    table: Option<&str>,
) -> Result<Choice, Refusal> {
    let table = table.map(|name| parse_table(language, name)).transpose()?;
    let of_table = table.map_or(Choice::STEEL, Choice::table);
    let Some(name) = material else { return Ok(of_table) };
    let material = Material::find(name).ok_or_else(|| {
        let known: Vec<&str> = Material::ALL.into_iter().map(Material::key).collect();
        Refusal::new(
            "bench.unknown_material",
            language.say(Phrase::UnknownMaterial { given: &format::shortened(name) }),
            format::shortened(name),
            known.join(", "),
            language.say(Phrase::NotInTableInstead),
        )
    })?;
    match table {
        _ if !material.has_tables() => Err(Refusal::of_material(language, material)),
        Some(table) if of_table.material != material => Err(Refusal::new(
            "bench.table_of_other_material",
            language.say(Phrase::TableOfOther { table, material }),
            table.get().map_or("", Table::key),
            of_table.material.key(),
            language.say(Phrase::NotInTableInstead),
        )),
        only => Ok(Choice { material, only }),
    }
}

/// Converts what is written.
///
/// # Errors
/// A refusal when the text is no hardness, a name is unknown, or no scale at all is reached.
///
/// # Example
/// ```
/// use biteband_bench::answer::{ConvertQuestion, convert};
/// use biteband_bench::words::Language;
/// let question = ConvertQuestion { text: "HRC 38-42".into(), to: vec!["HBW".into()], ..Default::default() };
/// let answer = convert(Language::English, &question).unwrap();
/// assert_eq!((answer.results[0].low, answer.results[0].high), (Some(353.0), Some(390.0)));
/// ```
pub fn convert(language: Language, question: &ConvertQuestion) -> Result<ConvertAnswer, Refusal> {
    let choice = choose(language, question.material.as_deref(), question.table.as_deref())?;
    let parsed = designation::parse(&question.text)
        .map_err(|error| Refusal::of_designation(language, &question.text, &error))?;
    let written = parsed.designation();
    let targets = if question.to.is_empty() {
        default_targets(choice.material, written.axis)
    } else {
        question.to.iter().map(|s| parse_axis(language, s)).collect::<Result<_, _>>()?
    };
    let (low, high) = written.amount.limits();
    let input = ConvertInput {
        scale: written.axis.symbol(),
        low,
        high,
        understood: written.to_string(),
        notes: parsed.remarks().iter().map(|&remark| note(language, remark)).collect(),
    };
    let mut results = Vec::new();
    let mut refusals = Vec::new();
    for to in targets {
        match one(language, question.units, written, to, choice) {
            Ok(converted) => results.push(converted),
            // Nobody who reads a hardened part waits for HRB; unasked, its refusal would be noise.
            Err(_) if question.to.is_empty() && to == Axis::Hardness(Scale::Hrb) => {}
            Err(error) => refusals.push(Refusal::of_hardness(language, &error)),
        }
    }
    if results.is_empty() {
        return Err(refusals.into_iter().next().unwrap_or_else(|| {
            Refusal::of_hardness(
                language,
                &Error::NoTable { from: written.axis, to: written.axis, choice },
            )
        }));
    }
    let mut cautions = vec![language.say(Phrase::ConvertCaution).into_owned()];
    if results.iter().any(|r| r.scale == Axis::Tensile.symbol()) {
        cautions.push(language.say(Phrase::TensileCaution).into_owned());
    }
    if choice.material != Material::CarbonAlloySteel {
        let recalled = results.iter().any(|r| r.flags.contains(&"recalled"));
        cautions.push(language.say(Phrase::OtherMetalCaution { recalled }).into_owned());
    }
    Ok(ConvertAnswer { input, material: choice.material.key(), results, refusals, cautions })
}

/// A remark with its stable name.
pub(super) fn note(language: Language, remark: Remark) -> Note {
    let code = match remark {
        Remark::DecimalComma => "decimal_comma",
        Remark::SymbolFirst => "symbol_first",
        Remark::SpaceMissing => "space_missing",
        Remark::OldSymbol => "old_symbol",
        Remark::LowerCase => "lower_case",
        Remark::RangeStyle => "range_style",
        Remark::LimitStyle => "limit_style",
        Remark::Approximate => "approximate",
        Remark::RockwellTakenAsC => "rockwell_taken_as_c",
        Remark::BallLetterMissing => "ball_letter_missing",
        Remark::BallLetterOnDiamond => "ball_letter_on_diamond",
        Remark::ForceMissing => "force_missing",
        Remark::ForceNotStandard => "force_not_standard",
        Remark::BrinellConditionMissing => "brinell_condition_missing",
        Remark::BrinellSymbolWithdrawn => "brinell_symbol_withdrawn",
        Remark::SteelBallWithdrawn => "steel_ball_withdrawn",
        Remark::AboveBrinellLimit => "above_brinell_limit",
        Remark::DwellNotWritten => "dwell_not_written",
        Remark::BelowVerifiedRockwellC => "below_verified_rockwell_c",
        Remark::FromKsi => "from_ksi",
    };
    Note { code, text: language.say(Phrase::Remark(remark)).into_owned(), asks: remark.asks() }
}

/// One scale, from a single number or from limits.
fn one(
    language: Language,
    units: Units,
    written: &Designation,
    to: Axis,
    choice: Choice,
) -> Result<Converted, Error> {
    let from = written.axis;
    if let Amount::Single(value) = written.amount {
        let reading = Reading::new(from, value)?;
        let found = convert_one(reading, to, choice)?;
        let others = compare(reading, to, found.table)
            .into_iter()
            .filter_map(|other| {
                let (low, high) = other.at.span.unwrap_or((other.at.value, other.at.value));
                let single = other.at.span.is_none();
                Some(Other {
                    table: other.table.get()?.key(),
                    value: single.then_some(other.at.value),
                    low: (!single).then_some(low),
                    high: (!single).then_some(high),
                    shown: units.range(to, Some(low), Some(high)),
                })
            })
            .collect();
        let measured = measured(language, units, reading, to, choice);
        return Ok(Converted { measured, ..single(language, units, to, &found, others) });
    }
    let (low, high) = written.amount.limits();
    let limits = convert_limits(from, low, high, to, choice)?;
    let used = limits.low.or(limits.high).map(|c| c.table);
    let others = TableId::all()
        .filter(|(id, table)| Some(*id) != used && table.class() == choice.material)
        .filter_map(|(id, other)| {
            let there = convert_limits(from, low, high, to, Choice::table(id)).ok()?;
            let (low, high) = (there.low.map(|c| c.at.value), there.high.map(|c| c.at.value));
            Some(Other {
                table: other.key(),
                value: None,
                low,
                high,
                shown: units.range(to, low, high),
            })
        })
        .collect();
    range(units, to, limits.low, limits.high, others).ok_or(Error::NoTable { from, to, choice })
}

/// What measured steels had, for a strength of steel in the range where they were measured.
fn measured(
    language: Language,
    units: Units,
    reading: Reading,
    to: Axis,
    choice: Choice,
) -> Option<Measured> {
    const HV: Axis = Axis::Hardness(Scale::Hv);
    if to != Axis::Tensile || choice.material != Material::CarbonAlloySteel {
        return None;
    }
    let vickers = if reading.axis() == HV {
        reading.value()
    } else {
        convert_one(reading, HV, Choice::STEEL).ok()?.at.value
    };
    let MeasuredStrength { value, half, level } = MeasuredStrength::at(vickers)?;
    let (low, high) = (value - half, value + half);
    let band = units.range(to, Some(low), Some(high));
    Some(Measured {
        value,
        low,
        high,
        width_level: level,
        source: "nims-fatigue",
        shown: language.say(Phrase::MeasuredStrength { shown: &band }).into_owned(),
    })
}

fn single(
    language: Language,
    units: Units,
    to: Axis,
    found: &Conversion,
    others: Vec<Other>,
) -> Converted {
    let (value, width) = (found.at.value, found.width);
    let shown = match found.at.span {
        Some((low, high)) => units.range(to, Some(low), Some(high)),
        None if to == Axis::Tensile => language
            .say(Phrase::Estimate)
            .replace("{}", &units.range(to, Some(value - width.half), Some(value + width.half))),
        None => units.with_unit(to, value),
    };
    let mut flags = flags(&[found]);
    if found.at.span.is_some() {
        flags.push("repeated");
    }
    Converted {
        scale: to.symbol(),
        unit: to.unit(),
        value: found.at.span.is_none().then_some(value),
        low: Some(value - width.half),
        high: Some(value + width.half),
        width_level: Some(width.level),
        half_width: width.half,
        table: found.table.get().map_or("", |t| t.key()),
        source: source_of(found.table),
        basis: basis(&[found.at.basis]),
        flags,
        others,
        measured: None,
        shown,
    }
}

fn range(
    units: Units,
    to: Axis,
    low: Option<Conversion>,
    high: Option<Conversion>,
    others: Vec<Other>,
) -> Option<Converted> {
    let ends: Vec<&Conversion> = low.iter().chain(high.iter()).collect();
    let table = ends.first()?.table;
    let bases: Vec<Basis> = ends.iter().map(|c| c.at.basis).collect();
    let value = |c: &Option<Conversion>| c.as_ref().map(|c| c.at.value);
    Some(Converted {
        scale: to.symbol(),
        unit: to.unit(),
        value: None,
        low: value(&low),
        high: value(&high),
        width_level: None,
        half_width: ends.iter().map(|c| c.width.half).fold(0.0, f64::max),
        table: table.get()?.key(),
        source: source_of(table),
        basis: basis(&bases),
        flags: flags(&ends),
        others,
        measured: None,
        shown: units.range(to, value(&low), value(&high)),
    })
}

fn source_of(table: TableId) -> &'static str {
    table.get().and_then(Table::source).map_or("", |s| s.key())
}

pub(super) fn flags(ends: &[&Conversion]) -> Vec<&'static str> {
    let mut flags = Vec::new();
    if ends.iter().any(|c| c.at.marks.parenthesised) {
        flags.push("parenthesised");
    }
    if ends.iter().any(|c| c.at.marks.recalled) {
        flags.push("recalled");
    }
    flags
}

/// "row 52", "rows 52, 53", "rows 38, 42": each row once, in order.
fn basis(bases: &[Basis]) -> String {
    let mut rows: Vec<f64> = Vec::new();
    for found in bases {
        match *found {
            Basis::Row { row } => rows.push(row),
            Basis::Between { lower, upper } => rows.extend([lower, upper]),
        }
    }
    sort_by_number(&mut rows, |row| *row);
    rows.dedup_by(|a, b| a.total_cmp(b).is_eq());
    let list: Vec<String> = rows.iter().map(|row| format::exact(*row)).collect();
    let word = if list.len() == 1 { "row" } else { "rows" };
    format!("{word} {}", list.join(", "))
}
