//! The words of pitching day's form as a whole.

use crate::choices::YesNo;
use crate::words::texts::texts;

texts! {
    /// What the form says that is of no one section.
    DayWords, DAY {
        pitched: "Pitched",
        note: "Note",
        yeast_is_in: "The yeast is in",
        saved: "Pitching saved",
        saved_without_own: "Pitching saved. Your own batches are left out: their yeast has another name",
        half_a_sample: "The sample's gravity is missing. Give it, or empty its temperature.",
        empty_for_none: "Leave empty for none.",
    } says {
        yes_no: fn(YesNo) -> &'static str = yes_no,
    }
}

const fn yes_no(answer: YesNo) -> &'static str {
    match answer {
        YesNo::No => "No",
        YesNo::Yes => "Yes",
    }
}
