//! What the bar's place of a section, and the time to heat it through, cost.

use std::hint::black_box;

use biteband_quantity::Celsius;
use biteband_steel::furnace::{Protection, heat_through};
use biteband_steel::quench::{Medium, Movement, severity};
use biteband_steel::section::{Section, Shape, equivalent};
use criterion::{Criterion, criterion_group, criterion_main};

const SHAPES: [(Shape, Option<f64>); 9] = [
    (Shape::Round { diameter: 50.0 }, None),
    (Shape::Round { diameter: 50.0 }, Some(60.0)),
    (Shape::Tube { outer: 60.0, inner: 30.0 }, Some(80.0)),
    (Shape::Plate { thickness: 25.0 }, None),
    (Shape::Square { side: 40.0 }, Some(100.0)),
    (Shape::Hexagon { across_flats: 8.0 }, Some(100.0)),
    (Shape::Hexagon { across_flats: 50.0 }, Some(100.0)),
    (Shape::Hexagon { across_flats: 300.0 }, None),
    (Shape::Flat { width: 80.0, thickness: 20.0 }, Some(150.0)),
];

fn sections(c: &mut Criterion) {
    let Ok(oil) = severity(Medium::Oil, Movement::Mild) else { return };
    let (Ok(furnace), Ok(shop)) = (Celsius::new(850.0), Celsius::new(20.0)) else { return };
    for (shape, length) in SHAPES {
        let Ok(section) = Section::new(shape, length) else { return };
        let name = format!("{} {:.0} mm", shape.key(), section.ruling().mm);
        c.bench_function(&format!("bar's place, {name}, length {length:?}"), |b| {
            b.iter(|| equivalent(black_box(&section), &oil));
        });
        c.bench_function(&format!("heat through, {name}, length {length:?}"), |b| {
            b.iter(|| heat_through(black_box(&section), furnace, shop, Protection::Open));
        });
    }
}

criterion_group!(benches, sections);
criterion_main!(benches);
