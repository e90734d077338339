//! A row of choices of which one is taken.

use biteband_bench::view::Chip;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ChipsProps {
    /// Name of the group.
    pub(crate) label: AttrValue,
    /// The choices.
    pub(crate) chips: Vec<Chip>,
    /// Told the place of the choice that was pressed.
    pub(crate) onpick: Callback<usize>,
    /// Whether the name of the group is to be seen as well as heard.
    #[prop_or_default]
    pub(crate) show_label: bool,
}

#[component]
pub(crate) fn Chips(props: &ChipsProps) -> Html {
    html! {
        <div class="group" role="group" aria-label={props.label.clone()}>
            if props.show_label { <span class="group-name" aria-hidden="true">{ props.label.clone() }</span> }
            <div class="chips">
                { for props.chips.iter().enumerate().map(|(place, chip)| {
                    let onpick = props.onpick.clone();
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
