//! What a further temper does to a part of a known steel.

use alloc::vec::Vec;

use biteband_steel::temper::{Predict, Predicted, Temper};
use libm::sqrt;

use super::AsQuenched;
use super::after::{Softened, Softening};

/// A part of a known steel, with what was done to it.
#[derive(Clone, Copy)]
pub struct Part<'a> {
    /// The steel.
    pub steel: &'a dyn Predict,
    /// Tempers so far, in their order.
    pub done: &'a [Temper],
    /// How many times a temper is done.
    pub times: u8,
    /// As quenched, for a part that was not tempered.
    pub hardened: Option<AsQuenched>,
    /// Tempers in °C that make the steel brittle, if there are any.
    pub brittle: Option<(f64, f64)>,
}

impl core::fmt::Debug for Part<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Part").field("done", &self.done).finish_non_exhaustive()
    }
}

/// Correlation of what a part differs from its curve before and after a further temper: at the same temperature, and its
/// length in K. Ours, from the measured results: a heat's offset of 1.27 HRC against 1.43 HRC within a steel, of which
/// most is shared by tempers less than 100 K apart.
const SHARED: f64 = 0.9;
const LENGTH: f64 = 180.0;
/// A further temper is at least so much hotter than those before, in K; common practice, no source.
const LEAST_STEP: f64 = 10.0;
/// The same for the hardness as quenched, which tells little of the tempered one: at half weight with the measured steels.
const FROM_QUENCHED: f64 = 0.35;

impl Softening for Part<'_> {
    fn after(&self, temper: Temper) -> Option<Softened> {
        let all: Vec<Temper> =
            { self.done.iter().copied().chain((0..self.times).map(|_| temper)).collect() };
        let after = self.steel.predict(&all)?;
        let hottest = self.done.iter().map(|one| one.celsius()).reduce(f64::max);
        let (before, shared) = match (hottest, self.hardened) {
            (Some(hottest), _) => {
                let apart = (temper.celsius() - hottest).max(0.0) / LENGTH;
                (self.steel.predict(self.done)?, SHARED * libm::exp(-apart))
            }
            (None, Some(AsQuenched { mean, sd })) => (Predicted::normal(mean, sd), FROM_QUENCHED),
            // Nothing is known of it as quenched: the curve alone speaks.
            (None, None) => (after, 0.0),
        };
        Some(Softened {
            mean: after.median,
            from: before.median,
            kept: shared * after.sd / before.sd.max(0.3),
            sd: after.sd * sqrt(1.0 - shared * shared),
        })
    }

    fn range(&self) -> (f64, f64) {
        let range = self.steel.range();
        // What lies below the temper so far changes nothing, and the same once more next to nothing.
        let so_far =
            self.done.iter().map(|one| one.celsius() + LEAST_STEP).fold(f64::MIN, f64::max);
        (range.low.max(so_far), range.high)
    }

    fn brittle(&self) -> Option<(f64, f64)> {
        self.brittle
    }
}
