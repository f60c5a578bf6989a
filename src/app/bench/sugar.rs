//! Priming sugar for beer that is finished, with the guard beside it.

use super::level::ask_level;
use crate::advice::bottle::asked::{Asked, DoseFor, Glass, SugarGoes};
use crate::advice::bottle::plan;
use crate::advice::bottle::stock::Size;
use crate::advice::standing::ways_to_dose::{Known, ways};
use crate::app::ask::{Ask, ask};
use crate::app::fold::fold_from;
use crate::app::model::Model;
use crate::app::part::{Answer, Part, What, columns, text};
use crate::app::priming::{
    ask_beer, ask_hottest, ask_target, ask_warmest, ask_weakest, judged, lacking, plan_parts,
};
use crate::app::sugar_ask::ask_sugar;
use crate::app::ways_out;
use crate::quantity::{Bounds, LengthUnit, Metres};
use crate::words::Weighs;

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
    let plate = match (&found, &known, sugar.get().zip(beer.ok())) {
        (Some(found), Some((_, standing)), Some((kind, beer))) => {
            let stands = (m.words.watch.finish)(m.writer(), standing, m.now);
            let name = sugar.name(m, kind);
            let weighs = Weighs { sugar: kind, name, beer };
            let found = found.as_ref().map_err(|why| *why);
            What::Verdict(judged(m, found, weighs, stands))
        }
        // Nothing is judged yet.
        _ => {
            let lacks = [
                (beer.ok().is_none(), words.the_volume),
                (weakest.value.is_none(), words.the_bottles),
                (warmest.ok().is_none(), words.the_warmest),
                (known.is_none(), words.how_level),
                (sugar.get().is_none(), words.the_sugar),
                (target.ok().is_none(), words.the_carbonation),
                (hottest.ok().is_none(), words.the_hottest),
            ];
            let label = m.words.bottle.plan.sugar_to_weigh;
            What::Answer(Answer::only(label, lacking(m, &lacks)))
        }
    };
    let to_dose = match (ok, ready, &known) {
        (Some(_), Some(Ok(ready)), Some((record, standing))) => {
            ways(ready, Known { record, standing, now: m.now, trials: &m.trials })
        }
        _ => vec![],
    };
    let ways = ways_out::part(m, scope, None, &to_dose);
    let mut parts = vec![Part::new(ways_out::PLATE, plate), ways];
    let mut left = vec![beer.part, weakest.part, warmest.part];
    left.extend(level.parts());
    let lacks = sugar.get().is_none() || target.ok().is_none() || hottest.ok().is_none();
    let mut assumed = vec![target.part];
    assumed.extend(sugar.parts());
    assumed.extend([hottest.part, height.part]);
    left.push(fold_from(m, "bench/sugar/assumed", m.words.bottle.granted, lacks, assumed));
    let mut right = ok.map(|plan| plan_parts(m, plan)).unwrap_or_default();
    right.push(text("granted", "small", m.words.bench.level.granted));
    right.push(text("caution", "small", m.words.cautions.glass));
    parts.push(columns("fields", left, right));
    parts
}
