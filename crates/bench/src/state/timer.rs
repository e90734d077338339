//! What the page of timers remembers. The core has no clock: every action that needs the time brings it along, in
//! milliseconds of the device's clock.

use serde::{Deserialize, Serialize};

use super::{Action, App, Page};

/// How many timers there may be; more than there are ovens and baths in a small shop.
pub const MOST_TIMERS: usize = 4;

/// What is waited for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TimerKind {
    /// Held at hardening heat.
    #[default]
    Soak,
    /// Tempered.
    Temper,
    /// Left to cool.
    Cool,
    /// Anything else.
    Other,
}

impl TimerKind {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Soak, Self::Temper, Self::Cool, Self::Other];

    const fn key(self) -> &'static str {
        match self {
            Self::Soak => "soak",
            Self::Temper => "temper",
            Self::Cool => "cool",
            Self::Other => "other",
        }
    }

    fn find(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.key() == key)
    }
}

/// A field of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TimerField {
    /// What is in the oven.
    Label,
    /// How long.
    Length,
}

impl TimerField {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::Label, Self::Length];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Label => "timer-label",
            Self::Length => "timer-length",
        }
    }
}

/// One timer. It counts by its end, so that a page that slept, was closed or was loaded again knows it all the same.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Timer {
    /// What is in the oven, as typed.
    pub label: String,
    /// What is waited for.
    pub kind: TimerKind,
    /// When it was started.
    pub start_ms: i64,
    /// When it is to ring.
    pub end_ms: i64,
    /// When the page noticed that it had ended: later than the end when the page slept.
    pub rang_ms: Option<i64>,
    /// Whether the ringing was quieted.
    pub quiet: bool,
}

/// All timers.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Timers {
    /// Oldest first.
    pub all: Vec<Timer>,
    /// The one that was taken away last, so that a slip costs nothing.
    pub taken: Option<Timer>,
    /// What the next one is for.
    pub kind: TimerKind,
}

/// The page as it is stored. The timers are a text, which their part reads and writes: a stored field is read by the
/// first module, and weighs there.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct TimerState {
    /// A line for each timer; behind the last line's end the kind of the next one, and the one that was taken away.
    written: String,
    /// What is in the oven, as typed.
    pub label: String,
    /// How long, as typed.
    pub length: String,
}

/// Something that happened; moments are the device's clock in milliseconds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TimerAction {
    /// What the next one is for.
    Kind(TimerKind),
    /// Fills the fields for a timer that another page proposes, and opens the page; starting it is the person's.
    Prepare {
        /// What is waited for.
        kind: TimerKind,
        /// What is in the oven.
        label: String,
        /// How long, as it would be typed, with its unit.
        length: String,
    },
    /// Starts one of this length.
    Start {
        /// Now.
        now_ms: i64,
        /// How long.
        length_ms: i64,
    },
    /// Lets one run on; one that has ended runs on from now.
    Add {
        /// Which.
        index: usize,
        /// Now.
        now_ms: i64,
        /// How much longer.
        by_ms: i64,
    },
    /// Takes one away, running or not.
    Stop(usize),
    /// Puts back the one that was taken away last.
    PutBack,
    /// Ends the ringing.
    Quiet(usize),
    /// The time is now this: whatever has ended rings.
    Tick(i64),
}

/// A change of the timers. It brings along what does it, so that only the parts that make one hold the code.
#[derive(Clone, Debug)]
pub struct TimerChange {
    action: TimerAction,
    does: fn(&mut App, TimerAction),
}

impl PartialEq for TimerChange {
    fn eq(&self, other: &Self) -> bool {
        self.action == other.action
    }
}

impl TimerChange {
    pub(super) fn apply(self, app: &mut App) {
        (self.does)(app, self.action);
    }
}

impl From<TimerAction> for Action {
    fn from(action: TimerAction) -> Self {
        Self::Timer(TimerChange { action, does: change })
    }
}

fn change(app: &mut App, action: TimerAction) {
    match action {
        // So that the page is drawn anew.
        TimerAction::Tick(now_ms) => app.session.now_ms = now_ms,
        TimerAction::Prepare { .. } => app.saved.page = Page::Timer,
        _ => {}
    }
    app.saved.timer.act(action);
}

