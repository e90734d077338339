//! What is said of parts as files, lists and on paper; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use serde::Serialize;

use super::{Language, part_english};
use crate::card::{EntryKind, Standing};

/// What a fact of a card is about, in the order in which facts are told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum FactLabel {
    Name,
    Steel,
    Composition,
    Origin,
    Section,
    Kind,
    Wanted,
    Zones,
    Bath,
    Air,
    Stage,
    Tempers,
    AsQuenched,
    LookedAt,
    Typed,
    Circumstances,
    Files,
    Conditions,
    OwnFiles,
    Expected,
    Says,
    Paper,
    PaperSays,
    Results,
    Seen,
    Notes,
    Story,
    Recipe,
    Photos,
}

impl FactLabel {
    /// All of them.
    pub const ALL: [Self; 29] = [
        Self::Name,
        Self::Steel,
        Self::Composition,
        Self::Origin,
        Self::Section,
        Self::Kind,
        Self::Wanted,
        Self::Zones,
        Self::Bath,
        Self::Air,
        Self::Stage,
        Self::Tempers,
        Self::AsQuenched,
        Self::LookedAt,
        Self::Typed,
        Self::Circumstances,
        Self::Files,
        Self::Conditions,
        Self::OwnFiles,
        Self::Expected,
        Self::Says,
        Self::Paper,
        Self::PaperSays,
        Self::Results,
        Self::Seen,
        Self::Notes,
        Self::Story,
        Self::Recipe,
        Self::Photos,
    ];
}

/// A phrase about a part.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum PartWords<'a> {
    Fact(FactLabel),
    Kind(EntryKind),
    SteelEntry,
    Standing(Standing),
    NoName,
    Imported { name: &'a str },

    // Facts.
    Picked { name: &'a str, grade: &'a str },
    OwnBar { bar: &'a str, composition: &'a str },
    AlsoComposition { composition: &'a str },
    LongOnly { length: &'a str },
    Zone { place: &'a str, target: &'a str },
    BathAt { temperature: &'a str },
    Flash { temperature: &'a str },
    LookedAt { at: &'a str, held: &'a str },
    Result { hardness: &'a str, temper: &'a str, steel: &'a str },
    Set { grades: &'a str },
    GradedTo { tolerance: &'a str },
    Hand { hand: &'a str },
    Proof { file: &'a str, known: &'a str, word: &'a str },
    SkinOff,
    SkinOn,
    OnEdge,
    OtherFinish,
    CarbideRich,
    Expected { mean: &'a str, sd: &'a str, on: bool },
    Comparison { text: &'a str, known: &'a str, on_known: &'a str },
    With { instrument: &'a str, text: &'a str },
    PaperOf { paper: &'a str },
    PaperSteel { steel: &'a str },
    PaperRule { rule: &'a str },
    PaperPlace { place: &'a str, claimed: &'a str },
    PaperWithFiles,
    Recipe { of: &'a str },
    Photos { count: usize },

    // The story.
    Date { day: u8, month: u8, year: i32 },
    SaidBy { app: &'a str, data: &'a str },
    Outdated { app: &'a str, data: &'a str, now_app: &'a str, now_data: &'a str },
    SaysTheSame { now: &'a str },
    SaysOtherwise { then: &'a str, now: &'a str },

    // The text that is sent, the list of results, the sheet.
    Part { name: &'a str },
    WhatIs,
    WhatDone,
    WhatFound,
    Nothing,
    WhoSays { app: &'a str, data: &'a str },
    Judgement,
    Now,
    Earlier { count: usize },
    Shortened { what: &'a str },
    Handwriting,
    Demo,

    // A preview of an import.
    Counts { parts: usize, entries: usize, strokes: usize, photos: usize },
}

/// Why a file of parts is not taken.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum PartRefusal<'a> {
    TooLarge { most: &'a str },
    NotText { line: usize },
    Empty,
    Cut { line: usize, column: usize },
    NotJson { line: usize, column: usize },
    TooDeep { line: usize, column: usize, most: usize },
    TooMuch { line: usize, column: usize, parts: usize, inner: usize },
    NotParts { found: &'a str },
    NoVersion,
    Newer { found: &'a str, known: u32 },
    Field { place: &'a str, field: &'a str, line: usize },
    Missing { place: &'a str, field: &'a str, line: usize },
    Double { place: &'a str, field: &'a str, line: usize },
    Shape { place: &'a str, line: usize, found: Shape, wanted: Shape },
    Id { place: &'a str },
    TwiceId { place: &'a str },
    Moment { place: &'a str },
    TooLong { place: &'a str, most: usize },
    Control { place: &'a str },
    OneOf { place: &'a str, known: &'a str },
    Range { place: &'a str, low: &'a str, high: &'a str },
    UpsideDown { place: &'a str },
    TooMany { place: &'a str, most: usize },
    NotBase64 { place: &'a str },
    NotPicture { place: &'a str, media_type: &'a str },
    PictureTooLarge { place: &'a str, most: &'a str },
    NoSuchPart,
    SeveralParts { names: &'a str },
}

/// What stands at a place of a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum Shape {
    Text,
    Number,
    Whole,
    Switch,
    List,
    Object,
    Nothing,
    Other,
}

impl Language {
    /// Says a phrase about a part.
    #[must_use]
    pub fn part(self, phrase: PartWords<'_>) -> Cow<'static, str> {
        match self {
            Self::English => part_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn part_refused(self, what: PartRefusal<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => part_english::refuse(what),
        }
    }
}
