//! Scales drawn side by side, so that one upright line reads off all of them.

use biteband_hardness::{Axis, Choice, Reading, convert, spans};

use crate::format::Units;

/// Width of the drawing.
const WIDTH: f64 = 340.0;
/// Where the scales begin and end.
const LEFT: f64 = 20.0;
const RIGHT: f64 = 320.0;
/// Height of one scale with its name above and its numbers below.
const LINE: f64 = 52.0;
/// Where the engraved line stands in its strip.
const BASE: f64 = 24.0;
/// How far the drawing reaches beyond the reading on either side, as a share of the reading.
const REACH: f64 = 0.2;
/// Numbers closer than this would touch.
const LEAST_GAP: f64 = 38.0;

/// A tick of a scale.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleTick {
    /// Place from the left.
    pub x: f64,
    /// Where it ends.
    pub y2: f64,
    /// Its number; empty for a small tick.
    pub label: String,
}

/// One scale.
#[derive(Clone, Debug, PartialEq)]
pub struct ScaleLine {
    /// Symbol.
    pub label: String,
    /// Place of its line from the top.
    pub y: f64,
    /// First and last place that the tables reach.
    pub x: (f64, f64),
    /// Ticks.
    pub ticks: Vec<ScaleTick>,
}

/// All scales.
#[derive(Clone, Debug, PartialEq)]
pub struct AlignedView {
    /// Width of the view box.
    pub width: f64,
    /// Height of the view box.
    pub height: f64,
    /// The reading: left edge and width.
    pub reading: (f64, f64),
    /// Scales, the one that was given on top.
    pub lines: Vec<ScaleLine>,
    /// In words.
    pub label: String,
    /// The reading as shown.
    pub shown: String,
}

/// The part of the given axis that is drawn, and places on it.
struct Window {
    low: f64,
    high: f64,
}

impl Window {
    fn x(&self, value: f64) -> f64 {
        let share = (value - self.low) / (self.high - self.low);
        let x = LEFT + share * (RIGHT - LEFT);
        (x * 10.0).round() / 10.0
    }
}

/// The smallest round step that gives at most `most` steps over `span`.
fn round_step(span: f64, most: f64) -> f64 {
    const STEPS: [f64; 13] =
        [0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];
    STEPS.into_iter().find(|step| *step >= span / most).unwrap_or(5000.0)
}

/// Multiples of a step from low to high.
fn multiples(low: f64, high: f64, step: f64) -> Vec<f64> {
    let mut all = Vec::new();
    let mut k = (low / step).ceil();
    while k * step <= high && all.len() < 400 {
        all.push(k * step);
        k += 1.0;
    }
    all
}

/// How the drawing is drawn in and moved.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Lens {
    /// Steps further in; two of them halve what is seen.
    pub(super) zoom: i8,
    /// Quarters of what is seen to harder numbers.
    pub(super) pan: i8,
}

fn window(
    from: Axis,
    (low, high): (f64, f64),
    to: &[Axis],
    choice: Choice,
    lens: Lens,
) -> Option<Window> {
    let spans: Vec<_> =
        to.iter().flat_map(|&to| spans(from, to, choice).map(|(_, span)| span)).collect();
    let least = spans.iter().map(|s| s.low.0).min_by(f64::total_cmp)?;
    let most = spans.iter().map(|s| s.high.0).max_by(f64::total_cmp)?;
    let margin = (REACH * high).max((high - low) * 0.75);
    let mut half = (high - low) / 2.0 + margin;
    for _ in 0..lens.zoom.unsigned_abs() {
        half *= if lens.zoom > 0 {
            core::f64::consts::FRAC_1_SQRT_2
        } else {
            core::f64::consts::SQRT_2
        };
    }
    let middle = f64::midpoint(low, high) + f64::from(lens.pan) * half / 2.0;
    // Moved against an end of the tables the view stays full and stops there.
    let half = half.min((most - least) / 2.0);
    let middle = biteband_quantity::confined(middle, least + half, (most - half).max(least + half));
    let drawn = Window { low: (middle - half).max(least), high: (middle + half).min(most) };
    (drawn.high > drawn.low).then_some(drawn)
}

pub(super) fn aligned(
    from: Axis,
    (low, high): (Option<f64>, Option<f64>),
    to: &[Axis],
    choice: Choice,
    lens: Lens,
    units: Units,
) -> Option<AlignedView> {
    let (low, high) = (low.or(high)?, high.or(low)?);
    let window = window(from, (low, high), to, choice, lens)?;
    let mut lines = vec![own_line(from, &window, units)];
    for &axis in to {
        let top = LINE * f64::from(u32::try_from(lines.len()).ok()?);
        lines.extend(other_line(from, axis, &window, choice, units, top));
    }
    let (left, right) = (window.x(low).max(LEFT), window.x(high).min(RIGHT));
    Some(AlignedView {
        width: WIDTH,
        height: LINE * f64::from(u32::try_from(lines.len()).ok()?),
        // Moved out of sight the reading is not drawn.
        reading: if right < left - 1e-9 {
            (0.0, 0.0)
        } else if right - left < 2.0 {
            (left - 1.0, 2.0)
        } else {
            (left, right - left)
        },
        lines,
        label: String::new(),
        shown: String::new(),
    })
}

