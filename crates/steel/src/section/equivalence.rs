//! Which place of the end-quench bar cools as a place of the section does.

use alloc::vec::Vec;

use biteband_hardness::Seen;
use biteband_quantity::Bounds;

use super::bar::{SIXTEENTH, distance};
use super::{Error, Place, Section, Shape, Why};
use crate::conduction::{Body, Cooling, half_time};
use crate::quench::Severity;
use crate::{Cited, Confidence};

/// What a severity may be, in 1/inch.
pub const H_BOUNDS: Bounds = Bounds {
    what: "quench severity H",
    symbol: "1/in",
    min: 0.01,
    max: 1000.0,
    why: "still air has 0.02, brine driven hard 5; 1000 is as good as the ideal quench",
};

/// Sizes of the rounds in mm, and severities, at which the power law was held against charts.
const CHECKED_ROUND: (f64, f64) = (12.0, 150.0);
const CHECKED_H: (f64, f64) = (0.25, 2.0);
/// Nine points in ten of the charts lie this near, in mm: two sixteenths of an inch.
const NEAR: f64 = 2.0 * SIXTEENTH;
/// The bar is read up to 2 in.
const BAR_END: f64 = 32.0 * SIXTEENTH;
/// Diffusivity of undercooled austenite in mm²/s: 29 W/mK, 7800 kg/m³, 640 J/kgK, the mean of 850 to 500 °C.
const DIFFUSIVITY: f64 = 29.0 / (7800.0 * 640.0) * 1e6;
/// What the time of a part is multiplied by before it is looked up on the bar; found on the charts.
const TIME_SCALE: f64 = 0.75;
/// Coolings are followed until a little less than half is left.
const FLOOR: f64 = 0.49;

/// A figure with its band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Lowest.
    pub low: f64,
    /// Most likely.
    pub mid: f64,
    /// Highest.
    pub high: f64,
}

/// How the distance was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Route {
    /// The published power law for rounds.
    PowerLaw,
    /// The power law at the long round whose middle cools in the same time, by conduction.
    EqualTimeRound,
}

impl Route {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::PowerLaw => "power_law",
            Self::EqualTimeRound => "equal_time_round",
        }
    }
}

/// The bar's place for one place of the section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaceDistance {
    /// Where in the section.
    pub place: Place,
    /// Distance from the quenched end in mm.
    pub jominy: Band,
    /// The same by conduction alone, in mm; `None` beyond the end of the bar.
    pub second_opinion: Option<f64>,
    /// Whether the middle of the band lies beyond the 2 in up to which the bar is read: slower than
    /// anything that was measured there.
    pub beyond_bar: bool,
}

impl PlaceDistance {
    /// The distance in sixteenths of an inch.
    #[must_use]
    pub fn sixteenths(&self) -> f64 {
        self.jominy.mid / SIXTEENTH
    }
}

/// The bar's places for a section.
#[derive(Clone, Debug, PartialEq)]
pub struct Equivalent {
    /// From the skin to the middle, and the bore of a tube.
    pub places: Vec<PlaceDistance>,
    /// Diameter in mm of the long round whose middle cools in the same time.
    pub round: f64,
    /// How the distances were found.
    pub route: Route,
    /// Whether round and severity lie where the law was held against charts: 12 to 150 mm, H 0.25 to 2.
    pub checked: bool,
    /// Where the law stands.
    pub cited: Cited,
}

/// The bar's place for a place of a long round, in mm, by the published power law.
///
/// Held in order, because the surface would overtake what lies below it in thin parts and mild baths.
///
/// # Units
/// `diameter` in mm, `h` in 1/inch, both above nought.
///
/// # Source
/// E. Just, Metal Progress and Härterei-Technische Mitteilungen, 1968 and 1969; recalled. On 12 to 150 mm
/// it keeps within 2/16 in of the charts of SAE J1268 for nine rows in ten in water and seven in ten in oil.
///
/// # Example
/// ```
/// use biteband_steel::section::{Place, power_law};
/// // SAE J1268: the middle of 2.0 in in mildly moved water is 8/16 in.
/// assert!((power_law(Place::Middle, 50.8, 1.0) / 1.5875 - 8.0).abs() < 0.5);
/// ```
#[must_use]
pub fn power_law(place: Place, diameter: f64, h: f64) -> f64 {
    let law = |size: f64, by: f64, severity: f64| {
        libm::pow(diameter, size) / (by * libm::pow(h, severity))
    };
    let middle = law(1.18, 8.29, 0.51);
    let half = law(1.16, 9.45, 0.51).min(middle);
    let three_quarter = law(1.05, 8.62, 0.668).min(half);
    match place {
        Place::Middle | Place::Bore => middle,
        Place::Half => half,
        Place::ThreeQuarter => three_quarter,
        Place::Skin => law(0.718, 5.11, 1.28).min(three_quarter),
    }
}

