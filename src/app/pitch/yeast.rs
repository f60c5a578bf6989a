//! Yeast enough, how it goes in, and the satellite beside it.

use super::day::{Day, Sachets};
use super::known::Known;
use crate::advice::pitch::satellite::{JAR, card};
use crate::advice::pitch::yeast::{Kept, Plan, Supply, USUAL_SACHET, plan};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Item, Part, What, text};
use crate::science::sucrose;
use crate::science::yeast::dry_yeast;

/// The sachets in hand, judged.
fn supply(day: &Day, known: &Known) -> Option<Plan> {
    let supply = Supply {
        count: day.sachets.value.map(Sachets::count)?,
        size: day.sachet.ok().unwrap_or(USUAL_SACHET),
        past: day.dated.value.months(),
        kept_warm: day.kept.value == Kept::Warm,
        volume: known.volume,
        gravity: known.start?.value(),
        family: known.family,
        wort: known.wort.map(|wort| wort.temperature.value()),
    };
    plan(supply).ok()
}

/// The sachets.
pub fn sachets(m: &Model, day: &Day, known: &Known) -> Part {
    let (w, words) = (m.writer(), &m.words.pitch.yeast);
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
        day.product.part.clone(),
        day.dated.part.clone(),
        day.kept.part.clone(),
    ];
    if let Some(plan) = supply(day, known) {
        let judged = (words.verdict)(w, &plan);
        parts.push(Part::new("pitch/yeast/verdict", What::Verdict(judged)));
        parts.push(text("pitch/yeast/waking", "small", (words.waking)(w, &plan)));
    }
    parts.push(day.method.part.clone());
    fold(m, "pitch/yeast", words.sachets, parts)
}

fn items(lines: impl IntoIterator<Item = String>) -> Vec<Item> {
    lines.into_iter().map(|text| Item { kind: "", mark: "", text }).collect()
}

/// The satellite.
pub fn satellite(m: &Model, day: &Day, known: &Known) -> Part {
    let words = &m.words.pitch.yeast;
    let mut parts = vec![text("pitch/satellite/is", "", words.satellite_is)];
    let card = known.start.and_then(|sg| card(JAR, known.family, sg.value(), m.now).ok());
    if let Some(card) = card {
        let lines = items((words.card)(m.writer(), &card));
        let traps = items(card.traps.iter().map(|trap| (words.trap)(*trap).to_owned()));
        parts.push(Part::new("pitch/satellite/card", What::Items("ordered", lines)));
        parts.push(text("pitch/satellite/lies", "", words.what_makes_it_lie));
        parts.push(Part::new("pitch/satellite/traps", What::Items("", traps)));
    }
    parts.push(day.satellite.part.clone());
    fold(m, "pitch/satellite", words.satellite, parts)
}
