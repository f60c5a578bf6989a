//! Bench: one-off sums that need no batch.

mod gravity;
mod scales;
mod strength;
mod sugar;
mod yeast;

use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group, heading, link, text};
use super::route::{Route, Sum};

/// A sum's heading and the question it answers.
pub fn names(m: &Model, sum: Sum) -> (&'static str, &'static str) {
    let words = &m.words.bench;
    match sum {
        Sum::Gravity => (words.gravity, words.gravity_asks),
        Sum::Strength => (words.strength, words.strength_asks),
        Sum::Scales => (words.scales, words.scales_ask),
        Sum::Sugar => (words.sugar, words.sugar_asks),
        Sum::Cooling => (words.cooling, words.cooling_asks),
        Sum::Yeast => (words.yeast, words.yeast_asks),
    }
}

/// The list of sums.
pub fn list(m: &Model) -> Vec<Part> {
    vec![
        heading("title", 1, m.words.frame.bench),
        text("lead", "lead", m.words.bench.lead),
        links(m, &Sum::ALL),
    ]
}

/// Links to sums, each with the question it answers.
pub fn links(m: &Model, sums: &[Sum]) -> Part {
    let entry = |sum: &Sum| {
        let (name, question) = names(m, *sum);
        let runs = vec![Run::new("strong", name), Run::new("", question)];
        let address = Route::Sum(*sum).address();
        let link = What::Link(Link { kind: "sum-link", address, runs, here: false });
        let place = format!("sum/{}", sum.name());
        group(place.clone(), Tag::Li, "", vec![Part::new(format!("{place}/link"), link)])
    };
    group("sums", Tag::Ul, "sum-links", sums.iter().map(entry).collect())
}

/// One sum.
pub fn sum(m: &Model, sum: Sum) -> Vec<Part> {
    let body = match sum {
        Sum::Gravity => gravity::parts(m),
        Sum::Strength => strength::parts(m),
        Sum::Scales => scales::parts(m),
        Sum::Yeast => yeast::parts(m),
        Sum::Sugar => sugar::parts(m),
        _ => vec![],
    };
    let back = link("back", "back", Route::Bench.address(), m.words.frame.bench);
    let mut parts = vec![back, heading("title", 1, names(m, sum).0)];
    parts.extend(body);
    parts
}
