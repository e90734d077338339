//! The hardness that tempering leaves: by regression from the composition of plain and low-alloy steels, by printed curves
//! of tool and stainless steels; plans for a hardness, and learning from own results.

pub mod ages;
pub mod brittle;
mod cholesky;
pub mod colour;
mod cycle;
mod formula;
#[rustfmt::skip]
mod generated;
mod learn;
mod plan;
mod regression;
mod sheet;
mod sheets;
mod sheets_error;
mod taught;
mod tempering;

pub(crate) use brittle::{BrittleKind, BrittleRow};
pub use cholesky::Cholesky;
pub(crate) use colour::{Colour, ColourRow};
pub use cycle::{Temper, TemperError, equivalent_minutes};
pub use formula::{Coefficients, Curve, Scales, Shares};
pub use learn::{LearnError, Learned, Normal, Oven, OwnResult, Point, Spread};
pub use plan::{Aim, How, LEVEL, LEVEL_WIDTH, Plan, PlanError, PlanStep, Predict, Predicted, plan};
pub use regression::{CONSTANT, MEASURED, Regression, RegressionError};
pub use sheet::{Point as SheetPoint, Reading, Sheet, Silence, USUAL_HOURS, same_effect};
pub use sheets::{DISAGREE, HALF_WIDTH, Said, SheetBand, Sheets};
pub use sheets_error::SheetError;
pub use taught::{DOUBT, InOven, Measured, Taught, TaughtError};
pub use tempering::{Method, Tempering, TemperingError, Way};
