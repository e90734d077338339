//! The files beside the module agree with it: version, fields of the types.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use std::collections::BTreeSet;

use biteband_bench::answer::{
    ClaimQuestion, ConvertQuestion, FileQuestion, HeatQuestion, IndentQuestion, JominyQuestion,
    NextQuestion, ReachQuestion, SteelQuestion, TemperQuestion, UnknownQuestion, assess, claim,
    convert, heat, indent, jominy, next, parse_reading, parse_strokes, reach, sources, steel,
    table, tables, temper, unknown,
};
use biteband_bench::card::file;
use biteband_bench::section::SectionInput;
use biteband_bench::words::Language;
use serde::Serialize;
use serde_json::Value;

const TYPES: &str = include_str!("../src/types.d.ts");
const MANIFEST: &str = include_str!("../npm/package.json");
const ENGLISH: Language = Language::English;

#[test]
fn package_has_the_version_of_the_workspace() {
    let manifest: Value = serde_json::from_str(MANIFEST).unwrap();
    assert_eq!(manifest["version"], env!("CARGO_PKG_VERSION"));
    assert_eq!(manifest["name"], "biteband");
}

/// The fields that a TypeScript interface declares, and whether each may be left out.
fn declared(interface: &str) -> BTreeSet<String> {
    let start = format!("export interface {interface} {{");
    let body = TYPES.split(&start).nth(1).unwrap().split("\n}").next().unwrap();
    body.lines()
        .map(str::trim)
        .filter(|line| !line.starts_with(['/', '*']))
        .filter_map(|line| line.split_once(": "))
        .map(|(name, _)| name.trim_end_matches('?').to_owned())
        .collect()
}

#[track_caller]
fn same_fields(value: &Value, interface: &str) {
    let own: BTreeSet<String> = value.as_object().unwrap().keys().cloned().collect();
    let mut wanted = declared(interface);
    // The mark by which answers and refusals are told apart has no field in an answer.
    if !own.contains("refused") {
        wanted.remove("refused");
    }
    assert_eq!(own, wanted, "{interface}");
}

fn plain(value: &impl Serialize) -> Value {
    serde_json::to_value(value).unwrap()
}

#[test]
fn conversion_types_have_the_fields_of_the_answers() {
    let ask = |text: &str, to: &[&str]| ConvertQuestion {
        text: text.to_owned(),
        to: to.iter().map(|&scale| scale.to_owned()).collect(),
        ..ConvertQuestion::default()
    };
    let answer = plain(&convert(ENGLISH, &ask("HV 700 +-50", &["HRC", "Rm"])).unwrap());
    same_fields(&answer, "ConvertAnswer");
    same_fields(&answer["input"], "ConvertInput");
    same_fields(&answer["input"]["notes"][0], "Note");
    same_fields(&answer["results"][0], "Converted");
    same_fields(&answer["results"][0]["others"][0], "Other");
    let strength = plain(&convert(ENGLISH, &ask("300 HV", &["Rm"])).unwrap());
    same_fields(&strength["results"][0]["measured"], "Measured");
    same_fields(&answer["refusals"][0], "Refusal");
}

#[test]
fn file_types_have_the_fields_of_the_answers() {
    let ask = |strokes: &str| FileQuestion {
        strokes: parse_strokes(ENGLISH, strokes).unwrap(),
        target: Some("50-54 HRC".to_owned()),
        ..FileQuestion::default()
    };
    let answer = plain(&assess(ENGLISH, &ask("50:k 55:b")).unwrap());
    same_fields(&answer, "FileAnswer");
    same_fields(&answer["band"], "Band");
    same_fields(&answer["target"], "TargetOdds");
    same_fields(&answer["next"], "Next");
    same_fields(&answer["scales"][0], "BandInScale");
    let refused = plain(&assess(ENGLISH, &ask("40:k 45:b 50:k 55:b")).unwrap());
    same_fields(&refused, "FileRefused");
    same_fields(&refused["refused"], "Refusal");
    same_fields(&refused["contradictions"][0], "Contradiction");
    let reading = parse_reading(ENGLISH, "comparison: 640 HV; 600 HV; 600 HV").unwrap();
    same_fields(&plain(&reading), "ReadingInput");
    let read = FileQuestion { readings: vec![reading], ..ask("40:b 45:b") };
    let clash = plain(&assess(ENGLISH, &read).unwrap());
    same_fields(&clash, "FileRefused");
    same_fields(&clash["readings"][0], "ReadingAnswer");
    same_fields(&clash["clashes"][0], "Clash");
}

