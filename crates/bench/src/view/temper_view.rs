//! What the page of the temper planner shows.

use super::temper_curve::CurveView;
use super::{Chip, Problem};
use crate::state::{Field, PartStage};
use crate::words::TemperPage;

/// Everything the page shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TemperView {
    /// The steel is given by its composition.
    pub by_composition: bool,
    /// What the name stands for.
    pub understood: Vec<String>,
    /// Steels that one name may mean: key, label, whether it is taken.
    pub candidates: Vec<(String, String, bool)>,
    /// Names like what was typed.
    pub suggestions: Vec<String>,
    /// The hardness that is wanted in the file test: label and what a tap takes; only while none is given here.
    pub offered: Option<(String, String)>,
    /// Time at heat for a timer, as typed or as usual.
    pub held: String,
    /// Section and oven, as the page Steel has them.
    pub given: Vec<String>,
    /// What was done to the part last.
    pub stages: Vec<(PartStage, Chip)>,
    /// The tempers so far are asked for.
    pub tempered: bool,
    /// No time is left today.
    pub hurried: Chip,
    /// What to do next while something is missing.
    pub hint: String,
    /// Problems of fields.
    pub problems: Vec<(Field, Problem)>,
    /// Why there is no plan, or nothing at all.
    pub problem: Option<Problem>,
    /// The plan.
    pub plan: Option<PlanView>,
    /// What the temper that was looked up leaves.
    pub looked: Option<LookedView>,
    /// Own results, those of other steels among them.
    pub results: Vec<ResultRow>,
    /// Whether they are left out; only where there is one of this steel.
    pub book: Option<Chip>,
    /// What they taught.
    pub learned: Vec<String>,
    /// The curve.
    pub curve: Option<CurveView>,
    /// Brittle ranges, and what is at an end of the data.
    pub warnings: Vec<String>,
    /// Who puts the brittle range where.
    pub brittle: Vec<String>,
    /// The colour on bright plain carbon steel.
    pub colour: Option<String>,
    /// Where it can hurt.
    pub cautions: Vec<String>,
    /// What it rests on, and how to go about it.
    pub why: Vec<String>,
    /// Sources: name and whether it was read.
    pub sources: Vec<String>,
}

/// Tempers for a hardness.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanView {
    /// Steel and target.
    pub asked: String,
    /// The first temper in large letters, as the dial has to be set where that is known.
    pub first: String,
    /// The same in a sentence, with what to expect.
    pub verdict: String,
    /// How the dial has to stand.
    pub dial: String,
    /// The dial was not checked where the first temper lies.
    pub unchecked: bool,
    /// Time at heat and how often.
    pub each: String,
    /// Time to heat through, where the section is known.
    pub through: String,
    /// The tempers.
    pub steps: Vec<StepRow>,
    /// How to go from one to the next, and when to stop.
    pub how: Vec<String>,
}

/// One temper of a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepRow {
    /// What stands first in its row.
    pub name: TemperPage,
    /// As the dial has to be set, otherwise of the metal.
    pub at: String,
    /// Which of the two.
    pub of: TemperPage,
    /// Of the metal, where `at` is the dial's.
    pub metal: String,
    /// Most likely hardness.
    pub about: String,
    /// Its band.
    pub band: String,
    /// The temper as it goes on the card of the part.
    pub done: String,
}

/// What one temper leaves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LookedView {
    /// In large letters.
    pub about: String,
    /// In a sentence.
    pub verdict: String,
}

/// An own result.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ResultRow {
    /// Its place in the list.
    pub index: usize,
    /// In words.
    pub text: String,
    /// Its steel, or why it does not count; empty where it does.
    pub aside: String,
}
