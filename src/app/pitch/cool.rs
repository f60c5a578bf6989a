//! Is it cool enough, and the ways down (or up) side by side.

use super::day::Day;
use super::known::Known;
use super::work::Work;
use crate::advice::Verdict;
use crate::advice::family::Purpose;
use crate::advice::pitch::judge;
use crate::advice::pitch::place::taken_to_hold;
use crate::advice::pitch::ways_to_range::{Means, Scene, Takes, Way, ways};
use crate::app::fold::{fold, fold_from};
use crate::app::model::Model;
use crate::app::part::{Part, Tag, group, heading, text};
use crate::app::ways_down::{After, IN_DEGREES, IN_HOURS, blend};
use crate::app::worked::how_worked;
use crate::batch::Summary;
use crate::quantity::Litres;
use crate::science::heat;

/// The step.
pub fn parts(m: &Model, work: &Work) -> Vec<Part> {
    let (words, day, known) = (&m.words.pitch, &work.day, &work.known);
    let mut parts = vec![day.wort.part.clone(), day.read_with.part.clone()];
    let verdict = known.wort.map(|wort| judge(wort).verdict);
    if matches!(verdict, Some(Verdict::Wait | Verdict::Stop)) {
        let vessel = vec![day.volume.part.clone(), day.vessel_holds.part.clone()];
        let added = vec![
            text("pitch/ways/cautions", "small", m.words.cautions.water),
            day.water.part.clone(),
            day.ice.part.clone(),
            fold(m, "pitch/ways/vessel", words.cool.vessel, vessel),
        ];
        parts.push(fold_from(m, "pitch/ways/asked", words.cool.water_or_ice, true, added));
        let mut waited = vec![day.earlier.part.clone(), day.between.part.clone()];
        waited.extend(day.round.parts());
        parts.push(fold(m, "pitch/ways/waiting", words.cool.waiting, waited));
        parts.extend(ways_there(m, work.s, day, known));
    }
    parts.push(text("pitch/hot", "small", m.words.cautions.hot));
    parts
}

/// The ways side by side; nothing while the wort is in the range.
fn ways_there(m: &Model, s: &Summary, day: &Day, known: &Known) -> Option<Part> {
    let wort = known.wort?;
    let whole = known.whole?;
    let (water, vessel) = (day.water.ok(), day.vessel_holds.ok());
    let waiting = known.bath.clone().filter(|_| known.looks.len() > 1);
    let found = ways(&Scene {
        wort: whole,
        range: wort.family.range_for(Purpose::Pitching, wort.packet),
        vessel: vessel.unwrap_or_else(|| taken_to_hold(known.volume)),
        planned: Some(s.heading.volume),
        cold: water,
        warm: water,
        ice: day.ice.ok(),
        waiting: waiting.map(|bath| (known.looks.clone(), bath)),
    });
    let scene = (whole, known.start.is_some(), vessel);
    // Of many ways none is drawn until it is opened, for the screen would be too long.
    let drawn = found.len() < 3;
    let ways: Vec<_> = found
        .iter()
        .enumerate()
        .map(|(at, way)| one_way(m, scene, way, drawn && at == 0))
        .collect();
    (!ways.is_empty()).then(|| group("pitch/ways", Tag::Ul, "ways", ways))
}

/// One way: its name, its cost, its drawing and its working, folded away or not. Of the wort it is
/// said whether its gravity is known.
fn one_way(
    m: &Model,
    (wort, known, vessel): (heat::Part, bool, Option<Litres>),
    way: &Way,
    open: bool,
) -> Part {
    let (w, words) = (m.writer(), &m.words.pitch.ways);
    let name = match way.means {
        Means::Wait => "pitch/ways/wait",
        Means::ColdWater => "pitch/ways/cold",
        Means::Ice => "pitch/ways/ice",
        Means::WarmWater => "pitch/ways/warm",
    };
    let (title, cost) = ((words.title)(w, way), (words.cost)(w, way, known));
    let mut parts = vec![text(format!("{name}/cost"), "", cost.clone())];
    let after = After {
        temperature: way.temperature.value(),
        volume: way.volume,
        gravity: known.then_some(way.gravity),
    };
    let drawn = way.takes.as_ref().and_then(|takes| {
        blend(m, format!("{name}/blend"), (title.clone(), cost), (wort, takes), after, vessel)
    });
    parts.extend(drawn);
    let doubts = if matches!(way.takes, Some(Takes::Time(_))) { IN_HOURS } else { IN_DEGREES };
    parts.push(how_worked(m, &format!("{name}/worked"), &way.worked, doubts));
    let inner = if open {
        parts.insert(0, heading(format!("{name}/title"), 3, title));
        parts
    } else {
        vec![fold(m, &format!("{name}/fold"), title, parts)]
    };
    group(name, Tag::Li, "way", inner)
}