#[test]
fn indent_types_have_the_fields_of_the_answers() {
    let rockwell = IndentQuestion {
        kind: "rockwell".to_owned(),
        scale: Some("HRC".to_owned()),
        readings: vec![58.0, 58.5, 58.2, 52.1, 58.3],
        round: Some("12mm".to_owned()),
        thickness: Some("0.5mm".to_owned()),
        ..IndentQuestion::default()
    };
    let answer = plain(&indent(ENGLISH, &rockwell).unwrap());
    same_fields(&answer, "IndentAnswer");
    same_fields(&answer["limits"][0], "IndentLimit");
    same_fields(&answer["thinnest"][0], "ThinnestSection");
    same_fields(&answer["mark"], "IndentMark");
    same_fields(&answer["correction"], "RoundCorrection");
    same_fields(&answer["better"][0], "BetterTest");
    same_fields(&answer["series"], "Series");
    same_fields(&answer["series"]["outlier"], "Outlier");
    same_fields(&answer["machine"], "Machine");
    same_fields(&answer["machine"]["limits"][0], "MachineLimit");
    same_fields(&answer["converted"][0], "ConvertedIndent");
}

#[test]
fn steel_types_have_the_fields_of_the_answers() {
    let ask = |name: &str| {
        let question = SteelQuestion { name: name.to_owned(), ..SteelQuestion::default() };
        plain(&steel(ENGLISH, &question).unwrap())
    };
    let answer = ask("EN24T");
    same_fields(&answer, "SteelAnswer");
    same_fields(&answer["condition"], "SteelCondition");
    same_fields(&answer["composition"], "SteelComposition");
    same_fields(&answer["composition"]["elements"][0], "SteelElement");
    same_fields(&answer["hardening"], "SteelHardening");
    same_fields(&answer["supplied"], "SteelSupplied");
    same_fields(&answer["as_quenched"], "SteelAsQuenched");
    same_fields(&answer["tempering"], "SteelTempering");
    same_fields(&answer["avoid"], "SteelAvoid");
    same_fields(&answer["working"], "SteelWorking");
    same_fields(&answer["sources"][0], "SteelSource");
    same_fields(&ask("H13")["hardening"]["preheat"][0], "TemperatureStep");
    same_fields(&ask("A2")["candidates"][0], "SteelCandidate");
    same_fields(&ask("17-4PH")["ages"][0], "SteelAge");
}

#[test]
fn jominy_types_have_the_fields_of_the_answers() {
    let question = JominyQuestion { steel: Some("4340".to_owned()), ..Default::default() };
    let answer = plain(&jominy(ENGLISH, &question).unwrap());
    same_fields(&answer, "JominyAnswer");
    same_fields(&answer["curve"][0], "JominyPoint");
    same_fields(&answer["ideal_diameter_mm"], "IdealDiameters");
    same_fields(&answer["outside"][0], "OutsideElement");
}

#[test]
fn unknown_types_have_the_fields_of_the_answers() {
    let ask = |spark: &str, oil: &str| UnknownQuestion {
        spark: Some(spark.to_owned()),
        oil: Some(oil.to_owned()),
        ..UnknownQuestion::default()
    };
    let answer = plain(&unknown(ENGLISH, &ask("forks", "50-55 HRC")).unwrap());
    same_fields(&answer, "UnknownAnswer");
    same_fields(&answer["carbon"], "UnknownCarbon");
    same_fields(&answer["families"][0], "UnknownFamily");
    same_fields(&answer["promise"], "UnknownPromise");
    same_fields(&answer["promise"]["oil"], "UnknownHardness");
    same_fields(&answer["quench"], "UnknownQuench");
    same_fields(&answer["avoid"][0], "UnknownUse");
    same_fields(&answer["next"], "UnknownNext");
    let clash = plain(&unknown(ENGLISH, &ask("bursts", "<35 HRC")).unwrap());
    same_fields(&clash, "UnknownAnswer");
    same_fields(&clash["refused"], "Refusal");
    same_fields(&clash["clashes"][0], "UnknownClash");
}

