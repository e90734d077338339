//! Ages of the 17-4 type: least hardness after an age, and the ages for a hardness.
//!
//! The table gives minima and nothing above them, and only for its own temperatures and times.

use core::fmt;

use biteband_quantity::Shown;

use super::cycle::Temper;
use crate::composition::Interval;
use crate::condition::{PhAge, ph_ages};

/// How far an oven may be off an age, in K: 10 °F, as specifications of the type allow; recalled.
const NEAR: f64 = 6.0;

/// How far a time may be off that of an age, as a share of it. Ours.
const TIME: f64 = 0.25;

/// Why an age has no hardness.
#[derive(Clone, Copy, Debug)]
pub enum AgeError {
    /// No age was given, or more steps than any has.
    NoAge {
        /// How many.
        steps: usize,
    },
    /// Not one of the ages of the table, and nothing is drawn between them: take one of the neighbours. Colder
    /// than the first there is no age: the peak is brittle and prone to stress corrosion.
    Between {
        /// As given, in °C.
        celsius: f64,
        /// The next colder age.
        below: Option<&'static PhAge>,
        /// The next hotter age.
        above: Option<&'static PhAge>,
    },
    /// An age of the table for another time than its own.
    OtherTime {
        /// The age.
        age: &'static PhAge,
        /// As given, in hours.
        given: f64,
        /// Of the table, in hours.
        hours: f64,
    },
}

impl AgeError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoAge { .. } => "age.no_age",
            Self::Between { .. } => "age.between",
            Self::OtherTime { .. } => "age.other_time",
        }
    }
}

impl fmt::Display for AgeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoAge { steps } => write!(f, "{steps} steps are no age, which has one or two"),
            Self::Between { celsius, below, above } => {
                write!(f, "{} °C is no age of the table", Shown(*celsius))?;
                for (word, age) in [("below", below), ("above", above)] {
                    if let Some(age) = age {
                        write!(f, ", the next {word} is {}", age.name())?;
                    }
                }
                Ok(())
            }
            Self::OtherTime { age, given, hours } => {
                write!(f, "{} is {} h, not {} h", age.name(), Shown(*hours), Shown(*given))
            }
        }
    }
}

impl core::error::Error for AgeError {}

/// The ages of the table, from the hardest; the mill's condition A, which is not aged, is left out.
///
/// ```
/// use biteband_steel::temper::ages;
/// assert_eq!(ages::all().map(|age| age.name()).next(), Some("H900"));
/// ```
#[must_use]
pub fn all() -> impl DoubleEndedIterator<Item = &'static PhAge> + Clone {
    ph_ages().iter().filter(|age| !age.steps().is_empty())
}

/// The age that these steps are; its least hardness is [`PhAge::hrc_min`], and there is no highest.
///
/// # Units
/// °C of the metal within 6 K of the table, hours within a quarter.
///
/// # Errors
/// [`AgeError`]: another temperature, with the ages beside it, or another time.
///
/// # Example
/// ```
/// use biteband_steel::temper::{Temper, ages};
/// let age = ages::after(&[Temper::new(580.0, 240.0)?])?;
/// assert_eq!((age.name(), age.hrc_min()), ("H1075", Some(32.0)));
/// assert!(ages::after(&[Temper::new(565.0, 240.0)?]).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn after(steps: &[Temper]) -> Result<&'static PhAge, AgeError> {
    let many = AgeError::NoAge { steps: steps.len() };
    let hot = |age: &PhAge| {
        let ages = age.steps().iter().zip(steps);
        age.steps().len() == steps.len()
            && ages.clone().all(|(known, step)| (known.0 - step.celsius()).abs() <= NEAR)
    };
    // Ages lie further apart than twice the allowance, so that at most one fits.
    if let Some(age) = all().find(|age| hot(age)) {
        let ages = age.steps().iter().zip(steps);
        let late = ages.map(|(known, step)| (known.1, step.hours()));
        return match late.into_iter().find(|(hours, given)| (given - hours).abs() > TIME * hours) {
            Some((hours, given)) => Err(AgeError::OtherTime { age, given, hours }),
            None => Ok(age),
        };
    }
    let [step] = steps else {
        let off = all().filter(|age| age.steps().len() == steps.len()).find_map(|age| {
            let mut pairs = age.steps().iter().zip(steps);
            let (known, step) =
                pairs.find(|(known, step)| (known.0 - step.celsius()).abs() > NEAR)?;
            Some((age, known.0, step.celsius()))
        });
        return Err(off.map_or(many, |(age, known, celsius)| AgeError::Between {
            celsius,
            below: (known < celsius).then_some(age),
            above: (known > celsius).then_some(age),
        }));
    };
    let celsius = step.celsius();
    let single = || {
        all().filter_map(|age| match age.steps() {
            [(at, _)] => Some((*at, age)),
            _ => None,
        })
    };
    Err(AgeError::Between {
        celsius,
        below: single().rfind(|(at, _)| *at < celsius).map(|(_, age)| age),
        above: single().find(|(at, _)| *at > celsius).map(|(_, age)| age),
    })
}

/// The ages for a hardness.
#[derive(Clone, Copy, Debug, Default)]
pub struct Ages {
    /// The softest age whose minimum lies in the target: the part is no softer than the target, but how much
    /// harder it is the table does not say.
    pub meets: Option<&'static PhAge>,
    /// The next harder age, whose minimum is above the target: harder than asked for.
    pub harder: Option<&'static PhAge>,
    /// The next softer age, whose minimum is below the target: it may come out softer than asked for.
    pub softer: Option<&'static PhAge>,
}

/// The ages whose least hardness meets a target in HRC, and those beside it.
///
/// # Example
/// ```
/// use biteband_steel::Interval;
/// use biteband_steel::temper::ages;
/// let ages = ages::for_hardness(Interval { low: 33.0, high: 37.0 });
/// assert_eq!(ages.meets.map(|age| age.name()), Some("H1025"));
/// assert_eq!(ages.harder.map(|age| age.name()), Some("H925"));
/// assert_eq!(ages.softer.map(|age| age.name()), Some("H1075"));
/// ```
#[must_use]
pub fn for_hardness(target: Interval) -> Ages {
    let known = || all().filter_map(|age| Some((age.hrc_min()?, age)));
    Ages {
        meets: known()
            .rfind(|(least, _)| target.low <= *least && *least <= target.high)
            .map(|(_, age)| age),
        harder: known().rfind(|(least, _)| *least > target.high).map(|(_, age)| age),
        softer: known().find(|(least, _)| *least < target.low).map(|(_, age)| age),
    }
}
