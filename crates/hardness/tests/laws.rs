//! What holds for every number and every text, tried on random ones.

use std::time::{Duration, Instant};

use biteband_hardness::designation::{
    Amount, Ball, Condition, Designation, LeebDevice, MeasuredAs, parse,
};
use biteband_hardness::{
    Axis, Basis, Choice, Error, Material, Reading, Route, Scale, Span, Table, TableId, compare,
    convert, convert_limits, reachable, spans,
};
use proptest::prelude::*;
use proptest::sample::{Index, select};

fn axes() -> impl Iterator<Item = Axis> {
    Scale::ALL.into_iter().map(Axis::Hardness).chain([Axis::Tensile])
}

/// A table, two of its axes and the part of the first that it converts to the second.
#[derive(Clone, Copy, Debug)]
struct Pair {
    id: TableId,
    table: &'static Table,
    from: Axis,
    to: Axis,
    span: Span,
}

impl Pair {
    /// A place between the ends of the convertible part.
    fn at(&self, fraction: f64) -> f64 {
        let (low, high) = (self.span.low.0, self.span.high.0);
        (low + (high - low) * fraction).clamp(low, high)
    }

    fn near_an_end(&self, value: f64) -> bool {
        close(value, self.span.low.0) || close(value, self.span.high.0)
    }
}

fn pairs() -> Vec<Pair> {
    let mut pairs = Vec::new();
    for (id, table) in TableId::all() {
        for (from, _) in table.columns() {
            for (to, _) in table.columns().filter(|&(to, _)| to != from) {
                if let Some(span) = table.span(from, to) {
                    pairs.push(Pair { id, table, from, to, span });
                }
            }
        }
    }
    pairs
}

fn any_pair() -> impl Strategy<Value = Pair> {
    select(pairs())
}

/// Places of an axis: mostly anywhere, sometimes an end.
fn any_fraction() -> impl Strategy<Value = f64> {
    prop_oneof![8 => 0.0..=1.0, 1 => Just(0.0), 1 => Just(1.0)]
}

/// Equal to 1e-9 of the value: the inverse is solved to the rounding of doubles, and the steepest
/// column magnifies that a thousandfold at most.
fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

/// Some columns print a number on two rows, as Shore in SAE J417: they are level there and cannot tell
/// the rows apart, nor, near by, more than half of the digits.
fn repeats(pair: &Pair, axis: Axis) -> bool {
    let cells = (0..pair.table.rows().count()).filter_map(|i| pair.table.cell(i, axis));
    let values: Vec<f64> = cells.map(|cell| cell.value).collect();
    values.iter().zip(values.iter().skip(1)).any(|(a, b)| a.total_cmp(b).is_eq())
}

/// Not above, but for the last bits of two inverse solutions.
fn not_above(a: f64, b: f64) -> bool {
    a <= b + 1e-12 * a.abs().max(b.abs())
}

