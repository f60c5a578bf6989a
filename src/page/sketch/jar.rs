//! The stem in its jar: it sinks until the bracket of the expected end is at the surface.

use crate::app::drawing::{Drawing, JarData};
use crate::chart::PaperScale;
use crate::page::svg::{Svg, unique};

/// Width and height.
const SIZE: (f64, f64) = (358.0, 216.0);
/// The level surface.
const SURFACE: f64 = 128.0;
/// From where to where the paper is seen.
const SEEN: (f64, f64) = (32.0, 202.0);
const JAR: &str = "M14 0V190Q14 204 28 204H136Q150 204 150 190V0";
const STEM: &str = "M54 204V28Q54 8 82 8T110 28V204";

/// Draws it.
pub fn jar_sketch(drawing: &Drawing, data: &JarData) -> String {
    let clip = unique("jar");
    let scale = PaperScale::new(data.plato, 0.0);
    let down = SURFACE - scale.below_water(data.reading);
    let seen = |above: f64| move |y: &f64| SEEN.0 + above <= *y && *y <= SEEN.1;
    let mut svg = Svg::default();
    svg.clip(&clip, JAR);
    svg.raw(&format!(r#"<g clip-path="url(#{clip})">"#));
    svg.path("jar-paper", STEM);
    svg.path("jar-beer", &format!("M14 {SURFACE}H150V204H14Z"));
    svg.raw("</g>");
    let printed = scale.printed();
    let short = printed.short.iter().chain(&printed.middle).map(|y| y + down).filter(seen(0.0));
    svg.path("jar-line", &short.map(|y| format!("M55 {y:.1}h8")).collect::<String>());
    for (y, number) in &printed.long {
        let y = y + down;
        if seen(0.0)(&y) {
            svg.path("jar-line", &format!("M55 {y:.1}H109"));
        }
        if seen(14.0)(&y) {
            svg.text("picture-small picture-strong jar-number", (107.0, y - 3.5), "", number);
        }
    }
    let [figure, doubt, read] = &data.texts;
    let mut below = SURFACE;
    // Words of each end keep clear of those below them.
    let mut word = SURFACE;
    for ((low, high), said) in &data.ends {
        let at = |v: f64| (scale.below_water(v) + down).clamp(SEEN.0, SEEN.1);
        let (top, bottom) = (at(*low), at(*high));
        let middle = f64::midpoint(top, bottom);
        svg.rect("jar-end", (54.0, top), (56.0, bottom - top), "");
        svg.path("jar-bracket", &format!("M115 {top:.1}h7V{bottom:.1}h-7M122 {middle:.1}H172"));
        word = middle.clamp(14.0, (word - if word < SURFACE { 40.0 } else { 50.0 }).max(14.0));
        svg.text("picture-small picture-strong jar-end-text", (178.0, word), "", &said[0]);
        svg.text("picture-small jar-end-text", (178.0, word + 18.0), "", &said[1]);
        below = below.max(word + 50.0);
    }
    svg.path("jar-glass", STEM);
    svg.path("jar-glass", &format!("{JAR}M4 212H160"));
    svg.path("jar-surface", &format!("M14 {SURFACE}H54M110 {SURFACE}H172"));
    svg.text("picture-result", (176.0, below + 15.0), "", figure);
    svg.text("picture-small jar-quiet", (178.0, below + 38.0), "", doubt);
    svg.text("picture-small jar-quiet", (178.0, below + 57.0), "", read);
    svg.framed("jar", SIZE, drawing)
}
