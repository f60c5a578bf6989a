//! Self-heating over the days: a band, its likely line, and the yeast's range behind it.

use crate::app::drawing::{Drawing, WarmthData};
use crate::chart::{Warmth, warmth};
use crate::page::follow::list;
use crate::page::picture::picture;
use crate::quantity::write_number;
use leptos::prelude::*;

/// Draws it.
pub fn warmth_sketch(drawing: &Drawing, data: &WarmthData) -> AnyView {
    let drawn = warmth(&data.days, data.range);
    let (left, right) = Warmth::SIDES;
    let (top, foot) = Warmth::ENDS;
    let degree = move |&(y, value): &(f64, f64)| {
        view! {
            <text class="picture-small" x=left - 6.0 y=y + 5.0 text-anchor="end">
                {write_number(value, 0)}
            </text>
            <path class="course-grid" d=format!("M{left} {y}H{right}") />
        }
        .into_any()
    };
    let day = move |&(x, value): &(f64, f64)| {
        view! {
            <text class="picture-small" x=x y=foot + 20.0 text-anchor="middle">
                {write_number(value, 0)}
            </text>
        }
        .into_any()
    };
    let height = drawn.range.1 - drawn.range.0;
    let drawn = view! {
            <rect class="warmth-range" x=left y=drawn.range.0 width=right - left height=height />
            {list(drawn.degrees.iter().map(degree))}
            {list(drawn.days.iter().map(day))}
            <path class="warmth-band" d=drawn.band.clone() />
            <path class="warmth-likely" d=drawn.likely.clone() />
            <text class="picture-small" x=right y=drawn.range.0 + 16.0 text-anchor="end">
                {data.range_text.clone()}
            </text>
            <text class="picture-small" x=left - 6.0 y=top + 2.0 text-anchor="end">
                {data.symbol}
            </text>
            <text class="picture-small" x=right y=foot + 20.0 text-anchor="end">
                {data.days_text}
            </text>
    };
    picture("warmth", Warmth::SIZE, drawing, drawn.into_any())
}
