//! The bottles: which on hand, or of what kind; and what goes into each.

use super::fields::Fields;
use crate::advice::bottle::Plan;
use crate::advice::bottle::asked::SugarGoes;
use crate::app::act::{Act, BottleAct};
use crate::app::model::Model;
use crate::app::part::{Part, Tag, Tick, What, group, heading, text};
use crate::batch::Id;

/// Bottles on hand to choose from; nothing where there are none.
pub fn stock_parts(m: &Model, batch: &Id, fields: &Fields) -> Option<Part> {
    let words = &m.words.bottle;
    let tick = |(id, name, own, chosen): &(Id, String, _, bool)| {
        let act = Act::Bottle(BottleAct::Stock(batch.clone(), id.clone()));
        let label = (words.own_bottles)(m.writer(), name, *own);
        let tick = What::Tick(Tick { label, on: *chosen, act });
        Part::new(format!("on-hand/{}", id.as_str()), tick)
    };
    let ticks: Vec<_> = fields.on_hand.iter().map(tick).collect();
    if ticks.is_empty() {
        return None;
    }
    let mut all = group("on-hand", Tag::Fieldset, "choice", ticks);
    if let What::Group(group) = &mut all.what {
        words.on_hand.clone_into(&mut group.label);
    }
    Some(all)
}

/// What to fill, what goes into each, and how to mix it in; only beside a dose.
pub fn to_fill(m: &Model, fields: &Fields, plan: &Plan) -> Vec<Part> {
    if plan.dose().is_none() {
        return vec![];
    }
    let (w, words) = (m.writer(), &m.words.bottle);
    let filling = fields.filling(plan.to_fill());
    let rows = filling.filled.iter().map(|own| (words.to_fill)(w, plan, *own)).collect();
    let how = match fields.sugar_goes.value {
        SugarGoes::Bottles => words.into_empty.to_owned(),
        SugarGoes::Vessel => (words.mixing)(w),
    };
    vec![
        heading("fill/heading", 3, words.what_to_fill),
        Part::new("fill/bottles", What::Figures(rows)),
        text("fill/left", "", (words.left)(w, &filling)),
        text("fill/how", "small", how),
    ]
}
