//! Scales side by side, with the reading as one upright band.

use biteband_bench::view::{AlignedView, ScaleLine};
use yew::prelude::*;

/// The drawing.
pub(crate) fn aligned(view: &AlignedView) -> Html {
    let (x, width) = view.reading;
    html! {
        <svg class="aligned" viewBox={format!("0 0 {} {}", view.width, view.height)} role="img"
            aria-label={view.label.clone()}>
            <rect class="reading" x={x.to_string()} width={width.to_string()} y="2"
                height={(view.height).to_string()} />
            { for view.lines.iter().map(line) }
        </svg>
    }
}

fn line(line: &ScaleLine) -> Html {
    let y = line.y.to_string();
    let (from, to) = line.x;
    html! {
        <g key={line.label.clone()}>
            <text class="name" x="2" y={line.y.to_string()} dy="-8">{ &line.label }</text>
            <line class="edge" x1={from.to_string()} x2={to.to_string()} y1={y.clone()} y2={y.clone()} />
            { for line.ticks.iter().map(|tick| html! {
                <>
                    <line class={if tick.label.is_empty() { "minor" } else { "major" }} x1={tick.x.to_string()}
                        x2={tick.x.to_string()} y1={y.clone()} y2={tick.y2.to_string()} />
                    if !tick.label.is_empty() {
                        <text x={tick.x.to_string()} y={tick.y2.to_string()} dy="12" text-anchor="middle">{ &tick.label }</text>
                    }
                </>
            }) }
        </g>
    }
}
