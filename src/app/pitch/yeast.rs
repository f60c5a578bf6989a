//! Yeast enough, how it goes in, and the satellite beside it.

use super::day::{Day, Sachets};
use super::known::Known;
use super::work::Work;
use crate::advice::pitch::satellite::{JAR, card};
use crate::advice::pitch::yeast::{Kept, Plan, Supply, USUAL_SACHET, plan};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::own_ends;
use crate::app::part::{Item, Judged, Part, What, text};
use crate::quantity::{Estimate, Grams, Measured};
use crate::science::sucrose;
use crate::science::yeast::dry_yeast;

/// The yeast in hand, judged: by its sachets, or as it was weighed.
pub fn planned(day: &Day, known: &Known) -> Option<Plan> {
    let (count, weighed) = (day.sachets.value.map(Sachets::count), day.yeast.ok());
    let size = match (count, weighed) {
        (None, None) => return None,
        (Some(count), Some(all)) => Grams::nearest(all.value() / f64::from(count)),
        (None, Some(all)) => all,
        (Some(_), None) => day.sachet.ok().unwrap_or(USUAL_SACHET),
    };
    plan(Supply {
        count: count.unwrap_or(1),
        size,
        past: day.dated.value.months(),
        kept_warm: day.kept.value == Kept::Warm,
        volume: known.volume,
        gravity: known.start?.value(),
        family: known.family,
        wort: known.wort.map(|wort| wort.temperature.value()),
    })
    .ok()
}

/// The same in words.
pub fn judged(m: &Model, work: &Work) -> Option<Judged> {
    let plan = planned(&work.day, &work.known)?;
    Some((m.words.pitch.yeast.verdict)(m.writer(), &plan))
}

/// The step of the yeast.
pub fn sachets(m: &Model, work: &Work) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.pitch.yeast);
    let (day, known) = (&work.day, &work.known);
    let dose = known.start.and_then(|start| {
        dry_yeast(known.family.pitching(), known.volume, sucrose::plato(start.value())).ok()
    });
    let wants = match dose {
        Some(dose) => (words.wants)(w, dose.by_maker),
        None => words.wants_unknown.to_owned(),
    };
    let mut parts = vec![
        text("pitch/yeast/wants", "plain-answer", wants),
        day.sachets.part.clone(),
        day.sachet.part.clone(),
        day.method.part.clone(),
    ];
    if let Some(plan) = planned(day, known) {
        parts.push(text("pitch/yeast/waking", "small", (words.waking)(w, &plan)));
    }
    let more = vec![
        day.dated.part.clone(),
        day.kept.part.clone(),
        day.product.part.clone(),
        day.yeast.part.clone(),
    ];
    parts.push(fold(m, "pitch/yeast/more", words.more, more));
    let start = known.start.map(Estimate::value);
    parts.extend(own_ends::part(m, work.s, &day.product.value, start));
    parts
}

fn items(lines: impl IntoIterator<Item = String>) -> Vec<Item> {
    lines.into_iter().map(|text| Item { kind: "", mark: "", text }).collect()
}

/// The step of the satellite.
pub fn satellite(m: &Model, work: &Work) -> Vec<Part> {
    let (words, known) = (&m.words.pitch.yeast, &work.known);
    let mut parts = vec![text("pitch/satellite/is", "", words.satellite_is)];
    parts.push(work.day.satellite.part.clone());
    let card = known.start.and_then(|sg| card(JAR, known.family, sg.value(), m.now).ok());
    if let Some(card) = card {
        let lines = items((words.card)(m.writer(), &card));
        let traps = items(card.traps.iter().map(|trap| (words.trap)(*trap).to_owned()));
        parts.push(Part::new("pitch/satellite/card", What::Items("ordered", lines)));
        let traps = Part::new("pitch/satellite/traps", What::Items("", traps));
        parts.push(fold(m, "pitch/satellite/lies", words.what_makes_it_lie, vec![traps]));
    }
    parts
}
