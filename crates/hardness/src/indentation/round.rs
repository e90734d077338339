//! Rockwell on round parts: the corrections that standards print.

use super::check::Cited;
use super::error::Error;
use super::generated::{ISO_6508_1, ROUND};
use crate::axis::Scale;
use biteband_quantity::Millimetres;

/// A convex surface.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Convex {
    /// Bar, shaft, pin.
    Cylinder,
    /// Ball; only HRC has a rule.
    Sphere,
}

/// A printed table of corrections.
#[derive(Clone, Copy, Debug)]
pub(super) struct RoundTable {
    pub(super) scales: &'static [Scale],
    pub(super) readings: &'static [f64],
    pub(super) diameters: &'static [f64],
    /// Row by row, in tenths of a point.
    pub(super) tenths: &'static [u8],
    pub(super) cited: Cited,
}

/// A reading on a round part and what it would be on a flat of the same hardness.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Correction {
    /// What the instrument shows on the round part.
    pub shown: f64,
    /// What it would show on a flat.
    pub flat: f64,
    /// Half of the width in which the correction lies: the table is rounded to 0.5.
    pub half_width: f64,
    /// Whether the diameter lies beyond the last column: between its cells and the nought of a flat.
    pub beyond_last: bool,
    /// Whether ISO 6508-1 accepts a correction of this size: 3 points on C, A and D, 5 on B, F and G, 2
    /// on N and 5 on T scales.
    pub accepted: bool,
    /// The largest that it accepts.
    pub most: f64,
    /// How that limit was known.
    pub limit: Cited,
    /// Where the correction stands.
    pub cited: Cited,
}

impl Correction {
    /// What is added to the shown number.
    #[must_use]
    pub fn amount(&self) -> f64 {
        self.flat - self.shown
    }
}

/// The corrections printed to half points, read as exact to half of that and the same again for the
/// average that the standard says they are.
const HALF_WIDTH: f64 = 0.5;

/// Readings and diameters that the sphere's formula was tabulated for. Source: `iso-6508-1`, recalled.
const SPHERE_READINGS: (f64, f64) = (55.0, 65.0);
const SPHERE_SMALLEST: f64 = 4.0;

/// What a reading on a round part would be on a flat.
///
/// Between the cells of the table straight lines over reading and diameter; beyond the last column a
/// straight line over the curvature to the nought of a flat. Nothing is said beyond the first and last
/// row or below the first column.
///
/// # Units
/// `reading` in the scale's points, `diameter` of the part in mm.
///
/// # Errors
/// [`Error::NoRoundTable`], [`Error::TooSmall`], [`Error::OutsideRoundTable`].
///
/// # Source
/// `astm-e18` for cylinders; `iso-6508-1` for HRC on a sphere, 59 (1 - H/160)² / D, recalled.
///
/// # Example
/// ```
/// use biteband_hardness::{Scale, indentation::{Convex, rockwell_flat}};
/// use biteband_quantity::Millimetres;
/// let pin = Millimetres::new(10.0)?;
/// let read = rockwell_flat(Scale::Hrc, 55.0, pin, Convex::Cylinder)?;
/// assert_eq!(read.flat, 56.5); // ASTM E18: add 1.5
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn rockwell_flat(
    scale: Scale,
    reading: f64,
    diameter: Millimetres,
    shape: Convex,
) -> Result<Correction, Error> {
    let rule = Rules::find(scale, diameter, shape)?;
    let (low, high) = rule.readings();
    if reading.is_nan() || reading < low || reading > high {
        return Err(Error::OutsideRoundTable { scale, given: reading, low, high });
    }
    let amount = rule.amount(reading).unwrap_or_default();
    Ok(rule.correction(reading, reading + amount))
}

