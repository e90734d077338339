//! From a mark to its number: what to measure, the number, and whether the test is valid.

use std::rc::Rc;

use biteband_bench::answer::IndentAnswer;
use biteband_bench::state::{Action, App, Field as Name, MarkField, MarkKind, Page};
use biteband_bench::view::{MarkEntry, MarkView, mark as view_of};
use biteband_bench::words::{Mark, Ui};
use yew::prelude::*;

use super::convert::refusal;
use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, folded, small};
use crate::parts::field::{Look, field};

/// The page.
pub(crate) fn mark(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ label(Ui::Mark(Mark::Tab)) }</h1>
            <div class="col">{ tabs(Page::Mark) }{ entry(props, &view) }</div>
            <div class="col">
                <div role="status" class="col">
                    if !view.hint.is_empty() { <p class="hint">{ &view.hint }</p> }
                    { for view.problem.iter().map(refusal) }
                    { for view.answer.iter().map(verdict) }
                </div>
                { for view.answer.iter().map(rest) }
            </div>
        </main>
    }
}

fn entry(props: Handed<'_>, view: &MarkView) -> Html {
    let Handed { app, dispatch } = props;
    let kinds = view.kinds.iter().map(|(kind, chip)| (chip.clone(), Action::MarkKind(*kind)));
    let scales = view.scales.iter().map(|chip| (chip.clone(), Action::MarkScale(chip.key)));
    let shapes = view.shapes.iter().map(|(shape, chip)| (chip.clone(), Action::MarkShape(*shape)));
    let lies = view.diagonals.iter().map(|(along, chip)| (chip.clone(), Action::MarkAlong(*along)));
    let typed = |name: MarkField, title: Mark, hint: Option<Mark>| {
        let look = Look { title: Ui::Mark(title), hint: hint.map(Ui::Mark), class: "field" };
        field(app, dispatch, Name::Mark(name), look, None)
    };
    html! {
        <>
            <section class="card">
                { chips(dispatch, Ui::Mark(Mark::Kind), Group::Heard, kinds) }
                { drawing(app.saved.mark.kind, view.drawing) }
                if !view.scales.is_empty() { { chips(dispatch, Ui::Mark(Mark::Scale), Group::Seen, scales) } }
                { for view.fields.iter().map(|MarkEntry { field, title, hint }| typed(*field, *title, Some(*hint))) }
            </section>
            { folded(Ui::Mark(Mark::RoundTitle), html! {
                <>
                    { typed(MarkField::Round, Mark::Round, Some(Mark::RoundHint)) }
                    { chips(dispatch, Ui::Mark(Mark::RoundShape), Group::Seen, shapes) }
                    if !view.diagonals.is_empty() { { chips(dispatch, Ui::Mark(Mark::Diagonals), Group::Seen, lies) } }
                </>
            }) }
            { folded(Ui::Mark(Mark::ThinTitle), html! {
                <>
                    { typed(MarkField::Thickness, Mark::Thickness, Some(Mark::ThicknessHint)) }
                    { typed(MarkField::Edge, Mark::Edge, None) }
                    { typed(MarkField::Next, Mark::Next, None) }
                </>
            }) }
        </>
    }
}

/// The mark from above, or from the side where its depth counts, with what to measure.
fn drawing(kind: MarkKind, what: Mark) -> Html {
    let (shape, measure, letters): (_, _, &[(&str, &str, &str)]) = match kind {
        MarkKind::Vickers => (
            "M100 12 L148 60 L100 108 L52 60 Z",
            "M52 60 H148 M100 12 V108",
            &[("62", "54", "d1"), ("104", "44", "d2")],
        ),
        MarkKind::Brinell => (
            "M54 60 a46 46 0 1 0 92 0 a46 46 0 1 0 -92 0 Z",
            "M54 60 H146 M100 14 V106",
            &[("62", "54", "d1"), ("104", "44", "d2")],
        ),
        MarkKind::Knoop => (
            "M14 60 L100 48 L186 60 L100 72 Z",
            "M14 88 H186 M14 66 V94 M186 66 V94",
            &[("96", "106", "d")],
        ),
        MarkKind::Rockwell => (
            "M14 36 H70 L100 84 L130 36 H186",
            "M100 84 H160 M130 36 H160 M152 36 V84",
            &[("160", "64", "h")],
        ),
    };
    html! {
        <figure class="mark">
            <svg viewBox="0 0 200 120" role="img" aria-label={label(Ui::Mark(what))}>
                <path class="shape" d={shape} />
                <path class="measure" d={measure} />
                { for letters.iter().map(|(x, y, letter)| html! { <text x={*x} y={*y}>{ *letter }</text> }) }
            </svg>
            <figcaption class="small">{ label(Ui::Mark(what)) }</figcaption>
        </figure>
    }
}

fn verdict(answer: &IndentAnswer) -> Html {
    html! {
        <section class={if answer.valid { "verdict" } else { "verdict conflict" }}>
            <p class="num">{ &answer.shown }</p>
            <p class="say">{ &answer.designation }</p>
            <p class="met">{ &answer.verdict }</p>
            { for answer.limits.iter().filter(|limit| !limit.holds).map(|limit| html! { <p>{ "✗ " }{ &limit.text }</p> }) }
            { for answer.correction.iter().map(|found| html! { <p>{ &found.text }</p> }) }
            { for answer.series.iter().filter(|found| !found.text.is_empty()).map(|found| html! {
                <>
                    <p>{ &found.text }</p>
                    { for found.outlier.iter().map(|odd| html! { <p><b>{ &odd.text }</b></p> }) }
                </>
            }) }
        </section>
    }
}

fn rest(answer: &IndentAnswer) -> Html {
    let texts = |list: Vec<&String>| -> Html {
        list.into_iter().map(|text| html! { <p>{ text }</p> }).collect()
    };
    let kept = answer.limits.iter().filter(|limit| limit.holds);
    let rules: Html = kept.map(|limit| html! { <p>{ "✓ " }{ &limit.text }</p> }).collect();
    let thinnest = texts(answer.thinnest.iter().map(|found| &found.text).collect());
    let machine = texts(answer.machine.limits.iter().map(|limit| &limit.text).collect());
    html! {
        <>
            if !answer.better.is_empty() {
                <section class="next">
                    <h2>{ label(Ui::Mark(Mark::Better)) }</h2>
                    { for answer.better.iter().map(|found| html! { <p><b>{ &found.test }</b>{ ": " }{ &found.shown }</p> }) }
                </section>
            }
            if !answer.converted.is_empty() {
                <section class="card">
                    <h2>{ label(Ui::Mark(Mark::OtherScales)) }</h2>
                    <table class="read"><tbody>
                        { for answer.converted.iter().map(|found| html! {
                            <tr key={found.scale}><th scope="row">{ found.scale }</th><td>{ &found.shown }</td></tr>
                        }) }
                    </tbody></table>
                </section>
            }
            { for answer.notes.iter().map(|note| small(note.clone())) }
            { folded(Ui::Mark(Mark::Rules), html! { <>{ rules }{ thinnest }</> }) }
            { folded(Ui::Mark(Mark::TesterTitle), html! { <>{ machine }<p>{ &answer.machine.text }</p></> }) }
            { for answer.cautions.iter().map(|caution| html! { <section class="caution">{ caution }</section> }) }
        </>
    }
}
