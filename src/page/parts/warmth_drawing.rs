//! Self-heating over the days: a band, its likely line, and the yeast's range behind it.

use super::live::list;
use super::picture::Picture;
use crate::chart::{Warmth, warmth};
use crate::quantity::write_number;
use leptos::prelude::*;

/// What is drawn, in the brewer's degrees.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct WarmthData {
    /// Days, lowest, likely, highest.
    pub days: Vec<(f64, f64, f64, f64)>,
    /// The yeast's range.
    pub range: (f64, f64),
    /// The degrees' symbol.
    pub symbol: &'static str,
    /// The words for the range.
    pub range_text: String,
}

/// Draws it.
#[component]
pub fn WarmthDrawing(
    data: WarmthData,
    #[prop(into)] title: String,
    #[prop(into)] description: String,
) -> impl IntoView {
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
    view! {
        <Picture kind="warmth" size=Warmth::SIZE title description>
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
                "days"
            </text>
        </Picture>
    }
}
