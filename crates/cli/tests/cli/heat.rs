//! `biteband heat`: the contract's fields, the stop, refusals with their way out.

use crate::common::{biteband, json};

/// The fields that the contract names. SAE: 1550 to 1600 F.
#[test]
fn a_round_in_a_pail_of_oil() {
    let pail = &["heat", "4140", "--round", "50mm", "--length", "80mm", "--quench", "oil:6L@25C"];
    let answer = json(pail).json();
    assert_eq!(
        (&answer["harden"]["low_c"], &answer["harden"]["high_c"]),
        (&843.0.into(), &871.0.into())
    );
    let number = |name: &str| answer[name].as_f64().unwrap();
    // "1 min per mm of section once at heat" of the grade's data.
    assert_eq!(answer["hold_min"], 50.0);
    assert!(number("heat_through_min") > 20.0 && number("heat_through_min") < 60.0);
    // By hand: 1.233 kg times 585 kJ/kg over 6 L of 0.88 kg/L and 1.95 kJ/kgK is 70 K; the gallon rule 10.3 L.
    let bath = &answer["bath"];
    let of_bath = |name: &str| bath[name].as_f64().unwrap();
    assert!((of_bath("rise_c") - 70.0).abs() < 1.0 && (of_bath("peak_c") - 95.0).abs() < 1.0);
    assert!((of_bath("needed_l") - 10.3).abs() < 0.05);
    assert_eq!(bath["verdict"], "fire_risk");
    let told = biteband(pail);
    assert_eq!(told.code, 0);
    assert!(
        told.out.starts_with("Stop: the bath is too small. 6 L would warm by about 70 °C"),
        "{}",
        told.out
    );
    let larger =
        &["heat", "4140", "--round", "50mm", "--length", "80mm", "--quench", "oil:12L@25C"];
    let larger = json(larger).json();
    assert_eq!(larger["bath"]["verdict"], "enough");
    assert!(larger["verdict"].as_str().unwrap().starts_with("Heat to 843 – 871 °C"));
}

#[test]
fn units_change_texts_only() {
    let ask =
        &["heat", "O1", "--flat", "1in,1/2in", "--length", "4in", "--quench", "oil:1 US gal@70F"];
    let inch = json(&[ask, &["--units", "inch"][..]].concat()).json();
    let metric = json(ask).json();
    for field in ["heat_through_min", "hold_min", "part", "known_points"] {
        let plain = |value: &serde_json::Value| match field {
            "known_points" => value[0]["celsius"].clone(),
            _ => value.clone(),
        };
        assert_eq!(plain(&inch[field]), plain(&metric[field]), "{field}");
    }
    assert_eq!(inch["bath"]["peak_c"], metric["bath"]["peak_c"]);
    let text = inch["harden"]["text"].as_str().unwrap();
    assert!(text.contains("°F") && !metric["harden"]["text"].as_str().unwrap().contains("1450 °F"));
}

/// Tin melts at 231.9 °C (ITS-90): a dial that showed 240 °C shows 8.1 K too much.
#[test]
fn an_oven_that_was_checked_says_its_dial() {
    let ask = |oven: &[&str]| json(&[&["heat", "4140", "--at", "780C"][..], oven].concat()).json();
    let near = ask(&["--oven", "790C=magnet", "--oven", "445C=zinc"]);
    // Straight between both: 790 at 770 and 445 at 419.5; 780 lies 10 K beyond 770, with the offset of the end.
    assert_eq!(near["oven"]["dial_c"], 800.0);
    assert_eq!(near["oven"]["offset_k"], -20.0);
    let far = ask(&["--oven", "240C=tin"]);
    assert!(far["oven"]["dial_c"].is_null());
    assert!(far["oven"]["text"].as_str().unwrap().contains("Check it near there"));
}

#[test]
fn refusals_name_the_way_out() {
    let round: &[&str] = &["--round", "25mm"];
    for (arguments, exit, code, way) in [
        (&["heat", "9999", "--round", "25mm"][..], 1, "steel.unknown_grade", "composition"),
        (&["heat", "304"], 1, "heat.does_not_harden", "card"),
        (&["heat", "17-4PH"], 1, "heat.ages", "Age it"),
        (&["heat", "A2", "--quench", "water"], 1, "heat.never", "sources name"),
        (&["heat", "4140", "--round", "0mm"], 1, "quantity.out_of_bounds", "unit"),
        (&["heat", "4140", "--round", "2000mm"], 1, "section.size", "unit"),
        (&["heat", "4140", "--tube", "20mm,25mm"], 1, "section.wall", "outside first"),
        (&["heat", "4140", "--quench", "oil:0L@25C"], 1, "quantity.out_of_bounds", "unit"),
        (&["heat", "4140", "--quench", "oil:6L@300C"], 1, "bath.quantity", "unit"),
        (&["heat", "4140", "--quench", "oil:6L@25"], 2, "bench.unreadable_unit", "25 °C"),
        (&["heat", "4140", "--at", "300C"], 1, "quantity.out_of_bounds", "unit"),
        (&["heat", "4140", "--at", "850"], 2, "bench.unreadable_unit", "850 °F"),
        (&["heat", "4140", "--mass", "3"], 2, "bench.unreadable_unit", "3lb"),
        (&["heat", "4140", "--protection", "paint"], 2, "bench.unknown_protection", "nearest"),
        (&["heat", "4140", "--oven", "240C"], 2, "bench.unreadable_oven", "equals"),
        (&["heat", "4140", "--oven", "500C=tin"], 1, "furnace.too_far_off", "thermocouple"),
        (
            &["heat", "--composition", "C=0.9,Mn=0.4"],
            1,
            "transform.carbon",
            "hardening temperature",
        ),
    ] {
        let refused = json(arguments).refused(exit);
        assert_eq!(refused["code"], code, "{refused}");
        assert!(refused["instead"].as_str().unwrap().contains(way), "{refused}");
    }
    assert_eq!(biteband(&["heat"]).code, 2);
    assert_eq!(
        biteband(&[&["heat", "4140", "--composition", "C=0.4"][..], round].concat()).code,
        2
    );
}
