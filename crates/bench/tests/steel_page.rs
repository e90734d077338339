//! The page of steels, from what was typed to what is shown.

use biteband_bench::state::{Action, App, Field, ShapeKind, SteelAction, SteelField, reduce};
use biteband_bench::view::{SteelView, steel_page};
use biteband_bench::words::{Language, SteelPage};
use biteband_steel::quench::Medium;
use proptest::prelude::*;

fn typed(field: SteelField, text: &str) -> Action {
    Action::Edit(Field::Steel(field), text.to_owned())
}

fn shown(actions: &[Action]) -> SteelView {
    let app = actions.iter().fold(App::default(), |app, action| reduce(&app, action.clone()));
    steel_page(&app, Language::English)
}

/// The capstan pawl of the invented boatyard: 4140, 50 mm round, oil, wants 50-54 HRC.
fn pawl() -> Vec<Action> {
    vec![
        typed(SteelField::Query, "4140"),
        typed(SteelField::Size, "50 mm"),
        typed(SteelField::Length, "80 mm"),
        typed(SteelField::Target, "50-54 HRC"),
    ]
}

#[test]
fn the_pawl_is_drawn_judged_and_heated() {
    let view = shown(&pawl());
    let reach = view.reach.unwrap();
    assert!(reach.verdict.starts_with("Skin maybe, middle"), "{}", reach.verdict);
    assert_eq!((reach.section.layers.len(), reach.section.callouts.len()), (4, 3));
    assert_eq!(reach.bands.rows.len(), 3);
    // The bracket of 50 to 54 lies inside the drawing, right of its middle.
    let (x, width) = reach.bands.goal.unwrap();
    assert!(x > 160.0 && x + width < 320.0 && width > 10.0);
    assert!(!reach.ways.is_empty() && !reach.why.is_empty());
    let heat = view.heat.unwrap();
    let names: Vec<SteelPage> = heat.rows.iter().map(|row| row.name).collect();
    for name in [SteelPage::Harden, SteelPage::HeatThrough, SteelPage::Hold, SteelPage::Grind] {
        assert!(names.contains(&name), "{names:?}");
    }
    assert_eq!(heat.stop, None);
    // Tin melts at 232 °C (ITS-90): it stands in the list about the oven and in no other.
    let with_tin =
        heat.lists.iter().filter(|(_, items)| items.iter().any(|item| item.contains("pure tin")));
    let titles: Vec<&str> = with_tin.map(|(title, _)| title.as_str()).collect();
    assert!(titles.len() == 1 && titles[0].contains("oven"), "{titles:?}");
    assert!(view.problem.is_none() && view.problems.is_empty() && view.hint.is_empty());
    assert!(!view.cautions.is_empty() && !view.sources.is_empty() && !view.card.is_empty());
}

/// Common practice, no source: a heavy block of 4140 in 6 litres of vegetable oil is too much for the bath.
#[test]
fn a_bath_that_is_too_small_stops_the_plan_with_its_figure() {
    let mut actions = pawl();
    actions.extend([
        Action::Steel(SteelAction::Shape(ShapeKind::Square)),
        typed(SteelField::Size, "100 mm"),
        typed(SteelField::Length, "100 mm"),
        Action::Steel(SteelAction::Medium("vegetable_oil")),
        typed(SteelField::Litres, "6 L"),
        typed(SteelField::BathTemperature, "25 °C"),
    ]);
    let view = shown(&actions);
    let stop = view.heat.unwrap().stop.unwrap();
    // 7.85 kg at one US gallon for each pound are 65.5 L.
    assert!(stop.contains("66 L"), "{stop}");
}

#[test]
fn what_is_missing_or_wrong_is_said_and_nothing_is_guessed() {
    assert!(!shown(&[]).hint.is_empty());
    let named = shown(&[typed(SteelField::Query, "silver steel")]);
    assert!(named.reach.is_none() && named.heat.is_some() && !named.hint.is_empty());
    let unknown = shown(&[typed(SteelField::Query, "4041")]);
    assert!(unknown.reach.is_none() && unknown.heat.is_none());
    assert!(unknown.problems.iter().any(|(field, problem)| {
        *field == SteelField::Query && problem.instead.len() + problem.message.len() > 20
    }));
    assert!(unknown.suggestions.contains(&"4140".to_owned()), "{:?}", unknown.suggestions);
    let tube = [
        Action::Steel(SteelAction::Shape(ShapeKind::Tube)),
        typed(SteelField::Query, "O1"),
        typed(SteelField::Size, "20 mm"),
        typed(SteelField::Second, "25 mm"),
    ];
    assert!(shown(&tube).problem.is_some());
    let soft = [typed(SteelField::Query, "A36"), typed(SteelField::Size, "50 mm")];
    assert!(shown(&soft).problem.is_some_and(|problem| problem.message.contains("harden")));
}

