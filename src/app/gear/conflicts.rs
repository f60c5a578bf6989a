//! What was changed in two places, to be settled, and what could not be read.

use crate::app::act::{Act, BatchAct, GearAct};
use crate::app::model::{Model, entry_of};
use crate::app::part::{Fold, Part, Table, Tag, What, action, group, heading, text};
use crate::batch::Kind;
use crate::store::{Conflict, Record};

/// Where it is said why a conflict was not settled.
pub const FORM: &str = "gear/conflicts";

/// What has to be settled or known, if anything.
pub fn parts(m: &Model) -> Vec<Part> {
    let mut parts = vec![];
    if !m.phone.conflicts.is_empty() {
        parts.push(conflicts(m));
    }
    if !m.phone.newer.is_empty() {
        let (head, lead) = (m.words.keeping.newer_head, m.words.keeping.newer);
        parts.push(texts_as_they_are(m, "newer", &m.phone.newer, head, lead));
    }
    if !m.phone.set_aside.is_empty() {
        let (head, lead) = (m.words.gear.unreadable, m.words.frame.set_aside);
        parts.push(texts_as_they_are(m, "aside", &m.phone.set_aside, head, lead));
    }
    parts.extend(alone(m));
    parts
}

/// Records whose batch is not here.
fn alone(m: &Model) -> Option<Part> {
    let words = &m.words.keeping;
    let batches = m.journal.without_batch();
    let mut parts =
        vec![heading("alone/head", 2, words.alone_head), text("alone/lead", "", words.alone_lead)];
    for (id, count) in &batches {
        let name = format!("alone/{}", id.as_str());
        let delete = Act::Batch(BatchAct::Delete((*id).clone()));
        let inner = vec![
            text(format!("{name}/said"), "", (words.records)(*count)),
            action(format!("{name}/delete"), "quiet", words.delete_them, delete),
        ];
        parts.push(group(name, Tag::Div, "", inner));
    }
    (!batches.is_empty()).then(|| group("alone", Tag::Section, "trouble", parts))
}

fn conflicts(m: &Model) -> Part {
    let mut parts = vec![heading("conflicts/head", 2, m.words.gear.two_places)];
    for conflict in &m.phone.conflicts {
        let name = format!("conflict/{}/{}", conflict.kind, conflict.id);
        parts.push(heading(format!("{name}/thing"), 3, thing(m, conflict)));
        let versions: Vec<_> = std::iter::once(&conflict.shown).chain(&conflict.others).collect();
        parts.push(differences(m, &name, &versions));
        let versions = versions.iter().enumerate().map(|(at, one)| version(m, conflict, one, at));
        parts.push(group(name, Tag::Ul, "log", versions.collect()));
    }
    parts.push(Part::new("conflicts/outcome", What::Outcome(m.outcome(FORM))));
    group("conflicts", Tag::Section, "trouble", parts)
}

/// The thing by its kind and name, or by that of its batch, as far as one of its versions can be read.
fn thing(m: &Model, conflict: &Conflict) -> String {
    let versions = std::iter::once(&conflict.shown).chain(&conflict.others);
    let entry = versions.filter_map(entry_of).map(|(_, entry)| entry).next();
    let batch = |entry: &crate::batch::Entry| {
        let heading = m.journal.batch(entry.batch()?)?;
        Some(heading.name.clone())
    };
    let name = entry.and_then(|entry| entry.name().map(str::to_owned).or_else(|| batch(&entry)));
    (m.words.gear.thing)(Kind::named(&conflict.kind), &name.unwrap_or_default())
}

/// What they differ in, field by field, each version in a column.
fn differences(m: &Model, name: &str, versions: &[&Record]) -> Part {
    let words = &m.words.keeping;
    let name_of = |id: &str| {
        let id = crate::batch::Id::new(id).ok()?;
        let batch = m.journal.batch(&id).map(|heading| heading.name.clone());
        let hydrometers = m.journal.hydrometers().into_iter();
        let hydrometer = hydrometers.rev().find(|(known, _)| *known == id);
        batch.or_else(|| hydrometer.map(|(_, item)| item.name))
    };
    let bodies: Vec<_> = versions.iter().map(|record| record.body.as_str()).collect();
    let differ = (words.differences)(m.writer(), &name_of, &bodies);
    if differ.is_empty() {
        return text(format!("{name}/hardly"), "", words.hardly_differ);
    }
    let head = (0..versions.len()).map(words.version);
    let table = Table {
        label: words.differs_in,
        head: std::iter::once(words.what).chain(head).collect(),
        rows: differ.into_iter().map(|(label, said)| [vec![label], said].concat()).collect(),
    };
    Part::new(format!("{name}/differ"), What::Table(table))
}

fn version(m: &Model, conflict: &Conflict, record: &Record, at: usize) -> Part {
    let words = &m.words.gear;
    let Conflict { kind, id, .. } = conflict;
    let name = format!("conflict/{kind}/{id}/{}", record.token);
    let label = if at == 0 { words.keep_this } else { words.use_this };
    let settle = GearAct::Settle(Box::new(conflict.clone()), record.token);
    let which = (m.words.keeping.version)(at);
    let deleted = if record.deleted { words.deleted } else { "" };
    let parts = vec![
        text(format!("{name}/at"), "", (words.saved_at)(which, record.at, deleted)),
        action(format!("{name}/keep"), "", label, Act::Gear(settle)),
    ];
    group(name, Tag::Li, "", parts)
}

/// Stored texts that are only shown.
fn texts_as_they_are(
    m: &Model,
    list: &str,
    texts: &[(String, String)],
    head: &str,
    lead: fn(usize) -> String,
) -> Part {
    let mut parts = vec![
        heading(format!("{list}/head"), 2, head),
        text(format!("{list}/lead"), "", lead(texts.len())),
    ];
    for (key, said) in texts {
        let name = format!("{list}/{key}");
        let (kind, open) = ("more", m.is_open(&name, false));
        let fold = Fold { kind, summary: key.clone(), beside: vec![], open };
        let said = text(format!("{name}/text"), "raw", said.clone());
        parts.push(Part::of(name, What::Fold(fold), vec![said]));
    }
    group(list, Tag::Section, "trouble", parts)
}
