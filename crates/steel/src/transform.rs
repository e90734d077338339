//! Temperatures at which the structure changes, and what follows from them: cross-checks of the window that
//! a grade's own data give.
//!
//! # Example
//! ```
//! use biteband_steel::transform::{ac1, ac3, martensite_start, retained_austenite};
//! use biteband_steel::{Composition, Element::*};
//! let heat = Composition::new(&[
//!     (C, 0.40), (Mn, 0.88), (Si, 0.25), (Ni, 0.10), (Cr, 0.95), (Mo, 0.20),
//! ])?;
//! let (first, last) = (ac1(&heat).unwrap(), ac3(&heat).unwrap());
//! assert!((first.mid - 735.0).abs() < 1.0 && (last.mid - 793.0).abs() < 1.0);
//! let start = martensite_start(&heat).unwrap();
//! assert!(retained_austenite(start.mid, 20.0).is_some_and(|share| share < 0.04));
//! # Ok::<(), biteband_steel::CompositionError>(())
//! ```

use alloc::vec::Vec;
use core::fmt;

use biteband_hardness::Seen;
use biteband_quantity::Shown;
use libm::{exp, sqrt};

use crate::composition::{Composition, Element};
use crate::quenchant::Quenchant;
use crate::source::{Cited, Confidence};

/// A temperature from several formulas, in degrees Celsius.
#[derive(Clone, Debug, PartialEq)]
pub struct Estimate {
    /// The lowest that is to be expected.
    pub low: f64,
    /// The mean of the formulas.
    pub mid: f64,
    /// The highest that is to be expected.
    pub high: f64,
    /// What each formula gives, with the key of its source.
    pub each: Vec<(&'static str, f64)>,
    /// Where the formulas come from.
    pub cited: Cited,
}

/// Why a formula is not applied.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TransformError {
    /// Carbon outside the formulas, in mass percent; above, only the carbon in solution would count.
    Carbon {
        /// As given.
        given: f64,
        /// Lowest that the formulas take.
        low: f64,
        /// Highest that the formulas take.
        high: f64,
    },
    /// More alloy than a low-alloy steel has.
    Alloy {
        /// Sum of Mn, Si, Ni, Cr, Mo, V, W, Co and Cu in mass percent.
        given: f64,
        /// The most that the formulas take.
        allowed: f64,
    },
    /// No manganese stated, which every formula needs.
    NoManganese,
}

impl TransformError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Carbon { .. } => "transform.carbon",
            Self::Alloy { .. } => "transform.alloy",
            Self::NoManganese => "transform.no_manganese",
        }
    }
}

impl fmt::Display for TransformError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Carbon { given, low, high } => write!(
                f,
                "{} % C is outside {} to {} %, for which the formulas are made",
                Shown(given),
                Shown(low),
                Shown(high)
            ),
            Self::Alloy { given, allowed } => write!(
                f,
                "{} % of alloy is more than the {} % of a low-alloy steel",
                Shown(given),
                Shown(allowed)
            ),
            Self::NoManganese => f.write_str("the formulas need the Mn"),
        }
    }
}

impl core::error::Error for TransformError {}

/// The most alloy of a low-alloy steel, mass percent together: common practice, no source.
const LOW_ALLOY: f64 = 5.0;

/// Highest carbon of the formulas, mass percent: that of Andrews, the only one who states it.
const MOST_CARBON: f64 = 0.60;

/// Shares in mass percent that the formulas use; what is not stated counts as nothing, silicon as 0.25 %.
struct Shares {
    c: f64,
    mn: f64,
    si: f64,
    ni: f64,
    cr: f64,
    mo: f64,
    v: f64,
    w: f64,
    cu: f64,
}

impl Shares {
    fn of(composition: &Composition, least_carbon: f64) -> Result<Self, TransformError> {
        let get = |element| composition.get(element).unwrap_or(0.0);
        let Some(mn) = composition.get(Element::Mn) else {
            return Err(TransformError::NoManganese);
        };
        let shares = Self {
            c: composition.carbon(),
            mn,
            si: composition.get(Element::Si).unwrap_or(0.25),
            ni: get(Element::Ni),
            cr: get(Element::Cr),
            mo: get(Element::Mo),
            v: get(Element::V),
            w: get(Element::W),
            cu: get(Element::Cu),
        };
        let Self { c, mn, si, ni, cr, mo, v, w, cu } = shares;
        if !(c >= least_carbon && c <= MOST_CARBON) {
            let (low, high) = (least_carbon, MOST_CARBON);
            return Err(TransformError::Carbon { given: c, low, high });
        }
        let given = mn + si + ni + cr + mo + v + w + cu + get(Element::Co);
        if given > LOW_ALLOY {
            return Err(TransformError::Alloy { given, allowed: LOW_ALLOY });
        }
        Ok(shares)
    }
}

