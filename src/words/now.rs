//! The words of Now, and the next step of a batch.

use super::texts::texts;
use super::write::{self, Writer};
use crate::advice::family::Span;
use crate::batch::{Due, NextStep, SafeBy};
use crate::quantity::{Moment, SpecificGravity};

texts! {
    /// What stands at Now.
    NowWords, NOW {
        lead: "Beside your fermenter: what to do next, why, and how sure. It works with no network and keeps the record on this phone only.",
        or_one_sum: "Or one sum",
        due_too: "Due too",
        next: "Next",
        pitch: "Note the starting gravity, bring the wort into the yeast's range, and pitch.",
        try_one: "Try one",
        another_batch: "Another batch",
        in_the_jar: "The hydrometer in its jar",
    } says {
        button: fn(NextStep) -> &'static str = button,
        in_short: fn(Writer, NextStep) -> String = in_short,
        read_on: fn(Moment) -> String = read_on,
        between: fn(Writer, Span<SpecificGravity>) -> String = between,
        so_far: fn(&str) -> String = so_far,
        since_pitching: fn(&str) -> String = since_pitching,
    }
}

fn read_on(at: Moment) -> String {
    format!("read {}", write::day(at))
}

fn between(w: Writer, span: Span<SpecificGravity>) -> String {
    format!("{} to {}", w.gravity(span.from), w.gravity(span.to))
}

fn so_far(strength: &str) -> String {
    format!("{strength} ABV so far")
}

fn since_pitching(age: &str) -> String {
    format!("{age} since pitching")
}

/// What stands on the large button.
const fn button(next: NextStep) -> &'static str {
    match next {
        NextStep::Pitch => "Go to Pitch",
        NextStep::FirstLook(_) | NextStep::ReadAgain(_) => "Add a reading",
        NextStep::LookForSigns(_) => "See what to look for",
        NextStep::Bottle => "Work out the sugar",
        NextStep::WaitForBottles(_) | NextStep::ChillBottles(_) => "See the bottles",
        NextStep::TryOne => "Note how it was",
        NextStep::MakeSafe => "See what to do",
        NextStep::Stuck(_) | NextStep::PitchAgain | NextStep::WakeBottles(_) => "See the steps",
        NextStep::AfterSafe(SafeBy::Emptied) => "See what it taught",
        NextStep::AfterSafe(_) | NextStep::Enjoy => "Note a bottle",
    }
}

/// The next step of a batch in a line of a list, with its day.
fn in_short(w: Writer, next: NextStep) -> String {
    let said = match next {
        NextStep::Pitch => "Cool it, read it and pitch",
        NextStep::FirstLook(Due::Ahead(at)) => {
            return format!("First reading about {}", w.day_ahead(at));
        }
        NextStep::FirstLook(Due::Since(at)) => {
            return format!("First reading due since {}", w.day_ahead(at));
        }
        NextStep::ReadAgain(Due::Ahead(at)) => return format!("Read again {}", w.day_ahead(at)),
        NextStep::ReadAgain(Due::Since(at)) => {
            return format!("Reading due since {}", w.day_ahead(at));
        }
        NextStep::Stuck(_) => "Looks stuck: go through the steps",
        NextStep::LookForSigns(Due::Ahead(at)) => {
            return format!("Look for foam {}", w.day_ahead(at));
        }
        NextStep::LookForSigns(Due::Since(_)) => "Look now for foam",
        NextStep::PitchAgain => "Not begun: go through the steps",
        NextStep::Bottle => "Finished: bottle it",
        NextStep::WaitForBottles(at) => return format!("Try one {}", w.day_ahead(at)),
        NextStep::TryOne => "Chill one and try it",
        NextStep::MakeSafe => "Gushed or burst: see to the others",
        NextStep::WakeBottles(at) => {
            return format!("Warm them, try one {}", w.day_ahead(at));
        }
        NextStep::ChillBottles(_) => "Lively too soon: chill the others",
        NextStep::AfterSafe(SafeBy::Emptied) => "The bottles were emptied",
        NextStep::AfterSafe(_) => "Open each cold and slowly",
        NextStep::Enjoy => "Ready",
    };
    said.to_owned()
}
