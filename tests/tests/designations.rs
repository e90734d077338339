//! Hardness in writing: the standards' own form, texts that stray from it, and what a shop types.

use biteband_hardness::designation::{Amount, Error, Remark, parse};
use biteband_tests::rows;

#[test]
fn ref_every_standard_text_reads_as_standard_and_prints_in_output_form() {
    let rows = rows("designations/valid.csv").unwrap();
    assert_eq!(rows.len(), 40);
    for row in rows {
        let text = row.text("text");
        let parsed = parse(text).unwrap_or_else(|error| panic!("{text}: {error}"));
        assert_eq!(parsed.designation().to_string(), row.text("canonical"), "{text}");
        assert!(parsed.is_standard_form(), "{text}: {:?}", parsed.remarks());
        assert!(!parsed.remarks().iter().any(|r| r.asks()), "{text}: {:?}", parsed.remarks());
        let again = parse(row.text("canonical")).unwrap();
        assert_eq!(again.designation(), parsed.designation(), "{text}");
        assert!(again.is_standard_form() && again.remarks().is_empty(), "{text}");
    }
}

#[test]
fn ref_every_straying_text_is_refused_or_remarked_on() {
    let rows = rows("designations/invalid.csv").unwrap();
    assert_eq!(rows.len(), 20);
    let mut refused = 0;
    for row in rows {
        let (text, reading, remark) = (row.text("text"), row.text("reading"), row.text("remark"));
        match parse(text) {
            Err(error) => {
                assert_eq!((reading, error.code()), ("", remark), "{text}");
                refused += 1;
            }
            Ok(parsed) => {
                assert_eq!(parsed.designation().to_string(), reading, "{text}");
                assert!(!parsed.is_standard_form(), "{text} passes as standard");
                let found = parsed.remarks().iter().find(|r| format!("{r:?}") == remark);
                let found = found.unwrap_or_else(|| panic!("{text}: {:?}", parsed.remarks()));
                assert!(found.strays(), "{text}");
            }
        }
    }
    assert_eq!(refused, 6);
}

#[test]
fn ref_what_a_shop_types_is_understood_as_the_trade_means_it() {
    let (mut read, mut refused) = (0, 0);
    for row in rows("designations/shop.csv").unwrap() {
        let (text, reading, refusal) = (row.text("text"), row.text("reading"), row.text("refusal"));
        match parse(text) {
            Ok(parsed) => {
                let printed = parsed.designation().to_string();
                assert_eq!((printed.as_str(), ""), (reading, refusal), "{text}");
                // What is printed reads as the same again, strengths to the whole MPa that is printed.
                let again = parse(&printed).unwrap();
                assert_eq!(again.designation().to_string(), printed, "{text}");
                read += 1;
            }
            Err(error) => {
                assert_eq!(("", error.code()), (reading, refusal), "{text}: {error}");
                refused += 1;
            }
        }
    }
    assert!(read > 90 && refused > 25, "{read} read, {refused} refused");
}

#[test]
fn ref_missing_force_ball_or_condition_is_asked_about() {
    // The standards require these behind the symbol; nothing is filled in for the person.
    for (text, question) in [
        ("640 HV", Remark::ForceMissing),
        ("HV 700 +-50", Remark::ForceMissing),
        ("500 HK", Remark::ForceMissing),
        ("90 HRB", Remark::BallLetterMissing),
        ("80 HR30T", Remark::BallLetterMissing),
        ("220 HBW", Remark::BrinellConditionMissing),
        ("BHN 300", Remark::BrinellConditionMissing),
    ] {
        let parsed = parse(text).unwrap();
        assert!(parsed.remarks().contains(&question), "{text}: {:?}", parsed.remarks());
        assert!(question.asks() && question.strays());
        assert_eq!(parsed.designation().condition, None, "{text}");
    }
}

#[test]
fn ref_a_guess_is_said_aloud() {
    // "60 Rockwell" means C in this trade; a comma is a decimal comma; 130 ksi is 896.318 MPa.
    let rockwell = parse("60 Rockwell").unwrap();
    assert!(rockwell.remarks().contains(&Remark::RockwellTakenAsC));
    let comma = parse("52,5 HRC").unwrap();
    assert_eq!(comma.remarks(), [Remark::DecimalComma]);
    let ksi = parse("130 ksi").unwrap();
    assert!(ksi.remarks().contains(&Remark::FromKsi));
    let Amount::Single(megapascals) = ksi.designation().amount else { panic!("{ksi:?}") };
    // 1000 lbf/in2 by the definitions of pound, inch and standard gravity: 6.894757 MPa.
    assert!((megapascals - 130.0 * 6.894_757).abs() < 1e-4, "{megapascals}");
}

#[test]
fn ref_ten_thousand_characters_are_too_long() {
    for text in ["5".repeat(10_000), "HRC ".repeat(2_500), "é".repeat(10_000)] {
        assert_eq!(parse(&text).map(|_| ()), Err(Error::TooLong));
    }
    assert_eq!(parse(&" ".repeat(10_000)).map(|_| ()), Err(Error::Empty));
    assert_eq!(parse("").map(|_| ()), Err(Error::Empty));
}
