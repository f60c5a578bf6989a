//! What stands at Watch.

mod ahead;
mod course;
mod doubts;
mod finish;
mod forecast;
mod log;
mod own_ends;
mod reading;
mod reasons;
mod started;

pub use course::CourseWords;
pub use log::LogWords;
pub use reading::ReadingWords;

use super::texts::texts;
use super::{Judged, Writer};
use crate::advice::Advice;
use crate::advice::own_ends::Ended;
use crate::advice::standing::{Outlook, Standing};
use crate::advice::watch::beer_temperature::Notice;
use crate::advice::watch::bubbles;
use crate::advice::watch::ladder::Remedy;
use crate::exchange::reminders;
use crate::quantity::{Estimate, Moment, SpecificGravity};

texts! {
    /// What stands at Watch.
    WatchWords, WATCH {
        add: "Add a reading",
        read_satellite: "Read the satellite",
        steps: "Step by step",
        done: "Done.",
        log_heading: "Log",
        no_bubbles: "No bubbles?",
        what_is_seen: "What do you see?",
        put_in_calendar: "Put the dates in the calendar",
        no_forecast: forecast::NONE,
        take_own_ends: "Take that as the expected end",
        leave_own_ends: "Leave own batches out",
        own_ends_taken: "Taken: the expected end is by your own batches as well",
        own_ends_left_out: "Own batches are left out",
    } says {
        finish: fn(Writer, &Standing, Moment) -> Judged = finish::finish,
        by_satellite: fn(Writer, &Standing, Moment) -> Option<String> = finish::by_satellite,
        ahead: fn(Writer, &Standing, Moment) -> Option<[String; 4]> = finish::ahead,
        warmth: fn(Writer, &Notice) -> Judged = started::warmth,
        step: fn(Writer, Remedy, Moment) -> String = started::step,
        signs: [&'static str; 5] = started::SIGNS,
        bubbles: fn(Writer, &Advice<bubbles::Reason, bubbles::Next>) -> Judged = started::bubbles,
        forecast: fn(Writer, &Outlook, Moment) -> String = forecast::forecast,
        own_ends: fn(Writer, &[Ended], Estimate<SpecificGravity>, bool) -> String = own_ends::own_ends,
        reminder: fn(&str, reminders::What) -> (String, &'static str) = ahead::reminder,
        reading: ReadingWords = reading::READING,
        log: LogWords = log::LOG,
        course: CourseWords = course::COURSE,
    }
}
