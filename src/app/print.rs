//! Paper: the batch sheet and the bottle labels, made only to be printed, black on white.

use super::act::Paper;
use super::model::Model;
use super::part::{Part, Table, Tag, What, group, heading, text};
use super::watch::course::picture;
use crate::advice::open::dates;
use crate::batch::{Stage, Summary};
use crate::quantity::Estimate;

/// More labels than this nobody prints at once.
const MOST: u32 = 300;

/// What is printed, once it is wanted.
pub fn parts(m: &Model, s: &Summary) -> Vec<Part> {
    let parts = match m.here.paper {
        None => return vec![],
        Some(Paper::Sheet) => sheet(m, s),
        Some(Paper::Labels) => labels(m, s),
    };
    vec![group("paper", Tag::Div, "paper", parts)]
}

fn sheet(m: &Model, s: &Summary) -> Vec<Part> {
    let (w, words) = (m.writer(), &m.words.print);
    let bottled = s.bottling.as_ref().map(|(_, record)| (m.words.bottle.rows)(w, record));
    let opened = s.openings.iter().rev().map(|(_, opening)| (words.opening)(opening));
    let mut brew = (words.start)(w, s);
    let today = s.today(m.now);
    if today.opening.is_none() {
        let state = (today.stage == Stage::Watch).then_some(s.standing.state);
        brew.push((words.stands.to_owned(), (m.words.batches.standing)(today.stage, state)));
    }
    let rows = |name: &str, head, rows: Vec<_>| {
        let figures = Part::new(format!("paper/{name}/rows"), What::Figures(rows));
        section(name, head, vec![figures])
    };
    let mut parts = vec![heading("paper/name", 1, s.heading.name.clone())];
    parts.push(rows("brew", words.brew, brew));
    parts.extend(
        picture(m, s, "paper/course")
            .map(|course| section("course", m.words.watch.course.title, vec![course])),
    );
    if !s.lines.is_empty() {
        let rows = s.lines.iter().map(|line| (words.reading)(w, line).to_vec()).collect();
        let table = Table { label: words.readings, head: words.reading_head.to_vec(), rows };
        let table = Part::new("paper/readings/rows", What::Table(table));
        parts.push(section("readings", words.readings, vec![table]));
    }
    parts.extend(bottled.map(|bottled| rows("bottles", words.bottles, bottled)));
    let opened: Vec<_> = opened.collect();
    if !opened.is_empty() {
        parts.push(rows("opened", words.opened, opened));
    }
    parts.extend([
        heading("paper/notes", 2, words.notes),
        text("paper/lines", "paper-lines", ""),
        text("paper/caution", "small", m.words.cautions.strength),
    ]);
    parts
}

/// What belongs together on the sheet, below its head.
fn section(name: &str, head: &str, mut parts: Vec<Part>) -> Part {
    parts.insert(0, heading(format!("paper/{name}/head"), 2, head));
    group(format!("paper/{name}"), Tag::Section, "", parts)
}

fn labels(m: &Model, s: &Summary) -> Vec<Part> {
    let Some((_, record)) = &s.bottling else { return vec![] };
    let words = &m.words.print;
    let waiting = record.waiting(s.original.map(Estimate::value), m.now);
    let lines = [
        ("name", "label-name", s.heading.name.clone()),
        ("day", "", (words.bottled)(s)),
        ("figures", "", (words.figures)(s)),
        ("from", "", (words.try_from)(dates(waiting).try_one)),
        ("pour", "", words.pour_gently.to_owned()),
    ];
    let label = |at: u32| {
        let place = format!("paper/label/{at}");
        let line = |(name, kind, said): &(&str, &'static str, String)| {
            text(format!("{place}/{name}"), kind, said.clone())
        };
        group(place.clone(), Tag::Div, "label", lines.iter().map(line).collect())
    };
    let all = (0..record.bottles_filled().min(MOST)).map(label).collect();
    vec![group("paper/labels", Tag::Div, "labels", all)]
}
