//! Paper: a batch sheet, and labels for the bottles. Drawn only to be printed, black on white.

use super::Live;
use crate::advice::bottle::stock::how_many;
use crate::batch::{BottlingRecord, ReadingLine, Summary, Vessel};
use crate::page::parts::figures::figures;
use crate::page::parts::live::{list, live as part};
use crate::page::session::{Session, use_session};
use crate::page::shell::mark;
use crate::page::words;
use crate::page::write::{self, Writer};
use crate::quantity::{Measured, write_gravity, write_number};
use leptos::prelude::*;

/// More labels than this nobody prints at once.
const MOST: u32 = 300;
/// Where nobody noted what was filled: bottles of half a litre.
const USUAL: f64 = 0.5;

/// What is printed.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Paper {
    Sheet,
    Labels,
}

/// The two buttons, and what they print.
#[component]
pub fn Printing(live: Live) -> impl IntoView {
    let session = use_session();
    let paper = RwSignal::new(None::<Paper>);
    let print = move |what: Paper| {
        paper.set(Some(what));
        mark("print", Some(""));
        // Once it is drawn.
        request_animation_frame(move || {
            let _ = window().print();
        });
    };
    let done = leptos::ev::Custom::<web_sys::Event>::new("afterprint");
    let listening = window_event_listener(done, move |_| mark("print", None));
    on_cleanup(move || {
        listening.remove();
        mark("print", None);
    });
    let drawn = move || {
        let what = paper.get()?;
        live.with(|s| {
            let summary = s.as_ref()?;
            Some(match what {
                Paper::Sheet => sheet(session, summary),
                Paper::Labels => labels(summary),
            })
        })
    };
    view! {
        <p class="log-actions">
            <button type="button" on:click=move |_| print(Paper::Sheet)>
                "Print the batch sheet"
            </button>
            <button type="button" on:click=move |_| print(Paper::Labels)>
                "Print labels"
            </button>
        </p>
        <div class="paper">{part(drawn)}</div>
    }
}

/// Strength with its ±, once it is known.
fn strength(summary: &Summary) -> Option<String> {
    let alcohol =
        summary.strength_in_bottle().or(summary.strength.as_ref().map(|found| found.alcohol))?;
    let doubt = write_number(alcohol.sigma(), 1);
    Some(format!("{} ±\u{A0}{doubt} ABV", write::strength(alcohol.value())))
}

fn table(heading: &'static str, rows: Vec<(String, String)>) -> Option<AnyView> {
    let any = !rows.is_empty();
    let table = view! {
        <h2>{heading}</h2>
        {figures(rows)}
    };
    any.then(|| table.into_any())
}

fn reading(w: Writer, line: &ReadingLine) -> (String, String) {
    let reading = &line.reading;
    let satellite = (reading.vessel == Vessel::Satellite).then(|| "satellite".to_owned());
    let read = reading.as_read.map(|read| format!("read {}", write_gravity(read)));
    let sample = reading.sample.map(|t| format!("sample {}", w.temperature(t)));
    let corrected = line.gravity().map(|found| {
        format!("true {} {}", w.gravity(found.value()), w.gravity_doubt(found.sigma()))
    });
    let beer = reading.beer.map(|t| format!("beer {}", w.temperature(t)));
    let note = Some(reading.note.clone()).filter(|note| !note.is_empty());
    let parts = [satellite, read, sample, corrected, beer, note].into_iter().flatten();
    (write::moment(reading.at), parts.collect::<Vec<_>>().join(" · "))
}

