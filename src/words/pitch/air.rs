//! Air before the yeast, in words.

use crate::advice::Verdict;
use crate::advice::pitch::splashing::{TURNS, Turn};
use crate::quantity::{Measured, write_number};
use crate::science::oxygen::{AirInWort, WANTED};
use crate::words::texts::texts;
use crate::words::{Judged, Writer, judged};

texts! {
    /// What is said of air, and on the timer.
    AirWords, AIR {
        unknown: "Once temperature and gravity are read, this says how much oxygen the air can give.",
        aerated: "Splashed or shaken for",
        start_timer: "Start the timer",
        stop_timer: "Stop the timer",
    } says {
        oxygen: fn(Writer, &AirInWort) -> String = oxygen,
        turn: fn(Turn) -> Judged = turn,
    }
}

fn oxygen(w: Writer, air: &AirInWort) -> String {
    format!(
        "Air can give this wort at most {} ±\u{A0}{}\u{A0}{} of oxygen; splashing reaches {} to {}. Yeast is said to want {} to {}; dry yeast brings reserves and needs less. Only before it ferments.",
        write_number(air.full.value().value(), 1),
        write_number(air.full.sigma(), 1),
        w.oxygen(),
        write_number(air.shaken_from.value(), 1),
        write_number(air.shaken_to.value(), 1),
        write_number(WANTED.0.value(), 0),
        write_number(WANTED.1.value(), 0)
    )
}

/// The timer's face.
fn turn(turn: Turn) -> Judged {
    let (verdict, word, sentence) = match turn {
        Turn::Splash { left, turn } => {
            (Verdict::Go, "Splash", format!("{left} s, turn {turn} of {TURNS}"))
        }
        Turn::Rest { left } => (Verdict::Wait, "Rest", format!("{left} s")),
        Turn::Done => (Verdict::Go, "Done", "Stop the timer to note it.".to_owned()),
    };
    Judged { word, ..judged(verdict, sentence, vec![], "") }
}
