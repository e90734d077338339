//! What the page of parts asks of the browser; each is asked for by its name, because a browser may lack it.

use gloo::events::EventListener;
use js_sys::{Date, Math, Reflect};
use wasm_bindgen::{JsCast, JsValue};

/// The device's clock, in milliseconds.
#[expect(clippy::cast_possible_truncation, reason = "the clock counts whole milliseconds")]
pub(super) fn now_ms() -> i64 {
    Date::now() as i64
}

/// A name that no other card has.
pub(super) fn new_id() -> String {
    let draw = || {
        let number = Math::random() * 4_294_967_296.0;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below 2^32")]
        let number = number as u32;
        format!("{number:08x}")
    };
    [draw(), draw(), draw(), draw()].concat()
}

/// The line between the open tabs.
pub(super) struct Tabs {
    line: web_sys::BroadcastChannel,
    _hears: EventListener,
}

impl Tabs {
    /// Opens it; nothing where the browser has none.
    pub(super) fn open(hears: fn(&str)) -> Option<Self> {
        let there = Reflect::has(&gloo::utils::window(), &"BroadcastChannel".into());
        if !there.unwrap_or_default() {
            return None;
        }
        let line = web_sys::BroadcastChannel::new("biteband-cards").ok()?;
        let listener = EventListener::new(&line, "message", move |event| {
            let data = event.dyn_ref::<web_sys::MessageEvent>().map(web_sys::MessageEvent::data);
            if let Some(id) = data.and_then(|data| data.as_string()) {
                hears(&id);
            }
        });
        Some(Self { line, _hears: listener })
    }

    /// Says that a card was changed.
    pub(super) fn tell(&self, id: &str) {
        // A line that is closed reaches nobody, and nobody is there.
        let _ = self.line.post_message(&JsValue::from_str(id));
    }
}
