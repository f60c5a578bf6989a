//! Priming sugar for beer that is finished, with the guard beside it.

use super::level::ask_level;
use crate::advice::bottle::asked::{Asked, DoseFor, Glass, SugarGoes};
use crate::advice::bottle::plan;
use crate::advice::bottle::stock::Size;
use crate::advice::standing::ways_to_dose::{Known, ways};
use crate::app::ask::{Ask, ask};
use crate::app::model::Model;
use crate::app::part::{Part, What, columns, text};
use crate::app::priming::{
    ask_beer, ask_hottest, ask_target, ask_warmest, ask_weakest, dose_answer, plan_parts,
};
use crate::app::sugar_ask::ask_sugar;
use crate::quantity::{Bounds, LengthUnit, Metres};

/// The sum.
pub fn parts(m: &Model) -> Vec<Part> {
    let scope = "bench/sugar/";
    let (words, settings) = (&m.words.bottle.priming, m.settings());
    let beer = ask_beer(m, scope);
    let target = ask_target(m, scope, None);
    let warmest = ask_warmest(m, scope, words.warmest_hint, None);
    let hottest = ask_hottest(m, scope);
    let height = ask(
        m,
        Ask {
            name: format!("{scope}height"),
            label: words.height,
            hint: "",
            unit: settings.units.height,
            bounds: Bounds::new(Metres::literal(-400.0), Metres::literal(5000.0)),
            step: |unit| if unit == LengthUnit::Metres { 100.0 } else { 500.0 },
            first: Some(settings.height),
            start: settings.height,
        },
    );
    let sugar = ask_sugar(m, scope, None, None);
    let weakest = ask_weakest(m, scope);
    let level = ask_level(m, scope);
    let known = || {
        let mut record = level.record(m.now)?;
        record.weakest = weakest.value;
        record.target = target.ok();
        record.volume = beer.ok();
        let standing = m.standing_of(&record);
        Some((record, standing))
    };
    let known = known();
    let asked = || {
        let (record, standing) = known.as_ref()?;
        Some(Asked {
            ended: standing.ended(record, false),
            beer: beer.ok()?,
            target: target.ok()?,
            warmest: warmest.ok()?,
            cold: None,
            dose_for: DoseFor::Rule,
            sugar: sugar.get()?,
            sugar_goes: SugarGoes::Vessel,
            scale: settings.scale(),
            unit: settings.units.mass,
            glass: Glass { weakest: weakest.value?, smallest: Size::Ml500.litres() },
            hottest: hottest.ok()?,
            height: height.ok()?,
        })
    };
    let ready = asked().map(|asked| asked.ready());
    let ready = ready.as_ref().map(|ready| ready.as_ref().map_err(|why| *why));
    let found = ready.map(|ready| ready.and_then(|ready| plan(ready.bottling)));
    let ok = found.as_ref().and_then(|found| found.as_ref().ok());
    let mut parts = vec![dose_answer(m, found.as_ref(), sugar.get(), words.give_for_sum)];
    if let (Some(plan), Some(Ok(ready)), Some((record, standing))) = (ok, ready, &known) {
        let ways = ways(ready, Known { record, standing, now: m.now, trials: &m.trials });
        let judged = (m.words.bottle.plan.judged)(m.writer(), plan, &ways);
        parts.push(Part::new("judged", What::Verdict(judged)));
    }
    parts.push(text("granted", "small", m.words.bench.level.granted));
    parts.push(text("caution", "small", m.words.cautions.glass));
    let mut left = vec![beer.part, weakest.part, warmest.part];
    left.extend(level.parts());
    left.extend(sugar.parts());
    left.extend([target.part, hottest.part, height.part]);
    let right = ok.map(|plan| plan_parts(m, plan)).unwrap_or_default();
    parts.push(columns("fields", left, right));
    parts
}
