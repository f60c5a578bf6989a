//! Open: when to try the first bottle.
//!
//! Two to three weeks at 18 to 24 °C for ordinary beer, four to six for strong, double down to 13 °C;
//! colder than that ale yeast hardly works, and no number of days makes the bottles ready. Warmer than
//! 26 °C flavour suffers and the pressure rises (all common practice, no source).

use super::found::{Found, SafeBy};
use crate::advice::practice::{COOL_PLACE, GREEN, STRONG, waking};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, Hours, Measured, Moment, SpecificGravity};
use crate::science::{Term, Worked};

/// Colder than this the yeast hardly works.
const HARDLY_WORKS: Celsius = Celsius::literal(13.0);
/// Warmer than this harms flavour and raises the pressure.
const HOT: Celsius = Celsius::literal(26.0);
/// A bottle is chilled this long before it is judged, so that the gas goes in.
const CHILL: Hours = Hours::literal(48.0);

/// Warmed and turned over, one is tried after so long (common practice, no source).
const WOKEN: Hours = Hours::literal(7.0 * 24.0);

/// What is known of bottles that stand and wait.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WaitingBottles {
    /// When they were filled, or came to where they stand.
    pub bottled: Moment,
    /// Where they stand.
    pub place: Option<Celsius>,
    /// How strong the wort was.
    pub original: Option<SpecificGravity>,
    /// What opened ones have shown.
    pub found: Found,
    /// Now.
    pub now: Moment,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// They have stood so long.
    InBottle(Hours),
    /// Strong beer takes longer.
    Strong,
    /// A cool place takes longer.
    Cool(Celsius),
    /// Too cold for the yeast to work.
    TooCold(Celsius),
    /// So warm that flavour suffers and the pressure rises.
    Hot(Celsius),
    /// Where they stand is not known; a room is taken.
    PlaceUnknown,
    /// One gushed or burst then.
    Gushed(Moment),
    /// After one had gushed or burst this was done.
    MadeSafe(SafeBy),
    /// One was flat then, too young to say anything.
    FlatEarly(Moment),
    /// One was flat then, and should not have been.
    FlatLate(Moment),
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Chill one for two days and open it.
    TryOne,
    /// Wait until then.
    WaitUntil(Moment),
    /// Move them to a warmer place, and wait: until then, if they are moved now.
    Warm(Moment),
    /// Warm them, turn each over, and try one then.
    Wake(Moment),
    /// Chill them all now, and open one then.
    Chill(Moment),
    /// Make the rest safe before anything else.
    MakeSafe,
    /// That was done: what is left is opened with care.
    AfterSafe(SafeBy),
    /// They have their fizz.
    Enjoy,
}

/// The plan of conditioning: a window and no promise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dates {
    /// Put one in the cold.
    pub chill: Moment,
    /// Try that one.
    pub try_one: Moment,
    /// By then the rest should be ready.
    pub ready_by: Moment,
}

/// A bottle that was flat then should have had its fizz.
fn late(waiting: &WaitingBottles, at: Moment) -> bool {
    at.since(waiting.bottled) >= GREEN
}

/// When the rest are tried, if they are woken on the day that one was flat.
fn woken(flat: Moment) -> Moment {
    waking(flat.after(WOKEN))
}

/// Days until the first is tried in a warm room.
fn days(original: Option<SpecificGravity>) -> f64 {
    if original.is_some_and(|og| og > STRONG) { 28.0 } else { 14.0 }
}

fn too_cold(waiting: &WaitingBottles) -> bool {
    waiting.place.is_some_and(|place| place < HARDLY_WORKS)
}

/// The dates. In a place too cold they count from now, as if the bottles were warmed today.
///
/// ```
/// use fermentside::advice::open::{Found, WaitingBottles, dates};
/// use fermentside::quantity::{Celsius, Moment, SpecificGravity};
///
/// let bottled: Moment = "2026-03-01T12:00+00:00".parse()?;
/// let place = Some(Celsius::literal(20.0));
/// let try_one = |sg| {
///     let original = Some(SpecificGravity::literal(sg));
///     let found = Found::Nothing;
///     dates(WaitingBottles { bottled, place, original, found, now: bottled }).try_one.local_text()
/// };
/// assert_eq!(try_one(1.050), "2026-03-15T12:00");
/// assert_eq!(try_one(1.070), "2026-03-29T12:00");
/// # Ok::<(), fermentside::quantity::MomentError>(())
/// ```
#[must_use]
pub fn dates(waiting: WaitingBottles) -> Dates {
    let slow = waiting.place.is_some_and(|place| (HARDLY_WORKS..COOL_PLACE).contains(&place));
    let days = days(waiting.original) * if slow { 2.0 } else { 1.0 };
    let from = if too_cold(&waiting) { waiting.now } else { waiting.bottled };
    let after = |days: f64| from.after(Hours::nearest(days * 24.0));
    let try_one = waking(after(days));
    Dates {
        chill: try_one.after(Hours::nearest(-CHILL.value())),
        try_one,
        ready_by: after(1.5 * days),
    }
}

