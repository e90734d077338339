//! The page of timers, from what was pressed to what is shown. Expected texts are worked out on the clock by hand.

use biteband_bench::measure::parse_time;
use biteband_bench::state::{
    Action, App, Field, MOST_TIMERS, Page, SteelField, TimerAction, TimerField, TimerKind,
    document, reduce,
};
use biteband_bench::view::{
    Clock, Device, Doing, RING, Sound, TimerView, TimerWatch, steel_page, timer, timer_watch,
};
use biteband_bench::words::Language;

const SECOND: i64 = 1_000;
const MINUTE: i64 = 60 * SECOND;
/// 2026-03-02 14:00 UTC: `date -u -d 2026-03-02T14:00 +%s` is 1772460000.
const TWO: i64 = 1_772_460_000 * SECOND;

fn after(actions: &[Action]) -> App {
    actions.iter().fold(App::default(), |app, action| reduce(&app, action.clone()))
}

fn act(action: TimerAction) -> Action {
    action.into()
}

fn typed(field: TimerField, text: &str) -> Action {
    Action::Edit(Field::Timer(field), text.to_owned())
}

fn start(minutes: i64) -> Action {
    act(TimerAction::Start { now_ms: TWO, length_ms: minutes * MINUTE })
}

fn tick(now_ms: i64) -> Action {
    act(TimerAction::Tick(now_ms))
}

fn shown(actions: &[Action], now_ms: i64) -> TimerView {
    timer(&after(actions), Language::English, Clock { now_ms, east_min: 60 }, Device::default())
}

fn watched(actions: &[Action], now_ms: i64) -> TimerWatch {
    timer_watch(&after(actions), Language::English, now_ms)
}

#[test]
fn a_running_one_shows_what_is_left_and_when_it_rings_by_the_clock_on_the_wall() {
    let pawl = [typed(TimerField::Label, "pawl"), start(35)];
    let view = shown(&pawl, TWO + MINUTE + 20 * SECOND);
    let row = &view.rows[0];
    // 14:00 UTC is 15:00 an hour further east.
    assert_eq!((row.name.as_str(), row.figure.as_str()), ("Soak: pawl", "33:40"));
    assert_eq!((row.say.as_str(), row.doing), ("Rings at 15:35.", Doing::Runs));
    assert!(row.notes.is_empty() && view.alerts.is_empty() && view.hint.is_none(), "{view:?}");
    // A second that has begun still counts: never less than what is left.
    assert_eq!(shown(&pawl, TWO + 35 * MINUTE - 1).rows[0].figure, "0:01");
    assert_eq!(shown(&[start(150)], TWO).rows[0].figure, "2:30:00");
    assert_eq!(shown(&[start(9 * 60 + 30)], TWO).rows[0].say, "Rings tomorrow at 0:30.");
}

#[test]
fn one_that_rang_says_so_and_counts_on() {
    let end = TWO + 35 * MINUTE;
    let rang = [start(35), tick(end)];
    let view = shown(&rang, end + 3 * MINUTE + 5 * SECOND);
    assert_eq!(view.alerts, ["Soak: time is up."]);
    let row = &view.rows[0];
    assert_eq!((row.figure.as_str(), row.doing), ("+3:05", Doing::Rings));
    assert_eq!(row.say, "Time was up at 15:35.");
    assert!(row.notes.is_empty(), "{row:?}");
    let quiet = shown(&[start(35), tick(end), act(TimerAction::Quiet(0))], end + MINUTE);
    assert_eq!((quiet.rows[0].doing, quiet.alerts.len()), (Doing::Over, 0));
}

#[test]
fn one_that_slept_says_how_late_it_rang() {
    let end = TWO + 35 * MINUTE;
    let late = |woke: i64| shown(&[start(35), tick(woke)], woke).rows[0].notes.join(" ");
    assert!(late(end + 11 * MINUTE + 30 * SECOND).starts_with("It rang 11 min late"));
    assert!(late(end + 65 * MINUTE).starts_with("It rang 1 h 5 min late"));
    // A page in the background looks at the clock once a minute: that is not sleep.
    assert_eq!(late(end + MINUTE), "");
}

