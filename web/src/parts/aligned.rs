//! Scales side by side, with the reading as one upright band.

use biteband_bench::format::plain as place;
use biteband_bench::view::{AlignedView, ScaleLine};
use yew::prelude::*;

/// The drawing.
pub(crate) fn aligned(view: &AlignedView) -> Html {
    let (x, width) = view.reading;
    html! {
        <svg class="aligned" viewBox={format!("0 0 {} {}", place(view.width), place(view.height))} role="img"
            aria-label={view.label.clone()}>
            <rect class="reading" x={place(x)} width={place(width)} y="2"
                height={place(view.height)} />
            { for view.lines.iter().map(line) }
        </svg>
    }
}

fn line(line: &ScaleLine) -> Html {
    let y = place(line.y);
    let (from, to) = line.x;
    html! {
        <g key={line.label.clone()}>
            <text class="name" x="2" y={place(line.y)} dy="-8">{ &line.label }</text>
            <line class="edge" x1={place(from)} x2={place(to)} y1={y.clone()} y2={y.clone()} />
            { for line.ticks.iter().map(|tick| html! {
                <>
                    <line class={if tick.label.is_empty() { "minor" } else { "major" }} x1={place(tick.x)}
                        x2={place(tick.x)} y1={y.clone()} y2={place(tick.y2)} />
                    if !tick.label.is_empty() {
                        <text x={place(tick.x)} y={place(tick.y2)} dy="12" text-anchor="middle">{ &tick.label }</text>
                    }
                </>
            }) }
        </g>
    }
}
