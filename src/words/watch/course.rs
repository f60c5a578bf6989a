//! The course: drawn, walked through and as a table.

use crate::batch::{ReadingLine, Summary, Vessel};
use crate::chart::DayTick;
use crate::quantity::{Moment, write_gravity};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What the course says.
    CourseWords, COURSE {
        title: "The course",
        walk: "Walk through the readings",
        touch_or_step: "Touch the picture, or step through the readings.",
        earlier: "Earlier reading",
        later: "Later reading",
        as_a_table: "As a table",
        table: "Table of readings",
        one_end: "expected end",
    } says {
        description: fn(Writer, &Summary, usize, Moment) -> String = description,
        two_ends: [&'static str; 2] = ["if it rests here", "if it goes on"],
        on_the_course: [&'static str; 4] = ["now", "read again", "satellite", "for yeast"],
        day: fn(DayTick, bool) -> String = day,
        reading: fn(Writer, &ReadingLine) -> String = reading,
        head: [&'static str; 6] = ["When", "Gravity", "±", "As read", "Of", "Beer"],
        row: fn(Writer, &ReadingLine) -> [String; 6] = row,
    }
}

/// All that can be read from the drawing of so many readings.
fn description(w: Writer, summary: &Summary, readings: usize, now: Moment) -> String {
    let what = if readings == 1 { "reading" } else { "readings" };
    let mut text = format!("{readings} {what}.");
    if let (Some(first), Some(last)) = (summary.original, summary.present) {
        text = format!("{text} From {} to {}.", w.gravity(first.value()), w.gravity(last.value()));
    }
    if let Some(outlook) = &summary.standing.outlook {
        text = format!("{text} {}", super::forecast::forecast(w, outlook, now));
    }
    text
}

/// A day of the axis, with its month where that begins.
fn day(tick: DayTick, begins: bool) -> String {
    let (_, month, day) = tick.date;
    if begins { write::day_month(day, month) } else { day.to_string() }
}

/// One reading, as it is walked to.
fn reading(w: Writer, line: &ReadingLine) -> String {
    let gravity = line.gravity().map(|g| (w.gravity(g.value()), w.gravity_doubt(g.sigma())));
    let (gravity, doubt) = gravity.unwrap_or_default();
    let mut text = format!("{}: {gravity} {doubt}", write::moment(line.reading.at));
    if line.reading.vessel == Vessel::Satellite {
        text.push_str(" · satellite");
    }
    if let Some(beer) = line.reading.beer {
        text = format!("{text} · beer {}", w.temperature(beer));
    }
    text
}

/// A reading as a row of the table.
fn row(w: Writer, line: &ReadingLine) -> [String; 6] {
    let gravity = line.gravity();
    let of = match line.reading.vessel {
        Vessel::Main => "batch",
        Vessel::Satellite => "satellite",
    };
    [
        Some(write::moment(line.reading.at)),
        gravity.map(|g| w.gravity(g.value())),
        gravity.map(|g| w.gravity_doubt(g.sigma())),
        line.reading.as_read.map(write_gravity),
        Some(of.to_owned()),
        line.reading.beer.map(|t| w.temperature(t)),
    ]
    .map(|cell| cell.unwrap_or_else(|| "–".to_owned()))
}
