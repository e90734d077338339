//! Lengths and forces as people write them, always with their unit.
//!
//! A bare number is refused: `0.3` may be millimetres or inches, `30` kilogram-force or newtons, and the
//! wrong guess gives a number that looks right.

use biteband_hardness::decimal;
use biteband_quantity::{KilogramsForce, Millimetres, OutOfBounds};

use crate::format::shortened;
use crate::refusal::Refusal;
use crate::words::{IndentRefusal, Language};

/// One inch in mm, exact by definition.
pub const INCH: f64 = 25.4;

/// Test forces that standards name, in kgf: newtons are printed rounded to four figures, and a force that
/// is one of these within that rounding is meant as it.
const NOMINAL: [f64; 36] = [
    0.001, 0.005, 0.01, 0.015, 0.02, 0.025, 0.05, 0.1, 0.2, 0.3, 0.5, 1.0, 2.0, 2.5, 3.0, 5.0,
    6.25, 7.8125, 10.0, 15.625, 20.0, 25.0, 30.0, 31.25, 50.0, 62.5, 100.0, 120.0, 125.0, 150.0,
    187.5, 250.0, 500.0, 750.0, 1000.0, 3000.0,
];

/// Why a text is no length or no force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unread {
    /// A number alone.
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

/// Reads a length for an answer.
///
/// # Errors
/// A refusal that spells out both readings of a bare number.
pub fn length(language: Language, text: &str) -> Result<Length, Refusal> {
    parse_length(text).map_err(|why| unread(language, text, why, true))
}

/// Reads a force for an answer.
///
/// # Errors
/// As [`length`].
pub fn force(language: Language, text: &str) -> Result<KilogramsForce, Refusal> {
    parse_force(text).map_err(|why| unread(language, text, why, false))
}

fn unread(language: Language, text: &str, why: Unread, of_length: bool) -> Refusal {
    let given = shortened(text);
    let code = match why {
        Unread::NoUnit => "bench.unreadable_unit",
        Unread::Text if of_length => "bench.unreadable_length",
        Unread::Text => "bench.unreadable_force",
        Unread::Outside(inside) => inside.code(),
    };
    let what = match why {
        Unread::NoUnit => IndentRefusal::NoUnit { given: &given, of_length },
        Unread::Text => IndentRefusal::NotMeasured { given: &given, of_length },
        Unread::Outside(inside) => IndentRefusal::Quantity(inside),
    };
    let [message, allowed, instead] = language.indent_refused(what);
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
}
