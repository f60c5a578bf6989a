//! The course of a batch, as the judgement of the fermentation takes it, from its summary.

use super::record::Vessel;
use super::summary::Summary;
use crate::advice::watch::{Course, Look};

impl Summary {
    /// Every reading that has a gravity, corrected, with what else the judgement stands on.
    #[must_use]
    pub fn course(&self) -> Course {
        let looks = |vessel| {
            let of_vessel = self.lines.iter().filter(|line| line.reading.vessel == vessel);
            let look = of_vessel.filter_map(|line| {
                let beer = line.reading.beer;
                Some(Look { at: line.reading.at, gravity: line.gravity()?, beer })
            });
            look.collect()
        };
        Course {
            main: looks(Vessel::Main),
            satellite: looks(Vessel::Satellite),
            original: self.original,
            pitched: self.pitch.as_ref().map(|(_, record)| record.at),
            family: self.heading.family,
            stated_end: self.heading.expected_end,
        }
    }
}
