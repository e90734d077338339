//! Counts, sums, order and what standards say of whole columns.

use biteband_hardness::*;

use crate::print::*;

/// Table, heading, printed numbers, of these in parentheses, and their sum in hundredths.
///
/// Counted and summed in exact decimals on the transcription that the data files were made from.
const SUMS: [(&str, &str, usize, usize, i64); 72] = [
    ("astm-e140-t1", "HRC", 49, 0, 215_600),
    ("astm-e140-t1", "HV", 49, 0, 2_363_100),
    ("astm-e140-t1", "HBS", 33, 4, 1_136_500),
    ("astm-e140-t1", "HBW", 46, 6, 1_962_900),
    ("astm-e140-t1", "HK", 49, 0, 2_449_700),
    ("astm-e140-t1", "HRA", 49, 0, 356_330),
    ("astm-e140-t1", "HRD", 49, 0, 286_340),
    ("astm-e140-t1", "HR15N", 49, 0, 402_320),
    ("astm-e140-t1", "HR30N", 49, 0, 308_960),
    ("astm-e140-t1", "HR45N", 49, 0, 234_120),
    ("astm-e140-t1", "Sclero", 49, 0, 293_930),
    ("astm-e140-t2", "HRB", 71, 0, 461_500),
    ("astm-e140-t2", "HV", 46, 0, 698_500),
    ("astm-e140-t2", "HB", 46, 0, 698_500),
    ("astm-e140-t2", "HK", 71, 0, 1_010_100),
    ("astm-e140-t2", "HRA", 71, 0, 302_440),
    ("astm-e140-t2", "HRF", 46, 0, 399_400),
    ("astm-e140-t2", "HR15T", 71, 0, 580_430),
    ("astm-e140-t2", "HR30T", 71, 0, 423_940),
    ("astm-e140-t2", "HR45T", 71, 0, 267_970),
    ("iso-18265-a1", "Rm_MPa", 80, 0, 8_235_500),
    ("iso-18265-a1", "HV10", 97, 0, 3_871_000),
    ("iso-18265-a1", "HBW", 80, 18, 2_409_420),
    ("iso-18265-a1", "HRB", 26, 4, 216_320),
    ("iso-18265-a1", "HRF", 17, 11, 175_210),
    ("iso-18265-a1", "HRC", 65, 0, 302_970),
    ("iso-18265-a1", "HRA", 65, 0, 481_690),
    ("iso-18265-a1", "HRD", 65, 0, 392_890),
    ("iso-18265-a1", "HR15N", 65, 0, 542_270),
    ("iso-18265-a1", "HR30N", 65, 0, 425_080),
    ("iso-18265-a1", "HR45N", 65, 0, 330_480),
    ("astm-a370-hrc", "HRC", 49, 0, 215_600),
    ("astm-a370-hrc", "HV", 49, 0, 2_363_100),
    ("astm-a370-hrc", "HBW", 46, 6, 1_962_900),
    ("astm-a370-hrc", "HK", 49, 0, 2_449_700),
    ("astm-a370-hrc", "HRA", 49, 0, 356_330),
    ("astm-a370-hrc", "HR15N", 49, 0, 402_320),
    ("astm-a370-hrc", "HR30N", 49, 0, 308_960),
    ("astm-a370-hrc", "HR45N", 49, 0, 234_120),
    ("astm-a370-hrc", "ksi", 40, 0, 788_900),
    ("astm-a370-hrc", "Rm_MPa", 40, 0, 5_438_000),
    ("astm-a370-hrb", "HRB", 36, 0, 297_000),
    ("astm-a370-hrb", "HV", 36, 0, 592_000),
    ("astm-a370-hrb", "HB", 36, 0, 592_000),
    ("astm-a370-hrb", "HK", 36, 0, 643_200),
    ("astm-a370-hrb", "HRA", 36, 0, 184_110),
    ("astm-a370-hrb", "HRF", 11, 0, 106_470),
    ("astm-a370-hrb", "HR15T", 36, 0, 314_740),
    ("astm-a370-hrb", "HR30T", 36, 0, 257_100),
    ("astm-a370-hrb", "HR45T", 36, 0, 199_140),
    ("astm-a370-hrb", "ksi", 36, 0, 285_900),
    ("astm-a370-hrb", "Rm_MPa", 36, 0, 1_970_500),
    ("sae-j417-hrc", "HRC", 59, 10, 224_600),
    ("sae-j417-hrc", "HV", 59, 0, 2_556_300),
    ("sae-j417-hrc", "HBS", 43, 4, 1_320_500),
    ("sae-j417-hrc", "HBW", 56, 7, 2_146_900),
    ("sae-j417-hrc", "HRA", 49, 0, 356_320),
    ("sae-j417-hrc", "HRB", 27, 13, 265_970),
    ("sae-j417-hrc", "HRD", 49, 0, 286_340),
    ("sae-j417-hrc", "HR15N", 49, 0, 402_320),
    ("sae-j417-hrc", "HR30N", 49, 0, 308_960),
    ("sae-j417-hrc", "HR45N", 49, 0, 234_110),
    ("sae-j417-hrc", "Shore", 59, 0, 325_000),
    ("sae-j417-hrc", "Rm_MPa", 46, 0, 5_140_500),
    ("gbt-1172", "HRC", 105, 0, 456_200),
    ("gbt-1172", "HRA", 61, 0, 478_130),
    ("gbt-1172", "HR15N", 36, 0, 319_460),
    ("gbt-1172", "HR30N", 36, 0, 266_580),
    ("gbt-1172", "HR45N", 36, 0, 222_790),
    ("gbt-1172", "HV", 104, 0, 5_035_600),
    ("gbt-1172", "HB", 66, 0, 2_135_800),
    ("gbt-1172", "Rm_MPa", 57, 0, 5_741_500),
];

