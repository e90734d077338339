//! The conversion strip: scales engraved side by side, hard on top, so that one level line reads off all.

use biteband_hardness::{Axis, Choice, Conversion, Marks, TableId, spans};
use biteband_quantity::{Shown, confined, sort_by_number};

use super::svg::{
    Anchor, Canvas, HALF_FIGURE, MEDIUM, NOTE_TYPE, THICK, THIN, WALL_TYPE, count_of, fitting,
    text_width,
};
use super::{SHORTEST, Scales, Sheet, add, add_table, marked, sheet_number};
use crate::refusal::Refusal;
use crate::words::Print;

/// Scales on one sheet beside the one read from; more would need smaller type.
const MOST: usize = 5;
/// From the left end of a column to its engraved line: room for the name of the table.
const SPINE: f64 = 4.0;
/// Width of the base scale on the right.
const OWN: f64 = 24.0;
/// The longest tick, and the gap before its number.
const TICK: f64 = 4.4;
const GAP: f64 = 0.9;
/// Half of the gap that parts two tables on one line.
const BREAK: f64 = 0.6;
/// Small ticks stand no closer, in mm.
const LEAST_TICK: f64 = 1.5;

/// The part of the base scale that one table serves.
struct Piece {
    table: TableId,
    low: f64,
    high: f64,
}

/// The tables of a scale from soft to hard: at every place the first that holds it, as in a conversion.
fn pieces(scales: &Scales<'_>, to: Axis) -> Vec<Piece> {
    let Scales { base, low, high, .. } = *scales;
    let held: Vec<Piece> = spans(base, to, Choice::STEEL)
        .map(|(table, span)| Piece { table, low: low.max(span.low.0), high: high.min(span.high.0) })
        .filter(|piece| piece.low < piece.high)
        .collect();
    let mut ends: Vec<f64> = held.iter().flat_map(|piece| [piece.low, piece.high]).collect();
    sort_by_number(&mut ends, |end| *end);
    let mut pieces: Vec<Piece> = Vec::new();
    for (&low, &high) in ends.iter().zip(ends.iter().skip(1)) {
        let middle = f64::midpoint(low, high);
        let Some(first) = held.iter().find(|piece| piece.low < middle && middle < piece.high)
        else {
            continue;
        };
        match pieces.last_mut() {
            Some(last) if last.table == first.table && low <= last.high => last.high = high,
            _ => pieces.push(Piece { table: first.table, low, high }),
        }
    }
    pieces.retain(|piece| piece.high - piece.low > SHORTEST * (high - low));
    pieces
}

struct Tick {
    y: f64,
    length: f64,
    /// Its number and whether it is one of the roundest.
    label: Option<(String, bool)>,
}

/// The engraved part of the sheet.
struct Field<'a> {
    scales: &'a Scales<'a>,
    top: f64,
    bottom: f64,
}

impl Field<'_> {
    fn y(&self, base: f64) -> f64 {
        let share = (self.scales.high - base) / (self.scales.high - self.scales.low);
        self.top + share * (self.bottom - self.top)
    }
}

/// The smallest power of ten that leaves room for several numbers, over a piece with shown ends.
fn whole_step(low: f64, high: f64, length: f64, size: f64) -> f64 {
    let roomy = |whole: &f64| whole * length / (high - low) >= 3.2 * size;
    [0.1, 1.0, 10.0, 100.0].into_iter().find(roomy).unwrap_or(1000.0)
}

/// The ticks between two shown numbers. From one whole step to the next, each as fine as there is room for.
fn graduate(
    low: f64,
    high: f64,
    whole: f64,
    size: f64,
    place: &dyn Fn(f64) -> Option<(f64, Marks)>,
) -> Vec<Tick> {
    const NUMBERED: [u32; 4] = [10, 5, 2, 1];
    const SMALL: [u32; 7] = [100, 50, 20, 10, 5, 2, 1];
    // A round number may lie a last bit outside its table.
    let inside = |value: f64| {
        let held = value > low - 1e-9 && value < high + 1e-9;
        if held { place(confined(value, low, high)) } else { None }
    };
    let mut ticks: Vec<Tick> = Vec::new();
    let mut k = (low / whole).floor();
    while k * whole <= high {
        let value = |j: u32, divisor: u32| (k + f64::from(j) / f64::from(divisor)) * whole;
        let fits = |divisor: u32, least: f64| {
            (0..divisor).all(|j| match (inside(value(j, divisor)), inside(value(j + 1, divisor))) {
                (Some((one, _)), Some((next, _))) => (one - next).abs() >= least,
                _ => true,
            })
        };
        let numbered = NUMBERED.into_iter().find(|&d| fits(d, 1.2 * size)).unwrap_or(1);
        let small = SMALL.into_iter().find(|&d| d % numbered == 0 && fits(d, LEAST_TICK));
        let small = small.unwrap_or(numbered);
        let per_number = small / numbered;
        for j in 0..small {
            let value = value(j, small);
            let Some((y, marks)) = inside(value) else { continue };
            let (length, label) = if j % per_number == 0 {
                (TICK, Some((marked(&Shown(value).to_string(), marks), j == 0)))
            } else if per_number % 2 == 0 && j % (per_number / 2) == 0 {
                (3.0, None)
            } else {
                (1.8, None)
            };
            ticks.push(Tick { y, length, label });
        }
        k += 1.0;
    }
    ticks
}

