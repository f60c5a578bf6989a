//! What is read: the plate, figures, tables, lists and workings.

use super::board::Node;
use super::element::{el, list, plain};
use crate::app::{Run, Verdict, What};
use leptos::prelude::*;

/// What stands on the plate, of a sum's answer and of a judgement alike.
#[derive(Default)]
struct Face {
    class: String,
    shape: &'static str,
    word: &'static str,
    sentence: String,
    label: String,
    main: String,
    beside: String,
    below: String,
    reasons: Vec<String>,
    why: &'static str,
}

fn face(what: &What) -> Face {
    match what {
        What::Answer(answer) => Face {
            class: if answer.main.is_empty() {
                "plate answer".to_owned()
            } else {
                "plate plate-figure answer".to_owned()
            },
            label: answer.label.clone(),
            main: answer.main.clone(),
            beside: answer.beside.clone(),
            below: answer.below.clone(),
            ..Face::default()
        },
        What::Verdict(judged) | What::Timer(judged) => {
            let (tone, shape) = shape(judged.verdict);
            let figure = if judged.figure.0.is_empty() { "" } else { "plate-figure answer " };
            Face {
                class: format!("plate {figure}verdict tone-{tone}"),
                shape,
                word: judged.word,
                sentence: judged.sentence.clone(),
                label: judged.label.clone(),
                main: judged.figure.0.clone(),
                beside: judged.figure.1.clone(),
                below: judged.next.clone(),
                reasons: judged.reasons.clone(),
                why: judged.why,
            }
        }
        _ => Face::default(),
    }
}

/// The verdict's own shape and tone: it differs in form and lightness, not in hue alone.
const fn shape(verdict: Verdict) -> (&'static str, &'static str) {
    match verdict {
        Verdict::Go => ("go", GO),
        Verdict::Wait => ("wait", WAIT),
        Verdict::Stop => ("stop", STOP),
        Verdict::CantTell => ("cant", CANT),
    }
}

const GO: &str = r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="20" class="shape-fill"/></svg>"#;
const WAIT: &str = r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="18" class="shape-quiet"/><path d="M24 6a18 18 0 0 1 0 36" class="shape-ring"/></svg>"#;
const STOP: &str = r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><path d="M16 3h16l13 13v16l-13 13h-16l-13-13v-16z" class="shape-fill"/></svg>"#;
const CANT: &str = r#"<svg class="shape" viewBox="0 0 48 48" aria-hidden="true"><circle cx="24" cy="24" r="18" class="shape-ring shape-dashed"/></svg>"#;

/// What an answer is of, as its heading; a judgement has a heading of its own, and names its figure beside it.
fn answer_label(what: &What) -> String {
    if matches!(what, What::Answer(_)) { face(what).label } else { String::new() }
}

fn figure_label(what: &What) -> String {
    if matches!(what, What::Answer(_)) { String::new() } else { face(what).label }
}

/// The plate: the answer, in one place and one dress on every screen, with all that speaks for it in a fold.
/// The element stays, so that a change is said aloud.
pub fn plate(node: &Node, inner: AnyView) -> AnyView {
    let timer = node.what.with_untracked(|what| matches!(what, What::Timer(_)));
    let (role, live) = if timer { ("timer", "off") } else { ("status", "polite") };
    let head = el("H2")
        .with("class", "plate-head")
        .put(
            el("SPAN")
                .with("class", "shape-frame")
                .draws(node, |what| face(what).shape.into())
                .view(),
        )
        .put(
            el("SPAN")
                .with("class", "verdict-word")
                .says(node, |what| face(what).word.into())
                .view(),
        )
        .text(" ")
        .put(
            el("SPAN")
                .with("class", "verdict-sentence")
                .says(node, |what| face(what).sentence)
                .view(),
        );
    let figure = el("P")
        .with("class", "answer-main")
        .put(el("SPAN").with("class", "figure-label").says(node, figure_label).view())
        .put(el("STRONG").says(node, |what| face(what).main).view())
        .text(" ")
        .put(el("SPAN").with("class", "answer-beside").says(node, |what| face(what).beside).view());
    let first = |what: &What| face(what).reasons.into_iter().next().unwrap_or_default();
    let others =
        |what: &What| list(face(what).reasons.iter().skip(1).map(|reason| plain("LI", "", reason)));
    let fold = el("DETAILS")
        .with("class", "plate-why-fold")
        .put(
            el("SUMMARY")
                .put(el("SPAN").says(node, |what| face(what).why.into()).view())
                .text(" ")
                .put(el("SPAN").with("class", "plate-gist").says(node, first).view())
                .view(),
        )
        .put(el("UL").with("class", "reasons").shows(node, others).view())
        .put(inner);
    el("SECTION")
        .follow(node, "class", |what| Some(face(what).class))
        .with("id", &node.id())
        .with("tabindex", "-1")
        .with("role", role)
        .with("aria-live", live)
        .put(el("H2").with("class", "answer-label").says(node, answer_label).view())
        .put(head.view())
        .put(figure.view())
        .put(el("P").with("class", "verdict-next").says(node, |what| face(what).below).view())
        .put(el("P").with("class", "plate-why").says(node, first).view())
        .put(fold.view())
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
