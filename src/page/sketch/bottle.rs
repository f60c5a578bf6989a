//! The bottle on its side: what is in it, from the sugar, and may still come, against what it bears.

use crate::app::drawing::{BottleData, Drawing, Figure, GlassState};
use crate::chart::{BOTTLE_SIDES, bottle_scale};
use crate::page::svg::{Svg, unique};

const SIZE: (f64, f64) = (358.0, 232.0);
const OUTLINE: &str =
    "M8 50Q8 44 14 44H240C270 44 280 60 304 60H334V86H304C280 86 270 102 240 102H14Q8 102 8 96Z";
/// Upper and lower side of the glass, and the scale below it.
const GLASS: (f64, f64) = (44.0, 102.0);
const SCALE: f64 = 114.0;

/// Draws one bottle and two pressures.
pub fn bottle_sketch(drawing: &Drawing, data: &BottleData) -> String {
    let (glass, hatch, stop) = (unique("glass"), unique("hatch"), unique("hatch"));
    let never = data.state == GlassState::Never;
    let placed = bottle_scale(data.parts, data.bears);
    let (top, bottom) = GLASS;
    let mut svg = Svg::default();
    svg.clip(&glass, OUTLINE);
    svg.hatch(&hatch, "hatch-ink", false);
    svg.hatch(&stop, "hatch-stop", true);
    svg.raw(match data.state {
        GlassState::Within => r#"<g class="bottle-within">"#,
        GlassState::Caution => r#"<g class="bottle-caution">"#,
        GlassState::Above | GlassState::Never => r#"<g class="bottle-above">"#,
    });
    svg.path("bottle-inside", OUTLINE);
    let filled = format!(r#"fill="url(#{hatch})""#);
    if !never {
        svg.raw(&format!(r#"<g clip-path="url(#{glass})">"#));
        let [in_it, sugar, worst] = placed.ends;
        let part = |svg: &mut Svg, class, from: f64, to: f64, more: &str| {
            svg.rect(class, (from, top), (to - from, bottom - top), more);
        };
        part(&mut svg, "bottle-in", BOTTLE_SIDES.0, in_it, "");
        part(&mut svg, "bottle-sugar", in_it, sugar, "");
        part(&mut svg, "", sugar, worst, &filled);
        // What lies above the ceiling is set off from what lies below it.
        if let Some(ceiling) = placed.ceiling.filter(|ceiling| *ceiling < worst) {
            part(&mut svg, "", ceiling, worst, &format!(r#"fill="url(#{stop})""#));
        }
        svg.raw("</g>");
    }
    svg.path("bottle-outline", OUTLINE);
    svg.path("bottle-cap", "M335 57h8v32h-8z");
    let worst = placed.ends[2];
    if never {
        svg.path("bottle-cross", "M30 36L250 110M250 36L30 110");
        words(&mut svg, "picture-label", 8.0, false, &data.worst);
    } else {
        let upright = |x: f64| format!("M{x:.1} 4V{}", bottom + 8.0);
        svg.path("bottle-level", &upright(worst));
        // Each on its own side of the other, so that they never meet.
        let above = placed.ceiling.is_some_and(|ceiling| ceiling < worst);
        words(&mut svg, "picture-label", worst, !above, &data.worst);
        if let Some(ceiling) = placed.ceiling {
            svg.path("bottle-ceiling", &upright(ceiling));
            words(&mut svg, "picture-label bottle-bears", ceiling, above, &data.ceiling);
        }
    }
    scale(&mut svg, &placed.short, &placed.long, data.volumes);
    if !never {
        keys(&mut svg, data, &filled);
    }
    for (figure, row) in [&data.usual, &data.hottest].into_iter().zip(0_u8..) {
        if !figure.value.is_empty() {
            let line = format!("{} {}", figure.value, figure.name);
            svg.text("picture-small", (0.0, 208.0 + 19.0 * f64::from(row)), "", &line);
        }
    }
    svg.raw("</g>");
    svg.framed("bottle", SIZE, drawing)
}

/// A figure and its name above the glass, at the left of a line or at its right.
fn words(svg: &mut Svg, class: &str, x: f64, left: bool, figure: &Figure) {
    let (x, end) = if left { (x - 6.0, r#"text-anchor="end""#) } else { (x + 6.0, "") };
    svg.text(class, (x, 16.0), end, &figure.value);
    svg.text(&class.replace("label", "small"), (x, 34.0), end, &figure.name);
}

/// The paper below: lines as on a stem, with a number at each volume.
fn scale(svg: &mut Svg, short: &[f64], long: &[(f64, u32)], volumes: &str) {
    let lines = |places: &mut dyn Iterator<Item = f64>, length: f64| -> String {
        places.map(|x| format!("M{x:.1} {SCALE}v{length}")).collect()
    };
    svg.path("bottle-scale", &format!("M{} {SCALE}H{}", BOTTLE_SIDES.0, BOTTLE_SIDES.1));
    svg.path("bottle-scale", &lines(&mut short.iter().copied(), 5.0));
    svg.path("bottle-scale bottle-long", &lines(&mut long.iter().map(|(x, _)| *x), 11.0));
    for (x, number) in long {
        let place = (*x, SCALE + 27.0);
        let middle = r#"text-anchor="middle""#;
        svg.text("picture-small picture-strong", place, middle, &number.to_string());
    }
    svg.text("picture-small bottle-quiet", (0.0, SCALE + 46.0), "", volumes);
}

/// What each filling stands for.
fn keys(svg: &mut Svg, data: &BottleData, hatched: &str) {
    let fills =
        [("bottle-key bottle-in", ""), ("bottle-key bottle-sugar", ""), ("bottle-key", hatched)];
    let places = [1.0, 104.0, 216.0];
    for ((text, (class, more)), x) in data.keys.iter().zip(fills).zip(places) {
        svg.rect(class, (x, 172.0), (14.0, 14.0), more);
        svg.text("picture-small", (x + 20.0, 185.0), "", text);
    }
}
