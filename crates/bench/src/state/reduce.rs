//! The pure step from one state to the next.

use super::{Action, App, Field, FileTestState, History, PadKey, SteelField, Strokes};
use crate::answer::{ProofInput, ReadingInput, StrokeInput, read_reading};
use crate::words::Language;
use biteband_evidence::FileSet;
use biteband_quantity::sort_by_number;

/// How many changes can be taken back.
const UNDO_DEPTH: usize = 200;
/// How many different spots one part has.
const SPOTS: u8 = 4;

/// The state after an action. Nothing typed is ever thrown away by it.
#[must_use]
#[expect(clippy::too_many_lines, reason = "one arm for each action is the point of the list")]
pub fn reduce(app: &App, action: Action) -> App {
    let mut next = app.clone();
    let test = &mut next.saved.file_test;
    match action {
        Action::Go(page) => {
            next.saved.page = page;
            next.session.active = None;
            next.session.choosing = false;
        }
        Action::SetTheme(theme) => next.saved.settings.theme = theme,
        Action::SetUnits(units) => next.saved.settings.units = units,
        Action::Stroke { grade, outcome } => {
            remember(test);
            let spot = Some(test.now.spot.max(1));
            test.now.strokes.push(StrokeInput { file: grade, outcome: outcome.to_owned(), spot });
        }
        Action::Undo => {
            if let Some(before) = test.past.pop() {
                let cleared = test.now.strokes.is_empty() && test.now.readings.is_empty();
                test.now = before;
                if cleared {
                    History::turn(&mut next, false);
                }
            }
        }
        Action::StartAgain => {
            if test.now != (Strokes { spot: 1, ..Strokes::default() }) {
                remember(test);
                History::turn(&mut next, true);
                next.saved.file_test.now = Strokes { spot: 1, ..Strokes::default() };
            }
        }
        Action::PickSpot(spot) => test.now.spot = spot.clamp(1, SPOTS),
        Action::Edit(field, text) => edit(&mut next, field, text),
        Action::Pad(field, key) => {
            let mut typed = text(&next, field).to_owned();
            match key {
                PadKey::Type(sign) => typed.push_str(sign),
                PadKey::Erase => {
                    typed.pop();
                }
            }
            edit(&mut next, field, typed);
        }
        Action::Enter(field) => next.session.active = Some(field),
        Action::Leave(field) => {
            next.session.leave(field);
            if next.session.active == Some(field) {
                next.session.active = None;
                next.session.letters = None;
            }
        }
        Action::Letters(field) => next.session.letters = Some(field),
        Action::SetHand(hand) => test.hand = hand,
        Action::SetConditions(conditions) => test.conditions = conditions,
        Action::TakeSet(grades, tolerance) => {
            tolerance.clone_into(&mut test.tolerance_text);
            edit(&mut next, Field::Grades, grades.to_owned());
        }
        Action::ProofFile(grade) => test.proof_file = Some(grade),
        Action::Prove(outcome) => {
            let file = test.proof_file.or(test.grades.first().copied());
            if let (Some(file), Some(known)) = (file, number(&test.proof_known_text)) {
                remember(test);
                test.now.proofs.push(ProofInput { file, known, outcome: outcome.to_owned() });
            } else {
                next.session.leave(Field::ProofKnown);
            }
        }
        Action::RemoveProof(index) => {
            if index < test.now.proofs.len() {
                remember(test);
                test.now.proofs.remove(index);
            }
        }
        Action::SetInstrument(key) => key.clone_into(&mut test.instrument),
        Action::AddReading => {
            let reading = ReadingInput::written(&test.instrument, test.reading_text.trim());
            // Whether it can be read is the same in every language.
            if read_reading(Language::default(), &reading).is_ok() {
                remember(test);
                test.now.readings.push(reading);
                test.reading_text.clear();
            } else {
                next.session.leave(Field::Reading);
            }
        }
        Action::RemoveReading(index) => {
            if index < test.now.readings.len() {
                remember(test);
                test.now.readings.remove(index);
            }
        }
        Action::SetPrior(on) => test.prior_on = on,
        Action::ConvertScale(scale) => scale.clone_into(&mut next.saved.convert.scale),
        Action::ConvertMore(more) => next.saved.convert.more = more,
        Action::ConvertMaterial(material) => {
            let convert = &mut next.saved.convert;
            material.clone_into(&mut convert.material);
            // A table of another metal would refuse every number.
            convert.table = None;
            convert.to.clear();
        }
        Action::ConvertTo { shown, scale } => {
            let mut to: Vec<String> = shown.iter().map(|&symbol| symbol.to_owned()).collect();
            match to.iter().position(|symbol| symbol == scale) {
                Some(at) => drop(to.remove(at)),
                None => to.push(scale.to_owned()),
            }
            next.saved.convert.to = to;
        }
        Action::ConvertUsual => next.saved.convert.to.clear(),
        Action::ConvertDraw { zoom: 0, pan: 0 } => {
            (next.saved.convert.zoom, next.saved.convert.pan) = (0, 0);
        }
        Action::ConvertDraw { zoom, pan } => {
            let convert = &mut next.saved.convert;
            convert.zoom = convert.zoom.saturating_add(zoom).clamp(-4, 6);
            convert.pan = convert.pan.saturating_add(pan).clamp(-40, 40);
        }
        Action::ConvertTable(table) => next.saved.convert.table = table.map(str::to_owned),
        Action::MarkKind(kind) => next.saved.mark.choose(kind),
        Action::MarkScale(scale) => scale.clone_into(&mut next.saved.mark.scale),
        Action::MarkShape(shape) => next.saved.mark.shape = shape,
        Action::MarkAlong(along) => next.saved.mark.along_axis = along,
        Action::PaperKind(kind) => next.saved.paper.kind = kind,
        Action::PaperLetter(letter) => next.saved.paper.letter = letter,
        Action::Steel(action) => {
            next.session.missing = next.saved.steel.act(action).map(Field::Steel);
        }
        Action::Temper(change) => change.apply(&mut next),
        Action::Timer(change) => change.apply(&mut next),
        Action::Saw(field, answer) => next.saved.unknown.choose(field, answer),
        Action::Claim(change) => change.apply(&mut next),
        Action::Choose(open) => next.session.choosing = open,
        Action::Part(change) => change.apply(&mut next),
        Action::TurnBar => next.saved.unknown.turn(),
        Action::Loaded(saved) => next.saved = *saved,
        Action::Tell(notice) => {
            if !next.session.notices.contains(&notice) {
                next.session.notices.push(notice);
            }
        }
        Action::Dismiss(notice) => {
            next.session.notices.retain(|shown| *shown != notice);
        }
    }
    next
}

