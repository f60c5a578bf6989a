//! Pitch: from the end of chilling to the sealed lid, in the order things happen, and one save for all.

mod air;
mod cool;
mod day;
mod known;
mod pitched;
mod place;
mod record;
mod start;
mod yeast;

use super::act::PitchAct;
use super::ask_first;
use super::event::Effect;
use super::fold::fold;
use super::model::Model;
use super::part::{Part, What, form, submit, text};
use super::route::Route;
use crate::batch::{Stage, Summary};
use day::Day;
use known::Known;

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    match &s.pitch {
        Some(record) => pitched::parts(m, s, record),
        None => form_parts(m, s),
    }
}

fn form_parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (words, cautions) = (&m.words.pitch.day, &m.words.cautions);
    let day = Day::of(m, s);
    let known = Known::of(m, s, &day);
    let mut parts = cool::parts(m, s, &day, &known);
    let last = vec![day.yeast.part.clone(), day.at.part.clone(), day.note.part.clone()];
    parts.extend([
        start::part(m, &day, &known),
        yeast::sachets(m, &day, &known),
        yeast::satellite(m, &day, &known),
        air::part(m, &s.id, &day, &known),
        place::part(m, &day, &known),
        fold(m, "pitch/last", words.time_and_note, last),
        Part::new("pitch/outcome", What::Outcome(m.outcome(record::FORM))),
    ]);
    parts.extend(ask_first::question(m, record::FORM));
    parts.push(submit("pitch/save", words.yeast_is_in));
    let below = format!("{} {}", cautions.hot, cautions.cleaner);
    vec![form(record::FORM, "", record::send(&s.id), parts), text("pitch/cautions", "small", below)]
}

/// What it offers.
pub fn act(m: &mut Model, act: PitchAct) -> Vec<Effect> {
    match act {
        PitchAct::Save(batch) => record::save(m, &batch),
        PitchAct::Timer(batch) => air::start_or_stop(m, &batch),
        PitchAct::Delete(key) => pitched::delete(m, key),
    }
}

/// Whether a timer that is on the screen counts the seconds.
pub fn counts(m: &Model) -> bool {
    match &m.route {
        Route::Batch(batch, Stage::Pitch) => {
            air::counts(m, batch) && m.journal.pitch(batch).is_none()
        }
        _ => false,
    }
}
