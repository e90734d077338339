//! Hardness after tempering, against other programs, published tables and the laws it has to keep.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use std::collections::BTreeMap;

use biteband_steel::temper::Regression;
use biteband_steel::{Composition, Element};

mod laws;
mod learn;
mod plan;
mod published;
mod regression;
mod taught;

type Row = BTreeMap<String, String>;

/// A file of `tests/reference/tempering`.
fn reference(name: &str) -> Vec<Row> {
    let path = format!("{}/../../tests/reference/tempering/{name}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
    reader.deserialize().map(Result::unwrap).collect()
}

fn number(row: &Row, name: &str) -> f64 {
    row.get(name).unwrap().parse().unwrap()
}

/// The seven shares of a row.
fn composition(row: &Row) -> Composition {
    use Element::{C, Cr, Mn, Mo, Ni, Si, V};
    let shares = [C, Mn, Si, Ni, Cr, Mo, V]
        .map(|element| (element, number(row, &element.symbol().to_lowercase())));
    Composition::new(&shares).unwrap()
}

fn steel(shares: &[(Element, f64)]) -> Regression {
    Regression::new(&Composition::new(shares).unwrap()).unwrap()
}
