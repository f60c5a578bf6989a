//! The starting gravity of a batch: what it goes by, and which reading shows it.

use super::id::Id;
use super::journal::Journal;
use super::line::{ReadingLine, corrected};
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, Reading, Vessel};
use crate::advice::pitch::start_gravity::{self, GoesBy, Known, OriginalFrom};
use crate::advice::practice::STILL_START;
use crate::quantity::{Estimate, Moment, SpecificGravity};
use crate::science::kit_gravity::KitGravity;

/// The starting gravity, with all that it could go by.
pub(super) struct Start {
    /// The reading of the unfermented wort.
    reading: Option<Id>,
    /// By that reading.
    pub(super) by_sample: Option<Estimate<SpecificGravity>>,
    /// By what was weighed in.
    pub(super) by_ingredients: Option<KitGravity>,
    /// The one it goes by, and what that is.
    pub(super) chosen: Option<(Estimate<SpecificGravity>, OriginalFrom)>,
    /// Until then nothing has fermented.
    pub(super) yeast_in: Moment,
}

impl Start {
    /// By the readings, the earliest first, and the record of pitching day.
    pub(super) fn of(
        journal: &Journal,
        heading: &BatchHeading,
        record: Option<&PitchRecord>,
        readings: &[(Id, Reading)],
    ) -> Self {
        // The last sample of the unfermented wort: an earlier one may have been unmixed, or too hot to
        // mean anything. Without one, the first soon after the yeast went in.
        let of_wort = |(_, reading): &&(Id, Reading)| reading.vessel == Vessel::Main;
        let before = |at: Moment| move |(_, reading): &&(Id, Reading)| reading.at <= at;
        let yeast_in = record.map_or(heading.started.after(STILL_START), |record| record.at);
        let true_start = |(id, reading): &(Id, Reading)| {
            Some((id.clone(), corrected(journal, reading, None, yeast_in)?.ok()?.gravity))
        };
        let start = readings
            .iter()
            .filter(of_wort)
            .rev()
            .filter(before(yeast_in))
            .find_map(true_start)
            .or_else(|| {
                let soon = before(yeast_in.after(STILL_START));
                readings.iter().filter(of_wort).filter(soon).find_map(true_start)
            });
        let (reading, by_sample) = start.unzip();
        let by_ingredients = record.and_then(|record| record.by_ingredients(heading.volume));
        let known = Known {
            sample: by_sample,
            ingredients: by_ingredients.as_ref().map(|kit| kit.gravity),
            stated: heading.expected_start,
        };
        let goes_by = record.map_or(GoesBy::Sample, |record| record.goes_by);
        let chosen = start_gravity::start(known, goes_by);
        Self { reading, by_sample, by_ingredients, chosen, yeast_in }
    }

    /// A reading made true: as wort when it is the start itself, or nothing is known of that; else as
    /// beer.
    pub(super) fn line(&self, journal: &Journal, (id, reading): (&Id, &Reading)) -> ReadingLine {
        let is_start = self.reading.as_ref() == Some(id);
        let original = self.chosen.filter(|_| !is_start).map(|(original, _)| original.value());
        ReadingLine::of(journal, (id, reading), original, self.yeast_in)
    }
}
