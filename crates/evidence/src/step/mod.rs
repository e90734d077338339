//! What to do next with a part: accept, measure again, temper, harden again, or want something else.
//!
//! Every act is weighed by the chance of ending inside the target if it is done and followed by the best act after it, less a price for its trouble and
//! for what cannot be undone. All prices are in chance: an act at a price of 0.3 has to raise the chance of a good part by 0.3.
//!
//! # Thresholds
//! Advice changes where two acts are worth the same, and besides only here: the file to stroke is the one that the file test calls the next; contradictory evidence is cleared up first; a part that was quenched and
//! not yet tempered is never accepted; where files that met the skin bite more than [`FAR_UNDER`] below what hardening gives, it is ground before
//! anything is tempered, unless even that is [`PROVED`] too hard; [`UNDER`] bars every temper, and below [`OVER`] a tempered part is left alone; a temper that would bring more than
//! [`LEAST_UNDER`] of new chance of a part too soft is not proposed, nor one that leaves it nearly as likely too hard as it is; a range that makes
//! the steel brittle is stepped over up to [`LEAST_UNDER_OVER`]; [`NEVER`], [`SOLD`], [`PROVED`] and [`AUSTENITE`] name what is called out of reach,
//! not hardened yet, proved, and soft from too much heat.

mod after;
mod steel;
mod weigh;

pub use after::{Softened, Softening};
pub use steel::Part;

use alloc::vec::Vec;

use biteband_steel::temper::{Predicted, Temper};
use libm::sqrt;

use crate::assess::FileTest;
use crate::belief::{Belief, normal_weight};
use crate::conditions::{Conditions, Skin};
use crate::error::Error;
use crate::interval::Level;
use crate::model::normal_below;
use crate::strokes::FileId;
use crate::target::{Odds, Target};

/// Above this chance of being under the target no temper is proposed: it only softens.
pub const UNDER: f64 = 0.5;
/// Below this chance of being over the target a part that was tempered already is not tempered again.
pub const OVER: f64 = 0.25;
/// A temper may add at most so much to the chance of being under the target.
pub const LEAST_UNDER: f64 = 0.10;
/// The same for a temper just beyond a range that makes the steel brittle: where one adds no more, none inside is proposed. More than
/// the 0.25 that a plan carries, since a plan knows nothing of a part that is softer than its grade. Ours.
pub const LEAST_UNDER_OVER: f64 = 1.0 / 3.0;
/// A hardness that is reached with less than this chance counts as out of reach.
pub const NEVER: f64 = 0.05;
/// From this chance on a part counts as proved inside, JCGM 106 with the usual 95 %.
pub const PROVED: f64 = 0.95;

/// As quenched more than so much and a standard deviation under what hardening gives, in HRC, a part of its grade did not harden,
/// or its skin is soft. Ours.
pub const FAR_UNDER: f64 = 3.0;
/// As quenched at least so much under what hardening gives, a part that was heated too hot did not harden at all, in HRC: austenite
/// that stayed costs a cold-work steel up to some twelve. Ours.
pub const AUSTENITE: f64 = 15.0;

/// The chance that a part came out as its steel and its process promise; otherwise any hardness is as likely. Ours: what went
/// wrong in a shop, went wrong in the fire, the bath or the oven, and then nobody can tell how far.
pub const AS_PLANNED: f64 = 0.85;

/// The chance that a part which is still over its target after a temper is brought in by further ones. Ours.
const AGAIN: f64 = 0.85;

/// Above so many HRC no bar is sold that is still to be made into a part: pre-hard stock has 28 to 34 HRC. Spring strip and wear
/// plate are sold harder, and not for hardening. Common practice, no source.
pub const SOLD: f64 = 40.0;

/// Whether the part can be hardened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hardening {
    /// It can, and may be.
    Open,
    /// It may not be: it is at its final size.
    AtSize,
    /// Its steel does not harden.
    Never,
}

/// What was done to the part last.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Nothing: as it was bought.
    Bought,
    /// Quenched and not tempered.
    Quenched,
    /// Tempered.
    Tempered,
}

/// What hardening the part would give, in HRC as quenched.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AsQuenched {
    /// The middle of the expectation.
    pub mean: f64,
    /// Its standard deviation.
    pub sd: f64,
}

