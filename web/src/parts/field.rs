//! A field with its label, hint and error, and the number pad that belongs to it.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name, text};
use biteband_bench::view::Problem;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, HtmlInputElement};
use yew::prelude::*;

use super::pad::pad;
use crate::app::Dispatch;

/// What a field is called and how it looks.
#[derive(Clone, Copy)]
pub(crate) struct Look {
    pub(crate) title: &'static str,
    pub(crate) hint: Option<&'static str>,
    /// The field that a page is about is drawn large.
    pub(crate) class: &'static str,
}

/// The field; `problem` is shown under it.
pub(crate) fn field(
    app: &Rc<App>,
    dispatch: &Dispatch,
    name: Name,
    look: Look,
    problem: Option<&Problem>,
) -> Html {
    let id = id_of(name);
    let (hint_id, error_id) = (format!("{id}-hint"), format!("{id}-error"));
    let described = match (look.hint, problem) {
        (Some(_), Some(_)) => Some(format!("{hint_id} {error_id}")),
        (Some(_), None) => Some(hint_id.clone()),
        (None, Some(_)) => Some(error_id.clone()),
        (None, None) => None,
    };
    let send = |action: Action| {
        let dispatch = dispatch.clone();
        Callback::from(move |_: FocusEvent| dispatch.emit(action.clone()))
    };
    let oninput = {
        let dispatch = dispatch.clone();
        Callback::from(move |event: InputEvent| {
            let target = event.target().and_then(|t| t.dyn_into::<HtmlInputElement>().ok());
            if let Some(field) = target {
                let mut text = field.value();
                // What a screen does not show can come along with what is pasted.
                text.retain(|sign| !sign.is_control());
                dispatch.emit(Action::Edit(name, text));
            }
        })
    };
    let onkeydown = Callback::from(move |event: KeyboardEvent| {
        if event.key() == "Enter" {
            leave(name);
        }
    });
    // A field without a pad takes the device's own keyboard from the start.
    let letters = app.session.letters == Some(name) || name.pad().is_empty();
    let open = app.session.active == Some(name) && !letters;
    html! {
        <div class={look.class}>
            <label for={id.clone()}>{ look.title }</label>
            <input {id} type="text" value={text(app, name).to_owned()} maxlength={name.most().to_string()}
                inputmode={if letters { "text" } else { "none" }}
                autocomplete="off" autocapitalize="off" spellcheck="false"
                aria-describedby={described} aria-invalid={problem.map(|_| "true")}
                {oninput} {onkeydown} onfocus={send(Action::Enter(name))} onblur={send(Action::Leave(name))} />
            if let Some(hint) = look.hint { <p class="small" id={hint_id}>{ hint }</p> }
            if let Some(problem) = problem {
                <p class="error" id={error_id}>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M12 4 L21 20 H3 Z M12 10v5 M12 17.5v.5" /></svg>
                    { told(problem) }
                </p>
            }
            if open { { pad(name, dispatch) } }
        </div>
    }
}

/// What is wrong, and behind it the way out.
pub(crate) fn told(problem: &Problem) -> Html {
    html! { <span><b>{ &problem.message }</b>{ " " }{ &problem.instead }</span> }
}

fn id_of(name: Name) -> String {
    format!("field-{}", name.key())
}

fn element(name: Name) -> Option<HtmlElement> {
    gloo::utils::document().get_element_by_id(&id_of(name))?.dyn_into().ok()
}

/// Gives up the focus of a field; one that has none has nothing to give up.
pub(crate) fn leave(name: Name) {
    let _ = element(name).map(|field| field.blur());
}

/// Puts the focus into a field.
pub(crate) fn enter(name: Name) {
    let _ = element(name).map(|field| field.focus());
}

/// Asks for the phone's own keyboard, which comes only with a fresh focus.
pub(crate) fn ask_for_letters(name: Name, dispatch: &Dispatch) {
    let Some(field) = element(name) else { return };
    let _ = field.set_attribute("inputmode", "text");
    let _ = field.blur();
    let _ = field.focus();
    dispatch.emit(Action::Letters(name));
}
