//! The form that starts a batch, and changes its heading later.

use crate::advice::family::{Family, Span};
use crate::batch::{BatchHeading, Change, Entry, Id, Stage};
use crate::page::ask::{Ask, AskGravity, Asked, AskedGravity, ask, ask_gravity};
use crate::page::drafts::use_drafts;
use crate::page::parts::choice::Pick;
use crate::page::parts::field::{NumberField, TextField};
use crate::page::parts::live::{Outcome, or_nothing};
use crate::page::parts::when::WhenField;
use crate::page::route::Route;
use crate::page::session::{Session, use_session};
use crate::page::shell::go;
use crate::page::{clock, words};
use crate::quantity::{Bounds, Celsius, Gravity, Litres, Moment, SpecificGravity};
use crate::science::sucrose;
use leptos::prelude::*;

/// A batch a kitchen can hold.
const VOLUME: Bounds<Litres> = Bounds::new(Litres::literal(0.5), Litres::literal(1000.0));
/// What yeast packets print.
const PACKET: Bounds<Celsius> = Bounds::new(Celsius::literal(0.0), Celsius::literal(45.0));

/// A family's stored name, for the list.
pub fn family_name(family: Family) -> String {
    serde_json::to_string(&family).unwrap_or_default().trim_matches('"').to_owned()
}

/// The family of that stored name.
pub fn family_named(name: &str) -> Family {
    Family::ALL.into_iter().find(|family| family_name(*family) == name).unwrap_or(Family::Unknown)
}

/// Every family, for a list.
pub fn family_choices() -> Vec<(String, String)> {
    Family::ALL.map(|f| (family_name(f), words::family(f).to_owned())).to_vec()
}

/// The time a when-field stands for: empty is now.
///
/// # Errors
/// The sentence to show beside it.
pub fn when(text: &str) -> Result<Moment, String> {
    if text.is_empty() { Ok(clock::now()) } else { clock::local(text).map_err(words::moment_error) }
}

#[derive(Clone)]
struct Fields {
    name: RwSignal<String>,
    started: RwSignal<String>,
    volume: Asked<Litres>,
    family: RwSignal<String>,
    start: AskedGravity,
    end: AskedGravity,
    from: Asked<Celsius>,
    to: Asked<Celsius>,
    hydrometer: RwSignal<String>,
}

impl Fields {
    fn new(session: Session, scope: &str, before: Option<&BatchHeading>) -> Self {
        let units = session.units_now();
        let drafts = use_drafts();
        let gravity = |key, label, start, first: Option<SpecificGravity>| {
            ask_gravity(
                scope,
                AskGravity {
                    key,
                    label,
                    hint: "Leave empty if you don't know.",
                    unit: units.gravity,
                    first: first.map(Gravity::Specific),
                    start: SpecificGravity::literal(start),
                },
            )
        };
        let packet = |key, label, start, first: Option<Celsius>| {
            ask(
                scope,
                Ask {
                    key,
                    label,
                    hint: "",
                    unit: units.temperature,
                    bounds: PACKET,
                    step: |_| 1.0,
                    first,
                    start: Celsius::literal(start),
                },
            )
        };
        let first_hydrometer =
            session.journal.with_untracked(|j| j.hydrometers().first().map(|(id, _)| id.clone()));
        let hydrometer = before.map(|b| b.hydrometer.clone()).or(first_hydrometer);
        Self {
            name: drafts.text(&format!("{scope}name"), before.map_or("", |b| b.name.as_str())),
            started: drafts.text(
                &format!("{scope}started"),
                &before.map(|b| b.started.local_text()).unwrap_or_default(),
            ),
            volume: ask(
                scope,
                Ask {
                    key: "volume",
                    label: "Volume in the fermenter",
                    hint: "",
                    unit: units.volume,
                    bounds: VOLUME,
                    step: |_| 0.5,
                    first: before.map(|b| b.volume),
                    start: Litres::literal(20.0),
                },
            ),
            family: drafts.text(
                &format!("{scope}family"),
                &family_name(before.map_or(Family::Unknown, |b| b.family)),
            ),
            start: gravity(
                "start",
                "Starting gravity by kit or recipe",
                1.045,
                before.and_then(|b| b.expected_start),
            ),
            end: gravity(
                "end",
                "Final gravity by kit or recipe",
                1.010,
                before.and_then(|b| b.expected_end),
            ),
            from: packet(
                "from",
                "Packet: pitch from",
                18.0,
                before.and_then(|b| b.packet).map(|p| p.from),
            ),
            to: packet(
                "to",
                "Packet: pitch up to",
                22.0,
                before.and_then(|b| b.packet).map(|p| p.to),
            ),
            hydrometer: drafts
                .text(&format!("{scope}hydrometer"), hydrometer.as_ref().map_or("", Id::as_str)),
        }
    }

