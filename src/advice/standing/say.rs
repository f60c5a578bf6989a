//! From a judged case to its words: state, reasons, doubts, the next step.

use super::judge::{Case, FERMENTED, Judged};
use super::looks::{BETWEEN, Point, dated_ahead, points, sorted};
use super::proof::NIGHTS;
use super::refracted::Change;
use super::said::{Doubt, Next, Reason, State};
use crate::advice::family::{Family, Span};
use crate::advice::practice::{AFTER_ROUSING, APART, Lag, P95, waking};
use crate::quantity::{GravityChange, Hours, Measured, Moment, Share, SpecificGravity};

/// A fall of more than this is a fall, however rough the readings, points.
const MOVED: f64 = 6.0;
/// So soon nothing is asked, hours.
const TOO_SOON: f64 = 12.0;
/// A fall slower than this a day may yet be none, points.
const SLOW: f64 = 0.5;
/// Two readings so many hours apart show how fast it falls.
const A_DAY: f64 = 20.0;
/// Level beer is read within a week, though its promised day lies further ahead: it may settle sooner.
const A_WEEK: Hours = Hours::literal(168.0);
/// Stalled, rather than ended high; and the same where no two sound readings bear it out by its course.
const LIKELY: (f64, f64) = (0.47, 0.7);
/// Where that is often mistaken: nobody knows where the yeast ends, or its end drags on.
const MISTAKEN: (f64, f64) = (0.55, 0.75);
/// Less likely than this a kind of beer is not named.
const NAMED: f64 = 0.01;
/// So far from its course a reading is asked about, points.
const FAR: f64 = 5.0;
/// The usual end lies within so many standard deviations.
const RANGE: f64 = 1.28;

pub(super) fn gravity(points: f64) -> SpecificGravity {
    SpecificGravity::nearest(1.0 + points / 1000.0)
}

pub(super) fn change(points: f64) -> GravityChange {
    GravityChange::nearest(points / 1000.0)
}

/// Whether some reading shows that it ferments, though nobody noted when the yeast went in.
pub(super) fn begun(case: &Case) -> bool {
    let read = || case.looks.main.iter().map(|p| p.value);
    let start = case.record.original.map_or(0.0, |og| og.value().points());
    let (low, high) = (read().fold(f64::MAX, f64::min), read().fold(start, f64::max));
    low < high - MOVED || low < FERMENTED.0
}

/// Has the gravity not moved from its start? Then since when.
pub(super) fn not_moved(case: &Case) -> Option<f64> {
    let original = case.record.original?;
    let last = case.looks.main.last()?;
    let start = original.value().points();
    let unmoved = |p: &Point| {
        let error = (P95 * p.sigma.hypot(original.sigma() * 1000.0)).clamp(1.0, MOVED);
        (start - p.value).abs() <= error
    };
    (last.hours >= TOO_SOON && case.looks.main.iter().all(unmoved)).then_some(last.hours)
}

/// Points a day at the last reading: in the mean of the courses, or as the last two show that are a day apart
/// when that is more.
pub(super) fn falls(case: &Case, judged: &Judged) -> f64 {
    let main = &case.looks.main;
    let shown = main.last().and_then(|last| {
        let before = main.iter().rev().find(|p| last.hours - p.hours >= A_DAY)?;
        Some((before.value - last.value) * 24.0 / (last.hours - before.hours))
    });
    by_course(case, judged).max(shown.unwrap_or(0.0))
}

fn by_course(case: &Case, judged: &Judged) -> f64 {
    let last = case.looks.main.last().map_or(0.0, |p| p.hours);
    let of = &judged.kinds.shapes;
    let sum: f64 = of.iter().map(|of| of.weight).sum();
    let day = |(shape, of): (&super::shapes::Shape, &super::weigh::OfShape)| {
        let before = last - 24.0;
        of.fall * (shape.left(before) - shape.left(last))
            + of.weight * (shape.gone(last) - shape.gone(before))
    };
    let likely = case.weighed.shapes.iter().zip(of).filter(|(_, of)| of.weight > 1e-5 * sum);
    likely.map(day).sum::<f64>() / sum.max(f64::MIN_POSITIVE)
}

/// From which reading on it reads level: by its course, or because the last sound reading and the nearest one
/// two nights before it lie within a point.
fn level(case: &Case, judged: &Judged) -> Option<usize> {
    let main = &case.looks.main;
    let alike = || {
        let last = main.last().filter(|last| last.sound > 0.0)?;
        let before = |p: &Point| last.hours - p.hours >= NIGHTS[case.tail as usize];
        let from = main.iter().rposition(before)?;
        let off = |p: &Point| (p.value - last.value).abs() <= 1.0 + 1e-6;
        main.get(from..)?.iter().all(off).then_some(from)
    };
    let from = match (judged.level_from, alike()) {
        (Some(by_course), Some(alike)) => Some(by_course.min(alike)),
        (by_course, alike) => by_course.or(alike),
    };
    // One reading alone is level with nothing.
    from.filter(|from| main.len() > from + 1)
}

