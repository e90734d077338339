//! Limits of machines and blocks and the uncertainties assumed for a reading.

use biteband_hardness::indentation::{
    Instrument, LimitKind, default_standard_uncertainty, interlaboratory, machine_limits,
};
use biteband_hardness::{Scale, Seen};

use crate::{kgf, near};

fn limit(scale: Scale, value: f64, kind: LimitKind, source: &str) -> Option<(f64, Seen)> {
    let found = machine_limits(scale, value);
    let mut found = found
        .iter()
        .filter(|limit| limit.kind == kind && limit.cited.source.get().unwrap().key() == source);
    let first = found.next().map(|limit| (limit.amount, limit.cited.seen));
    assert!(found.next().is_none(), "two limits of one standard for {value} {scale}");
    first
}

/// The tables of the standards as noted in the data file, at and beside their borders.
#[test]
fn limits_of_machines_and_blocks() {
    use LimitKind::{BlockRange, Error, Repeatability};
    let rows = [
        (Scale::Hrc, 60.0, Error, "iso-6508-2", 1.5, Seen::Seen),
        (Scale::Hrc, 25.0, Repeatability, "iso-6508-2", 1.5, Seen::Recalled),
        (Scale::Hrc, 65.0, Repeatability, "iso-6508-2", 0.8, Seen::Recalled),
        (Scale::Hra, 75.0, Error, "iso-6508-2", 2.0, Seen::Seen),
        (Scale::Hra, 75.1, Error, "iso-6508-2", 1.5, Seen::Seen),
        (Scale::Hrb, 45.0, Error, "iso-6508-2", 4.0, Seen::Seen),
        (Scale::Hrb, 80.0, Error, "iso-6508-2", 3.0, Seen::Seen),
        (Scale::Hrb, 90.0, Error, "iso-6508-2", 2.0, Seen::Seen),
        (Scale::Hrb, 80.0, Repeatability, "iso-6508-2", 2.0, Seen::Recalled),
        (Scale::Hr30n, 70.0, Error, "iso-6508-2", 2.0, Seen::Recalled),
        (Scale::Hr30n, 50.0, Repeatability, "iso-6508-2", 2.0, Seen::Recalled),
        (Scale::Hr30t, 70.0, Error, "iso-6508-2", 3.0, Seen::Recalled),
        (Scale::Hr30t, 70.0, Repeatability, "iso-6508-2", 2.4, Seen::Recalled),
        (Scale::Hrc, 40.0, BlockRange, "iso-6508-3", 0.6, Seen::Recalled),
        (Scale::Hrc, 64.0, BlockRange, "iso-6508-3", 0.4, Seen::Recalled),
        (Scale::Hrb, 90.0, BlockRange, "iso-6508-3", 1.0, Seen::Recalled),
        (Scale::Hrc, 64.0, BlockRange, "oiml-unification", 0.54, Seen::Seen),
        (Scale::Hrc, 34.9, Repeatability, "astm-e18", 2.0, Seen::Recalled),
        (Scale::Hrc, 35.0, Repeatability, "astm-e18", 1.5, Seen::Recalled),
        (Scale::Hrc, 60.0, Error, "astm-e18", 0.5, Seen::Recalled),
        (Scale::Hrb, 59.9, Error, "astm-e18", 1.5, Seen::Recalled),
        (Scale::Hrb, 80.0, Repeatability, "astm-e18", 1.5, Seen::Recalled),
        (Scale::Hbw, 125.0, Error, "iso-6506-2", 3.75, Seen::Recalled),
        (Scale::Hbw, 200.0, Repeatability, "iso-6506-2", 5.0, Seen::Recalled),
        (Scale::Hbw, 300.0, Error, "iso-6506-2", 6.0, Seen::Recalled),
        (Scale::Hv, 200.0, Error, "iso-6507-2", 6.0, Seen::Recalled),
        (Scale::Hv, 700.0, Error, "iso-6507-2", 14.0, Seen::Recalled),
    ];
    for (scale, value, kind, source, amount, seen) in rows {
        let what = format!("{kind:?} {value} {scale} {source}");
        let (found, mark) = limit(scale, value, kind, source).unwrap_or_else(|| panic!("{what}"));
        near(found, amount, 1e-9, &what);
        assert_eq!(mark, seen, "{what}");
    }
    assert!(machine_limits(Scale::Leeb, 600.0).is_empty());
    assert!(machine_limits(Scale::Hrc, f64::NAN).is_empty());
    assert!(machine_limits(Scale::Hrc, 75.0).is_empty());
}

