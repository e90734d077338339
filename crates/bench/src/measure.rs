//! Lengths, forces, temperatures, times, volumes and masses as people write them, always with their unit.
//!
//! A bare number is refused: `0.3` may be millimetres or inches, `30` kilogram-force or newtons, `220`
//! Celsius or Fahrenheit, and the wrong guess gives a number that looks right.

use biteband_hardness::decimal;
use biteband_quantity::{
    Celsius, Kelvins, Kilograms, KilogramsForce, Litres, Millimetres, Minutes, OutOfBounds,
};

use crate::format::shortened;
use crate::refusal::Refusal;
use crate::words::{Language, Unmeasured};

/// One inch in mm, exact by definition.
pub const INCH: f64 = 25.4;

/// Test forces that standards name, in kgf: newtons are printed rounded to four figures, and a force that
/// is one of these within that rounding is meant as it.
const NOMINAL: [f64; 36] = [
    0.001, 0.005, 0.01, 0.015, 0.02, 0.025, 0.05, 0.1, 0.2, 0.3, 0.5, 1.0, 2.0, 2.5, 3.0, 5.0,
    6.25, 7.8125, 10.0, 15.625, 20.0, 25.0, 30.0, 31.25, 50.0, 62.5, 100.0, 120.0, 125.0, 150.0,
    187.5, 250.0, 500.0, 750.0, 1000.0, 3000.0,
];

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Kind {
    Length,
    Force,
    Temperature,
    Difference,
    Time,
    Volume,
    Mass,
}

impl Kind {
    const fn code(self) -> &'static str {
        match self {
            Self::Length => "bench.unreadable_length",
            Self::Force => "bench.unreadable_force",
            Self::Temperature | Self::Difference => "bench.unreadable_temperature",
            Self::Time => "bench.unreadable_time",
            Self::Volume => "bench.unreadable_volume",
            Self::Mass => "bench.unreadable_mass",
        }
    }
}

/// Why a text is no measure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unread {
    /// A number alone, or with a unit that means two things.
    NoUnit,
    /// Neither a number with a unit nor a fraction with one; also a sign.
    Text,
    /// Nought, or more than there is.
    Outside(OutOfBounds),
}

/// A length with the system of units in which it was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Length {
    /// The length.
    pub mm: Millimetres,
    /// Whether it was written in inches.
    pub inch: bool,
}

/// Reads `0.301mm`, `0,301 mm`, `301 µm`, `0.012in`, `0.5"`, `3/8in`, `1-1/2 in`, `1 1/2"`.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_length};
/// assert_eq!(parse_length("1/2in").unwrap().mm.get(), 12.7);
/// assert!(parse_length("1-1/2in").unwrap().inch);
/// assert_eq!(parse_length("0,301 mm").unwrap().mm.get(), 0.301);
/// assert_eq!(parse_length("12"), Err(Unread::NoUnit));
/// ```
pub fn parse_length(text: &str) -> Result<Length, Unread> {
    let (number, unit) = split(text);
    let (value, inch) = match unit.to_lowercase().as_str() {
        "mm" => (decimal(number), false),
        // Micro sign, the Greek letter, and the letter of keyboards without either.
        "\u{b5}m" | "\u{3bc}m" | "um" => (decimal(number).map(|number| number / 1000.0), false),
        "cm" => (decimal(number).map(|number| number * 10.0), false),
        "m" => (decimal(number).map(|number| number * 1000.0), false),
        "in" | "inch" | "\"" | "\u{2033}" | "''" => {
            (inches(number).map(|number| number * INCH), true)
        }
        "" if inches(number).is_some() => return Err(Unread::NoUnit),
        _ => (None, false),
    };
    let mm = Millimetres::new(value.ok_or(Unread::Text)?).map_err(Unread::Outside)?;
    Ok(Length { mm, inch })
}

