//! What is read: answers, judgements, figures, tables, lists and workings.

use super::board::Node;
use super::element::{el, list, plain};
use crate::app::{Answer, Judged, Run, Verdict, What};
use leptos::prelude::*;

fn of_answer(what: &What, text: fn(&Answer) -> &String) -> String {
    match what {
        What::Answer(answer) => text(answer).clone(),
        _ => String::new(),
    }
}

/// The answer of a sum, said aloud as it changes.
pub fn answer(node: &Node) -> AnyView {
    let label = |what: &What| of_answer(what, |answer| &answer.label);
    let main = |what: &What| of_answer(what, |answer| &answer.main);
    let beside = |what: &What| of_answer(what, |answer| &answer.beside);
    let below = |what: &What| of_answer(what, |answer| &answer.below);
    let figure = el("P")
        .with("class", "answer-main")
        .put(el("STRONG").says(node, main).view())
        .text(" ")
        .put(el("SPAN").with("class", "answer-beside").says(node, beside).view());
    el("SECTION")
        .with("class", "answer")
        .with("id", &node.id())
        .with("role", "status")
        .with("aria-live", "polite")
        .put(el("P").with("class", "answer-label").says(node, label).view())
        .put(figure.view())
        .put(el("P").with("class", "answer-below").says(node, below).view())
        .view()
}

/// The verdict's own shape: it differs in form and lightness, not in hue alone.
const fn shape(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => {
            r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="19" class="shape-fill"/></svg>"#
        }
        Verdict::Wait => {
            r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="18" class="shape-quiet"/><path d="M24 6a18 18 0 0 1 0 36" class="shape-ring"/></svg>"#
        }
        Verdict::Stop => {
            r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><path d="M16 4h16l12 12v16l-12 12h-16l-12-12v-16z" class="shape-fill"/></svg>"#
        }
        Verdict::CantTell => {
            r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="18" class="shape-ring shape-dashed"/></svg>"#
        }
    }
}

/// The class that gives a verdict its tone.
const fn tone(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Go => "verdict tone-go",
        Verdict::Wait => "verdict tone-wait",
        Verdict::Stop => "verdict tone-stop",
        Verdict::CantTell => "verdict tone-cant",
    }
}

fn judged(what: &What) -> Option<&Judged> {
    match what {
        What::Verdict(judged) | What::Timer(judged) => Some(judged),
        _ => None,
    }
}

/// The head of a judgement: shape, word and sentence.
fn head(judged: &Judged) -> AnyView {
    let words = el("DIV").put(plain("P", "verdict-word", judged.word)).put(plain(
        "P",
        "verdict-sentence",
        &judged.sentence,
    ));
    el("DIV")
        .with("class", "verdict-head")
        .put(el("SPAN").with("class", "shape-frame").drawn(shape(judged.verdict)).view())
        .put(words.view())
        .view()
}

fn face(what: &What) -> AnyView {
    judged(what).map_or_else(|| list(std::iter::empty()), head)
}

fn whole_face(what: &What) -> AnyView {
    let Some(judged) = judged(what) else { return list(std::iter::empty()) };
    let reasons = judged.reasons.iter().map(|reason| plain("LI", "", reason));
    let reasons = el("UL").with("class", "reasons").put(list(reasons)).view();
    list([head(judged), reasons, plain("P", "verdict-next", &judged.next)].into_iter())
}

fn tone_of(what: &What) -> Option<String> {
    judged(what).map(|judged| tone(judged.verdict).to_owned())
}

/// The face of a timer.
pub fn timer(node: &Node) -> AnyView {
    let inner = el("DIV").follow(node, "class", tone_of).shows(node, face);
    el("DIV").with("class", "timer").with("role", "timer").put(inner.view()).view()
}

/// A judgement: word, shape and tone, with its reasons and next step. The element stays, so that a change
/// is said aloud.
pub fn verdict(node: &Node) -> AnyView {
    el("SECTION")
        .follow(node, "class", tone_of)
        .with("role", "status")
        .with("aria-live", "polite")
        .shows(node, whole_face)
        .view()
}

fn heading_of_row(text: &str) -> AnyView {
    el("TH").with("scope", "row").text(text).view()
}

/// Names and figures, a row each.
pub fn figures(what: &What) -> AnyView {
    let What::Figures(rows) = what else { return list(std::iter::empty()) };
    let rows = rows.iter().map(|(name, figure)| {
        el("TR").put(heading_of_row(name)).put(plain("TD", "", figure)).view()
    });
    let body = el("TBODY").put(list(rows));
    el("TABLE").with("class", "figures").put(body.view()).view()
}

/// A table with a heading for each column.
pub fn table(what: &What) -> AnyView {
    let What::Table(table) = what else { return list(std::iter::empty()) };
    let head = table.head.iter().map(|head| el("TH").with("scope", "col").text(head).view());
    let rows = table.rows.iter().map(|row| {
        let mut cells = row.iter();
        let first = cells.next().map(String::as_str).unwrap_or_default();
        let cells = list(cells.map(|cell| plain("TD", "", cell)));
        el("TR").put(heading_of_row(first)).put(cells).view()
    });
    let head = el("THEAD").put(el("TR").put(list(head)).view());
    let all = el("TABLE").put(head.view()).put(el("TBODY").put(list(rows)).view());
    el("DIV")
        .with("class", "table-frame")
        .with("tabindex", "0")
        .with("role", "region")
        .with("aria-label", table.label)
        .put(all.view())
        .view()
}

/// Sentences one below another; a kind that ends in `ordered` has numbers.
pub fn items(what: &What) -> AnyView {
    let What::Items(kind, items) = what else { return list(std::iter::empty()) };
    let items = items.iter().map(|item| {
        let line = el("LI").with("class", item.kind);
        let line = if item.mark.is_empty() {
            line
        } else {
            line.put(plain("STRONG", "item-mark", item.mark)).text(" ")
        };
        line.text(&item.text).view()
    });
    let tag = if kind.ends_with("ordered") { "OL" } else { "UL" };
    el(tag).with("class", kind).put(list(items)).view()
}

/// A working.
pub fn worked(what: &What) -> AnyView {
    let What::Worked(working) = what else { return list(std::iter::empty()) };
    let parts = working.parts.iter().map(|(head, lines)| {
        let lines = lines.iter().map(|line| {
            el("DIV")
                .with("class", "worked-line")
                .put(plain("DT", "", line.name))
                .put(plain("DD", "worked-value", &line.value))
                .put(plain("DD", "worked-formula", line.formula))
                .put(plain("DD", "worked-source", line.source))
                .view()
        });
        let lines = el("DL").put(list(lines)).view();
        list([plain("P", "worked-part", head), lines].into_iter())
    });
    list([list(parts), plain("P", "small", working.below)].into_iter())
}

/// The runs of a line, with a space between.
pub fn runs(line: &[Run]) -> AnyView {
    list(line.iter().map(|run| {
        let text = format!("{} ", run.text);
        match run.kind {
            "strong" => plain("STRONG", "", &text),
            kind => plain("SPAN", kind, &text),
        }
    }))
}
