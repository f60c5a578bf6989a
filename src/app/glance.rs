//! What a list says of each batch.

use super::model::Model;
use crate::advice::watch::State;
use crate::batch::{Id, NextStep, Stage, Today};
use crate::order::in_order;
use crate::quantity::{Litres, Moment};

/// One batch, at a glance.
#[derive(Clone, Debug, PartialEq)]
pub struct Glance {
    /// Its identity.
    pub id: Id,
    /// Its name.
    pub name: String,
    /// Brewing day.
    pub started: Moment,
    /// In the fermenter.
    pub volume: Litres,
    /// What is next, and when.
    pub today: Today,
    /// How far the fermentation is, while it is watched.
    pub state: Option<State>,
}

/// Every batch: what is due first stands first, and what nothing is asked of stands last. Of those due at
/// one time, and of those never due, the latest begun stands first.
pub fn by_due(m: &Model) -> Vec<Glance> {
    let all = m.journal.batches().filter_map(|(id, heading)| {
        let summary = m.summary(id)?;
        let today = summary.today(m.now);
        let watched = today.stage == Stage::Watch && !matches!(today.next, NextStep::FirstLook(_));
        Some(Glance {
            id: id.clone(),
            name: heading.name.clone(),
            started: heading.started,
            volume: heading.volume,
            state: watched.then_some(summary.finish.state),
            today,
        })
    });
    in_order(all.collect(), |a: &Glance, b| {
        let due = match (a.today.due, b.today.due) {
            (Some(a), Some(b)) => a.cmp(&b),
            (a, b) => a.is_none().cmp(&b.is_none()),
        };
        due.then_with(|| b.started.cmp(&a.started))
    })
}
