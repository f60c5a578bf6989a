//! The pitching as it was recorded, and what to do about it, in words.

use crate::advice::pitch::already_in::{self, Silence};
use crate::advice::practice::Lag;
use crate::advice::{Advice, Verdict};
use crate::quantity::{Hours, Measured, write_number};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What stands at Pitch once the yeast is in.
    PitchedWords, PITCHED {
        yeast_is_in: "The yeast is in",
        delete: "Delete the pitching",
        deleted: "Pitching deleted",
        pitched: "Pitched",
        wort: "Wort",
        volume: "Volume",
        water: "Water added",
        ice: "Ice added",
        by_sample: "OG by the sample",
        by_ingredients: "OG by the ingredients",
        yeast: "Dry yeast",
        sachets: "Sachets",
        packet: "Packet",
        splashed: "Splashed",
        satellite: "Satellite",
        satellite_set: "set",
        satellite_none: "none",
        stands_in: "Vessel",
        place: "Place",
        room: "Room",
        note: "Note",
    } says {
        silence: fn(Hours, Lag) -> String = silence,
        already_in: fn(Writer, &Advice<already_in::Reason, already_in::Next>) -> Judged = already_in_words,
    }
}

/// What to make of the quiet so long after pitching.
fn silence(since: Hours, lag: Lag) -> String {
    let age = write_number(since.value().max(0.0), 0);
    let told = match already_in::silence(since, lag) {
        Silence::Usual => format!(
            "Up to {} of quiet is usual. Keep it closed, dark and at an even temperature.",
            write::duration(lag.signs)
        ),
        Silence::LookUnderLid => {
            "Still quiet? Press the lid and look for a ring of foam, or drops under it: with a bucket lid, bubbles mean little.".to_owned()
        }
        Silence::TakeGravity => {
            "Still quiet? Take a gravity. A fall with no bubbles is a leaking lid and no harm.".to_owned()
        }
        Silence::PitchAgain => {
            "Pitch again only if the gravity has not moved by now; else leave it alone.".to_owned()
        }
    };
    if age == "0" {
        return format!("Pitched just now. {told}");
    }
    format!("{age}\u{A0}h since pitching. {told}")
}

/// Beer whose yeast is in already.
pub fn already_in_words(
    w: Writer,
    advice: &Advice<already_in::Reason, already_in::Next>,
) -> Judged {
    use already_in::{Next, Reason};
    let sentence = match advice.verdict {
        Verdict::Go => "The beer is in its range.",
        Verdict::Stop => "Far too hot for the yeast.",
        _ => "The beer is out of its range.",
    };
    let reasons = advice.reasons.iter().map(|reason| match *reason {
        Reason::Within(r) => {
            format!("The yeast's range is {} to {}.", w.degrees(r.from), w.degrees(r.to))
        }
        Reason::TooWarm(r, by) => {
            format!("{} above {} to {}.", w.warmth(by.value()), w.degrees(r.from), w.degrees(r.to))
        }
        Reason::TooCold(r, by) => {
            format!("{} below {} to {}.", w.warmth(by.value()), w.degrees(r.from), w.degrees(r.to))
        }
        Reason::BeginsCool(r, by) => format!(
            "{} below {} to {}: it begins more slowly, and warms itself as it does.",
            w.warmth(by.value()),
            w.degrees(r.from),
            w.degrees(r.to)
        ),
        Reason::YeastMayBeLost(t) => format!("From about {} some yeast is lost.", w.degrees(t)),
        Reason::KillsYeast(t) => format!("At about {} yeast dies.", w.degrees(t)),
        Reason::Fruity => "Expect fruity or solvent-like notes, and no other harm.".to_owned(),
        Reason::EarlyDays(_) => "The first three days matter most.".to_owned(),
        Reason::LateDays(_) => "What the warm days have done is done.".to_owned(),
    });
    let next = match advice.next {
        Next::Leave => "Leave it.".to_owned(),
        Next::CoolNow(t) => {
            format!("Cool it to {} now: wet cloth, a tub of water, a cooler room.", w.degrees(t))
        }
        Next::CoolAndKeepSpare(t) => format!(
            "Cool it to {} now, and keep a spare sachet in case it never begins.",
            w.degrees(t)
        ),
        Next::CoolAndPitchAgain(t) => {
            format!("Cool it to {} and pitch fresh yeast there.", w.degrees(t))
        }
        Next::HoldSteady => {
            "Keep it from warming further; a fast fall now would stop the yeast.".to_owned()
        }
        Next::WarmTo(t) => format!("Warm it gently to {}.", w.degrees(t)),
    };
    judged(advice.verdict, sentence, reasons.collect(), next)
}