#[test]
fn a_clock_that_was_set_back_is_noticed() {
    let view = shown(&[start(35)], TWO - SECOND);
    assert!(view.rows[0].notes[0].contains("set back"), "{view:?}");
    assert_eq!(view.rows[0].figure, "35:01");
    assert!(shown(&[start(35)], TWO).rows[0].notes.is_empty());
}

#[test]
fn a_typed_length_needs_its_unit_and_says_so_when_the_field_was_left() {
    for (text, minutes) in [("45 min", 45), ("2 h", 120), ("1 h 30", 90), ("1,5 h", 90)] {
        let view = shown(&[typed(TimerField::Length, text)], TWO);
        assert_eq!((view.typed_ms, view.problem), (Some(minutes * MINUTE), None), "{text}");
    }
    let bare = [Action::Enter(Field::Timer(TimerField::Length)), typed(TimerField::Length, "45")];
    assert_eq!((shown(&bare, TWO).typed_ms, shown(&bare, TWO).problem), (None, None));
    let left = [typed(TimerField::Length, "45")];
    let problem = shown(&left, TWO).problem.unwrap();
    assert!(problem.message.contains("45") && problem.instead.contains("min"), "{problem:?}");
    assert_eq!(shown(&[], TWO).problem, None);
}

#[test]
fn the_top_bar_tells_the_soonest_in_whole_minutes() {
    let watch = watched(&[start(60), start(35)], TWO + 30 * SECOND);
    assert_eq!(watch.chip.as_deref(), Some("35 min (+1)"));
    assert_eq!(watch.label, "Soak, 35 min left");
    assert_eq!(watched(&[start(90)], TWO).chip.as_deref(), Some("1 h 30 min"));
    let last = watched(&[start(1)], TWO + SECOND);
    assert_eq!(last.chip.as_deref(), Some("under 1 min"));
    // It changes at the whole second, and at the whole minute.
    assert_eq!(watched(&[start(35)], TWO + 30_250).next_ms, Some((750, 29_750)));
    assert_eq!(watched(&[start(35)], TWO).next_ms, Some((1_000, 60_000)));
    // One that has just ended is told at once.
    assert_eq!(watched(&[start(35)], TWO + 35 * MINUTE).next_ms, Some((0, 0)));
    assert_eq!(watched(&[], TWO), TimerWatch::default());
}

#[test]
fn the_alarm_is_known_ahead_sounds_two_minutes_and_ends_when_quieted() {
    let end = TWO + 35 * MINUTE;
    let ahead = watched(&[start(60), start(35)], TWO).alarm.unwrap();
    assert_eq!((ahead.from_ms, ahead.until_ms, ahead.of_ms), (end, end + 2 * MINUTE, end));
    let woke = end + 11 * MINUTE;
    let rang = [start(35), tick(woke)];
    let sounding = watched(&rang, woke + MINUTE);
    assert_eq!(sounding.alarm.map(|alarm| alarm.from_ms), Some(woke));
    assert!(sounding.awake && sounding.rings.len() == 1);
    // After two minutes it is silent and still there.
    let silent = watched(&rang, woke + RING.for_ms);
    assert_eq!((silent.alarm, silent.awake, silent.rings.len()), (None, false, 1));
    assert_eq!(silent.title.as_deref(), Some("Soak: time is up."));
    let quiet = watched(&[start(35), tick(woke), act(TimerAction::Quiet(0))], woke + SECOND);
    assert_eq!((quiet.alarm, quiet.rings.len(), quiet.title), (None, 0, None));
    // The next one waits behind it.
    let next = [start(35), start(60), tick(end), act(TimerAction::Quiet(0))];
    assert_eq!(watched(&next, end).alarm.map(|alarm| alarm.from_ms), Some(TWO + 60 * MINUTE));
}

