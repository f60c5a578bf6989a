//! "There are no bubbles": what the hours, the lid and the gravity say of it.
//!
//! Bubbles prove little and their lack nothing: a bucket's lid leaks. So the answer goes by hours since
//! the yeast went in, by what can be seen through the wall, and above all by the gravity.

use crate::advice::family::Family;
use crate::advice::practice::{Lag, P95, waking};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Celsius, Estimate, GravityChange, Hours, Measured, Moment, SpecificGravity};
use crate::science::{Amount, Source, Term, Worked};

/// A fall of so much is a fermentation well under way.
const WELL_UNDER_WAY: GravityChange = GravityChange::literal(0.010);

/// What was seen from outside.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Signs {
    /// Foam on the beer, or a dried ring above it.
    pub foam: bool,
    /// Drops under the lid.
    pub drops: bool,
    /// The lid stands up, or the airlock is full of foam.
    pub bulging: bool,
    /// The lid gives when pressed, and nothing passes the lock.
    pub leaks: bool,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quiet {
    /// When the yeast went in.
    pub pitched: Moment,
    /// When it was looked at.
    pub now: Moment,
    /// The yeast.
    pub family: Family,
    /// Of the beer, if known.
    pub beer: Option<Celsius>,
    /// The yeast was old, or kept warm.
    pub old_yeast: bool,
    /// What was seen.
    pub seen: Signs,
    /// Gravity at the start, if known.
    pub original: Option<Estimate<SpecificGravity>>,
    /// The last gravity since the yeast went in, and when, if there is one.
    pub read: Option<(Moment, Estimate<SpecificGravity>)>,
}

/// Why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reason {
    /// So long after pitching.
    Since(Hours),
    /// Up to so long nothing need show.
    UsualUntil(Hours),
    /// Lager, cold beer or old yeast takes up to three days.
    SlowKind,
    /// The gravity fell: it ferments.
    Fell(GravityChange),
    /// It ferments, so the gas goes past the lid: no harm.
    LidLeaks,
    /// A dried ring or foam: it ferments, or has.
    Foam,
    /// Drops under the lid: it is warm and gives gas.
    Drops,
    /// The lid is under pressure.
    Bulging,
    /// The gravity has not moved within what the readings can tell.
    NotMoved,
    /// No gravity since the yeast went in, or none at the start.
    NotRead,
}

/// What to do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Next {
    /// Leave it closed.
    Leave,
    /// At arm's length, let the pressure out, clear the lock or fit a tube.
    RelieveLid,
    /// Look then for foam, a ring, drops under the lid.
    Look(Moment),
    /// Take a gravity, not before then.
    TakeGravity(Moment),
    /// Bring it into the range, and take a gravity then.
    WarmAndWait(Moment),
    /// It never began: air, and fresh yeast.
    PitchAgain,
}