/// Judges whether to try one. The date is a plan and no promise; only the bottle tells.
///
/// ```
/// use fermentside::advice::{Verdict, open::{Found, Next, WaitingBottles, judge}};
/// use fermentside::quantity::{Celsius, Moment};
///
/// let [bottled, now] = ["2026-03-01T12:00+00:00", "2026-03-20T12:00+00:00"].map(str::parse::<Moment>);
/// let (bottled, now) = (bottled?, now?);
/// let waiting = WaitingBottles { bottled, place: None, original: None, found: Found::Nothing, now };
/// let at = |t| judge(WaitingBottles { place: Some(Celsius::literal(t)), ..waiting });
/// assert_eq!(at(20.0).next, Next::TryOne);
/// // Too cold for the yeast: no number of days makes them ready.
/// assert!(matches!(at(8.0).next, Next::Warm(_)) && at(8.0).verdict == Verdict::Wait);
/// // One that gushed stops it, whatever the day.
/// assert_eq!(judge(WaitingBottles { found: Found::Gushed(now), ..waiting }).next, Next::MakeSafe);
/// # Ok::<(), fermentside::quantity::MomentError>(())
/// ```
#[must_use]
pub fn judge(waiting: WaitingBottles) -> Advice<Reason, Next> {
    let age = waiting.now.since(waiting.bottled);
    let mut reasons = vec![Reason::InBottle(age)];
    if days(waiting.original) > 14.0 && waiting.found == Found::Nothing {
        reasons.push(Reason::Strong);
    }
    match waiting.found {
        Found::Gushed(at) => reasons.insert(0, Reason::Gushed(at)),
        Found::MadeSafe(by) => reasons.insert(0, Reason::MadeSafe(by)),
        Found::Flat(at) if late(&waiting, at) => reasons.insert(0, Reason::FlatLate(at)),
        Found::Flat(at) => reasons.insert(0, Reason::FlatEarly(at)),
        Found::Nothing | Found::Fizz | Found::Little(_) | Found::Lively(_) => {}
    }
    // How long they take is no matter any more.
    let waits = matches!(waiting.found, Found::Nothing | Found::Little(_) | Found::Flat(_));
    match waiting.place {
        Some(place) if !waits && place <= HOT => {}
        None if !waits => {}
        None => reasons.push(Reason::PlaceUnknown),
        Some(place) if place < HARDLY_WORKS => reasons.push(Reason::TooCold(place)),
        Some(place) if place < COOL_PLACE => reasons.push(Reason::Cool(place)),
        Some(place) if place > HOT => reasons.push(Reason::Hot(place)),
        Some(_) => {}
    }
    let ready = dates(waiting).try_one;
    let (verdict, next) = match waiting.found {
        Found::Gushed(_) => (Verdict::Stop, Next::MakeSafe),
        Found::MadeSafe(by) => (Verdict::Wait, Next::AfterSafe(by)),
        Found::Fizz => (Verdict::Go, Next::Enjoy),
        Found::Lively(at) if late(&waiting, at) => (Verdict::Go, Next::Enjoy),
        // So much so soon, and more is to come.
        Found::Lively(at) if waiting.now < waking(at.after(CHILL)) => {
            (Verdict::Stop, Next::Chill(waking(at.after(CHILL))))
        }
        Found::Lively(_) => (Verdict::Go, Next::TryOne),
        _ if too_cold(&waiting) => (Verdict::Wait, Next::Warm(ready)),
        Found::Flat(at) if late(&waiting, at) && waiting.now < woken(at) => {
            (Verdict::Wait, Next::Wake(woken(at)))
        }
        Found::Little(at) if late(&waiting, at) && waiting.now < waking(at.after(GREEN)) => {
            (Verdict::Wait, Next::WaitUntil(waking(at.after(GREEN))))
        }
        _ if waiting.now >= ready => (Verdict::Go, Next::TryOne),
        _ => (Verdict::Wait, Next::WaitUntil(ready)),
    };
    let mut worked = Worked::default().input(Term::HistoryOfTheBeer, age);
    if let Some(place) = waiting.place {
        worked = worked.input(Term::WarmestTemperature, place);
    }
    Advice { verdict, reasons, next, worked }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn after(days: f64, place: f64, og: f64) -> Advice<Reason, Next> {
        let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        judge(WaitingBottles {
            bottled,
            place: Some(Celsius::literal(place)),
            original: Some(SpecificGravity::literal(og)),
            found: Found::Nothing,
            now: bottled.after(Hours::nearest(days * 24.0)),
        })
    }

    #[test]
    fn cool_and_strong_take_longer() {
        assert_eq!(after(14.0, 21.0, 1.045).verdict, Verdict::Go);
        assert_eq!(after(13.0, 21.0, 1.045).verdict, Verdict::Wait);
        assert_eq!(after(20.0, 16.0, 1.045).verdict, Verdict::Wait);
        assert_eq!(after(20.0, 21.0, 1.075).verdict, Verdict::Wait);
        assert!(matches!(after(3.0, 10.0, 1.045).next, Next::Warm(_)));
    }

    /// In the cold no number of days makes them ready; warmed today, they take as long as any.
    #[test]
    fn a_cold_cellar_is_never_waited_out() {
        let advice = after(90.0, 10.0, 1.045);
        assert_eq!(advice.verdict, Verdict::Wait);
        let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        assert_eq!(advice.next, Next::Warm(bottled.after(Hours::literal(104.0 * 24.0))));
    }

    #[test]
    fn a_hot_place_is_warned_of() {
        let hot = Celsius::literal(29.0);
        assert!(after(3.0, 29.0, 1.045).reasons.contains(&Reason::Hot(hot)));
    }

    #[test]
    fn the_first_is_chilled_two_days_before_it_is_tried() {
        let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        let waiting = WaitingBottles {
            bottled,
            place: None,
            original: Some(SpecificGravity::literal(1.075)),
            found: Found::Nothing,
            now: bottled,
        };
        let dates = dates(waiting);
        assert_eq!(dates.try_one.since(dates.chill).value(), 48.0);
        assert_eq!(dates.try_one.since(bottled).days(), 28.0);
        assert_eq!(dates.ready_by.since(bottled).days(), 42.0);
    }

    /// Who bottles at night is not called up at night to open one.
    #[test]
    fn what_was_bottled_at_night_is_tried_by_day() {
        let bottled: Moment = "2026-04-01T23:30+01:00".parse().expect("a moment");
        let morning: Moment = "2026-04-16T08:00+01:00".parse().expect("a moment");
        let waiting =
            |now, found| WaitingBottles { bottled, place: None, original: None, found, now };
        assert_eq!(dates(waiting(bottled, Found::Nothing)).try_one, morning);
        assert_eq!(judge(waiting(bottled, Found::Nothing)).next, Next::WaitUntil(morning));
        assert_eq!(judge(waiting(morning, Found::Nothing)).next, Next::TryOne);
        let flat: Moment = "2026-04-20T22:00+01:00".parse().expect("a moment");
        let again: Moment = "2026-04-28T08:00+01:00".parse().expect("a moment");
        assert_eq!(judge(waiting(flat, Found::Flat(flat))).next, Next::Wake(again));
    }

    /// In time a flat one says nothing; later the rest are woken, and one is tried a week on.
    #[test]
    fn a_flat_one_is_left_in_time_and_woken_later() {
        let bottled: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        let day = |days: f64| bottled.after(Hours::nearest(days * 24.0));
        let at = |flat, now| {
            let found = Found::Flat(day(flat));
            let advice = judge(WaitingBottles {
                bottled,
                place: Some(Celsius::literal(20.0)),
                original: None,
                found,
                now: day(now),
            });
            (advice.verdict, advice.next, advice.reasons[0])
        };
        let early = Reason::FlatEarly(day(8.0));
        assert_eq!(at(8.0, 8.0), (Verdict::Wait, Next::WaitUntil(day(14.0)), early));
        assert_eq!(at(8.0, 14.0), (Verdict::Go, Next::TryOne, early));
        let late = Reason::FlatLate(day(20.0));
        assert_eq!(at(20.0, 21.0), (Verdict::Wait, Next::Wake(day(27.0)), late));
        assert_eq!(at(20.0, 27.0), (Verdict::Go, Next::TryOne, late));
    }
}
