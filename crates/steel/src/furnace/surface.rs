//! What the skin loses in the furnace, and what must be ground off before a file says anything.

use biteband_hardness::Seen;
use biteband_quantity::{Bounds, Celsius, MassPercent, Minutes};

use super::error::Error;
use crate::keyed::keyed;
use crate::{Cited, Confidence, Interval};

/// Where the model of decarburisation holds, in °C.
const AUSTENITE: Bounds = Bounds {
    what: "hardening temperature",
    symbol: "°C",
    min: 727.0,
    max: 1200.0,
    why: "below, carbon hardly moves; above, the diffusivities were not measured",
};

keyed! {
    /// What stands between the skin and the air.
    Protection {
        /// Nothing.
        Open = "open",
        /// A brushed-on or dipped coat.
        Coated = "coated",
        /// Sealed in a wrap of stainless foil.
        Foil = "foil",
        /// Packed in a box with charcoal.
        Charcoal = "charcoal",
        /// Inert gas or vacuum.
        Atmosphere = "atmosphere",
    }
}

/// What the skin has lost.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Decarburised {
    /// Depth in mm to which less than 90 % of the carbon is left in open air, by the first and by the second
    /// diffusivity.
    pub models: [f64; 2],
    /// The band of that depth in mm: 50 % below the smaller to 50 % above the larger. In a protection it is
    /// what the protection holds off.
    pub depth: Interval,
    /// The least to grind off each face, in mm, before a file test or a hardness reading means anything.
    pub grind: f64,
    /// Where the models stand.
    pub cited: Cited,
}

/// Quantile: the error function is 0.9 here, so this far from the skin (in units of 2 √(D t)) nine tenths
/// of the carbon are left.
const NINE_TENTHS: f64 = 1.163_087_153_676_674;
/// The least to grind in mm, by protection; recalled, low confidence.
const GRIND_OPEN: f64 = 0.25;
const GRIND_PROTECTED: f64 = 0.15;
const GRIND_ATMOSPHERE: f64 = 0.10;
/// Half-width of the model: no measured table could be had, scale eats part of the depth.
const DOUBT: f64 = 0.5;

/// How deep an open skin loses its carbon, and the least to grind off.
///
/// The skin is taken to hold no carbon at all, which is the most that can happen. The least to grind is
/// 0.25 mm and not less than the deeper of both models in open air; 0.15 mm under a coat, foil or charcoal;
/// 0.10 mm in gas or vacuum. Then grind two steps of 0.1 mm: a hardness that rises with the depth is lost
/// carbon, one that stays soft was never hardened.
///
/// # Units
/// `celsius` 727 to 1200 °C, `minutes` at that temperature, `carbon` of the steel in mass percent (only the
/// second diffusivity uses it); depths in mm.
///
/// # Source
/// Diffusivity of carbon in austenite: 2.3e-5 exp(-148 000 / R T) m²/s, W. D. Callister's table; (0.07 +
/// 0.06 C) exp(-32 000 / 1.987 T) cm²/s, C. Wells and R. F. Mehl; both recalled. The least to grind: recalled,
/// low confidence; ASTM A255 asks for 0.38 mm on the end-quench bar (seen).
///
/// # Errors
/// [`Error::Quantity`] for a temperature outside.
///
/// # Example
/// ```
/// use biteband_quantity::{Celsius, MassPercent, Minutes};
/// use biteband_steel::furnace::{Protection, decarburised};
/// let (heat, time, carbon) = (Celsius::new(850.0)?, Minutes::new(30.0)?, MassPercent::new(0.6)?);
/// let open = decarburised(heat, time, carbon, Protection::Open).unwrap();
/// assert!((open.models[0] - 0.17).abs() < 0.005 && (open.models[1] - 0.25).abs() < 0.005);
/// assert_eq!(open.grind, 0.25);
/// # Ok::<(), biteband_quantity::OutOfBounds>(())
/// ```
pub fn decarburised(
    celsius: Celsius,
    minutes: Minutes,
    carbon: MassPercent,
    protection: Protection,
) -> Result<Decarburised, Error> {
    let kelvin = AUSTENITE.check(celsius.get())? + 273.15;
    let seconds = 60.0 * minutes.get();
    // Both in mm²/s.
    let first = 23.0 * libm::exp(-148_000.0 / (8.314_462_618 * kelvin));
    let second = 100.0 * (0.07 + 0.06 * carbon.get()) * libm::exp(-32_000.0 / (1.987 * kelvin));
    let models = [first, second].map(|d| 2.0 * NINE_TENTHS * libm::sqrt(d * seconds));
    let [a, b] = models;
    let deepest = a.max(b);
    Ok(Decarburised {
        models,
        depth: Interval { low: (1.0 - DOUBT) * a.min(b), high: (1.0 + DOUBT) * deepest },
        grind: match protection {
            Protection::Open => deepest.max(GRIND_OPEN),
            Protection::Coated | Protection::Foil | Protection::Charcoal => GRIND_PROTECTED,
            Protection::Atmosphere => GRIND_ATMOSPHERE,
        },
        cited: Cited {
            sources: &["callister", "wells-mehl", "biteband-trade"],
            seen: Seen::Recalled,
            confidence: Confidence::Low,
        },
    })
}