/// Judges beer that shows no bubbles.
///
/// ```
/// use fermentside::advice::{family::Family, watch::bubbles::{Next, Quiet, Signs, judge}};
/// use fermentside::quantity::{Hours, Moment};
///
/// let pitched: Moment = "2026-03-01T12:00+00:00".parse()?;
/// let after = |hours| pitched.after(Hours::literal(hours));
/// let quiet = Quiet {
///     pitched,
///     now: after(12.0),
///     family: Family::CleanAle,
///     beer: None,
///     old_yeast: false,
///     seen: Signs::default(),
///     original: None,
///     read: None,
/// };
/// assert_eq!(judge(&quiet).next, Next::Look(after(24.0)));
/// let bulging = Quiet { seen: Signs { bulging: true, ..quiet.seen }, ..quiet };
/// assert_eq!(judge(&bulging).next, Next::RelieveLid);
/// # Ok::<(), fermentside::quantity::MomentError>(())
/// ```
#[must_use]
pub fn judge(quiet: &Quiet) -> Advice<Reason, Next> {
    let since = quiet.now.since(quiet.pitched);
    let slow = quiet.old_yeast || Lag::is_slow(quiet.family, quiet.beer);
    let lag = Lag::of(slow);
    let mut reasons = vec![];
    let mut worked = Worked::default().input(Term::TimeBetween, since);
    let fall = quiet.original.zip(quiet.read).map(|(start, (_, now))| {
        let fall = start.value().value() - now.value().value();
        (fall, P95 * start.sigma().hypot(now.sigma()))
    });
    if let Some((fall, error)) = fall {
        worked =
            worked.step(Term::PointsLeft, Amount::Points(1000.0 * fall), "start − now", None).step(
                Term::ReadingError,
                Amount::Points(1000.0 * error),
                "1.96 √(σ₁² + σ₂²)",
                Source::Propagation,
            );
    }
    let fell = fall.filter(|(fall, error)| fall > error).map(|(fall, _)| fall);
    let moved = fell.map(GravityChange::nearest);
    let Signs { foam, drops, bulging, leaks } = quiet.seen;
    reasons.extend(bulging.then_some(Reason::Bulging));
    reasons.extend(moved.map(Reason::Fell));
    reasons.extend(foam.then_some(Reason::Foam));
    reasons.extend(drops.then_some(Reason::Drops));
    let begun = bulging || foam || drops || moved.is_some();
    let well = moved.is_some_and(|moved| moved >= WELL_UNDER_WAY);
    reasons.extend((!bulging && (leaks || well)).then_some(Reason::LidLeaks));
    reasons.push(Reason::Since(since));
    let done = |verdict, reasons, next| Advice { verdict, reasons, next, worked };
    if bulging {
        return done(Verdict::Stop, reasons, Next::RelieveLid);
    }
    if begun {
        return done(Verdict::Go, reasons, Next::Leave);
    }
    reasons.extend(slow.then_some(Reason::SlowKind));
    if since < lag.gravity {
        reasons.push(Reason::UsualUntil(lag.gravity));
    }
    let at = |hours| quiet.pitched.after(hours);
    // What was read on the first day says nothing yet.
    let late =
        quiet.read.filter(|(read, _)| read.since(quiet.pitched) >= lag.signs && fall.is_some());
    match late {
        _ if since < lag.signs => done(Verdict::Go, reasons, Next::Look(waking(at(lag.signs)))),
        Some((read, _)) => {
            reasons.push(Reason::NotMoved);
            if read.since(quiet.pitched) >= lag.pitch_again {
                done(Verdict::Stop, reasons, Next::PitchAgain)
            } else {
                let then = waking(at(lag.pitch_again)).max(quiet.now);
                done(Verdict::Wait, reasons, Next::WarmAndWait(then))
            }
        }
        None => {
            reasons.push(Reason::NotRead);
            let then = waking(at(lag.gravity));
            let verdict = if since < lag.gravity { Verdict::Wait } else { Verdict::CantTell };
            done(verdict, reasons, Next::TakeGravity(then.max(quiet.now)))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hours: f64) -> Moment {
        let start: Moment = "2026-04-01T18:00+01:00".parse().expect("a moment");
        start.after(Hours::nearest(hours))
    }

    fn sg(value: f64) -> Estimate<SpecificGravity> {
        Estimate::new(SpecificGravity::literal(value), 0.001)
    }

    fn quiet(hours: f64) -> Quiet {
        Quiet {
            pitched: at(0.0),
            now: at(hours),
            family: Family::CleanAle,
            beer: None,
            old_yeast: false,
            seen: Signs::default(),
            original: Some(sg(1.048)),
            read: None,
        }
    }

    #[test]
    fn nothing_is_wrong_on_the_first_day() {
        let found = judge(&quiet(14.0));
        assert_eq!((found.verdict, found.next), (Verdict::Go, Next::Look(at(24.0))));
    }

    #[test]
    fn then_one_looks_and_then_one_reads() {
        let day = judge(&quiet(30.0));
        assert_eq!((day.verdict, day.next), (Verdict::Wait, Next::TakeGravity(at(48.0))));
        let two = judge(&quiet(50.0));
        assert_eq!((two.verdict, two.next), (Verdict::CantTell, Next::TakeGravity(at(50.0))));
        let slow = Quiet { family: Family::Lager, ..quiet(50.0) };
        assert_eq!(judge(&slow).next, Next::TakeGravity(at(72.0)));
        assert_eq!(judge(&Quiet { old_yeast: true, ..quiet(40.0) }).next, Next::Look(at(48.0)));
    }

    #[test]
    fn fresh_yeast_only_when_the_gravity_has_not_moved_for_three_days() {
        let read = |hours: f64, value| Quiet { read: Some((at(hours), sg(value))), ..quiet(hours) };
        assert_eq!(judge(&read(50.0, 1.048)).next, Next::WarmAndWait(at(72.0)));
        assert_eq!(judge(&read(73.0, 1.047)).next, Next::PitchAgain);
        // Three days on, but read on the second: now, and not on a day that has passed.
        let old = Quiet { now: at(80.0), ..read(50.0, 1.048) };
        assert_eq!(judge(&old).next, Next::WarmAndWait(at(80.0)));
        assert_eq!(judge(&read(73.0, 1.030)).next, Next::Leave);
    }

    #[test]
    fn a_fall_without_bubbles_is_a_lid_that_leaks() {
        let found = judge(&Quiet { read: Some((at(70.0), sg(1.020))), ..quiet(70.0) });
        assert_eq!((found.verdict, found.next), (Verdict::Go, Next::Leave));
        assert!(found.reasons.contains(&Reason::LidLeaks), "{:?}", found.reasons);
    }

    #[test]
    fn a_ring_or_drops_show_it_and_a_lid_under_pressure_comes_first() {
        let with = |seen| judge(&Quiet { seen, ..quiet(60.0) });
        assert_eq!(with(Signs { foam: true, ..Signs::default() }).next, Next::Leave);
        assert_eq!(with(Signs { drops: true, ..Signs::default() }).next, Next::Leave);
        let bulging = with(Signs { bulging: true, foam: true, ..Signs::default() });
        assert_eq!((bulging.verdict, bulging.next), (Verdict::Stop, Next::RelieveLid));
        // A lid that leaks explains the silence and proves nothing.
        let leaks = with(Signs { leaks: true, ..Signs::default() });
        assert_eq!(leaks.verdict, Verdict::CantTell);
    }
}