/// Reads `30kgf`, `30 kp`, `500 gf`, `294.2N`, `29.42 kN`; newtons within 0.05 % of a test force that
/// standards name are taken as that force.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_force};
/// assert_eq!(parse_force("294.2 N").unwrap().get(), 30.0);
/// assert_eq!(parse_force("29,42kN").unwrap().get(), 3000.0);
/// assert_eq!(parse_force("30"), Err(Unread::NoUnit));
/// ```
pub fn parse_force(text: &str) -> Result<KilogramsForce, Unread> {
    let (number, unit) = split(text);
    let given = decimal(number);
    let kgf = match unit.to_lowercase().as_str() {
        "kgf" | "kp" | "kg" => given,
        "gf" | "g" | "p" => given.map(|number| number / 1000.0),
        "n" => given.map(|number| nominal(number / KilogramsForce::NEWTONS)),
        "kn" => given.map(|number| nominal(number * 1000.0 / KilogramsForce::NEWTONS)),
        "" if given.is_some() => return Err(Unread::NoUnit),
        _ => None,
    };
    KilogramsForce::new(kgf.ok_or(Unread::Text)?).map_err(Unread::Outside)
}

/// Reads `220C`, `220 °C`, `428F`, `-10 °C`.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_temperature};
/// assert_eq!(parse_temperature("220C").unwrap().get(), 220.0);
/// assert!((parse_temperature("428 °F").unwrap().get() - 220.0).abs() < 1e-9);
/// assert_eq!(parse_temperature("220"), Err(Unread::NoUnit));
/// ```
pub fn parse_temperature(text: &str) -> Result<Celsius, Unread> {
    let made = match degrees(text)? {
        (number, Degree::Celsius) => Celsius::new(number),
        (number, Degree::Fahrenheit) => Celsius::from_fahrenheit(number),
        // Absolute temperatures are not read off any dial of this trade.
        (_, Degree::Kelvin) => return Err(Unread::Text),
    };
    made.map_err(Unread::Outside)
}

/// Reads a difference of temperatures: `15C`, `-25 °F`, `+10 K`; Fahrenheit convert without the 32.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::parse_difference;
/// assert!((parse_difference("25F").unwrap().get() - 13.888_888_9).abs() < 1e-6);
/// assert_eq!(parse_difference("-25 C").unwrap().get(), -25.0);
/// ```
pub fn parse_difference(text: &str) -> Result<Kelvins, Unread> {
    let made = match degrees(text)? {
        (number, Degree::Celsius | Degree::Kelvin) => Kelvins::new(number),
        (number, Degree::Fahrenheit) => Kelvins::from_fahrenheit(number),
    };
    made.map_err(Unread::Outside)
}

enum Degree {
    Celsius,
    Fahrenheit,
    Kelvin,
}

/// A number with its sign, and the degree behind it.
fn degrees(text: &str) -> Result<(f64, Degree), Unread> {
    let (number, unit) = split(text);
    let (sign, size) = match number.strip_prefix(['-', '\u{2212}']) {
        Some(size) => (-1.0, size),
        None => (1.0, number.strip_prefix('+').unwrap_or(number)),
    };
    let number = decimal(size.trim()).map(|size| sign * size);
    // The degree sign has look-alikes on some keyboards: the ordinal sign and the ring.
    let unit = unit.trim_start_matches(['\u{b0}', '\u{ba}', '\u{2da}']).trim().to_lowercase();
    let degree = match unit.strip_prefix("deg").unwrap_or(&unit).trim() {
        "c" | "celsius" => Degree::Celsius,
        "f" | "fahrenheit" => Degree::Fahrenheit,
        "k" | "kelvin" => Degree::Kelvin,
        "" if number.is_some() => return Err(Unread::NoUnit),
        _ => return Err(Unread::Text),
    };
    Ok((number.ok_or(Unread::Text)?, degree))
}

/// Reads `90min`, `2h`, `1.5 h`, `1h30`, `1 h 30 min`, `45s`.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_time};
/// assert_eq!(parse_time("2h").unwrap().get(), 120.0);
/// assert_eq!(parse_time("1h30").unwrap().get(), 90.0);
/// assert_eq!(parse_time("90"), Err(Unread::NoUnit));
/// ```
pub fn parse_time(text: &str) -> Result<Minutes, Unread> {
    let lower = text.trim().to_lowercase();
    let minutes = match lower.split_once('h') {
        Some((hours, rest)) => {
            let rest = ["ours", "our", "rs", "r"]
                .iter()
                .find_map(|end| rest.strip_prefix(end))
                .unwrap_or(rest);
            let rest = rest.trim();
            let more = if rest.is_empty() { Some(0.0) } else { short_time(rest, Some(1.0)) };
            // "1.5h30" is a slip: a fraction of an hour and minutes do not go together.
            let hours = decimal(hours.trim())
                .filter(|hours| rest.is_empty() || (hours.fract() == 0.0 && more < Some(60.0)));
            hours.zip(more).map(|(hours, more)| 60.0 * hours + more)
        }
        None if decimal(&lower).is_some() => return Err(Unread::NoUnit),
        None => short_time(&lower, None),
    };
    Minutes::new(minutes.ok_or(Unread::Text)?).map_err(Unread::Outside)
}

