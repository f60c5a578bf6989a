//! The stem: a hydrometer's scale as one sees it in the jar, moved until it looks like the one in hand.

use super::board::Node;
use super::follow::{list, or_nothing};
use super::picture::unique;
use super::session::send;
use crate::app::{Event, Stem, What, stem_text};
use crate::chart::{PaperScale, wrap};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, PointerEvent};

/// The picture's own units; one is a CSS pixel where it is 260 pixels high.
const SIZE: (f64, f64) = (220.0, 260.0);
/// The level surface, where the eye reads.
const SURFACE: f64 = 134.0;
/// A drop of water or a resting finger moves the stem by less than this.
const SLOP: f64 = 5.0;

/// What is seen in the jar and through the stem. Kept out of the view: a static shape there is put
/// into a group, which no clip path may hold.
const JAR: &str = "M15 0H205V250H15Z";
const PAPER: &str = "M50 0H122V260H50Z";

/// The surface from the left wall to the right.
const MENISCUS: &str =
    "Q16 134 29 134H36Q49 134 50 124V134H122V124Q123 134 136 134H191Q204 134 205 123";

/// A pointer on its way.
#[derive(Clone, Copy)]
struct Drag {
    pointer: i32,
    from_y: f64,
    from_reading: f64,
    moving: bool,
}

/// A slider drawn as a hydrometer in its jar. It shows what its part says and asks for another reading;
/// it keeps nothing itself.
pub fn stem(node: &Node) -> AnyView {
    let what = node.what.clone();
    let seen = move || what.with(of);
    let scale = {
        let seen = seen.clone();
        move || PaperScale::new(seen().plato, seen().division)
    };
    let reading = {
        let (seen, scale) = (seen.clone(), scale.clone());
        move || {
            let seen = seen();
            seen.value.or(seen.rest).unwrap_or_else(|| scale().water())
        }
    };
    let drag = RwSignal::new(None::<Drag>);

    let what = node.what.clone();
    let set = move |next: f64| {
        let seen = what.with_untracked(of);
        if seen.value != Some(next) {
            let (text, unit) = (stem_text(next, seen.plato), seen.unit.to_owned());
            send(Event::Typed { name: seen.field, text, unit });
        }
    };
    let reading_down = reading.clone();
    let on_down = move |ev: PointerEvent| {
        if !ev.is_primary() || ev.button() != 0 {
            return;
        }
        if let Some(element) = drawing(&ev) {
            // A pointer that is gone already cannot be held; then the drag ends with it.
            let _ = element.set_pointer_capture(ev.pointer_id());
        }
        drag.set(Some(Drag {
            pointer: ev.pointer_id(),
            from_y: f64::from(ev.client_y()),
            from_reading: untrack(&reading_down),
            moving: false,
        }));
    };
    let (scale_move, set_move) = (scale.clone(), set.clone());
    let on_move = move |ev: PointerEvent| {
        let Some(d) = drag.get_untracked().filter(|d| d.pointer == ev.pointer_id()) else { return };
        let y = f64::from(ev.client_y());
        if !d.moving {
            if (d.from_y - y).abs() >= SLOP {
                // From here on, so that the stem does not jump by what was waited for.
                drag.set(Some(Drag { from_y: y, moving: true, ..d }));
            }
            return;
        }
        let unit = drawing(&ev).map_or(1.0, |element| picture_units(&element));
        set_move(untrack(&scale_move).lifted(d.from_reading, (d.from_y - y) * unit));
    };
    let on_end = move |ev: PointerEvent| {
        if drag.get_untracked().is_some_and(|d| d.pointer == ev.pointer_id()) {
            drag.set(None);
        }
    };
    let (scale_key, reading_key) = (scale.clone(), reading.clone());
    let on_key = move |ev: KeyboardEvent| {
        let (scale, now) = (untrack(&scale_key), untrack(&reading_key));
        let next = match ev.key().as_str() {
            "ArrowUp" | "ArrowRight" => scale.stepped(now, 1),
            "ArrowDown" | "ArrowLeft" => scale.stepped(now, -1),
            "PageUp" => scale.paged(now, true),
            "PageDown" => scale.paged(now, false),
            "Home" => scale.range().0,
            "End" => scale.range().1,
            _ => return,
        };
        ev.prevent_default();
        set(next);
    };

    let down = {
        let (scale, reading) = (scale.clone(), reading.clone());
        move || SURFACE - scale().below_water(reading())
    };
    let (lowest, highest, here) = (scale.clone(), scale.clone(), reading.clone());
    let (unread, spoken, flagged, printed) =
        (seen.clone(), seen.clone(), seen.clone(), scale.clone());
    let label = seen().label;
    let jar = unique("jar");
    let window = unique("paper");
    view! {
        <svg
            class="stem"
            class:stem-unread=move || unread().value.is_none()
            class:stem-moving=move || drag.get().is_some_and(|d| d.moving)
            viewBox=format!("0 0 {} {}", SIZE.0, SIZE.1)
            tabindex="0"
            role="slider"
            aria-orientation="vertical"
            aria-label=label
            aria-valuemin=move || lowest().range().0.to_string()
            aria-valuemax=move || highest().range().1.to_string()
            aria-valuenow=move || here().to_string()
            aria-valuetext=move || spoken().value_text
            on:pointerdown=on_down
            on:pointermove=on_move
            on:pointerup=on_end
            on:pointercancel=on_end
            on:lostpointercapture=on_end
            on:keydown=on_key
        >
            <clipPath id=jar.clone()><path d=JAR /></clipPath>
            <clipPath id=window.clone()><path d=PAPER /></clipPath>
            <path class="stem-air" d="M15 0H205V134H15Z" />
            <g clip-path=format!("url(#{jar})")>
                <path class="stem-paper" d=PAPER />
                // The liquid climbs a little at every wall; the eye reads below that, at the level.
                <path class="stem-liquid" d=format!("M15 123{MENISCUS}V250H15Z") />
                <g clip-path=format!("url(#{window})")>
                    <g class="stem-scale" transform=move || format!("translate(0 {:.2})", down())>
                        {move || paper(&printed())}
                    </g>
                </g>
                <path class="stem-glass" d="M50 0V260M122 0V260" />
                <path class="stem-climb" d=format!("M15 123{MENISCUS}") />
            </g>
            // Bold where the lines are read, faint across the number.
            <path class="stem-level" d="M15 134H66M122 134H205" />
            <path class="stem-climb" d="M66 134H122" />
            <path class="stem-eye" d="M1 126L13 134L1 142Z" />
            <path class="stem-jar" d="M15 0V242Q15 252 25 252H195Q205 252 205 242V0M6 256H214" />
            <path class="stem-grip" d="M23 34L32 23L41 34M32 24V66M23 56L32 67L41 56" />
            {move || or_nothing(flag(&flagged()))}
        </svg>
    }
    .into_any()
}