/// The state.
pub(super) fn state(case: &Case, judged: &Judged, room: Option<f64>) -> State {
    if case.looks.main.is_empty() {
        return State::CannotTell;
    }
    if not_moved(case).is_some() {
        return State::NotStarted;
    }
    if judged.bound.zip(room).is_some_and(|(bound, room)| bound <= room) {
        return State::Finished;
    }
    let readings = case.looks.main.len();
    if matches!(case.refracted, Some(Change::Falls(_))) {
        return State::Falling;
    }
    let level = level(case, judged);
    let mistaken = matches!(case.record.family, Family::Unknown | Family::Lager);
    let (proven, clearly) = if mistaken { MISTAKEN } else { LIKELY };
    let likely = if judged.proof.left.is_some() { proven } else { clearly };
    match level {
        Some(_) if judged.drift.is_some() => State::Slow,
        Some(_) if judged.shares.stalled > likely => State::LooksStuck,
        Some(_) => State::Level,
        _ if readings < 2 => State::CannotTell,
        _ if falls(case, judged) < SLOW => State::Slow,
        _ => State::Falling,
    }
}

/// The reasons, the weightiest first.
pub(super) fn reasons(
    case: &Case,
    judged: &Judged,
    state: State,
    room: Option<f64>,
) -> Vec<Reason> {
    let record = &*case.record;
    let main = &case.looks.main;
    let mut said = Vec::new();
    let no_end = record.original.is_none() && record.stated_end.is_none();
    let Some(last) = main.last() else {
        // Whoever pitched without a gravity is told the way from the first day on.
        let blind = no_end && record.pitched.is_some() && case.ends.satellite.is_none();
        said.push(Reason::Readings(0));
        said.extend(blind.then_some(Reason::NoEndKnown));
        return said;
    };
    if let (State::NotStarted, Some(original)) = (state, record.original) {
        let lag = Lag::of(Lag::is_slow(record.family, record.beer_at_last())).signs;
        let (start, now) = (original.value(), gravity(last.value));
        said.push(Reason::NotMoved { start, now, since: Hours::nearest(last.hours) });
        said.extend((last.hours < lag.value()).then_some(Reason::UsualSoSoon(lag)));
        return said;
    }
    let level = level(case, judged).and_then(|from| Some((from, main.get(from)?)));
    match level {
        Some((from, point)) => {
            let run: f64 = main.iter().skip(from).map(|p| p.value).sum();
            let mean = run / (main.len() - from).max(1) as f64;
            said.push(match judged.drift.filter(|_| state != State::Finished) {
                Some(drift) => Reason::Drifting {
                    from: gravity(drift.from.value),
                    to: gravity(last.value),
                    apart: Hours::nearest(last.hours - drift.from.hours),
                    a_week: change(drift.a_week),
                },
                None => Reason::LevelSince(point.at, gravity(mean)),
            });
        }
        // By one reading nobody can say how fast.
        None if main.len() < 2 => {}
        None => said.push(Reason::Falling(change(falls(case, judged)))),
    }
    said.push(Reason::Readings(main.len()));
    said.extend(case.refracted.map(|change| match change {
        Change::Steady => Reason::RefractometerSteady,
        Change::Falls(by) => Reason::RefractometerFalls(by),
    }));
    let upper = judged.bound.unwrap_or(judged.upper);
    said.push(Reason::MayBeLeft(change(upper), room.map(change)));
    if let (Some((from, first)), None) = (level, judged.proof.left) {
        let sound = main.iter().skip(from).rev().find(|p| p.sound > 0.0);
        let apart = sound.map_or(0.0, |p| p.hours - first.hours);
        let needed = NIGHTS[case.tail as usize];
        if apart < needed {
            said.push(Reason::TooNear(Hours::nearest(apart), Hours::nearest(needed)));
        }
    }
    if let Some(beer) = case.cold_at_last() {
        said.push(Reason::LevelWhileCold(beer, record.range()));
    }
    if level.is_some() && judged.age.0 < judged.age.1 - 6.0 {
        let [age, least] = [judged.age.0, judged.age.1].map(Hours::nearest);
        said.push(Reason::TooEarly(age, least));
    }
    said.extend((!judged.fermented && level.is_some()).then_some(Reason::NotKnownToFerment));
    ends(case, last.value, &mut said);
    said.extend(record.family.may_go_on().then_some(Reason::MayGoOn));
    said.extend(record.added.map(Reason::AddedLater));
    said.extend(record.pitched.is_none().then_some(Reason::PitchNotNoted));
    said
}

