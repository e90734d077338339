//! The worth of each act.

use alloc::vec::Vec;

use biteband_quantity::{confined, sort_by_number};
use biteband_steel::temper::Temper;
use libm::{exp, floor};

use super::after::{Parts, Softening, mixed, odds};
use super::{
    AGAIN, Action, Choice, Diagnosis, Hardening, LEAST_UNDER, LEAST_UNDER_OVER, OVER, Situation,
    Stage, UNDER, skin_in_doubt, soft_skin, with_further_tempers,
};
use crate::belief::Belief;
use crate::error::Error;
use crate::interval::Level;
use crate::model::Outcome;
use crate::next::Trial;
use crate::target::Odds;

/// The chance that a soft answer of a file is the skin alone, when the skin was not ground. Ours: about a third of the
/// soft parts that are reported were a matter of skin; common practice, no source.
const SKIN: f64 = 0.35;
/// Standard uncertainty of a reading on a tester that is not checked every week, in HRC.
const READING: f64 = 0.8;
/// What is taken for the chance that hardening succeeds when nothing is known of steel and section. Ours.
const UNKNOWN_REACH: f64 = 0.5;
/// The coldest temper that relieves a quenched part, in °C; common practice, no source.
const RELIEF: f64 = 150.0;
/// A short low temper that carries a part over the night: °C and minutes; common practice, no source.
const SNAP: (f64, f64) = (150.0, 60.0);
/// What every HRC costs that is still to be taken off by further tempers, in chance: each is another evening. Ours.
const FAR: f64 = 0.04;
/// What a temper in a range that makes the steel brittle costs besides, in chance. Ours.
const BRITTLE: f64 = 0.10;
/// A further temper has to bring the chance of being too hard below this share of today's. Ours.
const PROGRESS: f64 = 0.85;
/// Tempers are tried in such steps, in °C, then in the finer ones an oven can be set to.
const COARSE: f64 = 20.0;
const FINE: f64 = 5.0;
/// Where what comes after a measurement is weighed, the bars of a temper open over so much chance on either side: a bar that
/// fell at once would make the worth of the measurement jump at a hair of evidence. Ours.
const LEEWAY: f64 = 0.05;

/// A belief cut into parts, and what to weigh them by.
struct Known<'a> {
    parts: &'a Parts,
    weights: Vec<f64>,
}

/// Every act that bears on the diagnosis, the best first.
pub(super) fn choices(
    situation: &Situation<'_>,
    belief: &Belief,
    diagnosis: Diagnosis,
) -> Result<Vec<Choice>, Error> {
    let parts = Parts::of(belief);
    let skin = soft_skin(situation)?;
    let even = Known { parts: &parts, weights: parts.values().iter().map(|_| 1.0).collect() };
    let settled = situation.settle(&even);
    let known = situation.is_known();
    let mut all: Vec<Choice> = Vec::new();

    let contradictory = diagnosis == Diagnosis::Contradiction;
    if contradictory {
        let look = situation.look(&even, READING);
        all.push(choice(Action::ClearUp, look, true));
    }
    if known {
        // What was not met yet is not tempered.
        let direct = situation.direct(&even, 0.0).into_iter();
        all.extend(direct.filter(|one| !(skin && matches!(one.action, Action::Temper(_)))));
    }
    if diagnosis == Diagnosis::NeverHardened && !known {
        all.push(situation.harden(even.now(situation)));
    }
    if !contradictory {
        all.extend(situation.stroke(&settled)?);
    }
    all.push(choice(Action::Read, situation.look(&even, READING), true));
    if skin || skin_in_doubt(situation) && even.now(situation).under() > UNDER * UNDER {
        all.push(situation.grind(&settled));
    }
    if diagnosis == Diagnosis::OutOfReach {
        let odds = Odds::new(0.0, 1.0, 0.0);
        all.push(choice(Action::ChangePlan, (1.0, odds), true));
    }
    if known && !contradictory && situation.stage != Stage::Quenched {
        let band = belief.shortest(Level::P95);
        let action = Action::ChangeTarget { low: band.low(), high: band.high() };
        all.push(choice(action, (0.95, Odds::new(0.025, 0.95, 0.025)), true));
    }
    // The best first; what may not be done goes last, contradictions and what cannot be reached go before all.
    sort_by_number(&mut all, |one| {
        let rank = match one.action {
            Action::ClearUp => -20.0,
            Action::ChangePlan => -10.0,
            Action::Grind if skin => -8.0,
            Action::Snap(_) if situation.hurried => -5.0,
            _ if !one.open => 10.0,
            _ => 0.0,
        };
        rank - one.worth
    });
    Ok(all)
}

