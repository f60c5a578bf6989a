//! The proving ground: readers on courses whose end is known, and how the standing did.

use crate::courses::{Kind, Truth};
use crate::reader::{CAREFUL, Log, Reader, TIRED, at};
use crate::simulated::Lot;
use fermentside::advice::family::Family;
use fermentside::advice::standing::{Rough, allowed, rough};

struct Ground {
    name: &'static str,
    family: Family,
    kind: Kind,
    strong: bool,
}

const fn ground(name: &'static str, family: Family, kind: Kind) -> Ground {
    Ground { name, family, kind, strong: false }
}

const GROUNDS: [Ground; 18] = [
    ground("logistic ale", Family::CleanAle, Kind::Logistic),
    ground("English ale", Family::EnglishAle, Kind::Logistic),
    ground("yeast unknown", Family::Unknown, Kind::Logistic),
    ground("kveik", Family::Kveik, Kind::Logistic),
    ground("three sugars ale", Family::CleanAle, Kind::ThreeSugars),
    ground("three sugars lager", Family::Lager, Kind::ThreeSugars),
    ground("biomass lager", Family::Lager, Kind::Biomass),
    ground("biomass ale", Family::CleanAle, Kind::Biomass),
    ground("sharp ale", Family::CleanAle, Kind::Sharp),
    ground("two stages lager", Family::Lager, Kind::TwoStages),
    Ground { strong: true, ..ground("strong ale", Family::CleanAle, Kind::Logistic) },
    ground("told eaten", Family::Saison, Kind::Eaten),
    ground("eaten, untold", Family::CleanAle, Kind::Eaten),
    ground("rests, ale", Family::CleanAle, Kind::Rests),
    ground("rests, unknown", Family::Unknown, Kind::Rests),
    ground("resumes", Family::CleanAle, Kind::Resumes),
    ground("stuck", Family::CleanAle, Kind::Stuck),
    ground("chilled early", Family::CleanAle, Kind::Chilled),
];

/// How one batch went.
#[derive(Default)]
struct Run {
    /// The first dose: hours, what was left, and how far over the ceiling in volumes.
    dosed: Option<(f64, f64)>,
    end: f64,
    looks: usize,
    /// Looks after the first true dose, and those without one.
    later: usize,
    taken_back: usize,
    /// Looks where the bound held, of those with one.
    bound: usize,
    held: usize,
    finished_by_ten: bool,
    false_by_two: usize,
}

fn env(name: &str) -> Option<f64> {
    std::env::var(name).ok().and_then(|n| n.parse().ok())
}

fn run(
    truth: &Truth,
    ground: &Ground,
    reader: Reader,
    satellite: bool,
    every: f64,
    seed: u64,
    q: f64,
) -> Run {
    let mut log = Log::new(truth, ground.family, reader, seed);
    if satellite {
        log.read_satellite();
    }
    let room = allowed(&log.record).map_or(0.0, |left| left.points());
    let mut found = Run { end: truth.one_point().unwrap_or(0.0), ..Run::default() };
    let ends = found.end.max(truth.rests.unwrap_or(0.0)).max(truth.chilled.unwrap_or(0.0));
    let slow = ground.family == Family::Lager || ground.strong;
    let mut hours = if slow { 96.0 } else { 60.0 };
    let last = ends + if ground.kind == Kind::Eaten { 28.0 * 24.0 } else { 24.0 * 18.0 };
    while hours < last {
        let read = hours + log.lot.between(-5.0, 5.0);
        log.read(read);
        hours += every * 24.0;
        let Rough { bound, upper, .. } = rough(&log.record, at(read), q);
        found.looks += 1;
        let left = truth.left(read);
        found.bound += 1;
        found.held += usize::from(left <= bound.unwrap_or(upper).max(upper) + 1e-9);
        let go = bound.is_some_and(|bound| bound <= room);
        if let Some((first, _)) = found.dosed {
            if truth.left(first) <= 1.8 {
                found.later += 1;
                found.taken_back += usize::from(!go);
            }
        } else if go {
            found.dosed = Some((read, left));
        }
        if go && left > 2.0 {
            found.false_by_two += 1;
        }
        if go && read < ends + 10.0 * 24.0 {
            found.finished_by_ten = true;
        }
    }
    found
}

