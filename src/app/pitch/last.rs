//! The yeast goes in: when, and a note; and once more the question of a gravity that nobody took.

use super::day::scope;
use super::work::{FORM, SAVE, Work};
use crate::advice::pitch::steps::Step;
use crate::app::act::{Act, PitchAct};
use crate::app::ask_first;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, action, alert, group, submit, text};
use crate::batch::{Id, Summary};
use crate::choices::YesNo;

/// The button that leads back to the gravity.
pub const READ_IT: &str = "pitch/no-start/read";

/// The draft in which it stands that the question was put.
fn asked(batch: &Id) -> String {
    format!("{}no-start", scope(batch))
}

/// Whether nothing is known to tell an end by: neither a start nor an end.
pub fn has_no_gravity(s: &Summary, known: &super::known::Known) -> bool {
    known.start.is_none() && s.heading.expected_end.is_none()
}

/// Puts the question.
pub fn ask(m: &mut Model, batch: &Id) {
    m.drafts.put(&asked(batch), YesNo::Yes.name(), "");
}

/// What stands in the step.
pub fn parts(m: &Model, work: &Work) -> Vec<Part> {
    let (words, id) = (&m.words.pitch, &work.s.id);
    let mut parts = vec![
        work.day.at.part.clone(),
        work.day.note.part.clone(),
        // The vessels are washed up next.
        text("pitch/cleaner", "small", m.words.cautions.cleaner),
        Part::new("pitch/outcome", What::Outcome(m.outcome(FORM))),
    ];
    let odd = ask_first::question(m, FORM);
    let once_more = has_no_gravity(work.s, &work.known) && m.drafts.text(&asked(id)).is_some();
    // One question at a time.
    if odd.is_some() || !once_more {
        parts.extend(odd);
        let save = vec![submit(SAVE, words.day.yeast_is_in)];
        parts.push(group("pitch/save/act", Tag::Div, "act", save));
        return parts;
    }
    let read = Act::Pitch(PitchAct::Open(id.clone(), Step::Gravity));
    let without = Act::Pitch(PitchAct::SaveWithoutStart(id.clone()));
    let buttons = vec![
        action(READ_IT, "main-action", words.steps.read_it, read),
        action("pitch/no-start/without", "quiet", words.steps.without, without),
    ];
    let inner = vec![
        text("pitch/no-start/said", "", words.steps.no_start),
        group("pitch/no-start/buttons", Tag::Div, "form-actions", buttons),
    ];
    parts.push(alert("pitch/no-start", "notice", inner));
    parts
}
