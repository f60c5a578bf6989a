//! Open: when to try one, how each bottle was, what to do when something is wrong, and what was learned.

mod form;
mod log;
mod place;
mod worried;

use super::act::OpenAct;
use super::event::Effect;
use super::model::Model;
use super::part::{Item, Part, Tag, What, group, heading, text};
use crate::advice::open::dates;
use crate::advice::open::learned::lessons;
use crate::batch::Summary;
use crate::quantity::Estimate;

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.open);
    let mut parts = vec![match s.today(m.now).opening {
        Some(advice) => Part::new("open/first", What::Verdict((words.first)(w, &advice))),
        None => text("open/nothing", "", words.nothing_yet),
    }];
    if let Some((_, record)) = &s.bottling {
        let original = s.original.map(Estimate::value);
        let plan = (words.plan)(w, dates(record.waiting(original, m.now)), record);
        parts.push(Part::new("open/plan", What::Figures(plan)));
        parts.push(text("open/try-one", "small", words.try_one));
        parts.push(place::parts(m, &s.id));
        parts.push(worried::parts(m, s));
    }
    if s.openings.iter().any(|(_, opening)| opening.fizz.gushed()) {
        parts.push(gushed(m));
    }
    parts.push(form::parts(m, &s.id));
    parts.extend(log::parts(m, s));
    parts.extend(learned(m, s));
    parts
}

/// One gushed: what that may mean for all.
fn gushed(m: &Model) -> Part {
    let said = format!("{} {}", m.words.open.gushed, m.words.cautions.glass);
    let said = vec![text("open/gushed/said", "notice-said", said)];
    let mut notice = group("open/gushed", Tag::Div, "notice notice-grave", said);
    if let What::Group(notice) = &mut notice.what {
        notice.role = "alert";
    }
    notice
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
        OpenAct::Delete(id) => log::delete(m, id),
    }
}
