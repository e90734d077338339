//! The bar, what was seen of it, and what that makes of it.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use super::cell::{Cell, cells};
use super::clash::{Clash, clashes};
use super::clue::{Bath, Clue, Skin, Test};
use super::family::{Fit, Heat, Kind, Purpose};
use super::generated::FITS;
use super::next::{Advice, advice};
use super::promise::{Promise, Quench, promise, quench};
use super::span::Span;

/// Level of the band of carbon.
const LEVEL: f64 = 0.95;

/// A use is named from this chance of fitting on, and warned of up to the other.
///
/// # Source
/// Our choice.
const FITS_FROM: f64 = 0.75;
/// See [`FITS_FROM`].
const MISFITS_TO: f64 = 0.25;

/// A bar of unknown steel with what was seen of it: at most one clue of each test.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bar {
    clues: Vec<Clue>,
}

impl Bar {
    /// Adds a clue; a later answer of the same test takes the place of the earlier one.
    #[must_use]
    pub fn with(mut self, clue: Clue) -> Self {
        self.clues.retain(|known| known.test() != clue.test());
        self.clues.push(clue);
        // In the order of their cost: the order in which they were told cannot change the last bit.
        self.clues.sort_unstable_by_key(Clue::test);
        self
    }

    /// The same bar without the answer of a test.
    #[must_use]
    pub fn without(mut self, test: Test) -> Self {
        self.clues.retain(|clue| clue.test() != test);
        self
    }

    /// What was seen, in the order of cost.
    #[must_use]
    pub fn clues(&self) -> &[Clue] {
        &self.clues
    }

    /// The clue of a test.
    #[must_use]
    pub fn clue(&self, test: Test) -> Option<&Clue> {
        self.clues.iter().find(|clue| clue.test() == test)
    }

    /// The hardness that a coupon showed.
    #[must_use]
    pub fn coupon(&self, bath: Bath) -> Option<Span> {
        self.clues.iter().find_map(|clue| match clue {
            Clue::Coupon(of, span) if *of == bath => Some(*span),
            _ => None,
        })
    }

    /// The bath of the coupon that was quenched last.
    pub(super) fn last(&self) -> Bath {
        if self.coupon(Bath::Water).is_some() { Bath::Water } else { Bath::Oil }
    }

    /// Whether a clue counts: what a file says of a hard skin is no second answer.
    pub(super) fn counts(&self, clue: &Clue) -> bool {
        clue.test() != Test::Found || self.clue(Test::Skin) != Some(&Clue::Skin(Skin::Hard))
    }

    /// Weighs everything that was seen.
    ///
    /// # Valid for
    /// Steel and cast iron in bars of a few millimetres and more; coupons of about 6 mm, heated to a full cherry
    /// red past the magnet and quenched at once.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::unknown::{Bar, Test};
    /// let nothing = Bar::default().sort();
    /// // The cheapest test comes first.
    /// assert_eq!(nothing.advice().map(|advice| advice.test), Some(Test::Magnet));
    /// let sum: f64 = nothing.families().iter().map(|found| found.1).sum();
    /// assert!((sum - 1.0).abs() < 1e-12);
    /// ```
    pub fn sort(&self) -> Sorted {
        let cells = cells();
        let weights = weights(self, &cells);
        let families = families(&cells, &weights);
        let promise = promise(&cells, &weights);
        Sorted {
            carbon: carbon(&cells, &weights),
            quench: quench(self, &families, &promise),
            advice: advice(self, &cells, &weights),
            clashes: clashes(self, &cells),
            fits: fits(&cells, &weights),
            families,
            promise,
        }
    }
}

/// The share of every cell after the clues; they add to 1.
pub(super) fn weights(bar: &Bar, cells: &[Cell]) -> Vec<f64> {
    let last = bar.last();
    let counted: Vec<&Clue> = bar.clues.iter().filter(|clue| bar.counts(clue)).collect();
    let weight = |cell: &Cell| {
        counted.iter().fold(cell.share, |share, clue| share * cell.chance(clue, last))
    };
    let mut all: Vec<f64> = cells.iter().map(weight).collect();
    let sum: f64 = all.iter().sum();
    for weight in &mut all {
        *weight /= sum;
    }
    all
}

