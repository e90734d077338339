//! What is refused, and the way out.

use core::fmt;

use biteband_quantity::Shown;

/// The quantity of which a value lay outside its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum What {
    /// The hardness a file is marked with, in HRC.
    Grade,
    /// The half-width to which files are graded, in HRC.
    Tolerance,
    /// The hardness of the piece a file is proved on, in HRC.
    KnownPiece,
    /// The mean of a normal prior, in HRC.
    PriorMean,
    /// The standard deviation of a normal prior, in HRC.
    PriorSd,
    /// A limit of the wanted hardness, in HRC.
    TargetLimit,
    /// A limit of a flat belief, in HRC.
    BeliefLimit,
    /// The level of an interval, between 0 and 1.
    Level,
    /// A reading or the hardness of a known piece, in HRC or its equivalent.
    Reading,
    /// The standard uncertainty of a single reading, in HRC.
    ReadingSd,
    /// The standard uncertainty of the bias of an instrument, in HRC.
    SharedSd,
    /// The standard uncertainty of a conversion, in HRC.
    ConversionSd,
    /// The standard deviation from spot to spot, in HRC.
    SpotSd,
    /// The chance that a reading is a slip, between 0 and 1.
    SlipRate,
}

/// Why a question about file strokes or readings is not answered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// A set without files.
    NoFiles,
    /// More files than a set may hold.
    TooManyFiles {
        /// How many were given.
        count: usize,
        /// How many a set may hold.
        max: usize,
    },
    /// Two files of one grade.
    EqualGrades {
        /// The grade given twice, in HRC.
        grade: f64,
    },
    /// A value outside its range, or not a number.
    OutOfRange {
        /// The quantity.
        what: What,
        /// The value given.
        given: f64,
        /// The least value allowed.
        min: f64,
        /// The greatest value allowed.
        max: f64,
    },
    /// A grade that no file of the set is marked with.
    NoSuchFile {
        /// The grade asked for, in HRC.
        grade: f64,
    },
    /// A file identifier that belongs to another set.
    ForeignFile {
        /// The place of the file in its own set, counted from 0.
        place: usize,
        /// How many files this set has.
        count: usize,
    },
    /// More strokes, proofs included, on one file than can be told apart from a mistake.
    TooManyStrokes {
        /// The file's grade, in HRC.
        grade: f64,
        /// The greatest number allowed.
        max: usize,
    },
    /// More spots than can be kept apart.
    TooManySpots {
        /// The greatest number allowed.
        max: usize,
    },
    /// A slight bite among answers that were to be yes or no.
    SlightInYesNo {
        /// The file's grade, in HRC.
        grade: f64,
    },
    /// A target whose lower limit is not below its upper limit.
    TargetUpsideDown {
        /// The lower limit given, in HRC.
        low: f64,
        /// The upper limit given, in HRC.
        high: f64,
    },
    /// A flat belief whose lower limit is not below its upper limit.
    BeliefUpsideDown {
        /// The lower limit given, in HRC.
        low: f64,
        /// The upper limit given, in HRC.
        high: f64,
    },
    /// A group without readings.
    NoReadings,
    /// More readings in one group than can be told apart from a mistake.
    TooManyReadings {
        /// How many were given.
        count: usize,
        /// How many a group may hold.
        max: usize,
    },
    /// More groups of readings than are kept apart.
    TooManyGroups {
        /// The greatest number allowed.
        max: usize,
    },
    /// Two beliefs that leave no hardness possible together.
    NothingLeft,
}

impl Error {
    /// The stable name of the refusal, for logs, files and tests.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Error, FileSet};
    /// assert_eq!(FileSet::new(&[]), Err(Error::NoFiles));
    /// assert_eq!(Error::NoFiles.code(), "evidence.no_files");
    /// ```
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoFiles => "evidence.no_files",
            Self::TooManyFiles { .. } => "evidence.too_many_files",
            Self::EqualGrades { .. } => "evidence.equal_grades",
            Self::OutOfRange { .. } => "evidence.out_of_range",
            Self::NoSuchFile { .. } => "evidence.no_such_file",
            Self::ForeignFile { .. } => "evidence.foreign_file",
            Self::TooManyStrokes { .. } => "evidence.too_many_strokes",
            Self::TooManySpots { .. } => "evidence.too_many_spots",
            Self::SlightInYesNo { .. } => "evidence.slight_in_yes_no",
            Self::TargetUpsideDown { .. } => "evidence.target_upside_down",
            Self::BeliefUpsideDown { .. } => "evidence.belief_upside_down",
            Self::NoReadings => "evidence.no_readings",
            Self::TooManyReadings { .. } => "evidence.too_many_readings",
            Self::TooManyGroups { .. } => "evidence.too_many_groups",
            Self::NothingLeft => "evidence.nothing_left",
        }
    }
}

