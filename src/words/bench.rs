//! The words of the Bench.

use super::texts::texts;
use super::write::{Writer, extract};
use crate::quantity::{
    Density, Extract, Grams, GravityUnit, Litres, Measured, SpecificGravity, Unit, write_number,
};
use crate::science::yeast::{Pitching, Range};
use crate::science::{Amount, sucrose};

texts! {
    /// How level beer is, as the sum of the sugar asks it.
    LevelWords, LEVEL {
        reads: "It read the same twice",
        reads_hint: "Two readings that differ are not level: wait.",
        apart: "Days between them",
        age: "Days since pitching",
        yeast: "Yeast",
        start: "Starting gravity (OG)",
        start_hint: "Leave empty if it is not known: then only time tells.",
        granted: "Taken for granted: one hydrometer, good to half a line; still samples at its own temperature; the beer within its yeast\u{2019}s range all the time; nothing added since. A batch\u{2019}s own log says more.",
    } says {}
}

texts! {
    /// What the sums of the Bench say.
    BenchWords, BENCH {
        lead: "One sum at a time. Nothing here is kept with a batch.",
        gravity: "True gravity",
        gravity_asks: "The sample was warm. What is the real gravity?",
        strength: "Strength",
        strength_asks: "How strong is it, and how far has it gone?",
        scales: "Gravity scales",
        scales_ask: "Specific gravity, °Plato, and how much sugar that is",
        sugar: "Priming sugar",
        sugar_asks: "How much sugar for these bottles?",
        cooling: "Pitching temperature",
        cooling_asks: "Is it cool enough? How do I get there?",
        yeast: "Yeast",
        yeast_asks: "How much dry yeast does this wort want?",
        other_scale: "On the other scale",
        a_gravity: "Gravity",
        any_gravity_hint: "1.050, 1050, 50, or 12.4 P.",
        give_any_gravity: "Give a gravity on either scale.",
        sg_unit: "SG 20/20",
        sg: "Specific gravity 20/20",
        in_points: "Points",
        plato: "Degrees Plato (or Brix)",
        density: "Density at 20\u{A0}°C",
        scales_worked: "Density of sugar in water by ICUMSA SPS-4 (Bubník and others, Sugar Technologists Manual, 1995); specific gravity as the ratio of weights in air at 20 °C, as printed tables have it. Agrees with NBS Circular C440 to 0.00003.",
        dry_yeast: "Dry yeast",
        fermented: "Fermented",
        wort: "Wort",
        sachet: "One sachet holds",
        give_wort: "Give the volume and the gravity.",
        by_makers: "by the makers' dose",
        yeast_limits: "The packet's own dose wins. The two ranges differ because nobody knows how many cells in a gram are alive: five thousand million are guaranteed, three times that have been counted.",
        gravity_label: "Gravity at 20 °C",
        reads: "Hydrometer reads",
        reads_hint: "At the level surface, the bottom of the curve.",
        sample: "Sample temperature",
        original: "Starting gravity (OG)",
        original_hint: "If it has fermented; leave empty for wort.",
        give_reading: "Give the reading and the sample's temperature.",
        too_hot: "Too hot to trust: cool the sample first.",
    } says {
        level: LevelWords = LEVEL,
        points: fn(Writer, SpecificGravity) -> String = points,
        points_alone: fn(Writer, SpecificGravity) -> String = points_alone,
        in_a_litre: fn(Writer, Extract) -> (&'static str, String) = in_a_litre,
        density_of: fn(Writer, Density) -> String = density_of,
        pitching: fn(Pitching) -> &'static str = pitching,
        yeast_range: fn(Range) -> String = yeast_range,
        yeast_in_all: fn(Option<(u32, u32)>, Range) -> String = yeast_in_all,
    }
}

/// Points, for those who count in them.
fn points_alone(w: Writer, gravity: SpecificGravity) -> String {
    if w.counts_points() {
        format!("{} points", write_number(gravity.points(), 1))
    } else {
        String::new()
    }
}

/// The sugar in so much of it.
fn in_a_litre(w: Writer, extract: Extract) -> (&'static str, String) {
    if w.is_metric() {
        return ("Extract in a litre", format!("{}\u{A0}g", write_number(extract.value(), 0)));
    }
    let gallon = Litres::nearest(w.units.volume.to_own(1.0));
    ("Extract in a gallon", w.heavy(Grams::nearest(extract.value() * gallon.value())))
}

fn density_of(w: Writer, density: Density) -> String {
    w.amount(Amount::Number(density.value(), 1, "kg/m³"))
}

/// Warm or cold fermentation.
const fn pitching(pitching: Pitching) -> &'static str {
    match pitching {
        Pitching::Warm => "Warm: ale",
        Pitching::Cold => "Cold: lager",
    }
}

/// A range of grams, as short as it can be said.
fn yeast_range(range: Range) -> String {
    let write =
        |grams: Grams| write_number(grams.value(), if grams.value() < 9.95 { 1 } else { 0 });
    format!("{} to {}\u{A0}g", write(range.from), write(range.to))
}

/// From so many to so many sachets, and the range by the count of cells.
fn yeast_in_all(sachets: Option<(u32, u32)>, by_cells: Range) -> String {
    let sachets = match sachets {
        None => String::new(),
        Some((1, 1)) => "One sachet. ".to_owned(),
        Some((from, to)) if from == to => format!("{from} sachets. "),
        Some((from, to)) => format!(
            "{from} to {to} sachets; the larger number if they are old or were stored warm. "
        ),
    };
    format!("{sachets}By cell count: {}.", yeast_range(by_cells))
}

/// The same gravity on the other scales.
fn points(w: Writer, gravity: SpecificGravity) -> String {
    let plato = extract(sucrose::plato(gravity));
    match w.units.gravity {
        GravityUnit::Plato => format!("{} SG", write_number(gravity.value(), 3)),
        _ if w.counts_points() => {
            format!("{plato} · {} points", write_number(gravity.points(), 0))
        }
        GravityUnit::SpecificGravity => plato,
    }
}
