//! What lies ahead, for the phone's own calendar.

use crate::app::model::Model;
use crate::app::part::{HandOut, Part, Tag, What, group};
use crate::batch::Summary;
use crate::exchange::calendar::{Event, calendar};
use crate::exchange::reminders::{Reminder, reminders, uid};

/// How long a thing is shown in the calendar, minutes.
const SHOWN: u32 = 15;
/// A file's name takes no more of a batch's than this.
const LONGEST: usize = 40;

/// A file's name from a batch's.
fn file_name(batch: &str) -> String {
    let plain = batch.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' });
    let name: String = plain.take(LONGEST).collect();
    format!("{}.ics", name.trim_matches('-').to_ascii_lowercase())
}

/// The button, when anything lies ahead; what is next stands on the plate.
pub fn parts(m: &Model, s: &Summary) -> Option<Part> {
    let words = &m.words.watch;
    let ahead = reminders(s, m.now);
    if ahead.is_empty() {
        return None;
    }
    let event = |reminder: &Reminder| {
        let (summary, how) = (words.reminder)(&s.heading.name, reminder.what);
        Event {
            uid: uid(s.id.as_str(), reminder.what),
            at: reminder.at,
            minutes: SHOWN,
            summary,
            description: how.to_owned(),
        }
    };
    let events: Vec<Event> = ahead.iter().map(event).collect();
    let file = HandOut {
        label: words.put_in_calendar.to_owned(),
        file: file_name(&s.heading.name),
        media: "text/calendar",
        text: calendar(&events, m.now),
        act: None,
    };
    let file = Part::new("ahead/file", What::HandOut(file));
    Some(group("ahead", Tag::Section, "remind", vec![file]))
}
