//! The sums of the Bench: what each is called, and the ways to them.

use super::model::Model;
use super::part::{Link, Part, Run, Tag, What, group};
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
