//! Whether a bath is large and cool enough, and far enough from its fire.
//!
//! The figures are on the safe side throughout: the whole part gives its heat down to 60 °C, no heat leaves
//! the bath meanwhile, and a fixture counts as part.

mod error;
mod tank;

use biteband_hardness::Seen;
use biteband_quantity::{Celsius, Kelvins, Kilograms, Litres};

pub use error::{Error, FLASH, HOT, LITRES, OIL_START, WATER_START};
pub use tank::{ABOVE_AND_BELOW, BESIDE, FREEBOARD, Tank, tank};

use crate::furnace::properties::heat_content;
use crate::quench::Medium;
use crate::{Cited, Confidence};

/// The highest temperature an oil bath may reach, in °C. Ours, from the range of cold oils up to 90 °C.
pub const OIL_PEAK: f64 = 80.0;
/// The highest temperature water or brine may reach, in °C: hotter, the blanket of steam stays and leaves
/// soft spots. Ours; common practice, no source.
pub const WATER_PEAK: f64 = 50.0;
/// How far below its flash point an oil must stay, in K: twice the 50 °F of the alarm of Washington's
/// WAC 296-835-13005 (seen).
pub const FLASH_MARGIN: f64 = 60.0;
/// The lowest flash point of a quench oil in a machinists' guide (seen): 350 °F.
pub const FLASH_OF_GUIDE: f64 = 177.0;
/// One US gallon per pound, in litres per kilogram.
pub const RULE: f64 = Litres::US_GALLON / Kilograms::POUND;
/// What the part is taken to cool to, in °C.
const COLD: f64 = 60.0;
/// Where the balance and its limits stand.
pub const CITED: Cited = Cited {
    sources: &["en-1993-1-2", "gallon-per-pound", "wac-296-835", "biteband-trade"],
    seen: Seen::Part,
    confidence: Confidence::Medium,
};

/// A bath before the part goes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bath {
    medium: Medium,
    litres: f64,
    celsius: f64,
    flash_point: Option<f64>,
}

/// What a bath is fit for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Both the rule and the balance are kept.
    Enough,
    /// The peak is in order, but there is less than the rule of one US gallon per pound asks for.
    TooSmall,
    /// The peak is over its limit: more liquid, or a cooler start.
    TooHot,
    /// The peak is within 60 K of the flash point or beyond it.
    FireRisk,
    /// Used, thinned, motor or unknown oil.
    DoNotUse,
}

impl Verdict {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Enough => "enough",
            Self::TooSmall => "too_small",
            Self::TooHot => "too_hot",
            Self::FireRisk => "fire_risk",
            Self::DoNotUse => "do_not_use",
        }
    }
}

/// A flash point and whether it was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flash {
    /// In °C.
    pub celsius: Celsius,
    /// Not given: the lowest of its kind was taken; the drum's data sheet has the true one.
    pub assumed: bool,
    /// Peak to flash point; below nought when the peak is beyond it.
    pub margin: Kelvins,
    /// Below the 177 °C that a quench oil has at least.
    pub below_guide: bool,
}

/// What a part does to a bath.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quench {
    /// How much the bath warms. A figure beyond boiling or the flash point says that the bath does not get there
    /// in peace.
    pub rise: Kelvins,
    /// Its warmest, all through; around the part it is hotter.
    pub peak: Celsius,
    /// What the peak may be: 80 °C or 60 K below the flash point for oil, 50 °C for water.
    pub limit: Celsius,
    /// Litres by the rule of one US gallon per pound.
    pub by_rule: Litres,
    /// Litres at which the balance keeps the peak at its limit; `None` when the bath starts there already.
    pub by_balance: Option<Litres>,
    /// The larger of both, `None` as [`Self::by_balance`].
    pub needed: Option<Litres>,
    /// Of oils, the fire limit.
    pub flash: Option<Flash>,
    /// What the bath is fit for.
    pub verdict: Verdict,
    /// Where the balance stands.
    pub cited: Cited,
}

/// Density in kg/L, specific heat in kJ/kgK, and the lowest flash point of its kind in °C.
struct Liquid {
    density: f64,
    heat: f64,
    flash: Option<f64>,
}

/// Mineral oil: 0.88 and 1.95 within 860 to 890 kg/m³ (recalled) and 1.9 kJ/kgK rising with temperature (seen),
/// flash points of cold oils 150 to 200 °C (recalled). Vegetable oil: 910 to 930 kg/m³ (seen), 2.0 to
/// 2.2 kJ/kgK (recalled), canola flashes at 290 to 330 °C (seen). Brine of 10 %: recalled.
const fn liquid(medium: Medium) -> Option<Liquid> {
    Some(match medium {
        Medium::Oil | Medium::FastOil | Medium::UnknownOil => {
            Liquid { density: 0.88, heat: 1.95, flash: Some(150.0) }
        }
        Medium::VegetableOil => Liquid { density: 0.915, heat: 2.1, flash: Some(290.0) },
        Medium::Water => Liquid { density: 0.998, heat: 4.18, flash: None },
        Medium::Brine => Liquid { density: 1.07, heat: 3.7, flash: None },
        Medium::Polymer | Medium::Salt | Medium::Air => return None,
    })
}

