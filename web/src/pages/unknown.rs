//! An unknown bar: one test after the other, and what they make of it.

use std::rc::Rc;

use biteband_bench::format::plain as place;
use biteband_bench::state::{Action, App, Field as Name, Page, UnknownField};
use biteband_bench::view::{Chip, FamilyRow, TestView, UnknownView, unknown as view_of};
use biteband_bench::words::{Ui, UnknownPage as U};
use gloo::timers::callback::Timeout;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};
use yew::prelude::*;

use super::steel::rule;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::bars::tabs;
use crate::parts::chips::{button, folded};
use crate::parts::field::{Look, field};
use crate::parts::text::{heading, p, para, ps, section};

const fn say(label: U) -> &'static str {
    LANGUAGE.unknown_page(label)
}

/// The page.
pub(crate) fn unknown(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide sort">
            <h1 tabindex="-1" class="unseen">{ label(Ui::TabUnknown) }</h1>
            { tabs(Page::Unknown) }
            <div role="status" class="col answer">{ verdict(&view) }</div>
            <div class="col asked">
                <ol class="steps">{ for view.steps.iter().map(|one| step(app, dispatch, one)) }</ol>
                if let Some(turn) = view.turn { { button(dispatch, say(turn), Action::TurnBar) } }
            </div>
            <div class="col rest">{ rest(&view) }</div>
        </main>
    }
}

fn verdict(view: &UnknownView) -> Html {
    let mut inside = vec![para("num words", &view.verdict)];
    inside.extend(view.say.iter().map(|said| para("say", said)));
    if let Some(settled) = &view.settled {
        inside.push(para("say", settled));
    }
    section(if view.conflict { "verdict conflict" } else { "verdict" }, inside)
}

/// A test: folded with its answer, open when it is the next.
fn step(app: &Rc<App>, dispatch: &Dispatch, view: &TestView) -> Html {
    let keys = view.choices.iter().map(|chip| key(dispatch, view.field, chip));
    let said = view.said.clone().unwrap_or_else(|| say(U::NotTried).to_owned());
    let mark = if view.said.is_some() { "✓" } else { "" };
    let typed = view.typed.then(|| {
        let look = Look { title: say(U::Typed), hint: Some(say(U::TypedHint)), class: "field" };
        field(app, dispatch, Name::Unknown(view.field), look, view.problem.as_ref())
    });
    html! {
        <li key={view.field.key()}>
            <details class={if view.next { "card step now" } else { "card step" }} open={view.open}>
                <summary>
                    <span>{ &view.title }</span>
                    <span class="said">{ mark }{ " " }{ said }</span>
                </summary>
                { p(&view.how) }
                <div class="group" role="group" aria-label={format!("{}: {}", say(U::Answer), view.title)}>
                    <div class={if view.typed { "chips pair" } else { "chips tall" }}>{ for keys }</div>
                </div>
                { for typed }
                { para("small", &view.why) }
                if !view.cautions.is_empty() { { section("caution", vec![ps(&view.cautions)]) } }
            </details>
        </li>
    }
}

fn key(dispatch: &Dispatch, field: UnknownField, chip: &Chip) -> Html {
    let (dispatch, answer) = (dispatch.clone(), chip.key);
    let onclick = Callback::from(move |event: MouseEvent| {
        dispatch.emit(Action::Saw(field, answer));
        let pressed = event.target().and_then(|target| target.dyn_into::<Element>().ok());
        follow(pressed.and_then(|key| key.closest("details").ok().flatten()));
    });
    html! {
        <button type="button" class={if chip.on { "chip on" } else { "chip" }}
            aria-pressed={if chip.on { "true" } else { "false" }} {onclick}>{ &chip.label }</button>
    }
}

/// An answer folds its test away, also one that was opened by hand, and the focus that stood on its key goes on to the
/// test that is next.
fn follow(step: Option<Element>) {
    let Some(step) = step else { return };
    Timeout::new(0, move || {
        // An answer that was taken back may make its own test the next one.
        if step.matches(".now").unwrap_or_default() {
            return;
        }
        // An attribute that is not there is gone already.
        let _ = step.remove_attribute("open");
        let next = gloo::utils::document().query_selector(".step.now > summary").ok().flatten();
        let own = || step.query_selector("summary").ok().flatten();
        let summary = next.or_else(own).and_then(|found| found.dyn_into::<HtmlElement>().ok());
        // An element that cannot take the focus leaves it where it was.
        let _ = summary.map(|summary| summary.focus());
    })
    .forget();
}

fn rest(view: &UnknownView) -> Html {
    let mut parts: Vec<Html> = Vec::new();
    if !view.causes.is_empty() {
        let causes = view.causes.iter().map(|cause| html! { <li>{ cause }</li> });
        parts.push(section(
            "card causes",
            vec![title(U::Causes), html! { <ol>{ for causes }</ol> }],
        ));
    }
    if !view.families.is_empty() {
        parts.push(section("card", vec![title(U::Families), families(&view.families)]));
    }
    if let Some(carbon) = &view.carbon {
        parts.push(section("card", vec![title(U::Carbon), rule(carbon)]));
    }
    parts.extend(list(U::GoodFor, &view.uses));
    parts.extend(list(U::NotFor, &view.avoid));
    if !view.quench.is_empty() {
        parts.push(section("card", vec![title(U::Quench), ps(&view.quench)]));
    }
    parts.push(section("caution", vec![p(&view.caution)]));
    parts.extend(view.notes.iter().map(|note| para("small", note)));
    if !view.why.is_empty() {
        parts.push(folded(say(U::Why), ps(&view.why)));
    }
    parts.into_iter().collect()
}

fn title(label: U) -> Html {
    heading(say(label))
}

fn list(name: U, texts: &[String]) -> Option<Html> {
    if texts.is_empty() {
        return None;
    }
    let items = texts.iter().map(|text| html! { <li>{ text }</li> });
    Some(section("card", vec![title(name), html! { <ul class="plain">{ for items }</ul> }]))
}

/// Each family with its share as a number and as a bar of that length.
fn families(rows: &[FamilyRow]) -> Html {
    let row = |row: &FamilyRow| {
        html! {
            <li>
                <span>{ &row.name }</span>
                <b>{ row.percent }{ " %" }</b>
                <svg class="share" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
                    <rect width={place(f64::from(row.percent))} height="4" />
                </svg>
            </li>
        }
    };
    html! { <ul class="shares">{ for rows.iter().map(row) }</ul> }
}
