//! What an import would do, before it is done.

use std::rc::Rc;

use biteband_bench::view::{ConflictRow, import as view_of};
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use super::card::beside;
use super::list::{key, with};
use super::state::{Import, Shown};
use super::{acts, say};
use crate::app::LANGUAGE;
use crate::parts::text::{p, para};

/// The preview.
pub(super) fn import(shown: &Shown<'_>, import: &Import) -> Html {
    let view = view_of(&import.plan, &import.chosen, LANGUAGE);
    let does = {
        let (hand, app) = (shown.hand.clone(), Rc::clone(shown.app));
        Callback::from(move |_: MouseEvent| {
            let (own, app) = (hand.clone(), Rc::clone(&app));
            hand.change(move |state| {
                if let Some(import) = &state.import {
                    acts::import(&own, &app, import);
                }
            });
        })
    };
    let groups = view.groups.iter().map(|(title, names)| {
        let names = names.iter().map(|name| html! { <li>{ name.clone() }</li> });
        html! { <><h3>{ *title }</h3><ul class="plain">{ for names }</ul></> }
    });
    let conflicts = view.conflicts.iter().map(|one| conflict(shown, one));
    html! {
        <section class="card" aria-labelledby="import">
            <h2 id="import" tabindex="-1">{ say(P::ImportTitle) }</h2>
            { para("small", &view.counts) }
            { for groups }
            if !view.conflicts.is_empty() { <h3>{ say(P::Conflicts) }</h3> }
            { for conflicts }
            { for view.nothing.map(p) }
            <div class="actions">
                if view.nothing.is_none() { { key("strong", &view.apply, does) } }
                { key("", say(P::Cancel), with(shown, |state| state.import = None)) }
            </div>
        </section>
    }
}

fn conflict(shown: &Shown<'_>, row: &ConflictRow) -> Html {
    let choices = row.choices.iter().map(|(choice, chip)| {
        let (choice, id) = (*choice, row.id.clone());
        let onclick = with(shown, move |state| {
            if let Some(import) = &mut state.import {
                import.chosen.insert(id.clone(), choice);
            }
        });
        html! {
            <button type="button" class={if chip.on { "chip on" } else { "chip" }}
                aria-pressed={chip.on.to_string()} {onclick}>{ chip.label.clone() }</button>
        }
    });
    html! {
        <div class="origin">
            <p><b>{ row.name.clone() }</b></p>
            { beside(say(P::Mine), say(P::Theirs), &row.rows) }
            <div class="chips" role="group" aria-label={row.name.clone()}>{ for choices }</div>
        </div>
    }
}
