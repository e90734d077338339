//! The monotone cubic through one column of a table, forward and backward.
//!
//! The curve gives the column's scale as a function of the table's row scale. Slopes at the rows are
//! the weighted harmonic means of the neighbouring secants (zero where the column repeats a value),
//! with a one-sided three-point slope at the ends. The backward direction is the inverse of that same
//! curve, solved to the rounding of doubles, so that there and back returns the start.

use alloc::vec::Vec;

use crate::axis::Axis;
use crate::table::{Basis, Column, Marks, Table, TableValue};

#[derive(Debug)]
pub(crate) struct Curve<'a> {
    table: &'a Table,
    column: &'a Column,
    /// A column without gaps shares the table's row numbers.
    full: bool,
    /// The row scale itself: a straight line that needs no arithmetic.
    row_scale: bool,
    /// The cubics, one behind each cell; empty until they are worth working out at once.
    cubics: Vec<Segment>,
    /// Rows and values of the cells in printed numbers, with the cubics.
    rows: Knots,
    values: Knots,
}

/// Rising numbers that are searched often.
#[derive(Debug, Default)]
struct Knots {
    at: Vec<f64>,
    /// One over their distance, where they are evenly spaced; otherwise nought.
    pace: f64,
}

impl Knots {
    fn new(at: Vec<f64>) -> Self {
        let steps =
            || at.windows(2).map(|pair| pair.last().zip(pair.first()).map_or(0.0, |(b, a)| b - a));
        let even =
            steps().next().filter(|first| steps().all(|step| same(step, *first)) && *first > 0.0);
        let pace = even.map_or(0.0, |step| 1.0 / step);
        Self { at, pace }
    }

    /// The knot strictly below a number that lies strictly between two.
    #[inline]
    fn below(&self, number: f64) -> Option<usize> {
        let inside = |i: usize| {
            let pair = self.at.get(i..i.checked_add(2)?)?;
            matches!(pair, [low, high] if *low < number && number < *high).then_some(i)
        };
        let guess =
            if self.pace > 0.0 { place(self.pace * (number - self.at.first()?)) } else { None };
        guess
            .and_then(inside)
            .or_else(|| inside(self.at.partition_point(|knot| *knot <= number).checked_sub(1)?))
    }
}

/// A number as a place in a short list.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the cast saturates, and the place is looked at before it is used"
)]
fn place(number: f64) -> Option<usize> {
    (number >= 0.0).then_some(number as usize)
}

/// Where a value of the column stands on the row scale.
pub(crate) enum Landing {
    /// At one place; `near` is the number of a table row close below it, when the search met one.
    At { row: f64, near: Option<usize>, marks: Marks },
    /// Anywhere on a run of rows that print the same value.
    Flat { low: f64, high: f64, marks: Marks },
}