/// One engraved scale in its column.
struct Rule {
    heading: String,
    width: String,
    pieces: Vec<Engraved>,
}

/// The line of one table with its ticks, from soft to hard.
struct Engraved {
    table: &'static str,
    bottom: f64,
    top: f64,
    ticks: Vec<Tick>,
}

impl Rule {
    fn own(field: &Field<'_>, size: f64) -> Self {
        let scales = field.scales;
        let factor = scales.factor(scales.base);
        let place = |value: f64| Some((field.y(value * factor), Marks::default()));
        let (low, high) = (scales.low / factor, scales.high / factor);
        let whole = whole_step(low, high, field.bottom - field.top, size);
        let ticks = graduate(low, high, whole, size, &place);
        let (bottom, top) = (field.bottom, field.top);
        let pieces = vec![Engraved { table: "", bottom, top, ticks }];
        Self { heading: scales.heading(scales.base), width: String::new(), pieces }
    }

    fn other(field: &Field<'_>, to: Axis, size: f64) -> Self {
        let scales = field.scales;
        let factor = scales.factor(to);
        let pieces = pieces(scales, to);
        let there = |piece: &Piece, base: f64| {
            Some(piece.table.get()?.convert(scales.base, base, to)?.value / factor)
        };
        let longest = pieces.iter().max_by(|a, b| (a.high - a.low).total_cmp(&(b.high - b.low)));
        let middle: Option<Conversion> = longest
            .and_then(|piece| scales.converted(f64::midpoint(piece.low, piece.high), to).ok());
        // One whole step for all pieces, so that the same numbers stand out on each.
        let whole = longest.and_then(|piece| {
            let length = field.y(piece.low) - field.y(piece.high);
            Some(whole_step(there(piece, piece.low)?, there(piece, piece.high)?, length, size))
        });
        let mut drawn: Vec<Engraved> = Vec::new();
        for piece in &pieces {
            let (Some(table), Some(whole)) = (piece.table.get(), whole) else { continue };
            let place = |value: f64| {
                let back = table.convert(to, value * factor, scales.base)?;
                Some((field.y(back.value), back.marks))
            };
            let (Some(low), Some(high)) = (there(piece, piece.low), there(piece, piece.high))
            else {
                continue;
            };
            let mut ticks = graduate(low, high, whole, size, &place);
            let (mut bottom, top) = (field.y(piece.low), field.y(piece.high));
            if let Some(below) = drawn.last_mut().filter(|below| below.top - bottom < BREAK) {
                below.top += BREAK;
                bottom -= BREAK;
                // Two tables speak here; a number of the upper one that would touch gives way.
                let numbered = |tick: &&Tick| tick.label.is_some();
                let last = below.ticks.iter().rfind(numbered).map_or(f64::INFINITY, |tick| tick.y);
                for tick in ticks.iter_mut().filter(|tick| last - tick.y < 1.15 * size) {
                    (tick.length, tick.label) = (1.8, None);
                }
            }
            drawn.push(Engraved { table: table.short(), bottom, top, ticks });
        }
        Self {
            heading: scales.heading(to),
            width: middle.map(|found| super::width(&found)).unwrap_or_default(),
            pieces: drawn,
        }
    }

