//! Fields that are typed into, and the keys of the page's own number pad.

use crate::card::file::{MOST_NAME, MOST_TEXT};

use super::{ClaimField, MarkField, PartField, SteelField, TemperField, TimerField, UnknownField};

/// A field that is typed into.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Field {
    /// The hardness to convert.
    Convert,
    /// Wanted hardness.
    Target,
    /// Grades of the files.
    Grades,
    /// Tolerance of the grades.
    Tolerance,
    /// Known hardness of a piece to prove files on.
    ProofKnown,
    /// Expected hardness.
    PriorMean,
    /// Its standard deviation.
    PriorSd,
    /// Ends of the scale on paper.
    PaperSpan,
    /// Something about a mark.
    Mark(MarkField),
    /// Readings of an instrument.
    Reading,
    /// Something about a steel, its section or its bath.
    Steel(SteelField),
    /// Something about tempering.
    Temper(TemperField),
    /// Something about the next timer.
    Timer(TimerField),
    /// What was seen of an unknown bar.
    Unknown(UnknownField),
    /// Something about a claim.
    Claim(ClaimField),
    /// Something about a part.
    Part(PartField),
}

impl Field {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Convert,
        Self::Target,
        Self::Grades,
        Self::Tolerance,
        Self::ProofKnown,
        Self::PriorMean,
        Self::PriorSd,
        Self::PaperSpan,
        Self::Reading,
    ];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Convert => "convert",
            Self::Target => "target",
            Self::Grades => "grades",
            Self::Tolerance => "tolerance",
            Self::ProofKnown => "proof-known",
            Self::PriorMean => "prior-mean",
            Self::PriorSd => "prior-sd",
            Self::PaperSpan => "paper-span",
            Self::Mark(field) => field.key(),
            Self::Reading => "reading",
            Self::Steel(field) => field.key(),
            Self::Temper(field) => field.key(),
            Self::Timer(field) => field.key(),
            Self::Unknown(field) => field.key(),
            Self::Claim(field) => field.key(),
            Self::Part(field) => field.key(),
        }
    }

    /// How many letters it takes, so that a card can be read again whatever is typed.
    #[must_use]
    pub const fn most(self) -> usize {
        match self {
            Self::Part(PartField::Name) => MOST_NAME,
            _ => MOST_TEXT,
        }
    }

    /// The rows of its number pad: what each key types; none where words are typed, which is the part of
    /// the device's own keyboard.
    #[must_use]
    pub const fn pad(self) -> &'static [&'static [PadKey]] {
        use PadKey::{Erase, Type};
        match self {
            Self::Convert | Self::Target | Self::PaperSpan | Self::Steel(SteelField::Target) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type("-")],
                &[Type("1"), Type("2"), Type("3"), Type("±")],
                &[Type("."), Type("0"), Type(","), Type("/")],
            ],
            // Names and symbols are letters.
            Self::Steel(
                SteelField::Query | SteelField::Own | SteelField::OwnName | SteelField::Kind,
            )
            | Self::Part(_)
            | Self::Timer(TimerField::Label)
            | Self::Claim(ClaimField::Steel) => &[],
            Self::Timer(TimerField::Length) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" min")],
                &[Type("1"), Type("2"), Type("3"), Type(" h")],
                &[Type("0"), Type("."), Type(","), Type(" ")],
            ],
            Self::Steel(SteelField::Size | SteelField::Second | SteelField::Length) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" mm")],
                &[Type("1"), Type("2"), Type("3"), Type(" in")],
                &[Type("0"), Type("."), Type(","), Type("/"), Type("-")],
            ],
            Self::Steel(SteelField::Litres) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" L")],
                &[Type("1"), Type("2"), Type("3"), Type(" US gal")],
                &[Type("0"), Type("."), Type(",")],
            ],
            // A paper states its hardness in two scales with a slash between.
            Self::Claim(ClaimField::Says) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" HRC")],
                &[Type("1"), Type("2"), Type("3"), Type(" HBW")],
                &[Type("."), Type("0"), Type(","), Type(" HV")],
                &[Type("-"), Type("±"), Type(" "), Type("/")],
            ],
            Self::Reading
            | Self::Claim(ClaimField::Measured)
            | Self::Temper(TemperField::Measured | TemperField::AsQuenched) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" HRC")],
                &[Type("1"), Type("2"), Type("3"), Type(" HBW")],
                &[Type("."), Type("0"), Type(","), Type(" HV")],
                &[Type("-"), Type("±"), Type(" "), Type(";")],
            ],
            Self::Temper(_) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" °C")],
                &[Type("1"), Type("2"), Type("3"), Type(" °F")],
                &[Type("0"), Type("."), Type(" / "), Type(" h"), Type(" min")],
            ],
            Self::Unknown(_) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type("-")],
                &[Type("1"), Type("2"), Type("3"), Type(">")],
                &[Type("."), Type("0"), Type(","), Type("<")],
            ],
            Self::Steel(_) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" °C")],
                &[Type("1"), Type("2"), Type("3"), Type(" °F")],
                &[Type("0"), Type("."), Type(","), Type("-")],
            ],
            Self::Mark(MarkField::Force) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" kgf")],
                &[Type("1"), Type("2"), Type("3"), Type(" N")],
                &[Type("0"), Type("."), Type(",")],
            ],
            Self::Mark(MarkField::Readings) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(".")],
                &[Type("1"), Type("2"), Type("3"), Type(",")],
                &[Type("0"), Type("; ")],
            ],
            Self::Mark(_) => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" mm")],
                &[Type("1"), Type("2"), Type("3"), Type(" in")],
                &[Type("0"), Type("."), Type(","), Type("/"), Type("-")],
            ],
            Self::Grades => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(" ")],
                &[Type("1"), Type("2"), Type("3"), Type(".")],
                &[Type("0"), Type(",")],
            ],
            _ => &[
                &[Type("7"), Type("8"), Type("9"), Erase],
                &[Type("4"), Type("5"), Type("6"), Type(".")],
                &[Type("1"), Type("2"), Type("3"), Type(",")],
                &[Type("0")],
            ],
        }
    }
}

/// A key of the number pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PadKey {
    /// Types a sign at the end.
    Type(&'static str),
    /// Takes the last sign away.
    Erase,
}
