//! Worked examples of decisions under doubt, by the rows of `tests/reference/decisions/checks.csv`.
//!
//! Expected values are the published ones of that file, or where nothing was published those worked out with SciPy.
//! Each comment names the source.

#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a helper that fails is a test that fails"
)]

use std::collections::BTreeMap;
use std::f64::consts::TAU;

use biteband_evidence::claim::{Budget, Estimate, Rule, Source, Stated, normal_quantile, risks};
use biteband_evidence::{Belief, Group, Instrument, Level, Readings};

/// The rows by their number: published answer and what was computed independently.
fn rows() -> BTreeMap<u32, (String, String)> {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/reference/decisions/checks.csv");
    let mut reader = csv::Reader::from_path(path).unwrap();
    let row =
        |row: csv::StringRecord| (row[0].parse().unwrap(), (row[4].to_owned(), row[5].to_owned()));
    reader.records().map(|record| row(record.unwrap())).collect()
}

/// The first number of a text.
fn first(text: &str) -> f64 {
    numbers(text)[0]
}

fn numbers(text: &str) -> Vec<f64> {
    let signs = |c: char| !(c.is_ascii_digit() || c == '.' || c == 'e' || c == '-');
    text.split(signs).filter_map(|part| part.parse().ok()).collect()
}

#[track_caller]
fn near(id: u32, found: f64, wanted: f64, give: f64) {
    assert!((found - wanted).abs() <= give, "row {id}: {found}, published {wanted}");
}

fn limits(low: impl Into<Option<f64>>, high: impl Into<Option<f64>>) -> Stated {
    Stated::new(low.into(), high.into()).unwrap()
}

fn bell(mean: f64, sd: f64) -> impl Fn(f64) -> f64 {
    move |y| (-0.5 * ((y - mean) / sd).powi(2)).exp() / (sd * TAU.sqrt())
}

/// Consumer's and producer's risk of a normal process.
fn normal_risks(mean: f64, sd: f64, stated: &Stated, guard: f64, u: f64) -> [f64; 2] {
    let span = (mean - 8.0 * sd, mean + 8.0 * sd);
    let found = risks(bell(mean, sd), span, stated, &stated.guarded(guard).unwrap(), u);
    [found.consumer, found.producer]
}

#[test]
fn conformance_probabilities_are_those_of_the_guide() {
    let rows = rows();
    // JCGM 106, 7.3 and 7.4: breakdown voltage, burst pressure, viscosity.
    let found = limits(None, -5.40).odds_normal(-5.47, 0.05).inside();
    near(1, found, first(&rows[&1].0), 0.005);
    let found = limits(490.0, None).odds_normal(509.7, 8.6).inside();
    near(2, found, first(&rows[&2].0), 0.005);
    let found = limits(12.5, 16.3).odds_normal(13.6, 1.8).inside();
    near(3, found, first(&rows[&3].0), 0.005);
    // JCGM 106, 9.5: resistors before they are measured.
    let found = limits(1499.8, 1500.2).odds_normal(1500.0, 0.12).inside();
    near(10, found, first(&rows[&10].0), 0.005);
    // Row 31, the tail of N(10, 0.4) beyond 9 to 11; its Cpk is an index of processes, which no claim has.
    let found = 1.0 - limits(9.0, 11.0).odds_normal(10.0, 0.4).inside();
    near(31, found, numbers(&rows[&31].0)[1], 5e-6);
    // Rows 44, 49 and 50: hardness, by SciPy.
    let found = limits(58.0, 62.0).odds_normal(58.6, 0.5).inside();
    near(44, found, first(&rows[&44].1), 5e-4);
    let best = [0.35, 0.55, 0.8, 1.0, 1.5, 2.05].map(|u| limits(58.0, 62.0).best(u));
    for (found, wanted) in best.into_iter().zip(numbers(&rows[&49].1)) {
        near(49, found, wanted, 1.05e-3);
    }
    let found = limits(58.0, None).odds_normal(59.1, 0.55).inside();
    near(50, found, first(&rows[&50].1), 5e-4);
}

