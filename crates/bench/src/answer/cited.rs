//! Where a figure about a steel stands; the same in every answer.

use biteband_steel::Cited;
use serde::Serialize;

/// Where a part of the answer stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct CitedAnswer {
    /// Stable names of the sources.
    pub sources: &'static [&'static str],
    /// `seen`, `part`, `recalled` or `ours`.
    pub seen: &'static str,
    /// `high`, `medium` or `low`.
    pub confidence: &'static str,
}

impl From<Cited> for CitedAnswer {
    fn from(cited: Cited) -> Self {
        Self { sources: cited.sources, seen: cited.seen.key(), confidence: cited.confidence.key() }
    }
}
