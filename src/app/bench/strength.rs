//! How strong, and how far gone.

use crate::advice::practice::HALF_DIVISION;
use crate::app::ask::{AskGravity, ask_gravity};
use crate::app::model::Model;
use crate::app::part::{Answer, Part, What, text};
use crate::app::strength::{answer, rules};
use crate::app::worked::{DoubtIn, how_worked};
use crate::quantity::{Estimate, Measured, SpecificGravity};
use crate::science::strength::{Strength, strength};
use crate::science::{ScienceError, sucrose};

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.strength;
    let name = |field: &str| format!("bench/strength/{field}");
    let gravity = |field, label, start| {
        let (name, hint, unit) = (name(field), words.corrected, m.units().gravity);
        let start = SpecificGravity::literal(start);
        ask_gravity(m, AskGravity { name, label, hint, unit, first: None, start })
    };
    let original = gravity("original", words.original, 1.050);
    let present = gravity("present", words.present, 1.010);
    let found = || -> Option<Result<Strength, ScienceError>> {
        let read = |gravity| Estimate::new(sucrose::as_specific(gravity), HALF_DIVISION.value());
        Some(strength(read(original.ok()?), read(present.ok()?)))
    };
    let found = found();
    let told = match &found {
        None => Answer::only(words.label, words.give_both),
        Some(Err(why)) => Answer::only(words.label, (m.words.fields.science_error)(*why)),
        Some(Ok(found)) => answer(m, found),
    };
    let mut parts = vec![Part::new("answer", What::Answer(told)), original.part, present.part];
    let ok = found.and_then(Result::ok);
    parts.extend(ok.as_ref().map(|found| Part::new("figures", What::Figures(rules(m, found)))));
    parts.push(text("limits", "small", words.limits));
    parts.push(text("caution", "small", m.words.cautions.strength));
    parts.extend(ok.map(|found| how_worked(m, &name("worked"), &found.worked, DoubtIn::Strength)));
    parts
}
