//! Bottle: how much sugar, whether the glass holds, and the record of it.

mod bottled;
mod bottles;
mod fields;
mod filled;
mod granted;
mod history;
mod plate;
mod record;
mod what_if;

use super::act::{Act, BottleAct};
use super::ask_first;
use super::event::Effect;
use super::fold::{fold, fold_from};
use super::model::Model;
use super::part::{Part, Tag, What, form, group, submit, text};
use super::priming::plan_parts;
use super::save;
use super::ways_out;
use crate::advice::bottle::{Over, plan};
use crate::advice::standing::ways_to_dose::{Known, ways};
use crate::batch::{Change, Id, Summary};
use crate::quantity::Measured;
use fields::{FORM, Fields, Tried};

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    match &s.bottling {
        Some((id, record)) => bottled::parts(m, s, id, record),
        None => asked(m, s),
    }
}

fn asked(m: &Model, s: &Summary) -> Vec<Part> {
    let words = &m.words.bottle;
    let fields = Fields::of(m, s);
    let ready = fields.ready(m, s, Tried::default());
    let ready = ready.as_ref().map(|ready| ready.as_ref().map_err(|why| *why));
    let found = ready.map(|ready| ready.and_then(|ready| plan(ready.bottling)));
    let ready = ready.and_then(Result::ok);
    let ok = found.as_ref().and_then(|found| found.as_ref().ok());
    let record = s.record();
    let plate = Part::new(ways_out::PLATE, What::Verdict(plate::judged(m, s, &fields, &found)));

    let to_dose = match (ok, ready) {
        (Some(_), Some(ready)) => {
            let (record, standing) = (&record, &s.standing);
            ways(ready, Known { record, standing, now: m.now, trials: &m.trials })
        }
        _ => vec![],
    };
    let mut left = vec![ways_out::part(m, &fields::scope(&s.id), Some(&s.id), &to_dose)];
    if s.standing.ended(&record, false).over != Over::Judged {
        let (by_itself, why) = (!fields.because.value.is_empty(), fields.because.part.clone());
        left.push(fold_from(m, "know-better", words.know_better, by_itself, vec![why]));
    }
    let fill = ok.map(|plan| bottles::to_fill(m, &fields, plan)).unwrap_or_default();
    let on_hand = bottles::stock_parts(m, &s.id, &fields);
    let filled = filled::asked(m, &fields).into_iter().map(|(_, asked)| asked.part);
    let mut more = vec![fields.weighed.part.clone()];
    more.extend(filled);
    more.extend([fields.place.part.clone(), fields.at.part.clone(), fields.note.part.clone()]);
    let so_much = Act::Bottle(BottleAct::SoMuch(s.id.clone()));
    let question = fields
        .too_much(fields.beer.ok())
        .map(|odd| ask_first::notice(m, &[odd], "", so_much, &fields.beer.part.name));
    let weighed = fields.weighed.ok().is_some();
    let mut right = vec![];
    let what_if = what_if::what_if(m, s, &fields);
    let granted = granted::part(m, s, &fields);
    let Fields { beer, warmest, history, weakest, chosen_none, .. } = fields;
    left.push(beer.part);
    left.extend(question);
    left.extend(on_hand);
    left.extend(chosen_none.then_some(weakest.part));
    left.push(warmest.part);
    let dose_for = history.dose_for.part.clone();
    left.extend(history.parts());
    left.push(granted);
    left.push(fold(m, "more", words.more, more));
    left.push(Part::new("outcome", What::Outcome(m.outcome(FORM))));
    left.extend(ask_first::question(m, FORM));
    left.push(save_button(m, weighed || ok.is_some_and(|plan| plan.dose().is_some())));

    right.extend(ready.map(|ready| history::ends_parts(m, ready, dose_for)).unwrap_or_default());
    right.extend(ok.map(|plan| plan_parts(m, plan)).unwrap_or_default());
    right.extend(fill);
    right.push(what_if);
    right.push(text("caution", "small", m.words.cautions.glass));
    let parts = vec![
        plate,
        group("bottle/asked", Tag::Div, "watch-course", left),
        group("bottle/found", Tag::Div, "watch-log", right),
    ];
    vec![form(FORM, "watch", Act::Bottle(BottleAct::Save(s.id.clone())), parts)]
}

/// The one thing to do once there is sugar to weigh, and till then only a way to note what was done.
fn save_button(m: &Model, may_bottle: bool) -> Part {
    let mut save = submit("save", m.words.bottle.save);
    if let What::Action(action) = &mut save.what
        && !may_bottle
    {
        action.kind = "";
    }
    group("save/act", Tag::Div, if may_bottle { "act" } else { "" }, vec![save])
}

/// What it offers.
pub fn act(m: &mut Model, act: BottleAct) -> Vec<Effect> {
    match act {
        BottleAct::Save(batch) => record::save(m, &batch),
        BottleAct::Stock(batch, bottles) => toggle(m, &batch, &bottles),
        BottleAct::KeepTarget(batch) => record::keep_target(m, &batch),
        BottleAct::TakeWay(scope, way) => ways_out::take(m, &scope, way),
        BottleAct::Recount(batch) => filled::recount(m, &batch),
        BottleAct::SoMuch(batch) => {
            let Some(s) = m.summary(&batch) else { return vec![] };
            let beer = Fields::of(m, &s).beer;
            let said = beer.ok().map(|beer| beer.value().to_string()).unwrap_or_default();
            m.drafts.put(&fields::so_much_name(&batch), said, "");
            vec![Effect::KeepDrafts, Effect::Attend(beer.part.name)]
        }
        BottleAct::Take(batch) => {
            let Some(s) = m.summary(&batch) else { return vec![] };
            let fields = Fields::of(m, &s);
            what_if::take(m, &fields);
            vec![Effect::KeepDrafts]
        }
        BottleAct::PutBack => {
            what_if::put_back(m);
            vec![]
        }
        BottleAct::Delete(key) => {
            let done = m.words.bottle.deleted;
            save::commit(m, FORM, Change::remove(key), done, vec![])
        }
    }
}

/// Adds bottles on hand to those chosen, or takes them away.
fn toggle(m: &mut Model, batch: &Id, bottles: &Id) -> Vec<Effect> {
    let mut chosen = fields::stock(m, batch);
    match chosen.iter().position(|one| one == bottles.as_str()) {
        Some(at) => drop(chosen.remove(at)),
        None => chosen.push(bottles.as_str().to_owned()),
    }
    m.drafts.put(&fields::stock_name(batch), chosen.join(" "), "");
    vec![Effect::KeepDrafts]
}
