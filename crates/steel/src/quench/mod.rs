//! How hard a bath pulls the heat out of a part.

#[rustfmt::skip]
mod generated;

use core::fmt;

use biteband_hardness::Seen;

use crate::keyed::keyed;
use crate::{Cited, Confidence};
use generated::PRINTED;

keyed! {
    /// What is in the tank.
    Medium {
        /// Water.
        Water = "water",
        /// Water with about 10 % of salt.
        Brine = "brine",
        /// A mineral quench oil without additives for speed.
        Oil = "oil",
        /// A quench oil sold as fast or accelerated.
        FastOil = "fast_oil",
        /// Canola, peanut and the like.
        VegetableOil = "vegetable_oil",
        /// Motor, used, thinned or unknown oil.
        UnknownOil = "unknown_oil",
        /// Polymer in water.
        Polymer = "polymer",
        /// Molten salt.
        Salt = "salt",
        /// Air.
        Air = "air",
    }
}

keyed! {
    /// How the part or the bath is moved; the published words, which nobody has put into figures.
    Movement {
        /// Neither is moved ("none").
        Still = "still",
        /// Moved gently by hand.
        Mild = "mild",
        /// Moved steadily by hand.
        Moderate = "moderate",
        /// Moved quickly by hand, or a stirred tank.
        Good = "good",
        /// A pump or propeller aimed at the part.
        Strong = "strong",
        /// A jet or spray.
        Violent = "violent",
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
    let (printed, confidence, more) = match medium {
        Medium::Water | Medium::Brine | Medium::Oil => (medium, Confidence::Medium, DOUBT),
        Medium::FastOil => (Medium::Oil, Confidence::Low, 2.0 * DOUBT),
        Medium::VegetableOil | Medium::Air => (medium, Confidence::Low, DOUBT),
        Medium::UnknownOil => return Err(Error::Unknown),
        Medium::Polymer | Medium::Salt => return Err(Error::NoFigure { medium }),
    };
    // The gentlest movement first.
    let rows = || PRINTED.iter().filter(move |row| row.0 == printed);
    let Some(&(_, at, low, high)) = rows().rev().find(|row| row.1 <= movement) else {
        return Err(Error::NoFigure { medium });
    };
    let exact = at == movement;
    let next = rows().find(|row| row.1 >= movement);
    let above = next.map_or(high, |row| row.3);
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
