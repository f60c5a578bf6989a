//! The words of the list of batches, of a batch's head and of its form.

use super::frame::FRAME;
use super::texts::texts;
use crate::advice::standing::State;
use crate::batch::Stage;

texts! {
    /// What stands at the list of batches, at a batch's head and in its form.
    BatchesWords, BATCHES {
        no_batch_yet: "No batch yet. Start one on brewing day, or note one that is already under way.",
        due: "Due",
        later: "Later",
        begun_each_year: "Begun in each year",
        change: "Change",
        take_in_hand: "Show on Now",
        strength: "Strength",
        name: "Name",
        give_name: "Give it a name.",
        brewing_day: "Brewing day",
        volume: "Volume in the fermenter",
        leave_empty: "Leave both empty if you don't know them.",
        start: "Starting gravity (OG) by kit or recipe",
        end: "Final gravity (FG) by kit or recipe",
        packet_from: "Packet: temperature from",
        packet_to: "Packet: temperature up to",
        packet_and_instrument: "Packet and instrument",
        save: "Save",
        start_it: "Start",
        change_the_batch: "Change the batch",
        delete_batch: "Delete this batch",
        both_or_neither: "Give both temperatures of the packet, or neither.",
        end_below_start: "The final gravity should be below the starting gravity.",
        changed: "Batch changed",
        deleted: "Batch deleted, with its log",
    } says {
        begun: fn(&str, u32) -> String = begun,
        others: fn(usize) -> String = others,
        standing: fn(Stage, Option<State>) -> String = standing,
        state: fn(State) -> &'static str = state,
        start_fact: fn(&str, bool) -> String = start_fact,
        now_fact: fn(&str) -> String = now_fact,
        strength_fact: fn(&str, &str, bool) -> String = strength_fact,
    }
}

/// Those that stand further down.
fn others(count: usize) -> String {
    let what = if count == 1 { "batch" } else { "batches" };
    format!("{count} more {what}")
}

fn begun(volume: &str, batches: u32) -> String {
    let what = if batches == 1 { "batch" } else { "batches" };
    format!("{volume} in {batches} {what}")
}

/// Where a batch is: its stage, and while it is watched how it stands.
fn standing(stage: Stage, watched: Option<State>) -> String {
    let name = (FRAME.stage)(stage);
    watched.map_or_else(|| name.to_owned(), |is| format!("{name}: {}", state(is)))
}

/// How a batch stands, in a word or two for a list.
const fn state(state: State) -> &'static str {
    match state {
        State::NotStarted => "not begun",
        State::Falling => "still falling",
        State::Slow => "slow",
        State::Level => "level",
        State::LooksStuck => "looks stuck",
        State::Finished => "finished",
        State::CannotTell => "can't tell yet",
    }
}

fn start_fact(gravity: &str, was_read: bool) -> String {
    format!("Start {gravity}{}", if was_read { "" } else { " stated" })
}

fn now_fact(gravity: &str) -> String {
    format!("now {gravity}")
}

fn strength_fact(strength: &str, sigma: &str, bottled: bool) -> String {
    format!(
        "{strength} ±\u{A0}{sigma} ABV{}",
        if bottled { " with the priming sugar" } else { " so far" }
    )
}
