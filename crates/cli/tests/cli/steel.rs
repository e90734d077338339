//! `biteband steel`: cards, names, refusals, hardness by kind of part.
//!
//! Numbers are those of the standards and sheets named beside the check.

use crate::common::{biteband, json};
use serde_json::{Value, json as plain};

fn card(name: &str) -> Value {
    let done = json(&["steel", name]);
    assert_eq!((done.code, done.err.as_str()), (0, ""), "{name}");
    done.json()
}

fn is(value: &Value, wanted: f64) -> bool {
    value.as_f64().is_some_and(|value| value.total_cmp(&wanted).is_eq())
}

fn element<'a>(card: &'a Value, symbol: &str) -> &'a Value {
    let elements = card["composition"]["elements"].as_array().unwrap();
    elements.iter().find(|one| one["element"] == symbol).unwrap()
}

#[test]
fn fields_that_the_contract_names() {
    let card = card("4140");
    for field in ["key", "closeness", "composition", "hardening", "as_quenched", "tempering"] {
        assert!(card.get(field).is_some(), "{field}");
    }
    assert_eq!((&card["key"], &card["closeness"]), (&plain!("4140"), &plain!("same")));
    // ASTM A29: C 0.38 to 0.43, Cr 0.80 to 1.10, Mo 0.15 to 0.25, S 0.040 at most.
    for (symbol, low, high) in [("C", 0.38, 0.43), ("Cr", 0.80, 1.10), ("Mo", 0.15, 0.25)] {
        let one = element(&card, symbol);
        assert!(is(&one["min"], low) && is(&one["max"], high), "{one}");
    }
    assert!(element(&card, "S")["min"].is_null() && is(&element(&card, "S")["max"], 0.04));
    // SAE: 1550 to 1600 F, oil.
    assert!(is(&card["hardening"]["low_c"], 843.0) && is(&card["hardening"]["high_c"], 871.0));
    assert_eq!(card["hardening"]["quench"], plain!(["oil"]));
    assert_eq!(card["hardening"]["kind"], "through");
    for group in ["composition", "hardening", "supplied", "as_quenched", "tempering", "working"] {
        assert!(!card[group]["sources"].as_array().unwrap().is_empty(), "{group}");
        assert!(card[group]["seen"].is_string() && card[group]["confidence"].is_string());
        assert!(!card[group]["text"].as_str().unwrap().is_empty(), "{group}");
    }
    for source in card["sources"].as_array().unwrap() {
        assert!(!source["title"].as_str().unwrap().is_empty(), "{source}");
        assert!(source["seen"].is_string(), "{source}");
        let known = json(&["source", source["id"].as_str().unwrap()]);
        assert_eq!(known.code, 0, "{source}");
    }
}

#[test]
fn names_of_the_shop_lead_to_a_card() {
    for (name, key, closeness) in [
        ("EN 19", "EN19", "same"),
        ("1.7225", "42CrMo4", "same"),
        ("1,7225", "42CrMo4", "same"),
        ("42crmo4", "42CrMo4", "same"),
        ("AISI 4140", "4140", "same"),
        ("708M40", "4140", "near"),
        ("silver steel", "BS1407", "near"),
        ("drill rod", "O1", "approximate"),
    ] {
        let card = card(name);
        assert_eq!(
            (&card["key"], &card["closeness"]),
            (&plain!(key), &plain!(closeness)),
            "{name}"
        );
    }
    // Words without quotes are one name.
    let parts = json(&["steel", "42", "Cr", "Mo", "4"]).json();
    assert_eq!(parts["key"], "42CrMo4");
}

#[test]
fn closeness_memory_and_ambiguity_are_said() {
    let near = biteband(&["steel", "708M40"]).out.replace('\n', " ");
    assert!(near.contains("not the same steel; check the paper"), "{near}");
    let recalled = biteband(&["steel", "A36"]).out;
    assert!(recalled.contains("(from memory)"), "{recalled}");
    let two = card("45");
    assert_eq!(two["key"], "1045");
    let keys: Vec<&Value> =
        two["candidates"].as_array().unwrap().iter().map(|one| &one["key"]).collect();
    assert!(keys.contains(&&plain!("C45")) && keys.contains(&&plain!("9260")), "{keys:?}");
    assert!(two["verdict"][0].as_str().unwrap().starts_with("AMBIGUOUS"), "{two}");
}

