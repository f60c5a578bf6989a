//! The bottles that were opened, the latest first.

use crate::app::act::{Act, OpenAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Action, Part, Run, Tag, What, group, text};
use crate::app::save::commit;
use crate::batch::{Change, EntryKey, Id, Kind, OpeningRecord, Summary};
use crate::words::write;

/// The name that the outcome of a deletion goes by.
const LOG: &str = "open/log";

/// The rows, and why one could not be taken out.
pub fn parts(m: &Model, s: &Summary) -> [Part; 2] {
    let rows = s.openings.iter().map(|(id, opening)| row(m, id, opening));
    [
        group(LOG, Tag::Ul, "log", rows.collect()),
        Part::new("open/log/outcome", What::Outcome(m.outcome(LOG))),
    ]
}

fn row(m: &Model, id: &Id, opening: &OpeningRecord) -> Part {
    let words = &m.words.open;
    let place = format!("{LOG}/{}", id.as_str());
    let name = |key: &str| format!("{place}/{key}");
    let fizz = vec![Run::new("strong", (words.fizz_of)(opening))];
    let delete = What::Action(Action {
        kind: "quiet",
        label: words.delete.to_owned(),
        spoken: (words.delete_it)(opening),
        act: Some(Act::Open(OpenAct::Delete(id.clone()))),
    });
    let parts = vec![
        text(name("when"), "log-when", write::moment(opening.at)),
        Part::new(name("fizz"), What::Line("log-gravity", fizz)),
        text(name("tasted"), "log-details", (words.tasted)(opening)),
        text(name("note"), "log-note", opening.note.clone()),
        group(name("buttons"), Tag::Div, "log-actions", vec![Part::new(name("delete"), delete)]),
    ];
    group(place, Tag::Li, "log-line", parts)
}

/// Takes a bottle out; the undo bar brings it back.
pub fn delete(m: &mut Model, id: Id) -> Vec<Effect> {
    let change = Change::remove(EntryKey { kind: Kind::Opening, id });
    commit(m, LOG, change, m.words.open.deleted, vec![])
}