#[test]
fn heat_types_have_the_fields_of_the_answers() {
    let text = |text: &str| Some(text.to_owned());
    let question = HeatQuestion {
        steel: text("H13"),
        section: SectionInput {
            round: text("25mm"),
            length: text("80mm"),
            ..SectionInput::default()
        },
        quench: text("oil:6L@25C"),
        oven: vec!["790C=magnet".to_owned()],
        ..HeatQuestion::default()
    };
    let answer = plain(&heat(ENGLISH, &question).unwrap());
    same_fields(&answer, "HeatAnswer");
    same_fields(&answer["harden"], "HeatWindow");
    same_fields(&answer["preheat"][0], "TemperatureStep");
    same_fields(&answer["protection"], "HeatProtection");
    same_fields(&answer["part"], "HeatPart");
    same_fields(&answer["heat_through"], "HeatThrough");
    same_fields(&answer["hold"], "HeatHold");
    same_fields(&answer["hold"]["rules"][0], "HoldRule");
    same_fields(&answer["skin"], "HeatSkin");
    same_fields(&answer["quench"], "HeatQuench");
    same_fields(&answer["bath"], "HeatBath");
    same_fields(&answer["bath"]["flash"], "HeatFlash");
    same_fields(&answer["tank"], "HeatTank");
    same_fields(&answer["oven"], "HeatOven");
    same_fields(&answer["known_points"][0], "KnownPoint");
    same_fields(&answer["checklists"][0], "Checklist");
    let plain_steel = HeatQuestion { steel: text("4140"), ..HeatQuestion::default() };
    let answer = plain(&heat(ENGLISH, &plain_steel).unwrap());
    same_fields(&answer["harden"]["cross_check"], "HeatCrossCheck");
}

#[test]
fn reach_types_have_the_fields_of_the_answers() {
    let text = |text: &str| Some(text.to_owned());
    let question = ReachQuestion {
        steel: text("4140"),
        section: SectionInput { round: text("50mm"), ..SectionInput::default() },
        quench: text("oil"),
        target: text("45 HRC"),
        part: text("cold chisel"),
        ..ReachQuestion::default()
    };
    let answer = plain(&reach(ENGLISH, &question).unwrap());
    same_fields(&answer, "ReachAnswer");
    same_fields(&answer["section"], "ReachSection");
    same_fields(&answer["quench"], "ReachQuench");
    same_fields(&answer["quench"]["severity"], "ReachSpan");
    same_fields(&answer["positions"][0], "ReachPosition");
    same_fields(&answer["positions"][0]["jominy_mm"], "ReachSpan");
    same_fields(&answer["wanted"], "ReachWanted");
    same_fields(&answer["ways_out"][0], "ReachWay");
    same_fields(&answer["parts"][0], "ReachPart");
}

#[test]
fn table_and_source_types_have_the_fields_of_the_answers() {
    same_fields(&plain(&tables())[0], "TableListing");
    let table = plain(&table(ENGLISH, "astm-e140-t1").unwrap());
    same_fields(&table, "Table");
    same_fields(&table["rows"][0], "TableRow");
    same_fields(&plain(&sources(ENGLISH, None).unwrap())[0], "Source");
}

