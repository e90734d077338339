//! The conversion page.

use biteband_hardness::{Axis, Choice, Material, Scale, SourceId, Table, TableId, reachable};

use super::scales::{AlignedView, Lens, aligned};
use super::{Chip, Problem};
use crate::answer::{
    ConvertAnswer, ConvertQuestion, Converted, choose, convert as answer, default_targets,
};
use crate::format;
use crate::state::{App, Field};
use crate::words::{Language, Phrase, Ui};
use biteband_hardness::designation::{self, Amount, Designation};

/// Everything the page shows.
#[derive(Clone, Debug, PartialEq)]
pub struct ConvertView {
    /// Scales for a bare number.
    pub scales: Vec<Chip>,
    /// Classes of materials, those without tables too.
    pub materials: Vec<Chip>,
    /// Why the class has no table and what can be said all the same; absent when it has.
    pub no_material: Option<Problem>,
    /// Scales that the class reaches from this one, each on or off.
    pub targets: Vec<Chip>,
    /// Tables to choose from.
    pub tables: Vec<TableChip>,
    /// "Read as 52 HRC"; empty before anything is readable.
    pub understood: String,
    /// How the text strays and what it leaves open.
    pub notes: Vec<String>,
    /// What is wrong with the text, once the field was left.
    pub problem: Option<Problem>,
    /// What to do while nothing is readable yet.
    pub hint: String,
    /// One entry for each scale reached.
    pub results: Vec<ResultView>,
    /// One entry for each usual scale not reached.
    pub refusals: Vec<Problem>,
    /// Cautions.
    pub cautions: Vec<String>,
    /// Every table's number for every scale.
    pub side_by_side: Option<SideBySide>,
    /// Scales side by side around the reading.
    pub aligned: Option<AlignedView>,
}

/// A table that can be chosen.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableChip {
    /// Stable name; absent for the order of preference.
    pub key: Option<&'static str>,
    /// Label.
    pub label: String,
    /// Whether it is taken.
    pub on: bool,
}

/// All tables beside each other: one column for each table, one row for each scale.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SideBySide {
    /// Short names of the tables.
    pub tables: Vec<&'static str>,
    /// Name of the scale and what each table says; empty where it says nothing.
    pub rows: Vec<(&'static str, Vec<String>)>,
}

/// A converted number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ResultView {
    /// Symbol of the scale.
    pub key: &'static str,
    /// Name of the scale.
    pub name: String,
    /// Number or range with unit.
    pub shown: String,
    /// The conversion's own width with unit.
    pub width: String,
    /// Row or rows and table.
    pub basis: String,
    /// Marks of the print, in words; empty without any.
    pub marks: String,
    /// Title of the table.
    pub table: &'static str,
    /// Materials of the table.
    pub material: &'static str,
    /// Standard, edition and whether it was read.
    pub source: String,
    /// What measured steels had; empty where none were measured.
    pub measured: String,
    /// What other tables say, as (short name, number).
    pub others: Vec<(&'static str, String)>,
    /// The same in one line.
    pub others_line: String,
}

/// The scales that are always offered for a bare number; the others come with "more".
const FIRST: [&str; 7] = ["HRC", "HV", "HBW", "HRA", "HRB", "HR30N", "Rm"];

