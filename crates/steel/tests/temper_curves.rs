//! Printed tempering curves: every point as it is printed, between them as SciPy draws it, nothing beyond; and how
//! far independent sheets lie apart.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use std::path::Path;

use biteband_steel::reach::Steel;
use biteband_steel::temper::{
    DISAGREE, HALF_WIDTH, Sheet, SheetBand, SheetError, Sheets, Silence, Temper, Tempering,
    TemperingError, same_effect,
};
use biteband_steel::{CurveCloseness, Grade, Interval, source};
use proptest::prelude::*;

/// A file by its place under the project, read by a parser that shares nothing with the generator.
fn rows(file: &str) -> Vec<Vec<String>> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..").join(file);
    let mut reader = csv::Reader::from_path(path).unwrap();
    reader.records().map(|row| row.unwrap().iter().map(str::to_owned).collect()).collect()
}

fn sheet(id: &str) -> &'static Sheet {
    Sheet::all().iter().find(|sheet| sheet.id() == id).unwrap()
}

fn sheets(key: &str) -> Sheets {
    Sheets::of(Grade::by_key(key).unwrap()).unwrap()
}

fn band(key: &str, celsius: f64, minutes: f64) -> SheetBand {
    sheets(key).band(&[Temper::new(celsius, minutes).unwrap()]).unwrap()
}

fn number(text: &str) -> Option<f64> {
    (!text.is_empty()).then(|| text.parse().unwrap())
}

fn same(one: f64, other: f64) -> bool {
    one.total_cmp(&other).is_eq()
}

/// `data/temper-curves.csv`, cell by cell.
#[test]
fn every_printed_point_comes_back() {
    let printed = rows("crates/steel/data/temper-curves.csv");
    assert_eq!((printed.len(), Sheet::all().len()), (51, 51));
    let mut count = 0;
    for (row, sheet) in printed.iter().zip(Sheet::all()) {
        let text = [sheet.id(), sheet.key(), sheet.name(), sheet.lineage()];
        assert_eq!(text.map(str::to_owned), row[..4]);
        assert_eq!(sheet.hardened().map(|at| at.low), number(&row[4]), "{}", row[0]);
        assert_eq!(sheet.hardened().map(|at| at.high), number(&row[5]), "{}", row[0]);
        assert_eq!((sheet.quench(), sheet.note()), (row[6].as_str(), row[13].as_str()));
        assert_eq!((sheet.hours(), sheet.tempers()), (number(&row[7]), number(&row[8])));
        assert_eq!(sheet.cited().sources.join(";"), row[10]);
        assert!(sheet.cited().sources.iter().all(|key| source(key).is_some()));
        let mut points = sheet.points().iter();
        for cell in row[9].split(';') {
            count += 1;
            let (at, hrc) = cell.split_once(':').unwrap();
            let certain = hrc.trim_end_matches('?');
            let (low, high) = certain.split_once('-').unwrap_or((certain, certain));
            let (low, high): (f64, f64) = (low.parse().unwrap(), high.parse().unwrap());
            if at == "start" {
                assert_eq!(sheet.start(), Some(Interval { low, high }), "{}", row[0]);
                continue;
            }
            let (point, celsius) = (points.next().unwrap(), at.parse().unwrap());
            assert!(same(point.celsius, celsius) && same(point.low, low), "{}: {cell}", row[0]);
            assert!(same(point.high, high), "{}: {cell}", row[0]);
            assert_eq!(point.doubted, hrc.ends_with('?'), "{}: {cell}", row[0]);
            if !point.doubted {
                let read = sheet.read(celsius, sheet.minutes()).unwrap();
                assert!(same(read.hrc.low, low) && same(read.hrc.high, high), "{}: {cell}", row[0]);
            }
        }
        assert!(points.next().is_none(), "{}", row[0]);
    }
    assert_eq!(count, 336);
}

/// SciPy's `PchipInterpolator` through the same print, `tests/reference/tempering/sheets_pchip.py`.
#[test]
fn between_the_points_as_scipy_draws_it() {
    let drawn = rows("tests/reference/tempering/sheets-pchip.csv");
    assert_eq!(drawn.len(), 508);
    for row in &drawn {
        let sheet = sheet(&row[0]);
        let values: Vec<f64> = row[1..].iter().map(|cell| cell.parse().unwrap()).collect();
        let read = sheet.read(values[0], sheet.minutes()).unwrap().hrc;
        let off = (read.low - values[1]).abs().max((read.high - values[2]).abs());
        assert!(off < 1e-9, "{} at {}: {off}", row[0], values[0]);
    }
}

/// A value that looks like a misprint is shown and not read: between its neighbours, 51 to 53 at 427 °C and 51 to
/// 54 at 538 °C, instead of 45 to 49.
#[test]
fn a_doubted_value_is_not_read() {
    let read = sheet("H13-4").read(482.0, 60.0).unwrap().hrc;
    assert!(read.low >= 51.0 && read.high <= 54.0);
}

