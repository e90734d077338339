//! The section drawn with its hardness, and the bands of its places on the rule.

use std::fmt::Write as _;

use biteband_quantity::Shown;

use crate::answer::{PositionAnswer, ReachAnswer};
use crate::format::tenth;

/// Middle of the drawing, both ways.
const MIDDLE: f64 = 100.0;
/// Half of its size.
const HALF: f64 = 90.0;

/// A layer or line of the section.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layer {
    /// Class for the style sheet: `t0` to `t4` from soft to hard, `open` where it is unknown, `hole`.
    pub class: &'static str,
    /// As an SVG path.
    pub path: String,
}

/// A label with the line that leads to its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Callout {
    /// Where the line begins, in the section.
    pub from: (f64, f64),
    /// Where the text stands.
    pub at: (f64, f64),
    /// Which place.
    pub name: String,
    /// Its hardness.
    pub shown: String,
}

/// The section, 340 wide and 200 high.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionView {
    /// From the skin inward.
    pub layers: Vec<Layer>,
    /// Skin, half way and middle.
    pub callouts: Vec<Callout>,
    /// In words.
    pub label: String,
}

/// Height of one place on the rule.
const ROW: f64 = 34.0;

/// One place on the rule.
#[derive(Clone, Debug, PartialEq)]
pub struct BandRow {
    /// Foot of its name.
    pub name_y: f64,
    /// Upper edge of its band.
    pub band_y: f64,
    /// Which place.
    pub name: String,
    /// Its hardness in words.
    pub shown: String,
    /// Left edge and width of its band; nothing where neither end is known.
    pub band: Option<(f64, f64)>,
    /// The middle of the expectation, as an SVG path.
    pub mid: Option<String>,
    /// The soft end is not known.
    pub open: bool,
}

/// The bands of all places on one rule, 320 wide; heights from the top.
#[derive(Clone, Debug, PartialEq)]
pub struct BandView {
    /// From the skin inward.
    pub rows: Vec<BandRow>,
    /// The engraved edge with its ticks, as an SVG path.
    pub edge: String,
    /// Numbers at the tens.
    pub numbers: Vec<(f64, String)>,
    /// Foot of the numbers.
    pub numbers_y: f64,
    /// Height of the drawing.
    pub height: f64,
    /// Height of the bracket of what is wanted.
    pub goal_height: f64,
    /// Left edge and width of what is wanted.
    pub goal: Option<(f64, f64)>,
    /// The belief above one of the bands, as an SVG path; empty where none is drawn.
    pub ridge: String,
    /// In words.
    pub label: String,
}

const SOFT_END: f64 = 20.0;
const HARD_END: f64 = 68.0;
/// Width of the rule, and the margin that keeps the end ticks' numbers inside.
const WIDTH: f64 = 320.0;
const MARGIN: f64 = 12.0;

fn x(hrc: f64) -> f64 {
    let share = ((hrc - SOFT_END) / (HARD_END - SOFT_END)).clamp(0.0, 1.0);
    MARGIN + share * (WIDTH - 2.0 * MARGIN)
}

/// Five tones from soft to hard; the numbers stand beside them.
fn tone(place: &PositionAnswer) -> &'static str {
    match place.mid.or(place.low) {
        Some(hrc) if hrc >= 58.0 => "t4",
        Some(hrc) if hrc >= 50.0 => "t3",
        Some(hrc) if hrc >= 42.0 => "t2",
        Some(hrc) if hrc >= 32.0 => "t1",
        Some(_) => "t0",
        None => "open",
    }
}

fn circle(radius: f64) -> String {
    let (r, d) = (tenth(radius), tenth(2.0 * radius));
    let minus = tenth(-2.0 * radius);
    let (left, middle) = (tenth(MIDDLE - radius), tenth(MIDDLE));
    format!("M{left} {middle}a{r} {r} 0 1 0 {d} 0a{r} {r} 0 1 0 {minus} 0Z")
}

fn rectangle(half_width: f64, half_height: f64) -> String {
    let (left, top) = (tenth(MIDDLE - half_width), tenth(MIDDLE - half_height));
    let (width, height) = (tenth(2.0 * half_width), tenth(2.0 * half_height));
    let back = tenth(-2.0 * half_width);
    format!("M{left} {top}h{width}v{height}h{back}Z")
}

/// A flat on top; `radius` is that of the circle inside.
fn hexagon(radius: f64) -> String {
    let corner = radius * 2.0 / 3.0_f64.sqrt();
    let points = [(1.0, 0.0), (0.5, 1.0), (-0.5, 1.0), (-1.0, 0.0), (-0.5, -1.0), (0.5, -1.0)];
    let at = points.map(|(across, up): (f64, f64)| {
        format!("{} {}", tenth(MIDDLE + across * corner), tenth(MIDDLE + up * radius))
    });
    format!("M{}Z", at.join("L"))
}

/// Outline of the section at a share of its size.
fn outline(answer: &ReachAnswer, sizes: (f64, f64), share: f64) -> String {
    let (width, height) = sizes;
    // A layer lies the same way below every face: what is taken off is measured by the thinner size.
    let off = (1.0 - share) * width.min(height);
    match answer.section.shape {
        "square" | "flat" => rectangle(width - off, height - off),
        // A wide plate has no edges in the drawing.
        "plate" => rectangle(width, height - off),
        "hexagon" => hexagon(share * HALF * 0.866),
        _ => circle(share * HALF),
    }
}

