//! The next step of a batch in words.

use crate::batch::NextStep;
use crate::words::write;

/// The next step of a batch: one sentence, and the words on the large button.
pub fn step_words(next: NextStep) -> (String, &'static str) {
    match next {
        NextStep::Pitch => (
            "Note the starting gravity, bring the wort into the yeast's range, and pitch."
                .to_owned(),
            "Go to Pitch",
        ),
        NextStep::FirstLook(at) => (
            format!("Leave it closed. Take the first reading about {}.", write::day(at)),
            "Add a reading",
        ),
        NextStep::ReadAgain(at) => {
            (format!("Read it again on {} or later.", write::moment(at)), "Add a reading")
        }
        NextStep::Stuck => (
            "It looks stuck. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::LookForSigns(at) => (
            format!(
                "Leave it closed. Look for foam or drops under the lid on {}.",
                write::moment(at)
            ),
            "See what to look for",
        ),
        NextStep::PitchAgain => (
            "It has not begun. Go through the steps before anything else.".to_owned(),
            "See the steps",
        ),
        NextStep::Bottle => (
            "It is finished by its readings. Bottle it when it suits you.".to_owned(),
            "Work out the sugar",
        ),
        NextStep::WaitForBottles(at) => (
            format!("The bottles are working. Try the first on {}.", write::day(at)),
            "See the bottles",
        ),
        NextStep::TryOne => {
            ("Chill one bottle for two days and try it.".to_owned(), "Note how it was")
        }
        NextStep::Enjoy => ("Ready. Note how each bottle was.".to_owned(), "Note a bottle"),
    }
}
