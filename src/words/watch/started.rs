//! The steps of a slow beer, the silent airlock, and beer too warm or cold, in words.

use crate::advice::watch::beer_temperature::Notice;
use crate::advice::watch::bubbles::{Next, Reason};
use crate::advice::watch::ladder::Remedy;
use crate::advice::{Advice, Verdict};
use crate::quantity::Moment;
use crate::words::Judged;
use crate::words::judged;
use crate::words::pitch::already_in_words;
use crate::words::write::{self, Writer};

/// One step.
pub(super) fn step(w: Writer, step: Remedy, now: Moment) -> String {
    match step {
        Remedy::LeaveClosed(at) if at <= now => {
            "The first day or two it is left closed.".to_owned()
        }
        Remedy::LeaveClosed(at) => format!("Leave it closed until {}.", w.part_of_day(at)),
        Remedy::LookForSigns(_) => {
            "Press the lid, and look for foam, a dried ring above the beer, or drops under the lid."
                .to_owned()
        }
        Remedy::TakeGravity(at) if at <= now => "Take a gravity.".to_owned(),
        Remedy::TakeGravity(at) => format!("Take a gravity on {} or later.", w.part_of_day(at)),
        Remedy::Degas => {
            "Pour the sample to and fro until its gas is out, and read it again.".to_owned()
        }
        Remedy::SampleTemperature => "Note the sample's temperature.".to_owned(),
        Remedy::WaterCheck => "Try the hydrometer in water; note it in Gear.".to_owned(),
        Remedy::CompareSatellite => {
            "Compare with a satellite that has ended: dark kits really end high.".to_owned()
        }
        Remedy::WarmTo(t) => {
            format!("Warm it to {}, the top of the yeast's range, over a day.", w.degrees(t))
        }
        Remedy::BringInto(range) => format!(
            "Bring it into the yeast's range, {} to {}.",
            w.degrees(range.from),
            w.degrees(range.to)
        ),
        Remedy::Rouse => "Swirl the yeast up gently, without splashing. No air now.".to_owned(),
        Remedy::WaitUntil(at) if at <= now => "Three days later read it again.".to_owned(),
        Remedy::WaitUntil(at) => format!("Wait, and read again on {}.", w.day_ahead(at)),
        Remedy::Aerate => {
            "Shake or splash it now; only beer that never began may be given air.".to_owned()
        }
        Remedy::FreshYeast => {
            "Only then: fresh yeast, awake and working when it goes in.".to_owned()
        }
    }
}

/// Too warm or too cold, by the last temperature noted.
pub(super) fn warmth(w: Writer, notice: &Notice) -> Judged {
    let mut words = already_in_words(w, &notice.advice);
    let beer = w.temperature(notice.beer.value());
    let doubt = w.warmth(notice.beer.sigma());
    let cold = matches!(notice.advice.next, crate::advice::pitch::already_in::Next::WarmTo(_));
    words.sentence = match (notice.sure, cold) {
        (true, true) => "The beer is too cold for its yeast.",
        (true, false) => "The beer is too warm for its yeast.",
        (false, true) => "The beer may be too cold for its yeast.",
        (false, false) => "The beer may be too warm for its yeast.",
    }
    .to_owned();
    words.reasons.insert(
        0,
        if notice.by_room {
            format!("By its room the beer is at about {beer} ± {doubt}, its own warmth included.")
        } else {
            format!("The beer was last at {beer} ± {doubt}.")
        },
    );
    words
}

/// What can be seen or known from outside.
pub(super) const SIGNS: [&str; 5] = [
    "Foam, or a dried ring above the beer",
    "Drops under the lid",
    "The lid bulges, or foam fills the airlock",
    "The lid gives when pressed",
    "The yeast was old or kept warm",
];

/// The silent airlock.
pub(super) fn bubbles(w: Writer, advice: &Advice<Reason, Next>) -> Judged {
    let sentence = match (advice.verdict, advice.next) {
        (Verdict::Stop, Next::RelieveLid) => "The lid is under pressure: see to it first.",
        (Verdict::Stop, _) => "It has not begun.",
        (Verdict::Go, Next::Look(_)) => "Nothing is wrong so soon.",
        (Verdict::Go, _) => "It ferments. The beer is fine.",
        (Verdict::CantTell, _) => "Only a gravity can tell.",
        (Verdict::Wait, _) => "Wait: it may yet begin.",
    };
    let reasons = advice.reasons.iter().map(|reason| match *reason {
        Reason::Since(hours) => format!("{} since the yeast went in.", write::duration(hours)),
        Reason::UsualUntil(hours) => {
            format!("Up to {} nothing need show.", write::duration(hours))
        }
        Reason::SlowKind => "Lager, cold beer or old yeast takes longer.".to_owned(),
        Reason::Fell(by) => format!("The gravity fell by {}.", w.points(by.points())),
        Reason::LidLeaks => {
            "The gas goes past the lid: a lid that leaks is the usual reason, and no harm."
                .to_owned()
        }
        Reason::Foam => "Foam or a dried ring shows that it ferments, or has.".to_owned(),
        Reason::Drops => "Drops under the lid show that it works.".to_owned(),
        Reason::Bulging => "A lid that stands up holds pressure.".to_owned(),
        Reason::NotMoved => "The gravity has not moved.".to_owned(),
        Reason::NotRead => "No gravity was read since, or none at the start.".to_owned(),
    });
    let next = match advice.next {
        Next::Leave => "Leave it closed. Bubbles prove little, and their lack nothing.".to_owned(),
        Next::RelieveLid => {
            "At arm's length and with the face away, lift an edge of the lid; then clear the airlock, or lead a tube into water.".to_owned()
        }
        Next::Look(at) => format!("Leave it closed, and look on {}.", w.part_of_day(at)),
        Next::TakeGravity(at) => format!("Take a gravity on {} or later.", w.part_of_day(at)),
        Next::WarmAndWait(at) => format!(
            "Bring it into the yeast's range and take another gravity on {}. Fresh yeast only if it has not moved by then.",
            w.part_of_day(at)
        ),
        Next::PitchAgain => {
            "Shake or splash it, and pitch fresh yeast at its own temperature.".to_owned()
        }
    };
    judged(advice.verdict, sentence, reasons.collect(), next)
}
