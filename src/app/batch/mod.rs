//! One batch as a whole: its heading with the four stages, and the form it is started and changed by.

mod form;
mod head;

pub use form::parts as form;
pub use head::{foot, parts as head};

use super::act::BatchAct;
use super::copies;
use super::event::Effect;
use super::model::{Model, Then};
use super::own_ends;
use super::route::Route;
use super::save::commit;
use crate::batch::{Change, Entry, Settings};

/// What a batch as a whole offers.
pub fn act(m: &mut Model, act: BatchAct) -> Vec<Effect> {
    match act {
        BatchAct::TakeInHand(id) => {
            let settings = Settings { in_hand: Some(id), ..m.settings() };
            commit(m, "head", Change::put(Settings::id(), Entry::Settings(settings)), "", vec![])
        }
        BatchAct::Save(id) => form::save(m, id),
        BatchAct::Delete(id) => {
            let change = copies::without(m, &[id]);
            let then = vec![Then::Go(Route::Batches)];
            commit(m, "batch", change, m.words.batches.deleted, then)
        }
        BatchAct::OwnEnds(id, ends) => own_ends::set(m, &id, ends),
    }
}
