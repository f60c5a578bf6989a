//! Drawings, painted from where everything goes.

mod blend;
mod bottle;
mod course;
mod ends;
mod jar;
mod warmth;

use super::board::Node;
use super::element::{Told, el};
use super::session::send;
use crate::app::drawing::{Drawing, Sketch};
use crate::app::{Act, Event, WatchAct, What};
use crate::chart::Course;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// A drawing; the course can be touched to walk to a reading.
pub fn sketch(node: &Node, drawing: &Drawing) -> AnyView {
    if !matches!(drawing.sketch, Sketch::Course(_)) {
        return el("DIV").with("class", "drawing").draws(node, paint).view();
    }
    let what = node.what.clone();
    let on_touch = move |event: Told| {
        let at = what.with_untracked(|what| match what {
            What::Drawing(Drawing { sketch: Sketch::Course(sketch), .. }) => {
                touched(&event, &sketch.course)
            }
            _ => None,
        });
        if let Some(at) = at {
            send(Event::Did(Act::Watch(WatchAct::WalkTo(at))));
        }
    };
    el("DIV").with("class", "course-touch").draws(node, paint).on("click", on_touch).view()
}

fn paint(what: &What) -> String {
    let What::Drawing(drawing) = what else { return String::new() };
    match &drawing.sketch {
        Sketch::Course(sketch) => course::course_sketch(drawing, sketch),
        Sketch::Jar(data) => jar::jar_sketch(drawing, data),
        Sketch::Bottle(data) => bottle::bottle_sketch(drawing, data),
        Sketch::Blend(data) => blend::blend_sketch(drawing, data),
        Sketch::Warmth(data) => warmth::warmth_sketch(drawing, data),
        Sketch::Ends(data) => ends::ends_sketch(drawing, data),
    }
}

/// Which mark lies nearest to where the picture was touched.
fn touched(event: &Told, course: &Course) -> Option<usize> {
    let mouse = event.dyn_ref::<web_sys::MouseEvent>()?;
    let target = event.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let picture = target.query_selector("svg").ok()??.get_bounding_client_rect();
    if picture.width() <= 0.0 {
        return None;
    }
    let x = (f64::from(mouse.client_x()) - picture.left()) * Course::SIZE.0 / picture.width();
    course.nearest(x)
}
