//! `biteband convert --csv`: a column of any length, in the memory of one row.

use std::collections::BTreeMap;
use std::io::Write;
use std::rc::Rc;
use std::str;

use biteband_bench::Refusal;
use biteband_bench::answer::{choose, parse_axis};
use biteband_bench::words::Language;
use biteband_hardness::designation::{self, Amount, Designation};
use biteband_hardness::{Axis, Choice, Conversion, Error, Rounding, Route, convert_limits};
use csv::ByteRecord;

use crate::args::{ConvertArgs, Digits};
use crate::output::{Output, Stop};
use crate::rows::{self, Rows, add_heading, because};
use crate::words::{self, Row, RowAct};

/// No plain number is longer; a longer one is left to the parser of designations.
const LONGEST_NUMBER: usize = 12;

pub(crate) fn run(
    output: &mut Output,
    args: &ConvertArgs,
    path: &str,
    column: &str,
) -> Result<(), Stop> {
    let language = output.language;
    let cells = Cells {
        language,
        from: args.from.as_deref().map(|text| parse_axis(language, text)).transpose()?,
        to: args.to.iter().map(|text| parse_axis(language, text)).collect::<Result<_, _>>()?,
        choice: choose(language, args.material.as_deref(), args.table.as_deref())?,
        digits: args.digits,
    };
    let mut sheet =
        Column { cells, heading: column.to_owned(), place: 0, scratch: Scratch::default() };
    rows::run(language, &mut sheet, path, args.delimiter)
}

/// The column that is converted.
struct Column {
    cells: Cells,
    heading: String,
    place: usize,
    scratch: Scratch,
}

impl Rows for Column {
    const ACT: RowAct = RowAct::Convert;

    fn headings(&mut self, record: &mut ByteRecord) -> Result<(), Stop> {
        self.place = rows::column(self.cells.language, record, &self.heading)?;
        self.cells.add_headings(record);
        Ok(())
    }

    fn read(&mut self, record: &ByteRecord) {
        self.cells.convert(record.get(self.place).unwrap_or_default(), &mut self.scratch);
    }

    fn add(&self, record: &mut ByteRecord) {
        self.cells.add_numbers(record, &self.scratch);
    }

    fn reason(&mut self) -> &mut Vec<u8> {
        &mut self.scratch.reason
    }

    fn clear(&mut self) {
        self.scratch.clear();
    }
}

/// The texts that one row needs, kept from row to row.
#[derive(Default)]
struct Scratch {
    /// Ends of the number texts in `digits`: three for each target.
    ends: Vec<usize>,
    digits: Vec<u8>,
    reason: Vec<u8>,
    /// Reasons for single values that no table holds, by scales and bits of the value: a column has
    /// few different ones, and a reason takes a hundred times as long to find as a number.
    known: BTreeMap<(Axis, Axis, u64), Rc<str>>,
    /// The conversions that the rows so far asked for, made ready.
    routes: BTreeMap<(Axis, Axis), Result<Route, Error>>,
}

/// As many reasons are kept at a time.
const KNOWN_REASONS: usize = 1024;

impl Scratch {
    fn clear(&mut self) {
        self.ends.clear();
        self.digits.clear();
        self.reason.clear();
    }

    fn reason(&mut self, sentence: &str) {
        because(&mut self.reason, sentence);
    }

    fn number(&mut self, axis: Axis, digits: Digits, value: Option<f64>) {
        if let Some(value) = value {
            match digits {
                // Writing to memory does not fail.
                Digits::Full => drop(write!(self.digits, "{value}")),
                Digits::Shown => {
                    let (rounded, decimals) = Rounding::converted(axis).apply(value);
                    push_decimal(&mut self.digits, rounded, decimals);
                }
            }
        }
        self.ends.push(self.digits.len());
    }
}

/// Writes a number that is rounded already; several times faster than formatting any `f64`.
fn push_decimal(text: &mut Vec<u8>, rounded: f64, decimals: u8) {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a hardness with two decimals has at most seven digits"
    )]
    let scaled = (rounded * 10_f64.powi(i32::from(decimals))).round() as i32;
    if scaled < 0 {
        text.push(b'-');
    }
    let start = text.len();
    let mut rest = scaled.unsigned_abs();
    let mut written = 0;
    while rest > 0 || written <= decimals {
        if written == decimals && decimals > 0 {
            text.push(b'.');
        }
        let [digit, ..] = (rest % 10).to_le_bytes();
        text.push(b'0' + digit);
        rest /= 10;
        written += 1;
    }
    if let Some(backwards) = text.get_mut(start..) {
        backwards.reverse();
    }
}

/// What a cell means and becomes.
struct Cells {
    language: Language,
    from: Option<Axis>,
    to: Vec<Axis>,
    choice: Choice,
    digits: Digits,
}

impl Cells {
    /// `HV`, `HV_low`, `HV_high` for each scale.
    fn add_headings(&self, record: &mut ByteRecord) {
        for axis in &self.to {
            for end in ["", "_low", "_high"] {
                add_heading(record, format!("{axis}{end}"), "_converted");
            }
        }
    }

    fn add_numbers(&self, record: &mut ByteRecord, scratch: &Scratch) {
        let mut start = 0;
        let mut ends = scratch.ends.iter();
        for _ in 0..self.to.len().saturating_mul(3) {
            let end = ends.next().copied().unwrap_or(start);
            record.push_field(scratch.digits.get(start..end).unwrap_or_default());
            start = end;
        }
    }

