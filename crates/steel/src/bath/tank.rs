//! The smallest tank in which a part is covered.

use biteband_quantity::Litres;

use crate::section::Section;

/// Liquid above and below the part, in mm each. Ours; common practice, no source.
pub const ABOVE_AND_BELOW: f64 = 75.0;
/// Liquid on every side, in mm. Ours; common practice, no source.
pub const BESIDE: f64 = 50.0;
/// How far the wall stands above the liquid, as a share of its depth, and the least in mm: for the rise when
/// the part goes in, for swelling with heat, and for what is thrown up. Ours.
pub const FREEBOARD: (f64, f64) = (0.25, 75.0);

/// A tank for a part that goes in upright, its longest size downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tank {
    /// Inner length in mm.
    pub long: f64,
    /// Inner width in mm.
    pub wide: f64,
    /// Depth of the liquid in mm.
    pub liquid: f64,
    /// Height of the wall in mm.
    pub wall: f64,
    /// Liquid in it.
    pub litres: Litres,
}

/// The smallest tank in which a part is covered when it goes in upright, so that it can move.
///
/// 75 mm of liquid above and below it, 50 mm beside it, the wall a quarter of the depth and 75 mm at least above
/// the liquid. It covers the part and no more: what the heat asks for is in [`super::Quench::needed`].
///
/// # Units
/// Sizes in mm. `None` for a section without a length or a plate without a width.
///
/// # Source
/// Ours after common practice; no source.
///
/// # Example
/// ```
/// use biteband_steel::bath::tank;
/// use biteband_steel::section::{Section, Shape};
/// let pawl = Section::new(Shape::Round { diameter: 50.0 }, Some(80.0)).unwrap();
/// let found = tank(&pawl).unwrap();
/// assert_eq!((found.liquid, found.long), (230.0, 150.0));
/// assert!((found.litres.get() - 5.175).abs() < 1e-9);
/// ```
#[must_use]
pub fn tank(section: &Section) -> Option<Tank> {
    let mut sizes = section.covering()?;
    sizes.sort_by(|a, b| b.total_cmp(a));
    let [tall, long, wide] = sizes;
    let (long, wide) = (long + 2.0 * BESIDE, wide + 2.0 * BESIDE);
    let liquid = tall + 2.0 * ABOVE_AND_BELOW;
    let (share, least) = FREEBOARD;
    let litres = Litres::new(long * wide * liquid * 1e-6).ok()?;
    Some(Tank { long, wide, liquid, wall: liquid + (share * liquid).max(least), litres })
}