/// The mean, and around it the formulas' own spread or their usual error, whichever is wider.
fn estimate(
    each: Vec<(&'static str, f64)>,
    error: f64,
    sources: &'static [&'static str],
) -> Estimate {
    let (mut sum, mut count) = (0.0, 0.0);
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for (_, value) in &each {
        sum += value;
        count += 1.0;
        low = low.min(*value);
        high = high.max(*value);
    }
    let mid = sum / count;
    let cited = Cited { sources, seen: Seen::Part, confidence: Confidence::Medium };
    Estimate { low: low.min(mid - error), mid, high: high.max(mid + error), each, cited }
}

const CRITICAL: &[&str] = &["andrews-1965", "hougardy-1984", "trzaska-2016"];

/// Where austenite begins to form on heating, in °C, for slow heating of a low-alloy steel with at most
/// 0.60 % carbon; ±15 °C or the spread of the formulas. A faster heating raises it.
///
/// Sources: Andrews 1965, Hougardy 1984, Trzaska 2016.
///
/// # Errors
/// [`TransformError`] outside the steels that the formulas are made for.
pub fn ac1(composition: &Composition) -> Result<Estimate, TransformError> {
    let Shares { c, mn, si, ni, cr, mo, v, w, cu } = Shares::of(composition, 0.0)?;
    let andrews = 723.0 - 10.7 * mn - 16.9 * ni + 29.1 * si + 16.9 * cr + 6.38 * w;
    let hougardy = 739.0 - 22.0 * c - 7.0 * mn + 2.0 * si + 14.0 * cr + 13.0 * mo - 13.0 * ni;
    let trzaska = 742.0 - 29.0 * c - 14.0 * mn + 13.0 * si + 16.0 * cr - 17.0 * ni - 16.0 * mo
        + 45.0 * v
        + 36.0 * cu;
    let each = [("andrews-1965", andrews), ("hougardy-1984", hougardy), ("trzaska-2016", trzaska)];
    Ok(estimate(each.to_vec(), 15.0, CRITICAL))
}

/// Where the last ferrite has turned into austenite on heating, in °C, for slow heating of a low-alloy steel
/// with at most 0.60 % carbon; ±15 °C or the spread of the formulas.
///
/// Sources: the short form of Andrews 1965, Hougardy 1984, Trzaska 2016. Andrews' long form is an
/// equilibrium temperature, 22 to 37 °C lower than the others and than practice.
///
/// # Errors
/// [`TransformError`] outside the steels that the formulas are made for.
pub fn ac3(composition: &Composition) -> Result<Estimate, TransformError> {
    let Shares { c, mn, si, ni, cr, mo, v, w, .. } = Shares::of(composition, 0.0)?;
    let andrews =
        910.0 - 203.0 * sqrt(c) - 15.2 * ni + 44.7 * si + 104.0 * v + 31.5 * mo + 13.1 * w;
    let hougardy =
        902.0 - 255.0 * c - 11.0 * mn + 19.0 * si - 5.0 * cr + 13.0 * mo - 20.0 * ni + 55.0 * v;
    let trzaska = 925.0 - 219.0 * sqrt(c) - 7.0 * mn + 39.0 * si - 16.0 * ni + 13.0 * mo + 97.0 * v;
    let each = [("andrews-1965", andrews), ("hougardy-1984", hougardy), ("trzaska-2016", trzaska)];
    Ok(estimate(each.to_vec(), 15.0, CRITICAL))
}

