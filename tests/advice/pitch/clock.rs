//! The cooling clock against wort and water that are followed minute by minute by their own sum.

use crate::chance::Chance;
use fermentside::advice::family::Family;
use fermentside::advice::pitch::Wort;
use fermentside::advice::pitch::clock::{Bath, into_range};
use fermentside::advice::pitch::outlook::outlook;
use fermentside::advice::pitch::ways_to_range::{Means, Scene, Takes, ways};
use fermentside::advice::thermometer::{Thermometer, looks};
use fermentside::quantity::{Celsius, Hours, Litres, Measured, Plato};
use fermentside::science::cooling::Window;
use fermentside::science::heat::Part;

impl Chance {
    fn share(&mut self) -> f64 {
        (self.number() >> 11) as f64 / (1u64 << 53) as f64
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// Near enough to a normal deviate: twelve shares less six.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.share()).sum::<f64>() - 6.0
    }
}

/// Wort in a tub, both well stirred. Heat in kJ, 4.18 kJ a litre and degree for both: a plainer sum than the
/// one that is tried.
#[derive(Clone, Copy)]
struct Tub {
    wort: f64,
    water: f64,
    /// kJ an hour and degree, through the wall and to the room.
    wall: f64,
    to_room: f64,
    room: f64,
    t: f64,
    bath: f64,
}

impl Tub {
    /// A minute goes by, in steps of a second.
    fn minute(&mut self) {
        for _ in 0..60 {
            let through = self.wall * (self.t - self.bath) / 3600.0;
            let lost = self.to_room * (self.bath - self.room) / 3600.0;
            self.t -= through / (4.18 * 0.95 * self.wort);
            self.bath += (through - lost) / (4.18 * self.water);
        }
    }

    /// Hours until the wort is at this or under it, within two days.
    fn until(mut self, target: f64) -> Option<f64> {
        let minutes = (0..2880).find(|_| {
            let there = self.t <= target;
            self.minute();
            there
        });
        minutes.map(|minutes| f64::from(minutes) / 60.0)
    }
}

/// What is said of one tub, and how it goes.
struct Tried {
    truth: f64,
    tub: Option<Window>,
    steady: Option<Window>,
}

fn within(window: Option<&Window>, truth: f64) -> bool {
    window.is_some_and(|window| {
        let latest = window.latest.map_or(f64::INFINITY, |latest| latest.value());
        (window.earliest.value()..=latest).contains(&truth)
    })
}

/// A tub that does bring its wort into the range in half a day, read twice with one thermometer's own fault.
fn tried(chance: &mut Chance) -> Option<Tried> {
    let wort = chance.between(12.0, 24.0);
    let mut tub = Tub {
        wort,
        water: wort * chance.between(1.0, 4.0),
        wall: chance.between(60.0, 250.0),
        to_room: chance.between(0.0, 6.0),
        room: chance.between(17.0, 22.0),
        t: chance.between(30.0, 70.0),
        bath: chance.between(4.0, 12.0),
    };
    let fault = 0.4 * chance.normal();
    let read = |chance: &mut Chance, t: f64| {
        let t = Celsius::nearest(t + fault + 0.2 * chance.normal());
        Thermometer::Probe.reads(t, true)
    };
    let earlier = read(chance, tub.t);
    let apart = chance.between(10.0, 40.0) as u32;
    (0..apart).for_each(|_| tub.minute());
    let range = Family::CleanAle.pitch_at();
    let now = read(chance, tub.t);
    if now.value() <= range.to {
        return None;
    }
    // The brewer waits for what that thermometer shows.
    let truth = tub.until(range.to.value() - fault).filter(|hours| *hours <= 12.0)?;
    let apart = Hours::literal(f64::from(apart) / 60.0);
    let looks = looks(now, Some((earlier, apart)));
    let bath = read(chance, tub.bath).value();
    let water = Litres::literal(tub.water * (1.0 + 0.03 * chance.normal()));
    let whole = Part {
        volume: Litres::literal(wort),
        extract: Plato::literal(12.0),
        temperature: now.value(),
    };
    let settled = Bath::tub(whole, water, bath).expect("it can be blended");
    let says = |bath: &Bath| into_range(&looks, bath, range, now.value()).ok();
    Some(Tried { truth, tub: says(&settled), steady: says(&Bath::steady(bath)) })
}

