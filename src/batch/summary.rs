//! Everything that a screen shows about one batch, worked out once.

use super::id::Id;
use super::journal::Journal;
use super::line::{ReadingLine, added, corrected, looks, refracted};
use super::pitch_record::{GoesBy, PitchRecord};
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading, Vessel};
use super::watching::{shown, too_warm_or_cold};
use crate::advice::practice::STILL_START;
use crate::advice::watch::beer_temperature::Notice;
use crate::advice::watch::forecast::{Forecast, Refusal};
use crate::advice::watch::ladder::{Rung, ladder};
use crate::advice::watch::with_forecast::judge_with_forecast;
use crate::advice::watch::{self, Course, Finish, State};
use crate::quantity::{Estimate, Moment, SpecificGravity};
use crate::science::kit_gravity::KitGravity;
use crate::science::strength::{Strength, strength};

/// A gravity that kit or recipe states is trusted to this (common practice, no source).
const STATED: f64 = 0.003;

/// What a starting gravity goes by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OriginalFrom {
    /// The sample's reading.
    Sample,
    /// What was weighed in.
    Ingredients,
    /// What kit or recipe states.
    Stated,
}

/// A batch, worked out from its log and the instruments it was read with. Nothing here depends on when
/// one looks: that is [`Today`](super::today::Today)'s.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// Its identity.
    pub id: Id,
    /// Its heading.
    pub heading: BatchHeading,
    /// When the yeast went in.
    pub pitch: Option<(Id, PitchRecord)>,
    /// Every reading, the earliest first.
    pub lines: Vec<ReadingLine>,
    /// Starting gravity, by what [`Summary::original_from`] says.
    pub original: Option<Estimate<SpecificGravity>>,
    /// What the starting gravity goes by; `None` when there is none.
    pub original_from: Option<OriginalFrom>,
    /// The start was read or worked out from what was weighed, not only stated.
    pub original_was_read: bool,
    /// Starting gravity by the sample: the first main reading of the unfermented wort.
    pub by_sample: Option<Estimate<SpecificGravity>>,
    /// Starting gravity by the ingredients noted at pitching.
    pub by_ingredients: Option<KitGravity>,
    /// The latest gravity of the main beer.
    pub present: Option<Estimate<SpecificGravity>>,
    /// Strength and attenuation so far.
    pub strength: Option<Strength>,
    /// What the judgement of the fermentation stands on.
    pub course: Course,
    /// How far it is.
    pub finish: Finish,
    /// The forecast, or why there is none; nothing once it is bottled.
    pub forecast: Option<Result<Forecast, Refusal>>,
    /// The steps to go through when it is slow, stuck or has not begun.
    pub ladder: Vec<Rung>,
    /// Too warm or too cold, by the last temperature noted; never once it is finished.
    pub warmth: Option<Notice>,
    /// When something that ferments was last added after the yeast.
    pub added: Option<Moment>,
    /// The bottling.
    pub bottling: Option<(Id, BottlingRecord)>,
    /// Opened bottles, the latest first.
    pub openings: Vec<(Id, OpeningRecord)>,
}

impl Summary {
    /// Works out a batch; `None` when there is no such batch.
    #[must_use]
    pub fn of(journal: &Journal, id: &Id) -> Option<Self> {
        let log = journal.log(id)?;
        let heading = log.heading()?.clone();
        let pitch = log.pitch().cloned();
        let pitched = pitch.as_ref().map(|(_, record)| record.at);

        let readings = log.readings();
        // The last sample of the unfermented wort: an earlier one may have been unmixed, or too hot to
        // mean anything. Without one, the first soon after the yeast went in.
        let of_wort = |(_, reading): &&(Id, Reading)| reading.vessel == Vessel::Main;
        let before = |at: Moment| move |(_, reading): &&(Id, Reading)| reading.at <= at;
        let yeast_in = pitched.unwrap_or(heading.started.after(STILL_START));
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
        let start_gravity = start.as_ref().map(|(_, gravity)| *gravity);
        let stated = heading.expected_start.map(|sg| Estimate::new(sg, STATED));
        let record = pitch.as_ref().map(|(_, record)| record);
        let by_ingredients = record.and_then(|record| record.by_ingredients(heading.volume));
        let weighed = by_ingredients.as_ref().map(|kit| kit.gravity);
        let from = |gravity: Option<_>, what| gravity.map(|gravity| (gravity, what));
        let sample = from(start_gravity, OriginalFrom::Sample);
        let ingredients = from(weighed, OriginalFrom::Ingredients);
        let chosen = match record.map_or(GoesBy::Sample, |record| record.goes_by) {
            GoesBy::Sample => sample.or(ingredients),
            GoesBy::Ingredients => ingredients.or(sample),
        };
        let (original, original_from) = chosen.or(from(stated, OriginalFrom::Stated)).unzip();

        let lines: Vec<_> = readings
            .iter()
            .map(|(id, reading)| {
                let is_start = start.as_ref().is_some_and(|(start, _)| start == id);
                let fermented = original.filter(|_| !is_start).map(Estimate::value);
                ReadingLine::of(journal, (id, reading), fermented, yeast_in)
            })
            .collect();
        let main = looks(&lines, Vessel::Main);
        let added = added(&lines, yeast_in);
        let present = main.last().map(|look| look.gravity);
        let course = Course {
            main,
            satellite: looks(&lines, Vessel::Satellite),
            original,
            pitched,
            family: heading.family,
            stated_end: heading.expected_end,
            added,
            refracted: refracted(&lines, yeast_in),
        };
        let bottling = log.bottling().cloned();
        // What is in the bottle is foretold no more.
        let (finish, forecast) = match bottling {
            None => {
                let settled = judge_with_forecast(&course);
                (settled.finish, Some(settled.forecast))
            }
            Some(_) => (watch::judge(&course), None),
        };
        let ladder = ladder(&course, &finish, shown(journal, &heading, &lines));
        let warmth = too_warm_or_cold(&heading, record, &lines, original)
            .filter(|_| finish.state != State::Finished);
        let strength = original.zip(present).and_then(|(og, now)| strength(og, now).ok());
        Some(Self {
            id: id.clone(),
            heading,
            pitch,
            original,
            original_was_read: chosen.is_some(),
            original_from,
            by_sample: start_gravity,
            by_ingredients,
            present,
            strength,
            course,
            finish,
            forecast,
            ladder,
            warmth,
            added,
            bottling,
            openings: log.openings().to_vec(),
            lines,
        })
    }

    /// Strength with the priming sugar counted, once bottled.
    #[must_use]
    pub fn strength_in_bottle(&self) -> Option<Estimate<crate::quantity::AlcoholByVolume>> {
        let (_, bottling) = self.bottling.as_ref()?;
        bottling.strength_in_bottle(self.strength.as_ref()?.alcohol)
    }
}