#[test]
fn a_condition_letter_is_answered() {
    // BS 970-1:1983, 817M40 T: 248 to 302 HBW, 850 to 1000 MPa.
    for name in ["EN24T", "817M40T"] {
        let condition = card(name)["condition"].clone();
        assert_eq!(condition["letter"], "T", "{name}");
        assert!(is(&condition["hbw_low"], 248.0) && is(&condition["hbw_high"], 302.0));
        assert!(is(&condition["tensile_low"], 850.0) && is(&condition["tensile_high"], 1000.0));
    }
    assert!(card("EN24")["condition"].is_null());
}

#[test]
fn what_does_not_harden_gets_no_number() {
    let card = card("304");
    assert_eq!(card["hardening"]["kind"], "none");
    for (group, field) in [
        ("hardening", "low_c"),
        ("as_quenched", "hrc_low"),
        ("tempering", "low_c"),
        ("working", "hrc_high"),
    ] {
        assert!(card[group][field].is_null(), "{group}");
    }
    let text = biteband(&["steel", "304"]).out;
    assert!(text.contains("does not harden by heat treatment") && !text.contains("HRC"), "{text}");
}

#[test]
fn inches_change_the_text_and_not_the_numbers() {
    let metric = json(&["steel", "4140"]).json();
    let inch = json(&["steel", "4140", "--units", "inch"]).json();
    assert_eq!(metric["hardening"]["low_c"], inch["hardening"]["low_c"]);
    // SAE prints 1550 to 1600 F.
    assert!(inch["hardening"]["text"].as_str().unwrap().contains("1550 – 1600 °F"), "{inch}");
    assert!(metric["hardening"]["text"].as_str().unwrap().contains("843 – 871 °C"), "{metric}");
}

#[test]
fn an_unknown_name_is_refused_with_the_nearest_three() {
    let refused = json(&["steel", "4041"]).refused(1);
    assert_eq!(refused["code"], "steel.unknown_grade");
    let offered: Vec<&str> = refused["allowed"].as_str().unwrap().split(", ").collect();
    assert_eq!(offered.len(), 3, "{refused}");
    // 4140 is 4041 with its figures in another order, 4340 has two wrong figures.
    assert!(offered.contains(&"4140") && offered.contains(&"4340"), "{refused}");
    assert_eq!(json(&["steel", "-"]).refused(1)["code"], "steel.no_grade");
    assert_eq!(biteband(&["steel"]).code, 2);
}

#[test]
fn list_and_find() {
    let grades = json(&["steel", "--list"]).json()["grades"].as_array().unwrap().len();
    assert_eq!(grades, 78);
    let found = json(&["steel", "--find", "EN19"]).json();
    assert_eq!(found["key"], "EN19");
    assert!(found["composition"].is_object() && found["matches"][0]["designation"] == "EN19");
    let part = json(&["steel", "--find", "silver"]).json();
    assert!(part.get("key").is_none(), "{part}");
    assert_eq!(part["matches"][0]["designation"], "silver steel");
    let text = biteband(&["steel", "--find", "silver"]).out;
    assert!(text.contains("near: not the same steel; check the paper"), "{text}");
    assert_eq!(json(&["steel", "--find", "mmmmmmmmmmm"]).refused(1)["code"], "steel.unknown_grade");
}

#[test]
fn a_target_comes_with_its_caution_and_source() {
    let found = json(&["steel", "--target", "cold chisel"]).json();
    let rows = found["targets"].as_array().unwrap();
    let of = |zone: &str| rows.iter().find(|row| row["zone"] == zone).unwrap();
    // ASME B107.47, clause 4.3: edge 53 to 60 HRC, struck end 45 at most.
    let (edge, end) = (of("cutting edge"), of("struck end"));
    assert!(is(&edge["hrc_low"], 53.0) && is(&edge["hrc_high"], 60.0));
    assert!(end["hrc_low"].is_null() && is(&end["hrc_high"], 45.0));
    for row in rows {
        assert!(!row["caution"].as_str().unwrap().is_empty(), "{row}");
        assert_eq!(row["sources"], plain!(["B107-47"]));
    }
    let text = biteband(&["steel", "--target", "chisels"]).out;
    assert!(text.contains("eye protection") && text.contains("B107-47"), "{text}");
    let refused = json(&["steel", "--target", "marmalade"]).refused(1);
    assert_eq!(refused["code"], "steel.unknown_part");
    assert!(refused["allowed"].as_str().unwrap().contains("cold chisel"));
}

#[test]
fn lines_fit_a_terminal() {
    for arguments in [
        &["steel", "4140"][..],
        &["steel", "17-4PH"],
        &["steel", "--list"],
        &["steel", "--target", "gear"],
    ] {
        let text = biteband(arguments).out;
        assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    }
}
