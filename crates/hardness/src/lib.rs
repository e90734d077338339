//! What a hardness number means: scales, designations, published conversion tables.
//!
//! A number goes from one scale to another only by a table that a standard prints, never by a
//! formula of ours and never beyond the last printed row. Every result names its table, its row or
//! rows, the marks of the print and how far the conversion may be off.
//!
//! This crate knows no steel, no file test and no words for the person; it has no clock, no files and
//! no floating-point function that differs between machines.
//!
//! # A two-minute tour
//! ```
//! use biteband_hardness::{Axis, Basis, Choice, Scale, convert, designation, Reading};
//!
//! // As it stands on a drawing:
//! let parsed = designation::parse("52,5 HRC")?;
//! assert_eq!(parsed.designation().to_string(), "52.5 HRC");
//!
//! // To Vickers, by ASTM E140 Table 1:
//! let reading = Reading::new(Axis::Hardness(Scale::Hrc), 52.5).unwrap();
//! let vickers = convert(reading, Axis::Hardness(Scale::Hv), Choice::STEEL).unwrap();
//! assert_eq!(vickers.at.basis, Basis::Between { lower: 52.0, upper: 53.0 });
//! assert!(vickers.at.value > 544.0 && vickers.at.value < 560.0);
//!
//! // Outside the table nobody knows:
//! let soft = Reading::new(Axis::Hardness(Scale::Hrc), 15.0).unwrap();
//! assert!(convert(soft, Axis::Hardness(Scale::Hv), Choice::STEEL).is_err());
//! # Ok::<(), designation::Error>(())
//! ```
#![no_std]

extern crate alloc;

mod axis;
mod convert;
mod curve;
mod decimal;
pub mod designation;
mod error;
mod material;
#[rustfmt::skip]
mod generated;
pub mod indentation;
mod round;
mod source;
mod strength;
mod table;
mod width;

pub use axis::{Axis, Reading, Scale};
pub use convert::{
    Choice, Comparison, Conversion, Limits, Route, compare, convert, convert_limits, policy,
    reachable, spans,
};
pub use curve::monotone_cubic;
pub use decimal::decimal;
pub use error::{Error, Nearest};
pub use generated::DATA_VERSION;
pub use material::Material;
pub use round::Rounding;
pub use source::{Seen, Source, SourceId};
pub use strength::MeasuredStrength;
pub use table::{Basis, Cell, Marks, Span, Table, TableId, TableValue};
pub use width::Width;
