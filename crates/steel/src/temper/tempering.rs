//! Which way a steel's hardness after tempering is told, and the answer by that way.

use alloc::boxed::Box;
use alloc::vec::Vec;
use core::fmt;

use biteband_quantity::Shown;
use libm::{hypot, sqrt};

use super::cycle::{Temper, equivalent_minutes};
use super::learn::{Point as Expected, Spread};
use super::plan::{LEVEL_WIDTH, Predict, Predicted};
use super::regression::{self, MEASURED, Regression, RegressionError};
use super::sheet::CONSTANT;
use super::sheets::{HALF_WIDTH, SheetBand, Sheets};
use super::sheets_error::SheetError;
use crate::composition::{Composition, Element, Interval};
use crate::grade::{DoubleTemper, Grade, Hardening, TemperMethod};
use crate::keyed::keyed;
use crate::reach::Steel;
use crate::transform;

keyed! {
    /// What the hardness after tempering is told by.
    Method {
        /// The regression for plain and low-alloy steels.
        Regression = "regression",
        /// The same at the edge of its composition, with a wider band.
        RegressionEdge = "regression_edge",
        /// Printed tempering curves.
        Sheets = "sheets",
    }
}

/// What the regression is wider by at its edge, in HRC. Ours: as much as its own error on steels left out.
const EDGE: f64 = 1.5;
/// From the band of the sheets, which holds 78 % of the points of independent ones, to one of 90 %: they differ by 1.92 HRC
/// (RMS) where the band ends at 2.
const TO_LEVEL: f64 = LEVEL_WIDTH * 1.92 / HALF_WIDTH;
/// A usual range that begins so near before the peak of secondary hardening means the softening behind it, in K. Ours.
const ABOUT: f64 = 60.0;
/// How printed sheets scatter, in HRC: in all as they differ from each other (1.92 RMS), most of it from sheet to sheet. The
/// split is ours.
const SHEETS: Spread = Spread { level: 1.4, drift: 0.8, reach: 100.0, hot: 0.0, scatter: 1.03 };
/// The slope is taken over so many K on either side.
const SIDE: f64 = 5.0;
/// Usual tempers of a steel without a range of its own, in °C; common practice, no source.
const USUAL: Interval = Interval { low: 150.0, high: 650.0 };

/// Why the hardness after tempering is not told.
#[derive(Clone, Debug)]
pub enum TemperingError {
    /// The grade does not harden.
    DoesNotHarden {
        /// The grade.
        grade: &'static Grade,
    },
    /// The grade is aged.
    Ages {
        /// The grade.
        grade: &'static Grade,
    },
    /// The grade hardens in a case alone, which is only relieved.
    CaseOnly {
        /// The grade.
        grade: &'static Grade,
    },
    /// No curve of the grade is known.
    NoCurve {
        /// The grade.
        grade: &'static Grade,
    },
    /// The composition is outside the regression.
    Regression(RegressionError),
    /// The sheets say nothing of this temper.
    Sheets(SheetError),
    /// Hotter than where the steel begins to change.
    AboveAc1 {
        /// As given, in °C.
        celsius: f64,
        /// Where the change begins, in °C.
        ac1: f64,
    },
}

impl TemperingError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::DoesNotHarden { .. } => "temper.does_not_harden",
            Self::Ages { .. } => "temper.ages",
            Self::CaseOnly { .. } => "temper.case_only",
            Self::NoCurve { .. } => "temper.no_curve",
            Self::Regression(error) => error.code(),
            Self::Sheets(error) => error.code(),
            Self::AboveAc1 { .. } => "temper.above_ac1",
        }
    }
}

impl fmt::Display for TemperingError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DoesNotHarden { grade } => write!(f, "{} does not harden", grade.name()),
            Self::Ages { grade } => write!(f, "{} is aged", grade.name()),
            Self::CaseOnly { grade } => write!(f, "{} hardens in a case alone", grade.name()),
            Self::NoCurve { grade } => write!(f, "no curve of {} is known", grade.name()),
            Self::Regression(error) => error.fmt(f),
            Self::Sheets(error) => error.fmt(f),
            Self::AboveAc1 { celsius, ac1 } => write!(
                f,
                "{} °C is above {} °C, where the steel begins to change",
                Shown(*celsius),
                Shown(libm::round(*ac1))
            ),
        }
    }
}

impl core::error::Error for TemperingError {}

/// By which numbers.
#[derive(Debug)]
pub enum Way {
    /// The regression.
    Regression(Box<Regression>),
    /// Printed curves.
    Sheets(Sheets),
}

