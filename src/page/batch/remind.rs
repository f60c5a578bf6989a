//! What lies ahead, for the phone's own calendar.

use super::Live;
use crate::exchange::calendar::{Event, calendar};
use crate::exchange::reminders::{Reminder, What, reminders, uid};
use crate::page::parts::live::live as part;
use crate::page::session::use_session;
use crate::page::write;
use leptos::prelude::*;

/// How long a thing is shown in the calendar, minutes.
const SHOWN: u32 = 15;

fn words(what: What) -> (&'static str, &'static str) {
    match what {
        What::Read => (
            "read the gravity",
            "Knock the gas out, note the sample's temperature, and read at eye level.",
        ),
        What::ReadSatellite => {
            ("read the satellite again", "It has ended when two readings a day apart agree.")
        }
        What::LookForSigns => (
            "look for signs of fermentation",
            "Foam, a dried ring above the beer, drops under the lid.",
        ),
        What::Ready => (
            "it may be ready by now",
            "By the forecast. Only readings tell: read it, and once more two days later.",
        ),
        What::Bottle => (
            "it may be bottled",
            "Any day from now on. Read it once more before the sugar goes in.",
        ),
        What::TryBottle => {
            ("try the first bottle", "Chill it for two days, and open it over the sink.")
        }
    }
}

/// A file's name from a batch's.
fn file_name(batch: &str) -> String {
    let plain = batch.chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' });
    let name: String = plain.take(40).collect();
    format!("{}.ics", name.trim_matches('-').to_ascii_lowercase())
}

/// The button, when anything lies ahead. `boot.js` hands the text out: shared where the phone can share
/// a file, else saved.
#[component]
pub fn Reminders(live: Live) -> impl IntoView {
    let session = use_session();
    let button = move || {
        let now = session.now.get();
        live.with(|s| {
            let summary = s.as_ref()?;
            let ahead = reminders(summary, now);
            let first = ahead.first()?;
            let said = format!("Next: {}, {}.", words(first.what).0, write::moment(first.at));
            let event = |reminder: &Reminder| {
                let (title, more) = words(reminder.what);
                Event {
                    uid: uid(summary.id.as_str(), reminder.what),
                    at: reminder.at,
                    minutes: SHOWN,
                    summary: format!("{}: {title}", summary.heading.name),
                    description: more.to_owned(),
                }
            };
            let events: Vec<Event> = ahead.iter().map(event).collect();
            let text = calendar(&events, now);
            let view = view! {
                <section class="remind">
                    <p>{said}</p>
                    <button
                        type="button"
                        data-hand-out=file_name(&summary.heading.name)
                        data-type="text/calendar"
                        data-text=text
                    >
                        "Put it in the calendar"
                    </button>
                </section>
            };
            Some(view.into_any())
        })
    };
    part(button)
}
