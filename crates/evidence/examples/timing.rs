//! How long one update and one piece of advice take on this machine.
//!
//! `cargo run --release -p biteband-evidence --example timing`

use std::hint::black_box;
use std::time::Instant;

use biteband_evidence::{
    Conditions, FileSet, FileTest, Hand, Outcome, Proof, Skin, Stroke, Target,
};

fn test(hand: Hand, spots: u8, proofs: bool) -> Result<FileTest, biteband_evidence::Error> {
    let set = FileSet::trade();
    let mut test = FileTest::new(set.clone()).with_hand(hand);
    for (file, grade) in set.files() {
        for repeat in 0..4_u8 {
            let outcome = if grade < 57.0 { Outcome::Skate } else { Outcome::Bite };
            test = test.with(Stroke::new(file, outcome).on_spot(repeat % spots))?;
        }
        if proofs {
            test = test
                .with_proof(Proof::new(file, grade - 2.0, Outcome::Bite)?)?
                .with_proof(Proof::new(file, grade + 2.0, Outcome::Skate)?)?;
        }
    }
    Ok(test)
}

fn time(name: &str, test: &FileTest) -> Result<(), biteband_evidence::Error> {
    const ROUNDS: u32 = 20;
    let start = Instant::now();
    for _ in 0..ROUNDS {
        let _ = black_box(test.belief()?);
    }
    let belief = start.elapsed() / ROUNDS;
    let target = Some(Target::between(58.0, 60.0)?);
    let start = Instant::now();
    for _ in 0..ROUNDS {
        let _ = black_box(test.assess(target)?);
    }
    println!("{name:50} belief {belief:>10.1?}  assess {:>10.1?}", start.elapsed() / ROUNDS);
    Ok(())
}

fn main() -> Result<(), biteband_evidence::Error> {
    for hand in Hand::ALL {
        for spots in 1..=4 {
            for proofs in [false, true] {
                let name = format!("{hand:?}, {spots} spots, proofs {proofs}");
                time(&name, &test(hand, spots, proofs)?)?;
            }
        }
    }
    let skin = Conditions { skin: Skin::NotGround, ..Conditions::default() };
    time("Practised, not ground", &test(Hand::Practised, 1, false)?.with_conditions(skin))
}
