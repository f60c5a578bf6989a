//! What either of two doses may come to, as two bars over one scale.

use crate::app::drawing::{Drawing, EndsData};
use crate::page::svg::Svg;

/// Draws both bars.
pub fn ends_sketch(drawing: &Drawing, data: &EndsData) -> String {
    let low = data.bars.iter().map(|bar| bar.from).fold(data.target, f64::min);
    let high = data.bars.iter().map(|bar| bar.to).fold(data.target, f64::max);
    // The lively end on the right, the flat one on the left, and room for a figure beside each.
    let scale = 150.0 / (high - low).max(0.1);
    let at = |gas: f64| 85.0 + scale * (gas - low);
    let mut svg = Svg::default();
    for (bar, row) in data.bars.iter().zip(0_u8..) {
        let top = 24.0 + 44.0 * f64::from(row);
        let (left, right) = (at(bar.from), at(bar.to));
        let below = top + 14.0;
        svg.rect("ends-bar", (left, top), (right - left, 20.0), r#"rx="4""#);
        svg.text("picture-small", (left - 6.0, below), r#"text-anchor="end""#, &bar.from_text);
        svg.text("picture-small", (right + 6.0, below), "", &bar.to_text);
        svg.text("picture-small picture-strong", (0.0, top - 6.0), "", &bar.dose);
        // What is wished for, across each bar and no word.
        svg.path("ends-target", &format!("M{:.1} {:.1}v24", at(data.target), top - 2.0));
    }
    svg.framed("ends", (320.0, 98.0), drawing)
}
