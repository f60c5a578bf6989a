//! Every batch as it stands now.

use super::model::Model;
use crate::batch::{Summary, Today, by_due as in_order_of_due};
use std::rc::Rc;

/// Every batch, what is due first standing first.
pub fn by_due(m: &Model) -> Vec<(Rc<Summary>, Today)> {
    in_order_of_due(m.journal.batches().filter_map(|(id, _)| m.summary(id)), m.now)
}