#[test]
fn uncertainties_assumed_when_none_is_stated() {
    use Instrument::{Bench, BenchVerified, Leeb, Uci};
    let rows = [
        (BenchVerified, Scale::Hrc, 60.0, None, Some(0.5)),
        (Bench, Scale::Hrc, 60.0, None, Some(0.8)),
        (Bench, Scale::Hrb, 80.0, None, Some(1.0)),
        (BenchVerified, Scale::Hv, 700.0, Some(30.0), Some(14.0)),
        (BenchVerified, Scale::Hv, 700.0, Some(1.0), Some(21.0)),
        (BenchVerified, Scale::Hv, 700.0, Some(0.5), None),
        (BenchVerified, Scale::Hv, 700.0, None, None),
        (Bench, Scale::Hbw, 200.0, Some(3000.0), Some(3.0)),
        (Bench, Scale::Hbw, 200.0, Some(750.0), None),
        (Bench, Scale::Hbw, 200.0, None, None),
        (Bench, Scale::Hra, 80.0, None, Some(1.5 / 2.8)),
        (Bench, Scale::Hr30n, 70.0, None, Some(2.0 / 2.8)),
        (Bench, Scale::Hr15t, 80.0, None, Some(3.0 / 2.8)),
        (Bench, Scale::Hre, 80.0, None, None),
        (Bench, Scale::Hk, 700.0, Some(0.5), None),
        (Leeb, Scale::Leeb, 700.0, None, Some(6.0)),
        (Leeb, Scale::Hrc, 50.0, None, Some(2.0)),
        (Leeb, Scale::Hbw, 300.0, None, None),
        (Uci, Scale::HvUci, 700.0, None, Some(28.0)),
        (Uci, Scale::Hrc, 50.0, None, None),
        (Bench, Scale::Hrc, f64::NAN, None, None),
        (Bench, Scale::Hrc, 90.0, None, None),
        (Bench, Scale::Hrc, -5.0, None, None),
    ];
    for (instrument, scale, value, force, expected) in rows {
        let what = format!("{instrument:?} {value} {scale} {force:?}");
        let found = default_standard_uncertainty(instrument, scale, value, force.map(kgf));
        assert_eq!(found.is_some(), expected.is_some(), "{what}");
        if let (Some(found), Some(expected)) = (found, expected) {
            near(found.amount, expected, 1e-9, &what);
        }
    }
}

/// ASTM E18-19 Table 4, read: the reproducibility limit R beside `s_R` is 2.8 times it.
#[test]
fn comparisons_between_laboratories() {
    let limits = [1.506, 1.002, 1.309, 1.232, 0.725, 1.089, 6.969, 1.822, 1.396]
        .into_iter()
        .chain([1.871, 1.953, 0.817, 2.522, 1.447, 2.382]);
    let scales = [Scale::Hra, Scale::Hrc, Scale::Hr30n, Scale::Hrb, Scale::Hr30t];
    let found: Vec<_> = scales.into_iter().flat_map(interlaboratory).collect();
    assert_eq!(found.len(), 15);
    for (row, limit) in found.iter().zip(limits) {
        near(2.8 * row.between, limit, 0.003, &format!("{} {}", row.block, row.scale));
        assert!(row.within < row.between && (row.mean - row.block).abs() < 4.5);
        assert_eq!(row.cited.seen, Seen::Seen);
    }
}
