//! How deep a steel hardens: ideal diameter, hardness along the end-quench bar, the band of a grade.
//!
//! The end-quench (Jominy) bar is quenched with water at one end only; the hardness along it tells what
//! every slower cooling makes of the steel. Where a grade has a published H-band, that is the answer;
//! otherwise ASTM A255 works it out from the composition, inside the ranges of its tables and for steels
//! without boron.
//!
//! # Example
//! ```
//! use biteband_steel::hardenability::{Band, Method};
//! use biteband_steel::{Composition, Element};
//! let heat = Composition::new(&[
//!     (Element::C, 0.41),
//!     (Element::Mn, 0.85),
//!     (Element::Cr, 1.0),
//!     (Element::Mo, 0.2),
//! ])?;
//! let band = Band::for_composition(&heat).unwrap();
//! assert_eq!(band.method, Method::A255);
//! let at = band.mid.hardness_at(12.7).unwrap();
//! assert!(at.hrc().is_some_and(|hrc| hrc > 45.0 && hrc < 56.0));
//! # Ok::<(), biteband_steel::CompositionError>(())
//! ```

mod band;
mod curve;
mod error;
mod factors;
#[rustfmt::skip]
mod generated;
mod hband;
mod initial;

pub use band::{Band, HEAT_ERROR, IdealDiameters, Method, Note};
pub use curve::{Curve, DEEP, EndQuench, SHALLOW, distance_factor};
pub use error::Error;
pub(crate) use factors::range as stated_or_residual;
pub use factors::{IdealDiameter, OutsideRange, ideal_diameter, typical_residual};
pub use hband::{h_band_of, h_bands};
pub use initial::{fifty_percent_martensite, initial_hardness};
