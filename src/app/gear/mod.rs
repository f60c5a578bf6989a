//! Gear: instruments, bottles, sugars, preferences, and how things are kept.

mod bottles;
mod bring;
mod conflicts;
mod instrument_form;
mod instruments;
mod keeping;
mod old;
mod preferences;
mod room;
mod sugars;
mod things;

pub use preferences::{typed, unit_chosen};

use super::act::{GearAct, Thing};
use super::ask::Wrong;
use super::copies;
use super::event::{Effect, NoFile};
use super::model::{Model, Then};
use super::part::{Part, heading};
use super::route::Route;
use super::save::commit;
use super::table;
use crate::batch::{Change, EntryKey, Kind};
use crate::exchange::copy;
use things::{list_of, scope};

/// The screen.
#[inline(never)] // read by the browser only when it is called
pub fn parts(m: &Model) -> Vec<Part> {
    let mut parts = vec![heading("title", 1, m.words.frame.gear)];
    parts.extend(conflicts::parts(m));
    parts.extend(old::section(m));
    parts.push(instruments::section(m));
    parts.push(bottles::section(m));
    parts.push(sugars::section(m));
    parts.push(preferences::section(m));
    parts.extend(keeping::sections(m));
    parts.extend(room::deleted(m));
    parts
}

/// What it offers.
pub fn act(m: &mut Model, act: GearAct) -> Vec<Effect> {
    match act {
        GearAct::Edit(thing) => {
            let first = format!("{}name", scope(&thing));
            m.here.editing = Some(thing);
            vec![Effect::Attend(first)]
        }
        GearAct::Save(thing) => save(m, &thing),
        GearAct::Leave => {
            let Some(thing) = m.here.editing.take() else { return vec![] };
            let scope = scope(&thing);
            m.drafts.forget(&scope);
            m.here.outcomes.remove(&scope);
            vec![Effect::KeepDrafts]
        }
        GearAct::Delete(key) => delete(m, key),
        GearAct::Usual(units) => preferences::take_usual(m, units),
        GearAct::Settle(conflict, keep) => {
            m.here.outcomes.remove(&conflicts::FORM.to_owned());
            // What takes an earlier change back would bring an old text over what is settled.
            m.undo = None;
            vec![Effect::Settle(conflict, keep)]
        }
        GearAct::HaveBack(id) => room::have_back(m, &id),
        GearAct::Copy(of) => vec![Effect::Copy(of)],
        GearAct::HandedOut => copies::handed_out(m),
        GearAct::TakeAway => old::take_away(m),
        GearAct::BringIn => bring::bring_in(m),
        GearAct::LeaveCopy => {
            m.here.bringing = None;
            vec![]
        }
    }
}

fn save(m: &mut Model, thing: &Thing) -> Vec<Effect> {
    let mut wrong = Wrong::default();
    let words = &m.words.gear;
    let (entry, done) = match thing.kind {
        Kind::Hydrometer => (instrument_form::read(m, thing, &mut wrong), words.hydrometer_saved),
        Kind::Bottles => (bottles::read(m, thing, &mut wrong), words.bottles_saved),
        Kind::Sugar => (sugars::read(m, thing, &mut wrong), words.sugar_saved),
        _ => (None, ""),
    };
    let form = scope(thing);
    if let Some(first) = wrong.shown(m) {
        m.here.outcomes.insert(form, m.words.frame.look_again.to_owned());
        return vec![Effect::Attend(first)];
    }
    let Some(entry) = entry else { return vec![] };
    let id = thing.id.clone().unwrap_or_else(|| m.new_id());
    let then = vec![Then::Forget(form.clone()), Then::CloseForm];
    commit(m, &form, Change::put(id, entry), done, then)
}

fn delete(m: &mut Model, key: EntryKey) -> Vec<Effect> {
    let words = &m.words.gear;
    let done = match key.kind {
        Kind::Bottles => words.bottles_deleted,
        Kind::Sugar => words.sugar_deleted,
        _ => words.hydrometer_deleted,
    };
    let thing = Thing { kind: key.kind, id: Some(key.id.clone()) };
    // Its form has nothing left to change.
    let then = if m.here.editing.as_ref() == Some(&thing) {
        vec![Then::Forget(scope(&thing)), Then::CloseForm]
    } else {
        vec![]
    };
    commit(m, list_of(key.kind), Change::remove(key), done, then)
}

/// A field was left: a number among the preferences is saved then.
pub fn left(m: &mut Model, name: &str) -> Vec<Effect> {
    preferences::left(m, name)
}

/// A file was chosen at a field.
pub fn file_chosen(m: &mut Model, name: &str, text: Result<String, NoFile>) -> Vec<Effect> {
    match name {
        bring::FIELD => bring::chosen(m, text),
        table::FIELD => table::chosen(m, text),
        _ => vec![],
    }
}

/// What stands in the store, for the copy that is looked at.
pub fn stands(m: &mut Model, things: &[copy::Thing]) -> Vec<Effect> {
    bring::stands(m, things)
}

/// One goes elsewhere: a number that was stepped to and never left is saved, and no copy that grows old
/// is kept.
pub fn gone_from(m: &mut Model) -> Vec<Effect> {
    if m.route != Route::Gear {
        return vec![];
    }
    m.phone.copy = None;
    preferences::left(m, preferences::HEIGHT)
}
