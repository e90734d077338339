//! Vickers on curved surfaces, by the geometry of a pyramid in a sphere or a cylinder.
//!
//! On a ball the corners of the mark meet the surface lower down than on a flat, so the same diagonals
//! stand for a larger contact area and the plain formula reads too hard; in a bore it is the other way
//! round. The factor is the flat contact area of the mean diagonal over the true contact area. The six
//! tables of ISO 6507-1 print this quotient rounded to 0.005.

use super::check::Cited;
use super::error::Error;
use super::formula;
use super::generated::VICKERS_GEOMETRY;
use biteband_quantity::{KilogramsForce, Millimetres};

/// Which way the surface curves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Ball, shaft.
    Convex,
    /// Bore, socket.
    Concave,
}

/// A curved surface and how the diagonals lie on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// A sphere.
    Sphere(Side),
    /// A cylinder, both diagonals at 45° to its axis.
    CylinderAt45(Side),
    /// A cylinder, one diagonal along its axis.
    CylinderAlong(Side),
}

impl Surface {
    /// The six cases.
    pub const ALL: [Self; 6] = [
        Self::Sphere(Side::Convex),
        Self::Sphere(Side::Concave),
        Self::CylinderAt45(Side::Convex),
        Self::CylinderAt45(Side::Concave),
        Self::CylinderAlong(Side::Convex),
        Self::CylinderAlong(Side::Concave),
    ];

    /// Largest mean diagonal over diameter that the standard's table goes to.
    ///
    /// # Source
    /// `iso-6507-1`, recalled.
    #[must_use]
    pub const fn largest_ratio(self) -> f64 {
        match self {
            Self::Sphere(Side::Convex) => 0.206,
            Self::Sphere(Side::Concave) => 0.094,
            Self::CylinderAt45(Side::Convex) => 0.200,
            Self::CylinderAt45(Side::Concave) => 0.222,
            Self::CylinderAlong(Side::Convex) => 0.243,
            Self::CylinderAlong(Side::Concave) => 0.125,
        }
    }

    /// +1 for convex, -1 for concave.
    const fn sign(self) -> f64 {
        match self {
            Self::Sphere(side) | Self::CylinderAt45(side) | Self::CylinderAlong(side) => match side
            {
                Side::Convex => 1.0,
                Side::Concave => -1.0,
            },
        }
    }

    /// How fast the surface falls along a face of the diamond: the square of the distance across the
    /// surface, for the point that lies 1 out from the middle and `aside` along the face's edge.
    fn bend(self, aside: f64, second_face: bool) -> f64 {
        match self {
            Self::Sphere(_) => 1.0 + aside * aside,
            Self::CylinderAt45(_) if second_face => 1.0,
            Self::CylinderAt45(_) => aside * aside,
            Self::CylinderAlong(_) => (1.0 - aside) * (1.0 - aside) / 2.0,
        }
    }
}

/// A Vickers number on a curved surface and on a flat.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct VickersRound {
    /// By the plain formula from the diagonals on the curved surface.
    pub shown: f64,
    /// Corrected: the number that a flat of the same material would give.
    pub flat: f64,
    /// What `shown` is multiplied with.
    pub factor: f64,
    /// Half of the step in which the standard prints the factor.
    pub half_width: f64,
    /// Mean diagonal in mm.
    pub diagonal: Millimetres,
    /// Geometry of this project, checked against the standard's tables.
    pub cited: Cited,
}

/// Places and weights of the eight-point Gauss-Legendre rule on -1 to 1, one half of each.
const GAUSS: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_5),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_3),
];

/// Cotangent of 68°: how fast a face of the diamond rises from its tip.
const RISE: f64 = 0.404_026_225_835_156_8;

/// Where a slope from a tip at depth `depth` meets the surface, in units of the surface's diameter.
///
/// The surface falls away as `sign (R - sqrt(R² - bend r²))` with R = 1/2; the equation is quadratic in
/// the distance r from the middle and is solved in the form that loses no digits.
fn reach(slope: f64, depth: f64, bend: f64, sign: f64) -> f64 {
    let square = slope * slope + bend;
    let linear = (0.5 - sign * depth) * slope;
    let rest = depth * (1.0 - sign * depth);
    rest / (linear + libm::sqrt(linear * linear + sign * square * rest))
}

/// Depth of the tip under the top of the surface for a mean diagonal, both in units of the diameter.
fn tip(surface: Surface, ratio: f64) -> f64 {
    let (sign, half) = (surface.sign(), ratio / 2.0);
    let edge = RISE * core::f64::consts::FRAC_1_SQRT_2;
    let fall = |bend: f64| {
        let across = bend * half * half;
        sign * across / (0.5 + libm::sqrt(0.25 - across))
    };
    match surface {
        Surface::Sphere(_) => edge * half + fall(1.0),
        Surface::CylinderAt45(_) => edge * half + fall(0.5),
        // One half diagonal runs level and the other across; their sum is the mean diagonal, and with
        // the level one put in its place the other is a quadratic of the same form.
        Surface::CylinderAlong(_) => edge * (ratio - reach(2.0 * edge, edge * ratio, 1.0, sign)),
    }
}