fn choice(action: Action, (worth, odds): (f64, Odds), open: bool) -> Choice {
    Choice { action, odds, worth: worth - action.price(), open, leaves: None }
}

impl Known<'_> {
    fn now(&self, situation: &Situation<'_>) -> Odds {
        self.parts.now(situation.target, &self.weights)
    }
}

impl Situation<'_> {
    /// The acts that end the matter, without measuring first.
    fn direct(&self, known: &Known<'_>, leeway: f64) -> Vec<Choice> {
        let mut all = Vec::new();
        let now = known.now(self);
        // Quenched steel is brittle until it is tempered.
        let may_stay = self.stage != Stage::Quenched;
        all.push(choice(Action::Accept, (now.inside(), now), may_stay));
        all.extend(self.temper(known, now, leeway));
        if self.stage == Stage::Quenched && now.under() <= UNDER && self.hurried {
            let (celsius, minutes) = SNAP;
            let snap = Temper::new(celsius, minutes).ok();
            all.extend(snap.map(|temper| choice(Action::Snap(temper), (now.inside(), now), true)));
        }
        if self.hardening != Hardening::Never {
            all.push(self.harden(now));
        }
        all
    }

    /// What the best of those is worth, and how it ends.
    fn settle(&self, known: &Known<'_>) -> (f64, Odds) {
        let now = known.now(self);
        let all = self.direct(known, LEEWAY).into_iter().filter(|one| one.open).map(|one| {
            if !matches!(one.action, Action::Temper(_)) {
                return (one.worth, one.odds);
            }
            let share = self.share(now);
            let worth = share * one.worth + (1.0 - share) * now.inside();
            (worth, mixed(&[(share, one.odds), (1.0 - share, now)]))
        });
        let best = all.reduce(|best, one| if one.0 > best.0 { one } else { best });
        best.unwrap_or((0.0, now))
    }

    /// How far the bars of a temper are open, from 0 to 1.
    fn share(&self, now: Odds) -> f64 {
        let hard = match self.stage {
            Stage::Tempered => opened(now.over() - OVER, LEEWAY),
            _ => 1.0,
        };
        hard * opened(UNDER - now.under(), LEEWAY)
    }

    /// The best temper, if one may be proposed.
    fn temper(&self, known: &Known<'_>, now: Odds, leeway: f64) -> Option<Choice> {
        let softening = self.softening?;
        let left_alone = self.stage == Stage::Tempered && now.over() < OVER - leeway;
        if self.stage == Stage::Bought || now.under() > UNDER + leeway || left_alone {
            return None;
        }
        let (coldest, hottest) = softening.range();
        let coldest = coldest.max(RELIEF);
        let best = |range, step, leeway| self.best_temper(known, now, range, step, leeway);
        let rough = best((coldest, hottest), COARSE, leeway);
        let found = rough.and_then(|rough| {
            let Action::Temper(temper) = rough.action else { return None };
            let low = (temper.celsius() - COARSE + FINE).max(coldest);
            best((low, (temper.celsius() + COARSE - FINE).min(hottest)), FINE, leeway)
        });
        let Some(brittle) = softening.brittle() else { return found };
        // The range is stepped over wherever a temper just beyond it may be proposed, whatever a milder one inside is worth.
        let past = FINE * (floor(brittle.1 / FINE) + 1.0);
        let beyond = best((past.max(coldest), (brittle.1 + COARSE).min(hottest)), FINE, 0.0);
        let clear = found.filter(|one| {
            !matches!(one.action, Action::Temper(temper) if within(brittle, temper.celsius()))
        });
        match (clear, beyond) {
            (Some(clear), Some(beyond)) if clear.worth >= beyond.worth => Some(clear),
            (clear, beyond) => beyond.or(clear).or(found),
        }
    }

    /// The best temper between two temperatures, the hottest among them; of two as good the milder one.
    fn best_temper(
        &self,
        known: &Known<'_>,
        now: Odds,
        (coldest, hottest): (f64, f64),
        step: f64,
        leeway: f64,
    ) -> Option<Choice> {
        let mut best: Option<Choice> = None;
        let mut next = (coldest <= hottest).then_some(coldest);
        while let Some(celsius) = next {
            if let Some(one) = self.tempered(known, now, celsius, leeway)
                && best.is_none_or(|best| one.worth > best.worth + 1e-9)
            {
                best = Some(one);
            }
            next = (celsius < hottest).then(|| (celsius + step).min(hottest));
        }
        best
    }

    /// A temper at so many °C, unless it would make the part too soft.
    fn tempered(&self, known: &Known<'_>, now: Odds, celsius: f64, leeway: f64) -> Option<Choice> {
        let temper = Temper::new(celsius, self.minutes).ok()?;
        let softened = self.softening?.after(temper)?;
        let (odds, above, leaves) = known.parts.after(self.target, &known.weights, &softened);
        let middle = softened.mean + softened.kept * (known.parts.median() - softened.from);
        let first = self.stage == Stage::Quenched && celsius <= RELIEF + FINE;
        let brittle = self.softening.and_then(Softening::brittle);
        // Stepping over a brittle range is worth a larger risk.
        let beyond = brittle.is_some_and(|(_, high)| celsius > high && celsius <= high + COARSE);
        let most = if beyond { LEAST_UNDER_OVER } else { LEAST_UNDER };
        let low = self.target.low().unwrap_or(f64::MIN);
        let mild = if first {
            1.0
        } else {
            opened(most - odds.under() + now.under(), leeway) * opened(middle - low, 10.0 * leeway)
        };
        // A temper that leaves the part as it is would be advised for the sake of the next one.
        let share = match self.stage {
            Stage::Tempered => mild * opened(PROGRESS * now.over() - odds.over(), leeway),
            _ => mild,
        };
        if share <= 0.0 {
            return None;
        }
        let brittle = brittle.is_some_and(|range| within(range, celsius));
        let worth = with_further_tempers(odds) - FAR * above - if brittle { BRITTLE } else { 0.0 };
        let worth = share * worth + (1.0 - share) * now.inside();
        let odds = mixed(&[(share, odds), (1.0 - share, now)]);
        // Of a part that nobody measured the band is that of the plan: the chance that it went otherwise is in the odds.
        let planned = self.promised().filter(|_| !self.is_measured());
        let leaves = Some(planned.map_or(leaves, |planned| softened.leaves(planned)));
        Some(Choice { leaves, ..choice(Action::Temper(temper), (worth, odds), true) })
    }

    /// Hardening from the start, or ageing for a steel that is aged.
    fn harden(&self, now: Odds) -> Choice {
        let reach = match (self.ages, self.hardened, self.target.low()) {
            (Some(reach), ..) => reach,
            (None, Some(hardened), Some(low)) => hardened.reaches(low),
            (None, _, None) => 1.0,
            (None, None, _) => UNKNOWN_REACH,
        };
        let inside = reach * AGAIN;
        let odds = odds([1.0 - reach, inside, reach - inside]);
        let (action, open) = if self.ages.is_some() {
            // What was aged hotter does not get harder by an age.
            (Action::Age, self.stage != Stage::Tempered || now.over() > OVER)
        } else {
            let bought = self.stage == Stage::Bought && !self.is_to_be_hardened();
            (Action::Harden, self.hardening == Hardening::Open && !bought)
        };
        choice(action, (inside, odds), open)
    }

    /// Grinding below the skin: with the chance that the skin was all, the part is as hard as hardening makes it.
    fn grind(&self, settled: &(f64, Odds)) -> Choice {
        let reach = (self.hardened.zip(self.target.low()))
            .map_or(UNKNOWN_REACH, |(hardened, low)| hardened.reaches(low));
        let good = (reach * AGAIN, odds([1.0 - reach, reach * AGAIN, reach * (1.0 - AGAIN)]));
        let worth = SKIN * good.0 + (1.0 - SKIN) * settled.0;
        choice(Action::Grind, (worth, mixed(&[(SKIN, good.1), (1.0 - SKIN, settled.1)])), true)
    }

    /// The best stroke, weighed by what each of its outcomes would lead to.
    fn stroke(&self, settled: &(f64, Odds)) -> Result<Option<Choice>, Error> {
        let advice = self.test.advice(Some(self.target))?;
        let Some(trial) = advice.best() else { return Ok(None) };
        let action = Action::Stroke(trial.file(), trial.grade());
        if !self.is_measured() {
            // Nothing is known yet: what the first stroke leads to is not worth working out.
            return Ok(Some(choice(action, (settled.0.max(UNDER), settled.1), true)));
        }
        let mut ends = Vec::new();
        let mut worth = 0.0;
        for (outcome, chance) in outcomes(trial) {
            if chance < 0.01 {
                continue;
            }
            let test = self.test.clone().with_stroke(trial.file(), outcome)?;
            let belief = self.believed(test.belief()?)?;
            let parts = Parts::of(&belief);
            let weights = parts.values().iter().map(|_| 1.0).collect();
            let (value, odds) = self.settle(&Known { parts: &parts, weights });
            worth += chance * value;
            ends.push((chance, odds));
        }
        let whole: f64 = ends.iter().map(|(chance, _)| chance).sum();
        Ok(Some(choice(action, (worth / whole.max(1e-12), mixed(&ends)), true)))
    }

    /// A reading with this standard uncertainty, weighed at points over the belief.
    fn look(&self, known: &Known<'_>, sd: f64) -> (f64, Odds) {
        let values = known.parts.values();
        let seen: Vec<f64> = values.iter().copied().skip(3).step_by(7).collect();
        let mut ends = Vec::new();
        let mut worth = 0.0;
        for reading in &seen {
            let weights = values
                .iter()
                .map(|hrc| {
                    let z = (hrc - reading) / sd;
                    exp(-0.5 * z * z)
                })
                .collect();
            let (value, odds) = self.settle(&Known { parts: known.parts, weights });
            worth += value;
            ends.push((1.0, odds));
        }
        #[expect(clippy::cast_precision_loss, reason = "a handful of points")]
        let count = seen.len().max(1) as f64;
        (worth / count, mixed(&ends))
    }
}

/// How far a bar is open that is passed by so much, from 0 to 1: with no leeway all or nothing.
fn opened(past: f64, leeway: f64) -> f64 {
    if leeway > 0.0 {
        confined(0.5 + 0.5 * past / leeway, 0.0, 1.0)
    } else {
        f64::from(u8::from(past >= 0.0))
    }
}

fn within((low, high): (f64, f64), celsius: f64) -> bool {
    celsius >= low && celsius <= high
}

fn outcomes(trial: &Trial) -> [(Outcome, f64); 3] {
    let chances = trial.chances();
    [Outcome::Bite, Outcome::Slight, Outcome::Skate].map(|outcome| (outcome, chances.of(outcome)))
}
