//! Labels of the page that works a mark out. They have a function of their own, so that they can be loaded
//! with that page; the same holds for every page that is a part of its own.

use super::{Language, mark_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum Mark {
    Kind,
    Vickers,
    Brinell,
    Knoop,
    Rockwell,
    Scale,
    DrawVickers,
    DrawBrinell,
    DrawKnoop,
    DrawRockwell,
    FirstDiagonal,
    SecondDiagonal,
    LongDiagonal,
    Diameter,
    SecondDiameter,
    Depth,
    Force,
    Ball,
    Readings,
    ReadingsHint,
    LengthHint,
    ForceHint,
    RoundTitle,
    Round,
    RoundHint,
    RoundShape,
    Shaft,
    Bore,
    BallShape,
    Diagonals,
    Diagonals45,
    DiagonalsAlong,
    ThinTitle,
    Thickness,
    ThicknessHint,
    Edge,
    Next,
    Empty,
    Rules,
    Better,
    OtherScales,
    TesterTitle,
}

impl Language {
    /// A label of the page that works a mark out.
    #[must_use]
    pub const fn mark(self, mark: Mark) -> &'static str {
        match self {
            Self::English => mark_english::say(mark),
        }
    }
}
