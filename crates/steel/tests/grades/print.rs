//! The data files, read by a parser that shares nothing with the generator.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use biteband_hardness::Seen;
use biteband_steel::{Cited, Interval};

/// A row by its headings.
pub(crate) struct Row(BTreeMap<String, String>);

impl Row {
    pub(crate) fn get(&self, heading: &str) -> &str {
        self.0.get(heading).map_or_else(|| panic!("no column {heading}"), String::as_str)
    }

    pub(crate) fn number(&self, heading: &str) -> Option<f64> {
        let text = self.get(heading);
        (!text.is_empty()).then(|| text.parse().unwrap())
    }

    pub(crate) fn list(&self, heading: &str) -> Vec<&str> {
        self.get(heading).split(';').map(str::trim).filter(|part| !part.is_empty()).collect()
    }
}

/// Quoted fields hold commas; a doubled quote stands for one.
fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    let mut signs = line.chars().peekable();
    while let Some(sign) = signs.next() {
        match sign {
            '"' if quoted && signs.peek() == Some(&'"') => {
                signs.next();
                cells.last_mut().unwrap().push('"');
            }
            '"' => quoted = !quoted,
            ',' if !quoted => cells.push(String::new()),
            other => cells.last_mut().unwrap().push(other),
        }
    }
    cells
}

pub(crate) fn text(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(name);
    fs::read_to_string(path).unwrap()
}

pub(crate) fn rows(name: &str) -> Vec<Row> {
    let text = text(name);
    let mut lines = text.lines();
    let headings = cells(lines.next().unwrap());
    lines
        .map(|line| {
            let cells = cells(line);
            assert_eq!(cells.len(), headings.len(), "{name}: {line}");
            Row(headings.iter().cloned().zip(cells).collect())
        })
        .collect()
}

pub(crate) fn same(one: Option<f64>, other: Option<f64>) -> bool {
    one.map(f64::to_bits) == other.map(f64::to_bits)
}

pub(crate) fn same_interval(given: Option<Interval>, low: Option<f64>, high: Option<f64>) -> bool {
    same(given.map(|range| range.low), low) && same(given.map(|range| range.high), high)
}

/// Sources, status and confidence as the row states them.
pub(crate) fn cites(cited: Cited, row: &Row, [sources, status, confidence]: [&str; 3]) -> bool {
    let seen = match row.get(status) {
        "seen" => Seen::Seen,
        "mixed" => Seen::Part,
        "recalled" => Seen::Recalled,
        other => panic!("{other}"),
    };
    cited.sources == row.list(sources)
        && cited.seen == seen
        && cited.confidence.key() == row.get(confidence)
}
