//! Where the bottles stand now, when they were moved.

use crate::app::act::{Act, OpenAct};
use crate::app::ask::{Asked, Wrong};
use crate::app::event::Effect;
use crate::app::fields::temperature;
use crate::app::fold::fold;
use crate::app::model::{Model, Then};
use crate::app::part::{Action, Part, What, form};
use crate::app::priming::PLACE;
use crate::app::save::commit;
use crate::batch::{Change, Entry, Id};
use crate::quantity::Celsius;

/// The name that its outcome goes by.
const FORM: &str = "open/moved";

fn place(m: &Model, batch: &Id) -> Asked<Celsius> {
    let words = &m.words.open;
    let name = format!("{}place", super::form::scope(batch));
    temperature(m, name, (words.place, words.place_hint), PLACE, None, 20.0)
}

/// The fold with the form.
pub fn parts(m: &Model, batch: &Id) -> Part {
    let words = &m.words.open;
    let (label, spoken) = (words.stand_there.to_owned(), String::new());
    let send = What::Action(Action { kind: "", label, spoken, act: None });
    let parts = vec![
        place(m, batch).part,
        Part::new("open/moved/outcome", What::Outcome(m.outcome(FORM))),
        Part::new("open/moved/save", send),
    ];
    let act = Act::Open(OpenAct::Moved(batch.clone()));
    fold(m, "open/moved/fold", words.moved, vec![form(FORM, "", act, parts)])
}

/// Saves it.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let asked = place(m, batch);
    let mut wrong = Wrong::default();
    let there = wrong.demand(&asked);
    let first = wrong.shown(m);
    let (Some(there), Some((id, record))) = (there, m.journal.bottling(batch).cloned()) else {
        return first.map(Effect::Attend).into_iter().collect();
    };
    let change = Change::put(id, Entry::Bottling(record.stood(there, m.now)));
    let then = vec![Then::Forget(asked.part.name)];
    let done = m.words.open.place_saved;
    commit(m, FORM, change, done, then)
}
