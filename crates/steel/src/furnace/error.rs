//! Why there is no time, depth or offset.

use core::fmt;

use biteband_quantity::{Bounds, OutOfBounds, Shown};

/// What a furnace may be set to, in °C.
pub const FURNACE: Bounds = Bounds {
    what: "furnace temperature",
    symbol: "°C",
    min: 100.0,
    max: 1200.0,
    why: "the properties of steel that the time is worked out from end there",
};

/// What a part may start from, in °C.
pub const START: Bounds = Bounds {
    what: "starting temperature",
    symbol: "°C",
    min: -40.0,
    max: 1180.0,
    why: "from a cold yard to just below the furnace",
};

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A number outside its bounds or not finite.
    Quantity(OutOfBounds),
    /// The part is within 20 K of the furnace or hotter: there is nothing to heat through.
    NothingToHeat {
        /// Furnace in °C.
        furnace: f64,
        /// Part in °C.
        start: f64,
    },
    /// No known points for an oven, or two at the same reading.
    NoPoints,
    /// A reading further from the checked points than the check is worth: check nearer to it.
    NotChecked {
        /// Reading asked for in °C.
        dial: f64,
        /// The lowest reading that is covered.
        low: f64,
        /// The highest.
        high: f64,
    },
    /// An oven that is further off than any offset mends, in K: look for a fault instead.
    TooFarOff {
        /// Reading in °C.
        dial: f64,
        /// True temperature in °C.
        truth: f64,
    },
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Quantity(_) => "furnace.quantity",
            Self::NothingToHeat { .. } => "furnace.nothing_to_heat",
            Self::NoPoints => "furnace.no_points",
            Self::NotChecked { .. } => "furnace.not_checked",
            Self::TooFarOff { .. } => "furnace.too_far_off",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Quantity(ref inside) => inside.fmt(f),
            Self::NothingToHeat { furnace, start } => write!(
                f,
                "a part of {} °C has nothing to heat through in a furnace of {} °C",
                Shown(start),
                Shown(furnace)
            ),
            Self::NoPoints => {
                f.write_str("an oven's offset needs known points at different readings")
            }
            Self::NotChecked { dial, low, high } => write!(
                f,
                "the oven was checked for readings of {} to {} °C, not at {} °C",
                Shown(low),
                Shown(high),
                Shown(dial)
            ),
            Self::TooFarOff { dial, truth } => write!(
                f,
                "a reading of {} °C at {} °C is a fault, not an offset",
                Shown(dial),
                Shown(truth)
            ),
        }
    }
}

impl core::error::Error for Error {}

impl From<OutOfBounds> for Error {
    fn from(inside: OutOfBounds) -> Self {
        Self::Quantity(inside)
    }
}