/// Where martensite begins to form on quenching, in °C, for a low-alloy steel of 0.10 to 0.60 % carbon, all
/// of it in solution; ±25 °C or the spread of the formulas. Nine tenths are there about 103 °C below, all
/// of it about 215 °C below (Steven and Haynes, recalled).
///
/// Sources: Andrews 1965 (linear and product form), Steven and Haynes 1956 (to 0.55 % carbon, above
/// which their own correction is graphical), Trzaska 2016.
///
/// # Errors
/// [`TransformError`] outside the steels that the formulas are made for.
pub fn martensite_start(composition: &Composition) -> Result<Estimate, TransformError> {
    let Shares { c, mn, si, ni, cr, mo, .. } = Shares::of(composition, 0.10)?;
    let linear = 539.0 - 423.0 * c - 30.4 * mn - 17.7 * ni - 12.1 * cr - 7.5 * mo;
    let product = 512.0 - 453.0 * c - 16.9 * ni + 15.0 * cr - 9.5 * mo + 217.0 * c * c
        - 71.5 * c * mn
        - 67.6 * c * cr;
    let steven = 561.0 - 474.0 * c - 33.0 * mn - 17.0 * ni - 17.0 * cr - 21.0 * mo;
    let trzaska = 541.0 - 401.0 * c - 36.0 * mn - 10.5 * si - 14.0 * cr - 18.0 * ni - 17.0 * mo;
    let mut each = alloc::vec![
        ("andrews-1965", linear),
        ("andrews-1965", product),
        ("trzaska-2016", trzaska),
    ];
    if c <= 0.55 {
        each.push(("steven-haynes-1956", steven));
    }
    Ok(estimate(each, 25.0, &["andrews-1965", "steven-haynes-1956", "trzaska-2016"]))
}

/// Share of austenite that is left, from 0 to 1, when martensite starts at `start` and `quenched_to` is the
/// lowest temperature reached, both in °C; `None` for numbers that are none. Made for plain iron-carbon
/// alloys of 0.37 to 1.1 % carbon; a few percent low below.
///
/// Source: Koistinen and Marburger 1959.
///
/// # Example
/// ```
/// use biteband_steel::transform::retained_austenite;
/// assert!(retained_austenite(200.0, 20.0).is_some_and(|share| (share - 0.138).abs() < 0.0005));
/// assert_eq!(retained_austenite(200.0, 250.0), Some(1.0));
/// ```
#[must_use]
pub fn retained_austenite(start: f64, quenched_to: f64) -> Option<f64> {
    let below = start - quenched_to;
    below.is_finite().then(|| exp(-0.011 * below.max(0.0)))
}

/// How sharply a bath cools.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Severity {
    /// Still or moving air.
    Air,
    /// Oil of any kind.
    Oil,
    /// Water, brine or lye.
    Water,
}

impl From<Quenchant> for Severity {
    /// A polymer in water cools anywhere between oil and water and counts as water.
    fn from(quenchant: Quenchant) -> Self {
        match quenchant {
            Quenchant::Water | Quenchant::Brine | Quenchant::Polymer => Self::Water,
            Quenchant::Oil | Quenchant::FastOil | Quenchant::InterruptedOil | Quenchant::Salt => {
                Self::Oil
            }
            Quenchant::Air | Quenchant::Plate => Self::Air,
        }
    }
}

/// How likely a sound part is to crack in the quench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CrackLevel {
    /// Nothing speaks for it.
    Low,
    /// One step milder for thin, stepped, drilled or sharp-cornered parts.
    Raised,
    /// To be expected; take a milder bath.
    High,
}

/// Why a quench may crack a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CrackReason {
    /// The carbon equivalent is above [`CrackRisk::LIMIT`]; counts in water.
    Equivalent,
    /// Alloy steel with 0.35 % carbon or more in water: oil is the bath for it.
    AlloyInWater,
    /// Plain steel of 0.35 to 0.50 % carbon in water: for simple stout shapes only.
    CarbonInWater,
    /// Plain steel with more than 0.50 % carbon in water.
    MuchCarbonInWater,
    /// Martensite starts below 300 °C, late and cold.
    LateMartensite,
}

/// The risk of a quench crack and what speaks for it.
#[derive(Clone, Debug, PartialEq)]
pub struct CrackRisk {
    /// C + Mn/5 + Mo/5 + Cr/10 + Ni/50 in mass percent.
    pub equivalent: f64,
    /// How likely.
    pub level: CrackLevel,
    /// Why.
    pub reasons: Vec<CrackReason>,
    /// Where the rules come from.
    pub cited: Cited,
}

impl CrackRisk {
    /// Carbon equivalent above which a quench in water is likely to crack a part.
    pub const LIMIT: f64 = 0.525;
}

/// Most of Cr, Mo and Ni together in a plain carbon steel, mass percent: EN 10083-2.
const PLAIN: f64 = 0.63;

