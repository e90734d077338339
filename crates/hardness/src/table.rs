//! Published tables as printed, and the one curve that runs through each column.

use crate::axis::Axis;
use crate::curve::{Curve, Landing};
use crate::generated::TABLES;
use crate::material::Material;
use crate::source::{Source, SourceId};

/// Printed numbers as integers with a fixed count of decimals: dividing gives the double nearest to
/// the printed text, and a column takes a quarter of the room.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Packed {
    pub(crate) decimals: u8,
    pub(crate) values: &'static [i16],
}

impl Packed {
    pub(crate) fn get(&self, index: usize) -> Option<f64> {
        let raw = f64::from(*self.values.get(index)?);
        Some(if self.decimals == 0 { raw } else { raw / self.unit() })
    }

    /// What divides the integers into printed numbers.
    pub(crate) fn unit(&self) -> f64 {
        // The generator refuses more than one decimal, which no table prints.
        if self.decimals == 0 { 1.0 } else { 10.0 }
    }

    /// How many values lie at or below `target`, within a rounding step that the caller settles
    /// with the exact values; compares integers, because this is the inner loop of every conversion.
    #[inline]
    pub(crate) fn count_up_to(&self, target: f64) -> usize {
        let whole = whole_part(target * self.unit() + 1e-6);
        self.values.partition_point(|&raw| raw <= whole)
    }

    /// Where `target` would stand if the values were evenly spaced, as the rows of most tables are.
    #[inline]
    pub(crate) fn even_place(&self, target: f64) -> Option<usize> {
        let (&first, &second) = (self.values.first()?, self.values.get(1)?);
        let from_first = whole_part(target * self.unit() - f64::from(first));
        usize::try_from(from_first.checked_div(second.checked_sub(first)?)?).ok()
    }
}

/// The integer part of a number, at the ends of `i16` beyond them.
#[expect(
    clippy::cast_possible_truncation,
    reason = "the cast saturates, and a value beyond every table is to stay beyond every table"
)]
fn whole_part(value: f64) -> i16 {
    value as i16
}

/// One printed column.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Column {
    pub(crate) axis: Axis,
    pub(crate) printed: &'static str,
    /// Index of each value's row; gaps of the print are simply missing.
    pub(crate) rows: &'static [u8],
    pub(crate) values: Packed,
    /// Positions in `values` that the print sets in parentheses.
    pub(crate) parenthesised: &'static [u8],
    /// Positions in `values` that were recalled and not read.
    pub(crate) recalled: &'static [u8],
}

/// A published conversion table: rows on one scale, one column for each other.
#[derive(Clone, Copy, Debug)]
pub struct Table {
    pub(crate) key: &'static str,
    pub(crate) short: &'static str,
    pub(crate) title: &'static str,
    pub(crate) source: SourceId,
    pub(crate) class: Material,
    pub(crate) material: &'static str,
    pub(crate) conditions: &'static str,
    pub(crate) remarks: &'static [&'static str],
    pub(crate) row_axis: Axis,
    pub(crate) rows: Packed,
    pub(crate) columns: &'static [Column],
}

/// What the print says about the cells that a number rests on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Marks {
    /// A cell in parentheses: outside the recommended range of that test, for comparison only.
    pub parenthesised: bool,
    /// A cell that was recalled and not read in a source.
    pub recalled: bool,
}

impl Marks {
    pub(crate) fn or(self, other: Self) -> Self {
        Self {
            parenthesised: self.parenthesised || other.parenthesised,
            recalled: self.recalled || other.recalled,
        }
    }
}

/// A printed number with its marks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// The number as printed.
    pub value: f64,
    /// Decimals that the column prints.
    pub decimals: u8,
    /// Parentheses and recall.
    pub marks: Marks,
}

/// Where in a table a converted number stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Basis {
    /// On a printed row: both numbers are the print's own.
    Row {
        /// The row, on the table's row scale.
        row: f64,
    },
    /// Between two printed rows, on the monotone curve through the column.
    Between {
        /// The row below, on the table's row scale.
        lower: f64,
        /// The row above.
        upper: f64,
    },
}

/// A number read off a table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TableValue {
    /// The converted number, or the middle of `span` when the print repeats a value.
    pub value: f64,
    /// Ends of the run when the given number is printed on more than one row.
    pub span: Option<(f64, f64)>,
    /// Place on the table's row scale.
    pub row: f64,
    /// Row or rows it rests on.
    pub basis: Basis,
    /// Marks of the cells it rests on.
    pub marks: Marks,
    /// Change of the converted axis for one step of the row scale.
    pub slope: f64,
}

/// The part of an axis that a table can convert to another axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Lowest convertible value, and what it becomes.
    pub low: (f64, f64),
    /// Highest convertible value, and what it becomes.
    pub high: (f64, f64),
}

/// Names one table of this project.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TableId(pub(crate) u8);

impl TableId {
    /// Every table, in the order of the data file.
    pub fn all() -> impl Iterator<Item = (Self, &'static Table)> {
        (0u8..).zip(TABLES.iter()).map(|(i, table)| (Self(i), table))
    }

    /// Finds a table by its stable name.
    #[must_use]
    pub fn find(key: &str) -> Option<Self> {
        Self::all().find(|(_, t)| t.key.eq_ignore_ascii_case(key.trim())).map(|(id, _)| id)
    }

