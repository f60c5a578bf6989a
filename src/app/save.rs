//! A change on its way to the store: made here, sent, and only called saved when it is kept.

use super::event::{Effect, NotSaved};
use super::model::{Model, Pending, Then, Undo};
use super::opened::{DeletedBatch, Opened};
use crate::batch::{Change, Entry, Id};
use crate::store::{Revision, StoreError};

/// Makes a change and asks for it to be kept. `done` is said beside the undo once it is; empty says
/// nothing. Where the journal refuses it, the form says why and nothing has changed.
pub fn commit(
    m: &mut Model,
    form: &str,
    change: Change,
    done: &str,
    then: Vec<Then>,
) -> Vec<Effect> {
    // A second touch before the first is answered.
    if m.pending.iter().any(|pending| pending.form == form && pending.change == change) {
        return vec![];
    }
    let form = form.to_owned();
    match m.journal.apply(change.clone()) {
        Ok(back) => send(m, form, change, back, done, then),
        Err(why) => {
            let why = (m.words.frame.rejected)(why);
            m.here.outcomes.insert(form, why);
            vec![]
        }
    }
}

/// Says at a form why it is not saved, and puts the attention on the field to look at.
pub fn refuse(m: &mut Model, form: &str, why: &str, look_at: Option<String>) -> Vec<Effect> {
    m.here.outcomes.insert(form.to_owned(), why.to_owned());
    look_at.map(Effect::Attend).into_iter().collect()
}

/// The identity that what a form makes will have: the same at each try, so that what a save left behind
/// that failed halfway is written again, and never stands there twice. It is kept as the draft `name` is,
/// and forgotten with the form.
pub fn identity(m: &mut Model, name: &str) -> Id {
    if let Some(kept) = m.drafts.text(name).and_then(|kept| Id::new(kept).ok()) {
        return kept;
    }
    let id = m.new_id();
    m.drafts.put(name, id.as_str(), "");
    id
}

/// Takes the last change back. What was here before needs no leave to come back.
pub fn take_back(m: &mut Model) -> Vec<Effect> {
    let Some(undo) = m.undo.take() else { return vec![] };
    let back = m.journal.take_as_it_is(undo.change.clone());
    let effects = send(m, "undo".to_owned(), undo.change.clone(), back, "", vec![]);
    if let Some(pending) = m.pending.last_mut() {
        pending.undo = Some(undo);
    }
    effects
}

/// Takes in what the store holds. An undo of what was saved elsewhere since would bring an old text over it.
pub fn take_in(m: &mut Model, opened: Opened) {
    let of_undo = |m: &Model| -> Vec<Option<Entry>> {
        let edits = m.undo.iter().flat_map(|undo| undo.change.edits());
        edits.map(|edit| m.journal.entry(&edit.key())).collect()
    };
    let before = of_undo(m);
    m.take_in(opened);
    if before != of_undo(m) {
        m.undo = None;
    }
}

/// Brings records in that were looked at: they fit, and are kept as they were saved elsewhere.
pub fn bring(
    m: &mut Model,
    form: &str,
    change: Change,
    revisions: Vec<Revision>,
    done: &str,
) -> Vec<Effect> {
    let back = m.journal.take_as_it_is(change.clone());
    let effects = send(m, form.to_owned(), change, back, done, vec![]).into_iter();
    let bring = |effect| match effect {
        Effect::Save(ticket, change, back) => {
            Effect::BringIn(ticket, revisions.clone(), change, back)
        }
        other => other,
    };
    effects.map(bring).collect()
}

fn send(
    m: &mut Model,
    form: String,
    change: Change,
    back: Change,
    done: &str,
    then: Vec<Then>,
) -> Vec<Effect> {
    m.here.outcomes.remove(&form);
    // A copy that is shown would lack it.
    m.phone.copy = None;
    let ticket = m.pending.last().map_or(1, |last| last.ticket + 1);
    m.pending.push(Pending {
        ticket,
        change: change.clone(),
        back: back.clone(),
        done: done.to_owned(),
        then,
        form,
        undo: None,
    });
    vec![Effect::Save(ticket, change, back)]
}

fn taken(m: &mut Model, ticket: u32) -> Option<Pending> {
    let at = m.pending.iter().position(|pending| pending.ticket == ticket)?;
    Some(m.pending.remove(at))
}

/// It is kept.
pub fn saved(m: &mut Model, ticket: u32) -> Vec<Effect> {
    let Some(pending) = taken(m, ticket) else { return vec![] };
    let mut effects = vec![];
    for then in pending.then {
        match then {
            Then::Forget(start) => {
                m.drafts.forget(&start);
                effects.push(Effect::KeepDrafts);
            }
            Then::Go(route) => effects.push(Effect::Go(route.address())),
            Then::CloseForm => {
                m.here.noting = super::model::Noting::Nothing;
                m.here.editing = None;
            }
            Then::Attend(part) => effects.push(Effect::Attend(part)),
        }
    }
    m.phone.full = false;
    m.phone.deleted.extend(DeletedBatch::all_by(&pending.back, m.now));
    let there = |batch: &DeletedBatch| m.journal.batch(&batch.id).is_some();
    m.phone.deleted.retain(|batch| !there(batch));
    effects.push(Effect::Room);
    if !pending.done.is_empty() {
        let done = if m.phone.memory_only {
            m.words.frame.kept_while_open.to_owned()
        } else {
            pending.done
        };
        m.undo = Some(Undo { done, change: pending.back, since: m.now });
    } else if pending.form == "undo" {
        m.undo = None;
    } else {
        // What takes an earlier change of the same thing back would take this one back unasked.
        m.undo.take_if(|undo| same_thing(&undo.change, &pending.back));
    }
    effects
}

/// Whether two changes are about one thing.
fn same_thing(one: &Change, other: &Change) -> bool {
    one.edits().iter().any(|edit| other.edits().iter().any(|with| edit.key() == with.key()))
}

/// It is not kept: what was made here is taken back, and the form says why.
pub fn not_saved(m: &mut Model, ticket: u32, why: &NotSaved) -> Vec<Effect> {
    let Some(pending) = taken(m, ticket) else { return vec![] };
    m.journal.take_as_it_is(pending.back);
    // It can be tried again.
    m.undo = pending.undo.or(m.undo.take());
    let full = StoreError::Full;
    m.phone.full |= *why == NotSaved::Store(full.clone()) || *why == NotSaved::Half(full);
    m.not_saved(&pending.form, why);
    // What is kept of it is shown.
    matches!(why, NotSaved::Half(_)).then_some(Effect::Load).into_iter().collect()
}
