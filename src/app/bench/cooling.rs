//! Pitching temperature: the verdict, cooling with water or ice, and the cooling clock.

use crate::advice::family::{Family, Purpose};
use crate::advice::pitch::clock::into_range;
use crate::advice::pitch::ways_to_range::Takes;
use crate::advice::pitch::{Wort, judge};
use crate::advice::thermometer::{ReadWith, looks};
use crate::app::ask::{Ask, AskGravity, Asked, AskedGravity, answer, ask, ask_gravity, listed};
use crate::app::fields::{temperature, volume};
use crate::app::model::Model;
use crate::app::part::{Part, What, heading, status, text};
use crate::app::ways_down::{After, IN_DEGREES, Round, blend, cautions};
use crate::app::worked::how_worked;
use crate::quantity::{Bounds, Celsius, Hours, Litres, MinuteUnit, Plato, SpecificGravity};
use crate::science::cooling::Window;
use crate::science::heat::{self, Blend, ice_to_reach, water_to_reach};
use crate::science::{ScienceError, sucrose};

const ANY: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));

fn name(field: &str) -> String {
    format!("bench/cooling/{field}")
}

fn degrees(
    m: &Model,
    field: &str,
    label: (&'static str, &'static str),
    start: f64,
) -> Asked<Celsius> {
    temperature(m, name(field), label, ANY, None, start)
}

fn gravity(m: &Model) -> AskedGravity {
    let (label, hint, unit) = (m.words.cooling.gravity, "", m.units().gravity);
    let start = SpecificGravity::literal(1.050);
    ask_gravity(m, AskGravity { name: name("gravity"), label, hint, unit, first: None, start })
}

fn between(m: &Model) -> Asked<Hours> {
    let (label, unit) = (m.words.cooling.between, MinuteUnit::Minutes);
    let bounds = Bounds::new(Hours::literal(0.02), Hours::literal(72.0));
    let step = |unit| if unit == MinuteUnit::Minutes { 5.0 } else { 0.5 };
    let (first, start) = (None, Hours::literal(0.5));
    ask(m, Ask { name: name("between"), label, hint: "", unit, bounds, step, first, start })
}

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let (w, words, cool) = (m.writer(), &m.words.cooling, &m.words.pitch.cool);
    let wort = degrees(m, "wort", (words.wort, ""), 30.0);
    let read_with =
        answer(m, &name("thermometer"), (words.read_with, ""), cool.read_in, ReadWith::Probe);
    let yeast = (words.yeast, "");
    let family = listed(m, &name("family"), yeast, m.words.names.family, Family::Unknown);
    let amount = volume(m, name("volume"), (words.how_much, ""), None);
    let gravity = gravity(m);
    let water = degrees(m, "water", (words.water, words.water_hint), 8.0);
    let earlier = degrees(m, "earlier", (words.earlier, ""), 40.0);
    let between = between(m);
    let round = Round::of(m, "bench/cooling/");

    let judged = wort.ok().map(|t| {
        let (temperature, (_, stirred)) = (read_with.value.reads(t), read_with.value.parts());
        judge(Wort { temperature, stirred, family: family.value, packet: None })
    });
    let card =
        judged.map_or_else(cool.no_wort, |advice| (cool.verdict)(w, &advice, cool.read_first));
    let target = family.value.range_for(Purpose::Pitching, None).middle();
    let whole = wort.ok().zip(amount.ok()).map(|(temperature, volume)| {
        let extract = gravity.ok().map_or(Plato::literal(0.0), sucrose::as_plato);
        heat::Part { volume, extract, temperature }
    });
    let with_water = whole.zip(water.ok()).map(|(whole, at)| water_to_reach(whole, at, target));
    let with_ice = whole.and_then(|whole| ice_to_reach(whole, target).ok());
    let cooled = || -> Option<Result<Window, ScienceError>> {
        let reads = |t| read_with.value.reads(t);
        let looks = looks(reads(wort.ok()?), Some((reads(earlier.ok()?), between.ok()?)));
        let (bath, range) = (round.bath(whole)?, family.value.range_for(Purpose::Pitching, None));
        Some(into_range(&looks, &bath, range, wort.ok()?))
    };

    let known = gravity.value.is_ok();
    let told = match &with_water {
        None => String::new(),
        Some(Err(why)) => (m.words.fields.science_error)(*why),
        Some(Ok((litres, found))) => (words.with_water)(w, *litres, found, known),
    };
    let iced = with_ice.map(|(ice, found)| (words.with_ice)(w, ice, &found, known));
    let waited = cooled().map(|found| (words.clock)(&found)).unwrap_or_default();
    let drawn = |(litres, found): &(Litres, Blend)| {
        let after = After {
            temperature: found.temperature.value(),
            volume: found.volume,
            gravity: known.then_some(found.gravity),
        };
        let takes = Takes::Water(*litres, water.ok()?);
        let said = (words.blend.to_owned(), told.clone());
        blend(m, name("blend"), said, (whole?, &takes), after, None)
    };
    let with_water = with_water.as_ref().and_then(|found| found.as_ref().ok());
    let drawn = with_water.and_then(drawn);

    let mut parts = vec![
        Part::new(name("verdict"), What::Verdict(card)),
        wort.part,
        read_with.part,
        family.part,
        heading(name("water-or-ice"), 2, words.water_or_ice),
        text(name("aim"), "small", (words.aim)(w, target)),
        amount.part,
        gravity.part,
        water.part,
        said(&name("with-water"), told),
    ];
    parts.extend(iced.map(|iced| text(name("with-ice"), "plain-answer", iced)));
    parts.extend(drawn);
    parts.push(cautions(m, &name("cautions")));
    let worked =
        |(_, found): &(Litres, Blend)| how_worked(m, &name("worked"), &found.worked, IN_DEGREES);
    parts.extend(with_water.map(worked));
    parts.extend([heading(name("waiting"), 2, words.waiting), earlier.part, between.part]);
    parts.extend(round.parts());
    parts.push(said(&name("clock"), waited));
    parts
}

/// An answer that is said as it changes; nothing while it is empty.
fn said(name: &str, answer: String) -> Part {
    let inner = if answer.is_empty() {
        vec![]
    } else {
        vec![text(format!("{name}/said"), "plain-answer", answer)]
    };
    status(name, "", inner)
}