fn remember(test: &mut FileTestState) {
    test.past.push(test.now.clone());
    if test.past.len() > UNDO_DEPTH {
        test.past.remove(0);
    }
}

/// The text of a field.
#[must_use]
pub fn text(app: &App, field: Field) -> &str {
    let test = &app.saved.file_test;
    match field {
        Field::Convert => &app.saved.convert.text,
        Field::Target => &test.target_text,
        Field::Grades => &test.grades_text,
        Field::Tolerance => &test.tolerance_text,
        Field::ProofKnown => &test.proof_known_text,
        Field::PriorMean => &test.prior_mean_text,
        Field::PriorSd => &test.prior_sd_text,
        Field::PaperSpan => &app.saved.paper.span_text,
        Field::Mark(field) => app.saved.mark.text(field),
        Field::Reading => &test.reading_text,
        Field::Steel(field) => app.saved.steel.text(field),
        Field::Temper(field) => app.saved.temper.text(field),
        Field::Timer(field) => app.saved.timer.text(field),
        Field::Unknown(field) => app.saved.unknown.now.text(field),
        Field::Claim(field) => app.saved.claim.text(field),
        Field::Part(field) => app.saved.part.text(field),
    }
}

fn edit(app: &mut App, field: Field, text: String) {
    // What a key found wanting is being seen to.
    if app.session.missing == Some(field) {
        app.session.missing = None;
    }
    let test = &mut app.saved.file_test;
    match field {
        Field::Convert => app.saved.convert.text = text,
        // A part has one wanted hardness, whichever page it is typed on.
        Field::Target | Field::Steel(SteelField::Target) if app.saved.part.in_hand() => {
            app.saved.steel.target.clone_from(&text);
            test.target_text = text;
        }
        Field::Target => test.target_text = text,
        Field::Grades => {
            // The rule keeps the last set that made sense while another is being typed.
            if let Some(mut grades) = list_of_grades(&text)
                && FileSet::new(&grades).is_ok()
            {
                sort_by_number(&mut grades, |grade| *grade);
                grades.reverse();
                test.grades = grades;
            }
            test.grades_text = text;
        }
        Field::Tolerance => test.tolerance_text = text,
        Field::ProofKnown => test.proof_known_text = text,
        Field::PriorMean => test.prior_mean_text = text,
        Field::PriorSd => test.prior_sd_text = text,
        Field::PaperSpan => app.saved.paper.span_text = text,
        Field::Mark(field) => app.saved.mark.edit(field, text),
        Field::Reading => test.reading_text = text,
        Field::Steel(field) => app.saved.steel.edit(field, text),
        Field::Temper(field) => app.saved.temper.edit(field, text),
        Field::Timer(field) => app.saved.timer.edit(field, text),
        Field::Unknown(field) => app.saved.unknown.now.edit(field, text),
        Field::Claim(field) => app.saved.claim.edit(field, text),
        Field::Part(field) => app.saved.part.edit(field, text),
    }
}

