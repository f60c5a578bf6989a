//! One hydrometer: what it was made for, how fine its scale is, and what it shows in water and in
//! sugar water.

use crate::batch::{Change, Entry, HydrometerItem, Id};
use crate::page::ask::{Ask, AskGravity, AskedGravity, ask, ask_gravity};
use crate::page::bench::{SAMPLE, temperature};
use crate::page::drafts::use_drafts;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, say};
use crate::page::session::use_session;
use crate::page::words;
use crate::quantity::{
    Bounds, Celsius, Grams, Gravity, GravityChange, GravityUnit, Litres, Measured, SpecificGravity,
    VolumeUnit, write_number,
};
use crate::science::hydrometer::Hydrometer;
use crate::science::hydrometer_check::{SugarCheck, offset_from_water, solution};
use crate::science::sucrose;
use leptos::prelude::*;

/// Kitchen scales, from one mark to the next.
const SCALES: Grams = Grams::literal(1.0);
/// Temperatures printed on hydrometers.
const REFERENCES: [(&str, &str, f64); 4] = [
    ("20", "20 °C / 68 °F", 20.0),
    ("15.56", "60 °F / 15.6 °C", 15.56),
    ("15", "15 °C", 15.0),
    ("17.5", "17.5 °C", 17.5),
];
/// Steps between two lines.
const DIVISIONS: [(&str, &str, f64); 4] = [
    ("0.002", "0.002", 0.002),
    ("0.001", "0.001", 0.001),
    ("0.0005", "0.0005", 0.0005),
    ("0.005", "0.005", 0.005),
];

fn nearest(table: &[(&'static str, &'static str, f64)], value: f64) -> &'static str {
    let distance = |entry: &(&str, &str, f64)| (entry.2 - value).abs();
    let found = table.iter().min_by(|a, b| distance(a).total_cmp(&distance(b)));
    found.map_or("", |(name, ..)| name)
}

fn value(table: &[(&str, &str, f64)], name: &str) -> Option<f64> {
    table.iter().find(|(known, ..)| *known == name).map(|(.., value)| *value)
}

fn choices(table: &[(&'static str, &'static str, f64)]) -> Vec<(&'static str, &'static str)> {
    table.iter().map(|&(name, words, _)| (name, words)).collect()
}

