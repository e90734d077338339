//! Checks against the world outside: reads the reference files that stand beside this crate.
//!
//! Reference files are CSV with `#` lines on top that say what they are and where they come from.

pub mod calibrate;

use std::collections::HashMap;
use std::error::Error;
use std::fs::File;
use std::io::{BufRead, BufReader, Read};
use std::path::{Path, PathBuf};

/// One line of a reference file, by heading.
#[derive(Clone, Debug)]
pub struct Row {
    fields: HashMap<String, String>,
    /// Line number among the rows, for messages.
    pub number: usize,
}

impl Row {
    /// The text under a heading; empty when the file has no such heading.
    #[must_use]
    pub fn text(&self, heading: &str) -> &str {
        self.fields.get(heading).map_or("", String::as_str)
    }

    /// The number under a heading; NaN, which no comparison passes, when there is none.
    #[must_use]
    pub fn number(&self, heading: &str) -> f64 {
        self.text(heading).parse().unwrap_or(f64::NAN)
    }
}

/// Where a reference file stands.
#[must_use]
pub fn reference(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("reference").join(name)
}

/// Reads `reference/<name>`.
///
/// # Errors
/// When the file is missing or ragged.
pub fn rows(name: &str) -> Result<Vec<Row>, Box<dyn Error>> {
    read(&reference(name))
}

pub(crate) fn read(path: &Path) -> Result<Vec<Row>, Box<dyn Error>> {
    let mut file =
        BufReader::new(File::open(path).map_err(|e| format!("{}: {e}", path.display()))?);
    // Only the lines on top are comments: a text further down may begin with any sign.
    let mut first = String::new();
    loop {
        first.clear();
        if file.read_line(&mut first)? == 0 || !first.starts_with('#') {
            break;
        }
    }
    let mut reader = csv::Reader::from_reader(first.as_bytes().chain(file));
    let headings = reader.headers()?.clone();
    let mut rows = Vec::new();
    for (index, record) in reader.records().enumerate() {
        let record = record?;
        let pairs = headings.iter().zip(record.iter());
        let fields = pairs.map(|(h, v)| (h.to_owned(), v.to_owned())).collect();
        rows.push(Row { fields, number: index + 1 });
    }
    Ok(rows)
}
