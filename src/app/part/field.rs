//! What is filled in.

use crate::app::act::Act;

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

/// A file of the phone, to be read.
#[derive(Clone, Debug, PartialEq)]
pub struct FileField {
    /// What is asked.
    pub label: String,
    /// A line of help; may be empty.
    pub hint: String,
    /// Endings and kinds that are offered.
    pub accept: &'static str,
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
