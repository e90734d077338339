//! The table of thinnest sections that ASTM E18 prints for Rockwell tests.

use super::generated::THINNEST;
use crate::axis::Scale;

/// A column of the table.
#[derive(Clone, Copy, Debug)]
pub(super) struct Thinnest {
    pub(super) scale: Scale,
    /// Its first row, in thousandths of an inch; every row is 0.002 in thicker.
    pub(super) first: u8,
    /// Least hardness of each row in half points; nought for any.
    pub(super) halves: &'static [u8],
}

/// Thinnest section in mm for a number: the first row whose least hardness it has.
///
/// `None` for a scale that the table lacks and for a number below its lowest.
pub(super) fn thinnest(scale: Scale, value: f64) -> Option<f64> {
    let column = THINNEST.iter().find(|column| column.scale == scale)?;
    let row = column.halves.iter().position(|&halves| {
        // The ends of a scale are another rule: any hardness is any that the scale has.
        halves == 0 || value >= f64::from(halves) / 2.0
    })?;
    let row = u8::try_from(row).ok()?;
    Some((f64::from(column.first) + 2.0 * f64::from(row)) * 25.4 / 1000.0)
}
