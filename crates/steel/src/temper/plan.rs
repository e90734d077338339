//! From a wanted hardness to tempers: the first on the safe side, then small steps.
//!
//! Tempering only softens, so the first temper is chosen so that the part hardly comes out under the target; what it is then
//! measured at decides how many of the steps are still done.

use alloc::vec::Vec;
use core::fmt;

use biteband_quantity::{Shown, confined};

use super::cycle::Temper;
use crate::composition::Interval;

/// A hardness after tempering, in HRC.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Predicted {
    /// As likely harder as softer.
    pub median: f64,
    /// Standard deviation.
    pub sd: f64,
    /// Lower end of the band of [`LEVEL`]; not below 20, where the scale ends.
    pub low: f64,
    /// Upper end of that band.
    pub high: f64,
    /// Some of the band lies below 20 HRC.
    pub below_scale: bool,
}

/// The share of results that a band after tempering is meant to hold: the level at which it was checked.
pub const LEVEL: f64 = 0.90;
/// A band of that level ends at so many standard deviations.
pub const LEVEL_WIDTH: f64 = 1.645;
/// Below this the Rockwell C scale ends.
const SCALE_END: f64 = 20.0;

impl Predicted {
    /// A normal law.
    #[must_use]
    pub fn normal(median: f64, sd: f64) -> Self {
        Self::between(median - LEVEL_WIDTH * sd, median, median + LEVEL_WIDTH * sd)
    }

    /// A band with its middle; the wider side gives the standard deviation.
    #[must_use]
    pub fn between(low: f64, median: f64, high: f64) -> Self {
        Self {
            median: median.max(SCALE_END),
            sd: (high - median).max(median - low) / LEVEL_WIDTH,
            low: low.max(SCALE_END),
            high: high.max(SCALE_END),
            below_scale: low < SCALE_END,
        }
    }
}

/// Something that tells the hardness after tempers.
pub trait Predict {
    /// The hardness after tempers in their order; `None` outside what is known.
    fn predict(&self, tempers: &[Temper]) -> Option<Predicted>;

    /// The coldest and the hottest temper that is known and usual, in °C.
    fn range(&self) -> Interval;
}

/// What is wanted, in HRC; an open end is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Aim {
    /// Softest.
    pub low: Option<f64>,
    /// Hardest.
    pub high: Option<f64>,
}

/// One temper of a plan, and what is to be expected after it and all before it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanStep {
    /// The temper.
    pub temper: Temper,
    /// How many times.
    pub times: u8,
    /// The hardness afterwards.
    pub expect: Predicted,
}

/// A plan: do the first temper, measure, and go on only while the part is still too hard.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The tempers, the mildest first.
    pub steps: Vec<PlanStep>,
    /// From one step to the next, in K.
    pub step: f64,
    /// How much the hardness falls there for every 10 K, in HRC.
    pub fall: f64,
    /// The first temper is the mildest there is, and may still be too much or not enough.
    pub at_the_end: bool,
    /// The last temper is as hot as is known, and may leave more than is wanted.
    pub ends: bool,
}

/// A first temper may carry a chance of 0.05 of coming out under the target, which lies below so many standard deviations:
/// one end of a band of 90 %.
const RISK_WIDTH: f64 = LEVEL_WIDTH;
/// The first temper leaves the part at least so many standard deviations above the upper limit, as likely as not still too
/// hard: too soft is not mended. Ours; that one begins low and creeps up is common practice.
const ABOVE: f64 = 0.5;
/// To step over a brittle range a first temper may carry more, a chance of 0.25.
const RISK_OVER: f64 = 0.674;
/// Ovens are set in such steps, in K.
const NOTCH: f64 = 5.0;
/// Smallest and largest step of a plan, in K; common practice, no source.
const STEPS: (f64, f64) = (10.0, 25.0);
/// More steps than this are not printed.
const MOST: usize = 6;
/// A target with one limit is taken to be so wide, in HRC.
const OPEN: f64 = 4.0;
/// Steps are never finer than for a target of so many HRC.
const NARROW: f64 = 1.0;

