//! The definitions: a number from a size or a depth, and back.
//!
//! Forces are kept in kilogram-force, so that the factor 0.102 of the standards, a rounded 1/9.80665,
//! does not enter: with it a printed Brinell table is missed by one in the last place.

use super::check::Cited;
use super::error::Error;
use super::generated::ASTM_A956;
use crate::axis::Scale;
use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres};

/// Sine of half the angle between opposite faces of the Vickers diamond, 68 degrees.
const VICKERS_SIN: f64 = 0.927_183_854_566_787_4;
/// Tangent of the same.
const VICKERS_TAN: f64 = 2.475_086_853_416_296;
/// Projected area of a Knoop indentation over the square of its long diagonal, as ISO 4545-1 prints it.
const KNOOP_AREA: f64 = 0.070_28;
/// Tangent of half the longer angle of the Knoop diamond, 86.25 degrees.
const KNOOP_TAN: f64 = 15.257_051_688_265_54;

/// A finite number above nought.
fn positive(given: f64) -> Result<f64, Error> {
    if given.is_finite() && given > 0.0 { Ok(given) } else { Err(Error::NotAHardness { given }) }
}

/// Vickers hardness: force in kgf over the contact area, 2 sin(68°) F / d².
///
/// # Units
/// `diagonal`: the mean of the two, in mm.
///
/// # Source
/// `iso-6507-1`; 2 sin(68°)/9.80665 is the printed 0.1891 for newtons.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::vickers;
/// use biteband_quantity::{KilogramsForce, Millimetres};
/// // ISO 6507-1, second example of the annex on curved surfaces: 323 HV30.
/// let hv = vickers(KilogramsForce::from_newtons(294.2)?, Millimetres::new(0.415)?);
/// assert!((hv - 323.0).abs() < 0.5);
/// # Ok::<(), biteband_quantity::OutOfBounds>(())
/// ```
#[must_use]
pub fn vickers(force: KilogramsForce, diagonal: Millimetres) -> f64 {
    2.0 * VICKERS_SIN * force.get() / (diagonal.get() * diagonal.get())
}

/// Mean diagonal in mm of a Vickers hardness.
///
/// # Errors
/// [`Error::NotAHardness`]; [`Error::Quantity`] when the diagonal is outside the bounds of lengths.
pub fn vickers_diagonal(force: KilogramsForce, hardness: f64) -> Result<Millimetres, Error> {
    let area = 2.0 * VICKERS_SIN * force.get() / positive(hardness)?;
    Ok(Millimetres::new(libm::sqrt(area))?)
}

/// Depth in mm of a Vickers indentation: d / 7.0006.
///
/// # Errors
/// [`Error::Quantity`] when the depth is outside the bounds of lengths.
pub fn vickers_depth(diagonal: Millimetres) -> Result<Millimetres, Error> {
    let across_faces = 2.0 * core::f64::consts::SQRT_2 * VICKERS_TAN;
    Ok(Millimetres::new(diagonal.get() / across_faces)?)
}

/// Knoop hardness: force in kgf over the projected area, F / (0.07028 L²).
///
/// # Units
/// `diagonal`: the long one, in mm.
///
/// # Source
/// `iso-4545-1`.
#[must_use]
pub fn knoop(force: KilogramsForce, diagonal: Millimetres) -> f64 {
    force.get() / (KNOOP_AREA * diagonal.get() * diagonal.get())
}

/// Long diagonal in mm of a Knoop hardness.
///
/// # Errors
/// As [`vickers_diagonal`].
pub fn knoop_diagonal(force: KilogramsForce, hardness: f64) -> Result<Millimetres, Error> {
    Ok(Millimetres::new(libm::sqrt(force.get() / (KNOOP_AREA * positive(hardness)?)))?)
}

/// Depth in mm of a Knoop indentation: L / 30.5.
///
/// # Errors
/// [`Error::Quantity`] when the depth is outside the bounds of lengths.
pub fn knoop_depth(diagonal: Millimetres) -> Result<Millimetres, Error> {
    Ok(Millimetres::new(diagonal.get() / (2.0 * KNOOP_TAN))?)
}

/// The short diagonal over the long one: what is left of the area's constant.
pub(super) const KNOOP_SHORT: f64 = 2.0 * KNOOP_AREA;

/// Brinell hardness: force in kgf over the area of the cap.
///
/// The number is computed for every indentation smaller than its ball; whether the test is valid is
/// another question, which [`Indentation`](super::Indentation) answers.
///
/// # Errors
/// [`Error::NotBelowBall`].
///
/// # Source
/// `iso-6506-1`.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::brinell;
/// use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres};
/// let ball = BallMillimetres::new(10.0)?;
/// let hbw = brinell(ball, KilogramsForce::new(3000.0)?, Millimetres::new(2.5)?)?;
/// assert_eq!(hbw.round(), 601.0); // as the standard's table prints; the rounded 0.102 gives 602
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn brinell(
    ball: BallMillimetres,
    force: KilogramsForce,
    diameter: Millimetres,
) -> Result<f64, Error> {
    let cap = 2.0 * brinell_depth(ball, diameter)?.get();
    Ok(2.0 * force.get() / (core::f64::consts::PI * ball.get() * cap))
}

