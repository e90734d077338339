//! The ideal diameter: the product of one factor for each element.

use alloc::vec::Vec;

use super::error::Error;
use super::initial::polynomial;
use crate::composition::{Composition, CompositionLimits, Element, Interval};

/// Elements with a factor, in the order of the standard.
pub(super) const WITH_FACTOR: [Element; 8] = [
    Element::C,
    Element::Mn,
    Element::Si,
    Element::Ni,
    Element::Cr,
    Element::Mo,
    Element::Cu,
    Element::V,
];

/// A share outside the range for which the whole method of ASTM A255 is stated, while a factor exists.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutsideRange {
    /// The element.
    pub element: Element,
    /// Its share in mass percent.
    pub given: f64,
    /// The range of the standard in mass percent.
    pub allowed: Interval,
}

/// The diameter of the round bar whose centre is half martensite after a quench that takes the heat away
/// without resistance, and what it was made from.
#[derive(Clone, Debug, PartialEq)]
pub struct IdealDiameter {
    /// Millimetres.
    pub mm: f64,
    /// Inches, the unit of the factors.
    pub inches: f64,
    /// The factor of each element, in the order of the standard.
    pub factors: [(Element, f64); 8],
    /// Elements outside the range of the standard; the result is to be labelled when there are any.
    pub outside: Vec<OutsideRange>,
}

/// What a steel holds of an element, in mass percent, when nobody states it: nickel 0.10, chromium 0.10,
/// molybdenum 0.03 and copper 0.15 from scrap, silicon 0.25 from deoxidation; nothing of the others.
///
/// Source: working values of this project. Without them the middle compositions of 23 H-steels come out
/// 2.9 HRC below the middles of their bands, with them 0.1 above. Silicon: the usual 0.15 to 0.35 %.
///
/// # Example
/// ```
/// use biteband_steel::{Element, hardenability::typical_residual};
/// assert_eq!(typical_residual(Element::Cu), Some(0.15));
/// assert_eq!(typical_residual(Element::V), None);
/// ```
#[must_use]
pub const fn typical_residual(element: Element) -> Option<f64> {
    match element {
        Element::Si => Some(0.25),
        Element::Ni | Element::Cr => Some(0.10),
        Element::Mo => Some(0.03),
        Element::Cu => Some(0.15),
        _ => None,
    }
}

/// Range of the factor tables, in mass percent; elements without a factor may be there as a residue.
const fn tabulated(element: Element) -> Option<Interval> {
    let (low, high) = match element {
        Element::C => (0.01, 0.90),
        Element::Mn => (0.0, 1.95),
        Element::Si => (0.0, 2.00),
        Element::Ni => (0.0, 3.50),
        Element::Cr => (0.0, 2.50),
        Element::Mo | Element::Cu => (0.0, 0.55),
        // Tungsten and cobalt have no factor: nobody knows what more than a residue does to the result. Its
        // amount is ours.
        Element::V | Element::W | Element::Co => (0.0, 0.20),
        Element::P | Element::S | Element::B | Element::Pb => return None,
    };
    Some(Interval { low, high })
}

/// Range for which the standard states its method, in mass percent.
const fn stated(element: Element) -> Option<Interval> {
    let (low, high) = match element {
        Element::C => (0.10, 0.70),
        Element::Si => (0.15, 0.60),
        Element::Mn => (0.50, 1.65),
        Element::Cr => (0.0, 1.35),
        Element::Ni => (0.0, 1.50),
        Element::Cu => (0.0, 0.35),
        Element::Mo => (0.0, 0.55),
        Element::V => (0.0, 0.20),
        _ => return None,
    };
    Some(Interval { low, high })
}

/// The factor of an element at a share of `x` mass percent, in inches for carbon.
fn factor(element: Element, x: f64) -> f64 {
    match element {
        Element::C if x <= 0.39 => 0.54 * x,
        Element::C if x <= 0.55 => polynomial(&[0.171, 0.001, 0.265], x),
        Element::C if x <= 0.65 => polynomial(&[0.115, 0.268, -0.038], x),
        Element::C if x <= 0.75 => polynomial(&[0.143, 0.2], x),
        Element::C => polynomial(&[0.062, 0.409, -0.135], x),
        Element::Mn if x <= 1.20 => 3.3333 * x + 1.0,
        Element::Mn => 5.10 * x - 1.12,
        Element::Si => 0.7 * x + 1.0,
        Element::Ni if x <= 1.50 => 0.363 * x + 1.0,
        Element::Ni => polynomial(&[0.3211, 1.4501, -0.6119, 0.1253], x),
        Element::Cr => 2.16 * x + 1.0,
        Element::Mo => 3.0 * x + 1.0,
        Element::Cu => 0.365 * x + 1.0,
        Element::V => 1.73 * x + 1.0,
        _ => 1.0,
    }
}

/// Shares of the elements with a factor, in their order.
pub(super) type Shares = [f64; 8];

