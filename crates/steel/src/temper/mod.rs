//! The hardness that tempering leaves.

pub mod ages;
pub mod brittle;
pub mod colour;
mod cycle;
mod plan;
mod setting;
mod sheet;
mod sheets;
mod sheets_error;

pub(crate) use brittle::{BrittleKind, BrittleRow};
pub(crate) use colour::{Colour, ColourRow};
pub use cycle::{Temper, TemperError, equivalent_minutes};
pub use plan::{Aim, LEVEL, Plan, PlanError, PlanStep, Predict, Predicted, plan};
pub use setting::{Setting, Side};
pub use sheet::{CONSTANT, Point, Reading, Sheet, Silence, USUAL_HOURS, same_effect};
pub use sheets::{DISAGREE, HALF_WIDTH, Said, SheetBand, Sheets, TrialPiece};
pub use sheets_error::SheetError;