/// Why there is no plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum PlanError {
    /// The target lies above what the mildest temper leaves.
    TooHard {
        /// What it leaves, in HRC.
        most: f64,
        /// That temper, in °C.
        celsius: f64,
    },
    /// The target lies below what the hottest temper leaves.
    TooSoft {
        /// What it leaves, in HRC.
        least: f64,
        /// That temper, in °C.
        celsius: f64,
    },
    /// Nothing is known at all.
    Unknown,
}

impl PlanError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::TooHard { .. } => "temper.target_above",
            Self::TooSoft { .. } => "temper.target_below",
            Self::Unknown => "temper.unknown",
        }
    }
}

impl fmt::Display for PlanError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::TooHard { most, celsius } => {
                write!(f, "{} °C already leaves no more than {} HRC", Shown(celsius), Shown(most))
            }
            Self::TooSoft { least, celsius } => {
                write!(f, "even {} °C leaves {} HRC", Shown(celsius), Shown(least))
            }
            Self::Unknown => f.write_str("nothing is known of this temper"),
        }
    }
}

impl core::error::Error for PlanError {}

/// How the tempers are done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct How<'a> {
    /// What the part has had already.
    pub done: &'a [Temper],
    /// Time at heat of each temper, in minutes.
    pub minutes: f64,
    /// How many times each is done.
    pub times: u8,
    /// A range in °C that is stepped over where the target allows it, because it makes the steel brittle.
    pub over: Option<Interval>,
}

