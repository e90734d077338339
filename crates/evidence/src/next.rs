//! What another stroke would be worth.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use crate::assess::FileTest;
use crate::belief::{Belief, trapezoid};
use crate::error::Error;
use crate::interval::Level;
use crate::model::{Answering, Chances, Outcome};
use crate::posterior::{Engine, Factor, FileRecord, Operator};
use crate::strokes::{FileId, MAX_STROKES};
use crate::target::Target;

/// The fall of the width below which another stroke is not worth its while, in HRC.
///
/// # Source
/// Our choice: a third of a whole number, which a band given in whole numbers seldom shows.
pub const LEAST_WIDTH: f64 = 0.3;
/// The fall of the doubt about the target below which another stroke is not worth its while, in bits.
///
/// # Source
/// Our choice.
pub const LEAST_DOUBT: f64 = 0.05;

/// Whether another stroke is worth its while.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Worth {
    /// The best file is expected to narrow the answer.
    Stroke,
    /// No file is expected to narrow it by enough: read the part another way, or prove the files.
    TooLittle,
}

/// One more stroke of one file, before it is made.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Trial {
    file: FileId,
    grade: f64,
    chances: Chances,
    width: f64,
    doubt: Option<f64>,
}

impl Trial {
    /// The file.
    #[must_use]
    pub const fn file(&self) -> FileId {
        self.file
    }

    /// The file's grade, in HRC.
    #[must_use]
    pub const fn grade(&self) -> f64 {
        self.grade
    }

    /// How likely each outcome is, from everything known so far.
    pub const fn chances(&self) -> Chances {
        self.chances
    }

    /// The width of the shortest 95 % interval to expect after the stroke, in HRC.
    #[must_use]
    pub const fn expected_width(&self) -> f64 {
        self.width
    }

    /// The doubt about the target to expect after the stroke, in bits, if there is a target.
    #[must_use]
    pub const fn expected_doubt(&self) -> Option<f64> {
        self.doubt
    }
}

/// What to expect after every file was proved 2 HRC below and 2 HRC above its grade, as SAE J864 has it.
///
/// # Accuracy
/// An estimate: it takes each file to bite the softer piece and to skate on the harder one, which is the likeliest answer.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Proving {
    width: f64,
    doubt: Option<f64>,
}

impl Proving {
    /// The width of the shortest 95 % interval to expect, in HRC.
    #[must_use]
    pub const fn expected_width(&self) -> f64 {
        self.width
    }

    /// The doubt about the target to expect, in bits, if there is a target.
    #[must_use]
    pub const fn expected_doubt(&self) -> Option<f64> {
        self.doubt
    }
}

/// The next step with the files.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Advice {
    trials: Vec<Trial>,
    width: f64,
    doubt: Option<f64>,
    worth: Worth,
    proving: Option<Proving>,
}

impl Advice {
    /// Every file of the set, the most useful first: by the doubt about the target if there is one, by the width otherwise.
    pub fn trials(&self) -> &[Trial] {
        &self.trials
    }

    /// The most useful file, unless every file has had its 99 strokes.
    #[must_use]
    pub fn best(&self) -> Option<&Trial> {
        self.trials.first()
    }

    /// The width of the shortest 95 % interval now, in HRC; on an open side it ends where the axis ends.
    #[must_use]
    pub const fn present_width(&self) -> f64 {
        self.width
    }

    /// The doubt about the target now, in bits, if there is a target.
    #[must_use]
    pub const fn present_doubt(&self) -> Option<f64> {
        self.doubt
    }

    /// Whether the best file is worth a stroke.
    #[must_use]
    pub const fn worth(&self) -> Worth {
        self.worth
    }

    /// What proving every file would bring, once the part was stroked at all.
    #[must_use]
    pub const fn proving(&self) -> Option<Proving> {
        self.proving
    }
}

/// The width and the doubt of a belief.
fn measure(belief: &Belief, target: Option<Target>) -> (f64, Option<f64>) {
    (belief.shortest(Level::P95).width(), target.map(|target| belief.odds(target).doubt()))
}

