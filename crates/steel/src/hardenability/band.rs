//! The band of a grade or of a heat.

use alloc::vec::Vec;

use biteband_hardness::Seen;

use super::curve::{Curve, DEEP, SHALLOW};
use super::error::Error;
use super::factors::{
    OutsideRange, Shares, WITH_FACTOR, covered, inside_tables, millimetres, outside, range, share,
    typical_residual,
};
use super::hband;
use super::initial::initial_hardness;
use crate::composition::{Composition, CompositionLimits, Element};
use crate::grade::{Family, Grade, Hardening};
use crate::source::{Cited, Confidence};

/// How far the curve of a heat of known composition may be off, in HRC, to either side in about 19 of 20
/// cases: twice the 2.2 HRC (RMS) by which the curves of 23 middle compositions miss the middles of their
/// H-bands. The distance factors and the unknown residuals are in it; the analysis and the grain are not.
/// Nothing in the sources gives an error of ASTM A255 against single heats; as-quenched rounds of eight
/// known heats, where the error of the section comes on top, are off by 3.6 HRC (RMS).
pub const HEAT_ERROR: f64 = 4.4;

/// Vanadium counts up to this share, in mass percent: the rest stays bound as carbide at the usual hardening
/// temperature. With it the curve of 6150H misses the middle of its band by 1.1 HRC (RMS), without by 3.8.
const VANADIUM: f64 = 0.10;

/// How a band was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Method {
    /// The published band of the H-steel.
    HBand {
        /// Its name, as `4140H`.
        name: &'static str,
    },
    /// ASTM A255 inside the range of the standard.
    A255,
    /// ASTM A255 outside the range that the standard states and inside its factor tables: to be labelled.
    A255Wide,
}

impl Method {
    /// Stable name for JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::HBand { .. } => "h-band",
            Self::A255 => "astm-a255",
            Self::A255Wide => "astm-a255-outside-range",
        }
    }
}

/// What a reader of a band is to be told.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Note {
    /// An element is not stated, or only with a highest share, and counts with this share in mass percent.
    Residual {
        /// The element.
        element: Element,
        /// As counted.
        share: f64,
    },
    /// Vanadium above 0.10 % does not count.
    Vanadium,
    /// The ideal diameter is below 15 mm somewhere in the band: shallow hardening, low confidence.
    Shallow,
    /// The ideal diameter is above 177.8 mm somewhere in the band: deep hardening, beyond the table.
    Deep,
}

/// Ideal diameters in millimetres of the lowest, the middle and the highest composition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IdealDiameters {
    /// Of the lowest.
    pub low: f64,
    /// Of the middle.
    pub mid: f64,
    /// Of the highest.
    pub high: f64,
}

/// End-quench hardness of a grade or a heat: where most bars lie, and the middle.
#[derive(Clone, Debug, PartialEq)]
pub struct Band {
    /// The lower edge.
    pub low: Curve,
    /// The middle.
    pub mid: Curve,
    /// The upper edge.
    pub high: Curve,
    /// How it was made.
    pub method: Method,
    /// Of a heat: by a single carbon, with the error of the method as edges.
    pub of_heat: bool,
    /// Where it comes from.
    pub cited: Cited,
    /// By ASTM A255, from the composition.
    pub ideal_diameter: IdealDiameters,
    /// Elements of the middle composition outside the range of the standard.
    pub outside: Vec<OutsideRange>,
    /// What else is to be said.
    pub notes: Vec<Note>,
}

const fn cited(sources: &'static [&'static str], seen: Seen, confidence: Confidence) -> Cited {
    Cited { sources, seen, confidence }
}

/// A composition that is worked out.
struct Worked {
    shares: Shares,
    ideal_diameter: f64,
    curve: Curve,
}

impl Worked {
    /// The lower edge at -1, the middle at 0, the upper edge at 1: shares half way to the ends of their
    /// ranges, and the hardness of the quenched end by the whole range of the carbon.
    fn at(limits: &CompositionLimits, edge: f64) -> Result<Self, Error> {
        let place = |element: Element, edge: f64| {
            let range = range(limits, element);
            range.middle() + edge * (range.high - range.middle())
        };
        let shares = WITH_FACTOR.map(|element| {
            let share = place(element, 0.5 * edge);
            let share = if element == Element::V { share.min(VANADIUM) } else { share };
            inside_tables(element, share)
        });
        let ideal_diameter = millimetres(&shares);
        let initial = initial_hardness(place(Element::C, edge));
        Ok(Self { shares, ideal_diameter, curve: Curve::new(initial, ideal_diameter)? })
    }
}

impl Band {
    /// The band of a heat whose composition is known, see [`Band::for_limits`].
    ///
    /// # Errors
    /// As [`Band::for_limits`].
    pub fn for_composition(composition: &Composition) -> Result<Self, Error> {
        Self::for_limits(&CompositionLimits::from(*composition), None)
    }

