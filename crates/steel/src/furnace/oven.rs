//! Whether an oven tells the truth: its offset at known points, and nowhere else.

use alloc::vec::Vec;

use biteband_hardness::Seen;
use biteband_quantity::{Celsius, Kelvins};

use super::error::Error;
use crate::keyed::keyed;
use crate::{Cited, Confidence};

keyed! {
    /// Something that happens at a known temperature and can be seen in a shop.
    KnownPoint {
        /// Water boils, at sea level; 1 K lower for each 300 m of height.
        WaterBoils = "water_boils",
        /// Pure tin melts; solder does not, it is an alloy.
        TinMelts = "tin_melts",
        /// Pure zinc melts; its smoke is not to be breathed.
        ZincMelts = "zinc_melts",
        /// Pure aluminium melts.
        AluminiumMelts = "aluminium_melts",
        /// Plain steel stops holding a magnet.
        MagnetLetsGo = "magnet_lets_go",
    }
}

impl KnownPoint {
    /// Its temperature in °C and how near a shop comes to it, in K.
    ///
    /// The half-widths are ours: one reading of a dial, a sample that lags its oven by a little; for water
    /// the height and the weather; for the magnet the alloy and the eye.
    ///
    /// # Source
    /// Freezing points of tin, zinc and aluminium: ITS-90, recalled. Magnet: 770 °C, the Curie point of
    /// iron, seen in a trade article.
    #[must_use]
    pub const fn temperature(self) -> (f64, f64) {
        match self {
            Self::WaterBoils => (100.0, 3.0),
            Self::TinMelts => (231.928, 3.0),
            Self::ZincMelts => (419.527, 4.0),
            Self::AluminiumMelts => (660.323, 5.0),
            Self::MagnetLetsGo => (770.0, 10.0),
        }
    }

    /// Where the temperature stands.
    #[must_use]
    pub const fn cited(self) -> Cited {
        match self {
            Self::WaterBoils | Self::TinMelts | Self::ZincMelts | Self::AluminiumMelts => {
                Cited { sources: &["its-90"], seen: Seen::Recalled, confidence: Confidence::High }
            }
            Self::MagnetLetsGo => {
                Cited { sources: &["magnet-770"], seen: Seen::Seen, confidence: Confidence::Medium }
            }
        }
    }
}

/// One check: what the dial said at a temperature that was known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvenCheck {
    dial: Celsius,
    truth: Celsius,
    half_width: Kelvins,
}

impl OvenCheck {
    /// A check at a known point, or against a thermometer that is trusted to `half_width` (95 %).
    ///
    /// # Units
    /// °C and K; the half-width is taken without its sign and not below 1 K.
    ///
    /// # Errors
    /// [`Error::TooFarOff`] when dial and truth are more than 150 K apart.
    pub fn new(dial: Celsius, truth: Celsius, half_width: Kelvins) -> Result<Self, Error> {
        if libm::fabs(truth.get() - dial.get()) > MOST {
            return Err(Error::TooFarOff { dial: dial.get(), truth: truth.get() });
        }
        let half_width = Kelvins::new(libm::fabs(half_width.get()).max(1.0))?;
        Ok(Self { dial, truth, half_width })
    }

    /// A check at a known point.
    ///
    /// # Errors
    /// As [`OvenCheck::new`].
    pub fn at(point: KnownPoint, dial: Celsius) -> Result<Self, Error> {
        let (truth, half_width) = point.temperature();
        Self::new(dial, Celsius::new(truth)?, Kelvins::new(half_width)?)
    }

    /// What the dial said.
    #[must_use]
    pub const fn dial(&self) -> Celsius {
        self.dial
    }

    fn offset(&self) -> f64 {
        self.truth.get() - self.dial.get()
    }
}

/// A larger difference is a broken sensor or a wrong unit. Ours.
const MOST: f64 = 150.0;
/// How far from a checked reading its offset is still used, in K. Ours: ovens drift with temperature.
const REACH: f64 = 25.0;

