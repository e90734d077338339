//! English for the page of timers.

use super::{TimerPage, TimerSays};
use crate::state::TimerKind;

pub(super) const fn label(label: TimerPage) -> &'static str {
    use TimerPage as T;
    match label {
        T::Title => "Timer",
        T::KindTitle => "What for",
        T::Kind(TimerKind::Soak) => "soak",
        T::Kind(TimerKind::Temper) => "temper",
        T::Kind(TimerKind::Cool) => "cool",
        T::Kind(TimerKind::Other) => "other",
        T::Part => "Part",
        T::PartHint => "What is in the oven; may stay empty.",
        T::Keys => "Start now",
        T::Length => "Another time",
        T::LengthHint => "With its unit: 45 min, 2 h, 1 h 30.",
        T::Start => "Start",
        T::Stop => "Stop",
        T::Remove => "Remove",
        T::Quiet => "Quiet",
        T::TrySound => "Try the sound",
        T::AskNotes => "Send a notification too",
        T::Empty => "No timer runs.",
        T::UnderAMinute => "under 1 min",
        T::ClockSetBack => {
            "The device's clock was set back since this was started, so it rings later than it should. Check it against another clock."
        }
        T::NotesTitle => "How far you can rely on it",
        T::ScreenKept => "The screen stays on while a timer runs.",
        T::ScreenNotKept => {
            "This browser does not keep the screen on. Set the phone's own screen time-out longer, or wake it now and then."
        }
        T::SoundWaits => "No sound yet: the browser waits for a touch. Touch the page once.",
        T::NoSound => "This browser makes no sound. Watch the screen.",
        T::NoBuzz => "This browser cannot vibrate.",
        T::KeepInFront => {
            "Keep this page in front: a sleeping phone may ring late. On waking it rings at once and says how late it is."
        }
        T::Silent => "A phone set to silent may stay silent. Try the sound where the work is.",
        T::Closed => "A closed page cannot ring. Opened again, it tells when the time was up.",
        T::SecondClock => "Where a late ring would spoil the part, set a second clock as well.",
    }
}

const fn kind(kind: TimerKind) -> &'static str {
    match kind {
        TimerKind::Soak => "Soak",
        TimerKind::Temper => "Temper",
        TimerKind::Cool => "Cool",
        TimerKind::Other => "Other",
    }
}

fn day(days: i64, time: &str) -> String {
    match days {
        0 => format!("at {time}"),
        1 => format!("tomorrow at {time}"),
        -1 => format!("yesterday at {time}"),
        2.. => format!("in {days} days at {time}"),
        _ => format!("{} days ago at {time}", days.saturating_neg()),
    }
}

pub(super) fn say(phrase: TimerSays<'_>) -> String {
    use TimerSays as S;
    match phrase {
        S::Name { kind: TimerKind::Other, label: "" } => "Timer".to_owned(),
        S::Name { kind: TimerKind::Other, label } => label.to_owned(),
        S::Name { kind: of, label: "" } => kind(of).to_owned(),
        S::Name { kind: of, label } => format!("{}: {label}", kind(of)),
        S::Minutes { hours: 0, minutes } => format!("{minutes} min"),
        S::Minutes { hours, minutes: 0 } => format!("{hours} h"),
        S::Minutes { hours, minutes } => format!("{hours} h {minutes} min"),
        S::More { time } => format!("+{time}"),
        S::Left { name, left } => format!("{name}, {left} left"),
        S::Chip { left, others: 0 } => left.to_owned(),
        S::Chip { left, others } => format!("{left} (+{others})"),
        S::RingsAt { time, days } => format!("Rings {}.", day(days, time)),
        S::WasUpAt { time, days } => format!("Time was up {}.", day(days, time)),
        S::TimeIsUp { name } => format!("{name}: time is up."),
        S::RangLate { late } => {
            format!("It rang {late} late: the screen slept or the page was closed.")
        }
        S::PutBack { name } => format!("Put back: {name}"),
        S::Full { most } => {
            format!("{most} timers are all there can be. Stop one to start another.")
        }
    }
}
