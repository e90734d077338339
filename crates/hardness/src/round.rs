//! Rounding as a last step, by the rule of the scale.

use crate::axis::{Axis, Scale};

/// How a converted number is shown.
///
/// Converted Rockwell numbers go to whole numbers. Brinell, Vickers and Knoop keep three significant
/// figures: whole from 100 up, one decimal from 10, two below. Tensile strength goes to the 5 MPa of
/// the printed tables. Halves go to the even neighbour.
///
/// # Source
/// `astm-e140` (E140-02, 1.10) for Rockwell; `brinell-vickers-designation` for the three figures
/// (recalled); tensile steps as `iso-18265` prints them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rounding {
    /// Step between shown numbers.
    step: Step,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Step {
    Whole,
    Five,
    ThreeFigures,
}

impl Rounding {
    /// The rule for converted numbers on an axis.
    #[must_use]
    pub const fn converted(axis: Axis) -> Self {
        let step = match axis {
            Axis::Tensile => Step::Five,
            Axis::Hardness(
                Scale::Hv | Scale::Hbw | Scale::Hbw500 | Scale::Hbs | Scale::Hk | Scale::HvUci,
            ) => Step::ThreeFigures,
            Axis::Hardness(_) => Step::Whole,
        };
        Self { step }
    }

    /// The rounded number and how many decimals to print.
    ///
    /// ```
    /// use biteband_hardness::{Axis, Rounding, Scale};
    /// assert_eq!(Rounding::converted(Axis::Hardness(Scale::Hrc)).apply(51.5), (52.0, 0));
    /// assert_eq!(Rounding::converted(Axis::Hardness(Scale::Hrc)).apply(52.5), (52.0, 0));
    /// assert_eq!(Rounding::converted(Axis::Hardness(Scale::Hbw)).apply(95.47), (95.5, 1));
    /// assert_eq!(Rounding::converted(Axis::Tensile).apply(1203.0), (1205.0, 0));
    /// ```
    #[must_use]
    pub fn apply(self, value: f64) -> (f64, u8) {
        match self.step {
            Step::Whole => (libm::rint(value), 0),
            Step::Five => (libm::rint(value / 5.0) * 5.0, 0),
            // 99.97 shows as 100, not as 100.0: the count of figures is taken after rounding.
            Step::ThreeFigures if libm::rint(value * 10.0) >= 1000.0 => (libm::rint(value), 0),
            Step::ThreeFigures if libm::rint(value * 100.0) >= 1000.0 => {
                (libm::rint(value * 10.0) / 10.0, 1)
            }
            Step::ThreeFigures => (libm::rint(value * 100.0) / 100.0, 2),
        }
    }
}
