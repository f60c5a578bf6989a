//! The place: how warm the beer will make itself there, room for foam, light, and the air of the room.

use super::day::Day;
use super::known::Known;
use crate::advice::pitch::place::{self as place_advice, Place as Spot, judge};
use crate::advice::pitch::room_air::{self, AirChange, Room};
use crate::page::ask::{Ask, ask};
use crate::page::parts::answer::card;
use crate::page::parts::choice::Choice;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::live;
use crate::page::parts::warmth_drawing::{WarmthData, WarmthDrawing};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words::place;
use crate::page::write::Writer;
use crate::quantity::{Bounds, Celsius, CubicMetres, Measured, RoomUnit, Unit, write_number};
use crate::science::self_heating::{SelfHeating, Vessel};
use leptos::prelude::*;

const AIRS: [(&str, &str, AirChange); 3] = [
    ("room", "A lived-in room", AirChange::Room),
    ("shut", "A shut cupboard or cellar", AirChange::Shut),
    ("sealed", "A chest freezer or sealed box", AirChange::Sealed),
];
const YES_NO: [(&str, &str); 2] = [("no", "No"), ("yes", "Yes")];
const VESSELS: [(&str, &str); 4] = [("1", "1"), ("2", "2"), ("3", "3"), ("5", "5")];

/// The vessel of a stored name.
pub fn vessel_named(name: &str) -> Vessel {
    Vessel::named(name).unwrap_or(Vessel::Bucket)
}

fn vessel_choices() -> Vec<(&'static str, &'static str)> {
    let names = ["bucket", "glass", "insulated", "water_tub"];
    names.into_iter().map(|name| (name, place::vessel(vessel_named(name)))).collect()
}

fn heating(known: Known, vessel: &str, room: Option<Celsius>) -> Option<SelfHeating> {
    let (volume, original) = (known.volume()?, known.start()?.value());
    place_advice::heating(volume, original, known.family(), vessel_named(vessel), room?).ok()
}

fn drawing(w: Writer, known: Known, found: &SelfHeating) -> AnyView {
    let degrees = |t: Celsius| w.units.temperature.express(t.value());
    let range = known.family().ferments_at();
    let day = |day: &crate::science::self_heating::Day| {
        (day.at.days(), degrees(day.from), degrees(day.likely), degrees(day.to))
    };
    let data = WarmthData {
        days: found.days.iter().map(day).collect(),
        range: (degrees(range.from), degrees(range.to)),
        symbol: w.units.temperature.symbol(),
        range_text: "the yeast's range".to_owned(),
    };
    let told = format!(
        "It warms itself by about {} over the room, most after {} days, and makes about {}\u{A0}L of gas, {}\u{A0}L in the busiest day.",
        w.warmth(found.rise.value().value()),
        write_number(found.peak.days(), 1),
        write_number(found.gas.value(), 0),
        write_number(found.gas_in_busiest_day.value(), 0)
    );
    let worked = found.worked.clone();
    let worked = move || Some(worked.clone());
    view! {
        <p>{told.clone()}</p>
        <WarmthDrawing
            data
            title="The beer's own warmth"
            description=told
        />
        <HowWorked worked writer=move || w doubt_in=(1, 1.0, "°C") />
    }
    .into_any()
}

/// The section.
#[component]
pub fn Place(day: Day, scope: String) -> impl IntoView {
    let session = use_session();
    let known = day.known();
    let size = ask(
        &scope,
        Ask {
            key: "room-size",
            label: "Size of the room",
            hint: "Leave empty for an ordinary room.",
            unit: RoomUnit::CubicMetres,
            bounds: Bounds::new(CubicMetres::literal(0.05), CubicMetres::literal(1000.0)),
            step: |unit| if unit == RoomUnit::CubicMetres { 1.0 } else { 50.0 },
            first: None,
            start: CubicMetres::literal(10.0),
        },
    );
    let (room, holds, cubic) = (day.room.value, day.vessel_holds.value, size.value);
    let Day { vessel, air, vessels, light, tube, .. } = day.clone();
    let found = move || heating(known, &vessel.get(), room.get().ok());
    let card = live(move || {
        let heating = found();
        let change =
            AIRS.into_iter().find(|(name, ..)| *name == air.get()).map_or(AirChange::Room, |a| a.2);
        let air = heating.as_ref().zip(cubic.get().ok()).map(|(heating, size)| {
            room_air::judge(Room {
                size,
                air: change,
                vessels: vessels.get().parse().unwrap_or(1),
                gas_in_busiest_day: heating.gas_in_busiest_day,
            })
        });
        let spot = Spot {
            room: room.get().ok()?,
            family: known.family(),
            packet: None,
            heating,
            vessel: holds.get().ok(),
            beer: known.volume()?,
            blow_off: tube.get() == "yes",
            in_light: light.get() == "yes",
            sealed_at: known.wort().map(|wort| wort.temperature.value()),
            air,
        };
        let judged = place::place_words(session.writer(), &judge(&spot));
        card(Some(judged))
    });
    let picture = live(move || Some(drawing(session.writer(), known, &found()?)));
    let airs = AIRS.map(|(name, words, _)| (name, words)).to_vec();
    view! {
        <details class="more">
            <summary>"Place"</summary>
            <NumberField face=day.room.face.clone() />
            <Choice id="pitch-vessel" label="It stands" options=vessel_choices() chosen=vessel />
            {card}
            {picture}
            <TextField id="pitch-stands" label="Where, in your words" text=day.stands />
            <NumberField face=size.face />
            <Choice id="pitch-air" label="That is" options=airs chosen=air />
            <Choice
                id="pitch-vessels"
                label="Vessels fermenting there"
                options=VESSELS.to_vec()
                chosen=vessels
            />
            <Choice id="pitch-light" label="In the light" options=YES_NO.to_vec() chosen=light />
            <Choice id="pitch-tube" label="With a blow-off tube" options=YES_NO.to_vec() chosen=tube />
        </details>
    }
}
