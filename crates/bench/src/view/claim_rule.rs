//! The rule that carries what a paper says against what was measured.

use std::fmt::Write as _;

use biteband_hardness::Axis;
use biteband_quantity::{Megapascals, Shown, confined};

use super::section::{BandRow, BandView};
use crate::answer::{ClaimAnswer, ClaimFound, MeasuredAnswer, half_of};
use crate::format::{Units, tenth};
use crate::words::{ClaimPage, ClaimSays, Language};

/// Width of the rule, and the margin that keeps the end ticks' numbers inside.
const WIDTH: f64 = 320.0;
const MARGIN: f64 = 22.0;
/// Where the bracket of the paper stands.
const BRACKET: f64 = 8.0;
/// Foot of the ridge of what was measured, and its height.
const FOOT: f64 = 76.0;
const RIDGE: f64 = 48.0;
/// Height of the row of one reading.
const ROW: f64 = 34.0;
/// Numbers that stand on the rule without running together.
const MOST_STEPS: f64 = 7.0;
const STEPS: [f64; 10] = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0];

/// What is drawn.
pub(super) struct Drawn<'a> {
    pub(super) language: Language,
    pub(super) units: Units,
    pub(super) work: Axis,
    /// What the paper says.
    pub(super) said: &'a str,
    /// What was measured, where a side of it is open.
    pub(super) measured: &'a str,
    pub(super) answer: &'a ClaimAnswer,
    pub(super) found: &'a ClaimFound,
}

/// The stretch of the scale that is shown, in the unit that is shown.
struct Span {
    from: f64,
    to: f64,
    step: f64,
    /// Points of the scale for one of the unit.
    unit: f64,
}

impl Span {
    /// Everything that has an end, with a little room, out to the next numbers.
    fn of(ends: impl Iterator<Item = f64>, unit: f64) -> Self {
        let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
        for end in ends.map(|end| end / unit) {
            (from, to) = (from.min(end), to.max(end));
        }
        let room = (0.06 * (to - from)).max(0.5);
        let (from, to) = (from - room, to + room);
        let wide = |step: &&f64| (to - from) / **step <= MOST_STEPS - 1.0;
        let step = STEPS.iter().find(wide).copied().unwrap_or(1000.0);
        Self { from: (from / step).floor() * step, to: (to / step).ceil() * step, step, unit }
    }

    fn x(&self, value: f64) -> f64 {
        let share = (value / self.unit - self.from) / (self.to - self.from);
        MARGIN + confined(share, 0.0, 1.0) * (WIDTH - 2.0 * MARGIN)
    }

    fn holds(&self, value: f64) -> bool {
        (self.from..=self.to).contains(&(value / self.unit))
    }

    /// Left edge and width; an end that is open goes to the end of the rule.
    fn place(&self, low: Option<f64>, high: Option<f64>) -> (f64, f64) {
        let left = low.map_or(MARGIN, |low| self.x(low));
        let right = high.map_or(WIDTH - MARGIN, |high| self.x(high));
        (left, (right - left).max(2.0))
    }

    /// The edge with its ticks, and the numbers below it.
    fn edge(&self, at: f64) -> (String, Vec<(f64, String)>) {
        let mut edge = format!("M{} {}H{}", tenth(MARGIN), tenth(at), tenth(WIDTH - MARGIN));
        let mut numbers = Vec::new();
        // A step of 2, 20 or 200 has two parts, every other five.
        let parts = match self.step {
            1.0 | 2.0 | 20.0 | 200.0 => 2.0,
            _ => 5.0,
        };
        let mut count = 0.0;
        loop {
            let value = self.from + self.step * count / parts;
            if value > self.to + 1e-6 {
                return (edge, numbers);
            }
            let long = (count / parts).fract() < 1e-6;
            let x = self.x(value * self.unit);
            // Writing into a String cannot fail.
            let _ = write!(edge, "M{} {}v{}", tenth(x), tenth(at), if long { 9 } else { 5 });
            if long {
                numbers.push((x, Shown(value).to_string()));
            }
            count += 1.0;
        }
    }
}

/// Middle of a reading, and half of its width at 95 %, the spot apart.
pub(super) fn middle(reading: &MeasuredAnswer) -> (f64, f64) {
    let count: f64 = reading.values.iter().map(|_| 1.0).sum();
    let mean = reading.values.iter().sum::<f64>() / count;
    let conversion = reading.u_conversion.unwrap_or(0.0);
    (mean, half_of(count, reading.u_random, reading.u_shared, conversion))
}

