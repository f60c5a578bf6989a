//! Fields whose answers are a type of their own, with its order and stored names.

use super::Chosen;
use crate::app::model::Model;
use crate::app::part::{Choice, Part, What};
use crate::choices::Choices;

/// What is asked, and a line of help that may be empty.
type Label<'a> = (&'a str, &'a str);

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
    let (value, mut choice) = asked(m, name, label, words, None);
    choice.options.insert(0, (String::new(), none.to_owned()));
    Chosen { value, part: Part::new(name, What::Pick(choice)) }
}

fn asked<T: Choices>(
    m: &Model,
    name: &str,
    label: Label,
    words: fn(T) -> &'static str,
    first: Option<T>,
) -> (Option<T>, Choice) {
    let all = T::all();
    let options = all.iter().map(|one| (one.name().to_owned(), words(*one).to_owned()));
    let first = first.and_then(|first| all.iter().position(|one| *one == first));
    let (at, choice) = chosen(m, name, label, options.collect(), first);
    (at.and_then(|at| all.get(at)).copied(), choice)
}

/// Which of the options is chosen, compiled once for all types.
fn chosen(
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
