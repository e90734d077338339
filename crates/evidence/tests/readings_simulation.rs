//! Simulated readings: the 95 % band holds the truth as often as it says.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{FileSet, FileTest, Group, Instrument, Level, Outcome, Prior, Readings};

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

const PARTS: u32 = 20_000;

/// Readings by their story: one bias of the instrument and of the spot, now and then a slip to anywhere.
fn group(random: &mut Random, instrument: Instrument, count: usize, hardness: f64) -> Group {
    let (own, shared) = instrument.usual().in_hrc(hardness, 1.0);
    let level = hardness + random.normal(shared) + random.normal(0.5);
    let mut values = Vec::new();
    while values.len() < count {
        let slipped = random.even() < 0.01;
        let value = if slipped { 10.0 + 70.0 * random.even() } else { level + random.normal(own) };
        // What the axis does not hold is refused and read again.
        if (15.0..=70.0).contains(&value) {
            values.push(value);
        }
    }
    Group::new(instrument, &values, own, shared).unwrap()
}

/// The share of parts inside the band, and its mean width.
fn simulate(
    seed: u64,
    belief: impl Fn(&mut Random, f64) -> biteband_evidence::Belief,
) -> (f64, f64) {
    let mut random = Random(seed);
    let (mut held, mut width) = (0_u32, 0.0);
    for _ in 0..PARTS {
        let hardness = 42.0 + 18.0 * random.even();
        let band = belief(&mut random, hardness).shortest(Level::P95);
        width += band.width();
        held += u32::from(band.low() <= hardness && hardness <= band.high());
    }
    (f64::from(held) / f64::from(PARTS), width / f64::from(PARTS))
}

#[test]
fn coverage_of_readings_is_honest_and_more_readings_are_narrower() {
    // 20,000 parts have a standard error of 0.15 %.
    for instrument in [Instrument::RockwellVerified, Instrument::Leeb] {
        let mut widths = Vec::new();
        for count in [1, 5] {
            let (coverage, width) = simulate(0xb17e_ba4d, |random, hardness| {
                let group = group(random, instrument, count, hardness);
                Readings::new().with(group).unwrap().belief(Prior::flat()).unwrap()
            });
            println!("{instrument:?}, {count} readings: {coverage:.4}, width {width:.2}");
            assert!((0.93..=0.97).contains(&coverage), "{instrument:?} {count}: {coverage}");
            widths.push(width);
        }
        assert!(widths[1] < widths[0], "{widths:?}");
    }
}

#[test]
fn coverage_of_a_file_test_with_a_portable_reading_is_honest() {
    let set = FileSet::trade();
    let (coverage, width) = simulate(0x0f11_e5e7, |random, hardness| {
        // The practised hand of the specification: file 1, stroke 1, operator 0.7, spot 0.5 HRC, 2 % of slips.
        let part = random.normal(0.7) + random.normal(0.5) - hardness;
        let mut test = FileTest::new(set.clone());
        for (file, grade) in set.files() {
            let felt = grade + random.normal(1.0) + part + random.normal(1.0);
            let slip = (random.even() < 0.02).then(|| random.next() % 3);
            let outcome = match slip {
                Some(0) => Outcome::Bite,
                Some(1) => Outcome::Slight,
                Some(_) => Outcome::Skate,
                None if felt > 1.0 => Outcome::Bite,
                None if felt < -1.0 => Outcome::Skate,
                None => Outcome::Slight,
            };
            test = test.with_stroke(file, outcome).unwrap();
        }
        let group = group(random, Instrument::Leeb, 1, hardness);
        test.with_readings(Readings::new().with(group).unwrap()).belief().unwrap()
    });
    println!("files and Leeb: {coverage:.4}, width {width:.2}");
    assert!((0.93..=0.97).contains(&coverage), "{coverage}");
    // One pass of files alone is 7.5 HRC wide (specification), one Leeb reading 3.92 sqrt(0.8^2 + 1.6^2 + 0.5^2) = 7.3.
    assert!(width < 5.6, "{width}");
}