/// What a Vickers number read on a curved surface is multiplied with.
///
/// # Units
/// `ratio`: mean diagonal over diameter of the surface.
///
/// # Accuracy
/// Within 0.001 of all 153 printed factors, which are rounded to 0.005; the sum itself is exact to 5e-7.
///
/// # Errors
/// [`Error::TooCurved`] for a ratio that is not above nought or beyond the standard's table.
///
/// # Source
/// `vickers-geometry`, checked against `iso-6507-1`.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::{Side, Surface, vickers_factor};
/// // ISO 6507-1, second example: a bore of 5 mm, d/D = 0.083, factor 1.075.
/// let factor = vickers_factor(Surface::CylinderAlong(Side::Concave), 0.083)?;
/// assert!((factor - 1.075).abs() < 0.001);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn vickers_factor(surface: Surface, ratio: f64) -> Result<f64, Error> {
    let largest = surface.largest_ratio();
    if ratio > 0.0 && ratio <= largest {
        Ok(factor(surface, ratio))
    } else {
        Err(Error::TooCurved { ratio, largest })
    }
}

/// The quotient of the two contact areas; both lie on faces of one slope, so that of their projections.
fn factor(surface: Surface, ratio: f64) -> f64 {
    let (sign, depth, rise) = (surface.sign(), tip(surface, ratio), RISE);
    let mut area = 0.0;
    for (place, weight) in GAUSS {
        for aside in [place, -place] {
            // Two neighbouring faces; the other two are their mirror images. On a flat every point of the
            // rim lies equally far out, so that little is left for the sum to miss.
            for second in [false, true] {
                let out = reach(rise, depth, surface.bend(aside, second), sign);
                area += weight * out * out;
            }
        }
    }
    ratio * ratio / 2.0 / area
}

/// The number that a flat would give, from the mean diagonal on a curved surface.
///
/// # Units
/// `diagonal` and `diameter` in mm.
///
/// # Errors
/// [`Error::TooCurved`].
///
/// # Source
/// `vickers-geometry`.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::{Side, Surface, vickers_flat};
/// use biteband_quantity::{KilogramsForce, Millimetres};
/// // ISO 6507-1, first example: 824 HV on a ball of 10 mm is 810 HV10.
/// let ball = vickers_flat(
///     KilogramsForce::from_newtons(98.07)?,
///     Millimetres::new(0.15)?,
///     Surface::Sphere(Side::Convex),
///     Millimetres::new(10.0)?,
/// )?;
/// assert!((ball.shown - 824.0).abs() < 0.5 && (ball.flat - 810.0).abs() < 0.5);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn vickers_flat(
    force: KilogramsForce,
    diagonal: Millimetres,
    surface: Surface,
    diameter: Millimetres,
) -> Result<VickersRound, Error> {
    let factor = vickers_factor(surface, diagonal.get() / diameter.get())?;
    let shown = formula::vickers(force, diagonal);
    Ok(VickersRound::new(shown, shown * factor, factor, diagonal))
}

/// What the plain formula will show on a curved surface whose hardness on a flat is known.
///
/// # Errors
/// [`Error::NotAHardness`]; [`Error::TooCurved`] when the mark would be too long for the curvature.
pub fn vickers_shown(
    force: KilogramsForce,
    flat: f64,
    surface: Surface,
    diameter: Millimetres,
) -> Result<VickersRound, Error> {
    let on_flat = formula::vickers_diagonal(force, flat)?.get() / diameter.get();
    let largest = surface.largest_ratio();
    // The mark that gives the number solves ratio² = on_flat² factor(ratio). The factor changes by far
    // less than the square, so every step divides the error by eight or more.
    let mut ratio = on_flat.min(largest);
    for _ in 0..40 {
        ratio = (on_flat * libm::sqrt(factor(surface, ratio))).min(largest);
    }
    let wanted = on_flat * libm::sqrt(factor(surface, ratio));
    if wanted > largest * (1.0 + 1e-12) {
        return Err(Error::TooCurved { ratio: wanted, largest });
    }
    let factor = factor(surface, ratio);
    let diagonal = Millimetres::new(ratio * diameter.get())?;
    Ok(VickersRound::new(flat / factor, flat, factor, diagonal))
}

impl VickersRound {
    const fn new(shown: f64, flat: f64, factor: f64, diagonal: Millimetres) -> Self {
        let cited = Cited::ours(VICKERS_GEOMETRY);
        Self { shown, flat, factor, half_width: 0.0025, diagonal, cited }
    }
}
