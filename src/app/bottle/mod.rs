//! Bottle: is it finished, how much sugar, will the glass hold.

mod bottled;
mod bottles;
mod fields;
mod history;
mod record;
mod what_if;

use super::act::{Act, BottleAct};
use super::ask_first;
use super::event::Effect;
use super::fold::fold;
use super::model::Model;
use super::part::{Part, What, action, columns, form, heading, submit, text};
use super::priming::{dose_answer, plan_parts};
use super::save;
use crate::advice::bottle::{Over, plan};
use crate::advice::standing::USUAL_TARGET;
use crate::advice::standing::ways_to_dose::{Known, ways};
use crate::batch::{Change, Id, Summary};
use crate::quantity::{CarbonDioxideVolumes, Measured};
use fields::{FORM, Fields, Tried};

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    match &s.bottling {
        Some((id, record)) => bottled::parts(m, s, id, record),
        None => asked(m, s),
    }
}

fn asked(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.bottle);
    let fields = Fields::of(m, s);
    let ready = fields.ready(m, s, Tried::default());
    let ready = ready.as_ref().map(|ready| ready.as_ref().map_err(|why| *why));
    let found = ready.map(|ready| ready.and_then(|ready| plan(ready.bottling)));
    let ready = ready.and_then(Result::ok);
    let ok = found.as_ref().and_then(|found| found.as_ref().ok());

    let mut parts = vec![];
    let record = s.record();
    if s.standing.ended(&record, false).over != Over::Judged {
        parts.push(fields.because.part.clone());
    }
    parts.push(heading("how-much", 2, words.how_much));
    let too_much = fields.too_much(fields.beer.ok());
    let missing = match too_much {
        Some(_) => m.words.odd.answer_first,
        None => words.priming.give_for_batch,
    };
    parts.push(dose_answer(m, found.as_ref(), fields.sugar.get(), missing));
    // Said aloud where it was not there before; the card itself is drawn anew and may go unheard.
    let judged = ok.map(|plan| (words.plan.judged)(w, plan, &[]));
    let heard = judged.map(|judged| (words.plan.stopped)(&judged)).unwrap_or_default();
    parts.push(Part::new("heard", What::Heard(heard)));
    if let (Some(plan), Some(ready)) = (ok, ready) {
        let known = Known { record: &record, standing: &s.standing, now: m.now, trials: &m.trials };
        let ways = ways(ready, known);
        let judged = (words.plan.judged)(w, plan, &ways);
        parts.push(Part::new("judged", What::Verdict(judged)));
    }
    parts.push(text("caution", "small", m.words.cautions.glass));

    let on_hand = bottles::stock_parts(m, &s.id, &fields);
    let none_chosen = fields.chosen().is_empty();
    let fill = match (ok, ready) {
        (Some(plan), Some(ready)) => {
            bottles::to_fill(m, &fields, plan, ready.bottling.beer.value())
        }
        _ => vec![],
    };
    let what_if = what_if::what_if(m, s, &fields);
    let Fields { beer, target, warmest, hottest, history, sugar, weakest, size, .. } = fields;
    let (questions, dose_for) = history.parts();
    let so_much = Act::Bottle(BottleAct::SoMuch(s.id.clone()));
    let question = too_much.map(|odd| ask_first::notice(m, &[odd], "", so_much, &beer.part.name));
    let keeps_target = keep_target(m, s, target.ok());
    let mut left = vec![beer.part];
    left.extend(question);
    left.extend(on_hand);
    if none_chosen {
        left.extend([weakest.part, size.part]);
    }
    left.extend([fields.sugar_goes.part, hottest.part, warmest.part]);
    left.extend(questions);
    left.extend(sugar.parts());
    left.push(target.part);
    left.extend(keeps_target);
    let mut right = ready.map(|ready| history::ends_parts(m, ready, dose_for)).unwrap_or_default();
    right.extend(fill);
    right.extend(ok.map(|plan| plan_parts(m, plan)).unwrap_or_default());
    right.push(what_if);
    parts.push(columns("fields", left, right));

    let more = [fields.weighed.part, fields.place.part, fields.at.part, fields.note.part];
    parts.push(fold(m, "more", words.more, more.into()));
    parts.push(Part::new("outcome", What::Outcome(m.outcome(FORM))));
    parts.extend(ask_first::question(m, FORM));
    parts.push(submit("save", words.save));

    let finish = What::Verdict((m.words.watch.finish)(w, &s.standing, m.now));
    vec![
        heading("is-it-finished", 2, words.is_it_finished),
        Part::new("finish", finish),
        form(FORM, "", Act::Bottle(BottleAct::Save(s.id.clone())), parts),
    ]
}

/// Keeps another target with the batch: how it stands is then judged by that.
fn keep_target(m: &Model, s: &Summary, target: Option<CarbonDioxideVolumes>) -> Option<Part> {
    let usual = s.heading.target.unwrap_or(USUAL_TARGET);
    target.filter(|target| *target != usual)?;
    let keep = Act::Bottle(BottleAct::KeepTarget(s.id.clone()));
    Some(action("target/keep", "quiet", m.words.bottle.keep_target, keep))
}

/// What it offers.
pub fn act(m: &mut Model, act: BottleAct) -> Vec<Effect> {
    match act {
        BottleAct::Save(batch) => record::save(m, &batch),
        BottleAct::Stock(batch, bottles) => toggle(m, &batch, &bottles),
        BottleAct::KeepTarget(batch) => record::keep_target(m, &batch),
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
