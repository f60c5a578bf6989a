//! Watch: how it stands, what to do about it, its course and its log.

mod ahead;
pub mod course;
mod fields;
mod form;
mod log;
mod noting;
mod quiet;

use super::act::{Act, WatchAct};
use super::event::Effect;
use super::fold::fold;
use super::model::{Here, Model, Noting};
use super::own_ends;
use super::part::{Item, Part, Tag, What, action, group, heading, text};
use super::route::Route;
use super::table;
use super::worked::{IN_GRAVITY, how_worked};
use crate::advice::standing::Next;
use crate::batch::{Stage, Summary, Vessel};
use crate::quantity::Estimate;
use std::rc::Rc;

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let words = &m.words.watch;
    let mut parts = vec![];
    let mut all = vec![];
    // A reading that is changed has its form in its own row of the log.
    match noting::noted(m, s).filter(|noted| noted.id.is_none()) {
        Some(noted) => parts.push(form::parts(m, s, noted)),
        None => {
            let add = Act::Watch(WatchAct::Add(Vessel::Main));
            let add = action(noting::ADD, "main-action", words.add, add);
            all.push(group("watch/act", Tag::Div, "act", vec![add]));
            all.push(finish(m, s));
        }
    }
    let mut left = vec![];
    left.extend(warmth(m, s));
    left.extend(m.still("course", s, course::parts));
    let mut right = vec![heading("log/heading", 2, words.log_heading), log::parts(m, s)];
    if !noting::is_new(m, s) {
        let sooner = (words.by_satellite)(m.writer(), &s.standing, m.now);
        left.extend(sooner.map(|said| text("watch/sooner", "", said)));
        left.extend(ladder(m, s));
        left.extend(own_ends::part(m, s, s.packet(), s.original.map(Estimate::value)));
        if s.has_satellite() {
            let add = Act::Watch(WatchAct::Add(Vessel::Satellite));
            right.push(action("watch/satellite", "quiet", words.read_satellite, add));
        }
        if s.may_not_have_begun(m.now) {
            right.push(quiet::parts(m, s));
        }
        right.extend(m.still("files", s, files));
    }
    all.push(group("watch/course", Tag::Section, "watch-course", left));
    all.push(group("watch/log", Tag::Section, "watch-log", right));
    parts.push(group("watch", Tag::Div, "watch", all));
    parts
}

/// What goes to other programs, and comes from them.
fn files(m: &Model, s: &Summary) -> Vec<Part> {
    let mut parts: Vec<_> = ahead::parts(m, s).into_iter().collect();
    parts.push(table::of_batch(m, s));
    parts
}

/// How it stands: the plate, with the gravity as it is now.
fn finish(m: &Model, s: &Summary) -> Part {
    let w = m.writer();
    let mut judged = (m.words.watch.finish)(w, &s.standing, m.now);
    if let Some(present) = s.present.filter(|_| s.bottling.is_none()) {
        judged.figure = (w.gravity(present.value()), w.gravity_doubt(present.sigma()));
    }
    let worked = &s.standing.worked;
    let shown = !worked.steps.is_empty();
    let worked = shown.then(|| how_worked(m, "watch/worked", worked, IN_GRAVITY));
    Part::of(noting::PLATE, What::Verdict(judged), worked.into_iter().collect())
}

/// Too warm or too cold, as a notice: the plate is for how the batch stands.
fn warmth(m: &Model, s: &Summary) -> Option<Part> {
    let judged = (m.words.watch.warmth)(m.writer(), s.warmth.as_ref()?);
    let said = format!("{} {}", judged.sentence, judged.reasons.join(" "));
    let parts = vec![
        text("watch/warmth/said", "notice-said", said),
        text("watch/warmth/next", "notice-next", judged.next),
    ];
    Some(group("watch/warmth", Tag::Div, "notice", parts))
}

/// The steps to go through, with what was done marked.
fn ladder(m: &Model, s: &Summary) -> Option<Part> {
    let (w, words) = (m.writer(), &m.words.watch);
    let step = |rung: &crate::advice::watch::ladder::Rung| Item {
        kind: if rung.done { "ladder-step ladder-was" } else { "ladder-step" },
        mark: if rung.done { words.done } else { "" },
        text: (words.step)(w, rung.step, m.now),
    };
    let steps: Vec<Item> = s.ladder.iter().map(step).collect();
    let there = !steps.is_empty();
    there.then(|| {
        let steps = Part::new("ladder/steps", What::Items("ordered", steps));
        // Where it is the next thing to do it stands open.
        let wanted = matches!(s.standing.next, Next::Rouse(_) | Next::PitchAgain);
        let parts = if wanted {
            vec![heading("ladder/heading", 2, words.steps), steps]
        } else {
            vec![fold(m, "ladder/fold", words.steps, vec![steps])]
        };
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
        // From another screen: the form stands open on arrival.
        WatchAct::AddTo(id) => {
            let place = Route::Batch(id, Stage::Watch);
            let address = place.address();
            m.here = Here::default();
            m.route = place;
            let mut effects = vec![Effect::Go(address)];
            effects.extend(form::open(m, Noting::New(Vessel::Main)));
            effects
        }
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
        WatchAct::AddTable(batch, odd) => table::add(m, &batch, odd),
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