/// The cubic between two neighbouring cells, in the fraction of the way from one to the other; both
/// axes in the integers that the columns hold, which `x_unit` and `y_unit` divide into printed numbers.
#[derive(Clone, Copy, Debug)]
struct Segment {
    x_unit: f64,
    y_unit: f64,
    x0: f64,
    width: f64,
    y0: f64,
    y1: f64,
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

impl Segment {
    /// Slope in printed numbers.
    fn slope_at(&self, t: f64) -> f64 {
        self.slope(t) * self.x_unit / (self.width * self.y_unit)
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

/// Slope at an end, from its own secant `near` and the next one `far`. Where both run the same way, as in every
/// table, it can only be too small, and then it is nought; where the curve turns, it is at most three secants,
/// or the first piece would overshoot.
fn end_slope((h0, near): (f64, f64), (h1, far): (f64, f64)) -> f64 {
    let slope = ((2.0 * h0 + h1) * near - h0 * far) / (h0 + h1);
    if slope * near <= 0.0 {
        0.0
    } else if near * far < 0.0 && slope.abs() > 3.0 * near.abs() {
        3.0 * near
    } else {
        slope
    }
}

/// Width, secant and the slopes at both ends of the piece from `start` to `end`, from the points around it.
#[inline]
fn piece(
    before: Option<(f64, f64)>,
    (start, end): ((f64, f64), (f64, f64)),
    after: Option<(f64, f64)>,
) -> (f64, f64, f64, f64) {
    let step = |(x0, y0): (f64, f64), (x1, y1): (f64, f64)| (x1 - x0, (y1 - y0) / (x1 - x0));
    let here = step(start, end);
    let before = before.map(|point| step(point, start));
    let after = after.map(|point| step(end, point));
    // The straight line itself for a column of two cells.
    let one_sided = |other: Option<(f64, f64)>| other.map_or(here.1, |far| end_slope(here, far));
    let d0 = before.map_or_else(|| one_sided(after), |before| inner_slope(before, here));
    let d1 = after.map_or_else(|| one_sided(before), |after| inner_slope(here, after));
    (here.0, here.1, d0, d1)
}

/// The monotone cubic (Fritsch-Carlson, slopes by weighted harmonic means) through points, the same curve that
/// runs between the rows of the conversion tables. Between two points it never leaves their values; where the
/// points turn, it turns at the point.
///
/// `points` are pairs of x and y with rising x; the unit is that of the points. `None` outside the first
/// and the last of them: nothing is extrapolated.
///
/// Source: F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, in the form of
/// SciPy's `PchipInterpolator`.
///
/// # Example
/// ```
/// use biteband_hardness::monotone_cubic;
/// let points = [(0.0, 60.0), (5.0, 58.0), (10.0, 40.0), (20.0, 38.0)];
/// assert_eq!(monotone_cubic(&points, 10.0), Some(40.0));
/// assert!(monotone_cubic(&points, 7.0).is_some_and(|y| y > 40.0 && y < 58.0));
/// assert_eq!(monotone_cubic(&points, 20.1), None);
/// ```
#[must_use]
pub fn monotone_cubic(points: &[(f64, f64)], x: f64) -> Option<f64> {
    let end = points.iter().position(|point| point.0 >= x)?;
    let (&end_point, place) = (points.get(end)?, end.checked_sub(1));
    if same(end_point.0, x) {
        return Some(end_point.1);
    }
    let start = place?;
    let start_point = *points.get(start)?;
    let before = start.checked_sub(1).and_then(|i| points.get(i)).copied();
    let after = points.get(end.saturating_add(1)).copied();
    let (width, secant, d0, d1) = piece(before, (start_point, end_point), after);
    let t = (x - start_point.0) / width;
    let bend = 3.0 * secant - 2.0 * d0 - d1;
    let value = start_point.1 + t * width * (d0 + t * (bend + t * (d0 + d1 - 2.0 * secant)));
    let (a, b) = (start_point.1, end_point.1);
    // Not `clamp`, which would panic over points that are no numbers.
    Some(value.max(a.min(b)).min(a.max(b)))
}

impl<'a> Curve<'a> {
    pub(crate) fn new(table: &'a Table, column: &'a Column) -> Self {
        let full = column.rows.len() == table.rows.values.len();
        Self {
            table,
            column,
            full,
            row_scale: column.axis == table.row_axis,
            cubics: Vec::new(),
            rows: Knots::default(),
            values: Knots::default(),
        }
    }

    /// The same with every cubic worked out.
    pub(crate) fn prepared(mut self) -> Self {
        let ends = 0..self.column.rows.len().saturating_sub(1);
        self.cubics = ends.filter_map(|i| self.worked_out(i)).collect();
        let cells = 0..self.column.rows.len();
        self.rows = Knots::new(cells.clone().filter_map(|i| self.x(i)).collect());
        self.values = Knots::new(cells.filter_map(|i| self.y(i)).collect());
        self
    }

    /// The number alone that [`Curve::convert`] gives, to the last bit, for a value between two cells of
    /// prepared curves; nothing where the long way has to be asked.
    #[inline]
    pub(crate) fn number(source: &Self, target: &Self, value: f64) -> Option<f64> {
        let (row, near) = if source.row_scale {
            let marked =
                !source.column.parenthesised.is_empty() || !source.column.recalled.is_empty();
            if marked {
                source.values.below(value)?;
            }
            (value, None)
        } else {
            let i = source.values.below(value)?;
            let segment = source.cubics.get(i)?;
            let t = solve(segment, value * segment.y_unit);
            let row = (segment.x0 + t * segment.width) / segment.x_unit;
            let (lower, upper) = (source.rows.at.get(i)?, source.rows.at.get(i.checked_add(1)?)?);
            let row = biteband_quantity::confined(row, lower.next_up(), upper.next_down());
            (row, (source.full && target.full).then_some(i))
        };
        let i = near.or_else(|| target.rows.below(row))?;
        if target.row_scale {
            return Some(row);
        }
        let segment = target.cubics.get(i)?;
        let t = (row * segment.x_unit - segment.x0) / segment.width;
        Some(biteband_quantity::confined(segment.value(t), segment.y0, segment.y1) / segment.y_unit)
    }

    #[inline]
    fn x(&self, i: usize) -> Option<f64> {
        let row = if self.full { i } else { usize::from(*self.column.rows.get(i)?) };
        self.table.rows.get(row)
    }

    /// Marks of a cell, or of the two cells around a place between rows.
    fn marks(&self, i: usize, next: usize) -> Marks {
        if self.column.parenthesised.is_empty() && self.column.recalled.is_empty() {
            return Marks::default();
        }
        self.column.marks(i).or(self.column.marks(next))
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

    /// Row and value of a cell as the integers that the table holds.
    fn cell(&self, i: usize) -> Option<(f64, f64)> {
        let row = if self.full { i } else { usize::from(*self.column.rows.get(i)?) };
        let (x, y) = (self.table.rows.values.get(row)?, self.column.values.values.get(i)?);
        Some((f64::from(*x), f64::from(*y)))
    }

    /// The cubic from cell `i` to the next.
    #[inline]
    fn segment(&self, i: usize) -> Option<Segment> {
        if self.cubics.is_empty() { self.worked_out(i) } else { self.cubics.get(i).copied() }
    }

    #[inline]
    fn worked_out(&self, i: usize) -> Option<Segment> {
        let (start, end) = (self.cell(i)?, self.cell(i.checked_add(1)?)?);
        let before = i.checked_sub(1).and_then(|j| self.cell(j));
        let after = i.checked_add(2).and_then(|j| self.cell(j));
        let (width, secant, d0, d1) = piece(before, (start, end), after);
        Some(Segment {
            x_unit: self.table.rows.unit(),
            y_unit: self.column.values.unit(),
            x0: start.0,
            width,
            y0: start.1,
            y1: end.1,
            c1: width * d0,
            c2: width * (3.0 * secant - 2.0 * d0 - d1),
            c3: width * (d0 + d1 - 2.0 * secant),
        })
    }

    /// The last cell at or below a row, with its row.
    #[inline]
    fn cell_at_or_below(&self, row: f64, near: Option<usize>) -> Option<(usize, f64)> {
        if let (true, Some(near)) = (self.full, near.or_else(|| self.table.rows.even_place(row)))
            && let (Some(x), Some(next)) = (self.x(near), self.x(near.saturating_add(1)))
            && x <= row
            && row < next
        {
            return Some((near, x));
        }
        let at_or_below = if self.full {
            self.table.rows.count_up_to(row)
        } else {
            let below = |&r: &u8| self.table.rows.get(usize::from(r)).is_some_and(|x| x <= row);
            self.column.rows.partition_point(below)
        };
        let i = at_or_below.checked_sub(1)?;
        let x = self.x(i)?;
        if x > row {
            let i = i.checked_sub(1)?;
            return Some((i, self.x(i)?));
        }
        Some((i, x))
    }

    /// Converts a value of one column to another column of the same table.
    #[inline]
    pub(crate) fn convert(
        source: &Self,
        target: &Self,
        (from, value): (Axis, f64),
        to: Axis,
    ) -> Option<TableValue> {
        if !from.converts(value) {
            return None;
        }
        let found = match source.find(value)? {
            Landing::At { row, near, marks } => target.read(row, near, marks)?,
            Landing::Flat { low, high, marks } => {
                let (below, above) =
                    (target.read(low, None, marks)?, target.read(high, None, marks)?);
                let (Basis::Row { row: lower } | Basis::Between { lower, .. }) = below.basis;
                let (Basis::Row { row: upper } | Basis::Between { upper, .. }) = above.basis;
                TableValue {
                    value: f64::midpoint(below.value, above.value),
                    span: Some((below.value, above.value)),
                    row: f64::midpoint(low, high),
                    basis: Basis::Between { lower, upper },
                    marks: below.marks.or(above.marks),
                    slope: f64::midpoint(below.slope, above.slope),
                }
            }
        };
        let (low, high) = found.span.unwrap_or((found.value, found.value));
        (to.converts(low) && to.converts(high)).then_some(found)
    }

    /// The column's value at a place of the row scale.
    ///
    /// `near` is a table row close below, if one is known.
    #[inline]
    pub(crate) fn read(&self, row: f64, near: Option<usize>, seen: Marks) -> Option<TableValue> {
        let (i, lower) = self.cell_at_or_below(row, near)?;
        if same(lower, row) {
            return self.read_row(i, row, seen);
        }
        let next = i.checked_add(1)?;
        let upper = self.x(next)?;
        let (value, slope) = if self.row_scale {
            (row, 1.0)
        } else {
            let segment = self.segment(i)?;
            let t = (row * segment.x_unit - segment.x0) / segment.width;
            let value = biteband_quantity::confined(segment.value(t), segment.y0, segment.y1);
            (value / segment.y_unit, segment.slope_at(t))
        };
        Some(TableValue {
            value,
            span: None,
            row,
            basis: Basis::Between { lower, upper },
            marks: seen.or(self.marks(i, next)),
            slope,
        })
    }

    /// The printed cell itself.
    #[inline(never)]
    fn read_row(&self, i: usize, row: f64, seen: Marks) -> Option<TableValue> {
        let slope = if self.row_scale {
            1.0
        } else {
            let at_end = i == self.last()?;
            let segment = self.segment(if at_end { i.checked_sub(1)? } else { i })?;
            segment.slope_at(if at_end { 1.0 } else { 0.0 })
        };
        Some(TableValue {
            value: self.y(i)?,
            span: None,
            row,
            basis: Basis::Row { row },
            marks: seen.or(self.marks(i, i)),
            slope,
        })
    }

    /// The place on the row scale where the column has this value.
    #[inline]
    pub(crate) fn find(&self, value: f64) -> Option<Landing> {
        if self.row_scale && self.column.parenthesised.is_empty() && self.column.recalled.is_empty()
        {
            // A place beyond the last row is refused by the column that is read there.
            return Some(Landing::At { row: value, near: None, marks: Marks::default() });
        }
        let mut i = self.column.values.count_up_to(value).checked_sub(1)?;
        let mut below = self.y(i)?;
        while below > value {
            i = i.checked_sub(1)?;
            below = self.y(i)?;
        }
        if same(below, value) {
            return self.find_row(i, value);
        }
        let next = i.checked_add(1)?;
        let (lower, upper) = (self.x(i)?, self.x(next)?);
        let marks = self.marks(i, next);
        if self.row_scale {
            return Some(Landing::At { row: value, near: Some(i), marks });
        }
        let segment = self.segment(i)?;
        let t = solve(&segment, value * segment.y_unit);
        let row = (segment.x0 + t * segment.width) / segment.x_unit;
        // A value between two cells stands between their rows, however near to one of them: rounding
        // must not carry it onto the last row of the other column.
        let row = biteband_quantity::confined(row, lower.next_up(), upper.next_down());
        let near = if self.full { Some(i) } else { self.column.rows.get(i).map(|&r| r.into()) };
        Some(Landing::At { row, near, marks })
    }

    /// The row of a printed value, or the run of rows that repeat it, given the last of them.
    #[inline(never)]
    fn find_row(&self, last: usize, value: f64) -> Option<Landing> {
        let mut first = last;
        while let Some(below) = first.checked_sub(1) {
            if !same(self.y(below)?, value) {
                break;
            }
            first = below;
        }
        let marks = self.marks(first, last);
        Some(if first == last {
            Landing::At { row: self.x(first)?, near: None, marks }
        } else {
            Landing::Flat { low: self.x(first)?, high: self.x(last)?, marks }
        })
    }
}

/// The fraction of a rising segment at which it reaches `value`: Halley's steps, kept inside a
/// shrinking bracket so that a flat end cannot throw them out, until the error left after a step,
/// which goes with its cube, is below the last bit.
#[inline]
fn solve(segment: &Segment, value: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    let mut t = (value - segment.y0) / (segment.y1 - segment.y0);
    let mut steps = 0;
    loop {
        let miss = segment.value(t) - value;
        if miss > 0.0 {
            high = t;
        } else if miss < 0.0 {
            low = t;
        } else {
            return t;
        }
        let slope = segment.slope(t);
        let bend = segment.c2 + 3.0 * segment.c3 * t;
        let step = miss * slope / (slope * slope - miss * bend);
        let tried = t - step;
        let left = step * step * step.abs() * (bend * bend + (segment.c3 * slope).abs());
        steps += 1;
        // Halving alone would be done after as many steps as a double has bits.
        if left < 1e-17 * slope * slope || steps == 64 {
            return biteband_quantity::confined(tried, low, high);
        }
        t = if tried > low && tried < high { tried } else { f64::midpoint(low, high) };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of SciPy 1.17 `PchipInterpolator`.
    #[test]
    fn falling_points_are_joined_as_scipy_joins_them() {
        let near = |points: &[(f64, f64)], x: f64, expected: f64| {
            let found = monotone_cubic(points, x).unwrap();
            assert!((found - expected).abs() < 1e-12, "{x}: {found}");
            let mirrored: Vec<(f64, f64)> = points.iter().map(|&(x, y)| (x, -y)).collect();
            assert_eq!(monotone_cubic(&mirrored, x), Some(-found));
        };
        let bar = [(0.0, 60.0), (1.5, 60.0), (3.0, 55.0), (5.0, 30.0), (50.0, 20.0)];
        near(&bar, 1.0, 60.0);
        near(&bar, 2.0, 59.272_809_394_760_614);
        near(&bar, 4.0, 41.374_212_449_664_21);
        near(&bar, 7.0, 28.812_458_958_205_62);
        near(&bar, 40.0, 20.192_470_119_488_334);
        near(&[(0.0, 60.0), (5.0, 58.0)], 1.0, 59.6);
        // The curve turns behind the first piece, whose slope is held at three secants.
        near(&[(427.0, 53.0), (538.0, 54.0), (593.0, 51.0)], 482.5, 53.875);
        near(&bar, 50.0, 20.0);
    }

    #[test]
    fn nothing_beyond_the_points() {
        let bar = [(1.0, 60.0), (5.0, 30.0)];
        for x in [0.9, 5.1, f64::NAN] {
            assert_eq!(monotone_cubic(&bar, x), None);
        }
        assert_eq!(monotone_cubic(&[], 1.0), None);
        assert!(monotone_cubic(&[(0.0, f64::NAN), (1.0, f64::NAN)], 0.5).is_some_and(f64::is_nan));
    }
}
