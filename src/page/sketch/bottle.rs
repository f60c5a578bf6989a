//! The bottle: how far the gas in the worst case reaches towards what the glass is trusted with.

use crate::app::drawing::{BottleData, Drawing, Figure, GlassState};
use crate::chart::{BOTTLE_OUTLINE, bottle_levels, wrap};
use crate::page::svg::{Svg, unique};

/// Draws one bottle and two pressures.
pub fn bottle_sketch(drawing: &Drawing, data: &BottleData) -> String {
    let names = Names { glass: unique("glass"), ink: unique("hatch"), stop: unique("hatch") };
    let mut svg = Svg::default();
    svg.clip(&names.glass, BOTTLE_OUTLINE);
    svg.hatch(&names.ink, "hatch-ink", false);
    svg.hatch(&names.stop, "hatch-stop", true);
    bottle(&mut svg, data, &names);
    pressure(&mut svg, &data.usual, 22.0, 14.0);
    pressure(&mut svg, &data.hottest, 146.0, 40.0);
    svg.framed("bottle", (320.0, 260.0), drawing)
}

struct Names {
    glass: String,
    ink: String,
    stop: String,
}

fn bottle(svg: &mut Svg, d: &BottleData, names: &Names) {
    let never = d.state == GlassState::Never;
    let levels = bottle_levels(if never { 0.0 } else { d.fraction });
    let (corner, size) = ((0.0, levels.level), (120.0, levels.base - levels.level));
    let (tone, hatched) = match d.state {
        GlassState::Within => ("bottle-within", false),
        GlassState::Caution => ("bottle-caution", true),
        GlassState::Above | GlassState::Never => ("bottle-above", true),
    };
    let filled = |id: &str| format!(r#"fill="url(#{id})""#);
    svg.raw(&format!(r#"<g class="{tone}">"#));
    svg.path("bottle-inside", BOTTLE_OUTLINE);
    svg.raw(&format!(r#"<g clip-path="url(#{})">"#, names.glass));
    svg.rect("bottle-gas", corner, size, "");
    svg.path("bottle-shine", "M30 134V222");
    if hatched {
        svg.rect("", corner, size, &filled(&names.ink));
    }
    // What lies above the ceiling is set off from what lies below it.
    let excess = levels.ceiling - levels.level;
    if excess > 0.0 {
        svg.rect("bottle-excess", corner, (120.0, excess), "");
        svg.rect("", corner, (120.0, excess), &filled(&names.stop));
    }
    svg.path("bottle-surface", &format!("M0 {0:.1}H120", levels.level));
    svg.raw("</g>");
    svg.path("bottle-outline", BOTTLE_OUTLINE);
    svg.path("bottle-cap", "M43 10Q43 6 47 6H73Q77 6 77 10L79 21H41Z");
    badge(svg, d.state);
    if never {
        svg.path("bottle-cross", "M10 100L110 214M110 100L10 214");
        // Without pressures the words have their room.
        let alone = d.usual.value.is_empty() && d.hottest.value.is_empty();
        words(svg, &d.worst, 146.0, if alone { 22 } else { 11 });
    } else {
        svg.path("bottle-ceiling", &pointer(levels.ceiling, levels.ceiling_label, 10.0));
        svg.path("bottle-level", &pointer(levels.level, levels.level_label, 20.0));
        words(svg, &d.ceiling, levels.ceiling_label, 11);
        words(svg, &d.worst, levels.level_label, 11);
    }
    svg.raw("</g>");
}

/// A line across the glass and on to its words.
fn pointer(at: f64, label: f64, from: f64) -> String {
    format!("M{from} {at:.1}H106L116 {label:.1}H120")
}

fn words(svg: &mut Svg, figure: &Figure, at: f64, letters: usize) {
    let lines = wrap(&figure.name, letters);
    let top = at - 8.0 * lines.len().saturating_sub(1) as f64;
    svg.text("picture-label", (124.0, top), "", &figure.value);
    for (line, row) in lines.iter().zip(1_u8..) {
        svg.text("picture-small", (124.0, top + 17.0 * f64::from(row)), "", line);
    }
}

/// The state as a shape, on the body of the bottle.
fn badge(svg: &mut Svg, state: GlassState) {
    let (shape, sign) = match state {
        GlassState::Within => {
            ("M60 174A17 17 0 1 1 60 208A17 17 0 1 1 60 174Z", "M51 191L58 198L70 184")
        }
        GlassState::Caution => ("M60 171L81 208H39Z", "M60 184V196M60 201V203"),
        GlassState::Above => {
            ("M52 172H68L79 183V199L68 210H52L41 199V183Z", "M60 180V194M60 200V202")
        }
        // Crossed out as a whole; a badge would only cover the cross.
        GlassState::Never => return,
    };
    svg.path("bottle-badge", shape);
    svg.path("bottle-sign", sign);
}

/// A thermometer filled so far, and the pressure there; nothing without a pressure.
fn pressure(svg: &mut Svg, figure: &Figure, top: f64, filled: f64) {
    if figure.value.is_empty() {
        return;
    }
    let (bulb, shoulder) = (top + 66.0, top + 10.0);
    let neck = bulb - 8.0;
    svg.path(
        "bottle-tube",
        &format!("M207 {neck}V{shoulder}A6 6 0 0 1 219 {shoulder}V{neck}A10 10 0 1 1 207 {neck}Z"),
    );
    svg.path("bottle-mercury", &format!("M213 {bulb}V{}", bulb - 10.0 - filled));
    svg.circle("bottle-mercury", (213.0, bulb), 4.0);
    svg.text("picture-figure", (231.0, top + 30.0), "", &figure.value);
    for (line, row) in wrap(&figure.name, 11).iter().zip(0_u8..) {
        svg.text("picture-small", (231.0, top + 52.0 + 17.0 * f64::from(row)), "", line);
    }
}
