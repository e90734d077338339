//! What the printed curves of a grade say together.

use alloc::vec::Vec;

use biteband_hardness::Seen;

use super::cycle::{Temper, equivalent_minutes};
use super::sheet::{CONSTANT, Reading, SAME_HEAT, Sheet, Silence, same_effect};
use super::sheets_error::SheetError;
use crate::composition::Interval;
use crate::grade::{CurveCloseness, Grade};
use crate::source::{Cited, Confidence};

/// Least half-width of a band, in HRC. Ours, `temper-sheets`: with it 78 % of the printed points lie in the band of
/// the other, independent sheets, whether one of them speaks or several.
pub const HALF_WIDTH: f64 = 2.0;

/// Sheets further apart than this are said to disagree, in HRC. Ours: nine differences in ten are smaller.
pub const DISAGREE: f64 = 3.0;

/// What a sibling's curve adds to each side, in HRC. Ours: the compositions of siblings differ by about what the
/// limits of one grade allow.
const SIBLING: f64 = 1.0;

/// What the curve of a grade that stays above adds below, in HRC. Ours: such grades are 1.5 HRC softer as
/// quenched, 416 beside 410 and 440B beside 440C, and that again for what is not known of their tempering.
const SIBLING_LOW: f64 = 3.0;

/// The printed curves that speak for a grade.
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::temper::{Sheets, Temper};
/// let sheets = Sheets::of(Grade::by_key("O1").unwrap()).unwrap();
/// let band = sheets.band(&[Temper::new(205.0, 120.0)?])?;
/// assert!(band.low < 61.0 && band.mid > 61.0 && band.mid < 63.0 && band.high > 63.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Sheets {
    curves: Vec<&'static Sheet>,
    closeness: CurveCloseness,
    /// Where the steel of the curve is hardened from, in °C.
    heat: Option<Interval>,
}

/// What one sheet says of a temper.
#[derive(Clone, Copy, Debug)]
pub struct Said {
    /// The sheet.
    pub sheet: &'static Sheet,
    /// Its reading, or why it says nothing.
    pub says: Result<Reading, Silence>,
}

/// What the sheets say of a temper.
#[derive(Clone, Debug)]
pub struct SheetBand {
    /// Softest, in HRC.
    pub low: f64,
    /// Mean of the sheets that speak, each lineage once, in HRC.
    pub mid: f64,
    /// Hardest, in HRC.
    pub high: f64,
    /// Every sheet, in the order of the data file.
    pub each: Vec<Said>,
    /// How many independent sheets speak.
    pub independent: usize,
    /// How far the two independent sheets that differ most are apart, in HRC; nought with one.
    pub apart: f64,
    /// Whether that is more than sheets usually differ.
    pub disagree: bool,
    /// Whether a sheet that speaks does not state its time.
    pub time_assumed: bool,
    /// How near the curve's steel is to the grade.
    pub closeness: CurveCloseness,
    /// The hottest of the tempers, in °C, which the sheets were asked at.
    pub celsius: f64,
    /// What the tempers together come to at that temperature, in minutes.
    pub minutes: f64,
}

impl SheetBand {
    /// Where the way from the sheets to the band stands; each sheet states its own source.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        Cited {
            sources: &["temper-sheets", "equal-temper-20"],
            seen: Seen::Ours,
            confidence: if self.disagree { Confidence::Low } else { Confidence::Medium },
        }
    }
}

impl Sheets {
    /// The curves of a grade: those of the grade that its row names, or, of a grade that goes by the regression,
    /// its own where some are printed, to stand beside it. `None` where there is none.
    #[must_use]
    pub fn of(grade: &Grade) -> Option<Self> {
        let (key, closeness) = match grade.curve_from() {
            Some(key) => (key, grade.curve_closeness().unwrap_or(CurveCloseness::Own)),
            None => (grade.key(), CurveCloseness::Own),
        };
        let curves: Vec<&Sheet> = Sheet::all().iter().filter(|sheet| sheet.key() == key).collect();
        (!curves.is_empty()).then(|| Self {
            curves,
            closeness,
            heat: Grade::by_key(key).and_then(Grade::window),
        })
    }

