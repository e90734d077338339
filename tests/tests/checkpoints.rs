//! The tables against numbers stated outside them, and against each other.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a helper that fails is a test that fails")]

use std::collections::BTreeMap;

use biteband_hardness::{Axis, Choice, Reading, Scale, Table, TableId, convert};
use biteband_tests::{Row, rows};

const HRC: Axis = Axis::Hardness(Scale::Hrc);
const HRB: Axis = Axis::Hardness(Scale::Hrb);
const HV: Axis = Axis::Hardness(Scale::Hv);
const HBW: Axis = Axis::Hardness(Scale::Hbw);
const RM: Axis = Axis::Tensile;

fn axis(text: &str) -> Axis {
    match text {
        "Rm_MPa" => RM,
        other => Axis::find(other).unwrap_or_else(|| panic!("{other}")),
    }
}

fn table(key: &str) -> &'static Table {
    TableId::find(key).and_then(TableId::get).unwrap_or_else(|| panic!("{key}"))
}

/// One standard's tables, in the order in which they are asked.
fn standards() -> [(&'static str, Vec<&'static Table>); 4] {
    [
        ("E140", vec![table("astm-e140-t1"), table("astm-e140-t2")]),
        ("ISO", vec![table("iso-18265-a1")]),
        ("A370", vec![table("astm-a370-hrc"), table("astm-a370-hrb")]),
        ("J417", vec![table("sae-j417-hrc")]),
    ]
}

struct Point {
    from: Axis,
    given: f64,
    to: Axis,
    stated: f64,
    row: Row,
}

fn checkpoints() -> Vec<Point> {
    let point = |row: Row| Point {
        from: axis(row.text("from_scale")),
        given: row.number("from_value"),
        to: axis(row.text("to_scale")),
        stated: row.number("to_value"),
        row,
    };
    rows("tables/checkpoints.csv").unwrap().into_iter().map(point).collect()
}

/// Rockwell numbers differ in points, everything else in percent.
fn apart(found: f64, stated: f64, axis: Axis) -> f64 {
    match axis {
        HRC | HRB => found - stated,
        _ => (found - stated) / stated * 100.0,
    }
}

/// How far a table may stand from a checkpoint.
fn tolerance(standard: &str, to: Axis) -> f64 {
    match (to, standard) {
        // Product limits in HRC are whole numbers, rounded on purpose: one point.
        (HRC, _) => 1.0,
        // Whole numbers again, and the ASTM and ISO tables differ by 1 to 2 HRB at the same HV: 3 points.
        // Brinell limits of products are within 3 %; where ASTM sets HB = HV in the B range and ISO has
        // 0.95 HV, 5 % more or less.
        (HBW, "E140" | "A370") => 5.5,
        (HRB | HBW, _) => 3.0,
        // GB/T 1172 was measured independently: 3.3 % rms from E140, so half as much again.
        (HV, _) => 5.0,
        // Tensile strength, the least reliable: ISO within 3 %; ASTM A370 stands 6.5 % from the older
        // British and American charts; SAE J417 twice its own rms of 2.2 %.
        (RM, "ISO") => 3.1,
        (RM, "J417") => 4.4,
        (RM, _) => 6.6,
        (other, _) => panic!("no checkpoint is in {other}"),
    }
}

#[test]
fn ref_every_checkpoint_is_met_by_every_table_that_holds_it() {
    let mut compared = 0;
    let points = checkpoints();
    assert_eq!(points.len(), 53);
    for point in &points {
        let Point { from, given, to, stated, row } = point;
        let mut answers = 0;
        for (standard, tables) in standards() {
            let Some(found) = tables.iter().find_map(|t| t.convert(*from, *given, *to)) else {
                continue;
            };
            let off = apart(found.value, *stated, *to);
            assert!(
                off.abs() <= tolerance(standard, *to),
                "{standard} gives {} {to}, {off:+.2} off: {row:?}",
                found.value
            );
            answers += 1;
        }
        assert!(answers > 0, "no table answers {row:?}");
        compared += answers;
    }
    assert!(compared > 170, "{compared}");
}

