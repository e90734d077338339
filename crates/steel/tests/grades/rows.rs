//! Every cell as it stands in the file.

use biteband_hardness::Seen;
use biteband_steel::condition::{BoltClass, BsCondition};
use biteband_steel::grade::Designation;
use biteband_steel::{CompositionLimits, Element, Grade, condition, source, sources, target};

use crate::print::*;

#[test]
fn every_cell_of_every_grade() {
    let printed = rows("steels.csv");
    assert_eq!((printed.len(), Grade::all().len()), (78, 78));
    for (row, grade) in printed.iter().zip(Grade::all()) {
        let at = row.get("key");
        assert_eq!((grade.key(), grade.name()), (at, row.get("name")));
        assert_eq!(Grade::by_key(at), Some(grade));
        let limits = grade.limits();
        let mut stated = Vec::new();
        for element in Element::ALL {
            let column = element.symbol().to_lowercase();
            let low = row.number(&format!("{column}_min"));
            let high = row.number(&format!("{column}_max"));
            let (has_low, has_high) = limits.stated(element);
            assert!(same(has_low, low) && same(has_high, high), "{at}: {element}");
            stated.push((element, low, high));
        }
        assert_eq!(CompositionLimits::new(&stated), Ok(limits), "{at}");
        let words = [
            (grade.family().key(), "family"),
            (grade.hardening().key(), "hardening"),
            (grade.other(), "other"),
            (grade.composition_standard(), "comp_standard"),
            (grade.composition_note(), "comp_note"),
            (grade.soak(), "soak"),
            (grade.supplied_note(), "supplied_note"),
            (grade.as_quenched_note(), "asq_note"),
            (grade.avoid_why(), "avoid_why"),
            (grade.typical_use(), "typical_use"),
            (grade.temper_method().key(), "temper_method"),
            (grade.curve_from().unwrap_or_default(), "curve_from"),
            (grade.curve_closeness().map_or("", |near| near.key()), "curve_closeness"),
            (grade.double_temper().key(), "double_temper"),
            (grade.cryo().key(), "cryo"),
            (grade.section_note(), "section_note"),
            (grade.notes(), "notes"),
        ];
        for (word, column) in words {
            assert_eq!(word, row.get(column), "{at}: {column}");
        }
        assert_eq!(grade.hazards().collect::<Vec<_>>(), row.list("hazards"), "{at}");
        let media: Vec<&str> = grade.quenchants().iter().map(|medium| medium.key()).collect();
        let printed_media: Vec<&str> =
            row.list("quench").into_iter().filter(|word| *word != "none").collect();
        assert_eq!(media, printed_media, "{at}");
        let ranges = [
            (grade.window(), "aust_min_c", "aust_max_c"),
            (grade.as_quenched(), "asq_min_hrc", "asq_max_hrc"),
            (grade.temper_range(), "temper_min_c", "temper_max_c"),
            (grade.avoid(), "avoid_min_c", "avoid_max_c"),
            (grade.working(), "work_min_hrc", "work_max_hrc"),
        ];
        for (range, low, high) in ranges {
            assert!(same_interval(range, row.number(low), row.number(high)), "{at}: {low}");
        }
        let supplied = grade.supplied();
        assert!(same(supplied.min, row.number("supplied_hbw_min")), "{at}");
        assert!(same(supplied.typical, row.number("supplied_hbw_typ")), "{at}");
        assert!(same(supplied.max, row.number("supplied_hbw_max")), "{at}");
        let steps: Vec<String> = grade
            .preheat()
            .iter()
            .map(|step| {
                let one = step.low.to_bits() == step.high.to_bits();
                if one { format!("{}", step.low) } else { format!("{}-{}", step.low, step.high) }
            })
            .collect();
        assert_eq!(steps.join(" then "), row.get("preheat_c"), "{at}");
        let groups = [
            (grade.composition_cited(), "comp"),
            (grade.heat_cited(), "aust"),
            (grade.supplied_cited(), "supplied"),
            (grade.as_quenched_cited(), "asq"),
            (grade.temper_cited(), "temper"),
            (grade.working_cited(), "work"),
        ];
        for (cited, group) in groups {
            let of = |part: &str| format!("{group}_{part}");
            let (sources, status, confidence) = (of("src"), of("status"), of("conf"));
            assert!(cites(cited, row, [&sources, &status, &confidence]), "{at}: {group}");
            assert_eq!(cited.works().count(), cited.sources.len(), "{at}: {group}");
        }
    }
}

#[test]
fn every_cell_of_every_designation() {
    let printed = rows("equivalents.csv");
    assert_eq!((printed.len(), Designation::all().len()), (600, 600));
    for (row, one) in printed.iter().zip(Designation::all()) {
        let at = row.get("designation");
        assert_eq!(one.text(), at);
        assert_eq!(one.system().key(), row.get("system"), "{at}");
        assert_eq!(one.grade().key(), row.get("key"), "{at}");
        assert_eq!(one.closeness().key(), row.get("closeness"), "{at}");
        assert_eq!(one.note(), row.get("note"), "{at}");
        let near: Vec<&str> = one.also_near().map(Grade::key).collect();
        assert_eq!(near, row.list("also_near"), "{at}");
        assert!(cites(one.cited(), row, ["source", "status", "conf"]), "{at}");
        assert!(one.grade().designations().any(|other| other.text() == at), "{at}");
    }
}

