//! The log: every reading as it was read and as it was corrected.

use crate::batch::{Reading, ReadingLine, Vessel};
use crate::quantity::{Measured, Moment, write_gravity, write_number};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What a row of the log says.
    LogWords, LOG {
        change: "Change",
        delete: "Delete",
        deleted: "Reading deleted",
    } says {
        gravity: fn(Writer, &ReadingLine) -> (String, String) = gravity,
        as_read: fn(&Reading) -> String = as_read,
        details: fn(Writer, &ReadingLine) -> String = details,
        day: fn(Moment, Moment) -> String = day,
        beside: fn(Writer, &ReadingLine) -> String = beside,
        earlier: fn(usize) -> String = earlier,
        change_it: fn(&Reading) -> String = change_it,
        delete_it: fn(&Reading) -> String = delete_it,
    }
}

/// The corrected gravity and its ±, or why there is none.
fn gravity(w: Writer, line: &ReadingLine) -> (String, String) {
    match &line.corrected {
        None => ("–".to_owned(), String::new()),
        Some(Err(why)) => ("–".to_owned(), (w.words.fields.science_error)(*why)),
        Some(Ok(found)) => {
            (w.gravity(found.gravity.value()), w.gravity_doubt(found.gravity.sigma()))
        }
    }
}

/// What the hydrometer read, letter by letter where that says more.
fn as_read(reading: &Reading) -> String {
    let Some(gravity) = reading.as_read else { return "no gravity".to_owned() };
    let read = write_gravity(gravity);
    if reading.typed == read || reading.typed.is_empty() {
        format!("read {read}")
    } else {
        format!("read {read} (typed {})", reading.typed)
    }
}

/// The day of a reading, with its year where that is another than now's.
fn day(at: Moment, now: Moment) -> String {
    if at.parts().0 == now.parts().0 { write::day(at) } else { write::full_day(at) }
}

/// What stands between the day and the gravity: what sets it apart from the others, else the beer's temperature,
/// or its sample's.
fn beside(w: Writer, line: &ReadingLine) -> String {
    let reading = &line.reading;
    match (reading.doubtful, reading.vessel) {
        (false, Vessel::Main) => {
            reading.beer.or(reading.sample).map(|t| w.temperature(t)).unwrap_or_default()
        }
        (true, Vessel::Main) => "doubtful".to_owned(),
        (false, Vessel::Satellite) => "satellite".to_owned(),
        (true, Vessel::Satellite) => "satellite, doubtful".to_owned(),
    }
}

fn earlier(count: usize) -> String {
    format!("{count} earlier")
}

/// What an open row says beside its gravity.
fn details(w: Writer, line: &ReadingLine) -> String {
    let reading = &line.reading;
    let mut parts = vec![write::moment(reading.at)];
    if reading.vessel == Vessel::Satellite {
        parts.push("satellite".to_owned());
    }
    if reading.as_read.is_some() {
        parts.push(match reading.sample {
            Some(t) => format!("sample {}", w.temperature(t)),
            None => "sample temperature not noted".to_owned(),
        });
    }
    if !reading.condition.is_still() {
        parts.push((w.words.names.condition)(reading.condition).to_ascii_lowercase());
    }
    parts.extend(
        reading
            .refractometer
            .map(|shown| format!("refractometer {}\u{A0}°Bx", write_number(shown.brix.value(), 1))),
    );
    parts.extend(reading.added.map(|added| (w.words.names.added)(added).to_owned()));
    if reading.doubtful {
        parts.push("kept as given, though it is doubtful: it proves nothing".to_owned());
    }
    if line.instrument_gone {
        parts.push("its hydrometer is gone; corrected as by the usual one".to_owned());
    }
    parts.extend(reading.beer.map(|t| format!("beer {}", w.temperature(t))));
    parts.extend(reading.room.map(|t| format!("room {}", w.temperature(t))));
    parts.join(" · ")
}

fn change_it(reading: &Reading) -> String {
    format!("Change the reading of {}", write::moment(reading.at))
}

fn delete_it(reading: &Reading) -> String {
    format!("Delete the reading of {}", write::moment(reading.at))
}