impl AsQuenched {
    /// The chance that at least so many HRC are reached.
    #[must_use]
    pub fn reaches(&self, hrc: f64) -> f64 {
        1.0 - normal_below(hrc, self.mean, self.sd)
    }
}

/// Everything that bears on the next step.
#[derive(Clone, Copy)]
pub struct Situation<'a> {
    /// What files and instruments said.
    pub test: &'a FileTest,
    /// What is wanted.
    pub target: Target,
    /// What was done last.
    pub stage: Stage,
    /// What a further temper does, if the steel is known.
    pub softening: Option<&'a dyn Softening>,
    /// How long a temper is held, in minutes.
    pub minutes: f64,
    /// What hardening gives, if that is known.
    pub hardened: Option<AsQuenched>,
    /// What steel and process promise for today, in HRC: middle and standard deviation. It is taken to hold with a chance of
    /// [`AS_PLANNED`]; it counts where the test has no expectation of its own.
    pub expected: Option<(f64, f64)>,
    /// For a steel that is aged and not quenched: the chance that an age of its standard is as hard as wanted.
    pub ages: Option<f64>,
    /// Whether the part can be hardened.
    pub hardening: Hardening,
    /// It was heated well above its window, so that austenite may have stayed.
    pub overheated: bool,
    /// There is no time left today for a full temper.
    pub hurried: bool,
}

impl core::fmt::Debug for Situation<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Situation")
            .field("target", &self.target)
            .field("stage", &self.stage)
            .field("minutes", &self.minutes)
            .field("hardened", &self.hardened)
            .field("hardening", &self.hardening)
            .finish_non_exhaustive()
    }
}

/// An act.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Action {
    /// Take the part as it is.
    Accept,
    /// Find out which file or reading is wrong.
    ClearUp,
    /// Another stroke of this file, of this grade in HRC.
    Stroke(FileId, f64),
    /// Have it read on a tester.
    Read,
    /// Grind below the skin and file again.
    Grind,
    /// Temper.
    Temper(Temper),
    /// A short low temper tonight; the full one later.
    Snap(Temper),
    /// Harden it again from the start, then temper.
    Harden,
    /// Age it as its standard has it, in place of hardening and tempering.
    Age,
    /// Want what it has.
    ChangeTarget {
        /// Softest, in HRC.
        low: f64,
        /// Hardest, in HRC.
        high: f64,
    },
    /// Another steel, section or bath: this one does not get there.
    ChangePlan,
}

impl Action {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        match self {
            Self::Accept => "accept",
            Self::ClearUp => "clear_up",
            Self::Stroke(..) => "stroke",
            Self::Read => "read",
            Self::Grind => "grind",
            Self::Temper(_) => "temper",
            Self::Snap(_) => "snap_temper",
            Self::Harden => "harden",
            Self::Age => "age",
            Self::ChangeTarget { .. } => "change_target",
            Self::ChangePlan => "change_plan",
        }
    }

    /// The price of its trouble and of what cannot be undone, in chance. Ours; only their order is common practice.
    #[must_use]
    pub const fn price(&self) -> f64 {
        match self {
            Self::Accept => 0.0,
            Self::Stroke(..) => 0.01,
            Self::ClearUp | Self::Temper(_) | Self::Snap(_) | Self::Age => 0.02,
            Self::Grind => 0.03,
            // There is no tester in the shop: a way, a wait, and often a grinding of the spot.
            Self::Read => 0.20,
            Self::Harden => 0.30,
            Self::ChangeTarget { .. } | Self::ChangePlan => 0.50,
        }
    }
}

/// An act with what is to be expected of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// The act.
    pub action: Action,
    /// The chances of ending under, inside and over the target; of measuring: if the best act follows.
    pub odds: Odds,
    /// What it is worth: the chance of a good part in the end, less all prices.
    pub worth: f64,
    /// Whether it may be done; one that may not is shown, never proposed.
    pub open: bool,
    /// The hardness to expect after a temper.
    pub leaves: Option<Predicted>,
}

impl Choice {
    /// The chance of a good part after a temper and those that follow it where they are needed.
    #[must_use]
    pub fn with_further_tempers(&self) -> f64 {
        with_further_tempers(self.odds)
    }
}

fn with_further_tempers(odds: Odds) -> f64 {
    odds.inside() + AGAIN * odds.over()
}

