//! The stem: a hydrometer's scale as one sees it in the jar, moved until it looks like the one in hand.

use super::board::Node;
use super::element::{Told, el};
use super::session::send;
use super::svg::{Svg, unique};
use crate::app::{Event, Stem, What, stem_text};
use crate::chart::{PaperScale, wrap};
use leptos::prelude::*;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, PointerEvent};

/// The picture's own units; one is a CSS pixel where it is 272 pixels high.
const SIZE: (f64, f64) = (260.0, 272.0);
/// The level surface, where the eye reads.
const SURFACE: f64 = 146.0;
/// From where to where the paper is seen: below the dome, down to the foot of the jar.
const SEEN: (f64, f64) = (36.0, 258.0);
/// A drop of water or a resting finger moves the stem by less than this.
const SLOP: f64 = 5.0;

/// The jar, and the stem with its dome.
const JAR: &str = "M15 0V254Q15 264 25 264H235Q245 264 245 254V0";
const STEM: &str = "M96 264V34Q96 12 132 12T168 34V264";

/// The surface from the left wall to the right: the liquid climbs a little at every wall.
const MENISCUS: &str =
    "Q16 146 29 146H82Q95 146 96 137V146H168V137Q169 146 182 146H231Q244 146 245 135";

/// Which way the grip goes.
const ARROWS: &str = r#"<svg viewBox="0 0 56 96" aria-hidden="true"><path d="M18 26L28 14L38 26M28 14V82M18 70L28 82L38 70"/></svg>"#;

/// A pointer on its way.
#[derive(Clone, Copy)]
struct Drag {
    pointer: i32,
    from_y: f64,
    from_reading: f64,
    moving: bool,
}

fn of(what: &What) -> Stem {
    match what {
        What::Stem(stem) => stem.clone(),
        _ => Stem::default(),
    }
}

fn scale(stem: &Stem) -> PaperScale {
    PaperScale::new(stem.plato, stem.division)
}

/// What it shows; in water when nothing is known.
fn reading(stem: &Stem) -> f64 {
    stem.value.or(stem.rest).unwrap_or_else(|| scale(stem).water())
}

/// Asks for another reading.
fn set(stem: &Stem, next: f64) {
    if stem.value != Some(next) {
        let (text, unit) = (stem_text(next, stem.plato), stem.unit.to_owned());
        send(Event::Typed { name: stem.field.clone(), text, unit });
    }
}

/// A slider drawn as a hydrometer in its jar. It shows what its part says and asks for another reading;
/// it keeps nothing but the pointer that moves it.
pub fn stem(node: &Node) -> AnyView {
    let drag = Rc::new(Cell::new(None::<Drag>));
    let (down, moved) = (Rc::clone(&drag), Rc::clone(&drag));
    let (what_down, what_moved, what_key) =
        (node.what.clone(), node.what.clone(), node.what.clone());
    let on_down = move |event: Told| {
        let Some(ev) = event.dyn_ref::<PointerEvent>() else { return };
        if !ev.is_primary() || ev.button() != 0 {
            return;
        }
        if let Some(element) = grip(ev) {
            // A pointer that is gone already cannot be held; then the drag ends with it.
            let _ = element.set_pointer_capture(ev.pointer_id());
        }
        down.set(Some(Drag {
            pointer: ev.pointer_id(),
            from_y: f64::from(ev.client_y()),
            from_reading: reading(&what_down.with_untracked(of)),
            moving: false,
        }));
    };
    let on_move = move |event: Told| {
        let Some(ev) = event.dyn_ref::<PointerEvent>() else { return };
        let Some(d) = moved.get().filter(|d| d.pointer == ev.pointer_id()) else { return };
        let y = f64::from(ev.client_y());
        if !d.moving {
            if (d.from_y - y).abs() >= SLOP {
                // From here on, so that the stem does not jump by what was waited for.
                moved.set(Some(Drag { from_y: y, moving: true, ..d }));
                marks_moving(ev, true);
            }
            return;
        }
        let unit = grip(ev).map_or(1.0, |element| picture_units(&element));
        let stem = what_moved.with_untracked(of);
        set(&stem, scale(&stem).lifted(d.from_reading, (d.from_y - y) * unit));
    };
    let on_key = move |event: Told| {
        let Some(ev) = event.dyn_ref::<KeyboardEvent>() else { return };
        let stem = what_key.with_untracked(of);
        let (scale, now) = (scale(&stem), reading(&stem));
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
        set(&stem, next);
    };
    let ends = |drag: &Rc<Cell<Option<Drag>>>| {
        let drag = Rc::clone(drag);
        move |event: Told| {
            let Some(ev) = event.dyn_ref::<PointerEvent>() else { return };
            if drag.get().is_some_and(|d| d.pointer == ev.pointer_id()) {
                drag.set(None);
                marks_moving(ev, false);
            }
        }
    };
    // The grip alone takes the finger: one that scrolls over the picture changes nothing.
    let grip = el("DIV")
        .with("class", "stem-grip")
        .with("tabindex", "0")
        .with("role", "slider")
        .with("aria-orientation", "vertical")
        .follow(node, "aria-label", |what| Some(of(what).label.to_owned()))
        .follow(node, "aria-valuemin", |what| Some(scale(&of(what)).range().0.to_string()))
        .follow(node, "aria-valuemax", |what| Some(scale(&of(what)).range().1.to_string()))
        .follow(node, "aria-valuenow", |what| Some(reading(&of(what)).to_string()))
        .follow(node, "aria-valuetext", |what| Some(of(what).value_text))
        .drawn(ARROWS)
        .on("pointerdown", on_down)
        .on("pointermove", on_move)
        .on("pointerup", ends(&drag))
        .on("pointercancel", ends(&drag))
        .on("lostpointercapture", ends(&drag))
        .on("keydown", on_key);
    el("DIV")
        .follow(node, "class", |what| {
            let unread = of(what).value.is_none();
            Some(if unread { "stem stem-unread" } else { "stem" }.to_owned())
        })
        .put(el("DIV").drawn(&jar()).view())
        .put(el("DIV").with("class", "stem-print").draws(node, |what| print(&of(what))).view())
        .put(grip.view())
        .view()
}

