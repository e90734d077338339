//! Why there is no answer about a bath.

use core::fmt;

use biteband_quantity::{Bounds, OutOfBounds};

use crate::quench::Medium;

/// What a bath may hold, in litres. Ours.
pub const LITRES: Bounds = Bounds {
    what: "bath",
    symbol: "L",
    min: 0.1,
    max: 100_000.0,
    why: "from a cup for a pin to a tank of a hundred cubic metres",
};

/// What an oil may be as the part goes in, in °C.
pub const OIL_START: Bounds = Bounds {
    what: "oil bath",
    symbol: "°C",
    min: -10.0,
    max: 79.0,
    why: "colder oil does not flow, and its peak may be 80 °C at most",
};

/// What water or brine may be as the part goes in, in °C.
pub const WATER_START: Bounds = Bounds {
    what: "water bath",
    symbol: "°C",
    min: 0.0,
    max: 49.0,
    why: "it is liquid, and its peak may be 50 °C at most",
};

/// What a part may come from, in °C.
pub const HOT: Bounds = Bounds {
    what: "hardening temperature",
    symbol: "°C",
    min: 600.0,
    max: 1200.0,
    why: "below nothing hardens, above the heat content is not known here",
};

/// What a flash point may be, in °C.
pub const FLASH: Bounds = Bounds {
    what: "flash point",
    symbol: "°C",
    min: 60.0,
    max: 400.0,
    why: "a bath below it burns like lamp oil, and no oil reaches more",
};

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A number outside its bounds or not finite.
    Quantity(OutOfBounds),
    /// Air has no volume to warm; polymer and salt baths are worked by their maker's sheet.
    NoHeatBalance {
        /// The medium.
        medium: Medium,
    },
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Quantity(_) => "bath.quantity",
            Self::NoHeatBalance { .. } => "bath.no_heat_balance",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Quantity(ref inside) => inside.fmt(f),
            Self::NoHeatBalance { medium } => {
                write!(f, "the heat balance of a bath of {} is not known here", medium.key())
            }
        }
    }
}

impl core::error::Error for Error {}

impl From<OutOfBounds> for Error {
    fn from(inside: OutOfBounds) -> Self {
        Self::Quantity(inside)
    }
}
