//! The formula behind the regression, for the page and for the program that fits it alike.

use biteband_hardness::{Axis, Choice, Error, Route, Scale};
use biteband_quantity::confined;
use libm::{exp, log10};

use super::cycle::ICE;

/// ASTM E140 Table 1 runs from here to there, in HRC.
const TABLE: (f64, f64) = (20.0, 68.0);
/// The delay by molybdenum and vanadium stays below this, in parameter units, so that the hardness falls with
/// temperature and time wherever the delay ends, see [`Curve::kept`].
const LONGEST_DELAY: f64 = 3.6;
/// Where that delay is longest and how wide it is, in parameter units: about 560 °C for an hour.
const DELAY: (f64, f64) = (14.3, 2.2);
/// Carbon counts from here, in mass percent.
const MIDDLE_CARBON: f64 = 0.45;
/// A share of the first stage stays between these.
const FIRST: (f64, f64) = (0.02, 0.9);

/// An as-quenched reading counts by this share and up to this carbon in mass percent: five steels up to 0.7 % C whose
/// hardness as quenched was measured and that were left out come out at 2.8 instead of 3.5 HRC (RMS), at 3.2 with all of
/// it; those above come out no better.
const AS_QUENCHED_SHARE: f64 = 0.5;
pub(super) const AS_QUENCHED_CARBON: f64 = 0.7;
/// How far the start lies from a measured hardness as quenched, in HRC: 1.7 (RMS) for four of these steels, 9 for the
/// one that was not fully hardened. Ours.
const START_ERROR: f64 = 2.5;
/// A reading further off counts as if it were this far off, in HRC: the steel did not harden.
const FURTHEST: f64 = 10.0;

