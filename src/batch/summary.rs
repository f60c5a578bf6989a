//! Everything that a screen shows about one batch, worked out once.

use super::id::Id;
use super::journal::Journal;
use super::line::{ReadingLine, added, corrected, looks, refracted};
use super::pitch_record::{GoesBy, PitchRecord};
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading, Vessel};
use super::watching::{shown, too_warm_or_cold};
use crate::advice::watch::beer_temperature::Notice;
use crate::advice::watch::forecast::{Forecast, Refusal};
use crate::advice::watch::ladder::{Rung, ladder};
use crate::advice::watch::with_forecast::judge_with_forecast;
use crate::advice::watch::{self, Course, Finish, State};
use crate::advice::{Advice, Verdict, open};
use crate::quantity::{Estimate, Hours, Measured, Moment, SpecificGravity};
use crate::science::kit_gravity::KitGravity;
use crate::science::strength::{Strength, strength};

/// A gravity that kit or recipe states is trusted to this (common practice, no source).
const STATED: f64 = 0.003;
/// A main reading this soon after pitching still shows the starting gravity.
const STILL_START: Hours = Hours::literal(12.0);

/// The four stages of a batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs)]
pub enum Stage {
    Pitch,
    Watch,
    Bottle,
    Open,
}

impl Stage {
    /// In the order of the work.
    pub const ALL: [Self; 4] = [Self::Pitch, Self::Watch, Self::Bottle, Self::Open];
}

/// The next step of a batch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NextStep {
    /// Note the starting gravity, or check the temperature, and pitch.
    Pitch,
    /// Take the first reading of the fermenting beer, about then.
    FirstLook(Moment),
    /// Read again, not before then.
    ReadAgain(Moment),
    /// It looks stuck: go through the steps.
    Stuck,
    /// Look for foam, a ring, drops under the lid, not before then.
    LookForSigns(Moment),
    /// It never began: go through the steps.
    PitchAgain,
    /// It is finished: bottle it.
    Bottle,
    /// Wait for the bottles until then.
    WaitForBottles(Moment),
    /// Open the first one.
    TryOne,
    /// A bottle has been opened: note the next.
    Enjoy,
}

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

/// A batch, worked out.
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
    /// When to open one.
    pub opening: Option<Advice<open::Reason, open::Next>>,
    /// The stage it is in.
    pub stage: Stage,
    /// The next step.
    pub next: NextStep,
}

impl Summary {
    /// Works out a batch as it stands at `now`; `None` when there is no such batch. `now` moves dates
    /// and the opening of bottles, never a judgement of the fermentation.
    #[must_use]
    pub fn of(journal: &Journal, id: &Id, now: Moment) -> Option<Self> {
        let heading = journal.batch(id)?.clone();
        let own = |(id, record): (&Id, &PitchRecord)| (id.clone(), record.clone());
        let pitch = journal.pitch(id).map(own);
        let pitched = pitch.as_ref().map(|(_, record)| record.at);

        let readings = journal.readings(id);
        // The last sample of the unfermented wort: an earlier one may have been unmixed, or too hot to
        // mean anything. Without one, the first soon after the yeast went in.
        let of_wort = |&&(_, reading): &&(&Id, &Reading)| reading.vessel == Vessel::Main;
        let before = |at: Moment| move |&&(_, reading): &&(&Id, &Reading)| reading.at <= at;
        let yeast_in = pitched.unwrap_or(heading.started.after(STILL_START));
        let true_start = |&(id, reading): &(&Id, &Reading)| {
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
            .map(|&(id, reading)| {
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
        let bottling = journal.bottling(id).map(|(id, record)| (id.clone(), record.clone()));
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
        let openings: Vec<_> =
            journal.openings(id).into_iter().map(|(id, r)| (id.clone(), r.clone())).collect();
        let opening = bottling
            .as_ref()
            .map(|(_, record)| open::judge(record.standing(original.map(Estimate::value), now)));
        let mut summary = Self {
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
            openings,
            opening,
            stage: Stage::Pitch,
            next: NextStep::Pitch,
            lines,
        };
        (summary.stage, summary.next) = summary.where_it_stands(pitched);
        Some(summary)
    }

    fn where_it_stands(&self, pitched: Option<Moment>) -> (Stage, NextStep) {
        if let Some(opening) = &self.opening {
            let next = match opening.next {
                _ if !self.openings.is_empty() => NextStep::Enjoy,
                open::Next::TryOne => NextStep::TryOne,
                open::Next::WaitUntil(then) | open::Next::Warm(then) => {
                    NextStep::WaitForBottles(then)
                }
            };
            return (Stage::Open, next);
        }
        let Some(pitched) = pitched else { return (Stage::Pitch, NextStep::Pitch) };
        let fermenting = self.lines.iter().any(|line| {
            line.reading.vessel == Vessel::Main
                && line.gravity().is_some()
                && line.reading.at > pitched.after(STILL_START)
        });
        if !fermenting {
            // The first useful look is about halfway to the family's least time.
            let least = self.heading.family.least_time().value();
            return (Stage::Watch, NextStep::FirstLook(pitched.after(Hours::nearest(least / 2.0))));
        }
        match (self.finish.advice.verdict, self.finish.advice.next) {
            (Verdict::Go, _) => (Stage::Bottle, NextStep::Bottle),
            (_, watch::Next::Rouse(_)) => (Stage::Watch, NextStep::Stuck),
            (_, watch::Next::LookForSigns(at)) => (Stage::Watch, NextStep::LookForSigns(at)),
            (_, watch::Next::PitchAgain) => (Stage::Watch, NextStep::PitchAgain),
            (_, watch::Next::ReadAgain(at)) => (Stage::Watch, NextStep::ReadAgain(at)),
            _ => (Stage::Watch, NextStep::FirstLook(pitched)),
        }
    }

    /// Strength with the priming sugar counted, once bottled.
    #[must_use]
    pub fn strength_in_bottle(&self) -> Option<Estimate<crate::quantity::AlcoholByVolume>> {
        let (_, bottling) = self.bottling.as_ref()?;
        bottling.strength_in_bottle(self.strength.as_ref()?.alcohol)
    }
}
