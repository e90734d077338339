//! The hardness that a section can reach, from the skin to the middle, as quenched.
//!
//! Low-alloy and plain carbon steels go by their end-quench curve and the distance that cools like each
//! place. Tool steels, stainless steels and steels with more than 0.7 % carbon go by the published
//! as-quenched hardness and by how thick a section their papers harden through; beyond that the middle is
//! not known, and the answer says so.

mod attain;
mod fit;
#[rustfmt::skip]
mod generated;
mod record;
mod through;
mod ways;

pub use attain::{
    Attained, Basis, Error, Kind, Position, Prepared, Quench, Reach, Steel, Verdict, quenchant,
};
pub use fit::{Fit, crack_risk};
pub use record::{Bar, WEIGHT};
pub use through::{Depth, Through};
pub use ways::{Wanted, WayOut, ways_out};
