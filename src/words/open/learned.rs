//! What a batch has taught, as an offer.

use crate::advice::open::learned::Lesson;
use crate::quantity::{Measured, write_number};
use crate::words::write::{self, Writer};

/// What was learned, as an offer.
pub(super) fn lesson(w: Writer, lesson: Lesson) -> String {
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
            "It ended {} {} the stated end. You might state {} next time.",
            w.points((1000.0 * off.value()).abs().round()),
            if off.value() > 0.0 { "above" } else { "below" },
            w.gravity(next)
        ),
    }
}