/// Makes a plan.
///
/// # Errors
/// [`PlanError`]: the target lies above or below everything that tempering leaves.
///
/// # Example
/// ```
/// use biteband_steel::Interval;
/// use biteband_steel::temper::{Aim, How, Predict, Predicted, Temper, plan};
/// // A made-up steel that falls by half an HRC for every 10 °C.
/// struct Straight;
/// impl Predict for Straight {
///     fn predict(&self, tempers: &[Temper]) -> Option<Predicted> {
///         let hottest = tempers.iter().map(|one| one.celsius()).reduce(f64::max)?;
///         Some(Predicted::normal(62.0 - 0.05 * (hottest - 150.0), 1.0))
///     }
///     fn range(&self) -> Interval {
///         Interval { low: 150.0, high: 650.0 }
///     }
/// }
/// let aim = Aim { low: Some(48.0), high: Some(52.0) };
/// let how = How { done: &[], minutes: 60.0, times: 1, over: None };
/// let plan = plan(&Straight, aim, how).unwrap();
/// // 52.5 HRC lies at 340 °C: half a standard deviation above the upper limit, and not hotter at first.
/// assert!((plan.steps[0].temper.celsius() - 340.0).abs() < 1e-9);
/// assert!((plan.fall - 0.5).abs() < 1e-9);
/// ```
pub fn plan(steel: &dyn Predict, aim: Aim, how: How<'_>) -> Result<Plan, PlanError> {
    let How { done, minutes, times, over } = how;
    let range = steel.range();
    let after = |so_far: &[Temper], celsius: f64| -> Option<(Temper, Predicted)> {
        let temper = Temper::new(celsius, minutes).ok()?;
        // What is not known of one temper is not planned for two of them, which by their time count as a hotter one.
        if times > 1 {
            steel.predict(&[temper])?;
        }
        let all: Vec<Temper> = so_far.iter().copied().chain((0..times).map(|_| temper)).collect();
        Some((temper, steel.predict(&all)?))
    };
    let first_notch = libm::ceil(range.low / NOTCH) * NOTCH;
    let mut known = Vec::new();
    let mut celsius = first_notch;
    while celsius <= range.high + 1e-9 {
        known.extend(after(done, celsius));
        celsius += NOTCH;
    }
    let (Some(&(coldest, mildest)), Some(&(hottest, _))) = (known.first(), known.last()) else {
        return Err(PlanError::Unknown);
    };
    let Limits { low, high, middle, width } = Limits::of(aim);
    let safe = |found: &Predicted| {
        found.median >= high + ABOVE * found.sd
            && found.median - RISK_WIDTH * found.sd >= low.unwrap_or(f64::MIN)
    };
    let unsafe_at = known.iter().position(|(_, found)| !safe(found));
    let (index, at_the_end) = match unsafe_at {
        // Even the mildest is not safe: it is the plan if it leaves the target at all.
        Some(0) if low.is_some_and(|low| mildest.median < low) => {
            return Err(PlanError::TooHard { most: mildest.median, celsius: coldest.celsius() });
        }
        Some(0) => (0, true),
        Some(index) => (index - 1, false),
        // No temper is hot enough for the step over the upper limit.
        None => {
            let least = known.iter().map(|(_, found)| found.median).fold(f64::MAX, f64::min);
            if least > high + 1e-9 {
                return Err(PlanError::TooSoft { least, celsius: hottest.celsius() });
            }
            (known.len() - 1, true)
        }
    };
    let inside =
        |celsius: f64| over.is_some_and(|over| celsius >= over.low && celsius <= over.high);
    let beyond = |found: &Predicted| found.median - RISK_OVER * found.sd >= low.unwrap_or(f64::MIN);
    let start = known.get(index).map_or(range.low, |(temper, _)| temper.celsius());
    let stepped = known.iter().position(|(temper, found)| {
        temper.celsius() > start && !inside(temper.celsius()) && beyond(found)
    });
    let index = stepped.filter(|_| inside(start)).unwrap_or(index);
    let Some(&(first, expect)) = known.get(index) else { return Err(PlanError::Unknown) };
    let fall = slope(&known, index);
    let step = confined(0.5 * width.max(NARROW) / fall.max(1e-3) * 10.0, STEPS.0, STEPS.1);
    let step = libm::floor(step / NOTCH) * NOTCH;
    let mut steps = Vec::from([PlanStep { temper: first, times, expect }]);
    let mut so_far: Vec<Temper> = done.to_vec();
    let mut last = PlanStep { temper: first, times, expect };
    let mut ends = false;
    while steps.len() < MOST && last.expect.median > middle {
        so_far.extend((0..times).map(|_| last.temper));
        let next = after(&so_far, last.temper.celsius() + step)
            .filter(|(temper, _)| temper.celsius() <= range.high + 1e-9);
        // A step that would land under the target is not one.
        let Some((temper, expect)) = next else {
            ends = true;
            break;
        };
        if low.is_some_and(|low| expect.median < low) {
            break;
        }
        last = PlanStep { temper, times, expect };
        steps.push(last);
    }
    Ok(Plan { steps, step, fall, at_the_end, ends })
}

struct Limits {
    low: Option<f64>,
    high: f64,
    middle: f64,
    width: f64,
}

impl Limits {
    fn of(aim: Aim) -> Self {
        match (aim.low, aim.high) {
            (Some(low), Some(high)) => {
                Self { low: Some(low), high, middle: f64::midpoint(low, high), width: high - low }
            }
            // At least so hard: anything from there on is good, and the safe side is all that is asked.
            // Every step comes nearer to too soft, so that the steps are the finest.
            (Some(low), None) => {
                Self { low: Some(low), high: low, middle: low + OPEN, width: NARROW }
            }
            (None, Some(high)) => Self { low: None, high, middle: high - 0.5 * OPEN, width: OPEN },
            (None, None) => Self { low: None, high: f64::MAX, middle: f64::MAX, width: NARROW },
        }
    }
}

/// The fall for every 10 K about a place of the list, in HRC.
fn slope(known: &[(Temper, Predicted)], index: usize) -> f64 {
    let from = known.get(index.saturating_sub(2));
    let to = known.get((index + 2).min(known.len().saturating_sub(1)));
    match (from, to) {
        (Some((cold, hard)), Some((hot, soft))) if hot.celsius() > cold.celsius() => {
            10.0 * (hard.median - soft.median) / (hot.celsius() - cold.celsius())
        }
        _ => 0.0,
    }
}