#[test]
fn a_name_of_several_steels_asks_which() {
    let mut actions = vec![typed(SteelField::Query, "45"), typed(SteelField::Size, "20 mm")];
    let view = shown(&actions);
    assert!(view.candidates.len() >= 2, "{:?}", view.candidates);
    let other = view.candidates.iter().find(|(.., on)| !on).unwrap().0.clone();
    actions.push(Action::Steel(SteelAction::Pick(other.clone())));
    let view = shown(&actions);
    assert!(view.candidates.iter().any(|(key, _, on)| *on && *key == other));
}

#[test]
fn an_own_composition_and_a_checked_dial_count() {
    let view = shown(&[
        Action::Steel(SteelAction::ByComposition(true)),
        typed(SteelField::Own, "C=0,41 Mn=0,85 Cr=1,0 Mo=0,2"),
        typed(SteelField::Size, "25 mm"),
        typed(SteelField::Dial, "860 C"),
        typed(SteelField::Truth, "845 C"),
        Action::Steel(SteelAction::AddCheck),
    ]);
    assert!(view.reach.is_some(), "{:?}", view.problem);
    assert_eq!(view.checks, ["860 C = 845 C"]);
    let bad =
        shown(&[Action::Steel(SteelAction::ByComposition(true)), typed(SteelField::Own, "C=41")]);
    assert_eq!(bad.problems.len(), 1);
}

#[test]
fn what_cannot_be_kept_yet_says_what_is_missing() {
    let at = |view: &SteelView, field| {
        view.problems
            .iter()
            .find(|(of, _)| *of == field)
            .map(|(_, problem)| problem.message.clone())
    };
    let mut actions = vec![
        Action::Steel(SteelAction::ByComposition(true)),
        typed(SteelField::Own, "C=0.41 Mn=0.85"),
        Action::Leave(Field::Steel(SteelField::OwnName)),
    ];
    assert_eq!(at(&shown(&actions), SteelField::OwnName), None);
    actions.push(Action::Steel(SteelAction::Keep));
    assert!(at(&shown(&actions), SteelField::OwnName).unwrap().contains("name"));
    actions.push(typed(SteelField::OwnName, "bar 7"));
    assert_eq!(at(&shown(&actions), SteelField::OwnName), None);
    let half = [typed(SteelField::Dial, "240"), Action::Steel(SteelAction::AddCheck)];
    assert!(at(&shown(&half), SteelField::Dial).unwrap().contains("unit"));
    let left = [typed(SteelField::Truth, "231,9"), Action::Leave(Field::Steel(SteelField::Truth))];
    assert!(at(&shown(&left), SteelField::Truth).is_some());
}

#[test]
fn a_kind_of_part_offers_its_hardness_with_its_caution() {
    let view = shown(&[typed(SteelField::Kind, "cold chisel")]);
    // ASME B107.47: cutting edge 53 to 60 HRC, struck end at most 45.
    assert!(view.kinds.iter().any(|(_, take)| take == "53-60 HRC"), "{:?}", view.kinds);
    assert!(view.kinds.iter().any(|(_, take)| take == "45 HRC max"));
    assert!(view.kind_cautions.iter().any(|caution| caution.contains("eye")));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn any_text_in_any_field_leaves_a_page(
        texts in proptest::collection::vec(("[ -~°]{0,12}|[0-9]{1,3} ?(mm|in|L|C)", 0..13_usize), 0..8),
        shape in proptest::sample::select(ShapeKind::ALL.to_vec()),
        medium in proptest::sample::select(Medium::ALL.iter().map(|medium| medium.key()).collect::<Vec<_>>()),
    ) {
        let mut actions = vec![
            typed(SteelField::Query, "4140"),
            Action::Steel(SteelAction::Shape(shape)),
            Action::Steel(SteelAction::Medium(medium)),
        ];
        actions.extend(texts.iter().map(|(text, at)| typed(SteelField::ALL[*at], text)));
        let _ = shown(&actions);
    }
}
