//! Hardness along the end-quench bar.

use alloc::vec::Vec;

use biteband_hardness::monotone_cubic;

use super::error::Error;
use super::initial::polynomial;

/// Below this ideal diameter in millimetres the factors of the standard turn round: the curve is that of
/// the limit, and its confidence is low.
pub const SHALLOW: f64 = 15.0;

/// Above this ideal diameter in millimetres the table of the standard ends: deep hardening.
pub const DEEP: f64 = 177.8;

/// Below 20 HRC the scale is not valid.
const SCALE_END: f64 = 20.0;

/// Distance in mm, ideal diameters in mm between which the polynomial behaves, its coefficients. Above the
/// upper end the factor is 1 up to 15 mm; from 20 mm on the polynomial is taken at the end.
struct Distance {
    mm: f64,
    from: f64,
    to: f64,
    coefficients: [f64; 6],
}

const fn row(mm: f64, from: f64, to: f64, coefficients: [f64; 6]) -> Distance {
    Distance { mm, from, to, coefficients }
}

/// ASTM A255, distance factors of steels without boron, mm form. The ends are those that keep every curve
/// falling; the standard states none.
#[rustfmt::skip]
static DISTANCES: [Distance; 14] = [
    row(3.0, 20.0, 50.0, [0.170_547, 0.173_925, -0.010_928_1, 3.138_63e-4, -4.320_86e-6, 2.316_74e-8]),
    row(5.0, 15.0, 100.0, [3.039_87, -0.085_516_1, 0.001_380_48, -9.987_17e-6, 2.649_63e-8, 5.460_44e-12]),
    row(7.0, 15.0, 125.0, [4.323_66, -0.134_451, 0.002_281_51, -1.962_50e-5, 8.353_38e-8, -1.384_56e-10]),
    row(9.0, 15.0, 140.0, [4.463_24, -0.099_200_3, 0.001_193_87, -7.406_86e-6, 2.260_87e-8, -2.468_15e-11]),
    row(11.0, 15.0, 147.0, [4.409_15, -0.079_202_4, 6.743_19e-4, -1.972_23e-6, -3.217_58e-9, 2.080_25e-11]),
    row(13.0, 15.0, 148.0, [4.602_61, -0.082_002_3, 7.184_16e-4, -2.528_00e-6, 2.300_89e-10, 1.253_68e-11]),
    row(15.0, 15.0, 155.0, [5.015_95, -0.095_769_6, 9.562_40e-4, -4.622_13e-6, 8.927_87e-9, -8.748_59e-13]),
    row(20.0, 15.0, 177.0, [5.511_33, -0.104_310, 1.152_99e-3, -7.518_01e-6, 2.751_26e-8, -4.3110e-11]),
    row(25.0, 15.0, DEEP, [6.153_69, -0.127_486, 1.578_85e-3, -1.122_33e-5, 4.213_59e-8, -6.424_60e-11]),
    row(30.0, 15.0, DEEP, [7.160_01, -0.171_328, 2.428_20e-3, -1.912_59e-5, 7.673_20e-8, -1.215_71e-10]),
    row(35.0, 15.0, DEEP, [8.469_64, -0.229_424, 3.549_15e-3, -2.971_66e-5, 1.248_31e-7, -2.0543e-10]),
    row(40.0, 15.0, DEEP, [9.136_57, -0.252_296, 3.944_19e-3, -3.333_83e-5, 1.414_62e-7, -2.355_41e-10]),
    row(45.0, 15.0, DEEP, [8.846_96, -0.223_317, 3.257_87e-3, -2.629_30e-5, 1.081_90e-7, -1.762_44e-10]),
    row(50.0, 15.0, DEEP, [8.102_02, -0.171_039, 2.126_43e-3, -1.527_54e-5, 5.781_79e-8, -8.798_90e-11]),
];

impl Distance {
    fn factor(&self, ideal_diameter: f64) -> f64 {
        if ideal_diameter > self.to && self.mm < 20.0 {
            return 1.0;
        }
        polynomial(&self.coefficients, ideal_diameter.max(self.from).min(self.to)).max(1.0)
    }
}

/// The factor that divides the hardness of the quenched end, at a distance of the table of ASTM A255 (3, 5,
/// 7, 9, 11, 13, 15, 20, 25 ... 50 mm) and an ideal diameter, both in millimetres, inside the bounds where the
/// polynomial behaves; `None` at other distances.
///
/// # Example
/// ```
/// use biteband_steel::hardenability::distance_factor;
/// assert!(distance_factor(20.0, 60.0).is_some_and(|factor| factor > 1.5 && factor < 2.5));
/// assert_eq!(distance_factor(3.0, 80.0), Some(1.0));
/// assert_eq!(distance_factor(4.0, 80.0), None);
/// ```
#[must_use]
pub fn distance_factor(mm: f64, ideal_diameter: f64) -> Option<f64> {
    let found = DISTANCES.iter().find(|row| row.mm.total_cmp(&mm).is_eq())?;
    Some(found.factor(ideal_diameter))
}

