//! What a browser may have or lack: sound, vibration, a screen that stays on, and notifications.
//!
//! A missing one is an answer, as in [`crate::asked`].

use biteband_bench::view::{Alarm, RING};
use wasm_bindgen::JsValue;

use crate::asked::{brought, call, document, list, make, navigator, of, set, window};

#[expect(clippy::cast_precision_loss, reason = "a length of sound is short")]
fn seconds(ms: i64) -> f64 {
    ms as f64 / 1_000.0
}

/// Whether the page is the one that is seen.
pub(super) fn is_seen() -> bool {
    let state = of(&document(), "visibilityState").and_then(|state| state.as_string());
    state.as_deref() != Some("hidden")
}

/// Names the window, and returns what it was called.
pub(super) fn rename(title: &str) -> String {
    let before = of(&document(), "title").and_then(|title| title.as_string());
    set(&document(), "title", title);
    before.unwrap_or_default()
}

/// The way to the loudspeaker.
pub(super) struct Audio(JsValue);

/// A sound that is on or is to come, by the clock of the loudspeaker.
pub(super) struct Sounding {
    source: JsValue,
    of_ms: i64,
    from_s: f64,
}

/// By how much the loudspeaker's clock may differ from the device's.
const DRIFT_S: f64 = 1.0;

impl Audio {
    /// Whether there is any.
    pub(super) fn exists() -> bool {
        ["AudioContext", "webkitAudioContext"].iter().any(|kind| of(&window(), kind).is_some())
    }

    /// Opens it, which a browser allows only while it is touched.
    pub(super) fn open() -> Option<Self> {
        make("AudioContext", &[]).or_else(|| make("webkitAudioContext", &[])).map(Self)
    }

    fn now_s(&self) -> f64 {
        of(&self.0, "currentTime").and_then(|time| time.as_f64()).unwrap_or_default()
    }

    /// Wakes it, or lets it rest; it keeps its sounds.
    pub(super) fn wake(&self, awake: bool) {
        let state = of(&self.0, "state").and_then(|state| state.as_string());
        if (state.as_deref() == Some("running")) != awake {
            call(&self.0, if awake { "resume" } else { "suspend" }, &[]);
        }
    }

    /// Makes sure that an alarm will sound or does; what is on already goes on. It is handed to the loudspeaker
    /// ahead, because a page in the background is woken only now and then.
    pub(super) fn keep(&self, on: &mut Option<Sounding>, alarm: Alarm, now_ms: i64) {
        let now_s = self.now_s();
        let wait_ms = alarm.from_ms.saturating_sub(now_ms).max(0);
        let from_s = now_s + seconds(wait_ms);
        let holds = on.as_ref().is_some_and(|on| {
            on.of_ms == alarm.of_ms && (on.from_s <= now_s || (on.from_s - from_s).abs() < DRIFT_S)
        });
        if holds {
            return;
        }
        silence(on);
        let for_ms = alarm.until_ms.saturating_sub(now_ms.max(alarm.from_ms));
        *on = self.sound(from_s, for_ms).map(|source| Sounding {
            source,
            of_ms: alarm.of_ms,
            from_s,
        });
    }

    /// Sounds a single bar now.
    pub(super) fn try_out(&self) {
        self.wake(true);
        self.sound(self.now_s(), RING.bar_ms);
    }

    fn sound(&self, from_s: f64, for_ms: i64) -> Option<JsValue> {
        let source = call(&self.0, "createOscillator", &[])?;
        let gate = call(&self.0, "createGain", &[])?;
        set(&source, "type", "square");
        set(&of(&source, "frequency")?, "value", RING.hertz);
        let loud = of(&gate, "gain")?;
        set(&loud, "value", 0);
        for (on, at_ms) in RING.turns(for_ms) {
            let at_s = from_s + seconds(at_ms);
            call(&loud, "setValueAtTime", &[u32::from(on).into(), at_s.into()]);
        }
        call(&source, "connect", std::slice::from_ref(&gate))?;
        call(&gate, "connect", &[of(&self.0, "destination")?])?;
        call(&source, "start", &[from_s.into()]);
        call(&source, "stop", &[(from_s + seconds(for_ms)).into()]);
        Some(source)
    }
}

/// Ends a sound.
pub(super) fn silence(on: &mut Option<Sounding>) {
    if let Some(on) = on.take() {
        call(&on.source, "stop", &[]);
        call(&on.source, "disconnect", &[]);
    }
}

/// Whether the device can vibrate.
pub(super) fn buzzes() -> bool {
    of(&navigator(), "vibrate").is_some()
}

/// Lets it vibrate for a while, or stops it. Before the first touch browsers refuse, and some complain.
pub(super) fn buzz(on: bool) {
    let touched = of(&navigator(), "userActivation")
        .and_then(|touch| of(&touch, "hasBeenActive"))
        .is_none_or(|touched| touched.is_truthy());
    if !touched {
        return;
    }
    let pattern: Vec<JsValue> = RING.beats().filter(|_| on).map(JsValue::from).collect();
    call(&navigator(), "vibrate", &[list(&pattern).into()]);
}

/// Whether the browser can keep the screen on at all.
pub(super) fn keeps_screen() -> bool {
    of(&navigator(), "wakeLock").is_some()
}

/// The browser's word that it keeps the screen on; it ends by itself when the page is no longer seen.
pub(super) async fn keep_screen() -> Option<JsValue> {
    let lock = of(&navigator(), "wakeLock")?;
    brought(call(&lock, "request", &["screen".into()])).await
}

/// Whether that word still holds.
pub(super) fn holds(word: &JsValue) -> bool {
    of(word, "released").is_none_or(|released| released.is_falsy())
}

/// Gives it back.
pub(super) fn let_screen_go(word: &JsValue) {
    call(word, "release", &[]);
}

fn permission() -> Option<String> {
    of(&of(&window(), "Notification")?, "permission")?.as_string()
}

/// Whether the person may be asked about notifications.
pub(super) fn can_ask() -> bool {
    permission().as_deref() == Some("default")
}

/// Asks, which a browser allows only while it is touched.
pub(super) async fn ask() {
    let kind = of(&window(), "Notification").unwrap_or_default();
    brought(call(&kind, "requestPermission", &[])).await;
}

/// Sends one where the person has allowed it: by the service worker, because phones take none from a page.
pub(super) async fn notify(text: String) {
    if permission().as_deref() != Some("granted") {
        return;
    }
    let options = JsValue::from(js_sys::Object::new());
    set(&options, "tag", "timer");
    set(&options, "requireInteraction", true);
    let given = [JsValue::from_str(&text), options];
    let workers = of(&navigator(), "serviceWorker");
    let asked = workers.and_then(|workers| call(&workers, "getRegistration", &[]));
    let shown = brought(asked)
        .await
        .filter(JsValue::is_object)
        .and_then(|worker| call(&worker, "showNotification", &given));
    if let Some(shown) = shown {
        brought(Some(shown)).await;
    } else {
        make("Notification", &given);
    }
}
