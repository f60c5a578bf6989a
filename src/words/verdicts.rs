//! Verdicts, reasons and next steps in words.

use super::Judged;
use super::cautions::CAUTIONS;
use super::judged;
use crate::advice::open::{Next as OpenNext, Reason as OpenReason};
use crate::advice::pitch::{Next as PitchNext, Reason as PitchReason};
use crate::advice::{Advice, Verdict, open, pitch};
use crate::batch::NextStep;
use crate::quantity::Measured;
use crate::words::write::{self, Writer};

/// The pitching verdict.
pub fn pitch_words(w: Writer, advice: &Advice<pitch::Reason, pitch::Next>) -> Judged {
    let sentence = match advice.verdict {
        Verdict::Go => "Cool enough: pitch.".to_owned(),
        Verdict::Stop => "Far too hot for yeast.".to_owned(),
        Verdict::CantTell => "This reading does not settle it.".to_owned(),
        Verdict::Wait => match advice.next {
            PitchNext::WarmTo(_) => "Too cold for this yeast yet.".to_owned(),
            _ => "Too warm for this yeast yet.".to_owned(),
        },
    };
    let reasons = advice.reasons.iter().map(|reason| pitch_reason(w, *reason)).collect();
    let next = match advice.next {
        PitchNext::Pitch => "Pitch now, seal, and note it below.".to_owned(),
        PitchNext::CoolTo(t) => format!(
            "Cool to {} or a little under, stir, and read again. If the yeast is in already: cool it now; the first two days matter most.",
            w.temperature(t)
        ),
        PitchNext::WarmTo(t) => {
            format!("Let it warm to {}, stir, and read again.", w.temperature(t))
        }
        PitchNext::StirAndRead => "Stir well, wait a minute, and read again.".to_owned(),
        PitchNext::ReadWithProbe => {
            "Read with a clean probe in stirred wort; a strip on the wall is too rough for this."
                .to_owned()
        }
    };
    judged(advice.verdict, sentence, reasons, next)
}

fn pitch_reason(w: Writer, reason: PitchReason) -> String {
    match reason {
        PitchReason::Within(range) => {
            format!(
                "The yeast's range is {} to {}.",
                w.temperature(range.from),
                w.temperature(range.to)
            )
        }
        PitchReason::TooWarm(range, by) => format!(
            "{} above the yeast's range of {} to {}.",
            w.warmth(by.value()),
            w.temperature(range.from),
            w.temperature(range.to)
        ),
        PitchReason::TooCold(range, by) => format!(
            "{} below the yeast's range of {} to {}.",
            w.warmth(by.value()),
            w.temperature(range.from),
            w.temperature(range.to)
        ),
        PitchReason::HarmsYeast(t) => format!("Above about {} yeast is harmed.", w.temperature(t)),
        PitchReason::Scalds => CAUTIONS.hot.to_owned(),
        PitchReason::Layers => "Unstirred wort lies in warm and cold layers.".to_owned(),
        PitchReason::ThermometerTooRough(by) => format!(
            "This thermometer may be out by {}, which reaches past the range.",
            w.warmth(by.value())
        ),
    }
}

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