/// Worked by hand: 473.15 K (20 + log10 4) / 20 - 273.15 = 214.24 °C.
#[test]
fn another_time_by_the_equal_parameter() {
    assert!((same_effect(200.0, 240.0, 60.0) - 214.243_234).abs() < 1e-6);
    // Sheet 1 of A2 is of twice 2 h: those come back as printed, and so does one temper of 4 h.
    let twice = [Temper::new(260.0, 120.0).unwrap(); 2];
    let of = |band: &SheetBand| band.each[0].says.unwrap().hrc.low;
    assert!((of(&sheets("A2").band(&twice).unwrap()) - 60.0).abs() < 1e-9);
    assert!((of(&band("A2", 260.0, 240.0)) - 60.0).abs() < 1e-9);
    // A shorter one leaves it harder, by what the sheet has at the temperature that does the same.
    let short = band("A2", 260.0, 60.0);
    let reading = short.each[0].says.unwrap();
    assert!(reading.hrc.low > 60.0 && reading.celsius < 246.0 && reading.celsius > 244.0);
}

#[test]
fn a_time_that_no_sheet_states_is_said_to_be_assumed() {
    assert!(band("S1", 315.0, 120.0).time_assumed);
    assert!(!band("300M", 316.0, 240.0).time_assumed);
    assert!(same(sheet("S1-1").minutes(), 120.0) && same(sheet("300M-1").minutes(), 240.0));
}

#[test]
fn nothing_beyond_the_ends_or_over_a_wide_gap() {
    // O1's sheets end at 649 °C, S1's begins at 205 °C; 400 °F is 204.4 °C and meets the print.
    let refused = sheets("S1").band(&[Temper::new(195.0, 120.0).unwrap()]).unwrap_err();
    assert_eq!(refused.code(), "temper.beyond_sheets");
    assert!(matches!(refused, SheetError::Outside { below: None, above: Some(end), .. }
        if (end - 205.0).abs() < 1e-9));
    assert_eq!(
        refused.to_string(),
        "no sheet speaks of 195 °C for 120 min, the nearest above is 205 °C"
    );
    assert!(same(band("S1", 204.4, 120.0).mid, 57.5));
    // D2 has sheets up to 538 °C and from 593 °C, and none between.
    let gap = sheets("D2").band(&[Temper::new(565.0, 240.0).unwrap()]).unwrap_err();
    assert!(matches!(gap, SheetError::Outside { below: Some(a), above: Some(b), .. }
        if a < 560.0 && b > 590.0));
    // Two points 333 K apart are two points and no line.
    let two = sheet("D2-3");
    let silent = two.read(400.0, 120.0).unwrap_err();
    assert!(matches!(silent, Silence::Gap { between, .. }
        if same(between.low, 204.0) && same(between.high, 537.0)));
    assert!(two.read(205.0, 120.0).is_ok() && two.read(600.0, 120.0).is_err());
    assert_eq!(sheets("O1").band(&[]).unwrap_err().code(), "temper.no_temper");
}

/// What the reference says of its three sheets: 52 to 53 HRC at 540 °C, about 43 to 48 at 600 °C, 30 to 43 at
/// 650 °C, each at its own time.
#[test]
fn the_sheets_of_h13_part_above_600() {
    let at = |celsius: f64| -> (f64, f64) {
        let read = ["H13-1", "H13-2", "H13-3"].into_iter().map(|id| {
            let sheet = sheet(id);
            sheet.read(celsius, sheet.minutes()).unwrap().hrc.low
        });
        let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
        for hrc in read {
            (low, high) = (low.min(hrc), high.max(hrc));
        }
        (low, high)
    };
    let near = |found: (f64, f64), low: f64, high: f64| {
        assert!((found.0 - low).abs() <= 0.5 && (found.1 - high).abs() <= 0.5, "{found:?}");
    };
    near(at(540.0), 52.0, 53.0);
    near(at(600.0), 43.0, 48.0);
    near(at(650.0), 30.0, 43.0);
    assert!(!band("H13", 540.0, 240.0).disagree);
    let hot = band("H13", 650.0, 240.0);
    assert!(hot.disagree && hot.apart > DISAGREE && hot.low <= 30.0 && hot.high >= 36.0);
}

#[test]
fn a_table_and_its_copy_count_once() {
    // Sheet 1 of L6 and the ranges are the same numbers, sheet 2 is independent.
    let of = band("L6", 205.0, 120.0);
    assert_eq!(of.each.iter().filter(|said| said.says.is_ok()).count(), 3);
    assert_eq!(of.independent, 2);
    // One sheet alone has the least half-width.
    let alone = band("P20", 540.0, 120.0);
    assert_eq!(alone.independent, 1);
    assert!(alone.cited().sources.iter().all(|key| source(key).is_some()));
    assert!(same(alone.high - alone.mid, HALF_WIDTH) && same(alone.mid - alone.low, HALF_WIDTH));
}

