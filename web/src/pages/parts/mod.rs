//! Parts: the card of the part in hand, and those of all others.

use std::rc::Rc;

use biteband_bench::state::App;
use biteband_bench::words::Ui;
use yew::prelude::*;

use crate::app::{Dispatch, label};

/// The page.
pub(crate) fn parts(_app: &Rc<App>, _dispatch: &Dispatch) -> Html {
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ label(Ui::Parts) }</h1>
        </main>
    }
}
