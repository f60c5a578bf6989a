//! Watch: how it stands, what to do about it, its course and its log.

use super::act::WatchAct;
use super::event::Effect;
use super::model::Model;
use super::part::Part;
use crate::batch::Summary;

/// The stage.
pub fn parts(_m: &Model, _s: &Summary) -> Vec<Part> {
    vec![]
}

/// What it offers.
pub fn act(_m: &mut Model, _act: WatchAct) -> Vec<Effect> {
    vec![]
}
