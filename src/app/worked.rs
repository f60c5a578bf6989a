//! "How this was worked out": inputs, steps, sources, and what the ± is made of.

use super::model::Model;
use super::part::{Fold, Part, What, WorkedLine, Working};
use crate::quantity::write_number;
use crate::science::{Step, Worked};

/// The doubts' number of decimals, factor and unit, to write them in.
pub type DoubtIn = (usize, f64, &'static str);

/// Doubts of a gravity.
pub const IN_GRAVITY: DoubtIn = (4, 1.0, "SG");

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

fn working(m: &Model, worked: &Worked, (places, factor, unit): DoubtIn) -> Working {
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
            value: format!("±\u{A0}{}\u{A0}{unit}", write_number(doubt.sigma * factor, places)),
            formula: "",
            source: "",
        });
        parts.push((words.doubts, doubts.collect()));
        below = words.one_deviation;
    }
    Working { parts, below }
}
