//! The true gravity behind a reading.

use super::{SAMPLE, temperature};
use crate::advice::{self, reading::Taken};
use crate::page::ask::{AskGravity, ask_gravity};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::field::NumberField;
use crate::page::parts::live::Told;
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::stem_input::StemInput;
use crate::page::{words, write};
use crate::quantity::{Celsius, SpecificGravity, write_number};
use crate::science::hydrometer::{Condition, Corrected, Hydrometer};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

/// How a sample's condition is held in a draft.
const CONDITIONS: [(&str, Condition); 3] =
    [("still", Condition::Still), ("foam", Condition::Foam), ("gassy", Condition::Gassy)];

/// The condition of that name.
pub fn condition_named(name: &str) -> Condition {
    CONDITIONS.into_iter().find(|(known, _)| *known == name).map_or(Condition::Still, |(_, c)| c)
}

/// The name a condition has in a draft.
pub fn condition_name(condition: Condition) -> &'static str {
    CONDITIONS.into_iter().find(|(_, known)| *known == condition).map_or("still", |(name, _)| name)
}

/// The choices, in words.
pub fn condition_choices() -> Vec<(&'static str, &'static str)> {
    CONDITIONS.map(|(name, condition)| (name, words::condition(condition))).to_vec()
}

/// The instruments in Gear, for a list.
pub fn instrument_choices() -> Told<Vec<(String, String)>> {
    let session = use_session();
    Told::from(move || {
        session.journal.with(|journal| {
            let all = journal.hydrometers().into_iter();
            all.map(|(id, item)| (id.as_str().to_owned(), item.name)).collect()
        })
    })
}

/// The instrument of that identity, or the first there is.
pub fn instrument_of(
    chosen: RwSignal<String>,
) -> impl Fn() -> Hydrometer + Copy + Send + Sync + 'static {
    let session = use_session();
    move || {
        let wanted = chosen.get();
        session.journal.with(|journal| {
            let all = journal.hydrometers();
            let found = all.iter().find(|(id, _)| id.as_str() == wanted).or(all.first());
            found.map_or(Hydrometer::USUAL, |(_, item)| item.instrument)
        })
    }
}

/// The sum.
#[component]
pub fn GravitySum() -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = "bench/gravity/";
    let unit = session.units_now().gravity;
    let gravity = |key, label, hint| {
        let start = SpecificGravity::literal(1.050);
        ask_gravity(scope, AskGravity { key, label, hint, unit, first: None, start })
    };
    let reading =
        gravity("reading", "Hydrometer reads", "At the level surface, the bottom of the curve.");
    let room = Some(Celsius::literal(20.0));
    let sample = temperature(scope, ("sample", "Sample temperature", ""), SAMPLE, room, 20.0);
    let original =
        gravity("original", "Gravity at the start, if it has fermented", "Leave empty for wort.");
    let chosen = drafts.text("bench/gravity/hydrometer", "");
    let condition = drafts.text("bench/gravity/condition", "still");
    let instrument = instrument_of(chosen);
    let (read, at, start) = (reading.value, sample.value, original.value);
    let found = move || -> Option<Result<Corrected, ScienceError>> {
        let taken = Taken {
            reading: read.get().ok()?,
            sample: Some(at.get().ok()?),
            condition: condition_named(&condition.get()),
            original: start.get().ok().map(sucrose::as_specific),
        };
        Some(advice::reading::corrected(taken, &instrument()))
    };
    let writer = move || session.writer();
    let said = move || match found() {
        None => Said::only("Give the reading and the sample's temperature."),
        Some(Err(why)) => Said::only(words::science_error(why)),
        Some(Ok(corrected)) => {
            let gravity = corrected.gravity.value();
            let below = if corrected.cool_first {
                format!("Too hot to trust: cool the sample first. {}", words::HOT_CAUTION)
            } else {
                let points = write_number(gravity.points(), 0);
                format!("{} · {points} points", write::extract(sucrose::plato(gravity)))
            };
            Said {
                main: writer().gravity(gravity),
                beside: writer().gravity_doubt(corrected.gravity.sigma()),
                below,
            }
        }
    };
    let ok = move || found().and_then(Result::ok);
    let corrected = move || ok().map(|corrected| corrected.gravity.value());
    let worked = move || ok().map(|corrected| corrected.worked);
    view! {
        <Answer label="Gravity at 20 °C" said />
        <div class="two-columns">
            <div>
                <NumberField face=reading.face.clone() />
                <StemInput reading=reading corrected instrument />
            </div>
            <div>
                <NumberField face=sample.face />
                <Choice
                    id="bench-gravity-condition"
                    label="The sample"
                    options=condition_choices()
                    chosen=condition
                />
                <NumberField face=original.face />
                <Pick
                    id="bench-gravity-hydrometer"
                    label="Hydrometer used"
                    options=instrument_choices()
                    chosen
                />
                <HowWorked worked writer doubt_in=(4, 1.0, "SG") />
            </div>
        </div>
    }
}
