//! A row of choices of which one is taken.

use biteband_bench::view::Chip;
use biteband_bench::words::Ui;
use yew::prelude::*;

use crate::app::label;

/// Whether the name of a group is seen as well as heard.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Name {
    Seen,
    Heard,
}

/// Choices in a named group; `onpick` is told the place of the one that was pressed.
pub(crate) fn chips(title: Ui, name: Name, list: &[Chip], onpick: &Callback<usize>) -> Html {
    html! {
        <div class="group" role="group" aria-label={label(title)}>
            if name == Name::Seen { <span class="group-name" aria-hidden="true">{ label(title) }</span> }
            <div class="chips">
                { for list.iter().enumerate().map(|(place, chip)| {
                    let onpick = onpick.clone();
                    let onclick = Callback::from(move |_: MouseEvent| onpick.emit(place));
                    html! {
                        <button type="button" class={classes!("chip", chip.on.then_some("on"))}
                            aria-pressed={chip.on.to_string()} {onclick}>{ chip.label.clone() }</button>
                    }
                }) }
            </div>
        </div>
    }
}
