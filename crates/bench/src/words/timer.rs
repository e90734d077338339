//! What the page of timers says; loaded with it, as [`super::Mark`].

use super::{Language, timer_english};
use crate::state::TimerKind;

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum TimerPage {
    Title,
    KindTitle,
    Kind(TimerKind),
    Part,
    PartHint,
    Keys,
    Length,
    LengthHint,
    Start,
    Stop,
    Remove,
    Quiet,
    TrySound,
    AskNotes,
    Empty,
    UnderAMinute,
    ClockSetBack,
    NotesTitle,
    ScreenKept,
    ScreenNotKept,
    SoundWaits,
    NoSound,
    NoBuzz,
    KeepInFront,
    Silent,
    Closed,
    SecondClock,
}

/// A sentence about one timer.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum TimerSays<'a> {
    Name { kind: TimerKind, label: &'a str },
    Minutes { hours: i64, minutes: i64 },
    More { time: &'a str },
    Left { name: &'a str, left: &'a str },
    Chip { left: &'a str, others: usize },
    RingsAt { time: &'a str, days: i64 },
    WasUpAt { time: &'a str, days: i64 },
    TimeIsUp { name: &'a str },
    RangLate { late: &'a str },
    PutBack { name: &'a str },
    Full { most: usize },
}

impl Language {
    /// A label of the page of timers.
    #[must_use]
    pub const fn timer_page(self, label: TimerPage) -> &'static str {
        match self {
            Self::English => timer_english::label(label),
        }
    }

    /// A sentence about a timer.
    #[must_use]
    pub fn timer(self, phrase: TimerSays<'_>) -> String {
        match self {
            Self::English => timer_english::say(phrase),
        }
    }
}
