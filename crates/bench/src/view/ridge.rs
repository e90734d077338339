//! The engraved rule: files from hard to soft, the belief as a ridge along them.

use std::fmt::Write as _;

use biteband_evidence::{Belief, Shape, Target};
use biteband_quantity::{Shown, confined};

/// Height of one file's row in the drawing.
const ROW: f64 = 64.0;
/// Width of the drawing.
const WIDTH: f64 = 84.0;
/// Where the rule's own edge stands.
const EDGE: f64 = 4.0;
/// How far the ridge reaches at its highest.
const REACH: f64 = 62.0;
/// Hardness of one row where a set has one file only, HRC.
const LONE_ROW: f64 = 5.0;
/// Ticks closer than this run together on a small screen.
const LEAST_GAP: f64 = 5.0;

/// One key of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyView {
    /// `bites`, `slight` or `skates`.
    pub outcome: &'static str,
    /// Word on the key, with a count when stroked more than once.
    pub label: String,
    /// Name for a screen reader.
    pub spoken: String,
    /// How many strokes came out so.
    pub count: usize,
}

/// One file.
#[derive(Clone, Debug, PartialEq)]
pub struct RuleRow {
    /// Grade, HRC.
    pub grade: f64,
    /// Grade as shown.
    pub label: String,
    /// Its three keys: bites, not sure, skates.
    pub keys: [KeyView; 3],
}

/// A tick of the rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RuleTick {
    /// Place from the top.
    pub y: f64,
    /// Where it ends.
    pub x2: f64,
    /// A fifth one, drawn stronger.
    pub major: bool,
}

/// The belief drawn along the rule.
#[derive(Clone, Debug, PartialEq)]
pub struct RidgeView {
    /// Width of the view box.
    pub width: f64,
    /// Height of the view box.
    pub height: f64,
    /// Outline of the ridge as an SVG path; empty before the first stroke.
    pub path: String,
    /// Ticks.
    pub ticks: Vec<RuleTick>,
    /// Wanted band: top and height.
    pub goal: Option<(f64, f64)>,
    /// The band of the answer: top and height.
    pub band: Option<(f64, f64)>,
    /// Readings with their widths: top and height.
    pub marks: Vec<(f64, f64)>,
    /// In words.
    pub label: String,
}

/// Files and ridge.
#[derive(Clone, Debug, PartialEq)]
pub struct RuleView {
    /// Hardest file first.
    pub rows: Vec<RuleRow>,
    /// The belief beside them.
    pub ridge: RidgeView,
}

/// From hardness to a place from the top: straight between neighbouring files, so that each file
/// stands at the middle of its own row whatever the steps of the set.
struct Rule<'a> {
    /// Hardest first.
    grades: &'a [f64],
}

impl Rule<'_> {
    fn height(&self) -> f64 {
        ROW * count(self.grades.len())
    }

    /// The hardest and softest hardness that the drawing shows: half a row beyond the end files.
    fn ends(&self) -> (f64, f64) {
        let first = self.grades.first().copied().unwrap_or_default();
        let last = self.grades.last().copied().unwrap_or_default();
        let top_step = self.grades.get(1).map_or(LONE_ROW, |second| first - second);
        let before_last = self.grades.len().checked_sub(2).and_then(|i| self.grades.get(i));
        let bottom_step = before_last.map_or(LONE_ROW, |before| before - last);
        (first + top_step / 2.0, last - bottom_step / 2.0)
    }

    fn y(&self, hrc: f64) -> f64 {
        let (top, bottom) = self.ends();
        let mut marks = vec![(top, 0.0)];
        let middles = self.grades.iter().enumerate();
        marks.extend(middles.map(|(i, &grade)| (grade, ROW * (count(i) + 0.5))));
        marks.push((bottom, self.height()));
        for pair in marks.windows(2) {
            let [(hard, above), (soft, below)] = pair else { continue };
            if hrc >= *soft {
                let share = confined((hard - hrc) / (hard - soft), 0.0, 1.0);
                return above + share * (below - above);
            }
        }
        self.height()
    }
}