/// The bottling in rows, as the screen and the sheet have it.
pub fn bottling_rows(w: Writer, record: &BottlingRecord) -> Vec<(&'static str, String)> {
    let grounds = record.grounds.clone().unwrap_or_default();
    let sugar = if grounds.sugar_name.is_empty() {
        words::sugar(record.sugar).to_owned()
    } else {
        grounds.sugar_name.clone()
    };
    let into = if grounds.by_bottle { ", into each bottle" } else { "" };
    let mut rows = vec![
        ("Bottled", write::moment(record.at)),
        ("Beer", w.volume(record.beer.value())),
        ("Sugar", format!("{} {sugar}{into}", w.mass(record.weighed))),
        ("Wished", write::volumes_in_full(record.target)),
        ("Expected", write::volumes(record.expected())),
        ("At worst", write::volumes(record.worst)),
        ("Weakest bottle", words::bottle(record.weakest).to_owned()),
    ];
    if !grounds.filled.is_empty() {
        let each = |own: &crate::advice::bottle::stock::Bottles| {
            format!("{} × {}", own.count, write::bottle_size(own.size))
        };
        rows.push(("Filled", grounds.filled.iter().map(each).collect::<Vec<_>>().join(", ")));
    }
    rows.push(("Warmest since quiet", w.temperature(record.warmest)));
    rows.push(("Hottest place", w.temperature(record.hottest)));
    rows.extend(record.place.map(|t| ("They stand at", w.temperature(t))));
    if !record.went_on_because.is_empty() {
        rows.push(("Went on because", record.went_on_because.clone()));
    }
    if !record.note.is_empty() {
        rows.push(("Note", record.note.clone()));
    }
    rows
}

fn sheet(session: Session, summary: &Summary) -> AnyView {
    let w = session.writer();
    let heading = &summary.heading;
    let own = |rows: Vec<(&str, String)>| -> Vec<(String, String)> {
        rows.into_iter().map(|(name, figure)| (name.to_owned(), figure)).collect()
    };
    let mut start = vec![
        ("Brewed", write::full_day(heading.started)),
        ("Volume", w.volume(heading.volume)),
        ("Yeast", words::family(heading.family).to_owned()),
    ];
    if let Some((_, pitch)) = &summary.pitch {
        let wort = pitch.wort.map(|t| format!(", wort {}", w.temperature(t))).unwrap_or_default();
        start.push(("Pitched", format!("{}{wort}", write::moment(pitch.at))));
    }
    start.extend(summary.original.map(|og| ("Start", w.gravity(og.value()))));
    start.extend(summary.present.map(|sg| ("Last gravity", w.gravity(sg.value()))));
    start.extend(strength(summary).map(|strength| ("Strength", strength)));
    let readings: Vec<_> = summary.lines.iter().map(|line| reading(w, line)).collect();
    let bottling = summary.bottling.as_ref().map(|(_, record)| bottling_rows(w, record));
    let opened = summary.openings.iter().rev().map(|(_, opening)| {
        let said = [opening.taste.clone(), opening.note.clone()].join(" ");
        let fizz = format!("fizz {} of 5 {said}", opening.fizz.value());
        (write::moment(opening.at), fizz.trim().to_owned())
    });
    let opened: Vec<_> = opened.collect();
    let tables = [
        table("The brew", own(start)),
        table("Readings", readings),
        table("Bottles", own(bottling.unwrap_or_default())),
        table("Opened", opened),
    ];
    view! {
        <h1>{heading.name.clone()}</h1>
        {list(tables.into_iter().flatten())}
        <h2>"Notes"</h2>
        <p class="paper-lines"></p>
        <p class="small">{words::STRENGTH_CAUTION}</p>
    }
    .into_any()
}

fn labels(summary: &Summary) -> AnyView {
    let Some((_, record)) = &summary.bottling else { return ().into_any() };
    let filled = record.grounds.as_ref().map_or(0, |grounds| how_many(&grounds.filled));
    let guess = (record.primed_volume().value() / USUAL).ceil() as u32;
    let count = if filled > 0 { filled } else { guess }.min(MOST);
    let figures = format!(
        "{} · {}",
        strength(summary).unwrap_or_default(),
        write::volumes(record.expected())
    );
    let name = &summary.heading.name;
    let day = format!("Bottled {}", write::full_day(record.at));
    let one = || {
        view! {
            <div class="label">
                <p class="label-name">{name.clone()}</p>
                <p>{day.clone()}</p>
                <p>{figures.trim_start_matches(" · ").to_owned()}</p>
                <p>"Pour gently, keep cool."</p>
            </div>
        }
        .into_any()
    };
    let all = list((0..count).map(|_| one()));
    view! { <div class="labels">{all}</div> }.into_any()
}
