//! How a body cools that was hot throughout and gives its heat to a liquid of one temperature.
//!
//! Everything is without units: lengths in the half size of the body, times as the Fourier number
//! α t / L², the pull of the liquid as the Biot number h L / k, temperatures as the share of the first
//! difference that is left. Properties are constant, so bodies that are cut out by two or three others
//! (a square bar, a short cylinder) are the products of those.
//!
//! # Source
//! The equation of heat conduction, solved with finite volumes of our own. Checked against the exact
//! series for slab, cylinder, sphere and their products, against finite elements for the hexagon, and
//! against the closed form of the half space.

mod hexagon;
pub(crate) mod tridiagonal;

use alloc::vec::Vec;

use tridiagonal::Chain;

/// What is cooled; long or wide in every direction that is not named.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Body {
    /// A plate; L is half its thickness.
    Slab,
    /// A long round; L is its radius.
    Cylinder,
    /// A ball; L is its radius.
    Sphere,
    /// A long hexagon; L is half of its size across flats. Places lie on the way from the middle to
    /// the middle of a flat; a corner is 2/√3 away.
    Hexagon,
    /// A long tube; L is its whole wall, places count from the bore outwards.
    Hollow {
        /// Radius of the bore over the wall, above nought.
        bore: f64,
        /// Whether the liquid also cools the bore, as hard as the outside.
        flooded: bool,
    },
}

/// Where the nodes of a body lie: twice as close in the outer quarter, where the fall is steep.
const COARSE: u32 = 15;
const FINE: u32 = 10;
/// The first step as a Fourier number; later ones are [`STRIDE`] of the time gone by.
const FIRST: f64 = 1e-5;
const STRIDE: f64 = 0.18;
/// Steps enough for any body that a section can be; a guard, not a limit that is met.
const MOST_STEPS: u32 = 600;

/// A body cooling: the share of the first temperature difference left, at places and times.
#[derive(Clone, Debug, PartialEq)]
pub struct Cooling {
    places: Vec<f64>,
    times: Vec<f64>,
    frames: Vec<f64>,
}

impl Cooling {
    /// Lets a body cool until the share left is at most `floor` everywhere.
    ///
    /// # Units
    /// `biot` above nought, without unit; `floor` from 0.0001 to 0.9. Numbers outside are brought to
    /// the nearer end (`biot` 0.0001 to 10 000), so that no input can run away.
    ///
    /// # Source
    /// Finite volumes around nodes; TR-BDF2 in time (R. E. Bank et al., 1985), which neither swings nor
    /// blows up at any step. The hexagon is [`Body::Hexagon`]'s own lattice.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::conduction::{Body, Cooling};
    /// let round = Cooling::new(Body::Cylinder, 1.0, 0.4);
    /// // Exact series: half the difference is left in the middle at a Fourier number of 0.5590.
    /// assert!((round.half_time(0.0).unwrap() - 0.5590).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn new(body: Body, biot: f64, floor: f64) -> Self {
        let biot = if biot.is_nan() { 1.0 } else { biot.clamp(1e-4, 1e4) };
        let floor = if floor.is_nan() { 0.4 } else { floor.clamp(1e-4, 0.9) };
        match body {
            Body::Hexagon => hexagon::cool(biot, floor),
            _ => line(body, biot, floor),
        }
    }

    fn start(places: Vec<f64>) -> Self {
        let frames = places.iter().map(|_| 1.0).collect();
        Self { places, times: alloc::vec![0.0], frames }
    }

    fn push(&mut self, time: f64, frame: impl Iterator<Item = f64>) {
        self.times.push(time);
        self.frames.extend(frame);
    }

    /// The last Fourier number that was reached.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.times.last().copied().unwrap_or(0.0)
    }

    /// The share of the first difference left at a place and a Fourier number; `None` after the end.
    ///
    /// `place` counts from the middle (0) to the skin (1), of a tube from the bore (0) outwards.
    #[must_use]
    pub fn at(&self, place: f64, fourier: f64) -> Option<f64> {
        if !(fourier >= 0.0 && fourier <= self.end()) {
            return None;
        }
        let after = self.times.partition_point(|&time| time < fourier).max(1);
        let (t0, t1) = (*self.times.get(after - 1)?, *self.times.get(after)?);
        let (a, b) = (self.share(place, after - 1)?, self.share(place, after)?);
        let part = (fourier - t0) / (t1 - t0);
        // Shares fall like exponentials, which are straight in their logarithm.
        Some(if b > 0.0 && a > 0.0 { a * libm::pow(b / a, part) } else { a + (b - a) * part })
    }

    /// The Fourier number at which half of the first difference is left at a place.
    #[must_use]
    pub fn half_time(&self, place: f64) -> Option<f64> {
        half_time(&[(self, place, 1.0)])
    }

    fn share(&self, place: f64, frame: usize) -> Option<f64> {
        let width = self.places.len();
        let frame = self.frames.get(frame * width..(frame + 1) * width)?;
        let last = width.checked_sub(1)?;
        let after = self.places.partition_point(|&at| at < place).clamp(1, last);
        let (x0, x1) = (self.places.get(after - 1)?, self.places.get(after)?);
        let (a, b) = (frame.get(after - 1)?, frame.get(after)?);
        let part = ((place - x0) / (x1 - x0)).clamp(0.0, 1.0);
        Some(a + (b - a) * part)
    }
}

