//! What lies ahead, for the phone's own calendar.

use crate::exchange::reminders::What;

/// What is to be done, and how.
const fn words(what: What) -> (&'static str, &'static str) {
    match what {
        What::Read => (
            "read the gravity",
            "Knock the gas out, note the sample's temperature, and read at eye level.",
        ),
        What::ReadSatellite => {
            ("read the satellite again", "It has ended when two readings a day apart agree.")
        }
        What::LookForSigns => (
            "look for signs of fermentation",
            "Foam, a dried ring above the beer, drops under the lid.",
        ),
        What::Ready => (
            "look whether it is ready",
            "By the forecast. Only readings tell: read it, and once more two days later.",
        ),
        What::Bottle => {
            ("bottle it", "Any day from now on. Read it once more before the sugar goes in.")
        }
        What::TryBottle => ("try a bottle", "Chill it for two days, and open it over the sink."),
    }
}

/// An event of a batch: its title, and how it is done.
pub(super) fn reminder(batch: &str, what: What) -> (String, &'static str) {
    let (title, how) = words(what);
    (format!("{batch}: {title}"), how)
}
