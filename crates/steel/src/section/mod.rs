//! A part's section: what rules its hardening, what it weighs, and which place of the end-quench bar cools
//! as it does.

mod bar;
mod equivalence;
mod error;

use alloc::vec::Vec;
use core::f64::consts::PI;

use biteband_quantity::{Bounds, Kilograms};

pub use bar::SIXTEENTH;
pub use equivalence::{
    Band, Equivalent, H_BOUNDS, PlaceDistance, Route, equivalent, equivalent_at, power_law,
};
pub use error::Error;

use crate::conduction::Body;

/// What a size that rules the cooling may be, in mm. Ours.
pub const SIZE: Bounds = Bounds {
    what: "section",
    symbol: "mm",
    min: 0.3,
    max: 500.0,
    why: "thinner cools while it is carried to the bath, thicker fits no bath of a shop",
};

/// What a width or a length may be, in mm. Ours.
pub const EXTENT: Bounds = Bounds {
    what: "width or length",
    symbol: "mm",
    min: 0.3,
    max: 3000.0,
    why: "thinner cools while it is carried to the bath, longer fits no furnace of a shop",
};

/// Density of steel in kg/m³: EN 1991-1-1 and EN 1993-1-2, seen; high-speed and stainless steels are up to
/// 4 % away.
pub const DENSITY: f64 = 7850.0;

/// A bore below this, in mm, counts as closed: steam cannot leave it as fast as it is made. Ours, on the
/// safe side; common practice, no source.
pub const NARROW_BORE: f64 = 10.0;
/// A bore below this share of the outside counts as closed, for the same reason. Ours.
pub const NARROW_SHARE: f64 = 0.25;

/// A cross-section; all sizes in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A solid round.
    Round {
        /// Its diameter.
        diameter: f64,
    },
    /// A tube open at both ends; give a blind hole as [`Shape::Round`].
    Tube {
        /// Outer diameter.
        outer: f64,
        /// Inner diameter.
        inner: f64,
    },
    /// A plate so wide that its edges do not matter; with a length it is cut short in one direction.
    Plate {
        /// Its thickness.
        thickness: f64,
    },
    /// A square bar.
    Square {
        /// Its side.
        side: f64,
    },
    /// A hexagonal bar.
    Hexagon {
        /// Its size across flats.
        across_flats: f64,
    },
    /// A flat bar or a block; which of the two sizes is larger does not matter.
    Flat {
        /// Its width.
        width: f64,
        /// Its thickness.
        thickness: f64,
    },
}

impl Shape {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Round { .. } => "round",
            Self::Tube { .. } => "tube",
            Self::Plate { .. } => "plate",
            Self::Square { .. } => "square",
            Self::Hexagon { .. } => "hexagon",
            Self::Flat { .. } => "flat",
        }
    }
}

/// A place in the section.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The outside; of shapes with flats, the middle of the flat, which cools slower than an edge.
    Skin,
    /// Three quarters of the way from the middle to the skin.
    ThreeQuarter,
    /// Half way from the middle to the skin.
    Half,
    /// The middle; of a tube, the middle of the wall.
    Middle,
    /// The inside of a tube.
    Bore,
}

impl Place {
    /// The places of every section without a bore, from outside in.
    pub const SOLID: [Self; 4] = [Self::Skin, Self::ThreeQuarter, Self::Half, Self::Middle];
    /// The places of a tube, from outside in.
    pub const TUBE: [Self; 3] = [Self::Skin, Self::Middle, Self::Bore];

    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Skin => "skin",
            Self::ThreeQuarter => "three_quarter",
            Self::Half => "half",
            Self::Middle => "middle",
            Self::Bore => "bore",
        }
    }

    /// How far it lies on the way from the middle (0) to the skin (1).
    const fn out(self) -> f64 {
        match self {
            Self::Skin => 1.0,
            Self::ThreeQuarter => 0.75,
            Self::Half => 0.5,
            Self::Middle | Self::Bore => 0.0,
        }
    }
}

