//! Carbon steel while it is heated.
//!
//! # Source
//! EN 1993-1-2:2005, 3.4.1.2 and 3.4.1.3, seen: specific heat with its peak at 735 °C, and conductivity,
//! from 20 to 1200 °C; below 20 °C the first branch is carried on.

/// Conductivity in W/mK.
pub(super) fn conductivity(celsius: f64) -> f64 {
    if celsius < 800.0 { 54.0 - 0.0333 * celsius } else { 27.3 }
}

/// The heat in one kilogram above 0 °C, in J: the integral of the specific heat.
pub(crate) fn heat_content(celsius: f64) -> f64 {
    // Each branch is integrated from its lower end.
    let cubic =
        |t: f64| t * (425.0 + t * (0.773 / 2.0 + t * (-1.69e-3 / 3.0 + t * (2.22e-6 / 4.0))));
    let rising = |t: f64| 666.0 * (t - 600.0) + 13_002.0 * libm::log(138.0 / (738.0 - t));
    let falling = |t: f64| 545.0 * (t - 735.0) + 17_820.0 * libm::log((t - 731.0) / 4.0);
    if celsius < 600.0 {
        cubic(celsius)
    } else if celsius < 735.0 {
        cubic(600.0) + rising(celsius)
    } else if celsius < 900.0 {
        cubic(600.0) + rising(735.0) + falling(celsius)
    } else {
        cubic(600.0) + rising(735.0) + falling(900.0) + 650.0 * (celsius - 900.0)
    }
}

/// Specific heat in J/kgK.
pub(super) fn specific_heat(celsius: f64) -> f64 {
    if celsius < 600.0 {
        425.0 + celsius * (0.773 + celsius * (-1.69e-3 + celsius * 2.22e-6))
    } else if celsius < 735.0 {
        666.0 + 13_002.0 / (738.0 - celsius)
    } else if celsius < 900.0 {
        545.0 + 17_820.0 / (celsius - 731.0)
    } else {
        650.0
    }
}
