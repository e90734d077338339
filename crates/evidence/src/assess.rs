//! A file test from its strokes to what is known and what to do next.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use crate::band::Band;
use crate::belief::{AXIS_HIGH, AXIS_LOW, Belief};
use crate::clash::{Clash, Witness, clashes};
use crate::conditions::{Conditions, Prior};
use crate::contradiction::{Contradiction, contradictions};
use crate::error::{Error, What, within};
use crate::interval::Level;
use crate::model::{Answering, Hand, Outcome, Scatter, Term};
use crate::next::{Advice, advise};
use crate::posterior::{Engine, Factor, FileRecord, Operator};
use crate::quadrature::Axis;
use crate::readings::Readings;
use crate::strokes::{FileId, FileSet, MAX_SPOTS, MAX_STROKES, Proof, Stroke, Tally};
use crate::target::{Odds, Target};

/// A file test: the files, the hand, the strokes, the state of the part, and readings of instruments beside them.
///
/// # Example
/// ```
/// use biteband_evidence::{FileSet, FileTest, Outcome, Target};
/// let set = FileSet::trade();
/// let mut test = FileTest::new(set.clone());
/// for (file, grade) in set.files() {
///     let outcome = if grade < 57.0 { Outcome::Skate } else { Outcome::Bite };
///     test = test.with_stroke(file, outcome)?;
/// }
/// let found = test.assess(Some(Target::between(58.0, 60.0)?))?;
/// let low = found.band().low().unwrap_or(0.0);
/// let high = found.band().high().unwrap_or(0.0);
/// assert!((low - 53.7).abs() < 0.1 && (high - 61.3).abs() < 0.1);
/// assert!(found.contradictions().is_empty());
/// # Ok::<(), biteband_evidence::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct FileTest {
    set: FileSet,
    hand: Hand,
    answering: Answering,
    strokes: Vec<Stroke>,
    proofs: Vec<Proof>,
    conditions: Conditions,
    prior: Prior,
    readings: Readings,
    reach: Option<(f64, f64)>,
    conversion: f64,
    quiet: Option<Term>,
}

impl FileTest {
    /// A test without strokes: a practised hand, three-way answers, ordinary conditions, nothing expected.
    #[must_use]
    pub const fn new(set: FileSet) -> Self {
        Self {
            set,
            hand: Hand::Practised,
            answering: Answering::ThreeWay,
            strokes: Vec::new(),
            proofs: Vec::new(),
            conditions: Conditions {
                skin: crate::conditions::Skin::NotSaid,
                place: crate::conditions::Place::Flat,
                finish: crate::conditions::Finish::LikeProof,
                steel: crate::conditions::SteelKind::Ordinary,
            },
            prior: Prior::flat(),
            readings: Readings::new(),
            reach: None,
            conversion: 0.0,
            quiet: None,
        }
    }

    /// The same test by another hand.
    #[must_use]
    pub const fn with_hand(mut self, hand: Hand) -> Self {
        self.hand = hand;
        self
    }

    /// The same test with other answers open.
    #[must_use]
    pub const fn with_answering(mut self, answering: Answering) -> Self {
        self.answering = answering;
        self
    }

    /// The same test under other conditions.
    #[must_use]
    pub const fn with_conditions(mut self, conditions: Conditions) -> Self {
        self.conditions = conditions;
        self
    }

    /// The same test with another expectation.
    #[must_use]
    pub const fn with_prior(mut self, prior: Prior) -> Self {
        self.prior = prior;
        self
    }

