//! The head of a batch, its name and the four stages, and its foot: what it has come to.

use crate::app::act::{Act, BatchAct, BottleAct, PitchAct};
use crate::app::fold::{fold, with_beside};
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, action, group, link, text};
use crate::app::route::Route;
use crate::app::strength::rules;
use crate::app::way::way;
use crate::app::worked::{DoubtIn, how_worked};
use crate::batch::{EntryKey, Id, Kind, Stage, Summary};
use crate::quantity::write_number;
use crate::words::write;

/// What a batch has come to, in one line.
fn facts(m: &Model, summary: &Summary) -> String {
    let (w, words) = (m.writer(), &m.words.batches);
    let start = summary
        .original
        .map(|og| (words.start_fact)(&w.gravity(og.value()), summary.original_was_read));
    let now = summary.present.map(|now| (words.now_fact)(&w.gravity(now.value())));
    let strength = summary.strength.as_ref().map(|strength| {
        let (abv, bottled) = match summary.strength_in_bottle() {
            Some(in_bottle) => (in_bottle, true),
            None => (strength.alcohol, false),
        };
        let sigma = write_number(abv.sigma(), 1);
        (words.strength_fact)(&write::strength(abv.value()), &sigma, bottled)
    });
    let parts: Vec<_> = [start, now, strength].into_iter().flatten().collect();
    parts.join(" · ")
}

/// The head, above every stage.
pub fn parts(m: &Model, summary: &Summary, stage: Stage) -> Vec<Part> {
    let (words, id) = (&m.words.batches, &summary.id);
    let edit = link("head/change", "", Route::EditBatch(id.clone()).address(), words.change);
    let mut links = vec![edit];
    if m.journal.in_hand().as_ref() != Some(id) {
        let take = Act::Batch(BatchAct::TakeInHand(id.clone()));
        links.push(action("head/take", "quiet", words.take_in_hand, take));
    }
    let mut parts = vec![way(m, summary, stage, links)];
    parts.extend(noted_twice(m, id));
    parts
}

/// The foot of a batch, below every stage: what it has come to.
pub fn foot(m: &Model, summary: &Summary) -> Vec<Part> {
    let words = &m.words.batches;
    let facts = facts(m, summary);
    let Some(strength) = &summary.strength else {
        let there = !facts.is_empty();
        return there.then(|| text("head/facts", "facts", facts)).into_iter().collect();
    };
    let inner = vec![
        Part::new("head/rules", What::Figures(rules(m, strength))),
        text("head/caution", "small", m.words.cautions.strength),
        how_worked(m, "head/worked", &strength.worked, DoubtIn::Strength),
    ];
    vec![with_beside(fold(m, "head/strength", words.strength, inner), "facts", facts)]
}

/// The yeast, or the bottling, where two tabs have noted it: each with what counts and a way to delete it.
fn noted_twice(m: &Model, id: &Id) -> Vec<Part> {
    let words = &m.words.keeping;
    let Some(log) = m.journal.log(id) else { return vec![] };
    let pitch = log.pitch().map(|(id, _)| id);
    let bottling = log.bottling().map(|(id, _)| id);
    let mut lines: Vec<(String, EntryKey, Act)> = vec![];
    if log.pitches().len() > 1 {
        lines.extend(log.pitches().iter().map(|(id, record)| {
            let key = EntryKey { kind: Kind::Pitch, id: id.clone() };
            let act = Act::Pitch(PitchAct::Delete(key.clone()));
            ((words.yeast_twice)(record.at, pitch == Some(id)), key, act)
        }));
    }
    if log.bottlings().len() > 1 {
        lines.extend(log.bottlings().iter().map(|(id, record)| {
            let key = EntryKey { kind: Kind::Bottling, id: id.clone() };
            let act = Act::Bottle(BottleAct::Delete(key.clone()));
            ((words.bottled_twice)(record.at, bottling == Some(id)), key, act)
        }));
    }
    let line = |(said, key, act): (String, EntryKey, Act)| {
        let name = format!("twice/{}/{}", key.kind.name(), key.id.as_str());
        let parts = vec![
            text(format!("{name}/said"), "notice-said", said),
            action(format!("{name}/delete"), "quiet", words.delete, act),
        ];
        group(name, Tag::Div, "notice", parts)
    };
    lines.into_iter().map(line).collect()
}