#[test]
fn table_columns_have_the_count_marks_and_sum_of_the_transcription() {
    let sheets = sheets();
    let mut printed_columns = 0;
    for sheet in &sheets {
        printed_columns += sheet.headings.len();
    }
    assert_eq!(printed_columns, SUMS.len());
    for (id, heading, count, marked, sum) in SUMS {
        let sheet = sheets.iter().find(|s| s.id == id).unwrap();
        let cells = sheet.column(heading);
        assert_eq!(cells.len(), count, "{id} {heading}");
        assert_eq!(cells.iter().filter(|(_, p)| p.parenthesised).count(), marked, "{id} {heading}");
        let hundredths = |value: f64| {
            let hundredths = (value * 100.0).round();
            format!("{hundredths:.0}").parse::<i64>().unwrap()
        };
        let total: i64 = cells.iter().map(|(_, p)| hundredths(p.value)).sum();
        assert_eq!(total, sum, "{id} {heading}");
        for &axis in sheet.scales.get(heading).into_iter().flatten() {
            let (_, table) = sheet.table();
            let held = (0..table.rows().count()).filter_map(|i| table.cell(i, axis));
            assert_eq!(held.map(|c| hundredths(c.value)).sum::<i64>(), sum, "{id} {axis}");
        }
    }
}

#[test]
fn table_rows_number_as_printed() {
    // ASTM E140 Table 1 runs from 68 to 20 HRC and Table 2 from 100 to 30 HRB, one row each; ASTM A370
    // from 68 to 20 HRC and from 100 to 65 HRB; SAE J417 goes on below 20 HRC in steps of two;
    // GB/T 1172 from 70 to 17 HRC in steps of 0.5, 45.5 and 46.5 left out where the reprint is cut off;
    // ISO 18265 Table A.1 counted in print.
    let printed = [
        ("astm-e140-t1", 68 - 20 + 1, 20.0, 68.0),
        ("astm-e140-t2", 100 - 30 + 1, 30.0, 100.0),
        ("iso-18265-a1", 97, 80.0, 940.0),
        ("astm-a370-hrc", 68 - 20 + 1, 20.0, 68.0),
        ("astm-a370-hrb", 100 - 65 + 1, 65.0, 100.0),
        ("sae-j417-hrc", 68 - 20 + 1 + 10, 0.0, 68.0),
        ("gbt-1172", 105, 17.0, 70.0),
    ];
    let sheets = sheets();
    assert_eq!(TableId::all().count(), printed.len());
    for (id, count, first, last) in printed {
        let sheet = sheets.iter().find(|s| s.id == id).unwrap();
        let (_, table) = sheet.table();
        let rows: Vec<f64> = table.rows().collect();
        assert_eq!((rows.len(), sheet.lines.len()), (count, count), "{id}");
        assert_eq!(sheet.declared_rows, count, "{id}");
        assert!(same(rows[0], first) && same(rows[count - 1], last), "{id}");
    }
}

