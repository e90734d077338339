//! The tempering curve, drawn: temperature along, hardness up, with what is wanted and what is brittle on it.

use std::fmt::Write as _;

use biteband_quantity::{Shown, confined};
use biteband_steel::temper::brittle::BrittleKind;

use crate::answer::{BrittleAnswer, CurvePoint, OwnPoint};
use crate::format::{Units, dash, fixed, outward_high, outward_low, tenth};
use crate::words::{Language, TemperPage, TemperSaid};

/// A text on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct CurveText {
    /// Where it stands.
    pub at: (f64, f64),
    /// `start`, `middle` or `end`: which part of it stands there.
    pub anchor: &'static str,
    /// The text.
    pub text: String,
}

/// The drawing, every line as an SVG path, and the same in words and in rows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CurveView {
    /// Width and height of the view box.
    pub size: (f64, f64),
    /// Axes with their ticks.
    pub edge: String,
    /// Numbers and units of the axes.
    pub numbers: Vec<CurveText>,
    /// The band as a shape.
    pub band: String,
    /// Its two edges.
    pub edges: String,
    /// The most likely hardness.
    pub median: String,
    /// The same by the book alone; empty where nothing was learned.
    pub book: String,
    /// The bracket of what is wanted, and its lines across.
    pub wanted: String,
    /// Brittle ranges: their frame and hatching.
    pub brittle: String,
    /// Tempers of the plan on axis and curve.
    pub steps: String,
    /// The temper that was looked up.
    pub looked: String,
    /// Places of own results.
    pub own: Vec<(f64, f64)>,
    /// Words on the drawing.
    pub texts: Vec<CurveText>,
    /// What is on it: class of the line, and what it means.
    pub legend: Vec<(&'static str, TemperPage)>,
    /// Time at heat, and how often.
    pub each: String,
    /// In words.
    pub label: String,
    /// Rows: temperature, most likely, band.
    pub rows: Vec<[String; 3]>,
}

/// What is drawn.
pub(super) struct Drawn<'a> {
    pub(super) language: Language,
    pub(super) units: Units,
    pub(super) curve: &'a [CurvePoint],
    /// The curve without own results.
    pub(super) book: &'a [CurvePoint],
    /// Time at heat, and how often.
    pub(super) each: String,
    pub(super) wanted: Option<(Option<f64>, Option<f64>)>,
    pub(super) brittle: &'a [BrittleAnswer],
    pub(super) own: &'a [OwnPoint],
    /// Tempers of the plan: °C and HRC.
    pub(super) steps: Vec<(f64, f64)>,
    /// The temper that was looked up.
    pub(super) looked: Option<(f64, f64)>,
}

const WIDTH: f64 = 320.0;
const HEIGHT: f64 = 254.0;
/// The field between the axes.
const LEFT: f64 = 44.0;
const RIGHT: f64 = 302.0;
const TOP: f64 = 24.0;
const BOTTOM: f64 = 204.0;
/// From one line of the hatching to the next.
const HATCH: f64 = 7.0;
/// The curve is told in figures this far apart, in K.
const ROWS: f64 = 20.0;
/// The softest that the drawing shows; below it the scale ends.
const SOFTEST: f64 = 20.0;

struct Field {
    cold: f64,
    hot: f64,
    soft: f64,
    hard: f64,
}

impl Field {
    fn x(&self, celsius: f64) -> f64 {
        LEFT + confined((celsius - self.cold) / (self.hot - self.cold), 0.0, 1.0) * (RIGHT - LEFT)
    }

    fn y(&self, hrc: f64) -> f64 {
        BOTTOM - confined((hrc - self.soft) / (self.hard - self.soft), 0.0, 1.0) * (BOTTOM - TOP)
    }

    fn line(&self, points: impl Iterator<Item = (f64, f64)>) -> String {
        let mut path = String::new();
        for (celsius, hrc) in points {
            let letter = if path.is_empty() { 'M' } else { 'L' };
            // Writing into a String cannot fail.
            let _ = write!(path, "{letter}{} {}", tenth(self.x(celsius)), tenth(self.y(hrc)));
        }
        path
    }

    fn holds(&self, celsius: f64) -> bool {
        (self.cold..=self.hot).contains(&celsius)
    }
}

