//! Strokes that one surface does not give.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use crate::assess::FileTest;
use crate::band::Band;
use crate::error::Error;
use crate::interval::Level;
use crate::posterior::{Engine, Factor, FileRecord, Operator};
use crate::strokes::{FileId, Tally};

/// The likelihood ratio below which two answers contradict each other.
///
/// # Source
/// Our choice: one in a hundred, below what the lapse rate alone explains for a single pair of strokes.
pub const SURPRISE_BELOW: f64 = 0.01;

/// What may set answers against each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The file that skates is worn or clogged.
    WornOrClogged,
    /// The files were taken for each other.
    FilesSwapped,
    /// The strokes lay on different spots.
    DifferentSpots,
    /// A soft skin or a soft patch.
    SoftSkin,
    /// Polished against ground finish.
    FinishDiffers,
}

/// The causes when two files disagree, likeliest first.
const BETWEEN_FILES: &[Cause] = &[
    Cause::WornOrClogged,
    Cause::FilesSwapped,
    Cause::DifferentSpots,
    Cause::SoftSkin,
    Cause::FinishDiffers,
];

/// The causes when one file disagrees with itself, likeliest first.
const WITHIN_FILE: &[Cause] =
    &[Cause::DifferentSpots, Cause::SoftSkin, Cause::WornOrClogged, Cause::FinishDiffers];

/// Two answers that no hardness explains together.
///
/// # Source
/// The ratio is the generalised likelihood ratio of "one hardness" against "a hardness for each"; each file's own bias is integrated, the biases of
/// operator and part are left at zero because both answers share them.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Contradiction {
    harder: (FileId, f64),
    softer: (FileId, f64),
    surprise: f64,
    causes: &'static [Cause],
    without_harder: Band,
    without_softer: Band,
}

impl Contradiction {
    /// The file that skates: the harder of the two, or the one file that disagrees with itself.
    #[must_use]
    pub const fn harder(&self) -> FileId {
        self.harder.0
    }

    /// The file that bites: the softer of the two, or the one file that disagrees with itself.
    #[must_use]
    pub const fn softer(&self) -> FileId {
        self.softer.0
    }

    /// The grade of the harder file, in HRC.
    #[must_use]
    pub const fn harder_grade(&self) -> f64 {
        self.harder.1
    }

    /// The grade of the softer file, in HRC.
    #[must_use]
    pub const fn softer_grade(&self) -> f64 {
        self.softer.1
    }

    /// Whether one file disagrees with itself.
    #[must_use]
    pub fn is_one_file(&self) -> bool {
        self.harder.0 == self.softer.0
    }

    /// The likelihood ratio, from 0 to [`SURPRISE_BELOW`]; the smaller, the worse.
    #[must_use]
    pub const fn surprise(&self) -> f64 {
        self.surprise
    }

    /// What may be behind it, likeliest first.
    #[must_use]
    pub const fn causes(&self) -> &'static [Cause] {
        self.causes
    }

    /// The band if the harder file is set aside.
    pub const fn without_harder(&self) -> Band {
        self.without_harder
    }

    /// The band if the softer file is set aside.
    pub const fn without_softer(&self) -> Band {
        self.without_softer
    }
}

/// The contradictions of a test, the worst first.
pub(crate) fn contradictions(test: &FileTest, level: Level) -> Result<Vec<Contradiction>, Error> {
    let records = test.records();
    let biting = |tally: Tally| tally.bites > 0;
    let skating = |tally: Tally| tally.skates > 0;
    // Most tests have no pair to look at, and then need no engine.
    let softest_bite = records.iter().find(|(_, record)| biting(record.total()));
    let hardest_skate = records.iter().rfind(|(_, record)| skating(record.total()));
    let (Some(softest), Some(hardest)) = (softest_bite, hardest_skate) else {
        return Ok(Vec::new());
    };
    if softest.0 > hardest.0 {
        return Ok(Vec::new());
    }
    let engine = Engine::new(test, Operator::AtZero, !test.proofs().is_empty());
    let mut found = Vec::new();
    for (harder, hard_record) in records.iter().filter(|(_, record)| skating(record.total())) {
        for (softer, soft_record) in records.iter().filter(|(_, record)| biting(record.total())) {
            if softer > harder {
                continue;
            }
            let surprise = if softer == harder {
                within_file(&engine, *harder, hard_record)
            } else {
                between_files(&engine, (*harder, hard_record), (*softer, soft_record))
            };
            if surprise < SURPRISE_BELOW {
                found.push((*harder, *softer, surprise));
            }
        }
    }
    sort_by_number(&mut found, |(_, _, surprise)| *surprise);
    let grade = |file: FileId| (file, test.set().grade(file).unwrap_or_default());
    let mut contradictions = Vec::with_capacity(found.len());
    for (harder, softer, surprise) in found {
        contradictions.push(Contradiction {
            harder: grade(harder),
            softer: grade(softer),
            surprise,
            causes: if harder == softer { WITHIN_FILE } else { BETWEEN_FILES },
            without_harder: test.without(harder).belief()?.band(level),
            without_softer: test.without(softer).belief()?.band(level),
        });
    }
    Ok(contradictions)
}

/// The greatest likelihood of one hardness for both, against a hardness for each file.
fn between_files(
    engine: &Engine,
    harder: (FileId, &FileRecord),
    softer: (FileId, &FileRecord),
) -> f64 {
    let (Some(hard), Some(soft)) =
        (engine.factor(harder.0, harder.1), engine.factor(softer.0, softer.1))
    else {
        return 1.0;
    };
    let both: Factor = hard.iter().zip(&soft).map(|(one, other)| one * other).collect();
    greatest(engine, &both) / (greatest(engine, &hard) * greatest(engine, &soft))
}

/// The greatest likelihood of one hardness for all strokes of a file, against a hardness each for its bites and its skates.
fn within_file(engine: &Engine, file: FileId, record: &FileRecord) -> f64 {
    let bites = record.keeping(|tally| Tally { slights: 0, skates: 0, ..tally });
    let skates = record.keeping(|tally| Tally { slights: 0, bites: 0, ..tally });
    let both = record.keeping(|tally| Tally { slights: 0, ..tally });
    let none = record.keeping(|_| Tally::default());
    let (Some(bites), Some(skates), Some(both)) =
        (engine.factor(file, &bites), engine.factor(file, &skates), engine.factor(file, &both))
    else {
        return 1.0;
    };
    // The proofs stand in all three factors, and must stand once above and once below the line.
    let proofs = engine.factor(file, &none).map_or(1.0, |factor| greatest(engine, &factor));
    greatest(engine, &both) * proofs / (greatest(engine, &bites) * greatest(engine, &skates))
}

fn greatest(engine: &Engine, factor: &Factor) -> f64 {
    engine.latent_likelihood(factor).iter().copied().fold(0.0, f64::max)
}