/// Which size rules.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// The diameter of a round.
    Diameter,
    /// The wall of a tube.
    Wall,
    /// The outer diameter of a tube whose bore is too narrow for the liquid.
    NarrowBore,
    /// The thickness, the smaller size of a flat.
    Thickness,
    /// The side of a square.
    Side,
    /// The size across the flats of a hexagon.
    AcrossFlats,
    /// The length, because it is the smallest size.
    Length,
}

impl Why {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Diameter => "diameter",
            Self::Wall => "wall",
            Self::NarrowBore => "narrow_bore",
            Self::Thickness => "thickness",
            Self::Side => "side",
            Self::AcrossFlats => "across_flats",
            Self::Length => "length",
        }
    }
}

/// The size through which the heat must leave.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ruling {
    /// In mm.
    pub mm: f64,
    /// Which size it is.
    pub why: Why,
}

/// A checked section.
///
/// # Example
/// ```
/// use biteband_steel::section::{Section, Shape, Why};
/// let pawl = Section::new(Shape::Round { diameter: 50.0 }, Some(80.0))?;
/// assert_eq!(pawl.ruling().mm, 50.0);
/// assert!((pawl.mass().unwrap().get() - 1.233).abs() < 0.001);
/// let disc = Section::new(Shape::Round { diameter: 50.0 }, Some(6.0))?;
/// assert_eq!(disc.ruling().why, Why::Length);
/// assert!(Section::new(Shape::Round { diameter: 0.0 }, None).is_err());
/// assert!(Section::new(Shape::Tube { outer: 20.0, inner: 25.0 }, None).is_err());
/// # Ok::<(), biteband_steel::section::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    shape: Shape,
    length: Option<f64>,
}

impl Section {
    /// Checks a section; `length` in mm, `None` when it is long or not known.
    ///
    /// # Errors
    /// [`Error::Size`] outside [`SIZE`] or [`EXTENT`], [`Error::Wall`] for a tube without a wall.
    pub fn new(shape: Shape, length: Option<f64>) -> Result<Self, Error> {
        let size = |given| SIZE.check(given).map_err(Error::Size);
        let extent = |given| EXTENT.check(given).map_err(Error::Size);
        match shape {
            Shape::Round { diameter: given }
            | Shape::Plate { thickness: given }
            | Shape::Square { side: given }
            | Shape::Hexagon { across_flats: given } => size(given)?,
            Shape::Tube { outer, inner } => {
                size(outer)?;
                size(inner)?;
                if outer - inner < 2.0 * SIZE.min {
                    return Err(Error::Wall { outer, inner });
                }
                outer
            }
            Shape::Flat { width, thickness } => {
                extent(width.max(thickness))?;
                size(width.min(thickness))?
            }
        };
        // NaN hides from `max` and `min`.
        if let Shape::Flat { width, thickness } = shape {
            extent(width)?;
            extent(thickness)?;
        }
        length.map(extent).transpose()?;
        Ok(Self { shape, length })
    }

    /// The shape as given.
    #[must_use]
    pub const fn shape(&self) -> Shape {
        self.shape
    }

    /// The length in mm.
    #[must_use]
    pub const fn length(&self) -> Option<f64> {
        self.length
    }

    /// Whether there is a bore that the liquid can run through.
    #[must_use]
    pub fn open_bore(&self) -> bool {
        matches!(self.shape, Shape::Tube { outer, inner }
            if inner >= NARROW_BORE && inner >= NARROW_SHARE * outer)
    }

