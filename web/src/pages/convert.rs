//! Convert: a reading as it is written, on every scale that a table reaches.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name};
use biteband_bench::view::{Chip, ConvertView, Problem, ResultView, convert as view_of};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::aligned::aligned;
use crate::parts::chips::{Name as Group, chips};
use crate::parts::field::Field;

/// The page.
pub(crate) fn convert(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ LANGUAGE.say(Phrase::Convert) }</h1>
            <div class="col">{ entry(props, &view) }</div>
            <div class="col">
                <div role="status" class="col">{ answer(&view) }</div>
                { where_from(&view) }
                { for view.cautions.iter().map(|caution| html! { <section class="caution">{ caution }</section> }) }
            </div>
        </main>
    }
}

fn entry(props: Handed<'_>, view: &ConvertView) -> Html {
    let keys: Vec<&'static str> = view.scales.iter().map(|chip| chip.key).collect();
    let pick = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(key) = keys.get(place) {
                dispatch.emit(Action::ConvertScale(key));
            }
        })
    };
    let more = props.app.saved.convert.more;
    let toggle = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: MouseEvent| dispatch.emit(Action::ConvertMore(!more)))
    };
    html! {
        <section class="card">
            <Field app={Rc::clone(props.app)} dispatch={props.dispatch.clone()} name={Name::Convert} large=true
                label={label(Ui::ConvertField)} hint={label(Ui::ConvertHint)} problem={view.problem.clone()} />
            { chips(Ui::ConvertScales, Group::Heard, &view.scales, &pick) }
            <button type="button" class="quiet" onclick={toggle} aria-expanded={more.to_string()}>
                { label(if more { Ui::FewerScales } else { Ui::MoreScales }) }
            </button>
            { tables(props, view) }
            <p class="small">{ LANGUAGE.say(Phrase::Material) }</p>
        </section>
    }
}

fn tables(props: Handed<'_>, view: &ConvertView) -> Html {
    let keys: Vec<Option<&'static str>> = view.tables.iter().map(|chip| chip.key).collect();
    let pick = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(key) = keys.get(place) {
                dispatch.emit(Action::ConvertTable(*key));
            }
        })
    };
    let list: Vec<Chip> = view
        .tables
        .iter()
        .map(|t| Chip { key: t.key.unwrap_or("any"), label: t.label.clone(), on: t.on })
        .collect();
    chips(Ui::TableChoice, Group::Seen, &list, &pick)
}

fn answer(view: &ConvertView) -> Html {
    html! {
        <>
            if !view.hint.is_empty() { <p class="hint">{ &view.hint }</p> }
            if !view.understood.is_empty() {
                <div class="understood">
                    <p><b>{ &view.understood }</b></p>
                    { for view.notes.iter().map(|note| html! { <p class="small">{ note }</p> }) }
                </div>
            }
            if let Some(drawing) = &view.aligned {
                <section class="card">{ aligned(drawing) }</section>
            }
            if !view.results.is_empty() {
                <section class="card" aria-label={label(Ui::ConvertResults)}>
                    <table class="read results"><tbody>
                        { for view.results.iter().map(|result| html! {
                            <tr key={result.key}>
                                <th scope="row">{ &result.name }<small>{ &result.basis }</small></th>
                                <td>{ &result.shown }<small>{ &result.width }</small></td>
                            </tr>
                        }) }
                    </tbody></table>
                    <p class="small">{ LANGUAGE.say(Phrase::WidthMeaning) }</p>
                </section>
            }
            { for view.refusals.iter().map(refusal) }
        </>
    }
}

fn refusal(problem: &Problem) -> Html {
    html! { <section class="refusal"><p>{ &problem.message }</p><p>{ &problem.instead }</p></section> }
}

/// Table, rows, what other tables say, width: behind each number, folded away.
fn where_from(view: &ConvertView) -> Html {
    html! {
        if !view.results.is_empty() {
            <details class="card">
                <summary>{ label(Ui::ConvertWhere) }</summary>
                { for view.results.iter().map(origin) }
            </details>
        }
    }
}

fn origin(result: &ResultView) -> Html {
    html! {
        <section class="origin" key={result.key}>
            <h2>{ &result.name }</h2>
            <p><b>{ &result.shown }</b>{ " " }{ &result.width }</p>
            <p>{ result.table }{ ": " }{ &result.basis }</p>
            if !result.marks.is_empty() { <p>{ &result.marks }</p> }
            <p class="small">{ &result.source }</p>
            <p class="small">{ result.material }</p>
            <p class="small">{ &result.others_line }</p>
        </section>
    }
}
