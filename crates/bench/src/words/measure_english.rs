//! Measures that cannot be read, in English.

use std::borrow::Cow;

use biteband_quantity::{OutOfBounds, Shown};

use super::Unmeasured;
use crate::measure::Kind;

type Words = Cow<'static, str>;

/// What it is, how it is written, the two units that a bare number may have, and how far apart they are.
const fn about(kind: Kind) -> (&'static str, &'static str, [&'static str; 2], &'static str) {
    match kind {
        Kind::Length => (
            "a length; lengths have no sign",
            "0.301mm, 301um, 0.012in, 1-1/2in",
            ["mm", "in"],
            "one is 25.4 times the other",
        ),
        Kind::Force => (
            "a test force",
            "30kgf, 500gf, 294.2N, 29.42kN",
            ["kgf", "N"],
            "one is 9.8 times the other",
        ),
        Kind::Temperature => {
            ("a temperature", "220C, 220 °C, 428F", [" °C", " °F"], "they are far apart")
        }
        Kind::Difference => (
            "a difference of temperatures",
            "15C, -25F, 10K",
            [" °C", " °F"],
            "one is 1.8 times the other",
        ),
        Kind::Time => ("a time", "90min, 2h, 1h30, 45s", ["min", "h"], "one is 60 times the other"),
        Kind::Volume => (
            "a volume",
            "6L, 500ml, 5 US gal, 5 imp gal",
            ["L", " US gal"],
            "one is 3.8 times the other, and an imperial gallon is larger still",
        ),
        Kind::Mass => {
            ("a mass", "2.7kg, 300g, 6lb, 8oz", ["kg", "lb"], "one is 2.2 times the other")
        }
    }
}

/// The bounds of a quantity, as what would be accepted.
fn bounds(outside: &OutOfBounds) -> Words {
    let OutOfBounds { bounds, .. } = outside;
    format!("{} to {} {}", Shown(bounds.min), Shown(bounds.max), bounds.symbol).into()
}

pub(super) fn refuse(what: Unmeasured<'_>) -> [Words; 3] {
    match what {
        Unmeasured::NoUnit { given, kind: kind @ Kind::Volume }
            if given.ends_with(|c: char| c.is_alphabetic()) =>
        {
            let (_, forms, ..) = about(kind);
            [
                format!(
                    "{given} means two things: a gallon is 3.8 L in America and 4.5 L in Britain."
                )
                .into(),
                forms.into(),
                "Write US gal or imp gal, or litres.".into(),
            ]
        }
        Unmeasured::NoUnit { given, kind } => {
            let (_, forms, [one, other], apart) = about(kind);
            [
                format!("{given} has no unit: {given} {} and {given} {} are both possible, and {apart}.", one.trim(), other.trim()).into(),
                forms.into(),
                format!("Write {given}{one} or {given}{other}.").into(),
            ]
        }
        Unmeasured::Text { given, kind } => {
            let (what, forms, ..) = about(kind);
            [
                format!("\"{given}\" is not readable as {what}.").into(),
                forms.into(),
                "Write a number and its unit, with point or comma.".into(),
            ]
        }
        Unmeasured::Outside(outside) => [
            format!("A {outside}.").into(),
            bounds(&outside),
            "Look at the unit and the decimal point.".into(),
        ],
    }
}
