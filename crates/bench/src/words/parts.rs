//! What the page of parts says; loaded with it, as [`super::Mark`].

use super::{Language, parts_english};
use crate::card::find::Order;
use crate::card::merge::Choice;
use crate::state::{PartField, PartNotice};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum PartsPage {
    // The list and the choice.
    List,
    Choose,
    OrderTitle,
    Sort(Order),
    Empty,
    NoneFound,
    InHand,
    Demo,
    New,
    Begin,
    PutAway,
    All,
    // The card.
    Field(PartField),
    Hint(PartField),
    Missing(PartField),
    MissingInstead(PartField),
    AddZone,
    AddRemark,
    AddHardened,
    AddTempered,
    StruckEnd,
    StruckTarget,
    StruckKey,
    Zones,
    ZonesWhy,
    AddTitle,
    Facts,
    ToSteel,
    ToFileTest,
    ToTemper,
    ToUnknown,
    ToClaim,
    Steel,
    FileTest,
    Temper,
    Unknown,
    Paper,
    Recipe,
    Remove,
    PutBack,
    Today,
    Tidy,
    Close,
    // Photos.
    Photos,
    TakePhoto,
    PhotoText,
    PhotoHint,
    PhotoUnread,
    PhotosFull,
    PhotoGone,
    PhotoTooLate,
    PhotoMissing,
    // What can be done with it.
    Print,
    Send,
    SendText,
    Copied,
    NotCopied,
    UseAsRecipe,
    RecipeMade,
    Compare,
    CompareWith,
    CompareNone,
    CompareEnd,
    Differs,
    Same,
    Delete,
    ForGood,
    ForGoodAsk,
    Keep,
    Undo,
    Dismiss,
    Deleted,
    Back,
    BackHeld,
    // Cards that cannot be read.
    Damaged,
    DamagedWhy,
    NewerWhy,
    Stored,
    SaveText,
    // Files.
    Files,
    ExportAll,
    ExportThis,
    Csv,
    Import,
    ImportHint,
    ImportTitle,
    Cancel,
    Nothing,
    Added,
    Raised,
    Pictures,
    Old,
    There,
    Conflicts,
    Mine,
    Theirs,
    Pick(Choice),
    UndoImport,
    ChangedMeanwhile,
    NotHandedOut,
    FileUnread,
    FileUnreadInstead,
    // What the device keeps.
    Promised,
    NotPromised,
    OnlyMemory,
    NotStored,
    // The demonstration.
    ShowDemo,
    DemoWhy,
    RemoveDemo,
    DemoGone,
    // What the keeping of cards tells.
    Told(PartNotice),
}

/// A sentence about parts.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum PartsSays<'a> {
    Shown { shown: usize, all: usize },
    ShowAll { all: usize },
    Paper { paper: &'a str },
    Day { day: u8, month: u8 },
    Story { name: &'a str },
    RemoveOf { what: &'a str },
    PhotoOf { name: &'a str, number: usize },
    Deleted { name: &'a str },
    Copy { name: &'a str },
    NeverExported { parts: usize },
    ChangedSince { parts: usize, date: &'a str },
    AllExported { date: &'a str },
    Written { parts: usize, file: &'a str },
    WouldBeRefused { why: &'a str },
    Apply { add: usize, replace: usize },
    Imported { add: usize, replace: usize },
    ImportUndone { stay: usize },
    Unread { key: &'a str },
}

impl Language {
    /// A label of the page of parts.
    #[must_use]
    pub const fn parts_page(self, label: PartsPage) -> &'static str {
        match self {
            Self::English => parts_english::label(label),
        }
    }

    /// A sentence about parts.
    #[must_use]
    pub fn parts(self, phrase: PartsSays<'_>) -> String {
        match self {
            Self::English => parts_english::say(phrase),
        }
    }

    /// Whether a place of a part is one that is struck or strikes, by its name.
    #[must_use]
    pub fn is_struck(self, place: &str) -> bool {
        match self {
            Self::English => parts_english::is_struck(place),
        }
    }
}
