//! What is read and touched.

use crate::app::act::Act;

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
    /// What follows once it is handed out.
    pub act: Option<Act>,
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
    /// What stands at the right of it, such as its result.
    pub beside: Vec<Run>,
    /// It is open.
    pub open: bool,
}