impl TimerState {
    /// Whether there is any timer.
    #[must_use]
    pub fn any(&self) -> bool {
        self.written.contains('\n')
    }

    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: TimerField) -> &str {
        match field {
            TimerField::Label => &self.label,
            TimerField::Length => &self.length,
        }
    }

    pub(crate) fn edit(&mut self, field: TimerField, text: String) {
        match field {
            TimerField::Label => self.label = text,
            TimerField::Length => self.length = text,
        }
    }

    /// The timers. A line that is none is passed over.
    #[must_use]
    pub fn timers(&self) -> Timers {
        let (lines, last) = self.written.rsplit_once('\n').unwrap_or(("", &self.written));
        let (kind, taken) = last.split_once(' ').unwrap_or((last, ""));
        Timers {
            all: lines.lines().filter_map(Timer::read).collect(),
            taken: Timer::read(taken),
            kind: TimerKind::find(kind).unwrap_or_default(),
        }
    }

    fn write(&mut self, timers: &Timers) {
        let mut written = String::new();
        for timer in &timers.all {
            timer.write(&mut written);
            written.push('\n');
        }
        written.push_str(timers.kind.key());
        if let Some(taken) = &timers.taken {
            written.push(' ');
            taken.write(&mut written);
        }
        self.written = written;
    }

    fn act(&mut self, action: TimerAction) {
        let mut timers = self.timers();
        match action {
            TimerAction::Kind(kind) => timers.kind = kind,
            TimerAction::Prepare { kind, label, length } => {
                (timers.kind, self.label, self.length) = (kind, label, length);
            }
            TimerAction::Start { now_ms, length_ms } => {
                // What has rung and was heard makes room.
                timers.all.retain(|timer| !timer.quiet);
                if timers.all.len() < MOST_TIMERS {
                    timers.all.push(Timer {
                        label: std::mem::take(&mut self.label),
                        kind: timers.kind,
                        start_ms: now_ms,
                        end_ms: now_ms.saturating_add(length_ms),
                        ..Timer::default()
                    });
                    self.length.clear();
                }
            }
            TimerAction::Add { index, now_ms, by_ms } => {
                if let Some(timer) = timers.all.get_mut(index) {
                    let from = timer.rang_ms.map_or(timer.end_ms, |_| now_ms);
                    timer.end_ms = from.saturating_add(by_ms);
                    (timer.rang_ms, timer.quiet) = (None, false);
                }
            }
            TimerAction::Stop(index) => {
                if index < timers.all.len() {
                    timers.taken = Some(timers.all.remove(index));
                }
            }
            TimerAction::PutBack => {
                if timers.all.len() < MOST_TIMERS {
                    timers.all.extend(timers.taken.take());
                }
            }
            TimerAction::Quiet(index) => {
                if let Some(timer) = timers.all.get_mut(index) {
                    timer.quiet = timer.rang_ms.is_some();
                }
            }
            TimerAction::Tick(now_ms) => {
                for timer in &mut timers.all {
                    if timer.rang_ms.is_none() && timer.end_ms <= now_ms {
                        timer.rang_ms = Some(now_ms);
                    }
                }
            }
        }
        self.write(&timers);
    }
}

/// What stands where a timer has not rung.
const NEVER: &str = "-";

impl Timer {
    /// `soak 1772460000000 1772462100000 - loud pawl`: kind, start, end, when it rang, whether it was quieted, label.
    fn read(line: &str) -> Option<Self> {
        let mut words = line.splitn(6, ' ');
        let mut word = || words.next();
        Some(Self {
            kind: TimerKind::find(word()?)?,
            start_ms: word()?.parse().ok()?,
            end_ms: word()?.parse().ok()?,
            rang_ms: match word()? {
                NEVER => None,
                moment => Some(moment.parse().ok()?),
            },
            quiet: word()? == "quiet",
            label: word().unwrap_or_default().to_owned(),
        })
    }

