//! Refusals: what was given, what would be allowed, why, and a way out.

use core::fmt;

use crate::axis::{Axis, Scale};
use crate::convert::Choice;
use crate::material::Material;
use crate::table::TableId;
use biteband_quantity::{OutOfBounds, Shown};

/// Why no number is given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// NaN or an infinity.
    NotANumber {
        /// The axis it was meant for.
        axis: Axis,
    },
    /// A number that the scale does not have.
    OutsideScale {
        /// The scale.
        scale: Scale,
        /// The number as given.
        given: f64,
    },
    /// A tensile strength that no steel has.
    Strength(OutOfBounds),
    /// From a scale to itself.
    SameAxis {
        /// The axis.
        axis: Axis,
    },
    /// A class of materials without a table here.
    Material {
        /// The class.
        material: Material,
    },
    /// No published table holds both axes.
    NoTable {
        /// From.
        from: Axis,
        /// To.
        to: Axis,
        /// The tables that were asked.
        choice: Choice,
    },
    /// Tables hold both axes, but none holds this value.
    OutsideTables {
        /// From.
        from: Axis,
        /// The value as given.
        given: f64,
        /// To.
        to: Axis,
        /// The convertible value that lies nearest, and the table that has it.
        nearest: Nearest,
        /// The tables that were asked.
        choice: Choice,
    },
    /// A range whose low end lies above its high end.
    Backward {
        /// The axis.
        axis: Axis,
        /// As given first.
        low: f64,
        /// As given second.
        high: f64,
    },
    /// A range without any limit.
    NoLimit {
        /// The axis.
        axis: Axis,
    },
    /// Each limit of a range is in a table, but no single table holds both; tables are never joined.
    NoSingleTable {
        /// The axis.
        from: Axis,
        /// Low limit.
        low: f64,
        /// High limit.
        high: f64,
        /// To.
        to: Axis,
        /// The tables that were asked.
        choice: Choice,
    },
}

/// The end of the convertible range on the side of a refused value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// On the axis that was given.
    pub value: f64,
    /// What it converts to.
    pub becomes: f64,
    /// The table that says so.
    pub table: TableId,
    /// Whether the refused value lies above it.
    pub above: bool,
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NotANumber { .. } => "hardness.not_a_number",
            Self::OutsideScale { .. } => "hardness.outside_scale",
            Self::Strength(_) => "hardness.outside_strength",
            Self::SameAxis { .. } => "hardness.same_scale",
            Self::Material { .. } => "hardness.no_material",
            Self::NoTable { .. } => "hardness.no_table",
            Self::OutsideTables { .. } => "hardness.outside_tables",
            Self::Backward { .. } => "hardness.backward_range",
            Self::NoLimit { .. } => "hardness.no_limit",
            Self::NoSingleTable { .. } => "hardness.no_single_table",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotANumber { axis } => write!(f, "{axis} needs a finite number"),
            Self::OutsideScale { scale, given } => {
                let (min, max) = scale.range();
                let (given, min, max) = (Shown(*given), Shown(min), Shown(max));
                write!(f, "{given} {scale} is outside the scale, which runs from {min} to {max}")
            }
            Self::Strength(error) => error.fmt(f),
            Self::SameAxis { axis } => write!(f, "the number is in {axis} already"),
            Self::Material { material } => {
                write!(f, "no published table here holds for {material}")
            }
            Self::NoTable { from, to, choice: Choice { material, .. } } => {
                write!(f, "no published table here for {material} holds both {from} and {to}")
            }
            Self::OutsideTables { from, given, to, nearest, .. } => write!(
                f,
                "{} {} is outside every table from {from} to {to}, which end at {} {}",
                Shown(*given),
                from.unit(),
                Shown(nearest.value),
                from.unit()
            ),
            Self::Backward { axis, low, high } => {
                let (low, high) = (Shown(*low), Shown(*high));
                write!(f, "the range runs backwards from {low} to {high} {}", axis.unit())
            }
            Self::NoLimit { axis } => write!(f, "the range in {axis} has no limit"),
            Self::NoSingleTable { from, low, high, to, .. } => write!(
                f,
                "no single table holds {} to {} {} and {to}, and tables are not joined",
                Shown(*low),
                Shown(*high),
                from.unit()
            ),
        }
    }
}

impl core::error::Error for Error {}
