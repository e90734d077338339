//! The exact words of every refusal. A new variant does not compile until it stands here.

use std::collections::BTreeSet;

use biteband_hardness::designation::{self, parse};
use biteband_hardness::{
    Axis, Choice, Error, Material, Reading, Scale, TableId, convert, convert_limits,
};

const HRC: Axis = Axis::Hardness(Scale::Hrc);
const HV: Axis = Axis::Hardness(Scale::Hv);

/// The code that each refusal of a conversion must carry.
fn code(error: &Error) -> &'static str {
    match error {
        Error::NotANumber { .. } => "hardness.not_a_number",
        Error::OutsideScale { .. } => "hardness.outside_scale",
        Error::Strength(_) => "hardness.outside_strength",
        Error::SameAxis { .. } => "hardness.same_scale",
        Error::Material { .. } => "hardness.no_material",
        Error::NoTable { .. } => "hardness.no_table",
        Error::OutsideTables { .. } => "hardness.outside_tables",
        Error::Backward { .. } => "hardness.backward_range",
        Error::NoLimit { .. } => "hardness.no_limit",
        Error::NoSingleTable { .. } => "hardness.no_single_table",
    }
}
const CODES: usize = 10;

/// The code that each refusal of a text must carry.
fn text_code(error: &designation::Error) -> &'static str {
    match error {
        designation::Error::Empty => "designation.empty",
        designation::Error::TooLong => "designation.too_long",
        designation::Error::NoNumber => "designation.no_number",
        designation::Error::NumberTooLong => "designation.number_too_long",
        designation::Error::Negative => "designation.negative",
        designation::Error::NoScale => "designation.no_scale",
        designation::Error::RockwellLetterMissing => "designation.rockwell_letter_missing",
        designation::Error::RubberScale => "designation.rubber_scale",
        designation::Error::UnknownScale(_) => "designation.unknown_scale",
        designation::Error::TwoScales(..) => "designation.two_scales",
        designation::Error::TwoNumbers(..) => "designation.two_numbers",
        designation::Error::SlashRange(..) => "designation.slash_range",
        designation::Error::Backward(..) => "designation.backward_range",
        designation::Error::BrinellPair { .. } => "designation.brinell_pair",
        // Not a code of its own: it speaks as the refusal that it holds.
        designation::Error::Outside(inside) => code(inside),
    }
}
const TEXT_CODES: usize = 15;

#[test]
fn message_of_every_refused_conversion() {
    let reading = |axis, value| Reading::new(axis, value).unwrap();
    let e140 = TableId::find("astm-e140-t1").map(Choice::table).unwrap();
    let iron = Choice::of(Material::CastIron);
    let cases: Vec<(Error, &str)> = vec![
        (Reading::new(HRC, f64::NAN).unwrap_err(), "HRC needs a finite number"),
        (
            Reading::new(Axis::Hardness(Scale::Hrb), 110.0).unwrap_err(),
            "110 HRB is outside the scale, which runs from 10 to 100",
        ),
        (
            Reading::new(Axis::Tensile, 5.0).unwrap_err(),
            "tensile strength of 5 MPa is outside 50 to 4000 MPa: no steel breaks below or holds above it",
        ),
        (
            convert(reading(HRC, 60.0), HRC, Choice::STEEL).unwrap_err(),
            "the number is in HRC already",
        ),
        (
            convert(reading(Axis::Hardness(Scale::Leeb), 760.0), HV, Choice::STEEL).unwrap_err(),
            "no published table here for carbon-alloy-steel holds both HL and HV",
        ),
        (
            convert(reading(HRC, 15.0), HV, Choice::STEEL).unwrap_err(),
            "15 HRC is outside every table from HRC to HV, which end at 20 HRC",
        ),
        (
            convert(reading(HRC, 62.0), Axis::Tensile, Choice::STEEL).unwrap_err(),
            "62 HRC is outside every table from HRC to Rm, which end at 59 HRC",
        ),
        (
            convert(reading(Axis::Tensile, 3900.0), HRC, Choice::STEEL).unwrap_err(),
            "3900 MPa is outside every table from Rm to HRC, which end at 2420 MPa",
        ),
        (
            convert_limits(HRC, Some(62.0), Some(58.0), HV, Choice::STEEL).unwrap_err(),
            "the range runs backwards from 62 to 58 HRC",
        ),
        (
            convert_limits(Axis::Tensile, None, None, HV, Choice::STEEL).unwrap_err(),
            "the range in Rm has no limit",
        ),
        (
            // Rockwell A reaches from ASTM E140 Table 2 (35) into Table 1 (80), but no table spans both.
            convert_limits(Axis::Hardness(Scale::Hra), Some(45.0), Some(80.0), HV, Choice::STEEL)
                .unwrap_err(),
            "no single table holds 45 to 80 HRA and HV, and tables are not joined",
        ),
        (
            convert(reading(Axis::Hardness(Scale::Hrb), 90.0), HV, e140).unwrap_err(),
            "no published table here for carbon-alloy-steel holds both HRB and HV",
        ),
        (
            convert(reading(HRC, 22.0), HV, iron).unwrap_err(),
            "no published table here holds for cast-iron",
        ),
    ];
    let mut codes = BTreeSet::new();
    for (error, text) in &cases {
        assert_eq!(error.to_string(), *text);
        assert_eq!(error.code(), code(error), "{text}");
        codes.insert(error.code());
    }
    assert_eq!(codes.len(), CODES);
}

#[test]
fn message_of_every_refused_text() {
    let long = "9".repeat(10_000);
    let cases: [(&str, &str); 18] = [
        ("", "nothing was written"),
        (" \t", "nothing was written"),
        (&long, "the text is longer than any hardness"),
        ("HRC", "there is no number in it"),
        ("1234567890123 HRC", "the number has more digits than any reading"),
        ("-5 HRC", "a hardness is not negative"),
        ("60", "the number has no scale"),
        ("60 HR", "HR needs its letter, as in HRC"),
        ("60 Shore A", "Shore A and D are scales for rubber and plastic"),
        ("60 HRX", "HRX is no hardness scale"),
        ("353 HBW (38 HRC)", "two scales in one reading: HBW and HRC"),
        ("58 62 HRC", "two numbers in one reading: 58 and 62"),
        ("58/62 HRC", "58/62 uses the sign of test conditions for a range"),
        ("62 to 58 HRC", "the range runs backwards from 62 to 58"),
        ("229 HBW 10/2000", "no Brinell test has a 10 mm ball with 2000 kgf"),
        ("5 HRC", "5 HRC is outside the scale, which runs from 10 to 70"),
        ("105 HRBW", "105 HRB is outside the scale, which runs from 10 to 100"),
        (
            "9999 MPa",
            "tensile strength of 9999 MPa is outside 50 to 4000 MPa: no steel breaks below or holds above it",
        ),
    ];
    let mut kinds = BTreeSet::new();
    for (text, message) in cases {
        let error = parse(text).unwrap_err();
        assert_eq!(error.to_string(), message, "{text}");
        assert_eq!(error.code(), text_code(&error), "{text}");
        kinds.insert(match error {
            designation::Error::Outside(_) => "outside",
            other => other.code(),
        });
    }
    assert_eq!(kinds.len(), TEXT_CODES);
}

#[test]
fn message_of_a_refusal_is_one_line_without_a_full_stop() {
    for text in ["", "HRC", "-5 HRC", "60", "60 HR", "60 HRX", "58/62 HRC", "5 HRC"] {
        let message = parse(text).unwrap_err().to_string();
        assert!(!message.contains('\n') && !message.ends_with('.'), "{message}");
    }
}
