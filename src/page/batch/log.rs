//! The log: every reading as it was read and as it was corrected.

use super::{Live, remove};
use crate::batch::{Entry, Id, Kind, ReadingLine, Vessel};
use crate::page::parts::live::{Outcome, Row, or_nothing, rows, say};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::write::Writer;
use crate::page::{words, write};
use crate::quantity::{Measured, write_gravity, write_number};
use crate::science::hydrometer::Condition;
use leptos::prelude::*;
use std::sync::Arc;

/// What a line says beside its gravity.
fn details(w: Writer, line: &ReadingLine) -> String {
    let reading = &line.reading;
    let mut parts = Vec::new();
    if reading.vessel == Vessel::Satellite {
        parts.push("satellite".to_owned());
    }
    if reading.as_read.is_some() {
        parts.push(match reading.sample {
            Some(t) => format!("sample {}", w.temperature(t)),
            None => "sample temperature not noted".to_owned(),
        });
    }
    if reading.condition != Condition::Still {
        parts.push(words::condition(reading.condition).to_ascii_lowercase());
    }
    parts.extend(
        reading
            .refractometer
            .map(|shown| format!("refractometer {}\u{A0}°Bx", write_number(shown.brix.value(), 1))),
    );
    parts.extend(reading.added.map(|added| words::added(added).to_owned()));
    if line.instrument_gone {
        parts.push("its hydrometer is gone; corrected as by the usual one".to_owned());
    }
    parts.extend(reading.beer.map(|t| format!("beer {}", w.temperature(t))));
    parts.extend(reading.room.map(|t| format!("room {}", w.temperature(t))));
    parts.join(" · ")
}

fn corrected_words(w: Writer, line: &ReadingLine) -> (String, String) {
    match &line.corrected {
        None => ("–".to_owned(), String::new()),
        Some(Err(why)) => ("–".to_owned(), words::science_error(*why)),
        Some(Ok(found)) => {
            (w.gravity(found.gravity.value()), w.gravity_doubt(found.gravity.sigma()))
        }
    }
}

/// The readings, the latest first.
#[component]
pub fn Log(live: Live, on_edit: Callback<Id>) -> impl IntoView {
    let row = move |line: &ReadingLine| {
        // A line is drawn anew when anything in it has changed.
        let gravity = line.gravity().map(|g| g.value().value().to_bits());
        let text = Entry::Reading(line.reading.clone()).to_text().unwrap_or_default();
        let line = line.clone();
        Row::new(format!("{} {gravity:?} {text}", line.id.as_str()), move || {
            view! { <LogLine line on_edit /> }.into_any()
        })
    };
    let latest_first = move || {
        live.with(|s| {
            s.as_ref().map(|s| s.lines.iter().rev().map(row).collect()).unwrap_or_default()
        })
    };
    view! {
        <ol class="log">
            {rows(latest_first)}
        </ol>
    }
}

#[component]
fn LogLine(line: ReadingLine, on_edit: Callback<Id>) -> impl IntoView {
    let session = use_session();
    let writer = move || session.writer();
    let line = Arc::new(line);
    let failed = RwSignal::new(None::<String>);
    let as_read = match (&line.reading.as_read, &line.reading.typed) {
        (Some(gravity), typed) => {
            let read = write_gravity(*gravity);
            if *typed == read || typed.is_empty() {
                format!("read {read}")
            } else {
                format!("read {read} (typed {typed})")
            }
        }
        (None, _) => "no gravity".to_owned(),
    };
    let when = write::moment(line.reading.at);
    let note = line.reading.note.clone();
    let found = Arc::clone(&line);
    let gravity = move || corrected_words(session.writer(), &found).0;
    let found = Arc::clone(&line);
    let doubt = move || corrected_words(session.writer(), &found).1;
    let found = Arc::clone(&line);
    let more = move || details(session.writer(), &found);
    let worked = line.corrected.as_ref().and_then(|found| found.as_ref().ok());
    let worked = worked.map(|found| found.worked.clone()).map(|worked| {
        let worked = move || Some(worked.clone());
        view! { <HowWorked worked writer doubt_in=(4, 1.0, "SG") /> }.into_any()
    });
    let id = line.id.clone();
    let edit = move |_| on_edit.run(id.clone());
    let delete = move |_| {
        failed.set(remove(session, Kind::Reading, &line.id, "Reading deleted"));
    };
    let name = format!("the reading of {when}");
    let (edit_name, delete_name) = (format!("Change {name}"), format!("Delete {name}"));
    view! {
        <li class="log-line">
            <p class="log-when">{when}</p>
            <p class="log-gravity">
                <strong>{say(gravity)}</strong>
                " "
                <span class="log-doubt">{say(doubt)}</span>
                <span class="log-read">{as_read}</span>
            </p>
            <p class="log-details">
                {say(more)}
            </p>
            <p class="log-note">{note}</p>
            <Outcome said=failed />
            {or_nothing(worked)}
            <p class="log-actions">
                <button type="button" class="quiet" aria-label=edit_name on:click=edit>
                    "Change"
                </button>
                <button type="button" class="quiet" aria-label=delete_name on:click=delete>
                    "Delete"
                </button>
            </p>
        </li>
    }
}
