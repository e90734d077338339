//! The monotone cubic through one column of a table, forward and backward.
//!
//! The curve gives the column's scale as a function of the table's row scale. Slopes at the rows are
//! the weighted harmonic means of the neighbouring secants (zero where the column repeats a value),
//! with a one-sided three-point slope at the ends. The backward direction is the inverse of that same
//! curve, solved to the rounding of doubles, so that there and back returns the start.

use crate::table::{Basis, Column, Marks, Table, TableValue};

pub(crate) struct Curve<'a> {
    table: &'a Table,
    column: &'a Column,
}

/// Where a value of the column stands on the row scale.
pub(crate) enum Landing {
    /// At one place.
    At { row: f64, marks: Marks },
    /// Anywhere on a run of rows that print the same value.
    Flat { low: f64, high: f64, marks: Marks },
}

/// The cubic between two neighbouring cells, in the fraction of the way from one to the other.
struct Segment {
    x0: f64,
    width: f64,
    y0: f64,
    c1: f64,
    c2: f64,
    c3: f64,
}

impl Segment {
    fn value(&self, t: f64) -> f64 {
        self.y0 + t * (self.c1 + t * (self.c2 + t * self.c3))
    }

    fn slope(&self, t: f64) -> f64 {
        self.c1 + t * (2.0 * self.c2 + t * (3.0 * self.c3))
    }
}

fn same(a: f64, b: f64) -> bool {
    a.total_cmp(&b).is_eq()
}

/// Slope at a row between two secants `before` and `after` over steps `h0` and `h1`: their weighted
/// harmonic mean, written with a single division.
fn inner_slope((h0, before): (f64, f64), (h1, after): (f64, f64)) -> f64 {
    let product = before * after;
    if product <= 0.0 {
        return 0.0;
    }
    let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
    (w0 + w1) * product / (w0 * after + w1 * before)
}

/// Slope at an end, from its own secant `near` and the next one `far`.
fn end_slope((h0, near): (f64, f64), (h1, far): (f64, f64)) -> f64 {
    let slope = ((2.0 * h0 + h1) * near - h0 * far) / (h0 + h1);
    if slope * near <= 0.0 {
        0.0
    } else if near * far <= 0.0 && slope.abs() > 3.0 * near.abs() {
        3.0 * near
    } else {
        slope
    }
}

impl<'a> Curve<'a> {
    pub(crate) fn new(table: &'a Table, column: &'a Column) -> Self {
        Self { table, column }
    }

    fn x(&self, i: usize) -> Option<f64> {
        self.table.rows.get(usize::from(*self.column.rows.get(i)?))
    }

    fn y(&self, i: usize) -> Option<f64> {
        self.column.values.get(i)
    }

    fn last(&self) -> Option<usize> {
        self.column.rows.len().checked_sub(1)
    }

    /// First and last row that have a cell in this column.
    pub(crate) fn row_span(&self) -> Option<(f64, f64)> {
        Some((self.x(0)?, self.x(self.last()?)?))
    }

    fn cell(&self, i: usize) -> Option<(f64, f64)> {
        Some((self.x(i)?, self.y(i)?))
    }

    /// The cubic from cell `i` to the next.
    fn segment(&self, i: usize) -> Option<Segment> {
        let step = |(x0, y0): (f64, f64), (x1, y1): (f64, f64)| (x1 - x0, (y1 - y0) / (x1 - x0));
        let (start, end) = (self.cell(i)?, self.cell(i.checked_add(1)?)?);
        let here = step(start, end);
        let before = i.checked_sub(1).and_then(|j| self.cell(j)).map(|cell| step(cell, start));
        let after = i.checked_add(2).and_then(|j| self.cell(j)).map(|cell| step(end, cell));
        let (d0, d1) = match (before, after) {
            (Some(before), Some(after)) => (inner_slope(before, here), inner_slope(here, after)),
            (Some(before), None) => (inner_slope(before, here), end_slope(here, before)),
            (None, Some(after)) => (end_slope(here, after), inner_slope(here, after)),
            (None, None) => (here.1, here.1),
        };
        let (width, secant) = here;
        Some(Segment {
            x0: start.0,
            width,
            y0: start.1,
            c1: width * d0,
            c2: width * (3.0 * secant - 2.0 * d0 - d1),
            c3: width * (d0 + d1 - 2.0 * secant),
        })
    }

