//! Hydrometers: the list.

use super::instrument_form::form;
use super::things::{Row, section as list};
use crate::app::model::Model;
use crate::app::part::Part;
use crate::batch::Kind;

/// The section.
pub fn section(m: &Model) -> Part {
    let (words, w) = (&m.words.gear, m.writer());
    let rows = m.journal.hydrometers().into_iter().map(|(id, item)| {
        let line = (words.instrument)(w, &item.instrument);
        Row { id, name: item.name, line }
    });
    list(m, Kind::Hydrometer, (words.hydrometers, words.add_hydrometer), rows.collect(), form)
}
