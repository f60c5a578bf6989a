//! Watch: how it stands, its course, and its log.

use super::Live;
use super::log::Log;
use super::reading_form::ReadingForm;
use crate::batch::{Id, Summary, Vessel};
use crate::chart::{CourseData, CoursePoint, DayTick};
use crate::page::parts::answer::card;
use crate::page::parts::course_drawing::CourseDrawing;
use crate::page::parts::live::{When, live as part};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::write::Writer;
use crate::page::{words, write};
use crate::quantity::{GravityUnit, Measured, SpecificGravity, TemperatureUnit, Unit};
use crate::science::sucrose;
use leptos::prelude::*;

/// The course in the brewer's units, for the drawing.
fn course(w: Writer, summary: &Summary) -> CourseData {
    let plato = w.units.gravity == GravityUnit::Plato;
    let on_scale =
        |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
    let points = summary.lines.iter().filter_map(|line| {
        let gravity = line.gravity()?;
        let sigma = on_scale(gravity.upper(1.0)) - on_scale(gravity.value());
        Some(CoursePoint {
            minutes: line.reading.at.minutes_since_epoch(),
            gravity: on_scale(gravity.value()),
            sigma,
            satellite: line.reading.vessel == Vessel::Satellite,
            label: w.gravity(gravity.value()),
        })
    });
    let temperature = |t: crate::quantity::Celsius| w.units.temperature.express(t.value());
    let temperatures = summary.lines.iter().filter_map(|line| {
        let beer = line.reading.beer.filter(|_| line.reading.vessel == Vessel::Main)?;
        Some((line.reading.at.minutes_since_epoch(), temperature(beer)))
    });
    CourseData {
        points: points.collect(),
        temperatures: temperatures.collect(),
        end_zone: summary.finish.end.map(|end| (on_scale(end.from), on_scale(end.to))),
        offset_minutes: summary.heading.started.offset_minutes(),
        plato,
        celsius: w.units.temperature == TemperatureUnit::Celsius,
    }
}

fn description(w: Writer, summary: &Summary) -> String {
    let readings = summary.lines.iter().filter(|line| line.gravity().is_some()).count();
    let mut text = format!("{readings} readings.");
    if let (Some(first), Some(last)) = (summary.original, summary.present) {
        text = format!("{text} From {} to {}.", w.gravity(first.value()), w.gravity(last.value()));
    }
    if let Some(end) = summary.finish.end {
        text = format!("{text} Expected end {} to {}.", w.gravity(end.from), w.gravity(end.to));
    }
    text
}

fn day_text(tick: DayTick) -> (String, String) {
    let (_, month, day) = tick.date;
    (format!("day {}", tick.day), write::day_month(day, month))
}

/// The stage.
#[component]
pub fn WatchStage(id: Id, live: Live) -> impl IntoView {
    let session = use_session();
    let writer = move || session.writer();
    let none_yet = live.with_untracked(|s| s.as_ref().is_none_or(|s| s.lines.is_empty()));
    let adding = RwSignal::new(none_yet);
    let editing = RwSignal::new(None::<Id>);
    let judged =
        move || card(live.with(|s| s.as_ref().map(|s| words::watch_words(writer(), &s.finish))));
    let worked = move || {
        let worked = live.with(|s| s.as_ref().map(|s| s.finish.advice.worked.clone()))?;
        (!worked.steps.is_empty()).then_some(worked)
    };
    let drawing = move || {
        let w = writer();
        let drawn = live.with(|s| s.as_ref().map(|s| (course(w, s), description(w, s))));
        let (data, description) = drawn.filter(|(data, _)| !data.points.is_empty())?;
        let drawing = view! {
            <CourseDrawing
                data
                title="The course"
                description
                end_text="expected end"
                day_text
            />
        };
        Some(drawing.into_any())
    };
    let done = Callback::new(move |()| {
        adding.set(false);
        editing.set(None);
    });
    let edit = Callback::new(move |reading: Id| {
        adding.set(false);
        editing.set(Some(reading));
    });
    let form = move || {
        let id = id.clone();
        match (editing.get(), adding.get()) {
            (Some(reading), _) => {
                let before = live.with_untracked(|s| {
                    let line = s.as_ref()?.lines.iter().find(|line| line.id == reading)?;
                    Some(line.reading.clone())
                });
                let editing = before.map(|before| (reading, before));
                view! { <ReadingForm batch=id live editing on_done=done /> }.into_any()
            }
            (None, true) => {
                view! { <ReadingForm batch=id live editing=None on_done=done /> }.into_any()
            }
            (None, false) => view! {
                <button type="button" class="main-action" on:click=move |_| adding.set(true)>
                    "Add a reading"
                </button>
            }
            .into_any(),
        }
    };
    view! {
        {move || form()}
        <div class="two-columns">
            <div>
                {part(judged)}
                <When is=move || worked().is_some()>
                    <HowWorked worked writer doubt_in=(4, 1.0, "SG") />
                </When>
                {part(drawing)}
            </div>
            <div>
                <h2>"Log"</h2>
                <Log live on_edit=edit />
            </div>
        </div>
    }
}
