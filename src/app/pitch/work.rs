//! How far pitching day is. What is open and what was skipped are drafts, so that a closed page comes back
//! to the same step; how far each step is follows from the fields.

use super::day::{Day, Sachets, scope};
use super::known::Known;
use crate::advice::pitch::start_gravity::OriginalFrom;
use crate::advice::pitch::steps::{State, Step, Steps};
use crate::app::event::Effect;
use crate::app::model::Model;
use crate::batch::{Id, Summary};
use crate::choices::YesNo;

/// The name of the form that is open.
pub const FORM: &str = "pitch/form";
/// The button that starts the timer, or stops it.
pub const TOUCH: &str = "pitch/air/touch";
/// The button that saves it all.
pub const SAVE: &str = "pitch/save";

/// All that a step is shown by.
pub struct Work<'a> {
    pub s: &'a Summary,
    pub day: Day,
    pub known: Known,
    pub steps: Steps,
}

impl<'a> Work<'a> {
    /// As it stands in the drafts of that batch.
    pub fn of(m: &Model, s: &'a Summary) -> Self {
        let day = Day::of(m, s);
        let known = Known::of(m, s, &day);
        let steps = Steps::of(|step| {
            if is_settled(step, &day, &known) {
                State::Settled
            } else if m.drafts.text(&skip_draft(&s.id, step)).is_some() {
                State::Skipped
            } else {
                State::Ahead
            }
        });
        Self { s, day, known, steps }
    }
}

/// Whether a step has a result.
fn is_settled(step: Step, day: &Day, known: &Known) -> bool {
    match step {
        Step::Cool => known.wort.is_some(),
        Step::Gravity => {
            matches!(known.from, Some(OriginalFrom::Sample | OriginalFrom::Ingredients))
        }
        Step::Yeast => day.sachets.value.is_some() || day.yeast.ok().is_some(),
        Step::Satellite => day.satellite.value.is_some(),
        Step::Air => day.aerated.ok().is_some(),
        Step::Place => day.room.ok().is_some() || !day.stands.value.is_empty(),
        Step::In => false,
    }
}

fn opened(batch: &Id) -> String {
    format!("{}step", scope(batch))
}

/// The draft in which it stands that a step was left out.
pub fn skip_draft(batch: &Id, step: Step) -> String {
    format!("{}skipped-{}", scope(batch), step.name())
}

/// The step that is open: the first, until another was opened.
pub fn open_step(m: &Model, batch: &Id) -> Step {
    m.drafts.text(&opened(batch)).and_then(Step::named).unwrap_or(Step::Cool)
}

/// The field that a step begins with. An answer to a choice is found by the choice's name and its own.
pub fn first_field(batch: &Id, step: Step) -> String {
    let scope = scope(batch);
    match step {
        Step::Cool => format!("{scope}wort"),
        Step::Gravity => format!("{scope}sample"),
        Step::Yeast => format!("{scope}sachets-{}", Sachets::One.name()),
        Step::Satellite => format!("{scope}satellite-{}", YesNo::Yes.name()),
        Step::Air => TOUCH.to_owned(),
        Step::Place => format!("{scope}room"),
        Step::In => SAVE.to_owned(),
    }
}

/// Opens a step.
pub fn open(m: &mut Model, batch: &Id, step: Step) -> Vec<Effect> {
    m.here.outcomes.remove(&FORM.to_owned());
    m.drafts.put(&opened(batch), step.name(), "");
    vec![Effect::KeepDrafts, Effect::Attend(first_field(batch, step))]
}
