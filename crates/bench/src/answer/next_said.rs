//! The parts of an answer about the next step, in words.

use biteband_evidence::step::{
    Action, AsQuenched, Choice, Diagnosis, Hardening, Part, Situation, Softening, Stage, Step,
    next_step,
};
use biteband_evidence::{FileTest, Odds, Target};
use biteband_steel::Interval;
use biteband_steel::reach::Steel;
use biteband_steel::temper::{PlanStep, Temper};

use super::file_test::PROVED;
use super::heat::Speech;
use super::next::NextQuestion;
use super::next_answer::{AdvisedTemper, NextStepAnswer, OptionAnswer};
use super::temper_answer::TemperAnswer;
use super::temper_said::{Asked as Tempered, Job};
use crate::format::{self, fixed};
use crate::refusal::Refusal;
use crate::words::{Act, NextStep};

/// Chances are shown to so much.
const PERCENT: f64 = 0.01;

/// Everything that the words are made from.
pub(super) struct Asked<'a> {
    pub(super) speech: Speech,
    pub(super) question: &'a NextQuestion,
    pub(super) test: &'a FileTest,
    pub(super) target: Target,
    pub(super) stage: Stage,
    pub(super) hardened: Option<AsQuenched>,
    pub(super) expected: Option<(f64, f64)>,
    pub(super) held: f64,
    /// The first temper after hardening again.
    pub(super) fresh: Option<PlanStep>,
    /// Tempers that make the steel brittle, °C.
    pub(super) brittle: Option<Interval>,
    /// Tempers so far.
    pub(super) done: &'a [Temper],
    /// Where the tempering stands.
    pub(super) sources: &'static [&'static str],
    /// What speaks of tempers, where the steel is known.
    pub(super) job: Option<&'a Job<'a>>,
    /// The ages for the target, for a steel that is aged.
    pub(super) aged: Option<&'a TemperAnswer>,
    /// The steel does not harden.
    pub(super) never: bool,
}

