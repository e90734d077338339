//! Hardness as it is written on drawings, certificates and shop paper.
//!
//! [`parse`] reads the standard form (`640 HV 30`, `58 to 62 HRC`, `350 HBW 10/3000`), what drawings
//! make of it (`38...42 HRC`, `HV 700 +-50`, `52,5 HRC`) and what people say (`Rc 52`, `BHN 300`,
//! `60 Rockwell`). It says what it understood, lists each place where the text strays from the
//! standard form, and asks instead of guessing where force, ball or scale is missing.
//!
//! # Source
//! Order, symbols, conditions: `rockwell-ranges` and `brinell-vickers-designation`. The grammar of
//! lenient forms is this project's own.

mod lex;
mod parse;
mod units;

use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use crate::axis::{Axis, Scale};
use biteband_quantity::Shown;

pub use parse::parse;
pub(crate) use units::BRINELL_PAIRS;

/// What is asked of the number.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// One number.
    Single(f64),
    /// From low to high.
    Range {
        /// Low end.
        low: f64,
        /// High end.
        high: f64,
    },
    /// A nominal number with a tolerance.
    Tolerance {
        /// Nominal.
        nominal: f64,
        /// Allowed below it, not negative.
        minus: f64,
        /// Allowed above it, not negative.
        plus: f64,
    },
    /// A minimum.
    AtLeast(f64),
    /// A maximum.
    AtMost(f64),
}

impl Amount {
    /// Low and high limit; a single number is its own two limits.
    #[must_use]
    pub const fn limits(self) -> (Option<f64>, Option<f64>) {
        match self {
            Self::Single(v) => (Some(v), Some(v)),
            Self::Range { low, high } => (Some(low), Some(high)),
            Self::Tolerance { nominal, minus, plus } => {
                (Some(nominal - minus), Some(nominal + plus))
            }
            Self::AtLeast(v) => (Some(v), None),
            Self::AtMost(v) => (None, Some(v)),
        }
    }

    fn map(self, f: impl Fn(f64) -> f64) -> Self {
        match self {
            Self::Single(v) => Self::Single(f(v)),
            Self::Range { low, high } => Self::Range { low: f(low), high: f(high) },
            Self::Tolerance { nominal, minus, plus } => {
                Self::Tolerance { nominal: f(nominal), minus: f(minus), plus: f(plus) }
            }
            Self::AtLeast(v) => Self::AtLeast(f(v)),
            Self::AtMost(v) => Self::AtMost(f(v)),
        }
    }
}

/// The ball behind a Rockwell ball scale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ball {
    /// `W`, tungsten carbide.
    Carbide,
    /// `S`, steel.
    Steel,
    /// `Sm`, the thin-sheet variant of 15T and 30T.
    SteelThin,
}

/// Force, ball and dwell written behind a symbol.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Condition {
    /// Ball diameter in mm, for Brinell.
    pub ball_mm: Option<f64>,
    /// Test force in kgf.
    pub force_kgf: f64,
    /// Dwell in seconds, when it lies outside 10 to 15 s.
    pub dwell_s: Option<f64>,
}

/// The device letter of a Leeb number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the letters are the standard's own names")]
pub enum LeebDevice {
    D,
    Dc,
    Dl,
    D15,
    S,
    E,
    C,
    G,
}

impl LeebDevice {
    /// The letters behind `HL`.
    #[must_use]
    pub const fn letters(self) -> &'static str {
        match self {
            Self::D => "D",
            Self::Dc => "DC",
            Self::Dl => "DL",
            Self::D15 => "D+15",
            Self::S => "S",
            Self::E => "E",
            Self::C => "C",
            Self::G => "G",
        }
    }
}

/// A number that was measured in one scale and written in another.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredAs {
    /// What was measured.
    pub measured: Box<Designation>,
    /// The table that the text names.
    pub table: String,
}

/// A hardness in writing.
#[derive(Clone, Debug, PartialEq)]
pub struct Designation {
    /// The number, range or limit; tensile strength in MPa.
    pub amount: Amount,
    /// The scale, or tensile strength.
    pub axis: Axis,
    /// Ball letter of a Rockwell ball scale, when written.
    pub ball: Option<Ball>,
    /// Force, ball diameter and dwell, when written.
    pub condition: Option<Condition>,
    /// Leeb device, when written.
    pub leeb: Option<LeebDevice>,
    /// What it was converted from, when written.
    pub converted: Option<MeasuredAs>,
}

