//! The place in words: its warmth, its light, room for foam, and the air of the room.

use crate::advice::pitch::place::{Next as PlaceNext, Reason as PlaceReason};
use crate::advice::pitch::room_air::AirChange;
use crate::advice::pitch::{place, room_air};
use crate::advice::{Advice, Verdict};
use crate::quantity::{Litres, Measured, write_number};
use crate::science::self_heating::{SelfHeating, Vessel};
use crate::words::texts::texts;
use crate::words::write::Writer;
use crate::words::{Judged, judged};

texts! {
    /// What is asked of the place, and what is made of it.
    PlaceWords, PLACE {
        foam_and_light: "Foam and light",
        the_air: "The air of the room",
        room: "Room where it will stand",
        stands_in: "Vessel",
        where_words: "Where, in your words",
        room_size: "Size of the room",
        room_size_hint: "Leave empty for an ordinary room.",
        that_is: "What kind of room",
        vessels: "Vessels fermenting there",
        in_light: "In the light",
        tube: "With a blow-off tube",
        own_warmth: "How warm the beer makes itself",
        yeasts_range: "the yeast's range",
        days: "days",
    } says {
        vessel: fn(Vessel) -> &'static str = vessel,
        air: fn(AirChange) -> &'static str = air,
        warmth: fn(Writer, &SelfHeating) -> String = warmth,
        verdict: fn(Writer, &Advice<PlaceReason, Vec<PlaceNext>>) -> Judged = place_words,
    }
}

/// What the beer stands in.
const fn vessel(vessel: Vessel) -> &'static str {
    match vessel {
        Vessel::Bucket => "Plastic bucket",
        Vessel::Glass => "Glass",
        Vessel::Insulated => "Wrapped",
        Vessel::WaterTub => "In a tub of water",
    }
}

const fn air(air: AirChange) -> &'static str {
    match air {
        AirChange::Room => "A lived-in room",
        AirChange::Shut => "A shut cupboard or cellar",
        AirChange::Sealed => "A chest freezer or sealed box",
    }
}

/// How warm it makes itself.
fn warmth(w: Writer, found: &SelfHeating) -> String {
    format!(
        "It gets about {} warmer than the room, most after {} days, and makes about {} of gas, {} in the busiest day.",
        w.warmth(found.rise.value().value()),
        write_number(found.peak.days(), 1),
        w.gas(Litres::nearest(found.gas.value())),
        w.gas(Litres::nearest(found.gas_in_busiest_day.value()))
    )
}

/// Whether the place will do.
fn place_words(w: Writer, advice: &Advice<PlaceReason, Vec<PlaceNext>>) -> Judged {
    let sentence = match advice.verdict {
        Verdict::Go => "A good place.",
        Verdict::Wait => "It will do with some care.",
        Verdict::Stop => "Not as it is.",
        Verdict::CantTell => "Its warmth can't be told.",
    };
    let reasons = advice.reasons.iter().map(|reason| place_reason(w, *reason)).collect();
    let steps: Vec<_> = advice.next.iter().map(|next| place_next(w, *next)).collect();
    judged(advice.verdict, sentence, reasons, steps.join(" "))
}

fn place_reason(w: Writer, reason: place::Reason) -> String {
    let range = |r: crate::advice::family::Span<crate::quantity::Celsius>| {
        format!("{} to {}", w.degrees(r.from), w.degrees(r.to))
    };
    match reason {
        PlaceReason::BeerWithin(t, r) => {
            format!("At its warmest the beer is about {}, within {}.", w.temperature(t), range(r))
        }
        PlaceReason::BeerTooWarm(t, r, by) => format!(
            "At its warmest the beer is about {}, {} above {}.",
            w.temperature(t),
            w.warmth(by.value()),
            range(r)
        ),
        PlaceReason::MayBeTooWarm(t, r) => {
            format!("It may get as warm as {}, above {}.", w.temperature(t), range(r))
        }
        PlaceReason::BeerTooCold(t, r, by) => format!(
            "For most of the time about {}, {} below {}.",
            w.temperature(t),
            w.warmth(by.value()),
            range(r)
        ),
        PlaceReason::LittleHeadspace(share) => format!(
            "Only {}\u{A0}% of the vessel is left for foam; 20 to 25\u{A0}% is usual.",
            write_number(100.0 * share.value(), 0)
        ),
        PlaceReason::Overfull => "More beer than the vessel holds.".to_owned(),
        PlaceReason::Light => "Light spoils beer in clear or green glass.".to_owned(),
        PlaceReason::SucksBack(by) => format!(
            "The wort is {} warmer than the room: as it cools it draws in what is in the airlock.",
            w.warmth(by.value())
        ),
        PlaceReason::Air(reason) => match reason {
            room_air::Reason::About(ppm) => {
                format!(
                    "About {}\u{A0}ppm of carbon dioxide in the busiest day, if all mixed.",
                    write_number(ppm.value(), 0)
                )
            }
            room_air::Reason::BelowEightHours => {
                "Below the workplace mark for eight hours (5,000, NIOSH).".to_owned()
            }
            room_air::Reason::AboveEightHours => {
                "Above the workplace mark for eight hours (5,000, NIOSH).".to_owned()
            }
            room_air::Reason::AboveFifteenMinutes => {
                "Above the mark for fifteen minutes (30,000, NIOSH).".to_owned()
            }
            room_air::Reason::Dangerous => "At once dangerous to life (40,000, NIOSH).".to_owned(),
            room_air::Reason::ClosedPlace => crate::words::CAUTIONS.gas.to_owned(),
        },
    }
}

fn place_next(w: Writer, next: PlaceNext) -> String {
    match next {
        PlaceNext::PutItThere => "Put it there.".to_owned(),
        PlaceNext::CoolerRoom(t) => format!("Find a room of about {}, or stand it in a tub of water.", w.degrees(t)),
        PlaceNext::WarmerRoom(t) => format!("Find a room of at least {}.", w.degrees(t)),
        PlaceNext::FitBlowOff => "Fit a tube in place of the airlock, into a jug of water.".to_owned(),
        PlaceNext::LessInVessel => "Take some out, or use a larger vessel.".to_owned(),
        PlaceNext::CoverIt => "Cover it.".to_owned(),
        PlaceNext::SealLoosely => "Cover it with foil until it is as cool as the room; then the lid and the airlock, half full.".to_owned(),
        PlaceNext::MindTheAir(room_air::Next::Nothing) => "Do not sleep in a closed room with several.".to_owned(),
        PlaceNext::MindTheAir(room_air::Next::AirBeforeStaying) => "Air the room before staying in it, and do not sleep there.".to_owned(),
        PlaceNext::MindTheAir(room_air::Next::OpenAndWait) => "Open it, wait, and never lean in; better, put the beer elsewhere.".to_owned(),
    }
}
