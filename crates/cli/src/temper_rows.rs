//! `biteband temper --csv`: many tempers, in the memory of one row.

use std::fmt::Write as _;
use std::str;

use biteband_bench::answer::tempered;
use biteband_bench::composition::symbols;
use biteband_bench::words::Language;
use biteband_hardness::decimal;
use csv::ByteRecord;

use crate::output::{Output, Stop};
use crate::rows::{self, Rows, add_heading, because, find_column};
use crate::words::{self, Row, RowAct};

/// Headings of the time at heat, and how many minutes one is.
const TIMES: [(&str, f64); 3] = [("hours", 60.0), ("minutes", 1.0), ("time_s", 1.0 / 60.0)];

pub(crate) fn run(output: &Output, path: &str, delimiter: u8) -> Result<(), Stop> {
    let mut sheet = Sheets {
        language: output.language,
        steel: None,
        shares: Vec::new(),
        celsius: 0,
        time: (0, 1.0),
        quenched: None,
        found: None,
        reason: Vec::new(),
    };
    rows::run(output.language, &mut sheet, path, delimiter)
}

struct Sheets {
    language: Language,
    /// Column of the grade.
    steel: Option<usize>,
    /// Columns of the elements; they count where the row names no grade.
    shares: Vec<(&'static str, usize)>,
    celsius: usize,
    time: (usize, f64),
    /// Column of the hardness as quenched in HRC.
    quenched: Option<usize>,
    found: Option<[f64; 3]>,
    reason: Vec<u8>,
}

fn text(record: &ByteRecord, place: usize) -> &str {
    record.get(place).and_then(|cell| str::from_utf8(cell).ok()).unwrap_or_default().trim()
}

impl Sheets {
    fn answer(&self, record: &ByteRecord) -> Result<[f64; 3], String> {
        let number = |place: usize| {
            decimal(text(record, place)).ok_or_else(|| {
                words::row(self.language, &Row::NoNumber { cell: text(record, place) })
            })
        };
        let named = self.steel.map(|place| text(record, place)).filter(|name| !name.is_empty());
        let mut shares = String::new();
        if named.is_none() {
            for (symbol, place) in &self.shares {
                let cell = text(record, *place);
                if !cell.is_empty() {
                    // Writing to a string does not fail.
                    let _ = write!(shares, "{symbol}={cell};");
                }
            }
        }
        let (time, each) = self.time;
        let quenched = self.quenched.filter(|place| !text(record, *place).is_empty());
        let quenched = quenched.map(number).transpose()?;
        tempered(
            self.language,
            named,
            &shares,
            number(self.celsius)?,
            number(time)? * each,
            quenched,
        )
        .map_err(|refusal| refusal.message)
    }
}

impl Rows for Sheets {
    const ACT: RowAct = RowAct::Temper;

    fn headings(&mut self, record: &mut ByteRecord) -> Result<(), Stop> {
        self.steel = find_column(record, "steel");
        self.shares =
            symbols().filter_map(|symbol| Some((symbol, find_column(record, symbol)?))).collect();
        let carbon = self.shares.iter().any(|(symbol, _)| *symbol == "C");
        if self.steel.is_none() && !carbon {
            self.steel = Some(rows::column(self.language, record, "steel")?);
        }
        // Without carbon a row has to name its grade, and its text does.
        if !carbon {
            self.shares.clear();
        }
        self.celsius = rows::column(self.language, record, "temper_c")?;
        let time = TIMES.iter().find_map(|(name, each)| Some((find_column(record, name)?, *each)));
        self.time = match time {
            Some(time) => time,
            None => (rows::column(self.language, record, "hours")?, 60.0),
        };
        self.quenched = find_column(record, "hrc_as_quenched");
        for heading in ["hrc", "hrc_low", "hrc_high"] {
            add_heading(record, heading.to_owned(), "_tempered");
        }
        Ok(())
    }

    fn read(&mut self, record: &ByteRecord) {
        match self.answer(record) {
            Ok(found) => self.found = Some(found),
            Err(reason) => because(&mut self.reason, &reason),
        }
    }

    fn add(&self, record: &mut ByteRecord) {
        for place in 0..3 {
            let hrc = self.found.as_ref().and_then(|found| found.get(place));
            record.push_field(hrc.map(f64::to_string).unwrap_or_default().as_bytes());
        }
    }

    fn reason(&mut self) -> &mut Vec<u8> {
        &mut self.reason
    }

    fn clear(&mut self) {
        self.found = None;
        self.reason.clear();
    }
}
