//! What a prediction of the hardness after tempering costs.

use std::hint::black_box;

use biteband_steel::Grade;
use biteband_steel::temper::{Regression, Temper};
use criterion::{Criterion, criterion_group, criterion_main};

fn predictions(c: &mut Criterion) {
    let Some(grade) = Grade::by_key("4140") else { return };
    let limits = grade.limits();
    let Ok(steel) = Regression::for_limits(&limits) else { return };
    let Ok(temper) = Temper::new(430.0, 120.0) else { return };
    c.bench_function("temper: a steel made ready", |b| {
        b.iter(|| Regression::for_limits(black_box(&limits)));
    });
    c.bench_function("temper: one hardness", |b| {
        b.iter(|| steel.hrc(black_box(&[temper])));
    });
    c.bench_function("temper: hardness, slope and spread", |b| {
        b.iter(|| steel.point(black_box(&[temper])));
    });
    c.bench_function("temper: the temperature for a hardness", |b| {
        b.iter(|| steel.celsius_for(black_box(45.0), 120.0));
    });
}

criterion_group!(benches, predictions);
criterion_main!(benches);
