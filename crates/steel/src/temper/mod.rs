//! The hardness that tempering leaves.

mod cycle;

pub use cycle::{Temper, TemperError, equivalent_minutes};
