//! Readings on the axis of a belief.

use biteband_hardness::{Axis, Choice, Conversion, Error, Reading, Scale, TableId, convert};

use super::frame::Frame;
use super::series::Series;
use crate::refusal::Refusal;
use crate::words::Language;

/// Readings on the axis of a belief, all by one table.
pub(super) struct Framed {
    pub(super) values: Vec<f64>,
    /// In the working scale.
    pub(super) raw: Vec<f64>,
    /// Known only to lie beyond the end of a table, above or below it; the numbers are those of the end.
    pub(super) beyond: Option<bool>,
    /// Units of the axis for one point of the reading's own scale.
    pub(super) slope: f64,
    /// The table, the scale it was entered with, and its standard uncertainty on the axis.
    pub(super) conversion: Option<(TableId, Axis, f64)>,
}

/// The scale in which tables list what a series shows: an ultrasonic tester shows Vickers numbers.
pub(super) const fn listed(axis: Axis) -> Axis {
    match axis {
        Axis::Hardness(Scale::HvUci) => Axis::Hardness(Scale::Hv),
        axis => axis,
    }
}

/// Puts readings on an axis; where the axis is open at its ends, what no table reaches lies at the end that is nearest.
pub(super) fn framed(
    language: Language,
    series: &Series,
    table: Option<TableId>,
    frame: &Frame,
) -> Result<Framed, Refusal> {
    let refuse = |error: Error| Refusal::of_hardness(language, &error);
    for &value in &series.values {
        Reading::new(series.axis, value).map_err(refuse)?;
    }
    let axis = listed(series.axis);
    let place = |value: &f64| frame.place(*value);
    if axis == frame.work() {
        return Ok(Framed {
            values: series.values.iter().map(place).collect(),
            raw: series.values.clone(),
            beyond: None,
            slope: frame.unit(),
            conversion: frame.conversion().map(|(table, sd)| (table, axis, sd)),
        });
    }
    let by = |value: f64, choice: Choice| -> Result<Conversion, Error> {
        convert(Reading::new(axis, value)?, frame.work(), choice)
    };
    let mut beyond = None;
    let mut near = |value: f64, choice: Choice| match by(value, choice) {
        Err(Error::OutsideTables { nearest, .. }) if frame.is_open() => {
            beyond = Some(nearest.above);
            by(nearest.value, Choice::table(nearest.table)).map(|found| (nearest.value, found))
        }
        other => other.map(|found| (value, found)),
    };
    let first = series.values.first().copied().unwrap_or_default();
    let (first, found) = near(first, table.map_or(Choice::STEEL, Choice::table)).map_err(refuse)?;
    let mut raw = Vec::with_capacity(series.values.len());
    for &value in &series.values {
        raw.push(near(value, Choice::table(found.table)).map_err(refuse)?.1.at.value);
    }
    let at = |value: f64| by(value, Choice::table(found.table)).map(|found| found.at.value);
    let (step, here) = (first / 100.0, found.at.value);
    let slope = match (at(first - step), at(first + step)) {
        (Ok(low), Ok(high)) => (high - low) / (2.0 * step),
        (Ok(low), Err(_)) => (here - low) / step,
        (Err(_), high) => (high.map_err(refuse)? - here) / step,
    };
    // What is in the scale of the claim is not doubted for the table.
    let doubted = axis != frame.claim();
    Ok(Framed {
        values: raw.iter().map(place).collect(),
        raw,
        beyond,
        slope: slope * frame.unit(),
        conversion: doubted.then_some((found.table, axis, found.width.sd * frame.unit())),
    })
}
