//! Which tests a thin section or a hardened case bears.

use alloc::vec::Vec;

use super::check::Part;
use super::error::Error;
use super::measure::{Indentation, Test};
use crate::axis::{Axis, Reading, Scale};
use crate::convert::{Choice, Conversion, convert};
use biteband_quantity::Millimetres;

/// A test against a section.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitting {
    /// The test.
    pub test: Test,
    /// The hardness on the test's scale, when it had to be converted.
    pub conversion: Option<Conversion>,
    /// The indentation with its rules, or why nothing can be said: mostly that no table holds the scale.
    pub outcome: Result<Indentation, Error>,
}

impl Fitting {
    /// Whether the test may be used on the section.
    #[must_use]
    pub fn valid(&self) -> bool {
        self.outcome.as_ref().is_ok_and(Indentation::valid)
    }
}

/// The usual tests, heavy ones first within each method.
fn usual_tests() -> impl Iterator<Item = Test> {
    let rockwell = [
        Scale::Hrc,
        Scale::Hra,
        Scale::Hr45n,
        Scale::Hr30n,
        Scale::Hr15n,
        Scale::Hrb,
        Scale::Hr45t,
        Scale::Hr30t,
        Scale::Hr15t,
    ];
    let vickers = [30.0, 10.0, 5.0, 1.0, 0.5];
    let brinell = [(10.0, 3000.0), (5.0, 750.0), (2.5, 187.5), (1.0, 30.0)];
    (rockwell.into_iter().map(Test::rockwell))
        .chain(vickers.into_iter().map(Test::vickers))
        .chain(brinell.into_iter().map(|(ball, kgf)| Test::brinell(ball, kgf)))
        .chain([Test::knoop(0.5)])
        .flatten()
}

/// Every usual test against a thickness, at a hardness given on any scale.
///
/// The hardness is converted by the first published table that holds it; the force of a Vickers test and
/// the ball of a Brinell test of index 30 are taken not to change the number. Preparation of the surface
/// and the support underneath are not looked at.
///
/// # Units
/// `thickness` in mm: of the section, or of the hardened case.
///
/// # Source
/// The rules and the table named in each outcome. For Rockwell both ten or fifteen depths and the table of
/// ASTM E18 must be kept; the table asks for less on HRC and HRB and, on hard parts, for more on HRA and the
/// N scales.
#[must_use]
pub fn valid_tests(thickness: Millimetres, hardness: Reading) -> Vec<Fitting> {
    let part = Part { thickness: Some(thickness), ..Part::default() };
    usual_tests()
        .map(|test| {
            let axis = Axis::Hardness(test.scale());
            let (conversion, value) = if axis == hardness.axis() {
                (None, Ok(hardness.value()))
            } else {
                let converted = convert(hardness, axis, Choice::STEEL);
                (converted.ok(), converted.map(|made| made.at.value).map_err(Error::Hardness))
            };
            let outcome = value.and_then(|value| Ok(Indentation::at(test, value)?.on(part)));
            Fitting { test, conversion, outcome }
        })
        .collect()
}
