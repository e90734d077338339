//! The hardness that tempering leaves.

mod cycle;
mod plan;

pub use cycle::{Temper, TemperError, equivalent_minutes};
pub use plan::{Aim, LEVEL, Plan, PlanError, PlanStep, Predict, Predicted, plan};