impl Asked<'_> {
    fn advised(&self, choice: &Choice) -> Option<AdvisedTemper> {
        let (temper, leaves) = match (choice.action, self.fresh) {
            (Action::Temper(temper) | Action::Snap(temper), _) => (temper, choice.leaves),
            (Action::Harden, Some(fresh)) => (fresh.temper, Some(fresh.expect)),
            _ => return None,
        };
        let at = temper.celsius();
        let (celsius, dial_c) = self.job.map_or((at, None), |job| job.metal_and_dial(at));
        let checked = self.job.filter(|job| job.learnt.checked);
        Some(AdvisedTemper {
            celsius,
            dial_c,
            dial_half_width_c: checked.and_then(|job| job.width(at)),
            hours: temper.hours(),
            times: if leaves.is_some() { self.job.map_or(1, |job| job.times) } else { 1 },
            expect: self.job.zip(leaves).map(|(job, leaves)| job.after(&leaves)),
        })
    }

    pub(super) fn step(&self, part: Option<&Part<'_>>) -> Result<Step, Refusal> {
        next_step(&Situation {
            test: self.test,
            target: self.target,
            stage: self.stage,
            softening: part.map(|part| part as &dyn Softening),
            minutes: self.held,
            hardened: self.hardened,
            expected: self.expected,
            ages: self.aged.map(|aged| {
                if aged.ages.iter().any(|one| one.role == "meets") { 1.0 } else { 0.5 }
            }),
            hardening: if self.never {
                Hardening::Never
            } else if self.question.at_size {
                Hardening::AtSize
            } else {
                Hardening::Open
            },
            overheated: self.question.overheated,
            hurried: self.question.hurried,
        })
        .map_err(|error| Refusal::of_evidence(self.speech.language, &error))
    }

    fn say(&self, phrase: NextStep<'_>) -> String {
        self.speech.language.next_step(phrase).into_owned()
    }

    pub(super) fn answer(
        &self,
        found: &Step,
        steel: Option<&Steel>,
        understood: Vec<String>,
        learned: Vec<String>,
        mut notes: Vec<String>,
    ) -> NextStepAnswer {
        let options: Vec<OptionAnswer> =
            found.choices.iter().map(|choice| self.option(choice, found.known)).collect();
        let first = options.first();
        let now = found.now;
        let chances = self.chances(now, false);
        // They speak of fire and oven, not of ages.
        let causes = match self.aged {
            None => self.say(NextStep::Causes(found.diagnosis)),
            Some(_) => String::new(),
        };
        let why = [
            match found.diagnosis {
                Diagnosis::OutOfReach if self.never => self.say(NextStep::NeverHardens),
                diagnosis => self.say(NextStep::Stands(diagnosis)),
            },
            if found.known { chances } else { String::new() },
            first.map(|first| first.how.clone()).unwrap_or_default(),
            causes,
        ];
        let parts = why.clone();
        let why = super::heat::joined(why.into_iter());
        let open_question = found.diagnosis == Diagnosis::Unclear
            && first.is_some_and(|first| first.action == "accept");
        if open_question {
            notes.push(self.say(NextStep::UseDecides));
        }
        if self.stage == Stage::Quenched {
            notes.push(self.say(NextStep::Today));
        }
        notes.push(self.say(NextStep::Weighed));
        let caution = first.map(|first| first.caution.clone()).unwrap_or_default();
        let mut sources = vec!["file-model"];
        sources.extend(self.sources);
        for &source in first.iter().flat_map(|first| &first.sources) {
            if !sources.contains(&source) {
                sources.push(source);
            }
        }
        NextStepAnswer {
            steel: steel.and_then(Steel::grade).map(biteband_steel::Grade::key),
            understood,
            verdict: first.map(|first| first.text.clone()).unwrap_or_default(),
            action: first.map_or("stroke", |first| first.action),
            why,
            diagnosis: found.diagnosis.key(),
            now: now.into(),
            options,
            learned,
            notes,
            cautions: vec![caution].into_iter().filter(|text| !text.is_empty()).collect(),
            sources,
            parts,
        }
    }

    fn chances(&self, odds: Odds, after: bool) -> String {
        let [under, inside, over] = [odds.under(), odds.inside(), odds.over()].map(percent);
        let (under, inside, over) = (under.as_str(), inside.as_str(), over.as_str());
        self.say(if after {
            NextStep::After { under, inside, over }
        } else {
            NextStep::Chances { under, inside, over }
        })
    }

    /// Ranges that make the steel brittle and that a temper lies in or steps over, in the words that a plan has for them.
    fn on_the_way(&self, temper: Temper, done: &[Temper]) -> TemperAnswer {
        let mut answer = TemperAnswer::default();
        let Some(job) = self.job else { return answer };
        let at = temper.celsius();
        let asked = Tempered { span: Interval { low: at, high: at }, tempers: &[temper], done };
        job.brittle(&mut answer, &asked, Some(self.target));
        if self.brittle.is_some_and(|range| range.low <= at && at <= range.high) {
            answer.warnings.push(self.say(NextStep::OnlyInside));
        }
        answer
    }

    /// A temper, how often and what to expect, in the words that a plan has for it.
    fn told(&self, choice: &Choice) -> String {
        if let (Action::Age, Some(aged)) = (choice.action, self.aged) {
            return aged.verdict.clone();
        }
        let Some(job) = self.job else { return String::new() };
        match (choice.action, choice.leaves, self.fresh) {
            (Action::Temper(temper), Some(expect), _) => {
                job.first(&PlanStep { temper, times: job.times, expect })
            }
            (Action::Harden, _, Some(fresh)) => job.step(&fresh).text,
            _ => String::new(),
        }
    }

    /// What the dial has to show for a temper that is done next, or that nobody knows it.
    fn dial(&self, choice: &Choice) -> String {
        match (choice.action, self.job) {
            (Action::Temper(temper), Some(job)) => job.dial(temper.celsius()),
            _ => String::new(),
        }
    }

    fn option(&self, choice: &Choice, known: bool) -> OptionAnswer {
        let grade = match choice.action {
            Action::Stroke(_, grade) => Some(grade),
            _ => None,
        };
        let temper = match (choice.action, self.fresh) {
            (Action::Temper(temper) | Action::Snap(temper), _) => Some(temper),
            (Action::Harden, Some(fresh)) => Some(fresh.temper),
            _ => None,
        };
        let told = self.told(choice);
        let held = temper.map(time).unwrap_or_default();
        let at = temper.map(|one| self.speech.celsius(one.celsius())).unwrap_or_default();
        let written = grade.map(format::exact).unwrap_or_default();
        let range = match choice.action {
            Action::ChangeTarget { low, high } => format!(
                "{} HRC",
                format::dash(&format::outward_low(low), &format::outward_high(high))
            ),
            _ => String::new(),
        };
        let act = match choice.action {
            Action::Accept => Act::Accept,
            Action::ClearUp => Act::ClearUp,
            Action::Stroke(..) => Act::Stroke { grade: &written },
            Action::Read => Act::Read,
            Action::Grind => Act::Grind,
            Action::Temper(_) => Act::Temper { told: &told },
            Action::Snap(_) => Act::Snap { at: &at, time: &held },
            Action::Harden => Act::Harden { again: self.stage != Stage::Bought, temper: &told },
            Action::Age => Act::Age { told: &told },
            Action::ChangeTarget { .. } => Act::ChangeTarget { range: &range },
            Action::ChangePlan if self.never => Act::ChangeSteel,
            Action::ChangePlan => Act::ChangePlan,
        };
        let measures = matches!(act, Act::ClearUp | Act::Stroke { .. } | Act::Read | Act::Grind);
        let chances = match act {
            // Where nothing is known any hardness is as likely: that tells nothing of what a measurement leads to.
            Act::Age { .. } | Act::ChangeTarget { .. } | Act::ChangePlan | Act::ChangeSteel => {
                String::new()
            }
            _ if measures && !known => String::new(),
            Act::Accept => self.chances(choice.odds, false),
            _ => self.chances(choice.odds, true),
        };
        let counts = match act {
            Act::Harden { .. } => self.say(NextStep::Planned),
            // Where it shows as nought that the part stays too hard, further tempers add nothing that shows.
            Act::Temper { .. } if choice.odds.over() >= 0.5 * PERCENT => {
                self.say(NextStep::Further { inside: &percent(choice.with_further_tempers()) })
            }
            _ if measures && !known => String::new(),
            _ if measures => self.say(NextStep::IfBest),
            _ => String::new(),
        };
        let mut how = self.say(NextStep::How(act));
        let besides = match (act, temper) {
            (Act::Temper { .. }, Some(temper)) => self.on_the_way(temper, self.done),
            (Act::Harden { .. }, Some(temper)) => self.on_the_way(temper, &[]),
            (Act::Age { .. }, _) => self.aged.cloned().unwrap_or_default(),
            _ => TemperAnswer::default(),
        };
        let said = match act {
            Act::Age { .. } => &besides.notes,
            _ => &besides.warnings,
        };
        how = super::heat::joined(std::iter::once(how).chain(said.iter().cloned()));
        if self.question.at_size && matches!(act, Act::Harden { .. }) {
            how = format!("{} {how}", self.say(NextStep::AtSize));
        }
        OptionAnswer {
            action: choice.action.key(),
            under: choice.odds.under(),
            inside: choice.odds.inside(),
            over: choice.odds.over(),
            worth: choice.worth,
            open: choice.open,
            temper: self.advised(choice),
            dial: self.dial(choice),
            file: grade,
            text: self.say(NextStep::Do(act)),
            how,
            chances: super::heat::joined([chances, counts].into_iter()),
            undone: self.say(NextStep::Undone(act)),
            caution: self.say(NextStep::Caution(act)),
            sources: besides.sources,
        }
    }
}

/// A chance in whole percent; what is not certain is not called so.
pub(super) fn percent(chance: f64) -> String {
    rounded_percent(chance, (100.0 * chance).round())
}

/// A chance as it was rounded to whole percent, likewise.
pub(crate) fn rounded_percent(chance: f64, whole: f64) -> String {
    if whole < 1.0 && chance > 0.0 {
        "under 1 %".to_owned()
    } else if chance < PROVED && (100.0 * PROVED..96.0).contains(&whole) {
        // What is not proved must not look as if it were.
        "just under 95 %".to_owned()
    } else if whole > 99.0 && chance < 1.0 {
        "over 99 %".to_owned()
    } else {
        format!("{} %", fixed(whole, 0))
    }
}

fn time(temper: Temper) -> String {
    super::temper::time(temper.minutes())
}