/// What the instrument will show on a round part whose hardness on a flat is known.
///
/// # Errors
/// As [`rockwell_flat`]; the range in [`Error::OutsideRoundTable`] is that of numbers on the flat.
///
/// # Example
/// ```
/// use biteband_hardness::{Scale, indentation::{Convex, rockwell_shown}};
/// use biteband_quantity::Millimetres;
/// let pin = Millimetres::new(10.0)?;
/// let will = rockwell_shown(Scale::Hrc, 56.5, pin, Convex::Cylinder)?;
/// assert!((will.shown - 55.0).abs() < 1e-9);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn rockwell_shown(
    scale: Scale,
    flat: f64,
    diameter: Millimetres,
    shape: Convex,
) -> Result<Correction, Error> {
    let rule = Rules::find(scale, diameter, shape)?;
    let (first, last) = rule.readings();
    let corrected = |reading: f64| reading + rule.amount(reading).unwrap_or_default();
    let (low, high) = (corrected(first), corrected(last));
    if flat.is_nan() || flat < low || flat > high {
        return Err(Error::OutsideRoundTable { scale, given: flat, low, high });
    }
    // A correction never falls as fast as the reading rises, so halving finds the one reading.
    let (mut below, mut above) = (first, last);
    for _ in 0..60 {
        let middle = f64::midpoint(below, above);
        if corrected(middle) < flat {
            below = middle;
        } else {
            above = middle;
        }
    }
    Ok(rule.correction(above, flat))
}

/// The rule that serves a scale on a shape, at one diameter.
struct Rules {
    table: Option<&'static RoundTable>,
    scale: Scale,
    diameter: f64,
}

impl Rules {
    fn find(scale: Scale, diameter: Millimetres, shape: Convex) -> Result<Self, Error> {
        let table = match shape {
            Convex::Cylinder => ROUND.iter().find(|table| table.scales.contains(&scale)),
            Convex::Sphere => None,
        };
        let smallest = match (table, shape) {
            (Some(table), _) => table.diameters.first().copied().unwrap_or_default(),
            (None, Convex::Sphere) if scale == Scale::Hrc => SPHERE_SMALLEST,
            _ => return Err(Error::NoRoundTable { scale }),
        };
        let diameter = diameter.get();
        if diameter < smallest {
            return Err(Error::TooSmall { scale, diameter, smallest });
        }
        Ok(Self { table, scale, diameter })
    }

    fn readings(&self) -> (f64, f64) {
        let ends = |table: &RoundTable| Some((*table.readings.first()?, *table.readings.last()?));
        self.table.and_then(ends).unwrap_or(SPHERE_READINGS)
    }

    fn amount(&self, reading: f64) -> Option<f64> {
        if let Some(table) = self.table {
            return table.amount(reading, self.diameter);
        }
        let rest = 1.0 - reading / 160.0;
        Some(59.0 * rest * rest / self.diameter)
    }

    fn correction(&self, shown: f64, flat: f64) -> Correction {
        // Only the limit of 3 points was read.
        let read = Cited::seen(ISO_6508_1);
        let recalled = Cited::recalled(ISO_6508_1);
        let (most, limit) = match self.scale {
            Scale::Hrc | Scale::Hra | Scale::Hrd => (3.0, read),
            scale if scale.is_diamond_rockwell() => (2.0, recalled),
            _ => (5.0, recalled),
        };
        let last = self.table.and_then(|table| table.diameters.last());
        Correction {
            shown,
            flat,
            half_width: HALF_WIDTH,
            beyond_last: last.is_some_and(|last| self.diameter > *last),
            // A last bit of slack, or the sum of a printed reading and a printed limit could fail.
            accepted: flat - shown <= most + 1e-9,
            most,
            limit,
            cited: self.table.map_or(recalled, |table| table.cited),
        }
    }
}

impl RoundTable {
    fn amount(&self, reading: f64, diameter: f64) -> Option<f64> {
        let (row, down) = place(self.readings, reading)?;
        let width = self.diameters.len();
        let cell = |row: usize, column: usize| {
            self.tenths.get(row * width + column).map(|tenths| f64::from(*tenths) / 10.0)
        };
        let along = |column: usize| -> Option<f64> {
            let here = cell(row, column)?;
            Some(if down > 0.0 { here + (cell(row + 1, column)? - here) * down } else { here })
        };
        let last = *self.diameters.last()?;
        if diameter > last {
            return Some(along(width - 1)? * last / diameter);
        }
        let (column, across) = place(self.diameters, diameter)?;
        let here = along(column)?;
        Some(if across > 0.0 { here + (along(column + 1)? - here) * across } else { here })
    }
}

/// The place of a number among rising ones: the last at or below it, and the share of the step above.
fn place(steps: &[f64], value: f64) -> Option<(usize, f64)> {
    let below = steps.iter().rposition(|step| *step <= value)?;
    let start = *steps.get(below)?;
    let share = steps.get(below + 1).map_or(0.0, |next| (value - start) / (next - start));
    Some((below, share))
}
