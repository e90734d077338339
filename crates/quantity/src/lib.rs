//! Physical quantities with their bounds.
//!
//! A quantity is a newtype over `f64` that can only be made inside its declared bounds; the bounds
//! carry what they bound and why, so that validation, error text and input hints come from one line.
//! This crate knows no steel, no scale, no file and no words beyond the reason for a bound.
//!
//! ```
//! use biteband_quantity::Megapascals;
//! let strength = Megapascals::new(1250.0)?;
//! assert_eq!(strength.get(), 1250.0);
//! assert!(Megapascals::new(f64::NAN).is_err());
//! # Ok::<(), biteband_quantity::OutOfBounds>(())
//! ```
#![no_std]

use core::fmt;

/// What a quantity may be: the one place that validation, error text and hints are made from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// What is measured, in words.
    pub what: &'static str,
    /// Unit symbol.
    pub symbol: &'static str,
    /// Smallest accepted value.
    pub min: f64,
    /// Largest accepted value.
    pub max: f64,
    /// Why these ends.
    pub why: &'static str,
}

impl Bounds {
    /// Accepts a finite value inside the bounds; `-0.0` becomes `0.0`.
    ///
    /// # Errors
    /// [`OutOfBounds`] when the value is not finite or outside.
    pub fn check(&self, value: f64) -> Result<f64, OutOfBounds> {
        if value.is_finite() && value >= self.min && value <= self.max {
            Ok(value + 0.0)
        } else {
            Err(OutOfBounds { given: value, bounds: *self })
        }
    }
}

/// A value that a quantity refuses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutOfBounds {
    /// The value as given; may be NaN or infinite.
    pub given: f64,
    /// What would have been accepted.
    pub bounds: Bounds,
}

impl OutOfBounds {
    /// Stable name for logs and JSON.
    #[must_use]
    pub fn code(&self) -> &'static str {
        "quantity.out_of_bounds"
    }
}

impl fmt::Display for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Bounds { what, symbol, min, max, why } = self.bounds;
        let (given, min, max) = (Shown(self.given), Shown(min), Shown(max));
        write!(f, "{what} of {given} {symbol} is outside {min} to {max} {symbol}: {why}")
    }
}

impl core::error::Error for OutOfBounds {}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $what:literal, $symbol:literal, $min:literal..=$max:literal, $why:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// What may be given, and why not more.
            pub const BOUNDS: Bounds =
                Bounds { what: $what, symbol: $symbol, min: $min, max: $max, why: $why };

            /// Makes the quantity.
            ///
            /// # Errors
            /// [`OutOfBounds`] when the value is not finite or outside [`Self::BOUNDS`].
            pub fn new(value: f64) -> Result<Self, OutOfBounds> {
                Self::BOUNDS.check(value).map(Self)
            }

            /// The number in the unit of the type's name.
            #[must_use]
            pub const fn get(self) -> f64 {
                self.0
            }
        }
    };
}

quantity!(
    /// Tensile strength in MPa.
    Megapascals, "tensile strength", "MPa", 50.0..=4000.0,
    "no steel breaks below or holds above it"
);
quantity!(
    /// Test force in kilogram-force, the unit of every hardness symbol.
    KilogramsForce, "test force", "kgf", 0.000_01..=3000.0,
    "from nano-indentation to the largest Brinell test"
);
quantity!(
    /// Ball diameter in millimetres.
    BallMillimetres, "ball diameter", "mm", 1.0..=10.0,
    "Brinell balls are 1, 2.5, 5 and 10 mm"
);
quantity!(
    /// A length in millimetres: diagonals, diameters, depths, sections.
    Millimetres, "length", "mm", 0.000_001..=10_000.0,
    "from a nanometre of depth to the largest part in a shop"
);
quantity!(
    /// Dwell of the test force in seconds.
    DwellSeconds, "dwell of the test force", "s", 1.0..=600.0,
    "longer holds are not written on drawings"
);
quantity!(
    /// A chance from 0 to 1.
    Probability, "a chance", "of 1", 0.0..=1.0, "a chance is a share of all cases"
);

quantity!(
    /// A temperature of metal or bath in degrees Celsius.
    Celsius, "temperature", "°C", -200.0..=1500.0,
    "from liquid nitrogen to where steel melts"
);
quantity!(
    /// A difference of two temperatures in kelvin, the step of one degree Celsius.
    Kelvins, "temperature difference", "K", -1500.0..=1500.0,
    "from where steel melts down to ice and back"
);
quantity!(
    /// A time in minutes.
    Minutes, "time", "min", 0.05..=60_000.0,
    "from a few seconds to the longest treatments of about forty days"
);
quantity!(
    /// A mass in kilograms.
    Kilograms, "mass", "kg", 0.000_01..=100_000.0,
    "from a watch screw to the largest part a crane of a shop lifts"
);
quantity!(
    /// A volume in litres.
    Litres, "volume", "L", 0.01..=100_000.0,
    "from a cup to a tank of a hundred cubic metres"
);
quantity!(
    /// A share of mass in percent.
    MassPercent, "share of mass", "%", 0.0..=100.0, "a share of the whole"
);

