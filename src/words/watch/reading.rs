//! The form of a reading.

use crate::batch::{Added, Vessel};
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
        how_warm: "Give the sample's temperature too: without it the reading is taken as at 20 °C, and is less sure.",
        too_hot: "Too hot to trust: cool the sample first.",
        reads: "Hydrometer reads",
        sample: "Sample temperature",
        as_last_time: "As last time.",
        of_the_liquid: "Of the liquid in the jar.",
        more: "Temperatures, time and note",
        beer: "Beer in the fermenter",
        beer_hint: "By strip or probe.",
        room: "Room",
        from: "From",
        nothing: "Nothing",
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
        which_vessel: fn(Vessel) -> &'static str = which_vessel,
        may_be_added: fn(Added) -> &'static str = may_be_added,
        extract: fn(SpecificGravity) -> String = extract,
    }
}

/// What a reading is of.
const fn which_vessel(vessel: Vessel) -> &'static str {
    match vessel {
        Vessel::Main => "The batch",
        Vessel::Satellite => "The satellite",
    }
}

/// What may be added.
const fn may_be_added(added: Added) -> &'static str {
    match added {
        Added::Sugar => "Sugar, honey or malt",
        Added::Fruit => "Fruit or juice",
        Added::Other => "Other",
    }
}

/// The same on the other scale.
fn extract(gravity: SpecificGravity) -> String {
    write::extract(sucrose::plato(gravity))
}