/// Draws the curve; nothing for fewer than two places of it.
pub(super) fn curve(drawn: &Drawn<'_>) -> Option<CurveView> {
    let (first, last) = (drawn.curve.first()?, drawn.curve.last()?);
    if last.celsius <= first.celsius {
        return None;
    }
    let field = field(drawn, first.celsius, last.celsius);
    let mut view =
        CurveView { size: (WIDTH, HEIGHT), each: drawn.each.clone(), ..CurveView::default() };
    axes(drawn, &field, &mut view);
    let both = |at: fn(&CurvePoint) -> f64| {
        let points = drawn.curve.iter();
        field.line(points.map(|point| (point.celsius, at(point))))
    };
    let (low, high) = (both(|point| point.low), both(|point| point.high));
    let back = drawn.curve.iter().rev().map(|point| (point.celsius, point.low));
    view.band = format!("{high}{}Z", field.line(back).replacen('M', "L", 1));
    view.edges = format!("{low}{high}");
    view.median = both(|point| point.median);
    view.book = field.line(drawn.book.iter().map(|point| (point.celsius, point.median)));
    view.legend = vec![("median", TemperPage::KeyMedian), ("band", TemperPage::KeyBand)];
    if !view.book.is_empty() {
        view.legend.push(("book", TemperPage::KeyBook));
    }
    brittle(drawn, &field, &mut view);
    wanted(drawn, &field, &mut view);
    marks(drawn, &field, &mut view);
    view.label = label(drawn, &field);
    view.rows = rows(drawn);
    Some(view)
}

fn field(drawn: &Drawn<'_>, cold: f64, hot: f64) -> Field {
    let curve = drawn.curve.iter().flat_map(|point| [point.low, point.high]);
    let wanted = drawn.wanted.into_iter().flat_map(|(low, high)| [low, high]).flatten();
    let own = drawn.own.iter().map(|point| point.hrc);
    let all: Vec<f64> = curve.chain(wanted).chain(own).collect();
    let soft = all.iter().copied().fold(f64::MAX, f64::min);
    let hard = all.iter().copied().fold(f64::MIN, f64::max);
    Field {
        cold,
        hot,
        soft: (((soft - 1.0) / 5.0).floor() * 5.0).max(SOFTEST),
        hard: ((hard + 1.0) / 5.0).ceil() * 5.0,
    }
}

fn axes(drawn: &Drawn<'_>, field: &Field, view: &mut CurveView) {
    let mut edge = format!("M{} {}V{}H{}", tenth(LEFT), tenth(TOP), tenth(BOTTOM), tenth(RIGHT));
    let mut hrc = field.soft;
    while hrc <= field.hard {
        let tens = hrc / 10.0;
        let ten = tens - tens.floor() < 0.1;
        let y = field.y(hrc);
        let _ = write!(edge, "M{} {}h{}", tenth(LEFT), tenth(y), if ten { -9 } else { -5 });
        if ten {
            view.numbers.push(text((LEFT - 12.0, y + 6.0), "end", Shown(hrc).to_string()));
        }
        hrc += 5.0;
    }
    // Round figures of the unit that is read.
    let (step, unit) = if drawn.units == Units::Metric { (50.0, "°C") } else { (100.0, "°F") };
    let (by, from) = if drawn.units == Units::Metric { (1.0, 0.0) } else { (1.8, 32.0) };
    let shown = |celsius: f64| celsius * by + from;
    let mut at = (shown(field.cold) / step).ceil() * step;
    while at <= shown(field.hot) {
        let halves = at / (2.0 * step);
        let major = halves - halves.floor() < 0.1;
        let x = field.x((at - from) / by);
        let _ = write!(edge, "M{} {}v{}", tenth(x), tenth(BOTTOM), if major { 9 } else { 5 });
        // The unit stands below the right end.
        if major {
            view.numbers.push(text((x, BOTTOM + 26.0), "middle", Shown(at).to_string()));
        }
        at += step;
    }
    view.numbers.push(text((RIGHT, BOTTOM + 43.0), "end", unit.to_owned()));
    view.numbers.push(text((4.0, TOP - 8.0), "start", "HRC".to_owned()));
    view.edge = edge;
}

