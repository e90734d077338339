//! Hardness of a plain or low-alloy steel after tempering, from its composition.

use alloc::vec::Vec;
use core::fmt;

use biteband_hardness::Seen;
use biteband_quantity::Shown;
use libm::sqrt;

use super::cycle::{Temper, equivalent_minutes};
use super::formula::{AS_QUENCHED_CARBON, Coefficients, Curve, Scales, Shares};
use super::generated::{FITTED, SPREAD};
use super::learn::{Point, Spread};
use crate::composition::{Composition, CompositionLimits, Element, Interval};
use crate::hardenability::stated_or_residual;
use crate::source::{Cited, Confidence};

/// Constant of the parameter in this model, for hours and K: for [`equivalent_minutes`].
pub const CONSTANT: f64 = FITTED.constant;

/// Temperatures in °C and times in minutes that were measured: outside there is no evidence.
pub const MEASURED: (Interval, Interval) =
    (Interval { low: 100.0, high: 705.0 }, Interval { low: 1.0 / 6.0, high: 1920.0 });

/// Manganese of a steel whose manganese nobody states, in mass percent: most of this trade's plain and low-alloy
/// grades have 0.6 to 0.9. Ours.
const MANGANESE: Interval = Interval { low: 0.50, high: 1.00 };

/// Elements that move the result, with the shares in mass percent that are taken and those that were measured.
const ELEMENTS: [(Element, Interval, Interval); 7] = [
    (Element::C, within(0.15, 1.3), within(0.25, 1.15)),
    (Element::Mn, within(0.0, 2.2), within(0.30, 1.85)),
    (Element::Si, within(0.0, 2.2), within(0.0, 1.65)),
    (Element::Ni, within(0.0, 4.0), within(0.0, 3.45)),
    (Element::Cr, within(0.0, 2.0), within(0.0, 1.6)),
    (Element::Mo, within(0.0, 0.6), within(0.0, 0.36)),
    (Element::V, within(0.0, 0.3), within(0.0, 0.2)),
];
/// Most of elements that nobody measured here, in mass percent: more than scrap brings is another steel.
const STRANGERS: [(Element, f64); 4] =
    [(Element::W, 0.1), (Element::Co, 0.1), (Element::Cu, 0.5), (Element::B, 0.006)];

const fn within(low: f64, high: f64) -> Interval {
    Interval { low, high }
}

/// Why there is no prediction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RegressionError {
    /// A share for which there is no evidence at all.
    Outside {
        /// The element.
        element: Element,
        /// As given, or the middle of the limits, in mass percent.
        given: f64,
        /// What is taken.
        allowed: Interval,
    },
    /// HRC and HV cannot be converted.
    Conversion(biteband_hardness::Error),
}

impl RegressionError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Outside { .. } => "temper.composition_outside",
            Self::Conversion(_) => "temper.no_conversion",
        }
    }
}

impl From<biteband_hardness::Error> for RegressionError {
    fn from(error: biteband_hardness::Error) -> Self {
        Self::Conversion(error)
    }
}

impl fmt::Display for RegressionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Outside { element, given, allowed } => write!(
                f,
                "{} % {element} is outside {} to {} %, which the tempering of plain and low-alloy steels is worked \
                 out for; take the grade's own tempering curve, or temper a test piece",
                Shown(*given),
                Shown(allowed.low),
                Shown(allowed.high)
            ),
            Self::Conversion(inside) => inside.fmt(f),
        }
    }
}

impl core::error::Error for RegressionError {}

/// The hardness of one steel after tempering.
///
/// # Units
/// HRC, °C, minutes, mass percent.
///
/// # Valid for
/// Steels hardened to martensite throughout; shares and tempers that were measured, see [`Regression::edges`]
/// and [`MEASURED`].
///
/// # Accuracy
/// [`Regression::sd`]; of steels that were left out of the fit nine results in ten lie in the band of 90 %.
///
/// # Source
/// Fitted to 1172 measured results of 30 steels: Hollomon and Jaffe (1945), Grange and Baughman (1956), Penha
/// (2010), as in `data/tempering-results.csv`; by `cargo xtask calibrate`.
///
/// # Example
/// ```
/// use biteband_steel::temper::{Regression, Temper};
/// use biteband_steel::{Composition, Element};
/// let heat = Composition::new(&[
///     (Element::C, 0.41), (Element::Mn, 0.85), (Element::Si, 0.25), (Element::Cr, 1.0), (Element::Mo, 0.2),
/// ])?;
/// let steel = Regression::new(&heat)?;
/// let hrc = steel.hrc(&[Temper::new(540.0, 120.0)?]);
/// // A handbook of heat treating prints 34 to 35 HRC for 4140.
/// assert!(hrc > 33.0 && hrc < 38.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Regression {
    shares: Shares,
    untempered: f64,
    curve: Curve,
    /// The curve that composition alone gives.
    middle: Curve,
    /// Curves with one share half way to the upper end of its range each, where that is not the middle.
    aside: Vec<Curve>,
    assumed: Vec<(Element, f64)>,
    scales: Scales,
}

