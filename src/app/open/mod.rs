//! Open: when to try one, and how it was.

use super::act::OpenAct;
use super::event::Effect;
use super::model::Model;
use super::part::Part;
use crate::batch::Summary;

/// The stage.
pub fn parts(_m: &Model, _s: &Summary) -> Vec<Part> {
    vec![]
}

/// What it offers.
pub fn act(_m: &mut Model, _act: OpenAct) -> Vec<Effect> {
    vec![]
}