/// A steel made ready: its hardness after any temper.
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::reach::Steel;
/// use biteband_steel::temper::{Temper, Tempering};
/// let steel = Tempering::of(&Steel::Grade(Grade::by_key("4140").unwrap()))?;
/// // Common practice, no source: 4140 drawn at about 220 °C is 50 to 55 HRC.
/// let found = steel.band(&[Temper::new(220.0, 60.0)?])?;
/// assert!(found.low < 55.0 && found.high > 50.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Tempering {
    grade: Option<&'static Grade>,
    way: Way,
    edge: bool,
    ac1: Option<f64>,
}

impl Tempering {
    /// Makes a steel ready: printed curves where the grade goes by them, otherwise the regression.
    ///
    /// # Errors
    /// [`TemperingError`]: a grade that does not harden, is aged, hardens in a case alone or has no curve; a composition
    /// outside the regression.
    pub fn of(steel: &Steel) -> Result<Self, TemperingError> {
        let regression =
            || Regression::for_limits(&steel.limits()).map_err(TemperingError::Regression);
        let Some(grade) = steel.grade() else {
            return Ok(Self::new(None, Way::Regression(Box::new(regression()?)), steel));
        };
        let way = match (grade.hardening(), grade.temper_method()) {
            (Hardening::None, _) => return Err(TemperingError::DoesNotHarden { grade }),
            (Hardening::Age, _) | (_, TemperMethod::AgeTable) => {
                return Err(TemperingError::Ages { grade });
            }
            (Hardening::Case, _) | (_, TemperMethod::Case) => {
                return Err(TemperingError::CaseOnly { grade });
            }
            (_, TemperMethod::Regression | TemperMethod::RegressionEdge) => {
                Way::Regression(Box::new(regression()?))
            }
            (_, TemperMethod::Curve | TemperMethod::None) => {
                Way::Sheets(Sheets::of(grade).ok_or(TemperingError::NoCurve { grade })?)
            }
        };
        Ok(Self::new(Some(grade), way, steel))
    }

    fn new(grade: Option<&'static Grade>, way: Way, steel: &Steel) -> Self {
        let edge = grade.is_some_and(|grade| grade.temper_method() == TemperMethod::RegressionEdge);
        let limits = steel.limits();
        let shares = Element::ALL.map(|one| (one, limits.range(one).map(Interval::middle)));
        let known: Vec<(Element, f64)> =
            shares.into_iter().filter_map(|(one, share)| Some((one, share?))).collect();
        let ac1 = Composition::new(&known).ok().and_then(|heat| transform::ac1(&heat).ok());
        Self { grade, way, edge, ac1: ac1.map(|found| found.low) }
    }

    /// The same with its hardness as quenched, known to a standard deviation, in HRC; printed curves take no notice.
    #[must_use]
    pub fn with_as_quenched(mut self, hrc: f64, sd: f64) -> Self {
        if let Way::Regression(regression) = self.way {
            self.way = Way::Regression(Box::new(regression.with_as_quenched(hrc, sd)));
        }
        self
    }

    /// By which way it is told.
    #[must_use]
    pub const fn method(&self) -> Method {
        match (&self.way, self.edge) {
            (Way::Sheets(_), _) => Method::Sheets,
            (Way::Regression(_), true) => Method::RegressionEdge,
            (Way::Regression(_), false) => Method::Regression,
        }
    }

    /// The numbers behind it.
    #[must_use]
    pub const fn way(&self) -> &Way {
        &self.way
    }