#[test]
fn a_curve_of_another_steel_is_wider() {
    let (own, sibling) = (band("O1", 260.0, 120.0), band("95MnWCr5", 260.0, 120.0));
    assert_eq!(sibling.closeness, CurveCloseness::Sibling);
    assert!(sibling.low < own.low && sibling.high > own.high && same(sibling.mid, own.mid));
    let below = band("O2", 260.0, 120.0);
    assert_eq!(below.closeness, CurveCloseness::SiblingLow);
    assert!(below.low < sibling.low && same(below.high, own.high));
}

/// Columns of one sheet by hardening temperature: 59, 60 and 61 to 62 HRC at 550 to 565 °C from 1065, 1095 and
/// 1120 °C, as printed; they do not speak for the usual 1190 to 1230 °C.
#[test]
fn a_sheet_speaks_for_its_own_hardening_temperature() {
    let usual = band("M2", 550.0, 240.0);
    let silent =
        |said: &&biteband_steel::temper::Said| matches!(said.says, Err(Silence::OtherHeat { .. }));
    assert_eq!(usual.each.iter().filter(silent).count(), 4);
    let tempers = [Temper::new(550.0, 240.0).unwrap()];
    let low = sheets("M2").hardened_from(1065.0).unwrap().band(&tempers).unwrap();
    assert!(same(low.mid, 59.0));
    let refused = sheets("M2").hardened_from(900.0).unwrap_err();
    assert_eq!(refused.code(), "temper.other_heat");
    assert!(refused.to_string().contains("1065 to 1218 °C"), "{refused}");
}

/// The sheets of the usual 1190 to 1230 °C have their highest figures at 538 to 552 °C; O1's fall all the way.
#[test]
fn the_peak_is_where_the_print_has_it() {
    let peak = sheets("M2").peak(240.0).unwrap();
    assert!(same(peak.low, 538.0) && same(peak.high, 552.0));
    assert!(sheets("O1").peak(120.0).is_none());
}

/// The reference: none for D3, 60WCrV8, M42, T1, 45NiCrMo16, `X46Cr13`.
#[test]
fn grades_without_a_curve_ask_for_a_trial_piece() {
    let without: Vec<&str> = Grade::all()
        .iter()
        .filter(|grade| {
            let found = Tempering::of(&Steel::Grade(grade));
            matches!(found, Err(TemperingError::NoCurve { .. }))
        })
        .map(Grade::key)
        .collect();
    assert_eq!(without, ["D3", "60WCrV8", "M42", "T1", "45NiCrMo16", "X46Cr13"]);
    for key in without {
        assert!(Sheets::of(Grade::by_key(key).unwrap()).is_none(), "{key}");
    }
    // Every grade that names a curve has one.
    for grade in Grade::all().iter().filter(|grade| grade.curve_from().is_some()) {
        let ends = Sheets::of(grade).unwrap().ends(120.0);
        assert!(ends.low < ends.high && ends.low > 50.0 && ends.high < 800.0, "{}", grade.key());
    }
}

/// What the sheets of the other lineages say of a print, at its own time.
fn others(sheet: &Sheet, celsius: f64, minutes: f64, heat: Option<f64>) -> Option<SheetBand> {
    let all = sheets(sheet.key());
    let all = match heat {
        Some(heat) => all.hardened_from(heat).ok()?,
        None => all,
    };
    all.without(sheet.lineage())?.band(&[Temper::new(celsius, minutes).ok()?]).ok()
}

/// Handbook and sheet values that are in no data set of the regression, `sheets-external.csv`: each against the
/// sheets that are independent of it. Independent sheets of one grade differ by 2 HRC (RMS).
#[test]
fn independent_sheets_foretell_each_other() {
    let lineage = [
        ("O1-2", "O1-2"),
        ("O1-3", "O1-3"),
        ("W1-3", "W1-3"),
        ("D2-2", "D2-2"),
        ("S7-2", "S7-2"),
        ("H13-2", "H13-2"),
        ("H13-3", "H13-4"),
        ("M2-2", "M2-1"),
        ("M2-3", "M2-6"),
        ("M2-4", "M2-9"),
    ];
    let (mut squares, mut inside, mut count) = (0.0, 0.0, 0.0);
    let printed = rows("tests/reference/tempering/sheets-external.csv");
    assert_eq!(printed.len(), 66);
    for row in &printed {
        let (_, ours) = lineage.iter().find(|(curve, _)| *curve == row[1]).unwrap();
        let [heat, celsius, hours, tempers, low, high] =
            [2, 3, 4, 5, 6, 7].map(|column| row[column].parse::<f64>().unwrap());
        // The misprint.
        if row[1] == "H13-3" && same(celsius, 482.0) {
            continue;
        }
        let heat = (row[0] == "M2").then_some(heat);
        let Some(said) = others(sheet(ours), celsius, 60.0 * hours * tempers, heat) else {
            continue;
        };
        let hrc = f64::midpoint(low, high);
        squares += (hrc - said.mid).powi(2);
        inside += if said.low <= hrc && hrc <= said.high { 1.0 } else { 0.0 };
        count += 1.0;
    }
    let rms = (squares / count).sqrt();
    println!("{count} values, RMS {rms:.2} HRC, {:.0} % in the band", 100.0 * inside / count);
    assert!(count >= 45.0 && rms < 2.0 && inside / count > 0.8, "{count} {rms} {inside}");
}