fn shares_of(values: [f64; 7]) -> Shares {
    let [carbon, manganese, silicon, nickel, chromium, molybdenum, vanadium] = values;
    Shares { carbon, manganese, silicon, nickel, chromium, molybdenum, vanadium }
}

fn values_of(shares: &Shares) -> [f64; 7] {
    let Shares { carbon, manganese, silicon, nickel, chromium, molybdenum, vanadium } = *shares;
    [carbon, manganese, silicon, nickel, chromium, molybdenum, vanadium]
}

impl Regression {
    /// The prediction for a heat of known composition.
    ///
    /// Silicon, nickel, chromium and molybdenum that are not stated count with their
    /// [`typical_residual`](crate::hardenability::typical_residual), manganese with 0.75 %; how far they may be off
    /// goes into [`Regression::sd`]. Vanadium, tungsten and cobalt that are not stated count as none.
    ///
    /// # Errors
    /// [`RegressionError::Outside`]: C below 0.15 or above 1.3, Mn or Si above 2.2, Ni above 4, Cr above 2, Mo
    /// above 0.6, V above 0.3, W or Co above 0.1, Cu above 0.5, B above 0.006 %.
    pub fn new(composition: &Composition) -> Result<Self, RegressionError> {
        Self::for_limits(&CompositionLimits::from(*composition))
    }

    /// The prediction for a grade, or for a bar whose paper gives limits: that of the middle composition, with half
    /// of the way to the end of every range as one standard deviation of that share, as no heat has every element
    /// at one end.
    ///
    /// # Errors
    /// As [`Regression::new`], by the middles.
    pub fn for_limits(limits: &CompositionLimits) -> Result<Self, RegressionError> {
        let scales = Scales::new()?;
        let mut assumed = Vec::new();
        let range_of = |element: Element| match limits.range(element) {
            None if element == Element::Mn => MANGANESE,
            _ => stated_or_residual(limits, element),
        };
        for (element, most) in STRANGERS {
            let given = limits.range(element).map_or(0.0, |_| range_of(element).middle());
            if given > most {
                let allowed = within(0.0, most);
                return Err(RegressionError::Outside { element, given, allowed });
            }
        }
        for (element, allowed, _) in ELEMENTS {
            let given = range_of(element).middle();
            if !(given >= allowed.low && given <= allowed.high) {
                return Err(RegressionError::Outside { element, given, allowed });
            }
            if limits.range(element).is_none() && given > 0.0 {
                assumed.push((element, given));
            }
        }
        let shares = shares_of(ELEMENTS.map(|(element, ..)| range_of(element).middle()));
        let untempered = FITTED.untempered(shares.carbon);
        let curve = FITTED.curve(&shares, untempered, &scales);
        let moved = |which: Element| {
            let range = range_of(which);
            let by = 0.5 * (range.high - range.middle());
            let mut values = values_of(&shares);
            for (value, (element, ..)) in values.iter_mut().zip(ELEMENTS) {
                if element == which {
                    *value += by;
                }
            }
            let shares = shares_of(values);
            let curve = FITTED.curve(&shares, FITTED.untempered(shares.carbon), &scales);
            (by > 0.0).then_some(curve)
        };
        let aside = ELEMENTS.iter().filter_map(|(element, ..)| moved(*element)).collect();
        Ok(Self { shares, untempered, curve, middle: curve, aside, assumed, scales })
    }

