//! Pitching temperature: the verdict, cooling with water or ice, and the cooling clock.

use super::{temperature, volume};
use crate::advice::Verdict;
use crate::advice::pitch::{Wort, judge};
use crate::advice::thermometer::{ReadWith, for_the_clock, looks};
use crate::chart::{Layer, Substance};
use crate::page::ask::{Ask, AskGravity, ask, ask_gravity};
use crate::page::batches::form::{family_choices, family_named};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Judged, VerdictCard};
use crate::page::parts::blend_drawing::{BlendData, BlendDrawing};
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::field::NumberField;
use crate::page::parts::live::live;
use crate::page::parts::picture::Figure;
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words;
use crate::page::write::{self, Writer};
use crate::quantity::{
    Bounds, Celsius, Grams, Hours, Litres, Measured, MinuteUnit, Plato, SpecificGravity,
    write_number,
};
use crate::science::cooling::{Window, window};
use crate::science::heat::{Blend, Part, ice_to_reach, water_to_reach};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

const ANY: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(100.0));

fn read_with(name: &str) -> ReadWith {
    ReadWith::named(name).unwrap_or(ReadWith::Probe)
}

/// The choices of thermometer.
fn thermometer_choices() -> Vec<(&'static str, &'static str)> {
    let words = |with| match with {
        ReadWith::Probe => "Probe, stirred",
        ReadWith::Strip => "Strip on the wall, stirred",
        ReadWith::Still => "Not stirred",
    };
    ReadWith::ALL.map(|with| (with.name(), words(with))).to_vec()
}

/// What water or ice does, in words.
fn added(w: Writer, what: &str, blend: &Blend) -> String {
    format!(
        "{what}: then {} at {}, {} in the vessel.",
        w.temperature(blend.temperature.value()),
        w.gravity(blend.gravity),
        w.volume(blend.volume)
    )
}

/// Wort and water as the drawing shows them.
fn blend_data(w: Writer, wort: Part, water: Litres, water_at: Celsius, blend: &Blend) -> BlendData {
    let layer = |substance, volume: Litres, t: Celsius, name: &str| Layer {
        substance,
        volume: volume.value(),
        celsius: t.value(),
        figure: format!("{}, {}", w.volume(volume), w.degrees(t)),
        name: name.to_owned(),
    };
    BlendData {
        layers: vec![
            layer(Substance::Wort, wort.volume, wort.temperature, "wort"),
            layer(Substance::Water, water, water_at, "water"),
        ],
        capacity: None,
        result: Figure {
            value: w.temperature(blend.temperature.value()),
            name: format!("{} at {}", w.volume(blend.volume), w.gravity(blend.gravity)),
        },
        brim: String::new(),
    }
}

fn clock_words(found: &Result<Window, ScienceError>) -> String {
    match found {
        Err(ScienceError::NothingThere) => "Give a time between the two looks.".to_owned(),
        Err(_) => "It is not moving towards the target in this place.".to_owned(),
        Ok(window) => match window.latest {
            Some(latest) => format!(
                "There {} to {} after the second look.",
                write::duration(window.earliest),
                write::duration(latest)
            ),
            None => format!(
                "There {} after the second look at the soonest; the two looks are too alike to say more.",
                write::duration(window.earliest)
            ),
        },
    }
}

