//! One gravity on every scale.

use crate::app::ask::{AskGravity, ask_gravity};
use crate::app::model::Model;
use crate::app::part::{Answer, Fold, Part, What, text};
use crate::quantity::{Celsius, Gravity, GravityUnit, Measured, SpecificGravity, write_number};
use crate::science::sucrose;
use crate::words::write;

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let words = &m.words.bench;
    let gravity = ask_gravity(
        m,
        AskGravity {
            name: "bench/scales/gravity".to_owned(),
            label: words.a_gravity,
            hint: words.any_gravity_hint,
            unit: m.units().gravity,
            first: None,
            start: SpecificGravity::literal(1.050),
        },
    );
    let given = gravity.ok();
    let mut parts = vec![Part::new("answer", What::Answer(answer(m, given))), gravity.part];
    parts.extend(given.map(|given| Part::new("figures", What::Figures(figures(m, given)))));
    let name = "bench/scales/worked";
    let (kind, open) = ("worked", m.is_open(name, false));
    let fold = Fold { kind, summary: m.words.working.how.to_owned(), beside: vec![], open };
    let lines = vec![text("bench/scales/worked/text", "", words.scales_worked)];
    parts.push(Part::of(name, What::Fold(fold), lines));
    parts
}

fn answer(m: &Model, given: Option<Gravity>) -> Answer {
    let words = &m.words.bench;
    let Some(gravity) = given else {
        return Answer::only(words.other_scale, words.give_any_gravity);
    };
    let sg = sucrose::as_specific(gravity);
    let (main, beside) = match gravity.unit() {
        GravityUnit::Plato => (write_number(sg.value(), 4), words.sg_unit),
        GravityUnit::SpecificGravity => (write::extract(sucrose::as_plato(gravity)), ""),
    };
    let (label, beside) = (words.other_scale.to_owned(), beside.to_owned());
    Answer { label, main, beside, below: (words.points_alone)(m.writer(), sg) }
}

fn figures(m: &Model, gravity: Gravity) -> Vec<(String, String)> {
    let words = &m.words.bench;
    let (sg, plato) = (sucrose::as_specific(gravity), sucrose::as_plato(gravity));
    let room = Celsius::literal(20.0);
    let w = m.writer();
    let mut rows = vec![
        (words.sg, write_number(sg.value(), 4)),
        (words.plato, write_number(plato.value(), 2)),
    ];
    if w.counts_points() {
        rows.insert(1, (words.in_points, write_number(sg.points(), 1)));
    }
    // Apparent extract below zero is no amount of anything.
    let extract = sucrose::extract_per_litre(plato, room);
    rows.extend(extract.ok().map(|extract| (words.in_a_litre)(w, extract)));
    let density = sucrose::density(plato, room);
    rows.extend(density.ok().map(|density| (words.density, (words.density_of)(w, density))));
    rows.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect()
}
