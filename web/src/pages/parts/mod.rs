//! Parts: the card of the part in hand, and those of all others.

mod browser;
mod keeper;
mod shelf;

use std::rc::Rc;

use biteband_bench::state::App;
use biteband_bench::words::Ui;
use yew::prelude::*;

use crate::app::{Dispatch, label};

/// The page; on every other page what belongs to the part in hand.
pub(crate) fn parts(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    keeper::follow(app, dispatch);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ label(Ui::Parts) }</h1>
        </main>
    }
}
