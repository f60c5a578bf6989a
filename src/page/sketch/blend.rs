//! The blend: how much of what at which temperature meets in the vessel, and what comes of it.

use crate::app::drawing::{BlendData, Drawing};
use crate::chart::{Layer, Placed, Substance, bucket};
use crate::page::follow::{list, or_nothing};
use crate::page::picture::{hatch, picture, unique};
use leptos::prelude::*;

/// Draws one vessel.
pub fn blend_sketch(drawing: &Drawing, data: &BlendData) -> AnyView {
    let (inside, spill) = (unique("inside"), unique("hatch"));
    let drawn = view! {
        <clipPath id=inside.clone()>
            <path d=INSIDE />
        </clipPath>
        {hatch(spill.clone(), "hatch-stop", false)}
        {vessel(data, &(inside, spill))}
    };
    picture("blend", (320.0, 272.0), drawing, drawn.into_any())
}

/// The inside of the bucket, a little narrower at its floor.
const INSIDE: &str = "M14 78H170L160 252Q159 258 153 258H31Q25 258 24 252Z";

fn vessel(d: &BlendData, (inside, spill): &(String, String)) -> AnyView {
    let drawn = bucket(&d.layers, d.capacity);
    let placed: Vec<(Layer, Placed)> =
        d.layers.iter().cloned().zip(drawn.layers.iter().copied()).collect();
    let fills = list(placed.iter().map(|(layer, at)| fill(layer.substance, *at)));
    let labels = list(placed.into_iter().map(|(layer, at)| label(layer, at)));
    let overflow = drawn.overflow.map(|top| {
        // It stands over the brim and runs down the side that bears no words.
        let shape = format!(
            "M8 78Q14 {top:.1} 52 {top:.1}H132Q164 {top:.1} 170 78H15V112Q15 118 10 118T4 112V84Q4 78 8 78Z"
        );
        view! {
            <path class="blend-spill" d=shape.clone() />
            <path class="blend-spill-hatch" d=shape fill=format!("url(#{spill})") />
        }
        .into_any()
    });
    let over = drawn.overflow.is_some();
    let brim = d.capacity.map(|_| {
        let class = if over { "picture-small blend-over" } else { "picture-small" };
        view! {
            <path class="blend-brim" d="M170 78H186" />
            <text class=class x="190" y="83">{d.brim.clone()}</text>
        }
        .into_any()
    });
    view! {
        <path class="blend-inside" d=INSIDE />
        <g clip-path=format!("url(#{inside})")>{fills}</g>
        <path class="blend-outline" d="M8 78H14L24 252Q25 258 31 258H153Q159 258 160 252L170 78H176" />
        {or_nothing(overflow)}
        {or_nothing(brim)}
        {labels}
        <text class="picture-result" x="92" y="34" text-anchor="middle">{d.result.value.clone()}</text>
        <text class="picture-small" x="190" y="34">{d.result.name.clone()}</text>
    }
    .into_any()
}

fn fill(substance: Substance, at: Placed) -> AnyView {
    let height = (at.bottom - at.top).max(0.0);
    let cubes = (substance == Substance::Ice).then(|| cubes(at.top, at.bottom));
    view! {
        <rect class=format!("blend-layer tone-{}", at.tone) x="0" y=at.top width="184" height=height />
        <path class="blend-edge" d=format!("M0 {:.1}H184", at.top) />
        <path class="blend-ice" d=cubes />
    }
    .into_any()
}

/// Tilted squares from end to end of a layer of ice.
fn cubes(top: f64, bottom: f64) -> String {
    let half = ((bottom - top) / 2.0 - 2.0).clamp(0.0, 9.0);
    let rows = (((bottom - top) / 24.0).floor() as i32).clamp(1, 8);
    let step = (bottom - top) / f64::from(rows);
    let places = (0..rows).flat_map(|row| (0..7 - row % 2).map(move |column| (row, column)));
    places
        .map(|(row, column)| {
            let y = top + (f64::from(row) + 0.5) * step;
            let x = 26.0 + 22.0 * f64::from(column) + if row % 2 == 0 { 0.0 } else { 11.0 };
            let (a, b) = (half, half * 0.35);
            format!(
                "M{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}L{:.1} {:.1}Z",
                x - a,
                y - b,
                x + b,
                y - a,
                x + a,
                y + b,
                x - b,
                y + a
            )
        })
        .collect()
}

fn label(layer: Layer, at: Placed) -> AnyView {
    let middle = f64::midpoint(at.top, at.bottom);
    let side = 167.0 - (middle - 78.0) / 18.0;
    view! {
        <path class="blend-leader" d=format!("M{side:.1} {middle:.1}L182 {:.1}H186", at.label) />
        <text class="picture-label" x="190" y=at.label - 2.0>{layer.figure}</text>
        <text class="picture-small" x="190" y=at.label + 15.0>{layer.name}</text>
    }
    .into_any()
}
