//! From the H-bands of `steel` to a static array: part of `cargo xtask tables`.
//!
//! Limits are written as they are printed; a limit that is not printed becomes nought, which no limit is.

use crate::generated::Module;
use std::fmt::Write as _;
use std::path::Path;

type Failure = Box<dyn std::error::Error>;

/// One printed row: halves of a sixteenth of an inch, highest and lowest hardness.
type Row = (u8, u8, u8);

/// The module of `steel` about H-bands.
///
/// # Errors
///
/// Limits that run out of order.
pub(crate) fn generate(root: &Path) -> Result<Vec<Module>, Failure> {
    let mut reader = csv::ReaderBuilder::new()
        .comment(Some(b'#'))
        .from_path(root.join("crates/steel/data/hbands.csv"))?;
    let mut bands: Vec<(String, Vec<Row>)> = Vec::new();
    for record in reader.records() {
        let record = record?;
        let field = |column: usize| record.get(column).unwrap_or_default();
        let limit = |column: usize| -> Result<u8, Failure> {
            if field(column).is_empty() { Ok(0) } else { Ok(field(column).parse()?) }
        };
        let row = (halves(field(1))?, limit(2)?, limit(3)?);
        match bands.last_mut() {
            Some((name, rows)) if name == field(0) => rows.push(row),
            _ => bands.push((field(0).to_owned(), vec![row])),
        }
    }
    let mut out = String::from(
        "// Written by `cargo xtask tables` from crates/steel/data/hbands.csv; edit that file, not this.\n\n\
         use super::hband::HBand;\n\n\
         pub(super) static BANDS: &[HBand] = &[\n",
    );
    for (name, rows) in &bands {
        in_order(rows).map_err(|e| format!("{name}: {e}"))?;
        writeln!(out, "    HBand {{ name: {name:?}, rows: &{rows:?} }},")?;
    }
    out.push_str("];\n");
    Ok(vec![(root.join("crates/steel/src/hardenability/generated.rs"), out)])
}

/// `1.5` as three halves.
fn halves(text: &str) -> Result<u8, Failure> {
    let (whole, half) = text.split_once('.').unwrap_or((text, "0"));
    let half = match half {
        "0" => 0,
        "5" => 1,
        _ => return Err(format!("{text} is no half of a sixteenth").into()),
    };
    Ok(whole.parse::<u8>()? * 2 + half)
}

/// Distances rise; limits fall or stay, the highest is missing at most at the start and the lowest at most
/// at the end, and no lowest is above its highest.
fn in_order(rows: &[Row]) -> Result<(), Failure> {
    for pair in rows.windows(2) {
        let [(at, high, low), (next_at, next_high, next_low)] = pair else { continue };
        let falls = |from: u8, to: u8| from >= to;
        if at >= next_at
            || (*high != 0 && (*next_high == 0 || !falls(*high, *next_high)))
            || !falls(*low, *next_low)
        {
            return Err(format!("out of order behind {at} halves of a sixteenth").into());
        }
    }
    if rows.iter().any(|&(_, high, low)| high != 0 && low > high) {
        return Err("a lowest value above its highest".into());
    }
    Ok(())
}
