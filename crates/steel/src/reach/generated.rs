// Written by `cargo xtask tables` from crates/steel/data/rounds.csv; edit that file, not this.

use super::record::Bar;
use crate::quenchant::Quenchant;

pub(super) static BARS: &[Bar] = &[
    Bar { key: "4130", quenchant: Quenchant::Water, diameter: 12.7, hrc: [51.0, 50.0, 50.0] },
    Bar { key: "4130", quenchant: Quenchant::Water, diameter: 25.4, hrc: [51.0, 50.0, 44.0] },
    Bar { key: "4130", quenchant: Quenchant::Water, diameter: 50.8, hrc: [47.0, 32.0, 31.0] },
    Bar { key: "4130", quenchant: Quenchant::Water, diameter: 101.6, hrc: [45.5, 25.5, 24.5] },
    Bar { key: "4140", quenchant: Quenchant::Oil, diameter: 12.7, hrc: [57.0, 56.0, 55.0] },
    Bar { key: "4140", quenchant: Quenchant::Oil, diameter: 25.4, hrc: [55.0, 55.0, 50.0] },
    Bar { key: "4140", quenchant: Quenchant::Oil, diameter: 50.8, hrc: [49.0, 43.0, 38.0] },
    Bar { key: "4140", quenchant: Quenchant::Oil, diameter: 101.6, hrc: [36.0, 34.5, 34.0] },
    Bar { key: "4340", quenchant: Quenchant::Oil, diameter: 12.7, hrc: [58.0, 58.0, 56.0] },
    Bar { key: "4340", quenchant: Quenchant::Oil, diameter: 25.4, hrc: [57.0, 57.0, 56.0] },
    Bar { key: "4340", quenchant: Quenchant::Oil, diameter: 50.8, hrc: [56.0, 55.0, 54.0] },
    Bar { key: "4340", quenchant: Quenchant::Oil, diameter: 101.6, hrc: [53.0, 49.0, 47.0] },
    Bar { key: "5140", quenchant: Quenchant::Oil, diameter: 12.7, hrc: [57.0, 57.0, 56.0] },
    Bar { key: "5140", quenchant: Quenchant::Oil, diameter: 25.4, hrc: [53.0, 48.0, 45.0] },
    Bar { key: "5140", quenchant: Quenchant::Oil, diameter: 50.8, hrc: [46.0, 38.0, 35.0] },
    Bar { key: "5140", quenchant: Quenchant::Oil, diameter: 101.6, hrc: [35.0, 29.0, 20.0] },
    Bar { key: "5160", quenchant: Quenchant::Oil, diameter: 12.7, hrc: [63.0, 62.0, 62.0] },
    Bar { key: "5160", quenchant: Quenchant::Oil, diameter: 25.4, hrc: [62.0, 61.0, 60.0] },
    Bar { key: "5160", quenchant: Quenchant::Oil, diameter: 50.8, hrc: [53.0, 46.0, 43.0] },
    Bar { key: "5160", quenchant: Quenchant::Oil, diameter: 101.6, hrc: [40.0, 32.0, 29.0] },
    Bar { key: "6150", quenchant: Quenchant::Oil, diameter: 12.7, hrc: [61.0, 60.0, 60.0] },
    Bar { key: "6150", quenchant: Quenchant::Oil, diameter: 25.4, hrc: [60.0, 58.0, 57.0] },
    Bar { key: "6150", quenchant: Quenchant::Oil, diameter: 50.8, hrc: [54.0, 47.0, 44.0] },
    Bar { key: "6150", quenchant: Quenchant::Oil, diameter: 101.6, hrc: [42.0, 36.0, 35.0] },
    Bar { key: "1050", quenchant: Quenchant::Water, diameter: 12.7, hrc: [64.0, 59.0, 57.0] },
    Bar { key: "1050", quenchant: Quenchant::Water, diameter: 25.4, hrc: [60.0, 35.0, 33.0] },
    Bar { key: "1050", quenchant: Quenchant::Water, diameter: 50.8, hrc: [50.0, 32.0, 26.0] },
];
