//! Every printed cell of every table, read from the data files by a parser that shares nothing with the
//! generator, against the tables that the library holds and what it converts.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a helper that fails is a test that fails"
)]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use biteband_hardness::{
    Axis, Basis, Conversion, Error, Nearest, Reading, Scale, Table, TableId, convert, spans,
};

struct Printed {
    value: f64,
    parenthesised: bool,
}

/// One published table as its files say.
struct Sheet {
    id: String,
    row: String,
    declared_rows: usize,
    source: String,
    scales: BTreeMap<String, Vec<Axis>>,
    recalled: BTreeMap<String, String>,
    headings: Vec<String>,
    /// In printed order.
    lines: Vec<Vec<Option<Printed>>>,
}

fn data(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(name)
}

fn axis(symbol: &str) -> Axis {
    Axis::Hardness(match symbol {
        "Rm" => return Axis::Tensile,
        "HRC" => Scale::Hrc,
        "HRA" => Scale::Hra,
        "HRD" => Scale::Hrd,
        "HR15N" => Scale::Hr15n,
        "HR30N" => Scale::Hr30n,
        "HR45N" => Scale::Hr45n,
        "HRB" => Scale::Hrb,
        "HRF" => Scale::Hrf,
        "HR15T" => Scale::Hr15t,
        "HR30T" => Scale::Hr30t,
        "HR45T" => Scale::Hr45t,
        "HV" => Scale::Hv,
        "HBW" => Scale::Hbw,
        "HBS" => Scale::Hbs,
        "HK" => Scale::Hk,
        "HSc" => Scale::Scleroscope,
        other => panic!("tables.toml names {other}"),
    })
}

fn sheets() -> Vec<Sheet> {
    let text = fs::read_to_string(data("tables.toml")).unwrap();
    let file: toml::Table = text.parse().unwrap();
    file["table"].as_array().unwrap().iter().map(sheet).collect()
}

fn sheet(entry: &toml::Value) -> Sheet {
    let word = |key: &str| entry[key].as_str().unwrap().to_owned();
    let id = word("id");
    let csv = fs::read_to_string(data("tables").join(format!("{id}.csv"))).unwrap();
    let mut lines = csv.lines().filter(|line| !line.starts_with('#'));
    let headings: Vec<String> = lines.next().unwrap().split(',').map(str::to_owned).collect();
    let lines: Vec<Vec<Option<Printed>>> =
        lines.map(|line| line.split(',').map(printed).collect()).collect();
    assert!(lines.iter().all(|line| line.len() == headings.len()), "{id}: a ragged line");
    let axes = |value: &toml::Value| {
        value.as_array().unwrap().iter().map(|s| axis(s.as_str().unwrap())).collect()
    };
    Sheet {
        id,
        row: word("row"),
        declared_rows: usize::try_from(entry["rows"].as_integer().unwrap()).unwrap(),
        source: word("source"),
        scales: entry["scales"]
            .as_table()
            .unwrap()
            .iter()
            .map(|(heading, scales)| (heading.clone(), axes(scales)))
            .collect(),
        recalled: entry["recalled"]
            .as_table()
            .unwrap()
            .iter()
            .map(|(heading, spec)| (heading.clone(), spec.as_str().unwrap().to_owned()))
            .collect(),
        headings,
        lines,
    }
}

fn printed(cell: &str) -> Option<Printed> {
    let number = cell.strip_suffix('*').unwrap_or(cell);
    (!number.is_empty())
        .then(|| Printed { value: number.parse().unwrap(), parenthesised: number != cell })
}

/// Whether `recalled` of the data file ("all", "20..38", "odd 21..33") covers a row.
fn recalled(spec: Option<&String>, row: f64) -> bool {
    let Some(spec) = spec else { return false };
    if spec == "all" {
        return true;
    }
    let range = spec.trim_start_matches("odd ");
    let (low, high) = range.split_once("..").unwrap();
    let inside = row >= low.parse::<f64>().unwrap() && row <= high.parse::<f64>().unwrap();
    inside && (range == spec || (row - 1.0) % 2.0 == 0.0)
}

impl Sheet {
    fn table(&self) -> (TableId, &'static Table) {
        let id = TableId::find(&self.id).unwrap();
        (id, id.get().unwrap())
    }

