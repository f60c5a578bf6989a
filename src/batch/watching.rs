//! What the readings show beside their gravities: the steps done, and a beer too warm or too cold.

use super::journal::Journal;
use super::line::ReadingLine;
use super::pitch_record::PitchRecord;
use super::record::{BatchHeading, Vessel};
use crate::advice::family::Purpose;
use crate::advice::pitch::place::heating;
use crate::advice::thermometer::Thermometer;
use crate::advice::watch::beer_temperature::{Notice, Read, Warmth, notice};
use crate::advice::watch::ladder::Shown;
use crate::quantity::{Celsius, Estimate, Measured, SpecificGravity};
use crate::science::self_heating::{self, SelfHeating};

/// What was done to the last reading of the beer, and how warm it stands.
pub(super) fn shown(journal: &Journal, heading: &BatchHeading, lines: &[ReadingLine]) -> Shown {
    let of_beer = || lines.iter().rev().filter(|line| line.reading.vessel == Vessel::Main);
    let last = of_beer().find(|line| line.gravity().is_some());
    let by = last.map(|line| journal.hydrometer(&line.reading.hydrometer));
    Shown {
        degassed: last.is_some_and(|line| line.reading.condition.is_still()),
        sample_temperature: last.is_some_and(|line| line.reading.sample.is_some()),
        checked: by.is_some_and(|by| by.offset.value() != 0.0 || by.sugar.is_some()),
        beer: of_beer().find_map(|line| line.reading.beer),
        range: heading.family.range_for(Purpose::Fermenting, heading.packet),
    }
}

/// A notice by the last temperature that was noted since the yeast went in: the beer's, else the room's.
pub(super) fn too_warm_or_cold(
    heading: &BatchHeading,
    pitch: Option<&PitchRecord>,
    lines: &[ReadingLine],
    original: Option<Estimate<SpecificGravity>>,
) -> Option<Notice> {
    let pitch = pitch?;
    let since = |line: &&ReadingLine| {
        let reading = &line.reading;
        reading.at >= pitch.at && reading.vessel == Vessel::Main
    };
    let noted = |line: &&ReadingLine| line.reading.beer.is_some() || line.reading.room.is_some();
    let last = lines.iter().rev().filter(since).find(noted);
    let (at, beer, room) = last.map_or((pitch.at, pitch.wort, pitch.room), |line| {
        (line.reading.at, line.reading.beer, line.reading.room)
    });
    // Wort that is just being pitched is judged on the screen of pitching.
    let beer = beer.filter(|_| last.is_some());
    let heating = room.and_then(|room| warms_itself(heading, pitch, original, room));
    let read = match (beer, room) {
        (Some(beer), _) => Read::Beer(beer, Thermometer::Strip),
        (None, Some(room)) => Read::Room(room, heating.as_ref()),
        (None, None) => return None,
    };
    notice(&Warmth {
        read,
        family: heading.family,
        packet: heading.packet,
        since: at.since(pitch.at),
    })
}

/// How warm the beer makes itself in that room; a bucket when the vessel was not noted.
fn warms_itself(
    heading: &BatchHeading,
    pitch: &PitchRecord,
    original: Option<Estimate<SpecificGravity>>,
    room: Celsius,
) -> Option<SelfHeating> {
    let original = original?.value();
    let volume = pitch.volume.unwrap_or(heading.volume);
    let vessel = pitch.vessel.unwrap_or(self_heating::Vessel::Bucket);
    heating(volume, original, heading.family, vessel, room).ok()
}
