//! What an unknown bar can be: Bayes over families of steel and their carbon.
//!
//! Each [`Clue`] of the shop (magnet, spark, file, a coupon quenched in oil and in water, its break) multiplies
//! into the chance of every family. Within the plain and low-alloy families the latent quantity is the carbon,
//! which decides what a coupon can reach; a coupon stays below that by a one-sided loss. In the other families it
//! is the coupon's hardness itself, because at a cherry red their carbides stay shut and carbon says little.
//!
//! Families, their shares and their answers are judged by common practice, not counted. The result is a way to
//! the next test and a list of what not to make of the bar, never a grade.
//!
//! # Example
//! ```
//! use biteband_evidence::unknown::{Bar, Bath, Clue, Kind, Skin, Span, Spark};
//! let axle = Bar::default()
//!     .with(Clue::Spark(Spark::Forks))
//!     .with(Clue::Skin(Skin::Hard))
//!     .with(Clue::Coupon(Bath::Oil, Span::new(Some(50.0), Some(55.0))?));
//! let sorted = axle.sort();
//! assert_eq!(sorted.families().first().map(|found| found.0), Some(Kind::MediumCarbon));
//! let carbon = sorted.carbon();
//! assert!(carbon.low > 0.25 && carbon.high < 0.65);
//! # Ok::<(), biteband_evidence::unknown::Error>(())
//! ```

mod bar;
mod cell;
mod clash;
mod clue;
mod family;
#[rustfmt::skip]
mod generated;
mod next;
mod promise;
mod span;

pub use bar::{Bar, CarbonBand, Sorted};
pub use clash::{Cause, Clash, ODD_BELOW};
pub use clue::{Bath, Clue, Fracture, Magnet, Skin, Spark, Test};
pub use family::{Heat, Kind, Purpose, cited};
pub use next::{Advice, LEAST_FALL};
pub use promise::{DRAWN_BACK, Promise, Quench};
pub use span::{Error, Span};
