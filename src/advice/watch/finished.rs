//! Watch: is it steady or still falling, and may it be called finished? By rules that can be repeated
//! on paper.
//!
//! Finished needs all of: (a) steady: the last reading and one at least 48 h before it (72 h for lager,
//! strong or cold beer, a week for a yeast that may go on or was fed later) differ by no more than a
//! point, what they do *not* rule out is slow, and the whole late run shows no drift (`steady`); (b) a
//! believable end: within a point of a satellite that had ended itself (`satellite_end`), or inside the
//! expected range; (c) enough time for the yeast family. Time alone never decides: only readings do.

use super::believable_end::{believable_end, long_enough};
use super::course::{Course, Finish, Look, Next, Reason, State};
use super::expected_end::expected;
use super::left_to_ferment::{Tail, left_by_range, left_by_tail};
use super::next_measurement::next_measurement;
use super::refracted::{Change, change};
use super::started::not_started;
use super::steady::{before, drift, level_back, value};
use crate::advice::family::Family;
use crate::advice::practice::{AFTER_ROUSING, COOL_BEER, P95, POINT, STRONG};
use crate::advice::{Advice, Verdict};
use crate::order::in_order;
use crate::quantity::{GravityChange, HAIR, Hours, Measured};
use crate::science::{Amount, Source, Term, Worked};

/// The fastest fall that may stay possible in a finish, points a day.
const NOT_RULED_OUT: f64 = 1.5;
/// A rise beyond this is a fault in one of the readings. It does not stretch with their error: a rougher
/// reading must never look more finished.
const ROSE: GravityChange = GravityChange::literal(0.002);

/// Least time between two readings that are compared, and the tail that may be hidden between them.
fn needed(course: &Course, last: &Look) -> (Hours, Tail) {
    let strong = course.original.is_some_and(|og| og.value() > STRONG);
    let at_last = course.main.iter().filter(|look| look.at == last.at);
    let cold = at_last.filter_map(|look| look.beer).any(|beer| beer < COOL_BEER);
    if course.may_go_on() {
        (Hours::literal(168.0), Tail::GoesOn)
    } else if strong || cold || course.family == Family::Lager {
        (Hours::literal(72.0), Tail::Slow)
    } else {
        (Hours::literal(48.0), Tail::Usual)
    }
}

/// In order of time. Of two at one moment the later in order is the more careful: higher, then rougher.
/// What was read before something was added says nothing of the beer since.
fn in_time(course: &Course) -> Vec<Look> {
    let since = |look: &&Look| course.added.is_none_or(|added| look.at > added);
    in_order(course.main.iter().filter(since).copied().collect(), |a, b| {
        (a.at.cmp(&b.at))
            .then(value(a).total_cmp(&value(b)))
            .then(a.gravity.sigma().total_cmp(&b.gravity.sigma()))
    })
}

/// Judges the course. The order in which readings are given does not matter, nor does the time of
/// day at which it is asked.
///
/// ```
/// use fermentside::advice::{Verdict, family::Family, watch::{Course, Look, State, judge}};
/// use fermentside::quantity::{Estimate, Hours, Moment, SpecificGravity};
///
/// let pitched: Moment = "2026-03-01T12:00+00:00".parse()?;
/// let read = |sg| Estimate::new(SpecificGravity::literal(sg), 0.001);
/// let look = |days| {
///     Look { at: pitched.after(Hours::literal(24.0 * days)), gravity: read(1.011), beer: None }
/// };
/// let (original, pitched) = (Some(read(1.050)), Some(pitched));
/// let start = Course { original, pitched, ..Course::of(Family::CleanAle) };
/// let twice = Course { main: vec![look(8.0), look(11.0)], ..start.clone() };
/// assert_eq!(judge(&twice).advice.verdict, Verdict::Go);
/// let once = Course { main: vec![look(11.0)], ..start };
/// assert_eq!(judge(&once).state, State::CannotTell);
/// # Ok::<(), fermentside::quantity::MomentError>(())
/// ```
#[must_use]
pub fn judge(course: &Course) -> Finish {
    let main = in_time(course);
    let mut found = by_readings(course, &main);
    found.settles = next_measurement(course, &found, main.last());
    found
}

