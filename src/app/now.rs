//! Now: the next step of the batch in hand, or the sums most used.

use super::glance::by_due;
use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group, heading, link, text};
use super::route::{Route, Sum};
use super::sums;
use crate::batch::{Id, NextStep, Stage, Summary, Today};
use crate::quantity::Estimate;
use crate::words::write;
use std::rc::Rc;

/// The screen.
pub fn parts(m: &Model) -> Vec<Part> {
    match m.journal.in_hand().and_then(|id| m.summary(&id)) {
        Some(summary) => in_hand(m, &summary),
        None => empty(m),
    }
}

fn empty(m: &Model) -> Vec<Part> {
    let words = &m.words.now;
    vec![
        heading("title", 1, m.words.frame.page),
        text("lead", "lead", words.lead),
        link("start", "main-action", Route::NewBatch.address(), m.words.frame.start_a_batch),
        heading("one-sum", 2, words.or_one_sum),
        sums::links(m, &[Sum::Gravity, Sum::Sugar, Sum::Strength, Sum::Cooling]),
        text("caution", "small", m.words.cautions.strength),
    ]
}

/// Where the next step is done.
fn step_route(id: &Id, next: NextStep) -> Route {
    let stage = match next {
        NextStep::Pitch => Stage::Pitch,
        NextStep::FirstLook(_)
        | NextStep::ReadAgain(_)
        | NextStep::LookForSigns(_)
        | NextStep::PitchAgain
        | NextStep::Stuck(_) => Stage::Watch,
        NextStep::Bottle => Stage::Bottle,
        NextStep::WaitForBottles(_)
        | NextStep::WakeBottles(_)
        | NextStep::TryOne
        | NextStep::Enjoy
        | NextStep::AfterSafe(_)
        | NextStep::MakeSafe => Stage::Open,
    };
    Route::Batch(id.clone(), stage)
}

/// What is known of it, in one line.
fn facts(m: &Model, summary: &Summary) -> String {
    let (w, words) = (m.writer(), &m.words.now);
    let gravity = summary.present.or(summary.original).map(Estimate::value).map(|sg| w.gravity(sg));
    let strength =
        summary.strength.as_ref().map(|s| (words.so_far)(&write::strength(s.alcohol.value())));
    let since = summary.pitch.as_ref().map(|(_, pitch)| {
        let age = m.now.since(pitch.at);
        (words.since_pitching)(&write::duration(age))
    });
    [gravity, strength, since].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn in_hand(m: &Model, summary: &Summary) -> Vec<Part> {
    let words = &m.words.now;
    let today = summary.today(m.now);
    let (sentence, button) = (words.step)(m.writer(), today.next);
    let address = step_route(&summary.id, today.next).address();
    let mut parts = vec![
        heading("title", 1, summary.heading.name.clone()),
        text("facts", "facts", facts(m, summary)),
        group(
            "next",
            Tag::Section,
            "next-step",
            vec![
                text("next/sentence", "next-sentence", sentence),
                link("next/go", "main-action", address, button),
            ],
        ),
    ];
    parts.extend(also_due(m, &summary.id));
    parts.push(heading("other", 2, words.other_things));
    let entry = |name: &str, route: Route, label: &str| {
        let inner = link(&format!("{name}/link"), "", route.address(), label);
        group(name, Tag::Li, "", vec![inner])
    };
    let links = vec![
        entry("other/batch", Route::Batches, words.another_batch),
        entry("other/sum", Route::Bench, words.one_off_sum),
    ];
    parts.push(group("other/links", Tag::Ul, "links", links));
    parts
}

/// Other batches that are due, what is due first standing first.
fn also_due(m: &Model, in_hand: &Id) -> Vec<Part> {
    let standing = by_due(m);
    let due = standing
        .iter()
        .filter(|(s, today)| s.id != *in_hand && today.due.is_some_and(|due| due <= m.now));
    let row = |(s, today): &(Rc<Summary>, Today)| {
        let place = format!("due/{}", s.id.as_str());
        let (sentence, _) = (m.words.now.step)(m.writer(), today.next);
        let name = Run::new("batch-name", s.heading.name.clone());
        let runs = vec![name, Run::new("batch-next", sentence)];
        let address = step_route(&s.id, today.next).address();
        let link = What::Link(Link { kind: "batch-row", address, runs, here: false });
        group(place.clone(), Tag::Li, "", vec![Part::new(format!("{place}/link"), link)])
    };
    let rows: Vec<Part> = due.map(row).collect();
    if rows.is_empty() {
        return vec![];
    }
    vec![heading("due", 2, m.words.now.due_too), group("due/list", Tag::Ul, "batch-list", rows)]
}
