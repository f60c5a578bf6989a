//! The place: how warm the beer will make itself there, room for foam, light, and the air of the room.

use super::day::{Day, Vessels};
use super::known::Known;
use super::work::Work;
use crate::advice::Advice;
use crate::advice::family::Purpose;
use crate::advice::pitch::place::{Next, Place, Reason, heating, judge};
use crate::advice::pitch::room_air::{self, Room};
use crate::app::drawing::{Drawing, Sketch, WarmthData};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Judged, Part, What, text};
use crate::app::ways_down::IN_DEGREES;
use crate::app::worked::how_worked;
use crate::quantity::{Celsius, Measured, Unit};
use crate::science::self_heating::{self, SelfHeating};

fn place(day: &Day, known: &Known, heating: Option<SelfHeating>) -> Option<Place> {
    let air = heating.as_ref().zip(day.room_size.ok()).map(|(heating, size)| {
        room_air::judge(Room {
            size,
            air: day.air.value,
            vessels: Vessels::count(day.vessels.value),
            gas_in_busiest_day: heating.gas_in_busiest_day,
        })
    });
    Some(Place {
        room: day.room.ok()?,
        family: known.family,
        packet: known.packet,
        heating,
        vessel: day.vessel_holds.ok(),
        beer: known.volume,
        blow_off: day.tube.value.is_yes(),
        in_light: day.light.value.is_yes(),
        sealed_at: known.wort.map(|wort| wort.temperature.value()),
        air,
    })
}

/// The beer's own warmth over the days.
fn warmth(m: &Model, known: &Known, found: &SelfHeating) -> [Part; 3] {
    let (w, words) = (m.writer(), &m.words.pitch.place);
    let unit = w.units.temperature;
    let degrees = |t: Celsius| unit.express(t.value());
    let range = known.family.range_for(Purpose::Fermenting, known.packet);
    let day = |day: &self_heating::Day| {
        (day.at.days(), degrees(day.from), degrees(day.likely), degrees(day.to))
    };
    let data = WarmthData {
        days: found.days.iter().map(day).collect(),
        range: (degrees(range.from), degrees(range.to)),
        symbol: unit.symbol(),
        range_text: words.yeasts_range.to_owned(),
        days_text: words.days,
    };
    let told = (words.warmth)(w, found);
    let drawing = Drawing {
        title: words.own_warmth.to_owned(),
        description: told.clone(),
        sketch: Sketch::Warmth(data),
    };
    [
        text("pitch/place/warmth", "", told),
        Part::new("pitch/place/drawing", What::Drawing(drawing)),
        how_worked(m, "pitch/place/worked", &found.worked, IN_DEGREES),
    ]
}

/// How warm the beer makes itself there, once the start and the room are known.
fn warms(day: &Day, known: &Known) -> Option<SelfHeating> {
    let (start, room) = (known.start?.value(), day.room.ok()?);
    heating(known.volume, start, known.family, day.vessel.value, room).ok()
}

/// The judgement of the place, once its room is known.
pub fn advice(day: &Day, known: &Known) -> Option<Advice<Reason, Vec<Next>>> {
    place(day, known, warms(day, known)).map(|place| judge(&place))
}

/// The same in words.
pub fn judged(m: &Model, work: &Work) -> Option<Judged> {
    let advice = advice(&work.day, &work.known)?;
    Some((m.words.pitch.place.verdict)(m.writer(), &advice))
}

/// The step.
pub fn parts(m: &Model, work: &Work) -> Vec<Part> {
    let (words, day) = (&m.words.pitch.place, &work.day);
    let mut parts = vec![day.room.part.clone(), day.vessel.part.clone()];
    let heating = warms(day, &work.known);
    parts.extend(heating.into_iter().flat_map(|found| warmth(m, &work.known, &found)));
    parts.push(day.stands.part.clone());
    let foam = vec![day.vessel_holds.part.clone(), day.tube.part.clone(), day.light.part.clone()];
    parts.push(fold(m, "pitch/place/foam", words.foam_and_light, foam));
    let air = vec![day.room_size.part.clone(), day.air.part.clone(), day.vessels.part.clone()];
    parts.push(fold(m, "pitch/place/air", words.the_air, air));
    parts
}
