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
    row(3.0, 20.0, 50.0, [0.170547, 0.173925, -0.0109281, 3.13863e-4, -4.32086e-6, 2.31674e-8]),
    row(5.0, 15.0, 100.0, [3.03987, -0.0855161, 0.00138048, -9.98717e-6, 2.64963e-8, 5.46044e-12]),
    row(7.0, 15.0, 125.0, [4.32366, -0.134451, 0.00228151, -1.96250e-5, 8.35338e-8, -1.38456e-10]),
    row(9.0, 15.0, 140.0, [4.46324, -0.0992003, 0.00119387, -7.40686e-6, 2.26087e-8, -2.46815e-11]),
    row(11.0, 15.0, 147.0, [4.40915, -0.0792024, 6.74319e-4, -1.97223e-6, -3.21758e-9, 2.08025e-11]),
    row(13.0, 15.0, 148.0, [4.60261, -0.0820023, 7.18416e-4, -2.52800e-6, 2.30089e-10, 1.25368e-11]),
    row(15.0, 15.0, 155.0, [5.01595, -0.0957696, 9.56240e-4, -4.62213e-6, 8.92787e-9, -8.74859e-13]),
    row(20.0, 15.0, 177.0, [5.51133, -0.104310, 1.15299e-3, -7.51801e-6, 2.75126e-8, -4.3110e-11]),
    row(25.0, 15.0, DEEP, [6.15369, -0.127486, 1.57885e-3, -1.12233e-5, 4.21359e-8, -6.42460e-11]),
    row(30.0, 15.0, DEEP, [7.16001, -0.171328, 2.42820e-3, -1.91259e-5, 7.67320e-8, -1.21571e-10]),
    row(35.0, 15.0, DEEP, [8.46964, -0.229424, 3.54915e-3, -2.97166e-5, 1.24831e-7, -2.0543e-10]),
    row(40.0, 15.0, DEEP, [9.13657, -0.252296, 3.94419e-3, -3.33383e-5, 1.41462e-7, -2.35541e-10]),
    row(45.0, 15.0, DEEP, [8.84696, -0.223317, 3.25787e-3, -2.62930e-5, 1.08190e-7, -1.76244e-10]),
    row(50.0, 15.0, DEEP, [8.10202, -0.171039, 2.12643e-3, -1.52754e-5, 5.78179e-8, -8.79890e-11]),
];

impl Distance {
    fn factor(&self, ideal_diameter: f64) -> f64 {
        if ideal_diameter > self.to && self.mm < 20.0 {
            return 1.0;
        }
        polynomial(&self.coefficients, ideal_diameter.max(self.from).min(self.to))
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

    /// The same with every hardness changed.
    pub(super) fn map(&self, change: impl Fn(f64) -> f64) -> Self {
        let points = self.points.iter().map(|&(mm, hrc)| (mm, change(hrc))).collect();
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
        if !(mm >= 0.0) {
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
