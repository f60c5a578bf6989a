//! Verdicts, reasons and next steps in words.

use super::Judged;
use super::judged;
use crate::advice::open::{Next as OpenNext, Reason as OpenReason};
use crate::advice::{Advice, Verdict, open};
use crate::batch::NextStep;
use crate::quantity::Measured;
use crate::words::write::{self, Writer};

/// When to open one.
pub fn open_words(w: Writer, advice: &Advice<open::Reason, open::Next>) -> Judged {
    let sentence = match advice.verdict {
        Verdict::Go => "Try one.",
        _ => "Leave them a while.",
    };
    let reasons = advice
        .reasons
        .iter()
        .map(|reason| match *reason {
            OpenReason::InBottle(age) if age.value() < 1.0 => "Bottled just now.".to_owned(),
            OpenReason::InBottle(age) => format!("They have stood for {}.", write::duration(age)),
            OpenReason::Strong => "Strong beer takes about four weeks.".to_owned(),
            OpenReason::Cool(t) => format!("At {} it takes about twice as long.", w.temperature(t)),
            OpenReason::TooCold(t) => format!("At {} ale yeast hardly works.", w.temperature(t)),
            OpenReason::Hot(t) => format!(
                "{} is too warm: flavour suffers and the pressure rises. Find a cooler place.",
                w.temperature(t)
            ),
            OpenReason::PlaceUnknown => {
                "Where they stand is not noted; a warm room is assumed.".to_owned()
            }
        })
        .collect();
    let next = match advice.next {
        OpenNext::TryOne => "Chill one for two days, then open it over the sink.".to_owned(),
        OpenNext::WaitUntil(at) => format!("Try the first on {}.", write::day(at)),
        OpenNext::Warm(at) => {
            format!(
                "Move them to a warmer place out of the light. Moved today, try one on {}.",
                write::day(at)
            )
        }
    };
    judged(advice.verdict, sentence.to_owned(), reasons, next)
}

/// The next step of a batch: one sentence, and the words on the large button.
pub fn step_words(next: NextStep) -> (String, &'static str) {
    match next {
        NextStep::Pitch => (
            "Note the starting gravity, bring the wort into the yeast's range, and pitch."
                .to_owned(),
            "Go to Pitch",
        ),
        NextStep::FirstLook(at) => (
            format!("Leave it closed. Take the first reading about {}.", write::day(at)),
            "Add a reading",
        ),
        NextStep::ReadAgain(at) => {
            (format!("Read it again on {} or later.", write::moment(at)), "Add a reading")
        }
        NextStep::Stuck => (
            "It looks stuck. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::LookForSigns(at) => (
            format!(
                "Leave it closed. Look for foam or drops under the lid on {}.",
                write::moment(at)
            ),
            "See what to look for",
        ),
        NextStep::PitchAgain => (
            "It has not begun. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::Bottle => (
            "It is finished by its readings. Bottle it when it suits you.".to_owned(),
            "Work out the sugar",
        ),
        NextStep::WaitForBottles(at) => (
            format!("The bottles are working. Try the first on {}.", write::day(at)),
            "See the bottles",
        ),
        NextStep::TryOne => {
            ("Chill one bottle for two days and try it.".to_owned(), "Note how it was")
        }
        NextStep::Enjoy => ("Ready. Note how each bottle was.".to_owned(), "Note a bottle"),
    }
}
