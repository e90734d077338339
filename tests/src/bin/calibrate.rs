//! `cargo xtask calibrate [--check]`: fits the tempering regression, prints how steels that were left out came out, and
//! writes the coefficients; with `--check` it fails when those that are written differ.

use std::error::Error;

use biteband_steel::temper::Scales;
use biteband_tests::calibrate::{
    Figures, LeftOut, Measured, Steel, Table, committed, figures, figures_after_one,
    figures_from_quenched, fit, fit_spread, left_out, steels,
};

fn main() -> Result<(), Box<dyn Error>> {
    let check = match std::env::args().nth(1).as_deref() {
        None => false,
        Some("--check") => true,
        Some(other) => return Err(format!("usage: calibrate [--check], not {other}").into()),
    };
    let (steels, table, scales) = (steels()?, Table::read()?, Scales::new()?);
    let all: Vec<&Steel> = steels.iter().collect();
    let full = fit(&all, &table.prior, None, &scales)?;
    let results = left_out(&steels, &table.prior, &full, &scales)?;
    let spread = fit_spread(&results)?;

    println!("Steels left out of the fit, HRC:");
    let line = |name: &str, one: Figures| {
        let Figures { count, rmse, mae, bias, covered } = one;
        println!(
            "{name:<44} {count:>5} results, RMSE {rmse:.2}, MAE {mae:.2}, mean {bias:+.2}, in the 90 % band {:.1} %",
            100.0 * covered
        );
    };
    for (steel, results) in steels.iter().zip(&results) {
        line(&steel.key, figures(results, &spread, Measured::in_shop));
    }
    line("all, everywhere", figures(results.iter().flatten(), &spread, |_| true));
    line("all, shop's range", figures(results.iter().flatten(), &spread, Measured::in_shop));
    for (low, high) in [(150.0, 300.0), (300.0, 450.0), (450.0, 550.0), (550.0, 700.1)] {
        let part = |one: &Measured| one.in_shop() && one.celsius >= low && one.celsius < high;
        let name = format!("of these, from {low:.0} to {high:.0} °C");
        line(&name, figures(results.iter().flatten(), &spread, part));
    }
    let (without, with) = figures_from_quenched(&results, &spread);
    line("with hardness as quenched, without using it", without);
    line("with hardness as quenched, using it", with);
    let near = |shop: &[LeftOut]| {
        let far = |one: &LeftOut| {
            (one.measured.celsius - 427.0).abs() / 50.0 + 1.5 * one.measured.hours.ln().abs()
        };
        shop.iter().copied().min_by(|a, b| far(a).total_cmp(&far(b))).into_iter().collect()
    };
    line(
        "after one result near 427 °C, 1 h",
        figures_after_one(&results, &spread, near, |_, _| true)?,
    );
    let any = |shop: &[LeftOut]| shop.to_vec();
    line("after any one result", figures_after_one(&results, &spread, any, |_, _| true)?);
    for within in [100.0, 60.0] {
        let close = move |a: &LeftOut, b: &LeftOut| {
            (a.measured.celsius - b.measured.celsius).abs() <= within
        };
        let name = format!("after any one result within {within} K of it");
        line(&name, figures_after_one(&results, &spread, any, close)?);
    }

    let text = table.written(&full, &spread)?;
    let (path, written) = committed()?;
    if text == written {
        println!("{} is what the data give.", path.display());
    } else if check {
        return Err(format!(
            "{} is not what the data give: `cargo xtask calibrate`",
            path.display()
        )
        .into());
    } else {
        std::fs::write(&path, text)?;
        println!("wrote {}", path.display());
    }
    Ok(())
}
