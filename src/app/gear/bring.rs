//! Bringing a copy back: what would come of it is shown first.

use crate::app::act::{Act, GearAct};
use crate::app::copies::{kinds_in_order, rescued, revision, why_no_file};
use crate::app::event::{Effect, NoFile};
use crate::app::model::{Bringing, Model};
use crate::app::part::{
    Action, FileField, Item, Part, Tag, What, action, group, heading, status, text,
};
use crate::app::save;
use crate::batch::Kind;
use crate::exchange::bring::{Brought, Fitting, compare};
use crate::exchange::copy::{self, Copy, Refused, Thing};
use crate::quantity::Moment;

/// The field of the file.
pub const FIELD: &str = "bring/file";
const FORM: &str = "bring";
/// So many things of a list are named; the others are counted.
const NAMED: usize = 12;

/// The section.
pub fn section(m: &Model) -> Part {
    let words = &m.words.copies;
    let field = FileField {
        label: words.choose.to_owned(),
        hint: words.choose_hint.to_owned(),
        accept: ".json,application/json",
    };
    let mut parts = vec![
        heading("bring/head", 2, words.bring_back),
        Part::new(FIELD, What::File(field)),
        Part::new("bring/outcome", What::Outcome(m.outcome(FORM))),
    ];
    if let Some(Bringing { found: Some(found), .. }) = &m.here.bringing {
        parts.push(status("bring/found", "", would_come(m, found)));
    }
    group(FORM, Tag::Section, "", parts)
}

/// What would come, in words and numbers.
fn would_come(m: &Model, found: &Brought) -> Vec<Part> {
    let words = &m.words.copies;
    let counted = |fittings: &[Fitting]| {
        let kinds = fittings.iter().map(|fitting| fitting.entry.kind()).collect();
        (words.counted)(&kinds_in_order(kinds))
    };
    let rows = vec![
        (words.would_add.to_owned(), counted(&found.added)),
        (words.would_change.to_owned(), counted(&found.changed)),
        (words.would_stay.to_owned(), (words.stay)(found.same, found.older, found.differ.len())),
        (words.left_out.to_owned(), found.left_out.len().to_string()),
    ];
    let mut parts = vec![Part::new("bring/rows", What::Figures(rows))];
    let mut lines = vec![];
    let name_of = |entry: &crate::batch::Entry| {
        let of = entry.batch().and_then(|id| m.journal.batch(id)).map(|heading| &*heading.name);
        entry.name().or(of).unwrap_or_default().to_owned()
    };
    let thing = |kind: Kind, entry| (m.words.gear.thing)(Some(kind), &name_of(entry));
    let changed = found.changed.iter().map(|f| (words.changes)(&thing(f.entry.kind(), &f.entry)));
    lines.extend(first(changed.collect(), words.and_more));
    let differ = found.differ.iter().map(|(key, entry)| (words.differs)(&thing(key.kind, entry)));
    lines.extend(first(differ.collect(), words.and_more));
    let left_out = found.left_out.iter().map(|(at, why)| (words.why_left_out)(*at, *why));
    lines.extend(first(left_out.collect(), words.and_more));
    if !lines.is_empty() {
        let items = lines.into_iter().map(|text| Item { kind: "", mark: "", text });
        parts.push(Part::new("bring/lines", What::Items("", items.collect())));
    }
    if found.is_nothing() {
        parts.push(text("bring/nothing", "", words.nothing_new));
        return parts;
    }
    let bring = Action {
        kind: "main-action",
        label: words.bring_it.to_owned(),
        spoken: String::new(),
        act: Some(Act::Gear(GearAct::BringIn)),
    };
    let ways = vec![
        Part::new("bring/do", What::Action(bring)),
        action("bring/leave", "quiet", words.leave_it, Act::Gear(GearAct::LeaveCopy)),
    ];
    parts.push(group("bring/ways", Tag::Div, "form-actions", ways));
    parts
}

fn first(mut lines: Vec<String>, more: fn(usize) -> String) -> Vec<String> {
    let over = lines.len().saturating_sub(NAMED);
    lines.truncate(NAMED);
    lines.extend((over > 0).then(|| more(over)));
    lines
}

/// A copy, or what was handed out in place of one.
fn read(text: &str, now: Moment) -> Result<Copy, Refused> {
    match copy::read(text) {
        Err(Refused::NotACopy) => rescued(text, now).ok_or(Refused::NotACopy),
        other => other,
    }
}

/// A file was chosen. What it would bring is worked out once it is known what stands.
pub fn chosen(m: &mut Model, file: Result<String, NoFile>) -> Vec<Effect> {
    m.here.bringing = None;
    m.here.outcomes.remove(&FORM.to_owned());
    let refused = match file {
        Err(why) => why_no_file(m, why),
        Ok(text) => match read(&text, m.now) {
            Err(why) => (m.words.copies.refused)(&why),
            Ok(copy) => {
                m.here.bringing = Some(Bringing { copy, found: None });
                return vec![Effect::Things];
            }
        },
    };
    m.here.outcomes.insert(FORM.to_owned(), refused);
    vec![]
}

/// What stands in the store.
pub fn stands(m: &mut Model, here: &[Thing]) -> Vec<Effect> {
    if let Some(bringing) = &mut m.here.bringing {
        bringing.found = Some(compare(&bringing.copy.things, here, &m.journal));
    }
    vec![]
}

/// It is brought in.
pub fn bring_in(m: &mut Model) -> Vec<Effect> {
    let Some(Bringing { found: Some(found), .. }) = m.here.bringing.take() else { return vec![] };
    let coming = found.coming();
    let revisions = coming.iter().filter_map(|fitting| revision(&fitting.thing)).collect();
    let kinds = coming.iter().map(|fitting| fitting.entry.kind()).collect();
    let done = (m.words.copies.brought)(&kinds_in_order(kinds));
    save::bring(m, FORM, found.change(), revisions, &done)
}
