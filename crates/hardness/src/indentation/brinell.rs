//! Which ball and which force for a Brinell test.

use alloc::vec::Vec;

use super::check::Cited;
use super::formula;
use super::generated::INDEX;
use super::measure::Test;
use crate::designation::BRINELL_PAIRS;
use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres};

/// Smallest and largest indentation as a share of the ball. Source: `iso-6506-1`, read.
pub(super) const SHARE: (f64, f64) = (0.24, 0.60);

/// Groups of metals for which the standard names a force-diameter index.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Steel, nickel alloys, titanium alloys.
    Steel,
    /// Cast iron; balls of 2.5 mm and more.
    CastIron,
    /// Copper and its alloys.
    Copper,
    /// Aluminium, magnesium and their alloys.
    LightMetal,
    /// Lead and tin.
    LeadTin,
}

/// A row of the standard's table: from this hardness up, these indices.
#[derive(Clone, Copy, Debug)]
pub(super) struct IndexRow {
    pub(super) material: Material,
    pub(super) from: f64,
    pub(super) at_from: bool,
    pub(super) indices: &'static [f64],
    pub(super) smallest_ball: f64,
    pub(super) cited: Cited,
}

/// The force-diameter indices 0.102 F/D² that the standard names for a metal of about this hardness.
///
/// `None` when the hardness is not a number from nought up.
///
/// # Source
/// `iso-6506-1`, recalled; 30 for steel was read.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::{Material, indices};
/// let (values, _) = indices(Material::CastIron, 200.0).unwrap();
/// assert_eq!(values, [30.0]);
/// ```
#[must_use]
pub fn indices(material: Material, hardness: f64) -> Option<(&'static [f64], Cited)> {
    let row = row(material, hardness)?;
    Some((row.indices, row.cited))
}

fn row(material: Material, hardness: f64) -> Option<&'static IndexRow> {
    let started = |row: &&IndexRow| {
        row.material == material && (hardness > row.from || (row.at_from && hardness >= row.from))
    };
    INDEX.iter().rfind(started)
}

/// The hardness between an indentation of 0.60 and one of 0.24 of the ball, for a force-diameter index.
///
/// # Source
/// `iso-6506-1`: the ends of the indentation were read, the hardness follows by the formula.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::window;
/// let (low, high) = window(30.0);
/// assert!((low - 95.5).abs() < 0.05 && (high - 653.5).abs() < 0.05);
/// ```
#[must_use]
pub fn window(index: f64) -> (f64, f64) {
    let at = |share: f64| {
        let cap = 1.0 - libm::sqrt(1.0 - share * share);
        2.0 * index / (core::f64::consts::PI * cap)
    };
    (at(SHARE.1), at(SHARE.0))
}

/// The force-diameter index 0.102 F/D² of a ball and a force: kgf over the square of the ball.
///
/// Numbers of one index compare, whatever the ball.
#[must_use]
pub fn index(ball: BallMillimetres, force: KilogramsForce) -> f64 {
    force.get() / (ball.get() * ball.get())
}

/// Force in kgf of an index and a ball: index times the square of the ball.
///
/// # Errors
/// When the product is no test force.
pub fn force(index: f64, ball: BallMillimetres) -> Result<KilogramsForce, super::Error> {
    Ok(KilogramsForce::new(index * ball.get() * ball.get())?)
}

/// Every ball with each of its standard forces, large balls and forces first.
pub fn standard_tests() -> impl Iterator<Item = Test> {
    BRINELL_PAIRS
        .iter()
        .flat_map(|(ball, forces)| forces.iter().filter_map(|kgf| Test::brinell(*ball, *kgf).ok()))
}

/// The standard balls and forces that give a valid indentation at about this hardness.
///
/// With a material only those of the indices that the standard names for it, on balls it allows. Numbers
/// of different indices are not the same scale: compare only tests of one index.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::{Material, fitting};
/// let tests: Vec<String> =
///     fitting(200.0, Some(Material::CastIron)).iter().map(|test| test.to_string()).collect();
/// assert_eq!(tests, ["HBW 10/3000", "HBW 5/750", "HBW 2.5/187.5"]);
/// ```
#[must_use]
pub fn fitting(hardness: f64, material: Option<Material>) -> Vec<Test> {
    let fits = |ball: BallMillimetres, force: KilogramsForce| {
        let index = index(ball, force);
        let named = material.is_none_or(|material| {
            row(material, hardness).is_some_and(|row| {
                ball.get() >= row.smallest_ball
                    && row.indices.iter().any(|named| (named - index).abs() < 1e-9)
            })
        });
        named
            && formula::brinell_diameter(ball, force, hardness)
                .is_ok_and(|diameter| in_window(ball, diameter))
    };
    standard_tests()
        .filter(|test| matches!(*test, Test::Brinell { ball, force } if fits(ball, force)))
        .collect()
}

fn in_window(ball: BallMillimetres, diameter: Millimetres) -> bool {
    let share = diameter.get() / ball.get();
    share >= SHARE.0 && share <= SHARE.1
}
