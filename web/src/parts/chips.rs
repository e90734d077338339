//! Rows of choices, and buttons that do one thing.

use biteband_bench::state::Action;
use biteband_bench::view::Chip;
use yew::prelude::*;

use crate::app::Dispatch;

/// Whether the name of a group is seen as well as heard.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Name {
    Seen,
    Heard,
}

/// A press that does one thing.
pub(crate) fn press(dispatch: &Dispatch, action: Action) -> Callback<MouseEvent> {
    let dispatch = dispatch.clone();
    Callback::from(move |_: MouseEvent| dispatch.emit(action.clone()))
}

/// A button with a label that does one thing.
pub(crate) fn button(dispatch: &Dispatch, title: &'static str, action: Action) -> Html {
    html! { <button type="button" onclick={press(dispatch, action)}>{ title }</button> }
}

/// What `aria-disabled` says of a button: one that a press turns off keeps the focus, which `disabled` would take away.
pub(crate) fn off(can: bool) -> Option<&'static str> {
    (!can).then_some("true")
}

/// Choices in a named group, each with what it does.
pub(crate) fn chips(
    dispatch: &Dispatch,
    title: &'static str,
    name: Name,
    list: impl IntoIterator<Item = (Chip, Action)>,
) -> Html {
    let keys: Html =
        list.into_iter().map(|(chip, action)| chosen(dispatch, chip, action)).collect();
    html! {
        <div class="group" role="group" aria-label={title}>
            if name == Name::Seen { <span class="group-name" aria-hidden="true">{ title }</span> }
            <div class="chips">{ keys }</div>
        </div>
    }
}

fn chosen(dispatch: &Dispatch, chip: Chip, action: Action) -> Html {
    html! {
        <button type="button" class={if chip.on { "chip on" } else { "chip" }}
            aria-pressed={if chip.on { "true" } else { "false" }}
            onclick={press(dispatch, action)}>{ chip.label }</button>
    }
}

/// A text that does something when it is tapped; `on` where it can be taken or not.
pub(crate) fn key(dispatch: &Dispatch, text: &str, on: Option<bool>, action: Action) -> Html {
    let onclick = press(dispatch, action);
    let class = if on == Some(true) { "chip on" } else { "chip" };
    let pressed = on.map(|on| if on { "true" } else { "false" });
    html! { <button type="button" {class} aria-pressed={pressed} {onclick}>{ text.to_owned() }</button> }
}

/// Such texts in a named group; nothing without one.
pub(crate) fn keys(title: &'static str, list: Vec<Html>) -> Html {
    if list.is_empty() {
        return Html::default();
    }
    html! {
        <div class="group" role="group" aria-label={title}>
            <span class="group-name" aria-hidden="true">{ title }</span>
            <div class="chips">{ list }</div>
        </div>
    }
}

/// A named list of things that are kept; nothing without one.
pub(crate) fn list(title: &'static str, entries: Vec<Html>) -> Html {
    if entries.is_empty() {
        return Html::default();
    }
    html! { <ul class="proofs" aria-label={title}>{ entries }</ul> }
}

/// A folded card with its heading, by which a list of such knows it again, open or not.
pub(crate) fn folded(title: &'static str, inside: Html) -> Html {
    html! { <details key={title} class="card"><summary>{ title }</summary>{ inside }</details> }
}

/// A line of small print.
pub(crate) fn small(text: impl Into<AttrValue>) -> Html {
    html! { <p class="small">{ text.into() }</p> }
}