    /// The same test with other readings of instruments on the part.
    ///
    /// Belief, odds and advice then rest on files and readings together; without strokes they rest on the readings alone.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{FileSet, FileTest, Group, Instrument, Outcome, Readings};
    /// let set = FileSet::trade();
    /// let hardest = set.find(65.0)?;
    /// let files = FileTest::new(set).with_stroke(hardest, Outcome::Skate)?;
    /// assert!(files.assess(None)?.band().open_high());
    /// let (random, shared) = Instrument::Leeb.usual().in_hrc(64.0, 1.0);
    /// let group = Group::new(Instrument::Leeb, &[64.0, 65.0, 64.5], random, shared)?;
    /// let both = files.with_readings(Readings::new().with(group)?).assess(None)?;
    /// assert!(!both.band().open_high() && both.clashes().is_empty());
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    #[must_use]
    pub fn with_readings(mut self, readings: Readings) -> Self {
        self.readings = readings;
        self
    }

    /// The same test with a belief that reaches at least from `low` to `high`, for questions about a hardness beyond the files.
    ///
    /// # Units
    /// HRC, cut off at 10 and 80 HRC.
    #[must_use]
    pub const fn with_reach(mut self, low: f64, high: f64) -> Self {
        self.reach = Some((low, high));
        self
    }

