//! Watch: is it steady or still falling, and may it be called finished? By rules that can be repeated
//! on paper.
//!
//! Finished needs all of: (a) steady: the last reading and one at least 48 h before it (72 h for lager,
//! strong or cold beer) differ by no more than a point, and what they do *not* rule out is slow; (b) a
//! believable end: within a point of the satellite, or inside the expected range; (c) enough time for
//! the yeast family. Time alone never decides: only readings do.

pub use super::course::{Course, Finish, Look, Next, Reason, State, expected_end};

use super::course::lowest;
use super::family::{Family, Span};
use super::finish::{HAIR, P95, left_by_range, left_by_tail};
use super::{Advice, Verdict};
use crate::order::in_order;
use crate::quantity::{Celsius, GravityChange, Hours, Measured, SpecificGravity};
use crate::science::{Amount, Source, Term, Worked};

/// A fall of this much between two readings is within what an eye can do.
const LEVEL: GravityChange = GravityChange::literal(0.001);
/// The fastest fall that may stay possible in a finish, points a day.
const NOT_RULED_OUT: f64 = 1.5;
/// So far above its end, a steady beer looks stuck.
const STUCK: GravityChange = GravityChange::literal(0.004);
/// So far below its end, something else may be eating: wild or diastatic yeast goes on for weeks.
const FAR_BELOW: GravityChange = GravityChange::literal(0.003);
/// Stronger wort than this finishes slowly.
const STRONG: SpecificGravity = SpecificGravity::literal(1.060);
/// Beer colder than this finishes slowly.
const COLD: Celsius = Celsius::literal(16.0);
/// A rise beyond this is a fault in one of the readings. It does not stretch with their error: a rougher
/// reading must never look more finished.
const ROSE: GravityChange = GravityChange::literal(0.002);

/// Least time between two readings that are compared.
fn needed(course: &Course, last: &Look) -> Hours {
    let strong = course.original.is_some_and(|og| og.value() > STRONG);
    let at_last = course.main.iter().filter(|look| look.at == last.at);
    let cold = at_last.filter_map(|look| look.beer).any(|beer| beer < COLD);
    if strong || cold || course.family == Family::Lager {
        Hours::literal(72.0)
    } else {
        Hours::literal(48.0)
    }
}

/// Judges the course. The order in which readings are given does not matter, nor does the time of
/// day at which it is asked.
#[must_use]
pub fn judge(course: &Course) -> Finish {
    // Of two at one moment the later in order is the more careful: higher, then rougher.
    let main = in_order(course.main.clone(), |a, b| {
        let gravity = |look: &Look| look.gravity.value().value();
        (a.at.cmp(&b.at))
            .then(gravity(a).total_cmp(&gravity(b)))
            .then(a.gravity.sigma().total_cmp(&b.gravity.sigma()))
    });
    let end = expected_end(course);
    let Some(last) = main.last().copied() else {
        return finish(
            State::CannotTell,
            vec![Reason::TooFew { have: 0 }],
            Next::ReadFirst,
            end,
            None,
        );
    };
    let by_range = end.and_then(|end| left_by_range(last.gravity, end));
    let needed = needed(course, &last);
    let again = Next::ReadAgain(last.at.after(needed));
    // Of the readings far enough back, the nearest in time says most about now.
    let earlier =
        main.iter().rev().find(|look| last.at.since(look.at).value() >= needed.value() - 0.5);
    let Some(earlier) = earlier.copied() else {
        let reasons = match main.first() {
            Some(first) if main.len() > 1 => {
                vec![Reason::TooNear { apart: last.at.since(first.at), needed }]
            }
            _ => vec![Reason::TooFew { have: main.len() }],
        };
        let soonest = main.first().map_or(last.at, |first| first.at).after(needed);
        let next = Next::ReadAgain(soonest.max(last.at));
        return finish(State::CannotTell, reasons, next, end, by_range);
    };
    let apart = last.at.since(earlier.at);
    let fall = earlier.gravity.value().value() - last.gravity.value().value();
    let error = earlier.gravity.sigma().hypot(last.gravity.sigma());
    let per_day = fall * 1000.0 / apart.days();
    let hidden = (fall.max(0.0) + P95 * error) * 1000.0 / apart.days();
    let mut reasons = vec![Reason::Compared {
        earlier: earlier.gravity.value(),
        later: last.gravity.value(),
        apart,
    }];
    let worked = Worked::default()
        .input(Term::OriginalGravity, earlier.gravity.value())
        .input(Term::FinalGravity, last.gravity.value())
        .step(Term::PointsLeft, Amount::Number(fall * 1000.0, 1, "points"), "earlier − later", None)
        .step(
            Term::ReadingError,
            Amount::Number(hidden, 1, "points a day"),
            "(fall + 1.96 √(σ₁² + σ₂²)) ÷ days",
            Source::Propagation,
        );

    // The whole run from the earlier reading on has to be level, not its two ends alone.
    let run = main.iter().filter(|look| look.at >= earlier.at);
    let values = || run.clone().map(|look| look.gravity.value().value());
    let highest = values().fold(f64::MIN, f64::max);
    let lowest_in_run = values().fold(f64::MAX, f64::min);
    let rise = last.gravity.value().value() - lowest_in_run;
    let done = |state, reasons, next, left| {
        let mut result = finish(state, reasons, next, end, left);
        result.advice.worked = worked.clone();
        result
    };
    if rise > ROSE.value() + HAIR {
        reasons.push(Reason::Rose(GravityChange::nearest(rise)));
        return done(State::CannotTell, reasons, again, by_range);
    }
    if highest - last.gravity.value().value() > LEVEL.value() + HAIR {
        reasons.push(Reason::Falling(Amount::Number(per_day, 1, "points a day")));
        let state = if per_day < 0.5 { State::Slow } else { State::NotYet };
        return done(state, reasons, again, by_range);
    }
    reasons.push(Reason::NotRuledOut(Amount::Number(hidden, 1, "points a day")));
    let (believable, far_above) = believable_end(course, last, end, &mut reasons);
    if far_above {
        return done(
            State::LooksStuck,
            reasons,
            Next::Rouse(last.at.after(Hours::literal(72.0))),
            by_range,
        );
    }
    let long_enough = long_enough(course, last, &mut reasons);
    if !believable || !long_enough || hidden > NOT_RULED_OUT + HAIR {
        return done(State::OneMore, reasons, again, by_range);
    }
    let slow = needed.value() > 48.0 || course.family.may_go_on();
    let tail = left_by_tail(earlier.gravity, last.gravity, apart, slow);
    let left = by_range.map_or(tail, |range| if range < tail { range } else { tail });
    done(State::Finished, reasons, Next::Bottle, Some(left))
}

