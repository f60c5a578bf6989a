//! The true gravity behind a reading.

use crate::advice::reading::{Taken, corrected};
use crate::app::ask::{AskGravity, ask_gravity};
use crate::app::fields::{SAMPLE, condition, hydrometer, temperature};
use crate::app::model::Model;
use crate::app::part::{Answer, Part, What, columns};
use crate::app::stem::stem;
use crate::app::worked::{IN_GRAVITY, how_worked};
use crate::quantity::{Celsius, SpecificGravity};
use crate::science::hydrometer_sample::Corrected;
use crate::science::{ScienceError, sucrose};

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.bench;
    let name = |field: &str| format!("bench/gravity/{field}");
    let gravity = |field, label, hint| {
        let start = SpecificGravity::literal(1.050);
        let unit = m.units().gravity;
        ask_gravity(m, AskGravity { name: name(field), label, hint, unit, first: None, start })
    };
    let reading = gravity("reading", words.reads, words.reads_hint);
    let room = Some(Celsius::literal(20.0));
    let sample = temperature(m, name("sample"), (words.sample, ""), SAMPLE, room, 20.0);
    let original = gravity("original", words.original, words.original_hint);
    let (instrument, used) = hydrometer(m, &name("hydrometer"), None);
    let condition = condition(m, &name("condition"), None);
    let found = || -> Option<Result<Corrected, ScienceError>> {
        let taken = Taken {
            reading: reading.ok()?,
            sample: Some(sample.ok()?),
            condition: condition.value,
            original: original.ok().map(sucrose::as_specific),
        };
        Some(corrected(taken, &instrument))
    };
    let found = found();
    let ok = found.as_ref().and_then(|found| found.as_ref().ok());
    let drawn = stem(m, &reading, ok.map(|found| found.gravity.value()), &instrument, None);
    let mut right = vec![condition.part, original.part, used.part];
    right.extend(ok.map(|ok| how_worked(m, &name("worked"), &ok.worked, IN_GRAVITY)));
    vec![
        Part::new("answer", What::Answer(answer(m, found.as_ref()))),
        columns("fields", vec![reading.part, sample.part, drawn], right),
    ]
}

fn answer(m: &Model, found: Option<&Result<Corrected, ScienceError>>) -> Answer {
    let (w, words) = (m.writer(), &m.words.bench);
    match found {
        None => Answer::only(words.gravity_label, words.give_reading),
        Some(Err(why)) => Answer::only(words.gravity_label, (m.words.fields.science_error)(*why)),
        Some(Ok(corrected)) => {
            let gravity = corrected.gravity.value();
            let below = if corrected.cool_first {
                format!("{} {}", words.too_hot, m.words.cautions.hot)
            } else {
                (words.points)(w, gravity)
            };
            Answer {
                label: words.gravity_label.to_owned(),
                main: w.gravity(gravity),
                beside: w.gravity_doubt(corrected.gravity.sigma()),
                below,
            }
        }
    }
}
