//! The log as a ledger: a row a reading, the latest first; a row opens in place to its working, its form
//! and the way to delete it.

use super::form;
use super::noting::{change_button, is_new, noted, row_name};
use crate::app::act::{Act, WatchAct};
use crate::app::event::Effect;
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Action, Fold, Part, Run, Tag, What, group, text};
use crate::app::save::commit;
use crate::app::worked::{IN_GRAVITY, how_worked};
use crate::batch::{Change, EntryKey, Id, Kind, ReadingLine, Summary};

/// So many rows stand there at once, and so many below a form; the earlier ones are folded away.
const AT_ONCE: usize = 5;
const BELOW_A_FORM: usize = 2;

/// The rows.
pub fn parts(m: &Model, s: &Summary) -> Part {
    let rows = |name: &str, lines: &[ReadingLine]| {
        group(name, Tag::Ol, "log", lines.iter().rev().map(|line| row(m, s, line)).collect())
    };
    // Where the earlier ones are open every row stays where it is: to make rows anew takes its time.
    let open = m.is_open("log/earlier", false);
    let at_once = if is_new(m, s) && !open { BELOW_A_FORM } else { AT_ONCE };
    let (earlier, latest) = s.lines.split_at(s.lines.len().saturating_sub(at_once));
    let mut parts = vec![rows("log/latest", latest)];
    if !earlier.is_empty() {
        // Made only when they are wanted.
        let inner = open.then(|| rows("log/earlier/rows", earlier));
        let summary = (m.words.watch.log.earlier)(earlier.len());
        parts.push(fold(m, "log/earlier", summary, inner.into_iter().collect()));
    }
    group("log", Tag::Div, "ledger", parts)
}

fn row(m: &Model, s: &Summary, line: &ReadingLine) -> Part {
    let (w, words) = (m.writer(), &m.words.watch.log);
    let place = row_name(&line.id);
    let changed = noted(m, s).filter(|noted| noted.id.as_ref() == Some(&line.id));
    let outcome = m.outcome(&place);
    let open = m.is_open(&place, false) || changed.is_some() || !outcome.is_empty();
    let inner = match changed {
        Some(noted) => vec![form::parts(m, s, noted)],
        None if open => opened(m, line, outcome),
        None => vec![],
    };
    let kind = if line.reading.doubtful { "log-beside log-doubtful" } else { "log-beside" };
    let beside = vec![
        Run::new(kind, (words.beside)(w, line)),
        Run::new("log-gravity", (words.gravity)(w, line).0),
    ];
    let summary = (words.day)(line.reading.at, m.now);
    let fold = What::Fold(Fold { kind: "log-row", summary, beside, open });
    let name = format!("{place}/row");
    group(name, Tag::Li, "log-line", vec![Part::of(place, fold, inner)])
}

/// What stands in a row that is open.
fn opened(m: &Model, line: &ReadingLine, outcome: String) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.watch.log);
    let reading = &line.reading;
    let name = |key: &str| format!("{}/{key}", row_name(&line.id));
    let doubt = (words.gravity)(w, line).1;
    let read = vec![Run::new("", (words.as_read)(reading)), Run::new("log-doubt", doubt)];
    let mut parts = vec![
        Part::new(name("gravity"), What::Line("log-read", read)),
        text(name("details"), "log-details", (words.details)(w, line)),
        text(name("note"), "log-note", reading.note.clone()),
        Part::new(name("outcome"), What::Outcome(outcome)),
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
    parts
}

/// Takes a reading out; the undo bar brings it back.
pub fn delete(m: &mut Model, id: Id) -> Vec<Effect> {
    let (row, done) = (row_name(&id), m.words.watch.log.deleted);
    let change = Change::remove(EntryKey { kind: Kind::Reading, id });
    commit(m, &row, change, done, vec![])
}
