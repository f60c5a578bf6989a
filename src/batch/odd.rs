//! What is odd about a record before it is saved, by what the log says beside it.

use super::id::Id;
use super::journal::Journal;
use super::record::{Reading, Vessel};
use super::summary::Summary;
use crate::advice::odd::{self, Beside, Look, Odd};
use crate::advice::standing::Standing;
use crate::quantity::{Litres, Moment};

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
        let pitched = self.pitch.as_ref().map(|(_, pitch)| pitch.at);
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
