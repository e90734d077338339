//! How likely another measurement ends the doubt, before it is made.

use libm::sqrt;

use super::{Estimate, Rule, Stated, Verdict, normal_quantile};
use crate::assess::FileTest;
use crate::belief::{Belief, normal_weight};
use crate::error::Error;
use crate::model::Outcome;
use crate::strokes::FileId;

/// Parts of equal chance into which a law is cut.
const PARTS: u32 = 24;
/// Parts of the error of a reading.
const ERRORS: u32 = 8;

/// The middles of parts of equal chance.
fn middles(count: u32) -> impl Iterator<Item = f64> {
    (0..count).map(move |part| (f64::from(part) + 0.5) / f64::from(count))
}

/// The chance that a reading of its own, which shares no error with what is known, leads to a verdict.
///
/// # Units
/// `u`, the standard uncertainty of the reading, in the unit of the belief.
///
/// # Errors
/// [`Error::NothingLeft`] if a reading could exclude all that is known.
pub fn settled_by_reading(
    stated: &Stated,
    rule: Rule,
    belief: &Belief,
    u: f64,
) -> Result<f64, Error> {
    let mut settled = 0_u32;
    for chance in middles(PARTS) {
        let value = belief.quantile(chance);
        for error in middles(ERRORS) {
            let reading = value + u * normal_quantile(error);
            let then = belief.reweighed(|hrc| normal_weight(hrc, reading, u))?;
            if rule.judge_belief(stated, &then) != Verdict::NotProved {
                settled += 1;
            }
        }
    }
    Ok(f64::from(settled) / f64::from(PARTS * ERRORS))
}

/// The chance that more evidence of the same kind leads to a verdict: it brings the standard uncertainty down to
/// `then`, and the estimate moves by what the doubt loses.
///
/// # Source
/// The law of total variance: the estimate to come is normal about that of today with the variance `u^2 - then^2`.
#[must_use]
pub fn settled_by_better(stated: &Stated, rule: Rule, now: Estimate, then: f64) -> f64 {
    let moves = sqrt(f64::max(now.u * now.u - then * then, 0.0));
    let mut settled = 0_u32;
    for chance in middles(PARTS * ERRORS) {
        let to_come = Estimate { value: now.value + moves * normal_quantile(chance), u: then };
        if rule.judge_normal(stated, to_come) != Verdict::NotProved {
            settled += 1;
        }
    }
    f64::from(settled) / f64::from(PARTS * ERRORS)
}

/// The chance that one more stroke of a file leads to a verdict.
///
/// # Errors
/// As [`FileTest::with_stroke`] and [`FileTest::belief`].
pub fn settled_by_stroke(
    stated: &Stated,
    rule: Rule,
    test: &FileTest,
    file: FileId,
) -> Result<f64, Error> {
    let advice = test.advice(None)?;
    let trial = advice.trials().iter().find(|trial| trial.file() == file);
    let Some(trial) = trial else { return Ok(0.0) };
    let mut settled = 0.0;
    for outcome in Outcome::ALL {
        let chance = trial.chances().of(outcome);
        // Among yes or no answers there is no slight one.
        if chance <= 0.0 {
            continue;
        }
        let then = test.clone().with_stroke(file, outcome)?.belief()?;
        if rule.judge_belief(stated, &then) != Verdict::NotProved {
            settled += chance;
        }
    }
    Ok(settled)
}
