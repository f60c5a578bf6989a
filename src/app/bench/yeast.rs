//! How much dry yeast.

use crate::app::ask::{Ask, AskGravity, answer as one_of, ask, ask_gravity};
use crate::app::fields::volume;
use crate::app::model::Model;
use crate::app::part::{Answer, Part, What, text};
use crate::app::worked::{DoubtIn, how_worked};
use crate::quantity::{Bounds, Grams, MassUnit, SpecificGravity};
use crate::science::yeast::{DryYeast, Pitching, dry_yeast, sachets};
use crate::science::{ScienceError, sucrose};

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.bench;
    let name = |field: &str| format!("bench/yeast/{field}");
    let said = (words.fermented, "");
    let kind = one_of(m, &name("kind"), said, words.pitching, Pitching::Warm);
    let wort = volume(m, name("volume"), (words.wort, ""), None);
    let gravity = ask_gravity(
        m,
        AskGravity {
            name: name("gravity"),
            label: words.a_gravity,
            hint: "",
            unit: m.units().gravity,
            first: None,
            start: SpecificGravity::literal(1.045),
        },
    );
    let usual = Grams::literal(11.0);
    let sachet = ask(
        m,
        Ask {
            name: name("sachet"),
            label: words.sachet,
            hint: "",
            unit: MassUnit::Grams,
            bounds: Bounds::new(Grams::literal(1.0), Grams::literal(1000.0)),
            step: |_| 0.5,
            first: Some(usual),
            start: usual,
        },
    );
    let found = || -> Option<Result<DryYeast, ScienceError>> {
        Some(dry_yeast(kind.value, wort.ok()?, sucrose::as_plato(gravity.ok()?)))
    };
    let found = found();
    let told = Part::new("answer", What::Answer(answer(m, found.as_ref(), sachet.ok())));
    let mut parts = vec![told, kind.part, wort.part, gravity.part, sachet.part];
    parts.push(text("limits", "small", words.yeast_limits));
    let worked = found.and_then(Result::ok).map(|found| found.worked);
    parts.extend(worked.map(|worked| how_worked(m, &name("worked"), &worked, DoubtIn::Grams)));
    parts
}

fn answer(
    m: &Model,
    found: Option<&Result<DryYeast, ScienceError>>,
    sachet: Option<Grams>,
) -> Answer {
    let words = &m.words.bench;
    match found {
        None => Answer::only(words.dry_yeast, words.give_wort),
        Some(Err(why)) => Answer::only(words.dry_yeast, (m.words.fields.science_error)(*why)),
        Some(Ok(found)) => {
            let count = |wanted| sachets(wanted, sachet?).ok();
            let count = count(found.by_maker.from).zip(count(found.by_maker.to));
            Answer {
                label: words.dry_yeast.to_owned(),
                main: (words.yeast_range)(found.by_maker),
                beside: words.by_makers.to_owned(),
                below: (words.yeast_in_all)(count, found.by_cells),
            }
        }
    }
}
