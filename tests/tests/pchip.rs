//! The curve between printed rows, and its inverse, against SciPy's monotone cubic.
#![expect(clippy::panic, reason = "a helper that fails is a test that fails")]

use biteband_hardness::{Axis, Scale, TableId};
use biteband_tests::rows;

fn axis(heading: &str) -> Axis {
    Axis::Hardness(match heading {
        "Rm_MPa" => return Axis::Tensile,
        "HV10" | "HV15" => Scale::Hv,
        "HB" | "HB30" => Scale::Hbw,
        "HB500" => Scale::Hbw500,
        "Sclero" | "Shore" => Scale::Scleroscope,
        other => return Axis::find(other).unwrap_or_else(|| panic!("{other}")),
    })
}

/// No conversion below 20 HRC or above 100 HRB, where SciPy's interpolant goes on.
fn beyond(axis: Axis, value: f64) -> bool {
    match axis {
        Axis::Hardness(Scale::Hrc) => value < 20.0,
        Axis::Hardness(Scale::Hrb) => value > 100.0,
        _ => false,
    }
}

#[test]
fn ref_between_rows_is_scipys_monotone_cubic_in_both_directions() {
    let (mut forward, mut backward, mut refused) = (0, 0, 0);
    let (mut worst_forward, mut worst_backward) = (0.0_f64, 0.0_f64);
    for point in rows("pchip/pchip.csv").unwrap() {
        let table = TableId::find(point.text("table")).unwrap().get().unwrap();
        let (row_scale, column) = (table.row_axis(), axis(point.text("column")));
        let (given, expected) = (point.number("given"), point.number("expected"));
        let ahead = point.text("direction") == "forward";
        let (from, to) = if ahead { (row_scale, column) } else { (column, row_scale) };
        let found = table.convert(from, given, to);
        if beyond(from, given) || beyond(to, expected) {
            assert!(found.is_none(), "{point:?}: {found:?}");
            refused += 1;
            continue;
        }
        let found = found.unwrap_or_else(|| panic!("{point:?} is refused"));
        // A column of soft metals goes through nought, where a share of the number says nothing.
        let off = (found.value - expected).abs() / expected.abs().max(1.0);
        // Forward both evaluate the same cubic with a few dozen roundings, each of 1.1e-16.
        // Backward the expected value itself is a root search to 1e-13 on the row scale, and where the
        // column is flat the last bits of its number decide: 1e-9 is a millionth of a printed step.
        let (worst, within) =
            if ahead { (&mut worst_forward, 1e-12) } else { (&mut worst_backward, 1e-9) };
        assert!(off <= within, "{point:?}: {} is {off:e} off", found.value);
        *worst = worst.max(off);
        if ahead {
            forward += 1;
        } else {
            backward += 1;
        }
    }
    println!(
        "forward {forward} to {worst_forward:e}, backward {backward} to {worst_backward:e}, refused {refused}"
    );
    assert!(forward > 7000 && backward > 3600 && refused > 300);
}