#[test]
fn normal_quantiles_and_guard_bands_are_the_printed_ones() {
    let rows = rows();
    // JCGM 106, table 1.
    for (id, chance) in [(4, 0.8), (5, 0.9), (6, 0.95), (7, 0.99), (8, 0.999)] {
        near(id, normal_quantile(chance), first(&rows[&id].0), 0.005);
        near(id, normal_quantile(chance), first(&rows[&id].1), 5e-5);
    }
    // JCGM 106, 8.3.3: a speed of 107 km/h proves more than 100 at 99.9 % with 2 %.
    let rule = Rule::Guarded(Level::new(0.999).unwrap());
    let speed = first(&rows[&9].1);
    near(9, speed - rule.guard(0.02 * speed), 100.0, 0.05);
    near(9, 100.0 / (1.0 - rule.guard(0.02)), first(&rows[&9].0), 0.5);
    // ILAC-G8, table of guard bands.
    for (id, ratio) in [(19, 3.0), (20, 1.5), (21, 1.0), (22, 0.83)] {
        let wanted = first(&rows[&id].1);
        near(id, Rule::Band(ratio).worst_risk(), wanted, 0.005 * wanted);
    }
    near(23, Rule::Simple.worst_risk(), first(&rows[&23].1), 1e-9);
    // ISO 14253-1: 0.83 U for 95 %, U = 2u.
    let found = Rule::Guarded(Level::P95).guard(1.0) / 2.0;
    near(24, found, first(&rows[&24].0), 0.01);
    near(24, found, first(&rows[&24].1), 5e-5);
}

#[test]
fn global_risks_are_those_of_the_guide_and_of_the_papers() {
    let rows = rows();
    // JCGM 106, 9.5: resistors with u = 0.04 ohm.
    let resistors = |guard| normal_risks(1500.0, 0.12, &limits(1499.8, 1500.2), guard, 0.04);
    let [consumer, producer] = resistors(0.02);
    near(11, consumer, first(&rows[&11].0), 0.005);
    near(12, producer, first(&rows[&12].0), 0.005);
    near(11, consumer, first(&rows[&11].1), 5e-5);
    near(12, producer, first(&rows[&12].1), 5e-5);
    for (id, guard) in [(13, 0.0), (14, -0.02)] {
        let found = resistors(guard);
        for (found, wanted) in found.into_iter().zip(numbers(&rows[&id].1)) {
            near(id, found, wanted, 5e-5);
        }
    }
    // JCGM 106, 9.5.4: run-out of ball bearings, gamma with shape 4 and rate 4, in micrometres.
    let gamma = |y: f64| 4.0_f64.powi(4) / 6.0 * y.powi(3) * (-4.0 * y).exp();
    let bearing = limits(None, 2.0);
    let all = limits(None, 1e3);
    let bad = risks(gamma, (0.0, 20.0), &bearing, &all, 0.25).consumer;
    near(15, bad, first(&rows[&15].0), 5e-4);
    let consumer =
        |limit: f64| risks(gamma, (0.0, 20.0), &bearing, &limits(None, limit), 0.25).consumer;
    near(16, consumer(2.0), first(&rows[&16].0), 5e-4);
    let (mut low, mut high) = (1.0, 2.0);
    for _ in 0..40 {
        let middle = 0.5 * (low + high);
        if consumer(middle) > 0.001 { high = middle } else { low = middle }
    }
    near(17, low, first(&rows[&17].0), 0.005);
    let producer =
        |limit: f64| risks(gamma, (0.0, 20.0), &bearing, &limits(None, limit), 0.25).producer;
    let wanted = numbers(&rows[&18].1);
    near(18, producer(low), wanted[0], 5e-5);
    near(18, producer(2.0), wanted[1], 5e-5);
    // Deaver's papers, limits in standard deviations of the process; row 30 by NCSLI RP-19.
    let two = limits(-2.0, 2.0);
    let [pfa, pfr] = normal_risks(0.0, 1.0, &two, 0.0, 0.25);
    near(25, pfa, first(&rows[&25].0), 5e-4);
    near(26, pfr, first(&rows[&26].0), 5e-4);
    let [pfa, _] = normal_risks(0.0, 1.0, &limits(-2.5, 2.5), 0.0, 0.25);
    near(27, pfa, first(&rows[&27].0), 1e-4);
    let [pfa, pfr] = normal_risks(0.0, 1.0, &two, 2.0 - 0.91 * 2.0, 0.5);
    near(28, pfa, first(&rows[&28].0), 5e-4);
    near(29, pfr, first(&rows[&29].0), 5e-4);
    let edge = normal_quantile(0.975);
    let [pfa, _] = normal_risks(0.0, 1.0, &limits(-edge, edge), 0.0, 0.25);
    near(30, pfa, first(&rows[&30].0), 1e-7);
    // Rows 46 to 48: parts hardened to N(60, 1.2) within 58 to 62 HRC with u = 0.55, by SciPy.
    for (id, ratio) in [(46, 0.0), (47, 0.83), (48, 1.0)] {
        let found = normal_risks(60.0, 1.2, &limits(58.0, 62.0), ratio * 1.1, 0.55);
        let text = &rows[&id].1;
        let wanted = numbers(&text.replace("R_C", "").replace("R_P", ""));
        near(id, found[0], wanted[0], 5.1e-5);
        near(id, found[1], wanted[1], 5.1e-4);
    }
}

