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
use super::part::{Item, Part, What, heading, text};
use crate::advice::open::learned::lessons;
use crate::advice::open::{Next, dates};
use crate::batch::Summary;
use crate::quantity::Estimate;

/// The plate: when to try one, and what the last one said.
const PLATE: &str = "open/first";

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.open);
    let opening = s.today(m.now).opening;
    let wakes = matches!(opening.as_ref().map(|advice| advice.next), Some(Next::Wake(_)));
    let mut parts = vec![match opening {
        Some(advice) => {
            let mut judged = (words.first)(w, &advice);
            judged.reasons.splice(0..0, last_answered(m, s));
            Part::new(PLATE, What::Verdict(judged))
        }
        None => text("open/nothing", "", words.nothing_yet),
    }];
    parts.extend(safe::parts(m, s));
    parts.extend(safe::wake(m, s).filter(|_| wakes));
    // Nothing else is asked of bottles that are not safe, and none is to be tried.
    if let Some((_, record)) = s.bottling.as_ref().filter(|_| !s.is_hazard()) {
        let original = s.original.map(Estimate::value);
        let plan = (words.plan)(w, dates(record.waiting(original, m.now)), record);
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
    parts.extend(learned(m, s));
    parts
}

/// What the bottle opened last says of the others.
fn last_answered(m: &Model, s: &Summary) -> Option<String> {
    let (_, record) = s.bottling.as_ref().filter(|_| !s.is_hazard())?;
    let (_, opening) = s.openings.first()?;
    (m.words.open.answered)(opening.at.since(record.at), opening)
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
