//! The true starting gravity: what was weighed in, the sample, and which of the two the batch goes by.

use super::known::Known;
use super::work::Work;
use crate::advice::pitch::start_gravity::{OriginalFrom, Start, judge, topped_up};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Judged, Part, What, text};
use crate::app::stem::stem;
use crate::quantity::{Litres, Measured};
use crate::science::kit_gravity::Fermentable;
use crate::science::mixing::SampleGravity;

/// The step: the hydrometer first, what went in behind a touch.
pub fn parts(m: &Model, work: &Work) -> Vec<Part> {
    let (words, day) = (&m.words.pitch.start, &work.day);
    let mut parts = vec![
        text("pitch/start/about", "", words.about),
        day.sample.part.clone(),
        day.sample_at.part.clone(),
    ];
    let instrument = m.journal.hydrometer(&work.s.heading.hydrometer);
    let corrected = work.known.sample.as_ref().filter(|_| day.sample_at.ok().is_some());
    let corrected = corrected.map(|corrected| corrected.gravity.value());
    parts.push(stem(m, &day.sample, corrected, &instrument, None));
    parts.extend(both(work).map(|_| day.goes_by.part.clone()));
    let rows = figures(m, &work.known).into_iter();
    let rows = rows.map(|(name, figure)| (name.to_owned(), figure));
    parts.push(Part::new("pitch/start/figures", What::Figures(rows.collect())));
    let mut went_in = vec![];
    // The next row comes when the one before it is in use.
    let mut before = true;
    for row in &day.rows {
        let used = row.kind.value.is_some();
        if before || used {
            went_in.push(row.kind.part.clone());
        }
        if used {
            went_in.push(row.mass.part.clone());
            // The usual shares are known; a label that says another is an ingredient of its own.
            let own = row.kind.value == Some(Fermentable::Own) || row.share.ok().is_some();
            went_in.extend(own.then(|| row.share.part.clone()));
        }
        before = used;
    }
    went_in.extend([day.added.part.clone(), day.ice_added.part.clone()]);
    parts.push(fold(m, "pitch/start/went-in", words.went_in, went_in));
    parts
}

/// Which of sample and ingredients to believe, once both are there.
pub fn judged(m: &Model, work: &Work) -> Option<Judged> {
    both(work).map(|start| (m.words.pitch.start.verdict)(m.writer(), &start))
}

/// The start as the step's figure.
pub fn figure(m: &Model, work: &Work, judged: &mut Judged) {
    let (w, words) = (m.writer(), &m.words.pitch.start);
    let label = match work.known.from {
        Some(OriginalFrom::Sample) => words.by_sample,
        Some(OriginalFrom::Ingredients) => words.by_ingredients,
        _ => return,
    };
    if let Some(start) = work.known.start {
        label.clone_into(&mut judged.label);
        judged.figure = (w.gravity(start.value()), w.gravity_doubt(start.sigma()));
    }
}

/// Sample and ingredients beside each other.
fn both(work: &Work) -> Option<Start> {
    let (day, known) = (&work.day, &work.known);
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
    // One alone stands on the plate.
    let both = known.by_weight.is_some();
    if let Some(found) = known.sample.as_ref().filter(|_| both) {
        rows.push((words.by_sample, (words.gravity)(w, found.gravity)));
    }
    if let Some(kit) = &known.by_weight {
        rows.push((words.by_ingredients, (words.gravity)(w, kit.gravity)));
        rows.push((words.extract, w.heavy(kit.extract)));
        rows.push((words.other_water, w.volume(Litres::nearest(kit.water_added.value() / 1000.0))));
    }
    if let Some(start) = known.start {
        let end = known.family.ends_at(start.value());
        rows.push((words.expected_end, (words.range)(w, end.from, end.to)));
    }
    rows
}