    /// The grade, if it is one.
    #[must_use]
    pub const fn grade(&self) -> Option<&'static Grade> {
        self.grade
    }

    /// Where the steel begins to change on heating, in °C, as low as the formulas have it; `None` where they do not hold.
    #[must_use]
    pub const fn ac1(&self) -> Option<f64> {
        self.ac1
    }

    /// Usual tempers, in °C.
    #[must_use]
    pub fn usual(&self) -> Interval {
        let usual = self.grade.and_then(Grade::temper_range).unwrap_or(USUAL);
        Interval { high: self.ac1.map_or(usual.high, |ac1| usual.high.min(ac1)), ..usual }
    }

    /// How many tempers the grade wants.
    #[must_use]
    pub fn times(&self) -> u8 {
        match self.grade.map(Grade::double_temper) {
            Some(DoubleTemper::Yes | DoubleTemper::Recommended) => 2,
            Some(DoubleTemper::Triple) => 3,
            Some(DoubleTemper::No | DoubleTemper::TripleForLarge) | None => 1,
        }
    }

    /// The hardness after tempers in their order.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Errors
    /// [`TemperingError::AboveAc1`]; [`TemperingError::Sheets`] where no sheet speaks.
    pub fn band(&self, tempers: &[Temper]) -> Result<Predicted, TemperingError> {
        let hottest = tempers.iter().map(|one| one.celsius()).fold(f64::MIN, f64::max);
        if let Some(ac1) = self.ac1
            && hottest >= ac1
        {
            return Err(TemperingError::AboveAc1 { celsius: hottest, ac1 });
        }
        match &self.way {
            Way::Regression(regression) => {
                let sd = regression.sd(tempers);
                let sd = if self.edge { hypot(sd, EDGE) } else { sd };
                Ok(Predicted::normal(regression.hrc(tempers), sd))
            }
            Way::Sheets(sheets) => {
                let SheetBand { low, mid, high, .. } =
                    sheets.band(tempers).map_err(TemperingError::Sheets)?;
                Ok(Predicted::between(
                    mid - TO_LEVEL * (mid - low),
                    mid,
                    mid + TO_LEVEL * (high - mid),
                ))
            }
        }
    }

    /// The tempers that are known for this many minutes at heat, in °C.
    #[must_use]
    pub fn known(&self, minutes: f64) -> Interval {
        let ac1 = self.ac1.map_or(f64::MAX, |ac1| ac1 - 1.0);
        match &self.way {
            Way::Regression(_) => Interval { high: MEASURED.0.high.min(ac1), ..MEASURED.0 },
            Way::Sheets(sheets) => {
                let ends = sheets.ends(minutes);
                Interval { high: ends.high.min(ac1), ..ends }
            }
        }
    }

    /// Several tempers as one at the hottest of them: °C and minutes.
    #[must_use]
    pub fn together(&self, tempers: &[Temper]) -> Option<(f64, f64)> {
        let constant = match &self.way {
            Way::Regression(_) => regression::CONSTANT,
            Way::Sheets(_) => CONSTANT,
        };
        equivalent_minutes(tempers, constant)
    }

    /// What is expected of tempers, as learning takes it.
    ///
    /// # Errors
    /// As [`Self::band`].
    pub fn expected(&self, tempers: &[Temper]) -> Result<Expected, TemperingError> {
        let band = self.band(tempers)?;
        match &self.way {
            Way::Regression(regression) => {
                let point = regression.point(tempers);
                let edge = if self.edge { EDGE } else { 0.0 };
                Ok(Expected { composition_sd: hypot(point.composition_sd, edge), ..point })
            }
            Way::Sheets(_) => {
                let celsius = tempers.iter().map(|one| one.celsius()).fold(f64::MIN, f64::max);
                // What the band is wider by than sheets usually differ belongs to the steel as a whole.
                let usual = SHEETS.sd(celsius);
                let more = sqrt((band.sd * band.sd - usual * usual).max(0.0));
                let slope = self.slope(tempers, band.median);
                Ok(Expected { celsius, hrc: band.median, slope, composition_sd: more })
            }
        }
    }

    /// How results of the steel scatter about what is expected, and hang together.
    #[must_use]
    pub const fn spread(&self) -> Spread {
        match &self.way {
            Way::Regression(regression) => regression.spread(),
            Way::Sheets(_) => SHEETS,
        }
    }

    /// How the hardness changes when every temper is hotter by one K, in HRC; by the side that is known near an end.
    fn slope(&self, tempers: &[Temper], here: f64) -> f64 {
        let moved = |by: f64| {
            let moved =
                tempers.iter().map(|one| Temper::new(one.celsius() + by, one.minutes()).ok());
            Some(self.band(&moved.collect::<Option<Vec<Temper>>>()?).ok()?.median)
        };
        match (moved(-SIDE), moved(SIDE)) {
            (Some(below), Some(above)) => (above - below) / (2.0 * SIDE),
            (None, Some(above)) => (above - here) / SIDE,
            (Some(below), None) => (here - below) / SIDE,
            (None, None) => 0.0,
        }
    }
}

impl Predict for Tempering {
    fn predict(&self, tempers: &[Temper]) -> Option<Predicted> {
        self.band(tempers).ok()
    }

    /// From the mildest usual temper to the hottest that is known; with secondary hardening, and a usual range that lies
    /// about or behind it, the part behind the peak.
    fn range(&self) -> Interval {
        let usual = self.usual();
        let minutes = 120.0 * f64::from(self.times());
        let known = self.known(minutes);
        let low = usual.low.max(known.low);
        let Way::Sheets(sheets) = &self.way else {
            return Interval { low, high: known.high };
        };
        let behind = sheets.peak(minutes).filter(|peak| low > peak.low - ABOUT);
        Interval { low: behind.map_or(low, |peak| low.max(peak.high)), high: known.high }
    }
}