fn families(cells: &[Cell], weights: &[f64]) -> Vec<(Kind, f64)> {
    let share = |kind: &Kind| {
        let own = cells.iter().zip(weights).filter(|(cell, _)| cell.family.kind == *kind);
        (*kind, own.map(|(_, weight)| weight).sum::<f64>())
    };
    let mut all: Vec<(Kind, f64)> = Kind::ALL.iter().map(share).collect();
    sort_by_number(&mut all, |(_, chance)| -*chance);
    all
}

fn carbon(cells: &[Cell], weights: &[f64]) -> CarbonBand {
    let known = cells.iter().zip(weights);
    let mut known: Vec<(f64, f64)> =
        known.filter_map(|(cell, &weight)| Some((cell.carbon()?, weight))).collect();
    sort_by_number(&mut known, |(carbon, _)| *carbon);
    let chance: f64 = known.iter().map(|(_, weight)| weight).sum();
    let at = |share: f64| {
        let mut sum = 0.0;
        let reached = known.iter().find(|(_, weight)| {
            sum += weight;
            sum >= share * chance
        });
        reached.or(known.last()).map_or(0.0, |(carbon, _)| *carbon)
    };
    let tail = (1.0 - LEVEL) / 2.0;
    CarbonBand { low: at(tail), mid: at(0.5), high: at(1.0 - tail), level: LEVEL, chance }
}

/// For each purpose the chance that the bar suits it, and whether a misfit is worth a warning.
fn fits(cells: &[Cell], weights: &[f64]) -> Vec<(&'static Fit, f64)> {
    let chance = |fit: &Fit| -> f64 {
        let suited = cells.iter().zip(weights);
        let suited = suited.filter(|(cell, _)| fit.suits.contains(&cell.family.kind));
        suited
            .map(|(cell, weight)| {
                weight * fit.least.map_or(1.0, |least| cell.above(Bath::Water, least, 0.0))
            })
            .sum()
    };
    FITS.iter().map(|fit| (fit, chance(fit))).collect()
}

/// Carbon in mass percent, if the bar is one of the families that harden by their carbon.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CarbonBand {
    /// Lower end.
    pub low: f64,
    /// As likely above as below.
    pub mid: f64,
    /// Upper end.
    pub high: f64,
    /// Chance of the band, given those families.
    pub level: f64,
    /// Chance of those families.
    pub chance: f64,
}

/// What the clues make of the bar.
#[derive(Clone, Debug)]
#[must_use]
pub struct Sorted {
    families: Vec<(Kind, f64)>,
    carbon: CarbonBand,
    promise: Promise,
    quench: Quench,
    advice: Option<Advice>,
    clashes: Vec<Clash>,
    fits: Vec<(&'static Fit, f64)>,
}

impl Sorted {
    /// Every family with its chance, the likeliest first; the chances add to 1.
    #[must_use]
    pub fn families(&self) -> &[(Kind, f64)] {
        &self.families
    }

    /// The chance of a family.
    #[must_use]
    pub fn chance(&self, kind: Kind) -> f64 {
        self.families.iter().find(|found| found.0 == kind).map_or(0.0, |found| found.1)
    }

    /// The chance of all families that harden in one way.
    #[must_use]
    pub fn chance_of(&self, heat: Heat) -> f64 {
        self.families.iter().filter(|found| found.0.heat() == heat).map(|found| found.1).sum()
    }

    /// The carbon.
    #[must_use]
    pub const fn carbon(&self) -> CarbonBand {
        self.carbon
    }

    /// The hardness that a quenched coupon is to be expected with.
    #[must_use]
    pub const fn promise(&self) -> Promise {
        self.promise
    }

    /// What to quench the parts in.
    #[must_use]
    pub const fn quench(&self) -> Quench {
        self.quench
    }

    /// The next test, unless none is worth its trouble.
    #[must_use]
    pub const fn advice(&self) -> Option<Advice> {
        self.advice
    }

    /// Clues that do not go together, the worst first.
    pub fn clashes(&self) -> &[Clash] {
        &self.clashes
    }

    /// What the bar suits.
    pub fn uses(&self) -> impl Iterator<Item = Purpose> {
        let suited = self.fits.iter().filter(|(_, chance)| *chance >= FITS_FROM);
        suited.map(|(fit, _)| fit.purpose)
    }

    /// What not to make of it.
    pub fn avoids(&self) -> impl Iterator<Item = Purpose> {
        let misfit = self.fits.iter().filter(|(fit, chance)| fit.warn && *chance <= MISFITS_TO);
        misfit.map(|(fit, _)| fit.purpose)
    }
}
