//! What was changed in two places, to be settled, and what could not be read.

use crate::app::act::{Act, GearAct};
use crate::app::model::{Model, entry_of};
use crate::app::part::{Fold, Part, Tag, What, action, group, heading, text};
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
    if !m.phone.set_aside.is_empty() {
        parts.push(set_aside(m));
    }
    parts
}

fn conflicts(m: &Model) -> Part {
    let mut parts = vec![heading("conflicts/head", 2, m.words.gear.two_places)];
    for conflict in &m.phone.conflicts {
        let name = format!("conflict/{}/{}", conflict.kind, conflict.id);
        parts.push(heading(format!("{name}/thing"), 3, thing(m, conflict)));
        let others = conflict.others.iter().map(|other| version(m, conflict, other, false));
        let versions = std::iter::once(version(m, conflict, &conflict.shown, true)).chain(others);
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

fn version(m: &Model, conflict: &Conflict, record: &Record, shown: bool) -> Part {
    let words = &m.words.gear;
    let Conflict { kind, id, .. } = conflict;
    let name = format!("conflict/{kind}/{id}/{}", record.token);
    let said = if record.deleted { words.deleted } else { &record.body };
    let label = if shown { words.keep_this } else { words.use_this };
    let settle = GearAct::Settle(Box::new(conflict.clone()), record.token);
    let parts = vec![
        text(format!("{name}/at"), "", (words.saved_at)(record.at)),
        text(format!("{name}/said"), "raw", said),
        action(format!("{name}/keep"), "", label, Act::Gear(settle)),
    ];
    group(name, Tag::Li, "", parts)
}

fn set_aside(m: &Model) -> Part {
    let texts = &m.phone.set_aside;
    let mut parts = vec![
        heading("aside/head", 2, m.words.gear.unreadable),
        text("aside/lead", "", (m.words.frame.set_aside)(texts.len())),
    ];
    for (key, said) in texts {
        let name = format!("aside/{key}");
        let (kind, open) = ("more", m.is_open(&name, false));
        let fold = Fold { kind, summary: key.clone(), open };
        let said = text(format!("{name}/text"), "raw", said.clone());
        parts.push(Part::of(name, What::Fold(fold), vec![said]));
    }
    group("aside", Tag::Section, "trouble", parts)
}
