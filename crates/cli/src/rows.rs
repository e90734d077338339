//! Rows of a CSV of any length, one after another in the memory of one row.

use std::fs::File;
use std::io::{self, ErrorKind, Read, Write};

use biteband_bench::words::Language;
use csv::{ByteRecord, ReaderBuilder, Terminator, WriterBuilder};

use crate::output::{Stop, tell};
use crate::words::{self, Row, RowAct, Sheet};

/// Bytes read and written at a time.
const BLOCK: usize = 1 << 16;
/// No row is longer, unless a quote is left open and the rest of the file runs into one field.
const LONGEST_ROW: u64 = 16 << 20;

/// What is made of every row.
pub(crate) trait Rows {
    /// What is counted at the end.
    const ACT: RowAct;

    /// Finds its columns in the headings and adds its own but the last, which is the reason.
    fn headings(&mut self, record: &mut ByteRecord) -> Result<(), Stop>;

    /// Reads a row that has as many fields as the headings.
    fn read(&mut self, record: &ByteRecord);

    /// Adds its cells to the row that was read last, or empty ones when none was.
    fn add(&self, record: &mut ByteRecord);

    /// Why cells are empty; the row's own, forgotten by [`Rows::clear`].
    fn reason(&mut self) -> &mut Vec<u8>;

    /// Forgets the row before.
    fn clear(&mut self);
}

/// Adds a sentence to the reasons of a row.
pub(crate) fn because(reason: &mut Vec<u8>, sentence: &str) {
    if !reason.is_empty() {
        reason.push(b' ');
    }
    reason.extend_from_slice(sentence.as_bytes());
}

/// Adds a heading, told apart from those of the file.
pub(crate) fn add_heading(record: &mut ByteRecord, mut heading: String, apart: &str) {
    while record.iter().any(|own| own == heading.as_bytes()) {
        heading.push_str(apart);
    }
    record.push_field(heading.as_bytes());
}

/// Answers every row of a file, or of standard input with `-`, on standard output.
pub(crate) fn run<R: Rows>(
    language: Language,
    rows: &mut R,
    path: &str,
    delimiter: u8,
) -> Result<(), Stop> {
    let input: Box<dyn Read> = if path == "-" {
        Box::new(io::stdin().lock())
    } else {
        Box::new(File::open(path).map_err(|error| {
            Stop::Input(words::sheet(language, &Sheet::CannotOpen { path, error: &error }))
        })?)
    };
    let counts = stream(language, rows, input, io::stdout().lock(), delimiter, path)?;
    let finished =
        Sheet::Finished { act: R::ACT, rows: counts.rows, with_reason: counts.with_reason };
    tell(&words::sheet(language, &finished))?;
    Ok(())
}

#[derive(Default)]
struct Counts {
    rows: u64,
    with_reason: u64,
}

/// Input that ends with an error when one row takes more than [`LONGEST_ROW`].
struct Guarded<R> {
    inner: R,
    left: u64,
}

impl<R> Guarded<R> {
    fn next_row(&mut self) {
        self.left = LONGEST_ROW;
    }
}

impl<R: Read> Read for Guarded<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        if self.left == 0 {
            return Err(ErrorKind::FileTooLarge.into());
        }
        let read = self.inner.read(buffer)?;
        self.left = self.left.saturating_sub(u64::try_from(read).unwrap_or(u64::MAX));
        Ok(read)
    }
}

fn stream(
    language: Language,
    rows: &mut impl Rows,
    input: impl Read,
    out: impl Write,
    delimiter: u8,
    path: &str,
) -> Result<Counts, Stop> {
    let input_stop = |what: Sheet<'_>| Stop::Input(words::sheet(language, &what));
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter)
        .has_headers(false)
        .flexible(true)
        .buffer_capacity(BLOCK)
        .from_reader(Guarded { inner: input, left: LONGEST_ROW });
    let mut writer = WriterBuilder::new()
        .delimiter(delimiter)
        .flexible(true)
        .terminator(Terminator::Any(b'\n'))
        .buffer_capacity(BLOCK)
        .from_writer(out);

    let mut record = ByteRecord::new();
    let mut counts = Counts::default();
    let mut shape: Option<usize> = None;
    loop {
        reader.get_mut().next_row();
        let first_line = reader.position().line();
        match reader.read_byte_record(&mut record) {
            Ok(true) => {}
            Ok(false) => break,
            Err(error) => {
                writer.flush()?;
                let error = io_error(error);
                return Err(if error.kind() == ErrorKind::FileTooLarge {
                    let megabytes = LONGEST_ROW >> 20;
                    input_stop(Sheet::RecordTooLong { line: first_line, megabytes })
                } else {
                    input_stop(Sheet::CannotRead { path, error: &error })
                });
            }
        }
        let Some(headings) = shape else {
            shape = Some(record.len());
            rows.headings(&mut record)?;
            add_heading(&mut record, "reason".to_owned(), "_converted");
            writer.write_byte_record(&record).map_err(io_error)?;
            continue;
        };
        counts.rows += 1;
        rows.clear();
        let found = record.len();
        if found == headings {
            rows.read(&record);
        } else {
            because(rows.reason(), &words::row(language, &Row::Fields { found, headings }));
        }
        if !rows.reason().is_empty() {
            counts.with_reason += 1;
            let first = record.position().map_or(first_line, csv::Position::line);
            let last = reader.position().line().saturating_sub(1);
            if last > first {
                because(rows.reason(), &words::row(language, &Row::Lines { first, last }));
            }
        }
        for _ in found..headings {
            record.push_field(b"");
        }
        rows.add(&mut record);
        record.push_field(rows.reason());
        writer.write_byte_record(&record).map_err(io_error)?;
    }
    writer.flush()?;
    if shape.is_none() {
        return Err(input_stop(Sheet::Empty { path }));
    }
    Ok(counts)
}

/// The error of the stream itself; rows of any shape are let through, so there is no other.
fn io_error(error: csv::Error) -> io::Error {
    match error.into_kind() {
        csv::ErrorKind::Io(error) => error,
        other => io::Error::other(format!("{other:?}")),
    }
}

/// The first heading that is the one asked for; spaces around and case only where none is exact.
pub(crate) fn find_column(headings: &ByteRecord, wanted: &str) -> Option<usize> {
    let wanted = wanted.as_bytes();
    let alike = |heading: &[u8]| heading.trim_ascii().eq_ignore_ascii_case(wanted.trim_ascii());
    headings
        .iter()
        .position(|heading| heading == wanted)
        .or_else(|| headings.iter().position(alike))
}

/// The place of a column, or what the headings are instead.
pub(crate) fn column(
    language: Language,
    headings: &ByteRecord,
    column: &str,
) -> Result<usize, Stop> {
    find_column(headings, column).ok_or_else(|| {
        let headings =
            String::from_utf8_lossy(&headings.iter().collect::<Vec<_>>().join(&b", "[..]))
                .into_owned();
        Stop::Input(words::sheet(language, &Sheet::NoColumn { column, headings: &headings }))
    })
}
