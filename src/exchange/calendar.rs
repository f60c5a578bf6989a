//! A calendar as text: RFC 5545, written by hand.
//!
//! Times are in UTC, so that no time zone has to be described and a change of the clock moves nothing.
//! Identities are the caller's: the same event written again with a later stamp takes the place of the
//! earlier one.

use crate::quantity::{Hours, Measured, Moment};

/// One event with an alarm at its beginning.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// The same for the same thing, for ever; plain letters, digits, `-` and `@`.
    pub uid: String,
    /// When.
    pub at: Moment,
    /// For how long it is shown.
    pub minutes: u32,
    /// In one line.
    pub summary: String,
    /// More of it.
    pub description: String,
}

/// Longest line in octets, without its end.
const LINE: usize = 75;

/// The text of a calendar, stamped `now`. The stamp also is the revision: a later text wins.
#[must_use]
pub fn calendar(events: &[Event], now: Moment) -> String {
    let mut out = String::new();
    let mut line = |text: &str| fold(&mut out, text);
    line("BEGIN:VCALENDAR");
    line("VERSION:2.0");
    line("PRODID:-//Fermentside//Reminders//EN");
    line("CALSCALE:GREGORIAN");
    line("METHOD:PUBLISH");
    let stamp = now.utc_text();
    // Minutes fit the 31 bits that a revision may take until the year 6053.
    let revision = now.minutes_since_epoch().clamp(0, i64::from(i32::MAX));
    for event in events {
        let end = event.at.after(Hours::nearest(f64::from(event.minutes) / 60.0));
        line("BEGIN:VEVENT");
        line(&format!("UID:{}", event.uid));
        line(&format!("DTSTAMP:{stamp}"));
        line(&format!("SEQUENCE:{revision}"));
        line(&format!("DTSTART:{}", event.at.utc_text()));
        line(&format!("DTEND:{}", end.utc_text()));
        line(&format!("SUMMARY:{}", escaped(&event.summary)));
        line(&format!("DESCRIPTION:{}", escaped(&event.description)));
        // It takes up no time in which one could not do something else.
        line("TRANSP:TRANSPARENT");
        line("BEGIN:VALARM");
        line("ACTION:DISPLAY");
        line(&format!("DESCRIPTION:{}", escaped(&event.summary)));
        line("TRIGGER:PT0S");
        line("END:VALARM");
        line("END:VEVENT");
    }
    line("END:VCALENDAR");
    out
}

/// A text value: what has a meaning in a line is marked, and a line's end written out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            // No other control character may stand in a value.
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// A line with its end; a long one goes on in the next after a blank, cut between letters.
fn fold(out: &mut String, text: &str) {
    let mut length = 0;
    for c in text.chars() {
        if length + c.len_utf8() > LINE {
            out.push_str("\r\n ");
            length = 1;
        }
        out.push(c);
        length += c.len_utf8();
    }
    out.push_str("\r\n");
}
