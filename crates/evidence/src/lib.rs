//! What is known about the hardness of a part, and what to do next.
//!
//! A [`Belief`] is a probability density over hardness in HRC.
//! A [`FileTest`] turns strokes of graded files into a belief: three-way answers, biases shared by file, operator and spot integrated once, soft
//! skins and carbide-rich steels as shifts of the whole part, files proved on known pieces.
//! [`Readings`] of instruments enter the same belief, or make one without files.
//! An [`Assessment`] reads it out: a [`Band`] whose open ends stay open, the [`Odds`] of meeting a target, [`Contradiction`]s between files, each [`Clash`] of readings, and
//! [`Advice`] on the next stroke.
//!
//! [`unknown`] weighs what the shop can see of a bar without papers.
//!
//! It is not a hardness tester: all numbers rest on a model whose totals are anchored to SAE J864 and to shop practice and whose split into terms is
//! assumed. It knows no part card and no words for the person.
//!
//! # Tour
//! ```
//! use biteband_evidence::{FileSet, FileTest, Hand, Outcome, Target, Worth};
//!
//! let set = FileSet::trade();
//! let mut test = FileTest::new(set.clone()).with_hand(Hand::Careful);
//! for (file, grade) in set.files() {
//!     let outcome = if grade <= 50.0 { Outcome::Skate } else { Outcome::Bite };
//!     test = test.with_stroke(file, outcome)?;
//! }
//! let found = test.assess(Some(Target::between(50.0, 54.0)?))?;
//! assert!(!found.band().open_low() && !found.band().open_high());
//! assert!(found.odds().is_some_and(|odds| odds.inside() > 0.5));
//! assert!(found.contradictions().is_empty());
//! assert_eq!(found.advice().worth(), Worth::Stroke);
//! # Ok::<(), biteband_evidence::Error>(())
//! ```
#![no_std]
#![forbid(unsafe_code)]
#![deny(missing_docs, missing_debug_implementations)]

extern crate alloc;

mod assess;
mod band;
mod belief;
pub mod claim;
mod clash;
mod conditions;
mod contradiction;
mod error;
mod instrument;
mod interval;
mod model;
mod next;
mod posterior;
mod quadrature;
mod readings;
pub mod step;
mod strokes;
mod target;
mod testers;
pub mod unknown;

pub use assess::{Assessment, FileTest};
pub use band::{Band, OPEN_ABOVE, SLIP_BELOW, Shape};
pub use belief::{AXIS_HIGH, AXIS_LOW, Belief};
pub use clash::{Clash, Suspect, Witness};
pub use conditions::{Conditions, Finish, Place, Prior, Skin, SteelKind};
pub use contradiction::{Cause, Contradiction, SURPRISE_BELOW};
pub use error::{Error, What};
pub use instrument::{Instrument, Unit, Usual};
pub use interval::{Interval, Level};
pub use model::{Answering, Chances, Hand, Outcome};
pub use next::{Advice, LEAST_DOUBT, LEAST_WIDTH, Proving, Trial, Worth};
pub use readings::{Group, MAX_GROUPS, MAX_READINGS, Readings, SLIP_RATE, SPOT_SD};
pub use strokes::{FileId, FileSet, MAX_FILES, MAX_SPOTS, MAX_STROKES, Proof, Stroke};
pub use target::{Odds, Target};