proptest! {
    #[test]
    fn law_there_and_back_returns(pair in any_pair(), fraction in any_fraction()) {
        let value = pair.at(fraction);
        let there = pair.table.convert(pair.from, value, pair.to).unwrap();
        let Some(back) = pair.table.convert(pair.to, there.value, pair.from) else {
            // Only on the very end of a pair that is cut at 20 HRC or 100 HRB, by a last bit.
            prop_assert!(pair.near_an_end(value), "{pair:?} {value}");
            return Ok(());
        };
        let (low, high) = back.span.unwrap_or((back.value, back.value));
        if repeats(&pair, pair.to) {
            // Near a level stretch the column rises with the square of the distance.
            prop_assert!(value > low - 1e-5 * value && value < high + 1e-5 * value, "{pair:?} {value}");
        } else if there.span.is_none() {
            prop_assert!(close(back.value, value), "{pair:?} {value} {there:?} {back:?}");
        }
    }

    #[test]
    fn law_by_way_of_a_third_scale_is_the_same(
        pair in any_pair(), third in any::<Index>(), fraction in any_fraction(),
    ) {
        let value = pair.at(fraction);
        let columns: Vec<Axis> = pair.table.columns().map(|(axis, _)| axis).collect();
        let third = columns[third.index(columns.len())];
        let via = pair.table.convert(pair.from, value, pair.to).unwrap();
        if third == pair.from || third == pair.to || repeats(&pair, pair.from) || repeats(&pair, pair.to) {
            return Ok(());
        }
        let direct = pair.table.convert(pair.from, value, third);
        let onward = pair.table.convert(pair.to, via.value, third);
        match (direct, onward) {
            (Some(direct), Some(onward)) => {
                prop_assert!(close(direct.value, onward.value), "{pair:?} {value} {third}");
            }
            (None, None) => {}
            (direct, onward) => {
                // The same end, seen from two columns, may differ by a last bit.
                let span = pair.table.span(pair.from, third).unwrap();
                let at_end = close(value, span.low.0) || close(value, span.high.0);
                prop_assert!(at_end, "{pair:?} {value} {third}: {direct:?} {onward:?}");
            }
        }
    }

    #[test]
    fn law_harder_never_converts_to_softer(
        pair in any_pair(), one in any_fraction(), other in any_fraction(),
    ) {
        let (low, high) = (pair.at(one.min(other)), pair.at(one.max(other)));
        let below = pair.table.convert(pair.from, low, pair.to).unwrap();
        let above = pair.table.convert(pair.from, high, pair.to).unwrap();
        prop_assert!(not_above(below.value, above.value), "{pair:?} {low} {high}");
        prop_assert!(not_above(below.row, above.row), "{pair:?} {low} {high}");
        if high - low > 1e-6 * high.abs() && !repeats(&pair, pair.to) && !repeats(&pair, pair.from) {
            prop_assert!(below.value < above.value, "{pair:?} {low} {high}");
        }
    }

    #[test]
    fn law_next_float_never_converts_to_softer(pair in any_pair(), fraction in any_fraction()) {
        let value = pair.at(fraction);
        let next = value.next_up().min(pair.span.high.0);
        let here = pair.table.convert(pair.from, value, pair.to).unwrap();
        let there = pair.table.convert(pair.from, next, pair.to).unwrap();
        prop_assert!(not_above(here.value, there.value), "{pair:?} {value}");
    }

    #[test]
    fn law_between_rows_lies_between_their_values(pair in any_pair(), fraction in any_fraction()) {
        let value = pair.at(fraction);
        let found = pair.table.convert(pair.from, value, pair.to).unwrap();
        let rows: Vec<f64> = pair.table.rows().collect();
        let cell = |row: f64| {
            let index = rows.iter().position(|r| r.total_cmp(&row).is_eq()).unwrap();
            pair.table.cell(index, pair.to)
        };
        match found.basis {
            Basis::Row { row } => {
                prop_assert_eq!(Some(found.value), cell(row).map(|c| c.value));
                prop_assert!(found.row.total_cmp(&row).is_eq());
            }
            Basis::Between { lower, upper } => {
                prop_assert!(lower < upper && found.row >= lower && found.row <= upper);
                let (low, high) = (cell(lower).unwrap(), cell(upper).unwrap());
                prop_assert!(low.value <= found.value && found.value <= high.value);
                let marked = found.marks.parenthesised || found.marks.recalled;
                let marks = [low.marks, high.marks];
                prop_assert!(marked || marks.iter().all(|m| !m.parenthesised && !m.recalled));
            }
        }
        prop_assert!(found.slope >= 0.0 && found.slope.is_finite());
    }

    #[test]
    fn law_slope_is_the_change_for_a_step_of_the_row_scale(pair in any_pair(), fraction in any_fraction()) {
        // From the row scale itself, by a central difference over a step that stays between two rows.
        let row_axis = pair.table.row_axis();
        let Some(span) = pair.table.span(row_axis, pair.to) else { return Ok(()) };
        if row_axis == pair.to {
            return Ok(());
        }
        let row = span.low.0 + (span.high.0 - span.low.0) * fraction;
        let found = pair.table.convert(row_axis, row, pair.to).unwrap();
        let Basis::Between { lower, upper } = found.basis else { return Ok(()) };
        let step = (row - lower).min(upper - row) * 1e-3;
        let read = |row: f64| pair.table.convert(row_axis, row, pair.to).map(|found| found.value);
        let (Some(below), Some(above)) = (read(row - step), read(row + step)) else { return Ok(()) };
        let measured = (above - below) / (2.0 * step);
        let close_to = 1e-4 * (found.slope + measured.abs()) + 1e-9 * found.value.abs() / step;
        prop_assert!((found.slope - measured).abs() <= close_to, "{pair:?} {row}: {} {measured}", found.slope);
        // A width that comes through the slope is that slope times one standard deviation of the row.
        prop_assert!(found.slope >= 0.0);
    }

    #[test]
    fn law_outside_is_always_a_refusal(
        pair in any_pair(), beyond in prop_oneof![1e-9..1.0_f64, 1.0..1e4_f64], above in any::<bool>(),
    ) {
        let value = if above { pair.span.high.0 + beyond } else { pair.span.low.0 - beyond };
        let moved = beyond > 1e-9 * value.abs();
        if !moved {
            return Ok(());
        }
        prop_assert!(pair.table.convert(pair.from, value, pair.to).is_none(), "{pair:?} {value}");
        if let Ok(reading) = Reading::new(pair.from, value) {
            let error = convert(reading, pair.to, Choice::table(pair.id));
            let Err(Error::OutsideTables { given, nearest, choice, .. }) = error else {
                return Err(TestCaseError::fail(format!("{pair:?} {value}: {error:?}")));
            };
            prop_assert_eq!((given, choice), (value, Choice::table(pair.id)));
            let near = if above { pair.span.high.0 } else { pair.span.low.0 };
            prop_assert_eq!((nearest.value, nearest.table, nearest.above), (near, pair.id, above));
        }
    }

    #[test]
    fn law_some_table_answers_or_the_refusal_names_the_nearest_end(
        from in select(axes().collect::<Vec<_>>()), to in select(axes().collect::<Vec<_>>()),
        fraction in 0.0..=1.0_f64, material in select(Material::ALL.to_vec()),
    ) {
        let choice = Choice::of(material);
        let (low, high) = match from {
            Axis::Hardness(scale) => scale.range(),
            Axis::Tensile => (50.0, 4000.0),
        };
        let value = low + (high.min(1200.0) - low) * fraction;
        let Ok(reading) = Reading::new(from, value) else { return Ok(()) };
        let held: Vec<(TableId, Span)> = spans(from, to, choice).collect();
        match convert(reading, to, choice) {
            Ok(found) => {
                prop_assert!(held.iter().any(|&(id, _)| id == found.table));
                prop_assert!(reachable(material, from).contains(&to));
                let others = compare(reading, to, found.table);
                prop_assert!(others.iter().all(|other| other.table != found.table));
            }
            Err(Error::SameAxis { .. }) => prop_assert_eq!(from, to),
            Err(Error::NoTable { .. }) => prop_assert!(material.has_tables() && held.is_empty()),
            Err(Error::Material { .. }) => prop_assert!(!material.has_tables()),
            Err(Error::OutsideTables { nearest, .. }) => {
                prop_assert!(held.iter().all(|(_, s)| value < s.low.0 || value > s.high.0));
                let away = (nearest.value - value).abs();
                let ends = held.iter().flat_map(|(_, s)| [s.low.0, s.high.0]);
                prop_assert!(ends.into_iter().all(|end| away <= (end - value).abs()));
                prop_assert_eq!(nearest.above, value > nearest.value);
            }
            Err(other) => return Err(TestCaseError::fail(format!("{from} {value} to {to}: {other}"))),
        }
    }

    #[test]
    fn law_a_route_gives_what_a_single_conversion_gives(
        pair in any_pair(), fraction in any_fraction(), by in -0.2..0.2_f64,
    ) {
        let moved = pair.at(fraction) * (1.0 + by);
        for choice in [Choice::table(pair.id), Choice::of(pair.table.class())] {
            let route = Route::new(pair.from, pair.to, choice).unwrap();
            for value in [pair.at(fraction), moved] {
                let alone = Reading::new(pair.from, value).and_then(|r| convert(r, pair.to, choice));
                prop_assert_eq!(route.convert(value), alone);
            }
        }
    }

    #[test]
    fn law_width_is_a_finite_number_from_zero_up(pair in any_pair(), fraction in any_fraction()) {
        let reading = Reading::new(pair.from, pair.at(fraction));
        // SAE J417 prints Shore and Brinell cells for comparison that lie outside a scale's range.
        let Ok(reading) = reading else { return Ok(()) };
        let width = convert(reading, pair.to, Choice::table(pair.id)).unwrap().width;
        prop_assert!(width.sd.is_finite() && width.half.is_finite());
        prop_assert!(width.sd >= 0.0 && width.half >= width.sd * 1.95);
        prop_assert!(width.level.total_cmp(&0.95).is_eq());
    }

    #[test]
    fn law_limits_keep_their_order_and_their_table(
        pair in any_pair(), one in any_fraction(), other in any_fraction(),
    ) {
        let (low, high) = (pair.at(one.min(other)), pair.at(one.max(other)));
        let class = Choice::of(pair.table.class());
        let found = convert_limits(pair.from, Some(low), Some(high), pair.to, class);
        let backward = convert_limits(pair.from, Some(high), Some(low), pair.to, class);
        if Reading::new(pair.from, low).is_err() || Reading::new(pair.from, high).is_err() {
            prop_assert!(found.is_err() && backward.is_err());
            return Ok(());
        }
        if low < high {
            prop_assert_eq!(backward, Err(Error::Backward { axis: pair.from, low: high, high: low }));
        }
        // The pair's own table holds both ends, so that some table answers.
        let limits = found.unwrap();
        let (below, above) = (limits.low.unwrap(), limits.high.unwrap());
        prop_assert_eq!(below.table, above.table);
        prop_assert!(not_above(below.at.value, above.at.value));
    }

    #[test]
    fn law_one_limit_converts_as_the_number_alone(pair in any_pair(), fraction in any_fraction()) {
        let value = pair.at(fraction);
        let Ok(reading) = Reading::new(pair.from, value) else { return Ok(()) };
        let class = Choice::of(pair.table.class());
        let alone = convert(reading, pair.to, class).unwrap();
        let lower = convert_limits(pair.from, Some(value), None, pair.to, class).unwrap();
        let upper = convert_limits(pair.from, None, Some(value), pair.to, class).unwrap();
        prop_assert_eq!((lower.low, lower.high), (Some(alone), None));
        prop_assert_eq!((upper.low, upper.high), (None, Some(alone)));
    }
}