/// A hardness on the end-quench bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EndQuench {
    /// HRC.
    Hrc(f64),
    /// No higher than this, in HRC: the place lies beyond the curve, or the band prints no lower limit there.
    AtMost(f64),
    /// Below 20 HRC, where the scale ends.
    Below20,
}

impl EndQuench {
    /// The hardness when it is known as a number, HRC.
    #[must_use]
    pub const fn hrc(self) -> Option<f64> {
        match self {
            Self::Hrc(hrc) => Some(hrc),
            Self::AtMost(_) | Self::Below20 => None,
        }
    }

    /// The highest hardness that it may be, HRC.
    #[must_use]
    pub const fn highest(self) -> f64 {
        match self {
            Self::Hrc(hrc) | Self::AtMost(hrc) => hrc,
            Self::Below20 => SCALE_END,
        }
    }
}

/// Hardness along the end-quench bar, falling from the quenched end.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Distance from the quenched end in mm, and HRC.
    points: Vec<(f64, f64)>,
    /// Up to here the hardness is known, in mm.
    known_to: f64,
    /// What is printed ends because the hardness falls below the scale.
    fades: bool,
}

impl Curve {
    /// The curve of ASTM A255 from the hardness of the quenched end in HRC and the ideal diameter in mm.
    ///
    /// The standard's factors are taken inside the bounds where they behave, never allowed to let the
    /// hardness rise along the bar, and joined by a monotone cubic. Below [`SHALLOW`] and above [`DEEP`] the
    /// curve is that of the bound.
    ///
    /// # Errors
    /// [`Error::NotANumber`] for numbers that are not above zero.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::hardenability::{Curve, EndQuench, initial_hardness};
    /// let curve = Curve::new(initial_hardness(0.22), 49.1).unwrap();
    /// assert!(curve.hardness_at(5.0).and_then(EndQuench::hrc).is_some_and(|hrc| hrc > 35.0 && hrc < 45.6));
    /// assert_eq!(curve.hardness_at(40.0), Some(EndQuench::Below20));
    /// ```
    pub fn new(initial: f64, ideal_diameter: f64) -> Result<Self, Error> {
        if !(initial > 0.0 && initial.is_finite() && ideal_diameter > 0.0) {
            return Err(Error::NotANumber);
        }
        let mut points = Vec::with_capacity(DISTANCES.len() + 2);
        points.extend([(0.0, initial), (1.5, initial)]);
        let mut highest = 1.0_f64;
        for row in &DISTANCES {
            highest = highest.max(row.factor(ideal_diameter));
            points.push((row.mm, initial / highest));
        }
        Ok(Self::through(points))
    }

    /// A curve through points that do not rise, known to the last of them.
    pub(super) fn through(points: Vec<(f64, f64)>) -> Self {
        let known_to = points.last().map_or(0.0, |point| point.0);
        Self { points, known_to, fades: false }
    }

    /// The same, known no further than here.
    pub(super) fn known_to(self, mm: f64) -> Self {
        Self { known_to: mm, ..self }
    }

    /// The same, below the scale behind its last point.
    pub(super) fn fading(self) -> Self {
        Self { fades: true, ..self }
    }

    /// The same with every hardness made from its own and that of another curve with the same distances.
    pub(super) fn with(&self, other: &Self, make: impl Fn(f64, f64) -> f64) -> Self {
        let pairs = self.points.iter().zip(&other.points);
        let points = pairs.map(|(&(mm, own), &(_, its))| (mm, make(own, its))).collect();
        Self { points, ..*self }
    }

    /// Hardness at a distance from the quenched end in millimetres; `None` for a distance that is negative or
    /// no number.
    ///
    /// Beyond the end of the curve, 50 mm by ASTM A255 and 50.8 mm or less by an H-band, nothing is
    /// extrapolated: the hardness is no higher than at the end.
    #[must_use]
    pub fn hardness_at(&self, mm: f64) -> Option<EndQuench> {
        let &(end, last) = self.points.last()?;
        if mm.is_nan() || mm < 0.0 {
            return None;
        }
        if mm > end && self.fades {
            return Some(EndQuench::Below20);
        }
        let hrc = if mm > end { last } else { monotone_cubic(&self.points, mm)? };
        Some(if hrc < SCALE_END {
            EndQuench::Below20
        } else if mm > self.known_to {
            EndQuench::AtMost(hrc)
        } else {
            EndQuench::Hrc(hrc)
        })
    }

    /// The distance in millimetres at which the curve ends.
    #[must_use]
    pub fn end(&self) -> f64 {
        self.points.last().map_or(0.0, |point| point.0)
    }
}
