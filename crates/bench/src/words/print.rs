//! What only paper says; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_hardness::Axis;

use super::{Language, print_english};

/// A sentence or label of a printed sheet.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Print<'a> {
    // Conversions.
    Strip { span: &'a str },
    Chart { span: &'a str },
    SheetNumber { number: usize, count: usize },
    Estimates,
    WidthUnderName(&'a str),
    Recalled,
    StripEnds,
    ChartCells,
    TableChanges,
    Version { data: &'a str },

    // The card of a file test.
    Card,
    CardPart,
    CardDate,
    CardSteel,
    CardTemper,
    CardSpot,
    CardGrind,
    CardPush,
    CardTell,
    CardOrder,
    CardFile,
    CardStroke(u32),
    CardRule,
    CardBracket,
    CardWidth { skates: &'a str, bites: &'a str, low: &'a str, high: &'a str, half: &'a str },
    CardDisagree,
    CardCaution,

    // The thickness chart.
    Thickness,
    ThicknessMeaning,
    ThicknessAxis,
    ThicknessCaution,
    ThicknessRules { named: &'a str },
    ThicknessSteps,
}

/// Why a sheet cannot be drawn.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Unprintable<'a> {
    NoSpan,
    NoScales,
    ScaleTwice(Axis),
    UnreadableSpan { given: &'a str },
    StepUnfit { given: &'a str, unit: &'a str },
}

impl Language {
    /// Says a phrase of a printed sheet.
    #[must_use]
    pub fn print(self, phrase: Print<'_>) -> Cow<'static, str> {
        match self {
            Self::English => print_english::say(phrase),
        }
    }

    /// Message, what would be accepted, and the way out.
    #[must_use]
    pub fn unprintable(self, what: Unprintable<'_>) -> [Cow<'static, str>; 3] {
        match self {
            Self::English => print_english::refuse(what),
        }
    }
}
