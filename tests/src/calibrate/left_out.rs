//! Steels that were left out of the fit, and what became of them.

use std::error::Error;

use biteband_steel::temper::{Curve, Learned, Oven, OwnResult, Point, Scales, Spread};

use super::data::{Measured, Steel};
use super::fit::{Fit, Prior, fit};

/// 90 % of a normal law lie within so many standard deviations.
const NINETY: f64 = 1.645;

/// A result with the prediction of a fit that has not seen its steel.
#[derive(Clone, Copy, Debug)]
pub struct LeftOut {
    /// What was measured.
    pub measured: Measured,
    /// What was predicted, in HRC.
    pub predicted: f64,
    /// The same with the measured hardness as quenched, where there is one.
    pub from_quenched: Option<f64>,
}

impl LeftOut {
    fn point(&self) -> Point {
        let Measured { celsius, .. } = self.measured;
        Point { celsius, hrc: self.predicted, slope: 0.0, composition_sd: 0.0 }
    }
}

/// Fits once for every steel without it and predicts its results; steel by steel, in the order of the data.
///
/// # Errors
/// As [`fit`].
pub fn left_out(
    steels: &[Steel],
    prior: &Prior,
    full: &Fit,
    scales: &Scales,
) -> Result<Vec<Vec<LeftOut>>, Box<dyn Error>> {
    steels
        .iter()
        .map(|without| {
            let others: Vec<&Steel> = steels.iter().filter(|one| one.key != without.key).collect();
            let Fit { value, .. } = fit(&others, prior, Some(full), scales)?;
            let start = value.untempered(without.shares.carbon);
            let curve = value.curve(&without.shares, start, scales);
            let quenched = without.as_quenched.map(|hrc| {
                let start = value.untempered_as_measured(without.shares.carbon, hrc, 0.0);
                value.curve(&without.shares, start, scales)
            });
            let predict = |one: &Measured| {
                let at = |curve: &Curve| scales.hrc(curve.hv(one.celsius, one.hours));
                let from_quenched = quenched.as_ref().map(at);
                LeftOut { measured: *one, predicted: at(&curve), from_quenched }
            };
            Ok(without.results.iter().map(predict).collect())
        })
        .collect()
}

/// How predictions did.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Figures {
    /// Number of results.
    pub count: usize,
    /// Root of the mean square of the error, in HRC.
    pub rmse: f64,
    /// Mean of its size, in HRC.
    pub mae: f64,
    /// Mean error, in HRC: positive when the prediction is harder.
    pub bias: f64,
    /// Share of results inside the band of 90 %.
    pub covered: f64,
}

/// Figures of errors (predicted less measured) with their standard deviations.
fn of(errors: &[(f64, f64)]) -> Figures {
    let Ok(count) = u32::try_from(errors.len()) else { return Figures::default() };
    let mean =
        |value: fn(&(f64, f64)) -> f64| errors.iter().map(value).sum::<f64>() / f64::from(count);
    Figures {
        count: errors.len(),
        rmse: mean(|(off, _)| off * off).sqrt(),
        mae: mean(|(off, _)| off.abs()),
        bias: mean(|(off, _)| *off),
        covered: mean(|(off, sd)| f64::from(u8::from(off.abs() <= NINETY * sd))),
    }
}

/// Figures of those results that `which` takes.
#[must_use]
pub fn figures<'a>(
    results: impl IntoIterator<Item = &'a LeftOut>,
    spread: &Spread,
    which: impl Fn(&Measured) -> bool,
) -> Figures {
    let taken = results.into_iter().filter(|one| which(&one.measured));
    let errors: Vec<_> = taken
        .map(|one| (one.predicted - one.measured.hrc, spread.sd(one.measured.celsius)))
        .collect();
    of(&errors)
}

/// Figures in the shop's range of steels whose hardness as quenched was measured: without it and with it.
#[must_use]
pub fn figures_from_quenched(results: &[Vec<LeftOut>], spread: &Spread) -> (Figures, Figures) {
    let (mut without, mut with) = (Vec::new(), Vec::new());
    for one in results.iter().flatten().filter(|one| one.measured.in_shop()) {
        if let Some(from_quenched) = one.from_quenched {
            let Measured { celsius, hrc, .. } = one.measured;
            without.push((one.predicted - hrc, spread.sd(celsius)));
            with.push((from_quenched - hrc, spread.sd(celsius)));
        }
    }
    (of(&without), of(&with))
}

/// Figures in the shop's range when one result of the same steel is known: the one that `own` picks out of a steel's
/// results, several one after the other.
///
/// # Errors
/// When nothing can be learned from a result.
pub fn figures_after_one(
    results: &[Vec<LeftOut>],
    spread: &Spread,
    own: impl Fn(&[LeftOut]) -> Vec<LeftOut>,
    which: impl Fn(&LeftOut, &LeftOut) -> bool,
) -> Result<Figures, Box<dyn Error>> {
    // The data are what they are: no oven and no measurement on top.
    let oven = Oven { mean_k: 0.0, sd_k: 0.0 };
    let mut errors = Vec::new();
    for steel in results {
        let shop: Vec<LeftOut> =
            steel.iter().copied().filter(|one| one.measured.in_shop()).collect();
        for known in own(&shop) {
            let Measured { celsius, hours, hrc, .. } = known.measured;
            let result = OwnResult { expected: known.point(), hrc, sd: 0.0, heat: 0, oven: 0 };
            let learned = Learned::new(&[*spread], &[oven], &[result])?;
            for one in &shop {
                let same = one.measured.celsius.total_cmp(&celsius).is_eq()
                    && one.measured.hours.total_cmp(&hours).is_eq();
                if same || !which(&known, one) {
                    continue;
                }
                let shift = learned.plan(0, 0, &one.point()).ok_or("no plan")?;
                errors.push((one.predicted + shift.mean - one.measured.hrc, shift.sd));
            }
        }
    }
    Ok(of(&errors))
}
