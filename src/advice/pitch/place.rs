//! Where the vessel stands: warm enough and not too warm once the beer heats itself, room for foam, dark,
//! and nothing drawn in through the airlock.

use super::room_air::{self, Air};
use crate::advice::family::{Family, Purpose, Span};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, HAIR, Litres, Measured, Share, SpecificGravity, TemperatureChange};
use crate::science::ScienceError;
use crate::science::self_heating::{FermentingBeer, SelfHeating, Vessel, self_heating};

/// Headspace that foam wants: 20 to 25 % of the vessel (common practice, no source).
pub const HEADSPACE: Share = Share::literal(0.20);
/// Below this it will come out unless there is a tube for it (common practice, no source).
const TIGHT: Share = Share::literal(0.10);
/// Wort so much warmer than its room draws air in through the lock as it cools (common practice, no
/// source).
const SUCKS_BACK: TemperatureChange = TemperatureChange::literal(3.0);

/// A vessel whose size is not known has room for a quarter more than is in it (common practice, no
/// source).
const ROOM_LEFT: f64 = 1.25;

/// What a vessel of unknown size is taken to hold, by what is in it.
///
/// ```
/// use fermentside::advice::pitch::place::taken_to_hold;
/// use fermentside::quantity::Litres;
///
/// assert_eq!(taken_to_hold(Litres::literal(20.0)), Litres::literal(25.0));
/// ```
#[must_use]
pub fn taken_to_hold(wort: Litres) -> Litres {
    Litres::nearest(wort.value() * ROOM_LEFT)
}

/// The place and what is put there.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Of the room.
    pub room: Celsius,
    /// The yeast.
    pub family: Family,
    /// The packet's own range for the ferment, which wins.
    pub packet: Option<Span<Celsius>>,
    /// How warm the beer makes itself there, if it could be worked out.
    pub heating: Option<SelfHeating>,
    /// What the vessel holds to the brim, if known.
    pub vessel: Option<Litres>,
    /// Beer in it.
    pub beer: Litres,
    /// A tube leads the foam away.
    pub blow_off: bool,
    /// Daylight or lamps fall on clear or green glass.
    pub in_light: bool,
    /// Of the wort when the lid goes on, if known.
    pub sealed_at: Option<Celsius>,
    /// The room's air, if its size is known.
    pub air: Option<Air>,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// At its height the beer will likely be so warm, within the range.
    BeerWithin(Celsius, Span<Celsius>),
    /// Likely warmer than the range by so much at its height.
    BeerTooWarm(Celsius, Span<Celsius>, TemperatureChange),
    /// It may get as warm as this, though the likely height is within the range.
    MayBeTooWarm(Celsius, Span<Celsius>),
    /// Colder than the range by so much for most of the time.
    BeerTooCold(Celsius, Span<Celsius>, TemperatureChange),
    /// Too little room for foam: so much of the vessel.
    LittleHeadspace(Share),
    /// More beer than the vessel holds.
    Overfull,
    /// Light gives beer a smell of its own.
    Light,
    /// The wort is so much warmer than the room: as it cools, it draws in what is in the airlock.
    SucksBack(TemperatureChange),
    /// The air of the room.
    Air(room_air::Reason),
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Put it there.
    PutItThere,
    /// Find a room of about this, or cool it by so much with a tub of water.
    CoolerRoom(Celsius),
    /// Find a room of at least this.
    WarmerRoom(Celsius),
    /// Fit a tube in place of the airlock.
    FitBlowOff,
    /// Take some out, or use a larger vessel.
    LessInVessel,
    /// Cover it.
    CoverIt,
    /// Seal it with foil or little water in the lock until it is as cool as its room.
    SealLoosely,
    /// As the air of the room wants it.
    MindTheAir(room_air::Next),
}

