//! Convert: a reading as it is written, on every scale that a table reaches.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name};
use biteband_bench::view::{Chip, ConvertView, Problem, ResultView, convert as view_of};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::aligned::aligned;
use crate::parts::chips::{Name as Group, chips, folded, press, small};
use crate::parts::field::{Look, field};

const LOOK: Look =
    Look { title: Ui::ConvertField, hint: Some(Ui::ConvertHint), class: "field large" };

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
                { table_choice(props, &view) }
                { for view.cautions.iter().map(|caution| html! { <section class="caution">{ caution }</section> }) }
            </div>
        </main>
    }
}

fn entry(props: Handed<'_>, view: &ConvertView) -> Html {
    let Handed { dispatch, .. } = props;
    let more = props.app.saved.convert.more;
    let scales = view.scales.iter().map(|chip| (chip.clone(), Action::ConvertScale(chip.key)));
    html! {
        <section class="card">
            { field(props.app, dispatch, Name::Convert, LOOK, view.problem.as_ref()) }
            { chips(dispatch, Ui::ConvertScales, Group::Heard, scales) }
            <button type="button" class="quiet" onclick={press(dispatch, Action::ConvertMore(!more))}
                aria-expanded={if more { "true" } else { "false" }}>
                { label(if more { Ui::FewerScales } else { Ui::MoreScales }) }
            </button>
        </section>
    }
}

fn table_choice(props: Handed<'_>, view: &ConvertView) -> Html {
    let tables = view.tables.iter().map(|table| {
        let chip =
            Chip { key: table.key.unwrap_or("any"), label: table.label.clone(), on: table.on };
        (chip, Action::ConvertTable(table.key))
    });
    html! { <section class="card">{ chips(props.dispatch, Ui::TableChoice, Group::Seen, tables) }</section> }
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
                    { small(LANGUAGE.say(Phrase::WidthMeaning)) }
                </section>
            }
            { for view.refusals.iter().map(refusal) }
        </>
    }
}

fn refusal(problem: &Problem) -> Html {
    html! { <section class="refusal"><p><b>{ &problem.message }</b></p><p>{ &problem.instead }</p></section> }
}

/// Table, rows, what other tables say, width: behind each number, folded away.
fn where_from(view: &ConvertView) -> Html {
    html! {
        if !view.results.is_empty() {
            { folded(Ui::ConvertWhere, view.results.iter().map(origin).collect()) }
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
            { small(result.source.clone()) }
            { small(result.material) }
            { small(result.others_line.clone()) }
        </section>
    }
}
