//! What follows from a bottling as it was recorded.

use super::record::{BottlingRecord, OpeningRecord};
use super::standing::FLAT;
use super::summary::Summary;
use crate::advice::bottle::stock::how_many;
use crate::advice::open::learned::Outcome;
use crate::advice::open::worried::Facts;
use crate::advice::open::{Found, WaitingBottles};
use crate::advice::practice::{COOL_PLACE, remembered};
use crate::advice::standing::Hazard;
use crate::quantity::{
    AlcoholByVolume, CarbonDioxideVolumes, Celsius, Estimate, Litres, Measured, Metres, Moment,
    SpecificGravity,
};
use crate::science::bottle_pressure::Closing;
use crate::science::carbon_dioxide::already_in;
use crate::science::priming::expected_from;
use crate::science::strength::from_priming;

/// Fizz of one that had only a little, and of one that had much.
const LITTLE: u8 = 2;
const LIVELY: u8 = 4;
/// Litres of the bottle that is counted by where nobody noted what was filled.
const USUAL_BOTTLE: f64 = 0.5;

impl BottlingRecord {
    /// The beer after it was primed: kept-back wort makes it more.
    #[must_use]
    pub fn primed_volume(&self) -> Litres {
        let more = self.sugar.volume(self.weighed).map_or(0.0, Measured::value);
        Litres::nearest(self.beer.value().value() + more)
    }

    /// Carbon dioxide by the best estimate, once the sugar that was weighed is eaten.
    #[must_use]
    pub fn expected(&self) -> CarbonDioxideVolumes {
        let noted = self.grounds.as_ref().and_then(|grounds| grounds.already_in);
        let by_rule = || {
            let warmest = remembered(self.warmest);
            already_in(warmest, Metres::literal(0.0)).ok().map(|found| found.volumes)
        };
        let held = noted.or_else(by_rule).map_or(0.0, |held| held.value().value());
        let beer = self.primed_volume();
        let share = self.beer.value().value() / beer.value().max(f64::MIN_POSITIVE);
        let sugar = expected_from(self.weighed, self.sugar, beer).map_or(0.0, Measured::value);
        CarbonDioxideVolumes::nearest(held * share + sugar)
    }

    /// Strength of beer of strength `beer` with the priming counted, by what of it ferments.
    #[must_use]
    pub fn strength_in_bottle(
        &self,
        beer: Estimate<AlcoholByVolume>,
    ) -> Option<Estimate<AlcoholByVolume>> {
        let volume = self.primed_volume();
        let more = from_priming(self.sugar.as_sucrose(self.weighed), volume).ok()?.value();
        let share = self.beer.value().value() / volume.value();
        let total = AlcoholByVolume::nearest(beer.value().value() * share + more);
        Some(Estimate::new(total, beer.sigma()))
    }

    /// The same bottles, stood somewhere else at `now`. Days in the cool do not count, so that out of it
    /// they are counted anew; among warm places they go on.
    #[must_use]
    pub fn stood(mut self, place: Celsius, now: Moment) -> Self {
        if self.place.is_some_and(|before| before < COOL_PLACE && place >= COOL_PLACE) {
            self.moved = Some(now);
        }
        self.place = Some(place);
        self
    }

    /// How many bottles were filled: those noted, else as many of half a litre as the beer fills.
    #[must_use]
    pub fn bottles_filled(&self) -> u32 {
        let noted = self.grounds.as_ref().map_or(0, |grounds| how_many(&grounds.filled));
        if noted > 0 { noted } else { (self.primed_volume().value() / USUAL_BOTTLE).ceil() as u32 }
    }

    /// How the bottles stand at `now`, as if none had been opened.
    #[must_use]
    pub fn waiting(&self, original: Option<SpecificGravity>, now: Moment) -> WaitingBottles {
        let (bottled, place) = (self.moved.unwrap_or(self.at), self.place);
        WaitingBottles { bottled, place, original, found: Found::Nothing, now }
    }
}

impl Summary {
    /// Whether the bottles may hold more than the weakest of them is asked to, by what was weighed; not
    /// before it is bottled.
    #[must_use]
    pub fn may_be_above_ceiling(&self) -> bool {
        self.bottling.as_ref().is_some_and(|(_, record)| {
            let ceiling = record.weakest.ceiling(self.may_go_on());
            ceiling.is_none_or(|ceiling| record.worst > ceiling)
        })
    }

    /// A bottle gushed or burst, and nothing was done about the rest.
    #[must_use]
    pub fn is_hazard(&self) -> bool {
        !self.standing.hazards.is_empty()
    }

    /// How the bottles stand at `now`, with what opened ones have shown; `None` before it is bottled.
    #[must_use]
    pub fn bottles(&self, now: Moment) -> Option<WaitingBottles> {
        let (_, record) = self.bottling.as_ref()?;
        let waiting = record.waiting(self.original.map(Estimate::value), now);
        let fizzed = |(_, one): &(_, OpeningRecord)| one.fizz.value() > FLAT;
        let found = match (self.standing.hazards.first(), &record.made_safe, &*self.openings) {
            (Some(Hazard::Gushed(at)), ..) => Found::Gushed(*at),
            (None, Some(safe), _) => Found::MadeSafe(safe.by),
            (None, None, []) => Found::Nothing,
            (None, None, all @ [(_, latest), ..]) => match latest.fizz.value() {
                LITTLE => Found::Little(latest.at),
                LIVELY => Found::Lively(latest.at),
                _ if all.iter().any(fizzed) => Found::Fizz,
                _ => Found::Flat(latest.at),
            },
        };
        Some(WaitingBottles { found, ..waiting })
    }

    /// What the record says to someone who worries; `None` before it is bottled.
    #[must_use]
    pub fn facts(&self, height: Metres, now: Moment) -> Option<Facts> {
        let (_, record) = self.bottling.as_ref()?;
        let yeast_may_go_on = self.may_go_on();
        Some(Facts {
            age: now.since(record.at),
            place: record.place,
            worst: record.worst,
            expected: record.expected(),
            target: record.target,
            ceiling: record.weakest.ceiling(yeast_may_go_on),
            was_finished: record.went_on_because.is_empty(),
            yeast_may_go_on,
            closing: Closing { height, ..Closing::USUAL },
        })
    }

    /// Predicted against actual, once bottles were opened; `None` before.
    #[must_use]
    pub fn outcome(&self) -> Option<Outcome> {
        let (_, record) = self.bottling.as_ref().filter(|_| !self.openings.is_empty())?;
        let fizz = |opening: &OpeningRecord| (opening.fizz.value(), opening.at.since(record.at));
        let pitched = self.pitch.as_ref().and_then(|(_, pitch)| pitch.volume);
        Some(Outcome {
            target: record.target,
            expected: record.expected(),
            fizz: self.openings.iter().map(|(_, opening)| fizz(opening)).collect(),
            fermenter: pitched.unwrap_or(self.heading.volume),
            bottled: record.beer.value(),
            family: self.heading.family,
            attenuation: self.strength.as_ref().map(|strength| strength.apparent),
            end: self.present,
            stated_end: self.heading.expected_end,
        })
    }
}
