//! Fields whose answers are a type of their own, with its order and stored names.

use super::plain::{Chosen, Label, chosen};
use crate::app::model::Model;
use crate::app::part::{Choice, Part, What};
use crate::choices::Choices;

/// One of a few answers, side by side.
pub fn answer<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    first: T,
) -> Chosen<T> {
    let (value, choice) = asked(m, name, label, words, Some(first));
    Chosen { value: value.unwrap_or(first), part: Part::new(name, What::Choice(choice)) }
}

/// One of a few answers, side by side, or none yet.
pub fn answer_or_none<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
) -> Chosen<Option<T>> {
    let (value, choice) = asked(m, name, label, words, None);
    Chosen { value, part: Part::new(name, What::Choice(choice)) }
}

/// One of many answers, as a list.
pub fn listed<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    first: T,
) -> Chosen<T> {
    let (value, choice) = asked(m, name, label, words, Some(first));
    Chosen { value: value.unwrap_or(first), part: Part::new(name, What::Pick(choice)) }
}

/// One of many answers, as a list that begins with none of them, in the words `none`.
pub fn listed_or_none<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    none: &str,
) -> Chosen<Option<T>> {
    let (value, choice) = asked_or_none(m, name, label, words, none, None);
    Chosen { value, part: Part::new(name, What::Pick(choice)) }
}

/// One of a few answers, side by side, that begin with none of them, in the words `none`.
pub fn answer_or_nothing<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    none: &str,
    first: Option<T>,
) -> Chosen<Option<T>> {
    let (value, choice) = asked_or_none(m, name, label, words, none, first);
    Chosen { value, part: Part::new(name, What::Choice(choice)) }
}

fn asked_or_none<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    none: &str,
    first: Option<T>,
) -> (Option<T>, Choice) {
    let mut options = options_of(words);
    options.insert(0, (String::new(), none.to_owned()));
    let first = place_of(first).map_or(0, |at| at + 1);
    let (at, choice) = chosen(m, name, label, options, Some(first));
    let at = at.and_then(|at| at.checked_sub(1));
    (at.and_then(|at| T::all().get(at)).copied(), choice)
}

fn asked<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    first: Option<T>,
) -> (Option<T>, Choice) {
    let (at, choice) = chosen(m, name, label, options_of(words), place_of(first));
    (at.and_then(|at| T::all().get(at)).copied(), choice)
}

/// Every answer's stored name, with its words.
fn options_of<T: Choices>(words: fn(T) -> &'static str) -> Vec<(String, String)> {
    T::all().iter().map(|one| (one.name().to_owned(), words(*one).to_owned())).collect()
}

fn place_of<T: Choices>(answer: Option<T>) -> Option<usize> {
    answer.and_then(|answer| T::all().iter().position(|one| *one == answer))
}