/// Half of width and height on the drawing.
fn sizes(answer: &ReachAnswer, second: Option<f64>) -> (f64, f64) {
    match answer.section.shape {
        "square" => (80.0, 80.0),
        "plate" => (HALF, 40.0),
        "flat" => {
            let ruling = answer.section.ruling_mm;
            let ratio = second.map_or(0.4, |wide| (ruling / wide).clamp(0.15, 1.0));
            (HALF, HALF * ratio)
        }
        _ => (HALF, HALF),
    }
}

/// Draws the section; `second` is the width of a flat or the bore of a tube as a share of its outside.
pub(super) fn section(answer: &ReachAnswer, second: Option<f64>) -> SectionView {
    let find = |place: &str| answer.positions.iter().find(|one| one.place == place);
    let sizes = sizes(answer, second);
    let mut layers = Vec::new();
    let mut layer = |class, path| layers.push(Layer { class, path });
    let bore =
        if answer.section.shape == "tube" { second.unwrap_or(0.5).clamp(0.1, 0.95) } else { 0.0 };
    if bore > 0.0 {
        let wall = |share: f64| bore + (1.0 - bore) * share;
        for (place, share) in [("skin", 1.0), ("middle", 0.75), ("bore", 0.25)] {
            if let Some(found) = find(place).or_else(|| find("middle")) {
                layer(tone(found), circle(HALF * wall(share)));
            }
        }
        layer("hole", circle(HALF * bore));
    } else {
        for (place, share) in
            [("skin", 1.0), ("three_quarter", 0.875), ("half", 0.625), ("middle", 0.3)]
        {
            if let Some(found) = find(place) {
                layer(tone(found), outline(answer, sizes, share));
            }
        }
    }
    let (width, height) = sizes;
    let inner = if bore > 0.0 { "bore" } else { "half" };
    let spots = if bore > 0.0 {
        let wall = HALF * f64::midpoint(1.0, bore);
        [
            ("skin", (MIDDLE + 0.66 * HALF, MIDDLE - 0.7 * HALF)),
            ("middle", (MIDDLE + wall, MIDDLE)),
            (inner, (MIDDLE + 0.7 * HALF * bore, MIDDLE + 0.75 * HALF * bore)),
        ]
    } else {
        // Just below the skin: on the slope of a round, near the corner of anything else.
        let skin = if answer.section.shape == "round" { 0.67 } else { 0.85 };
        [
            ("skin", (MIDDLE + skin * width, MIDDLE - skin * height)),
            (inner, (MIDDLE + 0.5 * width, MIDDLE)),
            ("middle", (MIDDLE, MIDDLE)),
        ]
    };
    let rows = [36.0, 100.0, 164.0];
    let callouts = spots.into_iter().zip(rows).filter_map(|((place, from), y)| {
        let found = find(place)?;
        Some(Callout { from, at: (216.0, y), name: found.name.clone(), shown: found.shown.clone() })
    });
    let callouts: Vec<Callout> = callouts.collect();
    let label = callouts.iter().map(|one| format!("{}: {}", one.name, one.shown));
    let label = label.collect::<Vec<_>>().join("; ");
    SectionView { layers, callouts, label }
}

/// The bands of the places against what is wanted.
pub(super) fn bands(answer: &ReachAnswer) -> BandView {
    let rows = answer.positions.iter().filter(|place| place.place != "three_quarter");
    let rows: Vec<BandRow> = rows
        .zip(0_u8..)
        .map(|(place, index)| {
            let top = ROW * f64::from(index);
            let low = place.low.unwrap_or(SOFT_END);
            let band = place.high.map(|high| (x(low), (x(high) - x(low)).max(2.0)));
            BandRow {
                name_y: top + 15.0,
                band_y: top + 19.0,
                name: place.name.clone(),
                shown: place.shown.clone(),
                band,
                mid: place.mid.map(|hrc| format!("M{} {}v17", tenth(x(hrc)), tenth(top + 16.0))),
                open: place.low.is_none() || place.below_20,
            }
        })
        .collect();
    let at = ROW * f64::from(u8::try_from(rows.len()).unwrap_or(u8::MAX)) + 4.0;
    let mut edge = format!("M{} {}H{}", tenth(MARGIN), tenth(at), tenth(WIDTH - MARGIN));
    let mut numbers = Vec::new();
    for step in 0..=24_u8 {
        let hrc = SOFT_END + 2.0 * f64::from(step);
        let ten = step % 5 == 0;
        let length = if ten { 9 } else { 5 };
        // Writing into a String cannot fail.
        let _ = write!(edge, "M{} {}v{length}", tenth(x(hrc)), tenth(at));
        if ten {
            numbers.push((x(hrc), Shown(hrc).to_string()));
        }
    }
    let goal = answer.wanted.as_ref().map(|wanted| {
        let (low, high) = (wanted.low.unwrap_or(SOFT_END), wanted.high.unwrap_or(HARD_END));
        (x(low), (x(high) - x(low)).max(3.0))
    });
    let label = rows.iter().map(|row| format!("{}: {}", row.name, row.shown));
    let label = label.collect::<Vec<_>>().join("; ");
    BandView {
        rows,
        edge,
        numbers,
        numbers_y: at + 24.0,
        height: at + 28.0,
        goal_height: at - 2.0,
        goal,
        ridge: String::new(),
        label,
    }
}
