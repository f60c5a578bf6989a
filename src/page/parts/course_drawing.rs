//! The course: gravity over days, and temperature in a strip of its own below.

use super::live::{list, or_nothing, say};
use super::picture::Picture;
use crate::chart::{Course, CourseData, DayTick, Mark, course, gravity_symbol};
use leptos::prelude::*;

const LEFT: f64 = Course::SIDES.0;
const RIGHT: f64 = Course::SIDES.1;

/// Draws the course of one batch.
#[component]
pub fn CourseDrawing(
    /// The readings.
    data: CourseData,
    /// What it shows.
    #[prop(into)]
    title: String,
    /// What can be read from it.
    #[prop(into)]
    description: String,
    /// The words for the expected end.
    #[prop(into)]
    end_text: String,
    /// The words below a day of the axis: "day 3" and "4 Mar".
    day_text: fn(DayTick) -> (String, String),
    /// The reading that is walked to.
    here: RwSignal<Option<usize>>,
) -> impl IntoView {
    let c = course(&data);
    let places: Vec<_> = c.stops.iter().map(|stop| stop.at).collect();
    let floor = c.floor;
    let at = move || {
        let place = here.get().and_then(|at| places.get(at).copied());
        place.map_or_else(String::new, |(x, y)| {
            format!(
                "M{x:.1} {}V{floor}M{:.1} {y:.1}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0",
                Course::TOP,
                x - 9.0
            )
        })
    };
    let symbol = gravity_symbol(data.plato);
    view! {
        <Picture kind="course" size=Course::SIZE title=title description=description>
            <text class="picture-small" x=LEFT - 6.0 y="14" text-anchor="end">{symbol}</text>
            {or_nothing(zone(&c, end_text))}
            <path class="course-outlook" d=c.outlook_band.clone() />
            {grid(&c)}
            {days_axis(&c, day_text)}
            <path class="course-warmth" d=c.temperature_line.clone() />
            <path class="course-foretold" d=c.outlook_line.clone() />
            <path class="course-satellite" d=c.satellite_line.clone() />
            <path class="course-main" d=c.main_line.clone() />
            {marks(&c)}
            <path class="course-here" d=say(at) />
        </Picture>
    }
}

/// The numbers beside both axes, each with its line.
fn grid(c: &Course) -> AnyView {
    let rows = c.gravity.iter().chain(&c.temperature).cloned().map(|mark| {
        view! {
            <path class="course-grid" d=format!("M{LEFT} {:.1}H{RIGHT}", mark.at) />
            <text class="picture-small" x=LEFT - 6.0 y=mark.at + 5.0 text-anchor="end">
                {mark.text}
            </text>
        }
        .into_any()
    });
    list(rows)
}

fn days_axis(c: &Course, words: fn(DayTick) -> (String, String)) -> AnyView {
    let foot = Course::FLOOR;
    let days = c.days.iter().map(|&(x, day)| {
        let (count, date) = words(day);
        view! {
            <path class="course-day" d=format!("M{x:.1} {foot}V{}", foot + 6.0) />
            <text class="picture-small picture-strong" x=x y=foot + 21.0 text-anchor="middle">
                {count}
            </text>
            <text class="picture-small" x=x y=foot + 38.0 text-anchor="middle">
                {date}
            </text>
        }
        .into_any()
    });
    view! {
        <path class="course-axis" d=format!("M{LEFT} {foot}H{RIGHT}") />
        {list(days)}
    }
    .into_any()
}

fn zone(c: &Course, words: String) -> Option<AnyView> {
    let (area, top, bottom) = c.zone.clone()?;
    let (x, anchor) = if c.zone_words_right { (RIGHT - 6.0, "end") } else { (LEFT + 6.0, "start") };
    let zone = view! {
        <path class="course-zone" d=area />
        <path
            class="course-zone-edge"
            d=format!("M{LEFT} {top:.1}H{RIGHT}M{LEFT} {bottom:.1}H{RIGHT}")
        />
        <text class="picture-small picture-halo" x=x y=bottom + 15.0 text-anchor=anchor>
            {words}
        </text>
    };
    Some(zone.into_any())
}

fn marks(c: &Course) -> AnyView {
    let size = c.mark_size;
    let bars: String = c.marks.iter().filter_map(|m| bar(m, size)).collect();
    // Hundreds of readings are a line with a shadow, not hundreds of marks.
    let class = if size < 3.0 { "course-crowd" } else { "course-apart" };
    let shapes = c.marks.iter().map(|mark| {
        let (x, y) = mark.at;
        if mark.satellite {
            let (side, x, y) = (size * 1.8, x - size * 0.9, y - size * 0.9);
            view! { <rect class="course-open" x=x y=y width=side height=side /> }.into_any()
        } else {
            view! { <circle class="course-filled" cx=x cy=y r=size /> }.into_any()
        }
    });
    let words = c.named.iter().cloned().map(|named| {
        let anchor = if named.ends { "end" } else { "start" };
        view! {
            <text
                class="picture-label picture-halo"
                x=named.at.0
                y=named.at.1
                text-anchor=anchor
            >
                {named.text}
            </text>
        }
        .into_any()
    });
    view! {
        <g class=class>
            <path class="course-bar" d=bars />
            {list(shapes)}
        </g>
        {list(words)}
    }
    .into_any()
}

/// An upright with two short ends, where it reaches beyond its mark.
fn bar(mark: &Mark, size: f64) -> Option<String> {
    let (top, bottom) = mark.bar.filter(|(top, bottom)| bottom - top > 2.0 * size)?;
    let x = mark.at.0;
    if size < 3.0 {
        return Some(format!("M{x:.1} {top:.1}V{bottom:.1}"));
    }
    let half = size.min(4.0);
    let (left, right) = (x - half, x + half);
    Some(format!(
        "M{x:.1} {top:.1}V{bottom:.1}M{left:.1} {top:.1}H{right:.1}M{left:.1} {bottom:.1}H{right:.1}"
    ))
}
