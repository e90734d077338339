//! The file of coefficients.

use std::error::Error;
use std::fmt::Write as _;
use std::path::PathBuf;

use biteband_steel::temper::{Coefficients, Spread};

use super::data::data;
use super::fit::{Fit, Prior};
use crate::{Row, read};

const HEAD: &str = "\
# Coefficients of the tempering regression, fitted by `cargo xtask calibrate` to tempering-results.csv: edit prior and
# meaning only, the rest is written. Shares in mass percent; P is the parameter T (constant + log10 h) / 1000, T in K.
# standard_error: with the prior. prior: middle and standard deviation before the data; ours, rounded from the literature
# and from earlier work with the same results, and wide. spread_: deviations of results of one steel that the fit has
# not seen, in HRC.
";

/// What the file says besides the values: priors and meanings.
#[derive(Clone, Debug)]
pub struct Table {
    rows: Vec<Row>,
    /// What is known before the data.
    pub prior: Prior,
}

/// Where the file stands, and its text.
///
/// # Errors
/// When it cannot be read.
pub fn committed() -> Result<(PathBuf, String), Box<dyn Error>> {
    let path = data("tempering-coefficients.csv");
    let text = std::fs::read_to_string(&path)?;
    Ok((path, text))
}

impl Table {
    /// Reads priors and meanings.
    ///
    /// # Errors
    /// A coefficient that is missing, out of order or without a prior.
    pub fn read() -> Result<Self, Box<dyn Error>> {
        let rows = read(&data("tempering-coefficients.csv"))?;
        let mut prior = Prior {
            mean: [f64::NAN; Coefficients::NAMES.len()],
            sd: [f64::NAN; Coefficients::NAMES.len()],
        };
        let slots = prior.mean.iter_mut().zip(prior.sd.iter_mut()).zip(Coefficients::NAMES);
        for (((mean, sd), name), row) in slots.zip(&rows) {
            (*mean, *sd) = (row.number("prior_mean"), row.number("prior_sd"));
            if row.text("name") != name || !(mean.is_finite() && *sd > 0.0) {
                return Err(format!(
                    "tempering-coefficients.csv: {name} with its prior is missing"
                )
                .into());
            }
        }
        Ok(Self { rows, prior })
    }

    /// The file with fitted values.
    ///
    /// # Errors
    /// When the spread has other names than the file.
    pub fn written(&self, fit: &Fit, spread: &Spread) -> Result<String, Box<dyn Error>> {
        let mut out = format!("{HEAD}name,value,standard_error,prior_mean,prior_sd,meaning\n");
        let Spread { level, drift, reach, hot, scatter } = *spread;
        let spread = [level, drift, reach, hot, scatter];
        let fitted = fit.value.values().into_iter().zip(fit.error).map(|(a, b)| (a, Some(b)));
        let all = fitted.chain(spread.into_iter().map(|value| (value, None)));
        for (row, (value, error)) in self.rows.iter().zip(all) {
            let error = error.map_or(String::new(), |error| format!("{error:.4}"));
            let (mean, sd) = (row.text("prior_mean"), row.text("prior_sd"));
            let (name, meaning) = (row.text("name"), row.text("meaning"));
            writeln!(out, "{name},{value:.4},{error},{mean},{sd},\"{meaning}\"")?;
        }
        Ok(out)
    }
}