/// What must be added to a reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offset {
    /// Truth less dial.
    pub kelvins: Kelvins,
    /// 95 % half-width of that.
    pub half_width: Kelvins,
}

/// The offset of one oven as it was checked.
///
/// # Example
/// ```
/// use biteband_quantity::Celsius;
/// use biteband_steel::furnace::{KnownPoint, OvenCheck, OvenOffset};
/// let dial = |c| Celsius::new(c);
/// let oven = OvenOffset::new(&[
///     OvenCheck::at(KnownPoint::TinMelts, dial(245.0)?).unwrap(),
///     OvenCheck::at(KnownPoint::ZincMelts, dial(439.0)?).unwrap(),
/// ]).unwrap();
/// assert!((oven.at(dial(342.0)?).unwrap().kelvins.get() + 16.27).abs() < 0.01);
/// assert!(oven.at(dial(500.0)?).is_err());
/// # Ok::<(), biteband_quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct OvenOffset {
    /// Sorted by their readings, all different.
    checks: Vec<OvenCheck>,
}

impl OvenOffset {
    /// Puts checks in order.
    ///
    /// # Errors
    /// [`Error::NoPoints`] without a check, with two less than 1 K apart on the dial, or with a truth that
    /// falls while the dial rises.
    pub fn new(checks: &[OvenCheck]) -> Result<Self, Error> {
        let mut checks = checks.to_vec();
        checks.sort_by(|a, b| a.dial.get().total_cmp(&b.dial.get()));
        let apart = |pair: &[OvenCheck]| match pair {
            [a, b] => b.dial.get() - a.dial.get() >= 1.0 && b.truth > a.truth,
            _ => true,
        };
        if checks.is_empty() || !checks.windows(2).all(apart) {
            return Err(Error::NoPoints);
        }
        Ok(Self { checks })
    }

    /// The offset at a reading: straight between two checks, that of the end within 25 K beyond it.
    ///
    /// # Errors
    /// [`Error::NotChecked`] further away.
    pub fn at(&self, dial: Celsius) -> Result<Offset, Error> {
        let at = dial.get();
        let ends = self.checks.first().zip(self.checks.last());
        let (low, high) =
            ends.map_or((at, at), |(a, b)| (a.dial.get() - REACH, b.dial.get() + REACH));
        if !(at >= low && at <= high) {
            return Err(Error::NotChecked { dial: at, low, high });
        }
        let below = self.checks.iter().rev().find(|check| check.dial.get() <= at);
        let above = self.checks.iter().find(|check| check.dial.get() > at);
        let (kelvins, half_width) = match (below, above) {
            (Some(a), Some(b)) => {
                let part = (at - a.dial.get()) / (b.dial.get() - a.dial.get());
                let wide = a.half_width.get().max(b.half_width.get());
                (a.offset() + (b.offset() - a.offset()) * part, wide)
            }
            (Some(one), None) | (None, Some(one)) => (one.offset(), one.half_width.get()),
            (None, None) => return Err(Error::NoPoints),
        };
        Ok(Offset { kelvins: Kelvins::new(kelvins)?, half_width: Kelvins::new(half_width)? })
    }

    /// What to set the dial to for a true temperature, in °C.
    ///
    /// # Errors
    /// [`Error::NotChecked`] when that reading is not covered.
    pub fn dial_for(&self, truth: Celsius) -> Result<Celsius, Error> {
        let below = self.checks.iter().rev().find(|check| check.truth <= truth);
        let above = self.checks.iter().find(|check| check.truth > truth);
        let offset = match (below, above) {
            (Some(a), Some(b)) => {
                let part = (truth.get() - a.truth.get()) / (b.truth.get() - a.truth.get());
                a.offset() + (b.offset() - a.offset()) * part
            }
            (Some(one), None) | (None, Some(one)) => one.offset(),
            (None, None) => return Err(Error::NoPoints),
        };
        let dial = Celsius::new(truth.get() - offset)?;
        self.at(dial).map(|_| dial)
    }
}
