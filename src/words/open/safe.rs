//! What is asked after a bottle gushed or burst.

use crate::advice::open::SafeBy;
use crate::words::texts::texts;

texts! {
    /// What is asked after a bottle gushed or burst.
    SafeWords, SAFE {
        what_was_done: "When it is done: what was done?",
        say_what: "Say what was done.",
        done: "The others are safe now",
        saved: "Noted what was done",
    } says {
        by: fn(SafeBy) -> &'static str = by,
    }
}

/// What was done.
pub const fn by(by: SafeBy) -> &'static str {
    match by {
        SafeBy::Vented => "All are cold, and each was vented",
        SafeBy::KeptCold => "All are cold and covered, and stay there",
        SafeBy::Emptied => "All were emptied or taken away",
    }
}