    fn place(&self, heading: &str) -> usize {
        self.headings.iter().position(|h| h == heading).unwrap()
    }

    /// Row scale and cell of a column, from soft to hard.
    fn column(&self, heading: &str) -> Vec<(f64, &Printed)> {
        let (row, column) = (self.place(&self.row), self.place(heading));
        let mut cells: Vec<(f64, &Printed)> = self
            .lines
            .iter()
            .filter_map(|line| Some((line[row].as_ref().unwrap().value, line[column].as_ref()?)))
            .collect();
        cells.sort_by(|a, b| a.0.total_cmp(&b.0));
        cells
    }

    fn row_axis(&self) -> Axis {
        self.scales[&self.row][0]
    }

    /// Every (heading, axis) that the library holds.
    fn axes(&self) -> impl Iterator<Item = (&String, Axis)> {
        self.scales.iter().flat_map(|(heading, axes)| axes.iter().map(move |&axis| (heading, axis)))
    }
}

fn same(a: f64, b: f64) -> bool {
    a.to_bits() == b.to_bits()
}

/// ASTM E140 Tables 1 and 2 end at 20 HRC and at 100 HRB; what other tables print beyond stands in
/// parentheses, for comparison only.
fn beyond(axis: Axis, value: f64) -> bool {
    match axis {
        Axis::Hardness(Scale::Hrc) => value < 20.0,
        Axis::Hardness(Scale::Hrb) => value > 100.0,
        _ => false,
    }
}

#[test]
fn row_holds_the_number_and_the_marks_of_the_print() {
    let mut cells = 0;
    for sheet in sheets() {
        let (_, table) = sheet.table();
        let rows: Vec<f64> = table.rows().collect();
        for (heading, axis) in sheet.axes() {
            for (row, printed) in sheet.column(heading) {
                let at = format!("{} row {row} column {heading} as {axis}", sheet.id);
                let index = rows.iter().position(|&r| same(r, row)).unwrap();
                let cell = table.cell(index, axis).unwrap_or_else(|| panic!("{at}: no cell"));
                assert!(same(cell.value, printed.value), "{at}: {}", cell.value);
                assert_eq!(cell.marks.parenthesised, printed.parenthesised, "{at}");
                let known = recalled(sheet.recalled.get(heading), row);
                assert_eq!(cell.marks.recalled, known, "{at}: recalled");
                cells += 1;
            }
        }
    }
    // All 3709 printed numbers but the two ksi columns (76), plus the HB columns that serve two scales
    // in ASTM E140 Table 2 (46), ASTM A370 (36) and GB/T 1172 (66).
    assert_eq!(cells, 3709 - 76 + 46 + 36 + 66);
}

#[test]
fn row_dashes_hold_nothing() {
    for sheet in sheets() {
        let (_, table) = sheet.table();
        for (heading, axis) in sheet.axes() {
            let held = (0..table.rows().count()).filter(|&i| table.cell(i, axis).is_some()).count();
            assert_eq!(held, sheet.column(heading).len(), "{} {heading}", sheet.id);
        }
    }
}