/// Minutes or seconds, in minutes; `bare` is what a number without a unit counts as.
fn short_time(text: &str, bare: Option<f64>) -> Option<f64> {
    let (number, unit) = split(text);
    let each = match unit {
        "min" | "mins" | "minute" | "minutes" | "m" | "'" => Some(1.0),
        "s" | "sec" | "second" | "seconds" => Some(1.0 / 60.0),
        "" => bare,
        _ => None,
    };
    decimal(number).zip(each).map(|(number, each)| number * each)
}

/// Reads `6L`, `6,5 l`, `500 ml`, `2 US gal`, `2 imp gal`; a bare gallon means two things.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_volume};
/// assert_eq!(parse_volume("6L").unwrap().get(), 6.0);
/// assert!((parse_volume("1 US gal").unwrap().get() - 3.785).abs() < 0.001);
/// assert_eq!(parse_volume("1 gal"), Err(Unread::NoUnit));
/// ```
pub fn parse_volume(text: &str) -> Result<Litres, Unread> {
    let (number, unit) = split(text);
    let given = decimal(number);
    let unit: String = unit.to_lowercase().split([' ', '.']).collect();
    let each = match unit.as_str() {
        "l" | "litre" | "litres" | "liter" | "liters" | "dm3" => 1.0,
        "ml" | "cm3" => 0.001,
        "usgal" | "usgallon" | "usgallons" => Litres::US_GALLON,
        "usqt" | "usquart" | "usquarts" => Litres::US_GALLON / 4.0,
        "impgal" | "imperialgallon" | "imperialgallons" | "ukgal" => Litres::IMPERIAL_GALLON,
        "" | "gal" | "gallon" | "gallons" if given.is_some() => return Err(Unread::NoUnit),
        _ => return Err(Unread::Text),
    };
    Litres::new(given.ok_or(Unread::Text)? * each).map_err(Unread::Outside)
}

/// Reads `2.7kg`, `300 g`, `6lb`, `8 oz`.
///
/// # Errors
/// [`Unread`].
///
/// # Example
/// ```
/// use biteband_bench::measure::{Unread, parse_mass};
/// assert_eq!(parse_mass("2,7 kg").unwrap().get(), 2.7);
/// assert!((parse_mass("6lb").unwrap().get() - 2.7216).abs() < 1e-4);
/// assert_eq!(parse_mass("6"), Err(Unread::NoUnit));
/// ```
pub fn parse_mass(text: &str) -> Result<Kilograms, Unread> {
    let (number, unit) = split(text);
    let given = decimal(number);
    let each = match unit.to_lowercase().as_str() {
        "kg" => 1.0,
        "g" => 0.001,
        "lb" | "lbs" | "pound" | "pounds" => Kilograms::POUND,
        "oz" => Kilograms::POUND / 16.0,
        "" if given.is_some() => return Err(Unread::NoUnit),
        _ => return Err(Unread::Text),
    };
    Kilograms::new(given.ok_or(Unread::Text)? * each).map_err(Unread::Outside)
}

fn nominal(kgf: f64) -> f64 {
    NOMINAL.into_iter().find(|force| (kgf - force).abs() <= 5e-4 * force).unwrap_or(kgf)
}

/// What stands before the unit, and the unit: the number ends with its last figure.
fn split(text: &str) -> (&str, &str) {
    let text = text.trim();
    let end = text.rfind(|c: char| c.is_ascii_digit()).map_or(0, |last| last + 1);
    let (number, unit) = text.split_at_checked(end).unwrap_or((text, ""));
    (number.trim(), unit.trim())
}

/// A decimal, a fraction, or whole inches and a fraction behind a space or a hyphen.
fn inches(text: &str) -> Option<f64> {
    let Some((rest, below)) = text.split_once('/') else { return decimal(text) };
    let rest = rest.trim();
    let (whole, above) = rest.rsplit_once([' ', '-']).unwrap_or(("0", rest));
    let whole_number = |text: &str| decimal(text).filter(|number| number.fract() == 0.0);
    let (above, below) = (whole_number(above)?, whole_number(below)?);
    let share = above / below;
    let whole = whole_number(whole.trim().trim_end_matches('-'))?;
    (below > 0.0 && (share < 1.0 || whole == 0.0)).then_some(whole + share)
}

