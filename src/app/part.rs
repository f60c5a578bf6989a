//! A screen as data: what stands on it, part by part.
//!
//! A part has a name that no other part of its screen has and that stays the same while the screen
//! changes, so that what draws it can keep the element that is there, and what walks it can find it again.

use super::act::Act;
use super::drawing::Drawing;
pub use crate::words::Judged;

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
    /// Something said aloud that is not seen.
    Heard(String),
    /// The parts in it, folded away until they are wanted.
    Fold(Fold),
    /// The parts in it, together.
    Group(Group),
}

/// Some letters of a line and their dress; an empty kind is plain, `strong` is bold.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Their dress.
    pub kind: &'static str,
    /// The letters.
    pub text: String,
}

impl Run {
    /// Letters in a dress.
    pub fn new(kind: &'static str, text: impl Into<String>) -> Self {
        Self { kind, text: text.into() }
    }
}

/// A link to another place of the page.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Its dress: `main-action`, `back`, `batch-row`, `sum-link`, `stage`, or none.
    pub kind: &'static str,
    /// The address, with its `#`.
    pub address: String,
    /// What it says; a second run stands below the first.
    pub runs: Vec<Run>,
    /// One is there.
    pub here: bool,
}

/// A button.
#[derive(Clone, Debug, PartialEq)]
pub struct Action {
    /// Its dress: `main-action`, `quiet`, or none.
    pub kind: &'static str,
    /// What is written on it.
    pub label: String,
    /// What it is called aloud, when that is more than what is written on it; else empty.
    pub spoken: String,
    /// What it does; nothing of its own when it sends the form it stands in.
    pub act: Option<Act>,
}

/// A file handed out.
#[derive(Clone, Debug, PartialEq)]
pub struct HandOut {
    /// What is written on the button.
    pub label: String,
    /// The file's name.
    pub file: String,
    /// Its kind, such as `text/calendar`.
    pub media: &'static str,
    /// What is in it.
    pub text: String,
}

/// The answer: the largest thing on the screen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What it answers.
    pub label: String,
    /// The large figure or word.
    pub main: String,
    /// Behind it, smaller: the ± or a second unit.
    pub beside: String,
    /// One sentence below.
    pub below: String,
}

impl Answer {
    /// Only a sentence: what is missing, or why there is no answer.
    pub fn only(label: impl Into<String>, below: impl Into<String>) -> Self {
        Self { label: label.into(), main: "–".to_owned(), below: below.into(), ..Self::default() }
    }
}

/// A field for one number.
#[derive(Clone, Debug, PartialEq)]
pub struct Number {
    /// What is asked.
    pub label: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// What its buttons and its list of units are called aloud: less, more, unit.
    pub spoken: [String; 3],
    /// What is written there.
    pub text: String,
    /// What is written there after one step down and one step up.
    pub steps: (String, String),
    /// What is wrong, in words, once it may be said.
    pub error: String,
    /// What was understood, when it does not look like what was typed.
    pub understood: String,
    /// Units to choose from; one alone is only shown.
    pub units: Vec<&'static str>,
    /// The unit in force.
    pub unit: &'static str,
}

/// A field for words.
#[derive(Clone, Debug, PartialEq)]
pub struct WordsField {
    /// What is asked.
    pub label: String,
    /// What is written there.
    pub text: String,
    /// What is wrong.
    pub error: String,
    /// More than a line.
    pub long: bool,
    /// It is there to be copied, and not to be written in.
    pub to_copy: bool,
}

/// One of several.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// What is asked.
    pub label: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// Stored name and words, in the order offered.
    pub options: Vec<(String, String)>,
    /// The stored name of the one that is chosen.
    pub chosen: String,
    /// What is wrong.
    pub error: String,
}

/// A mark to be set or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Tick {
    /// What it means.
    pub label: String,
    /// It is set.
    pub on: bool,
    /// What a touch does.
    pub act: Act,
}

/// A date and time.
#[derive(Clone, Debug, PartialEq)]
pub struct MomentField {
    /// What is asked.
    pub label: String,
    /// As the phone's own field has it; empty is "now, when it is saved".
    pub text: String,
    /// What the field starts from when another time is wanted.
    pub now: String,
    /// The words for now.
    pub now_words: &'static str,
    /// The words for choosing another time.
    pub other_words: &'static str,
}

/// A value slid along its range.
#[derive(Clone, Debug, PartialEq)]
pub struct Slider {
    /// What is slid.
    pub label: String,
    /// Where it stands.
    pub value: f64,
    /// The same in words.
    pub text: String,
    /// What its buttons are called aloud: less, more.
    pub spoken: [String; 2],
    /// Lowest, highest and one step.
    pub range: (f64, f64, f64),
}

/// A hydrometer in its jar.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stem {
    /// What is set.
    pub label: &'static str,
    /// The field that holds the same number.
    pub field: String,
    /// The reading, in SG or °P as read.
    pub value: Option<f64>,
    /// Where the stem stands until it is set; in water when that is not known.
    pub rest: Option<f64>,
    /// The reading made true, on the same scale; a flag stands there when it differs.
    pub corrected: Option<f64>,
    /// The words on the flag.
    pub corrected_text: String,
    /// The reading in words.
    pub value_text: String,
    /// The scale is °P.
    pub plato: bool,
    /// The symbol of the scale.
    pub unit: &'static str,
    /// From line to line, on the scale shown.
    pub division: f64,
}

/// A table with a heading for each column.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// What it is called aloud.
    pub label: &'static str,
    /// Column headings.
    pub head: Vec<&'static str>,
    /// Rows; the first cell names the row.
    pub rows: Vec<Vec<String>>,
}

/// One sentence of a list.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// Its dress; may be empty.
    pub kind: &'static str,
    /// A word set off before it; may be empty.
    pub mark: &'static str,
    /// The sentence.
    pub text: String,
}

/// How something was worked out: headed parts, each with lines of name, value, formula and source.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Working {
    /// The parts.
    pub parts: Vec<(&'static str, Vec<WorkedLine>)>,
    /// A sentence below; may be empty.
    pub below: &'static str,
}

/// One line of a working.
#[derive(Clone, Debug, PartialEq)]
pub struct WorkedLine {
    /// What it is.
    pub name: &'static str,
    /// Its value.
    pub value: String,
    /// The formula; may be empty.
    pub formula: &'static str,
    /// The source; may be empty.
    pub source: &'static str,
}

/// A fold.
#[derive(Clone, Debug, PartialEq)]
pub struct Fold {
    /// Its dress: `more`, `worked`.
    pub kind: &'static str,
    /// What is always seen.
    pub summary: String,
    /// It is open.
    pub open: bool,
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

/// A group of parts in a dress.
pub fn group(name: impl Into<String>, tag: Tag, kind: &'static str, parts: Vec<Part>) -> Part {
    let group = Group { tag, kind, label: String::new(), role: "", send: None, arrows: None };
    Part::of(name, What::Group(group), parts)
}

/// Parts that are said aloud when they change.
pub fn status(name: impl Into<String>, parts: Vec<Part>) -> Part {
    let mut part = group(name, Tag::Div, "", parts);
    if let What::Group(group) = &mut part.what {
        group.role = "status";
    }
    part
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
