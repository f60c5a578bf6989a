//! Air before the yeast: how much it can give here, and a timer with rests that needs no sound.

use super::day::scope;
use super::work::{TOUCH, Work};
use crate::advice::pitch::splashing::{Turn, splashed, turn};
use crate::app::act::{Act, PitchAct};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::app::part::{Judged, Part, action, text};
use crate::app::worked::{DoubtIn, how_worked};
use crate::batch::Id;
use crate::quantity::{Measured, MinuteUnit, Unit, write_number};
use crate::science::oxygen::in_wort;
use crate::science::sucrose;

/// Since when the timer runs, in whole seconds since 1970: a draft, so that it goes on while the screen
/// sleeps and even when the page was closed.
fn timer(batch: &Id) -> String {
    format!("{}timer", scope(batch))
}

/// Seconds that the timer has run; `None` while it stands.
fn runs_for(m: &Model, batch: &Id) -> Option<u32> {
    let started: u32 = m.drafts.text(&timer(batch))?.parse().ok()?;
    Some(m.seconds.saturating_sub(started))
}

/// Whether the timer runs.
pub fn runs(m: &Model, batch: &Id) -> bool {
    runs_for(m, batch).is_some()
}

/// The face of the timer, while it runs.
pub fn timer_face(m: &Model, batch: &Id) -> Option<Judged> {
    runs_for(m, batch).map(|seconds| (m.words.pitch.air.turn)(turn(seconds)))
}

/// Whether the timer runs and has something to count yet.
pub fn counts(m: &Model, batch: &Id) -> bool {
    runs_for(m, batch).is_some_and(|seconds| turn(seconds) != Turn::Done)
}

/// Starts the timer, or stops it and notes what was splashed.
pub fn start_or_stop(m: &mut Model, batch: &Id) -> Vec<Effect> {
    let name = timer(batch);
    match runs_for(m, batch) {
        None => m.drafts.put(&name, m.seconds.to_string(), ""),
        Some(seconds) => {
            m.drafts.forget(&name);
            let (minutes, noted) = (MinuteUnit::Minutes, format!("{}aerated", scope(batch)));
            let splashed = minutes.express(splashed(seconds).value()).max(0.1);
            m.drafts.put(&noted, write_number(splashed, 1), minutes.symbol());
        }
    }
    vec![Effect::KeepDrafts]
}

/// The step.
pub fn parts(m: &Model, work: &Work) -> Vec<Part> {
    let (words, known, batch) = (&m.words.pitch.air, &work.known, &work.s.id);
    let extract = known.start.map(|start| sucrose::plato(start.value()));
    let found = known.wort.zip(extract).and_then(|(wort, extract)| {
        in_wort(wort.temperature.value(), extract, m.settings().height).ok()
    });
    let told = found
        .as_ref()
        .map_or_else(|| words.unknown.to_owned(), |found| (words.oxygen)(m.writer(), found));
    let mut parts = vec![text("pitch/air/oxygen", "", told)];
    let label = if runs(m, batch) { words.stop_timer } else { words.start_timer };
    let touch = Act::Pitch(PitchAct::Timer(batch.clone()));
    parts.push(action(TOUCH, "", label, touch));
    parts.push(work.day.aerated.part.clone());
    let worked = found.map(|found| found.worked);
    parts.extend(worked.map(|worked| how_worked(m, "pitch/air/worked", &worked, DoubtIn::Oxygen)));
    parts
}
