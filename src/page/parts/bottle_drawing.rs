//! The bottle: how far the gas in the worst case reaches towards what the glass is trusted with.

use super::picture::{Figure, Hatch, Picture, unique};
use crate::chart::{BOTTLE_OUTLINE, bottle_levels, wrap};
use leptos::prelude::*;

/// How the worst case stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GlassState {
    /// Within the ceiling.
    #[default]
    Within,
    /// Within it, but much for glass like this.
    Caution,
    /// Above it.
    Above,
    /// This bottle must not be filled with anything that makes gas.
    Never,
}

/// What the drawing shows; the words are the caller's.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct BottleData {
    /// Worst case over ceiling; above 1 is above it.
    pub fraction: f64,
    /// How it stands.
    pub state: GlassState,
    /// The worst case.
    pub worst: Figure,
    /// The ceiling.
    pub ceiling: Figure,
    /// Pressure at 20 °C.
    pub usual: Figure,
    /// Pressure at the hottest place.
    pub hottest: Figure,
}

/// Draws one bottle and two pressures.
#[component]
pub fn BottleDrawing(
    /// What to show.
    #[prop(into)]
    data: Signal<BottleData>,
    /// What it shows.
    #[prop(into)]
    title: Signal<String>,
    /// What can be read from it.
    #[prop(into)]
    description: Signal<String>,
) -> impl IntoView {
    let names = Names { glass: unique("glass"), wait: unique("hatch"), stop: unique("hatch") };
    let glass = names.glass.clone();
    let (wait, stop) = (names.wait.clone(), names.stop.clone());
    view! {
        <Picture kind="bottle" size=(320.0, 260.0) title=title description=description>
            <clipPath id=glass>
                <path d=BOTTLE_OUTLINE />
            </clipPath>
            <Hatch id=wait tone="hatch-wait" />
            <Hatch id=stop tone="hatch-stop" crossed=true />
            {move || data.with(|d| bottle(d, &names))}
            {move || data.with(|d| pressures(&d.usual, &d.hottest))}
        </Picture>
    }
}

struct Names {
    glass: String,
    wait: String,
    stop: String,
}

fn bottle(d: &BottleData, names: &Names) -> impl IntoView + use<> {
    let never = d.state == GlassState::Never;
    let levels = bottle_levels(if never { 0.0 } else { d.fraction });
    let height = levels.base - levels.level;
    let (tone, hatch) = match d.state {
        GlassState::Within => ("bottle-within", None),
        GlassState::Caution => ("bottle-caution", Some(&names.wait)),
        GlassState::Above | GlassState::Never => ("bottle-above", Some(&names.stop)),
    };
    let over = hatch.map(|id| {
        view! { <rect x="0" y=levels.level width="120" height=height fill=format!("url(#{id})") /> }
    });
    let marks = (!never).then(|| {
        view! {
            <path class="bottle-ceiling" d=pointer(levels.ceiling, levels.ceiling_label, 10.0) />
            <path class="bottle-level" d=pointer(levels.level, levels.level_label, 20.0) />
            {words(&d.ceiling, levels.ceiling_label)}
            {words(&d.worst, levels.level_label)}
        }
    });
    let cross = never.then(|| {
        view! {
            <path class="bottle-cross" d="M8 96L112 214M112 96L8 214" />
            {words(&d.worst, 155.0)}
        }
    });
    view! {
        <g class=tone>
            <path class="bottle-inside" d=BOTTLE_OUTLINE />
            <g clip-path=format!("url(#{})", names.glass)>
                <rect class="bottle-gas" x="0" y=levels.level width="120" height=height />
                {over}
                <path class="bottle-surface" d=format!("M0 {0:.1}H120", levels.level) />
            </g>
            <path class="bottle-outline" d=BOTTLE_OUTLINE />
            <path class="bottle-cap" d="M43 10Q43 6 47 6H73Q77 6 77 10L79 21H41Z" />
            <path class="bottle-shine" d="M30 134V222" />
            {badge(d.state)}
            {marks}
            {cross}
        </g>
    }
}

/// A line across the glass and on to its words.
fn pointer(at: f64, label: f64, from: f64) -> String {
    format!("M{from} {at:.1}H108L124 {label:.1}H128")
}

fn words(figure: &Figure, at: f64) -> impl IntoView + use<> {
    let lines = wrap(&figure.name, 12);
    let top = at - 8.0 * lines.len().saturating_sub(1) as f64;
    let names = lines.into_iter().zip(1_u8..).map(|(line, i)| {
        view! { <text class="picture-small" x="132" y=top + 17.0 * f64::from(i)>{line}</text> }
    });
    view! {
        <text class="picture-label" x="132" y=top>{figure.value.clone()}</text>
        {names.collect_view()}
    }
}

/// The state as a shape, on the body of the bottle.
fn badge(state: GlassState) -> impl IntoView {
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
}

/// Two thermometers, each with its pressure.
fn pressures(usual: &Figure, hottest: &Figure) -> impl IntoView + use<> {
    let column = |figure: &Figure, top: f64, filled: f64, class: &'static str| {
        let lines = wrap(&figure.name, 11).into_iter().zip(0_u8..);
        let lines = lines.map(|(line, i)| {
            let y = top + 52.0 + 17.0 * f64::from(i);
            view! { <text class="picture-small" x="244" y=y>{line}</text> }
        });
        let (bulb, reach) = (top + 66.0, top + 56.0 - filled);
        let tube = format!(
            "M221 {0:.0}V{1:.0}A6 6 0 0 1 233 {1:.0}V{0:.0}A10 10 0 1 1 221 {0:.0}Z",
            bulb - 8.0,
            top + 10.0
        );
        view! {
            <path class="bottle-tube" d=tube />
            <path class=class d=format!("M227 {bulb:.0}V{reach:.0}") />
            <circle class=class cx="227" cy=bulb r="4" />
            <text class="picture-figure" x="244" y=top + 30.0>{figure.value.clone()}</text>
            {lines.collect_view()}
        }
    };
    view! {
        {column(usual, 22.0, 14.0, "bottle-mercury bottle-mercury-usual")}
        {column(hottest, 146.0, 40.0, "bottle-mercury bottle-mercury-hot")}
    }
}