/// Rule (b): is this a believable end, and if not, is it so far above that it looks stuck?
fn believable_end(
    course: &Course,
    last: Look,
    end: Option<Span<SpecificGravity>>,
    reasons: &mut Vec<Reason>,
) -> (bool, bool) {
    let now = last.gravity.value().value();
    let may_go_on = course.family.may_go_on();
    if may_go_on {
        reasons.push(Reason::MayGoOn);
    }
    let Some(end) = end else {
        reasons.push(Reason::NoEndKnown);
        return (false, false);
    };
    let above = now - end.to.value();
    let satellite = lowest(&course.satellite).filter(|_| !may_go_on);
    let reason = match satellite {
        Some(satellite) if above > HAIR => {
            let by = GravityChange::nearest(now - satellite.gravity.value().value());
            Reason::AboveSatellite(satellite.gravity.value(), by)
        }
        None if above > HAIR => Reason::AboveRange(end, GravityChange::nearest(above)),
        // Beer that has passed its satellite shows that the satellite had not ended.
        _ if now < end.from.value() - HAIR => {
            Reason::BelowRange(end, GravityChange::nearest(end.from.value() - now))
        }
        Some(satellite) => Reason::AtSatellite(satellite.gravity.value()),
        None => Reason::InRange(end),
    };
    reasons.push(reason);
    // Four above the satellite itself, or above the range's upper end.
    let from = satellite.map_or(end.to.value(), |satellite| satellite.gravity.value().value());
    let far_below = end.from.value() - now > FAR_BELOW.value() + HAIR;
    (above <= HAIR && !far_below, now - from >= STUCK.value() - HAIR)
}

/// Rule (c): enough time for the family, by the clock of the readings.
fn long_enough(course: &Course, last: Look, reasons: &mut Vec<Reason>) -> bool {
    let Some(pitched) = course.pitched else {
        reasons.push(Reason::PitchNotNoted);
        return false;
    };
    let least = course.family.least_time();
    let days = last.at.since(pitched);
    if days < least {
        reasons.push(Reason::TooEarly { days, least });
    }
    days >= least
}

fn finish(
    state: State,
    reasons: Vec<Reason>,
    next: Next,
    end: Option<Span<SpecificGravity>>,
    points_left: Option<GravityChange>,
) -> Finish {
    let verdict = match state {
        State::Finished => Verdict::Go,
        State::NotYet | State::Slow | State::OneMore => Verdict::Wait,
        State::LooksStuck => Verdict::Stop,
        State::CannotTell => Verdict::CantTell,
    };
    Finish {
        state,
        advice: Advice { verdict, reasons, next, worked: Worked::default() },
        end,
        points_left,
    }
}
