// Written by `cargo xtask tables` from crates/evidence/data/families.csv, observations.csv and purposes.csv; edit those files, not this.

use super::clue::{Fracture, Magnet, Skin, Spark};
use super::family::{Family, Fit, Found, Heat, Kind, Purpose, Quenched, Row};

pub(super) static FAMILIES: &[Family] = &[
    Family { kind: Kind::LowCarbon, prior: 0.18, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.05, 0.3), oil: 7.0, water: 4.0 }, found: Found { share: 0.05, hard: (30.0, 8.0), soft: (10.0, 8.0) } },
    Family { kind: Kind::MediumCarbon, prior: 0.22, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.3, 0.6), oil: 5.0, water: 2.0 }, found: Found { share: 0.35, hard: (52.0, 6.0), soft: (18.0, 7.0) } },
    Family { kind: Kind::HighCarbon, prior: 0.07, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.6, 1.1), oil: 5.0, water: 2.0 }, found: Found { share: 0.4, hard: (55.0, 7.0), soft: (20.0, 7.0) } },
    Family { kind: Kind::LowAlloy, prior: 0.17, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.28, 0.5), oil: 1.5, water: 1.0 }, found: Found { share: 0.5, hard: (32.0, 5.0), soft: (18.0, 6.0) } },
    Family { kind: Kind::Spring, prior: 0.09, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.48, 0.68), oil: 1.5, water: 1.0 }, found: Found { share: 0.7, hard: (45.0, 4.0), soft: (22.0, 6.0) } },
    Family { kind: Kind::OilTool, prior: 0.05, heat: Heat::Carbon, quenched: Quenched::Carbon { carbon: (0.65, 1.1), oil: 1.5, water: 1.0 }, found: Found { share: 0.4, hard: (60.0, 3.0), soft: (15.0, 6.0) } },
    Family { kind: Kind::AirTool, prior: 0.03, heat: Heat::Own, quenched: Quenched::Fixed { mean: 48.0, sd: 8.0 }, found: Found { share: 0.4, hard: (59.0, 3.0), soft: (18.0, 6.0) } },
    Family { kind: Kind::HotWork, prior: 0.02, heat: Heat::Own, quenched: Quenched::Fixed { mean: 41.0, sd: 8.0 }, found: Found { share: 0.6, hard: (47.0, 4.0), soft: (15.0, 6.0) } },
    Family { kind: Kind::Shock, prior: 0.02, heat: Heat::Own, quenched: Quenched::Fixed { mean: 53.0, sd: 6.0 }, found: Found { share: 0.5, hard: (55.0, 3.0), soft: (18.0, 6.0) } },
    Family { kind: Kind::HighSpeed, prior: 0.02, heat: Heat::Own, quenched: Quenched::Fixed { mean: 35.0, sd: 10.0 }, found: Found { share: 0.7, hard: (64.0, 2.0), soft: (22.0, 5.0) } },
    Family { kind: Kind::MartensiticStainless, prior: 0.02, heat: Heat::Own, quenched: Quenched::Fixed { mean: 38.0, sd: 9.0 }, found: Found { share: 0.4, hard: (52.0, 6.0), soft: (18.0, 7.0) } },
    Family { kind: Kind::AusteniticStainless, prior: 0.03, heat: Heat::None, quenched: Quenched::Fixed { mean: 10.0, sd: 7.0 }, found: Found { share: 0.1, hard: (28.0, 6.0), soft: (8.0, 6.0) } },
    Family { kind: Kind::PhStainless, prior: 0.01, heat: Heat::None, quenched: Quenched::Fixed { mean: 33.0, sd: 3.0 }, found: Found { share: 0.5, hard: (41.0, 3.0), soft: (33.0, 3.0) } },
    Family { kind: Kind::Manganese, prior: 0.01, heat: Heat::None, quenched: Quenched::Fixed { mean: 16.0, sd: 5.0 }, found: Found { share: 0.5, hard: (45.0, 6.0), soft: (18.0, 4.0) } },
    Family { kind: Kind::CastIron, prior: 0.05, heat: Heat::None, quenched: Quenched::Fixed { mean: 53.0, sd: 8.0 }, found: Found { share: 0.1, hard: (50.0, 5.0), soft: (15.0, 6.0) } },
    Family { kind: Kind::Other, prior: 0.01, heat: Heat::None, quenched: Quenched::Fixed { mean: 40.0, sd: 20.0 }, found: Found { share: 0.5, hard: (40.0, 20.0), soft: (20.0, 15.0) } },
];

pub(super) static MAGNETS: &[Row<Magnet>] = &[
    (Magnet::Sticks, [0.98, 0.98, 0.98, 0.98, 0.98, 0.98, 0.97, 0.97, 0.98, 0.97, 0.95, 0.03, 0.9, 0.02, 0.97, 0.6]),
    (Magnet::Weak, [0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.02, 0.02, 0.01, 0.02, 0.04, 0.32, 0.09, 0.08, 0.02, 0.15]),
    (Magnet::None, [0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.01, 0.65, 0.01, 0.9, 0.01, 0.25]),
];

