//! The latent quantities, and how likely each clue is for each of them.

use alloc::vec::Vec;

use biteband_steel::hardenability::initial_hardness;
use libm::{exp, sqrt};

use super::clue::{Bath, Clue, Fracture};
use super::family::{Family, Quenched};
use super::span::Span;
use crate::model::phi;

/// Standard deviation of one end of a span from files in a shop, in HRC.
///
/// # Source
/// SAE J864-2018, seen second-hand: a proof file cuts 1 to 2 points below its range and fails to 2 to 3 above; no
/// source for hands outside a laboratory.
const READING_SD: f64 = 2.0;

/// Standard deviation of the hardness of heats of one carbon, in HRC.
///
/// # Source
/// Common practice, no source.
const HEAT_SD: f64 = 1.5;

/// Hardness below which half of all coupons bend, above which half of them snap, and the scatter of both, in HRC.
///
/// # Source
/// Common practice, no source.
const BREAK: (f64, f64, f64) = (40.0, 50.0, 6.0);

/// The least chance of any answer: people read, mark and mix up coupons.
const SLIP: f64 = 1e-9;

/// Hundredths of a percent of carbon, the first and the last of them that any family may have.
const HUNDREDTHS: core::ops::Range<u8> = 0..200;

/// Places of the normal law for families of fixed hardness: so many standard deviations apart.
const PLACES: [f64; 13] = [-3.0, -2.5, -2.0, -1.5, -1.0, -0.5, 0.0, 0.5, 1.0, 1.5, 2.0, 2.5, 3.0];

/// What decides how hard a coupon comes out.
#[derive(Clone, Copy, Debug)]
pub(super) enum Latent {
    /// Carbon in mass percent, with the losses in oil and in water.
    Carbon { carbon: f64, oil: f64, water: f64 },
    /// The hardness itself, in HRC.
    Hardness(f64),
}

/// A family with one value of its latent quantity, and its share before any test.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cell {
    pub(super) family: &'static Family,
    pub(super) latent: Latent,
    pub(super) share: f64,
}

/// Every cell; the shares add to 1.
pub(super) fn cells() -> Vec<Cell> {
    let mut all = Vec::new();
    for family in Family::all() {
        let start = all.len();
        match family.quenched {
            Quenched::Carbon { carbon: (low, high), oil, water } => {
                let steps = HUNDREDTHS.map(|step| (f64::from(step) + 0.5) / 100.0);
                let own = steps.filter(|carbon| (low..high).contains(carbon));
                all.extend(own.map(|carbon| {
                    let latent = Latent::Carbon { carbon, oil, water };
                    Cell { family, latent, share: 1.0 }
                }));
            }
            Quenched::Fixed { mean, sd } => all.extend(PLACES.iter().map(|place| Cell {
                family,
                latent: Latent::Hardness(mean + place * sd),
                share: exp(-0.5 * place * place),
            })),
        }
        let own = all.get_mut(start..).unwrap_or_default();
        let sum: f64 = own.iter().map(|cell| cell.share).sum();
        for cell in own {
            cell.share *= family.prior / sum;
        }
    }
    all
}

impl Cell {
    /// Carbon in mass percent, where it decides.
    pub(super) const fn carbon(&self) -> Option<f64> {
        match self.latent {
            Latent::Carbon { carbon, .. } => Some(carbon),
            Latent::Hardness(_) => None,
        }
    }

    /// The chance that a coupon, read with a scatter, is harder than a limit.
    pub(super) fn above(&self, bath: Bath, limit: f64, reading_sd: f64) -> f64 {
        match self.latent {
            Latent::Carbon { carbon, oil, water } => {
                let loss = if bath == Bath::Oil { oil } else { water };
                let sd = sqrt(HEAT_SD * HEAT_SD + reading_sd * reading_sd);
                above_after_loss(initial_hardness(carbon), loss, sd, limit)
            }
            Latent::Hardness(hardness) => step(hardness - limit, reading_sd),
        }
    }

    /// The chance of a clue; `last` is the bath of the coupon that was snapped.
    pub(super) fn chance(&self, clue: &Clue, last: Bath) -> f64 {
        let chance = match *clue {
            Clue::Magnet(answer) => self.family.magnet(answer),
            Clue::Spark(answer) => self.family.spark(answer),
            Clue::Skin(answer) => self.family.skin(answer),
            Clue::Found(span) => self.found(span),
            Clue::Coupon(bath, span) => span.chance(|limit| self.above(bath, limit, READING_SD)),
            Clue::Snap(answer) => self.broke(answer, last),
        };
        chance.max(SLIP)
    }

    fn found(&self, span: Span) -> f64 {
        let found = self.family.found;
        let part = |(mean, sd): (f64, f64)| {
            span.chance(|limit| step(mean - limit, sqrt(sd * sd + READING_SD * READING_SD)))
        };
        found.share * part(found.hard) + (1.0 - found.share) * part(found.soft)
    }

    fn broke(&self, answer: Fracture, bath: Bath) -> f64 {
        let (bends_below, snaps_above, sd) = BREAK;
        let bent = 1.0 - self.above(bath, bends_below, sd);
        let snapped = self.above(bath, snaps_above, sd);
        match answer {
            Fracture::Bent => bent,
            Fracture::Torn => 1.0 - bent - snapped,
            Fracture::Fine | Fracture::Coarse => snapped * self.family.grain(answer),
        }
    }
}

/// The chance that a normal error makes a difference positive; without scatter it is yes or no.
fn step(difference: f64, sd: f64) -> f64 {
    if sd > 0.0 { phi(difference / sd) } else { f64::from(u8::from(difference > 0.0)) }
}

/// The chance of more than `limit`, when `top` loses an exponential amount and scatters normally.
///
/// The loss is one-sided because nothing gets harder than its martensite; log-concave, so that more hardness never
/// speaks for less carbon.
///
/// # Source
/// The exponentially modified normal law; that the loss is exponential is our choice.
fn above_after_loss(top: f64, loss: f64, sd: f64, limit: f64) -> f64 {
    let (away, ratio) = ((top - limit) / sd, sd / loss);
    let tail = exp(0.5 * ratio * ratio - away * ratio) * phi(away - ratio);
    (phi(away) - tail).clamp(0.0, 1.0)
}
