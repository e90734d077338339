//! The way back, from a hardness to tempers, against prints, the trade and the laws of a plan.

use biteband_steel::reach::Steel;
use biteband_steel::temper::{Aim, How, Plan, PlanError, Predict, Temper, Tempering, plan};
use biteband_steel::{CompositionLimits, Element, Grade};
use proptest::prelude::*;

fn grade(key: &str) -> Tempering {
    Tempering::of(&Steel::Grade(Grade::by_key(key).unwrap())).unwrap()
}

fn between(low: f64, high: f64) -> Aim {
    Aim { low: Some(low), high: Some(high) }
}

fn each(minutes: f64, times: u8) -> How<'static> {
    How { done: &[], minutes, times, over: None }
}

fn celsius(plan: &Plan) -> Vec<f64> {
    plan.steps.iter().map(|step| step.temper.celsius()).collect()
}

/// Common practice, no source: from 50 to 55 HRC back to the middle forties takes 350 to 480 °C.
#[test]
fn the_trade_draws_4140_back_like_this() {
    for minutes in [60.0, 120.0] {
        let steps = celsius(&plan(&grade("4140"), between(44.0, 46.0), each(minutes, 1)).unwrap());
        assert!(steps.iter().all(|at| (350.0..=480.0).contains(at)), "{minutes} min: {steps:?}");
    }
}

/// Sheet 1, twice 2 h, hardened from 1177 to 1218 °C: 63 to 65 HRC at 566 °C, 61.5 to 63.5 at 593, 57.5 to 60 at 621; the
/// usual tempers begin at 540 °C, so that the soft side before the peak, 61 to 62 HRC at 427 °C, is not meant.
#[test]
fn secondary_hardening_is_tempered_behind_its_peak() {
    let m2 = grade("M2");
    let steps = celsius(&plan(&m2, between(61.0, 63.0), each(120.0, 2)).unwrap());
    assert!(steps.iter().all(|at| (552.0..=610.0).contains(at)), "{steps:?}");
    let twice = |celsius| m2.band(&[Temper::new(celsius, 120.0).unwrap(); 2]).unwrap().median;
    assert!(twice(590.0) > 62.0 && twice(610.0) < 62.0);
}

/// Sheets 1 and 2 print 59 and 60 HRC at 260 °C, 56 and 57 at 315 °C.
#[test]
fn a_narrow_target_is_met_where_the_print_has_it() {
    let o1 = grade("O1");
    let steps = celsius(&plan(&o1, between(58.0, 60.0), each(120.0, 1)).unwrap());
    assert!(steps.iter().all(|at| *at < 285.0), "{steps:?}");
    let once = |celsius| o1.band(&[Temper::new(celsius, 120.0).unwrap()]).unwrap().median;
    assert!(once(255.0) > 59.0 && once(285.0) < 59.0);
}

/// O1's sheets begin at 63 to 65 HRC at 150 °C, its mildest usual temper, and end with 39 HRC at 593 °C and 31 at
/// 649 °C.
#[test]
fn a_hardness_that_no_temper_leaves_is_refused() {
    let o1 = grade("O1");
    let above = plan(&o1, between(67.0, 68.0), each(120.0, 1)).unwrap_err();
    assert_eq!(above.code(), "temper.target_above");
    assert!(matches!(above, PlanError::TooHard { most, celsius }
        if (63.0..=65.0).contains(&most) && (celsius - 150.0).abs() < 1e-9));
    let below = plan(&o1, between(22.0, 25.0), each(120.0, 1)).unwrap_err();
    assert_eq!(below.code(), "temper.target_below");
    assert!(matches!(below, PlanError::TooSoft { least, celsius }
        if (31.0..39.0).contains(&least) && (593.0..=649.0).contains(&celsius)));
    for minutes in [0.0, -5.0, f64::NAN, 1e9] {
        let refused = plan(&o1, between(58.0, 60.0), each(minutes, 1));
        assert_eq!(refused, Err(PlanError::Unknown), "{minutes}");
    }
}

/// What holds for every plan: each step is what the steel is foretold after it and all before it, none is under the target,
/// and the first is safe unless no temper is.
fn sane(steel: &Tempering, (low, high): (f64, f64), how: How<'_>) -> Result<(), TestCaseError> {
    let range = steel.range();
    match plan(steel, between(low, high), how) {
        Ok(found) => {
            let mut so_far = Vec::new();
            for step in &found.steps {
                so_far.extend((0..step.times).map(|_| step.temper));
                prop_assert_eq!(steel.predict(&so_far), Some(step.expect));
                prop_assert!(step.expect.median >= low - 1e-9, "{:?}", step);
                let at = step.temper.celsius();
                prop_assert!(range.low - 1e-9 <= at && at <= range.high + 1e-9, "{at}");
            }
            prop_assert!(celsius(&found).is_sorted_by(|a, b| a < b));
            let first = found.steps.first().unwrap().expect;
            prop_assert!(found.at_the_end || first.median >= high, "{first:?}");
        }
        Err(PlanError::TooHard { most, celsius }) => {
            prop_assert!(most < low && celsius >= range.low);
        }
        Err(PlanError::TooSoft { least, celsius }) => {
            prop_assert!(least > high && celsius <= range.high);
        }
        Err(PlanError::Unknown) => prop_assert!(false, "every steel here is known"),
    }
    Ok(())
}

proptest! {
    #[test]
    fn a_plan_for_a_grade_leads_into_the_target(
        place in 0..78_usize, low in 25.0..65.0_f64, width in 0.5..4.0_f64,
        minutes in 15.0..600.0_f64, times in 1..3_u8,
    ) {
        let Ok(steel) = Tempering::of(&Steel::Grade(&Grade::all()[place])) else { return Ok(()) };
        sane(&steel, (low, low + width), each(minutes, times))?;
    }

    #[test]
    fn a_plan_for_a_composition_leads_into_the_target(
        c in 0.15..0.9_f64, mn in 0.2..1.5_f64, cr in 0.0..1.5_f64,
        low in 22.0..60.0_f64, width in 0.5..4.0_f64, minutes in 15.0..600.0_f64,
    ) {
        let share = |element, share| (element, Some(share), Some(share));
        let shares = [share(Element::C, c), share(Element::Mn, mn), share(Element::Cr, cr)];
        let limits = CompositionLimits::new(&shares).unwrap();
        let Ok(steel) = Tempering::of(&Steel::Own(Box::new(limits))) else { return Ok(()) };
        sane(&steel, (low, low + width), each(minutes, 1))?;
    }
}