#[test]
fn every_cell_of_every_target() {
    let printed = rows("target-hardness.csv");
    assert_eq!((printed.len(), target::all().len()), (107, 107));
    for (row, one) in printed.iter().zip(target::all()) {
        let at = (row.get("part"), row.get("zone"));
        assert_eq!((one.part(), one.zone()), at);
        let (low, high) = one.hrc();
        assert!(same(low, row.number("hrc_min")) && same(high, row.number("hrc_max")), "{at:?}");
        assert_eq!(one.other_scale(), row.get("other_scale"), "{at:?}");
        assert_eq!(one.basis().key(), row.get("source_type"), "{at:?}");
        assert_eq!(one.caution(), row.get("caution"), "{at:?}");
        let keys: Vec<&str> = one.grades().iter().map(|grade| grade.key()).collect();
        assert_eq!(keys, row.list("typical_keys"), "{at:?}");
        assert!(cites(one.cited(), row, ["source", "status", "conf"]), "{at:?}");
    }
}

#[test]
fn every_cell_of_every_condition() {
    let printed = rows("17-4ph-conditions.csv");
    assert_eq!((printed.len(), condition::ph_ages().len()), (8, 8));
    for (row, age) in printed.iter().zip(condition::ph_ages()) {
        let at = row.get("condition");
        assert_eq!(age.name(), at);
        let joined = |of: fn(&(f64, f64)) -> f64| {
            let texts: Vec<String> = age.steps().iter().map(|step| of(step).to_string()).collect();
            texts.join(" then ")
        };
        assert_eq!(joined(|step| step.0), row.get("age_c"), "{at}");
        assert_eq!(joined(|step| step.1), row.get("hours"), "{at}");
        let numbers = [
            (age.hrc_min(), "hrc_min"),
            (age.hbw_min(), "hbw_min"),
            (age.tensile_min(), "tensile_mpa_min"),
            (age.yield_min(), "yield_mpa_min"),
        ];
        for (number, column) in numbers {
            assert!(same(number, row.number(column)), "{at}: {column}");
        }
        assert_eq!(age.note(), row.get("note"), "{at}");
        assert!(cites(age.cited(), row, ["source", "status", "conf"]), "{at}");
    }
    let printed = rows("bs-conditions.csv");
    assert_eq!((printed.len(), condition::bs_letters().len()), (8, 8));
    for (row, one) in printed.iter().zip(condition::bs_letters()) {
        let at = row.get("letter");
        assert_eq!(one.letter().to_string(), at);
        assert_eq!(condition::bs(one.letter()).map(BsCondition::letter), Some(one.letter()));
        let ends = [
            (Some(one.hbw().0), "hbw_min"),
            (one.hbw().1, "hbw_max"),
            (Some(one.tensile().0), "tensile_mpa_min"),
            (one.tensile().1, "tensile_mpa_max"),
        ];
        for (number, column) in ends {
            assert!(same(number, row.number(column)), "{at}: {column}");
        }
        assert!(cites(one.cited(), row, ["source", "status", "conf"]), "{at}");
    }
}

#[test]
fn every_class_of_bolts() {
    let printed = rows("bolt-classes.csv");
    assert_eq!((printed.len(), condition::bolt_classes().len()), (9, 9));
    for (row, one) in printed.iter().zip(condition::bolt_classes()) {
        let at = row.get("class");
        assert_eq!(one.name(), at);
        assert_eq!(condition::bolt(at).map(BoltClass::name), Some(at));
        assert!(same(Some(one.tensile()), row.number("tensile_mpa")), "{at}");
        assert!(cites(one.cited(), row, ["source", "status", "conf"]), "{at}");
    }
}

#[test]
fn every_source_of_both_lists() {
    let (data, methods) = (rows("sources.csv"), rows("methods.csv"));
    assert_eq!(sources().len(), data.len() + methods.len());
    for row in &data {
        let one = source(row.get("key")).unwrap();
        assert_eq!((one.kind(), one.title()), (row.get("kind"), row.get("title")));
        assert!(row.get("publisher") == "-" || one.body() == row.get("publisher"));
        for heading in ["where_seen", "used_for"] {
            assert!(row.get(heading) == "-" || one.note().contains(row.get(heading)));
        }
        assert_eq!(one.seen() == Seen::Recalled, row.get("kind") == "recalled");
    }
    for row in &methods {
        let one = source(row.get("key")).unwrap();
        let printed = ["kind", "publisher", "title", "edition", "seen", "note"];
        let has =
            [one.kind(), one.body(), one.title(), one.edition(), one.seen().key(), one.note()];
        assert_eq!(has, printed.map(|heading| row.get(heading)));
    }
    assert!(source("nobody").is_none());
}

#[test]
fn no_file_names_a_web_address() {
    let files = ["steels", "equivalents", "target-hardness", "sources", "methods"];
    for name in files {
        let text = text(&format!("{name}.csv"));
        assert!(!text.contains("://") && !text.contains("www."), "{name}");
    }
}