/// Heat that one kilogram of steel gives a bath, in kJ: from its temperature down to 60 °C, the
/// transformation within.
///
/// # Units
/// `celsius` is brought into [`HOT`].
///
/// # Source
/// The integral of the specific heat of EN 1993-1-2 (seen): 580 kJ/kg from 850 °C.
///
/// # Example
/// ```
/// assert!((biteband_steel::bath::heat_given(850.0) - 580.0).abs() < 1.0);
/// ```
#[must_use]
pub fn heat_given(celsius: f64) -> f64 {
    let hot = if celsius.is_nan() { HOT.max } else { celsius.clamp(HOT.min, HOT.max) };
    (heat_content(hot) - heat_content(COLD)) / 1000.0
}

impl Bath {
    /// Checks a bath.
    ///
    /// # Units
    /// `litres` inside [`LITRES`], `celsius` inside [`OIL_START`] or [`WATER_START`], the flash point in °C
    /// inside [`FLASH`] (of oils; of water it is not looked at).
    ///
    /// # Errors
    /// [`Error::Quantity`] outside; [`Error::NoHeatBalance`] for air, polymer and salt.
    pub fn new(
        medium: Medium,
        litres: f64,
        celsius: f64,
        flash_point: Option<f64>,
    ) -> Result<Self, Error> {
        let liquid = liquid(medium).ok_or(Error::NoHeatBalance { medium })?;
        let start = if liquid.flash.is_some() { OIL_START } else { WATER_START };
        Ok(Self {
            medium,
            litres: LITRES.check(litres)?,
            celsius: start.check(celsius)?,
            flash_point: flash_point.map(|given| FLASH.check(given)).transpose()?,
        })
    }

    /// What is in the tank.
    #[must_use]
    pub const fn medium(&self) -> Medium {
        self.medium
    }

    /// What a part with its fixture does to the bath.
    ///
    /// # Units
    /// `mass` of everything hot that goes in together; `from` in °C inside [`HOT`].
    ///
    /// # Source
    /// Heat balance with [`heat_given`]; one US gallon per pound: trade magazine on the rule, earliest
    /// source 1921 (seen).
    ///
    /// # Errors
    /// [`Error::Quantity`] for a temperature outside, or a part that is heavier than the bath by so much that
    /// the rise is no number of this trade.
    ///
    /// # Example
    /// ```
    /// use biteband_quantity::{Celsius, Kilograms};
    /// use biteband_steel::bath::{Bath, Verdict};
    /// use biteband_steel::quench::Medium;
    /// let pail = Bath::new(Medium::Oil, 4.0, 50.0, None).unwrap();
    /// let found = pail.quench(Kilograms::new(2.7)?, Celsius::new(850.0)?).unwrap();
    /// assert_eq!(found.verdict, Verdict::FireRisk);
    /// assert!(found.peak.get() > 270.0 && found.by_rule.get() > 22.0);
    /// # Ok::<(), biteband_quantity::OutOfBounds>(())
    /// ```
    pub fn quench(&self, mass: Kilograms, from: Celsius) -> Result<Quench, Error> {
        let liquid = liquid(self.medium).ok_or(Error::NoHeatBalance { medium: self.medium })?;
        let heat = mass.get() * heat_given(HOT.check(from.get())?);
        let per_kelvin = liquid.density * liquid.heat;
        // The balance ends where the bath is as hot as the part.
        let rise = (heat / (self.litres * per_kelvin)).min(from.get() - self.celsius);
        let peak = self.celsius + rise;
        let flash_point = liquid.flash.map(|lowest| self.flash_point.unwrap_or(lowest));
        let limit = flash_point.map_or(WATER_PEAK, |flash| OIL_PEAK.min(flash - FLASH_MARGIN));
        let by_rule = mass.get() * RULE;
        let by_balance =
            (limit > self.celsius).then(|| heat / (per_kelvin * (limit - self.celsius)));
        let litres = |value: f64| Litres::new(value.max(Litres::BOUNDS.min));
        let flash = (flash_point)
            .map(|flash| {
                Ok::<Flash, Error>(Flash {
                    celsius: Celsius::new(flash)?,
                    assumed: self.flash_point.is_none(),
                    margin: Kelvins::new(flash - peak)?,
                    below_guide: flash < FLASH_OF_GUIDE,
                })
            })
            .transpose()?;
        Ok(Quench {
            rise: Kelvins::new(rise)?,
            peak: Celsius::new(peak)?,
            limit: Celsius::new(limit)?,
            by_rule: litres(by_rule)?,
            by_balance: by_balance.map(litres).transpose()?,
            needed: by_balance.map(|balance| litres(balance.max(by_rule))).transpose()?,
            flash,
            verdict: self.verdict(peak, limit, flash_point, by_rule),
            cited: CITED,
        })
    }

    fn verdict(&self, peak: f64, limit: f64, flash: Option<f64>, by_rule: f64) -> Verdict {
        if self.medium == Medium::UnknownOil {
            Verdict::DoNotUse
        } else if flash.is_some_and(|flash| peak > flash - FLASH_MARGIN) {
            Verdict::FireRisk
        } else if peak > limit {
            Verdict::TooHot
        } else if self.litres < by_rule {
            Verdict::TooSmall
        } else {
            Verdict::Enough
        }
    }
}
