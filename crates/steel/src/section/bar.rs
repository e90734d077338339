//! How the end-quench bar cools.

/// One sixteenth of an inch in mm, exact: the step in which the bar is read.
pub const SIXTEENTH: f64 = 1.587_5;

/// Distance from the quenched end in sixteenths of an inch, and the time in seconds until half of the
/// difference to the water is left there.
///
/// From 1 on a finite-difference model of the bar: 101.6 mm, 15 000 W/m²K at the end to water of 20 °C,
/// 8 W/m²K and radiation at 0.5 from the side, k = 29 W/mK, 7800 kg/m³, 640 J/kgK, from 850 °C. Below 1
/// the closed form of the half space with the same numbers, where the side does not matter.
const BAR: [(f64, f64); 16] = [
    (0.0, 0.381),
    (0.25, 0.694),
    (0.5, 1.070),
    (1.0, 1.99),
    (2.0, 4.52),
    (3.0, 7.9),
    (4.0, 12.1),
    (5.0, 17.1),
    (6.0, 22.7),
    (8.0, 35.7),
    (10.0, 50.5),
    (12.0, 66.6),
    (16.0, 101.0),
    (20.0, 137.0),
    (24.0, 172.0),
    (32.0, 236.0),
];

/// The place of the bar, in mm, that takes as long to half as the given seconds; nought for anything
/// quicker than its end, `None` for anything slower than its last reading at 2 in.
///
/// Between the rows the distance is straight in the root of the time, as conduction from an end is.
pub(super) fn distance(seconds: f64) -> Option<f64> {
    let root = libm::sqrt(seconds);
    let after = BAR.iter().position(|(_, time)| *time >= seconds)?;
    let (at, time) = *BAR.get(after)?;
    let Some((before, earlier)) = after.checked_sub(1).and_then(|i| BAR.get(i)) else {
        return Some(0.0);
    };
    let (low, high) = (libm::sqrt(*earlier), libm::sqrt(time));
    Some(SIXTEENTH * (before + (at - before) * (root - low) / (high - low)))
}