    /// What the name stands for; `None` cannot happen for a name that came from this crate.
    #[must_use]
    pub fn get(self) -> Option<&'static Table> {
        TABLES.get(usize::from(self.0))
    }
}

impl Table {
    /// Stable name, as in `--table astm-e140-t1`.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        self.key
    }

    /// Short name for a column of a results list.
    #[must_use]
    pub const fn short(&self) -> &'static str {
        self.short
    }

    /// Full title.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        self.title
    }

    /// The standard it is printed in.
    #[must_use]
    pub fn source(&self) -> Option<&'static Source> {
        self.source.get()
    }

    /// The class of materials it is asked for.
    #[must_use]
    pub const fn class(&self) -> Material {
        self.class
    }

    /// Materials it is valid for, by the standard.
    #[must_use]
    pub const fn material(&self) -> &'static str {
        self.material
    }

    /// Test conditions of its columns.
    #[must_use]
    pub const fn conditions(&self) -> &'static str {
        self.conditions
    }

    /// Oddities of the print.
    #[must_use]
    pub const fn remarks(&self) -> &'static [&'static str] {
        self.remarks
    }

    /// The scale its rows stand on.
    #[must_use]
    pub const fn row_axis(&self) -> Axis {
        self.row_axis
    }

    /// Its columns, as (axis, heading in print).
    pub fn columns(&self) -> impl Iterator<Item = (Axis, &'static str)> + '_ {
        self.columns.iter().map(|c| (c.axis, c.printed))
    }

    /// Its rows from soft to hard, on the row scale.
    pub fn rows(&self) -> impl Iterator<Item = f64> + '_ {
        (0..self.rows.values.len()).filter_map(|i| self.rows.get(i))
    }

    /// The printed cell of an axis on the row at `index`, counted from the softest; `None` where the
    /// print has a dash.
    #[must_use]
    pub fn cell(&self, index: usize, axis: Axis) -> Option<Cell> {
        let column = self.columns.iter().find(|c| c.axis == axis)?;
        let position = column.rows.iter().position(|&row| usize::from(row) == index)?;
        let marks = column.marks(position);
        Some(Cell { value: column.values.get(position)?, decimals: column.values.decimals, marks })
    }

    /// The curves of two columns over the row scale.
    #[inline]
    pub(crate) fn curves(&self, from: Axis, to: Axis) -> Option<(Curve<'_>, Curve<'_>)> {
        let column = |axis: Axis| self.columns.iter().find(|c| c.axis == axis);
        Some((Curve::new(self, column(from)?), Curve::new(self, column(to)?)))
    }

    /// Converts on this table alone, between its first and last printed cells of both columns.
    ///
    /// `None` when the table lacks a column or the value lies outside what it prints.
    ///
    /// # Units
    /// The numbers of the two axes.
    ///
    /// # Accuracy
    /// Printed rows are returned exactly; a value taken there and back returns to 1e-9. How far the
    /// number itself may be off is another matter: see [`crate::Width`].
    ///
    /// # Source
    /// Between rows: monotone shape-preserving cubic after F. N. Fritsch and R. E. Carlson, SIAM J.
    /// Numer. Anal. 17 (1980), with the weighted harmonic slopes of F. N. Fritsch and J. Butland
    /// (1984).
    #[must_use]
    pub fn convert(&self, from: Axis, value: f64, to: Axis) -> Option<TableValue> {
        let (source, target) = self.curves(from, to)?;
        Curve::convert(&source, &target, (from, value), to)
    }

    /// The part of `from` that this table converts to `to`.
    #[must_use]
    pub fn span(&self, from: Axis, to: Axis) -> Option<Span> {
        let (source, target) = self.curves(from, to)?;
        let (mut low, mut high) = source.row_span()?;
        for curve in [&source, &target] {
            let (first, last) = curve.row_span()?;
            (low, high) = (low.max(first), high.min(last));
        }
        for (axis, curve) in [(from, &source), (to, &target)] {
            let (end_low, end_high) = axis.conversion_ends();
            if let Some(Landing::At { row, .. }) = curve.find(end_low) {
                low = low.max(row);
            }
            if let Some(Landing::At { row, .. }) = curve.find(end_high) {
                high = high.min(row);
            }
        }
        // Read forward and converted again, so that an end is what `convert` gives there; an end between
        // rows may need a last bit inwards to be inside. Where two columns have no row in common, the
        // ends have changed places and neither converts.
        let end = |row: f64, inwards: fn(f64) -> f64| {
            let first = source.read(row, None, Marks::default())?.value;
            core::iter::successors(Some(first), |&value| Some(inwards(value)))
                .take(16)
                .find_map(|value| Some((value, self.convert(from, value, to)?.value)))
        };
        Some(Span { low: end(low, f64::next_up)?, high: end(high, f64::next_down)? })
    }
}

impl Column {
    pub(crate) fn marks(&self, position: usize) -> Marks {
        // Both lists rise; most are empty.
        let holds = |list: &[u8]| {
            !list.is_empty() && list.binary_search_by(|&p| usize::from(p).cmp(&position)).is_ok()
        };
        Marks { parenthesised: holds(self.parenthesised), recalled: holds(self.recalled) }
    }
}
