//! Parts: the card of the part in hand, and those of all others.

mod acts;
mod browser;
mod card;
mod chooser;
mod desk;
mod files;
mod import;
mod keeper;
mod list;
mod photos;
mod shelf;
mod state;
mod story;

use std::rc::Rc;

use biteband_bench::state::{App, Page, PartAction, PartNotice};
use biteband_bench::words::PartsPage as P;
use yew::prelude::*;

use crate::app::{Dispatch, LANGUAGE};
use crate::parts::chips::press;
use crate::parts::text::p;
use crate::rooms::{Heat, put_on_card};

const fn say(label: P) -> &'static str {
    LANGUAGE.parts_page(label)
}

/// The page; on every other page what belongs to the part in hand.
pub(crate) fn parts(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    keeper::follow(app, dispatch);
    put_on_card(heated);
    let open = app.saved.page == Page::Parts || app.session.choosing;
    html! {
        <>
            <div class="notices" role="status">
                { for app.session.parts.iter().map(|notice| told(*notice, dispatch)) }
            </div>
            if open { <desk::Desk app={Rc::clone(app)} dispatch={dispatch.clone()} /> }
        </>
    }
}

/// A heat that another page tells.
fn heated(dispatch: &Dispatch, heat: Heat) {
    let action = match heat {
        Heat::Hardened(what) => PartAction::Hardened(what),
        Heat::Tempered(what) => PartAction::Tempered(what),
    };
    dispatch.emit(action.into());
}

/// What the keeping of cards has to say.
fn told(notice: PartNotice, dispatch: &Dispatch) -> Html {
    let gone = press(dispatch, PartAction::Dismiss(notice).into());
    html! {
        <div class="notice trouble">
            { p(say(P::Told(notice))) }
            <div class="actions"><button type="button" onclick={gone}>{ say(P::Dismiss) }</button></div>
        </div>
    }
}
