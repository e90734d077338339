//! The list of parts, those that were deleted, and the demonstration.

use std::rc::Rc;

use biteband_bench::state::{Field as Name, PartField};
use biteband_bench::view::{DamagedView, Kept, PartRow, PartsView, name_of, parts as view_of};
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use super::state::{Shown, State};
use super::{acts, browser, say};
use crate::app::LANGUAGE;
use crate::asked::clock;
use crate::parts::field::{Look, field};
use crate::parts::text::{heading, p, para, section};

/// A press that does something with what the page holds.
pub(super) fn with(
    shown: &Shown<'_>,
    does: impl Fn(&mut State) + Clone + 'static,
) -> Callback<MouseEvent> {
    let hand = shown.hand.clone();
    Callback::from(move |_: MouseEvent| hand.change(does.clone()))
}

/// A key with its words.
pub(super) fn key(class: &'static str, text: &str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {class} {onclick}>{ text.to_owned() }</button> }
}

/// The list.
pub(super) fn list(shown: &Shown<'_>) -> Html {
    let State { order, whole, read, .. } = *shown.state;
    let view = view_of(shown.app, (shown.own, shown.kept), (order, whole), LANGUAGE, clock());
    let rows = view.rows.iter().map(|one| {
        let (id, here) = (one.id.clone(), one.here);
        let onclick = Callback::from(move |_: MouseEvent| {
            if here {
                browser::focus("#part-card");
            } else {
                acts::take(id.clone(), Some("#part-card"));
            }
        });
        row(one, onclick)
    });
    let mut inside = vec![heading(say(P::List)), asked(shown, &view)];
    inside.push(html! {
        <div role="status">
            if !view.shown.is_empty() { { para("small", &view.shown) } }
            // Before storage was read nobody knows whether there are parts.
            if let Some(empty) = view.empty.filter(|_| read) { { p(empty) } }
        </div>
    });
    inside.push(html! { <ul class="cards">{ for rows }</ul> });
    if !view.more.is_empty() {
        inside.push(key("", &view.more, with(shown, |state| state.whole = true)));
    }
    let begin = Callback::from(|_: MouseEvent| acts::begin());
    inside.push(html! {
        <div class="actions">
            { new_key(shown) }
            if view.begins { { key("", say(P::Begin), begin) } }
            { away_key(shown) }
        </div>
    });
    let damaged = view.damaged.iter().map(|one| damaged(shown, one));
    html! { <>{ section("card", inside) }{ for damaged }</> }
}

fn asked(shown: &Shown<'_>, view: &PartsView) -> Html {
    if !view.searched {
        return Html::default();
    }
    let search = PartField::Search;
    let look =
        Look { title: say(P::Field(search)), hint: Some(say(P::Hint(search))), class: "field" };
    let orders = view.orders.iter().map(|(order, chip)| {
        let order = *order;
        let onclick = with(shown, move |state| state.order = order);
        let class = if chip.on { "chip on" } else { "chip" };
        html! {
            <button type="button" {class} aria-pressed={if chip.on { "true" } else { "false" }}
                {onclick}>{ chip.label.clone() }</button>
        }
    });
    html! {
        <>
            { field(shown.app, shown.dispatch, Name::Part(search), look, None) }
            <div class="group" role="group" aria-label={say(P::OrderTitle)}>
                <span class="group-name" aria-hidden="true">{ say(P::OrderTitle) }</span>
                <div class="chips">{ for orders }</div>
            </div>
        </>
    }
}

/// A card as one key.
pub(super) fn row(row: &PartRow, onclick: Callback<MouseEvent>) -> Html {
    let marks = row.marks.join(" · ");
    html! {
        <li key={row.id.clone()}>
            <button type="button" class="part" aria-current={row.here.then_some("true")} {onclick}>
                <b>{ row.name.clone() }</b>
                <span class={row.class}>{ row.standing.clone() }</span>
                <span class="small">{ row.line.clone() }</span>
                <span class="small">{ row.date.clone() }</span>
                if !marks.is_empty() { <span class="mark-line">{ marks }</span> }
            </button>
        </li>
    }
}

