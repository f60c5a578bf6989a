//! Verdicts, reasons and next steps in words.

use crate::advice::bottle::{Next as BottleNext, Plan, Reason as BottleReason};
use crate::advice::open::{Next as OpenNext, Reason as OpenReason};
use crate::advice::pitch::{Next as PitchNext, Reason as PitchReason};
use crate::advice::ways_to_bottle::Way;
use crate::advice::{Advice, Verdict, open, pitch};
use crate::batch::NextStep;
use crate::page::parts::answer::Judged;
use crate::page::write::{self, Writer};
use crate::quantity::Measured;

pub(super) fn judged(
    verdict: Verdict,
    sentence: String,
    reasons: Vec<String>,
    next: String,
) -> Judged {
    Judged { verdict, word: super::verdict(verdict), sentence, reasons, next }
}

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
        PitchReason::Scalds => super::HOT_CAUTION.to_owned(),
        PitchReason::Layers => "Unstirred wort lies in warm and cold layers.".to_owned(),
        PitchReason::ThermometerTooRough(by) => format!(
            "This thermometer may be out by {}, which reaches past the range.",
            w.warmth(by.value())
        ),
    }
}

/// The bottling plan, with the ways that were found to a dose.
pub fn bottle_words(w: Writer, plan: &Plan, ways: &[Way]) -> Judged {
    let advice = &plan.advice;
    let sentence = match (advice.verdict, advice.next) {
        (Verdict::Go, _) => "Within the usual ceiling of the weakest bottle.",
        (Verdict::Wait, _) => "No dose yet: the beer is not known to be finished.",
        (_, BottleNext::CoolerPlace(_)) => "No dose: that place is too hot for these bottles.",
        (_, BottleNext::StrongerBottles) => "No dose: these bottles would not do.",
        _ => "No dose: too much for the weakest bottle.",
    };
    let reasons = advice.reasons.iter().map(|reason| bottle_reason(w, *reason)).collect();
    let found = super::bottling::ways(w, ways);
    let next = match advice.next {
        BottleNext::Bottle => "Weigh the sugar; how to mix it in stands below.".to_owned(),
        BottleNext::ReadAgain => {
            let wait = "Read the gravity again before bottling. Less sugar is no answer to beer that still ferments.";
            found.map_or_else(|| wait.to_owned(), |ways| format!("{wait} {ways}"))
        }
        _ => found.unwrap_or_else(|| {
            "The way to a dose: stronger bottles, or wait some days and read the gravity again."
                .to_owned()
        }),
    };
    judged(advice.verdict, sentence.to_owned(), reasons, next)
}

/// Why there is no dose, for those who hear the page; nothing when there is one.
pub fn stopped(judged: &Judged) -> String {
    match judged.verdict {
        Verdict::Stop => {
            format!("{}. {} {}", judged.word, judged.sentence, judged.reasons.join(" "))
        }
        _ => String::new(),
    }
}

fn bottle_reason(w: Writer, reason: BottleReason) -> String {
    match reason {
        BottleReason::NotFinished => "The log does not show a finished fermentation.".to_owned(),
        BottleReason::OnStatedReason => {
            "You go on for a reason of your own; it is kept with the batch.".to_owned()
        }
        BottleReason::LeftUnknown => {
            "Nothing bounds what may still ferment, so ten points are counted.".to_owned()
        }
        BottleReason::NotForPressure => "This glass is not made for pressure at all.".to_owned(),
        BottleReason::AboveCeiling { worst, ceiling } => format!(
            "At worst {}, above the ceiling of {} for the weakest bottle.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::WithinCeiling { worst, ceiling } => format!(
            "At worst {}; the usual ceiling of the weakest bottle is {}.",
            write::volumes(worst),
            write::volumes(ceiling)
        ),
        BottleReason::CautionForGlass => {
            "For glass of unknown make this is already much: stand them cool, in a closed box."
                .to_owned()
        }
        BottleReason::YeastMayGoOn => {
            "This yeast may go on for weeks, so the ceiling is half a volume lower.".to_owned()
        }
        BottleReason::HoldsEnough => "The beer already holds as much as you wish.".to_owned(),
        BottleReason::TooHotAPlace { hottest, pressure, limit } => format!(
            "At {} up to {}; the ceiling of the weakest bottle is {} in a warm room.",
            w.temperature(hottest),
            write::pressure(pressure),
            write::pressure(limit)
        ),
        BottleReason::MostlyStillToCome(gas) => {
            format!("Most of it, up to {}, is what may still ferment.", write::volumes(gas))
        }
        BottleReason::MayHoldMore(gas) => format!(
            "Chilled beer may hold up to {} already; the bottles are judged by that.",
            write::volumes(gas)
        ),
        BottleReason::ScaleTooRough(size) => format!(
            "This scale is too rough for a bottle of {}. Dose the whole vessel, or weigh to 0.1\u{A0}g.",
            write::bottle_size(size)
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
