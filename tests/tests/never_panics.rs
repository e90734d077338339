//! Whatever is typed, there is an answer or a refusal that says something.

use biteband_bench::Refusal;
use biteband_bench::answer::{
    ClaimQuestion, ConvertQuestion, FileOutcome, FileQuestion, HeatQuestion, IndentQuestion,
    JominyQuestion, NextQuestion, ReachQuestion, ReadingInput, SteelQuestion, StrokeInput,
    TemperQuestion, UnknownQuestion, assess, claim, convert, find_steels, heat, indent, jominy,
    next, parse_coupons, parse_prior, parse_proofs, parse_reading, parse_readings, parse_strokes,
    parse_target, reach, read_reading, sources, steel, steel_targets, table, temper, unknown,
};
use biteband_bench::composition::{own_grade, parse_composition};
use biteband_bench::format::Units;
use biteband_bench::measure;
use biteband_bench::section::SectionInput;
use biteband_bench::state::list_of_grades;
use biteband_bench::words::Language;
use proptest::prelude::*;

const ENGLISH: Language = Language::English;

/// Anything at all, and text that is nearly right.
fn text() -> impl Strategy<Value = String> {
    let nearly = "[-+±0-9.,:;@#/ ()<>≥~a-zA-Z]{0,40}";
    let reading = "(min |max |about )?-?[0-9]{1,5}([.,][0-9]{1,3})?( ?(-|to|\\+-|\\.\\.) ?[0-9]{1,4})? ?(HRC|HV|HBW|HRB|MPa|ksi|Rc|HV ?10|HBW 10/3000|HR|shore)?";
    let strokes = "([0-9]{1,3}(#[0-9]{1,3})?:[bskx](,[bskx]){0,4} ?){0,6}";
    let proofs = "([0-9]{1,2}@[0-9]{1,3}:[bskx],?){0,5}";
    prop_oneof![any::<String>(), nearly, reading, strokes, proofs]
}

/// Text that is nearly a reading of an instrument.
fn instrument_text() -> impl Strategy<Value = String> {
    let nearly = "((bench|portable-leeb|ultrasonic|comparison|other|HRC): ?)?([0-9]{1,3}([.,][0-9]{1,2})?[,; ]{0,2}){0,5} ?(HRC|HV ?10|HBW 10/3000|HRB|HRA|HK|HV\\(UCI\\)|HLD|MPa)?( ?(\\+-|±|u=) ?[0-9]{0,3}(,[0-9])?)?(; ?[0-9]{1,3}){0,3}";
    prop_oneof![text(), nearly]
}

fn says_something(refusal: &Refusal) -> Result<(), TestCaseError> {
    prop_assert!(!refusal.code.is_empty());
    prop_assert!(!refusal.message.trim().is_empty(), "{refusal:?}");
    Ok(())
}