    fn convert(&self, cell: &[u8], scratch: &mut Scratch) {
        let cell = cell.trim_ascii();
        if let (Some(from), Some(value)) = (self.from, plain_number(cell)) {
            self.single(from, value, scratch);
            return;
        }
        let Ok(text) = str::from_utf8(cell) else {
            scratch.reason(&words::row(self.language, &Row::NotText));
            return;
        };
        if text.is_empty() {
            scratch.reason(&words::row(self.language, &Row::EmptyCell));
            return;
        }
        match self.read(text) {
            Ok(written) => match written.amount {
                Amount::Single(value) => self.single(written.axis, value, scratch),
                amount => self.limits(written.axis, amount, scratch),
            },
            Err(error) => {
                let refusal = Refusal::of_designation(self.language, text, &error);
                scratch.reason(&refusal.message);
            }
        }
    }

    /// A full designation stands for itself; a bare number or range is on the scale of the column.
    fn read(&self, text: &str) -> Result<Designation, designation::Error> {
        let parsed = match (designation::parse(text), self.from) {
            (Err(designation::Error::NoScale), Some(from)) => {
                designation::parse(&format!("{text} {}", from.unit()))?
            }
            (parsed, _) => parsed?,
        };
        Ok(parsed.designation().clone())
    }

    fn single(&self, from: Axis, value: f64, scratch: &mut Scratch) {
        for &to in &self.to {
            let key = (from, to, value.to_bits());
            if let Some(reason) = scratch.known.get(&key).map(Rc::clone) {
                self.skip(to, &reason, scratch);
                continue;
            }
            let route = scratch
                .routes
                .entry((from, to))
                .or_insert_with(|| Route::new(from, to, self.choice));
            let found = match route {
                Ok(route) => route.convert(value),
                Err(error) => Err(*error),
            };
            match found {
                Ok(Conversion { at, width, .. }) => {
                    let one = at.span.is_none().then_some(at.value);
                    scratch.number(to, self.digits, one);
                    scratch.number(to, self.digits, Some(at.value - width.half));
                    scratch.number(to, self.digits, Some(at.value + width.half));
                }
                // A number that the scale does not have needs one reason, not one for each target.
                Err(error @ (Error::OutsideScale { .. } | Error::Strength(_))) => {
                    return scratch.reason(&Refusal::of_hardness(self.language, &error).message);
                }
                Err(error) => {
                    let reason = Refusal::of_hardness(self.language, &error).message;
                    self.skip(to, &reason, scratch);
                    if scratch.known.len() >= KNOWN_REASONS {
                        scratch.known.clear();
                    }
                    scratch.known.insert(key, reason.into());
                }
            }
        }
    }

    fn limits(&self, from: Axis, amount: Amount, scratch: &mut Scratch) {
        let (low, high) = amount.limits();
        for &to in &self.to {
            match convert_limits(from, low, high, to, self.choice) {
                Ok(limits) => {
                    scratch.number(to, self.digits, None);
                    scratch.number(to, self.digits, limits.low.map(|c| c.at.value));
                    scratch.number(to, self.digits, limits.high.map(|c| c.at.value));
                }
                Err(error) => {
                    let reason = Refusal::of_hardness(self.language, &error).message;
                    self.skip(to, &reason, scratch);
                }
            }
        }
    }

    /// Leaves the three cells of a scale empty and says why.
    fn skip(&self, to: Axis, reason: &str, scratch: &mut Scratch) {
        for _ in 0..3 {
            scratch.number(to, self.digits, None);
        }
        scratch.reason(reason);
    }
}

/// Digits with at most one point or comma, nothing else.
fn plain_number(cell: &[u8]) -> Option<f64> {
    let mut text = [0_u8; LONGEST_NUMBER];
    let text = text.get_mut(..cell.len())?;
    let mut marks = 0;
    for (own, given) in text.iter_mut().zip(cell) {
        *own = match given {
            b'0'..=b'9' => *given,
            b'.' | b',' => {
                marks += 1;
                b'.'
            }
            _ => return None,
        };
    }
    if marks > 1 {
        return None;
    }
    str::from_utf8(text).ok()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounded_numbers_are_written_as_they_are_formatted() {
        for decimals in 0..=2_u8 {
            for tenths in -3000..30_000 {
                let rounded = f64::from(tenths) / 10_f64.powi(i32::from(decimals));
                let mut text = Vec::new();
                push_decimal(&mut text, rounded, decimals);
                let formatted = format!("{rounded:.*}", usize::from(decimals));
                assert_eq!(str::from_utf8(&text), Ok(formatted.as_str()));
            }
        }
    }

    #[test]
    fn a_plain_number_is_digits_with_one_mark() {
        assert_eq!(plain_number(b"52"), Some(52.0));
        assert_eq!(plain_number(b"52.5"), Some(52.5));
        assert_eq!(plain_number(b"52,5"), Some(52.5));
        for odd in ["", ".", "1e3", "-5", "+5", "NaN", "inf", "5 2", "1.2.3", "1234567890123"] {
            assert_eq!(plain_number(odd.as_bytes()), None, "{odd}");
        }
    }
}