/// Reads a number with point or comma.
#[must_use]
pub fn number(text: &str) -> Option<f64> {
    biteband_hardness::decimal(text)
}

/// Reads grades with spaces or semicolons between; a comma is a decimal comma when digits stand on
/// both sides without a space.
#[must_use]
pub fn list_of_grades(text: &str) -> Option<Vec<f64>> {
    let parts = text.split(|c: char| c.is_whitespace() || c == ';' || c == '/');
    let parts = parts.map(|part| part.trim_matches(',')).filter(|part| !part.is_empty());
    let mut grades = Vec::new();
    for part in parts {
        match number(part) {
            Some(grade) if grade < 100.0 && !looks_like_two(part) => grades.push(grade),
            // "40,45,50" without spaces is a list: no grade has two decimals or more.
            _ => {
                for piece in part.split(',') {
                    grades.push(number(piece)?);
                }
            }
        }
    }
    (!grades.is_empty()).then_some(grades)
}

/// `40,45` is two grades, `62,5` is one: what follows the comma has two digits or one.
fn looks_like_two(part: &str) -> bool {
    part.split_once(',').is_some_and(|(_, fraction)| fraction.len() > 1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::{
        ClaimAction, ClaimField, ShapeKind, SteelAction, SteelField, TimerAction, TimerField,
        TimerKind, UnknownField,
    };
    use proptest::prelude::*;

    fn after(actions: &[Action]) -> App {
        actions.iter().fold(App::default(), |app, action| reduce(&app, action.clone()))
    }

    #[test]
    fn undo_takes_back_a_stroke_and_a_clearing() {
        let stroke = Action::Stroke { grade: 55.0, outcome: "bites" };
        let one = after(std::slice::from_ref(&stroke));
        let two = after(&[stroke.clone(), stroke.clone(), Action::Undo]);
        assert_eq!(one.saved, two.saved);
        let cleared = after(&[stroke.clone(), Action::StartAgain, Action::Undo]);
        assert_eq!(cleared.saved.file_test.now, one.saved.file_test.now);
    }

    #[test]
    fn a_half_typed_set_keeps_the_rule() {
        let app = after(&[Action::Edit(Field::Grades, "62 6".into())]);
        assert_eq!(app.saved.file_test.grades_text, "62 6");
        assert_eq!(app.saved.file_test.grades, FileTestState::default().grades);
        let app = after(&[Action::Edit(Field::Grades, "50 58 62".into())]);
        assert_eq!(app.saved.file_test.grades, [62.0, 58.0, 50.0]);
    }

    #[test]
    fn grades_read_with_comma_point_and_list() {
        assert_eq!(list_of_grades("40,45,50"), Some(vec![40.0, 45.0, 50.0]));
        assert_eq!(list_of_grades("40,45"), Some(vec![40.0, 45.0]));
        assert_eq!(list_of_grades("62,5 58"), Some(vec![62.5, 58.0]));
        assert_eq!(list_of_grades("40, 45; 50"), Some(vec![40.0, 45.0, 50.0]));
        assert_eq!(list_of_grades("forty"), None);
        assert_eq!(list_of_grades(" "), None);
    }

    #[test]
    fn proving_needs_a_known_hardness() {
        let app = after(&[Action::Prove("bites")]);
        assert!(app.saved.file_test.now.proofs.is_empty());
        assert!(app.session.left.contains(&Field::ProofKnown));
        let app = after(&[Action::Edit(Field::ProofKnown, "53,5".into()), Action::Prove("bites")]);
        let proof = app.saved.file_test.now.proofs.first().unwrap();
        assert!((proof.known - 53.5).abs() < 1e-12 && (proof.file - 65.0).abs() < 1e-12);
    }

    #[test]
    fn a_reading_is_added_only_when_it_can_be_read_and_undone_like_a_stroke() {
        let typed = |text: &str| Action::Edit(Field::Reading, text.to_owned());
        let wrong = after(&[typed("52 HXC"), Action::AddReading]);
        assert!(wrong.saved.file_test.now.readings.is_empty());
        assert_eq!(wrong.saved.file_test.reading_text, "52 HXC");
        assert!(wrong.session.left.contains(&Field::Reading));
        let one =
            after(&[Action::SetInstrument("portable-leeb"), typed("52 53"), Action::AddReading]);
        let reading = one.saved.file_test.now.readings.first().unwrap();
        assert_eq!(
            (reading.instrument.as_deref(), reading.text.as_str()),
            (Some("portable-leeb"), "52 53")
        );
        assert_eq!(one.saved.file_test.reading_text, "");
        let gone = reduce(&one, Action::RemoveReading(0));
        assert!(gone.saved.file_test.now.readings.is_empty());
        assert_eq!(reduce(&gone, Action::Undo).saved, one.saved);
        let view = crate::view::file_test(&one, crate::words::Language::English);
        assert!(view.unit == "HRC" && view.readings[0].text.contains("assumed"), "{view:?}");
    }

    fn any_steel_action() -> impl Strategy<Value = SteelAction> {
        let shape = proptest::sample::select(ShapeKind::ALL.to_vec());
        let medium = proptest::sample::select(vec!["water", "oil", "unknown_oil", "air", "mud"]);
        prop_oneof![
            "45|C45|[A-Z0-9]{0,5}".prop_map(SteelAction::Pick),
            ".{0,12}".prop_map(SteelAction::Name),
            any::<bool>().prop_map(SteelAction::ByComposition),
            Just(SteelAction::Keep),
            (0..3_usize).prop_map(SteelAction::Take),
            (0..3_usize).prop_map(SteelAction::Forget),
            shape.prop_map(SteelAction::Shape),
            medium.prop_map(SteelAction::Medium),
            proptest::sample::select(vec!["still", "violent", "?"]).prop_map(SteelAction::Movement),
            proptest::sample::select(vec!["open", "foil", "?"]).prop_map(SteelAction::Protection),
            "5[0-9]-6[0-9] HRC".prop_map(SteelAction::Want),
            Just(SteelAction::AddCheck),
            any::<usize>().prop_map(SteelAction::RemoveCheck),
        ]
    }

    fn any_timer_action() -> impl Strategy<Value = TimerAction> {
        prop_oneof![
            proptest::sample::select(vec![TimerKind::Temper, TimerKind::Other])
                .prop_map(TimerAction::Kind),
            (any::<i64>(), any::<i64>())
                .prop_map(|(now_ms, length_ms)| TimerAction::Start { now_ms, length_ms }),
            (0..5_usize, any::<i64>(), any::<i64>())
                .prop_map(|(index, now_ms, by_ms)| TimerAction::Add { index, now_ms, by_ms }),
            (0..5_usize).prop_map(TimerAction::Stop),
            (0..5_usize).prop_map(TimerAction::Quiet),
            Just(TimerAction::PutBack),
            any::<i64>().prop_map(TimerAction::Tick),
        ]
    }

    fn any_claim_action() -> impl Strategy<Value = ClaimAction> {
        prop_oneof![
            proptest::sample::select(vec!["", "comparison", "?"]).prop_map(ClaimAction::Instrument),
            any::<bool>().prop_map(ClaimAction::Files),
            proptest::sample::select(vec!["", "simple", "own"]).prop_map(ClaimAction::Rule),
            proptest::sample::select(vec!["skin", "core"]).prop_map(ClaimAction::Place),
            proptest::sample::select(vec!["skin", "?"]).prop_map(ClaimAction::ClaimedPlace),
            Just(ClaimAction::AddReading),
            (0..3_usize).prop_map(ClaimAction::TakeReading),
            Just(ClaimAction::Turn),
        ]
    }

    fn any_action() -> impl Strategy<Value = Action> {
        let own = SteelField::ALL.map(Field::Steel);
        let timer = TimerField::ALL.map(Field::Timer);
        let bar = UnknownField::ALL.map(Field::Unknown);
        let claim = ClaimField::ALL.map(Field::Claim);
        let field = proptest::sample::select(
            [&Field::ALL[..], &own[..], &timer[..], &bar[..], &claim[..]].concat(),
        );
        prop_oneof![
            any_timer_action().prop_map(Action::from),
            any_claim_action().prop_map(Action::from),
            "(28-32|58|1000) (HRC|HBW|MPa min)"
                .prop_map(|text| Action::Edit(Field::Claim(ClaimField::Says), text)),
            "[2-6][0-9]{1,2} (HRC|HBW|HV10)( ±[0-9])?"
                .prop_map(|text| Action::Edit(Field::Claim(ClaimField::Measured), text)),
            any_steel_action().prop_map(Action::Steel),
            (
                proptest::sample::select(vec![40.0, 55.0, 65.0, 99.0]),
                proptest::sample::select(vec!["bites", "slight", "skates"])
            )
                .prop_map(|(grade, outcome)| Action::Stroke { grade, outcome }),
            (
                proptest::sample::select(UnknownField::ALL.to_vec()),
                proptest::sample::select(vec![
                    "none",
                    "forks",
                    "bites",
                    "<40 HRC",
                    "50-55 HRC",
                    "?"
                ])
            )
                .prop_map(|(field, answer)| Action::Saw(field, answer)),
            Just(Action::TurnBar),
            Just(Action::Undo),
            Just(Action::StartAgain),
            any::<u8>().prop_map(Action::PickSpot),
            (field.clone(), ".{0,12}").prop_map(|(f, text)| Action::Edit(f, text)),
            field.clone().prop_map(|f| Action::Pad(f, PadKey::Type("5"))),
            field.clone().prop_map(|f| Action::Pad(f, PadKey::Erase)),
            field.prop_map(Action::Leave),
            Just(Action::Prove("skates")),
            any::<usize>().prop_map(Action::RemoveProof),
            any::<bool>().prop_map(Action::SetPrior),
            proptest::sample::select(crate::answer::INSTRUMENTS.map(|(key, _)| key).to_vec())
                .prop_map(Action::SetInstrument),
            "5[0-9] (HRC|HBW|HV10)?".prop_map(|text| Action::Edit(Field::Reading, text)),
            "45|4140|O1|1045".prop_map(|name| Action::Edit(Field::Steel(SteelField::Query), name)),
            "C=0,4 Mn=0,[1-9]".prop_map(|own| Action::Edit(Field::Steel(SteelField::Own), own)),
            "[1-9]{1,2} (mm|C|L)".prop_flat_map(|text| {
                proptest::sample::select(SteelField::ALL.to_vec())
                    .prop_map(move |field| Action::Edit(Field::Steel(field), text.clone()))
            }),
            Just(Action::AddReading),
            any::<usize>().prop_map(Action::RemoveReading),
        ]
    }

    proptest! {
        #[test]
        fn any_row_of_actions_leaves_a_state_that_can_be_stored_and_shown(
            actions in proptest::collection::vec(any_action(), 0..40)
        ) {
            let app = after(&actions);
            let stored = serde_json::to_string(&crate::state::document(&app.saved)).unwrap();
            let read_back = crate::state::read(&crate::state::JsonText(&stored));
            prop_assert_eq!(read_back.unwrap(), app.saved.clone());
            prop_assert!((1..=SPOTS).contains(&app.saved.file_test.now.spot));
            let _ = crate::view::file_test(&app, crate::words::Language::English);
            let _ = crate::view::convert(&app, crate::words::Language::English);
            let _ = crate::view::steel_page(&app, crate::words::Language::English);
            for now_ms in [0, app.session.now_ms, i64::MAX] {
                let clock = crate::view::Clock { now_ms, east_min: 60 };
                let device = crate::view::Device::default();
                let _ = crate::view::timer(&app, crate::words::Language::English, clock, device);
                let _ = crate::view::timer_watch(&app, crate::words::Language::English, now_ms);
            }
            let _ = crate::view::unknown(&app, crate::words::Language::English);
            let _ = crate::view::claim_page(&app, crate::words::Language::English);
        }
    }
}
