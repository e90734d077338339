//! How residuals of steels that were left out hang together.

use std::error::Error;

use biteband_steel::temper::{Cholesky, Spread};

use super::left_out::LeftOut;

/// What is known before: the middle and how far the logarithm may lie from it. An evidence of thirty steels does not
/// tell reach and growth for itself; the middles are those of earlier work with the same data.
const PRIOR: [(f64, f64); 5] = [(1.3, 0.5), (1.0, 0.5), (120.0, 0.3), (1.0, 0.15), (1.1, 0.5)];

fn spread(logs: [f64; 5]) -> Spread {
    let [level, drift, reach, hot, scatter] = logs.map(f64::exp);
    Spread { level, drift, reach, hot, scatter }
}

/// Minus the logarithm of the likelihood, priors included.
fn unlikely(logs: [f64; 5], steels: &[Vec<LeftOut>]) -> Option<f64> {
    let spread = spread(logs);
    let mut sum = 0.0;
    for steel in steels {
        let rows: Vec<Vec<f64>> = (0_usize..)
            .zip(steel)
            .map(|(row, one)| {
                let mut covariances: Vec<f64> = steel
                    .iter()
                    .map(|other| spread.covariance(one.measured.celsius, other.measured.celsius))
                    .collect();
                if let Some(own) = covariances.get_mut(row) {
                    *own += spread.scatter * spread.scatter;
                }
                covariances
            })
            .collect();
        let root = Cholesky::new(&rows)?;
        let off: Vec<f64> = steel.iter().map(|one| one.measured.hrc - one.predicted).collect();
        let square: f64 = root.whiten(&off).iter().map(|x| x * x).sum();
        sum += 0.5 * (square + root.log_determinant());
    }
    for (log, (middle, width)) in logs.into_iter().zip(PRIOR) {
        let from = (log - middle.ln()) / width;
        sum += 0.5 * from * from;
    }
    Some(sum)
}

/// The spread that makes the results in the shop's range likeliest, found by a search along the axes.
///
/// # Errors
/// When no spread makes them possible.
pub fn fit_spread(results: &[Vec<LeftOut>]) -> Result<Spread, Box<dyn Error>> {
    let shop: Vec<Vec<LeftOut>> = results
        .iter()
        .map(|steel| steel.iter().copied().filter(|one| one.measured.in_shop()).collect())
        .collect();
    let mut logs = PRIOR.map(|(middle, _)| middle.ln());
    let mut best = unlikely(logs, &shop).ok_or("no spread makes the results possible")?;
    let mut step = 0.2;
    while step > 1e-4 {
        let mut moved = false;
        for axis in 0..logs.len() {
            for by in [step, -step] {
                let mut tried = logs;
                if let Some(log) = tried.get_mut(axis) {
                    *log += by;
                }
                if let Some(found) = unlikely(tried, &shop)
                    && found < best
                {
                    (best, logs, moved) = (found, tried, true);
                }
            }
        }
        if !moved {
            step /= 2.0;
        }
    }
    Ok(spread(logs))
}