/// How this beer will warm itself in that vessel and room: by its start, and the middle of where its family
/// ends.
///
/// ```
/// use fermentside::advice::{family::Family, pitch::place::heating};
/// use fermentside::quantity::{Celsius, Litres, Measured, SpecificGravity};
/// use fermentside::science::self_heating::Vessel;
///
/// let (volume, start) = (Litres::literal(20.0), SpecificGravity::literal(1.048));
/// let rise = |vessel| {
///     let room = Celsius::literal(18.0);
///     heating(volume, start, Family::CleanAle, vessel, room).map(|found| found.rise.value().value())
/// };
/// assert!(rise(Vessel::Insulated)? > rise(Vessel::Bucket)?);
/// assert!(rise(Vessel::Bucket)? > rise(Vessel::WaterTub)?);
/// let (nothing, room) = (Litres::literal(0.0), Celsius::literal(18.0));
/// assert!(heating(nothing, start, Family::CleanAle, Vessel::Bucket, room).is_err());
/// # Ok::<(), fermentside::science::ScienceError>(())
/// ```
///
/// # Errors
/// As [`self_heating`].
pub fn heating(
    volume: Litres,
    original: SpecificGravity,
    family: Family,
    vessel: Vessel,
    room: Celsius,
) -> Result<SelfHeating, ScienceError> {
    let end = family.ends_at(original).middle();
    let pitching = family.pitching();
    self_heating(FermentingBeer { volume, original, end, pitching, vessel, room })
}

/// Judges a place. `next` holds every step that is wanted, the weightiest first: people, then the lid,
/// then the beer. `CantTell` when nothing is wrong but the warmth could not be worked out.
///
/// ```
/// use fermentside::advice::{Verdict, family::Family, pitch::place::{Next, Place, judge}};
/// use fermentside::quantity::{Celsius, Litres};
///
/// let vessel = |litres| judge(&Place {
///     room: Celsius::literal(18.0),
///     family: Family::CleanAle,
///     packet: None,
///     heating: None,
///     vessel: Some(Litres::literal(litres)),
///     beer: Litres::literal(23.0),
///     blow_off: false,
///     in_light: false,
///     sealed_at: None,
///     air: None,
/// });
/// assert_eq!(vessel(30.0).verdict, Verdict::CantTell);
/// assert_eq!(vessel(25.0).next, [Next::FitBlowOff]);
/// assert_eq!((vessel(20.0).verdict, vessel(20.0).next), (Verdict::Stop, vec![Next::LessInVessel]));
/// ```
#[must_use]
pub fn judge(place: &Place) -> Advice<Reason, Vec<Next>> {
    let range = place.family.range_for(Purpose::Fermenting, place.packet);
    let mut found: Vec<(Verdict, Reason, Next)> = vec![];
    if let Some(air) = place.air.as_ref().filter(|air| air.advice.verdict != Verdict::Go) {
        let next = Next::MindTheAir(air.advice.next);
        let reasons = air.advice.reasons.iter();
        found.extend(reasons.map(|&reason| (air.advice.verdict, Reason::Air(reason), next)));
    }
    found.extend(headspace(place));
    if let Some(warmer) = place.sealed_at.map(|t| t.above(place.room)).filter(|w| *w >= SUCKS_BACK)
    {
        found.push((Verdict::Wait, Reason::SucksBack(warmer), Next::SealLoosely));
    }
    found.extend(warmth(place, range));
    if place.in_light {
        found.push((Verdict::Wait, Reason::Light, Next::CoverIt));
    }
    let verdict = if found.iter().any(|(verdict, ..)| *verdict == Verdict::Stop) {
        Verdict::Stop
    } else if found.iter().any(|(verdict, ..)| *verdict == Verdict::Wait) {
        Verdict::Wait
    } else if place.heating.is_none() {
        Verdict::CantTell
    } else {
        Verdict::Go
    };
    let mut next: Vec<Next> = vec![];
    for (_, _, step) in &found {
        if *step != Next::PutItThere && !next.contains(step) {
            next.push(*step);
        }
    }
    if next.is_empty() {
        next.push(Next::PutItThere);
    }
    let worked = place.heating.as_ref().map(|heating| heating.worked.clone()).unwrap_or_default();
    let reasons = found.into_iter().map(|(_, reason, _)| reason).collect();
    Advice { verdict, reasons, next, worked }
}

fn headspace(place: &Place) -> Option<(Verdict, Reason, Next)> {
    let vessel = place.vessel?.value();
    let beer = place.beer.value();
    if beer > vessel || vessel <= 0.0 {
        return Some((Verdict::Stop, Reason::Overfull, Next::LessInVessel));
    }
    let free = Share::nearest(1.0 - beer / vessel);
    // The last bits of a division are not headspace.
    if free.value() >= HEADSPACE.value() - HAIR || (place.blow_off && free >= TIGHT) {
        return None;
    }
    let next = if place.blow_off { Next::LessInVessel } else { Next::FitBlowOff };
    Some((Verdict::Wait, Reason::LittleHeadspace(free), next))
}

