//! Batches: what is due, what comes later, and what is in bottles; in each what is due first stands first.

use super::fold::fold;
use super::glance::{by_due, row};
use super::model::Model;
use super::part::{Part, Tag, What, group, heading, link, text};
use super::route::Route;
use crate::batch::{Stage, Summary, Today, tally};
use std::rc::Rc;

/// So many rows stand there at once: more than are in fermenters in any home, a screen of a phone, and drawn
/// about as soon as the few of a beginner.
const AT_ONCE: usize = 12;

type Standing = (Rc<Summary>, Today);

/// The screen.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.batches;
    let mut parts = vec![heading("title", 1, m.words.frame.batches)];
    let all = by_due(m);
    let (first, others) = all.split_at(all.len().min(AT_ONCE));
    if first.is_empty() {
        parts.push(text("none", "lead", words.no_batch_yet));
    }
    parts.push(link(
        "start",
        "main-action",
        Route::NewBatch.address(),
        m.words.frame.start_a_batch,
    ));
    let heads =
        [("due", words.due), ("later", words.later), ("open", (m.words.frame.stage)(Stage::Open))];
    for (place, head) in heads {
        let of_it = first.iter().filter(|one| group_of(m, one) == place);
        let rows: Vec<Part> = of_it.map(|one| row_of(m, one)).collect();
        if !rows.is_empty() {
            parts.push(heading(place, 2, head));
            parts.push(group(format!("{place}/list"), Tag::Ul, "batch-list", rows));
        }
    }
    if !others.is_empty() {
        // Made only when they are wanted.
        let open = m.is_open("others", false);
        let rows = || others.iter().map(|one| row_of(m, one)).collect();
        let rows = open.then(|| group("others/list", Tag::Ul, "batch-list", rows()));
        let summary = (words.others)(others.len());
        parts.push(fold(m, "others", summary, rows.into_iter().collect()));
    }
    parts.extend(tally_of(m));
    parts
}

fn row_of(m: &Model, (s, today): &Standing) -> Part {
    row(m, s, today, "batch", today.stage)
}

/// Due by now, later, or in bottles.
fn group_of(m: &Model, (_, today): &Standing) -> &'static str {
    match today.due {
        Some(due) if due <= m.now => "due",
        _ if today.stage == Stage::Open => "open",
        _ => "later",
    }
}

/// Volume begun in each calendar year; nothing before there is a batch.
fn tally_of(m: &Model) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.batches);
    let years = tally(&m.journal);
    if years.is_empty() {
        return vec![];
    }
    let row = |year: &crate::batch::Year| {
        (year.year.to_string(), (words.begun)(&w.volume(year.volume), year.batches))
    };
    vec![
        heading("tally", 2, words.begun_each_year),
        Part::new("tally/years", What::Figures(years.iter().map(row).collect())),
        text("tally/caution", "small", m.words.cautions.tally),
    ]
}
