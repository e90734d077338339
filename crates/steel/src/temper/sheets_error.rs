//! Why printed curves give no hardness or no temperature.

use core::fmt;

use biteband_quantity::Shown;
use libm::round;

use super::cycle::TemperError;
use crate::composition::Interval;

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SheetError {
    /// No temper was given.
    NoTemper,
    /// A time that is no temper.
    Temper(TemperError),
    /// Beyond every sheet, or between two of them: nothing is carried on. Temper where a sheet speaks, or ask a
    /// trial piece.
    Outside {
        /// The hottest temper, in °C.
        celsius: f64,
        /// What the tempers come to there, in minutes.
        minutes: f64,
        /// The nearest colder temperature that a sheet covers for that time, in °C.
        below: Option<f64>,
        /// The nearest hotter one, in °C.
        above: Option<f64>,
    },
    /// Every sheet is of steel hardened from elsewhere.
    OtherHeat {
        /// As given, in °C.
        given: f64,
        /// Lowest hardening temperature of a sheet, in °C.
        low: f64,
        /// Highest.
        high: f64,
    },
    /// The hardness falls where no sheet speaks, somewhere between two temperatures: a trial piece decides.
    Between {
        /// As given, in HRC.
        target: Interval,
        /// The last temperature before and the first behind, in °C.
        celsius: Interval,
        /// What the sheets say at the two, in HRC.
        hrc: (f64, f64),
    },
    /// No temper of that length comes to the hardness.
    NeverThat {
        /// As given, in HRC.
        target: Interval,
        /// Softest that the middle of the band comes to, in HRC.
        softest: f64,
        /// Hardest.
        hardest: f64,
        /// First and last temperature that a sheet covers for that time, in °C.
        ends: Interval,
        /// As given.
        minutes: f64,
    },
}

impl SheetError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Temper(inside) => inside.code(),
            Self::NoTemper => "temper.no_temper",
            Self::Outside { .. } => "temper.beyond_sheets",
            Self::OtherHeat { .. } => "temper.other_heat",
            Self::Between { .. } => "temper.between_sheets",
            Self::NeverThat { .. } => "temper.never_that",
        }
    }
}

impl fmt::Display for SheetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Temper(inside) => inside.fmt(f),
            Self::NoTemper => f.write_str("a hardness after tempering needs a temper"),
            Self::Outside { celsius, minutes, below, above } => {
                write!(
                    f,
                    "no sheet speaks of {} °C for {} min",
                    Shown(round(celsius)),
                    Shown(round(minutes))
                )?;
                if let Some(end) = below {
                    write!(f, ", the nearest below is {} °C", Shown(round(end)))?;
                }
                if let Some(end) = above {
                    write!(f, ", the nearest above is {} °C", Shown(round(end)))?;
                }
                Ok(())
            }
            Self::OtherHeat { given, low, high } => write!(
                f,
                "no sheet is of steel hardened from {} °C, they are of {} to {} °C",
                Shown(given),
                Shown(low),
                Shown(high)
            ),
            Self::Between { target, celsius, hrc } => write!(
                f,
                "{} to {} HRC falls between {} °C, {} HRC, and {} °C, {} HRC, where no sheet speaks",
                Shown(target.low),
                Shown(target.high),
                Shown(round(celsius.low)),
                Shown(round(hrc.0)),
                Shown(round(celsius.high)),
                Shown(round(hrc.1))
            ),
            Self::NeverThat { target, softest, hardest, ends, minutes } => write!(
                f,
                "{} to {} HRC is not reached: {} min at {} to {} °C leave {} to {} HRC",
                Shown(target.low),
                Shown(target.high),
                Shown(round(minutes)),
                Shown(round(ends.low)),
                Shown(round(ends.high)),
                Shown(round(softest)),
                Shown(round(hardest))
            ),
        }
    }
}

impl core::error::Error for SheetError {}

impl From<TemperError> for SheetError {
    fn from(inside: TemperError) -> Self {
        Self::Temper(inside)
    }
}
