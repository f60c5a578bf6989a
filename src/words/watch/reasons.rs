//! Why it is judged so.

use crate::advice::standing::{Reason, State};
use crate::quantity::{GravityChange, Measured, Moment, write_number};
use crate::words::write::{self, Writer};

/// One reason; nothing for what the sentence says already.
pub(super) fn reason(w: Writer, state: State, reason: Reason, now: Moment) -> Option<String> {
    let again = |at: Moment| {
        if at > now {
            format!("Read it again on {}.", w.part_of_day(at))
        } else {
            "Read it again.".to_owned()
        }
    };
    let said = match reason {
        Reason::Readings(1) => "One reading can't show whether it still falls.".to_owned(),
        // None at all is said by the sentence.
        Reason::Readings(_) => return None,
        Reason::LevelSince(at, gravity) => {
            format!("Level at {} since {}.", w.gravity(gravity), write::day(at))
        }
        Reason::Drifting { from, to, apart, a_week } => format!(
            "From {} to {} in {}: it drifts down by about {} a week, though from one reading to the next it looks level.",
            w.gravity(from),
            w.gravity(to),
            write::duration(apart),
            w.points(a_week.points())
        ),
        Reason::Falling(by) if by.points() < 0.05 => return None,
        Reason::Falling(by) => format!("It falls by about {} a day.", w.points(by.points())),
        Reason::NotMoved { start, now, since } => format!(
            "It was {} at the start and reads {} after {}.",
            w.gravity(start),
            w.gravity(now),
            write::duration(since)
        ),
        Reason::UsualSoSoon(until) => {
            format!("Up to {} that is usual.", write::duration(until))
        }
        Reason::MayBeLeft(most, room) => may_be_left(w, state, most, room),
        Reason::TooNear(apart, needed) => format!(
            "The level readings are {} apart; {} are needed.",
            write::duration(apart),
            write::duration(needed)
        ),
        Reason::TooEarly(age, least) => format!(
            "Read {} after the yeast went in; this kind takes {} at least.",
            write::duration(age),
            write::duration(least)
        ),
        Reason::LevelWhileCold(beer, range) => format!(
            "At {} a level reading proves little: this yeast works at {} to {}.",
            w.temperature(beer),
            w.degrees(range.from),
            w.degrees(range.to)
        ),
        Reason::InRange(range) => format!(
            "Inside the expected end, {} to {}.",
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        Reason::AboveRange(range, by) => format!(
            "{} above the expected end, {} to {}.",
            w.points(by.points()),
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        Reason::BelowRange(range, by) => format!(
            "{} below the expected end, {} to {}. If it tastes clean, no harm; far below, something else may be eating.",
            w.points(by.points()),
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        Reason::Satellite(end, by) if by.points() > 1.05 => {
            format!("{} above the satellite, which ended at {}.", w.points(by.points()), w.gravity(end))
        }
        Reason::Satellite(end, by) if by.points() < -1.05 => format!(
            "Below the satellite, which ended at {}: the satellite stopped early.",
            w.gravity(end)
        ),
        Reason::Satellite(end, _) => {
            format!("Within a point of the satellite, which ended at {}.", w.gravity(end))
        }
        Reason::SatelliteUnproven(1, lowest, at) => format!(
            "The satellite was read once, at {}; it may end lower. {}",
            w.gravity(lowest),
            again(at)
        ),
        Reason::SatelliteUnproven(_, lowest, at) => format!(
            "The satellite's readings do not yet agree a day apart; the lowest is {}. {}",
            w.gravity(lowest),
            again(at)
        ),
        Reason::NoEndKnown => {
            "Without a starting gravity, a stated end or a satellite there is nothing to compare the end with: only time tells, or a late satellite.".to_owned()
        }
        Reason::OwnEnds(batches, end) => format!(
            "The expected end is also by your last {batches} batches with this yeast: about {} from this start.",
            w.gravity(end)
        ),
        Reason::MayGoOn => "This kind of yeast may go on slowly for weeks.".to_owned(),
        Reason::AddedLater(at) => format!(
            "Something that ferments was added on {}, so no expected end holds and it has to wait longer.",
            write::day(at)
        ),
        Reason::PitchNotNoted => "Nobody noted when the yeast went in.".to_owned(),
        Reason::NotKnownToFerment => "Nothing shows yet that it has fermented.".to_owned(),
        Reason::RefractometerSteady => "The refractometer shows no change.".to_owned(),
        Reason::RefractometerFalls(by) => format!(
            "The refractometer fell by {}\u{A0}°Bx: still falling.",
            write_number(by.value(), 1)
        ),
    };
    Some(said)
}

/// What may be left, beside what the sugar leaves room for.
fn may_be_left(
    w: Writer,
    state: State,
    most: GravityChange,
    room: Option<GravityChange>,
) -> String {
    let left = w.points(most.points());
    match (state, room) {
        (State::Finished, Some(room)) => {
            format!(
                "At most {left} may be left, and the usual sugar leaves room for {}.",
                w.points(room.points())
            )
        }
        (State::Level | State::LooksStuck, Some(room)) if most > room => format!(
            "Up to {left} may be left, and the usual sugar leaves room for {} only.",
            w.points(room.points())
        ),
        (State::Level | State::LooksStuck, Some(_)) => {
            format!("By all readings {left} at most are left, but no two of them prove it yet.")
        }
        (State::Level | State::LooksStuck, None) => format!(
            "Up to {left} may be left, and the usual sugar is too much for such bottles already."
        ),
        _ => format!("Up to {left} may be left to ferment."),
    }
}
