//! The log: every reading as it was read and as it was corrected, the latest first.

use crate::app::act::{Act, WatchAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Action, Part, Run, Tag, What, group, text};
use crate::app::save::commit;
use crate::app::worked::{IN_GRAVITY, how_worked};
use crate::batch::{Change, EntryKey, Id, Kind, ReadingLine, Summary};
use crate::words::{Writer, write};

/// The rows.
pub fn parts(m: &Model, s: &Summary) -> Part {
    let w = m.writer();
    let rows = s.lines.iter().rev().map(|line| row(m, w, line));
    group("log", Tag::Ol, "log", rows.collect())
}

fn row_name(id: &Id) -> String {
    format!("log/{}", id.as_str())
}

/// The button that opens a reading's form.
pub fn change_button(id: &Id) -> String {
    format!("{}/change", row_name(id))
}

fn row(m: &Model, w: Writer, line: &ReadingLine) -> Part {
    let words = &m.words.watch.log;
    let reading = &line.reading;
    let place = row_name(&line.id);
    let name = |key: &str| format!("{place}/{key}");
    let (gravity, doubt) = (words.gravity)(w, line);
    let runs = vec![
        Run::new("strong", gravity),
        Run::new("log-doubt", doubt),
        Run::new("log-read", (words.as_read)(reading)),
    ];
    let mut parts = vec![
        text(name("when"), "log-when", write::moment(reading.at)),
        Part::new(name("gravity"), What::Line("log-gravity", runs)),
        text(name("details"), "log-details", (words.details)(w, line)),
        text(name("note"), "log-note", reading.note.clone()),
        Part::new(name("outcome"), What::Outcome(m.outcome(&place))),
    ];
    if let Some(Ok(found)) = &line.corrected {
        parts.push(how_worked(m, &name("worked"), &found.worked, IN_GRAVITY));
    }
    let button = |name: String, label: &str, spoken, act| {
        let (kind, label, act) = ("quiet", label.to_owned(), Some(Act::Watch(act)));
        Part::new(name, What::Action(Action { kind, label, spoken, act }))
    };
    let change = WatchAct::Change(line.id.clone());
    let delete = WatchAct::Delete(line.id.clone());
    let buttons = vec![
        button(change_button(&line.id), words.change, (words.change_it)(reading), change),
        button(name("delete"), words.delete, (words.delete_it)(reading), delete),
    ];
    parts.push(group(name("buttons"), Tag::Div, "log-actions", buttons));
    group(place, Tag::Li, "log-line", parts)
}

/// Takes a reading out; the undo bar brings it back.
pub fn delete(m: &mut Model, id: Id) -> Vec<Effect> {
    let (row, done) = (row_name(&id), m.words.watch.log.deleted);
    let change = Change::remove(EntryKey { kind: Kind::Reading, id });
    commit(m, &row, change, done, vec![])
}
