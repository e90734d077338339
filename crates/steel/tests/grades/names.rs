//! Names as people write them.

use biteband_steel::condition::BsCondition;
use biteband_steel::grade::{
    Closeness, Designation, Error, Found, How, OwnGrade, OwnGradeError, System, find, search,
};
use biteband_steel::{CompositionLimits, Element, Grade, target};
use proptest::prelude::*;
use proptest::sample::select;

fn found(text: &str) -> Found {
    find(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

/// Letters and figures alone, in capitals.
fn bare(text: &str) -> String {
    text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_ascii_uppercase()
}

#[test]
fn all_six_hundred_designations_lead_to_their_grade() {
    for one in Designation::all() {
        for text in [one.text().to_owned(), format!("  {} ", one.text().to_lowercase())] {
            let found = found(&text);
            assert_eq!(found.grade, one.grade(), "{text}");
            assert_eq!(found.designation.text(), one.text(), "{text}");
            assert_eq!(found.how, How::Exact, "{text}");
        }
        // Spaces and a decimal comma are forgiven for each of them.
        let spaced: Vec<String> = one.text().chars().map(String::from).collect();
        for text in [spaced.join(" "), one.text().replace('.', ","), one.text().replace('-', "")] {
            assert_eq!(found(&text).grade, one.grade(), "{text}");
        }
    }
}

#[test]
fn every_key_of_a_grade_leads_to_it() {
    for grade in Grade::all() {
        assert_eq!(found(grade.key()).grade, grade);
    }
}

#[test]
fn spellings_of_the_shop_are_forgiven() {
    let cases = [
        ("EN 19", "EN19"),
        ("En-19", "EN19"),
        ("EN19", "EN19"),
        ("1.7225", "42CrMo4"),
        ("1,7225", "42CrMo4"),
        ("W.Nr. 1.7225", "42CrMo4"),
        ("W. Nr. 1.7225", "42CrMo4"),
        ("Werkstoff-Nr. 1.7225", "42CrMo4"),
        ("Werkstoff 1.7225", "42CrMo4"),
        ("42crmo4", "42CrMo4"),
        ("42 Cr Mo 4", "42CrMo4"),
        ("DIN 42CrMo4", "42CrMo4"),
        ("EN 42CrMo4", "42CrMo4"),
        ("AISI 4140", "4140"),
        ("SAE4140", "4140"),
        ("AISI/SAE 4140", "4140"),
        ("4140 steel", "4140"),
        ("UNS G41400", "4140"),
        ("JIS SCM440", "4140"),
        ("BS 970 EN24", "EN24"),
        ("BS 970: 817M40", "EN24"),
        ("silver steel", "BS1407"),
        ("Silver Steels", "BS1407"),
        ("silver-steel", "BS1407"),
        ("O1 tool steel", "O1"),
        ("type 304", "304"),
        ("ASTM A36", "A36"),
        ("17/4 PH", "17-4PH"),
        ("440C stainless", "440C"),
        ("gauge plate", "O1"),
    ];
    for (text, key) in cases {
        assert_eq!(found(text).grade.key(), key, "{text}");
    }
}

#[test]
fn a_system_before_the_name_is_believed() {
    // 4140 is no Japanese name, 45 no German one, G41400 no AISI one.
    for text in ["JIS 4140", "DIN 45", "AISI G41400", "UNS 4140", "GB 4140", "O1 stainless"] {
        assert!(matches!(find(text), Err(Error::Unknown { .. })), "{text}");
    }
    let found = found("GB 45");
    assert_eq!((found.grade.key(), found.designation.system()), ("1045", System::Gb));
    assert!(found.candidates.is_empty());
}

#[test]
fn a_name_of_two_steels_is_never_picked_silently() {
    // 45 alone: the Chinese grade near 1045, C45 of EN 10083, EN45 of BS 970, which is a spring steel.
    let cases: [(&str, &[&str]); 5] = [
        ("45", &["C45", "9260"]),
        // The fastener class of stainless steel has the name of a tool steel.
        ("A2", &["304"]),
        ("silver steel", &["115CrV3"]),
        ("drill rod", &["W1", "A2"]),
        ("EN1A", &["12L14"]),
    ];
    for (text, others) in cases {
        let found = found(text);
        let keys: Vec<&str> = found.candidates.iter().map(|one| one.grade().key()).collect();
        for other in others {
            assert!(keys.contains(other), "{text}: {keys:?}");
        }
        assert!(!keys.contains(&found.grade.key()), "{text}: {keys:?}");
    }
    assert!(found("4140").candidates.is_empty());
    assert!(found("AISI A2").candidates.is_empty());
}

#[test]
fn closeness_is_that_of_the_name() {
    assert_eq!(found("4140").designation.closeness(), Closeness::Same);
    assert_eq!(found("708M40").designation.closeness(), Closeness::Near);
    assert_eq!(found("4142").designation.closeness(), Closeness::Approximate);
}

#[test]
fn a_british_condition_letter_is_read() {
    // BS 970-1:1983, 817M40 in condition T: 248 to 302 HBW.
    let cases = [
        ("EN24T", "EN24", Some('T')),
        ("EN 24 T", "EN24", Some('T')),
        ("817M40T", "EN24", Some('T')),
        ("817M40 t", "EN24", Some('T')),
        ("EN19U", "EN19", Some('U')),
        ("BS 970 EN19U", "EN19", Some('U')),
        ("EN24T steel", "EN24", Some('T')),
        ("709M40S", "EN19", Some('S')),
        ("EN24", "EN24", None),
        ("EN8D", "C45", None),
        ("304S15", "304", None),
        ("4140", "4140", None),
    ];
    for (text, key, letter) in cases {
        let found = found(text);
        assert_eq!(found.grade.key(), key, "{text}");
        assert_eq!(found.condition.map(BsCondition::letter), letter, "{text}");
    }
    assert_eq!(found("EN24T").condition.map(BsCondition::hbw), Some((248.0, Some(302.0))));
    assert!(find("EN24Q").is_err());
}

#[test]
fn an_unknown_name_gets_the_nearest_three_and_nothing_else() {
    let offered = |text: &str| -> Vec<&str> {
        match find(text) {
            Err(Error::Unknown { nearest }) => nearest.iter().map(|one| one.text()).collect(),
            other => panic!("{text}: {other:?}"),
        }
    };
    // 4041 is 4140 with its figures in another order; 4340 has two wrong ones and the same beginning.
    let nearest = offered("4041");
    assert_eq!(nearest.len(), 3);
    assert_eq!(nearest[0], "4140");
    assert!(nearest.contains(&"4340"), "{nearest:?}");
    // One wrong figure, one figure missing, one wrong letter, two letters that changed places.
    for (text, meant) in [
        ("4145", "4140"),
        ("414", "4140"),
        ("EM19", "EN19"),
        ("NE19", "EN19"),
        ("42CrNo4", "42CrMo4"),
    ] {
        assert!(offered(text).contains(&meant), "{text}: {:?}", offered(text));
    }
    assert_eq!(offered("silver stel")[0], "silver steel");
    assert!(matches!(find("  - "), Err(Error::Empty)));
}

#[test]
fn search_follows_the_typing() {
    let texts =
        |text: &str| -> Vec<&str> { search(text, 6).into_iter().map(Designation::text).collect() };
    assert_eq!(texts("EN19")[0], "EN19");
    assert!(texts("EN1").iter().all(|text| text.starts_with("EN1")));
    assert!(texts("1,72").iter().all(|text| text.starts_with("1.72")));
    assert_eq!(texts("silver")[0], "silver steel");
    assert!(texts("stainless").len() > 2);
    // A slip while typing.
    assert!(texts("42CrNo4").contains(&"42CrMo4"));
    assert!(texts("").is_empty() && search("4", 0).is_empty());
    for one in Designation::all() {
        assert_eq!(texts(one.text())[0], one.text());
    }
}

#[test]
fn targets_are_found_by_words() {
    let parts = |text: &str| -> Vec<&str> { target::find(text).iter().map(|r| r.part()).collect() };
    for text in ["cold chisel", "Cold Chisels", "chisel, cold", "cold chizel"] {
        assert!(parts(text).contains(&"cold chisel"), "{text}");
    }
    assert!(parts("vise jaws").contains(&"bench vice jaw plates"));
    assert!(parts("plane irons").contains(&"wood plane iron"));
    assert_eq!(target::find("collet").len(), 3);
    assert!(parts("punch").contains(&"punch (pin, centre, prick)"));
    for row in target::all() {
        assert!(parts(row.part()).contains(&row.part()), "{}", row.part());
    }
    assert!(target::find(" ,; ").is_empty());
}

#[test]
fn an_own_grade_has_a_name_of_its_own() {
    let limits = CompositionLimits::new(&[(Element::C, Some(0.4), Some(0.5))]).unwrap();
    assert_eq!(OwnGrade::new(" ", limits), Err(OwnGradeError::NoName));
    let long = "x".repeat(61);
    assert_eq!(OwnGrade::new(&long, limits), Err(OwnGradeError::TooLong { given: 61, most: 60 }));
    assert!(OwnGrade::new(&"é".repeat(60), limits).is_ok());
    for text in ["EN 19", "1,7225", "Silver Steel"] {
        assert!(matches!(OwnGrade::new(text, limits), Err(OwnGradeError::Known { .. })), "{text}");
    }
    assert_eq!(OwnGrade::new("shaft", limits).unwrap().limits(), &limits);
}

/// What may stand around a designation and still be the same name.
const AROUND: [&str; 24] = [
    "AISI",
    "SAE",
    "ASTM",
    "UNS",
    "BS970",
    "BS4659",
    "BS",
    "WERKSTOFF",
    "NUMMER",
    "NR",
    "WNR",
    "WNO",
    "MATNR",
    "MATERIALNUMBER",
    "DIN",
    "ENISO",
    "EN",
    "JIS",
    "GBT",
    "GB",
    "GRADE",
    "TYPE",
    "TOOL",
    "S",
];

fn never_another(text: &str) -> Result<(), TestCaseError> {
    let Ok(found) = find(text) else { return Ok(()) };
    let name = bare(text);
    let known = bare(found.designation.text());
    let place = name.find(&known);
    prop_assert!(place.is_some(), "{text:?} became {known}");
    let (before, behind) = name.split_at(place.unwrap_or(0));
    let behind = behind.strip_prefix(known.as_str()).unwrap_or(behind);
    let listed = |part: &str| {
        AROUND.contains(&part) || ["AISISAE", "WERKSTOFFNR", "WERKSTOFFNUMMER"].contains(&part)
    };
    prop_assert!(before.is_empty() || listed(before), "{text:?}: {before}");
    let words =
        ["STEEL", "TOOLSTEEL", "STAINLESSSTEEL", "STAINLESS", "SPRINGSTEEL", "ALLOYSTEEL", "S"];
    let letter = found.condition.map(|one| one.letter().to_string()).unwrap_or_default();
    let rest = behind.strip_prefix(letter.as_str()).unwrap_or(behind);
    prop_assert!(rest.is_empty() || words.contains(&rest), "{text:?}: {behind}");
    Ok(())
}

proptest! {
    #[test]
    fn any_text_is_answered_and_never_becomes_another_steel(text in "\\PC{0,80}") {
        never_another(&text)?;
        prop_assert!(search(&text, 5).len() <= 5);
        let _ = target::find(&text);
        if let Err(Error::Unknown { nearest }) = find(&text) {
            prop_assert_eq!(nearest.len(), 3);
        }
    }

    #[test]
    fn a_changed_designation_never_becomes_another_steel(
        place in 0..600_usize,
        at in 0..12_usize,
        with in select(vec!["", "0", "1", "4", "9", "A", "S", "T", "m", " ", "-", ".", "?", "\u{e9}"]),
        before in select(vec!["", "AISI ", "EN", "BS ", "DIN ", "x"]),
    ) {
        let text: String = Designation::all()[place].text().chars().enumerate()
            .map(|(i, sign)| if i == at { with.to_owned() } else { sign.to_string() })
            .collect();
        never_another(&format!("{before}{text}"))?;
    }
}