/// Numbers as readings are: whole or with one or two decimals, inside the scale.
fn any_number(low: f64, high: f64) -> impl Strategy<Value = f64> {
    (0.0..=1.0_f64, select(vec![1.0, 10.0, 100.0])).prop_map(move |(fraction, parts)| {
        let value = low + (high - low) * fraction;
        ((value * parts).round() / parts).clamp(low, high)
    })
}

fn any_amount(low: f64, high: f64) -> impl Strategy<Value = Amount> {
    let number = move || any_number(low, high);
    let width = || any_number(0.0, 5.0);
    prop_oneof![
        number().prop_map(Amount::Single),
        (number(), number()).prop_map(|(a, b)| Amount::Range { low: a.min(b), high: a.max(b) }),
        (number(), width()).prop_map(|(nominal, w)| Amount::Tolerance {
            nominal,
            minus: w,
            plus: w
        }),
        (number(), width(), width()).prop_map(|(nominal, minus, plus)| Amount::Tolerance {
            nominal,
            minus,
            plus
        }),
        number().prop_map(Amount::AtLeast),
        number().prop_map(Amount::AtMost),
    ]
}

/// A dwell as it is written: outside 10 to 15 s.
fn any_dwell() -> impl Strategy<Value = Option<f64>> {
    prop_oneof![Just(None), (16..120_u32).prop_map(|s| Some(f64::from(s))), Just(Some(5.0))]
}

