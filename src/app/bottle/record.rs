//! From the fields to the record that is saved.

use super::fields::{FORM, Fields, Tried, scope};
use super::filled;
use crate::advice::bottle::asked::SugarGoes;
use crate::advice::bottle::{Over, plan, worst_once_weighed};
use crate::advice::odd::{Odd, date};
use crate::app::act::{Act, BottleAct};
use crate::app::ask::Wrong;
use crate::app::ask_first::ask_first;
use crate::app::event::Effect;
use crate::app::model::{Model, Then};
use crate::app::save;
use crate::batch::{BatchHeading, BottlingRecord, Change, Entry, Grounds, Id, Summary};

/// Why it cannot be saved: a sentence, and the field that would mend it.
struct Refused(String, Option<String>);

/// Saves what the fields say, or says what is still wrong.
pub fn save(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let Some(s) = m.summary(batch).filter(|s| s.bottling.is_none()) else { return vec![] };
    let fields = Fields::of(m, &s);
    match record(m, &s, &fields) {
        Ok(record) => {
            let odd = date(record.at, s.heading.started, m.now);
            let ahead = odd.filter(|odd| matches!(odd, Odd::Ahead(_))).into_iter().collect();
            let send = Act::Bottle(BottleAct::Save(batch.clone()));
            if let Err(asked) = ask_first(m, FORM, ahead, &fields.at.part.name, send) {
                return asked;
            }
            let (id, done) = (m.new_id(), m.words.bottle.saved);
            let change = Change::put(id, Entry::Bottling(record));
            save::commit(m, FORM, change, done, vec![Then::Forget(scope(batch))])
        }
        Err(Refused(why, field)) => {
            m.here.outcomes.insert(FORM.to_owned(), why);
            field.map(Effect::Attend).into_iter().collect()
        }
    }
}

/// Keeps the target that is typed with the batch.
pub fn keep_target(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let Some(s) = m.summary(batch) else { return vec![] };
    let target = Fields::of(m, &s).target;
    let Some(wished) = target.ok() else { return vec![Effect::Attend(target.part.name)] };
    let heading = BatchHeading { target: Some(wished), ..s.heading.clone() };
    let change = Change::put(batch.clone(), Entry::Batch(heading));
    let done = m.words.bottle.target_kept;
    save::commit(m, FORM, change, done, vec![Then::Forget(target.part.name)])
}

fn record(m: &mut Model, s: &Summary, fields: &Fields) -> Result<BottlingRecord, Refused> {
    let mut wrong = Wrong::default();
    wrong.demand(&fields.beer);
    wrong.demand(&fields.hottest);
    wrong.demand(&fields.warmest);
    fields.history.demand(&mut wrong);
    fields.sugar.demand(&mut wrong);
    wrong.demand(&fields.target);
    let weighed = wrong.optional(&fields.weighed);
    let place = wrong.optional(&fields.place);
    let at = wrong.demand(&fields.at);
    let filled = filled::counted(filled::asked(m, fields), &mut wrong);
    let look_again = m.words.frame.look_again;
    if let Some(first) = wrong.shown(m) {
        return Err(Refused(look_again.to_owned(), Some(first)));
    }
    let words = &m.words.bottle;
    let say = |why: &str, field: &str| Refused(why.to_owned(), Some(field.to_owned()));
    let again = || Refused(look_again.to_owned(), None);
    if fields.too_much(fields.beer.ok()).is_some() {
        return Err(say(m.words.odd.answer_first, "odd/change"));
    }
    let Some(asked) = fields.asked(m, s, Tried::default()) else {
        return Err(say(words.choose_weakest, &fields.weakest.part.name));
    };
    let refused = |why| Refused((m.words.fields.science_error)(why), None);
    let bottling = asked.ready().map_err(refused)?.bottling;
    let dose = plan(bottling).ok().and_then(|plan| plan.weigh());
    let Some(weighed) = weighed.or(dose) else {
        let refused = say(words.weigh_it, &fields.weighed.part.name);
        m.drafts.demand(&fields.weighed.part.name);
        return Err(refused);
    };
    // A reason that was typed before the log showed the end stands for nothing any more.
    let because = Some(&fields.because.value).filter(|_| bottling.over == Over::Stated);
    let worst = worst_once_weighed(&bottling, weighed).map_err(refused)?;
    Ok(BottlingRecord {
        batch: s.id.clone(),
        at: at.ok_or_else(again)?,
        beer: bottling.beer,
        sugar: bottling.sugar,
        weighed,
        target: bottling.target,
        warmest: asked.warmest,
        weakest: bottling.weakest,
        hottest: bottling.hottest,
        place,
        moved: None,
        worst,
        went_on_because: because.cloned().unwrap_or_default(),
        note: fields.note.value.clone(),
        grounds: Some(Grounds {
            past: Some(asked.past()),
            already_in: Some(bottling.already_in),
            points_left: bottling.points_left,
            filled,
            by_bottle: asked.sugar_goes == SugarGoes::Bottles,
            scale: Some(bottling.weighing.scale),
            sugar_name: fields.sugar.own_name.clone(),
        }),
        made_safe: None,
    })
}
