//! Sources, tables, limits, settings: all that is behind the button on top.

use std::rc::Rc;

use biteband_bench::state::{Action, App};
use biteband_bench::view::{AboutView, Chip, about as view_of};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
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
                    <h2>{ label(Ui::CautionsTitle) }</h2>
                    { for view.cautions.iter().map(|caution| html! { <p>{ caution }</p> }) }
                </section>
                <section class="card"><h2>{ label(Ui::LimitsTitle) }</h2><p>{ label(Ui::LimitsText) }</p></section>
                <section class="card"><h2>{ label(Ui::PrivacyTitle) }</h2><p>{ label(Ui::PrivacyText) }</p></section>
                <p class="small">{ &view.version }</p>
            </div>
            <div class="col">{ tables(&view) }{ sources(&view) }</div>
        </main>
    }
}

fn settings(props: Handed<'_>, view: &AboutView) -> Html {
    let themes: Vec<_> = view.themes.iter().map(|(theme, _)| *theme).collect();
    let units: Vec<_> = view.units.iter().map(|(units, _)| *units).collect();
    let pick_theme = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(theme) = themes.get(place) {
                dispatch.emit(Action::SetTheme(*theme));
            }
        })
    };
    let pick_units = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(units) = units.get(place) {
                dispatch.emit(Action::SetUnits(*units));
            }
        })
    };
    let theme_chips: Vec<Chip> = view.themes.iter().map(|(_, chip)| chip.clone()).collect();
    let unit_chips: Vec<Chip> = view.units.iter().map(|(_, chip)| chip.clone()).collect();
    html! {
        <section class="card">
            { chips(Ui::Theme, Group::Seen, &theme_chips, &pick_theme) }
            { chips(Ui::StrengthUnit, Group::Seen, &unit_chips, &pick_units) }
        </section>
    }
}

fn tables(view: &AboutView) -> Html {
    html! {
        <section class="card">
            <h2>{ label(Ui::TablesTitle) }</h2>
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
            <h2>{ label(Ui::SourcesTitle) }</h2>
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
