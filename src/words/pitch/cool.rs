//! Whether the wort is cool enough, in words.

use crate::advice::pitch::outlook::Outlook;
use crate::advice::pitch::{Next as PitchNext, Reason as PitchReason};
use crate::advice::thermometer::ReadWith;
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
        water_or_ice: "With water or ice",
        vessel: "How much wort, and how large its vessel",
        waiting: "By waiting",
        skipped: "The wort's temperature was not read.",
        read_first: "Read the gravity first, then pitch and seal.",
        pitch_now: "Pitch now, and seal.",
        already_in: "If the yeast is in already, cool it now: the first days matter most.",
    } says {
        read_in: fn(ReadWith) -> &'static str = read_in,
        no_wort: fn() -> Judged = no_wort,
        unread: fn(&str) -> Judged = unread,
        verdict: fn(Writer, &Advice<PitchReason, PitchNext>, &str) -> Judged = pitch_words,
        outlook: fn(Writer, &Outlook, &str) -> Judged = outlook_words,
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

/// Wort whose temperature was skipped, and what is next.
fn unread(next: &str) -> Judged {
    judged(Verdict::CantTell, COOL.skipped, vec![], next)
}

/// The verdict, and when it will be in range; of cool wort, what is next.
fn outlook_words(w: Writer, found: &Outlook, next: &str) -> Judged {
    let mut judged = pitch_words(w, &found.advice, next);
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

/// The pitching verdict; of cool wort, what is next.
fn pitch_words(w: Writer, advice: &Advice<PitchReason, PitchNext>, next: &str) -> Judged {
    let sentence = match advice.verdict {
        Verdict::Go => "Cool enough.".to_owned(),
        Verdict::Stop => "Far too hot for yeast.".to_owned(),
        Verdict::CantTell => "This reading does not settle it.".to_owned(),
        Verdict::Wait => match advice.next {
            PitchNext::WarmTo(_) => "Too cold for this yeast yet.".to_owned(),
            _ => "Too warm for this yeast yet.".to_owned(),
        },
    };
    let mut reasons: Vec<_> =
        advice.reasons.iter().map(|reason| pitch_reason(w, *reason)).collect();
    if matches!(advice.next, PitchNext::CoolTo(_)) {
        reasons.push(COOL.already_in.to_owned());
    }
    let next = match advice.next {
        PitchNext::Pitch => next.to_owned(),
        PitchNext::CoolTo(t) => {
            format!("Cool it to {} or a little under, stir, and read again.", w.temperature(t))
        }
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
