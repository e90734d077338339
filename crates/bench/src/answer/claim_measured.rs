//! What was measured against a claim, and what the doubt about it is made of.

use biteband_evidence::claim::{Budget, Stated, risks_of_filling};
use biteband_evidence::{Assessment, Readings, Witness};
use biteband_hardness::Axis;

use super::claim::Asked;
use super::claim_answer::{DoubtAnswer, MeasuredAnswer, RiskAnswer};
use super::claim_settle::whole_percents;
use super::frame::HRC;
use super::next_said::percent;
use super::series::K95;
use crate::words::Claim;

impl Asked<'_> {
    /// Readings that are too far from the claim to be followed on its axis, or that no table leads to it: above or below.
    pub(super) fn beyond(&self) -> Option<bool> {
        self.met.answers.iter().find_map(|answer| {
            let far = || answer.raw.iter().find_map(|&value| self.frame().is_far(value));
            answer.beyond.or_else(far)
        })
    }

    /// The same readings on a part that is uneven, where those of one tester contradict each other and nothing else does:
    /// as wide from place to place, and from reading to reading, as they came out.
    pub(super) fn unevened(&self, found: &Assessment) -> Option<Readings> {
        let groups = self.met.readings.groups();
        let group = |witness: Witness| match witness {
            Witness::Files => None,
            Witness::Group(at) | Witness::Reading { group: at, .. } => Some(at),
        };
        let of_one_tester = |one: usize, other: usize| {
            let pair = groups.get(one).zip(groups.get(other));
            one == other || pair.is_some_and(|(one, other)| one.shares_tester(other))
        };
        let clashes = found.clashes();
        let alike = clashes.iter().all(|clash| {
            let pair = group(clash.harder()).zip(group(clash.softer()));
            pair.is_some_and(|(one, other)| of_one_tester(one, other))
        });
        if clashes.is_empty() || !alike || !found.contradictions().is_empty() {
            return None;
        }
        let mut uneven = Readings::new();
        for group in groups {
            let scatter = f64::max(group.random(), spread(group.values()));
            uneven = uneven.with(group.clone().with_scatter(f64::min(scatter, 5.0)).ok()?).ok()?;
        }
        let means: Vec<f64> = groups.iter().map(|group| mean(group.values())).collect();
        let spot = f64::max(self.met.readings.spot(), spread(&means));
        uneven.with_spot(f64::min(spot, 3.0)).ok()
    }

    pub(super) fn measured(&self) -> Vec<MeasuredAnswer> {
        let work = self.frame().work();
        let answers = self.met.answers.iter().map(|answer| {
            let count: f64 = answer.raw.iter().map(|_| 1.0).sum();
            let mean = answer.raw.iter().sum::<f64>() / count;
            let (_, half) = answer.mean_and_half();
            let becomes = if answer.understood.ends_with(work.unit()) {
                String::new()
            } else {
                self.units.with_unit(work, mean)
            };
            let half = self.units.width(work, self.width(half));
            let written = answer.understood.as_str();
            let shown = match answer.beyond {
                Some(above) => Claim::ReadingBeyond { written, end: &becomes, above },
                None => Claim::Reading {
                    written,
                    becomes: &becomes,
                    half: &half,
                    assumed: answer.assumed,
                },
            };
            MeasuredAnswer {
                instrument: answer.instrument,
                understood: answer.understood.clone(),
                values: answer.raw.clone(),
                beyond: answer.beyond.map(|above| if above { "harder" } else { "softer" }),
                u_random: self.width(answer.u_random),
                u_shared: self.width(answer.u_shared),
                u_conversion: answer.u_conversion.map(|u| self.width(u)),
                assumed: answer.assumed,
                table: answer.table,
                shown: self.say(shown),
            }
        });
        answers.collect()
    }

    /// Which scales the tables join.
    pub(super) fn joined_scales(&self, scales: &[Axis], filed: bool) -> String {
        let claim = self.frame().claim();
        let mut pairs: Vec<String> = Vec::new();
        for from in scales.iter().copied().chain(filed.then_some(HRC)) {
            let pair = format!("{} → {}", from.symbol(), claim.symbol());
            if from != claim && !pairs.contains(&pair) {
                pairs.push(pair);
            }
        }
        pairs.join(", ")
    }

    pub(super) fn doubt(&self, budget: &Budget, scales: &[Axis], filed: bool) -> Vec<DoubtAnswer> {
        let shares = budget.shares();
        let joined = self.joined_scales(scales, filed);
        let work = self.frame().work();
        let answers = shares.iter().zip(whole_percents(&shares)).map(|(share, percent)| {
            let u = self.width(share.u);
            DoubtAnswer {
                source: share.source.key(),
                u,
                share: share.share,
                percent,
                text: self.say(Claim::Doubt { source: share.source, scales: &joined }),
                shown: format!("± {}", self.units.width(work, K95 * u)),
            }
        });
        answers.collect()
    }

    /// What the rule costs for a process that just fills the window.
    pub(super) fn risk(&self, budget: &Budget, stated: &Stated) -> Option<RiskAnswer> {
        let accepted = stated.guarded(self.rule.guard(budget.u()))?;
        let found = risks_of_filling(stated, &accepted, budget.u())?;
        let [bad, good] = [found.consumer, found.producer].map(percent);
        Some(RiskAnswer {
            bad_accepted: found.consumer,
            good_rejected: found.producer,
            text: self.say(Claim::Risk { bad: &bad, good: &good }),
        })
    }
}

fn mean(values: &[f64]) -> f64 {
    let count: f64 = values.iter().map(|_| 1.0).sum();
    values.iter().sum::<f64>() / count
}

/// The standard deviation of a sample; of a single number none.
fn spread(values: &[f64]) -> f64 {
    let (middle, count) = (mean(values), values.iter().map(|_| 1.0).sum::<f64>());
    let squares: f64 = values.iter().map(|value| (value - middle) * (value - middle)).sum();
    if count < 2.0 { 0.0 } else { (squares / (count - 1.0)).sqrt() }
}
