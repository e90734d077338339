//! Our own solver of heat conduction against exact series, closed forms and finite elements.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a helper that fails is a test that fails")]

use std::fs;
use std::path::Path;

use biteband_steel::conduction::{Body, Cooling, half_time};

const CLOSE: f64 = 0.002;

fn rows(name: &str) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference/hardenability");
    let text = fs::read_to_string(path.join(name)).unwrap();
    text.lines().skip(1).map(fields).collect()
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

/// The coolings whose product a row is about, each with its half size in the row's L.
fn parts(shape: &str, biot: f64) -> Vec<(Cooling, f64)> {
    let make = |body, size: f64| (Cooling::new(body, biot * size, 1e-4), size);
    let slab = || make(Body::Slab, 1.0);
    let head = |start: &str| shape.starts_with(start);
    if head("slab") {
        vec![slab()]
    } else if head("cylinder") {
        vec![make(Body::Cylinder, 1.0)]
    } else if head("sphere") {
        vec![make(Body::Sphere, 1.0)]
    } else if head("square bar") {
        vec![slab(), slab()]
    } else if head("cube") {
        vec![slab(), slab(), slab()]
    } else if head("hexagon") {
        vec![make(Body::Hexagon, 1.0)]
    } else if head("short cylinder, length = diameter") {
        vec![make(Body::Cylinder, 1.0), slab()]
    } else if head("short cylinder, length = 2") {
        vec![make(Body::Cylinder, 1.0), make(Body::Slab, 2.0)]
    } else {
        panic!("no such shape: {shape}")
    }
}

/// Source: exact series with 200 roots (SciPy), products of them, and for the hexagon finite elements on
/// a thirty-degree wedge with 40 divisions; worked out apart from this code.
#[test]
fn all_628_values_of_the_series() {
    let rows = rows("heat-conduction-checks.csv");
    assert_eq!(rows.len(), 628);
    let mut made: Option<(String, Vec<(Cooling, f64)>)> = None;
    for row in &rows {
        let key = format!("{} {}", row[0], row[1]);
        if made.as_ref().is_none_or(|(last, _)| *last != key) {
            made = Some((key.clone(), parts(&row[0], row[1].parse().unwrap())));
        }
        let (_, parts) = made.as_ref().unwrap();
        let fourier: f64 = row[2].parse().unwrap();
        let expected: f64 = row[6].parse().unwrap();
        let place = match row[3].as_str() {
            "centre" => 0.0,
            "corner" if row[0].starts_with("hexagon") => 2.0 / 3.0_f64.sqrt(),
            "flat" | "corner" => 1.0,
            number => number.parse().unwrap(),
        };
        let share: f64 = (parts.iter())
            .map(|(cooling, size)| cooling.at(place, fourier / size / size).unwrap_or(0.0))
            .product();
        let off = (share - expected).abs();
        assert!(off <= CLOSE, "{key} at {place}, Fo {fourier}: {share} for {expected}");
        if row[0].contains("theta=0.5") {
            let half = parts[0].0.half_time(place).unwrap();
            assert!((half / fourier - 1.0).abs() < 0.005, "{key} {place}: {half} for {fourier}");
        }
    }
}

/// Source: closed form with the complementary error function. Each row is taken on a slab so thick that
/// its far side has not yet heard of the liquid.
#[test]
fn the_half_space() {
    for row in rows("heat-semi-infinite-checks.csv") {
        let [depth, gone, expected] = [0, 1, 2].map(|i| row[i].parse::<f64>().unwrap());
        let biot = (gone / 0.2).max(depth / 0.6);
        let slab = Cooling::new(Body::Slab, biot, 0.01);
        let share = slab.at(1.0 - depth / biot, (gone / biot).powi(2)).unwrap();
        assert!((share - expected).abs() <= CLOSE, "{depth} {gone}: {share} for {expected}");
    }
}

/// A thin tube with a dry bore is half of a plate, one flooded on both sides a whole plate; a bore that
/// shrinks to nothing leaves a round.
#[test]
fn tubes_have_plates_and_rounds_as_their_ends() {
    let half = |body, biot, place| Cooling::new(body, biot, 0.4).half_time(place).unwrap();
    let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 0.005, "{a} for {b}");
    for biot in [0.1, 1.0, 10.0] {
        let plate = half(Body::Slab, biot, 0.0);
        near(half(Body::Hollow { bore: 1000.0, flooded: false }, biot, 0.0), plate);
        near(half(Body::Hollow { bore: 1000.0, flooded: true }, 2.0 * biot, 0.5), plate / 4.0);
        near(
            half(Body::Hollow { bore: 0.001, flooded: false }, biot, 0.0),
            half(Body::Cylinder, biot, 0.0),
        );
    }
}

/// Products keep their order: every body more makes the middle cool sooner.
#[test]
fn a_cut_more_cools_sooner() {
    let slab = Cooling::new(Body::Slab, 1.0, 0.4);
    let all = [(&slab, 0.0, 1.0); 3];
    let times: Vec<f64> = (1..=3).map(|count| half_time(&all[..count]).unwrap()).collect();
    assert!(times[0] > times[1] && times[1] > times[2]);
}

#[test]
fn any_number_ends() {
    for bad in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e-300, 1e300] {
        for body in [Body::Slab, Body::Hexagon, Body::Hollow { bore: bad, flooded: true }] {
            assert!(Cooling::new(body, bad, bad).end() > 0.0);
        }
        assert!(Cooling::new(Body::Slab, 1.0, 0.4).at(0.5, bad).is_none_or(|share| share <= 1.0));
    }
}