pub(super) fn share(shares: &Shares, element: Element) -> f64 {
    let pairs = WITH_FACTOR.iter().zip(shares);
    pairs.filter(|(known, _)| **known == element).map(|(_, share)| *share).sum()
}

/// Keeps a share inside the factor tables.
pub(super) fn inside_tables(element: Element, share: f64) -> f64 {
    tabulated(element).map_or(share, |range| share.max(range.low).min(range.high))
}

/// The ideal diameter of shares that stand inside the factor tables, in inches.
fn product(shares: &Shares) -> (f64, [(Element, f64); 8]) {
    let mut factors = WITH_FACTOR.map(|element| (element, 1.0));
    let mut product = 1.0;
    for (slot, share) in factors.iter_mut().zip(shares) {
        slot.1 = factor(slot.0, *share);
        product *= slot.1;
    }
    (product, factors)
}

/// The ideal diameter in millimetres.
pub(super) fn millimetres(shares: &Shares) -> f64 {
    25.4 * product(shares).0
}

/// Elements outside the range of the standard.
pub(super) fn outside(shares: &Shares) -> Vec<OutsideRange> {
    let pairs = WITH_FACTOR.iter().zip(shares);
    pairs
        .filter_map(|(&element, &given)| {
            let allowed = stated(element)?;
            let inside = given >= allowed.low && given <= allowed.high;
            (!inside).then_some(OutsideRange { element, given, allowed })
        })
        .collect()
}

/// Refuses boron, elements outside the factor tables and elements without a factor, by the middles of
/// the limits. Carbon is left to the caller.
pub(super) fn covered(limits: &CompositionLimits) -> Result<(), Error> {
    if let Some(boron) = limits.range(Element::B)
        && boron.high > Error::BORON
    {
        return Err(Error::Boron { given: boron.high });
    }
    for element in Element::ALL {
        let given = range(limits, element).middle();
        if let Some(allowed) = tabulated(element)
            && element != Element::C
            && given > allowed.high
        {
            return Err(Error::Outside { element, given, allowed });
        }
    }
    if limits.range(Element::Mn).is_none() {
        return Err(Error::Missing { element: Element::Mn });
    }
    Ok(())
}

/// What a steel holds of an element when only limits are known.
///
/// A lowest and a highest share are the range; a lowest alone counts as that share. A highest share alone
/// of an element that comes with the scrap is a promise, not an aim: the typical residual counts, or the
/// limit if that is lower. Half of a residual up and down is its range.
pub(crate) fn range(limits: &CompositionLimits, element: Element) -> Interval {
    let residual = match limits.stated(element) {
        (None, limit) => typical_residual(element)
            .map(|typical| limit.map_or(typical, |limit| typical.min(limit))),
        (Some(_), _) => None,
    };
    if let Some(typical) = residual {
        return Interval { low: 0.5 * typical, high: 1.5 * typical };
    }
    let nothing = Interval { low: 0.0, high: 0.0 };
    match (limits.stated(element), element) {
        ((None, Some(_)), Element::V | Element::W | Element::Co) => nothing,
        _ => limits.range(element).unwrap_or(nothing),
    }
}

/// The ideal diameter of a steel without boron by ASTM A255, grain size 7, from unrounded factors.
///
/// An element that is not stated counts with its [`typical_residual`]. Phosphorus and sulphur do not
/// count, as in the standard; zirconium, for which the standard has a factor, is not an element of
/// [`Composition`].
///
/// # Errors
/// [`Error::Boron`]; [`Error::Missing`] without manganese; [`Error::Outside`] outside the factor tables
/// (C 0.01-0.90, Mn to 1.95, Si to 2.00, Ni to 3.50, Cr to 2.50, Mo and Cu to 0.55, V to 0.20 %) and for
/// tungsten and cobalt, which have no factor.
///
/// # Example
/// ```
/// use biteband_steel::hardenability::ideal_diameter;
/// use biteband_steel::{Composition, Element::*};
/// // SAE 4118 modified, the worked example of the standard: 1.95 in from rounded factors.
/// let heat = Composition::new(&[
///     (C, 0.22), (Mn, 0.80), (Si, 0.18), (Ni, 0.10), (Cr, 0.43), (Mo, 0.25), (Cu, 0.10), (V, 0.05),
/// ])?;
/// assert!((ideal_diameter(&heat).unwrap().inches - 1.94).abs() <= 0.01);
/// # Ok::<(), biteband_steel::CompositionError>(())
/// ```
pub fn ideal_diameter(composition: &Composition) -> Result<IdealDiameter, Error> {
    let limits = CompositionLimits::from(*composition);
    covered(&limits)?;
    let shares = WITH_FACTOR.map(|element| range(&limits, element).middle());
    let carbon = composition.carbon();
    if let Some(allowed) = tabulated(Element::C)
        && !(carbon >= allowed.low && carbon <= allowed.high)
    {
        return Err(Error::Outside { element: Element::C, given: carbon, allowed });
    }
    let (inches, factors) = product(&shares);
    Ok(IdealDiameter { mm: 25.4 * inches, inches, factors, outside: outside(&shares) })
}
