//! Sources, tables, limits, settings: all that is behind the button on top.

use std::rc::Rc;

use biteband_bench::state::{Action, App};
use biteband_bench::view::{AboutView, about as view_of};
use biteband_bench::words::{About, Phrase};
use yew::prelude::*;

use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE};
use crate::parts::chips::{Name as Group, chips};

/// The page.
pub(crate) fn about(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1">{ LANGUAGE.say(Phrase::About) }</h1>
            <div class="col">
                { settings(props, &view) }
                <section class="caution">
                    <h2>{ LANGUAGE.about(About::CautionsTitle) }</h2>
                    { for view.cautions.iter().map(|caution| html! { <p>{ caution }</p> }) }
                </section>
                <section class="card"><h2>{ LANGUAGE.about(About::LimitsTitle) }</h2><p>{ LANGUAGE.about(About::LimitsText) }</p></section>
                <section class="card"><h2>{ LANGUAGE.about(About::PrivacyTitle) }</h2><p>{ LANGUAGE.about(About::PrivacyText) }</p></section>
                <p class="small">{ &view.version }</p>
            </div>
            <div class="col">{ tables(&view) }{ sources(&view) }</div>
        </main>
    }
}

fn settings(props: Handed<'_>, view: &AboutView) -> Html {
    let Handed { dispatch, .. } = props;
    let themes = view.themes.iter().map(|(theme, chip)| (chip.clone(), Action::SetTheme(*theme)));
    let units = view.units.iter().map(|(units, chip)| (chip.clone(), Action::SetUnits(*units)));
    html! {
        <section class="card">
            { chips(dispatch, LANGUAGE.about(About::Theme), Group::Seen, themes) }
            { chips(dispatch, LANGUAGE.about(About::StrengthUnit), Group::Seen, units) }
        </section>
    }
}

fn tables(view: &AboutView) -> Html {
    html! {
        <section class="card">
            <h2>{ LANGUAGE.about(About::TablesTitle) }</h2>
            <dl>
                { for view.tables.iter().map(|table| html! {
                    <div key={table.id}>
                        <dt>{ table.title }</dt>
                        <dd>{ LANGUAGE.say(Phrase::TableSummary { rows: table.rows, columns: &table.columns.join(" ") }) }</dd>
                    </div>
                }) }
            </dl>
        </section>
    }
}

fn sources(view: &AboutView) -> Html {
    html! {
        <section class="card">
            <h2>{ LANGUAGE.about(About::SourcesTitle) }</h2>
            <dl>
                { for view.sources.iter().map(|source| html! {
                    <div key={source.id}>
                        <dt>{ source.body }{ ", " }{ source.title }{ ", " }{ source.edition }</dt>
                        <dd>{ LANGUAGE.say(Phrase::Seen(source.seen)) }{ " " }{ source.note }</dd>
                    </div>
                }) }
            </dl>
        </section>
    }
}
