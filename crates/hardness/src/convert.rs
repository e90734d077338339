//! From one scale to another by the first published table that holds the value.

use alloc::vec::Vec;

use crate::axis::{Axis, Reading};
use crate::error::{Error, Nearest};
use crate::generated::{
    HARDNESS_ORDER, HARDNESS_ORDER_REASON, TENSILE_ORDER, TENSILE_ORDER_REASON,
};
use crate::table::{Span, TableId, TableValue};
use crate::width::Width;

/// A converted number with everything it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Conversion {
    /// The axis converted to.
    pub to: Axis,
    /// The number, its row or rows and the marks of the cells.
    pub at: TableValue,
    /// How far the conversion alone may be off.
    pub width: Width,
    /// The table that was used.
    pub table: TableId,
}

/// A converted range: its limits, each on the same table.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Limits {
    /// Low limit, when the range has one.
    pub low: Option<Conversion>,
    /// High limit, when the range has one.
    pub high: Option<Conversion>,
}

/// What another table says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Comparison {
    /// The other table.
    pub table: TableId,
    /// Its number.
    pub at: TableValue,
}

/// The tables in the order in which they are asked, and the reason for that order.
#[must_use]
pub fn policy(from: Axis, to: Axis) -> (&'static [TableId], &'static str) {
    if matches!(from, Axis::Tensile) || matches!(to, Axis::Tensile) {
        (TENSILE_ORDER, TENSILE_ORDER_REASON)
    } else {
        (HARDNESS_ORDER, HARDNESS_ORDER_REASON)
    }
}

fn candidates(from: Axis, to: Axis, only: Option<TableId>) -> impl Iterator<Item = TableId> {
    policy(from, to).0.iter().copied().filter(move |&id| only.is_none_or(|wanted| wanted == id))
}

/// Converts a reading to another axis.
///
/// # Units
/// `reading` in its own scale; the result in `to`, tensile strength in MPa.
///
/// # Valid for
/// Steels that are not austenitic, the same all through; every table names its materials.
///
/// # Accuracy
/// Printed rows are exact; the width of the conversion stands in [`Conversion::width`].
///
/// # Errors
/// [`Error::SameAxis`]; [`Error::NoTable`] when no table (or not the one asked for) holds both axes;
/// [`Error::OutsideTables`] when the value lies outside every one that does. Nothing is extrapolated.
///
/// # Source
/// The table named in the result.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Reading, Scale, convert};
/// let reading = Reading::new(Axis::Hardness(Scale::Hrc), 38.0)?;
/// let brinell = convert(reading, Axis::Hardness(Scale::Hbw), None)?;
/// assert_eq!(brinell.at.value, 353.0); // the pair that ASTM E140-02 clause 7.1 prints
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
pub fn convert(reading: Reading, to: Axis, only: Option<TableId>) -> Result<Conversion, Error> {
    let (from, value) = (reading.axis(), reading.value());
    if from == to {
        return Err(Error::SameAxis { axis: to });
    }
    candidates(from, to, only)
        .find_map(|table| read(table, from, value, to))
        .ok_or_else(|| refusal(from, value, to, only))
}

fn read(id: TableId, from: Axis, value: f64, to: Axis) -> Option<Conversion> {
    let table = id.get()?;
    let at = table.convert(from, value, to)?;
    Some(Conversion { to, at, width: Width::of(table, to, &at), table: id })
}

/// Converts the limits of a range; both come from one table, because tables are never joined.
///
/// # Errors
/// As [`convert`] for each limit; [`Error::Backward`] when the low limit lies above the high one;
/// [`Error::NoLimit`] without limits; [`Error::NoSingleTable`] when no table holds both.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Scale, convert_limits};
/// let hrc = Axis::Hardness(Scale::Hrc);
/// let limits = convert_limits(hrc, Some(38.0), Some(42.0), Axis::Hardness(Scale::Hbw), None)?;
/// assert_eq!(limits.low.map(|c| c.at.value), Some(353.0));
/// assert_eq!(limits.high.map(|c| c.at.value), Some(390.0));
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
pub fn convert_limits(
    from: Axis,
    low: Option<f64>,
    high: Option<f64>,
    to: Axis,
    only: Option<TableId>,
) -> Result<Limits, Error> {
    let take = |value: f64| Reading::new(from, value);
    match (low, high) {
        (None, None) => Err(Error::NoLimit { axis: from }),
        (Some(low), None) => Ok(Limits { low: Some(convert(take(low)?, to, only)?), high: None }),
        (None, Some(high)) => Ok(Limits { low: None, high: Some(convert(take(high)?, to, only)?) }),
        (Some(low), Some(high)) => {
            let (first, second) = (take(low)?, take(high)?);
            if low > high {
                return Err(Error::Backward { axis: from, low, high });
            }
            // Each limit alone first, so that the refusal names the limit that no table holds.
            let _: (Conversion, Conversion) =
                (convert(first, to, only)?, convert(second, to, only)?);
            candidates(from, to, only)
                .find_map(|id| {
                    let low = read(id, from, low, to)?;
                    let high = read(id, from, high, to)?;
                    Some(Limits { low: Some(low), high: Some(high) })
                })
                .ok_or(Error::NoSingleTable { from, low, high, to })
        }
    }
}

/// What every other table says about the same reading, in the order of the policy.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Reading, Scale, compare, convert};
/// let reading = Reading::new(Axis::Hardness(Scale::Hrc), 60.0)?;
/// let vickers = convert(reading, Axis::Hardness(Scale::Hv), None)?;
/// assert!(compare(reading, vickers.to, vickers.table).iter().any(|c| c.at.value == 713.0));
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
#[must_use]
pub fn compare(reading: Reading, to: Axis, except: TableId) -> Vec<Comparison> {
    let (from, value) = (reading.axis(), reading.value());
    candidates(from, to, None)
        .filter(|&id| id != except)
        .filter_map(|table| Some(Comparison { table, at: table.get()?.convert(from, value, to)? }))
        .collect()
}

/// The axes that some table reaches from this one.
#[must_use]
pub fn reachable(from: Axis) -> Vec<Axis> {
    let scales = crate::axis::Scale::ALL.into_iter().map(Axis::Hardness);
    scales
        .chain([Axis::Tensile])
        .filter(|&to| to != from && spans(from, to, None).next().is_some())
        .collect()
}

/// The convertible part of an axis, table by table.
pub fn spans(from: Axis, to: Axis, only: Option<TableId>) -> impl Iterator<Item = (TableId, Span)> {
    candidates(from, to, only).filter_map(move |id| Some((id, id.get()?.span(from, to)?)))
}

fn refusal(from: Axis, given: f64, to: Axis, table: Option<TableId>) -> Error {
    let nearest = spans(from, to, table)
        .flat_map(|(table, span)| {
            let end = |(value, becomes): (f64, f64)| Nearest {
                value,
                becomes,
                table,
                above: given > value,
            };
            [end(span.low), end(span.high)]
        })
        .min_by(|a, b| (a.value - given).abs().total_cmp(&(b.value - given).abs()));
    match nearest {
        Some(nearest) => Error::OutsideTables { from, given, to, nearest, table },
        None => Error::NoTable { from, to, table },
    }
}
