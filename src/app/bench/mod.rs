//! Bench: one-off sums that need no batch.

mod cooling;
mod gravity;
mod level;
mod scales;
mod strength;
mod sugar;
mod yeast;

use super::model::Model;
use super::part::{Part, heading, link, text};
use super::route::{Route, Sum};
use super::sums;

/// The list of sums.
pub fn list(m: &Model) -> Vec<Part> {
    vec![
        heading("title", 1, m.words.frame.bench),
        text("lead", "lead", m.words.bench.lead),
        sums::links(m, &Sum::ALL),
    ]
}

/// One sum.
#[inline(never)] // read by the browser only when it is called
pub fn sum(m: &Model, sum: Sum) -> Vec<Part> {
    let body = match sum {
        Sum::Gravity => gravity::parts(m),
        Sum::Cooling => cooling::parts(m),
        Sum::Strength => strength::parts(m),
        Sum::Scales => scales::parts(m),
        Sum::Yeast => yeast::parts(m),
        Sum::Sugar => sugar::parts(m),
    };
    let back = link("back", "back", Route::Bench.address(), m.words.frame.bench);
    let mut parts = vec![back, heading("title", 1, sums::names(m, sum).0)];
    parts.extend(body);
    parts
}
