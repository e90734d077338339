//! The engraved rule: files with their keys, the belief as a ridge beside them.

use biteband_bench::format::plain as place;
use biteband_bench::state::Action;
use biteband_bench::view::{KeyView, RidgeView, RuleView};
use biteband_bench::words::Ui;
use yew::prelude::*;

use super::chips::press;
use crate::app::{Dispatch, label};

/// The rule; `next` is the file that the next stroke is best made with.
pub(crate) fn rule(view: &RuleView, next: Option<f64>, dispatch: &Dispatch) -> Html {
    let next = next.map(f64::to_bits);
    html! {
        <section class="rule" aria-label={label(Ui::GradedFiles)}>
            <div class="files">
                { for view.rows.iter().map(|row| {
                    let marked = next == Some(row.grade.to_bits());
                    html! {
                        <div class={classes!("file", marked.then_some("next-file"))} key={row.label.clone()}
                            role="group" aria-label={row.label.clone()}>
                            <div class="tick">{ &row.label }</div>
                            { for row.keys.iter().map(|k| key(k, row.grade, dispatch)) }
                        </div>
                    }
                }) }
            </div>
            { ridge(&view.ridge) }
        </section>
    }
}

fn key(view: &KeyView, grade: f64, dispatch: &Dispatch) -> Html {
    let outcome = view.outcome;
    let pressed = view.count > 0;
    let onclick = press(dispatch, Action::Stroke { grade, outcome });
    // A filled or open ring beside the word, so that the colour is never alone.
    let mark = match (outcome, pressed) {
        ("bites", true) => "● ",
        ("skates", true) => "○ ",
        _ => "",
    };
    let text = if outcome == "slight" {
        let times = if view.count > 1 { format!("?×{}", view.count) } else { "?".to_owned() };
        html! { times }
    } else {
        html! { <>{ mark }{ &view.label }</> }
    };
    html! {
        <button type="button" class={classes!("key", outcome, pressed.then_some("on"))}
            aria-label={spoken(view)} {onclick}>{ text }</button>
    }
}

fn spoken(view: &KeyView) -> String {
    if view.count == 0 { view.spoken.clone() } else { format!("{}, {}", view.spoken, view.count) }
}

fn ridge(view: &RidgeView) -> Html {
    let view_box = format!("0 0 {} {}", place(view.width), place(view.height));
    let bar =
        |(top, height): (f64, f64), x: &'static str, width: &'static str, class: &'static str| {
            html! {
                <rect {class} {x} {width} y={place(top)} height={place(height)} />
            }
        };
    html! {
        <svg class="ridge" viewBox={view_box} preserveAspectRatio="none" role="img" aria-label={view.label.clone()}>
            { for view.goal.map(|place| bar(place, "68", "12", "goal")) }
            if !view.path.is_empty() { <path class="belief" d={view.path.clone()} /> }
            { for view.band.map(|place| bar(place, "0", "4", "band")) }
            { for view.marks.iter().map(|place| bar(*place, "60", "4", "read")) }
            <line class="edge" x1="4" x2="4" y1="0" y2={place(view.height)} />
            { for view.ticks.iter().map(|tick| html! {
                <line class={if tick.major { "major" } else { "minor" }} x1="4" x2={place(tick.x2)}
                    y1={place(tick.y)} y2={place(tick.y)} />
            }) }
        </svg>
    }
}
