//! What a dose takes for granted: one line that says it all, and its fields behind a touch.

use super::fields::Fields;
use crate::advice::standing::USUAL_TARGET;
use crate::app::act::{Act, BottleAct};
use crate::app::fold::fold_from;
use crate::app::model::Model;
use crate::app::part::{Part, Run, What, action};
use crate::batch::Summary;
use crate::quantity::CarbonDioxideVolumes;
use crate::words::write::volumes;

/// The fold; open by itself while something in it is missing.
pub fn part(m: &Model, s: &Summary, fields: &Fields) -> Part {
    let words = &m.words.bottle;
    let mut parts = vec![fields.target.part.clone()];
    parts.extend(keep_target(m, s, fields.target.ok()));
    parts.extend(fields.sugar.clone().parts());
    parts.push(fields.sugar_goes.part.clone());
    if fields.chosen_none {
        parts.push(fields.size.part.clone());
    }
    parts.push(fields.hottest.part.clone());
    parts.extend(fields.history.assumed(m).into_iter().flat_map(|(_, questions)| questions));
    let lacks = fields.target.ok().is_none()
        || fields.hottest.ok().is_none()
        || fields.sugar.get().is_none();
    let mut part = fold_from(m, "granted", words.granted, lacks, parts);
    if let What::Fold(fold) = &mut part.what
        && !fold.open
    {
        fold.beside = vec![Run::new("small", (words.pieces)(&pieces(m, fields)))];
    }
    part
}

fn pieces(m: &Model, fields: &Fields) -> Vec<String> {
    let (w, words) = (m.writer(), &m.words.bottle);
    let sugar = fields.sugar.get();
    let size = match &fields.size.part.what {
        What::Pick(size) if fields.chosen_none => {
            size.options.iter().find(|(stored, _)| *stored == size.chosen)
        }
        _ => None,
    };
    let all = [
        fields.target.ok().map(volumes),
        sugar.map(|sugar| fields.sugar.name(m, sugar).to_owned()),
        Some((words.goes)(fields.sugar_goes.value).to_owned()),
        size.map(|(_, words)| words.clone()),
        fields.hottest.ok().map(|t| (words.up_to)(w, t)),
    ];
    let cold = fields.history.assumed(m).map(|(said, _)| said);
    all.into_iter().flatten().chain(cold).collect()
}

/// Keeps another carbonation with the batch: how it stands is then judged by that.
fn keep_target(m: &Model, s: &Summary, target: Option<CarbonDioxideVolumes>) -> Option<Part> {
    let usual = s.heading.target.unwrap_or(USUAL_TARGET);
    target.filter(|target| *target != usual)?;
    let keep = Act::Bottle(BottleAct::KeepTarget(s.id.clone()));
    Some(action("target/keep", "quiet", m.words.bottle.keep_target, keep))
}
