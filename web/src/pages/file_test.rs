//! File test: keys per file, the belief as a ridge, the verdict, the next stroke.

use std::rc::Rc;

use biteband_bench::answer::ConditionsInput;
use biteband_bench::state::{Action, App, Field as Name};
use biteband_bench::view::{Chip, FileTestView, OddsView, file_test as view_of};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::chips::{Name as Group, chips};
use crate::parts::field::Field;
use crate::parts::rule::rule;

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
                { verdict(&view) }
            </div>
            <div class="col keys-col">
                { rule(&view.rule, view.next_grade, dispatch) }
                { controls(props, &view) }
            </div>
            <div class="col rest">
                { next(&view) }
                { notes(&view) }
                { scales(&view) }
                <section class="card">{ target(props, &view) }</section>
                { conditions(props) }
                { set_up(props, &view) }
                <details class="card">
                    <summary>{ label(Ui::Why) }</summary>
                    <p>{ label(Ui::WhyModel) }</p>
                </details>
                <section class="caution">
                    <b>{ LANGUAGE.say(Phrase::EyesTitle) }</b>{ " " }{ LANGUAGE.say(Phrase::Eyes) }
                </section>
            </div>
        </main>
    }
}

fn verdict(view: &FileTestView) -> Html {
    let number = if view.unit.is_empty() { "num words" } else { "num" };
    html! {
        <section class={classes!("verdict", (!view.conflicts.is_empty()).then_some("conflict"))} role="status">
            <div class="say">{ &view.say }</div>
            <div class={number}>{ &view.number }
                if !view.unit.is_empty() { <>{ " " }<small>{ view.unit }</small></> }
            </div>
            if !view.level.is_empty() { <p class="small">{ &view.level }</p> }
            { for view.odds.as_ref().map(odds) }
            if let Some(problem) = &view.problem { <p class="error">{ &problem.message }{ " " }{ &problem.instead }</p> }
            { for view.conflicts.iter().map(|conflict| html! {
                <div class="conflict">
                    <p><b>{ &conflict.why }</b></p>
                    <p class="small">{ LANGUAGE.say(Phrase::Ui(Ui::LikelyCauses)) }</p>
                    <ol>{ for conflict.causes.iter().map(|cause| html! { <li>{ cause }</li> }) }</ol>
                    { for conflict.without.iter().map(|line| html! { <p class="small">{ line }</p> }) }
                </div>
            }) }
        </section>
    }
}

fn odds(view: &OddsView) -> Html {
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
    let send = |action: Action| {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: MouseEvent| dispatch.emit(action.clone()))
    };
    let spots: Vec<u8> = view.spots.iter().map(|(spot, _)| *spot).collect();
    let pick = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(spot) = spots.get(place) {
                dispatch.emit(Action::PickSpot(*spot));
            }
        })
    };
    html! {
        <div class="controls">
            <div class="actions">
                <button type="button" disabled={!view.can_undo} onclick={send(Action::Undo)}>{ label(Ui::Undo) }</button>
                <button type="button" disabled={!view.can_clear} onclick={send(Action::StartAgain)}>{ label(Ui::StartAgain) }</button>
            </div>
            { chips(Ui::Spot, Group::Seen, &labels(&view.spots), &pick) }
        </div>
    }
}

fn labels<T>(list: &[(T, Chip)]) -> Vec<Chip> {
    list.iter().map(|(_, chip)| chip.clone()).collect()
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
                        <tr><th scope="row">{ &row.name }</th><td>{ &row.shown }</td><td>{ row.table }</td></tr>
                    }) }
                </tbody></table>
                <p class="small">{ LANGUAGE.say(Phrase::OtherScalesWidth) }</p>
            </section>
        }
    }
}

fn field(props: Handed<'_>, view: &FileTestView, name: Name, title: Ui, hint: Option<Ui>) -> Html {
    html! {
        <Field app={Rc::clone(props.app)} dispatch={props.dispatch.clone()} {name} label={label(title)}
            hint={hint.map(label).unwrap_or_default()} problem={view.problem_of(name).cloned()} />
    }
}

fn target(props: Handed<'_>, view: &FileTestView) -> Html {
    field(props, view, Name::Target, Ui::Target, Some(Ui::TargetHint))
}

/// A yes-or-no condition as two chips.
fn condition(
    props: Handed<'_>,
    title: Ui,
    names: [(Ui, bool); 2],
    set: [ConditionsInput; 2],
) -> Html {
    let dispatch = props.dispatch.clone();
    let onpick = Callback::from(move |place: usize| {
        if let Some(conditions) = set.get(place) {
            dispatch.emit(Action::SetConditions(*conditions));
        }
    });
    let both = names.map(|(ui, on)| Chip {
        key: "condition",
        label: LANGUAGE.say(Phrase::Ui(ui)).into_owned(),
        on,
    });
    chips(title, Group::Seen, &both, &onpick)
}

