//! The way of a batch: its name, and the four stages as one line with their days.

use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group, heading};
use super::route::Route;
use crate::advice::standing::SugarFrom;
use crate::batch::{NextStep, Stage, Summary};
use crate::quantity::Moment;

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
        SugarFrom::About(at) | SugarFrom::Foretold(at) => Some(at),
        _ => None,
    };
    let pitched = s.pitch.as_ref().map(|(_, pitch)| pitch.at);
    let bottled = s.bottling.as_ref().map(|(_, record)| record.at);
    let about = |at: Moment| (words.about)(m.zone.shown(at));
    let mut done = true;
    let way = |one: Stage| {
        let when = match (one, bottled) {
            (Stage::Pitch, _) => (words.on)(pitched.unwrap_or(s.heading.started)),
            (Stage::Watch, None) => {
                pitched.map(|at| (words.day)(m.now.since(at))).unwrap_or_default()
            }
            (Stage::Watch, Some(_)) => String::new(),
            (Stage::Bottle, Some(at)) => (words.on)(at),
            (Stage::Bottle, None) if today.next == NextStep::Bottle => words.now.to_owned(),
            (Stage::Bottle, None) => ready.map(about).unwrap_or_default(),
            (Stage::Open, _) => match today.next {
                NextStep::WaitForBottles(at) | NextStep::WakeBottles(at) => about(at),
                NextStep::TryOne | NextStep::Enjoy | NextStep::MakeSafe => words.now.to_owned(),
                _ => String::new(),
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
