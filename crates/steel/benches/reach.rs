//! What a full answer on a section costs: the steel and the bath made ready, the hardness from the skin to the
//! middle, and the ways out.

use std::hint::black_box;

use biteband_steel::Grade;
use biteband_steel::quench::{Medium, Movement};
use biteband_steel::reach::{Error, Prepared, Quench, Steel, Wanted, ways_out};
use biteband_steel::section::{Place, Section, Shape};
use criterion::{Criterion, criterion_group, criterion_main};

const SHAPES: [(Shape, Option<f64>); 9] = [
    (Shape::Round { diameter: 50.0 }, None),
    (Shape::Round { diameter: 50.0 }, Some(60.0)),
    (Shape::Tube { outer: 80.0, inner: 30.0 }, Some(120.0)),
    (Shape::Plate { thickness: 40.0 }, None),
    (Shape::Square { side: 50.0 }, Some(100.0)),
    (Shape::Hexagon { across_flats: 50.0 }, Some(100.0)),
    (Shape::Hexagon { across_flats: 300.0 }, None),
    (Shape::Flat { width: 100.0, thickness: 50.0 }, Some(150.0)),
    (Shape::Flat { width: 60.0, thickness: 12.0 }, None),
];

/// Everything, as one question asks for it.
fn full(section: Section, grade: &'static Grade) -> Result<usize, Error> {
    let steel = Prepared::new(Steel::Grade(grade))?;
    let oil = Quench::new(section, Medium::Oil, Movement::Mild)?;
    let found = steel.reach(&oil)?;
    let ways = ways_out(&steel, &oil, Wanted { hrc: 50.0, place: Place::Middle })?;
    Ok(found.positions.len() + ways.len())
}

fn answers(c: &mut Criterion) {
    let Some(grade) = Grade::by_key("4140") else { return };
    for (shape, length) in SHAPES {
        let Ok(section) = Section::new(shape, length) else { return };
        let name = format!("{} {:.0} mm, length {length:?}", shape.key(), section.ruling().mm);
        c.bench_function(&format!("full answer, {name}"), |b| {
            b.iter(|| full(black_box(section), grade));
        });
    }
}

criterion_group!(benches, answers);
criterion_main!(benches);
