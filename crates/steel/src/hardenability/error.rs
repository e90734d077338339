//! Why no curve is given.

use core::fmt;

use biteband_quantity::Shown;

use crate::composition::{Element, Interval};

/// Why hardenability is not worked out; every variant carries what was given and what would do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Error {
    /// An element outside the factor tables of ASTM A255, or one that has no factor.
    Outside {
        /// The element.
        element: Element,
        /// Its share in mass percent.
        given: f64,
        /// What the tables cover.
        allowed: Interval,
    },
    /// An element that every steel of this kind has and that was not stated.
    Missing {
        /// The element.
        element: Element,
    },
    /// Boron above a residue: its factors are not at hand.
    Boron {
        /// Mass percent.
        given: f64,
    },
    /// Carbon above 0.70 %: carbides stay undissolved, and only what is dissolved hardens.
    HighCarbon {
        /// Mass percent.
        given: f64,
    },
    /// Carbon below 0.10 %: the steel does not harden by quenching.
    LowCarbon {
        /// Mass percent.
        given: f64,
    },
    /// Limits with a highest carbon only: a steel that is not sold to be hardened.
    OpenCarbon {
        /// The highest carbon in mass percent.
        given: f64,
    },
    /// A grade that quenching does not harden.
    NotHardened,
    /// A tool steel or a stainless steel: part of its carbon and alloy stays in carbides that the composition
    /// does not tell, and what is published for the grade is the answer.
    Published,
    /// A hardness or an ideal diameter that is none.
    NotANumber,
}

impl Error {
    /// Boron up to this share, in mass percent, is a residue without effect. ASTM A29 counts a steel as
    /// boron-treated from 0.0005 % on (recalled).
    pub const BORON: f64 = 0.000_5;

    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Outside { .. } => "hardenability.outside",
            Self::Missing { .. } => "hardenability.missing",
            Self::Boron { .. } => "hardenability.boron",
            Self::HighCarbon { .. } => "hardenability.high_carbon",
            Self::LowCarbon { .. } => "hardenability.low_carbon",
            Self::OpenCarbon { .. } => "hardenability.open_carbon",
            Self::NotHardened => "hardenability.not_hardened",
            Self::Published => "hardenability.published",
            Self::NotANumber => "hardenability.not_a_number",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Outside { element, given, allowed } => write!(
                f,
                "{} % {element} is outside {} to {} %, for which ASTM A255 has factors",
                Shown(given),
                Shown(allowed.low),
                Shown(allowed.high)
            ),
            Self::Missing { element } => {
                write!(f, "hardenability cannot be worked out without the {element}")
            }
            Self::Boron { given } => write!(
                f,
                "{} % B: the factors of boron steels are not at hand, above {} % there is no answer",
                Shown(given),
                Shown(Self::BORON)
            ),
            Self::HighCarbon { given } => write!(
                f,
                "{} % C is above 0.7 %: carbides stay undissolved, so that the composition does not tell",
                Shown(given)
            ),
            Self::LowCarbon { given } => {
                write!(f, "{} % C is below 0.1 %: the steel does not harden", Shown(given))
            }
            Self::OpenCarbon { given } => write!(
                f,
                "at most {} % C and no lowest carbon: nothing is promised about hardening",
                Shown(given)
            ),
            Self::NotHardened => f.write_str("the grade does not harden by quenching"),
            Self::Published => {
                f.write_str("of tool and stainless steels only what is published holds")
            }
            Self::NotANumber => {
                f.write_str("a curve needs a hardness and an ideal diameter above 0")
            }
        }
    }
}

impl core::error::Error for Error {}
