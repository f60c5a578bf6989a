//! The course: gravity over days, and temperature in a strip of its own below.

use crate::app::drawing::{CourseSketch, Drawing};
use crate::chart::{Course, Mark};
use crate::page::svg::Svg;

const LEFT: f64 = Course::SIDES.0;
const RIGHT: f64 = Course::SIDES.1;
const END: &str = r#"text-anchor="end""#;
const MIDDLE: &str = r#"text-anchor="middle""#;

/// Draws the course of one batch.
pub fn course_sketch(drawing: &Drawing, sketch: &CourseSketch) -> String {
    let c = &sketch.course;
    let mut svg = Svg::default();
    svg.text("picture-small", (LEFT - 6.0, 14.0), END, sketch.symbol);
    zone(&mut svg, c, sketch.end_text);
    svg.path("course-outlook", &c.outlook_band);
    // The numbers beside both axes, each with its line.
    for mark in c.gravity.iter().chain(&c.temperature) {
        svg.path("course-grid", &format!("M{LEFT} {:.1}H{RIGHT}", mark.at));
        svg.text("picture-small", (LEFT - 6.0, mark.at + 5.0), END, &mark.text);
    }
    days_axis(&mut svg, &sketch.days);
    svg.path("course-warmth", &c.temperature_line);
    svg.path("course-foretold", &c.outlook_line);
    svg.path("course-satellite", &c.satellite_line);
    svg.path("course-main", &c.main_line);
    marks(&mut svg, c);
    if let Some((x, y)) = sketch.here.and_then(|at| c.stops.get(at)).map(|stop| stop.at) {
        let (top, floor, left) = (Course::TOP, c.floor, x - 9.0);
        let ring = format!("M{x:.1} {top}V{floor}M{left:.1} {y:.1}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0");
        svg.path("course-here", &ring);
    }
    svg.framed("course", Course::SIZE, drawing)
}

fn days_axis(svg: &mut Svg, days: &[(f64, String, String)]) {
    let foot = Course::FLOOR;
    svg.path("course-axis", &format!("M{LEFT} {foot}H{RIGHT}"));
    for (x, count, date) in days {
        svg.path("course-day", &format!("M{x:.1} {foot}V{}", foot + 6.0));
        svg.text("picture-small picture-strong", (*x, foot + 21.0), MIDDLE, count);
        svg.text("picture-small", (*x, foot + 38.0), MIDDLE, date);
    }
}

fn zone(svg: &mut Svg, c: &Course, words: &str) {
    let Some((area, top, bottom)) = &c.zone else { return };
    let (x, anchor) = if c.zone_words_right { (RIGHT - 6.0, END) } else { (LEFT + 6.0, "") };
    svg.path("course-zone", area);
    svg.path("course-zone-edge", &format!("M{LEFT} {top:.1}H{RIGHT}M{LEFT} {bottom:.1}H{RIGHT}"));
    svg.text("picture-small picture-halo", (x, bottom + 15.0), anchor, words);
}

fn marks(svg: &mut Svg, c: &Course) {
    let size = c.mark_size;
    let bars: String = c.marks.iter().filter_map(|m| bar(m, size)).collect();
    // Hundreds of readings are a line with a shadow, not hundreds of marks.
    let class = if size < 3.0 { "course-crowd" } else { "course-apart" };
    svg.raw(&format!(r#"<g class="{class}">"#));
    svg.path("course-bar", &bars);
    for mark in &c.marks {
        let (x, y) = mark.at;
        if mark.satellite {
            let (side, corner) = (size * 1.8, (x - size * 0.9, y - size * 0.9));
            svg.rect("course-open", corner, (side, side), "");
        } else {
            svg.circle("course-filled", mark.at, size);
        }
    }
    svg.raw("</g>");
    for named in &c.named {
        let anchor = if named.ends { END } else { "" };
        svg.text("picture-label picture-halo", named.at, anchor, &named.text);
    }
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