    /// The row scale itself: a straight line that needs no arithmetic.
    fn is_row_scale(&self) -> bool {
        self.column.axis == self.table.row_axis
    }

    /// The column's value at a place of the row scale.
    pub(crate) fn read(&self, row: f64, seen: Marks) -> Option<TableValue> {
        let last = self.last()?;
        let (first_row, last_row) = self.row_span()?;
        if row < first_row || row > last_row {
            return None;
        }
        // A column without gaps shares the table's row numbers, so one search on the rows serves it.
        let position = if self.column.rows.len() == self.table.rows.values.len() {
            self.table.rows.count_up_to(row).saturating_sub(1)
        } else {
            self.column
                .rows
                .partition_point(|&r| self.table.rows.get(usize::from(r)).is_some_and(|x| x <= row))
                .saturating_sub(1)
        };
        let mut i = position.min(last);
        if self.x(i)? > row {
            i = i.checked_sub(1)?;
        }
        let on_row = same(self.x(i)?, row);
        let base = if i == last { i.checked_sub(1)? } else { i };
        let (value, slope) = if self.is_row_scale() {
            (row, 1.0)
        } else {
            let segment = self.segment(base)?;
            let t = (row - segment.x0) / segment.width;
            (segment.value(t), segment.slope(t) / segment.width)
        };
        if on_row {
            return Some(TableValue {
                value: self.y(i)?,
                span: None,
                row,
                basis: Basis::Row { row },
                marks: seen.or(self.column.marks(i)),
                slope,
            });
        }
        let next = i.checked_add(1)?;
        Some(TableValue {
            value: value.clamp(self.y(i)?, self.y(next)?),
            span: None,
            row,
            basis: Basis::Between { lower: self.x(i)?, upper: self.x(next)? },
            marks: seen.or(self.column.marks(i)).or(self.column.marks(next)),
            slope,
        })
    }

    /// The place on the row scale where the column has this value.
    pub(crate) fn find(&self, value: f64) -> Option<Landing> {
        let last = self.last()?;
        if !(value >= self.y(0)? && value <= self.y(last)?) {
            return None;
        }
        let mut i = self.column.values.count_up_to(value).saturating_sub(1).min(last);
        if self.y(i)? > value {
            i = i.checked_sub(1)?;
        }
        if same(self.y(i)?, value) {
            let mut first = i;
            while let Some(below) = first.checked_sub(1) {
                if !same(self.y(below)?, value) {
                    break;
                }
                first = below;
            }
            let marks = self.column.marks(first).or(self.column.marks(i));
            return Some(if first == i {
                Landing::At { row: self.x(i)?, marks }
            } else {
                Landing::Flat { low: self.x(first)?, high: self.x(i)?, marks }
            });
        }
        let next = i.checked_add(1)?;
        let marks = self.column.marks(i).or(self.column.marks(next));
        if self.is_row_scale() {
            return Some(Landing::At { row: value, marks });
        }
        let segment = self.segment(i)?;
        let row = segment.x0 + solve(&segment, value, self.y(next)?) * segment.width;
        // A value between two cells stands between their rows, however near to one of them: rounding
        // must not carry it onto the last row of the other column.
        let row = row.clamp(segment.x0.next_up(), self.x(next)?.next_down());
        Some(Landing::At { row, marks })
    }
}

/// The fraction of a rising segment at which it reaches `value`: Newton's steps, kept inside a
/// shrinking bracket so that a flat end cannot throw them out, until the error left after a step,
/// its square times half the curvature over the slope, is below the last bit.
fn solve(segment: &Segment, value: f64, top: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    let mut t = (value - segment.y0) / (top - segment.y0);
    for _ in 0..64 {
        let miss = segment.value(t) - value;
        if miss > 0.0 {
            high = t;
        } else if miss < 0.0 {
            low = t;
        } else {
            break;
        }
        let slope = segment.slope(t);
        let step = miss / slope;
        let bend = (segment.c2 + 3.0 * segment.c3 * t).abs();
        let tried = t - step;
        if step * step * bend < 1e-17 * slope {
            return tried.clamp(low, high);
        }
        t = if tried > low && tried < high { tried } else { f64::midpoint(low, high) };
    }
    t
}