    /// The same for a part that was hardened from this temperature: sheets of steel hardened from elsewhere say
    /// nothing of it. Without it the grade's own window holds.
    ///
    /// # Errors
    /// [`SheetError::OtherHeat`]: no sheet is of steel hardened from within 20 K of it.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::Grade;
    /// use biteband_steel::temper::{Sheets, Temper};
    /// let m2 = Sheets::of(Grade::by_key("M2").unwrap()).unwrap();
    /// let temper = [Temper::new(550.0, 240.0)?];
    /// // Hardened from less, it ends softer.
    /// let tough = m2.clone().hardened_from(1095.0)?.band(&temper)?;
    /// assert!(tough.mid + 3.0 < m2.band(&temper)?.mid);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn hardened_from(self, celsius: f64) -> Result<Self, SheetError> {
        let at = Interval { low: celsius, high: celsius };
        let fits = |sheet: &&Sheet| other_heat(sheet, Some(at)).is_none();
        if self.curves.iter().copied().any(|sheet| fits(&sheet)) {
            return Ok(Self { heat: Some(at), ..self });
        }
        let known = || self.curves.iter().filter_map(|sheet| sheet.hardened());
        Err(SheetError::OtherHeat {
            given: celsius,
            low: known().map(|range| range.low).fold(f64::INFINITY, f64::min),
            high: known().map(|range| range.high).fold(f64::NEG_INFINITY, f64::max),
        })
    }

    /// The same without the sheets of a lineage, to hold those against the others; `None` when no other is left.
    #[must_use]
    pub fn without(mut self, lineage: &str) -> Option<Self> {
        self.curves.retain(|sheet| sheet.lineage() != lineage);
        (!self.curves.is_empty()).then_some(self)
    }

    /// How near the curve's steel is to the grade.
    #[must_use]
    pub const fn closeness(&self) -> CurveCloseness {
        self.closeness
    }

    /// Every sheet, also those that do not speak for the usual hardening temperature.
    pub fn each(&self) -> impl Iterator<Item = &'static Sheet> {
        self.curves.iter().copied()
    }

    fn speaking(&self) -> impl Iterator<Item = &'static Sheet> {
        self.each().filter(|sheet| other_heat(sheet, self.heat).is_none())
    }

    /// The first and the last temperature that any sheet covers for a temper of so many minutes, in °C.
    #[must_use]
    pub fn ends(&self, minutes: f64) -> Interval {
        let mut ends = Interval { low: f64::INFINITY, high: f64::NEG_INFINITY };
        for stretch in self.stretches(minutes) {
            ends = Interval { low: ends.low.min(stretch.low), high: ends.high.max(stretch.high) };
        }
        ends
    }

    fn stretches(&self, minutes: f64) -> impl Iterator<Item = Interval> {
        self.speaking().flat_map(move |sheet| {
            let at = move |celsius| same_effect(celsius, sheet.minutes(), minutes);
            let there = move |part: Interval| Interval { low: at(part.low), high: at(part.high) };
            sheet.stretches().into_iter().map(there)
        })
    }

    /// Where the steel is hardest again, from the first to the last peak of the sheets, in °C for a temper of so
    /// many minutes; `None` without secondary hardening.
    #[must_use]
    pub fn peak(&self, minutes: f64) -> Option<Interval> {
        self.speaking()
            .filter_map(|sheet| {
                let peak = sheet.peak()?;
                let at = |celsius| same_effect(celsius, sheet.minutes(), minutes);
                Some(Interval { low: at(peak.low), high: at(peak.high) })
            })
            .reduce(|a, b| Interval { low: a.low.min(b.low), high: a.high.max(b.high) })
    }

    /// The hardness after one or several tempers, as far as the printed curves say.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Source
    /// The sheets; between their points a monotone cubic; another time by the equal parameter of Hollomon and
    /// Jaffe with a constant of 20; half-width [`HALF_WIDTH`].
    ///
    /// # Errors
    /// [`SheetError`]: no temper, or one that no sheet covers.
    pub fn band(&self, tempers: &[Temper]) -> Result<SheetBand, SheetError> {
        let (celsius, minutes) =
            equivalent_minutes(tempers, CONSTANT).ok_or(SheetError::NoTemper)?;
        self.at(celsius, minutes)
    }

    fn at(&self, celsius: f64, minutes: f64) -> Result<SheetBand, SheetError> {
        let each: Vec<Said> = self
            .each()
            .map(|sheet| Said {
                sheet,
                says: other_heat(sheet, self.heat)
                    .map_or_else(|| sheet.read(celsius, minutes), Err),
            })
            .collect();
        let read = || each.iter().filter_map(|said| Some((said.sheet, said.says.ok()?)));
        let means = lineages(read().map(|(sheet, reading)| (sheet, reading.hrc.middle())));
        if means.is_empty() {
            return Err(self.beyond(celsius, minutes));
        }
        let least = |numbers: &mut dyn Iterator<Item = f64>| numbers.fold(f64::INFINITY, f64::min);
        let most =
            |numbers: &mut dyn Iterator<Item = f64>| numbers.fold(f64::NEG_INFINITY, f64::max);
        let mid = mean(&means);
        let apart = most(&mut means.iter().copied()) - least(&mut means.iter().copied());
        let (below, above) = match self.closeness {
            CurveCloseness::Sibling => (SIBLING, SIBLING),
            CurveCloseness::SiblingLow => (SIBLING_LOW, 0.0),
            CurveCloseness::Own | CurveCloseness::None => (0.0, 0.0),
        };
        let low = least(&mut read().map(|(_, reading)| reading.hrc.low)).min(mid - HALF_WIDTH);
        let high = most(&mut read().map(|(_, reading)| reading.hrc.high)).max(mid + HALF_WIDTH);
        Ok(SheetBand {
            low: low - below,
            mid,
            high: high + above,
            independent: means.len(),
            apart,
            disagree: apart > DISAGREE,
            time_assumed: read().any(|(_, reading)| reading.time_assumed),
            closeness: self.closeness,
            celsius,
            minutes,
            each,
        })
    }

    /// The nearest temperatures that are covered.
    fn beyond(&self, celsius: f64, minutes: f64) -> SheetError {
        let below = self.stretches(minutes).map(|s| s.high).filter(|end| *end < celsius);
        let above = self.stretches(minutes).map(|s| s.low).filter(|end| *end > celsius);
        SheetError::Outside {
            celsius,
            minutes,
            below: below.reduce(f64::max),
            above: above.reduce(f64::min),
        }
    }
}

fn mean(numbers: &[f64]) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "a grade has a handful of sheets")]
    let count = numbers.len() as f64;
    numbers.iter().sum::<f64>() / count
}

/// The mean of each lineage, so that a table and its copies count once.
fn lineages(readings: impl Iterator<Item = (&'static Sheet, f64)>) -> Vec<f64> {
    let mut sums: Vec<(&str, Vec<f64>)> = Vec::new();
    for (sheet, hrc) in readings {
        match sums.iter_mut().find(|(lineage, _)| *lineage == sheet.lineage()) {
            Some((_, of_it)) => of_it.push(hrc),
            None => sums.push((sheet.lineage(), alloc::vec![hrc])),
        }
    }
    sums.iter().map(|(_, of_it)| mean(of_it)).collect()
}

/// Why a sheet is not of steel hardened from there, if it is not; one that does not state it is let speak.
fn other_heat(sheet: &Sheet, part: Option<Interval>) -> Option<Silence> {
    let (sheet, part) = sheet.hardened().zip(part)?;
    let apart = sheet.high < part.low - SAME_HEAT || sheet.low > part.high + SAME_HEAT;
    apart.then_some(Silence::OtherHeat { sheet, part })
}
