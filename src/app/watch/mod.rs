//! Watch: how it stands, what to do about it, its course and its log.

mod ahead;
mod course;
mod fields;
mod form;
mod log;
mod noting;
mod quiet;

use super::act::{Act, WatchAct};
use super::event::Effect;
use super::model::{Model, Noting};
use super::part::{Item, Part, Tag, What, action, columns, group, heading};
use super::route::Route;
use super::table;
use super::worked::{IN_GRAVITY, how_worked};
use crate::batch::{Summary, Vessel};
use std::rc::Rc;

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.watch);
    let mut parts = vec![];
    // A reading that is changed has its form in its own row of the log.
    match noting::noted(m, s).filter(|noted| noted.id.is_none()) {
        Some(noted) => parts.push(form::parts(m, s, noted)),
        None => {
            let add = |vessel| Act::Watch(WatchAct::Add(vessel));
            parts.push(action(noting::ADD, "main-action", words.add, add(Vessel::Main)));
            if s.has_satellite() {
                let (name, label) = ("watch/satellite", words.read_satellite);
                parts.push(action(name, "quiet", label, add(Vessel::Satellite)));
            }
        }
    }
    let mut left = vec![];
    if let Some(warmth) = &s.warmth {
        left.push(Part::new("watch/warmth", What::Verdict((words.warmth)(w, warmth))));
    }
    left.push(Part::new("watch/finish", What::Verdict((words.finish)(w, &s.standing, m.now))));
    left.extend(ladder(m, s));
    let worked = &s.standing.worked;
    if !worked.steps.is_empty() {
        left.push(how_worked(m, "watch/worked", worked, IN_GRAVITY));
    }
    if s.may_not_have_begun(m.now) {
        left.push(quiet::parts(m, s));
    }
    left.extend(ahead::parts(m, s));
    left.extend(course::parts(m, s));
    let right = vec![heading("log/heading", 2, words.log_heading), log::parts(m, s)];
    parts.push(columns("watch", left, right));
    parts.push(table::of_batch(m, s));
    parts
}

/// The steps to go through, with what was done marked.
fn ladder(m: &Model, s: &Summary) -> Option<Part> {
    let (w, words) = (m.writer(), &m.words.watch);
    let step = |rung: &crate::advice::watch::ladder::Rung| Item {
        kind: if rung.done { "ladder-step ladder-was" } else { "ladder-step" },
        mark: if rung.done { words.done } else { "" },
        text: (words.step)(w, rung.step),
    };
    let steps: Vec<Item> = s.ladder.iter().map(step).collect();
    let there = !steps.is_empty();
    there.then(|| {
        let steps = Part::new("ladder/steps", What::Items("ordered", steps));
        let parts = vec![heading("ladder/heading", 2, words.steps), steps];
        group("ladder", Tag::Section, "ladder", parts)
    })
}

/// The batch that is watched.
fn here(m: &Model) -> Option<Rc<Summary>> {
    match &m.route {
        Route::Batch(id, _) => m.summary(id),
        _ => None,
    }
}

/// What it offers.
pub fn act(m: &mut Model, act: WatchAct) -> Vec<Effect> {
    match act {
        WatchAct::Add(vessel) => form::open(m, Noting::New(vessel)),
        WatchAct::Change(id) => form::open(m, Noting::Changed(id)),
        WatchAct::Leave => form::leave(m),
        WatchAct::Save(batch) => form::save(m, &batch),
        WatchAct::Delete(id) => log::delete(m, id),
        WatchAct::WalkTo(at) => {
            if here(m).is_some_and(|s| course::has(m, &s, at)) {
                m.here.walked = Some(at);
            }
            vec![]
        }
        WatchAct::Walk(forward) => {
            m.here.walked = here(m).and_then(|s| course::step(m, &s, forward));
            vec![]
        }
        WatchAct::AddTable(batch) => table::add(m, &batch),
        WatchAct::LeaveTable => {
            m.here.table = None;
            vec![]
        }
        WatchAct::Sign(at) => {
            if let Some(seen) = m.here.signs.get_mut(at) {
                *seen = !*seen;
            }
            vec![]
        }
    }
}
