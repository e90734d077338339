//! One of several, as the device's own list: it needs no more room than a field, however many there are.

use biteband_bench::state::Action;
use biteband_bench::view::Chip;
use wasm_bindgen::JsCast;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use crate::app::Dispatch;

/// A label and a list; what is chosen is handed to `action` by its key.
pub(crate) fn choice(
    dispatch: &Dispatch,
    title: &'static str,
    list: &[Chip],
    action: impl Fn(&'static str) -> Action + 'static,
) -> Html {
    let keys: Vec<&'static str> = list.iter().map(|chip| chip.key).collect();
    let dispatch = dispatch.clone();
    let onchange = Callback::from(move |event: Event| {
        let target = event.target().and_then(|t| t.dyn_into::<HtmlSelectElement>().ok());
        let place = target.and_then(|list| usize::try_from(list.selected_index()).ok());
        if let Some(key) = place.and_then(|place| keys.get(place)) {
            dispatch.emit(action(key));
        }
    });
    html! {
        <label class="choice">
            <span>{ title }</span>
            <select aria-label={title} {onchange}>
                { for list.iter().map(|chip| html! { <option value={chip.key} selected={chip.on}>{ &chip.label }</option> }) }
            </select>
        </label>
    }
}
