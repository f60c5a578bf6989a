//! What stands at Open.

mod first;
mod learned;
mod safe;
mod worried;

pub use safe::SafeWords;
pub use worried::WorriedWords;

use super::texts::texts;
use super::write::moment;
use super::{Judged, Writer};
use crate::advice::Advice;
use crate::advice::open::learned::Lesson;
use crate::advice::open::{Dates, Next, Reason};
use crate::batch::{BottlingRecord, Clarity, OpeningRecord};
use crate::quantity::{Hours, Moment};

texts! {
    /// What stands at Open.
    OpenWords, OPEN {
        nothing_yet: "Nothing is noted as bottled yet.",
        try_one: "Try one before you count on the rest. Keep them dark, and the bottles closed in a case.",
        moved: "Moved the bottles?",
        place: "Where they stand now",
        place_hint: "Out of a cool place, their days count from now.",
        stand_there: "They stand there now",
        place_saved: "Place saved",
        how_it_was: "Note a bottle",
        fizz: "Fizz",
        say_fizz: "Say how much fizz it had, 1 to 5, or that it burst.",
        how_clear: "How clear",
        more: "Taste, note, time",
        taste: "Taste",
        note: "Anything else",
        at: "Opened",
        save: "Save",
        saved: "Bottle noted",
        delete: "Delete",
        deleted: "Bottle deleted",
        taught: "What this batch taught",
        only_offered: "Only suggestions: nothing is changed by itself.",
    } says {
        first: fn(Writer, &Advice<Reason, Next>) -> Judged = first::first,
        answered: fn(Hours, &OpeningRecord) -> Option<String> = first::answered,
        plan: fn(Writer, Option<Dates>, Moment, &BottlingRecord) -> Vec<(String, String)> = first::plan,
        fizzes: [&'static str; 6] =
            ["1 flat", "2 little", "3 right", "4 much", "5 gushes", "It burst by itself"],
        clarity: fn(Clarity) -> &'static str = clarity,
        fizz_of: fn(&OpeningRecord) -> String = fizz_of,
        tasted: fn(&OpeningRecord) -> String = tasted,
        delete_it: fn(&OpeningRecord) -> String = delete_it,
        lesson: fn(Writer, Lesson) -> String = learned::lesson,
        safe: SafeWords = safe::SAFE,
        worried: WorriedWords = worried::WORRIED,
    }
}

/// How clear it was.
const fn clarity(clarity: Clarity) -> &'static str {
    match clarity {
        Clarity::Bright => "Bright",
        Clarity::Hazy => "Hazy",
        Clarity::Cloudy => "Cloudy",
    }
}

fn fizz_of(record: &OpeningRecord) -> String {
    if record.burst { "It burst".to_owned() } else { format!("Fizz {} of 5", record.fizz.value()) }
}

/// How it looked and tasted, as far as it was noted.
fn tasted(record: &OpeningRecord) -> String {
    let clear = record.clarity.map(|one| clarity(one).to_owned());
    let taste = Some(record.taste.clone()).filter(|taste| !taste.is_empty());
    [clear, taste].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn delete_it(record: &OpeningRecord) -> String {
    format!("Delete the bottle of {}", moment(record.at))
}
