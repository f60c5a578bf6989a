//! What is odd about a record before it is saved, by what the log says beside it.

use super::change::{Change, Edit};
use super::entry::{Entry, EntryKey, Kind};
use super::id::Id;
use super::journal::Journal;
use super::record::{Reading, Vessel};
use super::summary::Summary;
use crate::advice::odd::{self, Beside, Look, Odd};
use crate::advice::standing::{Stage, Standing};
use crate::order::in_order;
use crate::quantity::{Litres, Measured, Moment};
use crate::science::sucrose;

/// Of so many readings one tells little, and each is held against all of them.
const MANY: usize = 60;

impl Journal {
    /// What is odd about readings that are about to be added to a batch, each held against the others and what
    /// is there: the place of each odd one among them, and why. Nothing where there is no such batch.
    #[must_use]
    pub fn odd_among(
        &self,
        batch: &Id,
        readings: &[Reading],
        now: Moment,
    ) -> Vec<(usize, Vec<Odd>)> {
        let mut with = self.clone();
        // No identity of one that was saved looks like these.
        let id = |at: usize| Id::random((!(at as u64)).to_be_bytes());
        let put = |(at, one): (usize, &Reading)| Edit::Put(id(at), Entry::Reading(one.clone()));
        with.take_as_it_is(Change::all(readings.iter().enumerate().map(put)));
        let mut asked: Vec<usize> = (0..readings.len()).collect();
        let mut found: Vec<(usize, Vec<Odd>)> = vec![];
        while let Some(all) = Summary::of(&with, batch, now) {
            let few = all.lines.len() <= MANY;
            let look = |at: &usize| {
                let one = readings.get(*at)?;
                let id = id(*at);
                let odd = all.odd_reading(&with, few.then_some(&id), one, now);
                (!odd.is_empty()).then_some((*at, odd))
            };
            let mut odd: Vec<_> = asked.iter().filter_map(look).collect();
            // What is odd by itself goes first, then what lies furthest from the course, one by one: for each
            // makes others look odd that are not.
            let of_course = |(_, odd): &(usize, Vec<Odd>)| {
                odd.iter().all(|odd| matches!(odd, Odd::FarFromCourse(_)))
            };
            let mut gone: Vec<_> = odd.extract_if(.., |one| !of_course(one)).collect();
            if gone.is_empty() {
                let far = |(at, odd): &(usize, Vec<Odd>)| off_course(readings.get(*at), odd);
                let furthest =
                    (0..odd.len()).max_by(|a, b| far(&odd[*a]).total_cmp(&far(&odd[*b])));
                gone.extend(furthest.map(|at| odd.remove(at)));
                asked = odd.iter().map(|(at, _)| *at).collect();
            } else {
                asked.retain(|at| gone.iter().all(|(gone, _)| gone != at));
            }
            if gone.is_empty() {
                break;
            }
            let out =
                |(at, _): &(usize, _)| Edit::Remove(EntryKey { kind: Kind::Reading, id: id(*at) });
            with.take_as_it_is(Change::all(gone.iter().map(out)));
            found.extend(gone);
        }
        in_order(found, |a, b| a.0.cmp(&b.0))
    }
}

/// How far a reading lies outside of what was foretold for it.
fn off_course(reading: Option<&Reading>, odd: &[Odd]) -> f64 {
    let read = reading.and_then(|one| one.as_read).map(|read| sucrose::as_specific(read).value());
    let off = |odd: &Odd| match (odd, read) {
        (Odd::FarFromCourse(span), Some(read)) => {
            (read - span.to.value()).max(span.from.value() - read)
        }
        _ => 0.0,
    };
    odd.iter().map(off).fold(0.0, f64::max)
}

impl Summary {
    /// What is odd about a reading that is about to be saved, in place of the one it changes.
    #[must_use]
    pub fn odd_reading(
        &self,
        journal: &Journal,
        changes: Option<&Id>,
        reading: &Reading,
        now: Moment,
    ) -> Vec<Odd> {
        let new = Id::random([0; 8]);
        let line = self.line_of(journal, changes.unwrap_or(&new), reading);
        // A changed one does not bear itself out.
        let without = changes.and_then(|id| {
            let before = self.lines.iter().find(|line| line.id == *id)?;
            let mut record = self.record();
            record.main.retain(|seen| seen.at != before.reading.at);
            Some(Standing::of(&record, now))
        });
        // Nobody may have noted when the yeast went in, and yet it ferments.
        let noted = self.pitch.as_ref().map(|(_, pitch)| pitch.at);
        let ferments = self.standing.stage != Stage::Pitch;
        let pitched = noted.or(ferments.then_some(self.heading.started));
        let beside = Beside {
            begun: self.heading.started,
            pitched,
            original: self.original.map(|original| original.value()),
            standing: without.as_ref().unwrap_or(&self.standing),
            now,
        };
        let look = Look {
            at: reading.at,
            as_read: reading.as_read,
            typed: &reading.typed,
            gravity: line.gravity(),
            main: reading.vessel == Vessel::Main,
        };
        odd::reading(look, beside)
    }

    /// The most that the batch was noted with: in its heading, or on pitching day.
    #[must_use]
    pub fn noted_volume(&self) -> Litres {
        let pitched = self.pitch.as_ref().and_then(|(_, pitch)| pitch.volume);
        let noted = self.heading.volume;
        pitched.filter(|pitched| *pitched > noted).unwrap_or(noted)
    }
}
