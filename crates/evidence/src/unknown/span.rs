//! A hardness as a file or a tester gives it: a span, open where no file spoke.

use core::fmt;

use biteband_quantity::Shown;

/// The softest and the hardest limit of a span, in HRC.
const RANGE: (f64, f64) = (10.0, 75.0);

/// Half of what a single number is taken for, in HRC: it was rounded, or read between two files.
///
/// # Source
/// Common practice, no source.
const AROUND: f64 = 1.0;

/// Why a span is refused.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A limit outside 10 to 75 HRC, or not a number.
    OutOfRange {
        /// The limit given, in HRC.
        given: f64,
        /// The least value allowed.
        min: f64,
        /// The greatest value allowed.
        max: f64,
    },
    /// A lower limit that is not below the upper one.
    UpsideDown {
        /// The lower limit given, in HRC.
        low: f64,
        /// The upper limit given, in HRC.
        high: f64,
    },
    /// A span without any limit, which says nothing.
    Open,
}

impl Error {
    /// The stable name of the refusal.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::OutOfRange { .. } => "unknown.out_of_range",
            Self::UpsideDown { .. } => "unknown.upside_down",
            Self::Open => "unknown.open",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::OutOfRange { given, min, max } => {
                let (given, min, max) = (Shown(given), Shown(min), Shown(max));
                write!(
                    f,
                    "a limit is {given} HRC, the range is {min} to {max} HRC: leave an end open that no file reaches"
                )
            }
            Self::UpsideDown { low, high } => write!(
                f,
                "the span runs from {low} to {high} HRC, its lower limit must be below its upper limit: exchange the limits",
                low = Shown(low),
                high = Shown(high),
            ),
            Self::Open => f.write_str("the span has no limit, so it says nothing: leave it out"),
        }
    }
}

impl core::error::Error for Error {}

/// A span of hardness in HRC, each end open or not.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    low: Option<f64>,
    high: Option<f64>,
}

impl Span {
    /// What an ordinary file says when it bites: below about 62 HRC.
    ///
    /// # Source
    /// A fine file is about 63 HRC (D. Pye, Industrial Heating, seen); the margin is common practice, no source.
    pub const BITES: Self = Self { low: None, high: Some(62.0) };

    /// What an ordinary file says when it skates: about 60 HRC or more.
    ///
    /// # Source
    /// As [`Span::BITES`].
    pub const SKATES: Self = Self { low: Some(60.0), high: None };

    /// A span between limits; `None` is an open end.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Valid for
    /// 10 to 75 HRC, the lower limit below the upper one.
    ///
    /// # Errors
    /// [`Error`] for limits outside, upside down, or both absent.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::unknown::{Error, Span};
    /// assert!(Span::new(Some(60.0), None).is_ok());
    /// assert_eq!(Span::new(None, None), Err(Error::Open));
    /// ```
    pub fn new(low: Option<f64>, high: Option<f64>) -> Result<Self, Error> {
        let limit = |given: Option<f64>| match given {
            // A comparison with a not-a-number is false, so this refuses it too.
            Some(value) if !(value >= RANGE.0 && value <= RANGE.1) => {
                Err(Error::OutOfRange { given: value, min: RANGE.0, max: RANGE.1 })
            }
            kept => Ok(kept),
        };
        match (limit(low)?, limit(high)?) {
            (None, None) => Err(Error::Open),
            (Some(low), Some(high)) if low >= high => Err(Error::UpsideDown { low, high }),
            (low, high) => Ok(Self { low, high }),
        }
    }

    /// A single number as the span that it is worth: one HRC to each side.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn about(number: f64) -> Result<Self, Error> {
        Self::new(Some(number - AROUND), Some(number + AROUND))
    }

    /// Lower limit in HRC.
    #[must_use]
    pub const fn low(&self) -> Option<f64> {
        self.low
    }

    /// Upper limit in HRC.
    #[must_use]
    pub const fn high(&self) -> Option<f64> {
        self.high
    }

    /// The chance of an answer in this span, from the chance of one above a hardness.
    pub(super) fn chance(&self, above: impl Fn(f64) -> f64) -> f64 {
        self.low.map_or(1.0, &above) - self.high.map_or(0.0, &above)
    }
}
