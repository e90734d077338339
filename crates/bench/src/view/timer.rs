//! The page of timers, and what a running one needs on every other page.
//!
//! The page counts by the device's clock, which is handed in: a phone that slept tells the right time on waking.

use super::{Chip, Problem};
use crate::measure::{Kind, parse_time, read};
use crate::state::{App, Field, MOST_TIMERS, Timer, TimerField, TimerKind, Timers};
use crate::words::{Language, TimerPage, TimerSays};

const SECOND: i64 = 1_000;
const MINUTE: i64 = 60 * SECOND;
const DAY: i64 = 24 * 60 * MINUTE;

/// A browser lets a page in the background look at the clock once a minute, so up to that nothing slept.
const LATE: i64 = MINUTE;

/// Lengths that a key starts, in minutes.
const KEYS: [i64; 5] = [5, 15, 30, 60, 120];
/// What a running timer can be lengthened by, in minutes.
const MORE: [i64; 2] = [5, 15];

/// How a timer rings, until it is quieted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ring {
    /// Pitch, Hz: small speakers are loud there, and old ears hear it still (common practice, no source).
    pub hertz: u32,
    /// When each beep of a bar begins and ends.
    pub beeps_ms: [(i64, i64); 3],
    /// Length of a bar.
    pub bar_ms: i64,
    /// How long it goes on.
    pub for_ms: i64,
    /// How long the device vibrates and rests.
    pub buzz_ms: [u32; 2],
    /// How long it does so at one go, which browsers bound.
    pub buzz_for_ms: u32,
}

impl Ring {
    /// When the sound goes on and off within a time that it is to last.
    pub fn turns(self, for_ms: i64) -> impl Iterator<Item = (bool, i64)> {
        let bars = 0..for_ms / self.bar_ms.max(1);
        bars.flat_map(move |bar| {
            let at = bar * self.bar_ms;
            self.beeps_ms
                .into_iter()
                .flat_map(move |(on, off)| [(true, at + on), (false, at + off)])
        })
    }

    /// One go of the vibration: lengths of on and off by turns.
    pub fn beats(self) -> impl Iterator<Item = u32> {
        let [on, off] = self.buzz_ms;
        (0..self.buzz_for_ms / (on + off).max(1)).flat_map(move |_| [on, off])
    }
}

/// The one ring there is.
pub const RING: Ring = Ring {
    hertz: 2_300,
    beeps_ms: [(0, 180), (280, 460), (560, 740)],
    bar_ms: 1_500,
    for_ms: 2 * MINUTE,
    buzz_ms: [700, 300],
    buzz_for_ms: 30_000,
};

/// The device's clock.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Clock {
    /// Milliseconds since the year 1970.
    pub now_ms: i64,
    /// By how many minutes the local time is ahead of universal time.
    pub east_min: i64,
}

/// Whether the device can be heard.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Sound {
    /// It will sound.
    Ready,
    /// Not before the page has been touched.
    #[default]
    Waits,
    /// Never.
    Missing,
}

/// What the browser does for a timer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Device {
    /// Whether it keeps the screen on; nothing where it was not asked yet.
    pub screen: Option<bool>,
    /// Whether it can be heard.
    pub sound: Sound,
    /// Whether it can vibrate.
    pub buzzes: bool,
    /// Whether the person may be asked about notifications.
    pub can_ask: bool,
}

/// What a timer is doing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// It runs.
    Runs,
    /// It has ended, and nobody has quieted it.
    Rings,
    /// It has ended and was quieted.
    Over,
}

/// One timer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TimerRow {
    /// When it was started, in milliseconds since 1970: a list knows it again by that when another one goes.
    pub start_ms: i64,
    /// What is in the oven.
    pub name: String,
    /// What is left, or how long ago the time was up, as on a clock.
    pub figure: String,
    /// When it rings or rang.
    pub say: String,
    /// What is to be known besides.
    pub notes: Vec<String>,
    /// What it is doing.
    pub doing: Doing,
    /// What it can be lengthened by: milliseconds and label.
    pub more: Vec<(i64, String)>,
}

/// Everything the page shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TimerView {
    /// What has just ended: said aloud by a screen reader.
    pub alerts: Vec<String>,
    /// The timers.
    pub rows: Vec<TimerRow>,
    /// What stands where there is none.
    pub hint: Option<String>,
    /// The one that can be put back.
    pub put_back: Option<String>,
    /// What the next one may be for.
    pub kinds: Vec<(TimerKind, Chip)>,
    /// Lengths to start at once: milliseconds and label.
    pub keys: Vec<(i64, String)>,
    /// The typed length in milliseconds, where it can be read.
    pub typed_ms: Option<i64>,
    /// What is wrong with it.
    pub problem: Option<Problem>,
    /// Why none can be started.
    pub full: Option<String>,
    /// What the device does and does not.
    pub notes: Vec<String>,
    /// Whether the question about notifications is offered.
    pub can_ask: bool,
}

