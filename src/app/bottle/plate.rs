//! The one answer of Bottle: how it stands, and the dose, or what it lacks.

use super::fields::Fields;
use crate::advice::bottle::{Over, Plan};
use crate::app::model::Model;
use crate::app::part::Judged;
use crate::app::priming;
use crate::batch::Summary;
use crate::science::ScienceError;
use crate::words::Weighs;

/// What the plate says.
pub fn judged(
    m: &Model,
    s: &Summary,
    fields: &Fields,
    found: &Option<Result<Plan, ScienceError>>,
) -> Judged {
    let words = &m.words.bottle;
    let stands = (m.words.watch.finish)(m.writer(), &s.standing, m.now);
    if let (Some(found), Some(beer), Some(sugar)) = (found, fields.beer.ok(), fields.sugar.get()) {
        let name = fields.sugar.name(m, sugar);
        let weighs = Weighs { sugar, name, beer };
        return priming::judged(m, found.as_ref().map_err(|why| *why), weighs, stands);
    }
    if fields.too_much(fields.beer.ok()).is_some() {
        return (words.plan.lacking)(stands, m.words.odd.answer_first.to_owned());
    }
    // Beer that may still ferment gets no dose, whatever is given.
    let stated = !fields.because.value.is_empty();
    if s.standing.ended(&s.record(), stated).over == Over::No {
        return (words.plan.not_yet)(stands);
    }
    (words.plan.lacking)(stands, fields.lacking(m))
}
