//! Convert: a reading as it is written, on every scale that a table reaches.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name, Page};
use biteband_bench::view::{
    AlignedView, Chip, ConvertView, Problem, ResultView, SideBySide, convert as view_of,
};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::aligned::aligned;
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, folded, press, small};
use crate::parts::choice::choice;
use crate::parts::field::{Look, field};

const LOOK: Look = Look {
    title: label(Ui::ConvertField),
    hint: Some(label(Ui::ConvertHint)),
    class: "field large",
};

/// The page.
pub(crate) fn convert(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ LANGUAGE.say(Phrase::Convert) }</h1>
            <div class="col">{ tabs(Page::Convert) }{ entry(props, &view) }</div>
            <div class="col">
                <div role="status" class="col">{ answer(props, &view) }</div>
                { where_from(&view) }
                <>{ for view.side_by_side.iter().map(beside) }</>
                { choices(props, &view) }
                <>{ for view.cautions.iter().map(|caution| html! { <section class="caution">{ caution }</section> }) }</>
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
            { choice(dispatch, label(Ui::MaterialChoice), &view.materials, Action::ConvertMaterial) }
            <>{ for view.no_material.iter().map(refusal) }</>
            { field(props.app, dispatch, Name::Convert, LOOK, view.problem.as_ref()) }
            { chips(dispatch, label(Ui::ConvertScales), Group::Heard, scales) }
            <button type="button" class="quiet" onclick={press(dispatch, Action::ConvertMore(!more))}
                aria-expanded={if more { "true" } else { "false" }}>
                { if more { label(Ui::FewerScales) } else { label(Ui::MoreScales) } }
            </button>
        </section>
    }
}

/// Which scales and which table.
fn choices(props: Handed<'_>, view: &ConvertView) -> Html {
    let shown: Vec<&'static str> =
        view.targets.iter().filter(|chip| chip.on).map(|chip| chip.key).collect();
    let targets = view
        .targets
        .iter()
        .map(|chip| (chip.clone(), Action::ConvertTo { shown: shown.clone(), scale: chip.key }));
    let tables = view.tables.iter().map(|table| {
        let chip =
            Chip { key: table.key.unwrap_or("any"), label: table.label.clone(), on: table.on };
        (chip, Action::ConvertTable(table.key))
    });
    html! {
        if !view.tables.is_empty() { <section class="card">
            if !view.targets.is_empty() {
                { chips(props.dispatch, label(Ui::TargetsChoice), Group::Seen, targets) }
                <button type="button" class="quiet" onclick={press(props.dispatch, Action::ConvertUsual)}>
                    { label(Ui::UsualScales) }
                </button>
            }
            { chips(props.dispatch, label(Ui::TableChoice), Group::Seen, tables) }
        </section> }
    }
}

/// The scales side by side, and the buttons that draw them closer and move them.
fn drawing(props: Handed<'_>, drawn: &AlignedView) -> Html {
    let keys = [
        ("‹", label(Ui::PanSofter), 0, -1),
        ("›", label(Ui::PanHarder), 0, 1),
        ("+", label(Ui::ZoomIn), 1, 0),
        ("–", label(Ui::ZoomOut), -1, 0),
        ("↺", label(Ui::ZoomReset), 0, 0),
    ];
    html! {
        <section class="card">
            { aligned(drawn) }
            <div class="actions">
                { for keys.into_iter().map(|(sign, title, zoom, pan)| html! {
                    <button type="button" aria-label={title}
                        onclick={press(props.dispatch, Action::ConvertDraw { zoom, pan })}>{ sign }</button>
                }) }
            </div>
        </section>
    }
}

/// Every table's number for every scale; wider than a phone, so that it moves by itself.
fn beside(all: &SideBySide) -> Html {
    let head: Html =
        all.tables.iter().map(|table| html! { <th scope="col">{ table }</th> }).collect();
    let row = |(scale, cells): &(&'static str, Vec<String>)| {
        let cells: Html = cells.iter().map(|cell| html! { <td>{ cell }</td> }).collect();
        html! { <tr><th scope="row">{ scale }</th>{ cells }</tr> }
    };
    let table = html! {
        <div class="beside" tabindex="0" role="region" aria-label={label(Ui::SideBySide)}>
            <table><thead><tr><td></td>{ head }</tr></thead><tbody>{ for all.rows.iter().map(row) }</tbody></table>
        </div>
    };
    folded(label(Ui::SideBySide), table)
}

fn answer(props: Handed<'_>, view: &ConvertView) -> Html {
    html! {
        <>
            if !view.hint.is_empty() { <p class="hint">{ &view.hint }</p> }
            if !view.understood.is_empty() {
                <div class="understood">
                    <p><b>{ &view.understood }</b></p>
                    { for view.notes.iter().map(|note| html! { <p class="small">{ note }</p> }) }
                </div>
            }
            <>{ for view.aligned.iter().map(|drawn| drawing(props, drawn)) }</>
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
            <>{ for view.refusals.iter().map(refusal) }</>
        </>
    }
}

pub(super) fn refusal(problem: &Problem) -> Html {
    html! { <section class="refusal"><p><b>{ &problem.message }</b></p><p>{ &problem.instead }</p></section> }
}

/// Table, rows, what other tables say, width: behind each number, folded away.
fn where_from(view: &ConvertView) -> Html {
    html! {
        if !view.results.is_empty() {
            { folded(label(Ui::ConvertWhere), view.results.iter().map(origin).collect()) }
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
            if !result.measured.is_empty() { { small(result.measured.clone()) } }
        </section>
    }
}
