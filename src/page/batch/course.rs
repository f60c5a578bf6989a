//! The course of a batch: drawn, walked through reading by reading, and as a table.

use super::Live;
use crate::advice::watch::forecast::BandPoint;
use crate::batch::{ReadingLine, Summary, Vessel};
use crate::chart::{Course, CourseData, CoursePoint, DayTick, OutlookPoint, course};
use crate::page::parts::course_drawing::CourseDrawing;
use crate::page::parts::live::{When, list, live as part, say};
use crate::page::parts::worked::HowWorked;
use crate::page::session::use_session;
use crate::page::words::forecast::{forecast_words, refusal_words};
use crate::page::write::{self, Writer};
use crate::quantity::{GravityUnit, Measured, SpecificGravity, TemperatureUnit, Unit};
use crate::science::sucrose;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The readings that have a gravity, in order of time: as they are drawn.
fn drawn(summary: &Summary) -> impl Iterator<Item = &ReadingLine> {
    summary.lines.iter().filter(|line| line.gravity().is_some())
}

/// The course in the brewer's units, for the drawing.
fn data(w: Writer, summary: &Summary) -> CourseData {
    let plato = w.units.gravity == GravityUnit::Plato;
    let on_scale =
        |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
    let points = drawn(summary).filter_map(|line| {
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
        outlook: outlook(summary, on_scale),
        offset_minutes: summary.heading.started.offset_minutes(),
        plato,
        celsius: w.units.temperature == TemperatureUnit::Celsius,
    }
}

/// The forecast's band on the scale that is drawn.
fn outlook(summary: &Summary, on_scale: impl Fn(SpecificGravity) -> f64) -> Vec<OutlookPoint> {
    let band = match &summary.forecast {
        Some(Ok(forecast)) => forecast.band.as_slice(),
        _ => &[],
    };
    let point = |p: &BandPoint| OutlookPoint {
        minutes: p.at.minutes_since_epoch(),
        low: on_scale(p.low),
        middle: on_scale(p.middle),
        high: on_scale(p.high),
    };
    band.iter().map(point).collect()
}

fn description(w: Writer, summary: &Summary) -> String {
    let readings = drawn(summary).count();
    let mut text = format!("{readings} readings.");
    if let (Some(first), Some(last)) = (summary.original, summary.present) {
        text = format!("{text} From {} to {}.", w.gravity(first.value()), w.gravity(last.value()));
    }
    if let Some(end) = summary.finish.end {
        text = format!("{text} Expected end {} to {}.", w.gravity(end.from), w.gravity(end.to));
    }
    if let Some(Ok(forecast)) = &summary.forecast {
        text = format!("{text} {}", forecast_words(w, forecast));
    }
    text
}

fn day_text(tick: DayTick) -> (String, String) {
    let (_, month, day) = tick.date;
    (format!("day {}", tick.day), write::day_month(day, month))
}

/// One reading in words, as it is walked to.
fn said(w: Writer, line: &ReadingLine) -> String {
    let gravity = line.gravity().map(|g| (w.gravity(g.value()), w.gravity_doubt(g.sigma())));
    let (gravity, doubt) = gravity.unwrap_or_default();
    let mut text = format!("{}: {gravity} {doubt}", write::moment(line.reading.at));
    if line.reading.vessel == Vessel::Satellite {
        text.push_str(" · satellite");
    }
    if let Some(beer) = line.reading.beer {
        text = format!("{text} · beer {}", w.temperature(beer));
    }
    text
}

fn table(w: Writer, summary: &Summary) -> AnyView {
    let rows = summary.lines.iter().map(|line| {
        let gravity = line.gravity();
        let of = match line.reading.vessel {
            Vessel::Main => "batch",
            Vessel::Satellite => "satellite",
        };
        let cells = [
            gravity.map(|g| w.gravity(g.value())),
            gravity.map(|g| w.gravity_doubt(g.sigma())),
            line.reading.as_read.map(crate::quantity::write_gravity),
            Some(of.to_owned()),
            line.reading.beer.map(|t| w.temperature(t)),
        ];
        let cells = cells.into_iter().map(|cell| {
            let text = cell.unwrap_or_else(|| "–".to_owned());
            view! { <td>{text}</td> }.into_any()
        });
        view! {
            <tr>
                <th scope="row">{write::moment(line.reading.at)}</th>
                {list(cells)}
            </tr>
        }
        .into_any()
    });
    view! {
        <div class="table-frame" tabindex="0" role="region" aria-label="Table of readings">
            <table>
                <thead>
                    <tr>
                        <th scope="col">"When"</th>
                        <th scope="col">"Gravity"</th>
                        <th scope="col">"±"</th>
                        <th scope="col">"As read"</th>
                        <th scope="col">"Of"</th>
                        <th scope="col">"Beer"</th>
                    </tr>
                </thead>
                <tbody>{list(rows)}</tbody>
            </table>
        </div>
    }
    .into_any()
}

/// Which mark lies nearest to where the picture was touched.
fn touched(event: &leptos::ev::MouseEvent, course: &Course) -> Option<usize> {
    let target = event.current_target()?.dyn_into::<web_sys::Element>().ok()?;
    let picture = target.query_selector("svg").ok()??.get_bounding_client_rect();
    if picture.width() <= 0.0 {
        return None;
    }
    let x = (f64::from(event.client_x()) - picture.left()) * Course::SIZE.0 / picture.width();
    course.nearest(x)
}

/// The drawing with its walk and its table.
#[component]
pub fn CourseView(live: Live) -> impl IntoView {
    let session = use_session();
    let here = RwSignal::new(None::<usize>);
    // What was drawn last, to walk along.
    let placed = RwSignal::new(None::<Course>);
    let count = move || live.with(|s| s.as_ref().map_or(0, |s| drawn(s).count()));
    let step = move |forward: bool| {
        placed.with_untracked(|placed| {
            if let Some(course) = placed {
                here.update(|at| *at = course.step(*at, forward));
            }
        });
    };
    let drawing = move || {
        let w = session.writer();
        let (data, description) =
            live.with(|s| s.as_ref().map(|s| (data(w, s), description(w, s))))?;
        if data.points.is_empty() {
            return None;
        }
        placed.set(Some(course(&data)));
        let on_touch = move |event: leptos::ev::MouseEvent| {
            let at = placed.with_untracked(|placed| touched(&event, placed.as_ref()?));
            if at.is_some() {
                here.set(at);
            }
        };
        let drawing = view! {
            <div class="course-touch" on:click=on_touch>
                <CourseDrawing
                    data
                    title="The course"
                    description
                    end_text="expected end"
                    day_text
                    here
                />
            </div>
        };
        Some(drawing.into_any())
    };
    let now_said = move || {
        let Some(at) = here.get() else {
            return "Touch the picture, or step through the readings.".to_owned();
        };
        let w = session.writer();
        live.with(|s| s.as_ref().and_then(|s| drawn(s).nth(at)).map(|line| said(w, line)))
            .unwrap_or_default()
    };
    let on_key = move |event: leptos::ev::KeyboardEvent| match event.key().as_str() {
        "ArrowLeft" => {
            event.prevent_default();
            step(false);
        }
        "ArrowRight" => {
            event.prevent_default();
            step(true);
        }
        _ => {}
    };
    let walk = move || {
        (count() > 0).then(|| {
            view! {
                <div
                    class="walk"
                    role="group"
                    aria-label="Walk through the readings"
                    on:keydown=on_key
                >
                    <button type="button" aria-label="Earlier reading" on:click=move |_| step(false)>
                        "◀"
                    </button>
                    <p role="status">{say(now_said)}</p>
                    <button type="button" aria-label="Later reading" on:click=move |_| step(true)>
                        "▶"
                    </button>
                </div>
                <details class="more">
                    <summary>"As a table"</summary>
                    {part(move || live.with(|s| Some(table(session.writer(), s.as_ref()?))))}
                </details>
            }
            .into_any()
        })
    };
    let foretold = move || {
        let w = session.writer();
        live.with(|s| match s.as_ref()?.forecast.as_ref()? {
            Ok(forecast) => Some(forecast_words(w, forecast)),
            Err(refusal) => Some(refusal_words(*refusal)),
        })
        .unwrap_or_default()
    };
    let worked = move || {
        live.with(|s| match s.as_ref()?.forecast.as_ref()? {
            Ok(forecast) => Some(forecast.worked.clone()),
            Err(_) => None,
        })
    };
    view! {
        {part(drawing)}
        <p class="forecast">{say(foretold)}</p>
        <When is=move || worked().is_some()>
            <HowWorked worked writer=move || session.writer() doubt_in=(4, 1.0, "SG") />
        </When>
        {part(walk)}
    }
}
