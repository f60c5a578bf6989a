//! One batch as a whole: its heading with the four stages, and the form it is started and changed by.

mod form;
mod head;

pub use form::parts as form;
pub use head::parts as head;

use super::act::BatchAct;
use super::event::Effect;
use super::model::Model;

/// What a batch as a whole offers.
pub fn act(_m: &mut Model, _act: BatchAct) -> Vec<Effect> {
    vec![]
}
