//! Batches: all of them, what is due first.

use super::model::Model;
use super::part::Part;

/// The screen.
pub fn parts(_m: &Model) -> Vec<Part> {
    vec![]
}
