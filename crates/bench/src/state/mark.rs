//! What the page of marks remembers.

use serde::{Deserialize, Serialize};

/// Kind of test.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// Pyramid, two diagonals.
    #[default]
    Vickers,
    /// Ball, diameter.
    Brinell,
    /// Long pyramid, one diagonal.
    Knoop,
    /// Depth.
    Rockwell,
}

impl MarkKind {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Vickers, Self::Brinell, Self::Knoop, Self::Rockwell];

    /// The name that questions use.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Vickers => "vickers",
            Self::Brinell => "brinell",
            Self::Knoop => "knoop",
            Self::Rockwell => "rockwell",
        }
    }

    /// The force that the test usually has, with its unit; a Rockwell scale fixes its own.
    #[must_use]
    pub const fn usual_force(self) -> &'static str {
        match self {
            Self::Vickers => "30 kgf",
            Self::Brinell => "3000 kgf",
            Self::Knoop => "1 kgf",
            Self::Rockwell => "",
        }
    }
}

/// Where the mark stands on a round part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum RoundShape {
    /// On a shaft.
    #[default]
    Shaft,
    /// In a bore.
    Bore,
    /// On a ball.
    Ball,
}

/// A field of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each is what its name says, as typed")]
pub enum MarkField {
    First,
    Second,
    Depth,
    Force,
    Ball,
    Readings,
    Round,
    Thickness,
    Edge,
    Next,
}

impl MarkField {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::First,
        Self::Second,
        Self::Depth,
        Self::Force,
        Self::Ball,
        Self::Readings,
        Self::Round,
        Self::Thickness,
        Self::Edge,
        Self::Next,
    ];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::First => "mark-first",
            Self::Second => "mark-second",
            Self::Depth => "mark-depth",
            Self::Force => "mark-force",
            Self::Ball => "mark-ball",
            Self::Readings => "mark-readings",
            Self::Round => "mark-round",
            Self::Thickness => "mark-thickness",
            Self::Edge => "mark-edge",
            Self::Next => "mark-next",
        }
    }
}

/// The working of a mark as far as it has come; every text as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[expect(missing_docs, reason = "each text is what its name says, as typed")]
pub struct MarkState {
    /// Kind of test.
    pub kind: MarkKind,
    /// Symbol of the Rockwell scale.
    pub scale: String,
    /// Where on a round part.
    pub shape: RoundShape,
    /// One diagonal along the axis.
    pub along_axis: bool,
    pub first: String,
    pub second: String,
    pub depth: String,
    pub force: String,
    pub ball: String,
    pub readings: String,
    pub round: String,
    pub thickness: String,
    pub edge: String,
    pub next: String,
}

impl Default for MarkState {
    fn default() -> Self {
        let empty = String::new;
        Self {
            kind: MarkKind::default(),
            scale: "HRC".to_owned(),
            shape: RoundShape::default(),
            along_axis: false,
            first: empty(),
            second: empty(),
            depth: empty(),
            force: MarkKind::default().usual_force().to_owned(),
            ball: "10 mm".to_owned(),
            readings: empty(),
            round: empty(),
            thickness: empty(),
            edge: empty(),
            next: empty(),
        }
    }
}

impl MarkState {
    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: MarkField) -> &str {
        match field {
            MarkField::First => &self.first,
            MarkField::Second => &self.second,
            MarkField::Depth => &self.depth,
            MarkField::Force => &self.force,
            MarkField::Ball => &self.ball,
            MarkField::Readings => &self.readings,
            MarkField::Round => &self.round,
            MarkField::Thickness => &self.thickness,
            MarkField::Edge => &self.edge,
            MarkField::Next => &self.next,
        }
    }

    pub(crate) fn edit(&mut self, field: MarkField, text: String) {
        let own = match field {
            MarkField::First => &mut self.first,
            MarkField::Second => &mut self.second,
            MarkField::Depth => &mut self.depth,
            MarkField::Force => &mut self.force,
            MarkField::Ball => &mut self.ball,
            MarkField::Readings => &mut self.readings,
            MarkField::Round => &mut self.round,
            MarkField::Thickness => &mut self.thickness,
            MarkField::Edge => &mut self.edge,
            MarkField::Next => &mut self.next,
        };
        *own = text;
    }

    /// Another kind of test; a force that was typed stays, a usual one follows the kind.
    pub(crate) fn choose(&mut self, kind: MarkKind) {
        let usual = |kind: MarkKind| kind.usual_force();
        if MarkKind::ALL.into_iter().any(|kind| usual(kind) == self.force)
            && kind != MarkKind::Rockwell
        {
            usual(kind).clone_into(&mut self.force);
        }
        self.kind = kind;
    }
}