/// Its ends.
fn ends(reading: &MeasuredAnswer) -> (f64, f64) {
    let (mean, half) = middle(reading);
    (mean - half, mean + half)
}

/// Draws the rule; what they say and what was measured stand beside it in words.
pub(super) fn rule(drawn: &Drawn<'_>) -> BandView {
    let Drawn { language, units, work, said, measured, answer, found } = *drawn;
    let unit = if units.of(work) == "ksi" { Megapascals::PER_KSI } else { 1.0 };
    // Where one reading is all that there is, its own row would say the same once more.
    let several = answer.readings.len() > 1 || answer.doubt.iter().any(|one| one.source == "file");
    let readings: Vec<(&MeasuredAnswer, (f64, f64))> =
        answer.readings.iter().filter(|_| several).map(|one| (one, ends(one))).collect();
    let limits = [answer.low, answer.high, found.low, found.high].into_iter().flatten();
    let own = readings.iter().flat_map(|(_, (low, high))| [*low, *high]);
    let span = Span::of(limits.chain(own), unit);
    let goal = span.place(answer.low, answer.high);
    let shown = answer.estimate.as_ref().map_or(measured, |estimate| &estimate.shown);
    let mut rows = vec![
        BandRow {
            name_y: BRACKET,
            band_y: BRACKET,
            name: String::new(),
            shown: language.claim_says(ClaimSays::TheySay { said }),
            band: None,
            mid: Some(bracket(goal, answer.low.is_some(), answer.high.is_some())),
            open: false,
        },
        BandRow {
            name_y: FOOT,
            band_y: FOOT,
            name: String::new(),
            shown: language.claim_says(ClaimSays::Measured { shown }),
            band: Some(span.place(found.low, found.high)),
            mid: answer
                .estimate
                .as_ref()
                .map(|one| format!("M{} {}v17", tenth(span.x(one.value)), tenth(FOOT - 3.0))),
            open: found.low.is_none() || found.high.is_none(),
        },
    ];
    let mut at = FOOT + 16.0;
    for (reading, (low, high)) in &readings {
        rows.push(BandRow {
            name_y: at + 15.0,
            band_y: at + 20.0,
            name: reading.understood.clone(),
            shown: units.range(work, Some(*low), Some(*high)),
            band: Some(span.place(Some(*low), Some(*high))),
            mid: None,
            open: false,
        });
        at += ROW;
    }
    at += 4.0;
    let (edge, numbers) = span.edge(at);
    let rest = rows.iter().map(|row| match row.name.as_str() {
        "" => row.shown.clone(),
        name => format!("{name}: {}", row.shown),
    });
    let drawn = language.claim_page(ClaimPage::Drawn).to_owned();
    let label: Vec<String> = std::iter::once(drawn).chain(rest).collect();
    BandView {
        edge,
        numbers,
        numbers_y: at + 24.0,
        height: at + 28.0,
        goal_height: at - 2.0,
        goal: Some(goal),
        label: label.join("; "),
        ridge: ridge(&span, &found.density),
        rows,
    }
}

/// The paper's limits as a bracket; a side without one stays open.
fn bracket((left, width): (f64, f64), low: bool, high: bool) -> String {
    let (left, right) = (tenth(left), tenth(left + width));
    let tip = |closed: bool, x: Shown| {
        if closed { format!("M{x} {}v11", tenth(BRACKET)) } else { String::new() }
    };
    let line = format!("M{left} {}H{right}", tenth(BRACKET + 5.5));
    [line, tip(low, left), tip(high, right)].concat()
}

/// The belief as a ridge on the rule.
fn ridge(span: &Span, density: &[(f64, f64)]) -> String {
    let seen: Vec<&(f64, f64)> = density.iter().filter(|(value, _)| span.holds(*value)).collect();
    let highest = seen.iter().map(|(_, density)| *density).fold(0.0, f64::max);
    let (Some(first), Some(last)) = (seen.first(), seen.last()) else { return String::new() };
    if highest <= 0.0 {
        return String::new();
    }
    let mut path = format!("M{} {}", tenth(span.x(first.0)), tenth(FOOT));
    for (value, density) in seen.iter().copied() {
        let y = FOOT - RIDGE * density / highest;
        // Writing into a String cannot fail.
        let _ = write!(path, "L{} {}", tenth(span.x(*value)), tenth(y));
    }
    let _ = write!(path, "L{} {}Z", tenth(span.x(last.0)), tenth(FOOT));
    path
}
