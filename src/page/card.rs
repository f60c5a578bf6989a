//! What is read: answers, judgements, figures, tables, lists and workings.

use super::board::Node;
use super::follow::{list, or_nothing};
use crate::app::{Answer, Judged, Verdict, What};
use leptos::prelude::*;

/// The answer of a sum, said aloud as it changes.
pub fn answer(node: &Node) -> AnyView {
    let of = |text: fn(&Answer) -> String| {
        let what = node.what.clone();
        move || match what.get() {
            What::Answer(answer) => text(&answer),
            _ => String::new(),
        }
    };
    view! {
        <section class="answer" id=node.id() role="status" aria-live="polite">
            <p class="answer-label">{of(|answer| answer.label.clone())}</p>
            <p class="answer-main">
                <strong>{of(|answer| answer.main.clone())}</strong>
                " "
                <span class="answer-beside">{of(|answer| answer.beside.clone())}</span>
            </p>
            <p class="answer-below">{of(|answer| answer.below.clone())}</p>
        </section>
    }
    .into_any()
}

/// The verdict's own shape: it differs in form and lightness, not in hue alone.
fn shape(verdict: Verdict) -> AnyView {
    let shape = match verdict {
        Verdict::Go => view! { <circle cx="24" cy="24" r="19" class="shape-fill" /> }.into_any(),
        Verdict::Wait => view! {
            <circle cx="24" cy="24" r="18" class="shape-quiet" />
            <path d="M24 6a18 18 0 0 1 0 36" class="shape-ring" />
        }
        .into_any(),
        Verdict::Stop => {
            view! { <path d="M16 4h16l12 12v16l-12 12h-16l-12-12v-16z" class="shape-fill" /> }
                .into_any()
        }
        Verdict::CantTell => {
            view! { <circle cx="24" cy="24" r="18" class="shape-ring shape-dashed" /> }.into_any()
        }
    };
    view! {
        <svg class="shape" viewBox="0 0 48 48" aria-hidden="true">
            {shape}
        </svg>
    }
    .into_any()
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

/// The head of a judgement: shape, word and sentence.
fn head(judged: &Judged) -> AnyView {
    view! {
        <div class="verdict-head">
            {shape(judged.verdict)}
            <div>
                <p class="verdict-word">{judged.word}</p>
                <p class="verdict-sentence">{judged.sentence.clone()}</p>
            </div>
        </div>
    }
    .into_any()
}

/// The face of a timer.
pub fn timer(what: &What) -> AnyView {
    let What::Timer(judged) = what else { return ().into_any() };
    view! {
        <div class="timer" role="timer">
            <div class=tone(judged.verdict)>{head(judged)}</div>
        </div>
    }
    .into_any()
}

/// A judgement: word, shape and tone, with its reasons and next step.
pub fn verdict(what: &What) -> AnyView {
    let What::Verdict(judged) = what else { return ().into_any() };
    let reasons = judged.reasons.iter().cloned();
    let reasons = list(reasons.map(|reason| view! { <li>{reason}</li> }.into_any()));
    view! {
        <section class=tone(judged.verdict) role="status" aria-live="polite">
            {head(judged)}
            <ul class="reasons">{reasons}</ul>
            <p class="verdict-next">{judged.next.clone()}</p>
        </section>
    }
    .into_any()
}

/// Names and figures, a row each.
pub fn figures(what: &What) -> AnyView {
    let What::Figures(rows) = what else { return ().into_any() };
    let rows = rows.iter().cloned().map(|(name, figure)| {
        view! {
            <tr>
                <th scope="row">{name}</th>
                <td>{figure}</td>
            </tr>
        }
        .into_any()
    });
    view! {
        <table class="figures">
            <tbody>{list(rows)}</tbody>
        </table>
    }
    .into_any()
}

/// A table with a heading for each column.
pub fn table(what: &What) -> AnyView {
    let What::Table(table) = what else { return ().into_any() };
    let head = table.head.iter().map(|&head| view! { <th scope="col">{head}</th> }.into_any());
    let rows = table.rows.iter().map(|row| {
        let mut cells = row.iter().cloned();
        let first = cells.next().unwrap_or_default();
        let cells = list(cells.map(|cell| view! { <td>{cell}</td> }.into_any()));
        view! {
            <tr>
                <th scope="row">{first}</th>
                {cells}
            </tr>
        }
        .into_any()
    });
    view! {
        <div class="table-frame" tabindex="0" role="region" aria-label=table.label>
            <table>
                <thead>
                    <tr>{list(head)}</tr>
                </thead>
                <tbody>{list(rows)}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// Sentences one below another; a kind that ends in `ordered` has numbers.
pub fn items(what: &What) -> AnyView {
    let What::Items(kind, items) = what else { return ().into_any() };
    let items = items.iter().cloned().map(|item| {
        let mark = (!item.mark.is_empty())
            .then(|| view! { <strong class="item-mark">{item.mark} " "</strong> }.into_any());
        view! { <li class=item.kind>{or_nothing(mark)} {item.text}</li> }.into_any()
    });
    let items = list(items);
    if kind.ends_with("ordered") {
        view! { <ol class=*kind>{items}</ol> }.into_any()
    } else {
        view! { <ul class=*kind>{items}</ul> }.into_any()
    }
}

/// A working.
pub fn worked(what: &What) -> AnyView {
    let What::Worked(working) = what else { return ().into_any() };
    let parts = working.parts.iter().map(|(head, lines)| {
        let lines = lines.iter().cloned().map(|line| {
            view! {
                <div class="worked-line">
                    <dt>{line.name}</dt>
                    <dd class="worked-value">{line.value}</dd>
                    <dd class="worked-formula">{line.formula}</dd>
                    <dd class="worked-source">{line.source}</dd>
                </div>
            }
            .into_any()
        });
        view! {
            <p class="worked-part">{*head}</p>
            <dl>{list(lines)}</dl>
        }
        .into_any()
    });
    view! {
        {list(parts)}
        <p class="small">{working.below}</p>
    }
    .into_any()
}
