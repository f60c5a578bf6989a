//! What either of two doses may come to, as two bars over one scale.

use crate::app::drawing::{Drawing, EndsData};
use crate::page::follow::list;
use crate::page::picture::picture;
use leptos::prelude::*;

/// Draws both bars.
pub fn ends_sketch(drawing: &Drawing, data: &EndsData) -> AnyView {
    let low = data.bars.iter().map(|bar| bar.from).fold(data.target, f64::min);
    let high = data.bars.iter().map(|bar| bar.to).fold(data.target, f64::max);
    // The lively end on the right, the flat one on the left, and room for a figure beside each.
    let scale = 150.0 / (high - low).max(0.1);
    let at = move |gas: f64| 85.0 + scale * (gas - low);
    let bars = data.bars.iter().cloned().zip(0_u8..).map(|(bar, row)| {
        let top = 24.0 + 44.0 * f64::from(row);
        let (left, right) = (at(bar.from), at(bar.to));
        let (below, middle) = (top + 14.0, 0.5 * (left + right));
        view! {
            <rect class="ends-bar" x=left y=top width=right - left height="20" rx="4" />
            <text class="picture-small" x=left - 6.0 y=below text-anchor="end">
                {bar.from_text}
            </text>
            <text class="picture-small" x=right + 6.0 y=below>
                {bar.to_text}
            </text>
            <text class="picture-small picture-strong" x=middle y=top - 6.0 text-anchor="middle">
                {bar.dose}
            </text>
        }
        .into_any()
    });
    let mark = at(data.target);
    let drawn = view! {
        {list(bars)}
        <path class="ends-target" d=format!("M{mark:.1} 20V94") />
    };
    picture("ends", (320.0, 98.0), drawing, drawn.into_any())
}
