//! Laws that hold for every set of readings.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{
    Error, FileSet, FileTest, Group, Instrument, Level, Outcome, Prior, Readings, Target,
};
use proptest::prelude::*;

/// Readings, random, shared, key and width of the conversion.
type Row = (Vec<f64>, f64, f64, Option<(u8, f64)>);

fn rows() -> impl Strategy<Value = Vec<Row>> {
    let values = prop::collection::vec(45.0..60.0, 1..6);
    let conversion = prop::option::of((0_u8..2, 0.3..2.0));
    prop::collection::vec((values, 0.1..2.0, 0.0..2.0, conversion), 1..5)
}

fn group(row: &Row, shift: f64) -> Group {
    let values: Vec<f64> = row.0.iter().map(|value| value + shift).collect();
    let group = Group::new(Instrument::Other, &values, row.1, row.2).unwrap();
    match row.3 {
        Some((key, sd)) => group.with_conversion(key, sd).unwrap(),
        None => group,
    }
}

fn readings(rows: &[Row], shift: f64) -> Readings {
    let all = rows.iter().map(|row| group(row, shift));
    all.fold(Readings::new(), |readings, group| readings.with(group).unwrap())
}

fn same(values: &[f64], random: f64, shared: f64, slips: f64) -> Readings {
    let group = Group::new(Instrument::Other, values, random, shared).unwrap();
    Readings::new().with_slips(slips).unwrap().with(group).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn law_order_of_readings_and_groups_does_not_matter(rows in rows(), turn in 0_usize..6) {
        let mut turned = rows.clone();
        for row in &mut turned {
            let by = turn % row.0.len();
            row.0.rotate_left(by);
        }
        // Within a group the belief is the same to the last bit.
        let one = readings(&rows, 0.0).belief(Prior::flat()).unwrap();
        prop_assert_eq!(&one, &readings(&turned, 0.0).belief(Prior::flat()).unwrap());
        turned.reverse();
        let other = readings(&turned, 0.0).belief(Prior::flat()).unwrap();
        for (one, other) in one.density().zip(other.density()) {
            prop_assert!((one.1 - other.1).abs() < 1e-12);
        }
    }

    #[test]
    fn law_readings_shifted_alike_shift_the_belief(rows in rows(), shift in -8.0..4.0) {
        let still = readings(&rows, 0.0).belief(Prior::flat()).unwrap();
        let moved = readings(&rows, shift).belief(Prior::flat()).unwrap();
        for share in [0.1, 0.5, 0.9] {
            // Contradictory groups have two humps, and between them a small share of a chance is a long way.
            let at = still.quantile(share) + shift;
            prop_assert!((moved.probability_below(at) - share).abs() < 0.006, "{share} {at}");
        }
    }

    #[test]
    fn law_identical_readings_never_beat_what_they_share(
        value in 30.0..60.0, random in 0.1..2.0, shared in 0.0..3.0, count in 1_usize..31,
    ) {
        let values = vec![value; count];
        let belief = same(&values, random, shared, 0.0).belief(Prior::flat()).unwrap();
        let number = f64::from(u32::try_from(count).unwrap());
        let expected = (random * random / number + shared * shared + 0.25).sqrt();
        prop_assert!((belief.sd() / expected - 1.0).abs() < 2e-3, "{} {expected}", belief.sd());
        prop_assert!(belief.sd() > (shared * shared + 0.25).sqrt() * 0.999);
    }

    /// Without slips the width depends on the number of readings alone, so one more never widens it; with slips `simulation` looks at the average.
    #[test]
    fn law_one_more_reading_never_widens(
        values in prop::collection::vec(50.0..53.0, 1..6), more in 50.0..53.0,
        random in 0.3..2.0, shared in 0.0..2.0,
    ) {
        let width = |values: &[f64]| {
            let belief = same(values, random, shared, 0.0).belief(Prior::flat()).unwrap();
            belief.interval(Level::P95).width()
        };
        let now = width(&values);
        let mut then = values.clone();
        then.push(more);
        // Where the middle lies on the grid is worth a few thousandths.
        prop_assert!(width(&then) <= now + 0.01, "{} {now}", width(&then));
    }

    #[test]
    fn law_readings_before_or_after_strokes_are_one_belief(
        rows in rows(), outcomes in prop::collection::vec(0_usize..3, 6),
    ) {
        let set = FileSet::trade();
        let mut after = FileTest::new(set.clone());
        let mut before = after.clone().with_readings(readings(&rows, 0.0));
        for ((file, _), outcome) in set.files().zip(outcomes) {
            before = before.with_stroke(file, Outcome::ALL[outcome]).unwrap();
            after = after.with_stroke(file, Outcome::ALL[outcome]).unwrap();
        }
        let files = after.belief().unwrap();
        let after = after.with_readings(readings(&rows, 0.0)).belief().unwrap();
        prop_assert_eq!(&before.belief().unwrap(), &after);
        // Files and readings share no bias, so their beliefs multiply.
        let product = files.combined(&readings(&rows, 0.0).belief(Prior::flat()).unwrap()).unwrap();
        for share in [0.1, 0.5, 0.9] {
            let at = after.quantile(share);
            prop_assert!((product.probability_below(at) - share).abs() < 0.01);
        }
    }

    #[test]
    fn law_the_next_stroke_is_fair_with_readings(rows in rows()) {
        let test = FileTest::default().with_readings(readings(&rows, 0.0));
        let found = test.assess(Some(Target::between(50.0, 54.0).unwrap())).unwrap();
        for trial in found.advice().trials().iter().take(2) {
            let mut mean = 0.0;
            for outcome in Outcome::ALL {
                let then = test.clone().with_stroke(trial.file(), outcome).unwrap();
                mean += trial.chances().of(outcome) * then.belief().unwrap().mean();
            }
            prop_assert!((mean - found.belief().mean()).abs() < 1e-9);
        }
    }

    #[test]
    fn never_panics_whatever_is_read(
        values in prop::collection::vec(prop_oneof![10.0..75.0, any::<f64>()], 0..33),
        sds in (prop_oneof![0.0..6.0, any::<f64>()], prop_oneof![0.0..11.0, any::<f64>()]),
        conversion in prop::option::of((any::<u8>(), prop_oneof![0.3..10.0, any::<f64>()])),
        rest in (prop_oneof![0.0..4.0, any::<f64>()], prop_oneof![0.0..0.06, any::<f64>()]),
        second in 15.0..70.0, on_known in prop::collection::vec(10.0..75.0, 0..3),
    ) {
        let run = || -> Result<(), Error> {
            let plain = Readings::new();
            let readings = plain.clone().with_spot(rest.0).unwrap_or(plain);
            let mut readings = readings.clone().with_slips(rest.1).unwrap_or(readings);
            readings = readings.with(Group::new(Instrument::Other, &[second], 0.5, 0.5)?)?;
            if let Ok(mut group) = Group::new(Instrument::Leeb, &values, sds.0, sds.1) {
                if let Some((key, sd)) = conversion {
                    group = group.clone().with_conversion(key, sd).unwrap_or(group);
                }
                readings = readings.with(group)?;
            }
            if let Ok(group) = Group::against(second, sds.1, &on_known, &values, sds.0) {
                readings = readings.with(group)?;
            }
            let file = FileSet::trade().find(50.0)?;
            let test = FileTest::default().with_stroke(file, Outcome::Bite)?.with_readings(readings);
            let found = test.assess(None)?;
            assert!(found.belief().median().is_finite());
            assert!(found.clashes().iter().all(|clash| (0.0..0.01).contains(&clash.surprise())));
            Ok(())
        };
        let _ = run();
    }
}

#[test]
fn nothing_changes_without_readings() {
    let set = FileSet::trade();
    let mut test = FileTest::new(set.clone());
    for (file, grade) in set.files() {
        let outcome = if grade < 57.0 { Outcome::Skate } else { Outcome::Bite };
        test = test.with_stroke(file, outcome).unwrap();
    }
    let target = Target::between(56.0, 60.0).ok();
    let empty = test.clone().with_readings(Readings::new().with_spot(2.0).unwrap());
    assert_eq!(test.assess(target).unwrap(), empty.assess(target).unwrap());
    assert!(empty.clashes(Level::P95).unwrap().is_empty());
}
