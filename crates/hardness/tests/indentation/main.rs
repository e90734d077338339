//! Indentations against worked examples, printed tables, SciPy and the laws that must hold for any number.
#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a helper that fails is a test that fails"
)]

mod checks;
mod curvature;
mod laws;
mod machine;
mod messages;
mod place;
mod series;

use std::fs;
use std::path::Path;

use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres};

fn mm(value: f64) -> Millimetres {
    Millimetres::new(value).unwrap()
}

fn kgf(value: f64) -> KilogramsForce {
    KilogramsForce::new(value).unwrap()
}

fn newtons(value: f64) -> KilogramsForce {
    KilogramsForce::from_newtons(value).unwrap()
}

fn ball(value: f64) -> BallMillimetres {
    BallMillimetres::new(value).unwrap()
}

/// Rows of a reference file without its heading; quotes keep a comma inside a field.
fn reference(name: &str) -> Vec<Vec<String>> {
    rows(&format!("../../tests/reference/indentation/{name}")).split_off(1)
}

fn rows(path: &str) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    let text = fs::read_to_string(path).unwrap();
    text.lines().filter(|line| !line.starts_with('#')).map(fields).collect()
}

fn fields(line: &str) -> Vec<String> {
    let (mut fields, mut quoted) = (vec![String::new()], false);
    for letter in line.chars() {
        match letter {
            '"' => quoted = !quoted,
            ',' if !quoted => fields.push(String::new()),
            other => fields.last_mut().unwrap().push(other),
        }
    }
    fields
}

fn near(value: f64, expected: f64, within: f64, what: &str) {
    assert!((value - expected).abs() <= within, "{what}: {value}, not {expected} +- {within}");
}
