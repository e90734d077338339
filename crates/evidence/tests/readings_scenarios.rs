//! Readings beside files as a shop has them, and readings that disagree.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{
    Clash, FileSet, FileTest, Group, Instrument, Level, Outcome, Prior, Readings, SURPRISE_BELOW,
    Shape, Suspect, Target, Unit, Witness, Worth,
};

fn group(instrument: Instrument, values: &[f64]) -> Group {
    let (random, shared) = instrument.usual().in_hrc(50.0, 1.0);
    Group::new(instrument, values, random, shared).unwrap()
}

fn bench(values: &[f64]) -> Group {
    group(Instrument::RockwellVerified, values)
}

fn leeb(values: &[f64]) -> Group {
    group(Instrument::Leeb, values)
}

fn readings(groups: &[Group]) -> Readings {
    groups.iter().cloned().fold(Readings::new(), |all, group| all.with(group).unwrap())
}

/// One pass of the trade set, softest file first.
fn files(letters: &str) -> FileTest {
    let set = FileSet::trade();
    let mut test = FileTest::new(set.clone());
    for ((file, _), letter) in set.files().zip(letters.chars()) {
        let outcome = match letter {
            'b' => Outcome::Bite,
            's' => Outcome::Slight,
            _ => Outcome::Skate,
        };
        test = test.with_stroke(file, outcome).unwrap();
    }
    test
}

fn clashes(test: &FileTest) -> Vec<Clash> {
    test.clashes(Level::P95).unwrap()
}

#[test]
fn a_reading_closes_the_open_end_of_the_files() {
    for (letters, value) in [("kkkkkk", 66.0), ("bbbbbb", 28.0)] {
        let test = files(letters);
        let open = test.belief().unwrap().band(Level::P95);
        assert!(open.open_low() || open.open_high());
        let closed = test.with_readings(readings(&[bench(&[value])])).belief().unwrap();
        let Shape::Between(low, high) = closed.band(Level::P95).shape() else {
            panic!("{letters}: open")
        };
        assert!(low < value && value < high && high - low < 3.2, "{letters}: {low} {high}");
    }
}

#[test]
fn a_bench_reading_leaves_the_files_little_to_say() {
    let target = Some(Target::between(50.0, 54.0).unwrap());
    let alone = files("kkkbbb").assess(target).unwrap();
    assert_eq!(alone.advice().worth(), Worth::Stroke);
    let test = files("kkkbbb").with_readings(readings(&[bench(&[52.0, 52.3, 51.8])]));
    let found = test.assess(target).unwrap();
    assert!(found.clashes().is_empty() && found.contradictions().is_empty());
    assert!(found.odds().unwrap().inside() > 0.98);
    assert_eq!(found.advice().worth(), Worth::TooLittle);
}

#[test]
fn readings_alone_are_an_assessment_too() {
    let test = FileTest::default().with_readings(readings(&[leeb(&[47.0, 48.5, 48.0])]));
    let found = test.assess(None).unwrap();
    assert!(!found.band().open_low() && !found.band().open_high());
    // The base of the axis differs, which is worth the slip rate.
    let alone = test.readings().belief(Prior::flat()).unwrap();
    assert!((alone.median() - found.belief().median()).abs() < 0.02);
}

#[test]
fn one_mistyped_reading_is_named_and_does_not_carry_the_belief_away() {
    // 52 typed as 25.
    let test =
        FileTest::default().with_readings(readings(&[bench(&[52.0, 52.4, 25.0, 51.8, 52.1])]));
    let belief = test.belief().unwrap();
    assert!((belief.median() - 52.1).abs() < 0.1, "{}", belief.median());
    let found = clashes(&test);
    let clash = found.first().unwrap();
    assert_eq!(clash.softer(), Witness::Reading { group: 0, reading: 2 });
    assert_eq!(clash.harder(), Witness::Group(0));
    assert_eq!(clash.suspects().first(), Some(&Suspect::Mistyped));
    let without = clash.without_softer();
    assert!(without.low().unwrap() > 50.5 && without.high().unwrap() < 53.7);
    assert_eq!(test.set_aside(clash.softer()).readings().groups()[0].values().len(), 4);
    assert!(clashes(&test.set_aside(clash.softer())).is_empty());
}

#[test]
fn of_two_readings_apart_both_are_named() {
    let test = FileTest::default().with_readings(readings(&[bench(&[52.0, 57.0])]));
    let found = clashes(&test);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].softer(), Witness::Reading { group: 0, reading: 0 });
    assert_eq!(found[0].harder(), Witness::Reading { group: 0, reading: 1 });
}

