//! Readings against files, against each other and among themselves, in words.

use biteband_evidence::{Assessment, Band, Clash, Witness};
use serde::Serialize;

use super::file_test::shown_band;
use super::readings::ReadingAnswer;
use crate::words::{Gauge, Language};

/// Two sources of evidence that no hardness explains together.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ClashAnswer {
    /// The source that says harder: `files`, `readings[0]`, `readings[0].hrc[2]`.
    pub harder: String,
    /// The source that says softer.
    pub softer: String,
    /// What is odd about it.
    pub text: String,
    /// Likely causes, the likeliest first.
    pub why: Vec<String>,
    /// The band if the harder source is set aside.
    pub without_harder: String,
    /// The band if the softer source is set aside.
    pub without_softer: String,
}

pub(super) fn clashes(
    language: Language,
    found: &Assessment,
    readings: &[ReadingAnswer],
) -> Vec<ClashAnswer> {
    found.clashes().iter().map(|clash| one(language, clash, readings)).collect()
}

fn one(language: Language, clash: &Clash, readings: &[ReadingAnswer]) -> ClashAnswer {
    let of = |group: usize| readings.get(group).map_or("", |reading| reading.understood.as_str());
    let place = |witness| match witness {
        Witness::Files => "files".to_owned(),
        Witness::Group(group) => format!("readings[{group}]"),
        Witness::Reading { group, reading } => format!("readings[{group}].hrc[{reading}]"),
    };
    let name = |witness| match witness {
        Witness::Files => language.gauge(Gauge::Files).into_owned(),
        Witness::Group(group) => of(group).to_owned(),
        Witness::Reading { group, reading } => language
            .gauge(Gauge::One { number: reading.saturating_add(1), of: of(group) })
            .into_owned(),
    };
    let without = |witness, band: Band| {
        let band = shown_band(language, band.shape());
        language.gauge(Gauge::Without { witness: &name(witness), band: &band }).into_owned()
    };
    let (harder, softer) = (clash.harder(), clash.softer());
    let text = Gauge::Clash { harder: &name(harder), softer: &name(softer) };
    let why = |&suspect| language.gauge(Gauge::Suspect(suspect)).into_owned();
    ClashAnswer {
        harder: place(harder),
        softer: place(softer),
        text: language.gauge(text).into_owned(),
        why: clash.suspects().iter().map(why).collect(),
        without_harder: without(harder, clash.without_harder()),
        without_softer: without(softer, clash.without_softer()),
    }
}

/// What settles it.
pub(super) fn settle(clash: &Clash) -> Gauge<'static> {
    let both = [clash.harder(), clash.softer()];
    if both.contains(&Witness::Files) {
        Gauge::SettleFiles
    } else if both.iter().all(|witness| matches!(witness, Witness::Group(_))) {
        Gauge::SettleInstruments
    } else {
        Gauge::SettleOne
    }
}
