//! The words of the sum that brings wort to its yeast's range.

use super::texts::texts;
use super::write::{self, Writer};
use crate::quantity::{Celsius, Grams, Litres};
use crate::science::ScienceError;
use crate::science::cooling::Window;
use crate::science::heat::Blend;

texts! {
    /// What is asked for the sum, and what it says.
    CoolingWords, COOLING {
        wort: "Wort now",
        read_with: "Read with",
        yeast: "Yeast",
        water_or_ice: "Water or ice",
        how_much: "How much wort",
        gravity: "Its gravity",
        water: "Water to add",
        water_hint: "Cold, or warm if the wort is too cold.",
        blend: "The blend",
        waiting: "Or waiting: the cooling clock",
        earlier: "Wort at the earlier look",
        between: "Time between the two looks",
    } says {
        aim: fn(Writer, Celsius) -> String = aim,
        with_water: fn(Writer, Litres, &Blend, bool) -> String = with_water,
        with_ice: fn(Writer, Grams, &Blend, bool) -> String = with_ice,
        clock: fn(&Result<Window, ScienceError>) -> String = clock,
    }
}

fn aim(w: Writer, target: Celsius) -> String {
    format!("Aiming at {}, the middle of the yeast's range.", w.temperature(target))
}

fn with_water(w: Writer, water: Litres, blend: &Blend, known: bool) -> String {
    added(w, &format!("Add {}", w.volume(water)), blend, known)
}

fn with_ice(w: Writer, ice: Grams, blend: &Blend, known: bool) -> String {
    added(w, &format!("Or {} of ice", w.heavy(ice)), blend, known)
}

/// What water or ice does; the gravity is told where that of the wort is known.
fn added(w: Writer, what: &str, blend: &Blend, known: bool) -> String {
    let gravity = if known { format!(" at {}", w.gravity(blend.gravity)) } else { String::new() };
    format!(
        "{what}: then {}{gravity}, {} in the vessel.",
        w.temperature(blend.temperature.value()),
        w.volume(blend.volume)
    )
}

/// When waiting alone brings it there.
fn clock(found: &Result<Window, ScienceError>) -> String {
    match found {
        Err(ScienceError::NothingThere) => "Give a time between the two looks.".to_owned(),
        Err(_) => "It does not come into its range there.".to_owned(),
        Ok(window) => match window.latest {
            Some(latest) => format!(
                "In its range {} to {} after the second look.",
                write::duration(window.earliest),
                write::duration(latest)
            ),
            None => format!(
                "In its range {} after the second look at the soonest, if it gets there.",
                write::duration(window.earliest)
            ),
        },
    }
}