proptest! {
    // Each case looks a dozen times for the nearest of 600 names.
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_a_steel_a_composition_or_refused(
        text in text(),
        name in "((AISI|EN|BS|DIN|W\\.Nr\\.) ?)?[0-9A-Za-z.,/ -]{0,12}( steel)?",
        composition in "((C|Mn|Cr|Fe|x)( ?[=:<] ?)?[0-9]{0,2}([.,][0-9]{0,3})?(-[0-9.]{0,4})?[,; %]{0,2}){0,5}",
    ) {
        for given in [&text, &name, &composition] {
            let question = SteelQuestion { name: given.clone(), ..SteelQuestion::default() };
            match steel(ENGLISH, &question) {
                Ok(card) => prop_assert!(!card.verdict.is_empty() && !card.sources.is_empty()),
                Err(refusal) => says_something(&refusal)?,
            }
            if let Err(refusal) = find_steels(ENGLISH, &question) { says_something(&refusal)?; }
            if let Err(refusal) = steel_targets(ENGLISH, Units::Inch, given) { says_something(&refusal)?; }
            if let Err(refusal) = parse_composition(ENGLISH, given) { says_something(&refusal)?; }
            if let Err(refusal) = own_grade(ENGLISH, given, "C=0.4") { says_something(&refusal)?; }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_converts_or_is_refused(text in text(), to in proptest::option::of(text()), name in proptest::option::of(text())) {
        let question = ConvertQuestion {
            text,
            to: to.into_iter().collect(),
            table: name,
            ..ConvertQuestion::default()
        };
        match convert(ENGLISH, &question) {
            Ok(answer) => {
                prop_assert!(!answer.results.is_empty());
                prop_assert!(answer.results.iter().all(|r| !r.shown.is_empty() && r.half_width.is_finite()));
                for refusal in &answer.refusals {
                    says_something(refusal)?;
                }
            }
            Err(refusal) => says_something(&refusal)?,
        }
    }

    #[test]
    fn any_text_of_an_instrument_is_read_or_refused(text in instrument_text(), known in proptest::option::of(instrument_text()), on_known in proptest::option::of(instrument_text())) {
        match parse_reading(ENGLISH, &text) {
            Ok(reading) => {
                let own = ReadingInput { known, on_known, ..reading.clone() };
                for reading in [reading, own] {
                    match read_reading(ENGLISH, &reading) {
                        Ok(answer) => {
                            prop_assert!(!answer.hrc.is_empty() && answer.hrc.iter().all(|hrc| (15.0..=70.0).contains(hrc)));
                            prop_assert!(answer.u_random >= 0.1 && answer.u_shared.is_finite());
                        }
                        Err(refusal) => says_something(&refusal)?,
                    }
                }
            }
            Err(refusal) => says_something(&refusal)?,
        }
    }

    #[test]
    fn any_text_of_a_file_test_is_read_or_refused(text in text()) {
        if let Err(refusal) = parse_strokes(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = parse_proofs(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = parse_prior(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = parse_target(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = table(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = sources(ENGLISH, Some(&text)) { says_something(&refusal)?; }
        if let Err(refusal) = parse_readings(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = measure::length(ENGLISH, &text) { says_something(&refusal)?; }
        if let Err(refusal) = measure::force(ENGLISH, &text) { says_something(&refusal)?; }
        if let Some(grades) = list_of_grades(&text) { prop_assert!(!grades.is_empty()); }
    }
}

/// Numbers that a caller can hand over where a person cannot type them.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![any::<f64>(), 20.0..80.0_f64, Just(f64::NAN), Just(1e308), Just(50.0), Just(55.0)]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_file_question_is_answered_or_refused(
        set in proptest::collection::vec(number(), 0..4),
        strokes in proptest::collection::vec((number(), text(), any::<Option<u8>>()), 0..3),
        good in "([45][05]:[bsk](,[bsk]){0,3} ){0,4}",
        proofs in text(),
        target in proptest::option::of(text()),
        prior in proptest::option::of((number(), number())),
        tolerance in proptest::option::of(number()),
        readings in proptest::collection::vec(instrument_text(), 0..3),
    ) {
        let mut all: Vec<StrokeInput> = parse_strokes(ENGLISH, &good).unwrap_or_default();
        all.extend(strokes.into_iter().map(|(file, outcome, spot)| StrokeInput { file, outcome, spot }));
        let question = FileQuestion {
            set,
            strokes: all,
            proved: parse_proofs(ENGLISH, &proofs).unwrap_or_default(),
            target,
            prior,
            tolerance,
            readings: readings.iter().filter_map(|text| parse_reading(ENGLISH, text).ok()).collect(),
            ..FileQuestion::default()
        };
        match assess(ENGLISH, &question) {
            Ok(FileOutcome::Answered(answer)) => {
                prop_assert!(!answer.verdict.is_empty() && !answer.next.say.is_empty());
                prop_assert!(answer.band.low.is_none_or(f64::is_finite));
            }
            Ok(FileOutcome::Refused(refused)) => says_something(&refused.refused)?,
            Err(refusal) => says_something(&refusal)?,
        }
    }
}

/// A length, a force or a name that is mostly right.
fn field() -> impl Strategy<Value = Option<String>> {
    let length = "-?[0-9]{0,5}([.,/-][0-9]{1,4})?(/[0-9]{1,2})? ?(mm|um|in|\"|cm|)";
    let force = "[0-9]{1,4}([.,][0-9]{1,3})? ?(kgf|N|kN|gf|)";
    let name =
        "vickers|brinell|knoop|rockwell|HRC|HRB|HR30N|HR15T|HRF|HRE|HV|Rm|steel|cast-iron|lead-tin";
    prop_oneof![
        Just(None),
        length.prop_map(Some),
        force.prop_map(Some),
        name.prop_map(Some),
        text().prop_map(Some)
    ]
}

/// A length that is right, of any size a mark or a part may have.
fn right() -> impl Strategy<Value = String> {
    prop_oneof!["0[.][0-9]{1,4}mm", "[1-9][0-9]?([.][0-9])?mm", "0[.]0[0-9]{1,3}in"]
}

fn answers_or_says(question: &IndentQuestion) -> Result<(), TestCaseError> {
    match indent(ENGLISH, question) {
        Ok(answer) => {
            prop_assert!(answer.value.is_finite() && answer.corrected.is_none_or(f64::is_finite));
            prop_assert!(!answer.designation.is_empty() && !answer.verdict.is_empty());
            prop_assert_eq!(answer.valid, answer.limits.iter().all(|limit| limit.holds));
            prop_assert!(
                answer
                    .limits
                    .iter()
                    .all(|limit| !limit.text.is_empty() && !limit.source.is_empty())
            );
            prop_assert!(answer.better.is_empty() || !answer.valid);
        }
        Err(refusal) => says_something(&refusal)?,
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 800, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_jominy_question_is_answered_or_refused(
        steel in proptest::option::of(text()),
        anything in text(),
        carbon in "0[.][0-9]{1,2}",
        shares in "(,(Mn|Si|Ni|Cr|Mo|V|Cu|B|W)=[0-3][.][0-9]{1,3}(-[0-3][.][0-9])?){0,6}",
        nearly in any::<bool>(),
    ) {
        let composition = if nearly { format!("C={carbon}{shares}") } else { anything };
        for question in [
            JominyQuestion { steel, ..JominyQuestion::default() },
            JominyQuestion { composition: Some(composition), ..JominyQuestion::default() },
        ] {
            match jominy(ENGLISH, &question) {
                Ok(answer) => {
                    prop_assert!(answer.curve.len() > 10 && !answer.basis.is_empty());
                    let falls = |pair: &[_]| match pair {
                        [first, next] => first >= next,
                        _ => true,
                    };
                    let highest: Vec<Option<f64>> = answer.curve.iter().map(|p| p.high).collect();
                    prop_assert!(highest.windows(2).all(falls));
                }
                Err(refusal) => says_something(&refusal)?,
            }
        }
    }

    #[test]
    fn any_bar_is_sorted_or_refused(
        magnet in proptest::option::of("sticks|weak|none||.{0,6}"),
        spark in proptest::option::of("none|straw|forks|bursts|spears|plain|bushy|.{0,6}"),
        found in proptest::option::of(prop_oneof![text(), "bites|skates|[1-6][0-9]-6[0-9] HRC"]),
        skin in proptest::option::of("same|hard|soft"),
        oil in proptest::option::of(prop_oneof![text(), "[<>]?[1-6][0-9]([.,][0-9])?( HRC)?"]),
        water in proptest::option::of("[<>]?[1-6][0-9]( HRC)?|[1-5][0-9]-6[0-9] HRC"),
        snap in proptest::option::of("bent|torn|fine|coarse"),
        coupons in proptest::collection::vec(text(), 0..3),
    ) {
        let question =
            UnknownQuestion { magnet, spark, found, skin, oil, water, snap, units: Units::Inch };
        match unknown(ENGLISH, &question) {
            Ok(answer) => {
                prop_assert!(!answer.verdict.is_empty() && answer.cautions.len() > 3);
                prop_assert_eq!(answer.refused.is_some(), !answer.clashes.is_empty());
                prop_assert_eq!(answer.next.is_none(), answer.settled.is_some());
                prop_assert!(answer.refused.is_none() || answer.uses.is_empty());
                prop_assert!(answer.avoid.iter().any(|one| one.purpose == "safety"));
            }
            Err(refusal) => says_something(&refusal)?,
        }
        if let Err(refusal) = parse_coupons(ENGLISH, &coupons) {
            says_something(&refusal)?;
        }
    }

    #[test]
    fn any_heat_question_is_answered_or_refused(
        steel in "4140|O1|D2|M2|T1|1018|420|W1|12L14|EN36|17-4PH|[0-9A-Z]{1,5}",
        composition in proptest::option::of("C=0[.][0-9]{1,2},Mn=[0-2][.][0-9](,Cr=[0-5][.][0-9])?"),
        shape in 0..7_usize,
        sizes in "[0-9]{1,3}([.][0-9])?(mm|in)?",
        length in field(), mass in proptest::option::of("[0-9]{1,4}([.][0-9])?(kg|lb|)"),
        quench in proptest::option::of(
            "(oil|vegetable oil|used oil|water|brine|air|salt|polymer)(:(mild|good))?(:[0-9]{1,4}L(@[0-9]{1,3}C)?)?(:flash=[0-9]{1,3}C)?"
        ),
        at in proptest::option::of("[0-9]{3,4}C"),
        start in proptest::option::of("-?[0-9]{1,4}(C|F)"),
        protection in proptest::option::of("open|coated|foil|charcoal|atmosphere|paint"),
        oven in proptest::collection::vec("[0-9]{2,4}C=([0-9]{2,4}C|tin|zinc|magnet|lead)", 0..3),
        anything in proptest::option::of(text()),
    ) {
        let size = Some(sizes.clone());
        let pair = Some(format!("{sizes},10mm"));
        let section = match shape {
            0 => SectionInput { round: size, length, ..SectionInput::default() },
            1 => SectionInput { tube: pair, length, ..SectionInput::default() },
            2 => SectionInput { plate: size, length, ..SectionInput::default() },
            3 => SectionInput { square: size, length, ..SectionInput::default() },
            4 => SectionInput { hex: size, length, ..SectionInput::default() },
            5 => SectionInput { flat: pair, length, ..SectionInput::default() },
            _ => SectionInput::default(),
        };
        let steel = composition.is_none().then_some(steel);
        let good = HeatQuestion {
            steel, composition, section, mass, quench, at, start, protection, oven, units: Units::Inch,
        };
        let odd = HeatQuestion {
            quench: anything.clone(), at: anything.clone(), oven: anything.into_iter().collect(),
            ..good.clone()
        };
        for question in [good, odd] {
            match heat(ENGLISH, &question) {
                Ok(answer) => {
                    prop_assert!(!answer.verdict.is_empty() && answer.checklists.len() == 4);
                    prop_assert!(answer.heat_through_min.is_none_or(|minutes| minutes > 0.0 && minutes.is_finite()));
                    let (low, high) = (answer.harden.low_c, answer.harden.high_c);
                    prop_assert!(low.zip(high).is_none_or(|(low, high)| low <= high));
                    if let Some(bath) = answer.bath {
                        prop_assert!(!bath.text.is_empty());
                        let stops = answer.verdict.starts_with("Stop:");
                        prop_assert_eq!(stops, bath.verdict.is_some_and(|v| v != "enough") || bath.limit_c.is_some() && bath.needed_l.is_none());
                    }
                }
                Err(refusal) => says_something(&refusal)?,
            }
        }
    }

    #[test]
    fn any_indent_question_is_answered_or_refused(
        kind in text(),
        named in "vickers|brinell|knoop|rockwell",
        fields in proptest::collection::vec(field(), 10),
        sizes in proptest::collection::vec(text(), 0..3),
        value in proptest::option::of(number()),
        readings in proptest::collection::vec(number(), 0..4),
        flags in any::<(bool, bool, bool, bool)>(),
    ) {
        let mut fields = fields.into_iter();
        let mut next = || fields.next().flatten();
        let question = IndentQuestion {
            kind: if flags.3 { kind } else { named },
            force: next(), ball: next(), scale: next(), depth: next(), round: next(), thickness: next(),
            edge: next(), next: next(), mark: next(), material: next(),
            sizes, value, readings,
            bore: flags.0, sphere: flags.1, along_axis: flags.2,
            ..IndentQuestion::default()
        };
        answers_or_says(&question)?;
    }

    /// Nearly everything is right here, so that most questions reach the rules.
    #[test]
    fn indent_questions_that_make_sense_are_answered_or_refused(
        test in prop_oneof![
            "vickers:(30|10|1|0[.]5)kgf", "knoop:(1|0[.]5)kgf", "brinell:(3000|500|187[.]5)kgf",
            "rockwell:(HRC|HRA|HRB|HRF|HR15N|HR30T)",
        ],
        size in right(), value in proptest::option::of(-10.0..1200.0_f64),
        readings in proptest::collection::vec(20.0..70.0_f64, 0..3),
        round in proptest::option::of(right()), thickness in proptest::option::of(right()),
        edge in proptest::option::of(right()),
        bore in any::<bool>(), sphere in any::<bool>(), by_readings in any::<bool>(),
        material in proptest::option::of("steel|cast-iron|copper|light-metal|lead-tin"),
    ) {
        let (kind, rest) = test.split_once(':').unwrap_or((&test, ""));
        let rockwell = kind == "rockwell";
        let text = Some(rest.to_owned());
        let by_readings = by_readings && !readings.is_empty();
        let by_value = value.is_some() && !by_readings;
        let by_size = !by_readings && !by_value;
        let shaped = round.is_some();
        let question = IndentQuestion {
            kind: kind.to_owned(),
            force: text.clone().filter(|_| !rockwell),
            scale: text.filter(|_| rockwell),
            ball: (kind == "brinell").then(|| "10mm".to_owned()),
            depth: (by_size && rockwell).then(|| size.clone()),
            sizes: if by_size && !rockwell { vec![size] } else { Vec::new() },
            value: value.filter(|_| by_value),
            readings: if by_readings { readings } else { Vec::new() },
            round, thickness, edge, material,
            bore: bore && shaped,
            sphere: sphere && shaped,
            ..IndentQuestion::default()
        };
        answers_or_says(&question)?;
    }
}

proptest! {
    // Each case tries a hundred sizes, baths and grades for its ways out.
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_reach_question_is_answered_or_refused(
        steel in "4140|O1|D2|M2|W1|1018|1075|420|45|12L14|EN36|17-4PH|304|[0-9A-Z]{1,5}",
        composition in proptest::option::of("C=0[.][0-9]{1,2},Mn=[0-2][.][0-9](,Cr=[0-5][.][0-9])?"),
        shape in 0..7_usize,
        sizes in "[0-9]{1,3}([.,][0-9])?(mm|in)?",
        length in field(),
        quench in "(oil|fast oil|vegetable oil|used oil|water|brine|air|salt|polymer)(:(still|mild|good|violent))?",
        target in proptest::option::of("[0-9]{2,3}(-[0-9]{2,3})? ?(HRC|HV min|HBW min|HRB|)"),
        part in proptest::option::of("cold chisel|drill bushing|punch|spring|anvil"),
        anything in proptest::collection::vec(text(), 6),
        odd in 0..7_usize,
    ) {
        let size = Some(sizes.clone());
        let pair = Some(format!("{sizes},10mm"));
        let section = match shape {
            0 => SectionInput { round: size, length, ..SectionInput::default() },
            1 => SectionInput { tube: pair, length, ..SectionInput::default() },
            2 => SectionInput { plate: size, length, ..SectionInput::default() },
            3 => SectionInput { square: size, length, ..SectionInput::default() },
            4 => SectionInput { hex: size, length, ..SectionInput::default() },
            5 => SectionInput { flat: pair, length, ..SectionInput::default() },
            _ => SectionInput::default(),
        };
        let steel = composition.is_none().then_some(steel);
        let good = ReachQuestion {
            steel, composition, section, quench: Some(quench), target, part, units: Units::Inch,
        };
        let mut strange = good.clone();
        let mut texts = anything.into_iter();
        let text = texts.next();
        match odd {
            0 => (strange.steel, strange.composition) = (text, None),
            1 => (strange.steel, strange.composition) = (None, text),
            2 => strange.quench = text,
            3 => strange.target = text,
            4 => strange.part = text,
            5 => strange.section = SectionInput { round: text, ..SectionInput::default() },
            _ => strange.section = SectionInput { tube: text, length: texts.next(), ..SectionInput::default() },
        }
        for question in [good, strange] {
            match reach(ENGLISH, &question) {
                Ok(answer) => {
                    prop_assert!(!answer.verdict.is_empty() && !answer.basis.is_empty() && !answer.sources.is_empty());
                    for place in &answer.positions {
                        let (low, high) = (place.low, place.high);
                        prop_assert!(low.zip(high).is_none_or(|(low, high)| low <= high));
                        prop_assert!(place.chance.is_none_or(|chance| (0.0..=1.0).contains(&chance)));
                    }
                    for way in &answer.ways_out {
                        prop_assert!(!way.text.is_empty());
                        prop_assert!(way.sure_mm.is_none_or(|mm| mm < answer.section.ruling_mm));
                        prop_assert!(way.sure_mm.zip(way.likely_mm).is_none_or(|(sure, likely)| sure <= likely));
                    }
                }
                Err(refusal) => says_something(&refusal)?,
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_temper_question_is_answered_or_refused(
        steel in "4140|O1|H13|1095|17-4PH|1018|D3|S7|M2|[0-9A-Z]{1,5}",
        composition in proptest::option::of("C=[01][.][0-9]{1,2},Mn=[0-2][.][0-9](,Cr=[0-5][.][0-9])?"),
        at in proptest::option::of("[0-9]{2,3}(C|F)(/[0-9]{1,2}(h|min))?( x[0-9])?"),
        held in proptest::option::of("[0-9]{1,3}(h|min|s)?"),
        done in proptest::collection::vec("[0-9]{2,3}C/[1-9]h", 0..3),
        target in proptest::option::of("[0-9]{2}(-[0-9]{2})? ?(HRC|HV|HBW|MPa)?( min| max)?"),
        learn in proptest::collection::vec("[0-9]{2}( HRC)?@[0-9]{3}C/[1-9]h", 0..4),
        oven in proptest::collection::vec("[0-9]{2,3}C=([0-9]{2,3}C|tin|magnet)", 0..3),
        anything in proptest::option::of(text()),
        own in any::<bool>(),
    ) {
        let question = TemperQuestion {
            steel: Some(steel.clone()).filter(|_| !own),
            composition: composition.clone().filter(|_| own),
            at: at.clone(),
            held: held.clone(),
            then: anything.clone().into_iter().collect(),
            done: done.clone(),
            as_quenched: anything.clone(),
            target: target.clone(),
            learn: learn.clone(),
            oven: oven.clone(),
            ..TemperQuestion::default()
        };
        let plain = TemperQuestion { then: Vec::new(), as_quenched: None, ..question.clone() };
        for question in [&question, &plain] {
            match temper(ENGLISH, question) {
                Ok(answer) => {
                    prop_assert!(!answer.verdict.is_empty() && !answer.cautions.is_empty());
                    for step in &answer.plan {
                        prop_assert!(step.expect.low <= step.expect.median && step.expect.median <= step.expect.high);
                    }
                    // Steps of a plan only go up.
                    prop_assert!(answer.plan.windows(2).all(|two| two[0].celsius < two[1].celsius));
                }
                Err(refusal) => says_something(&refusal)?,
            }
        }
        let question = NextQuestion {
            steel: Some(steel),
            evidence: FileQuestion { target, ..FileQuestion::default() },
            done,
            learn,
            held,
            stage: anything,
            ..NextQuestion::default()
        };
        for question in [&question, &NextQuestion { stage: None, ..question.clone() }] {
            match next(ENGLISH, question) {
                Ok(answer) => prop_assert!(!answer.verdict.is_empty() && !answer.options.is_empty()),
                Err(refusal) => says_something(&refusal)?,
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_claim_is_answered_or_refused(
        paper in text(),
        second in proptest::option::of(text()),
        readings in prop::collection::vec(instrument_text(), 0..4),
        strokes in prop::collection::vec((0_u8..6, 0_u8..3), 0..4),
        rule in proptest::option::of("(simple|guarded(:[0-9.,%]{0,5})?|[0-9.]{0,4} ?U|3sigma|[a-z]{0,6})"),
        steel in proptest::option::of("(4140|EN24[R-Z]|O1|8620|1018|17-4PH|D2|[0-9A-Za-z]{0,6})"),
        core in any::<bool>(),
    ) {
        let claimed = match second {
            Some(second) => format!("{paper} / {second}"),
            None => paper,
        };
        let stroke = |(file, outcome): (u8, u8)| StrokeInput {
            file: 40.0 + 5.0 * f64::from(file),
            outcome: ["bites", "slight", "skates"][usize::from(outcome)].to_owned(),
            spot: None,
        };
        let question = ClaimQuestion {
            claim: claimed,
            measured: readings
                .into_iter()
                .map(|text| ReadingInput { text, ..ReadingInput::default() })
                .collect(),
            files: FileQuestion {
                strokes: strokes.into_iter().map(stroke).collect(),
                ..FileQuestion::default()
            },
            steel,
            rule,
            place: Some(if core { "core" } else { "skin" }.to_owned()),
            ..ClaimQuestion::default()
        };
        match claim(ENGLISH, &question) {
            Ok(answer) => {
                prop_assert!(!answer.verdict_text.is_empty() && !answer.settle.text.is_empty());
                let chances: Vec<f64> =
                    [answer.under, answer.inside, answer.over].into_iter().flatten().collect();
                prop_assert!(chances.is_empty() || (chances.iter().sum::<f64>() - 1.0).abs() < 1e-9);
                let shares: f64 = answer.doubt.iter().map(|one| one.share).sum();
                prop_assert!(answer.doubt.is_empty() || (shares - 1.0).abs() < 1e-9);
                prop_assert!(answer.doubt.iter().all(|one| one.u.is_finite() && one.u >= 0.0));
                prop_assert!(answer.achievable.iter().all(|one| (0.0..=1.0).contains(&one.chance)));
                let wrong = answer.paper.iter().any(|one| one.wrong);
                prop_assert!(!wrong || answer.verdict != "agrees");
            }
            Err(refusal) => says_something(&refusal)?,
        }
    }
}
