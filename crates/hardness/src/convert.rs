//! From one scale to another by the first published table that holds the value.

use alloc::vec::Vec;

use crate::axis::{Axis, Reading};
use crate::curve::Curve;
use crate::error::{Error, Nearest};
use crate::generated::CLASSES;
use crate::material::Material;
use crate::table::{Span, Table, TableId, TableValue};
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

/// Which tables may answer: those of a class of materials, or one of them.
///
/// ```
/// use biteband_hardness::{Choice, Material, TableId};
/// let brass = Choice::of(Material::CartridgeBrass);
/// let table = TableId::find("astm-e140-t4").map(Choice::table);
/// assert_eq!(table.map(|choice| choice.material), Some(brass.material));
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Choice {
    /// The class of the part.
    pub material: Material,
    /// One table instead of the first that holds the reading.
    pub only: Option<TableId>,
}

impl Choice {
    /// The tables of carbon, alloy and low-alloy tool steel.
    pub const STEEL: Self = Self::of(Material::CarbonAlloySteel);

    /// The tables of a class.
    #[must_use]
    pub const fn of(material: Material) -> Self {
        Self { material, only: None }
    }

    /// One table, with the class it is made for.
    #[must_use]
    pub fn table(table: TableId) -> Self {
        let material = table.get().map_or_else(Material::default, Table::class);
        Self { material, only: Some(table) }
    }
}

/// The tables of one class in the order in which they are asked, and the reasons.
#[derive(Debug)]
pub(crate) struct Class {
    pub(crate) material: Material,
    pub(crate) hardness: Order,
    pub(crate) tensile: Order,
}

#[derive(Debug)]
pub(crate) struct Order {
    pub(crate) tables: &'static [TableId],
    pub(crate) reason: &'static str,
}

/// The tables of a class in the order in which they are asked, and the reason for that order; none
/// where the class has no table.
#[must_use]
pub fn policy(material: Material, from: Axis, to: Axis) -> (&'static [TableId], &'static str) {
    let Some(class) = CLASSES.iter().find(|class| class.material == material) else {
        return (&[], "");
    };
    let strength = matches!(from, Axis::Tensile) || matches!(to, Axis::Tensile);
    let order = if strength { &class.tensile } else { &class.hardness };
    (order.tables, order.reason)
}

fn candidates(from: Axis, to: Axis, choice: Choice) -> impl Iterator<Item = TableId> {
    let tables = policy(choice.material, from, to).0;
    tables.iter().copied().filter(move |&id| choice.only.is_none_or(|wanted| wanted == id))
}

/// Converts a reading to another axis.
///
/// # Units
/// `reading` in its own scale; the result in `to`, tensile strength in MPa.
///
/// # Valid for
/// The class of `choice`, the same all through; every table names its materials.
///
/// # Accuracy
/// Printed rows are exact; the width of the conversion stands in [`Conversion::width`].
///
/// # Errors
/// [`Error::SameAxis`]; [`Error::Material`] for a class without tables; [`Error::NoTable`] when no table (or not the one asked for) holds both axes;
/// [`Error::OutsideTables`] when the value lies outside every one that does. Nothing is extrapolated.
///
/// # Source
/// The table named in the result.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Choice, Reading, Scale, convert};
/// let reading = Reading::new(Axis::Hardness(Scale::Hrc), 38.0)?;
/// let brinell = convert(reading, Axis::Hardness(Scale::Hbw), Choice::STEEL)?;
/// assert_eq!(brinell.at.value, 353.0); // the pair that ASTM E140-02 clause 7.1 prints
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
pub fn convert(reading: Reading, to: Axis, choice: Choice) -> Result<Conversion, Error> {
    let (from, value) = (reading.axis(), reading.value());
    allowed(from, to, choice)?;
    candidates(from, to, choice)
        .find_map(|table| read(table, from, value, to))
        .ok_or_else(|| refusal(from, value, to, choice))
}

fn allowed(from: Axis, to: Axis, choice: Choice) -> Result<(), Error> {
    if from == to {
        Err(Error::SameAxis { axis: to })
    } else if choice.material.has_tables() {
        Ok(())
    } else {
        Err(Error::Material { material: choice.material })
    }
}

/// A conversion made ready for many numbers: every cubic of both columns is worked out once.
///
/// It gives what [`convert`] gives, to the last bit.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Choice, Reading, Route, Scale, convert};
/// let (hrc, hv) = (Axis::Hardness(Scale::Hrc), Axis::Hardness(Scale::Hv));
/// let route = Route::new(hrc, hv, Choice::STEEL)?;
/// assert_eq!(route.convert(52.5)?, convert(Reading::new(hrc, 52.5)?, hv, Choice::STEEL)?);
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
#[derive(Debug)]
pub struct Route {
    from: Axis,
    to: Axis,
    choice: Choice,
    lanes: Vec<Lane>,
}

#[derive(Debug)]
struct Lane {
    id: TableId,
    table: &'static Table,
    source: Curve<'static>,
    target: Curve<'static>,
}

impl Route {
    /// Makes a conversion ready.
    ///
    /// # Errors
    /// [`Error::SameAxis`], [`Error::Material`], and [`Error::NoTable`] when no table holds both axes.
    pub fn new(from: Axis, to: Axis, choice: Choice) -> Result<Self, Error> {
        allowed(from, to, choice)?;
        let lanes: Vec<Lane> = candidates(from, to, choice)
            .filter_map(|id| {
                let table = id.get()?;
                let (source, target) = table.curves(from, to)?;
                Some(Lane { id, table, source: source.prepared(), target: target.prepared() })
            })
            .collect();
        if lanes.is_empty() {
            return Err(Error::NoTable { from, to, choice });
        }
        Ok(Self { from, to, choice, lanes })
    }

