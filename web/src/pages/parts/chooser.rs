//! The choice of a part, under the top bar of every page.

use std::rc::Rc;

use biteband_bench::state::{Action, Page};
use biteband_bench::view::chooser as view_of;
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use super::state::Shown;
use super::{acts, browser, list, say};
use crate::app::LANGUAGE;
use crate::asked::clock;

/// The panel.
pub(super) fn chooser(shown: &Shown<'_>) -> Html {
    let rows = view_of(shown.own, shown.kept, LANGUAGE, clock());
    let close = {
        let dispatch = shown.dispatch.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                dispatch.emit(Action::Choose(false));
            }
        })
    };
    let rows = rows.iter().map(|row| {
        let (app, dispatch, id) = (Rc::clone(shown.app), shown.dispatch.clone(), row.id.clone());
        let onclick = Callback::from(move |_: MouseEvent| {
            dispatch.emit(Action::Choose(false));
            if app.saved.part.id() != id {
                acts::take(id.clone(), None);
            }
        });
        list::row(row, onclick)
    });
    html! {
        <section class="chooser unsheet" aria-label={say(P::Choose)} onkeydown={close}>
            <ul class="cards">{ for rows }</ul>
            <div class="actions">
                { list::new_key(shown) }
                { list::away_key(shown) }
                <a class="go" href={Page::Parts.hash()} onclick={to_parts(shown)}>{ say(P::All) }</a>
            </div>
        </section>
    }
}

/// The page itself closes the choice; on the page it has to be closed.
fn to_parts(shown: &Shown<'_>) -> Callback<MouseEvent> {
    let dispatch = shown.dispatch.clone();
    Callback::from(move |_: MouseEvent| dispatch.emit(Action::Choose(false)))
}

/// The focus goes back to where the choice was opened, unless it has gone on to something else.
pub(super) fn back() {
    let lost = gloo::utils::document().active_element().is_none_or(|it| {
        it.tag_name() == "BODY" || it.closest(".chooser").is_ok_and(|inside| inside.is_some())
    });
    if lost {
        browser::focus("header.job .hand");
    }
}
