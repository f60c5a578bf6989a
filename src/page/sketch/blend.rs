//! The blend: how much of what at which temperature meets in the vessel, and what comes of it.

use crate::app::drawing::{BlendData, Drawing};
use crate::chart::{Layer, Placed, Substance, bucket};
use crate::page::svg::{Svg, unique};

/// The inside of the bucket, a little narrower at its floor.
const INSIDE: &str = "M14 78H170L160 252Q159 258 153 258H31Q25 258 24 252Z";

/// Draws one vessel.
pub fn blend_sketch(drawing: &Drawing, d: &BlendData) -> String {
    let (inside, spill) = (unique("inside"), unique("hatch"));
    let drawn = bucket(&d.layers, d.capacity);
    let placed = || d.layers.iter().zip(drawn.layers.iter().copied());
    let mut svg = Svg::default();
    svg.clip(&inside, INSIDE);
    svg.hatch(&spill, "hatch-stop", false);
    svg.path("blend-inside", INSIDE);
    svg.raw(&format!(r#"<g clip-path="url(#{inside})">"#));
    for (layer, at) in placed() {
        fill(&mut svg, layer.substance, at);
    }
    svg.raw("</g>");
    svg.path("blend-outline", "M8 78H14L24 252Q25 258 31 258H153Q159 258 160 252L170 78H176");
    if let Some(top) = drawn.overflow {
        // It stands over the brim and runs down the side that bears no words.
        let shape = format!(
            "M8 78Q14 {top:.1} 52 {top:.1}H132Q164 {top:.1} 170 78H15V112Q15 118 10 118T4 112V84Q4 78 8 78Z"
        );
        svg.path("blend-spill", &shape);
        let hatched =
            format!(r#"<path class="blend-spill-hatch" d="{shape}" fill="url(#{spill})"/>"#);
        svg.raw(&hatched);
    }
    if d.capacity.is_some() {
        let over = drawn.overflow.is_some();
        let class = if over { "picture-small blend-over" } else { "picture-small" };
        svg.path("blend-brim", "M170 78H186");
        svg.text(class, (190.0, 83.0), "", &d.brim);
    }
    for (layer, at) in placed() {
        label(&mut svg, layer, at);
    }
    svg.text("picture-result", (92.0, 34.0), r#"text-anchor="middle""#, &d.result.value);
    svg.text("picture-small", (190.0, 34.0), "", &d.result.name);
    svg.framed("blend", (320.0, 272.0), drawing)
}

fn fill(svg: &mut Svg, substance: Substance, at: Placed) {
    let height = (at.bottom - at.top).max(0.0);
    svg.rect(&format!("blend-layer tone-{}", at.tone), (0.0, at.top), (184.0, height), "");
    svg.path("blend-edge", &format!("M0 {:.1}H184", at.top));
    if substance == Substance::Ice {
        svg.path("blend-ice", &cubes(at.top, at.bottom));
    }
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

fn label(svg: &mut Svg, layer: &Layer, at: Placed) {
    let middle = f64::midpoint(at.top, at.bottom);
    let side = 167.0 - (middle - 78.0) / 18.0;
    svg.path("blend-leader", &format!("M{side:.1} {middle:.1}L182 {:.1}H186", at.label));
    svg.text("picture-label", (190.0, at.label - 2.0), "", &layer.figure);
    svg.text("picture-small", (190.0, at.label + 15.0), "", &layer.name);
}
