//! Fields for words, choices and times.

use super::Asked;
use crate::app::model::Model;
use crate::app::part::{Choice, MomentField, Part, What, WordsField};
use crate::quantity::{Moment, ReadError};

/// What is asked, and a line of help that may be empty.
pub(super) type Label<'a> = (&'a str, &'a str);

/// A choice as it stands, and the part that shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct Chosen<T> {
    /// The one that is chosen.
    pub value: T,
    /// The field.
    pub part: Part,
}

/// A field for words: what is written there, and the part.
pub fn words_field(m: &Model, name: &str, label: &str, first: &str, long: bool) -> Chosen<String> {
    let typed = m.drafts.text(name);
    let value = typed.map_or(first, str::trim).to_owned();
    let (label, text) = (label.to_owned(), typed.unwrap_or(first).to_owned());
    let field = WordsField { label, text, error: String::new(), long, to_copy: false };
    Chosen { value, part: Part::new(name, What::Words(field)) }
}

/// Which of the options is chosen, compiled once for all types: its place, and the field.
pub(super) fn chosen(
    m: &Model,
    name: &str,
    (label, hint): Label,
    options: Vec<(String, String)>,
    first: Option<usize>,
) -> (Option<usize>, Choice) {
    let kept = m.drafts.text(name);
    let at = kept.and_then(|kept| options.iter().position(|(stored, _)| stored == kept)).or(first);
    let stored = at.and_then(|at| options.get(at)).map(|(stored, _)| stored.clone());
    let choice = Choice {
        label: label.to_owned(),
        hint: hint.to_owned(),
        chosen: stored.unwrap_or_default(),
        options,
        error: String::new(),
    };
    (at, choice)
}

/// One of a few, side by side. Each option is a value, its stored name and its words.
pub fn choice<T: Copy + PartialEq>(
    m: &Model,
    name: &str,
    words: Label,
    options: &[(T, &str, &str)],
    first: T,
) -> Chosen<T> {
    let at = options.iter().position(|(one, ..)| *one == first);
    let named =
        options.iter().map(|(_, stored, words)| ((*stored).to_owned(), (*words).to_owned()));
    let (at, choice) = chosen(m, name, words, named.collect(), at);
    let value = at.and_then(|at| options.get(at)).map_or(first, |(value, ..)| *value);
    Chosen { value, part: Part::new(name, What::Choice(choice)) }
}

/// One of many, as a list; texts may be the brewer's own. What is chosen is a stored name.
pub fn pick(
    m: &Model,
    name: &str,
    (label, hint): Label,
    options: Vec<(String, String)>,
    first: &str,
) -> Chosen<String> {
    let there = |wanted: &str| options.iter().any(|(stored, _)| stored == wanted);
    let kept = m.drafts.text(name).filter(|kept| there(kept));
    let first = if there(first) { first } else { options.first().map_or("", |(stored, _)| stored) };
    let chosen = kept.unwrap_or(first).to_owned();
    let (label, hint, error) = (label.to_owned(), hint.to_owned(), String::new());
    let field = Choice { label, hint, chosen: chosen.clone(), options, error };
    Chosen { value: chosen, part: Part::new(name, What::Pick(field)) }
}

/// A date and time: now, unless another was given or is chosen. A time that was not touched is the very
/// one it was given, whatever zone the phone is in by now.
pub fn moment(m: &Model, name: &str, label: &str, first: Option<Moment>) -> Asked<Moment> {
    let typed = m.drafts.text(name);
    let text = match typed {
        Some(text) => text.to_owned(),
        None => first.map(Moment::local_text).unwrap_or_default(),
    };
    let value = match (typed, first) {
        (None, Some(first)) => Ok(first),
        (Some(text), Some(first)) if text == first.local_text() => Ok(first),
        _ if text.is_empty() => Ok(m.now),
        _ => m.zone.local(&text).map_err(|_| ReadError::NotANumber { typed: text.clone() }),
    };
    let field = MomentField {
        label: label.to_owned(),
        text,
        now: m.now.local_text(),
        now_words: m.words.fields.now,
        other_words: m.words.fields.another_time,
    };
    Asked { value, part: Part::new(name, What::Moment(field)) }
}
