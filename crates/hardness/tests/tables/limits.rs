//! The ends of every column pair and of every scale: in, on, out.

use biteband_hardness::*;

use crate::print::*;

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
    let (mut printed_pairs, mut cut_pairs, mut staggered) = (0, 0, 0);
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
                let cut = |end: (f64, f64)| beyond(from, end.0) || beyond(to, end.1);
                let Some(span) = table.span(from, to) else {
                    // E140 Table 3 prints HRE only where its HRC lies below 20.
                    assert!(cut(low) && cut(high), "{at}: no span");
                    continue;
                };
                let ends = [(span.low, low, false), (span.high, high, true)];
                for (end, printed, upper) in ends {
                    let away = |v: f64, by: f64| if upper { v + by } else { v - by };
                    let next = if upper { end.0.next_up() } else { end.0.next_down() };
                    let inside = table.convert(from, end.0, to);
                    let inside = inside.unwrap_or_else(|| panic!("{at}: end {end:?} is out"));
                    assert!(!beyond(from, end.0) && !beyond(to, inside.value), "{at}: {inside:?}");
                    // Some columns of SAE J417 by Vickers and of brass are printed on different rows: such a
                    // pair ends on the last cell of one column, between two cells of the other.
                    let own = |heading: &str| {
                        let cells = sheet.column(heading);
                        if upper { cells[cells.len() - 1].1.value } else { cells[0].1.value }
                    };
                    let own = (own(from_heading), own(to_heading));
                    if !same(own.0, printed.0) && !same(own.1, printed.1) && !cut(printed) {
                        assert!(same(own.0, end.0) || same(own.1, end.1), "{at}: {end:?}");
                        let past = away(end.0, 1e-9 * end.0);
                        assert!(table.convert(from, past, to).is_none(), "{at}: {past}");
                        staggered += 1;
                    } else if cut(printed) {
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
                        // A number that goes on repeating past the partner's last cell may lie beyond it,
                        // so that the pair ends a last bit before that number.
                        let run = sheet.column(from_heading);
                        let run = run.iter().filter(|(_, p)| same(p.value, printed.0)).count();
                        if run > 1 && !same(end.0, printed.0) {
                            assert!((end.0 - printed.0).abs() < 1e-9, "{at}: {end:?}");
                            assert!(table.convert(from, printed.0, to).is_none(), "{at}");
                            continue;
                        }
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
    assert!(staggered > 0 && staggered < 60, "{staggered}");
}

fn refused(axis: Axis, value: f64, to: Axis) -> (Nearest, Conversion) {
    let reading = Reading::new(axis, value).unwrap();
    let Err(Error::OutsideTables { given, nearest, .. }) = convert(reading, to, Choice::STEEL)
    else {
        panic!("{value} {axis} to {to} is not refused as outside");
    };
    assert!(same(given, value));
    // What the refusal offers instead must itself be convertible, on the table that it names.
    let offered = Reading::new(axis, nearest.value).unwrap();
    let there = convert(offered, to, Choice::table(nearest.table)).unwrap();
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
    assert!(same(convert(at_end, Axis::Tensile, Choice::STEEL).unwrap().at.value, 2420.0));
    let past = Reading::new(hrc, 59.0_f64.next_up()).unwrap();
    assert!(convert(past, Axis::Tensile, Choice::STEEL).is_err());
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
            let classes = Material::ALL.into_iter().map(Choice::of);
            for choice in classes.chain(TableId::all().map(|(id, _)| Choice::table(id))) {
                for (id, span) in spans(from, to, choice) {
                    for end in [span.low, span.high] {
                        for step in [-1.0, -0.01, 0.01, 1.0] {
                            let Ok(reading) = Reading::new(from, end.0 + step) else { continue };
                            let Err(error) = convert(reading, to, choice) else { continue };
                            let Error::OutsideTables { nearest, .. } = error else {
                                panic!("{from} to {to}: {error}");
                            };
                            let offered = Reading::new(from, nearest.value).unwrap();
                            let there = convert(offered, to, Choice::table(nearest.table));
                            let there = there.unwrap_or_else(|e| panic!("{id:?} {from} {to}: {e}"));
                            let apart = (there.at.value - nearest.becomes).abs();
                            assert!(
                                apart <= 1e-9 * nearest.becomes.abs(),
                                "{from} {to} {nearest:?}"
                            );
                            assert!(
                                convert(offered, to, choice).is_ok(),
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

#[test]
fn limit_of_the_metric_strength_hands_over_to_a370() {
    // ISO 18265 Table A.1 ends its strength at 650 HV, 57.8 HRC; the policy asks ASTM A370 next, which
    // prints 2330 MPa at 58 HRC, before SAE J417.
    let found = convert(
        Reading::new(Axis::Hardness(Scale::Hrc), 58.0).unwrap(),
        Axis::Tensile,
        Choice::STEEL,
    );
    let found = found.unwrap();
    assert_eq!(found.table.get().map(Table::key), Some("astm-a370-hrc"));
    assert!(same(found.at.value, 2330.0));
    // At the soft end ISO starts at 20.3 HRC; A370 and SAE J417 both print a strength at 20, and A370 is
    // asked before it for strength, though behind it for hardness.
    let soft = Reading::new(Axis::Hardness(Scale::Hrc), 20.0).unwrap();
    let found = convert(soft, Axis::Tensile, Choice::STEEL).unwrap();
    assert_eq!(found.table.get().map(Table::key), Some("astm-a370-hrc"));
    let j417 = TableId::find("sae-j417-hrc").unwrap();
    assert!(convert(soft, Axis::Tensile, Choice::table(j417)).is_ok());
    let strength = Reading::new(Axis::Tensile, found.at.value).unwrap();
    let back = convert(strength, Axis::Hardness(Scale::Hrc), Choice::STEEL).unwrap();
    assert!(same(back.at.value, 20.0));
}

#[test]
fn limit_of_what_a_scale_reaches_is_what_some_table_holds() {
    let hrc = Axis::Hardness(Scale::Hrc);
    let reached = reachable(Material::CarbonAlloySteel, hrc);
    assert!(!reached.contains(&hrc));
    // No table of steel prints the scales of soft metals.
    for scale in
        [Scale::Hre, Scale::Hrg, Scale::Hrh, Scale::Hrk, Scale::Hr15w, Scale::Hbw500, Scale::Leeb]
    {
        assert!(!reached.contains(&Axis::Hardness(scale)), "{scale}");
    }
    assert!(reached.contains(&Axis::Tensile) && reached.contains(&Axis::Hardness(Scale::Hk)));
    assert!(reachable(Material::CastIron, hrc).is_empty());
    // E140 Table 5 knows Brinell and HRB alone.
    let plate = reachable(Material::AusteniticPlate, Axis::Hardness(Scale::Hrb));
    assert_eq!(plate, [Axis::Hardness(Scale::Hbw), Axis::Hardness(Scale::Hbs)]);
}

#[test]
fn limit_that_is_its_own_other_end_is_no_backward_range() {
    let (hrc, hv) = (Axis::Hardness(Scale::Hrc), Axis::Hardness(Scale::Hv));
    let found = convert_limits(hrc, Some(52.0), Some(52.0), hv, Choice::STEEL).unwrap();
    // ASTM E140 Table 1, row 52.
    assert!(same(found.low.unwrap().at.value, 544.0) && same(found.high.unwrap().at.value, 544.0));
}