/// The hardness example of JCGM 100, H.6: 0.45 over five readings, 0.1 of resolution, two machines, block and scale.
#[test]
fn the_hardness_example_of_the_guide_adds_up() {
    let rows = rows();
    let term = |id: u32| first(&rows[&id].1);
    let exact = limits(60.0, 68.0);
    let budget = |random: f64, count: usize, shared: f64, stated: &Stated| {
        let values = vec![64.0; count];
        let group = Group::new(Instrument::Other, &values, random, shared).unwrap();
        Budget::of(&Readings::new().with(group).unwrap(), None, None, stated).unwrap()
    };
    let part = |budget: &Budget, source: Source| {
        budget.shares().into_iter().find(|one| one.source == source).unwrap().u
    };
    let random = part(&budget(0.45, 5, 0.5, &exact), Source::InstrumentRandom);
    near(33, random, first(&rows[&33].0), 0.005);
    near(33, random, term(33), 5e-5);
    let rounded = exact.rounded(0.1, 0.1);
    near(34, part(&budget(0.45, 5, 0.5, &rounded), Source::Rounding).powi(2), term(34), 5e-7);
    let machines = [(35, 0.10), (36, 0.11)];
    for (id, sd) in machines {
        let found = part(&budget(sd, 6, 0.5, &exact), Source::InstrumentRandom);
        near(id, found.powi(2), term(id), 5e-7);
    }
    near(38, part(&budget(0.45, 5, 0.5, &exact), Source::InstrumentBias), term(38), 1e-12);
    // What does not change from reading to reading is one bias: scale, both machines, and the block of row 37.
    let shared = term(38).powi(2) + term(35) + term(36) + term(37).powi(2);
    let all = budget(0.45, 5, shared.sqrt(), &rounded);
    // The spot is no part of the example.
    let spot = part(&all, Source::Spot);
    let u = (all.u() * all.u() - spot * spot).sqrt();
    near(39, u, 0.55, 0.005);
    near(39, u, first(&rows[&39].1), 5e-5);
    let scale = term(38).powi(2) / (u * u);
    // Four fifths of it is the scale itself: more marks cannot help.
    near(39, scale, 0.81, 0.005);
}

/// Row 45: an honest process as expectation, N(60, 1.2), and a reading of 58.6 with u = 0.55.
#[test]
fn an_expectation_and_a_reading_meet_as_normal_laws_do() {
    let rows = rows();
    let both = Belief::normal(60.0, 1.2).unwrap();
    let both = both.combined(&Belief::normal(58.6, 0.55).unwrap()).unwrap();
    let wanted = numbers(&rows[&45].1);
    let found = Estimate::of(&both);
    near(45, found.value, wanted[0], 0.005);
    near(45, found.u, wanted[1], 0.005);
    near(45, limits(58.0, 62.0).odds(&both).inside(), wanted[2], 1e-3);
}

/// Rows that do not apply, with the reason; all others are put to the core above.
const LEFT_OUT: [(u32, &str); 6] = [
    (32, "a depth becomes a Rockwell number in biteband-hardness, where indentation tests hold it"),
    (37, "no claim has a triangular law; its value is used in row 39"),
    (40, "no Monte Carlo: the budget adds variances of a linear model"),
    (41, "no Monte Carlo, and no sum of rectangular laws: the only one is the rounding"),
    (42, "no Monte Carlo, as row 41"),
    (43, "no Monte Carlo, and no weighing"),
];

#[test]
fn every_row_is_used_or_left_out_for_a_reason() {
    let own = include_str!("decisions.rs");
    for id in rows().into_keys() {
        let left = LEFT_OUT.iter().any(|(row, why)| *row == id && !why.is_empty());
        // A row is named where it is held against a figure, or in the list that a loop goes through.
        let forms = [format!("near({id},"), format!("({id}, ")];
        let used = forms.iter().any(|form| own.contains(form.as_str()));
        assert!(used || left, "row {id} is not used");
    }
    assert_eq!(rows().len(), 50);
}
