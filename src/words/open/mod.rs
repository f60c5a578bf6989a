//! Opened bottles in words: what to do when something is wrong, and what the batch has taught.

use crate::advice::open::learned::Lesson;
use crate::advice::open::worried::{Action, Cause, Symptom};
use crate::batch::Clarity;
use crate::quantity::{Measured, write_number};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What stands at Open.
    OpenWords, OPEN {} says {}
}

/// How clear it was.
pub const fn clarity(clarity: Clarity) -> &'static str {
    match clarity {
        Clarity::Bright => "Bright",
        Clarity::Hazy => "Hazy",
        Clarity::Cloudy => "Cloudy",
    }
}

/// What is seen.
pub const fn symptom(symptom: Symptom) -> (&'static str, &'static str) {
    match symptom {
        Symptom::OneBurst => ("burst", "One has burst"),
        Symptom::GushingAll => ("gush-all", "All of them gush"),
        Symptom::GushingSome => ("gush-some", "Some gush"),
        Symptom::FlatAll => ("flat-all", "All are flat"),
        Symptom::FlatSome => ("flat-some", "Some are flat"),
    }
}

/// One thing to do.
pub const fn step(step: Action) -> &'static str {
    match step {
        Action::KeepAway => {
            "Go away from them first, and keep the household, children and pets away."
        }
        Action::AssumeTheRest => "One has burst: take it that the rest may.",
        Action::Cover => "Before you go near: eyes and face covered, thick gloves, long sleeves.",
        Action::KeepClosed => {
            "Leave them in their closed case, or put a lidded tub or a heavy blanket over them. Do not shake them, and carry none loose."
        }
        Action::ChillAll => {
            "Chill them all for two days, as cold as you can without freezing: cold lowers the pressure."
        }
        Action::Vent => {
            "Still covered, cold and one at a time: a cloth over the cap, let the gas out slowly, and once more after an hour. Close them again."
        }
        Action::LeaveCold => {
            "If you cannot make them safe, leave them cold and covered, and tell everyone in the house."
        }
        Action::Warm => "Stand them in a warm room, 20 to 24\u{A0}°C, out of the light.",
        Action::TurnOver => "Turn each bottle over once, so that the yeast is in the beer.",
        Action::TestOne => "A week later chill one for two or three days and try it.",
        Action::NoMoreSugar => {
            "No sugar into every bottle, unless one that was kept warm has failed: flat bottles often only need time, and then they would hold too much."
        }
    }
}

/// What may be behind it, and what would tell.
pub const fn cause(cause: Cause) -> &'static str {
    match cause {
        Cause::Unfinished => {
            "It had not finished. To tell: let a cold, opened one go flat and read its gravity; lower than at bottling means that it went on."
        }
        Cause::OverDosed => {
            "Too much sugar for the volume. To tell: compare what was weighed, and the volume in the bottling vessel, with the record."
        }
        Cause::GoesOn => {
            "Wild yeast, bacteria, or a yeast that goes on. To tell: it grows worse by the week, thinner, often sour, and the gravity falls below where it ended."
        }
        Cause::WeakGlass => {
            "The glass: chipped, scratched, thin or one-way. To tell: look at the others, cold and covered, for chips and for the maker's mark."
        }
        Cause::UnevenMixing => {
            "The sugar was not mixed evenly. To tell: bottles filled first and last differ."
        }
        Cause::DirtyBottles => {
            "Those bottles were not clean. To tell: a ring in the neck, an off smell, and only some of them."
        }
        Cause::WarmOrYoung => {
            "Opened warm or young, with the gas not yet in the beer. To tell: chill one for two or three days and open it cold."
        }
        Cause::TooYoung => "Too young. To tell: two or three weeks warm, strong beer four to six.",
        Cause::TooCold => "They stand too cold. To tell: put one in a warm room for two weeks.",
        Cause::NotChilled => {
            "Not chilled long enough before it was opened. To tell: chill one for two or three days."
        }
        Cause::Caps => {
            "Caps or seals leak. To tell: turn one over in water, or squeeze a plastic one."
        }
        Cause::UnderDosed => {
            "Too little sugar, or gas was counted that had left the beer. To tell: compare with the record, and with the warmest it had been."
        }
        Cause::TiredYeast => {
            "The yeast is tired after a long, cold or strong time. To tell: one bottle warm for three weeks, turned over now and then."
        }
    }
}

/// What was learned, as an offer.
pub fn lesson(w: Writer, lesson: Lesson) -> String {
    let points = |change: f64| write_number(1000.0 * change.abs(), 0);
    match lesson {
        Lesson::TooFewBottles { have } => format!(
            "The fizz is judged by two bottles or more that are at least two weeks old; so far there {}.",
            if have == 1 { "is one".to_owned() } else { format!("are {have}") }
        ),
        Lesson::FizzRight(expected) => {
            format!("The fizz is right at the {} that were expected: keep that target.", write::volumes(expected))
        }
        Lesson::TooLively { expected, next } => format!(
            "A little too lively at the {} that were expected. You might try a target of {}.",
            write::volumes(expected),
            write::volumes(next)
        ),
        Lesson::TooFlat { expected, next } => format!(
            "A little too flat at the {} that were expected. You might try a target of {}, if the bottles hold it.",
            write::volumes(expected),
            write::volumes(next)
        ),
        Lesson::Gushes => {
            "At least one gushed. Find out why before you change a target: see \u{201C}Something is wrong\u{201D}.".to_owned()
        }
        Lesson::Flat => {
            "Flat. Find out why before you think of more sugar: see \u{201C}Something is wrong\u{201D}.".to_owned()
        }
        Lesson::Uneven => {
            "Bottles of one batch differ much: mixed or closed unevenly. Stir the syrup in with a spoon, or weigh it into each bottle.".to_owned()
        }
        Lesson::Lost { lost, share } => format!(
            "{} ({}\u{A0}%) were lost between fermenter and bottling vessel. You might plan for that much more.",
            w.volume(lost),
            write_number(100.0 * share.value(), 0)
        ),
        Lesson::LostUsual(lost) => {
            format!("{} were lost between fermenter and bottling vessel, which is usual.", w.volume(lost))
        }
        Lesson::WentFurther(found, span) => format!(
            "Attenuation {}, further than the {} to {} that this kind of yeast is expected to reach. You might state the end by this batch.",
            write::attenuation(found),
            write::attenuation(span.from),
            write::attenuation(span.to)
        ),
        Lesson::StoppedShort(found, span) => format!(
            "Attenuation {}, short of the {} to {} that this kind of yeast is expected to reach. You might set a satellite next time.",
            write::attenuation(found),
            write::attenuation(span.from),
            write::attenuation(span.to)
        ),
        Lesson::AttenuatedAsExpected(found) => {
            format!("Attenuation {}, as expected of this kind of yeast.", write::attenuation(found))
        }
        Lesson::StatedEnd { off, next } => format!(
            "It ended {} points {} the stated end. You might state {} next time.",
            points(off.value()),
            if off.value() > 0.0 { "above" } else { "below" },
            w.gravity(next)
        ),
    }
}
