//! The prints, read from the data files by a parser that shares nothing with the generator.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use biteband_hardness::{Axis, Scale, Table, TableId};

pub(crate) struct Printed {
    pub(crate) value: f64,
    pub(crate) parenthesised: bool,
}

/// One published table as its files say.
pub(crate) struct Sheet {
    pub(crate) id: String,
    pub(crate) row: String,
    pub(crate) declared_rows: usize,
    pub(crate) source: String,
    /// Short name, title, materials, conditions.
    pub(crate) words: [String; 4],
    pub(crate) scales: BTreeMap<String, Vec<Axis>>,
    pub(crate) recalled: BTreeMap<String, String>,
    pub(crate) headings: Vec<String>,
    /// In printed order.
    pub(crate) lines: Vec<Vec<Option<Printed>>>,
}

pub(crate) fn data(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(name)
}

pub(crate) fn axis(symbol: &str) -> Axis {
    Axis::Hardness(match symbol {
        "Rm" => return Axis::Tensile,
        "HRC" => Scale::Hrc,
        "HRA" => Scale::Hra,
        "HRD" => Scale::Hrd,
        "HR15N" => Scale::Hr15n,
        "HR30N" => Scale::Hr30n,
        "HR45N" => Scale::Hr45n,
        "HRB" => Scale::Hrb,
        "HRE" => Scale::Hre,
        "HRF" => Scale::Hrf,
        "HRG" => Scale::Hrg,
        "HRH" => Scale::Hrh,
        "HRK" => Scale::Hrk,
        "HR15T" => Scale::Hr15t,
        "HR30T" => Scale::Hr30t,
        "HR45T" => Scale::Hr45t,
        "HR15W" => Scale::Hr15w,
        "HBW 10/500" => Scale::Hbw500,
        "HV" => Scale::Hv,
        "HBW" => Scale::Hbw,
        "HBS" => Scale::Hbs,
        "HK" => Scale::Hk,
        "HSc" => Scale::Scleroscope,
        other => panic!("tables.toml names {other}"),
    })
}

pub(crate) fn sheets() -> Vec<Sheet> {
    let text = fs::read_to_string(data("tables.toml")).unwrap();
    let file: toml::Table = text.parse().unwrap();
    file["table"].as_array().unwrap().iter().map(sheet).collect()
}

pub(crate) fn sheet(entry: &toml::Value) -> Sheet {
    let word = |key: &str| entry[key].as_str().unwrap().to_owned();
    let id = word("id");
    let csv = fs::read_to_string(data("tables").join(format!("{id}.csv"))).unwrap();
    let mut lines = csv.lines().filter(|line| !line.starts_with('#'));
    let headings: Vec<String> = lines.next().unwrap().split(',').map(str::to_owned).collect();
    let lines: Vec<Vec<Option<Printed>>> =
        lines.map(|line| line.split(',').map(printed).collect()).collect();
    assert!(lines.iter().all(|line| line.len() == headings.len()), "{id}: a ragged line");
    let axes = |value: &toml::Value| {
        value.as_array().unwrap().iter().map(|s| axis(s.as_str().unwrap())).collect()
    };
    Sheet {
        id,
        row: word("row"),
        words: ["short", "title", "material", "conditions"]
            .map(|key| entry[key].as_str().unwrap().to_owned()),
        declared_rows: usize::try_from(entry["rows"].as_integer().unwrap()).unwrap(),
        source: word("source"),
        scales: entry["scales"]
            .as_table()
            .unwrap()
            .iter()
            .map(|(heading, scales)| (heading.clone(), axes(scales)))
            .collect(),
        recalled: entry["recalled"]
            .as_table()
            .unwrap()
            .iter()
            .map(|(heading, spec)| (heading.clone(), spec.as_str().unwrap().to_owned()))
            .collect(),
        headings,
        lines,
    }
}

pub(crate) fn printed(cell: &str) -> Option<Printed> {
    let number = cell.strip_suffix('*').unwrap_or(cell);
    (!number.is_empty())
        .then(|| Printed { value: number.parse().unwrap(), parenthesised: number != cell })
}

/// Whether `recalled` of the data file ("all", "20..38", "odd 21..33") covers a row.
pub(crate) fn recalled(spec: Option<&String>, row: f64) -> bool {
    let Some(spec) = spec else { return false };
    if spec == "all" {
        return true;
    }
    let range = spec.trim_start_matches("odd ");
    let (low, high) = range.split_once("..").unwrap();
    let inside = row >= low.parse::<f64>().unwrap() && row <= high.parse::<f64>().unwrap();
    inside && (range == spec || (row - 1.0) % 2.0 == 0.0)
}

impl Sheet {
    pub(crate) fn table(&self) -> (TableId, &'static Table) {
        let id = TableId::find(&self.id).unwrap();
        (id, id.get().unwrap())
    }

    pub(crate) fn place(&self, heading: &str) -> usize {
        self.headings.iter().position(|h| h == heading).unwrap()
    }

    /// Row scale and cell of a column, from soft to hard.
    pub(crate) fn column(&self, heading: &str) -> Vec<(f64, &Printed)> {
        let (row, column) = (self.place(&self.row), self.place(heading));
        let mut cells: Vec<(f64, &Printed)> = self
            .lines
            .iter()
            .filter_map(|line| Some((line[row].as_ref().unwrap().value, line[column].as_ref()?)))
            .collect();
        cells.sort_by(|a, b| a.0.total_cmp(&b.0));
        cells
    }

    pub(crate) fn row_axis(&self) -> Axis {
        self.scales[&self.row][0]
    }

    /// Every (heading, axis) that the library holds.
    pub(crate) fn axes(&self) -> impl Iterator<Item = (&String, Axis)> {
        self.scales.iter().flat_map(|(heading, axes)| axes.iter().map(move |&axis| (heading, axis)))
    }
}

pub(crate) fn same(a: f64, b: f64) -> bool {
    a.to_bits() == b.to_bits()
}

/// ASTM E140 Tables 1 and 2 end at 20 HRC and at 100 HRB; what other tables print beyond stands in
/// parentheses, for comparison only.
pub(crate) fn beyond(axis: Axis, value: f64) -> bool {
    match axis {
        Axis::Hardness(Scale::Hrc) => value < 20.0,
        Axis::Hardness(Scale::Hrb) => value > 100.0,
        _ => false,
    }
}
