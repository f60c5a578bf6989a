//! An element put together at run time, of one type whatever it is: so the machinery behind elements,
//! their attributes and what they listen to is compiled once, and not for every place it is used in.

use super::board::Node;
use super::session::send;
use crate::app::{Act, Event, What};
use leptos::prelude::*;
use leptos::tachys::html::attribute::any_attribute::{AnyAttribute, IntoAnyAttribute};
use leptos::tachys::html::attribute::custom::custom_attribute;
use leptos::tachys::html::element::{custom, inner_html};
use leptos::tachys::html::event::on;
use leptos::tachys::html::property::prop;
use leptos::tachys::reactive_graph::SharedReactiveFunction;
use std::sync::{Arc, Mutex};

/// Something that happened to an element, as the browser tells it.
pub type Told = web_sys::Event;

/// An element in the making.
pub struct Element {
    /// In capitals, as the document names it: else it would be made anew at every change.
    tag: &'static str,
    attributes: Vec<AnyAttribute>,
    children: Vec<AnyView>,
}

/// An element; its tag in capitals.
pub fn el(tag: &'static str) -> Element {
    Element { tag, attributes: vec![], children: vec![] }
}

/// An element with a dress and a text that stay as they are.
pub fn plain(tag: &'static str, class: &'static str, text: &str) -> AnyView {
    let element = if class.is_empty() { el(tag) } else { el(tag).with("class", class) };
    element.text(text).view()
}

impl Element {
    /// With an attribute that stays as it is.
    pub fn with(mut self, name: &'static str, value: &str) -> Self {
        self.attributes.push(custom_attribute(name, value.to_owned()).into_any_attr());
        self
    }

    /// With an attribute that follows a part; it is there only while there is a value.
    pub fn follow(
        mut self,
        node: &Node,
        name: &'static str,
        of: fn(&What) -> Option<String>,
    ) -> Self {
        let what = node.what.clone();
        let value: SharedReactiveFunction<Option<String>> =
            Arc::new(Mutex::new(move || what.with(of)));
        self.attributes.push(custom_attribute(name, value).into_any_attr());
        self
    }

    /// With a text property that follows a part.
    pub fn holds(mut self, node: &Node, name: &'static str, of: fn(&What) -> String) -> Self {
        let what = node.what.clone();
        let value: SharedReactiveFunction<String> = Arc::new(Mutex::new(move || what.with(of)));
        self.attributes.push(prop(name, value).into_any_attr());
        self
    }

    /// With a property that is on or off, and follows a part.
    pub fn is(
        mut self,
        node: &Node,
        name: &'static str,
        so: impl Fn(&What) -> bool + Send + 'static,
    ) -> Self {
        let what = node.what.clone();
        let value: SharedReactiveFunction<bool> = Arc::new(Mutex::new(move || what.with(&so)));
        self.attributes.push(prop(name, value).into_any_attr());
        self
    }

    /// Listening.
    pub fn on(mut self, event: &'static str, act: impl FnMut(Told) + 'static) -> Self {
        let act: Box<dyn FnMut(Told)> = Box::new(act);
        let event = leptos::ev::Custom::<Told>::new(event);
        self.attributes.push(on(event, act).into_any_attr());
        self
    }

    /// Doing what a part says at that moment, on an event.
    pub fn does(self, node: &Node, event: &'static str, act: fn(&What) -> Option<Act>) -> Self {
        let what = node.what.clone();
        self.on(event, move |_| {
            if let Some(act) = what.with_untracked(act) {
                send(Event::Did(act));
            }
        })
    }

    /// With something in it.
    pub fn put(mut self, child: AnyView) -> Self {
        self.children.push(child);
        self
    }

    /// With a text that stays as it is.
    pub fn text(self, text: &str) -> Self {
        self.put(text.to_owned().into_any())
    }

    /// With a text that follows a part.
    pub fn says(self, node: &Node, of: fn(&What) -> String) -> Self {
        let what = node.what.clone();
        let text: SharedReactiveFunction<String> = Arc::new(Mutex::new(move || what.with(of)));
        self.put(text.into_any())
    }

    /// With something made of the whole of a part, made again when the part has changed.
    pub fn shows(self, node: &Node, view: fn(&What) -> AnyView) -> Self {
        let what = node.what.clone();
        let view: SharedReactiveFunction<AnyView> = Arc::new(Mutex::new(move || what.with(view)));
        self.put(view.into_any())
    }

    /// With a picture in it, in the words of SVG. Whatever text comes into it was made harmless by
    /// [`super::svg::escaped`].
    pub fn draws(mut self, node: &Node, picture: fn(&What) -> String) -> Self {
        let what = node.what.clone();
        let picture: SharedReactiveFunction<String> =
            Arc::new(Mutex::new(move || what.with(picture)));
        self.attributes.push(inner_html(picture).into_any_attr());
        self
    }

    /// The same for a picture that stays as it is.
    pub fn drawn(mut self, picture: &str) -> Self {
        self.attributes.push(inner_html(picture.to_owned()).into_any_attr());
        self
    }

    /// The element.
    pub fn view(self) -> AnyView {
        custom(self.tag).child(self.children).add_any_attr(self.attributes).into_any()
    }
}

/// Views one after another.
pub fn list(views: impl Iterator<Item = AnyView>) -> AnyView {
    views.collect::<Vec<_>>().into_any()
}
