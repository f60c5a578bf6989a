//! Everything that a screen shows about one batch, worked out once.

use super::id::Id;
use super::journal::Journal;
use super::line::{ReadingLine, added, refracted};
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, BottlingRecord, OpeningRecord, Reading, Vessel};
use super::start::Start;
use super::watching::{shown, too_warm_or_cold};
use crate::advice::bottle::kinds::Bottle;
use crate::advice::pitch::start_gravity::OriginalFrom;
use crate::advice::standing::{Stage, Standing, dated_ahead};
use crate::advice::watch::beer_temperature::Notice;
use crate::advice::watch::ladder::{Rung, ladder};
use crate::order::in_order;
use crate::quantity::{Estimate, Moment, Plato, SpecificGravity};
use crate::science::kit_gravity::KitGravity;
use crate::science::strength::{Strength, strength};

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
    /// What a refractometer showed once the yeast was in: only whether there was a change.
    pub refracted: Vec<(Moment, Plato)>,
    /// How it stands. It does not move with the clock, but that a reading dated ahead does not count.
    pub standing: Standing,
    /// The steps to go through when it is slow, stuck or has not begun.
    pub ladder: Vec<Rung>,
    /// Too warm or too cold, by the last temperature noted; never once it is finished.
    pub warmth: Option<Notice>,
    /// When something that ferments was last added after the yeast.
    pub added: Option<Moment>,
    /// The weakest bottle on hand that is made for pressure.
    pub on_hand: Option<Bottle>,
    /// The bottling.
    pub bottling: Option<(Id, BottlingRecord)>,
    /// Opened bottles, the latest first.
    pub openings: Vec<(Id, OpeningRecord)>,
    made_at: Moment,
}

impl Summary {
    /// Every batch worked out, the latest begun first.
    #[must_use]
    pub fn all(journal: &Journal, now: Moment) -> Vec<Self> {
        let latest = journal.batches_latest_first().into_iter();
        latest.filter_map(|(id, _)| Self::of(journal, id, now)).collect()
    }

    /// Works out a batch; `None` when there is no such batch. `now` only tells which readings are dated
    /// ahead of it: see [`Summary::holds_at`].
    #[must_use]
    pub fn of(journal: &Journal, id: &Id, now: Moment) -> Option<Self> {
        let log = journal.log(id)?;
        let heading = log.heading()?.clone();
        let pitch = log.pitch().cloned();

        let readings = log.readings();
        let record = pitch.as_ref().map(|(_, record)| record);
        let start = Start::of(journal, &heading, record, readings);
        let (original, original_from) = start.chosen.unzip();
        let lines: Vec<_> =
            readings.iter().map(|(id, reading)| start.line(journal, (id, reading))).collect();
        let added = added(&lines, start.yeast_in);
        let of_beer = lines.iter().rev().filter(|line| line.reading.vessel == Vessel::Main);
        let present = of_beer.filter_map(ReadingLine::gravity).next();
        let bottling = log.bottling().cloned();
        let refracted = refracted(&lines, start.yeast_in);
        let strength = original.zip(present).and_then(|(og, now)| strength(og, now).ok());
        let mut found = Self {
            id: id.clone(),
            heading: heading.clone(),
            pitch: pitch.clone(),
            original,
            original_was_read: matches!(
                original_from,
                Some(OriginalFrom::Sample | OriginalFrom::Ingredients)
            ),
            original_from,
            by_sample: start.by_sample,
            by_ingredients: start.by_ingredients,
            present,
            strength,
            refracted,
            standing: Standing::unknown(),
            ladder: vec![],
            warmth: None,
            added,
            on_hand: journal.weakest_on_hand(),
            bottling,
            openings: log.openings().to_vec(),
            lines,
            made_at: now,
        };
        let known = found.record();
        found.standing = Standing::of(&known, now);
        found.ladder = ladder(&known, &found.standing, shown(journal, &heading, &found.lines));
        // What is finished or in bottles may be chilled.
        if matches!(found.standing.stage, Stage::Pitch | Stage::Watch) {
            found.warmth = too_warm_or_cold(&heading, record, &found.lines, original);
        }
        Some(found)
    }

    /// Whether it still holds at another moment: while the same readings are dated ahead.
    #[must_use]
    pub fn holds_at(&self, now: Moment) -> bool {
        let ahead = |line: &ReadingLine, now| dated_ahead(line.reading.at, now);
        self.bottling.is_some()
            || self.lines.iter().all(|line| ahead(line, self.made_at) == ahead(line, now))
    }

    /// The line that a reading becomes in the log once it is saved under `id`, in place of what is there
    /// under that now: what a form shows is what will be logged.
    #[must_use]
    pub fn line_of(&self, journal: &Journal, id: &Id, reading: &Reading) -> ReadingLine {
        let others = self.lines.iter().filter(|line| line.id != *id);
        let mut readings: Vec<_> =
            others.map(|line| (line.id.clone(), line.reading.clone())).collect();
        readings.push((id.clone(), reading.clone()));
        let readings = in_order(readings, |a, b| a.1.at.cmp(&b.1.at));
        let record = self.pitch.as_ref().map(|(_, record)| record);
        Start::of(journal, &self.heading, record, &readings).line(journal, (id, reading))
    }

    /// Strength with the priming sugar counted, once bottled.
    #[must_use]
    pub fn strength_in_bottle(&self) -> Option<Estimate<crate::quantity::AlcoholByVolume>> {
        let (_, bottling) = self.bottling.as_ref()?;
        bottling.strength_in_bottle(self.strength.as_ref()?.alcohol)
    }
}
