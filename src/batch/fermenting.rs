//! What a summary says of the beer with its yeast in: how warm it stands, whether it may go on, and the
//! question of the quiet airlock.

use super::line::ReadingLine;
use super::record::Vessel;
use super::summary::Summary;
use crate::advice::pitch::already_in::Pitched;
use crate::advice::thermometer::Thermometer;
use crate::advice::watch::bubbles::{Quiet, Signs};
use crate::quantity::Moment;

impl Summary {
    /// The beer in its vessel at `now`, by the last temperature noted of it, else by that of the wort at
    /// pitching; `None` before the yeast is in, or without a temperature.
    #[must_use]
    pub fn beer_with_yeast(&self, now: Moment) -> Option<Pitched> {
        let (_, record) = self.pitch.as_ref()?;
        let noted = |line: &ReadingLine| {
            let reading = &line.reading;
            reading.beer.filter(|_| reading.vessel == Vessel::Main && reading.at >= record.at)
        };
        let t = self.lines.iter().rev().find_map(noted).or(record.wort)?;
        Some(Pitched {
            // The log does not say what it was read with; a strip is taken, on moving beer.
            beer: Thermometer::Strip.reads(t, true),
            family: self.heading.family,
            packet: self.heading.packet,
            since: now.since(record.at),
        })
    }

    /// The yeast may go on for weeks, or was fed later: the bottles' ceilings are lower, and an expected
    /// end proves nothing.
    #[must_use]
    pub fn may_go_on(&self) -> bool {
        self.heading.family.may_go_on() || self.added.is_some()
    }

    /// The question of the silent airlock as it stands `now`; `None` before the yeast went in.
    #[must_use]
    pub fn quiet(&self, now: Moment, seen: Signs, old_yeast: bool) -> Option<Quiet> {
        let (_, pitch) = self.pitch.as_ref()?;
        let mut since = self
            .lines
            .iter()
            .rev()
            .filter(|line| line.reading.vessel == Vessel::Main && line.reading.at > pitch.at);
        let beer = since.clone().find_map(|line| line.reading.beer);
        let read = since.find_map(|line| Some((line.reading.at, line.gravity()?)));
        Some(Quiet {
            pitched: pitch.at,
            now,
            family: self.heading.family,
            beer,
            old_yeast,
            seen,
            original: self.original,
            read,
        })
    }
}
