//! What now? One act for the part on the first page, with its reason; the others folded behind it.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name, Page, TemperAction, TemperField};
use biteband_bench::view::{ActView, NextView, StepView, next_step as view_of};
use biteband_bench::words::{SteelPage, TemperPage as T};
use yew::prelude::*;

use super::convert::refusal;
use crate::app::{Dispatch, LANGUAGE};
use crate::parts::chips::{Name as Group, chips, folded};
use crate::parts::field::{Look, field};
use crate::parts::text::{heading, p, para, ps, section};

const fn say(label: T) -> &'static str {
    LANGUAGE.temper_page(label)
}

/// The panel.
pub(crate) fn next(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    // Every list keeps its length, so that what is told and what has the focus is never made anew.
    let inside = vec![
        heading(say(T::WhatNow)),
        line("small", &view.goes_by),
        view.step.as_ref().map(act).unwrap_or_default(),
        view.problem.as_ref().map(refusal).unwrap_or_default(),
        view.missing.iter().map(|text| para("small", text)).collect(),
        if view.asks { inputs(app, dispatch, &view) } else { Html::default() },
    ];
    html! {
        <>
            { section("card what-now", inside) }
            { view.step.as_ref().map(behind).unwrap_or_default() }
        </>
    }
}

/// A paragraph; nothing for an empty text.
fn line(class: &'static str, text: &str) -> Html {
    if text.is_empty() { Html::default() } else { para(class, text) }
}

fn act(step: &StepView) -> Html {
    let caution = section("caution", vec![p(&step.act.caution)]);
    let inside = [
        para("say", &step.stands),
        html! { <p class="act" role="status">{ step.act.text.clone() }</p> },
        line("", &step.act.dial),
        line("", &step.act.how),
        line("", &step.causes),
        line("", &step.act.chances),
        undone(&step.act),
        if step.act.caution.is_empty() { Html::default() } else { caution },
    ];
    inside.into_iter().collect()
}

fn undone(act: &ActView) -> Html {
    if act.undone.is_empty() {
        return Html::default();
    }
    html! { <p><b>{ say(T::Undone) }</b>{ " " }{ act.undone.clone() }</p> }
}

fn inputs(app: &Rc<App>, dispatch: &Dispatch, view: &NextView) -> Html {
    let stages = view
        .stages
        .iter()
        .map(|(stage, chip)| (chip.clone(), Action::from(TemperAction::Stage(*stage))));
    let switches = view.switches.iter().map(|(action, chip)| (chip.clone(), Action::from(*action)));
    let look = Look { title: say(T::Done), hint: Some(say(T::DoneHint)), class: "field" };
    let name = Name::Temper(TemperField::Done);
    html! {
        <>
            <div class="inputs">
                { chips(dispatch, say(T::Stage), Group::Seen, stages) }
                if view.tempered { { field(app, dispatch, name, look, view.done_problem.as_ref()) } }
                { chips(dispatch, say(T::Switches), Group::Seen, switches) }
            </div>
            <p class="links">
                <a class="link" href={Page::Temper.hash()}>{ say(T::ToPlan) }</a>
                <a class="link" href={Page::Steel.hash()}>{ say(T::ToSteel) }</a>
            </p>
        </>
    }
}

/// The other acts, and what the answer rests on.
fn behind(step: &StepView) -> Html {
    let mut all = Vec::new();
    if !step.others.is_empty() {
        all.push(folded(say(T::Others), step.others.iter().map(other).collect()));
    }
    let mut why = vec![ps(&step.learned), ps(&step.notes), p(&step.weighing)];
    if !step.sources.is_empty() {
        why.push(html! { <h3>{ LANGUAGE.steel_page(SteelPage::SourcesTitle) }</h3> });
        why.push(ps(&step.sources));
    }
    all.push(folded(say(T::Weighing), why.into_iter().collect()));
    all.into_iter().collect()
}

fn other(act: &ActView) -> Html {
    html! {
        <div class="origin">
            <p><b>{ act.text.clone() }</b>if !act.open { { " " }<small>{ "(" }{ say(T::NotNow) }{ ")" }</small> }</p>
            if !act.dial.is_empty() { <p>{ act.dial.clone() }</p> }
            if !act.chances.is_empty() { <p>{ act.chances.clone() }</p> }
            { undone(act) }
            <p class="small">{ act.how.clone() }</p>
            if !act.caution.is_empty() { <p class="small">{ act.caution.clone() }</p> }
        </div>
    }
}