#[test]
fn row_converts_exactly_in_both_directions() {
    let (mut exact, mut flat, mut refused) = (0, 0, 0);
    for sheet in sheets() {
        let (_, table) = sheet.table();
        let row_axis = sheet.row_axis();
        for (heading, axis) in sheet.axes().filter(|&(_, axis)| axis != row_axis) {
            let cells = sheet.column(heading);
            for &(row, printed) in &cells {
                let at = format!("{} row {row} column {heading} as {axis}", sheet.id);
                let there = table.convert(row_axis, row, axis);
                let back = table.convert(axis, printed.value, row_axis);
                if beyond(row_axis, row) || beyond(axis, printed.value) {
                    assert!(there.is_none(), "{at}: {there:?}");
                    assert!(back.is_none(), "{at}: {back:?}");
                    refused += 1;
                    continue;
                }
                let there = there.unwrap_or_else(|| panic!("{at}: refused"));
                let back = back.unwrap_or_else(|| panic!("{at}: refused backward"));
                assert!(same(there.value, printed.value) && there.span.is_none(), "{at}");
                assert_eq!(there.basis, Basis::Row { row }, "{at}");
                assert_eq!(there.marks.parenthesised, printed.parenthesised, "{at}");
                let run = cells.iter().filter(|(_, p)| same(p.value, printed.value));
                let run: Vec<f64> = run.map(|&(row, _)| row).collect();
                if run.len() == 1 {
                    assert!(same(back.value, row) && back.span.is_none(), "{at}: {back:?}");
                    assert_eq!(back.basis, Basis::Row { row }, "{at}");
                    exact += 1;
                } else {
                    let (low, high) = (run[0], run[run.len() - 1]);
                    assert_eq!(back.span, Some((low, high)), "{at}");
                    assert_eq!(back.basis, Basis::Between { lower: low, upper: high }, "{at}");
                    assert!(same(back.value, f64::midpoint(low, high)), "{at}: {back:?}");
                    flat += 1;
                }
            }
        }
    }
    // The repeats that SAE J417 prints from 20 HRC up: Shore at 21/22, 25/26 and 28/29 HRC.
    assert_eq!(flat, 6);
    assert!(exact > 3000 && refused > 0, "{exact} exact, {refused} refused");
}

#[test]
fn row_converts_exactly_between_any_two_columns() {
    let mut pairs = 0;
    for sheet in sheets() {
        let (_, table) = sheet.table();
        for (from_heading, from) in sheet.axes() {
            let sources = sheet.column(from_heading);
            for (to_heading, to) in sheet.axes().filter(|&(_, to)| to != from) {
                let targets = sheet.column(to_heading);
                for &(row, given) in &sources {
                    let Some((_, wanted)) = targets.iter().find(|(r, _)| same(*r, row)) else {
                        continue;
                    };
                    if beyond(from, given.value)
                        || beyond(to, wanted.value)
                        || sources.iter().filter(|(_, p)| same(p.value, given.value)).count() > 1
                    {
                        continue;
                    }
                    let found = table.convert(from, given.value, to);
                    let at = format!("{} row {row}, {from} {} to {to}", sheet.id, given.value);
                    let found = found.unwrap_or_else(|| panic!("{at}: refused"));
                    assert!(same(found.value, wanted.value), "{at}: {found:?}");
                    let marked = given.parenthesised || wanted.parenthesised;
                    assert_eq!(found.marks.parenthesised, marked, "{at}");
                    pairs += 1;
                }
            }
        }
    }
    assert!(pairs > 20_000, "{pairs}");
}

#[test]
fn row_below_20_hrc_and_above_100_hrb_is_refused() {
    // SAE J417 prints (18) HRC as 222 HV and (95.5) HRB-side rows; ISO 18265 prints 105 HRB at 280 HV.
    let hrc = Axis::Hardness(Scale::Hrc);
    let hv = Axis::Hardness(Scale::Hv);
    let hrb = Axis::Hardness(Scale::Hrb);
    for value in [0.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0_f64.next_down()] {
        for (id, table) in TableId::all() {
            assert!(table.convert(hrc, value, hv).is_none(), "{id:?} {value}");
        }
    }
    for value in [100.0_f64.next_up(), 101.0, 105.0, 109.0] {
        for (id, table) in TableId::all() {
            assert!(table.convert(hrb, value, hv).is_none(), "{id:?} {value}");
        }
    }
    let j417 = TableId::find("sae-j417-hrc").unwrap().get().unwrap();
    assert!(j417.convert(hv, 222.0, hrc).is_none());
    // The same print still serves its other columns there.
    assert!(j417.convert(hv, 222.0, Axis::Tensile).is_some());
}

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

/// The ends of a column pair in the print: the first and last row with both cells, where neither end of
/// conversion cuts in.
fn printed_ends(sheet: &Sheet, from: &str, to: &str) -> Option<[(f64, f64); 2]> {
    let targets = sheet.column(to);
    let both: Vec<(f64, f64)> = sheet
        .column(from)
        .into_iter()
        .filter_map(|(row, given)| {
            let (_, wanted) = targets.iter().find(|(r, _)| same(*r, row))?;
            Some((given.value, wanted.value))
        })
        .collect();
    Some([*both.first()?, *both.last()?])
}