/// What one severity makes of one section.
struct Found {
    round: f64,
    /// Bar distance in mm by the law, and seconds to half, of each place; the seconds are nought where
    /// nobody asked for them.
    places: Vec<(Place, f64, f64)>,
}

impl Found {
    fn new(section: &Section, h: f64, flooded: bool, timed: bool) -> Option<Self> {
        let tube = section.ruling().why == Why::Wall;
        let bodies = bodies(section, flooded);
        let long_round = match (section.shape(), section.length()) {
            (Shape::Round { diameter }, None) => Some(diameter),
            _ => None,
        };
        let mut coolings: Vec<(Cooling, f64, f64)> = Vec::new();
        let mut last = None;
        for body in bodies.into_iter().filter(|_| timed || long_round.is_none()) {
            let (kind, size) = body;
            // A square is twice the same slab.
            let twin = coolings.last().filter(|_| last == Some(body)).cloned();
            // The slowest place of a wall is its middle, or the bore where no liquid passes.
            let slowest =
                if matches!(kind, Body::Hollow { flooded: true, .. }) { 0.5 } else { 0.0 };
            coolings.push(twin.unwrap_or_else(|| {
                let cooling = Cooling::new(kind, biot(h, size), FLOOR);
                (cooling, slowest, DIFFUSIVITY / (size * size))
            }));
            last = Some(body);
        }
        let time = |first: Option<f64>| {
            let mut first = first;
            let all: Vec<(&Cooling, f64, f64)> = (coolings.iter())
                .map(|(cooling, slowest, pace)| (cooling, first.take().unwrap_or(*slowest), *pace))
                .collect();
            half_time(&all)
        };
        let round = match long_round {
            Some(diameter) => diameter,
            None => round_of(time(None)?, h, section.ruling().mm)?,
        };
        // A wall's places: where they are in it, and what they are of the round.
        let of_wall = |place| match (place, flooded) {
            (Place::Middle, true) => (0.5, Place::Middle),
            (Place::Middle, false) => (0.5, Place::Half),
            (Place::Bore, true) => (0.0, Place::Skin),
            (Place::Bore, false) => (0.0, Place::Middle),
            (other, _) => (1.0, other),
        };
        let place = |&place: &Place| {
            let (at, like) = if tube { of_wall(place) } else { (place.out(), place) };
            let seconds = if timed { time(Some(at))? } else { 0.0 };
            Some((place, power_law(like, round, h), seconds))
        };
        let places: &[Place] = if tube { &Place::TUBE } else { &Place::SOLID };
        Some(Self { round, places: places.iter().map(place).collect::<Option<_>>()? })
    }

    /// The middle between a bore that the liquid runs through and one that it does not, place by place.
    fn between(self, other: &Self) -> Self {
        let mean = |a: f64, b: f64| libm::sqrt(a * b);
        let pairs = self.places.iter().zip(&other.places);
        Self {
            round: mean(self.round, other.round),
            places: pairs.map(|(a, b)| (a.0, mean(a.1, b.1), mean(a.2, b.2))).collect(),
        }
    }
}

/// The bodies of a section, its open bore among them.
fn bodies(section: &Section, flooded: bool) -> Vec<(Body, f64)> {
    let mut bodies = section.bodies();
    if let (Shape::Tube { outer, inner }, true) = (section.shape(), section.open_bore()) {
        let wall = 0.5 * (outer - inner);
        for body in bodies.iter_mut().filter(|(body, _)| *body == Body::Cylinder) {
            *body = (Body::Hollow { bore: 0.5 * inner / wall, flooded }, wall);
        }
    }
    bodies
}

/// Biot number: h is 2 k H over an inch, so the conductivity cancels.
fn biot(h: f64, size: f64) -> f64 {
    2.0 * h * size / 25.4
}

/// Seconds until half is left in the middle of a long round.
fn round_time(diameter: f64, h: f64) -> Option<f64> {
    let radius = 0.5 * diameter;
    let cooling = Cooling::new(Body::Cylinder, biot(h, radius), FLOOR);
    Some(cooling.half_time(0.0)? * radius * radius / DIFFUSIVITY)
}

/// The long round whose middle takes these seconds, in mm. The time is nearly a power of the size, so
/// a secant on logarithms is there in a few steps.
fn round_of(seconds: f64, h: f64, guess: f64) -> Option<f64> {
    let aim = libm::log(seconds);
    let at = |size: f64| round_time(libm::exp(size), h).map(|time| libm::log(time) - aim);
    let (mut before, mut slope) = (libm::log(guess), 1.5);
    let mut off = at(before)?;
    for _ in 0..12 {
        let size = before - off / slope;
        // The next step would be a small share of this one.
        if libm::fabs(size - before) < 1e-3 {
            return Some(libm::exp(size));
        }
        let now = at(size)?;
        // The slope lies between 1 (even temperature) and 2 (cold skin).
        slope = ((now - off) / (size - before)).clamp(0.9, 2.2);
        (before, off) = (size, now);
    }
    Some(libm::exp(before))
}

