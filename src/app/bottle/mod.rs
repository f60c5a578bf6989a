//! Bottle: how much sugar, and will the glass hold.

use super::act::BottleAct;
use super::event::Effect;
use super::model::Model;
use super::part::Part;
use crate::batch::Summary;

/// The stage.
pub fn parts(_m: &Model, _s: &Summary) -> Vec<Part> {
    vec![]
}

/// What it offers.
pub fn act(_m: &mut Model, _act: BottleAct) -> Vec<Effect> {
    vec![]
}
