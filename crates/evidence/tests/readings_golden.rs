//! Beliefs of readings against normal laws with all covariances, `tests/reference/readings/make.py`.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{
    Belief, FileSet, FileTest, Group, Hand, Instrument, Level, Outcome, Prior, Readings, Target,
};

const GOLDEN: &str =
    concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/reference/readings/golden.csv");

fn number(text: &str) -> f64 {
    text.parse().unwrap()
}

fn group(text: &str) -> Group {
    let fields: Vec<&str> = text.split(';').collect();
    let [values, random, shared, conversion @ ..] = fields.as_slice() else {
        panic!("group {text}")
    };
    let values: Vec<f64> = values.split('+').map(number).collect();
    let group = Group::new(Instrument::Other, &values, number(random), number(shared)).unwrap();
    match conversion {
        [] => group,
        [key, sd] => group.with_conversion(key.parse().unwrap(), number(sd)).unwrap(),
        _ => panic!("conversion {text}"),
    }
}

fn read(row: &csv::StringRecord, headers: &csv::StringRecord) -> (Belief, Target) {
    let field = |name: &str| row.get(headers.iter().position(|h| h == name).unwrap()).unwrap();
    let mut readings = Readings::new()
        .with_spot(number(field("spot")))
        .unwrap()
        .with_slips(number(field("slip")))
        .unwrap();
    for text in field("groups").split(' ') {
        readings = readings.with(group(text)).unwrap();
    }
    let prior = field("prior")
        .split_once(' ')
        .map_or(Prior::flat(), |(mean, sd)| Prior::normal(number(mean), number(sd)).unwrap());
    let belief = if field("strokes").is_empty() {
        readings.belief(prior)
    } else {
        let hand = match field("hand") {
            "careful" => Hand::Careful,
            "practised" => Hand::Practised,
            "casual" => Hand::Casual,
            other => panic!("hand {other}"),
        };
        let set = FileSet::trade();
        let mut test = FileTest::new(set.clone()).with_hand(hand).with_prior(prior);
        for stroke in field("strokes").split(' ') {
            let (grade, letter) = stroke.split_once(':').unwrap();
            let outcome = match letter {
                "b" => Outcome::Bite,
                "s" => Outcome::Slight,
                "k" => Outcome::Skate,
                other => panic!("outcome {other}"),
            };
            test = test.with_stroke(set.find(number(grade)).unwrap(), outcome).unwrap();
        }
        test.with_readings(readings).belief()
    };
    let target = Target::between(number(field("target_low")), number(field("target_high")));
    (belief.unwrap(), target.unwrap())
}

#[test]
fn beliefs_of_readings_agree_with_covariances() {
    const CHANCE: f64 = 5e-4;
    // A belief of the least scatter allowed is hardly wider than a step of the grid, and the cubic between its points misplaces a limit by 0.006 HRC.
    let allowed = |width: f64| if width < 1.5 { 0.007 } else { 0.003 };
    let mut reader =
        csv::ReaderBuilder::new().comment(Some(b'#')).from_path(GOLDEN).expect("golden.csv");
    let headers = reader.headers().unwrap().clone();
    let (mut worst_hrc, mut worst_chance, mut count) = (0.0_f64, 0.0_f64, 0);
    let mut failures = Vec::new();
    for row in reader.records() {
        let row = row.unwrap();
        let (belief, target) = read(&row, &headers);
        let (interval, odds) = (belief.interval(Level::P95), belief.odds(target));
        let expected: Vec<f64> = row.iter().skip(9).map(number).collect();
        let found = [interval.low(), belief.median(), interval.high()];
        let chances = [odds.under(), odds.inside(), odds.over()];
        for (one, other) in found.iter().zip(&expected) {
            let miss = (one - other).abs();
            worst_hrc = worst_hrc.max(miss);
            if miss > allowed(interval.width()) {
                failures.push(format!("{}: found {found:?}, expected {expected:?}", &row[0]));
            }
        }
        for (one, other) in chances.iter().zip(&expected[3..]) {
            let miss = (one - other).abs();
            worst_chance = worst_chance.max(miss);
            if miss > CHANCE {
                failures.push(format!("{}: found {chances:?}, expected {expected:?}", &row[0]));
            }
        }
        count += 1;
    }
    println!("{count} cases, worst {worst_hrc:.5} HRC, {worst_chance:.6} in a chance");
    assert!(failures.is_empty(), "{failures:#?}");
    assert!(count >= 60, "{count} cases");
}

/// Generalised least squares of two correlated means by hand, JCGM 100:2008, 5.2: with own variances a and b and a common variance c the best mean is
/// `(b x + a y)/(a + b)` and its variance `a b/(a + b) + c`.
#[test]
fn two_groups_of_one_conversion_keep_its_uncertainty() {
    let (spot, one, other) = (0.5_f64, (0.4_f64, 0.5_f64), (0.6_f64, 0.9_f64));
    let common = 1.2_f64;
    let belief = |keys: (u8, u8)| {
        let first = Group::new(Instrument::Vickers, &[52.0, 52.4], one.0, one.1).unwrap();
        let second = Group::new(Instrument::Ultrasonic, &[50.5], other.0, other.1).unwrap();
        let readings = Readings::new().with_slips(0.0).unwrap().with_spot(spot).unwrap();
        readings
            .with(first.with_conversion(keys.0, common).unwrap())
            .unwrap()
            .with(second.with_conversion(keys.1, common).unwrap())
            .unwrap()
            .belief(Prior::flat())
            .unwrap()
    };
    let a = one.0.powi(2) / 2.0 + one.1.powi(2) + spot.powi(2);
    let b = other.0.powi(2) + other.1.powi(2) + spot.powi(2);
    let mean = |a: f64, b: f64| (b * 52.2 + a * 50.5) / (a + b);
    let c = common.powi(2);
    let shared = belief((1, 1));
    assert!((shared.mean() - mean(a, b)).abs() < 1e-4, "{}", shared.mean());
    assert!((shared.sd() - (a * b / (a + b) + c).sqrt()).abs() < 1e-4, "{}", shared.sd());
    // Under two keys the conversions are independent, and the plain weighted mean holds.
    let apart = belief((1, 2));
    let (a, b) = (a + c, b + c);
    assert!((apart.mean() - mean(a, b)).abs() < 1e-4, "{}", apart.mean());
    assert!((apart.sd() - (a * b / (a + b)).sqrt()).abs() < 1e-4, "{}", apart.sd());
}