fn conditions(props: Handed<'_>) -> Html {
    let now = props.app.saved.file_test.conditions;
    let skin = |ground| ConditionsInput { skin_ground: Some(ground), ..now };
    let edge = |edge| ConditionsInput { edge, ..now };
    let finish = |finish_differs| ConditionsInput { finish_differs, ..now };
    let steel = |carbide_rich| ConditionsInput { carbide_rich, ..now };
    html! {
        <section class="card">
            <h2>{ label(Ui::Conditions) }</h2>
            { condition(props, Ui::ConditionSkin,
                [(Ui::SkinGround, now.skin_ground == Some(true)), (Ui::SkinNotGround, now.skin_ground == Some(false))],
                [skin(true), skin(false)]) }
            { condition(props, Ui::ConditionPlace,
                [(Ui::PlaceFlat, !now.edge), (Ui::PlaceEdge, now.edge)], [edge(false), edge(true)]) }
            { condition(props, Ui::ConditionFinish,
                [(Ui::FinishSame, !now.finish_differs), (Ui::FinishDifferent, now.finish_differs)],
                [finish(false), finish(true)]) }
            { condition(props, Ui::ConditionSteel,
                [(Ui::SteelOrdinary, !now.carbide_rich), (Ui::SteelCarbide, now.carbide_rich)],
                [steel(false), steel(true)]) }
        </section>
    }
}

fn set_up(props: Handed<'_>, view: &FileTestView) -> Html {
    html! {
        <>
            { hand(props, view) }
            { files(props, view) }
            { proving(props, view) }
            { expectation(props, view) }
        </>
    }
}

fn hand(props: Handed<'_>, view: &FileTestView) -> Html {
    let hands: Vec<_> = view.hands.iter().map(|(hand, _)| *hand).collect();
    let dispatch = props.dispatch.clone();
    let onpick = Callback::from(move |place: usize| {
        if let Some(hand) = hands.get(place) {
            dispatch.emit(Action::SetHand(*hand));
        }
    });
    html! {
        <section class="card">
            <h2>{ label(Ui::HandTitle) }</h2>
            { chips(Ui::HandTitle, Group::Heard, &labels(&view.hands), &onpick) }
            <p class="small">{ &view.hand_meaning }</p>
        </section>
    }
}

fn files(props: Handed<'_>, view: &FileTestView) -> Html {
    let take = |grades: &'static str, tolerance: &'static str| {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: MouseEvent| dispatch.emit(Action::TakeSet(grades, tolerance)))
    };
    html! {
        <details class="card">
            <summary>{ label(Ui::FilesTitle) }</summary>
            <div class="actions">
                <button type="button" onclick={take("65 60 55 50 45 40", "1")}>{ label(Ui::TradeSet) }</button>
                <button type="button" onclick={take("63", "3")}>{ label(Ui::OrdinaryFile) }</button>
            </div>
            { field(props, view, Name::Grades, Ui::FilesLabel, Some(Ui::FilesHint)) }
            { field(props, view, Name::Tolerance, Ui::ToleranceLabel, Some(Ui::ToleranceHint)) }
        </details>
    }
}

fn proving(props: Handed<'_>, view: &FileTestView) -> Html {
    let files: Vec<f64> = view.proof_files.iter().map(|(grade, _)| *grade).collect();
    let pick = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |place: usize| {
            if let Some(grade) = files.get(place) {
                dispatch.emit(Action::ProofFile(*grade));
            }
        })
    };
    let send = |action: Action| {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: MouseEvent| dispatch.emit(action.clone()))
    };
    html! {
        <details class="card">
            <summary>{ label(Ui::ProveTitle) }</summary>
            <p class="small">{ label(Ui::ProveWhy) }</p>
            { chips(Ui::ProveFile, Group::Seen, &labels(&view.proof_files), &pick) }
            { field(props, view, Name::ProofKnown, Ui::ProveKnown, Some(Ui::ProveKnownHint)) }
            <div class="actions">
                <button type="button" onclick={send(Action::Prove("bites"))}>{ label(Ui::ProveBites) }</button>
                <button type="button" onclick={send(Action::Prove("slight"))}>{ label(Ui::Slight) }</button>
                <button type="button" onclick={send(Action::Prove("skates"))}>{ label(Ui::ProveSkates) }</button>
            </div>
            <ul class="proofs">
                { for view.proofs.iter().map(|proof| html! {
                    <li><span>{ &proof.text }</span>
                        <button type="button" onclick={send(Action::RemoveProof(proof.index))}
                            aria-label={format!("{}: {}", label(Ui::Remove), proof.text)}>{ label(Ui::Remove) }</button></li>
                }) }
            </ul>
        </details>
    }
}

fn expectation(props: Handed<'_>, view: &FileTestView) -> Html {
    let on = props.app.saved.file_test.prior_on;
    let toggle = {
        let dispatch = props.dispatch.clone();
        Callback::from(move |_: usize| dispatch.emit(Action::SetPrior(!on)))
    };
    let chip = Chip { key: "prior", label: label(Ui::PriorOn).to_string(), on };
    html! {
        <details class="card">
            <summary>{ label(Ui::PriorTitle) }</summary>
            <p class="small">{ label(Ui::PriorWhy) }</p>
            { chips(Ui::PriorTitle, Group::Heard, &[chip], &toggle) }
            { field(props, view, Name::PriorMean, Ui::PriorMean, None) }
            { field(props, view, Name::PriorSd, Ui::PriorSd, None) }
        </details>
    }
}
