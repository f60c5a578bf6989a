//! Now: the next step of the batch in hand, or the sums most used.

use super::act::{Act, WatchAct};
use super::drawing::{Drawing, JarData, Sketch};
use super::glance::{by_due, row};
use super::model::Model;
use super::opening;
use super::part::{Answer, Judged, Part, Tag, What, action, group, heading, link, text};
use super::route::{Route, Sum};
use super::sums;
use super::way::way;
use crate::advice::standing::Hump;
use crate::batch::{Id, NextStep, Stage, Summary, Today};
use crate::quantity::{Estimate, GravityUnit, Measured, SpecificGravity};
use crate::science::sucrose;
use crate::words::write;
use std::rc::Rc;

/// The screen.
pub fn parts(m: &Model) -> Vec<Part> {
    match m.journal.in_hand().and_then(|id| m.summary(&id)) {
        Some(summary) => in_hand(m, &summary),
        None => empty(m),
    }
}

fn empty(m: &Model) -> Vec<Part> {
    let words = &m.words.now;
    vec![
        heading("title", 1, m.words.frame.page),
        text("lead", "lead", words.lead),
        link("start", "main-action", Route::NewBatch.address(), m.words.frame.start_a_batch),
        heading("one-sum", 2, words.or_one_sum),
        sums::links(m, &[Sum::Gravity, Sum::Sugar, Sum::Strength, Sum::Cooling]),
        text("caution", "small", m.words.cautions.strength),
    ]
}

/// The stage that the next step is done at.
const fn step_stage(next: NextStep) -> Stage {
    match next {
        NextStep::Pitch => Stage::Pitch,
        NextStep::FirstLook(_)
        | NextStep::ReadAgain(_)
        | NextStep::LookForSigns(_)
        | NextStep::PitchAgain
        | NextStep::Stuck(_) => Stage::Watch,
        NextStep::Bottle => Stage::Bottle,
        NextStep::WaitForBottles(_)
        | NextStep::WakeBottles(_)
        | NextStep::TryOne
        | NextStep::Enjoy
        | NextStep::ChillBottles(_)
        | NextStep::AfterSafe(_)
        | NextStep::MakeSafe => Stage::Open,
    }
}

fn step_route(id: &Id, next: NextStep) -> Route {
    Route::Batch(id.clone(), step_stage(next))
}

/// What is known of it, in one line.
fn facts(m: &Model, summary: &Summary) -> String {
    let (w, words) = (m.writer(), &m.words.now);
    let gravity = summary.present.or(summary.original).map(Estimate::value).map(|sg| w.gravity(sg));
    let strength =
        summary.strength.as_ref().map(|s| (words.so_far)(&write::strength(s.alcohol.value())));
    let since = summary.pitch.as_ref().map(|(_, pitch)| {
        let age = m.now.since(pitch.at);
        (words.since_pitching)(&write::duration(age))
    });
    [gravity, strength, since].into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn in_hand(m: &Model, s: &Summary) -> Vec<Part> {
    let words = &m.words.now;
    let today = s.today(m.now);
    let button = (words.button)(today.next);
    let other = link("other/batch", "", Route::Batches.address(), words.another_batch);
    let go = match today.next {
        NextStep::FirstLook(_) | NextStep::ReadAgain(_) => {
            let add = Act::Watch(WatchAct::AddTo(s.id.clone()));
            action("next/go", "main-action", button, add)
        }
        next => link("next/go", "main-action", step_route(&s.id, next).address(), button),
    };
    let mut left: Vec<Part> = jar(m, s).into_iter().collect();
    // Once it is bottled its strength has the priming sugar in it, and is told at its stages.
    if s.bottling.is_none() {
        left.push(text("facts", "facts", facts(m, s)));
    }
    let all = vec![
        group("next/act", Tag::Div, "act", vec![go]),
        plate(m, s, today.next),
        group("now/jar", Tag::Section, "watch-course", left),
        group("now/due", Tag::Section, "watch-log", also_due(m, &s.id)),
    ];
    vec![way(m, s, today.stage, vec![other]), group("now", Tag::Div, "watch", all)]
}

/// What is next: the plate of the stage where it is done, its day standing large.
fn plate(m: &Model, s: &Summary, next: NextStep) -> Part {
    let (w, words) = (m.writer(), &m.words.now);
    if next == NextStep::Pitch {
        let (label, below) = (words.next.to_owned(), words.pitch.to_owned());
        return Part::new("next", What::Answer(Answer { label, below, ..Answer::default() }));
    }
    let mut judged =
        opening::judged(m, s).unwrap_or_else(|| (m.words.watch.finish)(w, &s.standing, m.now));
    let ahead = match next {
        NextStep::WaitForBottles(at) => {
            Some([words.try_one.to_owned(), w.day_ahead(at), String::new(), String::new()])
        }
        _ => (m.words.watch.ahead)(w, &s.standing, m.now),
    };
    // The date once, and large.
    if let Some([label, day, when, else_said]) = ahead {
        judged = Judged { label, figure: (day, when), next: else_said, ..judged };
    }
    Part::new("next", What::Verdict(judged))
}

/// The stem in its jar as it was last read, and the expected end on its paper.
fn jar(m: &Model, s: &Summary) -> Option<Part> {
    let (w, words) = (m.writer(), &m.words.now);
    let plato = w.units.gravity == GravityUnit::Plato;
    let on_scale =
        |sg: SpecificGravity| if plato { sucrose::plato(sg).value() } else { sg.value() };
    let present = s.present.filter(|_| s.bottling.is_none())?;
    let outlook = s.standing.outlook.as_ref();
    let course = &m.words.watch.course;
    // Of two ends both stand there, as both are drawn on the course.
    let named = match outlook.map(|outlook| (outlook.end, outlook.wakes)) {
        Some((rests, Some(wakes))) => {
            let [first, second] = course.two_ends;
            vec![(rests, first), (wakes, second)]
        }
        Some((end, None)) => vec![(end, course.one_end)],
        None => vec![],
    };
    let end = |(hump, name): (Hump, &'static str)| {
        let end = hump.end;
        ((on_scale(end.from), on_scale(end.to)), [(words.between)(w, end), name.to_owned()])
    };
    let last = s.lines.iter().rev().find(|line| line.gravity().is_some())?;
    let data = JarData {
        plato,
        reading: on_scale(present.value()),
        ends: named.into_iter().map(end).collect(),
        texts: [
            w.gravity(present.value()),
            w.gravity_doubt(present.sigma()),
            (words.read_on)(last.reading.at),
        ],
    };
    let mut description = format!("{}.", data.texts.join(" "));
    for (_, [figures, name]) in &data.ends {
        description += &format!(" {name}: {figures}.");
    }
    let title = words.in_the_jar.to_owned();
    let drawing = Drawing { title, description, sketch: Sketch::Jar(data) };
    Some(Part::new("jar", What::Drawing(drawing)))
}

/// Other batches that are due, what is due first standing first.
fn also_due(m: &Model, in_hand: &Id) -> Vec<Part> {
    let standing = by_due(m);
    let due = standing
        .iter()
        .filter(|(s, today)| s.id != *in_hand && today.due.is_some_and(|due| due <= m.now));
    let row = |(s, today): &(Rc<Summary>, Today)| row(m, s, today, "due", step_stage(today.next));
    let rows: Vec<Part> = due.map(row).collect();
    if rows.is_empty() {
        return vec![];
    }
    vec![heading("due", 2, m.words.now.due_too), group("due/list", Tag::Ul, "batch-list", rows)]
}
