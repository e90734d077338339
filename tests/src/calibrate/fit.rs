//! Least squares by Levenberg and Marquardt, with priors.

use std::error::Error;

use biteband_steel::temper::{Cholesky, Coefficients, Scales};

use super::data::Steel;

/// Number of coefficients.
const N: usize = Coefficients::NAMES.len();
/// What a steel lies off the formula at every temperature, in HRC: the rows of a steel err together by that much.
const STEEL_DEVIATION: f64 = 1.2;
/// Step of the differences, in deviations of the priors.
const STEP: f64 = 1e-4;

/// What is known of the coefficients before the data.
#[derive(Clone, Copy, Debug)]
pub struct Prior {
    /// Means, in the order of [`Coefficients::NAMES`].
    pub mean: [f64; N],
    /// Standard deviations.
    pub sd: [f64; N],
}

/// Fitted coefficients with their standard errors.
#[derive(Clone, Copy, Debug)]
pub struct Fit {
    /// The coefficients.
    pub value: Coefficients,
    /// Their standard errors, priors included.
    pub error: [f64; N],
}

/// Coefficients at a place counted from the priors' means in the priors' deviations.
fn placed(prior: &Prior, place: &[f64]) -> Coefficients {
    let mut values = prior.mean;
    for ((value, sd), at) in values.iter_mut().zip(prior.sd).zip(place) {
        *value += sd * at;
    }
    Coefficients::from_values(values)
}

/// Residuals as independent numbers of unit variance: rows of a steel share its deviation, then the priors.
fn residuals(prior: &Prior, place: &[f64], steels: &[&Steel], scales: &Scales) -> Vec<f64> {
    let coefficients = placed(prior, place);
    let mut all = Vec::new();
    for steel in steels {
        let start = coefficients.untempered(steel.shares.carbon);
        let curve = coefficients.curve(&steel.shares, start, scales);
        let deviation = steel.row_deviation();
        let rows: Vec<(f64, f64)> = steel
            .results
            .iter()
            .map(|one| {
                let off = scales.hrc(curve.hv(one.celsius, one.hours)) - one.hrc;
                (off, one.weight / (deviation * deviation))
            })
            .collect();
        let weight: f64 = rows.iter().map(|(_, weight)| weight).sum();
        let mean = rows.iter().map(|(off, weight)| off * weight).sum::<f64>() / weight;
        // The root of the matrix with 1/weight on its diagonal and the steel's variance everywhere.
        let shared = 1.0 - 1.0 / (1.0 + STEEL_DEVIATION * STEEL_DEVIATION * weight).sqrt();
        all.extend(rows.iter().map(|(off, weight)| weight.sqrt() * (off - shared * mean)));
    }
    all.extend(place);
    all
}

fn square(residuals: &[f64]) -> f64 {
    residuals.iter().map(|x| x * x).sum()
}

/// How every residual changes with every coefficient, column by column.
fn slopes(prior: &Prior, place: &[f64; N], steels: &[&Steel], scales: &Scales) -> Vec<Vec<f64>> {
    (0..N)
        .map(|column| {
            let moved = |by: f64| {
                let mut place = *place;
                if let Some(at) = place.get_mut(column) {
                    *at += by;
                }
                residuals(prior, &place, steels, scales)
            };
            let (above, below) = (moved(STEP), moved(-STEP));
            above.iter().zip(&below).map(|(a, b)| (a - b) / (2.0 * STEP)).collect()
        })
        .collect()
}

fn product(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

/// The matrix of least squares: products of the columns.
fn normal_matrix(slopes: &[Vec<f64>]) -> Vec<Vec<f64>> {
    slopes.iter().map(|a| slopes.iter().map(|b| product(a, b)).collect()).collect()
}

/// Fits the coefficients to steels, from the priors' means or from an earlier fit.
///
/// # Errors
/// When the equations cannot be solved, or do not come to rest.
pub fn fit(
    steels: &[&Steel],
    prior: &Prior,
    from: Option<&Fit>,
    scales: &Scales,
) -> Result<Fit, Box<dyn Error>> {
    let mut place = [0.0; N];
    if let Some(from) = from {
        let values = from.value.values();
        for (at, ((value, mean), sd)) in
            place.iter_mut().zip(values.iter().zip(prior.mean).zip(prior.sd))
        {
            *at = (value - mean) / sd;
        }
    }
    let mut now = residuals(prior, &place, steels, scales);
    let mut damping = 1e-3;
    for _ in 0..100 {
        let slopes = slopes(prior, &place, steels, scales);
        let matrix = normal_matrix(&slopes);
        let down: Vec<f64> = slopes.iter().map(|column| -product(column, &now)).collect();
        let mut rest = 0.0;
        loop {
            let mut damped = matrix.clone();
            for (row, line) in damped.iter_mut().enumerate() {
                if let Some(own) = line.get_mut(row) {
                    *own *= 1.0 + damping;
                }
            }
            let root = Cholesky::new(&damped).ok_or("the equations have no solution")?;
            let step = root.solve(&down);
            let mut tried = place;
            for (at, by) in tried.iter_mut().zip(&step) {
                *at += by;
            }
            let then = residuals(prior, &tried, steels, scales);
            if square(&then) <= square(&now) {
                rest = step.iter().fold(0.0_f64, |most, by| most.max(by.abs()));
                (place, now) = (tried, then);
                damping = (damping / 5.0).max(1e-9);
                break;
            }
            damping *= 4.0;
            if damping > 1e9 {
                break;
            }
        }
        if rest < 1e-6 {
            let root = Cholesky::new(&matrix).ok_or("the errors cannot be worked out")?;
            let mut error = prior.sd;
            for (column, sd) in error.iter_mut().enumerate() {
                let unit: Vec<f64> = (0..N).map(|row| f64::from(u8::from(row == column))).collect();
                *sd *= square(&root.whiten(&unit)).sqrt();
            }
            return Ok(Fit { value: placed(prior, &place), error });
        }
    }
    Err("the fit does not come to rest".into())
}
