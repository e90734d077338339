// Written by `cargo xtask tables` from crates/steel/data/severities.csv; edit that file, not this.

use super::{Medium, Movement};

pub(super) static PRINTED: &[(Medium, Movement, f64, f64)] = &[
    (Medium::Water, Movement::Still, 0.9, 1.0),
    (Medium::Water, Movement::Mild, 1.0, 1.1),
    (Medium::Water, Movement::Moderate, 1.2, 1.3),
    (Medium::Water, Movement::Good, 1.4, 1.5),
    (Medium::Water, Movement::Strong, 1.6, 2.0),
    (Medium::Water, Movement::Violent, 4.0, 4.0),
    (Medium::Brine, Movement::Still, 2.0, 2.0),
    (Medium::Brine, Movement::Mild, 2.0, 2.2),
    (Medium::Brine, Movement::Violent, 5.0, 5.0),
    (Medium::Oil, Movement::Still, 0.25, 0.3),
    (Medium::Oil, Movement::Mild, 0.3, 0.35),
    (Medium::Oil, Movement::Moderate, 0.35, 0.4),
    (Medium::Oil, Movement::Good, 0.4, 0.5),
    (Medium::Oil, Movement::Strong, 0.5, 0.8),
    (Medium::Oil, Movement::Violent, 0.8, 1.1),
    (Medium::VegetableOil, Movement::Still, 0.3, 0.45),
    (Medium::VegetableOil, Movement::Mild, 0.3, 0.45),
    (Medium::VegetableOil, Movement::Moderate, 0.3, 0.45),
    (Medium::VegetableOil, Movement::Good, 0.3, 0.45),
    (Medium::VegetableOil, Movement::Strong, 0.3, 0.45),
    (Medium::VegetableOil, Movement::Violent, 0.3, 0.45),
    (Medium::Air, Movement::Still, 0.02, 0.02),
    (Medium::Air, Movement::Strong, 0.05, 0.05),
];