/// Makes the page.
#[must_use]
pub fn convert(app: &App, language: Language) -> ConvertView {
    let state = &app.saved.convert;
    let text = with_scale(&state.text, &state.scale);
    let question = ConvertQuestion {
        text,
        to: state.to.clone(),
        table: state.table.clone(),
        material: Some(state.material.clone()),
        units: app.saved.settings.units,
    };
    let chosen = choose(language, question.material.as_deref(), question.table.as_deref());
    let choice = chosen.as_ref().copied().unwrap_or_default();
    let typing = app.session.active == Some(Field::Convert);
    let shown_axis = designation::parse(&question.text).ok().map(|p| p.designation().axis);
    let mut view = ConvertView {
        scales: scales(choice.material, state.more, shown_axis, &state.scale),
        materials: materials(language, &state.material),
        no_material: chosen.err().map(Problem::from),
        targets: shown_axis
            .map(|from| targets(choice.material, from, &state.to))
            .unwrap_or_default(),
        tables: tables(language, choice.material, shown_axis, state.table.as_deref()),
        understood: String::new(),
        notes: Vec::new(),
        problem: None,
        hint: String::new(),
        results: Vec::new(),
        refusals: Vec::new(),
        cautions: Vec::new(),
        side_by_side: None,
        aligned: None,
    };
    if view.no_material.is_some() {
        view.targets.clear();
        view.tables.clear();
        return view;
    }
    if state.text.trim().is_empty() {
        language.label(Ui::ConvertEmpty).clone_into(&mut view.hint);
        return view;
    }
    let parsed = designation::parse(&question.text);
    if let Ok(parsed) = &parsed {
        let written = parsed.designation().to_string();
        view.understood = language.say(Phrase::Understood(&written)).into_owned();
    }
    match answer(language, &question) {
        Err(_) if parsed.is_err() && typing => {
            language.label(Ui::ConvertTyping).clone_into(&mut view.hint);
        }
        // A text that reads well is no mistake of the field; that nothing converts it is an answer.
        Err(refusal) if parsed.is_ok() => view.refusals.push(refusal.into()),
        Err(refusal) => view.problem = Some(refusal.into()),
        Ok(found) => fill(app, language, &mut view, found),
    }
    if let Ok(parsed) = &parsed
        && !view.results.is_empty()
    {
        view.aligned = aligned_around(language, app, parsed.designation(), choice, &view);
    }
    view
}

/// Puts the chosen scale behind a text that has none.
fn with_scale(text: &str, scale: &str) -> String {
    let unit = if scale == "Rm" { "MPa" } else { scale };
    match designation::parse(text) {
        Err(designation::Error::NoScale) => format!("{} {unit}", text.trim()),
        _ => text.to_owned(),
    }
}

fn fill(app: &App, language: Language, view: &mut ConvertView, found: ConvertAnswer) {
    // How a text was spelled is told to a program; a person sees what was understood, and here only
    // what changes its meaning.
    const SPELLING: [&str; 6] = [
        "decimal_comma",
        "symbol_first",
        "space_missing",
        "lower_case",
        "range_style",
        "limit_style",
    ];
    view.side_by_side = side_by_side(app, &found);
    let telling = found.input.notes.into_iter().filter(|note| !SPELLING.contains(&note.code));
    view.notes = telling.map(|note| note.text).collect();
    view.results = found.results.iter().map(|r| result(app, language, r)).collect();
    view.refusals = found.refusals.into_iter().map(Problem::from).collect();
    view.cautions = found.cautions;
}