    /// The same test where the belief is not about HRC but about what a table makes of another scale: strokes, which are about HRC, then carry the
    /// uncertainty of the conversion, one bias for all of them.
    ///
    /// # Units
    /// `sd`, a standard uncertainty in HRC.
    ///
    /// # Valid for
    /// 0.3 to 10 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn with_conversion(mut self, sd: f64) -> Result<Self, Error> {
        self.conversion = within(What::ConversionSd, sd, 0.3, 10.0)?;
        Ok(self)
    }

    /// The same test with one term of the scatter left out.
    pub(crate) const fn without_term(mut self, term: Term) -> Self {
        self.quiet = Some(term);
        self
    }

    /// The standard uncertainty of the conversion that all strokes share, in HRC; 0 where the belief is about HRC.
    pub(crate) const fn conversion(&self) -> f64 {
        self.conversion
    }

    /// The same test with one more stroke on the first spot.
    ///
    /// # Errors
    /// As [`FileTest::with`].
    pub fn with_stroke(self, file: FileId, outcome: Outcome) -> Result<Self, Error> {
        self.with(Stroke::new(file, outcome))
    }

    /// The same test with one more stroke.
    ///
    /// # Errors
    /// [`Error::ForeignFile`], [`Error::TooManyStrokes`] above 99 on one file, [`Error::TooManySpots`] above 4.
    pub fn with(mut self, stroke: Stroke) -> Result<Self, Error> {
        self.room(stroke.file())?;
        let spots = self.spots();
        if spots.len() >= MAX_SPOTS && !spots.contains(&stroke.spot()) {
            return Err(Error::TooManySpots { max: MAX_SPOTS });
        }
        self.strokes.push(stroke);
        Ok(self)
    }

    /// The same test with one more stroke on a piece of known hardness.
    ///
    /// # Errors
    /// [`Error::ForeignFile`], [`Error::TooManyStrokes`] above 99 on one file.
    pub fn with_proof(mut self, proof: Proof) -> Result<Self, Error> {
        self.room(proof.file())?;
        self.proofs.push(proof);
        Ok(self)
    }

    /// Whether the file belongs to the set and may be stroked once more.
    fn room(&self, file: FileId) -> Result<(), Error> {
        let Some(grade) = self.set.grade(file) else {
            return Err(Error::ForeignFile { place: file.place(), count: self.set.count() });
        };
        let strokes = self.strokes.iter().filter(|stroke| stroke.file() == file).count();
        let proofs = self.proofs.iter().filter(|proof| proof.file() == file).count();
        if strokes + proofs >= MAX_STROKES {
            return Err(Error::TooManyStrokes { grade, max: MAX_STROKES });
        }
        Ok(())
    }

    /// The same test with the strokes and proofs of one file set aside.
    #[must_use]
    pub fn without(&self, file: FileId) -> Self {
        let mut rest = self.clone();
        rest.strokes.retain(|stroke| stroke.file() != file);
        rest.proofs.retain(|proof| proof.file() != file);
        rest
    }

    /// The same test with one witness set aside.
    #[must_use]
    pub fn set_aside(&self, witness: Witness) -> Self {
        let mut rest = self.clone();
        match witness {
            Witness::Files => {
                rest.strokes.clear();
                rest.proofs.clear();
            }
            Witness::Group(group) => rest.readings = self.readings.without_group(group),
            Witness::Reading { group, reading } => {
                rest.readings = self.readings.without_reading(group, reading);
            }
        }
        rest
    }

    /// The files.
    #[must_use]
    pub const fn set(&self) -> &FileSet {
        &self.set
    }

    /// The hand.
    #[must_use]
    pub const fn hand(&self) -> Hand {
        self.hand
    }

    /// The answers that were open.
    #[must_use]
    pub const fn answering(&self) -> Answering {
        self.answering
    }

    /// The strokes on the part, in the order in which they were made.
    #[must_use]
    pub fn strokes(&self) -> &[Stroke] {
        &self.strokes
    }

    /// The strokes on known pieces, in the order in which they were made.
    #[must_use]
    pub fn proofs(&self) -> &[Proof] {
        &self.proofs
    }

    /// The conditions.
    #[must_use]
    pub const fn conditions(&self) -> Conditions {
        self.conditions
    }

    /// The expectation.
    #[must_use]
    pub const fn prior(&self) -> Prior {
        self.prior
    }

    /// The readings.
    pub const fn readings(&self) -> &Readings {
        &self.readings
    }

    pub(crate) fn scatter(&self) -> Scatter {
        let scatter = self.hand.scatter(self.answering, self.set.tolerance());
        self.quiet.map_or(scatter, |term| scatter.without(term))
    }

    /// The numbers of the spots in use, lowest first.
    pub(crate) fn spots(&self) -> Vec<u8> {
        let mut spots: Vec<u8> = self.strokes.iter().map(Stroke::spot).collect();
        sort_by_number(&mut spots, |spot| f64::from(*spot));
        spots.dedup();
        spots
    }

    /// The axis of the belief: from 30 HRC or 10 below the softest file to 72 HRC or 7 above the hardest, and as far as a normal prior and readings reach.
    pub(crate) fn axis(&self) -> Axis {
        let mut low = f64::min(30.0, self.set.lowest() - 10.0);
        let mut high = f64::max(72.0, self.set.highest() + 7.0);
        if let Some((mean, sd)) = self.prior.expected() {
            // A narrow expectation near an end must not be cut off; a wide one needs no more axis than the files have.
            let reach = 4.5 * f64::min(sd, 1.0);
            low = f64::min(low, f64::max(mean - reach, AXIS_LOW));
            high = f64::max(high, f64::min(mean + reach, AXIS_HIGH));
        }
        if let Some((from, to)) = self.readings.reach() {
            low = f64::min(low, f64::max(from, AXIS_LOW));
            high = f64::max(high, f64::min(to, AXIS_HIGH));
        }
        if let Some((from, to)) = self.reach {
            low = f64::min(low, f64::max(from, AXIS_LOW));
            high = f64::max(high, f64::min(to, AXIS_HIGH));
        }
        Axis::spanning(low, high)
    }

    fn check(&self) -> Result<(), Error> {
        if self.answering == Answering::YesNo {
            let strokes = self.strokes.iter().map(|stroke| (stroke.file(), stroke.outcome()));
            let proofs = self.proofs.iter().map(|proof| (proof.file(), proof.outcome()));
            for (file, outcome) in strokes.chain(proofs) {
                if outcome == Outcome::Slight {
                    let grade = self.set.grade(file).unwrap_or_default();
                    return Err(Error::SlightInYesNo { grade });
                }
            }
        }
        Ok(())
    }

    /// What is known about every file of the set.
    pub(crate) fn records(&self) -> Vec<(FileId, FileRecord)> {
        let spots = self.spots();
        let rows = spots.len().max(1);
        let files = self.set.files().map(|(file, _)| {
            let mut record =
                FileRecord { strokes: alloc::vec![Tally::default(); rows], proofs: Vec::new() };
            for stroke in self.strokes.iter().filter(|stroke| stroke.file() == file) {
                let spot = spots.iter().position(|spot| *spot == stroke.spot()).unwrap_or(0);
                record = record.with_stroke(spot, stroke.outcome());
            }
            for proof in self.proofs.iter().filter(|proof| proof.file() == file) {
                record = record.with_proof(proof.known(), proof.outcome());
            }
            (file, record)
        });
        files.collect()
    }

    /// The belief about the part.
    ///
    /// # Accuracy
    /// Limits of its intervals are within 0.003 HRC of a fine integration of the model with one spot, within 0.015 HRC with several.
    ///
    /// # Errors
    /// [`Error::SlightInYesNo`]; [`Error::NothingLeft`] if expectation, strokes and readings exclude each other beyond the range of an `f64`.
    ///
    /// # Source
    /// `file-model`.
    pub fn belief(&self) -> Result<Belief, Error> {
        self.check()?;
        let (engine, product) = self.product();
        engine.belief(engine.weights(&product))
    }

    /// The engine and the product of all files.
    pub(crate) fn product(&self) -> (Engine, Factor) {
        let engine = Engine::new(self, Operator::Integrated, !self.proofs.is_empty());
        let factors: Vec<Factor> = self
            .records()
            .iter()
            .filter_map(|(file, record)| engine.factor(*file, record))
            .collect();
        let product = engine.product(factors.iter());
        (engine, product)
    }

    /// What the strokes say about the part, whether they contradict each other, and what to do next.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn assess(&self, target: Option<Target>) -> Result<Assessment, Error> {
        self.assess_at(Level::P95, target)
    }

    /// As [`FileTest::assess`], with the band at another level; the advice keeps the level of 95 %.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn assess_at(&self, level: Level, target: Option<Target>) -> Result<Assessment, Error> {
        let belief = self.belief()?;
        Ok(Assessment {
            band: belief.band(level),
            odds: target.map(|target| belief.odds(target)),
            contradictions: self.contradictions(level)?,
            clashes: self.clashes(level)?,
            advice: advise(self, &belief, target)?,
            belief,
        })
    }

    /// The files that disagree beyond their scatter, the worst first, with the bands of the level if either is set aside.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn contradictions(&self, level: Level) -> Result<Vec<Contradiction>, Error> {
        self.check()?;
        contradictions(self, level)
    }

    /// Where readings disagree with the files, with each other or among themselves, the worst first, with the bands of the level if either is set aside.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn clashes(&self, level: Level) -> Result<Vec<Clash>, Error> {
        self.check()?;
        clashes(self, level)
    }

    /// What another stroke would be worth; by far the longest sum of an assessment, for callers that show the belief first.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn advice(&self, target: Option<Target>) -> Result<Advice, Error> {
        advise(self, &self.belief()?, target)
    }
}

impl Default for FileTest {
    fn default() -> Self {
        Self::new(FileSet::trade())
    }
}

/// What a file test says.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Assessment {
    belief: Belief,
    band: Band,
    odds: Option<Odds>,
    contradictions: Vec<Contradiction>,
    clashes: Vec<Clash>,
    advice: Advice,
}

impl Assessment {
    /// The belief.
    pub const fn belief(&self) -> &Belief {
        &self.belief
    }

    /// The band.
    pub const fn band(&self) -> Band {
        self.band
    }

    /// The chances of being under, inside and over the target, if there is one.
    #[must_use]
    pub const fn odds(&self) -> Option<Odds> {
        self.odds
    }

    /// The files that disagree beyond their scatter, the worst first.
    pub fn contradictions(&self) -> &[Contradiction] {
        &self.contradictions
    }

    /// Where readings disagree with the files, with each other or among themselves, the worst first.
    pub fn clashes(&self) -> &[Clash] {
        &self.clashes
    }

    /// What another stroke would be worth.
    pub const fn advice(&self) -> &Advice {
        &self.advice
    }
}