/// The risk that a quench in a bath of this sharpness cracks a part of this steel. The shape, which decides
/// as much, is not asked: section changes above 2:1, holes near edges, sharp corners and grinding scratches
/// call for one step milder.
///
/// Sources: carbon equivalent of Kunitake and Sugisawa with its limit of 0.525, recalled; rules by carbon,
/// alloy and martensite start: common practice, no source.
///
/// # Example
/// ```
/// use biteband_steel::transform::{CrackLevel, Severity, quench_crack};
/// use biteband_steel::{Composition, Element::*};
/// let heat = Composition::new(&[(C, 0.40), (Mn, 0.88), (Cr, 0.95), (Ni, 0.10), (Mo, 0.20)])?;
/// assert_eq!(quench_crack(&heat, Severity::Water).level, CrackLevel::High);
/// assert_eq!(quench_crack(&heat, Severity::Oil).level, CrackLevel::Low);
/// # Ok::<(), biteband_steel::CompositionError>(())
/// ```
#[must_use]
pub fn quench_crack(composition: &Composition, severity: Severity) -> CrackRisk {
    let get = |element| composition.get(element).unwrap_or(0.0);
    let (c, mn, mo) = (composition.carbon(), get(Element::Mn), get(Element::Mo));
    let (cr, ni) = (get(Element::Cr), get(Element::Ni));
    let equivalent = c + mn / 5.0 + mo / 5.0 + cr / 10.0 + ni / 50.0;
    let alloyed = cr + mo + ni > PLAIN || mn > 1.65;
    let mut reasons = Vec::new();
    let mut level = CrackLevel::Low;
    if severity == Severity::Water {
        if equivalent > CrackRisk::LIMIT {
            reasons.push(CrackReason::Equivalent);
            level = CrackLevel::Raised;
        }
        let rule = match (alloyed, c) {
            (_, c) if c < 0.35 => None,
            (true, _) => Some((CrackReason::AlloyInWater, CrackLevel::High)),
            (false, c) if c <= 0.50 => Some((CrackReason::CarbonInWater, CrackLevel::Raised)),
            (false, _) => Some((CrackReason::MuchCarbonInWater, CrackLevel::High)),
        };
        if let Some((reason, by_rule)) = rule {
            reasons.push(reason);
            level = level.max(by_rule);
        }
    }
    if severity != Severity::Air && martensite_start(composition).is_ok_and(|ms| ms.mid < 300.0) {
        reasons.push(CrackReason::LateMartensite);
        level = match level {
            CrackLevel::Low => CrackLevel::Raised,
            CrackLevel::Raised | CrackLevel::High => CrackLevel::High,
        };
    }
    let cited = Cited {
        sources: &["kunitake-sugisawa", "quench-practice"],
        seen: Seen::Recalled,
        confidence: Confidence::Medium,
    };
    CrackRisk { equivalent, level, reasons, cited }
}

#[cfg(test)]
mod tests {
    use super::Element::{C, Cr, Cu, Mn, Mo, Ni, Si};
    use super::*;

    fn alloyed() -> Composition {
        let shares = [(C, 0.40), (Mn, 0.88), (Si, 0.25), (Ni, 0.10), (Cr, 0.95), (Mo, 0.20)];
        Composition::new(&shares).unwrap()
    }

    fn plain() -> Composition {
        Composition::new(&[(C, 0.45), (Mn, 0.75), (Si, 0.25)]).unwrap()
    }

    fn near(estimate: &Estimate, printed: &[f64]) {
        assert_eq!(estimate.each.len(), printed.len());
        for ((source, value), printed) in estimate.each.iter().zip(printed) {
            // Whole degrees are printed.
            assert!((value - printed).abs() <= 0.75, "{source}: {value}, {printed} printed");
            assert!(estimate.low <= *value && *value <= estimate.high);
        }
    }

    /// Worked out once by hand from the printed coefficients, for a 4140 and a 1045 of middle composition.
    #[test]
    fn critical_temperatures_are_those_of_the_formulas() {
        near(&ac1(&alloyed()).unwrap(), &[735.0, 739.0, 732.0]);
        near(&ac3(&alloyed()).unwrap(), &[798.0, 791.0, 791.0]);
        near(&ac1(&plain()).unwrap(), &[722.0, 724.0, 722.0]);
        near(&ac3(&plain()).unwrap(), &[785.0, 784.0, 783.0]);
    }