#[test]
fn ref_the_default_answer_meets_every_checkpoint_and_its_width_most() {
    let mut outside = 0;
    for Point { from, given, to, stated, row } in checkpoints() {
        let found = convert(Reading::new(from, given).unwrap(), to, Choice::STEEL).unwrap();
        let off = apart(found.at.value, stated, to);
        let standard = match found.table.get().map(Table::key) {
            Some(key) if key.starts_with("iso") => "ISO",
            Some(key) if key.starts_with("sae") => "J417",
            _ => "A370",
        };
        assert!(off.abs() <= tolerance(standard, to), "{off:+.2}: {row:?}");
        if (found.at.value - stated).abs() > found.width.half {
            println!("outside its width: {row:?}");
            outside += 1;
        }
    }
    // The width is stated for 95 % of cases: of 53 pairs three or fewer may lie outside.
    assert!(outside <= 3, "{outside} pairs outside the stated width");
}

#[test]
fn ref_scatter_about_the_checkpoints_is_what_was_found_independently() {
    // Root mean square of (table - checkpoint), in points for Rockwell and percent otherwise, as an
    // independent program found it on the same rows with SciPy's interpolant of one column over the
    // other. This library goes by way of the table's row scale, which moves single values between rows
    // by a few hundredths of a point or percent: the margin, with half of the last printed digit.
    let expected = [
        ("ISO", HRC, 6, 0.28),
        ("ISO", HRB, 6, 0.56),
        ("ISO", HBW, 12, 1.04),
        ("ISO", HV, 7, 2.40),
        ("ISO", RM, 22, 1.48),
        ("E140", HRC, 6, 0.29),
        ("E140", HBW, 12, 1.96),
        ("E140", HRB, 4, 1.76),
        ("E140", HV, 7, 2.44),
        ("A370", HRC, 6, 0.29),
        ("A370", HBW, 12, 1.96),
        ("A370", HRB, 4, 1.76),
        ("A370", RM, 22, 2.79),
        ("J417", HRC, 6, 0.29),
        // The print of SAE J417 by Rockwell C alone.
        ("J417", HBW, 10, 0.94),
        ("J417", RM, 21, 2.26),
    ];
    let mut found: BTreeMap<(&str, Axis), Vec<f64>> = BTreeMap::new();
    for point in checkpoints() {
        for (standard, tables) in standards() {
            let answer = tables.iter().find_map(|t| t.convert(point.from, point.given, point.to));
            if let Some(answer) = answer {
                let off = apart(answer.value, point.stated, point.to);
                found.entry((standard, point.to)).or_default().push(off);
            }
        }
    }
    for (standard, to, count, rms) in expected {
        let off = &found[&(standard, to)];
        let ours = rms_of(off);
        println!("{standard} {to}: {} pairs, rms {ours:.3}, expected {rms}", off.len());
        assert_eq!(off.len(), count, "{standard} {to}");
        assert!((ours - rms).abs() <= 0.005 + 0.03, "{standard} {to}: {ours} and not {rms}");
    }
}

fn rms_of(values: &[f64]) -> f64 {
    (values.iter().map(|v| v * v).sum::<f64>() / f64::from(u32::try_from(values.len()).unwrap()))
        .sqrt()
}

fn mean_of(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / f64::from(u32::try_from(values.len()).unwrap())
}

/// Second table minus first, on the printed rows of the first: (place, difference, share of the first).
fn disagreement(first: &str, second: &str, at: Axis, of: Axis) -> Vec<(f64, f64, f64)> {
    let (first, second) = (table(first), table(second));
    (0..first.rows().count())
        .filter_map(|row| {
            let (place, own) = (first.cell(row, at)?.value, first.cell(row, of)?.value);
            let other = second.convert(at, place, of)?.value;
            Some((place, other - own, (other - own) / own * 100.0))
        })
        .collect()
}

/// The independent program interpolates one column straight over the other; this library goes by way of
/// the table's row scale. Between rows the two curves part by up to a few per cent of a disagreement.
const MARGIN: f64 = 0.04;

struct Known {
    second: &'static str,
    first: &'static str,
    at: Axis,
    of: Axis,
    count: usize,
    mean: f64,
    rms: f64,
    worst: f64,
    percent: f64,
}

