//! A field with its label, hint and error, and the number pad that belongs to it.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name, text};
use biteband_bench::view::Problem;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

use super::pad::pad;
use crate::app::Dispatch;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct FieldProps {
    pub(crate) app: Rc<App>,
    pub(crate) dispatch: Dispatch,
    pub(crate) name: Name,
    pub(crate) label: AttrValue,
    #[prop_or_default]
    pub(crate) hint: AttrValue,
    #[prop_or_default]
    pub(crate) problem: Option<Problem>,
    /// The field that a page is about is drawn large.
    #[prop_or_default]
    pub(crate) large: bool,
}

#[component]
pub(crate) fn Field(props: &FieldProps) -> Html {
    let name = props.name;
    let letters = use_state(|| false);
    let input = use_node_ref();
    let id = format!("field-{}", name.key());
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let described = match (props.hint.is_empty(), props.problem.is_some()) {
        (false, true) => Some(format!("{hint_id} {error_id}")),
        (false, false) => Some(hint_id.clone()),
        (true, true) => Some(error_id.clone()),
        (true, false) => None,
    };
    let send = |make: fn(Name) -> Action| {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: FocusEvent| dispatch.emit(make(name)))
    };
    let oninput = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |event: InputEvent| {
            let target = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
            if let Some(field) = target {
                dispatch.emit(Action::Edit(name, field.value()));
            }
        })
    };
    let onkeydown = {
        let input = input.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Enter" {
                leave(&input);
            }
        })
    };
    let to_letters = {
        let (letters, input) = (letters.clone(), input.clone());
        Callback::from(move |_: MouseEvent| {
            letters.set(true);
            // The phone's keyboard comes only with a fresh focus.
            leave(&input);
            let _ = input.cast::<web_sys::HtmlElement>().map(|field| field.focus());
        })
    };
    let done = {
        let input = input.clone();
        Callback::from(move |_: MouseEvent| leave(&input))
    };
    let open = props.app.session.active == Some(name) && !*letters;
    html! {
        <div class={classes!("field", props.large.then_some("large"))}>
            <label for={id.clone()}>{ props.label.clone() }</label>
            <input {id} ref={input} type="text" value={text(&props.app, name).to_owned()}
                inputmode={if *letters { "text" } else { "none" }}
                autocomplete="off" autocapitalize="off" spellcheck="false"
                aria-describedby={described} aria-invalid={props.problem.is_some().then_some("true")}
                {oninput} {onkeydown} onfocus={send(Action::Enter)} onblur={send(Action::Leave)} />
            if !props.hint.is_empty() { <p class="small" id={hint_id}>{ props.hint.clone() }</p> }
            if let Some(problem) = &props.problem {
                <p class="error" id={error_id}>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M12 4 L21 20 H3 Z M12 10v5 M12 17.5v.5" /></svg>
                    <span>{ &problem.message }{ " " }{ &problem.instead }</span>
                </p>
            }
            if open {
                { pad(name, &props.dispatch, to_letters, done) }
            }
        </div>
    }
}

fn leave(input: &NodeRef) {
    if let Some(field) = input.cast::<web_sys::HtmlElement>() {
        // A field that has no focus has nothing to give up.
        let _ = field.blur();
    }
}
