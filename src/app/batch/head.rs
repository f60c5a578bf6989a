//! The head of a batch: its name, what it has come to, and the four stages.

use crate::app::model::Model;
use crate::app::part::Part;
use crate::batch::{Id, Stage};

/// The head, above every stage.
pub fn parts(_m: &Model, _id: &Id, _stage: Stage) -> Vec<Part> {
    vec![]
}