#[test]
fn ref_tables_disagree_as_much_as_was_found_independently() {
    let hrf = Axis::Hardness(Scale::Hrf);
    let known = |second, first, at, of, count, mean, rms, worst, percent| Known {
        second,
        first,
        at,
        of,
        count,
        mean,
        rms,
        worst,
        percent,
    };
    let (t1, t2, iso, gb) = ("astm-e140-t1", "astm-e140-t2", "iso-18265-a1", "gbt-1172");
    let (a370, j417) = ("astm-a370-hrc", "sae-j417-hrc");
    // Second minus first at equal value of the scale `at`: count, mean, rms, worst, rms in percent. Found by an independent program with SciPy's interpolant on the same transcriptions.
    let expected = [
        known(iso, t1, HRC, HV, 48, 0.29, 0.68, -2.19, 0.13),
        known(iso, t1, HV, HRC, 48, -0.03, 0.05, -0.16, 0.17),
        known(iso, t1, HRC, HBW, 37, 2.70, 3.72, 7.62, 0.77),
        known(iso, t1, HV, HBW, 38, 2.27, 3.31, 7.00, 0.69),
        known(iso, t2, HV, HRB, 46, -0.89, 1.29, -1.90, 1.59),
        known(iso, t2, HRB, HV, 46, 4.11, 5.77, 13.22, 3.03),
        known(iso, t2, HRB, HBW, 46, -3.47, 3.96, -6.89, 3.37),
        known(iso, t2, HRB, hrf, 28, -1.56, 1.62, -2.01, 1.79),
        known(gb, t1, HV, HRC, 49, 0.72, 1.24, 2.17, 4.31),
        known(gb, t1, HRC, HV, 49, -2.74, 13.88, 25.00, 3.29),
        known(gb, t1, HRC, HBW, 32, -0.47, 3.50, 7.00, 0.98),
        known(gb, t1, HV, HBW, 31, 10.71, 10.85, 13.28, 3.30),
        known(j417, a370, HRC, RM, 36, 0.56, 5.89, 20.00, 0.55),
        known(iso, a370, HRC, RM, 37, -21.33, 52.77, -119.13, 3.02),
        known(iso, a370, HV, RM, 38, -22.03, 53.45, -123.22, 3.02),
        known(iso, "astm-a370-hrb", HV, RM, 36, -20.38, 22.26, -43.27, 4.17),
    ];
    for k in expected {
        let found = disagreement(k.first, k.second, k.at, k.of);
        let at = format!("{} - {}, {} at {}", k.second, k.first, k.of, k.at);
        let differences: Vec<f64> = found.iter().map(|f| f.1).collect();
        let shares: Vec<f64> = found.iter().map(|f| f.2).collect();
        let worst = found.iter().max_by(|a, b| a.1.abs().total_cmp(&b.1.abs())).unwrap();
        let (mean, rms, percent) = (mean_of(&differences), rms_of(&differences), rms_of(&shares));
        println!(
            "{at}: {} mean {mean:.2} rms {rms:.2} ({percent:.2} %) worst {worst:?}",
            found.len()
        );
        assert_eq!(found.len(), k.count, "{at}");
        let near = |ours: f64, stated: f64, margin: f64| (ours - stated).abs() <= 0.005 + margin;
        assert!(near(mean, k.mean, MARGIN * k.rms), "{at}: mean {mean}");
        assert!(near(rms, k.rms, MARGIN * k.rms), "{at}: rms {rms}");
        assert!(near(percent, k.percent, MARGIN * k.percent), "{at}: {percent} %");
        assert!(near(worst.1, k.worst, MARGIN * k.worst.abs()), "{at}: {worst:?}");
    }
}

#[test]
fn ref_a370_and_j417_follow_e140_in_brinell_and_everywhere() {
    // ASTM A370 prints HBW one off E140 at 63, 50, 49 and 47 HRC and nowhere else.
    let brinell = disagreement("astm-e140-t1", "astm-a370-hrc", HRC, HBW);
    let off: Vec<f64> = brinell.iter().filter(|d| d.1.abs() > 1e-9).map(|d| d.0).collect();
    assert_eq!(off, [47.0, 49.0, 50.0, 63.0]);
    assert!(brinell.iter().all(|d| d.1.abs() < 1.0 + 1e-9));
    // SAE J417 is the same work as E140 Table 1: under 0.2 % in every column, the whole-number Shore apart.
    let e140 = table("astm-e140-t1");
    let mut columns = 0;
    for (of, _) in e140.columns().filter(|&(of, _)| of != HRC) {
        let found = disagreement("astm-e140-t1", "sae-j417-hrc", HRC, of);
        if found.is_empty() || of == Axis::Hardness(Scale::Scleroscope) {
            continue;
        }
        let shares: Vec<f64> = found.iter().map(|d| d.2).collect();
        assert!(rms_of(&shares) < 0.2, "{of}");
        columns += 1;
    }
    assert_eq!(columns, 8);
}
