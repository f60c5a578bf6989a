//! Gear: instruments, bottles, sugars, preferences, and how things are kept.

use super::act::GearAct;
use super::event::Effect;
use super::model::Model;
use super::part::Part;

/// The screen.
pub fn parts(_m: &Model) -> Vec<Part> {
    vec![]
}

/// What it offers.
pub fn act(_m: &mut Model, _act: GearAct) -> Vec<Effect> {
    vec![]
}

/// A field holds another text: what is chosen at once, such as a unit, is saved at once.
pub fn typed(_m: &mut Model, _name: &str) -> Vec<Effect> {
    vec![]
}

/// A field was left: a number among the preferences is saved then.
pub fn left(_m: &mut Model, _name: &str) -> Vec<Effect> {
    vec![]
}
