//! Tests of the built binary.

#![expect(
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a helper that fails is a test that fails"
)]

mod claim;
mod common;
mod golden;
mod heat;
mod indent;
mod jominy;
mod part;
mod print;
mod reach;
mod readme;
mod scenarios;
mod steel;
mod temper;
mod unknown;
