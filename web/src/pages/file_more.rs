//! Below the verdict of a file test: the conditions, the hand, the files, readings, proofs, what was expected.

use biteband_bench::answer::ConditionsInput;
use biteband_bench::state::{Action, Field as Name};
use biteband_bench::view::{Chip, FileTestView, ProofView};
use biteband_bench::words::Ui;
use yew::prelude::*;

use super::file_test::{Handed, field};
use crate::app::{Dispatch, label};
use crate::parts::chips::{Name as Group, button, chips, folded, press, small};
use crate::parts::choice::choice;

/// The cards.
pub(crate) fn more(props: Handed<'_>, view: &FileTestView) -> Html {
    html! {
        <>
            { conditions(props) }
            { hand(props, view) }
            { files(props, view) }
            { readings(props, view) }
            { proving(props, view) }
            { expectation(props, view) }
        </>
    }
}

/// A condition as two chips.
fn condition(
    props: Handed<'_>,
    title: &'static str,
    choices: [(&'static str, bool, ConditionsInput); 2],
) -> Html {
    let both = choices.map(|(label, on, conditions)| {
        (Chip { key: "condition", label: label.to_owned(), on }, Action::SetConditions(conditions))
    });
    chips(props.dispatch, title, Group::Seen, both)
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
            { condition(props, label(Ui::ConditionSkin), [
                (label(Ui::SkinGround), now.skin_ground == Some(true), skin(true)),
                (label(Ui::SkinNotGround), now.skin_ground == Some(false), skin(false)),
            ]) }
            { condition(props, label(Ui::ConditionPlace), [
                (label(Ui::PlaceFlat), !now.edge, edge(false)),
                (label(Ui::PlaceEdge), now.edge, edge(true)),
            ]) }
            { condition(props, label(Ui::ConditionFinish), [
                (label(Ui::FinishSame), !now.finish_differs, finish(false)),
                (label(Ui::FinishDifferent), now.finish_differs, finish(true)),
            ]) }
            { condition(props, label(Ui::ConditionSteel), [
                (label(Ui::SteelOrdinary), !now.carbide_rich, steel(false)),
                (label(Ui::SteelCarbide), now.carbide_rich, steel(true)),
            ]) }
        </section>
    }
}

fn hand(props: Handed<'_>, view: &FileTestView) -> Html {
    let hands = view.hands.iter().map(|(hand, chip)| (chip.clone(), Action::SetHand(*hand)));
    html! {
        <section class="card">
            <h2>{ label(Ui::HandTitle) }</h2>
            { chips(props.dispatch, label(Ui::HandTitle), Group::Heard, hands) }
            { small(view.hand_meaning.clone()) }
        </section>
    }
}

fn files(props: Handed<'_>, view: &FileTestView) -> Html {
    let Handed { dispatch, .. } = props;
    folded(
        label(Ui::FilesTitle),
        html! {
            <>
                <div class="actions">
                    { button(dispatch, label(Ui::TradeSet), Action::TakeSet("65 60 55 50 45 40", "1")) }
                    { button(dispatch, label(Ui::OrdinaryFile), Action::TakeSet("63", "3")) }
                </div>
                { field(props, view, Name::Grades, label(Ui::FilesLabel), Some(label(Ui::FilesHint))) }
                { field(props, view, Name::Tolerance, label(Ui::ToleranceLabel), Some(label(Ui::ToleranceHint))) }
            </>
        },
    )
}

fn proving(props: Handed<'_>, view: &FileTestView) -> Html {
    let Handed { dispatch, .. } = props;
    let files =
        view.proof_files.iter().map(|(grade, chip)| (chip.clone(), Action::ProofFile(*grade)));
    folded(
        label(Ui::ProveTitle),
        html! {
            <>
                { small(label(Ui::ProveWhy)) }
                { chips(dispatch, label(Ui::ProveFile), Group::Seen, files) }
                { field(props, view, Name::ProofKnown, label(Ui::ProveKnown), Some(label(Ui::ProveKnownHint))) }
                <div class="actions">
                    { for [(label(Ui::ProveBites), "bites"), (label(Ui::Slight), "slight"), (label(Ui::ProveSkates), "skates")].map(|(title, outcome)| html! {
                        <button type="button" disabled={!view.can_prove}
                            onclick={press(dispatch, Action::Prove(outcome))}>{ title }</button>
                    }) }
                </div>
                { list(dispatch, &view.proofs, Action::RemoveProof) }
            </>
        },
    )
}

/// Entries, each with a button that takes it away.
fn list(dispatch: &Dispatch, entries: &[ProofView], remove: fn(usize) -> Action) -> Html {
    html! {
        <ul class="proofs">
            { for entries.iter().map(|entry| html! {
                <li><span>{ &entry.text }</span>{ button(dispatch, label(Ui::Remove), remove(entry.index)) }</li>
            }) }
        </ul>
    }
}

fn readings(props: Handed<'_>, view: &FileTestView) -> Html {
    let Handed { dispatch, .. } = props;
    folded(
        label(Ui::ReadingTitle),
        html! {
            <>
                { choice(dispatch, label(Ui::ReadingInstrument), &view.instruments, Action::SetInstrument) }
                { field(props, view, Name::Reading, label(Ui::ReadingField), Some(label(Ui::ReadingHint))) }
                <div class="actions">{ button(dispatch, label(Ui::ReadingAdd), Action::AddReading) }</div>
                { list(dispatch, &view.readings, Action::RemoveReading) }
            </>
        },
    )
}

fn expectation(props: Handed<'_>, view: &FileTestView) -> Html {
    let on = props.app.saved.file_test.prior_on;
    let chip = Chip { key: "prior", label: label(Ui::PriorOn).to_string(), on };
    folded(
        label(Ui::PriorTitle),
        html! {
            <>
                { small(label(Ui::PriorWhy)) }
                { chips(props.dispatch, label(Ui::PriorTitle), Group::Heard, [(chip, Action::SetPrior(!on))]) }
                { field(props, view, Name::PriorMean, label(Ui::PriorMean), None) }
                { field(props, view, Name::PriorSd, label(Ui::PriorSd), None) }
            </>
        },
    )
}
