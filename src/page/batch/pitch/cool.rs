//! Is it cool enough, and the ways down (or up) side by side.

use super::day::Day;
use super::known::Known;
use crate::advice::Verdict;
use crate::advice::pitch::outlook::outlook;
use crate::advice::pitch::place::taken_to_hold;
use crate::advice::pitch::ways_to_range::{Scene, Takes, Way, ways};
use crate::chart::{Layer, Substance};
use crate::page::parts::answer::{Judged, card};
use crate::page::parts::blend_drawing::{BlendData, BlendDrawing};
use crate::page::parts::choice::Choice;
use crate::page::parts::field::NumberField;
use crate::page::parts::live::{When, list, live, or_nothing};
use crate::page::parts::picture::Figure;
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words::{self, pitching};
use crate::page::write::{self, Writer};
use crate::quantity::{Celsius, Litres, Measured, Plato};
use crate::science::heat::{Part, melted};
use crate::science::sucrose;
use leptos::prelude::*;

const THERMOMETERS: [(&str, &str); 2] =
    [("probe", "Probe in the wort"), ("strip", "Strip on the wall")];
const STIRRED: [(&str, &str); 2] = [("yes", "Stirred"), ("no", "Not stirred")];

fn part(known: Known) -> Option<Part> {
    let extract = known.start().map_or(Plato::literal(0.0), |sg| sucrose::plato(sg.value()));
    Some(Part { volume: known.volume()?, extract, temperature: known.wort()?.temperature.value() })
}

/// The layers of one way, for its drawing.
fn layers(w: Writer, wort: Part, way: &Way, capacity: Option<Litres>) -> Option<BlendData> {
    let layer = |substance, volume: f64, t: Celsius, name: &str| Layer {
        substance,
        volume,
        celsius: t.value(),
        figure: format!("{}, {}", w.volume(Litres::nearest(volume)), w.degrees(t)),
        name: name.to_owned(),
    };
    let added = match way.takes.as_ref()? {
        Takes::Water(litres, at) => layer(Substance::Water, litres.value(), *at, "water"),
        Takes::Ice(mass) => {
            layer(Substance::Ice, melted(*mass).value(), Celsius::literal(0.0), "ice")
        }
        Takes::Time(_) => return None,
    };
    Some(BlendData {
        layers: vec![layer(Substance::Wort, wort.volume.value(), wort.temperature, "wort"), added],
        capacity: capacity.map(Litres::value),
        result: Figure {
            value: w.temperature(way.temperature.value()),
            name: format!("{} at {}", w.volume(way.volume), w.gravity(way.gravity)),
        },
        brim: capacity.map(|c| w.volume(c)).unwrap_or_default(),
    })
}

/// One way: its name, its cost, its drawing and its working.
fn way_view(w: Writer, wort: Part, way: Way, capacity: Option<Litres>) -> AnyView {
    let drawing = layers(w, wort, &way, capacity).map(|data| {
        let title = pitching::way_title(w, &way);
        let description = pitching::way_cost(w, &way);
        view! {
            <BlendDrawing
                data
                title
                description
            />
        }
        .into_any()
    });
    let worked = way.worked.clone();
    let worked = move || Some(worked.clone());
    view! {
        <li class="way">
            <h3>{pitching::way_title(w, &way)}</h3>
            <p>{pitching::way_cost(w, &way)}</p>
            {or_nothing(drawing)}
            <HowWorked worked writer=move || w doubt_in=(1, 1.0, "°C") />
        </li>
    }
    .into_any()
}

/// The section.
#[component]
pub fn Cool(day: Day) -> impl IntoView {
    let session = use_session();
    let known = day.known();
    let bath = day.bath.value;
    let judged = move || {
        let Some(wort) = known.wort() else {
            return Judged {
                verdict: Verdict::CantTell,
                word: words::verdict(Verdict::CantTell),
                sentence: "Give the wort's temperature.".to_owned(),
                reasons: vec![],
                next: String::new(),
            };
        };
        let found = outlook(wort, &known.looks(), bath.get().ok());
        let mut judged = words::pitch_words(session.writer(), &found.advice);
        if let Some(window) = &found.in_range {
            let from = write::duration(window.earliest);
            judged.reasons.push(match window.latest {
                Some(to) => {
                    format!("In its range {from} to {} after the last look.", write::duration(to))
                }
                None => format!("In its range {from} after the last look at the soonest."),
            });
        }
        if found.waiting_is_vain {
            judged
                .reasons
                .push("It is not moving towards the range: waiting alone will not do.".to_owned());
        }
        judged
    };
    let off = move || {
        let verdict = known.wort().map(|wort| crate::advice::pitch::judge(wort).verdict);
        matches!(verdict, Some(Verdict::Wait | Verdict::Stop))
    };
    let (water, ice, holds) = (day.water.value, day.ice.value, day.vessel_holds.value);
    let planned = move || day.live.with(|s| s.as_ref().map(|s| s.heading.volume));
    let down = live(move || {
        let wort = known.wort()?;
        let whole = part(known)?;
        let looks = known.looks();
        let brim = holds.get().ok();
        let room = taken_to_hold(whole.volume);
        let waiting = bath.get().ok().filter(|_| looks.len() > 1).map(|bath| (looks, bath));
        let water = water.get().ok();
        let scene = Scene {
            wort: whole,
            range: wort.packet.unwrap_or(wort.family.pitch_at()),
            vessel: brim.unwrap_or(room),
            planned: planned(),
            cold: water,
            warm: water,
            ice: ice.get().ok(),
            waiting,
        };
        let w = session.writer();
        let views = ways(&scene).into_iter().map(|way| way_view(w, whole, way, brim));
        Some(view! { <ul class="ways">{list(views)}</ul> }.into_any())
    });
    let asked = [
        day.volume.face.clone(),
        day.water.face.clone(),
        day.ice.face.clone(),
        day.vessel_holds.face.clone(),
        day.bath.face.clone(),
        day.earlier.face.clone(),
        day.between.face.clone(),
    ];
    let asked = StoredValue::new(asked);
    let fields = move || {
        let faces = asked.get_value().into_iter();
        list(faces.map(|face| view! { <NumberField face /> }.into_any()))
    };
    view! {
        {live(move || card(Some(judged())))}
        <NumberField face=day.wort.face.clone() />
        <Choice
            id="pitch-thermometer"
            label="Read with"
            options=THERMOMETERS.to_vec()
            chosen=day.thermometer
        />
        <Choice id="pitch-stirred" label="The wort was" options=STIRRED.to_vec() chosen=day.stirred />
        <When is=off>
            <details class="more" open>
                <summary>"Ways there"</summary>
                <p class="small">{words::WATER_CAUTION} " " {words::HOT_CAUTION}</p>
                {fields()}
            </details>
        </When>
        {down}
    }
}