/// Coefficients with their names, which are those of the data file, in its order.
macro_rules! coefficients {
    ($($(#[$doc:meta])* $name:ident,)+) => {
        /// Coefficients of the regression; shares in mass percent, P for the parameter in thousands.
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct Coefficients {
            $($(#[$doc])* pub $name: f64,)+
        }

        impl Coefficients {
            /// Names in the order of [`Self::values`].
            pub const NAMES: [&str; [$(stringify!($name)),+].len()] = [$(stringify!($name)),+];

            /// All of them in one row.
            #[must_use]
            pub const fn values(&self) -> [f64; Self::NAMES.len()] {
                [$(self.$name),+]
            }

            /// From a row in the order of [`Self::NAMES`].
            #[must_use]
            pub const fn from_values(values: [f64; Self::NAMES.len()]) -> Self {
                let [$($name),+] = values;
                Self { $($name),+ }
            }
        }
    };
}

coefficients! {
    /// Constant of the parameter of Hollomon and Jaffe, for hours.
    constant,
    /// Start of a steel without carbon, in HRC.
    start,
    /// How much harder carbon makes the start at most, in HRC.
    start_rise,
    /// The carbon at which the start has gained two thirds of that.
    start_carbon,
    /// Share of the first stage at 0.45 % C.
    first_share,
    /// How that share grows with carbon, per percent.
    first_share_carbon,
    /// Middle of the first stage, P.
    first_place,
    /// How far silicon moves it, P per percent.
    first_silicon,
    /// Width of the first stage, P.
    first_width,
    /// Delay by molybdenum, P per percent.
    molybdenum,
    /// Delay by vanadium, P per percent.
    vanadium,
    /// Most that both delay together, P; counts up to 3.6.
    longest_delay,
    /// Middle of the second stage at 0.45 % C without alloy, P.
    second_place,
    /// How far carbon moves it, P per percent.
    carbon,
    /// How far silicon moves it, P per percent.
    silicon,
    /// How far manganese moves it, P per percent.
    manganese,
    /// How far nickel moves it, P per percent.
    nickel,
    /// How far chromium moves it, P per percent.
    chromium,
    /// Width of the second stage, P.
    second_width,
    /// What is left in the end, in HV.
    soft,
}

/// Shares that the formula takes, in mass percent.
#[derive(Clone, Copy, Debug, PartialEq)]
#[expect(missing_docs, reason = "each is an element")]
pub struct Shares {
    pub carbon: f64,
    pub manganese: f64,
    pub silicon: f64,
    pub nickel: f64,
    pub chromium: f64,
    pub molybdenum: f64,
    pub vanadium: f64,
}

/// From HRC to HV and back by ASTM E140 Table 1, made ready once.
///
/// Below 20 HRC, where the scale and the table end, the last step of the table goes on in a straight line: the
/// numbers there only keep the order and the slope, and are to be shown as "below 20". Above 68 HRC the table
/// ends, and so does the formula.
#[derive(Debug)]
pub struct Scales {
    up: Route,
    down: Route,
    end_hv: f64,
    step: f64,
}

impl Scales {
    /// Makes both conversions ready.
    ///
    /// # Errors
    /// As [`Route::new`] and [`Route::number`]: the tables of steel do not hold both scales.
    pub fn new() -> Result<Self, Error> {
        let (hrc, hv) = (Axis::Hardness(Scale::Hrc), Axis::Hardness(Scale::Hv));
        let up = Route::new(hrc, hv, Choice::STEEL)?;
        let end_hv = up.number(TABLE.0)?;
        let step = up.number(TABLE.0 + 1.0)? - end_hv;
        Ok(Self { up, down: Route::new(hv, hrc, Choice::STEEL)?, end_hv, step })
    }

    /// HV of a number in HRC.
    #[must_use]
    pub fn hv(&self, hrc: f64) -> f64 {
        let (low, high) = TABLE;
        if hrc < low {
            return self.end_hv + (hrc - low) * self.step;
        }
        self.up.number(confined(hrc, low, high)).unwrap_or(f64::NAN)
    }

    /// HRC of a number in HV.
    #[must_use]
    pub fn hrc(&self, hv: f64) -> f64 {
        let (low, high) = TABLE;
        if hv < self.end_hv {
            return low + (hv - self.end_hv) / self.step;
        }
        self.down.number(hv).unwrap_or(high)
    }
}

/// The softening of one steel, with everything worked out that does not depend on the temper.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Curve {
    constant: f64,
    share: f64,
    first: (f64, f64),
    second: (f64, f64),
    delay: f64,
    soft: f64,
    /// Rise above `soft` before the temper, and what part of it would be kept of an hour at 25 °C.
    rise: f64,
    untempered: f64,
}

fn logistic(x: f64) -> f64 {
    1.0 / (1.0 + exp(-x))
}

impl Coefficients {
    /// Hardness before any temper, in HRC, from carbon in mass percent: at most 68.
    #[must_use]
    pub fn untempered(&self, carbon: f64) -> f64 {
        let rise = self.start_rise * (1.0 - exp(-carbon / self.start_carbon));
        confined(self.start + rise, TABLE.0, TABLE.1)
    }

    /// The same when hardness as quenched was measured, in HRC, with the standard deviation of that.
    ///
    /// Half of what it differs is taken over, less of a coarse measurement; nothing above 0.7 % C, where retained
    /// austenite and carbides decide.
    #[must_use]
    pub fn untempered_as_measured(&self, carbon: f64, hrc: f64, sd: f64) -> f64 {
        let start = self.untempered(carbon);
        if carbon > AS_QUENCHED_CARBON || !hrc.is_finite() || !sd.is_finite() {
            return start;
        }
        let off = confined(hrc - start, -FURTHEST, FURTHEST);
        let own = START_ERROR * START_ERROR;
        confined(start + AS_QUENCHED_SHARE * off * own / (own + sd * sd), TABLE.0, TABLE.1)
    }

    /// The curve of a steel whose hardness before any temper is `untempered` HRC.
    #[must_use]
    pub fn curve(&self, shares: &Shares, untempered: f64, scales: &Scales) -> Curve {
        let carbon = shares.carbon - MIDDLE_CARBON;
        let wanted = self.molybdenum * shares.molybdenum + self.vanadium * shares.vanadium;
        let longest = confined(self.longest_delay, 0.1, LONGEST_DELAY);
        let shift = self.carbon * carbon
            + self.silicon * shares.silicon
            + self.manganese * shares.manganese
            + self.nickel * shares.nickel
            + self.chromium * shares.chromium;
        let share = self.first_share + self.first_share_carbon * carbon;
        let first = self.first_place + self.first_silicon * shares.silicon;
        let mut curve = Curve {
            constant: self.constant,
            share: confined(share, FIRST.0, FIRST.1),
            first: (first, self.first_width),
            second: (self.second_place + shift, self.second_width),
            delay: longest * (1.0 - exp(-wanted / longest)),
            soft: self.soft,
            rise: scales.hv(untempered) - self.soft,
            untempered: 1.0,
        };
        curve.untempered = curve.kept(curve.parameter(25.0, 1.0));
        curve
    }
}

impl Curve {
    fn parameter(&self, celsius: f64, hours: f64) -> f64 {
        (celsius + ICE) * (self.constant + log10(hours)) / 1000.0
    }

    /// What two stages leave of the hardness above the soft end. Molybdenum and vanadium hold the second one up
    /// around P = 14.3; of the way that P goes they take at most 0.61 of the delay over its width, 0.99, so that the
    /// hardness never rises with P.
    fn kept(&self, parameter: f64) -> f64 {
        let from = (parameter - DELAY.0) / DELAY.1;
        let held = parameter - self.delay * exp(-0.5 * from * from);
        let stage = |at: f64, (middle, width): (f64, f64)| logistic((at - middle) / width);
        let first = stage(parameter, self.first);
        let second = stage(held, self.second);
        1.0 - self.share * first - (1.0 - self.share) * second
    }

    /// Hardness after so many hours at so many °C, in HV.
    #[must_use]
    pub fn hv(&self, celsius: f64, hours: f64) -> f64 {
        let kept = self.kept(self.parameter(celsius, hours)) / self.untempered;
        self.soft + self.rise * kept.min(1.0)
    }
}
