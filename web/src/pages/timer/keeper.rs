//! What goes on while a timer runs, whatever page is shown: the next look at the clock, the sound, the screen that
//! stays on, the title of the window.

use std::cell::RefCell;
use std::rc::Rc;

use biteband_bench::state::{App, Page, TimerAction};
use biteband_bench::view::{Device, RING, Sound, TimerWatch, timer_watch};
use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use wasm_bindgen::JsValue;

use super::browser::{self, Audio, Sounding};
use crate::app::{Dispatch, LANGUAGE};
use crate::asked;

/// The clock is looked at no less often, in milliseconds: it may have been set.
const SELDOM: i64 = 60_000;
/// And no more often.
const OFTEN: i64 = 20;

/// Whether the screen is kept on.
#[derive(Default)]
enum Screen {
    /// Not asked for.
    #[default]
    Free,
    /// The browser thinks about it.
    Asked,
    /// As long as this holds.
    Kept(JsValue),
    /// Not until the page is seen anew.
    Refused,
}

#[derive(Default)]
struct Keeper {
    dispatch: Option<Dispatch>,
    listeners: Vec<EventListener>,
    look: Option<Timeout>,
    audio: Option<Audio>,
    sounding: Option<Sounding>,
    buzzing_until_ms: i64,
    /// The end of the timer that was last told by a notification.
    told_ms: i64,
    screen: Screen,
    /// What the window is called without a timer.
    title: Option<String>,
}

thread_local! {
    static KEEPER: RefCell<Keeper> = RefCell::default();
}

fn with<T>(work: impl FnOnce(&mut Keeper) -> T) -> T {
    KEEPER.with_borrow_mut(work)
}

/// Does what the timers need now. It is called whenever the page is drawn, because every change draws it; called
/// twice it does nothing more.
pub(super) fn follow(app: &Rc<App>, dispatch: &Dispatch) {
    let now_ms = asked::clock().now_ms;
    let watch = timer_watch(app, LANGUAGE, now_ms);
    let on_page = app.saved.page == Page::Timer && browser::is_seen();
    with(|keeper| {
        if !app.saved.timer.any() {
            keeper.listeners.clear();
        } else if keeper.listeners.is_empty() {
            keeper.listeners = listeners();
            keeper.dispatch = Some(dispatch.clone());
        }
        keeper.sound(&watch, now_ms);
        keeper.keep_screen(watch.awake);
        keeper.name_window(watch.title.as_deref());
        keeper.tell(&watch, now_ms);
        keeper.look_again(&watch, now_ms, on_page);
    });
}

/// What the browser does for a timer.
pub(super) fn device() -> Device {
    with(|keeper| Device {
        screen: match keeper.screen {
            _ if !browser::keeps_screen() => Some(false),
            Screen::Kept(_) => Some(true),
            Screen::Refused => Some(false),
            Screen::Free | Screen::Asked => None,
        },
        sound: match keeper.audio {
            Some(_) => Sound::Ready,
            None if Audio::exists() => Sound::Waits,
            None => Sound::Missing,
        },
        buzzes: browser::buzzes(),
        can_ask: browser::can_ask(),
    })
}

/// The page was touched: now the loudspeaker may be opened.
pub(super) fn touched() {
    with(|keeper| {
        if keeper.audio.is_none() {
            keeper.audio = Audio::open();
        }
    });
}

/// Sounds a bar of the ring.
pub(super) fn try_sound() {
    touched();
    with(|keeper| {
        if let Some(audio) = &keeper.audio {
            audio.try_out();
        }
    });
}

/// Tells the reducer what time it is, which draws the page.
pub(super) fn look() {
    let dispatch = with(|keeper| keeper.dispatch.clone());
    if let Some(dispatch) = dispatch {
        dispatch.emit(TimerAction::Tick(asked::clock().now_ms).into());
    }
}

/// What wakes a page that slept, and what lets it sound.
fn listeners() -> Vec<EventListener> {
    let (window, document) = (gloo::utils::window(), gloo::utils::document());
    let woken = EventListener::new(&document, "visibilitychange", |_| {
        with(|keeper| {
            if matches!(keeper.screen, Screen::Refused) {
                keeper.screen = Screen::Free;
            }
        });
        look();
    });
    let mut all = vec![woken];
    all.extend(["focus", "pageshow"].map(|event| EventListener::new(&window, event, |_| look())));
    all.push(EventListener::new(&window, "click", |_| {
        let waits = with(|keeper| keeper.audio.is_none());
        if waits {
            touched();
            look();
        }
    }));
    all
}

impl Keeper {
    fn sound(&mut self, watch: &TimerWatch, now_ms: i64) {
        if let Some(audio) = &self.audio {
            if let Some(alarm) = watch.alarm {
                audio.keep(&mut self.sounding, alarm, now_ms);
            } else {
                browser::silence(&mut self.sounding);
            }
            audio.wake(watch.alarm.is_some());
        }
        let rings = watch.alarm.is_some_and(|alarm| alarm.from_ms <= now_ms);
        let buzzes = now_ms < self.buzzing_until_ms;
        if rings != buzzes {
            browser::buzz(rings);
            self.buzzing_until_ms = if rings { now_ms + i64::from(RING.buzz_for_ms) } else { 0 };
        }
    }

    fn keep_screen(&mut self, awake: bool) {
        match &self.screen {
            Screen::Kept(word) if !browser::holds(word) => self.screen = Screen::Free,
            Screen::Kept(word) if !awake => {
                browser::let_screen_go(word);
                self.screen = Screen::Free;
            }
            _ => {}
        }
        if !awake || !matches!(self.screen, Screen::Free) || !browser::is_seen() {
            return;
        }
        self.screen = Screen::Asked;
        wasm_bindgen_futures::spawn_local(async {
            let word = browser::keep_screen().await;
            with(|keeper| keeper.screen = word.map_or(Screen::Refused, Screen::Kept));
            look();
        });
    }

    fn name_window(&mut self, title: Option<&str>) {
        match (title, self.title.take()) {
            (Some(title), Some(own)) => {
                browser::rename(title);
                self.title = Some(own);
            }
            (Some(title), None) => self.title = Some(browser::rename(title)),
            (None, Some(own)) => drop(browser::rename(&own)),
            (None, None) => {}
        }
    }

    /// A notification for each timer that rings while the page is not seen.
    fn tell(&mut self, watch: &TimerWatch, now_ms: i64) {
        let alarm = watch.alarm.filter(|alarm| alarm.from_ms <= now_ms);
        if let (Some(alarm), Some((_, text))) = (alarm, watch.rings.first())
            && alarm.of_ms != self.told_ms
        {
            self.told_ms = alarm.of_ms;
            if !browser::is_seen() {
                wasm_bindgen_futures::spawn_local(browser::notify(text.clone()));
            }
        }
    }

    fn look_again(&mut self, watch: &TimerWatch, now_ms: i64, on_page: bool) {
        let wait = watch.next_ms.map(|(second, minute)| {
            let shown = if on_page { second } else { minute };
            let turns = watch.alarm.into_iter().flat_map(|alarm| [alarm.from_ms, alarm.until_ms]);
            let turns = turns.chain([self.buzzing_until_ms]).filter(|turn| *turn > now_ms);
            let turn = turns.min().map_or(SELDOM, |turn| turn - now_ms);
            shown.min(turn).clamp(OFTEN, SELDOM)
        });
        let wait = wait.and_then(|wait| u32::try_from(wait).ok());
        self.look = wait.map(|wait| Timeout::new(wait, look));
    }
}