/// When the alarm sounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Alarm {
    /// The end of the timer it belongs to, by which it is told from another.
    pub of_ms: i64,
    /// From when on.
    pub from_ms: i64,
    /// Until when.
    pub until_ms: i64,
}

/// What a timer needs while other things are on the screen.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TimerWatch {
    /// What the top bar says of those that run.
    pub chip: Option<String>,
    /// The same in full, for a screen reader.
    pub label: String,
    /// What the title of the window begins with.
    pub title: Option<String>,
    /// Those that have ended and were not quieted: place and sentence.
    pub rings: Vec<(usize, String)>,
    /// The next sound, or the one that is on.
    pub alarm: Option<Alarm>,
    /// Whether the screen is to stay on.
    pub awake: bool,
    /// In how many milliseconds what is shown changes; on the page of timers a second counts, elsewhere a minute.
    pub next_ms: Option<(i64, i64)>,
}

/// Makes the page.
#[must_use]
pub fn timer(app: &App, language: Language, clock: Clock, device: Device) -> TimerView {
    let state = &app.saved.timer;
    let Timers { all, taken, kind: chosen } = state.timers();
    let say = |phrase: TimerSays<'_>| language.timer(phrase);
    let rows: Vec<TimerRow> = all.iter().map(|one| row(language, one, clock)).collect();
    let kind = |kind| {
        let label = language.timer_page(TimerPage::Kind(kind)).to_owned();
        (kind, Chip { key: "", label, on: chosen == kind })
    };
    let heard = all.iter().filter(|timer| timer.quiet).count();
    let full = all.len().saturating_sub(heard) >= MOST_TIMERS;
    let typed = (!state.length.trim().is_empty())
        .then(|| read(language, Kind::Time, &state.length, parse_time));
    let typing = app.session.active == Some(Field::Timer(TimerField::Length));
    let (typed_ms, problem) = match typed {
        Some(Ok(time)) => (Some(milliseconds(time.get())), None),
        Some(Err(refusal)) if !typing => (None, Some(refusal.into())),
        _ => (None, None),
    };
    TimerView {
        alerts: timer_watch(app, language, clock.now_ms).rings.into_iter().map(|r| r.1).collect(),
        hint: rows.is_empty().then(|| language.timer_page(TimerPage::Empty).to_owned()),
        rows,
        put_back: taken
            .as_ref()
            .map(|taken| say(TimerSays::PutBack { name: &name(language, taken) })),
        kinds: TimerKind::ALL.map(kind).into(),
        keys: KEYS.map(|minutes| (minutes * MINUTE, spoken(language, minutes))).into(),
        typed_ms,
        problem,
        full: full.then(|| say(TimerSays::Full { most: MOST_TIMERS })),
        notes: notes(language, device, !all.is_empty()),
        can_ask: device.can_ask,
    }
}

/// What is needed while other things are on the screen.
#[must_use]
pub fn timer_watch(app: &App, language: Language, now_ms: i64) -> TimerWatch {
    let Timers { all: timers, .. } = app.saved.timer.timers();
    let running = || timers.iter().filter(|timer| timer.rang_ms.is_none());
    let ringing = || timers.iter().enumerate().filter(|(_, one)| doing(one) == Doing::Rings);
    let soonest = running().min_by_key(|timer| timer.end_ms);
    let rings = ringing().map(|(index, one)| {
        let text = language.timer(TimerSays::TimeIsUp { name: &name(language, one) });
        (index, text)
    });
    let mut watch = TimerWatch { rings: rings.collect(), ..TimerWatch::default() };
    let sounding = ringing().filter_map(|(_, one)| {
        let from_ms = one.rang_ms?;
        let until_ms = from_ms.saturating_add(RING.for_ms);
        let heard = now_ms < until_ms;
        heard.then_some(Alarm { of_ms: one.end_ms, from_ms, until_ms })
    });
    watch.alarm = sounding.min_by_key(|alarm| alarm.from_ms);
    if let Some(one) = soonest {
        let left_ms = one.end_ms.saturating_sub(now_ms).max(1);
        let left = left(language, left_ms);
        let name = name(language, one);
        let others = running().count().saturating_sub(1);
        watch.chip = Some(language.timer(TimerSays::Chip { left: &left, others }));
        watch.label = language.timer(TimerSays::Left { name: &name, left: &left });
        watch.title = Some(watch.label.clone());
        let end = one.end_ms;
        watch.alarm = watch.alarm.or(Some(Alarm {
            of_ms: end,
            from_ms: end,
            until_ms: end.saturating_add(RING.for_ms),
        }));
    }
    if let Some((_, text)) = watch.rings.first() {
        watch.title = Some(text.clone());
    }
    let sounds = watch.alarm.is_some_and(|alarm| alarm.from_ms <= now_ms);
    watch.awake = soonest.is_some() || sounds;
    watch.next_ms = next(&timers, soonest, now_ms);
    watch
}