/// Reads a measure for an answer.
///
/// # Errors
/// A refusal that spells out both readings of a bare number.
pub fn read<T>(
    language: Language,
    kind: Kind,
    text: &str,
    parse: fn(&str) -> Result<T, Unread>,
) -> Result<T, Refusal> {
    parse(text).map_err(|why| unread(language, kind, text, why))
}

/// Reads a length for an answer.
///
/// # Errors
/// As [`read`].
pub fn length(language: Language, text: &str) -> Result<Length, Refusal> {
    read(language, Kind::Length, text, parse_length)
}

/// Reads a force for an answer.
///
/// # Errors
/// As [`read`].
pub fn force(language: Language, text: &str) -> Result<KilogramsForce, Refusal> {
    read(language, Kind::Force, text, parse_force)
}

/// Reads a temperature for an answer.
///
/// # Errors
/// As [`read`].
pub fn temperature(language: Language, text: &str) -> Result<Celsius, Refusal> {
    read(language, Kind::Temperature, text, parse_temperature)
}

fn unread(language: Language, kind: Kind, text: &str, why: Unread) -> Refusal {
    let given = shortened(text);
    let (code, what) = match why {
        Unread::NoUnit => ("bench.unreadable_unit", Unmeasured::NoUnit { given: &given, kind }),
        Unread::Text => (kind.code(), Unmeasured::Text { given: &given, kind }),
        Unread::Outside(inside) => (inside.code(), Unmeasured::Outside(inside)),
    };
    let [message, allowed, instead] = language.unmeasured(what);
    Refusal::new(code, message, given.as_str(), allowed, instead)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(text: &str) -> f64 {
        parse_length(text).map_or(f64::NAN, |length| length.mm.get())
    }

    fn near(left: f64, right: f64) -> bool {
        (left - right).abs() <= 1e-12 * right.abs()
    }

    #[test]
    fn lengths_in_every_way_of_writing_them() {
        for (text, wanted) in [
            ("0.301mm", 0.301),
            (" 3,2 mm ", 3.2),
            ("12MM", 12.0),
            ("301µm", 0.301),
            ("301 μm", 0.301),
            ("301um", 0.301),
            ("2cm", 20.0),
            ("0.012in", 0.3048),
            ("0,5 inch", 12.7),
            ("1/2\"", 12.7),
            ("3/8 in", 9.525),
            ("1-1/2in", 38.1),
            ("1 1/2in", 38.1),
            ("1 - 1/2 in", 38.1),
            ("5/4in", 31.75),
        ] {
            assert!(near(mm(text), wanted), "{text}: {}", mm(text));
        }
        assert!(parse_length("1in").is_ok_and(|length| length.inch));
        assert!(parse_length("1mm").is_ok_and(|length| !length.inch));
    }

    #[test]
    fn what_is_no_length() {
        for text in ["12", "0,3", "1/2", "1-1/2"] {
            assert_eq!(parse_length(text), Err(Unread::NoUnit), "{text}");
        }
        for text in [
            "", "mm", "-3mm", "1/0in", "1-3/2in", "1.5/2in", "1/2mm", "3 ft", "3.mm", "1e3mm", "é",
            "3é",
        ] {
            assert_eq!(parse_length(text), Err(Unread::Text), "{text}");
        }
        for text in ["0mm", "20000mm", "0/3in"] {
            assert!(matches!(parse_length(text), Err(Unread::Outside(_))), "{text}");
        }
    }

    /// The forces of ISO 6507-1 and ISO 6506-1 in newtons, as printed (recalled), beside their kgf.
    #[test]
    fn printed_newtons_are_the_nominal_force() {
        for (text, wanted) in [
            ("0.09807N", 0.01),
            ("0.9807 N", 0.1),
            ("4.903N", 0.5),
            ("9.807N", 1.0),
            ("49.03N", 5.0),
            ("98.07N", 10.0),
            ("294.2N", 30.0),
            ("980.7N", 100.0),
            ("1.839kN", 187.5),
            ("7.355 kN", 750.0),
            ("29420 N", 3000.0),
            ("500gf", 0.5),
            ("30 kp", 30.0),
            ("62,5kgf", 62.5),
        ] {
            let read = parse_force(text).map_or(f64::NAN, KilogramsForce::get);
            assert!(near(read, wanted), "{text}: {read}");
        }
        assert!(parse_force("300N").is_ok_and(|force| near(force.get(), 300.0 / 9.806_65)));
        assert_eq!(parse_force("30"), Err(Unread::NoUnit));
        for text in ["", "kgf", "-30kgf", "30lbf", "thirty N"] {
            assert_eq!(parse_force(text), Err(Unread::Text), "{text}");
        }
        assert!(matches!(parse_force("0 N"), Err(Unread::Outside(_))));
        assert!(matches!(parse_force("5000kgf"), Err(Unread::Outside(_))));
    }

    #[test]
    fn temperatures_and_differences() {
        let celsius = |text: &str| parse_temperature(text).map_or(f64::NAN, Celsius::get);
        for (text, wanted) in [
            ("220C", 220.0),
            ("220 °C", 220.0),
            ("220ºc", 220.0),
            ("-40F", -40.0),
            ("\u{2212}40 °F", -40.0),
            ("428 deg F", 220.0),
            ("32F", 0.0),
            ("1550°F", 843.333_333_333_333_3),
            ("792,5 C", 792.5),
        ] {
            assert!((celsius(text) - wanted).abs() < 1e-9, "{text}: {}", celsius(text));
        }
        // A difference of 25 °F is 13.9 K, a temperature of 25 °F is -3.9 °C.
        assert!((celsius("25F") + 3.888_888_9).abs() < 1e-6);
        assert!(parse_difference("25F").is_ok_and(|k| (k.get() - 13.888_888_9).abs() < 1e-6));
        assert!(parse_difference("+10 K").is_ok_and(|k| near(k.get(), 10.0)));
        assert_eq!(parse_temperature("493K"), Err(Unread::Text));
        for text in ["", "C", "hot", "220 X", "2e2C", "cherry red"] {
            assert_eq!(parse_temperature(text), Err(Unread::Text), "{text}");
        }
        assert!(matches!(parse_temperature("3000C"), Err(Unread::Outside(_))));
    }

    #[test]
    fn times_volumes_and_masses() {
        for (text, wanted) in [
            ("90min", 90.0),
            ("2h", 120.0),
            ("1,5 h", 90.0),
            ("1h30", 90.0),
            ("1 h 30 min", 90.0),
            ("2 hours", 120.0),
            ("2 hrs", 120.0),
            ("45 s", 0.75),
        ] {
            let read = parse_time(text).map_or(f64::NAN, Minutes::get);
            assert!(near(read, wanted), "{text}: {read}");
        }
        for text in ["1.5h30", "1h75", "h", "", "soon", "-2h", "1h30x"] {
            assert_eq!(parse_time(text), Err(Unread::Text), "{text}");
        }
        assert!(matches!(parse_time("0min"), Err(Unread::Outside(_))));
        for (text, wanted) in
            [("6L", 6.0), ("6,5 l", 6.5), ("500ml", 0.5), ("1 imp. gal", 4.546_09)]
        {
            let read = parse_volume(text).map_or(f64::NAN, Litres::get);
            assert!(near(read, wanted), "{text}: {read}");
        }
        for text in ["5", "5 gal", "5 gallons"] {
            assert_eq!(parse_volume(text), Err(Unread::NoUnit), "{text}");
        }
        assert!(matches!(parse_volume("0 L"), Err(Unread::Outside(_))));
        assert_eq!(parse_volume("a bucket"), Err(Unread::Text));
        assert!(parse_mass("300 g").is_ok_and(|mass| near(mass.get(), 0.3)));
        assert!(parse_mass("16oz").is_ok_and(|mass| near(mass.get(), Kilograms::POUND)));
        assert_eq!(parse_mass("6 stone"), Err(Unread::Text));
    }

    proptest::proptest! {
        #[test]
        fn any_text_is_read_or_named(text in ".{0,20}") {
            let _ = (parse_length(&text), parse_force(&text), parse_temperature(&text));
            let _ = (parse_difference(&text), parse_time(&text));
            let _ = (parse_volume(&text), parse_mass(&text));
        }
    }
}
