//! Why printed curves give no hardness.

use core::fmt;

use biteband_quantity::Shown;
use libm::round;

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SheetError {
    /// No temper was given.
    NoTemper,
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
}

impl SheetError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoTemper => "temper.no_temper",
            Self::Outside { .. } => "temper.beyond_sheets",
            Self::OtherHeat { .. } => "temper.other_heat",
        }
    }
}

impl fmt::Display for SheetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
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
        }
    }
}

impl core::error::Error for SheetError {}
