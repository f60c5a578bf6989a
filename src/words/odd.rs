//! What is asked before something odd is saved.

use super::texts::texts;
use super::write::{self, Writer};
use crate::advice::odd::Odd;

texts! {
    /// What is asked before something odd is saved.
    OddWords, ODD {
        is_that_right: "Is that right?",
        keep: "Yes, keep it as it is",
        change: "No, change it",
        counts_less: "What is kept so counts for less.",
        answer_first: "Say first whether so much beer is right: see below.",
    } says {
        odd: fn(Writer, Odd) -> String = odd,
    }
}

/// What is odd, as a sentence.
fn odd(w: Writer, odd: Odd) -> String {
    match odd {
        Odd::Ahead(at) => format!("{} is still to come.", write::moment(at)),
        Odd::BeforeBegun(by) => {
            format!("That is {} before the batch was begun.", write::duration(by))
        }
        Odd::NoBeer(sg) => format!("Hardly any wort or beer has {}.", w.gravity(sg)),
        Odd::FarFromCourse(span) => format!(
            "By the other readings it should lie between {} and {}.",
            w.gravity(span.from),
            w.gravity(span.to)
        ),
        Odd::Meant(read, meant) => {
            format!("It is taken as {}. Did you mean {}?", w.gravity(read), w.gravity(meant))
        }
        Odd::AboveBatch(batch) => {
            format!("The batch was noted with {}: that is more.", w.volume(batch))
        }
    }
}
