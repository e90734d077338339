//! Stays at heat, and how several of them add up.

use core::fmt;

use biteband_quantity::{Celsius, Minutes, OutOfBounds, Shown};
use libm::{log10, pow};

/// From °C to K.
pub(super) const ICE: f64 = 273.15;
/// Tempers are held for at most 100 h; longer ones are service, not treatment.
const LONGEST: f64 = 6000.0;
/// Coldest and hottest temper in °C: below nothing happens in a shop's time, above every steel has begun to change.
const RANGE: (f64, f64) = (50.0, 800.0);

/// Why something is no temper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TemperError {
    /// Not a temperature or a time at all.
    Quantity(OutOfBounds),
    /// Colder or hotter than any temper.
    Outside {
        /// As given, in °C.
        given: f64,
        /// Coldest.
        low: f64,
        /// Hottest.
        high: f64,
    },
    /// Longer than any temper.
    TooLong {
        /// As given, in minutes.
        given: f64,
        /// Longest.
        most: f64,
    },
}

impl TemperError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Quantity(inside) => inside.code(),
            Self::Outside { .. } => "temper.temperature_outside",
            Self::TooLong { .. } => "temper.too_long",
        }
    }
}

impl From<OutOfBounds> for TemperError {
    fn from(error: OutOfBounds) -> Self {
        Self::Quantity(error)
    }
}

impl fmt::Display for TemperError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Quantity(inside) => inside.fmt(f),
            Self::Outside { given, low, high } => write!(
                f,
                "{} °C is no temper, which is {} to {} °C",
                Shown(given),
                Shown(low),
                Shown(high)
            ),
            Self::TooLong { given, most } => {
                write!(f, "{} min is longer than {} min", Shown(given), Shown(most))
            }
        }
    }
}

impl core::error::Error for TemperError {}

/// One stay at heat: the temperature of the metal, and how long it had it; heating up does not count.
///
/// # Example
/// ```
/// use biteband_steel::temper::Temper;
/// let temper = Temper::new(205.0, 120.0)?;
/// assert!((temper.hours() - 2.0).abs() < 1e-12);
/// assert!(Temper::new(205.0, 0.0).is_err());
/// # Ok::<(), biteband_steel::temper::TemperError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Temper {
    at: Celsius,
    held: Minutes,
}

impl Temper {
    /// A temper of so many °C for so many minutes.
    ///
    /// # Errors
    /// [`TemperError`]: below 50 or above 800 °C, no time, or more than 100 h.
    pub fn new(celsius: f64, minutes: f64) -> Result<Self, TemperError> {
        let (at, held) = (Celsius::new(celsius)?, Minutes::new(minutes)?);
        let (low, high) = RANGE;
        if celsius < low || celsius > high {
            return Err(TemperError::Outside { given: celsius, low, high });
        }
        if minutes > LONGEST {
            return Err(TemperError::TooLong { given: minutes, most: LONGEST });
        }
        Ok(Self { at, held })
    }

    /// Temperature of the metal, in °C.
    #[must_use]
    pub const fn celsius(self) -> f64 {
        self.at.get()
    }

    /// Time at that temperature, in minutes.
    #[must_use]
    pub const fn minutes(self) -> f64 {
        self.held.get()
    }

    /// Time at that temperature, in hours.
    #[must_use]
    pub const fn hours(self) -> f64 {
        self.held.get() / 60.0
    }

    /// The parameter of Hollomon and Jaffe, `T (constant + log10 h)` with T in K, in thousands.
    #[must_use]
    pub fn parameter(self, constant: f64) -> f64 {
        (self.celsius() + ICE) * (constant + log10(self.hours())) / 1000.0
    }

    /// How long a temper at `celsius` would have to be to do the same, in minutes.
    #[must_use]
    pub fn minutes_at(self, celsius: f64, constant: f64) -> f64 {
        let kelvin = celsius + ICE;
        60.0 * pow(10.0, self.parameter(constant) * 1000.0 / kelvin - constant)
    }
}

/// Several tempers as one at the hottest of them: its temperature in °C and the sum of the times there that
/// would do the same, in minutes; `None` without any.
///
/// # Source
/// Equal parameter of Hollomon and Jaffe (1945), equal effect; that the times add up is common practice.
///
/// # Example
/// ```
/// use biteband_steel::temper::{Temper, equivalent_minutes};
/// let hot = Temper::new(300.0, 60.0)?;
/// let mild = Temper::new(200.0, 60.0)?;
/// let (at, minutes) = equivalent_minutes(&[hot, mild], 16.89).unwrap();
/// // The second, a hundred degrees lower, changes next to nothing.
/// assert!((at - 300.0).abs() < 1e-9 && minutes > 60.0 && minutes < 61.0);
/// # Ok::<(), biteband_steel::temper::TemperError>(())
/// ```
#[must_use]
pub fn equivalent_minutes(tempers: &[Temper], constant: f64) -> Option<(f64, f64)> {
    let hottest = tempers.iter().map(|temper| temper.celsius()).reduce(f64::max)?;
    let minutes = tempers.iter().map(|temper| temper.minutes_at(hottest, constant)).sum();
    Some((hottest, minutes))
}