    #[test]
    fn martensite_starts_where_the_formulas_say() {
        // Andrews linear and product, Trzaska, Steven and Haynes.
        near(&martensite_start(&alloyed()).unwrap(), &[328.0, 325.0, 328.0, 320.0]);
        let plain = martensite_start(&plain()).unwrap();
        let of = |place: usize| plain.each[place].1;
        assert!((of(0) - 326.0).abs() < 0.75 && (of(3) - 323.0).abs() < 0.75, "{plain:?}");
    }

    /// Values printed for the equation of Koistinen and Marburger, and a published example: 0.80 % C, start
    /// at about 220 °C, quenched to 25 °C, 11.7 % austenite.
    #[test]
    fn retained_austenite_follows_the_equation() {
        for (start, to, percent) in [
            (300.0, 20.0, 4.6),
            (200.0, 20.0, 13.8),
            (150.0, 20.0, 23.9),
            (328.0, 20.0, 3.4),
            (220.0, 25.0, 11.7),
        ] {
            let share = retained_austenite(start, to).unwrap();
            assert!((share * 100.0 - percent).abs() <= 0.05, "{start} to {to}: {share}");
        }
        assert_eq!(retained_austenite(f64::NAN, 20.0), None);
    }

    /// Carbon equivalents worked out by hand: 1045 0.60, 1040 0.53, 4130 0.535, 4140 0.71.
    #[test]
    fn carbon_equivalents_and_what_follows() {
        let of = |shares: &[(Element, f64)], severity| {
            quench_crack(&Composition::new(shares).unwrap(), severity)
        };
        let water = of(&[(C, 0.45), (Mn, 0.75), (Si, 0.25)], Severity::Water);
        assert!((water.equivalent - 0.60).abs() < 0.005);
        assert_eq!(water.level, CrackLevel::Raised);
        let water = of(&[(C, 0.39), (Mn, 0.71)], Severity::Water);
        assert!((water.equivalent - 0.53).abs() < 0.005);
        let chrome = [(C, 0.30), (Mn, 0.50), (Cr, 0.95), (Mo, 0.20)];
        let water = of(&chrome, Severity::Water);
        assert!((water.equivalent - 0.535).abs() < 0.0005);
        assert_eq!(water.reasons, [CrackReason::Equivalent]);
        assert_eq!(of(&chrome, Severity::Oil).level, CrackLevel::Low);
        let water = quench_crack(&alloyed(), Severity::Water);
        assert!((water.equivalent - 0.71).abs() < 0.005);
        assert_eq!(water.level, CrackLevel::High);
        // Spring steel in oil: martensite starts near 270 °C.
        let spring = [(C, 0.60), (Mn, 0.85), (Cr, 0.80)];
        assert_eq!(of(&spring, Severity::Oil).reasons, [CrackReason::LateMartensite]);
        assert_eq!(of(&spring, Severity::Water).level, CrackLevel::High);
        assert_eq!(of(&spring, Quenchant::Plate.into()).level, CrackLevel::Low);
        let soft = of(&[(C, 0.20), (Mn, 0.50)], Severity::Water);
        assert_eq!((soft.level, soft.reasons.len()), (CrackLevel::Low, 0));
        let much = of(&[(C, 0.95), (Mn, 0.40)], Severity::Water);
        assert_eq!(much.reasons, [CrackReason::Equivalent, CrackReason::MuchCarbonInWater]);
    }

    #[test]
    fn other_steels_are_refused() {
        let file = Composition::new(&[(C, 0.95), (Mn, 0.40)]).unwrap();
        assert!(matches!(ac3(&file), Err(TransformError::Carbon { .. })));
        assert!(matches!(martensite_start(&file), Err(TransformError::Carbon { .. })));
        let soft = Composition::new(&[(C, 0.05), (Mn, 0.40)]).unwrap();
        assert!(ac1(&soft).is_ok() && martensite_start(&soft).is_err());
        let stainless = Composition::new(&[(C, 0.30), (Mn, 0.5), (Cr, 13.0)]).unwrap();
        assert!(matches!(ac1(&stainless), Err(TransformError::Alloy { .. })));
        let bare = Composition::new(&[(C, 0.30), (Cu, 0.2)]).unwrap();
        assert_eq!(ac1(&bare), Err(TransformError::NoManganese));
        assert_eq!(ac1(&bare).unwrap_err().code(), "transform.no_manganese");
    }
}
