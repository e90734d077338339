//! The page's own number pad: point and comma are both there, whatever the phone's keyboard shows.

use biteband_bench::state::{Action, Field, PadKey};
use biteband_bench::words::Ui;
use yew::prelude::*;

use super::chips::press;
use super::field::{ask_for_letters, leave};
use crate::app::{Dispatch, label};

/// The pad of a field.
pub(crate) fn pad(name: Field, dispatch: &Dispatch) -> Html {
    // A press must not take the focus from the field, or the pad would close under the finger.
    let stay = Callback::from(|event: MouseEvent| event.prevent_default());
    let key = |key: PadKey| {
        let onclick = press(dispatch, Action::Pad(name, key));
        let (sign, spoken) = match key {
            PadKey::Type(" ") => ("␣", Some(label(Ui::PadSpace))),
            PadKey::Type("-") => ("–", None),
            PadKey::Type(sign) => (sign, None),
            PadKey::Erase => ("⌫", Some(label(Ui::PadErase))),
        };
        html! { <button type="button" tabindex="-1" aria-label={spoken} {onclick}>{ sign }</button> }
    };
    let letters = {
        let dispatch = dispatch.clone();
        Callback::from(move |_: MouseEvent| ask_for_letters(name, &dispatch))
    };
    let done = Callback::from(move |_: MouseEvent| leave(name));
    html! {
        <div class="pad" role="group" aria-label={label(Ui::PadTitle)} onmousedown={stay}>
            { for name.pad().iter().map(|row| html! {
                <div class="pad-row">{ for row.iter().map(|k| key(*k)) }</div>
            }) }
            <div class="pad-row">
                <button type="button" tabindex="-1" class="letters" onclick={letters}>{ label(Ui::PadLetters) }</button>
                <button type="button" tabindex="-1" class="done" onclick={done}>{ label(Ui::PadDone) }</button>
            </div>
        </div>
    }
}
