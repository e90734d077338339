//! What one update of the belief and one whole assessment cost.

use std::hint::black_box;

use biteband_evidence::{
    FileSet, FileTest, Group, Hand, Instrument, Outcome, Proof, Readings, Stroke, Target,
};
use criterion::{Criterion, criterion_group, criterion_main};

/// Six files with three strokes each, practised; with more spots, the strokes go round them.
fn six_files(spots: u8, proofs: bool) -> Option<FileTest> {
    let set = FileSet::trade();
    let mut test = FileTest::new(set.clone()).with_hand(Hand::Practised);
    for (file, grade) in set.files() {
        for repeat in 0..3_u8 {
            let outcome = if grade < 57.0 { Outcome::Skate } else { Outcome::Bite };
            test = test.with(Stroke::new(file, outcome).on_spot(repeat % spots)).ok()?;
        }
        if proofs {
            for (known, outcome) in [(grade - 2.0, Outcome::Bite), (grade + 2.0, Outcome::Skate)] {
                test = test.with_proof(Proof::new(file, known, outcome).ok()?).ok()?;
            }
        }
    }
    Some(test)
}

fn updates(c: &mut Criterion) {
    let target = Target::between(58.0, 60.0).ok();
    for (name, spots, proofs) in
        [("one spot", 1, false), ("one spot, files proved", 1, true), ("two spots", 2, false)]
    {
        let Some(test) = six_files(spots, proofs) else { continue };
        c.bench_function(&format!("belief, {name}"), |b| b.iter(|| black_box(&test).belief()));
        c.bench_function(&format!("assessment with the next stroke, {name}"), |b| {
            b.iter(|| black_box(&test).assess(target));
        });
    }
    let group = Group::new(Instrument::Leeb, &[57.0, 58.5, 58.0], 0.8, 1.6);
    let readings = group.and_then(|group| Readings::new().with(group.with_conversion(0, 1.0)?));
    if let (Some(test), Ok(readings)) = (six_files(1, false), readings) {
        let test = test.with_readings(readings);
        c.bench_function("belief, one spot and three readings", |b| {
            b.iter(|| black_box(&test).belief());
        });
        c.bench_function("assessment with the next stroke, one spot and three readings", |b| {
            b.iter(|| black_box(&test).assess(target));
        });
    }
}

criterion_group!(benches, updates);
criterion_main!(benches);