/// A question with every declared field is read; the fields that do not exist are refused by name.
#[test]
fn question_types_have_the_fields_of_the_questions() {
    for (interface, value) in [
        (
            "ConvertQuestion",
            serde_json::json!({ "text": "", "to": [], "material": null, "table": null, "units": "inch" }),
        ),
        (
            "FileQuestion",
            serde_json::json!({
                "set": [], "tolerance": null, "hand": null, "yesNo": true, "strokes": [], "proved": [],
                "conditions": {}, "prior": null, "target": null, "readings": [], "units": "metric",
            }),
        ),
        (
            "IndentQuestion",
            serde_json::json!({
                "kind": "vickers", "force": "30kgf", "ball": null, "scale": null, "sizes": [], "depth": null,
                "value": 640, "readings": [], "round": null, "bore": false, "sphere": false, "alongAxis": false,
                "thickness": null, "edge": null, "next": null, "mark": null, "material": null, "units": "inch",
            }),
        ),
        ("SteelQuestion", serde_json::json!({ "name": "4140", "units": "inch" })),
        (
            "JominyQuestion",
            serde_json::json!({ "steel": "4140", "composition": null, "units": "inch" }),
        ),
        (
            "HeatQuestion",
            serde_json::json!({
                "steel": "4140", "composition": null, "section": {}, "mass": "2kg", "quench": "oil", "at": null,
                "start": null, "protection": "foil", "oven": [], "units": "inch",
            }),
        ),
        (
            "ReachQuestion",
            serde_json::json!({
                "steel": "4140", "composition": null, "section": {}, "quench": "oil", "target": "50 HRC",
                "part": "cold chisel", "units": "inch",
            }),
        ),
        (
            "UnknownQuestion",
            serde_json::json!({
                "magnet": "sticks", "spark": null, "found": "bites", "skin": "", "oil": "50-55 HRC",
                "water": ">60 HRC", "snap": "fine", "units": "inch",
            }),
        ),
    ] {
        same_fields(&value, interface);
        match interface {
            "ConvertQuestion" => drop(serde_json::from_value::<ConvertQuestion>(value).unwrap()),
            "FileQuestion" => drop(serde_json::from_value::<FileQuestion>(value).unwrap()),
            "SteelQuestion" => drop(serde_json::from_value::<SteelQuestion>(value).unwrap()),
            "HeatQuestion" => drop(serde_json::from_value::<HeatQuestion>(value).unwrap()),
            "ReachQuestion" => drop(serde_json::from_value::<ReachQuestion>(value).unwrap()),
            "UnknownQuestion" => drop(serde_json::from_value::<UnknownQuestion>(value).unwrap()),
            "JominyQuestion" => drop(serde_json::from_value::<JominyQuestion>(value).unwrap()),
            _ => drop(serde_json::from_value::<IndentQuestion>(value).unwrap()),
        }
    }
    let section = serde_json::json!({
        "round": null, "tube": "40mm,20mm", "plate": null, "square": null, "hex": null, "flat": null,
        "length": "80mm",
    });
    same_fields(&section, "SectionInput");
    serde_json::from_value::<SectionInput>(section).unwrap();
    let nested = serde_json::json!({
        "strokes": [{ "file": 50, "outcome": "bites", "spot": 2 }],
        "proved": [{ "file": 50, "known": 48, "outcome": "bites" }],
        "readings": [{ "instrument": "comparison", "text": "53 HRC", "known": "50 HRC", "onKnown": "49 HRC" }],
        "conditions": { "skinGround": true, "edge": true, "finishDiffers": true, "carbideRich": true },
    });
    same_fields(&nested["strokes"][0], "Stroke");
    same_fields(&nested["proved"][0], "Proof");
    same_fields(&nested["readings"][0], "ReadingInput");
    same_fields(&nested["conditions"], "Conditions");
    serde_json::from_value::<FileQuestion>(nested).unwrap();
}

