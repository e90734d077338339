//! Every source that an answer names has its row.
#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use biteband_quantity::{Celsius, Kilograms, MassPercent, Minutes};
use biteband_steel::Cited;
use biteband_steel::bath::Bath;
use biteband_steel::furnace::{KnownPoint, Protection, decarburised, heat_through, hold};
use biteband_steel::quench::{Medium, Movement, severity};
use biteband_steel::section::{Section, Shape, equivalent};

/// What section, bath and furnace cite.
fn cited() -> Vec<Cited> {
    let round = Section::new(Shape::Round { diameter: 25.0 }, None).unwrap();
    let oil = severity(Medium::Oil, Movement::Mild).unwrap();
    let (heat, shop) = (Celsius::new(850.0).unwrap(), Celsius::new(20.0).unwrap());
    let bath = Bath::new(Medium::Oil, 10.0, 20.0, None).unwrap();
    let carbon = MassPercent::new(0.6).unwrap();
    let time = Minutes::new(30.0).unwrap();
    let mut all = vec![
        oil.cited,
        severity(Medium::VegetableOil, Movement::Mild).unwrap().cited,
        equivalent(&round, &oil).unwrap().cited,
        bath.quench(Kilograms::new(1.0).unwrap(), heat).unwrap().cited,
        heat_through(&round, heat, shop, Protection::Open).unwrap().cited,
        decarburised(heat, time, carbon, Protection::Open).unwrap().cited,
    ];
    all.extend(hold(&round, 17.0).rules.map(|rule| rule.cited));
    all.extend(KnownPoint::ALL.iter().map(|point| point.cited()));
    all
}

#[test]
fn every_key_has_its_row() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/methods.csv");
    let text = fs::read_to_string(path).unwrap();
    let keys: Vec<&str> = text.lines().skip(1).filter_map(|line| line.split(',').next()).collect();
    let once: BTreeSet<&str> = keys.iter().copied().collect();
    assert_eq!(once.len(), keys.len(), "a key stands twice");
    for cited in cited() {
        assert!(!cited.sources.is_empty());
        for key in cited.sources {
            assert!(once.contains(key), "{key} has no row");
        }
    }
}