impl Celsius {
    /// Makes the temperature from degrees Fahrenheit.
    ///
    /// # Errors
    /// [`OutOfBounds`] in degrees Celsius, as [`Celsius::new`].
    ///
    /// # Example
    /// ```
    /// # use biteband_quantity::Celsius;
    /// assert!((Celsius::from_fahrenheit(428.0)?.get() - 220.0).abs() < 1e-9);
    /// # Ok::<(), biteband_quantity::OutOfBounds>(())
    /// ```
    pub fn from_fahrenheit(fahrenheit: f64) -> Result<Self, OutOfBounds> {
        Self::new((fahrenheit - 32.0) / 1.8)
    }

    /// The temperature in degrees Fahrenheit.
    #[must_use]
    pub fn fahrenheit(self) -> f64 {
        self.0 * 1.8 + 32.0
    }
}

impl Kelvins {
    /// Makes the difference from degrees Fahrenheit: without the 32, which belongs to temperatures alone.
    ///
    /// # Errors
    /// [`OutOfBounds`] in kelvin, as [`Kelvins::new`].
    ///
    /// # Example
    /// ```
    /// # use biteband_quantity::Kelvins;
    /// assert!((Kelvins::from_fahrenheit(25.0)?.get() - 13.888_888_9).abs() < 1e-6);
    /// # Ok::<(), biteband_quantity::OutOfBounds>(())
    /// ```
    pub fn from_fahrenheit(fahrenheit: f64) -> Result<Self, OutOfBounds> {
        Self::new(fahrenheit / 1.8)
    }

    /// The difference in degrees Fahrenheit.
    #[must_use]
    pub fn fahrenheit(self) -> f64 {
        self.0 * 1.8
    }
}

impl Kilograms {
    /// One pound in kilograms, exact by definition.
    pub const POUND: f64 = 0.453_592_37;
}

impl Litres {
    /// One gallon of the United States in litres, exact by definition (231 cubic inches).
    pub const US_GALLON: f64 = 3.785_411_784;
    /// One imperial gallon in litres, exact by definition.
    pub const IMPERIAL_GALLON: f64 = 4.546_09;
}

impl Megapascals {
    /// One ksi in MPa: 1000 pound-force per square inch, by the definitions of pound, inch and
    /// standard gravity.
    pub const PER_KSI: f64 = 6.894_757_293_168_361;

    /// Makes the strength from kilopounds per square inch.
    ///
    /// # Errors
    /// [`OutOfBounds`] as [`Megapascals::new`].
    ///
    /// # Example
    /// ```
    /// # use biteband_quantity::Megapascals;
    /// assert!((Megapascals::from_ksi(130.0)?.get() - 896.318).abs() < 0.001);
    /// # Ok::<(), biteband_quantity::OutOfBounds>(())
    /// ```
    pub fn from_ksi(ksi: f64) -> Result<Self, OutOfBounds> {
        Self::new(ksi * Self::PER_KSI)
    }

    /// The strength in kilopounds per square inch.
    #[must_use]
    pub fn ksi(self) -> f64 {
        self.0 / Self::PER_KSI
    }
}

impl KilogramsForce {
    /// One kilogram-force in newtons: standard gravity, exact by definition.
    pub const NEWTONS: f64 = 9.806_65;

    /// Makes the force from newtons.
    ///
    /// # Errors
    /// [`OutOfBounds`] in kilogram-force, as [`KilogramsForce::new`].
    ///
    /// # Example
    /// ```
    /// # use biteband_quantity::KilogramsForce;
    /// assert!((KilogramsForce::from_newtons(294.2)?.get() - 30.0).abs() < 0.001);
    /// # Ok::<(), biteband_quantity::OutOfBounds>(())
    /// ```
    pub fn from_newtons(newtons: f64) -> Result<Self, OutOfBounds> {
        Self::new(newtons / Self::NEWTONS)
    }

    /// The force in newtons.
    #[must_use]
    pub fn newtons(self) -> f64 {
        self.0 * Self::NEWTONS
    }
}

/// A number as a person writes it: at most nine decimals, none that are needless.
///
/// Put together from whole numbers: the standard library's way to decimals is exact for every double,
/// and a heavier part of the page than the few digits of a reading are worth. Numbers of a billion and
/// more, which no reading has, are named instead of spelled out.
///
/// # Example
/// ```
/// use biteband_quantity::Shown;
/// assert_eq!(format!("{} {} {}", Shown(52.0), Shown(62.5), Shown(-0.1)), "52 62.5 -0.1");
/// assert_eq!(Shown(1e308).to_string(), "more than 1e9");
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown(pub f64);

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let value = self.0;
        if value.is_nan() {
            f.write_str("NaN")
        } else if value >= 1e9 {
            f.write_str("more than 1e9")
        } else if value <= -1e9 {
            f.write_str("less than -1e9")
        } else {
            let billionths = to_whole((value * 1e9).abs() + 0.5);
            if value < 0.0 && billionths > 0 {
                f.write_str("-")?;
            }
            write_decimal(f, billionths, 9)
        }
    }
}