/// The key of a new part.
pub(super) fn new_key(shown: &Shown<'_>) -> Html {
    let dispatch = shown.dispatch.clone();
    key("strong", say(P::New), Callback::from(move |_: MouseEvent| acts::new(&dispatch)))
}

/// The key that puts the part away, where there is one in hand.
pub(super) fn away_key(shown: &Shown<'_>) -> Html {
    if !shown.app.saved.part.in_hand() {
        return Html::default();
    }
    key("", say(P::PutAway), Callback::from(|_: MouseEvent| acts::put_away()))
}

/// A card that cannot be read.
fn damaged(shown: &Shown<'_>, view: &DamagedView) -> Html {
    let save = {
        let (hand, name, text) =
            (shown.hand.clone(), format!("biteband-{}.txt", view.key), view.text.clone());
        Callback::from(move |_: MouseEvent| {
            acts::hand_out(&hand, &name, "text/plain", &text);
        })
    };
    html! {
        <section class="card damaged" aria-label={say(P::Damaged)}>
            <h2>{ say(P::Damaged) }</h2>
            { para("small", &view.title) }
            { p(view.why) }
            <details>
                <summary>{ say(P::Stored) }</summary>
                <textarea class="stored" readonly=true rows="4" aria-label={say(P::Stored)} value={view.text.clone()} />
            </details>
            <div class="actions">{ key("", say(P::SaveText), save) }</div>
        </section>
    }
}

/// Below everything else: what was deleted, and the demonstration.
pub(super) fn aside(shown: &Shown<'_>) -> Html {
    let deleted = &shown.state.deleted;
    html! {
        <>
            if !deleted.kept.is_empty() {
                <details class="card">
                    <summary>{ say(P::Deleted) }{ " (" }{ deleted.kept.len() }{ ")" }</summary>
                    <ul class="gone">{ for deleted.kept.iter().map(|one| gone(shown, one)) }</ul>
                </details>
            }
            { demo(shown) }
        </>
    }
}

fn gone(shown: &Shown<'_>, one: &Kept) -> Html {
    let (id, name) = match one {
        Kept::Card(card) => (card.id.clone(), name_of(card, LANGUAGE)),
        Kept::Damaged(damaged) => (damaged.key.clone(), damaged.title.clone()),
    };
    let key_of = id.clone();
    let back = {
        let (hand, id) = (shown.hand.clone(), id.clone());
        Callback::from(move |_: MouseEvent| acts::put_back(&hand, id.clone()))
    };
    let keys = if shown.state.asked.as_ref() == Some(&id) {
        let gone = {
            let (hand, app, id) = (shown.hand.clone(), Rc::clone(shown.app), id.clone());
            Callback::from(move |_: MouseEvent| acts::remove(&hand, &app, id.clone()))
        };
        html! {
            <>
                { p(say(P::ForGoodAsk)) }
                <div class="actions">
                    { key("strong", say(P::ForGood), gone) }
                    { key("", say(P::Keep), with(shown, |state| state.asked = None)) }
                </div>
            </>
        }
    } else {
        let ask = with(shown, move |state| state.asked = Some(id.clone()));
        html! {
            <div class="actions">
                { key("", say(P::Back), back) }
                { key("", say(P::ForGood), ask) }
            </div>
        }
    };
    html! { <li key={key_of}><b>{ name }</b>{ keys }</li> }
}

fn demo(shown: &Shown<'_>) -> Html {
    let there = shown.kept.iter().filter_map(|kept| kept.card()).any(|card| card.demo);
    let (hand, app) = (shown.hand.clone(), Rc::clone(shown.app));
    let onclick = Callback::from(move |_: MouseEvent| acts::demo(&hand, &app, !there));
    let (title, why) = if there { (P::RemoveDemo, None) } else { (P::ShowDemo, Some(P::DemoWhy)) };
    // The list keeps its length, so that the key is not made anew under the finger.
    let why = why.map(|why| para("small", say(why))).unwrap_or_default();
    section("card", vec![key("", say(title), onclick), why])
}