fn result(app: &App, language: Language, found: &Converted) -> ResultView {
    let units = app.saved.settings.units;
    let axis = Axis::find(found.scale).unwrap_or(Axis::Tensile);
    let table = TableId::find(found.table).and_then(TableId::get);
    let short = table.map_or("", |t| t.short());
    let source = SourceId::find(found.source)
        .map(|(_, source)| format!("{} {}, {}", source.body(), source.title(), source.edition()));
    let has = |flag: &str| found.flags.contains(&flag);
    let marks =
        Phrase::TableNotes { parenthesised: has("parenthesised"), recalled: has("recalled") };
    let others: Vec<(&'static str, String)> = found
        .others
        .iter()
        .filter_map(|other| {
            let short = TableId::find(other.table)?.get()?.short();
            Some((short, other.shown.clone()))
        })
        .collect();
    let others_line = if others.is_empty() {
        language.say(Phrase::OtherTablesNone).into_owned()
    } else {
        let list: Vec<String> =
            others.iter().map(|(table, shown)| format!("{shown} ({table})")).collect();
        language.say(Phrase::OtherTables { span: &list.join(", ") }).into_owned()
    };
    ResultView {
        key: found.scale,
        name: language.say(Phrase::AxisName(axis)).into_owned(),
        shown: found.shown.clone(),
        width: format!("±{}", units.width(axis, found.half_width)),
        basis: format!("{short}, {}", found.basis),
        marks: language.say(marks).into_owned(),
        table: table.map_or("", |t| t.title()),
        material: table.map_or("", |t| t.material()),
        source: source.unwrap_or_default(),
        measured: found.measured.as_ref().map(|m| m.shown.clone()).unwrap_or_default(),
        others,
        others_line,
    }
}

fn materials(language: Language, chosen: &str) -> Vec<Chip> {
    Material::ALL
        .into_iter()
        .map(|material| Chip {
            key: material.key(),
            label: language.say(Phrase::MaterialName(material)).into_owned(),
            on: material.key() == chosen,
        })
        .collect()
}

/// What can be converted to, the chosen ones on.
fn targets(material: Material, from: Axis, chosen: &[String]) -> Vec<Chip> {
    let usual = default_targets(material, from);
    reachable(material, from)
        .into_iter()
        .map(|axis| Chip {
            key: axis.symbol(),
            label: axis.symbol().to_owned(),
            on: if chosen.is_empty() {
                usual.contains(&axis)
            } else {
                chosen.iter().any(|symbol| symbol == axis.symbol())
            },
        })
        .collect()
}

fn side_by_side(app: &App, found: &ConvertAnswer) -> Option<SideBySide> {
    let units = app.saved.settings.units;
    let of = |key: &str| TableId::find(key);
    let mut tables: Vec<TableId> = Vec::new();
    for result in &found.results {
        let others = result.others.iter().filter_map(|other| of(other.table));
        tables.extend(of(result.table).into_iter().chain(others));
    }
    let tables: Vec<TableId> =
        TableId::all().map(|(id, _)| id).filter(|id| tables.contains(id)).collect();
    if tables.len() < 2 {
        return None;
    }
    let cell = |result: &Converted, table: TableId| {
        if of(result.table) == Some(table) {
            let axis = Axis::find(result.scale)?;
            return Some(match result.value {
                Some(value) => units.number(axis, value),
                None => units.range(axis, result.low, result.high),
            });
        }
        let other = result.others.iter().find(|other| of(other.table) == Some(table))?;
        let axis = Axis::find(result.scale)?;
        Some(match other.value {
            Some(value) => units.number(axis, value),
            None => units.range(axis, other.low, other.high),
        })
    };
    let rows = found.results.iter().map(|result| {
        let cells = tables.iter().map(|&table| cell(result, table).unwrap_or_default());
        (result.scale, cells.collect())
    });
    let rows = rows.collect();
    let tables = tables.iter().filter_map(|id| id.get()).map(Table::short).collect();
    Some(SideBySide { tables, rows })
}

fn scales(material: Material, more: bool, written: Option<Axis>, chosen: &str) -> Vec<Chip> {
    let on: &str = written.map_or(chosen, |axis| axis.symbol());
    let with_table = Scale::ALL.into_iter().map(Axis::Hardness).chain([Axis::Tensile]);
    with_table
        .filter(|axis| !reachable(material, *axis).is_empty())
        .filter(|axis| {
            more || material != Material::default()
                || FIRST.contains(&axis.symbol())
                || axis.symbol() == on
        })
        .map(|axis| Chip {
            key: axis.symbol(),
            label: axis.unit().to_owned(),
            on: axis.symbol() == on,
        })
        .collect()
}

fn tables(
    language: Language,
    material: Material,
    axis: Option<Axis>,
    chosen: Option<&str>,
) -> Vec<TableChip> {
    let any = TableChip {
        key: None,
        label: language.label(Ui::TableAny).to_owned(),
        on: chosen.is_none(),
    };
    let holds = |table: &Table| {
        table.class() == material
            && axis.is_none_or(|axis| table.columns().any(|(column, _)| column == axis))
    };
    let rest = TableId::all().filter(|(_, t)| holds(t) || Some(t.key()) == chosen).map(|(_, t)| {
        TableChip { key: Some(t.key()), label: t.short().to_owned(), on: chosen == Some(t.key()) }
    });
    std::iter::once(any).chain(rest).collect()
}

fn aligned_around(
    language: Language,
    app: &App,
    written: &Designation,
    choice: Choice,
    view: &ConvertView,
) -> Option<AlignedView> {
    let (low, high) = match written.amount {
        Amount::Single(value) => (Some(value), Some(value)),
        other => other.limits(),
    };
    let others: Vec<Axis> = view.results.iter().filter_map(|r| Axis::find(r.key)).collect();
    let convert = &app.saved.convert;
    let lens = Lens { zoom: convert.zoom, pan: convert.pan };
    let mut drawn =
        aligned(written.axis, (low, high), &others, choice, lens, app.saved.settings.units)?;
    let names: Vec<&str> = drawn.lines.iter().map(|line| line.label.as_str()).collect();
    drawn.label = language.say(Phrase::AlignedLabel { scales: &names.join(", ") }).into_owned();
    drawn.shown = format::dash(
        &low.map(format::exact).unwrap_or_default(),
        &high.map(format::exact).unwrap_or_default(),
    );
    Some(drawn)
}
