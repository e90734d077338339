//! The thickness chart: the thinnest section that each test may be made on, over the hardness of the part.

use biteband_hardness::{Axis, Scale};

use super::svg::{Anchor, Canvas, HALF_FIGURE, Paper, THICK, THIN, WALL_TYPE, text_width};
use super::{Sheet, version};
use crate::format;
use crate::words::{Language, Print};
use biteband_quantity::sort_by_number;

/// The thinnest section for one test.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// The test, as it is written: `HV 10`, `HBW 10/3000`.
    pub label: String,
    /// Hardness in HRC and thinnest section in mm, in order of hardness.
    pub points: Vec<(f64, f64)>,
}

/// Dash patterns, so that lines which cross keep apart without colour.
const DASHES: [&str; 4] = ["", "5 1.6", "1.4 1.4", "6 1.4 1.2 1.4"];
/// Room for numbers on the left of the field.
const NUMBERS: f64 = 21.0;

/// The plotted field: hardness from left to right, thickness upward by its logarithm.
struct Field {
    x: (f64, f64),
    y: (f64, f64),
    hrc: (f64, f64),
    mm: (f64, f64),
}

impl Field {
    fn x(&self, hrc: f64) -> f64 {
        self.x.0 + (hrc - self.hrc.0) / (self.hrc.1 - self.hrc.0) * (self.x.1 - self.x.0)
    }

    fn y(&self, mm: f64) -> f64 {
        let share = (mm / self.mm.0).ln() / (self.mm.1 / self.mm.0).ln();
        self.y.1 - share * (self.y.1 - self.y.0)
    }
}

/// Draws the chart from lines that the rules of the tests give.
///
/// `sources` are the notes at the foot: which rule, from which standard. Points with a hardness that is no
/// number or a thickness that is not positive are left out; without any point the sheet stays empty.
///
/// # Units
/// Hardness in HRC, thickness in mm.
#[must_use]
pub fn thickness(language: Language, paper: Paper, lines: &[Line], sources: &[String]) -> Sheet {
    let title = language.print(Print::Thickness).into_owned();
    let mut canvas = Canvas::new(paper, &title);
    let y = canvas.title(&title, "") + 3.5;
    let y = canvas.paragraph(y, WALL_TYPE, false, &language.print(Print::ThicknessMeaning));
    let mut notes = vec![language.print(Print::ThicknessCaution).into_owned()];
    notes.extend_from_slice(sources);
    notes.push(version(language));
    let foot = canvas.foot(&notes);

    let good = |&(hrc, mm): &(f64, f64)| hrc.is_finite() && mm.is_finite() && mm > 0.0;
    let points = || lines.iter().flat_map(|line| &line.points).copied().filter(good);
    let least = |number: fn((f64, f64)) -> f64| points().map(number).fold(f64::INFINITY, f64::min);
    let most = |number: fn((f64, f64)) -> f64| points().map(number).fold(0.0, f64::max);
    let hrc = ((least(|p| p.0) / 5.0).floor() * 5.0, (most(|p| p.0) / 5.0).ceil() * 5.0);
    let mm = (round_down(least(|p| p.1)), round_up(most(|p| p.1)));
    if hrc.0 < hrc.1 && mm.0 < mm.1 {
        let (left, right) = canvas.sides();
        let labels =
            lines.iter().map(|line| text_width(&line.label, WALL_TYPE)).fold(0.0, f64::max);
        let field =
            Field { x: (left + NUMBERS, right - labels - 8.0), y: (y + 4.0, foot - 18.0), hrc, mm };
        grid(&mut canvas, &field, language);
        curves(&mut canvas, &field, lines, good);
    }
    Sheet { title, paper, svg: canvas.finish() }
}

/// The numbers 1, 2 and 5 of every decade from a hundredth to a hundred.
fn round_numbers() -> impl DoubleEndedIterator<Item = f64> {
    [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0].into_iter()
}

