//! The options that describe a section; several commands share them.

use biteband_bench::section::SectionInput;
use clap::Args;

/// A section: one shape and, where it is known, a length.
#[derive(Args, Debug, Default)]
#[group(skip)]
pub(crate) struct SectionArgs {
    /// Diameter of a round: 50mm, 2in
    #[arg(long, value_name = "LENGTH")]
    round: Option<String>,
    /// Outside and inside of a tube: 40mm,20mm
    #[arg(long, value_name = "OD,ID")]
    tube: Option<String>,
    /// Thickness of a wide plate: 12mm
    #[arg(long, value_name = "LENGTH")]
    plate: Option<String>,
    /// Side of a square bar: 25mm
    #[arg(long, value_name = "LENGTH")]
    square: Option<String>,
    /// Size across flats of a hexagon: 24mm
    #[arg(long, value_name = "LENGTH")]
    hex: Option<String>,
    /// Width and thickness of a flat bar or block: 60mm,12mm
    #[arg(long, value_name = "W,T")]
    flat: Option<String>,
    /// Length of the part: 80mm
    #[arg(long, value_name = "LENGTH")]
    length: Option<String>,
}

impl From<SectionArgs> for SectionInput {
    fn from(args: SectionArgs) -> Self {
        let SectionArgs { round, tube, plate, square, hex, flat, length } = args;
        Self { round, tube, plate, square, hex, flat, length }
    }
}
