//! The page: Yew components over `bench`.
//!
//! Nothing here calculates, parses or words anything; that is `bench`'s work. What the browser alone
//! can do lives at this rim: elements, storage, the address, the service worker's messages.

mod app;
mod asked;
mod object;
mod pages;
mod parts;
mod rooms;
mod store;

use std::cell::Cell;
use std::rc::Rc;

use app::{Application, Props};
use gloo::timers::callback::Timeout;
use store::Opened;

/// How long the page waits for storage before it starts without, in milliseconds.
///
/// Storage that is merely slow answers in a few; storage that is blocked by another tab may never.
const PATIENCE: u32 = 3_000;

fn main() {
    let started = Rc::new(Cell::new(false));
    let patience = {
        let started = Rc::clone(&started);
        Timeout::new(PATIENCE, move || mount(&started, Opened::refused()))
    };
    wasm_bindgen_futures::spawn_local(async move {
        let opened = store::open().await;
        patience.cancel();
        mount(&started, opened);
    });
}

/// Puts the application in place of the static shell, once.
fn mount(started: &Cell<bool>, opened: Opened) {
    if started.replace(true) {
        return;
    }
    let Some(root) = gloo::utils::document().get_element_by_id("app") else { return };
    root.set_inner_html("");
    yew::Renderer::<Application>::with_root_and_props(root, Props { opened }).render();
}