/// Every printed point against the sheets of the other lineages: where the half-width comes from.
#[test]
fn the_half_width_holds_four_points_in_five() {
    let (mut squares, mut inside, mut count) = (0.0, 0.0, 0.0);
    for sheet in Sheet::all() {
        let known = band_of_window(sheet);
        for point in sheet.points().iter().filter(|point| known && !point.doubted) {
            let Some(said) = others(sheet, point.celsius, sheet.minutes(), None) else { continue };
            let hrc = f64::midpoint(point.low, point.high);
            squares += (hrc - said.mid).powi(2);
            inside += if said.low <= hrc && hrc <= said.high { 1.0 } else { 0.0 };
            count += 1.0;
        }
    }
    let rms = (squares / count).sqrt();
    println!("{count} points, RMS {rms:.2} HRC, {:.1} % in the band", 100.0 * inside / count);
    assert!(count > 140.0 && rms < 2.1 && inside / count > 0.75, "{count} {rms} {inside}");
}

/// Whether a sheet is of steel hardened from the window of its grade.
fn band_of_window(sheet: &Sheet) -> bool {
    let window = Grade::by_key(sheet.key()).unwrap().window().unwrap();
    sheet.hardened().is_none_or(|at| at.high >= window.low - 20.0 && at.low <= window.high + 20.0)
}

proptest! {
    #[test]
    fn a_reading_lies_between_printed_values(
        place in 0..51_usize,
        celsius in 50.0..800.0_f64,
        minutes in 1.0..6000.0_f64,
    ) {
        let sheet = &Sheet::all()[place];
        let at = same_effect(celsius, minutes, sheet.minutes());
        let ends = sheet.ends();
        match sheet.read(celsius, minutes) {
            Ok(read) => {
                prop_assert!(at >= ends.low - 2.5 && at <= ends.high + 2.5);
                let below = sheet.points().iter().rfind(|p| !p.doubted && p.celsius <= at);
                let above = sheet.points().iter().find(|p| !p.doubted && p.celsius >= at);
                let around = [below.or(above).unwrap(), above.or(below).unwrap()];
                let low = around.iter().map(|p| p.low).fold(f64::INFINITY, f64::min);
                let high = around.iter().map(|p| p.high).fold(f64::NEG_INFINITY, f64::max);
                prop_assert!(low <= read.hrc.low && read.hrc.low <= read.hrc.high && read.hrc.high <= high);
            }
            Err(Silence::BeyondEnds { .. }) => prop_assert!(at < ends.low || at > ends.high),
            Err(Silence::Gap { between, .. }) => {
                prop_assert!(between.low < at && at < between.high && between.high - between.low > 120.0);
            }
            Err(Silence::OtherHeat { .. }) => prop_assert!(false, "a sheet knows no part"),
        }
    }

    #[test]
    fn a_band_holds_every_sheet_that_speaks(
        place in 0..78_usize,
        celsius in 50.0..800.0_f64,
        minutes in 1.0..6000.0_f64,
    ) {
        let Some(sheets) = Sheets::of(&Grade::all()[place]) else { return Ok(()) };
        match sheets.band(&[Temper::new(celsius, minutes).unwrap()]) {
            Ok(band) => {
                prop_assert!(band.mid - band.low >= HALF_WIDTH - 1e-9);
                prop_assert!(band.high - band.mid >= HALF_WIDTH - 1e-9);
                for reading in band.each.iter().filter_map(|said| said.says.ok()) {
                    prop_assert!(band.low <= reading.hrc.low && reading.hrc.high <= band.high);
                }
            }
            Err(SheetError::Outside { below, above, .. }) => {
                prop_assert!(below.is_none_or(|end| end < celsius));
                prop_assert!(above.is_none_or(|end| end > celsius));
                prop_assert!(below.is_some() || above.is_some());
            }
            Err(other) => prop_assert!(false, "{other}"),
        }
    }
}
