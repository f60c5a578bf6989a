//! Batches: all of them, what is due first standing first, each with how it stands and its next step.

use super::fold::fold;
use super::glance::by_due;
use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group, heading, link, text};
use super::route::Route;
use crate::batch::{NextStep, Stage, Summary, Today, tally};
use crate::words::write;
use std::rc::Rc;

/// So many rows stand there at once: more than are ever due, and few enough to be drawn at once.
const AT_ONCE: usize = 20;

/// The screen.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.batches;
    let mut parts = vec![
        heading("title", 1, m.words.frame.batches),
        link("start", "main-action", Route::NewBatch.address(), m.words.frame.start_a_batch),
    ];
    let all = by_due(m);
    let (first, others) = all.split_at(all.len().min(AT_ONCE));
    parts.push(if first.is_empty() {
        text("none", "", words.no_batch_yet)
    } else {
        list(m, "list", first)
    });
    if !others.is_empty() {
        // Made only when they are wanted.
        let open = m.is_open("others", false);
        let rows = open.then(|| list(m, "others/list", others));
        let summary = (words.others)(others.len());
        parts.push(fold(m, "others", summary, rows.into_iter().collect()));
    }
    parts.extend(tally_of(m));
    parts
}

fn list(m: &Model, name: &str, batches: &[(Rc<Summary>, Today)]) -> Part {
    let rows = batches.iter().map(|(s, today)| row(m, s, today)).collect();
    group(name, Tag::Ul, "batch-list", rows)
}

fn row(m: &Model, s: &Summary, today: &Today) -> Part {
    let (w, place) = (m.writer(), format!("batch/{}", s.id.as_str()));
    let address = Route::Batch(s.id.clone(), today.stage).address();
    let (next, _) = (m.words.now.step)(w, today.next);
    let watched = today.stage == Stage::Watch && !matches!(today.next, NextStep::FirstLook(_));
    let details = format!(
        "{} · {} · {}",
        write::full_day(s.heading.started),
        w.volume(s.heading.volume),
        (m.words.batches.standing)(today.stage, watched.then_some(s.standing.state))
    );
    let runs = vec![
        Run::new("batch-name", s.heading.name.clone()),
        Run::new("batch-details", details),
        Run::new("batch-next", next),
    ];
    let link = What::Link(Link { kind: "batch-row", address, runs, here: false });
    group(place.clone(), Tag::Li, "", vec![Part::new(format!("{place}/link"), link)])
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
