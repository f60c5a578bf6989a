//! How the fermentation stands, why, and what would settle it.

use super::points;
use crate::advice::watch::{
    Finish, Measure, Next as WatchNext, NextMeasurement, Reason as WatchReason, State,
};
use crate::quantity::{Measured, write_number};
use crate::words::Judged;
use crate::words::judged;
use crate::words::write::{self, Writer};

/// How the fermentation stands.
pub(super) fn finish(w: Writer, finish: &Finish) -> Judged {
    let sentence = match finish.state {
        State::NotStarted => "Not begun yet: the gravity has not moved.",
        State::NotYet => "Still falling: not yet.",
        State::Slow => "Falling slowly: not finished.",
        State::LooksStuck => "Steady, but far above its end: looks stuck. Do not bottle.",
        State::OneMore => "Looks finished: one more reading settles it.",
        State::Finished => "Finished, by these readings.",
        State::CannotTell => "These readings do not tell yet.",
    };
    let mut reasons: Vec<_> =
        finish.advice.reasons.iter().map(|reason| watch_reason(w, *reason)).collect();
    // One more reading is what the next step says already.
    let other = finish.settles.filter(|settles| settles.by != Measure::ReadBeer);
    reasons.extend(other.map(|settles| settles_words(w, settles)));
    let next = match finish.advice.next {
        WatchNext::ReadAgain(at) if finish.state == State::NotStarted => format!(
            "Leave it closed and read it again on {}. Fresh yeast only if it has not moved for about three days.",
            w.ahead(at)
        ),
        WatchNext::ReadFirst => "Take a first reading.".to_owned(),
        WatchNext::ReadAgain(at) => format!(
            "Read again on {} or later. Waiting is safe for beer; bottling early is not.",
            w.ahead(at)
        ),
        WatchNext::Rouse(at) => format!(
            "Go through the steps below, the reading itself first, and read again on {}. Do not bottle it as it is.",
            w.day_ahead(at)
        ),
        WatchNext::LookForSigns(at) => format!(
            "Leave it closed and look on {} for foam, a dried ring above the beer, or drops under the lid.",
            w.ahead(at)
        ),
        WatchNext::PitchAgain => {
            "Pitch fresh yeast at its own temperature; this beer may still be given air.".to_owned()
        }
        WatchNext::Bottle => "Bottle when it suits you.".to_owned(),
    };
    judged(finish.advice.verdict, sentence.to_owned(), reasons, next)
}

fn watch_reason(w: Writer, reason: WatchReason) -> String {
    match reason {
        WatchReason::TooFew { have: 0 } => "No gravity has been read yet.".to_owned(),
        WatchReason::TooFew { .. } => "One reading can't show whether it still falls.".to_owned(),
        WatchReason::OnlyStart => "Nothing was read since the yeast went in.".to_owned(),
        WatchReason::Compared { earlier, later, apart } => format!(
            "Read {} and then {}, {} apart.",
            w.gravity(earlier),
            w.gravity(later),
            write::duration(apart)
        ),
        WatchReason::NotRuledOut(rate) => {
            format!("Readings this rough do not rule out a fall of {}.", w.amount(rate))
        }
        WatchReason::TooNear { apart, needed } => format!(
            "The readings are {} apart; {} are needed.",
            write::duration(apart),
            write::duration(needed)
        ),
        WatchReason::Falling(rate) => format!("It falls by about {}.", w.amount(rate)),
        WatchReason::Rose(by) => format!(
            "The gravity rose by {}: gas on the bulb, a warm sample or a slip of the eye.",
            points(by)
        ),
        WatchReason::AtSatellite(end) => {
            format!("Within a point of the satellite, which ended at {}.", w.gravity(end))
        }
        WatchReason::AboveSatellite(end, by) => {
            format!("{} above the satellite, which ended at {}.", points(by), w.gravity(end))
        }
        WatchReason::InRange(range) => format!(
            "Inside the expected end, {} to {}.",
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        WatchReason::AboveRange(range, by) => format!(
            "{} above the expected end, {} to {}.",
            points(by),
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        WatchReason::BelowRange(range, by) => format!(
            "{} below the expected end, {} to {}. If it tastes clean, no harm; far below, something else may be eating.",
            points(by),
            w.gravity(range.from),
            w.gravity(range.to)
        ),
        WatchReason::NoEndKnown => {
            "Without a starting gravity, a stated end or a satellite there is nothing to compare the end with.".to_owned()
        }
        WatchReason::MayGoOn => "This kind of yeast may go on slowly for weeks.".to_owned(),
        WatchReason::TooEarly { days, least } => format!(
            "{} after pitching is early; this yeast usually wants {} or more.",
            write::duration(days),
            write::duration(least)
        ),
        WatchReason::NotMoved { start, now, since } => format!(
            "{} after pitching it reads {}; it began at {}.",
            write::duration(since),
            w.gravity(now),
            w.gravity(start)
        ),
        WatchReason::UsualSoSoon(until) => {
            format!("In the first {} that is usual.", write::duration(until))
        }
        WatchReason::Drifting { earlier, later, apart, rate } => format!(
            "From {} to {} in {}: it drifts down by about {}, though its last readings look alike.",
            w.gravity(earlier),
            w.gravity(later),
            write::duration(apart),
            w.amount(rate)
        ),
        WatchReason::SatelliteUnproven { lowest, have: 1, again } => format!(
            "The satellite was read once, at {}; it may end lower. Read it again on {}.",
            w.gravity(lowest),
            w.ahead(again)
        ),
        WatchReason::SatelliteUnproven { lowest, again, .. } => format!(
            "The satellite's readings do not yet agree a day apart; the lowest is {}. Read it again on {}.",
            w.gravity(lowest),
            w.ahead(again)
        ),
        WatchReason::WortEndsHigh(range) => format!(
            "The satellite too ended above {}: the wort is like that, and nothing is stuck.",
            w.gravity(range.to)
        ),
        WatchReason::AddedLater(at) => format!(
            "Something that ferments was added on {}, so no expected end holds and it has to wait longer.",
            write::day(at)
        ),
        WatchReason::SoonAfterAddition { days, least } => format!(
            "{} after that is early; {} or more are wanted.",
            write::duration(days),
            write::duration(least)
        ),
        WatchReason::ForecastAhead(at) => format!(
            "By the forecast more than a point is more likely left than not, until {}.",
            w.day_ahead(at)
        ),
        WatchReason::RefractometerSteady => "The refractometer shows no change.".to_owned(),
        WatchReason::RefractometerFalls(by) => format!(
            "The refractometer fell by {}\u{A0}°Bx: still falling.",
            write_number(by.value(), 1)
        ),
        WatchReason::PitchNotNoted => "Nobody noted when the yeast went in.".to_owned(),
    }
}

/// What would settle it.
fn settles_words(w: Writer, settles: NextMeasurement) -> String {
    let at = w.ahead(settles.at);
    match settles.by {
        Measure::ReadBeer => format!("What would settle it: one more reading, on {at} or later."),
        Measure::ReadSatellite => {
            format!("What would settle it: the satellite, read again on {at} or later.")
        }
        Measure::DegasAndRead => {
            "What would settle it: pour a sample to and fro until its gas is out, note its temperature, and read it again.".to_owned()
        }
        Measure::WaterCheck => {
            "What would settle it: the hydrometer in water, and the sample read again with its gas out.".to_owned()
        }
        Measure::LateSatellite => format!(
            "What would settle it: a jar of this beer with fresh yeast, kept warm and shaken, read on {at}."
        ),
        Measure::NotePitching => "What would settle it: note when the yeast went in.".to_owned(),
    }
}