#[test]
fn a_bar_of_the_ring_has_a_rest_and_every_beep_its_length() {
    let mut end = 0;
    for (from, until) in RING.beeps_ms {
        assert!(end <= from && from < until);
        end = until;
    }
    assert!(end < RING.bar_ms && RING.for_ms % RING.bar_ms == 0);
    // Two bars of 1.5 s: the second begins where the first ends.
    let turns: Vec<(bool, i64)> = RING.turns(2 * RING.bar_ms).collect();
    assert_eq!(turns.len(), 12);
    assert_eq!((turns[0], turns[6]), ((true, 0), (true, RING.bar_ms)));
    assert_eq!(RING.beats().sum::<u32>(), RING.buzz_for_ms);
    // Chromium takes no more than 99 lengths (its source, `kVibrationPatternLengthMax`; from memory).
    assert!(RING.beats().count() <= 99);
}

#[test]
fn four_are_all_there_can_be_until_one_was_heard() {
    let four: Vec<Action> = (1..=4).map(start).collect();
    assert_eq!(shown(&four, TWO).rows.len(), MOST_TIMERS);
    assert!(shown(&four, TWO).full.is_some());
    let heard = [tick(TWO + MINUTE), act(TimerAction::Quiet(0))];
    assert_eq!(shown(&[four, heard.to_vec()].concat(), TWO + MINUTE).full, None);
}

#[test]
fn one_that_was_taken_away_is_offered_again() {
    let view = shown(&[start(35), act(TimerAction::Stop(0))], TWO);
    assert_eq!(view.put_back.as_deref(), Some("Put back: Soak"));
    assert!(view.hint.is_some());
}

#[test]
fn what_the_device_does_and_does_not_is_said() {
    let said = |device| {
        let app = App::default();
        timer(&app, Language::English, Clock::default(), device).notes.join(" ")
    };
    let poor = said(Device { screen: Some(false), sound: Sound::Missing, ..Device::default() });
    for part in ["does not keep the screen on", "makes no sound", "cannot vibrate", "second clock"]
    {
        assert!(poor.contains(part), "{part}: {poor}");
    }
    let good = Device { screen: Some(true), sound: Sound::Ready, buzzes: true, can_ask: true };
    let good = said(good);
    assert!(good.contains("stays on") && !good.contains("cannot vibrate"), "{good}");
    assert!(good.contains("may ring late"), "{good}");
}

#[test]
fn the_hold_of_a_recipe_is_handed_on_and_can_be_read_back() {
    let steel = |field, text: &str| Action::Edit(Field::Steel(field), text.to_owned());
    let pawl = after(&[
        steel(SteelField::Query, "4140"),
        steel(SteelField::Size, "50 mm"),
        steel(SteelField::Length, "80 mm"),
    ]);
    let hold = steel_page(&pawl, Language::English).heat.unwrap().hold.unwrap();
    assert!(parse_time(&hold).is_ok(), "{hold}");
    let prepare =
        TimerAction::Prepare { kind: TimerKind::Soak, label: "4140".into(), length: hold };
    let app = reduce(&pawl, act(prepare));
    assert_eq!((app.saved.page, app.saved.timer.timers().all.len()), (Page::Timer, 0));
    let view = timer(&app, Language::English, Clock::default(), Device::default());
    assert!(view.typed_ms.is_some());
}

#[test]
fn timers_are_stored_with_the_rest() {
    let app = after(&[typed(TimerField::Label, "drift"), start(35)]);
    let text = serde_json::to_string(&document(&app.saved)).unwrap();
    // 1772460000 s and 35 min of 60 s.
    let line = r#""written":"soak 1772460000000 1772462100000 - loud drift\nsoak""#;
    assert!(text.contains(line), "{text}");
}