impl What {
    /// The value with its unit and the way out, for the sentence of [`Error::OutOfRange`].
    const fn words(self) -> (&'static str, &'static str, &'static str) {
        match self {
            Self::Grade => (
                "a file's grade",
                " HRC",
                "leave out a file marked otherwise, since its bite is not described here",
            ),
            Self::Tolerance => {
                ("the tolerance of the grades", " HRC", "use 1 HRC if it is not known")
            }
            Self::KnownPiece => {
                ("the known piece", " HRC", "prove the file on a piece near the file's own grade")
            }
            Self::PriorMean => {
                ("the expected hardness", " HRC", "leave it out to let the files speak alone")
            }
            Self::PriorSd => (
                "the standard deviation of the expected hardness",
                " HRC",
                "leave it out to let the files speak alone",
            ),
            Self::TargetLimit => {
                ("a limit of the target", " HRC", "give a target that files can speak about")
            }
            Self::BeliefLimit => ("a limit of the belief", " HRC", "give limits inside the axis"),
            Self::Level => ("the level of an interval", "", "use 0.95 if in doubt"),
            Self::Reading => (
                "a reading",
                " HRC",
                "check the number and its scale, since softer and harder parts lie off the axis of files and readings",
            ),
            Self::ReadingSd => (
                "the standard uncertainty of a reading",
                " HRC",
                "give the scatter of repeats on one piece",
            ),
            Self::SharedSd => (
                "the standard uncertainty of the instrument",
                " HRC",
                "leave out an instrument that is off by more",
            ),
            Self::ConversionSd => (
                "the standard uncertainty of the conversion",
                " HRC",
                "leave it out when the instrument reads HRC",
            ),
            Self::SpotSd => {
                ("the standard deviation from spot to spot", " HRC", "use 0.5 HRC if in doubt")
            }
            Self::SlipRate => ("the chance of a mistyped reading", "", "use 0.01 if in doubt"),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::NoFiles => {
                f.write_str("the set holds no file, at least 1 is needed: give the grades marked on the files")
            }
            Self::TooManyFiles { count, max } => write!(
                f,
                "the set holds {count} files, at most {max} are kept apart: leave out files that were not used"
            ),
            Self::EqualGrades { grade } => write!(
                f,
                "two files are marked {grade} HRC, grades must differ by 0.01 HRC or more: count the strokes of both as one file's or give each its measured grade",
                grade = Shown(grade),
            ),
            Self::OutOfRange { what, given, min, max } => {
                let (name, unit, way_out) = what.words();
                let (given, min, max) = (Shown(given), Shown(min), Shown(max));
                write!(f, "{name} is {given}{unit}, the range is {min} to {max}{unit}: {way_out}")
            }
            Self::NoSuchFile { grade } => write!(
                f,
                "no file of the set is marked {grade} HRC, only grades of the set can be stroked: add the file to the set",
                grade = Shown(grade),
            ),
            Self::ForeignFile { place, count } => write!(
                f,
                "the stroke names file {place} counted from 0, the set holds {count}: take the file from this set"
            ),
            Self::TooManyStrokes { grade, max } => write!(
                f,
                "the file marked {grade} HRC has more than {max} strokes, more teach nothing: leave out the rest",
                grade = Shown(grade),
            ),
            Self::TooManySpots { max } => write!(
                f,
                "the strokes lie on more than {max} spots, at most {max} are kept apart: assess the part in two goes"
            ),
            Self::SlightInYesNo { grade } => write!(
                f,
                "a slight bite of the file marked {grade} HRC stands among yes or no answers, which are bites and skates: answer three ways or decide the stroke",
                grade = Shown(grade),
            ),
            Self::TargetUpsideDown { low, high } => write!(
                f,
                "the target runs from {low} to {high} HRC, its lower limit must be below its upper limit: exchange the limits or widen them",
                low = Shown(low),
                high = Shown(high),
            ),
            Self::BeliefUpsideDown { low, high } => write!(
                f,
                "the belief runs from {low} to {high} HRC, its lower limit must be below its upper limit: exchange the limits or widen them",
                low = Shown(low),
                high = Shown(high),
            ),
            Self::NoReadings => f.write_str(
                "the group holds no reading, at least 1 is needed: leave the instrument out or read the part",
            ),
            Self::TooManyReadings { count, max } => write!(
                f,
                "the group holds {count} readings, more than {max} teach nothing: leave out the rest"
            ),
            Self::TooManyGroups { max } => write!(
                f,
                "the readings come from more than {max} instruments, at most {max} are kept apart: leave out the least sure"
            ),
            Self::NothingLeft => f.write_str(
                "the two beliefs share no possible hardness, one of them must be wrong: check the evidence behind each",
            ),
        }
    }
}

impl core::error::Error for Error {}

/// The value itself if it is a number inside `min..=max`, with a negative zero made plain.
pub(crate) fn within(what: What, given: f64, min: f64, max: f64) -> Result<f64, Error> {
    // A comparison with a not-a-number is false, so this refuses it together with the infinities.
    if given >= min && given <= max {
        Ok(given + 0.0)
    } else {
        Err(Error::OutOfRange { what, given, min, max })
    }
}
