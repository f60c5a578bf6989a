//! The ways to the yeast's range, in words.

use crate::advice::pitch::ways_to_range::{Means, Reach, Takes, Way};
use crate::quantity::{Celsius, Litres, SpecificGravity};
use crate::words::texts::texts;
use crate::words::write::{self, Writer};

texts! {
    /// What is asked for the ways there, what each takes, and the words in its drawing.
    WaysWords, WAYS {
        in_vessel: "In the vessel now",
        holds: "The vessel holds to the brim",
        water: "Water at hand",
        water_hint: "Boiled and cooled, or sealed.",
        ice: "Clean ice at hand",
        bath: "Water or air around it",
        bath_hint: "As it is now.",
        tub: "Water in the tub",
        tub_hint: "Of a tub that the wort warms. Empty for a room, or water kept cold.",
        earlier: "Wort at the earlier look",
        between: "Time between the two looks",
        layer_wort: "wort",
        layer_water: "water",
        layer_ice: "ice",
    } says {
        title: fn(Writer, &Way) -> String = way_title,
        cost: fn(Writer, &Way, bool) -> String = way_cost,
        layer: fn(Writer, Litres, Celsius) -> String = layer,
        comes_to: fn(Writer, Litres, Option<SpecificGravity>) -> String = comes_to,
    }
}

/// A layer of a drawing: how much, and how warm.
fn layer(w: Writer, volume: Litres, t: Celsius) -> String {
    format!("{}, {}", w.volume(volume), w.degrees(t))
}

/// What stands in the vessel after; without a gravity where that is not known.
fn comes_to(w: Writer, volume: Litres, gravity: Option<SpecificGravity>) -> String {
    let volume = w.volume(volume);
    gravity.map_or_else(|| volume.clone(), |gravity| format!("{volume} at {}", w.gravity(gravity)))
}

/// What a way is and what it takes.
fn way_title(w: Writer, way: &Way) -> String {
    match (&way.means, &way.takes) {
        (_, Some(Takes::Time(window))) => {
            let from = write::duration(window.earliest);
            window.latest.map_or_else(
                || format!("Wait: {from} at the soonest"),
                |to| format!("Wait: {from} to {}", write::duration(to)),
            )
        }
        (Means::ColdWater, Some(Takes::Water(litres, at))) => {
            format!("Cold water: {} at {}", w.volume(*litres), w.degrees(*at))
        }
        (_, Some(Takes::Water(litres, at))) => {
            format!("Warm water: {} at {}", w.volume(*litres), w.degrees(*at))
        }
        (_, Some(Takes::Ice(mass))) => format!("Ice: {}", w.heavy(*mass)),
        (Means::Wait, None) => "Wait".to_owned(),
        (Means::ColdWater, None) => "Cold water".to_owned(),
        (Means::Ice, None) => "Ice".to_owned(),
        (Means::WarmWater, None) => "Warm water".to_owned(),
    }
}

/// What a way comes to and what it costs. Of wort whose gravity is not known nothing is said about that.
fn way_cost(w: Writer, way: &Way, known: bool) -> String {
    let mut end = format!(
        "{} ±\u{A0}{}, {}",
        w.temperature(way.temperature.value()),
        w.warmth(way.temperature.sigma()),
        comes_to(w, way.volume, known.then_some(way.gravity))
    );
    if known {
        end.push_str(&match way.weaker.points() {
            points if points < 0.5 => "; no weaker".to_owned(),
            _ if way.within_plan => "; water that was due anyway".to_owned(),
            points => format!("; {} weaker", w.points(points.round())),
        });
    }
    match way.reach {
        Reach::There => format!("Comes to {end}."),
        Reach::VesselFull => format!("Only part of the way: the vessel is full at {end}."),
        Reach::NoMoreAtHand => format!("Only part of the way: {end}. More would be needed."),
        Reach::Nowhere => "Leads nowhere with what is at hand.".to_owned(),
    }
}
