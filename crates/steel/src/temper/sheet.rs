//! Printed tempering curves, one sheet each.

use alloc::vec::Vec;

use biteband_hardness::monotone_cubic;
use libm::log10;

use super::cycle::ICE;
use crate::composition::Interval;
use crate::generated::tempering::SHEETS;
use crate::source::Cited;

/// Constant of the parameter of Hollomon and Jaffe by which a sheet is read at another time than its own.
///
/// Source: `equal-temper-20`; the usual one for alloy and tool steels, recalled.
pub(super) const CONSTANT: f64 = 20.0;

/// Hours of a temper whose sheet does not state them. Ours: the time that most of the sheets state that state
/// one, from 1 to 4 h in all; twice or half of it moves a reading at 200 °C by 7 °C, at 600 °C by 13 °C.
pub const USUAL_HOURS: f64 = 2.0;

/// Sheets print their temperatures to 5 °C, or from whole °F; within half of that an end is met.
const ROUNDING: f64 = 2.5;

/// Printed points further apart than this are not joined, in K. Ours: handbooks tabulate every 200 °F; two points
/// a whole curve apart say nothing of what lies between.
const WIDEST_GAP: f64 = 120.0;

/// How far a printed hardening temperature may lie from that of the part, in K. Ours: windows of two makers for
/// one grade differ by about as much.
pub(super) const SAME_HEAT: f64 = 20.0;

/// A printed point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Tempered at, in °C.
    pub celsius: f64,
    /// Lowest hardness, in HRC.
    pub low: f64,
    /// Highest; of a single printed value the same.
    pub high: f64,
    /// Looks like a slip of the print: shown, and never read from.
    pub doubted: bool,
}

/// A tempering curve as a data sheet, a handbook or a laboratory gives it.
#[derive(Debug)]
pub struct Sheet {
    pub(crate) id: &'static str,
    pub(crate) key: &'static str,
    pub(crate) name: &'static str,
    pub(crate) lineage: &'static str,
    pub(crate) hardened: Option<Interval>,
    pub(crate) quench: &'static str,
    pub(crate) hours: Option<f64>,
    pub(crate) tempers: Option<f64>,
    pub(crate) start: Option<Interval>,
    pub(crate) points: &'static [Point],
    pub(crate) cited: Cited,
    pub(crate) note: &'static str,
}

/// Why a sheet says nothing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Silence {
    /// The temper is colder or hotter than every temper of the sheet.
    BeyondEnds {
        /// The temperature at the sheet's own time that does the same, in °C.
        celsius: f64,
        /// First and last temperature of the sheet, in °C.
        ends: Interval,
    },
    /// The temper lies between two printed points that are too far apart.
    Gap {
        /// The temperature at the sheet's own time that does the same, in °C.
        celsius: f64,
        /// The two points, in °C.
        between: Interval,
    },
    /// The sheet is of steel hardened from another temperature.
    OtherHeat {
        /// Of the sheet, in °C.
        sheet: Interval,
        /// Of the part, in °C.
        part: Interval,
    },
}

/// What a sheet says of a temper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    /// Hardness in HRC; of a single printed curve both ends are the same.
    pub hrc: Interval,
    /// The temperature at the sheet's own time that does the same, in °C.
    pub celsius: f64,
    /// The sheet does not state its time, and [`USUAL_HOURS`] were taken for it.
    pub time_assumed: bool,
}

