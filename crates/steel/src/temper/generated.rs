// Written by `cargo xtask tables` from crates/steel/data/tempering-coefficients.csv; edit that file, not this.

use super::formula::Coefficients;
use super::learn::Spread;

pub(super) const FITTED: Coefficients = Coefficients {
    constant: 16.9446,
    start: 32.1213,
    start_rise: 37.0835,
    start_carbon: 0.3224,
    first_share: 0.3765,
    first_share_carbon: 0.2932,
    first_place: 7.922,
    first_silicon: 2.166,
    first_width: 1.8828,
    molybdenum: 6.4644,
    vanadium: 8.9229,
    longest_delay: 3.0238,
    second_place: 11.9085,
    carbon: 1.4598,
    silicon: 0.801,
    manganese: 0.8099,
    nickel: 0.1005,
    chromium: 1.2837,
    second_width: 2.5606,
    soft: 140.391,
};

pub(super) const SPREAD: Spread = Spread {
    level: 1.1747,
    drift: 1.048,
    reach: 109.9677,
    hot: 0.8724,
    scatter: 1.1465,
};
