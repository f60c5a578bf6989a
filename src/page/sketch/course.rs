//! The course: gravity over days, and temperature in a strip of its own below.

use crate::app::drawing::{CourseSketch, Drawing};
use crate::chart::{Course, Mark};
use crate::page::follow::{list, or_nothing};
use crate::page::picture::picture;
use leptos::prelude::*;

const LEFT: f64 = Course::SIDES.0;
const RIGHT: f64 = Course::SIDES.1;

/// Draws the course of one batch.
pub fn course_sketch(drawing: &Drawing, sketch: &CourseSketch) -> AnyView {
    let c = &sketch.course;
    let place = sketch.here.and_then(|at| c.stops.get(at)).map(|stop| stop.at);
    let here = place.map_or_else(String::new, |(x, y)| {
        format!(
            "M{x:.1} {}V{}M{:.1} {y:.1}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0",
            Course::TOP,
            c.floor,
            x - 9.0
        )
    });
    let drawn = view! {
        <text class="picture-small" x=LEFT - 6.0 y="14" text-anchor="end">{sketch.symbol}</text>
        {or_nothing(zone(c, sketch.end_text))}
        <path class="course-outlook" d=c.outlook_band.clone() />
        {grid(c)}
        {days_axis(&sketch.days)}
        <path class="course-warmth" d=c.temperature_line.clone() />
        <path class="course-foretold" d=c.outlook_line.clone() />
        <path class="course-satellite" d=c.satellite_line.clone() />
        <path class="course-main" d=c.main_line.clone() />
        {marks(c)}
        <path class="course-here" d=here />
    };
    picture("course", Course::SIZE, drawing, drawn.into_any())
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

fn days_axis(days: &[(f64, String, String)]) -> AnyView {
    let foot = Course::FLOOR;
    let days = days.iter().cloned().map(|(x, count, date)| {
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

fn zone(c: &Course, words: &'static str) -> Option<AnyView> {
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
