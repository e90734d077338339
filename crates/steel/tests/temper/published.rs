//! Published tables that the fit has not seen.

use biteband_steel::temper::{Regression, Temper};

use super::{Row, composition, number, reference};

/// Root of the mean square of predicted less published, in HRC, and the share of rows inside the band of 90 %.
fn compared(which: impl Fn(&Row) -> bool) -> (usize, f64, f64) {
    let rows: Vec<Row> = reference("published.csv").into_iter().filter(which).collect();
    let (mut square, mut inside) = (0.0, 0.0);
    for row in &rows {
        let steel = Regression::new(&composition(row)).unwrap();
        let at = [Temper::new(number(row, "celsius"), 60.0 * number(row, "hours")).unwrap()];
        let published = f64::midpoint(number(row, "hrc_low"), number(row, "hrc_high"));
        let off = steel.hrc(&at) - published;
        square += off * off;
        inside += f64::from(u8::from(off.abs() <= 1.645 * steel.sd(&at)));
    }
    let count = f64::from(u32::try_from(rows.len()).unwrap());
    (rows.len(), (square / count).sqrt(), inside / count)
}

fn text<'a>(row: &'a Row, name: &str) -> &'a str {
    row.get(name).map_or("", String::as_str)
}

/// Tables that were seen: an earlier working of the same kind came within 2.1 HRC of them.
#[test]
fn seen_tables_are_met_within_2_2_hrc() {
    let (count, rmse, inside) = compared(|row| text(row, "seen") == "seen");
    assert!(count > 40 && rmse < 2.2, "{count}: {rmse}");
    assert!(inside > 0.86, "{inside}");
}

/// Alloy steels, seen and recalled. One recalled table of 4140 alone lies 5 HRC below all others on the average.
#[test]
fn tables_of_alloy_steels_are_met_within_2_4_hrc() {
    let alloyed =
        |row: &Row| ["cr", "ni", "mo"].into_iter().map(|name| number(row, name)).sum::<f64>() > 0.3;
    let (count, rmse, inside) = compared(alloyed);
    assert!(count > 130 && rmse < 2.4, "{count}: {rmse}");
    assert!(inside > 0.80, "{inside}");
}

/// Low and medium carbon, seen and recalled.
#[test]
fn tables_of_low_and_medium_carbon_are_met_within_2_4_hrc() {
    let (count, rmse, inside) = compared(|row| number(row, "c") < 0.55 && number(row, "mn") < 1.5);
    assert!(count > 130 && rmse < 2.4, "{count}: {rmse}");
    assert!(inside > 0.80, "{inside}");
}
