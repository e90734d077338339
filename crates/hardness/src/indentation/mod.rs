//! What an indentation says: the number, where it may stand, what roundness does to it, how sure it is.
//!
//! A reading that looks right may be wrong for its place: a section too thin for the force, a test
//! beside an edge, a diagonal read on a ball. Everything here is geometry, a printed table, or a rule
//! of a standard; every rule names its source and whether it was read in print or recalled.
//!
//! # A spring of 0.6 mm reads 48 HRC
//! ```
//! use biteband_hardness::indentation::{Indentation, Part, Test, valid_tests};
//! use biteband_hardness::{Axis, Reading, Scale};
//! use biteband_quantity::Millimetres;
//!
//! let thickness = Millimetres::new(0.6)?;
//! let reading = Indentation::at(Test::rockwell(Scale::Hrc)?, 48.0)?
//!     .on(Part { thickness: Some(thickness), ..Part::default() });
//! assert!(!reading.valid()); // ten times the depth is 1.04 mm
//!
//! let hardness = Reading::new(Axis::Hardness(Scale::Hrc), 48.0)?;
//! let instead: Vec<String> = valid_tests(thickness, hardness)
//!     .iter()
//!     .filter(|fitting| fitting.valid())
//!     .map(|fitting| fitting.test.to_string())
//!     .collect();
//! assert!(instead.contains(&"HR30N".to_string()) && instead.contains(&"HV10".to_string()));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod brinell;
mod check;
mod e18;
mod error;
mod formula;
#[rustfmt::skip]
mod generated;
mod machine;
mod measure;
mod round;
mod series;
mod student;
mod thin;
mod vickers_round;

pub use brinell::{Material, fitting, force, index, indices, standard_tests, window};
pub use check::{Check, Cited, Extent, Part, Rule, Spacing, spacing};
pub use error::Error;
pub use formula::{
    brinell, brinell_depth, brinell_diameter, knoop, knoop_depth, knoop_diagonal, leeb,
    leeb_rebound, rockwell, rockwell_depth, vickers, vickers_depth, vickers_diagonal,
};
pub use machine::{
    Assumed, Between, Instrument, LimitKind, MachineLimit, default_standard_uncertainty,
    interlaboratory, machine_limits,
};
pub use measure::{Indentation, Test};
pub use round::{Convex, Correction, rockwell_flat, rockwell_shown};
pub use series::{Budget, Outlier, Series, Spread, combine};
pub use student::student_t;
pub use thin::{Fitting, valid_tests};
pub use vickers_round::{Side, Surface, VickersRound, vickers_factor, vickers_flat, vickers_shown};
