//! Readings as a table: handed out, and read from a file into a batch, its lines shown first.

use super::act::{Act, WatchAct};
use super::copies::why_no_file;
use super::event::{Effect, NoFile};
use super::fold::fold;
use super::model::Model;
use super::part::{FileField, HandOut, Item, Part, Tag, What, action, group, status, text};
use super::route::Route;
use super::save::commit;
use crate::batch::{Change, Edit, Entry, HydrometerItem, Id, Reading, Summary};
use crate::exchange::table::{Table, read, write};

/// The field of the file.
pub const FIELD: &str = "table/file";
const FORM: &str = "table";
/// So many bad lines are told one by one.
const TOLD: usize = 12;

fn field(m: &Model) -> Vec<Part> {
    let words = &m.words.table;
    let field = FileField {
        label: words.choose.to_owned(),
        hint: words.choose_hint.to_owned(),
        accept: ".csv,.tsv,.txt,text/csv",
    };
    vec![
        Part::new(FIELD, What::File(field)),
        Part::new("table/outcome", What::Outcome(m.outcome(FORM))),
    ]
}

/// The fold at a batch: its readings out, and others in.
pub fn of_batch(m: &Model, s: &Summary) -> Part {
    let words = &m.words.table;
    let readings = m.journal.readings(&s.id);
    let mut parts = vec![];
    if !readings.is_empty() {
        let name: String = s.heading.name.chars().filter(char::is_ascii_alphanumeric).collect();
        let file = |label: &str, which: &str, comma| HandOut {
            label: label.to_owned(),
            file: format!("readings-{}{which}.csv", name.to_lowercase()),
            media: "text/csv",
            text: write(readings, comma),
            act: None,
        };
        let points = file(words.hand_out, "", false);
        let commas = file(words.hand_out_comma, "-comma", true);
        parts.push(Part::new("table/points", What::HandOut(points)));
        parts.push(Part::new("table/commas", What::HandOut(commas)));
        parts.push(text("table/less", "small", words.says_less));
    }
    parts.extend(field(m));
    if let Some(table) = &m.here.table {
        let new = new_here(m, &s.id, table);
        let mut shown = preview(m, table, new.len());
        if new.is_empty() {
            shown.push(text("table/nothing", "", words.nothing_new));
        } else {
            let add = Act::Watch(WatchAct::AddTable(s.id.clone()));
            let leave = Act::Watch(WatchAct::LeaveTable);
            let ways = vec![
                action("table/add", "main-action", &(words.add)(new.len()), add),
                action("table/leave", "quiet", words.leave, leave),
            ];
            shown.push(group("table/ways", Tag::Div, "form-actions", ways));
        }
        parts.push(status("table/found", shown));
    }
    fold(m, FORM, words.heading, parts)
}

/// The fold in the form of a new batch.
pub fn of_new_batch(m: &Model) -> Part {
    let words = &m.words.table;
    let mut parts = field(m);
    if let Some(table) = &m.here.table {
        let mut shown = preview(m, table, table.readings.len());
        shown.push(text("table/with", "", words.with_batch));
        let leave = Act::Watch(WatchAct::LeaveTable);
        shown.push(action("table/leave", "quiet", words.leave, leave));
        parts.push(status("table/found", shown));
    }
    fold(m, FORM, words.from_paper, parts)
}

fn preview(m: &Model, table: &Table, new: usize) -> Vec<Part> {
    let words = &m.words.table;
    let there = table.readings.len() - new;
    let mut rows = vec![
        (words.would_add.to_owned(), (words.readings)(new)),
        (words.there_already.to_owned(), there.to_string()),
        (words.left_out.to_owned(), table.bad.len().to_string()),
    ];
    if !table.unknown.is_empty() {
        rows.push((words.unknown.to_owned(), table.unknown.join(", ")));
    }
    let mut parts = vec![Part::new("table/rows", What::Figures(rows))];
    let line = |(at, why): &(usize, _)| (words.bad)(*at, why, m.words.fields.read_error);
    let mut lines: Vec<String> = table.bad.iter().take(TOLD).map(line).collect();
    let over = table.bad.len().saturating_sub(TOLD);
    lines.extend((over > 0).then(|| (m.words.copies.and_more)(over)));
    if !lines.is_empty() {
        let items = lines.into_iter().map(|text| Item { kind: "", mark: "", text });
        parts.push(Part::new("table/bad", What::Items("", items.collect())));
    }
    parts
}

/// The readings of a table that the batch has not: of another time, vessel or mark.
fn new_here(m: &Model, batch: &Id, table: &Table) -> Vec<Reading> {
    let there = m.journal.readings(batch);
    let is_there = |new: &&Reading| {
        there.iter().any(|(_, old)| {
            old.at.minutes_since_epoch() == new.at.minutes_since_epoch()
                && old.vessel == new.vessel
                && old.as_read == new.as_read
        })
    };
    table.readings.iter().filter(|new| !is_there(new)).cloned().collect()
}

/// A file was chosen.
pub fn chosen(m: &mut Model, file: Result<String, NoFile>) -> Vec<Effect> {
    m.here.table = None;
    m.here.outcomes.remove(&FORM.to_owned());
    // A new batch has no identity yet; its readings get it with the batch.
    let (batch, instrument) = match &m.route {
        Route::Batch(id, _) => (
            id.clone(),
            m.journal.batch(id).map_or_else(HydrometerItem::usual_id, |b| b.hydrometer.clone()),
        ),
        _ => (Id::random([0; 8]), HydrometerItem::usual_id()),
    };
    let read = match file {
        Err(why) => Err(why_no_file(m, why)),
        Ok(text) => {
            read(&text, &batch, &instrument, &m.zone).map_err(|why| (m.words.table.no_table)(&why))
        }
    };
    match read {
        Ok(table) => m.here.table = Some(table),
        Err(why) => {
            m.here.outcomes.insert(FORM.to_owned(), why);
        }
    }
    vec![]
}

/// The readings are added, all as one change.
pub fn add(m: &mut Model, batch: &Id) -> Vec<Effect> {
    // It stays, so that what was not kept can be tried again.
    let Some(table) = m.here.table.clone() else { return vec![] };
    let new = new_here(m, batch, &table);
    let done = (m.words.table.added)(new.len());
    let edits: Vec<Edit> =
        new.into_iter().map(|one| Edit::Put(m.new_id(), Entry::Reading(one))).collect();
    commit(m, FORM, Change::all(edits), &done, vec![])
}

/// What a new batch takes along from a table.
pub fn along(m: &mut Model, batch: &Id, instrument: &Id) -> Vec<Edit> {
    let table = m.here.table.clone().unwrap_or_default();
    let own =
        |one: Reading| Reading { batch: batch.clone(), hydrometer: instrument.clone(), ..one };
    let all = table.readings.into_iter().map(own);
    all.map(|one| Edit::Put(m.new_id(), Entry::Reading(one))).collect()
}
