//! When to try the first one, and the plan of the days.

use super::safe;
use crate::advice::open::{Dates, Next, Reason, SafeBy};
use crate::advice::practice::GREEN;
use crate::advice::{Advice, Verdict};
use crate::batch::{BottlingRecord, OpeningRecord};
use crate::quantity::{Hours, Measured, Moment, write_number};
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged, lower};

/// The dates of the plan, what is expected, and where they stand.
pub(super) fn plan(
    w: Writer,
    dates: Option<Dates>,
    now: Moment,
    record: &BottlingRecord,
) -> Vec<(String, String)> {
    let row = |name: &str, figure| (name.to_owned(), figure);
    let days = dates.map(|dates| {
        [
            ("Chill one from", dates.chill),
            ("Try that one", dates.try_one),
            ("The rest ready about", dates.ready_by),
        ]
    });
    // What has passed is no plan any more.
    let days = days.into_iter().flatten().filter(|(_, at)| *at > now);
    let mut rows: Vec<_> = days.map(|(name, at)| row(name, w.day_ahead(at))).collect();
    rows.push(row("Carbonation expected", w.volumes_in_full(record.expected())));
    rows.extend(record.place.map(|t| row("They stand at", w.temperature(t))));
    rows
}

/// What the last bottle says of the others, by its age and its fizz; nothing where the judgement says it.
pub(super) fn answered(age: Hours, opening: &OpeningRecord) -> Option<String> {
    let said = match (opening.fizz.value(), age < GREEN) {
        (2, true) => "had a little fizz, as it should at that age: it builds for two weeks or more",
        (2, false) => "had only a little fizz: give the others two more weeks in a warm room",
        (3, true) => {
            "was right already, and more will come: keep the others cool, and try one soon"
        }
        (3, false) => "was right: the others will change little, and keep best cool and dark",
        (4, true) => "was lively, far too soon: the others will come to much more",
        (4, false) => {
            "was lively: keep the others cold, open them over the sink, and take less sugar next time"
        }
        _ => return None,
    };
    let days = match write_number(age.days(), 0).as_str() {
        "1" => "1\u{A0}day".to_owned(),
        days => format!("{days}\u{A0}days"),
    };
    Some(format!("After {days} the last one {said}."))
}

/// When to open one.
pub(super) fn first(w: Writer, advice: &Advice<Reason, Next>) -> Judged {
    let sentence = match (advice.verdict, advice.next) {
        (_, Next::MakeSafe) => "Make the other bottles safe first.",
        (_, Next::AfterSafe(SafeBy::Emptied)) => "They were emptied.",
        (_, Next::AfterSafe(_)) => "They were made safe: open each with care.",
        (_, Next::Chill(_)) => "Chill all the others now.",
        (_, Next::Wake(_)) => "They should have their fizz by now.",
        (_, Next::Enjoy) => "They have their fizz.",
        (Verdict::Go, _) => "Try one.",
        _ => "Leave them a while.",
    };
    let reasons = advice
        .reasons
        .iter()
        .map(|reason| match *reason {
            Reason::InBottle(age) if age.value() < 1.0 => "Bottled just now.".to_owned(),
            Reason::InBottle(age) => format!("They have stood for {}.", write::duration(age)),
            Reason::Strong => "Strong beer takes about four weeks.".to_owned(),
            Reason::Cool(t) => format!("At {} it takes about twice as long.", w.temperature(t)),
            Reason::TooCold(t) => format!("At {} ale yeast hardly works.", w.temperature(t)),
            Reason::Hot(t) => format!(
                "{} is too warm: flavour suffers and the pressure rises. Find a cooler place.",
                w.temperature(t)
            ),
            Reason::PlaceUnknown => {
                "Where they stand is not noted; a warm room is assumed.".to_owned()
            }
            Reason::Gushed(at) => format!(
                "One gushed or burst on {}: the others may hold as much.",
                write::moment(at)
            ),
            Reason::MadeSafe(by) => {
                format!("After one had gushed or burst: {}.", lower(safe::by(by)))
            }
            Reason::FlatEarly(at) => format!(
                "The one of {} was flat, which at that age says nothing.",
                write::moment(at)
            ),
            Reason::FlatLate(at) => {
                format!("The one of {} was flat at two weeks or more.", write::moment(at))
            }
        })
        .collect();
    let next = match advice.next {
        Next::TryOne => "Chill one for two days, then open it over the sink.".to_owned(),
        Next::WaitUntil(at) => format!("Try one on {}.", w.day_ahead(at)),
        Next::Chill(at) => {
            format!("Keep them covered, and open one over the sink on {}.", w.day_ahead(at))
        }
        Next::Wake(at) => {
            format!("Go through the steps, and try one on {}. No more sugar.", w.day_ahead(at))
        }
        Next::MakeSafe => {
            "Go through the steps in their order, and then say what was done.".to_owned()
        }
        Next::AfterSafe(SafeBy::Emptied) => "See what the batch has taught.".to_owned(),
        Next::AfterSafe(_) => {
            "Open each cold and slowly, over the sink, with eyes and hands covered.".to_owned()
        }
        Next::Enjoy => "Note how each bottle was.".to_owned(),
        Next::Warm(at) => {
            format!(
                "Move them to a warmer place out of the light. Moved today, try one on {}.",
                w.day_ahead(at)
            )
        }
    };
    judged(advice.verdict, sentence.to_owned(), reasons, next)
}
