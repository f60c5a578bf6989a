//! Too warm or too cold while it ferments: said as soon as a temperature shows it.

use crate::advice::family::{Family, Purpose, Span};
use crate::advice::pitch::already_in::{self, Pitched};
use crate::advice::thermometer::Thermometer;
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, Estimate, Hours, Measured, TemperatureChange};
use crate::science::self_heating::SelfHeating;

/// A room's thermometer (common practice, no source).
const ROOM: f64 = 1.0;
/// Beer that moves by itself tells a strip the truth for so long after pitching; then it lies still.
const MOVES_FOR: Hours = Hours::literal(7.0 * 24.0);
/// Where the rise over the room is not known: 1 to 2 °C in the busy days, texts say up to 5.
const USUAL_RISE: (f64, f64) = (1.5, 1.5);
/// The busy days.
const BUSY: Span<Hours> = Span { from: Hours::literal(12.0), to: Hours::literal(120.0) };

/// What was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Read<'a> {
    /// Of the beer.
    Beer(Celsius, Thermometer),
    /// Of the room, with the beer's own warmth if it could be worked out for that room.
    Room(Celsius, Option<&'a SelfHeating>),
}

/// Beer at one moment of its course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Warmth<'a> {
    /// What was read.
    pub read: Read<'a>,
    /// The yeast.
    pub family: Family,
    /// The packet's own range, which wins.
    pub packet: Option<Span<Celsius>>,
    /// Since the yeast went in.
    pub since: Hours,
}

/// What is said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// The beer, as far as the reading tells.
    pub beer: Estimate<Celsius>,
    /// It was reckoned from the room.
    pub by_room: bool,
    /// Beyond the range even allowing one standard deviation; else it only may be.
    pub sure: bool,
    /// What to do.
    pub advice: Advice<already_in::Reason, already_in::Next>,
}

/// How warm the beer is, by what was read. A room is read with its thermometer, and the beer's own
/// warmth is added, with half the width of what is likely as one standard deviation.
///
/// ```
/// use fermentside::advice::family::Family;
/// use fermentside::advice::watch::beer_temperature::{Read, Warmth, beer};
/// use fermentside::quantity::{Celsius, Hours, Measured};
///
/// let read = Read::Room(Celsius::literal(18.0), None);
/// let (family, packet) = (Family::CleanAle, None);
/// let at = |hours| beer(&Warmth { read, family, packet, since: Hours::literal(hours) });
/// assert_eq!([at(48.0).value(), at(200.0).value()], [19.5, 18.0].map(Celsius::literal));
/// ```
#[must_use]
pub fn beer(warmth: &Warmth) -> Estimate<Celsius> {
    let Warmth { read, since, .. } = *warmth;
    let (room, rise, sigma) = match read {
        Read::Beer(t, by) => return by.reads(t, since <= MOVES_FOR),
        Read::Room(room, Some(heating)) => {
            let near = heating.days.iter().min_by(|a, b| {
                let off = |at: Hours| (at.value() - since.value()).abs();
                off(a.at).total_cmp(&off(b.at))
            });
            // After the days that were worked out it has no warmth of its own left.
            let day = near.filter(|day| since.value() <= day.at.value() + 24.0);
            let rise = day.map_or(TemperatureChange::literal(0.0), |day| day.likely.above(room));
            let width = day.map_or(0.0, |day| day.to.above(day.from).value());
            (room, rise.value(), 0.5 * width)
        }
        Read::Room(room, None) if BUSY.contains(since) => (room, USUAL_RISE.0, USUAL_RISE.1),
        Read::Room(room, None) => (room, 0.0, 0.5),
    };
    Estimate::new(Celsius::nearest(room.value() + rise), sigma).widened(ROOM)
}

/// A notice when the beer is outside the yeast's range; `None` when it is within.
///
/// ```
/// use fermentside::advice::{family::Family, thermometer::Thermometer};
/// use fermentside::advice::watch::beer_temperature::{Read, Warmth, notice};
/// use fermentside::quantity::{Celsius, Hours};
///
/// let (family, packet, since) = (Family::CleanAle, None, Hours::literal(24.0));
/// let at = |t| {
///     let read = Read::Beer(Celsius::literal(t), Thermometer::Probe);
///     notice(&Warmth { read, family, packet, since })
/// };
/// assert_eq!(at(20.0), None);
/// assert!(at(26.0).is_some_and(|notice| notice.sure));
/// ```
#[must_use]
pub fn notice(warmth: &Warmth) -> Option<Notice> {
    let Warmth { read, family, packet, since } = *warmth;
    let beer = beer(warmth);
    let advice = already_in::judge(Pitched { beer, family, packet, since });
    if advice.verdict == Verdict::Go {
        return None;
    }
    let range = family.range_for(Purpose::Fermenting, packet);
    let sure = beer.lower(1.0) > range.to || beer.upper(1.0) < range.from;
    Some(Notice { beer, by_room: matches!(read, Read::Room(..)), sure, advice })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Litres, SpecificGravity};
    use crate::science::self_heating::{FermentingBeer, Vessel, self_heating};

    fn ale(read: Read, hours: f64) -> Option<Notice> {
        let since = Hours::literal(hours);
        notice(&Warmth { read, family: Family::CleanAle, packet: None, since })
    }

    fn strip(t: f64) -> Read<'static> {
        Read::Beer(Celsius::nearest(t), Thermometer::Strip)
    }

    #[test]
    fn a_strip_above_the_range_is_said_and_one_within_is_not() {
        assert_eq!(ale(strip(20.0), 30.0), None);
        let warm = ale(strip(26.0), 30.0).expect("a notice");
        assert!(warm.sure && !warm.by_room);
        assert_eq!(warm.advice.next, already_in::Next::CoolNow(Celsius::literal(22.0)));
        // Half a degree over is less than a strip can tell.
        assert!(!ale(strip(22.5), 30.0).expect("a notice").sure);
        let cold = ale(strip(12.0), 30.0).expect("a notice");
        assert_eq!(cold.advice.next, already_in::Next::WarmTo(Celsius::literal(17.0)));
    }

    #[test]
    fn beer_in_its_busy_days_is_warmer_than_its_room() {
        let room = Celsius::literal(21.0);
        let heating = self_heating(FermentingBeer {
            volume: Litres::literal(20.0),
            original: SpecificGravity::literal(1.048),
            end: SpecificGravity::literal(1.011),
            pitching: Family::CleanAle.pitching(),
            vessel: Vessel::Bucket,
            room,
        })
        .expect("in range");
        let busy = ale(Read::Room(room, Some(&heating)), 48.0).expect("a notice");
        assert!(busy.by_room && busy.beer.value().value() > 22.5, "{busy:?}");
        assert_eq!(ale(Read::Room(room, Some(&heating)), 12.0 * 24.0), None);
        assert_eq!(ale(Read::Room(room, Some(&heating)), 90.0 * 24.0), None);
        // Without a vessel to reckon with it is rougher, and warm all the same.
        let rough = ale(Read::Room(room, None), 48.0).expect("a notice");
        assert!(!rough.sure && rough.beer.sigma() > 1.0);
    }
}