/// The sum.
#[component]
pub fn CoolingSum() -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = "bench/cooling/";
    let wort = temperature(scope, ("wort", "Wort now", ""), ANY, None, 30.0);
    let family = drafts.text("bench/cooling/family", "unknown");
    let thermometer = drafts.text("bench/cooling/thermometer", "probe");
    let amount = volume(scope, ("volume", "How much wort", ""), None);
    let gravity = ask_gravity(
        scope,
        AskGravity {
            key: "gravity",
            label: "Its gravity",
            hint: "",
            unit: session.units_now().gravity,
            first: None,
            start: SpecificGravity::literal(1.050),
        },
    );
    let water = temperature(
        scope,
        ("water", "Water to add", "Cold, or warm if the wort is too cold."),
        ANY,
        None,
        8.0,
    );
    let earlier = temperature(scope, ("earlier", "Wort at an earlier look", ""), ANY, None, 40.0);
    let between = ask(
        scope,
        Ask {
            key: "between",
            label: "Time between the two looks",
            hint: "",
            unit: MinuteUnit::Minutes,
            bounds: Bounds::new(Hours::literal(0.02), Hours::literal(72.0)),
            step: |unit| if unit == MinuteUnit::Minutes { 5.0 } else { 0.5 },
            first: None,
            start: Hours::literal(0.5),
        },
    );
    let bath = temperature(scope, ("bath", "Water bath or room", ""), ANY, None, 12.0);

    let t = wort.value;
    let judged = move || {
        let with = read_with(&thermometer.get());
        let (temperature, stirred) = (with.reads(t.get().ok()?), with.parts().1);
        let family = family_named(&family.get());
        Some(judge(Wort { temperature, stirred, family, packet: None }))
    };
    let target = move || family_named(&family.get()).pitch_at().middle();
    let (litres, sg) = (amount.value, gravity.value);
    let part = move || {
        let extract = sg.get().map(sucrose::as_plato).unwrap_or(Plato::literal(0.0));
        Some(Part { volume: litres.get().ok()?, extract, temperature: t.get().ok()? })
    };
    let water_at = water.value;
    let with_water = move || -> Option<Result<(Litres, Blend), ScienceError>> {
        Some(water_to_reach(part()?, water_at.get().ok()?, target()))
    };
    let with_ice = move || -> Option<Result<(Grams, Blend), ScienceError>> {
        Some(ice_to_reach(part()?, target()))
    };
    let (before, gap, place) = (earlier.value, between.value, bath.value);
    let cooled = move || -> Option<Result<Window, ScienceError>> {
        let with = read_with(&thermometer.get());
        let earlier = (with.reads(before.get().ok()?), gap.get().ok()?);
        let looks = looks(with.reads(t.get().ok()?), Some(earlier));
        Some(window(&for_the_clock(&looks), place.get().ok()?, target()))
    };
    let writer = move || session.writer();
    let card = move || match judged() {
        Some(advice) => words::pitch_words(writer(), &advice),
        None => Judged {
            verdict: Verdict::CantTell,
            word: words::verdict(Verdict::CantTell),
            sentence: "Give the wort's temperature.".to_owned(),
            reasons: vec![],
            next: String::new(),
        },
    };
    let water_words = move || {
        let w = writer();
        Some(match with_water()? {
            Err(why) => words::science_error(why),
            Ok((litres, blend)) => added(w, &format!("Add {}", w.volume(litres)), &blend),
        })
    };
    let ice_words = move || {
        let (ice, blend) = with_ice()?.ok()?;
        let kilograms = write_number(ice.value() / 1000.0, 1);
        Some(added(writer(), &format!("Or {kilograms}\u{A0}kg of ice"), &blend))
    };
    let drawn = move || {
        let (litres, blend) = with_water()?.ok()?;
        Some(blend_data(writer(), part()?, litres, water_at.get().ok()?, &blend))
    };
    let blend = move || {
        let (data, description) = (drawn()?, water_words().unwrap_or_default());
        Some(view! { <BlendDrawing data title="The blend" description /> }.into_any())
    };
    let aim = move || {
        format!("Aiming at {}, the middle of the yeast's range.", writer().temperature(target()))
    };
    let worked = move || with_water().and_then(Result::ok).map(|(_, blend)| blend.worked);
    view! {
        {live(move || Some(view! { <VerdictCard judged=card() /> }.into_any()))}
        <NumberField face=wort.face />
        <Choice
            id="bench-cooling-thermometer"
            label="Read with"
            options=thermometer_choices()
            chosen=thermometer
        />
        <Pick
            id="bench-cooling-family"
            label="Yeast"
            options=family_choices
            chosen=family
        />
        <h2>"Water or ice"</h2>
        <p class="small">{move || aim()}</p>
        <NumberField face=amount.face />
        <NumberField face=gravity.face />
        <NumberField face=water.face />
        <p class="plain-answer" role="status">
            {move || water_words().unwrap_or_default()}
        </p>
        <p class="plain-answer">{move || ice_words().unwrap_or_default()}</p>
        {live(blend)}
        <p class="small">{words::WATER_CAUTION} " " {words::HOT_CAUTION}</p>
        <HowWorked worked writer doubt_in=(1, 1.0, "°C") />
        <h2>"Or waiting: the cooling clock"</h2>
        <NumberField face=earlier.face />
        <NumberField face=between.face />
        <NumberField face=bath.face />
        <p class="plain-answer" role="status">
            {move || cooled().map(|found| clock_words(&found)).unwrap_or_default()}
        </p>
    }
}