fn any_condition(scale: Scale) -> BoxedStrategy<Option<Condition>> {
    let forces = |forces: &'static [f64]| {
        (select(forces), any_dwell())
            .prop_map(|(force_kgf, dwell_s)| Some(Condition { ball_mm: None, force_kgf, dwell_s }))
    };
    match scale {
        Scale::Hv => prop_oneof![Just(None), forces(&[0.1, 1.0, 5.0, 10.0, 30.0, 7.0])].boxed(),
        Scale::Hk => prop_oneof![Just(None), forces(&[0.1, 0.5, 1.0])].boxed(),
        Scale::Hbw | Scale::Hbs => {
            let tests = [(10.0, 3000.0), (10.0, 1000.0), (5.0, 750.0), (2.5, 187.5), (1.0, 30.0)];
            let written =
                (select(tests.to_vec()), any_dwell()).prop_map(|((ball, force_kgf), dwell_s)| {
                    Some(Condition { ball_mm: Some(ball), force_kgf, dwell_s })
                });
            prop_oneof![Just(None), written].boxed()
        }
        Scale::Hbw500 => any_dwell()
            .prop_map(|dwell_s| Some(Condition { ball_mm: Some(10.0), force_kgf: 500.0, dwell_s }))
            .boxed(),
        Scale::HvUci => select(vec![None, Some(1.0), Some(5.0), Some(10.0)])
            .prop_map(|force| {
                force.map(|force_kgf| Condition { ball_mm: None, force_kgf, dwell_s: None })
            })
            .boxed(),
        _ => Just(None).boxed(),
    }
}

