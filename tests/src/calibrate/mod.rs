//! Fits the tempering regression to measured results, and judges it by steels that were left out.
//!
//! The formula and the normal law are those of `biteband-steel`; here are the data, the least squares and the
//! verdict. Everything is deterministic: the same data give the same digits on every machine.

mod data;
mod fit;
mod left_out;
mod spread;
mod table;

pub use data::{Measured, Steel, steels};
pub use fit::{Fit, Prior, fit};
pub use left_out::{Figures, LeftOut, figures, figures_after_one, figures_from_quenched, left_out};
pub use spread::fit_spread;
pub use table::{Table, committed};