#[test]
fn readings_against_files_name_the_side_and_its_causes() {
    let soft_files = files("kbbbbb").with_readings(readings(&[bench(&[56.0, 56.4])]));
    let found = clashes(&soft_files);
    assert_eq!(found.len(), 1);
    assert_eq!((found[0].harder(), found[0].softer()), (Witness::Group(0), Witness::Files));
    assert_eq!(found[0].suspects()[0], Suspect::SoftSkin);
    assert!(found[0].surprise() < SURPRISE_BELOW);
    // Either witness alone speaks for itself.
    assert!(found[0].without_harder().high().unwrap() < 50.0);
    assert!(found[0].without_softer().low().unwrap() > 54.0);

    let hard_files = files("kkkkkk").with_readings(readings(&[leeb(&[50.0, 51.0, 50.5])]));
    let found = clashes(&hard_files);
    assert_eq!((found[0].harder(), found[0].softer()), (Witness::Files, Witness::Group(0)));
    assert_eq!(found[0].suspects()[..2], [Suspect::WornFiles, Suspect::HardSkin]);
    assert!(found[0].without_softer().open_high());
}

#[test]
fn two_instruments_that_disagree_are_named() {
    let test = FileTest::default().with_readings(readings(&[
        bench(&[52.0, 52.3]),
        leeb(&[52.5, 51.0]),
        bench(&[57.0, 57.4]),
    ]));
    let found = clashes(&test);
    let worst = found.first().unwrap();
    assert_eq!((worst.harder(), worst.softer()), (Witness::Group(2), Witness::Group(0)));
    assert_eq!(worst.suspects()[0], Suspect::InstrumentOff);
    // A Leeb tester 5 HRC away may still be right: its bias alone is 1.6 HRC.
    assert_eq!(found.len(), 1);
}

/// By hand: two single readings d apart with own variances a and b have the ratio `exp(-d^2 / (2 (a + b)))`; a shared conversion drops out of it.
#[test]
fn surprise_is_the_ratio_of_two_normal_laws() {
    let (random, shared) = (0.6, 0.7);
    let surprise = |keys: [Option<u8>; 2]| {
        let one = |value: f64, key: Option<u8>| {
            let group = Group::new(Instrument::Other, &[value], random, shared).unwrap();
            key.map_or(group.clone(), |key| group.with_conversion(key, 1.0).unwrap())
        };
        let all = readings(&[one(50.0, keys[0]), one(56.0, keys[1])]).with_slips(0.0).unwrap();
        clashes(&FileTest::default().with_readings(all)).first().map(Clash::surprise)
    };
    let own = random * random + shared * shared + 0.25;
    let expected = (-36.0 / (4.0 * own)).exp();
    for keys in [[None, None], [Some(1), Some(1)]] {
        // The greatest of a product on the grid lies up to 0.125 HRC off its place.
        assert!((surprise(keys).unwrap() / expected - 1.0).abs() < 0.01, "{keys:?}");
    }
    // Conversions of their own excuse the distance: variances of 2.1 each leave 0.0138.
    assert_eq!(surprise([Some(1), Some(2)]), None);
}

#[test]
fn a_comparison_takes_over_the_known_piece() {
    // The tester reads 3 HRC low throughout; the block is 50.0 HRC to 0.4 HRC.
    let group = Group::against(50.0, 0.4, &[46.8, 47.2, 47.0, 47.0], &[51.0, 51.4], 0.3).unwrap();
    assert_eq!(group.instrument(), Instrument::Comparison);
    let belief = readings(&[group]).with_slips(0.0).unwrap().belief(Prior::flat()).unwrap();
    assert!((belief.mean() - 54.2).abs() < 1e-3);
    let sd = (0.09_f64 / 2.0 + 0.16 + 0.09 / 4.0 + 0.25).sqrt();
    assert!((belief.sd() - sd).abs() < 1e-3);
}

/// Totals of the two parts against the published practice they were taken from; the figures for the instrument classes are assumed.
#[test]
fn usual_uncertainties_add_up_to_their_totals() {
    use Instrument as I;
    for (instrument, total, unit) in [
        (I::RockwellVerified, 0.5, Unit::Points),
        (I::RockwellUnverified, 0.8, Unit::Points),
        (I::RockwellBall, 1.0, Unit::Points),
        (I::Vickers, 2.0, Unit::Percent),
        (I::VickersLight, 3.0, Unit::Percent),
        (I::Brinell, 1.5, Unit::Percent),
        (I::Leeb, 1.8, Unit::Hrc),
        (I::Ultrasonic, 4.0, Unit::Percent),
        (I::BrinellScope, 2.5, Unit::Percent),
        (I::Other, 2.0, Unit::Hrc),
    ] {
        let usual = instrument.usual();
        assert_eq!(usual.unit, unit);
        assert!((usual.random.hypot(usual.shared) - total).abs() < 0.02, "{instrument:?}");
    }
    assert_eq!(I::ALL.iter().filter(|one| one.usual().shared <= 0.0).count(), 1);
    // A diameter read to 0.05 mm on a ball of 10 mm: the derivative of the Brinell number, here as a difference.
    let brinell = |d: f64| 1.0 / (10.0 - (100.0 - d * d).sqrt());
    for (diameter, percent) in [(5.0, 1.2), (3.5, 1.7), (2.5, 2.3)] {
        let half = 0.05 / 3.0_f64.sqrt();
        let share =
            (brinell(diameter - half) - brinell(diameter + half)) / (2.0 * brinell(diameter));
        assert!((100.0 * share - percent).abs() < 0.06, "{diameter}: {share}");
    }
}
