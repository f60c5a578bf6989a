//! One reading: a gravity and its sample's temperature first, the rest when it matters.

use super::{Live, original};
use crate::batch::{Added, Change, Entry, Id, Reading, Refractometer, Vessel};
use crate::page::ask::{AskGravity, Asked, AskedGravity, ask_gravity};
use crate::page::batches::form::when;
use crate::page::bench::gravity::{
    condition_choices, condition_name, condition_named, instrument_choices, instrument_of,
};
use crate::page::bench::{SAMPLE, temperature};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::Outcome;
use crate::page::parts::when::WhenField;
use crate::page::session::use_session;
use crate::page::stem_input::StemInput;
use crate::page::{words, write};
use crate::quantity::{Bounds, Celsius, SpecificGravity};
use crate::science::hydrometer::{Corrected, Sample, correct_beer, correct_wort};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

/// Beer and rooms.
const ROOM: Bounds<Celsius> = Bounds::new(Celsius::literal(-20.0), Celsius::literal(60.0));

/// The fields of a reading.
#[derive(Clone)]
struct Fields {
    gravity: AskedGravity,
    sample: Asked<Celsius>,
    beer: Asked<Celsius>,
    room: Asked<Celsius>,
    vessel: RwSignal<String>,
    condition: RwSignal<String>,
    hydrometer: RwSignal<String>,
    at: RwSignal<String>,
    note: RwSignal<String>,
    /// What this form does not ask for and must not lose.
    kept: (Option<Refractometer>, Option<Added>),
}

impl Fields {
    fn new(scope: &str, live: Live, before: Option<&Reading>) -> Self {
        let session = use_session();
        let drafts = use_drafts();
        let (last, heading_hydrometer) = live.with_untracked(|summary| {
            let summary = summary.as_ref();
            let last = summary.and_then(|s| s.lines.last()).map(|line| line.reading.clone());
            (last, summary.map(|s| s.heading.hydrometer.clone()))
        });
        let start = live
            .with_untracked(|s| s.as_ref().and_then(|s| s.present.or(s.original)))
            .map_or(SpecificGravity::literal(1.050), crate::quantity::Estimate::value);
        let hint = if before.is_none() && last.as_ref().is_some_and(|l| l.sample.is_some()) {
            "As last time; change it if this sample is another."
        } else {
            "Of the liquid in the jar."
        };
        let sample = before.map_or_else(|| last.as_ref().and_then(|l| l.sample), |b| b.sample);
        let text = |key: &str, first: &str| drafts.text(&format!("{scope}{key}"), first);
        let hydrometer = before.map(|b| b.hydrometer.clone()).or(heading_hydrometer);
        let condition = before.map_or("still", |b| condition_name(b.condition));
        Self {
            gravity: ask_gravity(
                scope,
                AskGravity {
                    key: "gravity",
                    label: "Hydrometer reads",
                    hint: "",
                    unit: session.units_now().gravity,
                    first: before.and_then(|b| b.as_read),
                    start,
                },
            ),
            sample: temperature(
                scope,
                ("sample", "Sample temperature", hint),
                SAMPLE,
                sample,
                20.0,
            ),
            beer: temperature(
                scope,
                ("beer", "Beer in the fermenter", "By strip or probe."),
                ROOM,
                before.and_then(|b| b.beer),
                20.0,
            ),
            room: temperature(scope, ("room", "Room", ""), ROOM, before.and_then(|b| b.room), 19.0),
            vessel: text(
                "vessel",
                if before.is_some_and(|b| b.vessel == Vessel::Satellite) {
                    "satellite"
                } else {
                    "main"
                },
            ),
            condition: text("condition", condition),
            hydrometer: text("hydrometer", hydrometer.as_ref().map_or("", Id::as_str)),
            at: text("at", &before.map(|b| b.at.local_text()).unwrap_or_default()),
            note: text("note", before.map_or("", |b| b.note.as_str())),
            kept: before.map_or((None, None), |b| (b.refractometer, b.added)),
        }
    }

