//! One reading: a gravity and its sample's temperature first, the rest when it matters.

use super::reading_fields::{Fields, added_choices};
use super::{Live, original};
use crate::advice::{self, reading::Taken};
use crate::batch::{Change, Entry, Id, Reading, Vessel};
use crate::page::bench::gravity::{
    condition_choices, condition_named, instrument_choices, instrument_of,
};
use crate::page::drafts::use_drafts;
use crate::page::parts::answer::{Answer, Said};
use crate::page::parts::choice::{Choice, Pick};
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, When};
use crate::page::parts::when::WhenField;
use crate::page::session::use_session;
use crate::page::stem_input::StemInput;
use crate::page::{words, write};
use crate::science::hydrometer::Corrected;
use crate::science::refractometer::{USUAL_FACTOR, wort};
use crate::science::{ScienceError, sucrose};
use leptos::prelude::*;

/// Adds a reading (`editing` none) or changes one. `on_done` is told when it is saved or left.
#[component]
pub fn ReadingForm(
    batch: Id,
    live: Live,
    vessel: Vessel,
    editing: Option<(Id, Reading)>,
    on_done: Callback<()>,
) -> impl IntoView {
    let session = use_session();
    let drafts = use_drafts();
    let scope = match &editing {
        Some((id, _)) => format!("reading/{}/", id.as_str()),
        None if vessel == Vessel::Satellite => format!("reading/satellite/{}/", batch.as_str()),
        None => format!("reading/new/{}/", batch.as_str()),
    };
    let fields = Fields::new(&scope, live, vessel, editing.as_ref().map(|(_, reading)| reading));
    let outcome = RwSignal::new(None::<String>);
    let now = move || session.now.get().local_text();
    let instrument = instrument_of(fields.hydrometer);
    let (read, at, condition) = (fields.gravity.value, fields.sample.value, fields.condition);
    let found = move || -> Option<Result<Corrected, ScienceError>> {
        let instrument = instrument();
        let taken = Taken {
            reading: read.get().ok()?,
            sample: at.get().ok(),
            condition: condition_named(&condition.get()),
            original: original(live),
        };
        Some(advice::reading::corrected(taken, &instrument))
    };
    let (brix, factor) = (fields.brix.value, fields.factor.value);
    let through_glass = move || {
        let before_yeast = live.with(|s| s.as_ref().is_none_or(|s| s.pitch.is_none()));
        let found = wort(brix.get().ok()?, factor.get().unwrap_or(USUAL_FACTOR)).ok()?.0;
        Some((found, before_yeast))
    };
    let said = move || match found() {
        None => match through_glass() {
            None => Said::only("Set the stem, or type what it reads."),
            Some((_, false)) => {
                Said::only("Kept beside the others: it shows only whether there was a change.")
            }
            Some((gravity, true)) => Said {
                main: session.writer().gravity(gravity.value()),
                beside: session.writer().gravity_doubt(gravity.sigma()),
                below: "By the refractometer, before the yeast.".to_owned(),
            },
        },
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
                        session.change(Change::put(id.clone(), entry), Some("Reading changed"))
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
    let asks = fields.clone();
    let rest = fields.rest;
    let Fields { gravity, sample, beer, room, vessel, condition, hydrometer, at, note, .. } =
        fields.clone();
    view! {
        <form class="reading-form" on:submit=save novalidate>
            <Answer label="Gravity at 20 °C" said />
            <div class="two-columns">
                <div>
                    <NumberField face=gravity.face.clone() />
                    <StemInput reading=gravity corrected instrument rest />
                </div>
                <div>
                    <NumberField face=sample.face />
                    <When is=move || asks.asks_condition()>
                        <Choice
                            id="reading-condition"
                            label="The sample"
                            options=condition_choices()
                            chosen=condition
                        />
                    </When>
                    <details class="more">
                        <summary>"Temperatures, time and note"</summary>
                        <NumberField face=beer.face />
                        <NumberField face=room.face />
                        <Choice
                            id="reading-vessel"
                            label="From"
                            options=vec![("main", "The batch"), ("satellite", "The satellite")]
                            chosen=vessel
                        />
                        <Choice
                            id="reading-added"
                            label="Added after this reading"
                            options=added_choices()
                            chosen=fields.added
                        />
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
                        <NumberField face=fields.brix.face />
                        <NumberField face=fields.factor.face />
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
