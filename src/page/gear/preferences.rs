//! Units, height above the sea, day or night.

use crate::batch::{Settings, Theme, Units};
use crate::page::ask::{Ask, ask};
use crate::page::parts::choice::Choice;
use crate::page::parts::field::NumberField;
use crate::page::parts::live::{Outcome, follow};
use crate::page::session::{Session, unit_named, use_session};
use crate::page::words;
use crate::quantity::{
    Bounds, Grams, GravityUnit, LengthUnit, Metres, TemperatureUnit, Unit, VolumeUnit,
};
use leptos::prelude::*;

const THEMES: [(&str, Theme); 3] =
    [("follow", Theme::Follow), ("day", Theme::Day), ("night", Theme::Night)];

/// Steps of scales in use, the first two for one bottle.
const SCALES: [(&str, Grams); 4] = [
    ("0.01", Grams::literal(0.01)),
    ("0.1", Grams::literal(0.1)),
    ("1", Grams::literal(1.0)),
    ("5", Grams::literal(5.0)),
];

/// A choice that is saved as soon as it is made.
fn saved_choice(
    session: Session,
    failed: RwSignal<Option<String>>,
    now: fn(&Settings) -> String,
    set: fn(&mut Settings, &str),
) -> RwSignal<String> {
    let chosen = RwSignal::new(session.journal.with_untracked(|j| now(&j.settings())));
    follow(move || {
        let wanted = chosen.get();
        let before = session.journal.with_untracked(|j| now(&j.settings()));
        if wanted != before {
            failed.set(session.set(|settings| set(settings, &wanted)).err());
        }
    });
    chosen
}

fn symbols<U: Unit>() -> Vec<(&'static str, &'static str)> {
    U::ALL.iter().map(|unit| (unit.symbol(), unit.symbol())).collect()
}

fn put<U: Unit>(into: &mut U, symbol: &str) {
    if let Some(unit) = unit_named(symbol) {
        *into = unit;
    }
}

/// The section.
#[component]
pub fn Preferences() -> impl IntoView {
    let session = use_session();
    let failed = RwSignal::new(None::<String>);
    let scales = || GravityUnit::ALL.map(|unit| (unit.symbol(), unit.symbol())).to_vec();
    let gravity = saved_choice(
        session,
        failed,
        |s| s.units.gravity.symbol().to_owned(),
        |s, symbol| {
            let found = GravityUnit::ALL.into_iter().find(|unit| unit.symbol() == symbol);
            s.units.gravity = found.unwrap_or(s.units.gravity);
        },
    );
    let temperature = saved_choice(
        session,
        failed,
        |s| s.units.temperature.symbol().to_owned(),
        |s, symbol| put::<TemperatureUnit>(&mut s.units.temperature, symbol),
    );
    let volume = saved_choice(
        session,
        failed,
        |s| s.units.volume.symbol().to_owned(),
        |s, symbol| put::<VolumeUnit>(&mut s.units.volume, symbol),
    );
    let theme = saved_choice(
        session,
        failed,
        |s| THEMES.into_iter().find(|(_, t)| *t == s.theme).map_or("follow", |(n, _)| n).to_owned(),
        |s, name| {
            let found = THEMES.into_iter().find(|(known, _)| *known == name);
            s.theme = found.map_or(Theme::Follow, |(_, theme)| theme);
        },
    );
    let scale = saved_choice(
        session,
        failed,
        |s| {
            SCALES
                .into_iter()
                .find(|(_, step)| *step == s.scale())
                .map_or("", |(n, _)| n)
                .to_owned()
        },
        |s, name| {
            let found = SCALES.into_iter().find(|(known, _)| *known == name);
            s.scale = found.map_or(s.scale, |(_, step)| Some(step));
        },
    );
    let settings = session.settings_now();
    let height = ask(
        "gear/",
        Ask {
            key: "height",
            label: "Height above the sea",
            hint: "Thin air leaves less gas in the beer.",
            unit: settings.units.height,
            bounds: Bounds::new(Metres::literal(-400.0), Metres::literal(5000.0)),
            step: |unit| if unit == LengthUnit::Metres { 100.0 } else { 500.0 },
            first: Some(settings.height),
            start: settings.height,
        },
    );
    let (read, unit) = (height.value, height.face.unit.clone());
    follow(move || {
        let (Ok(height), symbol) = (read.get(), unit.get()) else { return };
        let before = session.settings_now();
        let mut wanted = before.clone();
        wanted.height = height;
        put::<LengthUnit>(&mut wanted.units.height, symbol);
        if wanted != before {
            failed.set(session.set(|settings| *settings = wanted.clone()).err());
        }
    });
    let usual = move |units: Units| {
        gravity.set(units.gravity.symbol().to_owned());
        temperature.set(units.temperature.symbol().to_owned());
        volume.set(units.volume.symbol().to_owned());
    };
    let (temperatures, volumes) = (symbols::<TemperatureUnit>(), symbols::<VolumeUnit>());
    let words_of_themes = THEMES.map(|(name, theme)| (name, words::theme(theme))).to_vec();
    view! {
        <section>
            <h2>"Units"</h2>
            <p class="log-actions">
                <button type="button" class="quiet" on:click=move |_| usual(Units::METRIC)>
                    "Metric"
                </button>
                <button type="button" class="quiet" on:click=move |_| usual(Units::US)>
                    "US"
                </button>
            </p>
            <Choice id="gear-gravity" label="Gravity" options=scales() chosen=gravity />
            <Choice
                id="gear-temperature"
                label="Temperature"
                options=temperatures
                chosen=temperature
            />
            <Choice
                id="gear-volume"
                label="Volume"
                hint="A US and an imperial gallon differ by a fifth."
                options=volumes
                chosen=volume
            />
            <NumberField face=height.face />
            <Choice
                id="gear-scale"
                label="Your scale shows steps of"
                hint="A scale of 1\u{A0}g will do for a batch, and not for one bottle."
                options=SCALES.map(|(name, _)| (name, words::scale(name))).to_vec()
                chosen=scale
            />
            <h2>"Day and night"</h2>
            <Choice id="gear-theme" label="Colours" options=words_of_themes chosen=theme />
            <Outcome said=failed />
        </section>
    }
}
