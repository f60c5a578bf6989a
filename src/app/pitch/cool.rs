//! Is it cool enough, and the ways down (or up) side by side.

use super::day::Day;
use super::known::Known;
use crate::advice::Verdict;
use crate::advice::family::Purpose;
use crate::advice::pitch::judge;
use crate::advice::pitch::outlook::outlook;
use crate::advice::pitch::place::taken_to_hold;
use crate::advice::pitch::ways_to_range::{Means, Scene, Takes, Way, ways};
use crate::app::fold::fold_from;
use crate::app::model::Model;
use crate::app::part::{Part, Tag, What, group, heading, text};
use crate::app::ways_down::{After, IN_DEGREES, IN_HOURS, blend, cautions};
use crate::app::worked::how_worked;
use crate::batch::Summary;
use crate::quantity::Litres;
use crate::science::heat;

/// The section.
pub fn parts(m: &Model, s: &Summary, day: &Day, known: &Known) -> Vec<Part> {
    let words = &m.words.pitch;
    let judged = match known.wort {
        None => (words.cool.no_wort)(),
        Some(wort) => {
            (words.cool.outlook)(m.writer(), &outlook(wort, &known.looks, known.bath.as_ref()))
        }
    };
    let mut parts = vec![
        Part::new("pitch/verdict", What::Verdict(judged)),
        day.wort.part.clone(),
        day.thermometer.part.clone(),
        day.stirred.part.clone(),
    ];
    let verdict = known.wort.map(|wort| judge(wort).verdict);
    if matches!(verdict, Some(Verdict::Wait | Verdict::Stop)) {
        let mut asked = vec![
            cautions(m, "pitch/ways/cautions"),
            day.volume.part.clone(),
            day.water.part.clone(),
            day.ice.part.clone(),
            day.vessel_holds.part.clone(),
        ];
        asked.extend(day.round.parts());
        asked.extend([day.earlier.part.clone(), day.between.part.clone()]);
        parts.push(fold_from(m, "pitch/ways/asked", words.ways.ways_there, true, asked));
    }
    parts.extend(ways_there(m, s, day, known));
    parts
}

/// The ways side by side; nothing while the wort is in the range.
fn ways_there(m: &Model, s: &Summary, day: &Day, known: &Known) -> Option<Part> {
    let wort = known.wort.filter(|wort| judge(*wort).verdict != Verdict::Go)?;
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
    let ways: Vec<_> =
        found.iter().map(|way| one_way(m, (whole, known.start.is_some()), way, vessel)).collect();
    (!ways.is_empty()).then(|| group("pitch/ways", Tag::Ul, "ways", ways))
}

/// One way: its name, its cost, its drawing and its working. Of the wort it is said whether its gravity is
/// known.
fn one_way(
    m: &Model,
    (wort, known): (heat::Part, bool),
    way: &Way,
    vessel: Option<Litres>,
) -> Part {
    let (w, words) = (m.writer(), &m.words.pitch.ways);
    let name = match way.means {
        Means::Wait => "pitch/ways/wait",
        Means::ColdWater => "pitch/ways/cold",
        Means::Ice => "pitch/ways/ice",
        Means::WarmWater => "pitch/ways/warm",
    };
    let (title, cost) = ((words.title)(w, way), (words.cost)(w, way, known));
    let mut parts = vec![
        heading(format!("{name}/title"), 3, title.clone()),
        text(format!("{name}/cost"), "", cost.clone()),
    ];
    let after = After {
        temperature: way.temperature.value(),
        volume: way.volume,
        gravity: known.then_some(way.gravity),
    };
    let drawn = way.takes.as_ref().and_then(|takes| {
        blend(m, format!("{name}/blend"), (title, cost), (wort, takes), after, vessel)
    });
    parts.extend(drawn);
    let doubts = if matches!(way.takes, Some(Takes::Time(_))) { IN_HOURS } else { IN_DEGREES };
    parts.push(how_worked(m, &format!("{name}/worked"), &way.worked, doubts));
    group(name, Tag::Li, "way", parts)
}
