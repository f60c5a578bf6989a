//! Paper: the batch sheet and the bottle labels, seen only when printed.

use super::model::Model;
use super::part::Part;
use crate::batch::Summary;

/// The sheet and the labels.
pub fn parts(_m: &Model, _s: &Summary) -> Vec<Part> {
    vec![]
}
