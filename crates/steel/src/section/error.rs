//! Why there is no number for a section.

use core::fmt;

use biteband_quantity::{OutOfBounds, Shown};

/// What was given, what would be allowed, and by its name the way out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A size outside its bounds, negative, nought or not a number.
    Size(OutOfBounds),
    /// A tube whose bore is not smaller than its outside, or whose wall is thinner than any section.
    Wall {
        /// Outer diameter in mm.
        outer: f64,
        /// Inner diameter in mm.
        inner: f64,
    },
    /// A severity that is no finite number above nought, or beyond any liquid.
    Severity(OutOfBounds),
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Size(_) => "section.size",
            Self::Wall { .. } => "section.wall",
            Self::Severity(_) => "section.severity",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Size(ref inside) | Self::Severity(ref inside) => inside.fmt(f),
            Self::Wall { outer, inner } => write!(
                f,
                "a tube of {} mm with a bore of {} mm has no wall of {} mm or more",
                Shown(outer),
                Shown(inner),
                Shown(super::SIZE.min)
            ),
        }
    }
}

impl core::error::Error for Error {}