    /// Takes the hardness as quenched into account, in HRC, with the standard deviation of its measurement.
    ///
    /// Half of what it differs from the start that carbon gives is taken over, less with a coarse measurement, and
    /// nothing above 0.7 % C, where retained austenite and carbides decide. Five steels that were left out of the fit come
    /// out at 2.8 instead of 3.5 HRC (RMS); the spread stays as it is.
    #[must_use]
    pub fn with_as_quenched(self, hrc: f64, sd: f64) -> Self {
        let untempered = FITTED.untempered_as_measured(self.shares.carbon, hrc, sd);
        let curve = FITTED.curve(&self.shares, untempered, &self.scales);
        Self { untempered, curve, ..self }
    }

    /// Whether the hardness as quenched is taken into account: by its carbon.
    #[must_use]
    pub const fn takes_as_quenched(&self) -> bool {
        self.shares.carbon <= AS_QUENCHED_CARBON
    }

    /// Shares that count although nobody stated them, in mass percent.
    #[must_use]
    pub fn assumed(&self) -> &[(Element, f64)] {
        &self.assumed
    }

    /// Shares outside those that were measured, as counted, with the range of the data: to be warned of.
    #[must_use]
    pub fn edges(&self) -> Vec<(Element, f64, Interval)> {
        let given = values_of(&self.shares);
        let all = ELEMENTS.into_iter().zip(given).map(|((element, _, seen), x)| (element, x, seen));
        all.filter(|(_, given, seen)| *given < seen.low || *given > seen.high).collect()
    }

    /// Where the numbers come from.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        Cited {
            sources: &[
                "grange-baughman-1956",
                "hollomon-jaffe-1945",
                "penha-2010",
                "raiipa-tempering",
                "biteband-temper",
            ],
            seen: Seen::Seen,
            confidence: Confidence::Medium,
        }
    }

    fn at(&self, curve: &Curve, celsius: f64, minutes: f64) -> f64 {
        self.scales.hrc(curve.hv(celsius, minutes / 60.0))
    }

    /// Hardness after one or more tempers in HRC, the middle of the prediction; before any, as quenched.
    ///
    /// Several count as one at the hottest, see [`equivalent_minutes`]. Below 20 the number has no meaning as a
    /// reading, it only keeps the order: say "below 20".
    #[must_use]
    pub fn hrc(&self, tempers: &[Temper]) -> f64 {
        match equivalent_minutes(tempers, CONSTANT) {
            Some((celsius, minutes)) => self.at(&self.curve, celsius, minutes),
            None => self.untempered,
        }
    }

    /// How the hardness changes when every temper is hotter by one K, in HRC per K: at most nought.
    #[must_use]
    pub fn slope_per_kelvin(&self, tempers: &[Temper]) -> f64 {
        let Some((celsius, minutes)) = equivalent_minutes(tempers, CONSTANT) else { return 0.0 };
        let (below, above) = (celsius - 2.0, celsius + 2.0);
        (self.at(&self.curve, above, minutes) - self.at(&self.curve, below, minutes)) / 4.0
    }

    /// Standard deviation of a single result about [`Regression::hrc`], in HRC: what a steel and a laboratory add, and
    /// the ranges of the composition. Measuring the hardness and the error of an oven come on top.
    #[must_use]
    pub fn sd(&self, tempers: &[Temper]) -> f64 {
        self.point(tempers).sd(&SPREAD)
    }

    /// What is expected of these tempers, for learning from own results.
    #[must_use]
    pub fn point(&self, tempers: &[Temper]) -> Point {
        let hrc = self.hrc(tempers);
        let slope = self.slope_per_kelvin(tempers);
        let Some((celsius, minutes)) = equivalent_minutes(tempers, CONSTANT) else {
            return Point { celsius: MEASURED.0.low, hrc, slope, composition_sd: 0.0 };
        };
        let middle = self.at(&self.middle, celsius, minutes);
        let square = |curve: &Curve| {
            let off = self.at(curve, celsius, minutes) - middle;
            off * off
        };
        let composition_sd = sqrt(self.aside.iter().map(square).sum());
        Point { celsius, hrc, slope, composition_sd }
    }

    /// How results of one steel scatter about the prediction and hang together.
    #[must_use]
    pub const fn spread(&self) -> Spread {
        SPREAD
    }

    /// The fitted coefficients.
    #[must_use]
    pub const fn coefficients() -> Coefficients {
        FITTED
    }
}
