//! Parts that hang on nothing half typed: made once for each thing that happens beside typing, so that no
//! key pays for a drawing or a file that it does not change.

use super::event::Event;
use super::part::Part;
use crate::batch::Id;
use crate::order::ByKey;
use crate::quantity::Moment;
use std::cell::{Cell, RefCell};

/// What such parts were made of: the batch, its log's and Gear's revision, the time, and how much had
/// happened.
pub type MadeOf = (Id, u64, u64, Moment, u64);

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

    /// How much has happened.
    pub const fn happened(&self) -> u64 {
        self.happened
    }

    /// How often parts were made.
    pub const fn made(&self) -> usize {
        self.made.get()
    }

    /// The parts of that name: those made before of the same, else made now.
    pub fn parts(
        &self,
        name: &'static str,
        made_of: MadeOf,
        make: &dyn Fn() -> Vec<Part>,
    ) -> Vec<Part> {
        if let Some((of, parts)) = self.kept.borrow().get(&name)
            && *of == made_of
        {
            return parts.clone();
        }
        let parts = make();
        self.made.set(self.made.get() + 1);
        self.kept.borrow_mut().insert(name, (made_of, parts.clone()));
        parts
    }
}