#[test]
fn it_is_fast() {
    for times in [5, 30, 60, 200] {
        let mut lot = Lot::new(5);
        let truth = Truth::draw(&mut lot, Family::CleanAle, Kind::Logistic, false);
        let mut log = Log::new(&truth, Family::CleanAle, CAREFUL, 3);
        for i in 0..times {
            log.read(20.0 + 340.0 * f64::from(i) / f64::from(times));
        }
        let start = std::time::Instant::now();
        for _ in 0..10 {
            assert!(rough(&log.record, at(400.0), 0.95).upper >= 0.0);
        }
        println!("{times} readings: {:.1} ms", start.elapsed().as_secs_f64() * 100.0);
    }
}

#[test]
fn prove() {
    let count = env("COUNT").unwrap_or(4.0) as u64;
    let q = env("Q").unwrap_or(0.95);
    let every = env("EVERY").unwrap_or(2.0);
    let only = std::env::var("ONLY").ok();
    println!("q {q}, every {every} days, {count} a family");
    println!("{:20} read  | dosed never  10d days(50,90) | over  >0.7 false2 | back bound", "");
    for ground in &GROUNDS {
        if only.as_ref().is_some_and(|only| !only.split(',').any(|o| ground.name.contains(o))) {
            continue;
        }
        for (name, reader, satellite) in
            [("care", CAREFUL, false), ("tired", TIRED, false), ("sat", CAREFUL, true)]
        {
            let runs: Vec<Run> = (0..count)
                .map(|i| {
                    let mut lot = Lot::new(1000 + i);
                    let truth = Truth::draw(&mut lot, ground.family, ground.kind, ground.strong);
                    run(&truth, ground, reader, satellite, every, 77 + i, q)
                })
                .collect();
            let n = runs.len() as f64;
            let pct = |c: usize| 100.0 * c as f64 / n;
            let dosed = runs.iter().filter(|r| r.dosed.is_some()).count();
            let ten = runs.iter().filter(|r| !r.finished_by_ten).count();
            let over = runs.iter().filter(|r| r.dosed.is_some_and(|(_, left)| left > 1.8)).count();
            let much = runs.iter().filter(|r| r.dosed.is_some_and(|(_, left)| left > 3.2)).count();
            let f2 = runs.iter().filter(|r| r.false_by_two > 0).count();
            let later: usize = runs.iter().map(|r| r.later).sum();
            let back: usize = runs.iter().map(|r| r.taken_back).sum();
            let bound: usize = runs.iter().map(|r| r.bound).sum();
            let held: usize = runs.iter().map(|r| r.held).sum();
            let mut days: Vec<f64> =
                runs.iter().filter_map(|r| r.dosed.map(|(h, _)| (h - r.end) / 24.0)).collect();
            days.sort_by(f64::total_cmp);
            let at = |s: f64| {
                days.get(((days.len().max(1) - 1) as f64 * s) as usize).copied().unwrap_or(f64::NAN)
            };
            println!(
                "{:20} {name:5} | {:5.0} {:5.0} {:5.0} {:5.1} {:5.1} | {:5.1} {:5.1} {:5.1} | {:5.1} {:5.1}",
                ground.name,
                pct(dosed),
                100.0 - pct(dosed),
                pct(ten),
                at(0.5),
                at(0.9),
                pct(over),
                pct(much),
                pct(f2),
                100.0 * back as f64 / later.max(1) as f64,
                100.0 * held as f64 / bound.max(1) as f64,
            );
        }
    }
}
