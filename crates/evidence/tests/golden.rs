//! Beliefs against an independent brute-force integration, `tests/reference/file_test/make.py`.

#![expect(clippy::unwrap_used, clippy::panic, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{
    Answering, Conditions, FileSet, FileTest, Finish, Hand, Level, Outcome, Place, Prior, Proof,
    Skin, SteelKind, Stroke, Target,
};

const GOLDEN: &str =
    concat!(env!("CARGO_MANIFEST_DIR"), "/../../tests/reference/file_test/golden.csv");

fn outcome(letter: &str) -> Outcome {
    match letter {
        "b" => Outcome::Bite,
        "s" => Outcome::Slight,
        "k" => Outcome::Skate,
        other => panic!("outcome {other}"),
    }
}

fn read(row: &csv::StringRecord, headers: &csv::StringRecord) -> (FileTest, Target) {
    let field = |name: &str| row.get(headers.iter().position(|h| h == name).unwrap()).unwrap();
    let number = |text: &str| text.parse::<f64>().unwrap();
    let grades: Vec<f64> = field("grades").split(' ').map(number).collect();
    let set = FileSet::new(&grades).unwrap().with_tolerance(number(field("tolerance"))).unwrap();
    let hand = match field("hand") {
        "careful" => Hand::Careful,
        "practised" => Hand::Practised,
        "casual" => Hand::Casual,
        other => panic!("hand {other}"),
    };
    let answering = match field("answering") {
        "three_way" => Answering::ThreeWay,
        "yes_no" => Answering::YesNo,
        other => panic!("answering {other}"),
    };
    let conditions = Conditions {
        skin: if field("skin") == "not_ground" { Skin::NotGround } else { Skin::Ground },
        place: if field("place") == "edge" { Place::Edge } else { Place::Flat },
        finish: if field("finish") == "like" { Finish::LikeProof } else { Finish::Different },
        steel: if field("steel") == "carbide" {
            SteelKind::CarbideRich
        } else {
            SteelKind::Ordinary
        },
    };
    let mut test = FileTest::new(set.clone())
        .with_hand(hand)
        .with_answering(answering)
        .with_conditions(conditions);
    for stroke in field("strokes").split_whitespace() {
        let (grade, rest) = stroke.split_once(':').unwrap();
        let (letter, spot) = rest.split_once('@').unwrap();
        let file = set.find(number(grade)).unwrap();
        let stroke = Stroke::new(file, outcome(letter)).on_spot(spot.parse().unwrap());
        test = test.with(stroke).unwrap();
    }
    for proof in field("proofs").split_whitespace() {
        let (grade, rest) = proof.split_once('@').unwrap();
        let (known, letter) = rest.split_once(':').unwrap();
        let file = set.find(number(grade)).unwrap();
        test = test.with_proof(Proof::new(file, number(known), outcome(letter)).unwrap()).unwrap();
    }
    if let Some((mean, sd)) = field("prior").split_once(' ') {
        test = test.with_prior(Prior::normal(number(mean), number(sd)).unwrap());
    }
    let target = Target::between(number(field("target_low")), number(field("target_high")));
    (test, target.unwrap())
}

#[test]
fn beliefs_agree_with_brute_force() {
    // One spot: the cubic through grid points 0.25 HRC apart misplaces a quantile by up to 0.002 HRC.
    // Several spots: their rule is exact to degree 5, which spots that disagree outrun by up to 0.013 HRC.
    const HRC: [f64; 2] = [0.003, 0.02];
    const CHANCE: f64 = 5e-4;
    let mut reader =
        csv::ReaderBuilder::new().comment(Some(b'#')).from_path(GOLDEN).expect("golden.csv");
    let headers = reader.headers().unwrap().clone();
    let (mut worst_hrc, mut worst_chance, mut count) = ([0.0_f64; 2], 0.0_f64, 0);
    let mut failures = Vec::new();
    for row in reader.records() {
        let row = row.unwrap();
        let (test, target) = read(&row, &headers);
        let first = test.strokes().first().map(Stroke::spot);
        let several = usize::from(test.strokes().iter().any(|s| Some(s.spot()) != first));
        let belief = test.belief().unwrap();
        let interval = belief.interval(Level::P95);
        let odds = belief.odds(target);
        let expected: Vec<f64> = row.iter().skip(14).map(|text| text.parse().unwrap()).collect();
        let found = [
            interval.low(),
            belief.median(),
            interval.high(),
            odds.under(),
            odds.inside(),
            odds.over(),
        ];
        for (place, (one, other)) in found.iter().zip(&expected).enumerate() {
            let miss = (one - other).abs();
            let (worst, allowed) = if place < 3 {
                (&mut worst_hrc[several], HRC[several])
            } else {
                (&mut worst_chance, CHANCE)
            };
            *worst = worst.max(miss);
            if miss > allowed {
                failures.push(format!("{}: found {found:?}, expected {expected:?}", &row[0]));
            }
        }
        count += 1;
    }
    println!(
        "{count} cases, worst {worst_hrc:.5?} HRC (one spot, several), {worst_chance:.6} in a chance"
    );
    assert!(failures.is_empty(), "{failures:#?}");
    assert!(count >= 40, "{count} cases");
}