fn any_hardness() -> impl Strategy<Value = Designation> {
    select(Scale::ALL.to_vec()).prop_flat_map(|scale| {
        let (low, high) = scale.range();
        let balls = match scale {
            Scale::Hr15t | Scale::Hr30t => {
                vec![None, Some(Ball::Carbide), Some(Ball::Steel), Some(Ball::SteelThin)]
            }
            _ if scale.is_ball_rockwell() => vec![None, Some(Ball::Carbide), Some(Ball::Steel)],
            _ => vec![None],
        };
        let devices = match scale {
            Scale::Leeb => vec![
                Some(LeebDevice::D),
                Some(LeebDevice::Dc),
                Some(LeebDevice::Dl),
                Some(LeebDevice::D15),
                Some(LeebDevice::S),
                Some(LeebDevice::E),
                Some(LeebDevice::C),
                Some(LeebDevice::G),
            ],
            _ => vec![None],
        };
        (any_amount(low, high), select(balls), select(devices), any_condition(scale)).prop_map(
            move |(amount, ball, leeb, condition)| Designation {
                amount,
                axis: Axis::Hardness(scale),
                ball,
                condition,
                leeb,
                converted: None,
            },
        )
    })
}

fn any_strength() -> impl Strategy<Value = Designation> {
    // Tensile strength is written whole.
    any_amount(50.0, 4000.0).prop_map(|amount| {
        let amount = match amount {
            Amount::Single(v) => Amount::Single(v.round()),
            Amount::Range { low, high } => Amount::Range { low: low.round(), high: high.round() },
            Amount::Tolerance { nominal, minus, plus } => Amount::Tolerance {
                nominal: nominal.round(),
                minus: minus.round(),
                plus: plus.round(),
            },
            Amount::AtLeast(v) => Amount::AtLeast(v.round()),
            Amount::AtMost(v) => Amount::AtMost(v.round()),
        };
        Designation {
            amount,
            axis: Axis::Tensile,
            ball: None,
            condition: None,
            leeb: None,
            converted: None,
        }
    })
}

fn any_designation() -> impl Strategy<Value = Designation> {
    let plain = || prop_oneof![8 => any_hardness(), 1 => any_strength()];
    // UCI has parentheses of its own, which a conversion in parentheses cannot hold.
    let uci = |d: &Designation| d.axis == Axis::Hardness(Scale::HvUci);
    let converted = (plain(), plain(), select(vec!["ASTM E140 table 1", "ISO 18265, table A.1"]))
        .prop_filter("no UCI", move |(a, b, _)| !uci(a) && !uci(b))
        .prop_map(|(written, measured, table)| Designation {
            converted: Some(MeasuredAs { measured: Box::new(measured), table: table.to_owned() }),
            ..written
        });
    prop_oneof![4 => plain(), 1 => converted]
}

