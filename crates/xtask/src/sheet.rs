//! Data files with headings, read for the generators of `steel`.

use crate::Outcome;
use crate::generated::number;
use std::collections::BTreeSet;
use std::path::Path;

/// A file of rows that know their headings.
pub(crate) struct Sheet {
    name: &'static str,
    headings: csv::StringRecord,
    pub(crate) rows: Vec<csv::StringRecord>,
}

/// One row of a sheet.
#[derive(Clone, Copy)]
pub(crate) struct Row<'a> {
    sheet: &'a Sheet,
    cells: &'a csv::StringRecord,
}

impl Sheet {
    /// Reads `name.csv`.
    ///
    /// # Errors
    ///
    /// Not as many rows as expected, a web address, or no CSV.
    pub(crate) fn read(
        folder: &Path,
        name: &'static str,
        expected: Option<usize>,
    ) -> Outcome<Self> {
        let path = folder.join(format!("{name}.csv"));
        let mut reader = csv::Reader::from_path(&path)
            .map_err(|error| format!("{}: {error}", path.display()))?;
        let headings = reader.headers()?.clone();
        let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>()?;
        if let Some(expected) = expected.filter(|expected| *expected != rows.len()) {
            return Err(format!("{name}.csv: {} rows, {expected} expected", rows.len()).into());
        }
        for row in &rows {
            if row.iter().any(|cell| cell.contains("://") || cell.contains("www.")) {
                return Err(format!("{name}.csv: a web address in {row:?}").into());
            }
        }
        Ok(Self { name, headings, rows })
    }

    pub(crate) fn all(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|cells| Row { sheet: self, cells })
    }
}

impl<'a> Row<'a> {
    pub(crate) fn get(self, heading: &str) -> Outcome<&'a str> {
        let place = self.sheet.headings.iter().position(|known| known == heading);
        let cell = place.and_then(|place| self.cells.get(place));
        Ok(cell.ok_or_else(|| self.says(&format!("no column {heading}")))?.trim())
    }

    pub(crate) fn says(self, what: &str) -> String {
        format!("{}.csv, {}: {what}", self.sheet.name, self.cells.get(0).unwrap_or_default())
    }

    /// An optional number as a literal.
    pub(crate) fn option(self, heading: &str) -> Outcome<String> {
        option(self.get(heading)?).map_err(|error| self.says(&error.to_string()).into())
    }

    /// Lowest and highest as literals, in order.
    pub(crate) fn ends(self, low: &str, high: &str) -> Outcome<(String, String)> {
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
    pub(crate) fn interval(self, low: &str, high: &str) -> Outcome<String> {
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
    pub(crate) fn word(self, heading: &str, known: &[&str]) -> Outcome<String> {
        let word = self.get(heading)?;
        if known.contains(&word) {
            Ok(variant(word))
        } else {
            Err(self.says(&format!("{heading} = {word}; known are {}", known.join(", "))).into())
        }
    }
}

/// The keys of every source of `steel`.
pub(crate) struct SourceKeys(BTreeSet<String>);

impl SourceKeys {
    /// Those of the data on grades and those of the methods.
    ///
    /// # Errors
    ///
    /// Two sources of one key.
    pub(crate) fn read(folder: &Path) -> Outcome<Self> {
        let mut keys = BTreeSet::new();
        for name in ["sources", "methods"] {
            for row in Sheet::read(folder, name, None)?.all() {
                if !keys.insert(row.get("key")?.to_owned()) {
                    return Err(row.says("two sources of this key").into());
                }
            }
        }
        Ok(Self(keys))
    }

    /// Sources, status and confidence of a group of cells.
    ///
    /// # Errors
    ///
    /// A source that is in no list, none at all, or one that is said to have been read and is memory.
    pub(crate) fn cited(
        &self,
        row: Row<'_>,
        [source, status, confidence]: [&str; 3],
    ) -> Outcome<String> {
        let keys: Vec<&str> = parts(row.get(source)?).collect();
        if keys.is_empty() {
            return Err(row.says(&format!("no {source}")).into());
        }
        if let Some(unknown) = keys.iter().find(|key| !self.0.contains(**key)) {
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

pub(crate) fn parts(list: &str) -> impl Iterator<Item = &str> {
    list.split(';').map(str::trim).filter(|part| !part.is_empty())
}

fn option(text: &str) -> Outcome<String> {
    if text.is_empty() { Ok("None".to_owned()) } else { Ok(format!("Some({})", number(text)?)) }
}

pub(crate) fn interval(low: &str, high: &str) -> Outcome<String> {
    Ok(format!("Interval {{ low: {}, high: {} }}", number(low)?, number(high)?))
}

/// `fast_oil`, `free-machining` and `triple for large` as variants.
pub(crate) fn variant(word: &str) -> String {
    let part = |part: &str| {
        let (first, rest) = part.split_at(part.len().min(1));
        first.to_uppercase() + rest
    };
    word.split(['_', '-', ' ']).map(part).collect()
}
