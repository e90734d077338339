//! Own results that lie within what is foretold, and those that do not.

use biteband_steel::Grade;
use biteband_steel::reach::Steel;
use biteband_steel::temper::{DOUBT, Measured, Oven, Predicted, Taught, Temper, Tempering};

fn grade(key: &str) -> Tempering {
    Tempering::of(&Steel::Grade(Grade::by_key(key).unwrap())).unwrap()
}

fn two_hours(celsius: f64) -> Vec<Temper> {
    vec![Temper::new(celsius, 120.0).unwrap()]
}

fn measured(hrc: f64) -> Measured {
    Measured { tempers: two_hours(215.0), hrc, sd: 1.0 }
}

fn taught<'a>(steel: &'a Tempering, results: &[f64]) -> Taught<'a> {
    let results: Vec<Measured> = results.iter().map(|hrc| measured(*hrc)).collect();
    Taught::new(steel, Oven::UNCHECKED, &results).unwrap()
}

fn width(found: Predicted) -> f64 {
    found.high - found.low
}

/// O1 is printed with 60 to 62 HRC at 205 °C and 59 to 60 at 260 °C: 48 HRC after 215 °C is a slip or a part that never
/// got hard, and nobody is surer of the next piece for it.
#[test]
fn a_wild_result_makes_nothing_surer_and_moves_little() {
    let o1 = grade("O1");
    let (none, wild) = (taught(&o1, &[]), taught(&o1, &[48.0]));
    assert!(!wild.believed() && wild.oven() == none.oven());
    let [most] = wild.doubted() else { panic!("one result") };
    let most = most.unwrap();
    assert!(most < 14.0, "{most}");
    let last = taught(&o1, &[o1.band(&two_hours(215.0)).unwrap().median - most + 0.01]);
    assert_eq!(last.doubted(), [None]);
    for celsius in [205.0, 220.0, 260.0] {
        let at = two_hours(celsius);
        let metal = |taught: &Taught<'_>| taught.in_metal(&at).unwrap();
        let oven = |taught: &Taught<'_>| taught.in_oven(&at).unwrap();
        for of in [&metal as &dyn Fn(&Taught<'_>) -> Predicted, &oven] {
            assert!(width(of(&wild)) >= width(of(&none)), "{celsius}");
            let off = of(&none).median - of(&wild).median;
            // No more than the last that is believed, which moves it by less than it is off itself.
            assert!((0.0..=of(&none).median - of(&last).median).contains(&off), "{celsius}: {off}");
            // What is wanted of such a steel stays in reach.
            assert!(of(&wild).high > 59.0, "{celsius}");
        }
    }
}

/// The threshold is counted in standard deviations of a single result: the steel's, the oven's and the reading's.
#[test]
fn what_is_believed_is_three_deviations_wide_and_weighed_as_ever() {
    let steel = grade("4140");
    let at = steel.expected(&two_hours(215.0)).unwrap();
    let spread = steel.spread();
    let oven = at.slope * Oven::UNCHECKED.sd_k;
    let most = DOUBT * (at.sd(&spread).powi(2) + oven.powi(2) + 1.0).sqrt();
    assert!((DOUBT - 3.0).abs() < 1e-12);
    for (off, doubt) in
        [(most - 0.01, false), (-most + 0.01, false), (most + 0.01, true), (-12.0, true)]
    {
        let found = taught(&steel, &[at.hrc + off]);
        assert_eq!(found.doubted()[0].is_some(), doubt, "{off}");
    }
    // Within it the law of one result: the share of the steel's variance in all of it.
    let heat = spread.covariance(at.celsius, at.celsius) + at.composition_sd.powi(2);
    let share = heat / (heat + oven.powi(2) + spread.scatter.powi(2) + 1.0);
    assert!((taught(&steel, &[at.hrc - 3.0]).heat().mean - -3.0 * share).abs() < 1e-9);
}

/// A good result beside a wild one still counts.
#[test]
fn a_good_result_beside_a_wild_one_still_narrows() {
    let o1 = grade("O1");
    let at = two_hours(220.0);
    let both = taught(&o1, &[61.0, 48.0]);
    assert!(both.doubted()[0].is_none() && both.doubted()[1].is_some());
    let [both, wild, good] = [both, taught(&o1, &[48.0]), taught(&o1, &[61.0])]
        .map(|taught| taught.in_oven(&at).unwrap());
    assert!(both.sd < wild.sd && both.sd >= good.sd && both.median > wild.median);
}
