//! The way back: from a hardness to the tempers that the printed curves give it.

use alloc::vec::Vec;
use core::iter::successors;

use super::cycle::Temper;
use super::sheets::{SheetBand, Sheets};
use super::sheets_error::SheetError;
use crate::composition::Interval;
use crate::keyed::keyed;

/// Distance of the temperatures that are looked at, in K: the steepest sheet falls by 0.2 HRC over it, and no oven
/// of the shop holds it.
const STEP: f64 = 0.5;

/// Stretches that are nearer than this are one, in K; where a sheet begins or ends the middle makes a step.
const JOIN: f64 = 10.0;

/// Any temperature of a temper, in °C.
const SOME_HEAT: f64 = 200.0;

keyed! {
    /// Where a temperature lies beside the peak of secondary hardening.
    Side {
        /// Colder.
        Before = "before",
        /// At the peak, or between the peaks of two sheets.
        At = "at",
        /// Hotter.
        After = "after",
    }
}

/// A way to temper to a hardness.
#[derive(Clone, Debug)]
pub struct Setting {
    /// Temper at, in °C: where the middle of the band is nearest to the middle of the target.
    pub celsius: f64,
    /// From where to where the middle of the band lies in the target, in °C.
    pub range: Interval,
    /// Beside the peak; `None` without one.
    pub side: Option<Side>,
    /// Whether the grade is usually tempered there.
    pub usual: bool,
    /// What the sheets say there.
    pub band: SheetBand,
}

/// Temperatures in °C, and the middle of the band there.
type Run = Vec<(f64, f64)>;

impl Sheets {
    /// The temperatures at which so many minutes at heat, all tempers together, bring the middle of the band into
    /// a hardness: from the coldest; more than one with secondary hardening.
    ///
    /// # Units
    /// Target in HRC, minutes at heat; °C.
    ///
    /// # Errors
    /// [`SheetError::Temper`]: no time of a temper. [`SheetError::NeverThat`]: no temper of that length comes to the
    /// target, with what they come to. [`SheetError::Between`]: it falls where no sheet speaks.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::{Grade, Interval};
    /// use biteband_steel::temper::{Sheets, Side};
    /// let h13 = Sheets::of(Grade::by_key("H13").unwrap()).unwrap();
    /// let ways = h13.celsius_for(Interval { low: 46.0, high: 48.0 }, 240.0)?;
    /// let last = ways.last().unwrap();
    /// assert_eq!((last.side, last.usual), (Some(Side::After), true));
    /// assert!(last.celsius > 570.0 && last.celsius < 605.0);
    /// # Ok::<(), biteband_steel::temper::SheetError>(())
    /// ```
    pub fn celsius_for(&self, target: Interval, minutes: f64) -> Result<Vec<Setting>, SheetError> {
        // The bounds of the time alone are asked for.
        Temper::new(SOME_HEAT, minutes)?;
        let (ends, peak) = (self.ends(minutes), self.peak(minutes));
        let grid =
            successors(Some(ends.low), |at| (*at < ends.high).then(|| (at + STEP).min(ends.high)));
        let (mut softest, mut hardest) = (f64::INFINITY, f64::NEG_INFINITY);
        let mut runs: Vec<Run> = Vec::new();
        let (mut last, mut silent): (Option<(f64, f64)>, bool) = (None, false);
        let mut gap = None;
        for celsius in grid {
            let Ok(band) = self.at(celsius, minutes) else {
                silent = true;
                continue;
            };
            let here = (celsius, band.mid);
            (softest, hardest) = (softest.min(band.mid), hardest.max(band.mid));
            let off = |at: &(f64, f64)| at.1 - target.middle();
            if target.low <= band.mid && band.mid <= target.high {
                note(&mut runs, here);
            } else if let Some(before) = last
                && off(&before) * off(&here) < 0.0
                && !(target.low <= before.1 && before.1 <= target.high)
            {
                if silent {
                    gap = Some(SheetError::Between {
                        target,
                        celsius: Interval { low: before.0, high: celsius },
                        hrc: (before.1, band.mid),
                    });
                } else {
                    // The curve passes a narrow target between two places.
                    let nearer = off(&before).abs() < off(&here).abs();
                    note(&mut runs, if nearer { before } else { here });
                }
            }
            (last, silent) = (Some(here), false);
        }
        // A hardness near the peak is met on both sides of it, and the cold one is not the usual one.
        let cold = |celsius: f64| peak.is_some_and(|peak| celsius < peak.low);
        let ways: Vec<Setting> = runs
            .iter()
            .flat_map(|run| run.chunk_by(|a, b| cold(a.0) == cold(b.0)))
            .filter_map(|run| self.setting(run, target, minutes))
            .collect();
        if ways.is_empty() {
            let never = SheetError::NeverThat { target, softest, hardest, ends, minutes };
            return Err(gap.unwrap_or(never));
        }
        Ok(ways)
    }

    fn setting(&self, run: &[(f64, f64)], target: Interval, minutes: f64) -> Option<Setting> {
        let off = |at: &(f64, f64)| (at.1 - target.middle()).abs();
        let best = run.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?.0;
        let side = self.peak(minutes).map(|peak| {
            if best < peak.low {
                Side::Before
            } else if best > peak.high {
                Side::After
            } else {
                Side::At
            }
        });
        Some(Setting {
            celsius: best,
            range: Interval { low: run.first()?.0, high: run.last()?.0 },
            side,
            usual: self.usual.is_some_and(|usual| usual.low <= best && best <= usual.high),
            band: self.at(best, minutes).ok()?,
        })
    }
}

fn note(runs: &mut Vec<Run>, here: (f64, f64)) {
    let near = |run: &&mut Run| run.last().is_some_and(|end| here.0 - end.0 <= JOIN);
    match runs.last_mut().filter(near) {
        Some(run) => run.push(here),
        None => runs.push(alloc::vec![here]),
    }
}