fn gravity(
    scope: &str,
    (key, label, hint): (&'static str, &'static str, &'static str),
    start: f64,
    first: Option<f64>,
) -> AskedGravity {
    let unit = GravityUnit::SpecificGravity;
    let first = first.map(|sg| Gravity::Specific(SpecificGravity::nearest(sg)));
    let start = SpecificGravity::nearest(start);
    ask_gravity(scope, AskGravity { key, label, hint, unit, first, start })
}

/// The form.
#[component]
pub fn InstrumentForm(id: Id, item: HydrometerItem, on_done: Callback<()>) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = format!("gear/{}/", id.as_str());
    let instrument = item.instrument;
    let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
    let name = text("name", &item.name);
    let reference = text("reference", nearest(&REFERENCES, instrument.reference.value()));
    let division = text("division", nearest(&DIVISIONS, instrument.division.value()));
    let water_words = (
        "water",
        "In plain water it shows",
        "Boiled and cooled, or distilled. Leave empty if you have not checked it.",
    );
    let shown = gravity(&scope, water_words, 1.0, None);
    let at = temperature(
        &scope,
        ("water-at", "Temperature of that water", ""),
        SAMPLE,
        Some(instrument.reference),
        20.0,
    );
    let target = gravity(&scope, ("target", "Sugar water to make", ""), 1.048, Some(1.048));
    let jar = ask(
        &scope,
        Ask {
            key: "jar",
            label: "The jar takes",
            hint: "",
            unit: VolumeUnit::Litres,
            bounds: Bounds::new(Litres::literal(0.05), Litres::literal(2.0)),
            step: |_| 0.05,
            first: Some(Litres::literal(0.25)),
            start: Litres::literal(0.25),
        },
    );
    let sweet = gravity(&scope, ("sugar-shows", "In the sugar water it shows", ""), 1.048, None);
    let sweet_at = temperature(
        &scope,
        ("sugar-at", "Temperature of the sugar water", ""),
        SAMPLE,
        Some(instrument.reference),
        20.0,
    );
    let name_error = RwSignal::new(None::<String>);
    let outcome = RwSignal::new(None::<String>);
    let sugar_before = instrument.sugar;
    let read = move || {
        let reference =
            value(&REFERENCES, &reference.get()).unwrap_or(instrument.reference.value());
        let division = value(&DIVISIONS, &division.get()).unwrap_or(instrument.division.value());
        Hydrometer {
            reference: Celsius::nearest(reference),
            division: GravityChange::nearest(division),
            offset: instrument.offset,
            sugar: sugar_before,
        }
    };
    let (water, water_at) = (shown.value, at.value);
    // A new check replaces the old; without one the old stays.
    let offset = move || -> Option<GravityChange> {
        offset_from_water(water.get().ok()?, water_at.get().ok()?, read().reference).ok()
    };
    let (goal, holds) = (target.value, jar.value);
    let (shows, shows_at) = (sweet.value, sweet_at.value);
    let mixture = move || {
        let target = sucrose::as_specific(goal.get().ok()?);
        let at = shows_at.get().ok()?;
        solution(target, holds.get().ok()?, SCALES, at, read().reference).ok()
    };
    // A new check replaces the old; without one the old stays.
    let sugar = move || -> Option<SugarCheck> {
        let (shown, temperature) = (shows.get().ok()?, shows_at.get().ok()?);
        let found = mixture()?;
        let whole = |grams: Grams| Grams::nearest(grams.value().round());
        Some(SugarCheck {
            sugar: whole(found.sugar),
            water: whole(found.water),
            shown,
            temperature,
        })
    };
    let recipe = say(move || match mixture() {
        None => "Give a gravity above water and the jar.".to_owned(),
        Some(found) => format!(
            "Dissolve {}\u{A0}g of dry table sugar in {}\u{A0}g of water. A true one shows {} in it.",
            write_number(found.sugar.value(), 0),
            write_number(found.water.value(), 0),
            write_number(found.shows.value(), 4)
        ),
    });
    let told = move || {
        let points = offset().unwrap_or(instrument.offset).points();
        if points.abs() < 0.05 {
            "Nothing is added to its readings.".to_owned()
        } else {
            format!("{} points will be added to its readings.", write_number(points, 1))
        }
    };
    let save = {
        let (shown, at, sweet, sweet_at) =
            (shown.clone(), at.clone(), sweet.clone(), sweet_at.clone());
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let asked = [shown.optional().is_err(), sweet.optional().is_err()];
            let warmth = [at.optional().is_err(), sweet_at.optional().is_err()];
            if asked.contains(&true) || warmth.contains(&true) {
                outcome.set(Some("Some fields need another look.".to_owned()));
                return;
            }
            let named = name.get_untracked().trim().to_owned();
            name_error.set(named.is_empty().then(|| "Give it a name.".to_owned()));
            let instrument = Hydrometer {
                offset: untrack(offset).unwrap_or(instrument.offset),
                sugar: untrack(sugar).or(sugar_before),
                ..untrack(read)
            };
            let entry = Entry::Hydrometer(HydrometerItem { name: named, instrument });
            match session.change(Change::put(id.clone(), entry), Some("Hydrometer saved")) {
                Ok(()) => {
                    drafts.forget(&scope);
                    on_done.run(());
                }
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    view! {
        <form on:submit=save novalidate>
            <TextField id="gear-name" label="Name" text=name error=name_error />
            <Choice
                id="gear-reference"
                label="Made for"
                hint="It is printed on its paper."
                options=choices(&REFERENCES)
                chosen=reference
            />
            <Choice
                id="gear-division"
                label="From line to line"
                options=choices(&DIVISIONS)
                chosen=division
            />
            <NumberField face=shown.face />
            <NumberField face=at.face />
            <p class="plain-answer">{say(told)}</p>
            <details class="more">
                <summary>"A second check, in sugar water"</summary>
                <p>
                    "A slip of paper moves every mark alike; a wrong scale does not. With two checks the correction is straight between their marks and held beyond them."
                </p>
                <NumberField face=target.face />
                <NumberField face=jar.face />
                <p class="plain-answer">{recipe}</p>
                <NumberField face=sweet.face />
                <NumberField face=sweet_at.face />
            </details>
            <p class="small">{words::GLASS_TOOL_CAUTION}</p>
            <Outcome said=outcome />
            <div class="form-actions">
                <button type="submit" class="main-action">
                    "Save"
                </button>
                <button type="button" class="quiet" on:click=move |_| on_done.run(())>
                    "Leave it as it was"
                </button>
            </div>
        </form>
    }
}
