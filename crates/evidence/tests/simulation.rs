//! Simulated parts: the 95 % interval holds the truth as often as it says, and is as wide as the specification found.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{Answering, FileSet, FileTest, Hand, Level, Outcome, Prior, Proof};

/// `SplitMix64`: a fixed seed gives the same parts everywhere.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Even between 0 and 1, without the ends.
    fn even(&mut self) -> f64 {
        let high = u32::try_from(self.next() >> 32).unwrap();
        (f64::from(high) + 0.5) / 4_294_967_296.0
    }

    /// Normal with mean 0 and the given standard deviation, by Box and Muller.
    fn normal(&mut self, sd: f64) -> f64 {
        let radius = (-2.0 * self.even().ln()).sqrt();
        sd * radius * (std::f64::consts::TAU * self.even()).cos()
    }
}

/// The table of the specification, section 3: file, stroke, operator, spot, lapse.
fn table(hand: Hand) -> (f64, f64, f64, f64, f64) {
    match hand {
        Hand::Careful => (0.6, 0.8, 0.3, 0.3, 0.01),
        Hand::Practised => (1.0, 1.0, 0.7, 0.5, 0.02),
        Hand::Casual => (1.5, 1.5, 1.5, 0.5, 0.03),
    }
}

/// One stroke by its story, not by its formula: a slip gives any answer, otherwise the felt margin decides.
fn stroke(random: &mut Random, hand: Hand, answering: Answering, margin: f64) -> Outcome {
    let (_, scatter, _, _, lapse) = table(hand);
    let slipped = random.even() < lapse;
    let felt = if slipped { 0.0 } else { margin + random.normal(scatter) };
    let share = random.even();
    match answering {
        Answering::ThreeWay if slipped => {
            if share < 1.0 / 3.0 {
                Outcome::Bite
            } else if share < 2.0 / 3.0 {
                Outcome::Slight
            } else {
                Outcome::Skate
            }
        }
        Answering::ThreeWay if felt > 1.0 => Outcome::Bite,
        Answering::ThreeWay if felt < -1.0 => Outcome::Skate,
        Answering::ThreeWay => Outcome::Slight,
        Answering::YesNo if slipped && share < 0.5 => Outcome::Bite,
        Answering::YesNo if !slipped && felt > 0.0 => Outcome::Bite,
        Answering::YesNo => Outcome::Skate,
    }
}

#[derive(Clone, Copy)]
struct Design {
    name: &'static str,
    grades: &'static [f64],
    answering: Answering,
    strokes: usize,
    rounds: usize,
    hardness: (f64, f64),
    prior: Option<(f64, f64)>,
    /// Mean widths of the specification: careful, practised, casual.
    widths: [f64; 3],
}

const TRADE: &[f64] = &[40.0, 45.0, 50.0, 55.0, 60.0, 65.0];
const J864: &[f64] = &[50.0, 55.0, 58.0, 62.0, 65.0];

const ONE_PASS: Design = Design {
    name: "one pass",
    grades: TRADE,
    answering: Answering::ThreeWay,
    strokes: 1,
    rounds: 0,
    hardness: (42.0, 63.0),
    prior: None,
    widths: [5.41, 7.51, 11.01],
};

/// The designs of an independent simulation of the same model, 600 parts each, with its mean widths.
const DESIGNS: [Design; 9] = [
    ONE_PASS,
    Design {
        name: "one pass, yes or no",
        answering: Answering::YesNo,
        widths: [7.14, 9.13, 12.45],
        ..ONE_PASS
    },
    Design { name: "three strokes", strokes: 3, widths: [3.83, 5.78, 8.84], ..ONE_PASS },
    Design { name: "ten strokes", strokes: 10, widths: [3.13, 5.09, 7.98], ..ONE_PASS },
    Design { name: "one pass, proved", rounds: 1, widths: [5.12, 6.72, 9.00], ..ONE_PASS },
    Design {
        name: "three strokes, proved twice",
        strokes: 3,
        rounds: 2,
        widths: [3.43, 4.43, 5.64],
        ..ONE_PASS
    },
    Design {
        name: "J864 set",
        grades: J864,
        hardness: (51.0, 64.0),
        widths: [5.11, 8.72, 12.33],
        ..ONE_PASS
    },
    Design {
        name: "one pass, prior",
        prior: Some((60.0, 2.0)),
        widths: [4.39, 5.38, 6.33],
        ..ONE_PASS
    },
    Design {
        name: "three strokes, proved twice, prior",
        strokes: 3,
        rounds: 2,
        prior: Some((60.0, 2.0)),
        widths: [3.12, 3.85, 4.55],
        ..ONE_PASS
    },
];

