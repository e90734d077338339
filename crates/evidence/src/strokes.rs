//! Files, strokes and proofs, as they were made.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use crate::error::{Error, What, within};
use crate::model::Outcome;

/// The most files a set may hold.
pub const MAX_FILES: usize = 24;
/// The most spots that are kept apart.
pub const MAX_SPOTS: usize = 4;
/// The most strokes on one file, proofs included; the product of their chances then stays far from the smallest `f64`.
pub const MAX_STROKES: usize = 99;

/// Two grades nearer than this, in HRC, are one.
const SAME_GRADE: f64 = 0.01;

/// A file of one set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct FileId(usize);

impl FileId {
    /// The place of the file in its set, softest first, counted from 0.
    #[must_use]
    pub const fn place(self) -> usize {
        self.0
    }
}

/// A set of graded files, softest first.
#[derive(Clone, Debug, PartialEq)]
pub struct FileSet {
    grades: Vec<f64>,
    tolerance: f64,
}

impl FileSet {
    /// A set of files marked with the given grades, graded to 1 HRC, in any order.
    ///
    /// # Units
    /// Grades in HRC.
    ///
    /// # Valid for
    /// 1 to 24 files of 30 to 70 HRC, all different.
    ///
    /// # Errors
    /// [`Error::NoFiles`], [`Error::TooManyFiles`], [`Error::OutOfRange`] for a grade, [`Error::EqualGrades`].
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::FileSet;
    /// let set = FileSet::new(&[65.0, 50.0, 55.0, 58.0, 62.0])?;
    /// assert_eq!(set.files().map(|(_, grade)| grade).next(), Some(50.0));
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn new(grades: &[f64]) -> Result<Self, Error> {
        if grades.is_empty() {
            return Err(Error::NoFiles);
        }
        if grades.len() > MAX_FILES {
            return Err(Error::TooManyFiles { count: grades.len(), max: MAX_FILES });
        }
        let mut sorted = Vec::with_capacity(grades.len());
        for &grade in grades {
            sorted.push(within(What::Grade, grade, 30.0, 70.0)?);
        }
        sort_by_number(&mut sorted, |grade| *grade);
        for (softer, harder) in sorted.iter().zip(sorted.iter().skip(1)) {
            if harder - softer < SAME_GRADE {
                return Err(Error::EqualGrades { grade: *harder });
            }
        }
        Ok(Self { grades: sorted, tolerance: 1.0 })
    }

    /// The six files of the trade: 40, 45, 50, 55, 60 and 65 HRC, graded to 1 HRC.
    ///
    /// # Source
    /// Trade sets, seen in two public shop notes; no maker's tolerance was found, 1 HRC is that of SAE J864.
    #[must_use]
    pub fn trade() -> Self {
        Self { grades: alloc::vec![40.0, 45.0, 50.0, 55.0, 60.0, 65.0], tolerance: 1.0 }
    }

    /// The same files, graded to another half-width.
    ///
    /// # Units
    /// `half_width` in HRC; the true hardness of a file lies evenly within it about the grade.
    ///
    /// # Valid for
    /// 0 to 5 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn with_tolerance(mut self, half_width: f64) -> Result<Self, Error> {
        self.tolerance = within(What::Tolerance, half_width, 0.0, 5.0)?;
        Ok(self)
    }

    /// The half-width to which the files are graded, in HRC.
    #[must_use]
    pub const fn tolerance(&self) -> f64 {
        self.tolerance
    }

    /// How many files there are.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.grades.len()
    }

    /// The files and their grades in HRC, softest first.
    #[must_use]
    pub fn files(&self) -> impl DoubleEndedIterator<Item = (FileId, f64)> + '_ {
        self.grades.iter().enumerate().map(|(place, grade)| (FileId(place), *grade))
    }

    /// The grade of a file in HRC, if the file belongs to this set.
    #[must_use]
    pub fn grade(&self, file: FileId) -> Option<f64> {
        self.grades.get(file.0).copied()
    }

    /// The file marked with a grade.
    ///
    /// # Units
    /// `grade` in HRC, met within 0.01 HRC.
    ///
    /// # Errors
    /// [`Error::NoSuchFile`].
    pub fn find(&self, grade: f64) -> Result<FileId, Error> {
        self.files()
            .find(|(_, own)| libm::fabs(own - grade) < SAME_GRADE / 2.0)
            .map(|(file, _)| file)
            .ok_or(Error::NoSuchFile { grade })
    }

    pub(crate) fn lowest(&self) -> f64 {
        self.grades.first().copied().unwrap_or(40.0)
    }

    pub(crate) fn highest(&self) -> f64 {
        self.grades.last().copied().unwrap_or(65.0)
    }
}

impl Default for FileSet {
    fn default() -> Self {
        Self::trade()
    }
}

/// One stroke on the part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stroke {
    file: FileId,
    outcome: Outcome,
    spot: u8,
}

impl Stroke {
    /// A stroke on the first spot of the part.
    #[must_use]
    pub const fn new(file: FileId, outcome: Outcome) -> Self {
        Self { file, outcome, spot: 0 }
    }

    /// The same stroke on another spot; spots are told apart by their number alone.
    #[must_use]
    pub const fn on_spot(mut self, spot: u8) -> Self {
        self.spot = spot;
        self
    }

    /// The file.
    #[must_use]
    pub const fn file(&self) -> FileId {
        self.file
    }

    /// What it showed.
    #[must_use]
    pub const fn outcome(&self) -> Outcome {
        self.outcome
    }

    /// The number of the spot, 0 for the first.
    #[must_use]
    pub const fn spot(&self) -> u8 {
        self.spot
    }
}

/// One stroke on a piece of known hardness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Proof {
    file: FileId,
    known: f64,
    outcome: Outcome,
}

impl Proof {
    /// A stroke on a piece of known hardness.
    ///
    /// # Units
    /// `known` in HRC.
    ///
    /// # Valid for
    /// 20 to 72 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn new(file: FileId, known: f64, outcome: Outcome) -> Result<Self, Error> {
        Ok(Self { file, known: within(What::KnownPiece, known, 20.0, 72.0)?, outcome })
    }

    /// The file.
    #[must_use]
    pub const fn file(&self) -> FileId {
        self.file
    }

    /// The hardness of the piece, in HRC.
    #[must_use]
    pub const fn known(&self) -> f64 {
        self.known
    }

    /// What it showed.
    #[must_use]
    pub const fn outcome(&self) -> Outcome {
        self.outcome
    }
}

/// How often each outcome was seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) bites: u32,
    pub(crate) slights: u32,
    pub(crate) skates: u32,
}

impl Tally {
    pub(crate) const fn add(&mut self, outcome: Outcome) {
        match outcome {
            Outcome::Bite => self.bites += 1,
            Outcome::Slight => self.slights += 1,
            Outcome::Skate => self.skates += 1,
        }
    }

    pub(crate) const fn is_empty(self) -> bool {
        self.bites == 0 && self.slights == 0 && self.skates == 0
    }
}