const fn text(at: (f64, f64), anchor: &'static str, text: String) -> CurveText {
    CurveText { at, anchor, text }
}

/// What the ranges agree on is hatched; a line above shows how far the sources reach.
fn brittle(drawn: &Drawn<'_>, field: &Field, view: &mut CurveView) {
    let mut last = None;
    for range in drawn.brittle.iter().filter(|range| drawable(range)) {
        if range.core_high_c <= field.cold || range.core_low_c >= field.hot {
            continue;
        }
        let (from, to) = (field.x(range.core_low_c), field.x(range.core_high_c));
        let path = &mut view.brittle;
        let _ = write!(
            path,
            "M{} {}V{}H{}V{}Z",
            tenth(from),
            tenth(TOP),
            tenth(BOTTOM),
            tenth(to),
            tenth(TOP)
        );
        // Lines that rise to the right at 45 degrees, cut at the frame.
        let mut at = from - (BOTTOM - TOP) + HATCH;
        while at < to {
            let (x1, x2) = (at.max(from), (at + BOTTOM - TOP).min(to));
            let (y1, y2) = (BOTTOM - (x1 - at), BOTTOM - (x2 - at));
            let _ = write!(path, "M{} {}L{} {}", tenth(x1), tenth(y1), tenth(x2), tenth(y2));
            at += HATCH;
        }
        let (wide_from, wide_to) = (field.x(range.low_c), field.x(range.high_c));
        let _ = write!(path, "M{} {}H{}", tenth(wide_from), tenth(TOP), tenth(wide_to));
        last = Some(f64::midpoint(from, to));
    }
    if let Some(middle) = last {
        let word = drawn.language.temper_page(TemperPage::Brittle).to_owned();
        let at = confined(middle, LEFT + 50.0, RIGHT - 26.0);
        view.texts.push(text((at, TOP - 8.0), "middle", word));
        view.legend.push(("brittle", TemperPage::KeyBrittle));
    }
}

/// Slow cooling is a matter of the way out of the oven, not of a place on the curve.
fn drawable(range: &BrittleAnswer) -> bool {
    range.kind != BrittleKind::Reversible.key()
}

fn wanted(drawn: &Drawn<'_>, field: &Field, view: &mut CurveView) {
    let Some((low, high)) = drawn.wanted else { return };
    let (foot, top) = (low.map(|hrc| field.y(hrc)), high.map(|hrc| field.y(hrc)));
    let (y1, y2) = (top.unwrap_or(TOP), foot.unwrap_or(BOTTOM));
    // A bracket at the axis, and the limits across the field.
    let _ = write!(
        view.wanted,
        "M{} {}H{}V{}H{}",
        tenth(LEFT + 10.0),
        tenth(y1),
        tenth(LEFT + 3.0),
        tenth(y2),
        tenth(LEFT + 10.0)
    );
    for y in [top, foot].into_iter().flatten() {
        let _ = write!(view.wanted, "M{} {}H{}", tenth(LEFT + 3.0), tenth(y), tenth(RIGHT));
    }
    let word = drawn.language.temper_page(TemperPage::Wanted).to_owned();
    // Above its upper line, or below the lower one where there is no room.
    let y = if y1 > TOP + 24.0 { y1 - 6.0 } else { y2 + 18.0 };
    view.texts.push(text((RIGHT, y), "end", word));
    view.legend.push(("goal", TemperPage::Wanted));
}