    /// The heading, or nothing when a field shows why not.
    fn heading(&self, name_error: RwSignal<Option<String>>) -> Result<BatchHeading, String> {
        let name = self.name.get_untracked().trim().to_owned();
        name_error.set(name.is_empty().then(|| "Give it a name.".to_owned()));
        let missing = || "Some fields need another look.".to_owned();
        let volume = self.volume.demand();
        let gravity = |asked: &AskedGravity| {
            asked.optional().map(|gravity| gravity.map(sucrose::as_specific))
        };
        let (start, end) = (gravity(&self.start), gravity(&self.end));
        let (from, to) = (self.from.optional(), self.to.optional());
        let started = when(&self.started.get_untracked())?;
        let (Some(volume), Ok(expected_start), Ok(expected_end), Ok(from), Ok(to)) =
            (volume, start, end, from, to)
        else {
            return Err(missing());
        };
        if name.is_empty() {
            return Err(missing());
        }
        if from.is_some() != to.is_some() {
            return Err("Give both temperatures of the packet, or neither.".to_owned());
        }
        if let (Some(start), Some(end)) = (expected_start, expected_end)
            && end >= start
        {
            return Err("The final gravity should be below the starting gravity.".to_owned());
        }
        let hydrometer = Id::new(self.hydrometer.get_untracked()).map_err(|_| missing())?;
        Ok(BatchHeading {
            name,
            started,
            volume,
            family: family_named(&self.family.get_untracked()),
            packet: from.zip(to).map(|(from, to)| Span::new(from, to)),
            expected_start,
            expected_end,
            hydrometer,
        })
    }
}

/// Starts a batch (`id` none) or changes one.
#[component]
pub fn BatchForm(id: Option<Id>) -> impl IntoView {
    let session = use_session();
    let before =
        id.as_ref().and_then(|id| session.journal.with_untracked(|j| j.batch(id).cloned()));
    if id.is_some() && before.is_none() {
        return view! {
            <h1 tabindex="-1">"This batch is not here"</h1>
            <p class="back">
                <a href="#/batches">"See all batches"</a>
            </p>
        }
        .into_any();
    }
    let scope = id.as_ref().map_or("start/".to_owned(), |id| format!("heading/{}/", id.as_str()));
    let fields = Fields::new(session, &scope, before.as_ref());
    let name_error = RwSignal::new(None);
    let outcome = RwSignal::new(None::<String>);
    let drafts = use_drafts();
    let now = move || session.now.get().local_text();

    let save = {
        let (fields, scope, id) = (fields.clone(), scope.clone(), id.clone());
        move |event: leptos::ev::SubmitEvent| {
            event.prevent_default();
            let done = fields.heading(name_error).and_then(|heading| match &id {
                Some(id) => {
                    let change = Change::put(id.clone(), Entry::Batch(heading));
                    session.change(change, Some("Batch changed")).map(|()| id.clone())
                }
                None => session.put_new(Entry::Batch(heading), None).inspect(|id| {
                    // What was just begun is what is in hand; not knowing it costs only one tap.
                    let _ = session.set(|settings| settings.in_hand = Some(id.clone()));
                }),
            });
            match done {
                Ok(saved) => {
                    drafts.forget(&scope);
                    let stage = session
                        .summary(&saved)
                        .map_or(Stage::Pitch, |s| s.today(session.now.get_untracked()).stage);
                    go(&Route::Batch(saved, stage));
                }
                Err(why) => outcome.set(Some(why)),
            }
        }
    };
    let remove = id.clone().map(|id| {
        let remove = move |_| {
            let change = session.journal.with_untracked(|all| Change::remove_batch(all, &id));
            match session.change(change, Some("Batch deleted, with its log")) {
                Ok(()) => go(&Route::Batches),
                Err(why) => outcome.set(Some(why)),
            }
        };
        view! {
            <button type="button" class="danger" on:click=remove>
                "Delete this batch"
            </button>
        }
        .into_any()
    });
    let families = family_choices;
    let instruments = move || {
        session.journal.with(|journal| {
            let all = journal.hydrometers().into_iter();
            all.map(|(id, item)| (id.as_str().to_owned(), item.name)).collect::<Vec<_>>()
        })
    };
    let heading = if id.is_some() { "Change the batch" } else { "Start a batch" };
    let Fields { name, started, volume, family, start, end, from, to, hydrometer } = fields;
    view! {
        <h1 tabindex="-1">{heading}</h1>
        <form on:submit=save novalidate>
            <TextField id="name" label="Name" text=name error=name_error />
            <NumberField face=volume.face />
            <Pick id="family" label="Yeast" options=families chosen=family />
            <WhenField
                id="started"
                label="Brewing day"
                text=started
                now
            />
            <NumberField face=start.face />
            <NumberField face=end.face />
            <details class="more">
                <summary>"Packet and instrument"</summary>
                <NumberField face=from.face />
                <NumberField face=to.face />
                <Pick id="hydrometer" label="Hydrometer" options=instruments chosen=hydrometer />
            </details>
            <Outcome said=outcome />
            <button type="submit" class="main-action">
                {if id.is_some() { "Save" } else { "Start" }}
            </button>
        </form>
        {or_nothing(remove)}
    }
    .into_any()
}
