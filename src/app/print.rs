//! Paper: the batch sheet and the bottle labels, made only to be printed, black on white.

use super::act::Paper;
use super::model::Model;
use super::part::{Part, Tag, What, group, heading, text};
use crate::batch::{Stage, Summary};

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
    let tables = [
        ("brew", words.brew, brew),
        ("readings", words.readings, s.lines.iter().map(|l| (words.reading)(w, l)).collect()),
        ("bottles", words.bottles, bottled.unwrap_or_default()),
        ("opened", words.opened, opened.collect()),
    ];
    let mut parts = vec![heading("paper/name", 1, s.heading.name.clone())];
    for (name, head, rows) in tables {
        if !rows.is_empty() {
            parts.push(heading(format!("paper/{name}"), 2, head));
            parts.push(Part::new(format!("paper/{name}/rows"), What::Figures(rows)));
        }
    }
    parts.extend([
        heading("paper/notes", 2, words.notes),
        text("paper/lines", "paper-lines", ""),
        text("paper/caution", "small", m.words.cautions.strength),
    ]);
    parts
}

fn labels(m: &Model, s: &Summary) -> Vec<Part> {
    let Some((_, record)) = &s.bottling else { return vec![] };
    let words = &m.words.print;
    let lines = [
        ("name", "label-name", s.heading.name.clone()),
        ("day", "", (words.bottled)(s)),
        ("figures", "", (words.figures)(s)),
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
