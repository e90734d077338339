//! The hardness that a section can reach, from the skin to the middle, as quenched.
//!
//! Low-alloy and plain carbon steels go by their end-quench curve and the distance that cools like each
//! place. Tool steels, stainless steels and steels with more than 0.7 % carbon go by the published
//! as-quenched hardness and by how thick a section their papers harden through; beyond that the middle is
//! not known, and the answer says so.

mod fit;
mod through;

pub use fit::{Fit, crack_risk};
pub use through::{Depth, Through};
