//! Room: batches that were deleted, and those that may go when room is scarce.

use crate::app::act::{Act, GearAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, action, group, heading, link, text};
use crate::app::room::TIGHT;
use crate::app::route::Route;
use crate::app::save::commit;
use crate::batch::Id;
use crate::order::in_order;

const FORM: &str = "deleted";
/// So many of the oldest batches are named.
const OLDEST: usize = 5;

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

/// Where room is scarce: the oldest bottled batches, each with the way to its copy and its deletion.
pub fn scarce(m: &Model) -> Option<Part> {
    if !m.phone.full && m.phone.used.is_none_or(|used| used <= TIGHT) {
        return None;
    }
    let words = &m.words.keeping;
    let bottled = m.journal.batches().filter(|(id, _)| m.journal.bottling(id).is_some());
    let oldest = in_order(bottled.collect(), |a, b| a.1.started.cmp(&b.1.started));
    let mut parts = vec![
        heading("scarce/head", 2, words.oldest_head),
        text("scarce/lead", "", words.oldest_lead),
    ];
    for (id, heading) in oldest.iter().take(OLDEST) {
        let address = Route::EditBatch((*id).clone()).address();
        let (name, said) = (format!("scarce/{}", id.as_str()), (words.copy_out)(&heading.name));
        parts.push(link(&name, "", address, &said));
    }
    (!oldest.is_empty()).then(|| group("scarce", Tag::Section, "trouble", parts))
}
