//! File test: keys per file, the belief as a ridge, the verdict, the next stroke.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Field as Name};
use biteband_bench::view::{FileTestView, OddsView, file_test as view_of};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::chips::{Name as Group, chips, folded, off, press};
use crate::parts::field::{Look, field as entry, told};
use crate::parts::rule::rule;
use crate::rooms::{more_cards, next_panel};

/// What every part of a page is handed.
#[derive(Clone, Copy)]
pub(crate) struct Handed<'a> {
    pub(crate) app: &'a Rc<App>,
    pub(crate) dispatch: &'a Dispatch,
}

/// The page.
pub(crate) fn file_test(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ LANGUAGE.say(Phrase::FileTest) }</h1>
            <div class="col answer">
                { verdict(props, &view) }
            </div>
            <div class="col keys-col">
                { rule(&view.rule, view.next_grade, dispatch) }
                { next(&view) }
                { controls(props, &view) }
            </div>
            <div class="col rest">
                { causes(&view) }
                <section class="card">{ target(props, &view) }</section>
                // Each in a list of its own: what comes while somebody types must not move the field in its list.
                <div class="col panel">{ for next_panel().map(|panel| panel(app, dispatch)) }</div>
                { notes(&view) }
                { scales(&view) }
                <>{ for more_cards().map(|cards| cards(props, &view)) }</>
                { folded(label(Ui::Why), html! { <p>{ label(Ui::WhyModel) }</p> }) }
                <section class="caution">
                    <b>{ LANGUAGE.say(Phrase::EyesTitle) }</b>{ " " }{ LANGUAGE.say(Phrase::Eyes) }
                </section>
            </div>
        </main>
    }
}

fn verdict(props: Handed<'_>, view: &FileTestView) -> Html {
    // The place for the odds is kept from the start, so that the keys stay under the finger.
    let wanted = !props.app.saved.file_test.target_text.trim().is_empty();
    let conflict = !view.conflicts.is_empty();
    let number = if view.unit.is_empty() { "num words" } else { "num" };
    html! {
        <section class={classes!("verdict", wanted.then_some("wanted"), conflict.then_some("conflict"))} role="status">
            <div class="say">{ &view.say }</div>
            <div class={number}>{ &view.number }
                if !view.unit.is_empty() { <>{ " " }<small>{ view.unit }</small></> }
            </div>
            if !view.level.is_empty() { <p class="small">{ &view.level }</p> }
            { for view.odds.as_ref().map(odds) }
            if let Some(problem) = &view.problem { <p class="error">{ told(problem) }</p> }
            { for view.conflicts.iter().map(|conflict| html! { <p class="met">{ &conflict.why }</p> }) }
        </section>
    }
}

/// What may be behind a contradiction, below the keys, which stay where they are.
fn causes(view: &FileTestView) -> Html {
    view.conflicts
        .iter()
        .map(|conflict| {
            html! {
                <section class="card causes">
                    <h2>{ label(Ui::LikelyCauses) }</h2>
                    <ol>{ for conflict.causes.iter().map(|cause| html! { <li>{ cause }</li> }) }</ol>
                    { for conflict.without.iter().map(|line| html! { <p class="small">{ line }</p> }) }
                </section>
            }
        })
        .collect()
}

pub(super) fn odds(view: &OddsView) -> Html {
    let [under, inside, over] = view.percent;
    let [under_words, inside_words, over_words] = view.labels.clone();
    let bar = |class: &'static str, from: u32, width: u32| {
        html! { <rect {class} x={from.to_string()} y="0" width={width.to_string()} height="10" /> }
    };
    html! {
        <>
            <p class="met">{ &view.verdict }</p>
            <svg class="odds" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
                { bar("under", 0, under) }
                { bar("inside", under, inside) }
                { bar("over", under.saturating_add(inside), over) }
            </svg>
            <div class="legend"><span>{ under_words }</span><span>{ inside_words }</span><span>{ over_words }</span></div>
        </>
    }
}

fn controls(props: Handed<'_>, view: &FileTestView) -> Html {
    let Handed { dispatch, .. } = props;
    let spots = view.spots.iter().map(|(spot, chip)| (chip.clone(), Action::PickSpot(*spot)));
    html! {
        <div class="controls">
            <div class="actions">
                <button type="button" aria-disabled={off(view.can_undo)} onclick={press(dispatch, Action::Undo)}>{ label(Ui::Undo) }</button>
                <button type="button" aria-disabled={off(view.can_clear)} onclick={press(dispatch, Action::StartAgain)}>{ label(Ui::StartAgain) }</button>
            </div>
            { chips(dispatch, label(Ui::Spot), Group::Seen, spots) }
        </div>
    }
}

fn next(view: &FileTestView) -> Html {
    html! {
        if !view.next.is_empty() {
            <section class="next" aria-label={label(Ui::NextTitle)}>
                <p><b>{ &view.next }</b></p>
                if !view.next_why.is_empty() { <p>{ &view.next_why }</p> }
            </section>
        }
    }
}

fn notes(view: &FileTestView) -> Html {
    html! {
        if !view.notes.is_empty() {
            <section class="card notes">
                { for view.notes.iter().map(|note| html! { <p>{ note }</p> }) }
            </section>
        }
    }
}

fn scales(view: &FileTestView) -> Html {
    html! {
        if !view.scales.is_empty() {
            <section class="card">
                <h2>{ LANGUAGE.say(Phrase::OtherScales) }</h2>
                <table class="read"><tbody>
                    { for view.scales.iter().map(|row| html! {
                        <tr><th scope="row">{ &row.name }<small>{ row.table }</small></th><td>{ &row.shown }</td></tr>
                    }) }
                </tbody></table>
                <p class="small">{ LANGUAGE.say(Phrase::OtherScalesWidth) }</p>
            </section>
        }
    }
}

pub(super) fn field(
    props: Handed<'_>,
    view: &FileTestView,
    name: Name,
    title: &'static str,
    hint: Option<&'static str>,
) -> Html {
    let look = Look { title, hint, class: "field" };
    entry(props.app, props.dispatch, name, look, view.problem_of(name))
}

fn target(props: Handed<'_>, view: &FileTestView) -> Html {
    field(props, view, Name::Target, label(Ui::Target), Some(label(Ui::TargetHint)))
}
