//! The course of a batch: drawn, walked through reading by reading, and as a table.

use super::noting;
use crate::advice::family::Purpose;
use crate::advice::standing::{BandPoint, Hump, Stage};
use crate::app::act::{Act, WatchAct};
use crate::app::drawing::{CourseSketch, Drawing, Sketch};
use crate::app::fold::fold;
use crate::app::model::Model;
use crate::app::part::{Action, Part, Table, Tag, What, group, heading, status, text};
use crate::batch::{Due, NextStep, ReadingLine, Summary, Vessel};
use crate::chart::{
    Course, CourseData, CoursePoint, DayTick, EndZone, OutlookPoint, course, gravity_symbol,
};
use crate::quantity::{Celsius, GravityUnit, Measured, SpecificGravity, TemperatureUnit, Unit};
use crate::science::sucrose;
use crate::words::Writer;

/// The readings that have a gravity, in order of time: as they are drawn.
fn drawn(s: &Summary) -> impl Iterator<Item = &ReadingLine> {
    s.lines.iter().filter(|line| line.gravity().is_some())
}

/// The drawing with the forecast, its walk and its table.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.watch);
    // For those who go by headings; the eye has the picture.
    let head = vec![heading("course/heading", 2, words.course.title)];
    let mut parts = vec![group("course/head", Tag::Div, "heard", head)];
    parts.extend(picture(m, s, "course"));
    // While a reading is noted the picture is enough.
    if noting::is_new(m, s) {
        return parts;
    }
    let readings = drawn(s).count();
    let said = match (&s.standing.outlook, s.standing.stage) {
        (Some(outlook), _) => Some((words.forecast)(w, outlook, m.now)),
        (None, Stage::Watch) => Some(words.no_forecast.to_owned()),
        (None, _) => None,
    };
    parts.extend(said.map(|said| text("forecast", "forecast", said)));
    if readings > 0 {
        parts.push(walk(m, w, s));
        parts.push(table(m, w, s));
    }
    parts
}

/// The drawing alone, under a name of its own, once there is a reading.
pub fn picture(m: &Model, s: &Summary, name: &str) -> Option<Part> {
    let readings = drawn(s).count();
    (readings > 0).then(|| Part::new(name, What::Drawing(drawing(m, m.writer(), s, readings))))
}

fn drawing(m: &Model, w: Writer, s: &Summary, readings: usize) -> Drawing {
    let words = &m.words.watch.course;
    let data = data(m, w, s);
    let course = course(&data);
    let mut month = None;
    let mut day = |(x, tick): &(f64, DayTick)| {
        let begins = month.replace(tick.date.1) != Some(tick.date.1);
        (*x, (words.day)(*tick, begins))
    };
    let sketch = CourseSketch {
        symbol: gravity_symbol(data.plato),
        ends: if course.zones.len() > 1 { words.two_ends } else { [words.one_end, ""] },
        texts: words.on_the_course,
        days: course.days.iter().map(&mut day).collect(),
        here: m.here.walked,
        course,
    };
    Drawing {
        title: words.title.to_owned(),
        description: (words.description)(w, s, readings, m.now),
        sketch: Sketch::Course(Box::new(sketch)),
    }
}

/// The course in the brewer's units.
fn data(m: &Model, w: Writer, s: &Summary) -> CourseData {
    let plato = w.units.gravity == GravityUnit::Plato;
    let on_scale =
        |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
    let points = drawn(s).filter_map(|line| {
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
    let temperature = |t: Celsius| w.units.temperature.express(t.value());
    let temperatures = s.lines.iter().filter_map(|line| {
        let beer = line.reading.beer.filter(|_| line.reading.vessel == Vessel::Main)?;
        Some((line.reading.at.minutes_since_epoch(), temperature(beer)))
    });
    let outlook = s.standing.outlook.as_ref();
    // Of two ends both are drawn, as both are said.
    let ends = outlook.map(|o| match o.wakes {
        Some(wakes) => {
            vec![(o.end, o.end.share < wakes.share), (wakes, wakes.share <= o.end.share)]
        }
        None => vec![(o.end, false)],
    });
    let zone = |(hump, less): (Hump, bool)| EndZone {
        low: on_scale(hump.end.from),
        high: on_scale(hump.end.to),
        less,
    };
    let band = outlook.map_or(&[][..], |outlook| &outlook.band);
    let foretold = |p: &BandPoint| OutlookPoint {
        minutes: p.at.minutes_since_epoch(),
        low: on_scale(p.low),
        middle: on_scale(p.middle),
        high: on_scale(p.high),
    };
    let suits = s.heading.family.range_for(Purpose::Fermenting, s.heading.packet);
    CourseData {
        points: points.collect(),
        temperatures: temperatures.collect(),
        ends: ends.into_iter().flatten().map(zone).collect(),
        outlook: band.iter().map(foretold).collect(),
        now: Some(m.now.minutes_since_epoch()),
        next: match s.today(m.now).next {
            NextStep::FirstLook(Due::Ahead(at))
            | NextStep::ReadAgain(Due::Ahead(at))
            | NextStep::Stuck(Due::Ahead(at)) => Some(at.minutes_since_epoch()),
            _ => None,
        },
        yeast: Some((temperature(suits.from), temperature(suits.to))),
        offset_minutes: s.heading.started.offset_minutes(),
        plato,
        celsius: w.units.temperature == TemperatureUnit::Celsius,
    }
}

/// The reading that is walked to, between two buttons; the arrow keys do the same.
fn walk(m: &Model, w: Writer, s: &Summary) -> Part {
    let words = &m.words.watch.course;
    let here = m.here.walked.and_then(|at| drawn(s).nth(at));
    let said = match here {
        Some(line) => (words.reading)(w, line),
        None => words.touch_or_step.to_owned(),
    };
    let step = |forward| Act::Watch(WatchAct::Walk(forward));
    let button = |name: &str, label: &str, spoken: &str, forward| {
        let (label, spoken) = (label.to_owned(), spoken.to_owned());
        let act = Some(step(forward));
        Part::new(name, What::Action(Action { kind: "", label, spoken, act }))
    };
    let told = status("walk/here", "", vec![text("walk/said", "", said)]);
    let parts = vec![
        button("walk/earlier", "◀", words.earlier, false),
        told,
        button("walk/later", "▶", words.later, true),
    ];
    let mut walk = group("walk", Tag::Div, "walk", parts);
    if let What::Group(walk) = &mut walk.what {
        words.walk.clone_into(&mut walk.label);
        walk.arrows = Some((step(false), step(true)));
    }
    walk
}

/// Every reading in a row, made only when it is wanted.
fn table(m: &Model, w: Writer, s: &Summary) -> Part {
    let words = &m.words.watch.course;
    let mut parts = vec![];
    if m.is_open("course/table", false) {
        let rows = s.lines.iter().map(|line| (words.row)(w, line).to_vec());
        let table = Table { label: words.table, head: words.head.to_vec(), rows: rows.collect() };
        parts.push(Part::new("course/table/rows", What::Table(table)));
    }
    fold(m, "course/table", words.as_a_table, parts)
}

/// Where a step along the readings leads.
pub fn step(m: &Model, s: &Summary, forward: bool) -> Option<usize> {
    laid_out(m, s).step(m.here.walked, forward)
}

/// Whether there is such a reading in the drawing.
pub fn has(m: &Model, s: &Summary, at: usize) -> bool {
    at < laid_out(m, s).stops.len()
}

fn laid_out(m: &Model, s: &Summary) -> Course {
    course(&data(m, m.writer(), s))
}
