//! What is being noted: a new reading, one that is changed, or nothing.

use crate::app::model::{Model, Noting};
use crate::batch::{Id, Reading, Summary, Vessel};

/// The button that opens the form of a new reading.
pub const ADD: &str = "watch/add";

/// The plate: how the batch stands, which a saved reading may have changed.
pub const PLATE: &str = "watch/finish";

/// The fold of a reading.
pub fn row_name(id: &Id) -> String {
    format!("log/{}", id.as_str())
}

/// The button that opens a reading's form.
pub fn change_button(id: &Id) -> String {
    format!("{}/change", row_name(id))
}

/// What a form that stands open notes.
pub struct Noted {
    /// How the names of its fields begin.
    pub scope: String,
    /// Where a new reading is from.
    pub vessel: Vessel,
    /// The identity of the reading that is changed.
    pub id: Option<Id>,
    /// That reading.
    pub before: Option<Reading>,
}

/// How the names of a changed reading's fields begin.
pub fn scope_of(reading: &Id) -> String {
    format!("reading/{}/", reading.as_str())
}

/// Whether a new reading is noted below others: what else the screen tells and offers then waits.
pub fn is_new(m: &Model, s: &Summary) -> bool {
    !s.lines.is_empty() && noted(m, s).is_some_and(|noted| noted.id.is_none())
}

/// What is noted at a batch now; nothing when no form stands open.
pub fn noted(m: &Model, s: &Summary) -> Option<Noted> {
    let new = |vessel| {
        let what = if vessel == Vessel::Satellite { "satellite" } else { "new" };
        let scope = format!("reading/{what}/{}/", s.id.as_str());
        Some(Noted { scope, vessel, id: None, before: None })
    };
    match &m.here.noting {
        Noting::Arrived if s.lines.is_empty() => new(Vessel::Main),
        Noting::Arrived | Noting::Nothing => None,
        Noting::New(vessel) => new(*vessel),
        // One that was taken out meanwhile is changed no more.
        Noting::Changed(id) => {
            let line = s.lines.iter().find(|line| line.id == *id)?;
            let (scope, before) = (scope_of(id), Some(line.reading.clone()));
            Some(Noted { scope, vessel: line.reading.vessel, id: Some(id.clone()), before })
        }
    }
}
