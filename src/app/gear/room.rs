//! Batches that were deleted.

use crate::app::act::{Act, GearAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, action, group, heading, text};
use crate::app::save::commit;
use crate::batch::Id;

const FORM: &str = "deleted";

/// Batches that can be had back.
pub fn deleted(m: &Model) -> Option<Part> {
    let words = &m.words.keeping;
    let mut parts = vec![
        heading("deleted/head", 2, words.deleted_head),
        text("deleted/lead", "", words.deleted_lead),
    ];
    for batch in &m.phone.deleted {
        let name = format!("deleted/{}", batch.id.as_str());
        let back = Act::Gear(GearAct::HaveBack(batch.id.clone()));
        let inner = vec![
            text(format!("{name}/said"), "", (words.deleted)(&batch.name, batch.at)),
            action(format!("{name}/back"), "", words.have_back, back),
        ];
        parts.push(group(name, Tag::Div, "", inner));
    }
    parts.push(Part::new("deleted/outcome", crate::app::part::What::Outcome(m.outcome(FORM))));
    (!m.phone.deleted.is_empty()).then(|| group(FORM, Tag::Section, "", parts))
}

/// A batch is had back with its log.
pub fn have_back(m: &mut Model, id: &Id) -> Vec<Effect> {
    let Some(batch) = m.phone.deleted.iter().find(|batch| batch.id == *id) else { return vec![] };
    let (change, done) = (batch.change.clone(), (m.words.keeping.is_back)(&batch.name));
    commit(m, FORM, change, &done, vec![])
}
