//! Self-heating over the days: a band, its likely line, and the yeast's range behind it.

use crate::app::drawing::{Drawing, WarmthData};
use crate::chart::{Warmth, warmth};
use crate::page::svg::Svg;
use crate::quantity::write_number;

/// Draws it.
pub fn warmth_sketch(drawing: &Drawing, data: &WarmthData) -> String {
    let drawn = warmth(&data.days, data.range);
    let (left, right) = Warmth::SIDES;
    let (top, foot) = Warmth::ENDS;
    let (end, middle) = (r#"text-anchor="end""#, r#"text-anchor="middle""#);
    let mut svg = Svg::default();
    let height = drawn.range.1 - drawn.range.0;
    svg.rect("warmth-range", (left, drawn.range.0), (right - left, height), "");
    for &(y, value) in &drawn.degrees {
        svg.text("picture-small", (left - 6.0, y + 5.0), end, &write_number(value, 0));
        svg.path("course-grid", &format!("M{left} {y:.1}H{right}"));
    }
    for &(x, value) in &drawn.days {
        svg.text("picture-small", (x, foot + 20.0), middle, &write_number(value, 0));
    }
    svg.path("warmth-band", &drawn.band);
    svg.path("warmth-likely", &drawn.likely);
    svg.text("picture-small", (right, drawn.range.0 + 16.0), end, &data.range_text);
    svg.text("picture-small", (left - 6.0, top + 2.0), end, data.symbol);
    svg.text("picture-small", (right, foot + 20.0), end, data.days_text);
    svg.framed("warmth", Warmth::SIZE, drawing)
}
