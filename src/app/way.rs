//! The way of a batch: its name, and the four stages as one line with their days.

use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group, heading};
use super::route::Route;
use crate::advice::open::{Found, WaitingBottles, dates};
use crate::advice::standing::SugarFrom;
use crate::batch::{NextStep, Stage, Summary};
use crate::quantity::{Estimate, Moment};

/// The name of a batch with links beside it, and the four stages.
pub fn way(m: &Model, summary: &Summary, stage: Stage, links: Vec<Part>) -> Part {
    let mut stages = group("head/stages", Tag::Nav, "stages", ways(m, summary, stage));
    if let What::Group(group) = &mut stages.what {
        m.words.frame.stages.clone_into(&mut group.label);
    }
    let head = vec![
        heading("title", 1, summary.heading.name.clone()),
        group("head/links", Tag::Div, "batch-links", links),
        stages,
    ];
    group("head", Tag::Header, "batch-head", head)
}

/// The four stages as one line: what is done, where one is, and when each is, as far as that is known.
fn ways(m: &Model, s: &Summary, stage: Stage) -> Vec<Part> {
    let (words, today) = (&m.words.frame, s.today(m.now));
    let ready = match s.standing.sugar.from {
        SugarFrom::Now => Some(m.now),
        SugarFrom::About(at) | SugarFrom::Foretold(at) => Some(at),
        SugarFrom::NotWithin(_) | SugarFrom::NotKnown => None,
    };
    let original = s.original.map(Estimate::value);
    let tried = |bottled: Moment| {
        let (place, found, now) = (None, Found::Nothing, m.now);
        dates(WaitingBottles { bottled, place, original, found, now }).try_one
    };
    let pitched = s.pitch.as_ref().map(|(_, pitch)| pitch.at);
    let bottled = s.bottling.as_ref().map(|(_, record)| record.at);
    let about = |at: Moment| (words.about)(m.zone.shown(at));
    let mut done = true;
    let way = |one: Stage| {
        let when = match (one, bottled) {
            (Stage::Pitch, _) => (words.on)(pitched.unwrap_or(s.heading.started)),
            (Stage::Watch, None) => {
                let begun = (today.stage != Stage::Pitch).then_some(s.heading.started);
                let day = pitched.or(begun).map(|at| (words.day)(m.now.since(at)));
                day.unwrap_or_else(|| words.once_pitched.to_owned())
            }
            (Stage::Watch, Some(_)) => String::new(),
            (Stage::Bottle, Some(at)) => (words.on)(at),
            (Stage::Bottle, None) if today.next == NextStep::Bottle => words.now.to_owned(),
            (Stage::Bottle, None) => {
                ready.map(about).unwrap_or_else(|| words.once_level.to_owned())
            }
            (Stage::Open, _) => match today.next {
                NextStep::WaitForBottles(at) | NextStep::WakeBottles(at) => about(at),
                NextStep::TryOne
                | NextStep::Enjoy
                | NextStep::ChillBottles(_)
                | NextStep::MakeSafe => words.now.to_owned(),
                NextStep::AfterSafe(_) => String::new(),
                // By where bottles usually stand, since nobody knows yet.
                _ => ready
                    .map(|at| about(tried(at)))
                    .unwrap_or_else(|| words.once_bottled.to_owned()),
            },
        };
        let kind = if done { "done" } else { "" };
        done &= one != today.stage;
        let name = (words.stage)(one);
        let address = Route::Batch(s.id.clone(), one).address();
        let runs = vec![Run::new("", name), Run::new("way-when", when)];
        let link = Link { kind, address, runs, here: one == stage };
        Part::new(format!("head/{name}"), What::Link(link))
    };
    Stage::ALL.into_iter().map(way).collect()
}
