//! On paper: sheets for the wall, shown as they will be printed.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name, Page};
use biteband_bench::view::paper as view_of;
use biteband_bench::words::{Paper, Ui};
use yew::prelude::*;

use super::convert::refusal;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, small};
use crate::parts::field::{Look, field};

const SPAN: Look = Look {
    title: LANGUAGE.paper(Paper::Span),
    hint: Some(LANGUAGE.paper(Paper::SpanHint)),
    class: "field",
};

/// The page.
pub(crate) fn paper(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    let kinds = view.kinds.into_iter().map(|(kind, chip)| (chip, Action::PaperKind(kind)));
    let sizes = view.sizes.into_iter().map(|(letter, chip)| (chip, Action::PaperLetter(letter)));
    let shown: Vec<&'static str> =
        view.scales.iter().filter(|chip| chip.on).map(|chip| chip.key).collect();
    let chosen = !view.scales.is_empty();
    let scales = view.scales.into_iter().map(|chip| {
        let scale = chip.key;
        (chip, Action::ConvertTo { shown: shown.clone(), scale })
    });
    // A browser that cannot print leaves the sheets on the screen.
    let print = Callback::from(|_: MouseEvent| drop(gloo::utils::window().print()));
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ label(Ui::TabPaper) }</h1>
            <div class="col unsheet">
                { tabs(Page::Paper) }
                <section class="card">
                    { chips(dispatch, LANGUAGE.paper(Paper::What), Group::Seen, kinds) }
                    { chips(dispatch, LANGUAGE.paper(Paper::Size), Group::Seen, sizes) }
                    if view.has_span { { field(app, dispatch, Name::PaperSpan, SPAN, None) } }
                    if chosen { { chips(dispatch, LANGUAGE.paper(Paper::Scales), Group::Seen, scales) } }
                    if view.problem.is_none() {
                        <button type="button" class="strong" onclick={print}>{ LANGUAGE.paper(Paper::Print) }</button>
                        { small(LANGUAGE.paper(Paper::Why)) }
                    }
                    <>{ for view.problem.iter().map(refusal) }</>
                </section>
            </div>
            <div class={classes!("col", "sheets", view.paper)}>
                { for view.sheets.into_iter().map(|sheet| html! { <img src={sheet.address} alt={sheet.title} /> }) }
            </div>
        </main>
    }
}
