//! What one conversion and one reading of a designation cost.

use std::hint::black_box;

use biteband_hardness::{Axis, Choice, Reading, Route, Scale, convert, designation};
use criterion::{Criterion, criterion_group, criterion_main};

const HRC: Axis = Axis::Hardness(Scale::Hrc);
const HV: Axis = Axis::Hardness(Scale::Hv);

/// Values spread over the hardened range, none of them on a printed row.
fn spread(low: f64, high: f64) -> Vec<f64> {
    (0..1024_u32).map(|i| low + (high - low) * (f64::from(i) + 0.37) / 1024.0).collect()
}

fn conversions(c: &mut Criterion) {
    let readings = |axis: Axis, values: &[f64]| -> Vec<Reading> {
        values.iter().filter_map(|&v| Reading::new(axis, v).ok()).collect()
    };
    let forward = readings(HRC, &spread(20.0, 68.0));
    let backward = readings(HV, &spread(238.0, 940.0));
    let mut at = 0_usize;
    let mut next = move |of: &[Reading]| {
        at = (at + 389) % of.len();
        of.get(at).copied()
    };
    c.bench_function("HRC to HV between rows", |b| {
        b.iter(|| next(&forward).map(|r| convert(black_box(r), HV, Choice::STEEL)));
    });
    c.bench_function("HV to HRC between rows", |b| {
        b.iter(|| next(&backward).map(|r| convert(black_box(r), HRC, Choice::STEEL)));
    });
    c.bench_function("HRC to HV and back", |b| {
        b.iter(|| {
            let reading = next(&forward)?;
            let there = convert(black_box(reading), HV, Choice::STEEL).ok()?;
            let back = Reading::new(HV, black_box(there.at.value)).ok()?;
            convert(back, HRC, Choice::STEEL).ok()
        });
    });
}

/// Many numbers on one route, as a column of a CSV file is.
fn routes(c: &mut Criterion) {
    let (Ok(there), Ok(back)) =
        (Route::new(HRC, HV, Choice::STEEL), Route::new(HV, HRC, Choice::STEEL))
    else {
        return;
    };
    let values = spread(20.0, 68.0);
    let mut at = 0_usize;
    let mut next = move || {
        at = (at + 389) % values.len();
        values.get(at).copied()
    };
    c.bench_function("route HRC to HV and back", |b| {
        b.iter(|| {
            let found = there.convert(black_box(next()?)).ok()?;
            back.convert(black_box(found.at.value)).ok()
        });
    });
    // What a library for curves gives back is the number alone.
    let values = spread(20.0, 68.0);
    let mut at = 0_usize;
    let mut next = move || {
        at = (at + 389) % values.len();
        values.get(at).copied()
    };
    c.bench_function("route HRC to HV and back, numbers", |b| {
        b.iter(|| {
            let found = there.number(black_box(next()?)).ok()?;
            back.number(black_box(found)).ok()
        });
    });
}

fn reading_text(c: &mut Criterion) {
    for text in ["52,5 HRC", "350 HBW 10/3000", "58 to 62 HRC"] {
        c.bench_function(&format!("parse {text}"), |b| {
            b.iter(|| designation::parse(black_box(text)).is_ok());
        });
    }
}

criterion_group!(benches, conversions, routes, reading_text);
criterion_main!(benches);
