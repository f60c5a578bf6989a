//! Whether those who are told "finished" get the usual dose, by the very plan that the form asks.

use crate::courses::Truth;
use crate::lot::Lot;
use crate::proving::{GROUNDS, Ground};
use crate::reader::{CAREFUL, Log, Reader, TIRED, at};
use fermentside::advice::bottle::asked::{Asked, DoseFor, Glass, SugarGoes};
use fermentside::advice::bottle::{kinds::Bottle, plan};
use fermentside::advice::standing::{Record, Standing, State};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Grams, Litres, MassUnit, Measured, Metres,
};
use fermentside::science::priming::Sugar;

/// Families of which most beer is.
const ORDINARY: usize = 8;

/// The form as most would leave it: 2.4 volumes in sound glass, a kitchen scale, a warm room.
fn dosed(record: &Record, standing: &Standing, litres: f64) -> bool {
    let asked = Asked {
        ended: standing.ended(record, false),
        beer: Litres::nearest(litres),
        target: CarbonDioxideVolumes::literal(2.4),
        warmest: Celsius::literal(20.0),
        cold: None,
        dose_for: DoseFor::Rule,
        sugar: Sugar::Sucrose,
        sugar_goes: SugarGoes::Vessel,
        scale: Grams::literal(1.0),
        unit: MassUnit::Grams,
        glass: Glass { weakest: Bottle::ReusableGlass, smallest: Litres::literal(0.5) },
        hottest: Celsius::literal(30.0),
        height: Metres::literal(0.0),
    };
    plan(asked.ready().expect("in range").bottling).expect("in range").dose().is_some()
}

/// Whether there is a dose at the first "finished" of daily looks; `None` when that never comes.
fn told(ground: &Ground, reader: Reader, seed: u64, litres: f64) -> Option<bool> {
    let mut lot = Lot::new(seed.wrapping_mul(7_919).wrapping_add(11));
    let truth = Truth::draw(&mut lot, ground.family, ground.kind, ground.strong);
    let mut log = Log::new(&truth, ground.family, reader, seed);
    log.record.volume = Some(Litres::nearest(litres));
    let first = truth.one_point().unwrap_or(0.0).max(108.0) - 48.0;
    for day in 0..18 {
        let hours = first + 24.0 * f64::from(day);
        log.read(hours);
        let standing = Standing::of(&log.record, at(hours));
        if standing.state == State::Finished {
            return Some(dosed(&log.record, &standing, litres));
        }
    }
    None
}

/// Small batches among them, where a step of the scale is much of a dose.
#[test]
fn whoever_is_told_finished_gets_the_usual_dose() {
    let wanted = std::env::var("COUNT").ok().and_then(|n| n.parse().ok());
    let count: u64 = wanted.unwrap_or(1);
    let (mut finished, mut got, mut all) = (0, 0, 0);
    for ground in GROUNDS.iter().take(ORDINARY) {
        for (reader, litres) in [(CAREFUL, 20.0), (CAREFUL, 5.0), (TIRED, 20.0)] {
            let runs = (0..count).map(|seed| told(ground, reader, seed, litres));
            let runs: Vec<_> = runs.collect();
            all += runs.len();
            finished += runs.iter().flatten().count();
            got += runs.iter().flatten().filter(|dosed| **dosed).count();
        }
    }
    println!("{all} ordinary brews, {finished} finished within 16 days of their end, {got} dosed");
    assert!(2 * finished > all && got == finished, "{got} of {finished}");
}
