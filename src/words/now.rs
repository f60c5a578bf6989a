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
        another_batch: "Another batch",
        in_the_jar: "The hydrometer in its jar",
        expected_end: "expected end",
    } says {
        step: fn(Writer, NextStep) -> (String, &'static str) = step,
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

/// The next step of a batch: one sentence, and the words on the large button.
fn step(w: Writer, next: NextStep) -> (String, &'static str) {
    let (sentence, button) = match next {
        NextStep::Pitch => (
            "Note the starting gravity, bring the wort into the yeast's range, and pitch."
                .to_owned(),
            "Go to Pitch",
        ),
        NextStep::FirstLook(Due::Ahead(at)) => (
            format!("Leave it closed. Take the first reading about {}.", w.day_ahead(at)),
            "Add a reading",
        ),
        NextStep::FirstLook(Due::Since(at)) => (
            format!("The first reading is due since {}: take it now.", w.day_ahead(at)),
            "Add a reading",
        ),
        NextStep::ReadAgain(Due::Ahead(at)) => {
            (format!("Read it again on {} or later.", w.part_of_day(at)), "Add a reading")
        }
        NextStep::ReadAgain(Due::Since(at)) => {
            (format!("Due since {}: read it now.", w.day_ahead(at)), "Add a reading")
        }
        NextStep::Stuck(Due::Ahead(_)) => (
            "It looks stuck. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::Stuck(Due::Since(_)) => {
            ("It looked stuck. Once the steps are done, read it again.".to_owned(), "See the steps")
        }
        NextStep::LookForSigns(Due::Ahead(at)) => (
            format!(
                "Leave it closed. Look for foam or drops under the lid on {}.",
                w.part_of_day(at)
            ),
            "See what to look for",
        ),
        NextStep::LookForSigns(Due::Since(_)) => {
            ("Look now for foam or drops under the lid.".to_owned(), "See what to look for")
        }
        NextStep::PitchAgain => (
            "It has not begun. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::Bottle => (
            "It is finished by its readings. Bottle it when it suits you.".to_owned(),
            "Work out the sugar",
        ),
        NextStep::WaitForBottles(at) => (
            format!("The bottles are working. Try the first on {}.", w.day_ahead(at)),
            "See the bottles",
        ),
        NextStep::TryOne => {
            ("Chill one bottle for two days and try it.".to_owned(), "Note how it was")
        }
        NextStep::MakeSafe => (
            "A bottle gushed or burst. See to the others before anything else.".to_owned(),
            "See what to do",
        ),
        NextStep::WakeBottles(at) => (
            format!("One was flat. Warm them, turn each over, and try one on {}.", w.day_ahead(at)),
            "See the steps",
        ),
        NextStep::AfterSafe(SafeBy::Emptied) => {
            ("The bottles were emptied. Note what it taught.".to_owned(), "See what it taught")
        }
        NextStep::AfterSafe(_) => (
            "Open each cold and slowly, over the sink, eyes and hands covered.".to_owned(),
            "Note a bottle",
        ),
        NextStep::Enjoy => ("Ready. Note how each bottle was.".to_owned(), "Note a bottle"),
    };
    (sentence, button)
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
        NextStep::WaitForBottles(at) => return format!("Try the first {}", w.day_ahead(at)),
        NextStep::TryOne => "Chill one and try it",
        NextStep::MakeSafe => "Gushed or burst: see to the others",
        NextStep::WakeBottles(at) => {
            return format!("Warm them, try one {}", w.day_ahead(at));
        }
        NextStep::AfterSafe(SafeBy::Emptied) => "The bottles were emptied",
        NextStep::AfterSafe(_) => "Open each cold and slowly",
        NextStep::Enjoy => "Ready",
    };
    said.to_owned()
}
