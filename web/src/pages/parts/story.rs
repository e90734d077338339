//! What was done to the part and found on it, and what is added to that.

use biteband_bench::card::again;
use biteband_bench::state::{PartAction, PartField};
use biteband_bench::view::StoryRow;
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use super::card::Own;
use super::list::{key, with};
use super::{browser, say};
use crate::app::LANGUAGE;
use crate::parts::text::para;

/// The story, its newest entry last.
pub(super) fn story(own: &Own<'_>) -> Html {
    let view = own.view;
    let open = &own.shown.state.open;
    let tidy = open.tidy;
    let any = view.story.iter().any(|row| row.line.entry.is_some());
    let turn = with(own.shown, |state| state.open.tidy = !state.open.tidy);
    html! {
        <>
        <section class="card">
            <h2 id="part-card" tabindex="-1">{ view.story_title.clone() }</h2>
            <p class="small"><b class="standing">{ view.standing.clone() }</b>
                if !view.line.is_empty() { { " · " }{ view.line.clone() } }
                if !view.demo.is_empty() { { " · " }{ view.demo.clone() } }
            </p>
            <ol class="story">{ for view.story.iter().map(|one| row(own, one)) }</ol>
            if any || view.put_back {
                <div class="actions">
                    if any {
                        <button type="button" class="quiet" aria-pressed={tidy.to_string()} onclick={turn}>{ say(P::Tidy) }</button>
                    }
                    if view.put_back { { own.button(P::PutBack, PartAction::PutBackEntry) } }
                </div>
            }
            { own.keys() }
            { added(own, PartField::Remark, P::AddRemark, PartAction::AddRemark) }
            <details>
                <summary>{ say(P::AddTitle) }</summary>
                { added(own, PartField::Tempered, P::AddTempered, PartAction::AddTempered) }
                { added(own, PartField::Hardened, P::AddHardened, PartAction::AddHardened) }
            </details>
        </section>
        if open.with.is_some() { { own.compared() } }
        if open.text { { own.text() } }
        </>
    }
}

fn added(own: &Own<'_>, field: PartField, label: P, action: PartAction) -> Html {
    html! { <div class="adds">{ own.field(field) }{ own.button(label, action) }</div> }
}

fn row(own: &Own<'_>, StoryRow { line, remove }: &StoryRow) -> Html {
    let shown = own.shown;
    let looked = line.entry.filter(|entry| shown.state.open.again.contains(entry));
    let today = looked.and_then(|entry| again(own.card, entry, LANGUAGE));
    let look = line.entry.map(|entry| {
        let onclick = with(shown, move |state| {
            let again = &mut state.open.again;
            match again.iter().position(|one| *one == entry) {
                Some(place) => drop(again.remove(place)),
                None => again.push(entry),
            }
        });
        key("", say(P::Today), onclick)
    });
    let gone = line.entry.filter(|_| shown.state.open.tidy).map(|entry| {
        let dispatch = shown.dispatch.clone();
        // The focus goes on to the entry that comes next, or to the heading where there is none.
        let onclick = Callback::from(move |_: MouseEvent| {
            browser::focus("#part-card");
            dispatch.emit(PartAction::RemoveEntry(entry).into());
            browser::focus_later(format!("#remove-{entry}"));
        });
        let id = format!("remove-{entry}");
        html! { <button type="button" {id} aria-label={remove.clone()} {onclick}>{ say(P::Remove) }</button> }
    });
    html! {
        <li>
            <p><b>{ line.title.clone() }</b>{ " " }{ line.what.clone() }
                if !line.date.is_empty() { { " " }<span class="when">{ line.date.clone() }</span> }
            </p>
            if !line.said.is_empty() { { para("small", &line.said) } }
            if !line.outdated.is_empty() { { para("small", &line.outdated) }{ for look } }
            if let Some(today) = today { <p class="small" role="status"><b>{ today.text }</b></p> }
            { for gone }
        </li>
    }
}