fn marks(drawn: &Drawn<'_>, field: &Field, view: &mut CurveView) {
    for (index, &(celsius, hrc)) in drawn.steps.iter().enumerate() {
        if !field.holds(celsius) {
            continue;
        }
        let (x, y) = (field.x(celsius), field.y(hrc));
        let up = if index == 0 { tenth(BOTTOM - y) } else { tenth(14.0) };
        let _ = write!(view.steps, "M{} {}v-{up}", tenth(x), tenth(BOTTOM));
        if index == 0 {
            let _ = write!(view.steps, "m-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0");
            let word = drawn.language.temper_page(TemperPage::First).to_owned();
            let near_axis = x < LEFT + 46.0;
            let (dx, anchor) = if near_axis { (7.0, "start") } else { (-7.0, "end") };
            view.texts.push(text((x + dx, BOTTOM - 8.0), anchor, word));
            view.legend.push(("steps", TemperPage::KeySteps));
        }
    }
    if let Some((celsius, hrc)) = drawn.looked.filter(|(celsius, _)| field.holds(*celsius)) {
        let (x, y) = (field.x(celsius), field.y(hrc));
        view.looked = format!("M{} {}V{}H{}", tenth(x), tenth(BOTTOM), tenth(y), tenth(LEFT));
        view.legend.push(("looked", TemperPage::KeyLooked));
    }
    let own = drawn.own.iter().filter(|point| field.holds(point.celsius));
    for point in own {
        let (x, y) = (field.x(point.celsius), field.y(point.hrc));
        // A number that would lie on another one is left to the list below.
        let crowded = |&(x2, y2): &(f64, f64)| (x - x2).abs() < 30.0 && (y - y2).abs() < 18.0;
        if !view.own.iter().any(crowded) {
            let (dx, anchor) = if x > RIGHT - 40.0 { (-10.0, "end") } else { (10.0, "start") };
            view.texts.push(text((x + dx, y - 6.0), anchor, fixed(point.hrc, 0)));
        }
        view.own.push((x, y));
    }
    if !view.own.is_empty() {
        view.legend.push(("own", TemperPage::KeyOwn));
    }
}

fn hrc(value: f64) -> String {
    format!("{} HRC", fixed(value, 0))
}

fn band(point: &CurvePoint) -> String {
    format!("{} HRC", dash(&outward_low(point.low), &outward_high(point.high)))
}

fn label(drawn: &Drawn<'_>, field: &Field) -> String {
    let say = |phrase: TemperSaid<'_>| drawn.language.temper_said(phrase);
    let degrees = |celsius: f64| drawn.units.degrees(celsius);
    let joined = |list: Vec<String>| list.join("; ");
    // Every hundred degrees, and both ends.
    let count = drawn.curve.len();
    let told = drawn.curve.iter().enumerate().filter(|(index, point)| {
        let hundreds = point.celsius / 100.0;
        *index == 0 || index + 1 == count || hundreds - hundreds.floor() < 0.01
    });
    let told = told.map(|(_, point)| {
        let (at, about) = (degrees(point.celsius), hrc(point.median));
        say(TemperSaid::CurvePoint { at: &at, about: &about, band: &band(point) })
    });
    let points = joined(told.collect());
    let mut label = say(TemperSaid::Curve { each: &drawn.each, points: &points });
    if let Some((low, high)) = drawn.wanted {
        let axis = biteband_hardness::Axis::Hardness(biteband_hardness::Scale::Hrc);
        let wanted = drawn.units.range(axis, low, high);
        label.push_str(&say(TemperSaid::CurveWanted { wanted: &wanted }));
    }
    for range in drawn.brittle.iter().filter(|range| drawable(range)) {
        let range = drawn.units.temperatures(range.core_low_c, range.core_high_c);
        label.push_str(&say(TemperSaid::CurveBrittle { range: &range }));
    }
    if !drawn.steps.is_empty() {
        let steps = drawn.steps.iter().map(|(celsius, _)| degrees(*celsius)).collect();
        label.push_str(&say(TemperSaid::CurveSteps { steps: &joined(steps) }));
    }
    let own = drawn.own.iter().filter(|point| field.holds(point.celsius));
    let own: Vec<String> = own
        .map(|point| {
            let (hardness, temper) = (hrc(point.hrc), degrees(point.celsius));
            say(TemperSaid::Result { hardness: &hardness, temper: &temper })
        })
        .collect();
    if !own.is_empty() {
        label.push_str(&say(TemperSaid::CurveOwn { points: &joined(own) }));
    }
    label
}

fn rows(drawn: &Drawn<'_>) -> Vec<[String; 3]> {
    let told = drawn.curve.iter().filter(|point| {
        let steps = point.celsius / ROWS;
        steps - steps.floor() < 0.01
    });
    told.map(|point| {
        let band = dash(&outward_low(point.low), &outward_high(point.high));
        [drawn.units.degrees(point.celsius), fixed(point.median, 0), band]
    })
    .collect()
}