/// Writes a whole number of units in the last of `decimals` places, without trailing noughts.
fn write_decimal(f: &mut fmt::Formatter<'_>, units: u64, decimals: usize) -> fmt::Result {
    let (mut units, mut decimals) = (units, decimals);
    while decimals > 0 && units % 10 == 0 {
        (units, decimals) = (units / 10, decimals - 1);
    }
    let one = (0..decimals).fold(1_u64, |one, _| one * 10);
    write!(f, "{}", units / one)?;
    if decimals > 0 { write!(f, ".{:0decimals$}", units % one) } else { Ok(()) }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the callers hand over numbers from nought to 1e18"
)]
const fn to_whole(value: f64) -> u64 {
    value as u64
}

/// A number, or the nearer end when it lies outside; what is no number stays none.
///
/// The standard library's own `clamp` refuses ends in the wrong order with a sentence that prints both, and the
/// printing of floats would come with it: 8 kB of the compressed page. Here the upper end wins.
///
/// # Example
/// ```
/// assert_eq!(biteband_quantity::confined(71.5, 20.0, 68.0), 68.0);
/// ```
#[must_use]
pub const fn confined(value: f64, low: f64, high: f64) -> f64 {
    if value > high {
        high
    } else if value < low {
        low
    } else {
        value
    }
}

/// Puts items in order of a number, lowest first; equal ones keep their order.
///
/// Insertion, one neighbour at a time: every list in this project is short, and a general sort with its
/// copies for each type would be a twentieth of the page.
///
/// # Example
/// ```
/// let mut grades = [55.0, 40.0, 62.5];
/// biteband_quantity::sort_by_number(&mut grades, |grade| *grade);
/// assert_eq!(grades, [40.0, 55.0, 62.5]);
/// ```
pub fn sort_by_number<T>(items: &mut [T], number: impl Fn(&T) -> f64) {
    for end in 1..items.len() {
        for here in (1..=end).rev() {
            let before = here - 1;
            let (Some(one), Some(other)) = (items.get(before), items.get(here)) else { return };
            if number(one).total_cmp(&number(other)).is_le() {
                break;
            }
            items.swap(before, here);
        }
    }
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::string::ToString;

    #[test]
    fn limits_are_inside_and_the_next_float_is_not() {
        let Bounds { min, max, .. } = Megapascals::BOUNDS;
        assert!(Megapascals::new(min).is_ok() && Megapascals::new(max).is_ok());
        assert!(Megapascals::new(min.next_down()).is_err());
        assert!(Megapascals::new(max.next_up()).is_err());
    }

    #[test]
    fn what_is_not_a_number_is_refused() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308] {
            assert!(Megapascals::new(bad).is_err());
        }
    }

    #[test]
    fn message_says_what_the_range_and_why() {
        let error = Megapascals::new(5.0).unwrap_err();
        assert_eq!(
            error.to_string(),
            "tensile strength of 5 MPa is outside 50 to 4000 MPa: no steel breaks below or holds above it"
        );
        assert_eq!(error.code(), "quantity.out_of_bounds");
    }

    #[test]
    fn numbers_are_shown_as_the_standard_library_shows_them() {
        for value in [0.0, 1.0, 52.5, 0.1, 0.3, 95.47, 187.5, 15.625, 0.001, 1203.2, -7.25, 1e8] {
            assert_eq!(Shown(value).to_string(), value.to_string());
        }
        assert_eq!(Shown(f64::NAN).to_string(), "NaN");
        assert_eq!(Shown(f64::NEG_INFINITY).to_string(), "less than -1e9");
        assert_eq!(Shown(2.0 / 3.0).to_string(), "0.666666667");
    }

    #[test]
    fn newtons_go_there_and_back() {
        // ISO 6507-1 prints 294.2 N for HV30 and 98.07 N for HV10.
        assert!((KilogramsForce::new(30.0).unwrap().newtons() - 294.2).abs() < 0.01);
        assert!((KilogramsForce::new(10.0).unwrap().newtons() - 98.07).abs() < 0.01);
        assert!((KilogramsForce::from_newtons(98.0665).unwrap().get() - 10.0).abs() < 1e-12);
    }

    #[test]
    fn ksi_goes_there_and_back() {
        let strength = Megapascals::from_ksi(130.0).unwrap();
        assert!((strength.ksi() - 130.0).abs() < 1e-12);
    }
}