/// A place where the text strays from the standard form, or a question that it leaves open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Remark {
    /// A decimal comma; allowed.
    DecimalComma,
    /// The number stands behind the symbol.
    SymbolFirst,
    /// No space between number and symbol.
    SpaceMissing,
    /// A symbol of an older standard or of shop talk.
    OldSymbol,
    /// Lower case letters in the symbol.
    LowerCase,
    /// A range written with dots or without spaces.
    RangeStyle,
    /// A tolerance or limit written in another way.
    LimitStyle,
    /// "About" in front.
    Approximate,
    /// "Rockwell" without a letter: taken as C.
    RockwellTakenAsC,
    /// A ball scale without W or S: ask which ball.
    BallLetterMissing,
    /// A ball letter behind a diamond scale: left out.
    BallLetterOnDiamond,
    /// Vickers or Knoop without its force: ask.
    ForceMissing,
    /// A force that standards do not list; kept.
    ForceNotStandard,
    /// Brinell without ball and force: ask; the trade means 10 mm and 3000 kgf.
    BrinellConditionMissing,
    /// HB or BHN: the ball is not named; taken as HBW.
    BrinellSymbolWithdrawn,
    /// HBS: the steel ball is withdrawn; kept as history.
    SteelBallWithdrawn,
    /// Above 650 HBW, where the ball itself gives way.
    AboveBrinellLimit,
    /// A dwell of 10 to 15 s is not written; left out.
    DwellNotWritten,
    /// Rockwell C below 20: only on a machine verified for it.
    BelowVerifiedRockwellC,
    /// Given in ksi; the number in ksi.
    FromKsi,
}

impl Remark {
    /// Whether the text is not in the standard's form because of this.
    #[must_use]
    pub const fn strays(self) -> bool {
        !matches!(self, Self::DecimalComma | Self::BelowVerifiedRockwellC | Self::FromKsi)
    }

    /// Whether something is missing that only the person or the paper's author can say.
    #[must_use]
    pub const fn asks(self) -> bool {
        matches!(self, Self::BallLetterMissing | Self::ForceMissing | Self::BrinellConditionMissing)
    }
}

/// What was understood.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Parsed {
    designation: Designation,
    remarks: Vec<Remark>,
}

impl Parsed {
    /// The hardness in writing.
    #[must_use]
    pub const fn designation(&self) -> &Designation {
        &self.designation
    }

    /// Where the text strays and what it leaves open, in reading order, each once.
    #[must_use]
    pub fn remarks(&self) -> &[Remark] {
        &self.remarks
    }

    /// Whether the text is in the form that the standards prescribe.
    #[must_use]
    pub fn is_standard_form(&self) -> bool {
        !self.remarks.iter().any(|r| r.strays())
    }
}

/// Why a text is not read as a hardness.
#[derive(Clone, Debug, PartialEq)]
pub enum Error {
    /// Nothing was written.
    Empty,
    /// Longer than any designation.
    TooLong,
    /// No number.
    NoNumber,
    /// A number with more digits than any reading has.
    NumberTooLong,
    /// A number below zero.
    Negative,
    /// A number without a scale.
    NoScale,
    /// `HR` without its letter.
    RockwellLetterMissing,
    /// Shore A or D: rubber, not steel.
    RubberScale,
    /// A word that is no scale, as written.
    UnknownScale(String),
    /// Two scales in one reading.
    TwoScales(Axis, Axis),
    /// Two numbers, and it is not said how they belong together.
    TwoNumbers(f64, f64),
    /// `58/62`: the slash is for test conditions.
    SlashRange(f64, f64),
    /// A range that runs backwards.
    Backward(f64, f64),
    /// A ball and force that do not belong together.
    BrinellPair {
        /// Ball in mm.
        ball_mm: f64,
        /// Force in kgf.
        force_kgf: f64,
    },
    /// The number is not on the scale.
    Outside(crate::Error),
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "designation.empty",
            Self::TooLong => "designation.too_long",
            Self::NoNumber => "designation.no_number",
            Self::NumberTooLong => "designation.number_too_long",
            Self::Negative => "designation.negative",
            Self::NoScale => "designation.no_scale",
            Self::RockwellLetterMissing => "designation.rockwell_letter_missing",
            Self::RubberScale => "designation.rubber_scale",
            Self::UnknownScale(_) => "designation.unknown_scale",
            Self::TwoScales(..) => "designation.two_scales",
            Self::TwoNumbers(..) => "designation.two_numbers",
            Self::SlashRange(..) => "designation.slash_range",
            Self::Backward(..) => "designation.backward_range",
            Self::BrinellPair { .. } => "designation.brinell_pair",
            Self::Outside(error) => error.code(),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("nothing was written"),
            Self::TooLong => f.write_str("the text is longer than any hardness"),
            Self::NoNumber => f.write_str("there is no number in it"),
            Self::NumberTooLong => f.write_str("the number has more digits than any reading"),
            Self::Negative => f.write_str("a hardness is not negative"),
            Self::NoScale => f.write_str("the number has no scale"),
            Self::RockwellLetterMissing => f.write_str("HR needs its letter, as in HRC"),
            Self::RubberScale => f.write_str("Shore A and D are scales for rubber and plastic"),
            Self::UnknownScale(word) => write!(f, "{word} is no hardness scale"),
            Self::TwoScales(a, b) => write!(f, "two scales in one reading: {a} and {b}"),
            Self::TwoNumbers(a, b) => {
                write!(f, "two numbers in one reading: {} and {}", Shown(*a), Shown(*b))
            }
            Self::SlashRange(a, b) => {
                let (a, b) = (Shown(*a), Shown(*b));
                write!(f, "{a}/{b} uses the sign of test conditions for a range")
            }
            Self::Backward(a, b) => {
                write!(f, "the range runs backwards from {} to {}", Shown(*a), Shown(*b))
            }
            Self::BrinellPair { ball_mm, force_kgf } => {
                let (ball, force) = (Shown(*ball_mm), Shown(*force_kgf));
                write!(f, "no Brinell test has a {ball} mm ball with {force} kgf")
            }
            Self::Outside(error) => error.fmt(f),
        }
    }
}