fn round_down(mm: f64) -> f64 {
    round_numbers().rev().find(|&round| round <= mm).unwrap_or(0.01)
}

fn round_up(mm: f64) -> f64 {
    round_numbers().find(|&round| round >= mm).unwrap_or(100.0)
}

fn grid(canvas: &mut Canvas, field: &Field, language: Language) {
    canvas.group("grid");
    let (x, y) = (field.x, field.y);
    let mut hrc = field.hrc.0;
    while hrc <= field.hrc.1 + 1e-9 {
        let ten = (hrc / 10.0).fract().abs() < 1e-9;
        let at = field.x(hrc);
        canvas.dashed((at, y.0), (at, y.1), THIN, if ten { "" } else { "0.4 1.2" });
        if ten {
            canvas.text((at, y.1 + 7.0), 5.6, Anchor::Middle, true, &format::exact(hrc));
        }
        hrc += 5.0;
    }
    let hrc = Axis::Hardness(Scale::Hrc).symbol();
    canvas.text((f64::midpoint(x.0, x.1), y.1 + 13.5), WALL_TYPE, Anchor::Middle, true, hrc);
    let mut last = f64::INFINITY;
    for decade in [0.01, 0.1, 1.0, 10.0, 100.0] {
        for step in 1..10_u32 {
            let mm = decade * f64::from(step);
            if mm < field.mm.0 - 1e-9 || mm > field.mm.1 + 1e-9 {
                continue;
            }
            let at = field.y(mm);
            let round = matches!(step, 1 | 2 | 5);
            canvas.dashed((x.0, at), (x.1, at), THIN, if round { "" } else { "0.4 1.2" });
            if round && last - at > 6.0 {
                let line = (x.0 - 1.5, at + HALF_FIGURE * WALL_TYPE);
                canvas.text(line, WALL_TYPE, Anchor::End, true, &format::exact(mm));
                last = at;
            }
        }
    }
    canvas.climbing(
        (x.0 - NUMBERS + 4.0, y.1),
        WALL_TYPE,
        true,
        &language.print(Print::ThicknessAxis),
    );
    canvas.line((x.0, y.0), (x.0, y.1), THICK);
    canvas.line((x.0, y.1), (x.1, y.1), THICK);
    canvas.end_group();
}

/// The lines, each named at its hard end; names that would touch are moved apart and led to their line.
fn curves(canvas: &mut Canvas, field: &Field, lines: &[Line], good: impl Fn(&(f64, f64)) -> bool) {
    let mut ends: Vec<(f64, (f64, f64), &str)> = Vec::new();
    for (line, dashes) in lines.iter().zip(DASHES.iter().cycle()) {
        let points: Vec<(f64, f64)> = line
            .points
            .iter()
            .filter(|point| good(point))
            .map(|&(hrc, mm)| (field.x(hrc), field.y(mm)))
            .collect();
        let Some(&end) = points.last() else { continue };
        canvas.group(&line.label);
        canvas.polyline(&points, THICK, dashes);
        canvas.end_group();
        ends.push((end.1, end, &line.label));
    }
    sort_by_number(&mut ends, |end| end.0);
    let pitch = 1.4 * WALL_TYPE;
    let mut above = f64::NEG_INFINITY;
    for end in &mut ends {
        end.0 = end.0.max(above + pitch);
        above = end.0;
    }
    // Whatever was pushed out below is pushed back up.
    let mut below = field.y.1 + pitch;
    for end in ends.iter_mut().rev() {
        end.0 = end.0.min(below - pitch);
        below = end.0;
    }
    for (y, end, label) in ends {
        let x = field.x.1 + 7.0;
        canvas.polyline(&[end, (field.x.1 + 1.0, end.1), (x - 0.8, y)], THIN, "0.3 0.9");
        canvas.text((x, y + HALF_FIGURE * WALL_TYPE), WALL_TYPE, Anchor::Start, true, label);
    }
}
