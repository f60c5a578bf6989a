//! Open: when to try one, how each bottle was, what to do when something is wrong, and what was learned.

mod form;
mod log;
mod place;
mod safe;
mod worried;

use super::act::OpenAct;
use super::event::Effect;
use super::fold::fold;
use super::model::Model;
use super::opening;
use super::part::{Item, Part, What, heading, text};
use crate::advice::open::dates;
use crate::advice::open::learned::lessons;
use crate::batch::{NextStep, Summary};
use crate::quantity::Estimate;

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.open);
    let wakes = matches!(s.today(m.now).next, NextStep::WakeBottles(_));
    let nothing = || text("open/nothing", "", words.nothing_yet);
    let mut parts = vec![opening::plate(m, s).unwrap_or_else(nothing)];
    parts.extend(safe::parts(m, s));
    parts.extend(safe::wake(m, s).filter(|_| wakes));
    // Nothing else is asked of bottles that are not safe, and none is to be tried.
    if let Some((_, record)) = s.bottling.as_ref().filter(|_| !s.is_hazard()) {
        let original = s.original.map(Estimate::value);
        // Once one was opened the plate goes by what it was like.
        let none = s.openings.is_empty();
        let dates = none.then(|| dates(record.waiting(original, m.now)));
        let plan = (words.plan)(w, dates, m.now, record);
        parts.push(Part::new("open/plan", What::Figures(plan)));
        parts.push(text("open/try-one", "small", words.try_one));
    }
    // While the others are not safe there is one thing to do.
    let form = form::parts(m, &s.id);
    if s.is_hazard() {
        parts.push(fold(m, "open/note", words.how_it_was, vec![form]));
    } else {
        parts.push(form);
    }
    if s.bottling.is_some() {
        parts.push(place::parts(m, &s.id));
        parts.push(worried::parts(m, s));
    }
    parts.extend(log::parts(m, s));
    // What was learned waits while something is wrong.
    if !worried::is_open(m) {
        parts.extend(learned(m, s));
    }
    parts
}

/// What the batch has taught, once bottles were opened.
fn learned(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.open);
    let Some(outcome) = s.outcome() else { return vec![] };
    let item = |text| Item { kind: "", mark: "", text };
    let told = lessons(&outcome).into_iter().map(|lesson| item((words.lesson)(w, lesson)));
    vec![
        heading("open/taught", 2, words.taught),
        Part::new("open/lessons", What::Items("reasons", told.collect())),
        text("open/offered", "small", words.only_offered),
    ]
}

/// What it offers.
pub fn act(m: &mut Model, act: OpenAct) -> Vec<Effect> {
    match act {
        OpenAct::Save(batch) => form::save(m, &batch),
        OpenAct::Moved(batch) => place::save(m, &batch),
        OpenAct::MadeSafe(batch) => safe::save(m, &batch),
        OpenAct::Delete(id) => log::delete(m, id),
    }
}