proptest! {
    #[test]
    fn law_what_is_printed_reads_as_what_was_meant(designation in any_designation()) {
        let text = designation.to_string();
        let parsed = parse(&text);
        let parsed = match parsed {
            Ok(parsed) => parsed,
            Err(error) => return Err(TestCaseError::fail(format!("{text}: {error}"))),
        };
        prop_assert_eq!(parsed.designation(), &designation, "{}", text);
        prop_assert_eq!(parsed.designation().to_string(), text);
    }

    #[test]
    fn law_comma_and_point_read_alike(designation in any_designation()) {
        let text = designation.to_string();
        let (point, comma) = (parse(&text).unwrap(), parse(&with_commas(&text)).unwrap());
        prop_assert_eq!(point.designation(), comma.designation(), "{}", text);
    }

    #[test]
    fn law_case_and_outer_spaces_do_not_matter(designation in any_designation(), upper in any::<bool>()) {
        if designation.converted.is_some() {
            return Ok(());
        }
        let text = designation.to_string();
        let changed = if upper { text.to_uppercase() } else { text.to_lowercase() };
        let changed = parse(&format!("  {changed}\t"));
        prop_assert_eq!(changed.map(|p| p.designation().clone()), Ok(designation), "{}", text);
    }

    #[test]
    fn never_panics_on_any_text(text in any::<String>()) {
        let _ = parse(&text).map_err(|error| error.to_string());
    }

    #[test]
    fn never_panics_on_hardness_like_text(
        text in "[ 0-9.,+±/()~<>=≥≤…–−-]{0,12}(HR|HV|HB|HBW|Rc|MPa|ksi|min|to|HK|HL|N|Rockwell)?[ 0-9A-Za-z.,+±/()²~<>=-]{0,40}",
    ) {
        if let Ok(parsed) = parse(&text) {
            let printed = parsed.designation().to_string();
            let again = parse(&printed);
            prop_assert!(again.is_ok(), "{text} was read as {printed}, which is not read: {again:?}");
            if parsed.designation().axis != Axis::Tensile {
                let again = again.unwrap();
                prop_assert_eq!(again.designation(), parsed.designation(), "{}", text);
            }
        }
    }

    #[test]
    fn never_panics_on_a_mutated_designation(
        designation in any_designation(),
        edits in prop::collection::vec((0..4_u8, any::<Index>(), any::<char>()), 1..6),
    ) {
        let mut text: Vec<char> = designation.to_string().chars().collect();
        for (kind, place, letter) in edits {
            let at = place.index(text.len() + 1);
            match kind {
                0 => text.insert(at, letter),
                1 if at < text.len() => drop(text.remove(at)),
                2 if at < text.len() => text.swap(at, 0),
                3 => text.truncate(at),
                _ => {}
            }
        }
        let text: String = text.into_iter().collect();
        let _ = parse(&text).map_err(|error| error.to_string());
    }

    #[test]
    fn never_panics_on_any_bits(bits in any::<u64>(), other in any::<u64>()) {
        let (value, second) = (f64::from_bits(bits), f64::from_bits(other));
        for from in axes() {
            let reading = Reading::new(from, value);
            for (id, table) in TableId::all() {
                for (to, _) in table.columns() {
                    let found = table.convert(from, value, to);
                    prop_assert!(found.is_none_or(|f| f.value.is_finite()));
                    if let Ok(reading) = reading {
                        let _ = convert(reading, to, Choice::table(id)).map_err(|error| error.to_string());
                    }
                }
            }
            let to = Axis::Hardness(Scale::Hv);
            let _ = convert_limits(from, Some(value), Some(second), to, Choice::STEEL);
        }
    }

    #[test]
    fn never_panics_near_the_ends_of_the_numbers(pair in any_pair(), bits in any::<u64>()) {
        // Bit patterns inside the span: a value with the exponent of the span's ends.
        let span = pair.span;
        let (low, high) = (span.low.0.max(1.0).to_bits(), span.high.0.to_bits());
        let value = f64::from_bits(low + bits % (high - low + 1));
        if let Some(found) = pair.table.convert(pair.from, value, pair.to) {
            prop_assert!(found.value >= span.low.1.min(found.value) && found.value.is_finite());
        }
    }
}

/// A point between digits becomes a comma, in the numbers only and not in the name of the table.
fn with_commas(text: &str) -> String {
    let (numbers, table) = match text.split_once(", ") {
        Some((numbers, table)) => (numbers, format!(", {table}")),
        None => (text, String::new()),
    };
    numbers.replace('.', ",") + &table
}

#[test]
fn never_panics_nor_lingers_on_long_text() {
    // Twice the length must not be more than a few times the work: a million characters in a blink.
    for piece in
        ["HRC ", "58 ", "(", "converted from ", "9", "±", "é", " ", "58 HRC (converted from "]
    {
        let text = piece.repeat(1_000_000 / piece.len());
        let started = Instant::now();
        assert!(parse(&text).is_err(), "{piece}");
        assert!(started.elapsed() < Duration::from_secs(1), "{piece}");
    }
}

#[test]
fn law_every_axis_finds_itself_by_its_symbol() {
    for axis in axes() {
        assert_eq!(Axis::find(axis.symbol()), Some(axis));
        assert_eq!(Axis::find(&axis.symbol().to_lowercase()), Some(axis));
    }
}
