//! How the fermentation stands, why, and what to do next.

use super::doubts::doubt;
use super::reasons::reason;
use crate::advice::standing::{Doubt, Next, Reason, Stage, Standing, State, SugarFrom};
use crate::quantity::Moment;
use crate::words::Judged;
use crate::words::judged;
use crate::words::part_of_day::part;
use crate::words::write::Writer;

/// How the fermentation stands, as one looks at it at `now`.
pub(super) fn finish(w: Writer, standing: &Standing, now: Moment) -> Judged {
    if standing.stage == Stage::Open {
        let (sentence, next) = if standing.hazards.is_empty() {
            ("It is in bottles: go by them.", "See Open for when to try one.")
        } else {
            (
                "A bottle gushed or burst: see to the others first.",
                "Go to Open: it says what to do, step by step.",
            )
        };
        return judged(standing.verdict, sentence, vec![], next);
    }
    let said = reasons(w, standing, now);
    judged(standing.verdict, sentence(w, standing, now), said, next(w, standing, now))
}

fn reasons(w: Writer, standing: &Standing, now: Moment) -> Vec<String> {
    let state = standing.state;
    let mut said: Vec<_> =
        standing.reasons.iter().filter_map(|why| reason(w, state, *why, now)).collect();
    // Of beer that falls nobody asks whether it rests.
    let level = matches!(state, State::Level | State::LooksStuck | State::Finished);
    let named = |doubt: &&Doubt| match doubt {
        // Less than a point is within any bottle's room.
        Doubt::Tail(_, left) => level && left.points() >= 1.0,
        Doubt::Stall(..) | Doubt::Eaten(..) => level,
        _ => true,
    };
    said.extend(standing.doubts.iter().filter(named).map(|one| doubt(w, *one)));
    if matches!(standing.next, Next::ReadAgain(_)) {
        said.push("Waiting is safe for beer; bottling early is not.".to_owned());
    }
    said
}

fn sentence(w: Writer, standing: &Standing, now: Moment) -> String {
    let said = match standing.state {
        State::NotStarted => "Not begun yet: the gravity has not moved.",
        State::Falling => "Still falling: not yet.",
        State::Slow => "Falling slowly: not finished.",
        State::Level => return level(w, standing, now),
        State::LooksStuck => "Looks stuck, far above its end. Do not bottle.",
        State::Finished => "Finished, by these readings.",
        State::CannotTell if standing.next == Next::Pitch => "Not pitched yet.",
        State::CannotTell if standing.reasons.contains(&Reason::Readings(0)) => {
            "Not read since pitching."
        }
        State::CannotTell => "These readings do not tell yet.",
    };
    said.to_owned()
}

/// Level, and from when sugar may go in.
fn level(w: Writer, standing: &Standing, now: Moment) -> String {
    let satellite = standing.sugar.by_satellite(now).is_some();
    match standing.sugar.from {
        SugarFrom::About(at) if at > now => {
            let sooner = if satellite { ", sooner with a satellite" } else { "" };
            format!("Level; sugar from about {}{sooner}.", w.day_ahead(at))
        }
        SugarFrom::About(_) => {
            "Level; read it now, and if it reads the same the sugar may go in.".to_owned()
        }
        SugarFrom::NotWithin(_) if satellite => {
            "Level; only a satellite can settle it within five weeks.".to_owned()
        }
        SugarFrom::NotWithin(_) => "Level, but it may go on for weeks yet.".to_owned(),
        _ if no_room(standing) => {
            "Level, but such bottles leave no room for what may be left.".to_owned()
        }
        _ => "Level, as far as these readings go.".to_owned(),
    }
}

fn no_room(standing: &Standing) -> bool {
    standing.reasons.iter().any(|why| matches!(why, Reason::MayBeLeft(_, None)))
}

fn next(w: Writer, standing: &Standing, now: Moment) -> String {
    match standing.next {
        Next::Pitch => "Note the starting gravity, and pitch.".to_owned(),
        Next::ReadFirst(at) if at > now => {
            format!("Leave it closed. Take the first reading about {}.", w.day_ahead(at))
        }
        Next::ReadFirst(_) => "Take the first reading now.".to_owned(),
        Next::ReadAgain(at) if at <= now => format!("Due since {}: read it now.", w.day_ahead(at)),
        Next::ReadAgain(at) if standing.state == State::NotStarted => format!(
            "Leave it closed and read it again on {}. It needs no fresh yeast yet.",
            w.part_of_day(at)
        ),
        Next::ReadAgain(at) if promised(standing, at) => {
            format!("Read it on {}: if it reads the same, the sugar may go in.", w.part_of_day(at))
        }
        Next::ReadAgain(at) => format!("Read again on {} or later.", w.part_of_day(at)),
        Next::Rouse(at) if at > now => format!(
            "Go through the steps, the reading itself first, and read again on {}.",
            w.day_ahead(at)
        ),
        Next::Rouse(_) => "Go through the steps; where they are done, read it again.".to_owned(),
        Next::LookForSigns(at) if at > now => format!(
            "Leave it closed and look on {} for foam, a dried ring above the beer, or drops under the lid.",
            w.part_of_day(at)
        ),
        Next::LookForSigns(_) => {
            "Look now for foam, a dried ring above the beer, or drops under the lid.".to_owned()
        }
        Next::PitchAgain => {
            "Pitch fresh yeast at its own temperature; this beer may still be given air.".to_owned()
        }
        Next::Bottle => "Bottle it when it suits you.".to_owned(),
        Next::Open => "Go by the bottles.".to_owned(),
        Next::MakeSafe => "See to the bottles first.".to_owned(),
    }
}

/// How a late satellite would show sooner that it has ended; nothing where none would.
pub(super) fn by_satellite(w: Writer, standing: &Standing, now: Moment) -> Option<String> {
    let at = standing.sugar.by_satellite(now).filter(|_| standing.state != State::Finished)?;
    Some(format!(
        "{}: a jar of this beer with fresh yeast, kept warm and shaken. If it reads as the beer does, twice and a day apart, the sugar may go in about {}.",
        if standing.state == State::LooksStuck { "Or show that it has ended" } else { "Sooner" },
        w.part_of_day(at)
    ))
}

/// The day that is waited for, where it stands large: what for, the day, when on it, and what else there is to
/// say.
pub(super) fn ahead(w: Writer, standing: &Standing, now: Moment) -> Option<[String; 4]> {
    let (what, at, else_said) = match standing.next {
        Next::ReadFirst(at) => ("First reading", at, "Leave it closed until then."),
        Next::ReadAgain(at) if standing.state == State::NotStarted => {
            ("Read it again", at, "Leave it closed until then. It needs no fresh yeast yet.")
        }
        Next::ReadAgain(at) if promised(standing, at) => {
            ("Read it again", at, "If it reads the same, the sugar may go in.")
        }
        Next::ReadAgain(at) => ("Read it again", at, ""),
        _ => return None,
    };
    let when = match standing.next {
        Next::ReadAgain(_) => format!("{}, or later", part(w.zone.shown(at))),
        _ => String::new(),
    };
    (at > now).then(|| [what.to_owned(), w.day_ahead(at), when, else_said.to_owned()])
}

/// A reading then is the one that gives the sugar, if it reads the same.
fn promised(standing: &Standing, at: Moment) -> bool {
    matches!(standing.sugar.from, SugarFrom::About(from) if from <= at)
}
