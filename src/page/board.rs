//! The parts that are on the screen, each with its data as a signal: what is drawn is kept, and only what
//! has changed is told to change.

use crate::app::{Choice, Part, What};
use leptos::prelude::*;
use std::sync::Arc;

/// Parts as they are drawn.
pub type Shown = ArcRwSignal<Vec<Node>>;

/// One part that is drawn.
#[derive(Clone)]
pub struct Node {
    /// Its name.
    pub name: Arc<str>,
    /// Its kind: another kind under the same name is another element.
    kind: u32,
    /// Its data.
    pub what: ArcRwSignal<What>,
    /// What stands in it.
    pub inner: Shown,
}

impl Node {
    /// A part that was not on the screen.
    pub fn new(part: Part) -> Self {
        let kind = kind_of(&part.what);
        let inner = part.parts.into_iter().map(Self::new).collect();
        Self {
            name: part.name.into(),
            kind,
            what: ArcRwSignal::new(part.what),
            inner: ArcRwSignal::new(inner),
        }
    }

    /// What it is kept by.
    pub fn key(&self) -> (Arc<str>, u32) {
        (Arc::clone(&self.name), self.kind)
    }

    /// What the document calls it.
    pub fn id(&self) -> String {
        document_id(&self.name)
    }
}

/// A part's name as the document has it.
pub fn document_id(name: &str) -> String {
    name.replace('/', "-")
}

/// A number for what element a part is.
fn kind_of(what: &What) -> u32 {
    match what {
        What::Heading(level, _) => u32::from(*level),
        What::Text(..) => 10,
        What::Line(..) => 11,
        What::Link(_) => 12,
        What::Action(_) => 13,
        What::HandOut(_) => 14,
        // Both are the plate, which stays while its answer comes and goes.
        What::Answer(_) | What::Verdict(_) => 15,
        What::Number(_) => 17,
        What::Words(field) => 18 + u32::from(field.long),
        What::Choice(choice) => 100 + 2 * of_options(choice),
        What::Pick(choice) => 101 + 2 * of_options(choice),
        What::Tick(_) => 22,
        What::Moment(field) => 23 + 12 * u32::from(field.text.is_empty()),
        What::Slider(_) => 24,
        What::Stem(_) => 25,
        What::Figures(_) => 26,
        What::Table(_) => 27,
        What::Items(..) => 28,
        What::Worked(_) => 29,
        What::Drawing(_) => 30,
        What::Outcome(_) => 31,
        What::Fold(_) => 33,
        What::Timer(_) => 34,
        What::File(_) => 35,
        What::Group(group) => 40 + group.tag as u32,
    }
}

/// A number for what is offered to choose from (FNV-1a, Fowler, Noll and Vo): other options, another element.
fn of_options(choice: &Choice) -> u32 {
    let letters = choice.options.iter().flat_map(|(stored, words)| [stored, "\n", words, "\n"]);
    let bytes = letters.flat_map(str::bytes);
    bytes.fold(0x811C_9DC5_u32, |sum, byte| (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193)) >> 8
}

/// Puts parts in place of those that are shown, keeping what stays.
pub fn put(shown: &Shown, parts: Vec<Part>) {
    let before = shown.get_untracked();
    let mut same = before.len() == parts.len();
    let mut after = Vec::with_capacity(parts.len());
    for (at, part) in parts.into_iter().enumerate() {
        let kind = kind_of(&part.what);
        let is_it = |node: &&Node| node.kind == kind && *node.name == *part.name;
        // As a rule it is where it was.
        let here = before.get(at).filter(is_it);
        same &= here.is_some();
        match here.or_else(|| before.iter().find(is_it)) {
            Some(node) => {
                if node.what.with_untracked(|what| *what != part.what) {
                    node.what.set(part.what);
                }
                put(&node.inner, part.parts);
                after.push(node.clone());
            }
            None => after.push(Node::new(part)),
        }
    }
    if !same {
        shown.set(after);
    }
}