/// How the part stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Diagnosis {
    /// Nothing was measured.
    Unmeasured,
    /// The evidence contradicts itself.
    Contradiction,
    /// Quenched, hard, and brittle until it is tempered.
    Untempered,
    /// Quenched and soft: it did not harden, or the skin is soft.
    NotHard,
    /// Quenched too hot and softer than its steel gets: austenite may have stayed.
    RetainedAustenite,
    /// The wanted hardness is above what the section reaches.
    OutOfReach,
    /// Harder than wanted.
    TooHard,
    /// Tempered, and softer than wanted.
    GoneTooFar,
    /// Softer than wanted, as bought.
    TooSoft,
    /// As bought, and wanted harder than it is sold: it was not hardened yet.
    NeverHardened,
    /// Proved inside.
    Proved,
    /// Inside as far as can be told, or unclear.
    Unclear,
}

impl Diagnosis {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Unmeasured => "unmeasured",
            Self::Contradiction => "contradiction",
            Self::Untempered => "untempered",
            Self::NotHard => "not_hard",
            Self::RetainedAustenite => "retained_austenite",
            Self::OutOfReach => "out_of_reach",
            Self::TooHard => "too_hard",
            Self::GoneTooFar => "gone_too_far",
            Self::TooSoft => "too_soft",
            Self::NeverHardened => "never_hardened",
            Self::Proved => "proved",
            Self::Unclear => "unclear",
        }
    }
}

/// The next step.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// How the part stands.
    pub diagnosis: Diagnosis,
    /// The chances as it is.
    pub now: Odds,
    /// Whether anything is known of its hardness, measured or expected; otherwise any is as likely.
    pub known: bool,
    /// What to do, and the other acts by their worth; those that may not be done last.
    pub choices: Vec<Choice>,
}

impl Step {
    /// What to do.
    #[must_use]
    pub fn first(&self) -> Option<&Choice> {
        self.choices.first()
    }
}

impl Situation<'_> {
    /// What steel and process promise, where the test has no expectation of its own.
    fn promised(&self) -> Option<(f64, f64)> {
        self.expected.filter(|_| self.test.prior().expected().is_none())
    }

    /// A belief from files and instruments alone, with what steel and process promise.
    fn believed(&self, belief: Belief) -> Result<Belief, Error> {
        let Some((mean, sd)) = self.promised() else { return Ok(belief) };
        let sd = sd.max(0.5);
        let flat = (1.0 - AS_PLANNED) / (belief.highest() - belief.lowest());
        let peak = AS_PLANNED / (sd * sqrt(2.0 * core::f64::consts::PI));
        belief.reweighed(|hrc| flat + peak * normal_weight(hrc, mean, sd))
    }

    fn is_measured(&self) -> bool {
        !self.test.strokes().is_empty() || !self.test.readings().is_empty()
    }

    /// Whether anything is known of its hardness: measured, or expected.
    fn is_known(&self) -> bool {
        let expected = self.expected.is_some() || self.test.prior().expected().is_some();
        self.is_measured() || expected
    }

    /// Whether the part is as bought, and wanted harder than [`SOLD`] of a steel that hardening brings there.
    fn is_to_be_hardened(&self) -> bool {
        self.stage == Stage::Bought
            && self.ages.is_none()
            && self.hardening != Hardening::Never
            && (self.hardened.zip(self.target.low()))
                .is_some_and(|(hardened, low)| low > SOLD && hardened.reaches(low) >= NEVER)
    }

    /// Whether what is wanted is above what hardening gives, or hardening gives nothing.
    fn is_out_of_reach(&self, now: Odds) -> bool {
        let unreached = match self.hardening {
            Hardening::Never => now.over() <= UNDER,
            _ => (self.hardened.zip(self.target.low()))
                .is_some_and(|(hardened, low)| hardened.reaches(low) < NEVER),
        };
        let fixed = self.hardening == Hardening::Never || self.stage != Stage::Bought;
        fixed && unreached && now.inside() < UNDER
    }
}

