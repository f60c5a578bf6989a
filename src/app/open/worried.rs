//! Something is wrong: the hazard first, then the pressures, then what may be behind it.

use crate::advice::open::pressures::{COLD, pressures};
use crate::advice::open::remark::remark;
use crate::advice::open::worried::{Facts, Symptom, help};
use crate::app::ask::answer_or_none;
use crate::app::fold::{fold, with_beside};
use crate::app::model::Model;
use crate::app::part::{Item, Part, Tag, What, group, heading, status, text};
use crate::batch::Summary;

/// The name of the fold.
const FOLD: &str = "worried";

/// Whether one looks at it.
pub fn is_open(m: &Model) -> bool {
    m.is_open(FOLD, false)
}

/// Questions and answers, folded away until they are wanted.
pub fn parts(m: &Model, s: &Summary) -> Part {
    let words = &m.words.open.worried;
    let name = format!("{}symptom", super::form::scope(&s.id));
    let seen = answer_or_none(m, &name, (words.what_is_seen, ""), words.symptom);
    let facts = s.facts(m.settings().height, m.now);
    let safe = s.is_hazard();
    let found = seen.value.zip(facts).map(|(symptom, facts)| answer(m, symptom, &facts, safe));
    let said = status("worried/said", "", found.unwrap_or_default());
    fold(m, FOLD, words.heading, vec![seen.part, said])
}

pub(super) fn ordered(name: &str, sentences: impl Iterator<Item = &'static str>) -> Part {
    let item = |text: &str| Item { kind: "", mark: "", text: text.to_owned() };
    Part::new(name, What::Items("ordered", sentences.map(item).collect()))
}

/// What is to be done, unless the screen says how to make them safe already; the pressures, and what may be behind.
fn answer(m: &Model, symptom: Symptom, facts: &Facts, told: bool) -> Vec<Part> {
    let words = &m.words.open.worried;
    let found = help(symptom, facts);
    let hazard = symptom.is_hazard();
    let (class, head) = if hazard {
        ("notice notice-grave", words.first_safe)
    } else {
        ("notice", words.what_to_do)
    };
    let mut first = vec![heading("worried/do", 2, head)];
    let remark = remark(symptom, facts).map(words.remark);
    first.extend(remark.map(|remark| text("worried/remark", "", remark)));
    first.push(ordered("worried/steps", found.steps.into_iter().map(words.step)));
    if hazard {
        first.push(text("worried/caution", "small", m.words.cautions.glass));
    }
    let causes = ordered("worried/causes", found.causes.into_iter().map(words.cause));
    let mut parts = vec![];
    if !(hazard && told) {
        parts.push(group("worried/first", Tag::Div, class, first));
    }
    let figures = figures(m, facts);
    // The pressure where they stand is said in any case.
    let here = figures.get(1).map(|(_, here)| here.clone()).unwrap_or_default();
    let wild = text("worried/wild", "small", words.knows_nothing);
    let inner = vec![Part::new("worried/figures", What::Figures(figures))];
    let pressures = fold(m, "worried/pressures", words.pressures, inner);
    let pressures = with_beside(pressures, "small", here);
    parts.extend([pressures, wild, fold(m, "worried/behind", words.causes, vec![causes])]);
    parts
}

fn figures(m: &Model, facts: &Facts) -> Vec<(String, String)> {
    let (w, words) = (m.writer(), &m.words.open.worried);
    let Ok(found) = pressures(facts) else { return vec![] };
    let place = match facts.place {
        Some(_) => w.temperature(found.at),
        None => (words.a_guess)(w, found.at),
    };
    vec![
        (words.stand_at.to_owned(), place),
        (words.pressure_there.to_owned(), (words.at_worst)(w, found.here, found.here_at_worst)),
        ((words.chilled_to)(w, COLD), (words.at_worst)(w, found.chilled, found.chilled_at_worst)),
    ]
}