#[test]
fn a_tub_that_warms_comes_into_the_range_when_it_is_said_to() {
    let mut chance = Chance(20_261_127);
    let all: Vec<_> = (0..1500).filter_map(|_| tried(&mut chance)).collect();
    let share = |good: &dyn Fn(&Tried) -> bool| {
        all.iter().filter(|one| good(one)).count() as f64 / all.len() as f64
    };
    let tub = share(&|one| within(one.tub.as_ref(), one.truth));
    let steady = share(&|one| within(one.steady.as_ref(), one.truth));
    let told = share(&|one| one.tub.as_ref().is_some_and(|window| window.latest.is_some()));
    let early = share(&|one| {
        one.tub.as_ref().is_some_and(|window| one.truth < window.earliest.value() - 1.0 / 60.0)
    });
    println!(
        "{} tubs: inside its window {:.0} %, as cold for ever {:.0} %; a latest time in {:.0} %",
        all.len(),
        100.0 * tub,
        100.0 * steady,
        100.0 * told
    );
    assert!(all.len() > 300);
    assert!(tub >= 0.95, "{tub}");
    assert!(early <= 0.03, "{early}");
    assert!(steady < 0.6, "as it was told before, it was right in {steady}");
    assert!(told > 0.7, "{told}");
}

#[test]
fn where_wort_and_tub_come_to_rest_is_where_they_meet() {
    let mut tub =
        Tub { wort: 20.0, water: 40.0, wall: 120.0, to_room: 0.0, room: 20.0, t: 60.0, bath: 8.0 };
    let whole = Part {
        volume: Litres::literal(20.0),
        extract: Plato::literal(12.0),
        temperature: Celsius::literal(60.0),
    };
    let bath = Bath::tub(whole, Litres::literal(40.0), Celsius::literal(8.0)).expect("a blend");
    (0..3000).for_each(|_| tub.minute());
    assert!((tub.t - tub.bath).abs() < 0.01);
    assert!((bath.settles().value().value() - tub.t).abs() < 0.6, "{bath:?} {}", tub.t);
}

#[test]
fn the_card_and_the_ways_show_one_window() {
    let now = Thermometer::Probe.reads(Celsius::literal(28.0), true);
    let earlier = Thermometer::Probe.reads(Celsius::literal(32.0), true);
    let looks = looks(now, Some((earlier, Hours::literal(0.5))));
    let family = Family::CleanAle;
    let wort = Wort { temperature: now, stirred: true, family, packet: None };
    let whole = Part {
        volume: Litres::literal(20.0),
        extract: Plato::literal(12.0),
        temperature: now.value(),
    };
    let tub = Bath::tub(whole, Litres::literal(60.0), Celsius::literal(8.0)).expect("a blend");
    for bath in [Bath::steady(Celsius::literal(12.0)), tub] {
        let card = outlook(wort, &looks, Some(&bath)).in_range.expect("it comes into the range");
        let found = ways(&Scene {
            wort: whole,
            range: family.pitch_at(),
            vessel: Litres::literal(25.0),
            planned: None,
            cold: None,
            warm: None,
            ice: None,
            waiting: Some((looks.clone(), bath)),
        });
        let wait = found.iter().find(|way| way.means == Means::Wait).expect("a way");
        assert_eq!(wait.takes, Some(Takes::Time(card)));
    }
}

#[test]
fn a_tub_too_small_is_said_and_not_waited_for() {
    let now = Thermometer::Probe.reads(Celsius::literal(40.0), true);
    let earlier = Thermometer::Probe.reads(Celsius::literal(55.0), true);
    let looks = looks(now, Some((earlier, Hours::literal(0.5))));
    let wort = Wort { temperature: now, stirred: true, family: Family::CleanAle, packet: None };
    let whole = Part {
        volume: Litres::literal(20.0),
        extract: Plato::literal(12.0),
        temperature: now.value(),
    };
    let bath = Bath::tub(whole, Litres::literal(15.0), Celsius::literal(10.0)).expect("a blend");
    let found = outlook(wort, &looks, Some(&bath));
    assert!(found.waiting_is_vain && found.in_range.is_none());
    assert!(found.settles_short.is_some_and(|t| t.value() > 22.0), "{found:?}");
}
