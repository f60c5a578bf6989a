//! Parts that hang on nothing half typed: made once for each thing that happens beside typing, so that no
//! key pays for a drawing or a file that it does not change.

use super::event::Event;
use super::model::Model;
use super::part::Part;
use crate::batch::{Id, Summary};
use crate::order::ByKey;
use crate::quantity::Moment;
use std::cell::{Cell, RefCell};

/// What such parts were made of: the batch, its log's and Gear's revision, the time, and how much had
/// happened.
type MadeOf = (Id, u64, u64, Moment, u64);

/// Parts that were made, by a name for them.
#[derive(Debug, Default)]
pub struct Still {
    happened: u64,
    kept: RefCell<ByKey<&'static str, (MadeOf, Vec<Part>)>>,
    made: Cell<usize>,
}

impl Still {
    /// Takes note of what happens.
    pub fn happens(&mut self, event: &Event) {
        if !matches!(event, Event::Typed { .. } | Event::Left(_) | Event::Tick(_)) {
            self.happened += 1;
        }
    }
}

impl Model {
    /// The parts that `make` makes for a batch without a look at drafts, at timers or at what is asked
    /// about: those made before, where nothing else has happened since.
    pub(super) fn still(
        &self,
        name: &'static str,
        s: &Summary,
        make: fn(&Self, &Summary) -> Vec<Part>,
    ) -> Vec<Part> {
        let still = &self.still;
        let revision = self.journal.log(&s.id).map_or(0, |log| log.revision());
        let gear = self.journal.gear_revision();
        let made_of = (s.id.clone(), revision, gear, self.now, still.happened);
        if let Some((of, parts)) = still.kept.borrow().get(&name)
            && *of == made_of
        {
            return parts.clone();
        }
        let parts = make(self, s);
        still.made.set(still.made.get() + 1);
        still.kept.borrow_mut().insert(name, (made_of, parts.clone()));
        parts
    }

    /// How often such parts were made.
    #[must_use]
    pub const fn made_still(&self) -> usize {
        self.still.made.get()
    }
}