    fn write(&self, written: &mut String) {
        let rang = self.rang_ms.map_or(NEVER.to_owned(), |moment| moment.to_string());
        let heard = if self.quiet { "quiet" } else { "loud" };
        // A label is one line.
        let label = self.label.replace(['\n', '\r'], " ");
        let (kind, start, end) = (self.kind.key(), self.start_ms, self.end_ms);
        for part in [kind, " ", &start.to_string(), " ", &end.to_string(), " ", &rang, " ", heard] {
            written.push_str(part);
        }
        written.push(' ');
        written.push_str(&label);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MINUTE: i64 = 60_000;
    /// 2026-03-02 14:00 UTC.
    const NOON: i64 = 1_772_460_000_000;

    fn after(actions: &[TimerAction]) -> TimerState {
        let mut state = TimerState::default();
        for action in actions {
            state.act(action.clone());
        }
        state
    }

    fn start(minutes: i64) -> TimerAction {
        TimerAction::Start { now_ms: NOON, length_ms: minutes * MINUTE }
    }

    #[test]
    fn a_timer_rings_at_its_end_and_not_before() {
        let end = NOON + 35 * MINUTE;
        let early = after(&[start(35), TimerAction::Tick(end - 1)]);
        assert_eq!((early.timers().all[0].end_ms, early.timers().all[0].rang_ms), (end, None));
        let due = after(&[start(35), TimerAction::Tick(end)]);
        assert_eq!(due.timers().all[0].rang_ms, Some(end));
        // The moment at which it rang stays, whatever the clock says later.
        let later = after(&[start(35), TimerAction::Tick(end), TimerAction::Tick(end + MINUTE)]);
        assert_eq!(later, due);
    }

    #[test]
    fn a_page_that_slept_knows_when_it_noticed() {
        let woke = NOON + 50 * MINUTE;
        let state = after(&[start(35), TimerAction::Tick(woke)]);
        assert_eq!(state.timers().all[0].rang_ms, Some(woke));
        assert_eq!(state.timers().all[0].end_ms, NOON + 35 * MINUTE);
    }

    #[test]
    fn more_time_counts_from_the_end_of_a_running_one_and_from_now_after_it_rang() {
        let add = |now_ms| TimerAction::Add { index: 0, now_ms, by_ms: 5 * MINUTE };
        let running = after(&[start(35), add(NOON + MINUTE)]);
        assert_eq!(running.timers().all[0].end_ms, NOON + 40 * MINUTE);
        let now = NOON + 50 * MINUTE;
        let rang = after(&[start(35), TimerAction::Tick(now), TimerAction::Quiet(0), add(now)]);
        assert_eq!(rang.timers().all[0].end_ms, now + 5 * MINUTE);
        assert_eq!((rang.timers().all[0].rang_ms, rang.timers().all[0].quiet), (None, false));
        assert_eq!(rang.timers().all[0].start_ms, NOON);
    }

    #[test]
    fn at_most_four_run_and_those_that_were_heard_make_room() {
        let five = after(&[start(1), start(2), start(3), start(4), start(5)]);
        assert_eq!(five.timers().all.len(), MOST_TIMERS);
        let mut state = five;
        state.act(TimerAction::Tick(NOON + MINUTE));
        state.act(TimerAction::Quiet(0));
        state.act(start(9));
        let ends: Vec<i64> =
            state.timers().all.iter().map(|t| (t.end_ms - NOON) / MINUTE).collect();
        assert_eq!(ends, [2, 3, 4, 9]);
    }

    #[test]
    fn only_what_rings_can_be_quieted() {
        assert!(!after(&[start(35), TimerAction::Quiet(0)]).timers().all[0].quiet);
        let end = NOON + 35 * MINUTE;
        assert!(
            after(&[start(35), TimerAction::Tick(end), TimerAction::Quiet(0)]).timers().all[0]
                .quiet
        );
    }

    #[test]
    fn one_that_was_taken_away_by_a_slip_goes_on_as_if_nothing_had_been() {
        let before = after(&[start(35)]);
        let back = after(&[start(35), TimerAction::Stop(0), TimerAction::PutBack]);
        assert_eq!(back, before);
        // A place that is not there changes nothing.
        let nowhere = after(&[start(35), TimerAction::Stop(3), TimerAction::Quiet(3)]);
        assert_eq!(nowhere, before);
    }

    #[test]
    fn what_was_typed_goes_into_the_timer_and_stays_where_none_can_be_started() {
        let mut state = after(&[start(1), start(1), start(1)]);
        state.act(TimerAction::Prepare {
            kind: TimerKind::Temper,
            label: "pawl".into(),
            length: "2 h".into(),
        });
        state.act(start(120));
        assert_eq!(
            (state.timers().all[3].label.as_str(), state.timers().all[3].kind),
            ("pawl", TimerKind::Temper)
        );
        assert_eq!((state.label.as_str(), state.length.as_str()), ("", ""));
        state.edit(TimerField::Label, "drift".into());
        state.edit(TimerField::Length, "30 min".into());
        state.act(start(30));
        assert_eq!((state.label.as_str(), state.length.as_str()), ("drift", "30 min"));
    }

    #[test]
    fn the_stored_form_needs_no_field_and_what_is_no_timer_is_passed_over() {
        let old: TimerState = serde_json::from_str("{}").unwrap();
        assert_eq!(old, TimerState::default());
        assert!(!old.any() && old.timers() == Timers::default());
        let odd = r#"{"written":"soak 1 2 - loud pawl\ntea 1 2\n\ntemper 1\ncool"}"#;
        let odd: TimerState = serde_json::from_str(odd).unwrap();
        let pawl = Timer { label: "pawl".into(), start_ms: 1, end_ms: 2, ..Timer::default() };
        assert_eq!(odd.timers(), Timers { all: vec![pawl], taken: None, kind: TimerKind::Cool });
    }

    #[test]
    fn a_kind_alone_and_what_was_taken_away_are_no_timer() {
        let state = after(&[TimerAction::Kind(TimerKind::Cool)]);
        assert!(!state.any() && state.timers().kind == TimerKind::Cool);
        let stopped = after(&[start(35), TimerAction::Stop(0)]);
        assert!(!stopped.any() && stopped.timers().taken.is_some());
    }

    proptest::proptest! {
        #[test]
        fn what_is_written_is_read_back(
            label in "[^\n\r]{0,12}", start_ms: i64, end_ms: i64, rang_ms: Option<i64>, quiet: bool,
            kind in proptest::sample::select(TimerKind::ALL.to_vec())
        ) {
            let timer = Timer { label, kind, start_ms, end_ms, rang_ms, quiet };
            let timers = Timers { all: vec![timer.clone(), timer.clone()], taken: Some(timer), kind };
            let mut state = TimerState::default();
            state.write(&timers);
            proptest::prop_assert_eq!(state.timers(), timers);
        }
    }
}
