//! The page's own number pad: point and comma are both there, whatever the phone's keyboard shows.

use biteband_bench::state::{Action, Field, PadKey};
use biteband_bench::words::Ui;
use yew::prelude::*;

use crate::app::{Dispatch, label};

/// The pad of a field; `onletters` asks for the phone's own keyboard.
pub(crate) fn pad(
    name: Field,
    dispatch: &Dispatch,
    onletters: Callback<MouseEvent>,
    ondone: Callback<MouseEvent>,
) -> Html {
    // A press must not take the focus from the field, or the pad would close under the finger.
    let stay = Callback::from(|event: MouseEvent| event.prevent_default());
    let key = |key: PadKey| {
        let dispatch = dispatch.clone();
        let onclick = Callback::from(move |_: MouseEvent| dispatch.emit(Action::Pad(name, key)));
        let (sign, spoken) = match key {
            PadKey::Type(" ") => ("␣", Some(label(Ui::PadSpace))),
            PadKey::Type("-") => ("–", None),
            PadKey::Type(sign) => (sign, None),
            PadKey::Erase => ("⌫", Some(label(Ui::PadErase))),
        };
        html! { <button type="button" tabindex="-1" aria-label={spoken} {onclick}>{ sign }</button> }
    };
    html! {
        <div class="pad" role="group" aria-label={label(Ui::PadTitle)} onmousedown={stay}>
            { for name.pad().iter().map(|row| html! {
                <div class="pad-row">{ for row.iter().map(|k| key(*k)) }</div>
            }) }
            <div class="pad-row">
                <button type="button" tabindex="-1" class="plain" onclick={onletters}>{ label(Ui::PadLetters) }</button>
                <button type="button" tabindex="-1" class="done" onclick={ondone}>{ label(Ui::PadDone) }</button>
            </div>
        </div>
    }
}
