//! Parts to a file and back, and what the device promises.

use biteband_bench::card::Card;
use biteband_bench::view::exports;
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use super::list::key;
use super::state::{Hand, Shown};
use super::{acts, browser, import, say};
use crate::app::LANGUAGE;
use crate::asked::clock;
use crate::pages::convert::refusal;
use crate::parts::text::{heading, para, section};
use crate::store::database;

/// The panel.
pub(super) fn files(shown: &Shown<'_>) -> Html {
    let state = shown.state;
    let view = exports(shown.kept, &state.exported, LANGUAGE, clock());
    let act = |does: fn(&Hand, Option<Card>)| {
        let (hand, own) = (shown.hand.clone(), shown.own.cloned());
        Callback::from(move |_: MouseEvent| does(&hand, own.clone()))
    };
    let pick = {
        let hand = shown.hand.clone();
        Callback::from(move |event: Event| {
            if let Some(file) = browser::chosen(&event) {
                acts::look_at(&hand, file);
            }
        })
    };
    let keeps = match state.promised {
        _ if database().is_none() => Some(P::OnlyMemory),
        Some(true) => Some(P::Promised),
        Some(false) => Some(P::NotPromised),
        None => None,
    };
    let inside = vec![
        heading(say(P::Files)),
        if view.reminder.is_empty() {
            Html::default()
        } else {
            para(if view.due { "met" } else { "small" }, &view.reminder)
        },
        if view.any {
            html! {
                <div class="actions">
                    { key(if view.due { "strong" } else { "" }, say(P::ExportAll), act(|hand, own| acts::export(hand, own, None))) }
                    { key("", say(P::Csv), act(acts::export_table)) }
                </div>
            }
        } else {
            Html::default()
        },
        html! {
            <label class="pick">{ say(P::Import) }
                <input type="file" accept=".json,application/json" onchange={pick} />
            </label>
        },
        para("small", say(P::ImportHint)),
        html! { <div role="status">{ for state.problem.as_ref().map(refusal) }</div> },
        keeps.map(|label| para("small", say(label))).unwrap_or_default(),
    ];
    html! {
        <>
            { section("card files-card", inside) }
            { for state.import.as_ref().map(|one| import::import(shown, one)) }
        </>
    }
}
