//! Times and sliders.

use super::{label, step_button, typed, value_of};
use crate::app::{Event, MomentField, Slider, What};
use crate::page::board::Node;
use crate::page::element::{Told, el};
use crate::page::session::send;
use crate::quantity::write_number;
use leptos::prelude::*;

fn of_moment(what: &What, text: fn(&MomentField) -> &str) -> String {
    match what {
        What::Moment(field) => text(field).to_owned(),
        _ => String::new(),
    }
}

/// A date and time: now, unless another is chosen. With a time of its own it is another element (see
/// `board`).
pub fn moment(node: &Node, field: &MomentField) -> AnyView {
    let (id, name) = (node.id(), node.name.clone());
    let quiet = || el("BUTTON").with("type", "button").with("class", "quiet");
    let row = el("DIV")
        .with("class", "when-row")
        .put(label(node, &id, |what| of_moment(what, |field| &field.label)));
    let frame = el("DIV").with("class", "field when");
    if field.text.is_empty() {
        let what = node.what.clone();
        let other = move |_| {
            let now = what.with_untracked(|what| of_moment(what, |field| &field.now));
            typed(&name, now, "");
        };
        let now = el("SPAN").with("class", "when-now").text(field.now_words).view();
        let other = quiet().text(field.other_words).on("click", other);
        return frame.put(row.put(now).put(other.view()).view()).view();
    }
    let changed = name.clone();
    let input = el("INPUT")
        .with("id", &id)
        .with("type", "datetime-local")
        .holds(node, "value", |what| of_moment(what, |field| &field.text))
        .on("change", move |event: Told| {
            let text = value_of(&event);
            if !text.is_empty() {
                typed(&changed, text, "");
            }
        });
    let now = quiet().text(field.now_words).on("click", move |_| typed(&name, String::new(), ""));
    frame.put(row.put(now.view()).view()).put(input.view()).view()
}

fn of_slider(what: &What, text: fn(&Slider) -> &str) -> String {
    match what {
        What::Slider(slider) => text(slider).to_owned(),
        _ => String::new(),
    }
}

fn slid(node: &Node, to: impl Fn(&Slider, &Told) -> f64 + 'static) -> impl FnMut(Told) + 'static {
    let (name, what) = (node.name.to_string(), node.what.clone());
    move |event| {
        if let What::Slider(slider) = what.get_untracked() {
            send(Event::Slid { name: name.clone(), value: to(&slider, &event) });
        }
    }
}

/// A value to be slid along its range, with a stepper at each end.
pub fn slider(node: &Node, slider: &Slider) -> AnyView {
    let id = node.id();
    let (min, max, step) = slider.range;
    let by =
        |steps: f64| slid(node, move |slider, _| (slider.value + steps * step).clamp(min, max));
    let number = |value: f64| write_number(value, 3);
    let input = el("INPUT")
        .with("id", &id)
        .with("type", "range")
        .with("min", &number(min))
        .with("max", &number(max))
        .with("step", &number(step))
        .follow(node, "aria-valuetext", |what| Some(of_slider(what, |slider| &slider.text)))
        .holds(node, "value", |what| match what {
            What::Slider(slider) => write_number(slider.value, 3),
            _ => String::new(),
        })
        .on(
            "input",
            slid(node, |_, event| {
                // The browser reads it: to parse a number here would bring 12 kB.
                event_target::<web_sys::HtmlInputElement>(event).value_as_number()
            }),
        );
    let less = step_button(node, false, |what| Some(of_slider(what, |slider| &slider.spoken[0])));
    let more = step_button(node, true, |what| Some(of_slider(what, |slider| &slider.spoken[1])));
    let row = el("DIV")
        .with("class", "field-row")
        .put(less.on("click", by(-1.0)).view())
        .put(input.view())
        .put(more.on("click", by(1.0)).view());
    let output = el("OUTPUT").with("for", &id).says(node, |what| of_slider(what, |s| &s.text));
    el("DIV")
        .with("class", "field slider")
        .put(label(node, &id, |what| of_slider(what, |slider| &slider.label)))
        .put(output.view())
        .put(row.view())
        .view()
}
