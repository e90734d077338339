//! The page of unknown bars, from what was tapped and typed to what is shown.
#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_bench::state::{Action, App, Field, UnknownField, reduce};
use biteband_bench::view::{TestView, UnknownView, unknown};
use biteband_bench::words::{Language, UnknownPage};

fn state(actions: &[Action]) -> App {
    actions.iter().fold(App::default(), |app, action| reduce(&app, action.clone()))
}

fn shown(actions: &[Action]) -> UnknownView {
    unknown(&state(actions), Language::English)
}

fn typed(field: UnknownField, text: &str) -> Action {
    Action::Edit(Field::Unknown(field), text.to_owned())
}

fn step(view: &UnknownView, field: UnknownField) -> &TestView {
    view.steps.iter().find(|step| step.field == field).unwrap()
}

const AXLE: [Action; 2] =
    [Action::Saw(UnknownField::Spark, "forks"), Action::Saw(UnknownField::Skin, "hard")];

#[test]
fn the_first_look_opens_the_cheapest_test_and_promises_nothing() {
    let view = shown(&[]);
    let open: Vec<UnknownField> =
        view.steps.iter().filter(|step| step.open).map(|step| step.field).collect();
    assert_eq!(open, [UnknownField::Magnet]);
    assert!(view.families.is_empty() && view.uses.is_empty() && view.carbon.is_none());
    assert!(!view.conflict && !view.verdict.is_empty() && !view.caution.is_empty());
    assert_eq!(view.turn, None);
}

/// Scenario 16: the axle, then its coupon that 55 cuts: water next; good for hammers and shafts, not for edges.
#[test]
fn the_axle_goes_from_its_spark_to_the_coupons() {
    let view = shown(&AXLE);
    assert!(view.verdict.contains("1045"), "{}", view.verdict);
    assert!(step(&view, UnknownField::Oil).next && view.uses.is_empty());
    assert_eq!(
        step(&view, UnknownField::Spark).said.as_deref(),
        Some("bright, forks, some bursts")
    );
    let coupon = Action::Saw(UnknownField::Oil, "50-55 HRC");
    let view = shown(&[AXLE[0].clone(), AXLE[1].clone(), coupon]);
    assert!(step(&view, UnknownField::Water).next && !step(&view, UnknownField::Oil).open);
    assert!(view.uses.iter().any(|text| text.starts_with("Hammers")));
    assert!(view.avoid.iter().any(|text| text.starts_with("Cutting edges")));
    let percent: u32 = view.families.iter().map(|row| row.percent).sum();
    assert_eq!(percent, 100);
    // 0.45 % C lies in the band on the rule, which runs from 0 at 14 to 1.2 % at 306.
    let rule = view.carbon.unwrap();
    let (left, width) = rule.rows[0].band.unwrap();
    let at = 14.0 + 0.45 / 1.2 * 292.0;
    assert!(left < at && at < left + width && width < 100.0);
}

#[test]
fn where_work_can_hurt_the_test_says_so() {
    let view = shown(&[]);
    let said = |field: UnknownField| step(&view, field).cautions.join(" ");
    assert!(said(UnknownField::Spark).contains("glasses"));
    assert!(
        said(UnknownField::Oil).contains("lid") && said(UnknownField::Oil).contains("galvanised")
    );
    assert!(said(UnknownField::Snap).contains("cloth"));
}

#[test]
fn a_step_stays_open_while_it_is_typed_into_and_tells_its_error_afterwards() {
    let oil = Field::Unknown(UnknownField::Oil);
    let typing = [Action::Enter(oil), typed(UnknownField::Oil, "fifty")];
    let view = shown(&typing);
    assert!(
        step(&view, UnknownField::Oil).open && step(&view, UnknownField::Oil).problem.is_none()
    );
    let left = [&typing[..], &[Action::Leave(oil)]].concat();
    let problem = step(&shown(&left), UnknownField::Oil).problem.clone().unwrap();
    assert!(!problem.message.is_empty() && !problem.instead.is_empty());
    // What can be read still counts, and the text stays as it was typed.
    let view = shown(&[&left[..], &AXLE[..]].concat());
    assert!(view.verdict.contains("1045"), "{}", view.verdict);
    assert_eq!(step(&view, UnknownField::Oil).said.as_deref(), Some("fifty"));
}

#[test]
fn a_contradiction_shows_its_causes_and_no_chances() {
    let view = shown(&[
        Action::Saw(UnknownField::Magnet, "sticks"),
        Action::Saw(UnknownField::Spark, "bursts"),
        Action::Saw(UnknownField::Oil, "<40 HRC"),
    ]);
    assert!(view.conflict && view.causes.len() > 2 && view.say.len() > 1);
    assert!(view.families.is_empty() && view.uses.is_empty() && view.carbon.is_none());
    let oil = step(&view, UnknownField::Oil);
    assert!(oil.open && oil.how.starts_with("Once more"), "{}", oil.how);
}

#[test]
fn a_typed_band_and_a_tapped_one_are_the_same_and_the_last_bar_comes_back() {
    let tapped = shown(&[Action::Saw(UnknownField::Oil, "50-55 HRC")]);
    let by_hand = shown(&[typed(UnknownField::Oil, "50,0..55,0 HRC")]);
    assert_eq!((&tapped.verdict, &tapped.families), (&by_hand.verdict, &by_hand.families));
    assert_eq!(tapped.turn, Some(UnknownPage::NewBar));
    let new = [Action::Saw(UnknownField::Oil, "50-55 HRC"), Action::TurnBar];
    assert_eq!(shown(&new).turn, Some(UnknownPage::LastBar));
    let again = [&new[..], &[Action::TurnBar]].concat();
    assert_eq!(shown(&again), tapped);
}
