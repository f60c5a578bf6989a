//! The bottle: how far the gas in the worst case reaches towards what the glass is trusted with.

use crate::app::drawing::{BottleData, Drawing, Figure, GlassState};
use crate::chart::{BOTTLE_OUTLINE, bottle_levels, wrap};
use crate::page::follow::{list, or_nothing};
use crate::page::picture::{hatch, picture, unique};
use leptos::prelude::*;

/// Draws one bottle and two pressures.
pub fn bottle_sketch(drawing: &Drawing, data: &BottleData) -> AnyView {
    let names = Names { glass: unique("glass"), ink: unique("hatch"), stop: unique("hatch") };
    let drawn = view! {
        <clipPath id=names.glass.clone()>
            <path d=BOTTLE_OUTLINE />
        </clipPath>
        {hatch(names.ink.clone(), "hatch-ink", false)}
        {hatch(names.stop.clone(), "hatch-stop", true)}
        {bottle(data, &names)}
        {or_nothing(pressure(&data.usual, 22.0, 14.0))}
        {or_nothing(pressure(&data.hottest, 146.0, 40.0))}
    };
    picture("bottle", (320.0, 260.0), drawing, drawn.into_any())
}

struct Names {
    glass: String,
    ink: String,
    stop: String,
}

fn bottle(d: &BottleData, names: &Names) -> AnyView {
    let never = d.state == GlassState::Never;
    let levels = bottle_levels(if never { 0.0 } else { d.fraction });
    let height = levels.base - levels.level;
    let (tone, hatched) = match d.state {
        GlassState::Within => ("bottle-within", false),
        GlassState::Caution => ("bottle-caution", true),
        GlassState::Above | GlassState::Never => ("bottle-above", true),
    };
    let hatch = hatched.then(|| {
        let ink = format!("url(#{})", names.ink);
        view! { <rect x="0" y=levels.level width="120" height=height fill=ink /> }.into_any()
    });
    // What lies above the ceiling is set off from what lies below it.
    let excess = levels.ceiling - levels.level;
    let excess = (excess > 0.0).then(|| {
        let stop = format!("url(#{})", names.stop);
        view! {
            <rect class="bottle-excess" x="0" y=levels.level width="120" height=excess />
            <rect x="0" y=levels.level width="120" height=excess fill=stop />
        }
        .into_any()
    });
    let marks = (!never).then(|| {
        view! {
            <path class="bottle-ceiling" d=pointer(levels.ceiling, levels.ceiling_label, 10.0) />
            <path class="bottle-level" d=pointer(levels.level, levels.level_label, 20.0) />
            {words(&d.ceiling, levels.ceiling_label, 11)}
            {words(&d.worst, levels.level_label, 11)}
        }
        .into_any()
    });
    // Without pressures the words have their room.
    let letters = if d.usual.value.is_empty() && d.hottest.value.is_empty() { 22 } else { 11 };
    let cross = never.then(|| {
        view! {
            <path class="bottle-cross" d="M10 100L110 214M110 100L10 214" />
            {words(&d.worst, 146.0, letters)}
        }
        .into_any()
    });
    view! {
        <g class=tone>
            <path class="bottle-inside" d=BOTTLE_OUTLINE />
            <g clip-path=format!("url(#{})", names.glass)>
                <rect class="bottle-gas" x="0" y=levels.level width="120" height=height />
                <path class="bottle-shine" d="M30 134V222" />
                {or_nothing(hatch)}
                {or_nothing(excess)}
                <path class="bottle-surface" d=format!("M0 {0:.1}H120", levels.level) />
            </g>
            <path class="bottle-outline" d=BOTTLE_OUTLINE />
            <path class="bottle-cap" d="M43 10Q43 6 47 6H73Q77 6 77 10L79 21H41Z" />
            {badge(d.state)}
            {or_nothing(marks)}
            {or_nothing(cross)}
        </g>
    }
    .into_any()
}

/// A line across the glass and on to its words.
fn pointer(at: f64, label: f64, from: f64) -> String {
    format!("M{from} {at:.1}H106L116 {label:.1}H120")
}

fn words(figure: &Figure, at: f64, letters: usize) -> AnyView {
    let lines = wrap(&figure.name, letters);
    let top = at - 8.0 * lines.len().saturating_sub(1) as f64;
    let names = lines.into_iter().zip(1_u8..).map(|(line, i)| {
        view! { <text class="picture-small" x="124" y=top + 17.0 * f64::from(i)>{line}</text> }
            .into_any()
    });
    view! {
        <text class="picture-label" x="124" y=top>{figure.value.clone()}</text>
        {list(names)}
    }
    .into_any()
}

/// The state as a shape, on the body of the bottle.
fn badge(state: GlassState) -> AnyView {
    let (shape, sign) = match state {
        GlassState::Within => {
            ("M60 174A17 17 0 1 1 60 208A17 17 0 1 1 60 174Z", "M51 191L58 198L70 184")
        }
        GlassState::Caution => ("M60 171L81 208H39Z", "M60 184V196M60 201V203"),
        GlassState::Above => {
            ("M52 172H68L79 183V199L68 210H52L41 199V183Z", "M60 180V194M60 200V202")
        }
        // Crossed out as a whole; a badge would only cover the cross.
        GlassState::Never => ("", ""),
    };
    view! {
        <path class="bottle-badge" d=shape />
        <path class="bottle-sign" d=sign />
    }
    .into_any()
}

/// A thermometer filled so far, and the pressure there; nothing without a pressure.
fn pressure(figure: &Figure, top: f64, filled: f64) -> Option<AnyView> {
    if figure.value.is_empty() {
        return None;
    }
    let lines = wrap(&figure.name, 11).into_iter().zip(0_u8..).map(|(line, i)| {
        let y = top + 52.0 + 17.0 * f64::from(i);
        view! { <text class="picture-small" x="231" y=y>{line}</text> }.into_any()
    });
    let (bulb, shoulder) = (top + 66.0, top + 10.0);
    let neck = bulb - 8.0;
    let tube =
        format!("M207 {neck}V{shoulder}A6 6 0 0 1 219 {shoulder}V{neck}A10 10 0 1 1 207 {neck}Z");
    let column = format!("M213 {bulb}V{}", bulb - 10.0 - filled);
    let drawn = view! {
        <path class="bottle-tube" d=tube />
        <path class="bottle-mercury" d=column />
        <circle class="bottle-mercury" cx="213" cy=bulb r="4" />
        <text class="picture-figure" x="231" y=top + 30.0>{figure.value.clone()}</text>
        {list(lines)}
    };
    Some(drawn.into_any())
}