fn of(what: &What) -> Stem {
    match what {
        What::Stem(stem) => stem.clone(),
        _ => Stem::default(),
    }
}

/// What is printed, as one path for each kind of line.
fn paper(scale: &PaperScale) -> AnyView {
    let printed = scale.printed();
    let lines = |places: &[f64], to: f64| -> String {
        places.iter().map(|y| format!("M51 {y:.2}H{to}")).collect()
    };
    let long: Vec<f64> = printed.long.iter().map(|(y, _)| *y).collect();
    let numbers = printed.long.into_iter().map(|(y, number)| {
        view! { <text class="stem-number" x="119" y=format!("{:.2}", y - 3.5)>{number}</text> }
            .into_any()
    });
    view! {
        <path class="stem-line stem-line-long" d=lines(&long, 121.0) />
        <path class="stem-line" d=lines(&printed.middle, 66.0) />
        <path class="stem-line stem-line-short" d=lines(&printed.short, 59.0) />
        {list(numbers)}
    }
    .into_any()
}

/// The flag at the corrected reading.
fn flag(seen: &Stem) -> Option<AnyView> {
    let (scale, value, corrected) =
        (PaperScale::new(seen.plato, seen.division), seen.value?, seen.corrected?);
    let below = scale.below_water(corrected) - scale.below_water(value);
    // Less than a hair's breadth is the same line.
    if below.abs() < 0.5 {
        return None;
    }
    let y = (SURFACE + below).clamp(24.0, 236.0);
    let lines = wrap(&seen.corrected_text, 10);
    let half = 6.0 + 9.0 * lines.len().clamp(1, 2) as f64;
    let first = y - 9.0 * (lines.len() as f64 - 1.0) + 5.5;
    let texts = lines.into_iter().zip(0_u8..).map(|(line, i)| {
        let class = if i == 0 { "stem-flag-value" } else { "stem-flag-word" };
        view! { <text class=class x="138" y=format!("{:.1}", first + 18.0 * f64::from(i))>{line}</text> }
            .into_any()
    });
    let (top, bottom) = (y - half, y + half);
    let flag = view! {
        <g class="stem-flag">
            <path class="stem-true" d=format!("M51 {y:.1}H122") />
            <path
                class="stem-flag-cloth"
                d=format!("M123 {y:.1}L132 {:.1}V{top:.1}H217V{bottom:.1}H132V{:.1}Z", y - 7.0, y + 7.0)
            />
            {list(texts)}
        </g>
    };
    Some(flag.into_any())
}

fn drawing(ev: &PointerEvent) -> Option<Element> {
    ev.current_target().and_then(|target| target.dyn_into::<Element>().ok())
}

/// Picture units for one CSS pixel, as large as the drawing is on this screen.
fn picture_units(element: &Element) -> f64 {
    let shown = element.get_bounding_client_rect();
    let (across, down) = (SIZE.0 / shown.width(), SIZE.1 / shown.height());
    // The whole picture is shown, so the tighter side decides.
    let unit = across.max(down);
    if unit.is_finite() { unit } else { 1.0 }
}