    /// Converts one number.
    ///
    /// # Errors
    /// As [`convert`], and as [`Reading::new`] for a number that the scale does not have.
    pub fn convert(&self, value: f64) -> Result<Conversion, Error> {
        let (from, to) = (self.from, self.to);
        let value = Reading::new(from, value)?.value();
        self.lanes
            .iter()
            .find_map(|Lane { id, table, source, target }| {
                let at = Curve::convert(source, target, (from, value), to)?;
                Some(Conversion { to, at, width: Width::of(table, to, &at), table: *id })
            })
            .ok_or_else(|| refusal(from, value, to, self.choice))
    }

    /// The number alone, to the last bit that of [`Route::convert`]: for a column or a drawing of many, where
    /// width, basis and marks are not shown.
    ///
    /// # Errors
    /// As [`Route::convert`].
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::{Axis, Choice, Route, Scale};
    /// let (hrc, hv) = (Axis::Hardness(Scale::Hrc), Axis::Hardness(Scale::Hv));
    /// let route = Route::new(hrc, hv, Choice::STEEL)?;
    /// // ASTM E140 Table 1: 52 HRC is 544 HV.
    /// assert_eq!(route.number(52.0)?, 544.0);
    /// # Ok::<(), biteband_hardness::Error>(())
    /// ```
    #[inline]
    pub fn number(&self, value: f64) -> Result<f64, Error> {
        let value = Reading::new(self.from, value)?.value();
        let quick = self.lanes.first().filter(|_| self.from.converts(value)).and_then(|lane| {
            let found = Curve::number(&lane.source, &lane.target, value)?;
            self.to.converts(found).then_some(found)
        });
        // On a row, outside the first table, or outside a scale: the long way knows what to say.
        quick.map_or_else(|| self.convert(value).map(|found| found.at.value), Ok)
    }
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
/// use biteband_hardness::{Axis, Choice, Scale, convert_limits};
/// let hrc = Axis::Hardness(Scale::Hrc);
/// let hbw = Axis::Hardness(Scale::Hbw);
/// let limits = convert_limits(hrc, Some(38.0), Some(42.0), hbw, Choice::STEEL)?;
/// assert_eq!(limits.low.map(|c| c.at.value), Some(353.0));
/// assert_eq!(limits.high.map(|c| c.at.value), Some(390.0));
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
pub fn convert_limits(
    from: Axis,
    low: Option<f64>,
    high: Option<f64>,
    to: Axis,
    choice: Choice,
) -> Result<Limits, Error> {
    let take = |value: f64| Reading::new(from, value);
    match (low, high) {
        (None, None) => Err(Error::NoLimit { axis: from }),
        (Some(low), None) => Ok(Limits { low: Some(convert(take(low)?, to, choice)?), high: None }),
        (None, Some(high)) => {
            Ok(Limits { low: None, high: Some(convert(take(high)?, to, choice)?) })
        }
        (Some(low), Some(high)) => {
            let (first, second) = (take(low)?, take(high)?);
            if low > high {
                return Err(Error::Backward { axis: from, low, high });
            }
            // Each limit alone first, so that the refusal names the limit that no table holds.
            let _: (Conversion, Conversion) =
                (convert(first, to, choice)?, convert(second, to, choice)?);
            candidates(from, to, choice)
                .find_map(|id| {
                    let low = read(id, from, low, to)?;
                    let high = read(id, from, high, to)?;
                    Some(Limits { low: Some(low), high: Some(high) })
                })
                .ok_or(Error::NoSingleTable { from, low, high, to, choice })
        }
    }
}

/// What every other table of the class says about the same reading, in the order of the policy.
///
/// # Example
/// ```
/// use biteband_hardness::{Axis, Choice, Reading, Scale, compare, convert};
/// let reading = Reading::new(Axis::Hardness(Scale::Hrc), 60.0)?;
/// let vickers = convert(reading, Axis::Hardness(Scale::Hv), Choice::STEEL)?;
/// assert!(compare(reading, vickers.to, vickers.table).iter().any(|c| c.at.value == 713.0));
/// # Ok::<(), biteband_hardness::Error>(())
/// ```
#[must_use]
pub fn compare(reading: Reading, to: Axis, except: TableId) -> Vec<Comparison> {
    let (from, value) = (reading.axis(), reading.value());
    candidates(from, to, Choice::of(Choice::table(except).material))
        .filter(|&id| id != except)
        .filter_map(|table| Some(Comparison { table, at: table.get()?.convert(from, value, to)? }))
        .collect()
}

/// The axes that some table of a class reaches from this one.
#[must_use]
pub fn reachable(material: Material, from: Axis) -> Vec<Axis> {
    let scales = crate::axis::Scale::ALL.into_iter().map(Axis::Hardness);
    scales
        .chain([Axis::Tensile])
        .filter(|&to| to != from && spans(from, to, Choice::of(material)).next().is_some())
        .collect()
}

/// The convertible part of an axis, table by table.
pub fn spans(from: Axis, to: Axis, choice: Choice) -> impl Iterator<Item = (TableId, Span)> {
    candidates(from, to, choice).filter_map(move |id| Some((id, id.get()?.span(from, to)?)))
}

fn refusal(from: Axis, given: f64, to: Axis, choice: Choice) -> Error {
    let nearest = spans(from, to, choice)
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
        Some(nearest) => Error::OutsideTables { from, given, to, nearest, choice },
        None => Error::NoTable { from, to, choice },
    }
}