/// The advice for a test whose belief is known.
pub(crate) fn advise(
    test: &FileTest,
    present: &Belief,
    target: Option<Target>,
) -> Result<Advice, Error> {
    let (width, doubt) = measure(present, target);
    let records = test.records();
    let engine = Engine::new(test, Operator::Integrated, !test.proofs().is_empty());
    let factors: Vec<Option<Factor>> =
        records.iter().map(|(file, record)| engine.factor(*file, record)).collect();
    let mut trials = Vec::with_capacity(records.len());
    for (place, (file, record)) in records.iter().enumerate() {
        if full(record) {
            continue;
        }
        let others = factors.iter().enumerate().filter(|(other, _)| *other != place);
        let others = engine.product(others.filter_map(|(_, factor)| factor.as_ref()));
        let grade = test.set().grade(*file).unwrap_or_default();
        trials.push(trial(test, &engine, (*file, grade, record), &others, target)?);
    }
    // By doubt, and by width where the doubt is the same: the later order keeps the earlier one.
    sort_by_number(&mut trials, |trial: &Trial| trial.width);
    sort_by_number(&mut trials, |trial| trial.doubt.unwrap_or(0.0));
    let best = trials.first();
    let worthwhile = best.is_some_and(|best| match (doubt, best.doubt) {
        (Some(now), Some(then)) => now - then >= LEAST_DOUBT,
        _ => width - best.width >= LEAST_WIDTH,
    });
    let worth = if worthwhile { Worth::Stroke } else { Worth::TooLittle };
    let proving =
        if test.strokes().is_empty() { None } else { Some(prove(test, &records, target)?) };
    Ok(Advice { trials, width, doubt, worth, proving })
}

fn full(record: &FileRecord) -> bool {
    let tally = record.total();
    let proofs: u32 = record.proofs.iter().map(|(_, t)| t.bites + t.slights + t.skates).sum();
    let count = tally.bites + tally.slights + tally.skates + proofs;
    usize::try_from(count).unwrap_or(MAX_STROKES) >= MAX_STROKES
}

/// One more stroke of a file, on the spot with the highest number so far.
fn trial(
    test: &FileTest,
    engine: &Engine,
    (file, grade, record): (FileId, f64, &FileRecord),
    others: &Factor,
    target: Option<Target>,
) -> Result<Trial, Error> {
    let spot = record.strokes.len().saturating_sub(1);
    let mut evidence = [0.0; 3];
    let mut widths = [0.0; 3];
    let mut doubts = [0.0; 3];
    let each = evidence.iter_mut().zip(&mut widths).zip(&mut doubts);
    for (outcome, ((evidence, width), doubt)) in Outcome::ALL.into_iter().zip(each) {
        if outcome == Outcome::Slight && test.answering() == Answering::YesNo {
            continue;
        }
        let Some(factor) = engine.factor(file, &record.with_stroke(spot, outcome)) else {
            continue;
        };
        let product: Factor = others.iter().zip(&factor).map(|(one, more)| one * more).collect();
        let weights = engine.weights(&product);
        // The outcomes add to 1 at every hardness, so their shares of the evidence are their chances.
        *evidence = trapezoid(&weights);
        let (then_width, then_doubt) = measure(&engine.belief(weights)?, target);
        *width = then_width;
        *doubt = then_doubt.unwrap_or(0.0);
    }
    let total: f64 = evidence.iter().sum();
    let [bite, slight, skate] = evidence.map(|share| share / total);
    let mean = |values: [f64; 3]| -> f64 {
        evidence.iter().zip(values).map(|(share, value)| share / total * value).sum()
    };
    Ok(Trial {
        file,
        grade,
        chances: Chances::new(bite, slight, skate),
        width: mean(widths),
        doubt: target.map(|_| mean(doubts)),
    })
}

fn prove(
    test: &FileTest,
    records: &[(FileId, FileRecord)],
    target: Option<Target>,
) -> Result<Proving, Error> {
    let engine = Engine::new(test, Operator::Integrated, true);
    let mut factors = Vec::with_capacity(records.len());
    for (file, record) in records {
        let grade = test.set().grade(*file).unwrap_or_default();
        let proved = record
            .clone()
            .with_proof(grade - 2.0, Outcome::Bite)
            .with_proof(grade + 2.0, Outcome::Skate);
        factors.extend(engine.factor(*file, &proved));
    }
    let belief = engine.belief(engine.weights(&engine.product(factors.iter())))?;
    let (width, doubt) = measure(&belief, target);
    Ok(Proving { width, doubt })
}