struct Found {
    width: f64,
    coverage: f64,
    band_width: f64,
    band_coverage: f64,
}

fn simulate(design: &Design, hand: Hand, parts: u32, seed: u64) -> Found {
    let (file_sd, _, operator_sd, spot_sd, _) = table(hand);
    let mut random = Random(seed);
    let set = FileSet::new(design.grades).unwrap();
    let (mut held, mut width, mut band_held, mut band_width) = (0_u32, 0.0, 0_u32, 0.0);
    for _ in 0..parts {
        let hardness = match design.prior {
            Some((mean, sd)) => mean + random.normal(sd),
            None => design.hardness.0 + (design.hardness.1 - design.hardness.0) * random.even(),
        };
        let operator = random.normal(operator_sd);
        let spot = random.normal(spot_sd);
        let mut test = FileTest::new(set.clone()).with_hand(hand).with_answering(design.answering);
        if let Some((mean, sd)) = design.prior {
            test = test.with_prior(Prior::normal(mean, sd).unwrap());
        }
        for (file, grade) in set.files() {
            let sharpness = grade + random.normal(file_sd) + operator;
            for _ in 0..design.strokes {
                let margin = sharpness + spot - hardness;
                let outcome = stroke(&mut random, hand, design.answering, margin);
                test = test.with_stroke(file, outcome).unwrap();
            }
            for known in [grade - 2.0, grade + 2.0].repeat(design.rounds) {
                let outcome = stroke(&mut random, hand, design.answering, sharpness - known);
                test = test.with_proof(Proof::new(file, known, outcome).unwrap()).unwrap();
            }
        }
        let belief = test.belief().unwrap();
        let shortest = belief.shortest(Level::P95);
        band_width += shortest.width();
        band_held += u32::from(shortest.low() <= hardness && hardness <= shortest.high());
        let interval = belief.interval(Level::P95);
        width += interval.width();
        held += u32::from(interval.low() <= hardness && hardness <= interval.high());
    }
    let parts = f64::from(parts);
    Found {
        width: width / parts,
        coverage: f64::from(held) / parts,
        band_width: band_width / parts,
        band_coverage: f64::from(band_held) / parts,
    }
}

#[test]
fn coverage_of_the_95_percent_interval_is_honest() {
    // 20,000 parts have a standard error of 0.15 %.
    for hand in Hand::ALL {
        for strokes in [1, 3, 10] {
            let design = Design { strokes, ..ONE_PASS };
            let found = simulate(&design, hand, 20_000, 0xb17e_ba4d);
            println!(
                "{hand:?}, {strokes} strokes: {:.4}, shortest {:.4}, widths {:.2} and {:.2}",
                found.coverage, found.band_coverage, found.width, found.band_width
            );
            assert!(
                (0.93..=0.97).contains(&found.band_coverage),
                "{hand:?} {strokes}: {}",
                found.band_coverage
            );
            assert!(
                (0.93..=0.97).contains(&found.coverage),
                "{hand:?} {strokes}: {}",
                found.coverage
            );
        }
    }
}

#[test]
fn widths_are_those_of_the_specification() {
    // The specification ran 600 parts a row, so its mean widths are good to 0.1 to 0.3 HRC.
    for (hand, place) in Hand::ALL.into_iter().zip(0..) {
        for design in &DESIGNS {
            let found = simulate(design, hand, 2_000, 0x0f11_e5e7);
            let expected = design.widths[place];
            println!(
                "{hand:?}, {}: width {:.2}, specification {expected:.2}, coverage {:.3}",
                design.name, found.width, found.coverage
            );
            assert!(
                (found.width - expected).abs() < 0.4,
                "{hand:?} {}: {}",
                design.name,
                found.width
            );
            // On the J864 set the parts lie closer together than the flat prior says; the specification found 92.3 % for casual hands there.
            assert!(found.coverage > 0.91, "{hand:?} {}: {}", design.name, found.coverage);
        }
    }
}
