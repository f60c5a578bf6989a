//! The course: gravity over days against the paper of a hydrometer, and the temperature in a strip below.
//!
//! The lines are stretched to the room there is and keep their width; letters stand where they belong by
//! share of that room, in the size that the phone's text has.

use crate::app::drawing::{CourseSketch, Drawing};
use crate::chart::{Course, Mark, Point};
use crate::page::svg::{Svg, escaped};
use std::fmt::Write;

const RIGHT: f64 = Course::SIDES.1;
/// So near to the middle of words a reading would be hidden by them, in units of the picture.
const BESIDE_WORDS: f64 = 26.0;
const STRETCHED: &str =
    r#"<svg class="course-plot" viewBox="0 0 320 300" preserveAspectRatio="none">"#;

/// Draws the course of one batch, and the paper beside it.
pub fn course_sketch(drawing: &Drawing, sketch: &CourseSketch) -> String {
    let (mut plot, mut paper) = (Svg::default(), Svg::default());
    curves(&mut plot, sketch);
    letters(&mut plot, sketch);
    stem(&mut paper, sketch);
    let paper =
        format!(r#"<svg class="picture course-paper" aria-hidden="true">{}</svg>"#, paper.0);
    plot.named("course", "", drawing) + &paper
}

/// All that is stretched.
fn curves(svg: &mut Svg, sketch: &CourseSketch) {
    let c = &sketch.course;
    let (top, floor) = (Course::TOP, c.floor);
    svg.raw(STRETCHED);
    for zone in &c.zones {
        svg.path(if zone.less { "course-zone-less" } else { "course-zone" }, &zone.area);
    }
    if let Some((top, bottom)) = c.yeast {
        svg.path("course-yeast", &format!("M0 {top:.1}H{RIGHT}V{bottom:.1}H0Z"));
    }
    svg.path("course-outlook", &c.outlook_band);
    let grid =
        c.gravity.iter().map(|mark| format!("M0 {:.1}H{RIGHT}", mark.at)).collect::<String>();
    svg.path("course-grid", &grid);
    svg.path("course-axis", &format!("M0 {floor}H{RIGHT}"));
    let days = sketch.days.iter().map(|(x, _)| format!("M{x:.1} {floor}v5")).collect::<String>();
    svg.path("course-day", &days);
    svg.path("course-line", &c.temperature_line);
    svg.path("course-dot course-dot-2", &dots(c.warmth.iter().copied()));
    svg.path("course-foretold", &c.outlook_line);
    svg.path("course-satellite", &c.satellite_line);
    svg.path("course-line", &c.main_line);
    // The line of now begins below its word, and that of the next reading passes beside it.
    for (x, from) in c.now.map(|x| (x, top + 32.0)).into_iter().chain(c.next.map(|x| (x, top))) {
        svg.path("course-day", &format!("M{x:.1} {from}V{floor}"));
    }
    if let Some((x, y)) = c.last(false) {
        svg.path("course-level", &format!("M{x:.1} {y:.1}H{RIGHT}"));
    }
    svg.path("course-bar", &c.marks.iter().map(|mark| bar(mark, c.mark_size)).collect::<String>());
    let marks = |satellite| {
        dots(c.marks.iter().filter(move |mark| mark.satellite == satellite).map(|mark| mark.at))
    };
    let size = match c.mark_size {
        size if size > 3.5 => "course-dot course-dot-4",
        size if size > 2.5 => "course-dot course-dot-3",
        _ => "course-dot course-dot-2",
    };
    svg.path(size, &marks(false));
    svg.path("course-square", &marks(true));
    svg.path("course-hole", &marks(true));
    if let Some((x, _)) = here(sketch) {
        svg.path("course-here", &format!("M{x:.1} {top}V{floor}"));
    }
    svg.raw("</svg>");
}

/// Where the reading stands that is walked to.
fn here(sketch: &CourseSketch) -> Option<Point> {
    sketch.here.and_then(|at| sketch.course.stops.get(at)).map(|stop| stop.at)
}

/// A path of points: strokes without length, round by their ends.
fn dots(points: impl Iterator<Item = Point>) -> String {
    points.map(|(x, y)| format!("M{x:.1} {y:.1}h.01")).collect()
}

/// An upright with two short ends, whatever its size; of very many only the upright.
fn bar(mark: &Mark, size: f64) -> String {
    let Some((top, bottom)) = mark.bar else { return String::new() };
    let x = mark.at.0;
    let upright = format!("M{x:.1} {top:.1}V{bottom:.1}");
    if size < 3.0 {
        return upright;
    }
    let (left, right) = (x - size, x + size);
    format!("{upright}M{left:.1} {top:.1}H{right:.1}M{left:.1} {bottom:.1}H{right:.1}")
}

/// Letters at a share of the room, so many pixels off it.
fn at(svg: &mut Svg, class: &str, (x, y): Point, (dx, dy): (f64, f64), text: &str) {
    let (x, y) = share((x, y));
    let text = escaped(text);
    // Writing to a text cannot fail.
    let _ = write!(
        svg.0,
        r#"<text class="{class}" x="{x:.1}%" y="{y:.1}%" dx="{dx}" dy="{dy}">{text}</text>"#
    );
}

fn share((x, y): Point) -> Point {
    (100.0 * x / Course::SIZE.0, 100.0 * y / Course::SIZE.1)
}

/// A small drawing in its own pixels, about a place.
fn sign(svg: &mut Svg, place: Point, drawn: &str) {
    let (x, y) = share(place);
    let _ = write!(svg.0, r#"<svg class="course-sign" x="{x:.1}%" y="{y:.1}%">{drawn}</svg>"#);
}

/// Letters and signs.
fn letters(svg: &mut Svg, sketch: &CourseSketch) {
    let c = &sketch.course;
    let [now, again, satellite, _] = sketch.texts;
    for (i, (zone, end)) in c.zones.iter().zip(sketch.ends).enumerate() {
        let (top, bottom) = zone.edges;
        // Within it where it is high enough, else above, at the side where no reading stands. Of two the higher is
        // named below, for the readings rest in it, and the lower on the other side at its foot, for they may lie
        // close together.
        let above = if bottom - top > 20.0 { 16.0 } else { -5.0 };
        let middle = top + if above > 0.0 { 10.0 } else { -12.0 };
        let taken =
            |mark: &Mark| mark.at.0 < RIGHT / 2.0 && (mark.at.1 - middle).abs() < BESIDE_WORDS;
        let aside = c.marks.iter().any(taken);
        let (class, x, y, by) = match i {
            0 if c.zones.len() > 1 => ("course-end-text picture-halo", 0.0, bottom, (4.0, 16.0)),
            0 if aside => ("course-end-text course-end picture-halo", RIGHT, top, (-4.0, above)),
            0 => ("course-end-text picture-halo", 0.0, top, (4.0, above)),
            _ => ("course-end-text course-end picture-halo", RIGHT, bottom, (-14.0, -5.0)),
        };
        at(svg, class, (x, y), by, end);
    }
    if let Some(x) = c.now {
        let x_of_word = x.clamp(20.0, RIGHT - 20.0);
        at(
            svg,
            "picture-strong course-middle picture-halo",
            (x_of_word, Course::TOP),
            (0.0, 30.0),
            now,
        );
    }
    if let Some(x) = c.next {
        let (end, dx) = if x > 0.62 * RIGHT { (" course-end", -5.0) } else { ("", 5.0) };
        let class = format!("course-next-text picture-halo{end}");
        at(svg, &class, (x, Course::TOP), (dx, 10.0), again);
        let ring = r#"<circle class="course-next-ring" r="7"/><path class="course-next" d="M0-7a7 7 0 0 1 0 14"/>"#;
        sign(svg, (x, c.floor), ring);
    }
    if let Some((x, y)) = c.last(true) {
        let (left, dx) = if x > 110.0 { (" course-end", -10.0) } else { ("", 10.0) };
        at(svg, &format!("course-quiet picture-halo{left}"), (x, y), (dx, -8.0), satellite);
    }
    if let Some((_, y)) = c.last(false) {
        sign(svg, (RIGHT, y), r#"<path class="course-pointer" d="M-9-5l9 5-9 5z"/>"#);
    }
    if let Some(place) = here(sketch) {
        sign(svg, place, r#"<circle class="course-ring" r="9"/>"#);
    }
    for (x, date) in &sketch.days {
        let (class, dx) = match *x {
            x if x < 24.0 => ("", -x),
            x if x > RIGHT - 24.0 => ("course-end", RIGHT - x),
            _ => ("course-middle", 0.0),
        };
        at(svg, class, (*x, c.floor), (dx, 21.0), date);
    }
}

/// The paper of the stem, in beer up to the last reading.
fn stem(svg: &mut Svg, sketch: &CourseSketch) {
    let c = &sketch.course;
    svg.raw(STRETCHED);
    if let Some((_, y)) = c.last(false) {
        svg.path("course-beer", &format!("M0 {y:.1}H320V{}H0Z", c.floor));
        svg.path("course-surface", &format!("M0 {y:.1}H320"));
    }
    let short = c.short.iter().map(|y| format!("M0 {y:.1}h40")).collect::<String>();
    svg.path("course-day", &short);
    let long = c.gravity.iter().map(|mark| format!("M0 {:.1}H320", mark.at)).collect::<String>();
    svg.path("course-axis", &long);
    svg.path("course-glass", &format!("M2 0V{0}M318 0V{0}", c.floor));
    svg.raw("</svg>");
    // A number that its end would cut is left out.
    for mark in c.gravity.iter().filter(|mark| mark.at > 26.0) {
        at(svg, "course-end picture-strong", (300.0, mark.at), (0.0, -4.0), &mark.text);
    }
    // Below it stand the temperatures, where there are any.
    if c.temperature.is_empty() {
        at(svg, "course-quiet", (20.0, c.floor), (0.0, 21.0), sketch.symbol);
    }
    // What suits the yeast is named here, for over its points words would hide them.
    let suits = c.yeast.map(|_| sketch.texts[3]).unwrap_or_default();
    for mark in &c.temperature {
        let above = if suits.is_empty() { 5.0 } else { -3.0 };
        at(svg, "course-quiet", (20.0, mark.at), (0.0, above), &mark.text);
        at(svg, "course-quiet", (20.0, mark.at), (0.0, 14.0), suits);
    }
}