#[test]
fn limit_ends_of_every_column_pair_are_in_and_the_next_float_is_out() {
    let (mut printed_pairs, mut cut_pairs) = (0, 0);
    for sheet in sheets() {
        let (_, table) = sheet.table();
        for (from_heading, from) in sheet.axes() {
            for (to_heading, to) in sheet.axes().filter(|&(_, to)| to != from) {
                let at = format!("{} {from} to {to}", sheet.id);
                let Some([low, high]) = printed_ends(&sheet, from_heading, to_heading) else {
                    // GB/T 1172 prints the N scales and tensile strength on different rows.
                    assert_eq!(sheet.id, "gbt-1172", "{at}");
                    assert!(table.span(from, to).is_none(), "{at}");
                    continue;
                };
                let span = table.span(from, to).unwrap_or_else(|| panic!("{at}: no span"));
                let cut = |end: (f64, f64)| beyond(from, end.0) || beyond(to, end.1);
                let ends = [(span.low, low, false), (span.high, high, true)];
                for (end, printed, upper) in ends {
                    let away = |v: f64, by: f64| if upper { v + by } else { v - by };
                    let next = if upper { end.0.next_up() } else { end.0.next_down() };
                    let inside = table.convert(from, end.0, to);
                    let inside = inside.unwrap_or_else(|| panic!("{at}: end {end:?} is out"));
                    assert!(!beyond(from, end.0) && !beyond(to, inside.value), "{at}: {inside:?}");
                    if cut(printed) {
                        // The end lies between rows, at 20 HRC or 100 HRB of one of the two columns;
                        // one of the two values is that number, to the rounding of the inverse.
                        let stop = |axis: Axis, v: f64| match axis {
                            Axis::Hardness(Scale::Hrc) => (v - 20.0).abs() < 1e-9,
                            Axis::Hardness(Scale::Hrb) => (v - 100.0).abs() < 1e-9,
                            _ => false,
                        };
                        let stops = stop(from, end.0) || stop(to, inside.value);
                        assert!(stops, "{at}: {end:?} {inside:?}");
                        let past = away(end.0, 1e-9 * end.0);
                        assert!(table.convert(from, past, to).is_none(), "{at}: {past}");
                        cut_pairs += 1;
                    } else {
                        // The last printed pair, exactly; where the end cell repeats, the run's edge.
                        assert!(same(end.0, printed.0), "{at}: {end:?}, printed {printed:?}");
                        let repeated = inside.span.is_some();
                        assert!(same(end.1, printed.1) || repeated, "{at}: {end:?}, {printed:?}");
                        assert!(table.convert(from, next, to).is_none(), "{at}: {next}");
                        printed_pairs += 1;
                    }
                    let unit_out = away(end.0, 1.0);
                    assert!(table.convert(from, unit_out, to).is_none(), "{at}: {unit_out}");
                }
            }
        }
    }
    assert!(printed_pairs > 1000 && cut_pairs > 0, "{printed_pairs} and {cut_pairs}");
}

fn refused(axis: Axis, value: f64, to: Axis) -> (Nearest, Conversion) {
    let reading = Reading::new(axis, value).unwrap();
    let Err(Error::OutsideTables { given, nearest, .. }) = convert(reading, to, None) else {
        panic!("{value} {axis} to {to} is not refused as outside");
    };
    assert!(same(given, value));
    // What the refusal offers instead must itself be convertible, on the table that it names.
    let offered = Reading::new(axis, nearest.value).unwrap();
    let there = convert(offered, to, Some(nearest.table)).unwrap();
    (nearest, there)
}

#[test]
fn limit_15_hrc_is_refused_and_20_is_offered() {
    let hrc = Axis::Hardness(Scale::Hrc);
    let (nearest, there) = refused(hrc, 15.0, Axis::Hardness(Scale::Hv));
    assert!(same(nearest.value, 20.0) && !nearest.above);
    // 238 HV at 20 HRC: ASTM E140 Table 1.
    assert!(same(there.at.value, 238.0) && same(nearest.becomes, 238.0));
    let (nearest, _) = refused(hrc, 20.0_f64.next_down(), Axis::Hardness(Scale::Hbw));
    assert!(same(nearest.value, 20.0));
}