macro_rules! read {
    ($($(#[$doc:meta])* $name:ident: $type:ty,)+) => {
        impl Sheet {
            $($(#[$doc])* #[must_use] pub const fn $name(&self) -> $type { self.$name })+
        }
    };
}

read! {
    /// Stable name, as in `O1-2`.
    id: &'static str,
    /// Key of the grade.
    key: &'static str,
    /// Name for people, the grade left out.
    name: &'static str,
    /// Sheets of one lineage print one set of tests, or copy each other: together they count once.
    lineage: &'static str,
    /// Hardened from, in °C, as printed.
    hardened: Option<Interval>,
    /// Quenched in, as printed.
    quench: &'static str,
    /// Hours of each temper, as printed.
    hours: Option<f64>,
    /// How many tempers, as printed.
    tempers: Option<f64>,
    /// Hardness as quenched in HRC.
    start: Option<Interval>,
    /// Every printed point, from the coldest temper.
    points: &'static [Point],
    /// Where it stands.
    cited: Cited,
    /// What is to be known of the print.
    note: &'static str,
}

impl Sheet {
    /// Every sheet, in the order of the data file.
    ///
    /// ```
    /// use biteband_steel::temper::Sheet;
    /// let sheet = Sheet::all().iter().find(|sheet| sheet.id() == "D2-1").unwrap();
    /// assert_eq!((sheet.hours(), sheet.tempers()), (Some(2.0), Some(2.0)));
    /// assert_eq!(sheet.start().map(|hrc| hrc.low), Some(63.0));
    /// ```
    #[must_use]
    pub const fn all() -> &'static [Self] {
        SHEETS
    }

    /// Time at heat that the values stand for, in minutes, all tempers together. What is not stated is taken
    /// for [`USUAL_HOURS`] and for one temper.
    #[must_use]
    pub fn minutes(&self) -> f64 {
        60.0 * self.hours.unwrap_or(USUAL_HOURS) * self.tempers.unwrap_or(1.0)
    }

    fn sure(&self) -> impl DoubleEndedIterator<Item = &'static Point> {
        self.points.iter().filter(|point| !point.doubted)
    }

    /// First and last temperature, in °C.
    #[must_use]
    pub fn ends(&self) -> Interval {
        let at = |point: Option<&Point>| point.map_or(f64::NAN, |point| point.celsius);
        Interval { low: at(self.sure().next()), high: at(self.sure().next_back()) }
    }

    /// The stretches between the ends that are covered, in °C: parted where printed points are more than 120 K
    /// apart.
    pub(super) fn stretches(&self) -> Vec<Interval> {
        let mut all: Vec<Interval> = Vec::new();
        for &Point { celsius, .. } in self.sure() {
            match all.last_mut().filter(|last| celsius - last.high <= WIDEST_GAP) {
                Some(last) => last.high = celsius,
                None => all.push(Interval { low: celsius, high: celsius }),
            }
        }
        all
    }

    /// Hardness of a temper, with the monotone cubic between printed points and exact at them; a temper of
    /// another length by the temperature that does the same in the sheet's time.
    ///
    /// # Units
    /// °C of the metal, minutes at heat in all; HRC.
    ///
    /// # Errors
    /// [`Silence`]: nothing is said beyond the sheet's first and last temperature, and nothing between points that
    /// are more than 120 K apart.
    pub fn read(&self, celsius: f64, minutes: f64) -> Result<Reading, Silence> {
        let at = same_effect(celsius, minutes, self.minutes());
        let ends = self.ends();
        let beyond = Silence::BeyondEnds { celsius: at, ends };
        if !(at >= ends.low - ROUNDING && at <= ends.high + ROUNDING) {
            return Err(beyond);
        }
        let stretches = self.stretches();
        let near = |part: &&Interval| at >= part.low - ROUNDING && at <= part.high + ROUNDING;
        let Some(part) = stretches.iter().find(near) else {
            let low = stretches.iter().map(|part| part.high).filter(|end| *end < at);
            let high = stretches.iter().map(|part| part.low).find(|end| *end > at);
            let between = low.reduce(f64::max).zip(high).ok_or(beyond)?;
            return Err(Silence::Gap {
                celsius: at,
                between: Interval { low: between.0, high: between.1 },
            });
        };
        let inside = at.max(part.low).min(part.high);
        let line = |of: fn(&Point) -> f64| -> Option<f64> {
            let points: Vec<(f64, f64)> =
                self.sure().map(|point| (point.celsius, of(point))).collect();
            monotone_cubic(&points, inside)
        };
        let (low, high) = line(|point| point.low).zip(line(|point| point.high)).ok_or(beyond)?;
        Ok(Reading {
            hrc: Interval { low: low.min(high), high: low.max(high) },
            celsius: at,
            time_assumed: self.hours.is_none(),
        })
    }

    /// Where the steel is hardest again after it had become softer, in °C at the sheet's own time: the peak of
    /// secondary hardening. `None` where it does not rise by a whole point.
    #[must_use]
    pub fn peak(&self) -> Option<Interval> {
        let middle = |point: &Point| f64::midpoint(point.low, point.high);
        let (mut softest, mut best) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut peak: Option<Interval> = None;
        for point in self.sure() {
            let hrc = middle(point);
            softest = softest.min(hrc);
            if hrc - softest < 1.0 || hrc < best {
                continue;
            }
            let first = peak.filter(|_| hrc <= best).map_or(point.celsius, |peak| peak.low);
            best = hrc;
            peak = Some(Interval { low: first, high: point.celsius });
        }
        peak
    }
}

/// The temperature in °C that does in `other` minutes what `celsius` does in `minutes`.
///
/// # Source
/// Equal parameter of Hollomon and Jaffe with a constant of 20.
///
/// # Example
/// ```
/// use biteband_steel::temper::same_effect;
/// // Four times as long at 200 °C is worth 14 °C.
/// let hotter = same_effect(200.0, 240.0, 60.0);
/// assert!(hotter > 213.0 && hotter < 215.0);
/// ```
#[must_use]
pub fn same_effect(celsius: f64, minutes: f64, other: f64) -> f64 {
    // The same time is left alone, so that a printed point comes back as it is printed.
    if minutes.total_cmp(&other).is_eq() {
        return celsius;
    }
    let factor = |minutes: f64| CONSTANT + log10(minutes / 60.0);
    (celsius + ICE) * factor(minutes) / factor(other) - ICE
}
