//! How hard a bath pulls the heat out of a part.

use core::fmt;

use biteband_hardness::Seen;

use crate::{Cited, Confidence};

/// What is in the tank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Medium {
    /// Water.
    Water,
    /// Water with about 10 % of salt.
    Brine,
    /// A mineral quench oil without additives for speed.
    Oil,
    /// A quench oil sold as fast or accelerated.
    FastOil,
    /// Canola, peanut and the like.
    VegetableOil,
    /// Motor, used, thinned or unknown oil.
    UnknownOil,
    /// Polymer in water.
    Polymer,
    /// Molten salt.
    Salt,
    /// Air.
    Air,
}

impl Medium {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Water,
        Self::Brine,
        Self::Oil,
        Self::FastOil,
        Self::VegetableOil,
        Self::UnknownOil,
        Self::Polymer,
        Self::Salt,
        Self::Air,
    ];

    /// Stable name for JSON, arguments and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Brine => "brine",
            Self::Oil => "oil",
            Self::FastOil => "fast_oil",
            Self::VegetableOil => "vegetable_oil",
            Self::UnknownOil => "unknown_oil",
            Self::Polymer => "polymer",
            Self::Salt => "salt",
            Self::Air => "air",
        }
    }

    /// Finds a medium by its key.
    #[must_use]
    pub fn find(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|medium| medium.key() == key)
    }
}

/// How the part or the bath is moved; the published words, which nobody has put into figures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Movement {
    /// Neither is moved ("none").
    Still,
    /// Moved gently by hand.
    Mild,
    /// Moved steadily by hand.
    Moderate,
    /// Moved quickly by hand, or a stirred tank.
    Good,
    /// A pump or propeller aimed at the part.
    Strong,
    /// A jet or spray.
    Violent,
}

impl Movement {
    /// All of them, gentlest first.
    pub const ALL: [Self; 6] =
        [Self::Still, Self::Mild, Self::Moderate, Self::Good, Self::Strong, Self::Violent];

    /// Stable name for JSON, arguments and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Still => "still",
            Self::Mild => "mild",
            Self::Moderate => "moderate",
            Self::Good => "good",
            Self::Strong => "strong",
            Self::Violent => "violent",
        }
    }

    /// Finds a movement by its key.
    #[must_use]
    pub fn find(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|movement| movement.key() == key)
    }
}

/// Severity of a quench: H in 1/inch, the heat transfer coefficient over twice the conductivity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Severity {
    /// As little as it may be.
    pub low: f64,
    /// The published figure.
    pub mid: f64,
    /// As much as it may be.
    pub high: f64,
    /// Where the published figure stands.
    pub cited: Cited,
}

/// Why there is no severity.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Error {
    /// Used, thinned or motor oil: its speed and its flash point are unknown; it is not to be used.
    Unknown,
    /// The published tables have no figure for this medium: it depends on the product, its share and
    /// its temperature. Take the grade's own data, or quench a test piece.
    NoFigure {
        /// The medium.
        medium: Medium,
    },
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Unknown => "quench.unknown_oil",
            Self::NoFigure { .. } => "quench.no_figure",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unknown => {
                f.write_str("an oil of unknown kind has no known speed and flash point")
            }
            Self::NoFigure { medium } => {
                write!(f, "no published table gives the severity of {}", medium.key())
            }
        }
    }
}

impl core::error::Error for Error {}

/// Half-width of every severity: the words for movement have no figures. Seen as a statement.
const DOUBT: f64 = 0.3;

/// Lowest and highest H of the classic table, gentlest movement first; `None` where it has no cell.
type Row = [Option<(f64, f64)>; 6];
const WATER: Row = [
    Some((0.9, 1.0)),
    Some((1.0, 1.1)),
    Some((1.2, 1.3)),
    Some((1.4, 1.5)),
    Some((1.6, 2.0)),
    Some((4.0, 4.0)),
];
const BRINE: Row = [Some((2.0, 2.0)), Some((2.0, 2.2)), None, None, None, Some((5.0, 5.0))];
const OIL: Row = [
    Some((0.25, 0.30)),
    Some((0.30, 0.35)),
    Some((0.35, 0.40)),
    Some((0.40, 0.50)),
    Some((0.50, 0.80)),
    Some((0.80, 1.10)),
];
const AIR: Row = [Some((0.02, 0.02)), None, None, None, Some((0.05, 0.05)), None];
/// One range whatever the movement.
const VEGETABLE: Row = [Some((0.30, 0.45)); 6];

/// The severity of a medium as it is moved, as a band: nobody knows the H of their own tank.
///
/// The middle is the middle of the printed range, the band 30 % to each side and no narrower than the
/// printed range. Where the table has no cell, the last printed row below holds as the middle (the safe
/// side: softer) and the band reaches up to the next printed one. A fast oil is only known to be no slower
/// than a plain one: the middle is that of plain oil and the band reaches up to 60 % more.
///
/// # Units
/// H in 1/inch; 1 means 2283 W/m²K at a conductivity of 29 W/mK.
///
/// # Source
/// M. A. Grossmann and E. C. Bain, and Metals Handbook 1948: the classic table, recalled. A textbook's
/// shorter table, seen, has "agitated" where this one has violent. Vegetable oil: 0.30 to 0.45, recalled,
/// low confidence.
///
/// # Errors
/// [`Error`] for oil of unknown kind, and for polymer and salt, of which the table says nothing.
///
/// # Example
/// ```
/// use biteband_steel::quench::{Medium, Movement, severity};
/// let oil = severity(Medium::Oil, Movement::Mild)?;
/// assert!(oil.low < 0.30 && (oil.mid - 0.325).abs() < 1e-12 && oil.high > 0.35);
/// assert!(severity(Medium::Salt, Movement::Still).is_err());
/// # Ok::<(), biteband_steel::quench::Error>(())
/// ```
pub fn severity(medium: Medium, movement: Movement) -> Result<Severity, Error> {
    let (row, confidence, more) = match medium {
        Medium::Water => (&WATER, Confidence::Medium, DOUBT),
        Medium::Brine => (&BRINE, Confidence::Medium, DOUBT),
        Medium::Oil => (&OIL, Confidence::Medium, DOUBT),
        Medium::FastOil => (&OIL, Confidence::Low, 2.0 * DOUBT),
        Medium::VegetableOil => (&VEGETABLE, Confidence::Low, DOUBT),
        Medium::Air => (&AIR, Confidence::Low, DOUBT),
        Medium::UnknownOil => return Err(Error::Unknown),
        Medium::Polymer | Medium::Salt => return Err(Error::NoFigure { medium }),
    };
    let step = movement as usize;
    let printed = |cell: Option<&Option<(f64, f64)>>| cell.copied().flatten();
    let (lower, upper) = (row.iter().take(step + 1), row.iter().skip(step));
    let Some((low, high)) = lower.rev().find_map(|cell| printed(Some(cell))) else {
        return Err(Error::NoFigure { medium });
    };
    let exact = printed(row.get(step)).is_some();
    let above = if exact { high } else { upper.flatten().next().map_or(high, |above| above.1) };
    let mid = f64::midpoint(low, high);
    Ok(Severity {
        low: low.min(mid * (1.0 - DOUBT)),
        mid,
        high: above.max(mid * (1.0 + more)),
        cited: Cited {
            sources: if matches!(medium, Medium::VegetableOil) {
                &["kobasko-2010", "biteband-quench"]
            } else {
                &["grossmann-bain", "askeland"]
            },
            seen: Seen::Recalled,
            confidence: if exact { confidence } else { Confidence::Low },
        },
    })
}