/// The time at which half of the first difference is left in the product of several coolings.
///
/// Each is given with its place and its own Fourier number per unit of time. `None` when they end
/// before half is left.
#[must_use]
pub fn half_time(of: &[(&Cooling, f64, f64)]) -> Option<f64> {
    let end =
        of.iter().map(|(cooling, _, pace)| cooling.end() / pace).fold(f64::INFINITY, f64::min);
    let left = |time: f64| {
        of.iter().try_fold(1.0, |left, &(cooling, place, pace)| {
            cooling.at(place, (time * pace).min(cooling.end())).map(|share| left * share)
        })
    };
    if left(end)? > 0.5 {
        return None;
    }
    let (mut low, mut high) = (0.0, end);
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if left(middle)? > 0.5 {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(f64::midpoint(low, high))
}

/// What a body that is described by one coordinate is made of.
struct Line {
    /// Power of the radius that the area grows with.
    growth: f64,
    /// Radius of the first node in units of L.
    bore: f64,
    flooded: bool,
}

impl Line {
    fn area(&self, place: f64) -> f64 {
        libm::pow(self.bore + place, self.growth)
    }

    fn volume(&self, from: f64, to: f64) -> f64 {
        let power = self.growth + 1.0;
        (libm::pow(self.bore + to, power) - libm::pow(self.bore + from, power)) / power
    }
}

fn places() -> impl Iterator<Item = f64> + Clone {
    let coarse = (0..COARSE).map(|i| 0.75 * f64::from(i) / f64::from(COARSE));
    coarse.chain((0..=FINE).map(|i| 0.75 + 0.25 * f64::from(i) / f64::from(FINE)))
}

fn line(body: Body, biot: f64, floor: f64) -> Cooling {
    let line = match body {
        Body::Hollow { bore, flooded } => {
            let bore = if bore.is_nan() { 1.0 } else { bore.clamp(1e-3, 1e4) };
            Line { growth: 1.0, bore, flooded }
        }
        Body::Cylinder | Body::Hexagon => Line { growth: 1.0, bore: 0.0, flooded: false },
        Body::Sphere => Line { growth: 2.0, bore: 0.0, flooded: false },
        Body::Slab => Line { growth: 0.0, bore: 0.0, flooded: false },
    };
    let (mut volumes, mut links) = (Vec::new(), Vec::new());
    let mut from = 0.0;
    for (place, next) in places().zip(places().skip(1)) {
        let face = f64::midpoint(place, next);
        volumes.push(line.volume(from, face));
        links.push(line.area(face) / (next - place));
        from = face;
    }
    volumes.push(line.volume(from, 1.0));
    links.push(0.0);
    let mut losses = alloc::vec![0.0; volumes.len()];
    if let (true, Some(bore)) = (line.flooded, losses.first_mut()) {
        *bore = biot * line.area(0.0);
    }
    if let Some(skin) = losses.last_mut() {
        *skin = biot * line.area(1.0);
    }
    let chain = Chain::new(links, losses);
    let mut made = Cooling::start(places().collect());
    let mut now = made.frames.clone();
    let mut time = 0.0;
    for _ in 0..MOST_STEPS {
        let step = FIRST.max(STRIDE * time);
        now = tr_bdf2(&chain, &volumes, &now, step);
        time += step;
        made.push(time, now.iter().copied());
        if now.iter().all(|&share| share <= floor) {
            break;
        }
    }
    made
}

/// One step of TR-BDF2: a trapezoid over the first part, a backward difference over the whole. With this
/// part both solve the same matrix.
fn tr_bdf2(chain: &Chain, volumes: &[f64], now: &[f64], step: f64) -> Vec<f64> {
    const PART: f64 = 2.0 - core::f64::consts::SQRT_2;
    let implicit = 0.5 * PART * step;
    let flow = chain.outflow(now);
    let right = volumes.iter().zip(now).zip(flow).map(|((v, t), out)| v * t - implicit * out);
    let between = chain.solve(volumes, implicit, right);
    let whole = PART * (2.0 - PART);
    let (a, b) = (1.0 / whole, (1.0 - PART) * (1.0 - PART) / whole);
    let right =
        volumes.iter().zip(&between).zip(now).map(|((v, t), before)| v * (a * t - b * before));
    chain.solve(volumes, implicit, right)
}
