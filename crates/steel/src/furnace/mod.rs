//! Heating: how long until the middle is hot, how long to hold it, what the skin loses meanwhile, and
//! whether the oven tells the truth.

mod error;
mod hold;
mod oven;
pub(crate) mod properties;
mod surface;

use alloc::vec::Vec;

use biteband_hardness::Seen;
use biteband_quantity::{Celsius, Kelvins, Minutes};

pub use error::{Error, FURNACE, START};
pub use hold::{Hold, HoldRule, RuleOfHold, hold};
pub use oven::{KnownPoint, Offset, OvenCheck, OvenOffset};
pub use surface::{Decarburised, Protection, decarburised};

use crate::conduction::tridiagonal::Chain;
use crate::section::{DENSITY, Section, Shape, Why};
use crate::{Cited, Confidence};
use properties::{conductivity, heat_content, specific_heat};

/// Emissivity of carbon steel as it scales, EN 1993-1-2, seen.
const SCALED: f64 = 0.7;
/// Emissivity of stainless and of bright steel, EN 1993-1-2, recalled.
const BRIGHT: f64 = 0.4;
/// Convection in the still air of a furnace, W/m²K.
const CONVECTION: f64 = 10.0;
/// Stefan-Boltzmann constant in W/m²K⁴, exact in the SI.
const STEFAN: f64 = 5.670_374_419e-8;
const KELVIN: f64 = 273.15;
/// The middle counts as heated through this near to the furnace.
const WITHIN: f64 = 10.0;
/// How much of a step goes by its end: a little more than half, which is nearly of second order and
/// does not swing.
const LATE: f64 = 0.55;
/// Shells from the middle to the skin.
const SHELLS: u32 = 12;

/// How long a part takes to be hot throughout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeatThrough {
    /// From the door's closing until the slowest place is within [`Self::within`] of the furnace, for
    /// a part that scales.
    pub minutes: Minutes,
    /// The same for a bright or stainless part, which takes up less radiation.
    pub bright: Minutes,
    /// How near to the furnace counts as hot.
    pub within: Kelvins,
    /// Whether a wrap, a box or a coat stands between part and furnace, so that the minutes are the
    /// least: count from when the wrap has the furnace's colour.
    pub at_least: bool,
    /// Where the model stands.
    pub cited: Cited,
}

/// How long a part takes to be hot throughout, in a furnace that is already at its temperature.
///
/// One part by itself, radiation and convection on its whole surface; parts that lie close together, and a
/// small kiln that has to recover, take longer. Every section is a body that grows outwards as its
/// area does: half its ruling size from the middle to the skin, with its own ratio of volume to surface, so
/// that a plate, a round and a cube are exact and the rest lie between them. A tube is taken as heated from
/// outside alone, which is the slow side.
///
/// # Units
/// Temperatures in °C inside [`FURNACE`] and [`START`].
///
/// # Source
/// EN 1993-1-2:2005 for specific heat, conductivity and the emissivity of 0.7; finite volumes of our own.
///
/// # Errors
/// [`Error::Quantity`] outside the bounds; [`Error::NothingToHeat`] for a part within 20 K of the furnace.
///
/// # Example
/// ```
/// use biteband_quantity::Celsius;
/// use biteband_steel::furnace::{Protection, heat_through};
/// use biteband_steel::section::{Section, Shape};
/// let round = Section::new(Shape::Round { diameter: 25.0 }, None).unwrap();
/// let (furnace, shop) = (Celsius::new(850.0)?, Celsius::new(20.0)?);
/// let found = heat_through(&round, furnace, shop, Protection::Open).unwrap();
/// assert!((found.minutes.get() - 17.0).abs() < 1.0);
/// # Ok::<(), biteband_quantity::OutOfBounds>(())
/// ```
pub fn heat_through(
    section: &Section,
    furnace: Celsius,
    start: Celsius,
    protection: Protection,
) -> Result<HeatThrough, Error> {
    let (furnace, start) = (FURNACE.check(furnace.get())?, START.check(start.get())?);
    if start > furnace - 2.0 * WITHIN {
        return Err(Error::NothingToHeat { furnace, start });
    }
    let body = Heated::new(section);
    let minutes =
        |emissivity| Minutes::new((body.seconds(furnace, start, emissivity) / 60.0).max(0.05));
    Ok(HeatThrough {
        minutes: minutes(SCALED)?,
        bright: minutes(BRIGHT)?,
        within: Kelvins::new(WITHIN)?,
        at_least: !matches!(protection, Protection::Open | Protection::Atmosphere),
        cited: Cited {
            sources: &["en-1993-1-2", "biteband-conduction"],
            seen: Seen::Seen,
            confidence: Confidence::Medium,
        },
    })
}

/// A section as the furnace sees it: shells between the middle and the skin.
struct Heated {
    /// Volumes of the shells, and areas between them over their distances; in m, per unit of skin.
    volumes: Vec<f64>,
    links: Vec<f64>,
}

