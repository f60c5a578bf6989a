//! The words of the Bench.

use super::texts::texts;
use super::write::{Writer, extract};
use crate::quantity::{SpecificGravity, write_number};
use crate::science::sucrose;

texts! {
    /// What the sums of the Bench say.
    BenchWords, BENCH {
        lead: "One sum at a time. Nothing here is kept with a batch.",
        gravity: "True gravity",
        gravity_asks: "The sample was warm. What is the real gravity?",
        strength: "Strength",
        strength_asks: "How strong is it, and how far has it gone?",
        scales: "Gravity scales",
        scales_ask: "Specific gravity, points, °Plato and sugar per litre",
        sugar: "Priming sugar",
        sugar_asks: "How much sugar for these bottles?",
        cooling: "Pitching temperature",
        cooling_asks: "Is it cool enough? How do I get there?",
        yeast: "Yeast",
        yeast_asks: "How much dry yeast does this wort want?",
        gravity_label: "Gravity at 20 °C",
        reads: "Hydrometer reads",
        reads_hint: "At the level surface, the bottom of the curve.",
        sample: "Sample temperature",
        original: "Gravity at the start, if it has fermented",
        original_hint: "Leave empty for wort.",
        give_reading: "Give the reading and the sample's temperature.",
        too_hot: "Too hot to trust: cool the sample first.",
    } says {
        points: fn(Writer, SpecificGravity) -> String = points,
    }
}

fn points(_: Writer, gravity: SpecificGravity) -> String {
    let points = write_number(gravity.points(), 0);
    format!("{} · {points} points", extract(sucrose::plato(gravity)))
}
