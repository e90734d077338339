//! What a prediction of the hardness after tempering costs.

use std::hint::black_box;

use biteband_steel::Grade;
use biteband_steel::reach::Steel;
use biteband_steel::temper::{Aim, How, Regression, Temper, Tempering, plan};
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
    let Ok(ready) = Tempering::of(&Steel::Grade(grade)) else { return };
    let aim = Aim { low: Some(44.0), high: Some(46.0) };
    let how = How { done: &[], minutes: 120.0, times: 1, over: None };
    c.bench_function("temper: a plan for a hardness", |b| {
        b.iter(|| plan(&ready, black_box(aim), how));
    });
}

criterion_group!(benches, predictions);
criterion_main!(benches);
