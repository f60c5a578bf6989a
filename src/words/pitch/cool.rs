//! Whether the wort is cool enough, in words.

use crate::advice::pitch::outlook::Outlook;
use crate::advice::pitch::{Next as PitchNext, Reason as PitchReason};
use crate::advice::thermometer::{ReadWith, Stirred, Thermometer};
use crate::advice::{Advice, Verdict};
use crate::quantity::Measured;
use crate::words::cautions::CAUTIONS;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What is asked of the wort's temperature, and what is made of it.
    CoolWords, COOL {
        wort: "Wort now",
        wort_hint: "Stir it first.",
        read_with: "Read with",
        was: "The wort was",
    } says {
        thermometer: fn(Thermometer) -> &'static str = thermometer,
        stirred: fn(Stirred) -> &'static str = stirred,
        read_in: fn(ReadWith) -> &'static str = read_in,
        no_wort: fn() -> Judged = no_wort,
        verdict: fn(Writer, &Advice<PitchReason, PitchNext>) -> Judged = pitch_words,
        outlook: fn(Writer, &Outlook) -> Judged = outlook_words,
    }
}

const fn thermometer(thermometer: Thermometer) -> &'static str {
    match thermometer {
        Thermometer::Probe => "Probe in the wort",
        Thermometer::Strip => "Strip on the wall",
    }
}

const fn stirred(stirred: Stirred) -> &'static str {
    match stirred {
        Stirred::Yes => "Stirred",
        Stirred::No => "Not stirred",
    }
}

/// Thermometer and stirring in one answer.
const fn read_in(with: ReadWith) -> &'static str {
    match with {
        ReadWith::Probe => "Probe, stirred",
        ReadWith::Strip => "Strip on the wall, stirred",
        ReadWith::Still => "Not stirred",
    }
}

fn no_wort() -> Judged {
    judged(Verdict::CantTell, "Give the wort's temperature.", vec![], "")
}

/// The verdict, and when it will be in range.
fn outlook_words(w: Writer, found: &Outlook) -> Judged {
    let mut judged = pitch_words(w, &found.advice);
    if let Some(window) = &found.in_range {
        let from = write::duration(window.earliest);
        judged.reasons.push(match window.latest {
            Some(to) => {
                format!("In its range {from} to {} after the last look.", write::duration(to))
            }
            None => {
                format!("In its range {from} after the last look at the soonest, if it gets there.")
            }
        });
    }
    if let Some(settles) = found.settles_short {
        let settles = w.temperature(settles);
        judged.reasons.push(format!(
            "It comes to rest at about {settles} there: change the water, add ice, or find another place."
        ));
    } else if found.waiting_is_vain {
        judged
            .reasons
            .push("It is not moving towards the range: waiting alone will not do.".to_owned());
    }
    judged
}

/// The pitching verdict.
fn pitch_words(w: Writer, advice: &Advice<PitchReason, PitchNext>) -> Judged {
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
            "Cool to {} or a little under, stir, and read again. If the yeast is in already: cool it now; the first days matter most.",
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
        PitchReason::ALittleCool(range, by) => format!(
            "{} below the yeast's range of {} to {}: it starts more slowly, and comes to no harm.",
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
