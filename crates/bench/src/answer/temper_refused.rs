//! Why there is no plan, and which way leads out.

use biteband_steel::temper::{Aim, How, PlanError, Predict, Temper, plan};

use super::temper::refused;
use super::temper_said::Job;
use crate::format;
use crate::refusal::Refusal;
use crate::words::{Above, TemperRefusal};

impl Job<'_> {
    /// Why a target has no plan.
    pub(super) fn no_plan(
        &self,
        target: &str,
        aim: Aim,
        how: How<'_>,
        error: &PlanError,
    ) -> Refusal {
        let target_text = format::shortened(target);
        let what = |celsius: &f64| self.speech.celsius(*celsius);
        let refuse = |what: TemperRefusal<'_>| refused(self.speech, error.code(), target, what);
        match error {
            PlanError::TooHard { most, celsius } => {
                let (taught, set) = (&self.learnt.taught, self.learnt.taught.oven_set());
                let last = Temper::new(*celsius, how.minutes).ok();
                let all: Vec<Temper> =
                    how.done.iter().copied().chain((0..how.times).filter_map(|_| last)).collect();
                let after = set.predict(&all).map(|found| self.after(&found));
                let fresh = How { done: &[], ..how };
                let above = if taught.doubted().iter().any(Option::is_some)
                    && plan(taught.tempering(), aim, how).is_ok()
                {
                    Above::Doubted
                } else if !how.done.is_empty() && plan(&set, aim, fresh).is_ok() {
                    Above::Done
                } else if aim.low <= after.as_ref().map(|after| after.high) {
                    Above::Middle
                } else {
                    Above::Steel
                };
                let quenched = self.quenched.map(Self::hrc);
                refuse(TemperRefusal::TargetAbove {
                    target: &target_text,
                    most: &Self::hrc(*most),
                    band: &after.map(|after| after.shown).unwrap_or_default(),
                    at: &what(celsius),
                    quenched: quenched.as_deref(),
                    above,
                })
            }
            PlanError::TooSoft { least, celsius } => refuse(TemperRefusal::TargetBelow {
                target: &target_text,
                least: &Self::hrc(*least),
                at: &what(celsius),
            }),
            PlanError::Unknown => refuse(TemperRefusal::Unreadable),
        }
    }
}
