//! Every batch as it stands now, worked out once.

use super::model::Model;
use crate::advice::standing::{Record, Standing};
use crate::batch::{Id, Summary, Today, by_due as in_order_of_due};
use std::rc::Rc;

impl Model {
    /// One batch worked out, once for each change of its log.
    #[must_use]
    pub fn summary(&self, id: &Id) -> Option<Rc<Summary>> {
        let log = self.journal.log(id)?;
        let stamp = (log.revision(), self.journal.gear_revision());
        if let Some((known, summary)) = self.worked.borrow().get(id)
            && *known == stamp
            && summary.holds_at(self.now)
        {
            return Some(Rc::clone(summary));
        }
        let summary = Rc::new(Summary::of(&self.journal, id, self.now)?);
        self.worked.borrow_mut().insert(id.clone(), (stamp, Rc::clone(&summary)));
        Some(summary)
    }

    /// How a record stands that is of no batch, judged once as long as it stays the same.
    pub(super) fn standing_of(&self, record: &Record) -> Rc<Standing> {
        let mut judged = self.judged.borrow_mut();
        if let Some((known, at, standing)) = judged.as_ref()
            && known == record
            && *at == self.now
        {
            return Rc::clone(standing);
        }
        let standing = Rc::new(Standing::of(record, self.now));
        *judged = Some((record.clone(), self.now, Rc::clone(&standing)));
        standing
    }
}

/// Every batch, what is due first standing first.
pub fn by_due(m: &Model) -> Vec<(Rc<Summary>, Today)> {
    in_order_of_due(m.journal.batches().filter_map(|(id, _)| m.summary(id)), m.now)
}