    fn draw(&self, canvas: &mut Canvas, left: f64, pitch: f64, top: f64, size: f64, own: bool) {
        canvas.group(&self.heading);
        let spine = left + SPINE;
        let heading = fitting(&self.heading, pitch - 3.5, 6.4);
        canvas.text((left, top - 9.0), heading, Anchor::Start, true, &self.heading);
        canvas.text((left, top - 3.0), WALL_TYPE, Anchor::Start, false, &self.width);
        let weight = if own { THICK } else { MEDIUM };
        for Engraved { table, bottom, top: end, ticks } in &self.pieces {
            canvas.line((spine, *bottom), (spine, *end), weight);
            // Feet at both ends: here the table stops, wherever the next one begins.
            for y in [*bottom, *end] {
                canvas.line((spine - 2.6, y), (spine, y), weight);
            }
            let name = fitting(table, bottom - end - 1.2, NOTE_TYPE);
            canvas.climbing((spine - 0.9, bottom - 0.8), name, false, table);
            for tick in ticks {
                let thickness = if tick.label.is_some() { MEDIUM } else { THIN };
                canvas.line((spine, tick.y), (spine + tick.length, tick.y), thickness);
                let Some((label, round)) = &tick.label else { continue };
                let x = spine + TICK + GAP;
                let width = text_width(label, size);
                canvas.blank(x - 0.4, tick.y - 0.45 * size, width.min(pitch - 10.0), 0.9 * size);
                let at = (x, tick.y + HALF_FIGURE * size);
                canvas.text(at, size, Anchor::Start, own || *round, label);
            }
        }
        canvas.end_group();
    }
}

/// Draws the strip: as many sheets as the scales need, each with the scale read from on it.
///
/// Every tick stands where [`biteband_hardness::convert`] puts its number, between the ends of the table that
/// serves that place; where another table takes over or none reaches, the engraved line ends.
///
/// # Errors
/// A refusal when the ends are off the scale, turned round or nearly equal, a scale is named twice, is the
/// base itself, or is reached by no table from anywhere between the ends.
pub fn strip(scales: &Scales<'_>) -> Result<Vec<Sheet>, Refusal> {
    scales.check()?;
    let count = scales.to.chunks(MOST).count();
    // Spread evenly, so that the last sheet is not left with one scale.
    let per_sheet = scales.to.len().div_ceil(count);
    let groups = scales.to.chunks(per_sheet).enumerate();
    Ok(groups
        .map(|(i, to)| sheet(scales, to, &sheet_number(scales.language, i + 1, count)))
        .collect())
}

fn sheet(scales: &Scales<'_>, to: &[Axis], number: &str) -> Sheet {
    let title = scales.language.print(Print::Strip { span: &scales.span() }).into_owned();
    let mut canvas = Canvas::new(scales.paper, &title);
    let top = canvas.title(&title, number) + 3.5;
    let caution = scales.language.print(Print::Estimates);
    let top = canvas.paragraph(top, WALL_TYPE, false, &caution) + 13.5;

    let (left, right) = canvas.sides();
    // The scale read from stands on both sides of many, so that a ruler lies level by itself.
    let both = to.len() > 2;
    let others = count_of(to.len());
    // The last column needs no room for a neighbour.
    let (columns, last) = if both { (others + 1.0, OWN) } else { (others + 1.0, 0.0) };
    let pitch = ((right - left - last) / columns).min(46.0);
    let size = confined(0.18 * pitch, WALL_TYPE, 5.2);

    let (mut tables, mut marks) = (Vec::new(), Marks::default());
    for &axis in to {
        for piece in pieces(scales, axis) {
            add_table(&mut tables, piece.table);
            let Some(table) = piece.table.get() else { continue };
            let steps = (0..=40_u32).map(|i| f64::from(i) / 40.0);
            for base in steps.map(|share| piece.low + share * (piece.high - piece.low)) {
                let at = table.convert(scales.base, base.min(piece.high), axis);
                add(&mut marks, at.map(|at| at.marks).unwrap_or_default());
            }
        }
    }
    let notes = scales.notes(to, &tables, marks, &[Print::StripEnds]);
    let field = Field { scales, top, bottom: canvas.foot(&notes) - 3.5 };

    let own = Rule::own(&field, 1.06 * size);
    let x0 = f64::midpoint(left + right, -columns * pitch - last);
    for tick in own.pieces.iter().flat_map(|piece| &piece.ticks).filter(|tick| tick.label.is_some())
    {
        let end = x0 + columns * pitch + if both { SPINE } else { 0.0 };
        let ends = ((x0 + SPINE, tick.y), (end, tick.y));
        canvas.dashed(ends.0, ends.1, THIN, "0.2 1");
    }
    own.draw(&mut canvas, x0, pitch, top, 1.06 * size, true);
    let mut x = x0 + pitch;
    for &axis in to {
        Rule::other(&field, axis, size).draw(&mut canvas, x, pitch, top, size, false);
        x += pitch;
    }
    if both {
        own.draw(&mut canvas, x, OWN, top, 1.06 * size, true);
    }
    Sheet { title, paper: scales.paper, svg: canvas.finish() }
}
