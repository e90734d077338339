//! Where the numbers about steels come from.

use biteband_hardness::{Seen, Source};

use crate::generated::sources::SOURCES;

/// How far the figure itself is trusted; it says nothing about a given bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// Agrees wherever it was looked for.
    High,
    /// One source, or sources that differ a little.
    Medium,
    /// Common practice or memory without a check.
    Low,
}

impl Confidence {
    /// The word used in JSON and in data files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::High => "high",
            Self::Medium => "medium",
            Self::Low => "low",
        }
    }
}

/// Where a number stands, and whether it was read there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cited {
    /// Keys of the sources, in the order of their weight, as in `data/sources.csv`.
    pub sources: &'static [&'static str],
    /// Read or recalled.
    pub seen: Seen,
    /// How far the figure is trusted.
    pub confidence: Confidence,
}

impl Cited {
    /// The sources themselves.
    pub fn works(self) -> impl Iterator<Item = &'static Source> {
        self.sources.iter().filter_map(|key| source(key))
    }
}

/// Every source of this crate: those of the data on grades, then those of the methods.
#[must_use]
pub const fn sources() -> &'static [Source] {
    SOURCES
}

/// Finds a source by its stable name, in any case.
///
/// ```
/// let standard = biteband_steel::source("ISO4957").unwrap();
/// assert_eq!(standard.kind(), "standard");
/// ```
#[must_use]
pub fn source(key: &str) -> Option<&'static Source> {
    SOURCES.iter().find(|source| source.key().eq_ignore_ascii_case(key.trim()))
}