fn warmth(place: &Place, range: Span<Celsius>) -> Option<(Verdict, Reason, Next)> {
    let heating = place.heating.as_ref()?;
    let rise = heating.rise.value().value();
    let height = Celsius::nearest(place.room.value() + rise);
    let at_most = Celsius::nearest(place.room.value() + heating.rise_at_most.value());
    // A room that leaves the likely height just inside the range.
    let cool = Next::CoolerRoom(Celsius::nearest(range.to.value() - rise));
    Some(if at_most >= place.family.harmed_above() {
        let over = TemperatureChange::nearest(height.above(range.to).value().max(0.0));
        (Verdict::Stop, Reason::BeerTooWarm(at_most, range, over), cool)
    } else if height > range.to {
        (Verdict::Wait, Reason::BeerTooWarm(height, range, height.above(range.to)), cool)
    } else if height < range.from {
        let short = range.from.above(height);
        let warm = Next::WarmerRoom(Celsius::nearest(range.from.value() - rise));
        (Verdict::Wait, Reason::BeerTooCold(height, range, short), warm)
    } else if at_most > range.to {
        // Not ruled out is no reason to move it, only to look at it.
        (Verdict::Go, Reason::MayBeTooWarm(at_most, range), Next::PutItThere)
    } else {
        (Verdict::Go, Reason::BeerWithin(height, range), Next::PutItThere)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::advice::pitch::room_air::{AirChange, Room};
    use crate::quantity::{CubicMetres, SpecificGravity};

    fn cupboard(room: f64) -> Place {
        let heating = self_heating(FermentingBeer {
            volume: Litres::literal(20.0),
            original: SpecificGravity::literal(1.048),
            end: SpecificGravity::literal(1.011),
            pitching: Family::CleanAle.pitching(),
            vessel: Vessel::Bucket,
            room: Celsius::literal(room),
        });
        Place {
            room: Celsius::literal(room),
            family: Family::CleanAle,
            packet: None,
            heating: heating.ok(),
            vessel: Some(Litres::literal(25.0)),
            beer: Litres::literal(20.0),
            blow_off: false,
            in_light: false,
            sealed_at: Some(Celsius::literal(room + 1.0)),
            air: None,
        }
    }

    #[test]
    fn a_cool_cupboard_does_and_a_warm_room_does_not() {
        let cool = judge(&cupboard(17.0));
        assert_eq!((cool.verdict, &cool.next[..]), (Verdict::Go, &[Next::PutItThere][..]));
        let warm = judge(&cupboard(23.0));
        assert_eq!(warm.verdict, Verdict::Wait);
        assert!(matches!(warm.next[..], [Next::CoolerRoom(t)] if t.value() < 22.0), "{warm:?}");
        assert!(matches!(judge(&cupboard(9.0)).next[..], [Next::WarmerRoom(_)]));
        assert_eq!(judge(&cupboard(37.0)).verdict, Verdict::Stop);
    }

    #[test]
    fn foam_wants_room_or_a_tube() {
        let full = Place { beer: Litres::literal(21.5), ..cupboard(17.0) };
        assert_eq!(judge(&full).next, [Next::FitBlowOff]);
        assert_eq!(judge(&Place { blow_off: true, ..full }).verdict, Verdict::Go);
        let over = Place { beer: Litres::literal(26.0), ..cupboard(17.0) };
        assert_eq!(judge(&over).verdict, Verdict::Stop);
    }

    #[test]
    fn people_come_before_beer() {
        let air = room_air::judge(Room {
            size: CubicMetres::literal(0.4),
            air: AirChange::Sealed,
            vessels: 1,
            gas_in_busiest_day: Litres::literal(200.0),
        });
        let freezer = Place {
            air: Some(air),
            in_light: true,
            sealed_at: Some(Celsius::literal(28.0)),
            ..cupboard(17.0)
        };
        let found = judge(&freezer);
        assert_eq!(found.verdict, Verdict::Stop);
        let wanted =
            [Next::MindTheAir(room_air::Next::OpenAndWait), Next::SealLoosely, Next::CoverIt];
        assert_eq!(found.next, wanted);
    }

    #[test]
    fn what_was_not_worked_out_is_not_assured() {
        let unknown = Place { heating: None, ..cupboard(17.0) };
        assert_eq!(judge(&unknown).verdict, Verdict::CantTell);
    }
}
