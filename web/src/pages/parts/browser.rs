//! What the page of parts asks of the browser; a missing thing is an answer, as in [`crate::asked`].

use biteband_bench::card::Photo;
use biteband_bench::card::file::{self, MOST_BYTES};
use gloo::events::EventListener;
use js_sys::{Math, Reflect, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlElement;

use crate::asked::{brought, call, clock, document, list, make, navigator, of, set, window};

/// The device's clock, in milliseconds.
pub(super) fn now_ms() -> i64 {
    clock().now_ms
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

fn object(fields: &[(&str, JsValue)]) -> JsValue {
    let object = JsValue::from(js_sys::Object::new());
    for (name, value) in fields {
        set(&object, name, value.clone());
    }
    object
}

/// Puts the focus on an element when the page is drawn anew.
pub(super) fn focus_later(selector: impl AsRef<str> + 'static) {
    gloo::timers::callback::Timeout::new(0, move || focus(selector.as_ref())).forget();
}

/// Puts the focus on the page's heading when the page is drawn anew, if what had it is gone.
pub(super) fn focus_if_lost() {
    gloo::timers::callback::Timeout::new(0, || {
        if is_lost() {
            focus("main h1");
        }
    })
    .forget();
}

/// Whether nothing has the focus.
pub(super) fn is_lost() -> bool {
    gloo::utils::document().active_element().is_none_or(|now| now.tag_name() == "BODY")
}

/// Puts the focus on an element; one that is not there, or cannot take it, leaves it where it was.
pub(super) fn focus(selector: &str) {
    let found = gloo::utils::document().query_selector(selector).ok().flatten();
    if let Some(element) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
        let _ = element.focus();
    }
}

/// The text of a field that an event came from, without what a screen does not show.
pub(super) fn value(event: &JsValue) -> Option<String> {
    let mut text = of(&of(event, "target")?, "value")?.as_string()?;
    text.retain(|sign| !sign.is_control() || matches!(sign, '\n' | '\r' | '\t'));
    Some(text)
}

/// Hands a text to the browser as a file to keep.
pub(super) fn hand_out(name: &str, kind: &str, text: &str) -> bool {
    let blob = make("Blob", &[list(&[text.into()]).into(), object(&[("type", kind.into())])]);
    let address = of(&window(), "URL")
        .and_then(|url| call(&url, "createObjectURL", &[blob?]).map(|address| (url, address)));
    let Some((url, address)) = address else { return false };
    let link = call(&document(), "createElement", &["a".into()]).unwrap_or_default();
    set(&link, "href", address.clone());
    set(&link, "download", name);
    call(&link, "click", &[]);
    // The browser may begin to read it only after this.
    gloo::timers::callback::Timeout::new(60_000, move || {
        call(&url, "revokeObjectURL", &[address]);
    })
    .forget();
    true
}

/// The file that was chosen in a field, which is empty again afterwards.
pub(super) fn chosen(event: &JsValue) -> Option<JsValue> {
    let field = of(event, "target")?;
    let file = of(&of(&field, "files")?, "0");
    set(&field, "value", "");
    file
}

/// What is in a file; nothing where it cannot be read. Of one that is too large, not more than shows it.
pub(super) async fn content(chosen: &JsValue) -> Option<Vec<u8>> {
    let most = u32::try_from(MOST_BYTES + 1).ok()?;
    let start = call(chosen, "slice", &[0.into(), most.into()])?;
    let buffer = brought(call(&start, "arrayBuffer", &[])).await?;
    file::take(Uint8Array::new(&buffer).to_vec().as_slice()).ok()
}

/// The longest side of a photo that is kept, in pixels.
const LONGEST: f64 = 1_280.0;
/// How much of its detail is kept.
const QUALITY: f64 = 0.8;

/// A file as a photo, made small; nothing where it is no picture. What the camera wrote beside the picture, its place
/// among it, is left behind.
pub(super) async fn photo(chosen: JsValue) -> Option<Photo> {
    let picture = brought(call(&window(), "createImageBitmap", &[chosen])).await?;
    let side = |name| of(&picture, name).and_then(|side| side.as_f64());
    let (width, height) = (side("width")?, side("height")?);
    let scale = (LONGEST / width.max(height)).min(1.0);
    let (width, height) = ((width * scale).round().max(1.0), (height * scale).round().max(1.0));
    let canvas = call(&document(), "createElement", &["canvas".into()])?;
    set(&canvas, "width", width);
    set(&canvas, "height", height);
    let drawing = call(&canvas, "getContext", &["2d".into()])?;
    call(&drawing, "drawImage", &[picture, 0.into(), 0.into(), width.into(), height.into()])?;
    let address = call(&canvas, "toDataURL", &["image/jpeg".into(), QUALITY.into()])?;
    let address = address.as_string()?;
    let (kind, data) = address.strip_prefix("data:")?.split_once(";base64,")?;
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most 1280")]
    let (width, height) = (width as u32, height as u32);
    Some(Photo {
        id: new_id(),
        at: biteband_bench::card::moment(now_ms()),
        text: String::new(),
        media_type: kind.to_owned(),
        width,
        height,
        data: data.to_owned(),
    })
}

/// Shares a text by the device's own choice of ways, where it has one; says whether it did or the person closed it.
pub(super) async fn share(title: &str, text: &str) -> bool {
    let given = object(&[("title", title.into()), ("text", text.into())]);
    let Some(promise) = call(&navigator(), "share", &[given]) else { return false };
    match wasm_bindgen_futures::JsFuture::from(promise.unchecked_into::<js_sys::Promise>()).await {
        Ok(_) => true,
        Err(error) => {
            of(&error, "name").and_then(|n| n.as_string()).as_deref() == Some("AbortError")
        }
    }
}

/// Puts a text on the clipboard, and says whether it is there.
pub(super) async fn copy(text: &str) -> bool {
    let board = of(&navigator(), "clipboard").unwrap_or_default();
    brought(call(&board, "writeText", &[text.into()])).await.is_some()
}

/// Whether the browser promised to keep what is stored; nothing where it makes no such promises.
pub(super) async fn promised(ask: bool) -> Option<bool> {
    let storage = of(&navigator(), "storage")?;
    let name = if ask { "persist" } else { "persisted" };
    brought(call(&storage, name, &[])).await.map(|answer| answer.is_truthy())
}

/// Opens the browser's own print; one that cannot print leaves the sheet on the screen.
pub(super) fn print() {
    call(&window(), "print", &[]);
}