#[test]
fn table_runs_from_soft_to_hard_and_no_row_stands_twice() {
    for (id, table) in TableId::all() {
        let rows: Vec<f64> = table.rows().collect();
        assert!(rows.windows(2).all(|w| w[0] < w[1]), "{id:?}");
        for (axis, _) in table.columns() {
            let cells = (0..rows.len()).filter_map(|i| table.cell(i, axis));
            let values: Vec<f64> = cells.map(|c| c.value).collect();
            let repeats: Vec<f64> =
                values.windows(2).filter(|w| w[0] >= w[1]).map(|w| w[1]).collect();
            // The Shore column of SAE J417 repeats 24, 35, 38 and 41; every other column rises.
            let known: &[f64] = match (table.key(), axis) {
                ("sae-j417-hrc", Axis::Hardness(Scale::Scleroscope)) => &[24.0, 35.0, 38.0, 41.0],
                _ => &[],
            };
            assert_eq!(repeats, known, "{} {axis}", table.key());
            assert!(values.windows(2).all(|w| w[0] <= w[1]), "{} {axis}", table.key());
        }
        let mut axes: Vec<Axis> = table.columns().map(|(axis, _)| axis).collect();
        axes.sort_unstable();
        assert!(axes.windows(2).all(|w| w[0] != w[1]), "{}: a scale twice", table.key());
        assert!(axes.contains(&table.row_axis()), "{}", table.key());
    }
}

#[test]
fn table_names_materials_conditions_and_a_known_source() {
    let sheets = sheets();
    for (id, table) in TableId::all() {
        let sheet = sheets.iter().find(|s| s.id == table.key()).unwrap();
        assert_eq!(TableId::find(table.key()), Some(id));
        assert_eq!(table.source().map(biteband_hardness::Source::key), Some(sheet.source.as_str()));
        assert_eq!(table.row_axis(), sheet.row_axis());
        for text in [table.title(), table.short(), table.material(), table.conditions()] {
            assert!(!text.trim().is_empty(), "{}", table.key());
        }
        let mut held: Vec<(Axis, &str)> = table.columns().collect();
        let mut stated: Vec<(Axis, &str)> =
            sheet.axes().map(|(heading, axis)| (axis, heading.as_str())).collect();
        held.sort_unstable();
        stated.sort_unstable();
        assert_eq!(held, stated, "{}", table.key());
    }
}

#[test]
fn table_a370_prints_the_same_strength_in_ksi_and_mpa() {
    // 1 ksi = 6.894757 MPa by the definitions of pound, inch and standard gravity. ksi are printed whole
    // (half a step is 3.45 MPa); MPa to 5 below 1000 and to 10 above.
    let mut compared = 0;
    for sheet in sheets().iter().filter(|s| s.id.starts_with("astm-a370")) {
        let megapascals = sheet.column("Rm_MPa");
        for (row, ksi) in sheet.column("ksi") {
            let (_, mpa) = megapascals.iter().find(|(r, _)| same(*r, row)).unwrap();
            let half_step = if mpa.value < 1000.0 { 2.5 } else { 5.0 };
            let apart = (mpa.value - ksi.value * 6.894_757).abs();
            assert!(apart <= 0.5 * 6.894_757 + half_step, "{} {row}: {apart}", sheet.id);
            compared += 1;
        }
    }
    assert_eq!(compared, 40 + 36);
}

#[test]
fn table_e140_t2_superficial_columns_are_straight_lines() {
    // The standard makes these columns by linear conversion; slope and offset as fitted to the
    // transcription, and the worst distance of a printed number from the line. Half a printed step is
    // 0.05; HRF 98.0 at 72 HRB stands 0.071 off.
    let lines = [
        ("HRF", 0.5694, 56.932, 0.072),
        ("HR15T", 0.3245, 60.659, 0.054),
        ("HR30T", 0.6690, 16.227, 0.054),
        ("HR45T", 1.0041, -27.527, 0.056),
    ];
    let sheets = sheets();
    let sheet = sheets.iter().find(|s| s.id == "astm-e140-t2").unwrap();
    for (heading, slope, offset, within) in lines {
        for (hrb, cell) in sheet.column(heading) {
            let apart = (cell.value - (slope * hrb + offset)).abs();
            assert!(apart <= within, "{heading} at {hrb} HRB: {apart}");
        }
    }
}

#[test]
fn table_iso_a1_brinell_is_095_vickers() {
    // ISO 18265 Table A.1 sets HBW = 0.95 HV; printed whole above 100 and once (165 HV) 0.75 away.
    let sheets = sheets();
    let sheet = sheets.iter().find(|s| s.id == "iso-18265-a1").unwrap();
    for (hv, hbw) in sheet.column("HBW") {
        assert!((hbw.value - 0.95 * hv).abs() <= 0.75 + 1e-9, "{hv} HV: {} HBW", hbw.value);
    }
}

#[test]
fn table_e140_t2_sets_brinell_equal_to_vickers() {
    let sheets = sheets();
    let sheet = sheets.iter().find(|s| s.id == "astm-e140-t2").unwrap();
    for ((row, hv), (_, hb)) in sheet.column("HV").into_iter().zip(sheet.column("HB")) {
        assert!(same(hv.value, hb.value), "{row} HRB");
    }
}
