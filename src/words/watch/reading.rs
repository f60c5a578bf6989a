//! The form of a reading.

use crate::batch::Added;
use crate::quantity::SpecificGravity;
use crate::science::sucrose;
use crate::words::texts::texts;
use crate::words::write;

texts! {
    /// What the form of a reading says.
    ReadingWords, READING {
        gravity: "Gravity at 20 °C",
        set_or_type: "Set the stem, or type what it reads.",
        only_change: "Kept beside the others: it shows only whether there was a change.",
        by_refractometer: "By the refractometer, before the yeast.",
        too_hot: "Too hot to trust: cool the sample first.",
        reads: "Hydrometer reads",
        sample: "Sample temperature",
        as_last_time: "As last time; change it if this sample is another.",
        of_the_liquid: "Of the liquid in the jar.",
        more: "Temperatures, time and note",
        beer: "Beer in the fermenter",
        beer_hint: "By strip or probe.",
        room: "Room",
        from: "From",
        the_batch: "The batch",
        the_satellite: "The satellite",
        added: "Added after this reading",
        at: "Read",
        note: "Note",
        refractometer: "Refractometer shows",
        refractometer_hint: "Once the yeast is in it shows only whether there was a change.",
        factor: "Wort factor",
        factor_hint: "Its mark is divided by this in wort; 1.04 is usual.",
        save: "Save the reading",
        save_change: "Save the change",
        not_now: "Not now",
        leave: "Leave it as it was",
        saved: "Reading saved",
        changed: "Reading changed",
    } says {
        what_added: fn(Option<Added>) -> &'static str = what_added,
        extract: fn(SpecificGravity) -> String = extract,
    }
}

/// What may be added.
const fn what_added(added: Option<Added>) -> &'static str {
    match added {
        None => "Nothing",
        Some(Added::Sugar) => "Sugar, honey or malt",
        Some(Added::Fruit) => "Fruit or juice",
        Some(Added::Other) => "Other",
    }
}

/// The same on the other scale.
fn extract(gravity: SpecificGravity) -> String {
    write::extract(sucrose::plato(gravity))
}