impl core::error::Error for Error {}

/// A number without needless decimals: tensile strength whole, everything else as given.
struct Plain(Axis, f64);

impl fmt::Display for Plain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Axis::Tensile => Shown(libm::rint(self.1)).fmt(f),
            Axis::Hardness(_) => Shown(self.1).fmt(f),
        }
    }
}

/// The symbol with its ball letter, device and condition.
struct Unit<'a>(&'a Designation);

impl fmt::Display for Unit<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Designation { axis, ball, condition, leeb, .. } = self.0;
        // Ball and force follow with the condition.
        let of_500 = condition.is_some() && *axis == Axis::Hardness(Scale::Hbw500);
        f.write_str(if of_500 { Scale::Hbw.symbol() } else { axis.unit() })?;
        match ball {
            Some(Ball::Carbide) => f.write_str("W")?,
            Some(Ball::Steel) => f.write_str("S")?,
            Some(Ball::SteelThin) => f.write_str("Sm")?,
            None => {}
        }
        if let Some(device) = leeb {
            f.write_str(device.letters())?;
        }
        if let Some(Condition { ball_mm, force_kgf, dwell_s }) = condition {
            let force = Shown(*force_kgf);
            match ball_mm {
                Some(ball) => write!(f, " {}/{force}", Shown(*ball))?,
                None if matches!(axis, Axis::Hardness(Scale::HvUci)) => write!(f, " {force}")?,
                None => force.fmt(f)?,
            }
            if let Some(dwell) = dwell_s {
                write!(f, "/{}", Shown(*dwell))?;
            }
        }
        Ok(())
    }
}

impl fmt::Display for Designation {
    /// The standard form: decimal point, `HV30`, `HBW 10/3000`, "to" for ranges.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let plain = |value| Plain(self.axis, value);
        let unit = Unit(self);
        match self.amount {
            Amount::Single(v) => write!(f, "{} {unit}", plain(v))?,
            Amount::Range { low, high } => write!(f, "{} to {} {unit}", plain(low), plain(high))?,
            Amount::Tolerance { nominal, minus, plus } if minus.total_cmp(&plus).is_eq() => {
                write!(f, "{} ± {} {unit}", plain(nominal), plain(plus))?;
            }
            Amount::Tolerance { nominal, minus, plus } => {
                let sign = if minus > 0.0 { "-" } else { "" };
                write!(f, "{} +{}/{sign}{} {unit}", plain(nominal), plain(plus), plain(minus))?;
            }
            Amount::AtLeast(v) => write!(f, "{} {unit} min", plain(v))?,
            Amount::AtMost(v) => write!(f, "{} {unit} max", plain(v))?,
        }
        if let Some(MeasuredAs { measured, table }) = &self.converted {
            write!(f, " (converted from {measured}, {table})")?;
        }
        Ok(())
    }
}