fn own_line(from: Axis, window: &Window, units: Units) -> ScaleLine {
    let place = |value: f64| Some(window.x(value));
    line(from, window.low, window.high, units, 0.0, place)
}

/// A scale beside the given one: its round numbers, placed where the table puts them.
fn other_line(
    from: Axis,
    axis: Axis,
    window: &Window,
    choice: Choice,
    units: Units,
    top: f64,
) -> Option<ScaleLine> {
    let there = |value: f64| {
        let reading = Reading::new(from, value).ok()?;
        convert(reading, axis, choice).ok()
    };
    // The table that holds the middle serves the whole line: tables are never joined.
    let middle = there(f64::midpoint(window.low, window.high))
        .or_else(|| there(window.low))
        .or_else(|| there(window.high))?;
    let id = middle.table;
    let span = spans(from, axis, Choice::table(id)).next()?.1;
    let (low, high) = (window.low.max(span.low.0), window.high.min(span.high.0));
    let on_table = |value: f64| id.get()?.convert(from, value, axis).map(|at| at.value);
    let place = |value: f64| {
        let back = id.get()?.convert(axis, value, from)?;
        (back.value >= low && back.value <= high).then(|| window.x(back.value))
    };
    let mut drawn = line(axis, on_table(low)?, on_table(high)?, units, top, place);
    drawn.x = (window.x(low), window.x(high));
    Some(drawn)
}

fn line(
    axis: Axis,
    low: f64,
    high: f64,
    units: Units,
    top: f64,
    place: impl Fn(f64) -> Option<f64>,
) -> ScaleLine {
    let y = top + BASE;
    let step = round_step(high - low, 7.0);
    let small = round_step(high - low, 30.0);
    let mut ticks: Vec<ScaleTick> = multiples(low, high, small)
        .into_iter()
        .filter_map(|value| Some(ScaleTick { x: place(value)?, y2: y + 5.0, label: String::new() }))
        .collect();
    let mut last = f64::NEG_INFINITY;
    for value in multiples(low, high, step) {
        let Some(x) = place(value) else { continue };
        let clear = x - last >= LEAST_GAP;
        if clear {
            last = x;
        }
        // A tick without its number would be read as the next round one, so it stays small.
        let label = if clear { units.number(axis, value) } else { String::new() };
        ticks.push(ScaleTick { x, y2: if clear { y + 9.0 } else { y + 5.0 }, label });
    }
    ScaleLine { label: units.of(axis).to_owned(), y, x: (LEFT, RIGHT), ticks }
}

#[cfg(test)]
mod tests {
    use super::*;
    use biteband_hardness::Scale;

    const HRC: Axis = Axis::Hardness(Scale::Hrc);
    const HBW: Axis = Axis::Hardness(Scale::Hbw);

    fn drawn(low: f64, high: f64, lens: Lens) -> Option<AlignedView> {
        aligned(HRC, (Some(low), Some(high)), &[HBW], Choice::STEEL, lens, Units::Metric)
    }

    #[test]
    fn drawing_in_and_moving_show_less_and_harder_numbers() {
        let reach = |lens: Lens| {
            let window = window(HRC, (40.0, 40.0), &[HBW], Choice::STEEL, lens).unwrap();
            (window.low, window.high)
        };
        let first = reach(Lens::default());
        let inner = reach(Lens { zoom: 2, pan: 0 });
        assert!(((inner.1 - inner.0) * 2.0 - (first.1 - first.0)).abs() < 1e-9);
        let moved = reach(Lens { zoom: 0, pan: 4 });
        assert!(
            (moved.0 - first.1).abs() < 1e-9 || (moved.0 - first.0 - 16.0).abs() < 1e-9,
            "{moved:?}"
        );
        // At the end of the tables the view stands still.
        assert_eq!(reach(Lens { zoom: 0, pan: 30 }), reach(Lens { zoom: 0, pan: 40 }));
        assert!(reach(Lens { zoom: -4, pan: 0 }).0 >= 20.0);
        assert!(drawn(40.0, 40.0, Lens { zoom: 4, pan: 20 }).unwrap().reading.1.abs() < 1e-9);
    }

    #[test]
    fn one_upright_line_reads_the_same_row_on_every_scale() {
        // ASTM E140 Table 1 prints 400 HBW beside 43 HRC and 300 HBW between 31 and 32.
        let view = drawn(38.0, 42.0, Lens::default()).unwrap();
        let [own, other] = view.lines.as_slice() else { panic!("two lines") };
        let x_of = |line: &ScaleLine, label: &str| {
            line.ticks.iter().find(|t| t.label == label).map(|t| t.x).unwrap()
        };
        let per_hrc = (x_of(own, "40") - x_of(own, "35")) / 5.0;
        let place_43 = x_of(own, "40") + 3.0 * per_hrc;
        assert!((x_of(other, "400") - place_43).abs() < 0.2);
    }

    #[test]
    fn steps_are_round() {
        for (span, step) in [(16.0, 5.0), (100.0, 20.0), (3.0, 0.5), (700.0, 100.0)] {
            assert!((round_step(span, 7.0) - step).abs() < 1e-9, "{span}");
        }
    }

    #[test]
    fn a_reading_at_the_end_of_its_table_is_drawn() {
        let view = drawn(20.0, 20.0, Lens::default()).unwrap();
        assert!((view.reading.0 - (LEFT - 1.0)).abs() < 1e-9);
    }
}