/// How the beer stands beside where such beer ends.
fn ends(case: &Case, now: f64, said: &mut Vec<Reason>) {
    let record = &*case.record;
    let own = case.ends.own.map(|end| Reason::OwnEnds(record.own_ends.len(), gravity(end)));
    said.extend(own);
    match case.ends.satellite {
        Some(end) => said.push(Reason::Satellite(gravity(end), change(now - end))),
        None if !record.may_go_on() => said.extend(case.looks.satellite.last().map(|last| {
            let lowest = case.looks.satellite.iter().map(|p| p.value).fold(f64::MAX, f64::min);
            let again = waking(last.at.after(APART));
            Reason::SatelliteUnproven(case.looks.satellite.len(), gravity(lowest), again)
        })),
        None => {}
    }
    if record.original.is_none() && record.stated_end.is_none() {
        said.extend(case.ends.satellite.is_none().then_some(Reason::NoEndKnown));
        return;
    }
    let (middle, sigma) = case.ends.expected();
    let (low, high) = (middle - RANGE * sigma, middle + RANGE * sigma);
    let span = Span::new(gravity(low), gravity(high));
    said.push(if now > high {
        Reason::AboveRange(span, change(now - high))
    } else if now < low {
        Reason::BelowRange(span, change(low - now))
    } else {
        Reason::InRange(span)
    });
}

/// What is not ruled out, and what is not believed.
pub(super) fn doubts(case: &Case, judged: &Judged, now: Moment) -> Vec<Doubt> {
    let record = &*case.record;
    let mut said = Vec::new();
    if !case.looks.main.is_empty() {
        let shares = &judged.shares;
        let (healthy, stalled, eaten) =
            (&judged.kinds.healthy, &judged.kinds.stalled, &judged.kinds.eaten);
        let mut name = |share: f64, left: f64, doubt: fn(Share, GravityChange) -> Doubt| {
            said.extend((share > NAMED).then(|| doubt(Share::nearest(share), change(left))));
        };
        name(shares.tail, healthy.mean_above(0.5), Doubt::Tail);
        name(shares.stalled, stalled.mean(), Doubt::Stall);
        name(shares.eaten, eaten.mean(), Doubt::Eaten);
    }
    let far = case
        .looks
        .main
        .iter()
        .enumerate()
        .filter(|(i, p)| (p.value - case.course_at(judged, *i)).abs() > FAR.max(3.0 * p.sigma));
    said.extend(far.map(|(_, p)| Doubt::FarFromCourse(p.at)));
    for seen in sorted(record.main.iter()) {
        if dated_ahead(seen.at, now) {
            said.push(Doubt::Ahead(seen.at));
        }
        let before = record.pitched.is_some_and(|at| at.since(seen.at).value() > 0.0);
        let is_start =
            record.original.is_some_and(|og| (og.value().points() - points(seen)).abs() < 4.0);
        if before && !is_start {
            said.push(Doubt::BeforeYeast(seen.at));
        }
    }
    if case.looks.pitching_doubtful {
        said.extend(record.pitched.map(Doubt::PitchingLongBefore));
    }
    let other = |p: &Point| p.other > 0.5 * BETWEEN;
    said.extend(case.looks.main.iter().any(other).then_some(Doubt::TwoInstruments));
    said
}

/// The next step of beer that is being watched, its date by day.
pub(super) fn next(
    case: &Case,
    judged: &Judged,
    state: State,
    promised: Option<Moment>,
    foretold: Option<Moment>,
) -> Next {
    let record = &*case.record;
    let needed = Hours::nearest(NIGHTS[case.tail as usize]);
    let (Some(last), Some(until)) = (case.looks.main.last(), case.looks.read_until) else {
        // The first useful look is about halfway to the family's least time.
        let half = Hours::nearest(record.family.least_time().value() / 2.0);
        return Next::ReadFirst(waking(record.pitched.unwrap_or(record.begun).after(half)));
    };
    match state {
        State::Finished => Next::Bottle,
        State::LooksStuck => Next::Rouse(waking(until.after(AFTER_ROUSING))),
        State::NotStarted => {
            let lag = Lag::of(Lag::is_slow(record.family, record.beer_at_last()));
            let after = |hours: Hours| waking(case.looks.moment(hours.value()));
            if last.hours < lag.signs.value() {
                Next::LookForSigns(after(lag.signs))
            } else {
                let later = [lag.gravity, lag.pitch_again];
                let due = later.into_iter().find(|due| last.hours < due.value());
                due.map_or(Next::PitchAgain, |due| Next::ReadAgain(after(due)))
            }
        }
        State::Level => {
            let proven = judged.proof.left.is_some();
            let within = waking(until.after(if proven { A_WEEK } else { needed }));
            Next::ReadAgain(promised.map_or(within, |at| at.min(within)))
        }
        State::Falling | State::Slow | State::CannotTell => {
            let soonest = until.after(needed);
            let foretold = foretold.unwrap_or(soonest).min(until.after(A_WEEK));
            Next::ReadAgain(waking(soonest.max(foretold)))
        }
    }
}
