//! The hardness that tempering leaves: by regression from the composition of plain and low-alloy steels, and learning
//! from own results.

mod cholesky;
mod cycle;
mod formula;
#[rustfmt::skip]
mod generated;
mod learn;
mod regression;

pub use cholesky::Cholesky;
pub use cycle::{Temper, TemperError, equivalent_minutes};
pub use formula::{Coefficients, Curve, Scales, Shares};
pub use learn::{LearnError, Learned, Normal, Oven, OwnResult, Point, Spread};
pub use regression::{CONSTANT, MEASURED, Regression, RegressionError};