fn count(n: usize) -> f64 {
    u32::try_from(n).map_or(0.0, f64::from)
}

fn tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

pub(super) fn ridge(
    grades: &[f64],
    belief: Option<&Belief>,
    shape: Shape,
    target: Option<Target>,
    marks: &[(f64, f64)],
    label: String,
) -> RidgeView {
    let rule = Rule { grades };
    let (top, bottom) = rule.ends();
    let span = |low: Option<f64>, high: Option<f64>| {
        let upper = tenth(rule.y(high.unwrap_or(top).min(top)));
        let lower = tenth(rule.y(low.unwrap_or(bottom).max(bottom)));
        (lower > upper).then_some((upper, tenth(lower - upper)))
    };
    let band = match shape {
        Shape::Unknown => None,
        Shape::Below(high) => span(None, Some(high)),
        Shape::Above(low) => span(Some(low), None),
        Shape::Between(low, high) => span(Some(low), Some(high)),
    };
    RidgeView {
        width: WIDTH,
        height: rule.height(),
        path: belief.map(|belief| outline(&rule, belief)).unwrap_or_default(),
        ticks: ticks(&rule, top, bottom),
        goal: target.and_then(|t| span(t.low(), t.high())),
        band,
        marks: marks.iter().filter_map(|&(low, high)| span(Some(low), Some(high))).collect(),
        label,
    }
}

fn outline(rule: &Rule<'_>, belief: &Belief) -> String {
    let (top, bottom) = rule.ends();
    let seen: Vec<(f64, f64)> =
        belief.density().filter(|(hrc, _)| *hrc >= bottom && *hrc <= top).collect();
    let highest = seen.iter().map(|(_, density)| *density).fold(0.0, f64::max);
    if highest <= 0.0 {
        return String::new();
    }
    let place = |(hrc, density): &(f64, f64)| {
        (tenth(EDGE + REACH * density / highest), tenth(rule.y(*hrc)))
    };
    let mut path = format!("M4,{}", Shown(tenth(rule.height())));
    for point in &seen {
        let (x, y) = place(point);
        // Writing into a string cannot fail.
        let _ = write!(path, " L{},{}", Shown(x), Shown(y));
    }
    path.push_str(" L4,0 Z");
    path
}

fn ticks(rule: &Rule<'_>, top: f64, bottom: f64) -> Vec<RuleTick> {
    let mut ticks: Vec<RuleTick> = Vec::new();
    let mut hrc = top.floor();
    while hrc >= bottom {
        let y = tenth(rule.y(hrc));
        let fives = hrc / 5.0;
        let major = fives - fives.floor() < 0.1;
        let near = ticks.last().is_some_and(|last| y - last.y < LEAST_GAP);
        if major || !near {
            if near {
                ticks.pop();
            }
            ticks.push(RuleTick { y, x2: if major { 14.0 } else { 9.0 }, major });
        }
        hrc -= 1.0;
    }
    ticks
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_file_stands_in_the_middle_of_its_row() {
        let rule = Rule { grades: &[65.0, 62.0, 58.0, 55.0, 50.0] };
        for (i, grade) in rule.grades.iter().enumerate() {
            assert!((rule.y(*grade) - ROW * (count(i) + 0.5)).abs() < 1e-9);
        }
        assert!((rule.height() - 5.0 * ROW).abs() < 1e-9);
    }

    #[test]
    fn harder_is_never_lower_on_the_rule() {
        let rule = Rule { grades: &[65.0, 62.0, 58.0] };
        let mut hrc = 30.0;
        while hrc < 72.0 {
            assert!(rule.y(hrc + 0.25) <= rule.y(hrc));
            hrc += 0.25;
        }
    }

    #[test]
    fn a_lone_file_has_a_rule_too() {
        let view = ridge(&[63.0], None, Shape::Above(61.0), None, &[], String::new());
        assert_eq!(view.ticks.iter().filter(|t| t.major).count(), 1);
        assert!(view.band.is_some_and(|(_, height)| height > 0.0));
    }
}