    /// The band of a grade, or of a bar whose paper gives limits.
    ///
    /// `h_band` names the H-band of the grade, see [`h_band_of`](super::h_band_of). Where it is at hand, its
    /// edges are the band and the middle between them is the middle: the published band is what heats were
    /// found to do, and the calculation, which misses that middle by 2.1 HRC (RMS), adds nothing to it.
    /// Otherwise ASTM A255 for the middle composition, and for the edges the ideal diameters half way from
    /// there to the ends of every range: the compositions at the ends themselves would be 6.5 HRC too soft
    /// and 4.0 HRC too hard, because no heat has every element at one end. The hardness of the quenched end,
    /// which carbon alone decides, takes the whole range of the carbon; half of it would leave the first 6/16 in
    /// of the published bands narrower by 1 HRC on either side. The edges made so miss those of 14 published
    /// bands by 2.7 HRC below and 2.9 HRC above (RMS).
    ///
    /// Limits with a single carbon are those of a heat: the edges are at least [`HEAT_ERROR`] from the middle,
    /// the upper one no harder than the quenched end.
    ///
    /// # Errors
    /// [`Error::Boron`], [`Error::Outside`] and [`Error::Missing`] as
    /// [`ideal_diameter`](super::ideal_diameter); [`Error::OpenCarbon`] without a lowest carbon,
    /// [`Error::LowCarbon`] below 0.10 % and [`Error::HighCarbon`] above 0.70 %, by the middle of the range:
    /// for those steels the published as-quenched hardness of the grade is the answer.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::hardenability::{Band, EndQuench, Error, Method};
    /// use biteband_steel::{CompositionLimits, Element};
    /// let limits = CompositionLimits::new(&[
    ///     (Element::C, Some(0.38), Some(0.43)),
    ///     (Element::Mn, Some(0.75), Some(1.00)),
    ///     (Element::Si, Some(0.15), Some(0.35)),
    ///     (Element::Cr, Some(0.80), Some(1.10)),
    ///     (Element::Mo, Some(0.15), Some(0.25)),
    /// ])?;
    /// let band = Band::for_limits(&limits, Some("4140H")).unwrap();
    /// assert_eq!(band.method, Method::HBand { name: "4140H" });
    /// assert_eq!(band.high.hardness_at(25.4 / 16.0), Some(EndQuench::Hrc(60.0)));
    ///
    /// let plain = [(Element::C, Some(0.90), Some(1.03)), (Element::Mn, Some(0.30), Some(0.50))];
    /// let refused = Band::for_limits(&CompositionLimits::new(&plain)?, None).unwrap_err();
    /// assert!(matches!(refused, Error::HighCarbon { .. }));
    /// # Ok::<(), biteband_steel::CompositionError>(())
    /// ```
    pub fn for_limits(limits: &CompositionLimits, h_band: Option<&str>) -> Result<Self, Error> {
        let made = Self::by_a255(limits)?;
        let Some((name, curves)) = h_band.and_then(hband::find) else { return Ok(made) };
        Ok(Self {
            low: curves.low,
            mid: curves.mid,
            high: curves.high,
            method: Method::HBand { name },
            of_heat: false,
            cited: cited(&["sae-j1268", "astm-a304"], Seen::Recalled, Confidence::Medium),
            ..made
        })
    }

    /// The band of a grade: by its H-band or by the limits of its composition, see [`Band::for_limits`].
    ///
    /// # Errors
    /// [`Error::NotHardened`] for grades that do not harden by quenching, [`Error::Published`] for tool and
    /// stainless steels, and those of [`Band::for_limits`].
    ///
    /// # Example
    /// ```
    /// use biteband_steel::Grade;
    /// use biteband_steel::hardenability::{Band, Error, Method};
    /// let band = Band::for_grade(Grade::by_key("EN19").unwrap()).unwrap();
    /// assert_eq!(band.method, Method::A255);
    /// let refused = Band::for_grade(Grade::by_key("D2").unwrap());
    /// assert_eq!(refused, Err(Error::Published));
    /// ```
    pub fn for_grade(grade: &Grade) -> Result<Self, Error> {
        match (grade.hardening(), grade.family()) {
            (Hardening::None | Hardening::Age, _) => Err(Error::NotHardened),
            (_, Family::Tool | Family::Stainless | Family::PhStainless) => Err(Error::Published),
            _ => Self::for_limits(&grade.limits(), hband::h_band_of(grade.key())),
        }
    }

    fn by_a255(limits: &CompositionLimits) -> Result<Self, Error> {
        covered(limits)?;
        if let (None, Some(given)) = limits.stated(Element::C) {
            return Err(Error::OpenCarbon { given });
        }
        let given = range(limits, Element::C).middle();
        if given < 0.10 {
            return Err(Error::LowCarbon { given });
        }
        if given > 0.70 {
            return Err(Error::HighCarbon { given });
        }
        let low = Worked::at(limits, -1.0)?;
        let mid = Worked::at(limits, 0.0)?;
        let high = Worked::at(limits, 1.0)?;
        let outside = outside(&mid.shares);
        let carbon = range(limits, Element::C);
        let of_heat = carbon.low.total_cmp(&carbon.high).is_eq();
        let (below, above) = if of_heat {
            let top = initial_hardness(carbon.high);
            (
                mid.curve.with(&low.curve, |mid, low| low.min(mid - HEAT_ERROR)),
                mid.curve.with(&high.curve, |mid, high| high.max((mid + HEAT_ERROR).min(top))),
            )
        } else {
            (low.curve, high.curve)
        };
        let (method, confidence) = if outside.is_empty() {
            (Method::A255, Confidence::Medium)
        } else {
            (Method::A255Wide, Confidence::Low)
        };
        let mut notes = Vec::new();
        for element in Element::ALL {
            if let (None, Some(_)) = (limits.stated(element).0, typical_residual(element)) {
                notes.push(Note::Residual { element, share: share(&mid.shares, element) });
            }
        }
        if range(limits, Element::V).middle() > VANADIUM {
            notes.push(Note::Vanadium);
        }
        if low.ideal_diameter < SHALLOW {
            notes.push(Note::Shallow);
        }
        if high.ideal_diameter > DEEP {
            notes.push(Note::Deep);
        }
        Ok(Self {
            ideal_diameter: IdealDiameters {
                low: low.ideal_diameter,
                mid: mid.ideal_diameter,
                high: high.ideal_diameter,
            },
            low: below,
            mid: mid.curve,
            high: above,
            method,
            of_heat,
            cited: cited(&["astm-a255", "hardenability-spread"], Seen::Seen, confidence),
            outside,
            notes,
        })
    }
}