/// Shows by the hand that it is being moved.
fn marks_moving(ev: &PointerEvent, moving: bool) {
    if let Some(element) = grip(ev) {
        let _ = match moving {
            true => element.set_attribute("data-moving", ""),
            false => element.remove_attribute("data-moving"),
        };
    }
}

/// The jar with the empty stem in it, which stays: at each key only what is printed is drawn anew.
fn jar() -> String {
    let jar = unique("jar");
    let mut svg = begun();
    svg.clip(&jar, JAR);
    svg.raw(&format!(r#"<g clip-path="url(#{jar})">"#));
    svg.path("stem-paper", STEM);
    svg.path("stem-liquid", &format!("M15 135{MENISCUS}V264H15Z"));
    svg.raw("</g>");
    svg.path("stem-glass", STEM);
    svg.path("stem-climb", &format!("M15 135{MENISCUS}"));
    // Bold where the lines are read, faint across the number.
    svg.path("stem-level", "M15 146H112M168 146H245");
    svg.path("stem-climb", "M112 146H168");
    svg.path("stem-eye", "M1 138L13 146L1 154Z");
    svg.path("stem-jar", &format!("{JAR}M4 270H256"));
    svg.raw("</svg>");
    svg.0
}

/// The print on the paper, as far down as the stem stands, and the flag at the corrected reading.
fn print(stem: &Stem) -> String {
    let scale = scale(stem);
    let mut svg = begun();
    svg.raw(r#"<g class="stem-scale">"#);
    paper(&mut svg, &scale, SURFACE - scale.below_water(reading(stem)));
    svg.raw("</g>");
    flag(&mut svg, stem);
    svg.raw("</svg>");
    svg.0
}

fn begun() -> Svg {
    Svg(format!(r#"<svg viewBox="0 0 {} {}" aria-hidden="true">"#, SIZE.0, SIZE.1))
}

/// What of the print is seen, as one path for each kind of line. No number is cut at an end.
fn paper(svg: &mut Svg, scale: &PaperScale, down: f64) {
    let printed = scale.printed();
    let seen = |y: &f64, above: f64| SEEN.0 + above <= *y && *y <= SEEN.1;
    let lines = |places: &[f64], to: f64| -> String {
        let seen = places.iter().map(|y| y + down).filter(|y| seen(y, 0.0));
        seen.map(|y| format!("M97 {y:.2}H{to}")).collect()
    };
    let long: Vec<f64> = printed.long.iter().map(|(y, _)| *y).collect();
    svg.path("stem-line stem-line-long", &lines(&long, 167.0));
    svg.path("stem-line", &lines(&printed.middle, 112.0));
    svg.path("stem-line stem-line-short", &lines(&printed.short, 105.0));
    let numbers = printed.long.iter().map(|(y, number)| (y + down, number));
    for (y, number) in numbers.filter(|(y, _)| seen(y, 14.0)) {
        svg.text("stem-number", (165.0, y - 3.5), "", number);
    }
}

/// The flag at the corrected reading.
fn flag(svg: &mut Svg, stem: &Stem) {
    let (Some(value), Some(corrected)) = (stem.value, stem.corrected) else { return };
    let scale = scale(stem);
    let below = scale.below_water(corrected) - scale.below_water(value);
    // Less than a hair's breadth is the same line.
    if below.abs() < 0.5 {
        return;
    }
    let y = (SURFACE + below).clamp(30.0, 244.0);
    let lines = wrap(&stem.corrected_text, 10);
    let half = 6.0 + 9.0 * lines.len().clamp(1, 2) as f64;
    let first = y - 9.0 * (lines.len() as f64 - 1.0) + 5.5;
    let (top, bottom) = (y - half, y + half);
    svg.raw(r#"<g class="stem-flag">"#);
    svg.path("stem-true", &format!("M97 {y:.1}H168"));
    svg.path(
        "stem-flag-cloth",
        &format!("M169 {y:.1}L178 {:.1}V{top:.1}H259V{bottom:.1}H178V{:.1}Z", y - 7.0, y + 7.0),
    );
    for (line, row) in lines.iter().zip(0_u8..) {
        let class = if row == 0 { "stem-flag-value" } else { "stem-flag-word" };
        svg.text(class, (183.0, first + 18.0 * f64::from(row)), "", line);
    }
    svg.raw("</g>");
}

fn grip(ev: &PointerEvent) -> Option<Element> {
    ev.current_target().and_then(|target| target.dyn_into::<Element>().ok())
}

/// Picture units for one CSS pixel, as large as the drawing is on this screen.
fn picture_units(element: &Element) -> f64 {
    let Some(whole) = element.parent_element() else { return 1.0 };
    let shown = whole.get_bounding_client_rect();
    let (across, down) = (SIZE.0 / shown.width(), SIZE.1 / shown.height());
    // The whole picture is shown, so the tighter side decides.
    let unit = across.max(down);
    if unit.is_finite() { unit } else { 1.0 }
}