#[test]
fn tempering_types_have_the_fields_of_the_answers() {
    let question = TemperQuestion {
        steel: Some("4140".to_owned()),
        target: Some("45 HRC".to_owned()),
        at: Some("220C/2h".to_owned()),
        learn: vec!["53 HRC@220C/2h".to_owned()],
        ..TemperQuestion::default()
    };
    let answer = plain(&temper(ENGLISH, &question).unwrap());
    same_fields(&answer, "TemperAnswer");
    same_fields(&answer["hardness"], "AfterTemper");
    same_fields(&answer["plan"][0], "PlanStep");
    same_fields(&answer["curve"][0], "TemperCurvePoint");
    same_fields(&answer["learned"], "Learned");
    same_fields(&answer["learned"]["points"][0], "OwnPoint");
    same_fields(&answer["brittle"][0], "BrittleRange");
    let sheets = TemperQuestion { steel: Some("O1".to_owned()), ..question };
    let answer = plain(&temper(ENGLISH, &sheets).unwrap());
    same_fields(&answer["sheets"][0], "TemperSheet");
    let aged = TemperQuestion {
        steel: Some("17-4PH".to_owned()),
        at: Some("482C".to_owned()),
        ..TemperQuestion::default()
    };
    let answer = plain(&temper(ENGLISH, &aged).unwrap());
    same_fields(&answer["ages"][0], "AgeOption");
}

#[test]
fn next_step_types_have_the_fields_of_the_answers() {
    let question = NextQuestion {
        steel: Some("4140".to_owned()),
        evidence: FileQuestion {
            readings: vec![parse_reading(ENGLISH, "53 HRC").unwrap()],
            target: Some("44-46 HRC".to_owned()),
            ..FileQuestion::default()
        },
        done: vec!["205C/2h".to_owned()],
        ..NextQuestion::default()
    };
    let answer = plain(&next(ENGLISH, &question).unwrap());
    same_fields(&answer, "NextStepAnswer");
    same_fields(&answer["now"], "NextOdds");
    same_fields(&answer["options"][0], "NextOption");
    let temper = answer["options"].as_array().unwrap().iter().find(|one| one["action"] == "temper");
    same_fields(&temper.unwrap()["temper"], "AdvisedTemper");
    let asked = serde_json::json!({
        "steel": "4140", "composition": null, "evidence": {}, "stage": "tempered", "done": [], "learn": [],
        "oven": ["240C=tin"], "held": "1h", "section": {}, "quench": "oil", "noPrior": true, "atSize": true,
        "overheated": true, "hurried": true, "units": "inch",
    });
    same_fields(&asked, "NextQuestion");
    let read = serde_json::from_value::<NextQuestion>(asked).unwrap();
    assert_eq!(read.oven, ["240C=tin"]);
}

#[test]
fn claim_types_have_the_fields_of_the_answers() {
    let question = ClaimQuestion {
        claim: "HV 700 +-50".to_owned(),
        measured: vec![parse_reading(ENGLISH, "58 HRC").unwrap()],
        steel: Some("O1".to_owned()),
        ..ClaimQuestion::default()
    };
    let answer = plain(&claim(ENGLISH, &question).unwrap());
    same_fields(&answer, "ClaimAnswer");
    same_fields(&answer["claim"], "Claimed");
    same_fields(&answer["claim"]["notes"][0], "Note");
    same_fields(&answer["estimate"], "ClaimEstimate");
    same_fields(&answer["readings"][0], "ClaimReading");
    same_fields(&answer["doubt"][0], "Doubt");
    same_fields(&answer["settle"], "Settle");
    same_fields(&answer["ways"][0], "Settle");
    same_fields(&answer["achievable"][0], "Achievable");
    same_fields(&answer["risk"], "ClaimRisk");
    same_fields(&answer["paper"][0], "PaperFinding");
    let asked = serde_json::json!({
        "claim": "28-32 HRC", "measured": [], "files": {}, "steel": null, "rule": "simple", "place": "skin",
        "claimedPlace": "core", "units": "inch",
    });
    same_fields(&asked, "ClaimQuestion");
    serde_json::from_value::<ClaimQuestion>(asked).unwrap();
}

#[test]
fn counts_of_parts_have_the_fields_of_their_type() {
    let cards = include_bytes!("../../bench/tests/stored/cards-1.json");
    let parts = file::read(ENGLISH, cards).unwrap();
    same_fields(&plain(&file::counts(&parts)), "PartsCounts");
}
