//! The form of a new batch, or of the one that is changed.

use crate::app::model::Model;
use crate::app::part::Part;
use crate::batch::Id;

/// The screen.
pub fn parts(_m: &Model, _id: Option<&Id>) -> Vec<Part> {
    vec![]
}
