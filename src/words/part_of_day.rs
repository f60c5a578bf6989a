//! When a thing is to be done, as one says it aloud: nobody reads a hydrometer at 03:55.

use super::write::{self, Writer};
use crate::quantity::Moment;

impl Writer<'_> {
    /// `the morning of Wed 25 Nov`, by the clock that the phone will show then.
    pub fn part_of_day(self, at: Moment) -> String {
        let shown = self.zone.shown(at);
        format!("the {} of {}", part(shown), write::day(shown))
    }
}

/// The part of its day, by the clock that it is shown by.
pub fn part(shown: Moment) -> &'static str {
    match shown.parts().3 {
        0..6 => "early hours",
        6..12 => "morning",
        12..17 => "afternoon",
        _ => "evening",
    }
}
