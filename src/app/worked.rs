//! "How this was worked out": inputs, steps, sources, and what the ± is made of.

use super::model::Model;
use super::part::{Fold, Part, What, WorkedLine, Working};
use crate::quantity::{Grams, GravityUnit, Measured, write_number};
use crate::science::{Step, Worked};
use crate::words::Writer;

/// What the doubts of a working are in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DoubtIn {
    Gravity,
    Degrees,
    Hours,
    Grams,
    Strength,
    Oxygen,
}

/// Doubts of a gravity.
pub const IN_GRAVITY: DoubtIn = DoubtIn::Gravity;

impl DoubtIn {
    /// One of them, with its unit.
    fn write(self, w: Writer, sigma: f64) -> String {
        let number = |places, unit: &str| format!("{}\u{A0}{unit}", write_number(sigma, places));
        let plain = match self {
            Self::Gravity if w.units.gravity == GravityUnit::Plato => {
                return format!("{}\u{A0}°P", w.gravity_doubt(sigma));
            }
            Self::Gravity => number(4, "SG"),
            Self::Degrees => w.warmth(sigma),
            Self::Hours => number(1, "h"),
            Self::Grams => w.mass(Grams::nearest(sigma)),
            Self::Strength => number(2, "% ABV"),
            Self::Oxygen => number(1, w.oxygen()),
        };
        format!("±\u{A0}{plain}")
    }
}

/// A working, folded away; what is in it is written only when it is open.
pub fn how_worked(m: &Model, name: &str, worked: &Worked, doubt_in: DoubtIn) -> Part {
    let open = m.is_open(name, false);
    let summary = m.words.working.how.to_owned();
    let mut parts = vec![];
    if open {
        let working = What::Worked(working(m, worked, doubt_in));
        parts.push(Part::new(format!("{name}/lines"), working));
    }
    Part::of(name, What::Fold(Fold { kind: "worked", summary, beside: vec![], open }), parts)
}

fn working(m: &Model, worked: &Worked, doubt_in: DoubtIn) -> Working {
    let (w, words) = (m.writer(), &m.words.working);
    let line = |step: &Step| WorkedLine {
        name: (words.term)(step.term),
        value: w.amount(step.amount),
        formula: step.formula,
        source: step.source.map(words.source).unwrap_or_default(),
    };
    let mut parts = vec![
        (words.went_in, worked.inputs.iter().map(line).collect()),
        (words.step_by_step, worked.steps.iter().map(line).collect()),
    ];
    let mut below = "";
    if !worked.doubts.is_empty() {
        let doubts = worked.doubts.iter().map(|doubt| WorkedLine {
            name: (words.term)(doubt.term),
            value: doubt_in.write(w, doubt.sigma),
            formula: "",
            source: "",
        });
        parts.push((words.doubts, doubts.collect()));
        below = words.one_deviation;
    }
    Working { parts, below }
}