/// When what is shown changes next: on the page of timers, and elsewhere.
fn next(timers: &[Timer], soonest: Option<&Timer>, now_ms: i64) -> Option<(i64, i64)> {
    let first = soonest.or(timers.first())?;
    if soonest.is_some_and(|timer| timer.end_ms <= now_ms) {
        // It ended since the clock was last told: it is to be told now.
        return Some((0, 0));
    }
    // Up to a whole second or minute of what is left.
    let until = |step: i64| {
        let left = first.end_ms.saturating_sub(now_ms);
        left.saturating_sub(1).rem_euclid(step) + 1
    };
    Some((until(SECOND), until(MINUTE)))
}

fn row(language: Language, timer: &Timer, clock: Clock) -> TimerRow {
    let say = |phrase: TimerSays<'_>| language.timer(phrase);
    let (time, days) = (time_of_day(timer.end_ms, clock), days(timer.end_ms, clock));
    let left = timer.end_ms.saturating_sub(clock.now_ms);
    let doing = doing(timer);
    let (figure, text) = if doing == Doing::Runs {
        (figure(whole(left.max(0), SECOND)), TimerSays::RingsAt { time: &time, days })
    } else {
        let over = left.saturating_neg().max(0) / SECOND;
        (format!("+{}", figure(over)), TimerSays::WasUpAt { time: &time, days })
    };
    let mut notes = Vec::new();
    if clock.now_ms < timer.start_ms {
        notes.push(language.timer_page(TimerPage::ClockSetBack).to_owned());
    }
    let late = timer.rang_ms.map_or(0, |rang| rang.saturating_sub(timer.end_ms));
    if late > LATE {
        let late = spoken(language, late / MINUTE);
        notes.push(say(TimerSays::RangLate { late: &late }));
    }
    let more = MORE.map(|minutes| {
        let time = spoken(language, minutes);
        (minutes * MINUTE, say(TimerSays::More { time: &time }))
    });
    TimerRow {
        start_ms: timer.start_ms,
        name: name(language, timer),
        figure,
        say: say(text),
        notes,
        doing,
        more: more.into(),
    }
}

const fn doing(timer: &Timer) -> Doing {
    match (timer.rang_ms, timer.quiet) {
        (None, _) => Doing::Runs,
        (Some(_), false) => Doing::Rings,
        (Some(_), true) => Doing::Over,
    }
}

fn name(language: Language, timer: &Timer) -> String {
    let label = timer.label.trim();
    language.timer(TimerSays::Name { kind: timer.kind, label })
}

/// How many steps begin within a time: what is left is never shown as less than it is.
const fn whole(ms: i64, step: i64) -> i64 {
    ms / step + (ms % step > 0) as i64
}

/// Seconds as on a clock: `4:05`, `1:02:30`.
fn figure(seconds: i64) -> String {
    let (hours, minutes, seconds) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    if hours == 0 {
        format!("{minutes}:{seconds:02}")
    } else {
        format!("{hours}:{minutes:02}:{seconds:02}")
    }
}

/// Minutes in words: `42 min`, `1 h 5 min`.
fn spoken(language: Language, minutes: i64) -> String {
    let (hours, minutes) = (minutes / 60, minutes % 60);
    language.timer(TimerSays::Minutes { hours, minutes })
}

fn left(language: Language, left_ms: i64) -> String {
    if left_ms < MINUTE {
        return language.timer_page(TimerPage::UnderAMinute).to_owned();
    }
    spoken(language, whole(left_ms, MINUTE))
}

const fn local(ms: i64, clock: Clock) -> i64 {
    ms.saturating_add(clock.east_min.saturating_mul(MINUTE))
}

fn time_of_day(ms: i64, clock: Clock) -> String {
    let minute = local(ms, clock).rem_euclid(DAY) / MINUTE;
    format!("{}:{:02}", minute / 60, minute % 60)
}

/// How many midnights lie between now and then.
const fn days(ms: i64, clock: Clock) -> i64 {
    local(ms, clock).div_euclid(DAY) - local(clock.now_ms, clock).div_euclid(DAY)
}

#[expect(clippy::cast_possible_truncation, reason = "a time is bounded far below what is exact")]
fn milliseconds(minutes: f64) -> i64 {
    (minutes * 60_000.0).round() as i64
}

fn notes(language: Language, device: Device, waited_for: bool) -> Vec<String> {
    use TimerPage as T;
    let screen = device.screen.map(|kept| if kept { T::ScreenKept } else { T::ScreenNotKept });
    let sound = match device.sound {
        // The press that starts a timer lets the page sound.
        Sound::Waits if waited_for => T::SoundWaits,
        Sound::Ready | Sound::Waits => T::Silent,
        Sound::Missing => T::NoSound,
    };
    let buzz = (!device.buzzes).then_some(T::NoBuzz);
    let all = [Some(T::KeepInFront), screen, Some(sound), buzz, Some(T::Closed)];
    let all = all.into_iter().flatten().chain([T::SecondClock]);
    all.map(|label| language.timer_page(label).to_owned()).collect()
}