#[test]
fn limit_110_hrb_is_no_reading() {
    let hrb = Axis::Hardness(Scale::Hrb);
    assert_eq!(
        Reading::new(hrb, 110.0),
        Err(Error::OutsideScale { scale: Scale::Hrb, given: 110.0 })
    );
    assert!(Reading::new(hrb, 100.0).is_ok());
    assert!(Reading::new(hrb, 100.0_f64.next_up()).is_err());
}

#[test]
fn limit_strength_ends_below_62_hrc() {
    let hrc = Axis::Hardness(Scale::Hrc);
    let (nearest, there) = refused(hrc, 62.0, Axis::Tensile);
    // The hardest strength in print: 2420 MPa at 59 HRC, ASTM A370.
    assert!(same(nearest.value, 59.0) && nearest.above, "{nearest:?}");
    assert!(same(there.at.value, 2420.0) && same(nearest.becomes, 2420.0));
    assert_eq!(nearest.table.get().map(Table::key), Some("astm-a370-hrc"));
    let at_end = Reading::new(hrc, 59.0).unwrap();
    assert!(same(convert(at_end, Axis::Tensile, None).unwrap().at.value, 2420.0));
    let past = Reading::new(hrc, 59.0_f64.next_up()).unwrap();
    assert!(convert(past, Axis::Tensile, None).is_err());
}

#[test]
fn limit_what_is_no_number_is_no_reading() {
    for axis in Scale::ALL.into_iter().map(Axis::Hardness).chain([Axis::Tensile]) {
        for value in [f64::NAN, -f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Reading::new(axis, value), Err(Error::NotANumber { axis }));
        }
        for value in [1e308, -1e308, f64::MAX, f64::MIN, -5.0] {
            assert!(Reading::new(axis, value).is_err(), "{value} {axis}");
        }
        for (_, table) in TableId::all() {
            for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e308, -1e308] {
                assert!(table.convert(axis, value, Axis::Hardness(Scale::Hv)).is_none());
                assert!(table.convert(Axis::Hardness(Scale::Hv), value, axis).is_none());
            }
        }
    }
}

#[test]
fn limit_of_every_scale_is_in_and_the_next_float_is_out() {
    for scale in Scale::ALL {
        let axis = Axis::Hardness(scale);
        let (low, high) = scale.range();
        assert!(low < high);
        assert!(Reading::new(axis, low).is_ok() && Reading::new(axis, high).is_ok());
        assert!(Reading::new(axis, low.next_down()).is_err(), "{scale}");
        assert!(Reading::new(axis, high.next_up()).is_err(), "{scale}");
    }
}

#[test]
fn limit_offered_by_a_refusal_converts_for_every_pair() {
    let axes: Vec<Axis> =
        Scale::ALL.into_iter().map(Axis::Hardness).chain([Axis::Tensile]).collect();
    let mut offers = 0;
    for &from in &axes {
        for &to in axes.iter().filter(|&&to| to != from) {
            let tables = std::iter::once(None).chain(TableId::all().map(|(id, _)| Some(id)));
            for only in tables {
                for (id, span) in spans(from, to, only) {
                    for end in [span.low, span.high] {
                        for step in [-1.0, -0.01, 0.01, 1.0] {
                            let Ok(reading) = Reading::new(from, end.0 + step) else { continue };
                            let Err(error) = convert(reading, to, only) else { continue };
                            let Error::OutsideTables { nearest, .. } = error else {
                                panic!("{from} to {to}: {error}");
                            };
                            let offered = Reading::new(from, nearest.value).unwrap();
                            let there = convert(offered, to, Some(nearest.table));
                            let there = there.unwrap_or_else(|e| panic!("{id:?} {from} {to}: {e}"));
                            let apart = (there.at.value - nearest.becomes).abs();
                            assert!(apart <= 1e-9 * nearest.becomes, "{from} {to} {nearest:?}");
                            assert!(
                                convert(offered, to, only).is_ok(),
                                "{from} {to} {nearest:?} is refused itself"
                            );
                            offers += 1;
                        }
                    }
                }
            }
        }
    }
    assert!(offers > 1000, "{offers}");
}
