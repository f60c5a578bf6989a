//! Pitch: from the end of chilling to the sealed lid, in the order things happen, and one save for all.

mod air;
mod cool;
mod day;
mod drafted;
mod known;
mod last;
mod look;
mod pitched;
mod place;
mod record;
mod start;
mod walk;
mod work;
mod yeast;

use super::act::PitchAct;
use super::event::Effect;
use super::model::Model;
use super::part::Part;
use super::route::Route;
use crate::advice::pitch::steps::Step;
use crate::batch::{Stage, Summary};

/// The stage.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    match &s.pitch {
        Some(record) => pitched::parts(m, s, record),
        None => walk::parts(m, s),
    }
}

/// What it offers.
pub fn act(m: &mut Model, act: PitchAct) -> Vec<Effect> {
    match act {
        PitchAct::Open(batch, step) => work::open(m, &batch, step),
        PitchAct::GoOn(batch, step) => walk::go_on(m, &batch, step),
        PitchAct::Skip(batch, step) => walk::skip(m, &batch, step),
        PitchAct::Save(batch) => record::save(m, &batch, false),
        PitchAct::SaveWithoutStart(batch) => record::save(m, &batch, true),
        PitchAct::Timer(batch) => air::start_or_stop(m, &batch),
        PitchAct::Delete(key) => pitched::delete(m, key),
    }
}

/// Whether a timer that is on the screen counts the seconds.
pub fn counts(m: &Model) -> bool {
    match &m.route {
        Route::Batch(batch, Stage::Pitch) => {
            let on_screen = work::open_step(m, batch) == Step::Air;
            on_screen && air::counts(m, batch) && m.journal.pitch(batch).is_none()
        }
        _ => false,
    }
}
