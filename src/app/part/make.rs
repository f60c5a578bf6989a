//! Short ways to make the parts that stand everywhere.

use super::{Action, Group, Link, Part, Run, Tag, What};
use crate::app::act::Act;

/// A group of parts in a dress.
pub fn group(name: impl Into<String>, tag: Tag, kind: &'static str, parts: Vec<Part>) -> Part {
    let group = Group { tag, kind, label: String::new(), role: "", send: None, arrows: None };
    Part::of(name, What::Group(group), parts)
}

/// The same with a role, for those who hear the screen.
fn with_role(
    name: impl Into<String>,
    kind: &'static str,
    role: &'static str,
    parts: Vec<Part>,
) -> Part {
    let mut part = group(name, Tag::Div, kind, parts);
    if let What::Group(group) = &mut part.what {
        group.role = role;
    }
    part
}

/// Parts that are said aloud when they change.
pub fn status(name: impl Into<String>, kind: &'static str, parts: Vec<Part>) -> Part {
    with_role(name, kind, "status", parts)
}

/// Parts that are said aloud as soon as they stand there.
pub fn alert(name: impl Into<String>, kind: &'static str, parts: Vec<Part>) -> Part {
    with_role(name, kind, "alert", parts)
}

/// Two columns where the screen is wide enough.
pub fn columns(name: &str, left: Vec<Part>, right: Vec<Part>) -> Part {
    let sides = vec![
        group(format!("{name}/left"), Tag::Div, "", left),
        group(format!("{name}/right"), Tag::Div, "", right),
    ];
    group(name, Tag::Div, "two-columns", sides)
}

/// A form that does `send` when it is sent.
pub fn form(name: impl Into<String>, kind: &'static str, send: Act, parts: Vec<Part>) -> Part {
    let group = Group {
        tag: Tag::Form,
        kind,
        label: String::new(),
        role: "",
        send: Some(send),
        arrows: None,
    };
    Part::of(name, What::Group(group), parts)
}

/// A heading.
pub fn heading(name: impl Into<String>, level: u8, text: impl Into<String>) -> Part {
    Part::new(name, What::Heading(level, text.into()))
}

/// A paragraph.
pub fn text(name: impl Into<String>, kind: &'static str, text: impl Into<String>) -> Part {
    Part::new(name, What::Text(kind, text.into()))
}

/// A link that says one thing.
pub fn link(name: &str, kind: &'static str, address: String, label: &str) -> Part {
    let runs = vec![Run::new("", label)];
    Part::new(name, What::Link(Link { kind, address, runs, here: false }))
}

/// A button that does something.
pub fn action(name: impl Into<String>, kind: &'static str, label: &str, act: Act) -> Part {
    let (label, spoken) = (label.to_owned(), String::new());
    Part::new(name, What::Action(Action { kind, label, spoken, act: Some(act) }))
}

/// The button that sends the form it stands in.
pub fn submit(name: impl Into<String>, label: &str) -> Part {
    let (kind, label, spoken) = ("main-action", label.to_owned(), String::new());
    Part::new(name, What::Action(Action { kind, label, spoken, act: None }))
}