/// Weighs every act and puts the best first.
///
/// # Errors
/// As [`FileTest::assess`].
///
/// # Example
/// ```
/// use biteband_evidence::step::{AsQuenched, Action, Hardening, Situation, Stage, next_step};
/// use biteband_evidence::{Conditions, FileSet, FileTest, Outcome, Skin, Target};
/// // Tempered, wanted at 44 to 48 HRC, the skin ground off, and the softest file bites.
/// let set = FileSet::trade();
/// let ground = Conditions { skin: Skin::Ground, ..Default::default() };
/// let mut test = FileTest::new(set.clone()).with_conditions(ground);
/// for grade in [40.0, 40.0, 45.0] {
///     test = test.with_stroke(set.find(grade)?, Outcome::Bite)?;
/// }
/// let step = next_step(&Situation {
///     test: &test,
///     target: Target::between(44.0, 48.0)?,
///     stage: Stage::Tempered,
///     softening: None,
///     minutes: 60.0,
///     hardened: Some(AsQuenched { mean: 56.0, sd: 2.0 }),
///     expected: None,
///     ages: None,
///     hardening: Hardening::Open,
///     overheated: false,
///     hurried: false,
/// })?;
/// assert_eq!(step.first().map(|choice| choice.action), Some(Action::Harden));
/// # Ok::<(), biteband_evidence::Error>(())
/// ```
pub fn next_step(situation: &Situation<'_>) -> Result<Step, Error> {
    let test = situation.test;
    let belief = situation.believed(test.belief()?)?;
    let now = belief.odds(situation.target);
    let contradictory = situation.is_measured()
        && !(test.contradictions(Level::P95)?.is_empty() && test.clashes(Level::P95)?.is_empty());
    let diagnosis = diagnose(situation, &belief, now, contradictory)?;
    let mut choices = weigh::choices(situation, &belief, diagnosis)?;
    // The acts are weighed over a belief cut into parts; what is left as it is has the chances that it has.
    for left in choices.iter_mut().filter(|choice| choice.action == Action::Accept) {
        left.odds = now;
    }
    Ok(Step { diagnosis, now, known: situation.is_known(), choices })
}

fn diagnose(
    situation: &Situation<'_>,
    belief: &Belief,
    now: Odds,
    contradictory: bool,
) -> Result<Diagnosis, Error> {
    let under = |hrc: f64, sds: f64| {
        situation.hardened.is_some_and(|hardened| {
            belief.probability_below(hardened.mean - hrc - sds * hardened.sd) > UNDER
        })
    };
    let far_under = under(FAR_UNDER, 1.0) || soft_skin(situation)?;
    Ok(match situation.stage {
        _ if contradictory => Diagnosis::Contradiction,
        _ if situation.is_out_of_reach(now) => Diagnosis::OutOfReach,
        _ if situation.is_to_be_hardened() && (!situation.is_known() || now.under() > UNDER) => {
            Diagnosis::NeverHardened
        }
        _ if !situation.is_known() => Diagnosis::Unmeasured,
        Stage::Quenched if now.under() > UNDER || far_under => {
            if situation.overheated && !under(AUSTENITE, 0.0) {
                Diagnosis::RetainedAustenite
            } else {
                Diagnosis::NotHard
            }
        }
        Stage::Quenched => Diagnosis::Untempered,
        _ if now.inside() >= PROVED => Diagnosis::Proved,
        _ if now.over() > UNDER => Diagnosis::TooHard,
        Stage::Tempered if now.under() > UNDER => Diagnosis::GoneTooFar,
        Stage::Bought if now.under() > UNDER => Diagnosis::TooSoft,
        _ => Diagnosis::Unclear,
    })
}

/// Whether the skin may still be what the files met.
fn skin_in_doubt(situation: &Situation<'_>) -> bool {
    situation.test.conditions().skin != Skin::Ground && !situation.test.strokes().is_empty()
}

/// Whether the files, taken at their word, met something far softer than hardening gives while the skin was still on: they saw
/// the skin only, and the metal below it may be hard or not.
fn soft_skin(situation: &Situation<'_>) -> Result<bool, Error> {
    let Some(hardened) = situation.hardened else { return Ok(false) };
    if situation.stage != Stage::Quenched || !skin_in_doubt(situation) {
        return Ok(false);
    }
    let conditions = Conditions { skin: Skin::Ground, ..situation.test.conditions() };
    let met = situation.test.clone().with_conditions(conditions).belief()?;
    // What is proved too hard at its skin is too hard below it: that is no reason to grind before a temper.
    let too_hard = met.odds(situation.target).over() >= PROVED;
    Ok(!too_hard && met.probability_below(hardened.mean - FAR_UNDER - hardened.sd) > UNDER)
}
