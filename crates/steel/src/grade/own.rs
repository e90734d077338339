//! A steel that is not in the list, by its composition.

use alloc::string::String;
use core::fmt;

use super::find;
use crate::composition::CompositionLimits;

/// A grade of the person's own: a name and what its paper says of the composition.
///
/// # Example
/// ```
/// use biteband_steel::{CompositionLimits, Element};
/// use biteband_steel::grade::{OwnGrade, OwnGradeError};
/// let limits = CompositionLimits::new(&[(Element::C, Some(0.38), Some(0.43))])?;
/// let own = OwnGrade::new(" shaft from the mill ", limits)?;
/// assert_eq!(own.name(), "shaft from the mill");
/// assert!(matches!(OwnGrade::new("4140", limits), Err(OwnGradeError::Known { .. })));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct OwnGrade {
    name: String,
    limits: CompositionLimits,
}

/// Why a name is refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OwnGradeError {
    /// Without a name nobody finds it again.
    NoName,
    /// Longer than a label.
    TooLong {
        /// Signs as given.
        given: usize,
        /// Signs allowed.
        most: usize,
    },
    /// A grade of the data has this name, and two steels must not share one.
    Known {
        /// Key of that grade.
        grade: &'static str,
    },
}

impl OwnGradeError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::NoName => "steel.own_no_name",
            Self::TooLong { .. } => "steel.own_name_too_long",
            Self::Known { .. } => "steel.own_name_known",
        }
    }
}

impl fmt::Display for OwnGradeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoName => f.write_str("a grade of your own needs a name"),
            Self::TooLong { given, most } => {
                write!(f, "a name of {given} signs is longer than {most}")
            }
            Self::Known { grade } => write!(f, "the name already leads to the grade {grade}"),
        }
    }
}

impl core::error::Error for OwnGradeError {}

impl OwnGrade {
    /// Longest name, in signs.
    pub const LONGEST_NAME: usize = 60;

    /// Makes a grade; blanks around the name are dropped.
    ///
    /// # Errors
    /// [`OwnGradeError`]: no name, a name too long, or the name of a known grade.
    pub fn new(name: &str, limits: CompositionLimits) -> Result<Self, OwnGradeError> {
        let name = name.trim();
        if name.is_empty() {
            return Err(OwnGradeError::NoName);
        }
        let given = name.chars().count();
        if given > Self::LONGEST_NAME {
            return Err(OwnGradeError::TooLong { given, most: Self::LONGEST_NAME });
        }
        if let Ok(found) = find(name) {
            return Err(OwnGradeError::Known { grade: found.grade.key() });
        }
        Ok(Self { name: name.into(), limits })
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Limits of its composition, or the shares of one heat as limits of no width.
    #[must_use]
    pub const fn limits(&self) -> &CompositionLimits {
        &self.limits
    }
}
