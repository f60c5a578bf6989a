//! The true starting gravity: what was weighed in, the sample, and which of the two the batch goes by.

use super::day::Day;
use super::known::Known;
use crate::advice::pitch::start_gravity::{Start, judge, topped_up};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Part, What, heading};
use crate::science::mixing::SampleGravity;

/// The section.
pub fn part(m: &Model, day: &Day, known: &Known) -> Part {
    let (w, words) = (m.writer(), &m.words.pitch.start);
    let summary = match known.start {
        Some(start) => (words.summary)(w, start.value()),
        None => words.starting_gravity.to_owned(),
    };
    let mut parts = vec![heading("pitch/start/went-in", 3, words.went_in)];
    // The next row comes when the one before it is in use.
    let mut before = true;
    for row in &day.rows {
        let used = row.kind.value.is_some();
        if before || used {
            parts.push(row.kind.part.clone());
        }
        if used {
            parts.extend([row.mass.part.clone(), row.share.part.clone()]);
        }
        before = used;
    }
    parts.extend([
        day.added.part.clone(),
        day.ice_added.part.clone(),
        heading("pitch/start/sample", 3, words.the_sample),
        day.sample.part.clone(),
        day.sample_at.part.clone(),
    ]);
    if let Some(start) = both(day, known) {
        let judged = (words.verdict)(w, &start);
        parts.push(Part::new("pitch/start/verdict", What::Verdict(judged)));
        parts.push(day.goes_by.part.clone());
    }
    let rows = figures(m, known).into_iter().map(|(name, figure)| (name.to_owned(), figure));
    parts.push(Part::new("pitch/start/figures", What::Figures(rows.collect())));
    fold(m, "pitch/start", summary, parts)
}

/// Sample and ingredients beside each other.
fn both(day: &Day, known: &Known) -> Option<Start> {
    let seen = SampleGravity {
        gravity: known.sample.as_ref()?.gravity,
        temperature_known: day.sample_at.ok().is_some(),
        topped_up: topped_up(day.added.ok(), day.ice_added.ok()),
    };
    Some(judge(known.by_weight.as_ref()?, seen))
}

fn figures(m: &Model, known: &Known) -> Vec<(&'static str, String)> {
    let (w, words) = (m.writer(), &m.words.pitch.start);
    let mut rows = vec![];
    if let Some(found) = &known.sample {
        rows.push((words.by_sample, (words.gravity)(w, found.gravity)));
    }
    if let Some(kit) = &known.by_weight {
        rows.push((words.by_ingredients, (words.gravity)(w, kit.gravity)));
        rows.push((words.extract, w.mass(kit.extract)));
        rows.push((words.other_water, w.mass(kit.water_added)));
    }
    if let Some(start) = known.start {
        let end = known.family.ends_at(start.value());
        rows.push((words.expected_end, (words.range)(w, end.from, end.to)));
    }
    rows
}
