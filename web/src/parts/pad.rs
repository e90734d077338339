//! The page's own number pad: point and comma are both there, whatever the phone's keyboard shows.

use biteband_bench::state::{Action, Field, PadKey};
use biteband_bench::words::Ui;
use yew::prelude::*;

use crate::app::{Dispatch, label};

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct PadProps {
    pub(crate) name: Field,
    pub(crate) dispatch: Dispatch,
    /// The phone's own keyboard is wanted.
    pub(crate) onletters: Callback<()>,
    pub(crate) ondone: Callback<()>,
}

#[component]
pub(crate) fn Pad(props: &PadProps) -> Html {
    // A press must not take the focus from the field, or the pad would close under the finger.
    let stay = Callback::from(|event: MouseEvent| event.prevent_default());
    let key = |key: PadKey| {
        let (dispatch, name) = (props.dispatch.clone(), props.name);
        let onclick = Callback::from(move |_: MouseEvent| dispatch.emit(Action::Pad(name, key)));
        let (sign, spoken) = match key {
            PadKey::Type(" ") => ("␣", Some(label(Ui::PadSpace))),
            PadKey::Type("-") => ("–", None),
            PadKey::Type(sign) => (sign, None),
            PadKey::Erase => ("⌫", Some(label(Ui::PadErase))),
        };
        html! { <button type="button" tabindex="-1" aria-label={spoken} {onclick}>{ sign }</button> }
    };
    let emit = |callback: &Callback<()>| {
        let callback = callback.clone();
        Callback::from(move |_: MouseEvent| callback.emit(()))
    };
    html! {
        <div class="pad" role="group" aria-label={label(Ui::PadTitle)} onmousedown={stay}>
            { for props.name.pad().iter().map(|row| html! {
                <div class="pad-row">{ for row.iter().map(|k| key(*k)) }</div>
            }) }
            <div class="pad-row">
                <button type="button" tabindex="-1" class="plain" onclick={emit(&props.onletters)}>{ label(Ui::PadLetters) }</button>
                <button type="button" tabindex="-1" class="done" onclick={emit(&props.ondone)}>{ label(Ui::PadDone) }</button>
            </div>
        </div>
    }
}