fn by_readings(course: &Course, main: &[Look]) -> Finish {
    let end = expected(course).filter(|_| course.added.is_none());
    let done = |state, reasons, next, points_left| {
        let worked = Worked::default();
        let advice = Advice { verdict: verdict(state), reasons, next, worked };
        Finish { state, advice, end: end.map(|end| end.span), points_left, settles: None }
    };
    let Some(last) = main.last().copied() else {
        let reasons = vec![Reason::TooFew { have: 0 }];
        return done(State::CannotTell, reasons, Next::ReadFirst, None);
    };
    let by_range = end.and_then(|end| left_by_range(last.gravity, end));
    if let Some(found) = not_started(course, main) {
        let (reasons, next) = found.next(last.gravity.value());
        return done(State::NotStarted, reasons, next, by_range);
    }
    if let Some(pitched) = course.pitched.filter(|pitched| last.at <= *pitched) {
        // The first useful look is about halfway to the family's least time.
        let half = Hours::nearest(course.family.least_time().value() / 2.0);
        let next = Next::ReadAgain(pitched.after(half));
        return done(State::CannotTell, vec![Reason::OnlyStart], next, by_range);
    }
    let (needed, tail) = needed(course, &last);
    let again = Next::ReadAgain(last.at.after(needed));
    // Of the readings far enough back, the nearest in time says most about now.
    let Some(at) = before(main, needed) else {
        let first = main.first().map_or(last.at, |first| first.at);
        let mut reasons = vec![if main.len() > 1 {
            Reason::TooNear { apart: last.at.since(first), needed }
        } else {
            Reason::TooFew { have: main.len() }
        }];
        reasons.extend(course.added.map(Reason::AddedLater));
        let next = Next::ReadAgain(first.after(needed).max(last.at));
        return done(State::CannotTell, reasons, next, by_range);
    };
    let earlier = main.get(at).copied().unwrap_or(last);
    let apart = last.at.since(earlier.at);
    let fall = value(&earlier) - value(&last);
    let per_day = fall * 1000.0 / apart.days();
    // The longer it is level, the slower a fall can have been that no reading shows.
    let hidden_since = |look: &Look| {
        let error = look.gravity.sigma().hypot(last.gravity.sigma());
        let fall = (value(look) - value(&last)).max(0.0);
        (fall + P95 * error) * 1000.0 / last.at.since(look.at).days()
    };
    let (from, hidden) = level_back(main, at)
        .map(|look| (*look, hidden_since(look)))
        .fold((earlier, hidden_since(&earlier)), |a, b| if b.1 < a.1 { b } else { a });
    let mut reasons = vec![Reason::Compared {
        earlier: earlier.gravity.value(),
        later: last.gravity.value(),
        apart,
    }];
    let worked = Worked::default()
        .input(Term::OriginalGravity, from.gravity.value())
        .input(Term::FinalGravity, last.gravity.value())
        .input(Term::TimeBetween, last.at.since(from.at))
        .step(
            Term::PointsLeft,
            Amount::Number((value(&from) - value(&last)) * 1000.0, 1, "points"),
            "earlier − later",
            None,
        )
        .step(
            Term::ReadingError,
            Amount::Number(hidden, 1, "points a day"),
            "(fall + 1.96 √(σ₁² + σ₂²)) ÷ days",
            Source::Propagation,
        );
    let done = |state, reasons, next, left| {
        let mut result = done(state, reasons, next, left);
        result.advice.worked = worked.clone();
        result
    };

    // The whole run from the earlier reading on has to be level, not its two ends alone.
    let run = || main.iter().filter(|look| look.at >= earlier.at).map(value);
    let highest = run().fold(f64::MIN, f64::max);
    let rise = value(&last) - run().fold(f64::MAX, f64::min);
    if rise > ROSE.value() + HAIR {
        reasons.push(Reason::Rose(GravityChange::nearest(rise)));
        return done(State::CannotTell, reasons, again, by_range);
    }
    let refracted = change(course, earlier.at);
    if let Some(change) = refracted {
        reasons.push(change.reason());
    }
    let refractometer_falls = matches!(refracted, Some(Change::Falls(_)));
    if highest - value(&last) > POINT.value() + HAIR {
        reasons.push(Reason::Falling(Amount::Number(per_day, 1, "points a day")));
        let state = if per_day < 0.5 { State::Slow } else { State::NotYet };
        return done(state, reasons, again, by_range);
    }
    if let Some(drift) = drift(main, at) {
        let rate = (value(&drift.from) - value(&last)) * 1000.0 / drift.apart.days();
        reasons.push(Reason::Drifting {
            earlier: drift.from.gravity.value(),
            later: last.gravity.value(),
            apart: drift.apart,
            rate: Amount::Number(rate, 2, "points a day"),
        });
        return done(State::Slow, reasons, again, by_range);
    }
    reasons.push(Reason::NotRuledOut(Amount::Number(hidden, 1, "points a day")));
    let (believable, far_above) = believable_end(course, last, &mut reasons);
    if far_above && refractometer_falls {
        return done(State::Slow, reasons, again, by_range);
    }
    if far_above {
        let next = Next::Rouse(last.at.after(AFTER_ROUSING));
        return done(State::LooksStuck, reasons, next, by_range);
    }
    let long_enough = long_enough(course, last, &mut reasons);
    if refractometer_falls {
        return done(State::NotYet, reasons, again, by_range);
    }
    if !believable || !long_enough || hidden > NOT_RULED_OUT + HAIR {
        return done(State::OneMore, reasons, again, by_range);
    }
    let tails = level_back(main, at)
        .map(|look| left_by_tail(look.gravity, last.gravity, last.at.since(look.at), tail));
    let left =
        tails.chain(by_range).fold(GravityChange::nearest(GravityChange::MAX), |least, left| {
            if left < least { left } else { least }
        });
    done(State::Finished, reasons, Next::Bottle, Some(left))
}

/// The one word for a state.
const fn verdict(state: State) -> Verdict {
    match state {
        State::Finished => Verdict::Go,
        State::NotStarted | State::NotYet | State::Slow | State::OneMore => Verdict::Wait,
        State::LooksStuck => Verdict::Stop,
        State::CannotTell => Verdict::CantTell,
    }
}
