//! Where numbers come from.

use crate::generated::SOURCES;

/// How a source was known when its numbers were taken down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Read in print.
    Seen,
    /// Part read, part from memory.
    Part,
    /// From memory, checked as the note says.
    Recalled,
    /// Worked out in this project.
    Ours,
}

impl Seen {
    /// The word used in JSON and in data files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Seen => "seen",
            Self::Part => "part",
            Self::Recalled => "recalled",
            Self::Ours => "ours",
        }
    }
}

/// A standard, paper, book, data set or own working.
#[derive(Clone, Copy, Debug)]
pub struct Source {
    pub(crate) key: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) body: &'static str,
    pub(crate) title: &'static str,
    pub(crate) edition: &'static str,
    pub(crate) seen: Seen,
    pub(crate) note: &'static str,
}

impl Source {
    /// A source of a crate above this one, from its own data files.
    #[must_use]
    pub const fn new(
        key: &'static str,
        kind: &'static str,
        body: &'static str,
        title: &'static str,
        edition: &'static str,
        seen: Seen,
        note: &'static str,
    ) -> Self {
        Self { key, kind, body, title, edition, seen, note }
    }

    /// Stable name.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        self.key
    }

    /// Standard, paper, book, data set or own working.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        self.kind
    }

    /// Author or publisher.
    #[must_use]
    pub const fn body(&self) -> &'static str {
        self.body
    }

    /// Title.
    #[must_use]
    pub const fn title(&self) -> &'static str {
        self.title
    }

    /// Edition and part.
    #[must_use]
    pub const fn edition(&self) -> &'static str {
        self.edition
    }

    /// Read or recalled.
    #[must_use]
    pub const fn seen(&self) -> Seen {
        self.seen
    }

    /// What was read, what was recalled and how it was checked.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }
}

/// Names one source of this project.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SourceId(pub(crate) u8);

impl SourceId {
    /// Every source, in the order of the data file.
    pub fn all() -> impl Iterator<Item = (Self, &'static Source)> {
        (0u8..).zip(SOURCES.iter()).map(|(i, source)| (Self(i), source))
    }

    /// Finds a source by its stable name.
    ///
    /// ```
    /// use biteband_hardness::SourceId;
    /// let (_, source) = SourceId::find("astm-e140").unwrap();
    /// assert_eq!(source.kind(), "standard");
    /// ```
    #[must_use]
    pub fn find(key: &str) -> Option<(Self, &'static Source)> {
        Self::all().find(|(_, source)| source.key.eq_ignore_ascii_case(key.trim()))
    }

    /// What the name stands for; `None` cannot happen for a name that came from this crate.
    #[must_use]
    pub fn get(self) -> Option<&'static Source> {
        SOURCES.get(usize::from(self.0))
    }
}
