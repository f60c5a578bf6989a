//! A bottle gushed or burst: the calm order of steps, and what was done.

use crate::advice::open::SafeBy;
use crate::advice::open::worried::{Symptom, help};
use crate::app::act::{Act, OpenAct};
use crate::app::ask::{Chosen, answer_or_none};
use crate::app::event::Effect;
use crate::app::model::{Model, Then};
use crate::app::part::{Part, What, alert, form, heading, submit, text};
use crate::app::save::{commit, refuse};
use crate::batch::{Change, Entry, Id, MadeSafe, Summary};

/// The name that its outcome goes by.
const FORM: &str = "open/safe";

fn done(m: &Model, batch: &Id) -> Chosen<Option<SafeBy>> {
    let words = &m.words.open.safe;
    let name = format!("{}safe", super::form::scope(batch));
    answer_or_none(m, &name, (words.what_was_done, ""), words.by)
}

/// The steps and the question; nothing while the bottles are as safe as is known.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let Some(facts) = s.facts(m.settings().height, m.now).filter(|_| s.is_hazard()) else {
        return vec![];
    };
    let words = &m.words.open;
    let burst = s.openings.iter().any(|(_, opening)| opening.burst);
    let seen = if burst { Symptom::OneBurst } else { Symptom::GushingSome };
    let steps = help(seen, &facts).steps.into_iter().map(words.worried.step);
    let said = vec![
        heading("open/safe/heading", 2, words.worried.first_safe),
        super::worried::ordered("open/safe/steps", steps),
        text("open/safe/caution", "small", m.words.cautions.glass),
    ];
    let notice = alert("open/safe/notice", "notice notice-grave", said);
    let ask = vec![
        done(m, &s.id).part,
        Part::new("open/safe/outcome", What::Outcome(m.outcome(FORM))),
        submit("open/safe/save", words.safe.done),
    ];
    vec![notice, form(FORM, "", Act::Open(OpenAct::MadeSafe(s.id.clone())), ask)]
}

/// The steps for flat bottles that should not be flat, while they are being woken.
pub fn wake(m: &Model, s: &Summary) -> Option<Part> {
    let facts = s.facts(m.settings().height, m.now)?;
    let steps = help(Symptom::FlatSome, &facts).steps.into_iter().map(m.words.open.worried.step);
    Some(super::worried::ordered("open/wake", steps))
}

/// Saves what was done.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let asked = done(m, batch);
    let words = &m.words.open.safe;
    let Some(by) = asked.value else {
        return refuse(m, FORM, words.say_what, Some(asked.part.name));
    };
    let Some((id, mut record)) = m.journal.bottling(batch).cloned() else { return vec![] };
    record.made_safe = Some(MadeSafe { at: m.now, by });
    let change = Change::put(id, Entry::Bottling(record));
    commit(m, FORM, change, words.saved, vec![Then::Forget(asked.part.name)])
}
