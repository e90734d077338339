//! How far a converted number may be off.

use crate::axis::{Axis, Scale};
use crate::material::Material;
use crate::table::{Table, TableValue};

/// The width of a conversion alone; the reading's own uncertainty comes on top, in quadrature.
///
/// No standard states one. The figures come from the measured disagreement between tables that were
/// made independently and from measured heats, and are labelled as this project's own.
///
/// # Source
/// `conversion-width`: one standard deviation of 1 HRC, 1.5 HRB, 2 % of Brinell, 3 % of Vickers and
/// Knoop, 3 % of tensile strength with 2.5 % more for the steel. Other Rockwell scales and the
/// scleroscope take the width of the table's row scale (1 HRC, 1.5 HRB, 2 % Brinell or 3 % HV) through
/// the slope of the column. For other metals than steel no second table was found to measure against:
/// their widths are twice those of steel, which is assumed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Width {
    /// One standard deviation, in the converted unit.
    pub sd: f64,
    /// Half of the band that holds `level` of all cases.
    pub half: f64,
    /// The share of cases meant, 0.95.
    pub level: f64,
}

/// Half-width of a 95 % band in standard deviations of a normal law.
const K95: f64 = 1.959_963_984_540_054;

impl Width {
    pub(crate) fn of(table: &Table, to: Axis, at: &TableValue) -> Self {
        let sd = match to {
            Axis::Hardness(Scale::Hrc) => 1.0,
            Axis::Hardness(Scale::Hrb) => 1.5,
            Axis::Hardness(Scale::Hbw | Scale::Hbs | Scale::Hbw500) => 0.02 * at.value,
            Axis::Hardness(Scale::Hv | Scale::Hk) => 0.03 * at.value,
            Axis::Tensile => libm::sqrt(0.03 * 0.03 + 0.025 * 0.025) * at.value,
            Axis::Hardness(_) => {
                let row_sd = match table.row_axis() {
                    Axis::Hardness(Scale::Hrc) => 1.0,
                    Axis::Hardness(Scale::Hrb) => 1.5,
                    Axis::Hardness(Scale::Hbw | Scale::Hbw500) => 0.02 * at.row,
                    _ => 0.03 * at.row,
                };
                at.slope * row_sd
            }
        };
        let steel = matches!(table.class(), Material::CarbonAlloySteel);
        let sd = if steel { sd } else { 2.0 * sd };
        let run = at.span.map_or(0.0, |(low, high)| (high - low) / 2.0);
        Self { sd, half: K95 * sd + run, level: 0.95 }
    }
}
