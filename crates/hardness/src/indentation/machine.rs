//! How far a machine and a block may be off, and how sure a reading is when nothing is stated.

use super::check::Cited;
use super::formula::rockwell_scale;
use super::generated::{BETWEEN, INDENTATION_DEFAULTS, ISO_6508_2, LIMITS};
use crate::axis::Scale;
use alloc::vec::Vec;
use biteband_quantity::KilogramsForce;

/// What a limit is a limit of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitKind {
    /// Mean of five readings minus the block's number, either way.
    Error,
    /// Largest minus smallest of five readings.
    Repeatability,
    /// Largest minus smallest of five readings on a reference block by the calibrating laboratory.
    BlockRange,
}

/// A row of the data file.
#[derive(Clone, Copy, Debug)]
pub(super) struct LimitRow {
    pub(super) kind: LimitKind,
    pub(super) scales: &'static [Scale],
    pub(super) from: f64,
    pub(super) at_from: bool,
    pub(super) to: f64,
    pub(super) fixed: f64,
    pub(super) per_depth: f64,
    pub(super) percent: f64,
    pub(super) cited: Cited,
}

impl LimitRow {
    fn holds(&self, scale: Scale, value: f64) -> bool {
        let started = value > self.from || (self.at_from && value >= self.from);
        self.scales.contains(&scale) && started && value <= self.to
    }

    fn amount(&self, scale: Scale, value: f64) -> f64 {
        let zero = rockwell_scale(scale).map_or(value, |(zero, _)| zero);
        self.fixed.max(self.per_depth * (zero - value)).max(self.percent / 100.0 * value)
    }
}

/// A limit at one number.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct MachineLimit {
    /// Of what.
    pub kind: LimitKind,
    /// In the scale's own numbers.
    pub amount: f64,
    /// Who sets it.
    pub cited: Cited,
}

/// Every limit that a standard sets at a number; none where no standard here does.
///
/// # Source
/// `iso-6506-2`, `iso-6507-2`, `iso-6508-2`, `iso-6508-3`, `astm-e18`, `oiml-unification`, each limit
/// with its own mark.
///
/// # Example
/// ```
/// use biteband_hardness::{Scale, indentation::{LimitKind, machine_limits}};
/// let limits = machine_limits(Scale::Hrc, 60.0);
/// assert!(limits.iter().any(|limit| limit.kind == LimitKind::Error && limit.amount == 1.5));
/// ```
#[must_use]
pub fn machine_limits(scale: Scale, value: f64) -> Vec<MachineLimit> {
    let mut limits: Vec<MachineLimit> = Vec::new();
    for row in LIMITS.iter().filter(|row| row.holds(scale, value)) {
        let limit =
            MachineLimit { kind: row.kind, amount: row.amount(scale, value), cited: row.cited };
        // Where one row ends and the next begins at the same number, the next is meant.
        let same = |known: &&mut MachineLimit| {
            known.kind == limit.kind && known.cited.source == limit.cited.source
        };
        match limits.iter_mut().find(same) {
            Some(known) => *known = limit,
            None => limits.push(limit),
        }
    }
    limits
}

/// What was used for a reading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Instrument {
    /// A bench tester that is checked on a block every week.
    BenchVerified,
    /// A bench tester that is not.
    Bench,
    /// A rebound tester; on a scale other than Leeb's the number was converted.
    Leeb,
    /// An ultrasonic tester.
    Uci,
}

/// A standard uncertainty that nobody stated.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Assumed {
    /// One standard deviation, in the scale's own numbers.
    pub amount: f64,
    /// Assumed here, or from the permissible error of a machine.
    pub cited: Cited,
}

/// One standard uncertainty to assume for a reading when the tester's own is not known.
///
/// `None` where there is nothing to assume: Vickers needs its force, and below HV1 the reading of the
/// diagonal outweighs everything. Rockwell scales without a figure of their own take the permissible
/// error over 2.8, as the budget of ISO 6508-1 does.
///
/// # Units
/// `value` and the result in the scale's own numbers; `force` in kgf.
///
/// # Source
/// `indentation-defaults`; `iso-6508-2` for the other Rockwell scales.
///
/// # Example
/// ```
/// use biteband_hardness::{Scale, indentation::{Instrument, default_standard_uncertainty}};
/// let bench = default_standard_uncertainty(Instrument::BenchVerified, Scale::Hrc, 60.0, None);
/// assert_eq!(bench.unwrap().amount, 0.5);
/// ```
#[must_use]
pub fn default_standard_uncertainty(
    instrument: Instrument,
    scale: Scale,
    value: f64,
    force: Option<KilogramsForce>,
) -> Option<Assumed> {
    let (low, high) = scale.range();
    if value.is_nan() || value < low || value > high {
        return None;
    }
    let kgf = force.map(KilogramsForce::get);
    let amount = match (instrument, scale) {
        (Instrument::Leeb, Scale::Leeb) => 6.0,
        (Instrument::Leeb, Scale::Hrc) => 2.0,
        (Instrument::Uci, Scale::HvUci | Scale::Hv) => 0.04 * value,
        (Instrument::Leeb | Instrument::Uci, _) => return None,
        (Instrument::BenchVerified, Scale::Hrc) => 0.5,
        (Instrument::Bench, Scale::Hrc) => 0.8,
        (_, Scale::Hrb) => 1.0,
        (_, Scale::Hv) if kgf? >= 10.0 => 0.02 * value,
        (_, Scale::Hv) if kgf? >= 1.0 => 0.03 * value,
        (_, Scale::Hbw) if kgf? >= 3000.0 => 0.015 * value,
        (_, scale) if scale.is_rockwell() => {
            let limits = machine_limits(scale, value);
            let error = limits
                .iter()
                .find(|limit| limit.kind == LimitKind::Error && limit.cited.source == ISO_6508_2)?;
            return Some(Assumed { amount: error.amount / 2.8, cited: error.cited });
        }
        _ => return None,
    };
    Some(Assumed { amount, cited: Cited::ours(INDENTATION_DEFAULTS) })
}

/// A block measured by several laboratories.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Between {
    /// The scale.
    pub scale: Scale,
    /// Nominal number of the block.
    pub block: f64,
    /// Mean of the laboratories.
    pub mean: f64,
    /// Standard deviation within a laboratory.
    pub within: f64,
    /// Standard deviation between laboratories, that within included; 2.8 times it is the difference
    /// that two laboratories keep in 95 of 100 cases.
    pub between: f64,
    /// Where it is printed.
    pub cited: Cited,
}

/// The comparisons between laboratories on a scale, soft blocks first.
///
/// # Source
/// `astm-e18`, Table 4 of the 2019 edition, read.
pub fn interlaboratory(scale: Scale) -> impl Iterator<Item = &'static Between> {
    BETWEEN.iter().filter(move |row| row.scale == scale)
}
