//! A list of gear with a form for one.

use crate::app::act::{Act, GearAct, Thing};
use crate::app::ask::{Chosen, words_field};
use crate::app::model::Model;
use crate::app::part::{Part, Run, Tag, What, action, form, group, heading, submit, text};
use crate::batch::{Entry, EntryKey, Id, Kind};

/// One thing in its list.
pub struct Row {
    /// Its identity.
    pub id: Id,
    /// What the brewer calls it.
    pub name: String,
    /// What it is, in a line.
    pub line: String,
}

/// What the draft names of a thing's form begin with; a new thing of each kind has one form.
pub fn scope(thing: &Thing) -> String {
    let of = match thing.kind {
        Kind::Bottles => "bottles",
        Kind::Sugar => "own-sugar",
        _ => "gear",
    };
    format!("{of}/{}/", thing.id.as_ref().map_or("new", Id::as_str))
}

/// The name of a kind's list.
pub fn list_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Bottles => "list/bottles",
        Kind::Sugar => "list/sugars",
        _ => "list/hydrometers",
    }
}

/// The thing of a form, as it is recorded.
pub fn known(m: &Model, thing: &Thing) -> Option<Entry> {
    let id = thing.id.clone()?;
    m.journal.entry(&EntryKey { kind: thing.kind, id })
}

/// The list, and below it the form that is open, or the button that opens one for a new thing.
pub fn section(
    m: &Model,
    kind: Kind,
    (head, add): (&str, &str),
    rows: Vec<Row>,
    form: fn(&Model, &Thing) -> Part,
) -> Part {
    let name = list_of(kind);
    let part = |which: &str| format!("{name}/{which}");
    let rows = rows.into_iter().map(|each| row(m, name, kind, each)).collect();
    let below = match m.here.editing.as_ref().filter(|thing| thing.kind == kind) {
        Some(thing) => form(m, thing),
        None => {
            let new = Thing { kind, id: None };
            action(part("add"), "", add, Act::Gear(GearAct::Edit(new)))
        }
    };
    let parts = vec![
        heading(part("head"), 2, head),
        group(part("rows"), Tag::Ul, "log", rows),
        Part::new(part("outcome"), What::Outcome(m.outcome(name))),
        below,
    ];
    group(name, Tag::Section, "", parts)
}

fn row(m: &Model, list: &str, kind: Kind, Row { id, name, line }: Row) -> Part {
    let words = &m.words.gear;
    let part = |which: &str| format!("{list}/{}/{which}", id.as_str());
    let button = |which: &str, label: &str, spoken: String, act: GearAct| {
        let mut button = action(part(which), "quiet", label, Act::Gear(act));
        if let What::Action(action) = &mut button.what {
            action.spoken = spoken;
        }
        button
    };
    let edit = GearAct::Edit(Thing { kind, id: Some(id.clone()) });
    let delete = GearAct::Delete(EntryKey { kind, id: id.clone() });
    let actions = vec![
        button("change", words.change, (words.change_of)(&name), edit),
        button("delete", words.delete, (words.delete_of)(&name), delete),
    ];
    let parts = vec![
        Part::new(part("name"), What::Line("", vec![Run::new("strong", name)])),
        text(part("line"), "small", line),
        group(part("actions"), Tag::Div, "log-actions", actions),
    ];
    group(part("row"), Tag::Li, "", parts)
}

/// What the brewer calls it; a name that a save was refused for says so.
pub fn name_field(m: &Model, thing: &Thing, label: &str, first: &str) -> Chosen<String> {
    let name = format!("{}name", scope(thing));
    let mut field = words_field(m, &name, label, first, false);
    if let What::Words(shown) = &mut field.part.what
        && field.value.is_empty()
        && m.drafts.was_demanded(&name)
    {
        m.words.gear.name_needed.clone_into(&mut shown.error);
    }
    field
}

/// The form round its fields, with its end: what went wrong, and its two buttons.
pub fn form_of(m: &Model, thing: &Thing, mut parts: Vec<Part>) -> Part {
    let (words, scope) = (&m.words.gear, scope(thing));
    let part = |which: &str| format!("{scope}{which}");
    let buttons = vec![
        submit(part("save"), words.save),
        action(part("leave"), "quiet", words.leave, Act::Gear(GearAct::Leave)),
    ];
    parts.push(Part::new(part("outcome"), What::Outcome(m.outcome(&scope))));
    parts.push(group(part("end"), Tag::Div, "form-actions", buttons));
    form(part("form"), "", Act::Gear(GearAct::Save(thing.clone())), parts)
}
