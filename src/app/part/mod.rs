//! A screen as data: what stands on it, part by part.
//!
//! A part has a name that no other part of its screen has and that stays the same while the screen
//! changes, so that what draws it can keep the element that is there, and what walks it can find it again.

mod card;
mod field;
mod make;

pub use crate::words::Judged;
pub use card::{Action, Answer, Fold, HandOut, Item, Link, Run, Table, WorkedLine, Working};
pub use field::{Choice, FileField, MomentField, Number, Slider, Stem, Tick, WordsField};
pub use make::{action, alert, columns, form, group, heading, link, status, submit, text};

use super::act::Act;
use super::drawing::Drawing;

/// A whole screen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Screen {
    /// What the window is called.
    pub title: String,
    /// What must be said until it is settled, above all else.
    pub notices: Vec<Part>,
    /// The screen proper.
    pub main: Vec<Part>,
    /// The last thing done, with its way back.
    pub undo: Vec<Part>,
    /// The four places.
    pub places: Vec<Place>,
    /// What they are called together, aloud.
    pub places_label: &'static str,
}

/// One of the four places, in the thumb's reach.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// What it is called.
    pub label: &'static str,
    /// Its address.
    pub address: String,
    /// One is there, or at something that belongs to it.
    pub here: bool,
    /// Its sign, as a path in a square of 24.
    pub sign: &'static str,
}

/// One thing on a screen, with what stands in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// Its name, stable and its own; the name of a field is the name of its draft.
    pub name: String,
    /// What it is.
    pub what: What,
    /// What stands in it.
    pub parts: Vec<Part>,
}

impl Part {
    /// A part with nothing in it.
    pub fn new(name: impl Into<String>, what: What) -> Self {
        Self { name: name.into(), what, parts: vec![] }
    }

    /// A part with others in it.
    pub fn of(name: impl Into<String>, what: What, parts: Vec<Self>) -> Self {
        Self { name: name.into(), what, parts }
    }

    /// This part and all that stand in it, from the top down.
    pub fn each<'a>(&'a self, look: &mut dyn FnMut(&'a Self)) {
        look(self);
        for part in &self.parts {
            part.each(look);
        }
    }
}

/// What a part is.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// A heading; level 1 is the screen's own and gets the attention on arrival.
    Heading(u8, String),
    /// A paragraph. The kind names its dress.
    Text(&'static str, String),
    /// A paragraph of several runs.
    Line(&'static str, Vec<Run>),
    /// A link.
    Link(Link),
    /// A button.
    Action(Action),
    /// A button that hands a file out.
    HandOut(HandOut),
    /// The answer of a sum.
    Answer(Answer),
    /// A judgement.
    Verdict(Judged),
    /// The face of a timer: a judgement that changes by the second, and is not said aloud.
    Timer(Judged),
    /// A field for one number.
    Number(Number),
    /// A field for words.
    Words(WordsField),
    /// One of a few, side by side.
    Choice(Choice),
    /// One of many, as a list.
    Pick(Choice),
    /// A mark to be set or not.
    Tick(Tick),
    /// A date and time: now, unless another is chosen.
    Moment(MomentField),
    /// A file of the phone.
    File(FileField),
    /// A value slid along its range.
    Slider(Slider),
    /// A hydrometer in its jar, set by looking.
    Stem(Stem),
    /// Names and figures, a row each.
    Figures(Vec<(String, String)>),
    /// A table.
    Table(Table),
    /// Sentences one below another; a number is their order.
    Items(&'static str, Vec<Item>),
    /// A working.
    Worked(Working),
    /// A drawing.
    Drawing(Drawing),
    /// Why something was not done, said at once; empty when all is well.
    Outcome(String),
    /// The parts in it, folded away until they are wanted.
    Fold(Fold),
    /// The parts in it, together.
    Group(Group),
}

/// What a group is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tag {
    /// Nothing more than together.
    Div,
    /// A section.
    Section,
    /// The head of something.
    Header,
    /// Ways about.
    Nav,
    /// Fields of one question; the label is its legend.
    Fieldset,
    /// A list.
    Ul,
    /// A list in order.
    Ol,
    /// An entry of a list.
    Li,
    /// A form; sending it is an act.
    Form,
}

/// Parts that belong together.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// What it is.
    pub tag: Tag,
    /// Its dress.
    pub kind: &'static str,
    /// What it is called aloud; may be empty.
    pub label: String,
    /// `status` or `alert` when it is said as it appears; else empty.
    pub role: &'static str,
    /// What sending does, for a form.
    pub send: Option<Act>,
    /// What the arrow keys to the left and right do while the attention is in it, for a `Div`.
    pub arrows: Option<(Act, Act)>,
}