    /// The size through which the heat must leave: the smallest of the section and its length.
    #[must_use]
    pub fn ruling(&self) -> Ruling {
        let (mm, why) = match self.shape {
            Shape::Round { diameter } => (diameter, Why::Diameter),
            Shape::Tube { outer, inner } if self.open_bore() => (0.5 * (outer - inner), Why::Wall),
            Shape::Tube { outer, .. } => (outer, Why::NarrowBore),
            Shape::Plate { thickness } => (thickness, Why::Thickness),
            Shape::Square { side } => (side, Why::Side),
            Shape::Hexagon { across_flats } => (across_flats, Why::AcrossFlats),
            Shape::Flat { width, thickness } => (width.min(thickness), Why::Thickness),
        };
        match self.length {
            Some(length) if length < mm => Ruling { mm: length, why: Why::Length },
            _ => Ruling { mm, why },
        }
    }

    /// Area of the cross-section in mm² and its outline in mm; `None` for a plate of unknown width.
    fn cut(&self) -> Option<(f64, f64)> {
        Some(match self.shape {
            Shape::Round { diameter } => (PI * diameter * diameter / 4.0, PI * diameter),
            Shape::Tube { outer, inner } => {
                (PI * (outer * outer - inner * inner) / 4.0, PI * (outer + inner))
            }
            Shape::Plate { .. } => return None,
            Shape::Square { side } => (side * side, 4.0 * side),
            Shape::Hexagon { across_flats } => {
                let root3 = libm::sqrt(3.0);
                (root3 / 2.0 * across_flats * across_flats, 2.0 * root3 * across_flats)
            }
            Shape::Flat { width, thickness } => (width * thickness, 2.0 * (width + thickness)),
        })
    }

    /// Mass at [`DENSITY`]; `None` without a length, or for a plate of unknown width (give a flat).
    #[must_use]
    pub fn mass(&self) -> Option<Kilograms> {
        let (area, _) = self.cut()?;
        Kilograms::new(area * self.length? * DENSITY * 1e-9).ok()
    }

    /// Surface in cm², with the ends and the bore; `None` as [`Section::mass`].
    #[must_use]
    pub fn surface_cm2(&self) -> Option<f64> {
        let (area, outline) = self.cut()?;
        Some((outline * self.length? + 2.0 * area) / 100.0)
    }

    /// The box that the part fits in: length and the two sizes of the section, in mm; `None` as
    /// [`Section::mass`].
    #[must_use]
    pub fn covering(&self) -> Option<[f64; 3]> {
        let length = self.length?;
        let (a, b) = match self.shape {
            Shape::Round { diameter: size } | Shape::Tube { outer: size, .. } => (size, size),
            Shape::Square { side } => (side, side),
            Shape::Hexagon { across_flats } => (across_flats * 2.0 / libm::sqrt(3.0), across_flats),
            Shape::Flat { width, thickness } => (width.max(thickness), width.min(thickness)),
            Shape::Plate { .. } => return None,
        };
        Some([length, a, b])
    }

    /// The bodies whose product the section is, each with its half size in mm, the ruling one first;
    /// an open bore is not among them.
    pub(crate) fn bodies(&self) -> Vec<(Body, f64)> {
        let mut bodies: Vec<(Body, f64)> = Vec::new();
        match self.shape {
            Shape::Round { diameter: size } | Shape::Tube { outer: size, .. } => {
                bodies.push((Body::Cylinder, 0.5 * size));
            }
            Shape::Plate { thickness } => bodies.push((Body::Slab, 0.5 * thickness)),
            Shape::Square { side } => bodies.extend([(Body::Slab, 0.5 * side); 2]),
            Shape::Hexagon { across_flats } => bodies.push((Body::Hexagon, 0.5 * across_flats)),
            Shape::Flat { width, thickness } => bodies.extend([
                (Body::Slab, 0.5 * width.min(thickness)),
                (Body::Slab, 0.5 * width.max(thickness)),
            ]),
        }
        if let Some(length) = self.length {
            let at = if self.ruling().why == Why::Length { 0 } else { bodies.len() };
            bodies.insert(at, (Body::Slab, 0.5 * length));
        }
        bodies
    }
}
