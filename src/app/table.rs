//! Readings as a table: handed out, and read from a file into a batch, its lines shown first.

use super::act::{Act, WatchAct};
use super::copies::why_no_file;
use super::event::{Effect, NoFile};
use super::fields::NEW_BATCH;
use super::fold::fold;
use super::model::Model;
use super::part::{
    FileField, HandOut, Item, Part, Tag, What, action, group, heading, status, text,
};
use super::route::Route;
use super::save::commit;
use crate::advice::odd::Odd;
use crate::batch::{
    BatchHeading, Change, Edit, Entry, HydrometerItem, Id, Journal, Reading, Summary,
};
use crate::exchange::table::{Table, read, write};
use crate::quantity::{Hours, Moment};

/// The field of the file.
pub const FIELD: &str = "table/file";
const FORM: &str = "table";
/// A batch whose first reading is younger than this is begun now.
const A_DAY: Hours = Hours::literal(24.0);
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
            file: format!("readings-{}{which}.csv", name.to_ascii_lowercase()),
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
            let add = |odd| Act::Watch(WatchAct::AddTable(s.id.clone(), odd));
            let leave = Act::Watch(WatchAct::LeaveTable);
            let mut ways =
                vec![action("table/add", "main-action", &(words.add)(new.len()), add(true))];
            let sound = new.iter().filter(|one| !one.doubtful).count();
            if sound > 0 && sound < new.len() {
                ways.push(action("table/sound", "", &(words.add_sound)(sound), add(false)));
            }
            ways.push(action("table/leave", "quiet", words.leave, leave));
            shown.push(group("table/ways", Tag::Div, "form-actions", ways));
        }
        parts.push(status("table/found", "", shown));
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
        parts.push(status("table/found", "", shown));
    }
    fold(m, FORM, words.from_paper, parts)
}

fn preview(m: &Model, table: &Table, new: usize) -> Vec<Part> {
    let words = &m.words.table;
    let there = table.readings.len() - new;
    let mut rows = vec![(words.would_add.to_owned(), (words.readings)(new))];
    let others = [(words.there_already, there), (words.left_out, table.bad.len())];
    let others = others.into_iter().filter(|(_, count)| *count > 0);
    rows.extend(others.map(|(name, count)| (name.to_owned(), count.to_string())));
    if !table.unknown.is_empty() {
        rows.push((words.unknown.to_owned(), table.unknown.join(", ")));
    }
    let mut parts = vec![Part::new("table/rows", What::Figures(rows))];
    let line = |(at, why): &(usize, _)| (words.bad)(*at, why, m.words.fields.read_error);
    let mut lines: Vec<String> = table.bad.iter().take(TOLD).map(line).collect();
    let over = table.bad.len().saturating_sub(TOLD);
    lines.extend((over > 0).then(|| (m.words.copies.and_more)(over)));
    if !lines.is_empty() {
        parts.push(Part::new("table/bad", What::Items("", items(lines))));
    }
    if new > 0 && !table.odd.is_empty() {
        parts.extend(odd(m, &table.odd));
    }
    parts
}

fn items(lines: Vec<String>) -> Vec<Item> {
    lines.into_iter().map(|text| Item { kind: "", mark: "", text }).collect()
}

/// What is odd about its lines, each by its number.
fn odd(m: &Model, rows: &[(usize, Vec<Odd>)]) -> [Part; 3] {
    let (w, words) = (m.writer(), &m.words.odd);
    let line = |(at, odd): &(usize, Vec<Odd>)| {
        let said: Vec<String> = odd.iter().map(|odd| (words.odd)(w, *odd)).collect();
        (m.words.table.odd)(*at, &said.join(" "))
    };
    let mut lines: Vec<String> = rows.iter().take(TOLD).map(line).collect();
    let over = rows.len().saturating_sub(TOLD);
    lines.extend((over > 0).then(|| (m.words.copies.and_more)(over)));
    [
        heading("table/odd", 3, words.is_that_right),
        Part::new("table/odd/said", What::Items("reasons", items(lines))),
        text("table/odd/less", "small", words.counts_less),
    ]
}

/// A paper log says when its batch was begun, unless the brewer has said.
fn begun_on(m: &mut Model, first: Moment) {
    let name = format!("{NEW_BATCH}started");
    if m.drafts.text(&name).is_none_or(str::is_empty) && m.now.since(first) > A_DAY {
        m.drafts.put(&name, m.zone.shown(first).local_text(), "");
    }
}

fn first(table: &Table) -> Option<Moment> {
    table.readings.iter().map(|one| one.at).min()
}

/// Marks what is odd about the readings of a table: in the batch that is there, or as if it were begun with
/// the first of them.
fn look_at(m: &Model, batch: &Id, table: &mut Table) {
    let new: Vec<bool> = {
        let there = m.journal.readings(batch);
        table.readings.iter().map(|one| !is_there(there, one)).collect()
    };
    let odd = match m.journal.batch(batch) {
        Some(_) => {
            let fresh = |(one, new): (&Reading, &bool)| new.then(|| one.clone());
            let fresh: Vec<_> = table.readings.iter().zip(&new).filter_map(fresh).collect();
            m.journal.odd_among(batch, &fresh, m.now)
        }
        None => {
            let first = first(table).unwrap_or(m.now);
            let mut alone = Journal::default();
            let heading = BatchHeading::begun(first, HydrometerItem::usual_id());
            alone.take_as_it_is(Change::put(batch.clone(), Entry::Batch(heading)));
            alone.odd_among(batch, &table.readings, m.now)
        }
    };
    // Of those that are new, by their place in the table.
    let places: Vec<usize> = (0..new.len()).filter(|at| new[*at]).collect();
    for (at, odd) in odd {
        let Some(place) = places.get(at) else { continue };
        if let Some(one) = table.readings.get_mut(*place) {
            one.doubtful = true;
        }
        table.odd.extend(table.lines.get(*place).map(|line| (*line, odd)));
    }
}

/// The readings of a table that the batch has not: of another time, vessel or mark.
fn new_here(m: &Model, batch: &Id, table: &Table) -> Vec<Reading> {
    let there = m.journal.readings(batch);
    table.readings.iter().filter(|new| !is_there(there, new)).cloned().collect()
}

fn is_there(there: &[(Id, Reading)], new: &Reading) -> bool {
    there.iter().any(|(_, old)| {
        old.at.minutes_since_epoch() == new.at.minutes_since_epoch()
            && old.vessel == new.vessel
            && old.as_read == new.as_read
    })
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
        Ok(mut table) => {
            look_at(m, &batch, &mut table);
            if let (Route::NewBatch, Some(first)) = (&m.route, first(&table)) {
                begun_on(m, first);
            }
            m.here.table = Some(table);
        }
        Err(why) => {
            m.here.outcomes.insert(FORM.to_owned(), why);
        }
    }
    vec![Effect::KeepDrafts]
}

/// The readings are added, all as one change, with or without the odd ones.
pub fn add(m: &mut Model, batch: &Id, odd: bool) -> Vec<Effect> {
    // It stays, so that what was not kept can be tried again.
    let Some(table) = m.here.table.clone() else { return vec![] };
    let mut new = new_here(m, batch, &table);
    new.retain(|one| odd || !one.doubtful);
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