pub(super) static SPARKS: &[Row<Spark>] = &[
    (Spark::None, [0.02, 0.01, 0.01, 0.01, 0.01, 0.02, 0.14, 0.04, 0.03, 0.34, 0.06, 0.34, 0.28, 0.02, 0.12, 0.2]),
    (Spark::Straw, [0.68, 0.14, 0.02, 0.12, 0.04, 0.02, 0.04, 0.12, 0.08, 0.02, 0.16, 0.16, 0.18, 0.06, 0.02, 0.14]),
    (Spark::Forks, [0.2, 0.62, 0.2, 0.5, 0.46, 0.2, 0.14, 0.2, 0.3, 0.03, 0.22, 0.05, 0.08, 0.26, 0.03, 0.16]),
    (Spark::Bursts, [0.02, 0.17, 0.71, 0.12, 0.4, 0.66, 0.14, 0.03, 0.1, 0.02, 0.08, 0.01, 0.01, 0.48, 0.08, 0.12]),
    (Spark::Spears, [0.02, 0.03, 0.02, 0.21, 0.06, 0.06, 0.3, 0.5, 0.4, 0.48, 0.12, 0.06, 0.08, 0.04, 0.03, 0.14]),
    (Spark::Plain, [0.05, 0.02, 0.01, 0.03, 0.02, 0.02, 0.1, 0.1, 0.07, 0.06, 0.34, 0.37, 0.36, 0.12, 0.01, 0.14]),
    (Spark::Bushy, [0.01, 0.01, 0.03, 0.01, 0.01, 0.02, 0.14, 0.01, 0.02, 0.05, 0.02, 0.01, 0.01, 0.02, 0.71, 0.1]),
];

pub(super) static SKINS: &[Row<Skin>] = &[
    (Skin::Same, [0.7, 0.5, 0.72, 0.65, 0.75, 0.8, 0.85, 0.8, 0.82, 0.94, 0.88, 0.9, 0.94, 0.6, 0.7, 0.7]),
    (Skin::Hard, [0.2, 0.38, 0.08, 0.2, 0.04, 0.04, 0.05, 0.1, 0.05, 0.03, 0.05, 0.08, 0.04, 0.38, 0.25, 0.2]),
    (Skin::Soft, [0.1, 0.12, 0.2, 0.15, 0.21, 0.16, 0.1, 0.1, 0.13, 0.03, 0.07, 0.02, 0.02, 0.02, 0.05, 0.1]),
];

pub(super) static GRAINS: &[Row<Fracture>] = &[
    (Fracture::Fine, [0.75, 0.75, 0.75, 0.8, 0.78, 0.78, 0.8, 0.8, 0.85, 0.85, 0.8, 0.6, 0.75, 0.6, 0.25, 0.6]),
    (Fracture::Coarse, [0.25, 0.25, 0.25, 0.2, 0.22, 0.22, 0.2, 0.2, 0.15, 0.15, 0.2, 0.4, 0.25, 0.4, 0.75, 0.4]),
];

pub(super) static FITS: &[Fit] = &[
    Fit { purpose: Purpose::Hammers, least: Some(50.0), warn: true, suits: &[Kind::MediumCarbon, Kind::HighCarbon, Kind::LowAlloy, Kind::Spring, Kind::Shock] },
    Fit { purpose: Purpose::Shafts, least: None, warn: false, suits: &[Kind::MediumCarbon, Kind::HighCarbon, Kind::LowAlloy, Kind::Spring, Kind::OilTool] },
    Fit { purpose: Purpose::Chisels, least: Some(56.0), warn: true, suits: &[Kind::HighCarbon, Kind::Spring, Kind::OilTool, Kind::Shock] },
    Fit { purpose: Purpose::Edges, least: Some(60.0), warn: true, suits: &[Kind::HighCarbon, Kind::Spring, Kind::OilTool, Kind::AirTool, Kind::MartensiticStainless] },
    Fit { purpose: Purpose::Springs, least: Some(50.0), warn: true, suits: &[Kind::Spring, Kind::HighCarbon] },
    Fit { purpose: Purpose::HotTools, least: None, warn: false, suits: &[Kind::HotWork, Kind::Shock, Kind::HighSpeed] },
    Fit { purpose: Purpose::Case, least: None, warn: false, suits: &[Kind::LowCarbon] },
    Fit { purpose: Purpose::SoftParts, least: None, warn: false, suits: &[Kind::LowCarbon, Kind::AusteniticStainless] },
    Fit { purpose: Purpose::Rust, least: None, warn: false, suits: &[Kind::MartensiticStainless, Kind::AusteniticStainless, Kind::PhStainless] },
    Fit { purpose: Purpose::GroundBits, least: None, warn: false, suits: &[Kind::HighSpeed] },
    Fit { purpose: Purpose::Battering, least: None, warn: false, suits: &[Kind::Manganese] },
    Fit { purpose: Purpose::Blocks, least: None, warn: false, suits: &[Kind::CastIron] },
    Fit { purpose: Purpose::Safety, least: None, warn: true, suits: &[] },
];
