//! What is asked of the browser by its name, because a browser may lack it.
//!
//! web-sys takes everything for given, and a page that calls a missing thing stops there. Here a missing one is an
//! answer. This also keeps the script short, which names every binding.

use biteband_bench::view::Clock;
use js_sys::{Array, Function, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// A property, where there is one.
pub(crate) fn of(thing: &JsValue, name: &str) -> Option<JsValue> {
    let found = Reflect::get(thing, &JsValue::from_str(name)).ok()?;
    (!found.is_undefined() && !found.is_null()).then_some(found)
}

/// What a method answers, where there is one.
pub(crate) fn call(thing: &JsValue, name: &str, given: &[JsValue]) -> Option<JsValue> {
    let method = of(thing, name).filter(JsValue::is_function)?;
    method.unchecked_into::<Function>().apply(thing, &list(given)).ok()
}

/// A new thing of a kind, where the kind exists and can be made.
pub(crate) fn make(kind: &str, given: &[JsValue]) -> Option<JsValue> {
    let kind = of(&window(), kind).filter(JsValue::is_function)?;
    Reflect::construct(kind.unchecked_ref::<Function>(), &list(given)).ok()
}

pub(crate) fn set(thing: &JsValue, name: &str, value: impl Into<JsValue>) {
    // What cannot be set stays as it is.
    let _ = Reflect::set(thing, &JsValue::from_str(name), &value.into());
}

pub(crate) fn list(given: &[JsValue]) -> Array {
    let list = Array::new();
    for one in given {
        list.push(one);
    }
    list
}

/// What a promise brings; nothing when it is broken or there is none.
pub(crate) async fn brought(promise: Option<JsValue>) -> Option<JsValue> {
    JsFuture::from(promise.filter(JsValue::is_object)?.unchecked_into::<js_sys::Promise>())
        .await
        .ok()
}

pub(crate) fn window() -> JsValue {
    gloo::utils::window().into()
}

pub(crate) fn navigator() -> JsValue {
    of(&window(), "navigator").unwrap_or_default()
}

#[expect(clippy::cast_possible_truncation, reason = "the clock counts whole milliseconds")]
fn whole(value: Option<JsValue>) -> i64 {
    value.and_then(|value| value.as_f64()).unwrap_or_default() as i64
}

/// The device's clock.
pub(crate) fn clock() -> Clock {
    let now_ms = of(&window(), "Date").and_then(|date| call(&date, "now", &[]));
    let west = make("Date", &[]).and_then(|date| call(&date, "getTimezoneOffset", &[]));
    Clock { now_ms: whole(now_ms), east_min: -whole(west) }
}

pub(crate) fn document() -> JsValue {
    gloo::utils::document().into()
}