/// Depth in mm of a Brinell indentation.
///
/// # Errors
/// [`Error::NotBelowBall`]; [`Error::Quantity`] when the depth is outside the bounds of lengths.
pub fn brinell_depth(ball: BallMillimetres, diameter: Millimetres) -> Result<Millimetres, Error> {
    let (ball, diameter) = (ball.get(), diameter.get());
    if diameter >= ball {
        return Err(Error::NotBelowBall { diameter, ball });
    }
    // D - sqrt(D² - d²) without the difference of two like numbers.
    let root = libm::sqrt((ball - diameter) * (ball + diameter));
    Ok(Millimetres::new(diameter * diameter / (ball + root) / 2.0)?)
}

/// Mean diameter in mm of a Brinell hardness.
///
/// # Errors
/// [`Error::NotAHardness`]; [`Error::BallSinks`] when the hardness is too low for ball and force.
pub fn brinell_diameter(
    ball: BallMillimetres,
    force: KilogramsForce,
    hardness: f64,
) -> Result<Millimetres, Error> {
    let ball = ball.get();
    let cap = 2.0 * force.get() / (core::f64::consts::PI * ball * positive(hardness)?);
    if cap >= ball {
        let smallest = hardness * cap / ball;
        return Err(Error::BallSinks { hardness, ball, smallest });
    }
    Ok(Millimetres::new(libm::sqrt(cap * (2.0 * ball - cap)))?)
}

/// A Rockwell scale's number at no depth, and the depth in mm of one point.
///
/// Superficial scales are known by the force in their symbol: a digit stands behind HR.
pub(super) fn rockwell_scale(scale: Scale) -> Result<(f64, f64), Error> {
    if !scale.is_rockwell() {
        return Err(Error::NotByDepth { scale });
    }
    let superficial = scale.symbol().as_bytes().get(2).is_some_and(u8::is_ascii_digit);
    Ok(match (superficial, scale.is_ball_rockwell()) {
        (true, _) => (100.0, 0.001),
        (false, false) => (100.0, 0.002),
        (false, true) => (130.0, 0.002),
    })
}

/// Rockwell number of a depth left under the preload, in mm.
///
/// # Errors
/// [`Error::NotByDepth`] for a scale of another kind.
///
/// # Source
/// `iso-6508-1`; 0.072 mm is 64 HRC in `jcgm-100`, H.6.
///
/// # Example
/// ```
/// use biteband_hardness::{Scale, indentation::rockwell};
/// use biteband_quantity::Millimetres;
/// assert!((rockwell(Scale::Hrc, Millimetres::new(0.072)?)? - 64.0).abs() < 1e-9);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn rockwell(scale: Scale, depth: Millimetres) -> Result<f64, Error> {
    let (zero, unit) = rockwell_scale(scale)?;
    Ok(zero - depth.get() / unit)
}

/// Depth in mm of a Rockwell number.
///
/// # Errors
/// [`Error::NotByDepth`]; [`Error::NoDepth`] at or above the scale's zero; [`Error::Quantity`] for a
/// number that is not finite or a depth outside the bounds of lengths.
pub fn rockwell_depth(scale: Scale, value: f64) -> Result<Millimetres, Error> {
    let (zero, unit) = rockwell_scale(scale)?;
    if value >= zero {
        return Err(Error::NoDepth { scale, given: value, zero });
    }
    Ok(Millimetres::new((zero - value) * unit)?)
}

/// Leeb hardness: a thousand times the rebound velocity over the impact velocity, both in m/s.
///
/// # Errors
/// [`Error::Velocity`].
///
/// # Source
/// `astm-a956`, named in the result.
pub fn leeb(impact: f64, rebound: f64) -> Result<(f64, Cited), Error> {
    if impact.is_finite() && impact > 0.0 && rebound >= 0.0 && rebound <= impact {
        Ok((1000.0 * (rebound / impact), Cited::seen(ASTM_A956)))
    } else {
        Err(Error::Velocity { impact, rebound })
    }
}

/// Rebound velocity in m/s of a Leeb hardness after an impact in m/s.
///
/// # Errors
/// [`Error::Velocity`] when the hardness is not 0 to 1000 or the impact not above nought.
pub fn leeb_rebound(impact: f64, hardness: f64) -> Result<f64, Error> {
    let rebound = impact * (hardness / 1000.0);
    leeb(impact, rebound).map(|_| rebound)
}
