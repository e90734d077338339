// Written by `cargo xtask tables` from crates/steel/data/tempering-coefficients.csv; edit that file, not this.

use super::formula::Coefficients;
use super::learn::Spread;

pub(super) const FITTED: Coefficients = Coefficients {
    constant: 16.9439,
    start: 32.1212,
    start_rise: 37.084,
    start_carbon: 0.3224,
    first_share: 0.3763,
    first_share_carbon: 0.2932,
    first_place: 7.9212,
    first_silicon: 2.1657,
    first_width: 1.8821,
    molybdenum: 6.4746,
    vanadium: 8.928,
    second_place: 11.9079,
    carbon: 1.4596,
    silicon: 0.801,
    manganese: 0.8098,
    nickel: 0.1004,
    chromium: 1.2838,
    second_width: 2.5602,
    soft: 140.3954,
};

pub(super) const SPREAD: Spread = Spread {
    level: 1.1749,
    drift: 1.0535,
    reach: 109.5604,
    hot: 0.71,
    scatter: 1.1465,
};
