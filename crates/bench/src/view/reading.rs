//! Readings of instruments on the file test page.

use super::file_test::{ConflictView, ProofView};
use super::{Chip, Problem};
use crate::answer::{ClashAnswer, INSTRUMENTS, ReadingAnswer, ReadingInput, read_reading};
use crate::state::FileTestState;
use crate::words::{Gauge, Language};

/// Instruments to choose from.
pub(super) fn instruments(language: Language, state: &FileTestState) -> Vec<Chip> {
    let chip = |(key, instrument)| Chip {
        key,
        label: language.gauge(Gauge::Instrument(instrument)).into_owned(),
        on: state.instrument == key,
    };
    INSTRUMENTS.map(chip).to_vec()
}

/// A line for each entry; one that cannot be read stands as it was written.
pub(super) fn readings(language: Language, state: &FileTestState) -> Vec<ProofView> {
    let line = |(index, reading): (usize, &ReadingInput)| {
        let understood = read_reading(language, reading);
        let text = understood.map_or_else(|_| reading.text.clone(), |answer| answer.shown);
        ProofView { index, text }
    };
    state.now.readings.iter().enumerate().map(line).collect()
}

/// What is wrong with the readings being typed.
pub(super) fn problem(language: Language, state: &FileTestState) -> Option<Problem> {
    let text = state.reading_text.trim();
    if text.is_empty() {
        return None;
    }
    let reading = ReadingInput::written(&state.instrument, text);
    read_reading(language, &reading).err().map(Problem::from)
}

/// A clash, shown as files that disagree are.
pub(super) fn conflict(clash: ClashAnswer) -> ConflictView {
    ConflictView {
        why: clash.text,
        causes: clash.why,
        without: vec![clash.without_harder, clash.without_softer],
    }
}

/// Low and high end at 95 % of each entry, for its mark beside the rule.
pub(super) fn marks(readings: &[ReadingAnswer]) -> Vec<(f64, f64)> {
    readings
        .iter()
        .map(|reading| {
            let (mean, half) = reading.mean_and_half();
            (mean - half, mean + half)
        })
        .collect()
}
