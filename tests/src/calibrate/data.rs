//! The measured results.

use std::error::Error;
use std::path::{Path, PathBuf};

use biteband_steel::temper::Shares;

use crate::{Row, read};

/// One measured hardness after one temper.
#[derive(Clone, Copy, Debug)]
pub struct Measured {
    /// Temperature in °C.
    pub celsius: f64,
    /// Time in hours.
    pub hours: f64,
    /// Hardness in HRC; below 20 extrapolated by its source.
    pub hrc: f64,
    /// How much it counts in the fit: 1, or less where something is known against it.
    pub weight: f64,
}

impl Measured {
    /// Whether it lies where a shop tempers: 150 to 700 °C, 10 min to 10 h, 20 to 65 HRC.
    #[must_use]
    pub fn in_shop(&self) -> bool {
        // Ten minutes are 600 s in the data, a sixth of an hour here.
        let seconds = self.hours * 3600.0;
        (150.0..=700.0).contains(&self.celsius)
            && (599.9..=36_000.1).contains(&seconds)
            && (20.0..=65.0).contains(&self.hrc)
    }
}

/// One steel with its results.
#[derive(Clone, Debug)]
pub struct Steel {
    /// Key in the data files.
    pub key: String,
    /// Key of the paper.
    pub source: String,
    /// Composition.
    pub shares: Shares,
    /// Measured hardness as quenched in HRC.
    pub as_quenched: Option<f64>,
    /// What was measured.
    pub results: Vec<Measured>,
}

impl Steel {
    /// How far a single row may lie from a smooth curve of its steel in the fit, in HRC.
    ///
    /// The rows of a steel scatter by 0.4 to 0.9 HRC in Grange and Baughman, 0.9 to 1.6 in Hollomon and Jaffe, about 2
    /// in Penha. But ten to fifty rows of one bar in one laboratory are no ten to fifty witnesses of what an element
    /// does: they err together. Four to six times the scatter makes about four witnesses of them.
    #[must_use]
    pub fn row_deviation(&self) -> f64 {
        match self.source.as_str() {
            "penha-2010" => 6.0,
            "hollomon-jaffe-1945" => 5.0,
            _ => 4.0,
        }
    }
}

/// Where the data files of `biteband-steel` stand.
pub(super) fn data(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/steel/data").join(name)
}

fn weight(steel: &Steel, celsius: f64, seconds: f64, hrc: f64) -> f64 {
    let mut weight = 1.0;
    // The source extrapolated its scale.
    if hrc < 20.0 {
        weight *= 0.2;
    }
    // Short stays at high temperature came out too hard: the pieces were still heating up.
    if steel.source == "penha-2010" {
        if seconds < 600.0 && celsius >= 400.0 {
            weight *= 0.1;
        } else if seconds <= 900.0 && celsius >= 500.0 {
            weight *= 0.3;
        }
    }
    // 4.5 HRC after a day at 602 °C, 8 below its neighbours: a slip of copying.
    if steel.key == "hj1945-0.98-c-plain-carbon-steel"
        && (celsius - 602.0).abs() < 4.0
        && seconds > 86_000.0
    {
        weight = 0.0;
    }
    weight
}

fn steel(row: &Row) -> Steel {
    let share = |heading: &str| row.number(heading);
    let as_quenched = row.text("as_quenched_hrc");
    Steel {
        key: row.text("steel").to_owned(),
        source: row.text("source").to_owned(),
        shares: Shares {
            carbon: share("c"),
            manganese: share("mn"),
            silicon: share("si"),
            nickel: share("ni"),
            chromium: share("cr"),
            molybdenum: share("mo"),
            vanadium: share("v"),
        },
        as_quenched: as_quenched.parse().ok(),
        results: Vec::new(),
    }
}

/// Reads all steels with their results.
///
/// # Errors
/// A file that is missing or ragged, a number that cannot be read, a result without its steel.
pub fn steels() -> Result<Vec<Steel>, Box<dyn Error>> {
    let mut steels: Vec<Steel> = read(&data("tempering-steels.csv"))?.iter().map(steel).collect();
    for row in read(&data("tempering-results.csv"))? {
        let key = row.text("steel");
        let (celsius, seconds, hrc) =
            (row.number("celsius"), row.number("seconds"), row.number("hrc"));
        if !(celsius + seconds + hrc).is_finite() {
            return Err(format!("tempering-results.csv, row {}: no number", row.number).into());
        }
        let found = steels.iter_mut().find(|steel| steel.key == key);
        let steel = found.ok_or_else(|| format!("tempering-results.csv: no steel {key}"))?;
        let weight = weight(steel, celsius, seconds, hrc);
        steel.results.push(Measured { celsius, hours: seconds / 3600.0, hrc, weight });
    }
    Ok(steels)
}
