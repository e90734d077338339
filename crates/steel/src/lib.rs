//! What a steel can do: its grade and composition, how deep it hardens, what a section and a bath make of
//! it, and how to heat it.
//!
//! Every number stands in a data file with its source, or comes from a published formula inside its
//! range; outside there is a refusal. This crate knows no file test, no part card and no words for the
//! person beyond what the data files say; it has no clock, no files and no floating-point function that
//! differs between machines.
#![no_std]

extern crate alloc;

pub mod bath;
mod composition;
pub mod condition;
pub mod conduction;
pub mod furnace;
#[rustfmt::skip]
mod generated;
pub mod grade;
pub mod hardenability;
mod keyed;
pub mod quench;
mod quenchant;
pub mod reach;
pub mod section;
mod source;
pub mod target;
pub mod temper;
pub mod transform;

pub use composition::{Composition, CompositionError, CompositionLimits, Element, Interval};
pub use grade::{
    Cryo, CurveCloseness, DoubleTemper, Family, Grade, Hardening, Supplied, TemperMethod,
};
pub use quenchant::Quenchant;
pub use source::{Cited, Confidence, source, sources};