/// The bar's places for a section at one severity, in mm from the quenched end: by the route that is
/// used, and by conduction alone (`None` beyond the end of the bar).
///
/// An open bore counts as half way between flooded and dry.
///
/// # Units
/// `h` in 1/inch inside [`H_BOUNDS`].
///
/// # Errors
/// [`Error::Severity`] for a severity outside.
pub fn equivalent_at(section: &Section, h: f64) -> Result<Vec<(Place, f64, Option<f64>)>, Error> {
    let found = both(section, H_BOUNDS.check(h).map_err(Error::Severity)?);
    let places = found.into_iter().flat_map(|found| found.places);
    Ok(places.map(|(place, mm, time)| (place, mm, distance(TIME_SCALE * time))).collect())
}

fn both(section: &Section, h: f64) -> Option<Found> {
    let found = Found::new(section, h, true, true)?;
    if section.open_bore() {
        Some(found.between(&Found::new(section, h, false, true)?))
    } else {
        Some(found)
    }
}

/// The bar's places for a section in a bath, as bands.
///
/// Two ways lead there, and the middle between them is taken: it keeps within 2/16 in of 92 % of the chart
/// points, the first alone of 85 %. The first is the power law, for long rounds directly and for every
/// other shape by the long round whose middle cools in the same time, found by conduction: half the
/// temperature difference is the time that fits the charts best. The second, told as second opinion, is
/// conduction at the place itself, with three quarters of its time; beyond the end of the bar it says no more
/// than that.
///
/// The band joins two doubts: 2/16 in, within which nine chart points in ten lie at their nominal
/// severity, and what the band of the severity does to the distance. They come from different causes,
/// the law and the bath, so their half-widths are joined as the root of the sum of squares, each
/// side by itself; adding them would claim that both are at their worst together. For a tube the low
/// side has the bore flooded, the high side has it dry.
///
/// # Units
/// Distances in mm, not below nought; H in 1/inch.
///
/// # Source
/// [`power_law`]; conduction of our own, see [`crate::conduction`]. Rules of thumb (recalled): a plate
/// counts as a round of 1.5 times its thickness, a square of 1.1 times its side.
///
/// # Errors
/// [`Error::Severity`] for a severity outside [`H_BOUNDS`].
///
/// # Example
/// ```
/// use biteband_steel::quench::{Medium, Movement, severity};
/// use biteband_steel::section::{Section, Shape, equivalent};
/// let round = Section::new(Shape::Round { diameter: 50.0 }, None)?;
/// let oil = severity(Medium::Oil, Movement::Mild).unwrap();
/// let found = equivalent(&round, &oil)?;
/// let middle = found.places.last().unwrap();
/// // SAE J1268: 2.0 in in oil is 12/16 in in the middle.
/// assert!(middle.jominy.low < 19.0 && 19.0 < middle.jominy.high);
/// # Ok::<(), biteband_steel::section::Error>(())
/// ```
pub fn equivalent(section: &Section, severity: &Severity) -> Result<Equivalent, Error> {
    let check = |h| H_BOUNDS.check(h).map_err(Error::Severity);
    let (low, mid, high) = (check(severity.low)?, check(severity.mid)?, check(severity.high)?);
    let dry = !section.open_bore();
    let found = (|| {
        Some((
            both(section, mid)?,
            Found::new(section, high, true, false)?,
            Found::new(section, low, dry, false)?,
        ))
    })();
    let (mut places, mut round) = (Vec::new(), section.ruling().mm);
    if let Some((found, quick, slow)) = found {
        round = found.round;
        for ((&(place, mm, time), quick), slow) in
            found.places.iter().zip(&quick.places).zip(&slow.places)
        {
            let below = libm::hypot(NEAR, (mm - quick.1).max(0.0));
            let above = libm::hypot(NEAR, (slow.1 - mm).max(0.0));
            let second_opinion = distance(TIME_SCALE * time);
            // Beyond the end of the bar conduction says "at least there".
            let mid = f64::midpoint(mm, second_opinion.unwrap_or(mm.max(BAR_END)));
            places.push(PlaceDistance {
                place,
                jominy: Band { low: (mid - below).max(0.0), mid, high: mid + above },
                second_opinion,
                beyond_bar: mid > BAR_END,
            });
        }
    }
    let inside = |value: f64, (low, high): (f64, f64)| value >= low && value <= high;
    let route = match (section.shape(), section.length()) {
        (Shape::Round { .. }, None) => Route::PowerLaw,
        _ => Route::EqualTimeRound,
    };
    Ok(Equivalent {
        places,
        round,
        route,
        checked: inside(round, CHECKED_ROUND) && inside(mid, CHECKED_H),
        cited: Cited {
            sources: &["just-1968", "biteband-conduction"],
            seen: Seen::Recalled,
            confidence: Confidence::Medium,
        },
    })
}
