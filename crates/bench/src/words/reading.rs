//! What is said about readings of instruments; the same pattern as [`super::Phrase`].

use std::borrow::Cow;

use biteband_evidence::{Instrument, Suspect};
use biteband_hardness::Axis;

use super::{Language, reading_english};

/// A sentence or label about readings.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Gauge<'a> {
    Instrument(Instrument),
    Line { written: &'a str, instrument: Instrument, hrc: &'a str, half: &'a str, assumed: bool },
    ByReadings,
    WithReadings { verdict: &'a str },
    Assumed,
    Mixed,
    Files,
    One { number: usize, of: &'a str },
    Clash { harder: &'a str, softer: &'a str },
    Suspect(Suspect),
    Without { witness: &'a str, band: &'a str },
    SettleFiles,
    SettleInstruments,
    SettleOne,
}

/// Why a reading does not count.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Unreadable<'a> {
    Instrument { given: &'a str },
    Uncertainty { given: &'a str },
    NotOneNumber,
    Strength,
    OtherScale { instrument: Instrument, axis: Axis },
    KnownMissing,
    KnownUnwanted,
}

impl Language {
    /// Says a phrase about readings.
    #[must_use]
    pub fn gauge(self, phrase: Gauge<'_>) -> Cow<'static, str> {
        match self {
            Self::English => reading_english::say(phrase),
        }
    }

    /// Message and way out.
    #[must_use]
    pub fn unreadable(self, what: Unreadable<'_>) -> [Cow<'static, str>; 2] {
        match self {
            Self::English => reading_english::refuse(what),
        }
    }
}