impl Heated {
    fn new(section: &Section) -> Self {
        // Half sizes in mm of the directions in which heat enters: one over the sum of surface over volume.
        let (depth, mut inverse) = match section.shape() {
            Shape::Tube { outer, inner } if section.ruling().why == Why::Wall => {
                (0.5 * (outer - inner), 4.0 * outer / ((outer - inner) * (outer + inner)))
            }
            Shape::Round { diameter: size }
            | Shape::Tube { outer: size, .. }
            | Shape::Square { side: size }
            | Shape::Hexagon { across_flats: size } => (0.5 * size, 4.0 / size),
            Shape::Plate { thickness } => (0.5 * thickness, 2.0 / thickness),
            Shape::Flat { width, thickness } => {
                (0.5 * width.min(thickness), 2.0 / width + 2.0 / thickness)
            }
        };
        let mut depth = depth;
        if let Some(length) = section.length() {
            inverse += 2.0 / length;
            depth = depth.min(0.5 * length);
        }
        // A plate has 1, a round 2, a cube 3: the power of the volume.
        let power = depth * inverse;
        let depth = depth / 1000.0;
        let shell = 1.0 / f64::from(SHELLS);
        let volume = |to: f64| libm::pow(to, power) * depth / power;
        let (mut volumes, mut links, mut from) = (Vec::new(), Vec::new(), 0.0);
        for node in 0..=SHELLS {
            let to = (shell * (f64::from(node) + 0.5)).min(1.0);
            volumes.push(volume(to) - volume(from));
            let area = libm::pow(to, power - 1.0);
            links.push(if node == SHELLS { 0.0 } else { area / (shell * depth) });
            from = to;
        }
        Self { volumes, links }
    }

    /// Seconds until the middle is within [`WITHIN`] of the furnace.
    fn seconds(&self, furnace: f64, start: f64, emissivity: f64) -> f64 {
        let aim = furnace - WITHIN;
        let mut now: Vec<f64> = self.volumes.iter().map(|_| start).collect();
        let mut time = 0.0;
        let mut step = 1.0;
        // Each step warms the quickest shell by a few kelvin, so that a few hundred steps are the most.
        for _ in 0..2000 {
            let skin = now.last().copied().unwrap_or(furnace);
            let next = self.step(&now, furnace, step, skin, emissivity);
            let warmed =
                (next.iter().zip(&now)).map(|(b, a)| libm::fabs(b - a)).fold(0.0, f64::max);
            let most = (0.06 * (furnace - skin)).clamp(0.3, 8.0);
            if warmed > 2.0 * most {
                step *= 0.5;
                continue;
            }
            let (before, middle) =
                (now.first().copied().unwrap_or(aim), next.first().copied().unwrap_or(aim));
            if middle >= aim {
                let part = (aim - before) / (middle - before);
                return time + step * part;
            }
            time += step;
            now = next;
            step *= (most / warmed.max(1e-9)).clamp(0.3, 1.5);
        }
        time
    }

    /// The temperatures one step later. The second pass takes the specific heat that really lay between
    /// both temperatures, so that the peak at 735 °C is neither missed nor counted twice.
    fn step(&self, now: &[f64], furnace: f64, step: f64, skin: f64, emissivity: f64) -> Vec<f64> {
        let mut next: Vec<f64> = now.to_vec();
        for _ in 0..3 {
            let at = f64::midpoint(skin, next.last().copied().unwrap_or(skin));
            let (hot, cool) = (furnace + KELVIN, at + KELVIN);
            let radiation = emissivity * STEFAN * (hot * hot + cool * cool) * (hot + cool);
            let surface = CONVECTION + radiation;
            let links = (self.links.iter().zip(now.iter().zip(now.iter().skip(1).chain([&skin]))))
                .map(|(link, (a, b))| link * conductivity(f64::midpoint(*a, *b)))
                .collect();
            let mut losses: Vec<f64> = now.iter().map(|_| 0.0).collect();
            if let Some(last) = losses.last_mut() {
                *last = surface;
            }
            let capacities: Vec<f64> = (self.volumes.iter().zip(now.iter().zip(&next)))
                .map(|(volume, (a, b))| {
                    let heat = if libm::fabs(b - a) > 0.01 {
                        (heat_content(*b) - heat_content(*a)) / (b - a)
                    } else {
                        specific_heat(*a)
                    };
                    volume * DENSITY * heat
                })
                .collect();
            // Temperatures over that of the furnace, so that it is the nought of the chain.
            let chain = Chain::new(links, losses);
            let under: Vec<f64> = now.iter().map(|here| here - furnace).collect();
            let early = (1.0 - LATE) * step;
            let right = (capacities.iter().zip(&under).zip(chain.outflow(&under)))
                .map(|((heat, here), out)| heat * here - early * out);
            next = chain.solve(&capacities, LATE * step, right);
            for here in &mut next {
                *here += furnace;
            }
        }
        next
    }
}
