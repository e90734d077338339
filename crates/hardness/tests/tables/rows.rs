//! Every printed cell, both ways.

use biteband_hardness::*;

use crate::print::*;

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
    // in ASTM E140 Table 2 (46), ASTM A370 (36) and GB/T 1172 (66). The tables added later print 3154,
    // of these 59 diameters, 96 strengths in ksi and 46 of brass that are kept in print only; Brinell
    // serves two scales in E140 Tables 3 (48) and 5 (41) and in GB 3771 (33).
    let later = 3154 - 59 - 96 - 46 + 48 + 41 + 33;
    assert_eq!(cells, 3709 - 76 + 46 + 36 + 66 + later);
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
                let row_cell = sheet.column(&sheet.row).into_iter().find(|(r, _)| same(*r, row));
                let marked = printed.parenthesised || row_cell.unwrap().1.parenthesised;
                assert_eq!(there.marks.parenthesised, marked, "{at}");
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
    // The repeats that SAE J417 prints from 20 HRC up: Shore at 21/22, 25/26 and 28/29 HRC; in E140
    // Table 9 ten cells of HR15T and sixteen of HR15W.
    assert_eq!(flat, 6 + 10 + 16);
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