    fn reading(&self, batch: &Id) -> Result<Reading, String> {
        let read = (
            self.gravity.optional(),
            self.sample.optional(),
            self.beer.optional(),
            self.room.optional(),
        );
        let (Ok(as_read), Ok(sample), Ok(beer), Ok(room)) = read else {
            return Err("Some fields need another look.".to_owned());
        };
        Ok(Reading {
            batch: batch.clone(),
            at: when(&self.at.get_untracked())?,
            vessel: if self.vessel.get_untracked() == "satellite" {
                Vessel::Satellite
            } else {
                Vessel::Main
            },
            as_read,
            typed: self.gravity.face.text.get_untracked().trim().to_owned(),
            sample,
            condition: condition_named(&self.condition.get_untracked()),
            hydrometer: Id::new(self.hydrometer.get_untracked())
                .map_err(|_| "Choose a hydrometer.".to_owned())?,
            refractometer: self.kept.0,
            added: self.kept.1,
            beer,
            room,
            note: self.note.get_untracked().trim().to_owned(),
        })
    }
}

/// Adds a reading (`editing` none) or changes one. `on_done` is told when it is saved or left.
#[component]
pub fn ReadingForm(
    batch: Id,
    live: Live,
    editing: Option<(Id, Reading)>,
    on_done: Callback<()>,
) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = match &editing {
        Some((id, _)) => format!("reading/{}/", id.as_str()),
        None => format!("reading/new/{}/", batch.as_str()),
    };
    let fields = Fields::new(&scope, live, editing.as_ref().map(|(_, reading)| reading));
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let instrument = instrument_of(fields.hydrometer);
    let (read, at, condition) = (fields.gravity.value, fields.sample.value, fields.condition);
    let found = move || -> Option<Result<Corrected, ScienceError>> {
        let instrument = instrument();
        let sample = Sample {
            reading: read.get().ok()?,
            temperature: at.get().unwrap_or(instrument.reference),
            condition: condition_named(&condition.get()),
        };
        Some(match original(live) {
            Some(og) => correct_beer(sample, &instrument, sucrose::plato(og)),
            None => correct_wort(sample, &instrument),
        })
    };
    let said = move || match found() {
        None => Said::only("Set the stem, or type what it reads."),
        Some(Err(why)) => Said::only(words::science_error(why)),
        Some(Ok(corrected)) => {
            let gravity = corrected.gravity.value();
            let below = if corrected.cool_first {
                format!("Too hot to trust: cool the sample first. {}", words::HOT_CAUTION)
            } else {
                write::extract(sucrose::plato(gravity))
            };
            let w = session.writer();
            Said {
                main: w.gravity(gravity),
                beside: w.gravity_doubt(corrected.gravity.sigma()),
                below,
            }
        }
    };
    let corrected = move || found().and_then(Result::ok).map(|found| found.gravity.value());
    let is_new = editing.is_none();
    let save = {
        let fields = fields.clone();
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let done = fields.reading(&batch).and_then(|reading| {
                let entry = Entry::Reading(reading);
                match &editing {
                    Some((id, _)) => {
                        session.change(Change::Put(id.clone(), entry), Some("Reading changed"))
                    }
                    None => session.put_new(entry, Some("Reading saved")).map(|_| ()),
                }
            });
            match done {
                Ok(()) => {
                    drafts.forget(&scope);
                    on_done.run(());
                }
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    let Fields { gravity, sample, beer, room, vessel, condition, hydrometer, at, note, .. } =
        fields;
    view! {
        <form class="reading-form" on:submit=save novalidate>
            <Answer label="Gravity at 20 °C" said />
            <div class="two-columns">
                <div>
                    <NumberField face=gravity.face.clone() />
                    <StemInput reading=gravity corrected instrument />
                </div>
                <div>
                    <NumberField face=sample.face />
                    <Choice
                        id="reading-vessel"
                        label="From"
                        options=vec![("main", "The batch"), ("satellite", "The satellite")]
                        chosen=vessel
                    />
                    <Choice
                        id="reading-condition"
                        label="The sample"
                        options=condition_choices()
                        chosen=condition
                    />
                    <details class="more">
                        <summary>"Temperatures, time and note"</summary>
                        <NumberField face=beer.face />
                        <NumberField face=room.face />
                        <WhenField
                            id="reading-at"
                            label="Read"
                            text=at
                            now
                        />
                        <TextField
                            id="reading-note"
                            label="Note"
                            text=note
                            long=true
                        />
                        <Pick
                            id="reading-hydrometer"
                            label="Hydrometer used"
                            options=instrument_choices()
                            chosen=hydrometer
                        />
                    </details>
                </div>
            </div>
            <Outcome said=outcome />
            <div class="form-actions">
                <button type="submit" class="main-action">
                    {if is_new { "Save the reading" } else { "Save the change" }}
                </button>
                <button type="button" class="quiet" on:click=move |_| on_done.run(())>
                    {if is_new { "Not now" } else { "Leave it as it was" }}
                </button>
            </div>
        </form>
    }
}
