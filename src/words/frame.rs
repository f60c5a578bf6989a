//! The words round every screen.

use super::{sentence, texts::texts, write};
use crate::batch::{Rejected, Stage};
use crate::quantity::{Hours, Measured, Moment, write_number};
use crate::store::StoreError;

texts! {
    /// What stands round every screen, and why something was not saved.
    FrameWords, FRAME {
        page: "Fermentside",
        now: "Now",
        batches: "Batches",
        bench: "Bench",
        gear: "Gear",
        places: "Places",
        stages: "Stages",
        once_pitched: "once pitched",
        once_level: "once level",
        once_bottled: "once bottled",
        start_a_batch: "Start a batch",
        nothing_here: "Nothing is kept here",
        go_to_now: "Go to Now",
        no_such_batch: "This batch is not here",
        see_all_batches: "See all batches",
        memory_only: "This browser lets the page keep nothing. What you note is kept only until this page is closed: take a copy, or allow site data.",
        kept_while_open: "Kept only until this page is closed: take a copy",
        see_in_gear: "See it in Gear",
        first_home: "First put this page on the home screen.",
        then_home: "Kept on this phone alone: best on its home screen, and with a copy elsewhere.",
        two_places: "The same thing was changed in two places. Both are kept.",
        choose_in_gear: "Choose in Gear",
        saved_elsewhere: "Something was saved in another tab.",
        show_it: "Show it",
        newer_ready: "A newer version of this page is ready.",
        newer_waits: "A newer version of this page is ready. Save what is half typed first, or leave it.",
        newer_loses: "A newer version of this page is ready. It would forget what this browser did not keep: take a copy first, then load the page again.",
        take_it_now: "Take it now",
        undo: "Undo",
        close: "Close",
        why: "Why, and how sure",
        look_again: "Some fields need another look.",
        written_by_newer: "Not saved: a newer version of this page wrote this. Reload to update.",
        form_unknown: "This was saved in a form that this version can't read. It is kept as it is; see Gear.",
    } says {
        set_aside: fn(usize) -> String = set_aside,
        not_kept: fn(&StoreError) -> String = not_kept,
        rejected: fn(Rejected) -> String = rejected,
        stage: fn(Stage) -> &'static str = stage,
        on: fn(Moment) -> String = on,
        about: fn(Moment) -> String = about,
        day: fn(Hours) -> String = day,
    }
}

fn set_aside(count: usize) -> String {
    let what = if count == 1 { "One saved thing" } else { "Some saved things" };
    format!("{what} could not be read. Kept as it was, and not written over.")
}

fn not_kept(why: &StoreError) -> String {
    match why {
        // Then half-typed text has no room either.
        StoreError::Full => {
            format!("Not saved: {why}. What you typed stays here until the page is closed.")
        }
        _ => format!("Not saved: {why}. What you typed stays here."),
    }
}

fn rejected(why: Rejected) -> String {
    sentence(&why.to_string())
}

/// The day of a stage that is done.
fn on(at: Moment) -> String {
    let (_, month, day, ..) = at.parts();
    write::day_month(day, month)
}

/// The day of a stage to come.
fn about(at: Moment) -> String {
    format!("about {}", on(at))
}

/// How many days a stage has lasted, the first included.
fn day(since: Hours) -> String {
    format!("day {}", write_number((since.value() / 24.0).max(0.0).floor() + 1.0, 0))
}

const fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Pitch => "Pitch",
        Stage::Watch => "Watch",
        Stage::Bottle => "Bottle",
        Stage::Open => "Open",
    }
}
