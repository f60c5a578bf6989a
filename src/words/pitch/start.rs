//! The starting gravity in words: what went in, the sample, and which to believe.

use crate::advice::Verdict;
use crate::advice::pitch::start_gravity::{Next as StartNext, Reason as StartReason, Start};
use crate::batch::GoesBy;
use crate::quantity::{Estimate, GravityChange, Measured, SpecificGravity, write_number};
use crate::science::kit_gravity::Fermentable;
use crate::science::mixing::Cause;
use crate::science::sucrose;
use crate::words::texts::texts;
use crate::words::write::{self, Writer};
use crate::words::{Judged, judged};

texts! {
    /// What is asked of the start, and what is made of it.
    StartWords, START {
        went_in: "Or by the ingredients",
        choose: "Choose",
        share_hint: "Its sugar, as the label says.",
        added: "Water added after the boil",
        ice_added: "Ice added",
        about: "The starting gravity (OG): of the mixed wort, before any yeast.",
        reads: "Hydrometer reads",
        reads_hint: "A mixed sample, from the middle.",
        sample_at: "Sample temperature",
        sample_at_hint: "Of the liquid in the jar.",
        goes_by: "The batch goes by",
        by_sample: "OG by the sample",
        by_ingredients: "OG by the ingredients",
        extract: "Extract in all",
        other_water: "Water added to them",
        expected_end: "Expected end (FG)",
    } says {
        row: fn(usize) -> [&'static str; 3] = row,
        ingredient: fn(Fermentable) -> &'static str = ingredient,
        which: fn(GoesBy) -> &'static str = which,
        gravity: fn(Writer, Estimate<SpecificGravity>) -> String = gravity,
        range: fn(Writer, SpecificGravity, SpecificGravity) -> String = range,
        verdict: fn(Writer, &Start) -> Judged = start_words,
    }
}

/// What the fields of a row are called, counted from none: kind, mass and share. Each has a name of its
/// own for those who hear it.
const fn row(index: usize) -> [&'static str; 3] {
    match index {
        0 => ["Ingredient 1 of up to 5", "Mass of ingredient 1", "Extract in ingredient 1"],
        1 => ["Ingredient 2 of up to 5", "Mass of ingredient 2", "Extract in ingredient 2"],
        2 => ["Ingredient 3 of up to 5", "Mass of ingredient 3", "Extract in ingredient 3"],
        3 => ["Ingredient 4 of up to 5", "Mass of ingredient 4", "Extract in ingredient 4"],
        _ => ["Ingredient 5 of up to 5", "Mass of ingredient 5", "Extract in ingredient 5"],
    }
}

const fn which(goes_by: GoesBy) -> &'static str {
    match goes_by {
        GoesBy::Sample => "The sample",
        GoesBy::Ingredients => "The ingredients",
    }
}

/// A gravity with its doubt and its extract.
fn gravity(w: Writer, found: Estimate<SpecificGravity>) -> String {
    let plato = write::extract(sucrose::plato(found.value()));
    format!("{} {} ({plato})", w.gravity(found.value()), w.gravity_doubt(found.sigma()))
}

fn range(w: Writer, from: SpecificGravity, to: SpecificGravity) -> String {
    format!("{} to {}", w.gravity(from), w.gravity(to))
}

/// An ingredient.
const fn ingredient(kind: Fermentable) -> &'static str {
    match kind {
        Fermentable::MaltSyrup => "Malt syrup (80 %)",
        Fermentable::DryMalt => "Dry malt (97 %)",
        Fermentable::Sucrose => "Table sugar (100 %)",
        Fermentable::Dextrose => "Corn sugar (91 %)",
        Fermentable::Honey => "Honey (80 %)",
        Fermentable::Own => "Another, by its label",
    }
}

/// Which start to believe.
fn start_words(w: Writer, start: &Start) -> Judged {
    let sentence = match start.advice.verdict {
        Verdict::Go => "Sample and ingredients agree.",
        Verdict::Wait => "They differ; one more look will tell.",
        _ => "They differ, and nothing here explains it.",
    };
    let reasons = start.advice.reasons.iter().map(|reason| start_reason(w, *reason)).collect();
    let next = match start.advice.next {
        StartNext::GoBySample => "Go by the sample.",
        StartNext::GoByIngredients => "Go by the ingredients.",
        StartNext::StirAndReadAgain => {
            "Stir hard for some minutes and read a sample from the middle. Until then go by the ingredients."
        }
        StartNext::ReadWithTemperature => {
            "Read the sample's temperature, or let it cool, and read again."
        }
        StartNext::ReadVolumeAgain => {
            "Look at the volume mark again, and at which gallon it is in."
        }
        StartNext::CheckWeightsAndInstrument => {
            "Look at the weights again, and check the hydrometer in water."
        }
    };
    judged(start.advice.verdict, sentence, reasons, next.to_owned())
}

/// How far the sample is from the ingredients, and to which side.
fn apart(w: Writer, gap: GravityChange) -> String {
    let points = gap.points().abs().round();
    match (points < 0.5, gap.points() < 0.0) {
        (true, _) => "just where the ingredients put it".to_owned(),
        (_, true) => format!("{} below the ingredients", w.points(points)),
        _ => format!("{} above the ingredients", w.points(points)),
    }
}

fn start_reason(w: Writer, reason: StartReason) -> String {
    match reason {
        StartReason::Agree(gap) => format!("The sample is {}.", apart(w, gap)),
        StartReason::Differ(gap) => {
            let passed = w.points(4.0);
            format!("The sample is {}; {passed} can be passed over.", apart(w, gap))
        }
        StartReason::MayBeChance => "Both are rough enough for that to be chance.".to_owned(),
        StartReason::Unexplained => {
            "A wrong weight, another share of extract, or the hydrometer.".to_owned()
        }
        StartReason::Explains(Cause::WaterOnTop { layer, of_depth }) => format!(
            "{} of top-up water lying unmixed on top would explain it: {}\u{A0}% of the depth.",
            w.volume(layer),
            write_number(100.0 * of_depth.value(), 0)
        ),
        StartReason::Explains(Cause::StrongBelow { layer }) => match layer {
            Some(layer) => {
                format!("{} of strong wort lying below would explain it.", w.volume(layer))
            }
            None => "Strong wort lying below would explain it.".to_owned(),
        },
        StartReason::Explains(Cause::WarmSample { would_be }) => {
            format!("A sample at {} would explain it.", w.temperature(would_be))
        }
        StartReason::Explains(Cause::Volume { would_be, other_gallon }) => {
            let gallon = if other_gallon { " That is what the other gallon gives." } else { "" };
            format!("A volume of {} would explain it.{gallon}", w.volume(would_be))
        }
    }
}
