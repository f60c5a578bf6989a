//! Pitching day: what no reading may lead to, and the ways to the yeast's range.

use fermentside::advice::Verdict;
use fermentside::advice::family::{Family, Span};
use fermentside::advice::pitch::already_in;
use fermentside::advice::pitch::clock::Bath;
use fermentside::advice::pitch::outlook::outlook;
use fermentside::advice::pitch::ways_to_range::{Means, Reach, Scene, Takes, ways};
use fermentside::advice::pitch::yeast::{Amount, Months, Next as YeastNext, Supply, plan};
use fermentside::advice::pitch::{A_LITTLE_COOL, Wort, judge};
use fermentside::advice::thermometer::Trend;
use fermentside::quantity::{
    Celsius, Estimate, Grams, Hours, Litres, Measured, Plato, SpecificGravity,
};
use fermentside::science::cooling::Look;
use fermentside::science::heat::Part;
use proptest::prelude::*;

fn cases() -> ProptestConfig {
    ProptestConfig { cases: 512, failure_persistence: None, ..ProptestConfig::default() }
}

fn family() -> impl Strategy<Value = Family> {
    prop::sample::select(Family::ALL.to_vec())
}

fn packet() -> impl Strategy<Value = Option<Span<Celsius>>> {
    prop::option::of(
        (5.0..35.0, 0.0..10.0).prop_map(|(from, wide)| {
            Span::new(Celsius::literal(from), Celsius::literal(from + wide))
        }),
    )
}

fn wort(t: f64, sigma: f64, stirred: bool, family: Family, packet: Option<Span<Celsius>>) -> Wort {
    Wort { temperature: Estimate::new(Celsius::literal(t), sigma), stirred, family, packet }
}

fn look(at: f64, t: f64) -> Look {
    Look { at: Hours::literal(at), temperature: Estimate::new(Celsius::literal(t), 0.5) }
}

fn scene(litres: f64, t: f64, vessel: f64) -> Scene {
    Scene {
        wort: Part {
            volume: Litres::literal(litres),
            extract: Plato::literal(14.0),
            temperature: Celsius::literal(t),
        },
        range: Family::CleanAle.pitch_at(),
        vessel: Litres::literal(vessel),
        planned: None,
        cold: Some(Celsius::literal(6.0)),
        warm: Some(Celsius::literal(45.0)),
        ice: Some(Grams::literal(4000.0)),
        waiting: Some((
            vec![look(0.0, t + 6.0), look(0.5, t)],
            Bath::steady(Celsius::literal(10.0)),
        )),
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn go_is_said_in_the_range_and_a_little_under_it_alone(
        t in 0.0..100.0, sigma in 0.0..10.0, stirred: bool, family in family(), packet in packet(),
        earlier in -10.0..20.0, bath in prop::option::of(0.0..40.0),
    ) {
        let wort = wort(t, sigma, stirred, family, packet);
        let range = packet.unwrap_or(family.pitch_at());
        let looks = [look(0.0, t + earlier), look(1.0, t)];
        let bath = bath.map(|t| Bath::steady(Celsius::literal(t)));
        let found = outlook(wort, &looks, bath.as_ref());
        prop_assert_eq!(found.advice.verdict, judge(wort).verdict);
        if found.advice.verdict == Verdict::Go {
            prop_assert!(t <= range.to.value() && stirred);
            prop_assert!(t >= range.from.value() - A_LITTLE_COOL.value());
            prop_assert!(found.in_range.is_none());
        }
        if let Some(window) = found.in_range {
            prop_assert!(!range.contains(Celsius::literal(t)) && !found.waiting_is_vain);
            if let Some(later) = found.out_again {
                prop_assert!(later.likely >= window.likely);
            }
        }
    }

    #[test]
    fn more_doubt_never_turns_a_no_into_go(
        t in 0.0..100.0, sigma in 0.0..10.0, more in prop_oneof![0.0..20.0, Just(f64::INFINITY)],
        stirred: bool, family in family(), packet in packet(), hours in 0.0..200.0,
    ) {
        let at = |sigma| judge(wort(t, sigma, stirred, family, packet)).verdict;
        if at(sigma) != Verdict::Go {
            prop_assert_ne!(at(sigma + more), Verdict::Go);
        }
        let in_already = |sigma| already_in::judge(already_in::Pitched {
            beer: Estimate::new(Celsius::literal(t), sigma),
            family,
            packet,
            since: Hours::literal(hours),
        }).verdict;
        if in_already(sigma) != Verdict::Go {
            prop_assert_ne!(in_already(sigma + more), Verdict::Go);
        }
    }

    #[test]
    fn more_yeast_is_never_less_and_a_caution_never_more(
        count in 0..5u32, size in 2.0..20.0, litres in 1.0..60.0, sg in 1.0..1.12,
        past in prop::option::of(0..40u16), kept_warm: bool, family in family(),
        wort in prop::option::of(5.0..35.0),
    ) {
        let supply = Supply {
            count,
            size: Grams::literal(size),
            past: past.map(Months),
            kept_warm,
            volume: Litres::literal(litres),
            gravity: SpecificGravity::literal(sg),
            family,
            wort: wort.map(Celsius::literal),
        };
        let of = |supply| plan(supply).expect("in range");
        let with = |count| of(Supply { count, ..supply }).amount;
        let full = |amount| matches!(amount, Amount::Enough | Amount::Plenty);
        let found = of(supply);
        let go = found.advice.verdict == Verdict::Go;
        prop_assert_eq!(go, found.amount != Amount::Short);
        if let YeastNext::AddSachets(more) = found.advice.next {
            prop_assert!(more > 0 && full(with(count + more)) && !full(with(count + more - 1)));
        }
        if go {
            prop_assert!(with(count + 1) != Amount::Short);
        } else {
            for worse in [
                Supply { kept_warm: true, ..supply },
                Supply { past: Some(Months(past.unwrap_or(0) + 13)), ..supply },
            ] {
                prop_assert_eq!(of(worse).amount, Amount::Short);
            }
        }
        let water = 1000.0 * found.waking.water.value();
        prop_assert!((water - 10.0 * f64::from(count) * size).abs() < 1e-6);
    }

    #[test]
    fn nothing_is_offered_over_the_vessel(
        litres in 1.0..30.0, t in 0.0..100.0, room in 0.0..20.0,
        cold in 0.0..30.0, warm in 20.0..90.0, ice in 0.0..8000.0,
        planned in prop::option::of(5.0..50.0),
    ) {
        let scene = Scene {
            cold: Some(Celsius::literal(cold)),
            warm: Some(Celsius::literal(warm)),
            ice: Some(Grams::literal(ice)),
            planned: planned.map(Litres::literal),
            ..scene(litres, f64::min(t, 99.0), litres + room)
        };
        for way in ways(&scene) {
            if way.takes.is_some() && way.means != Means::Wait {
                prop_assert!(way.volume <= scene.vessel, "{way:?}");
                prop_assert!(way.weaker.value() >= -1e-9);
            }
            if way.reach == Reach::There {
                let t = way.temperature.value().value();
                let (from, to) = (scene.range.from.value(), scene.range.to.value());
                prop_assert!((from - 1e-6..=to + 1e-6).contains(&t), "{way:?}");
            }
            if let Some(Takes::Ice(mass)) = way.takes {
                prop_assert!(mass.value() <= ice + 1e-9);
            }
            prop_assert!(way.takes.is_some() || way.reach != Reach::There);
        }
    }
}

#[test]
fn a_wait_says_when() {
    let ale = wort(26.0, 0.5, true, Family::CleanAle, None);
    let found = outlook(
        ale,
        &[look(0.0, 34.0), look(0.5, 26.0)],
        Some(&Bath::steady(Celsius::literal(12.0))),
    );
    assert_eq!(found.advice.verdict, Verdict::Wait);
    assert!(matches!(found.trend, Some(Trend::Falling(_))));
    let (window, gone) = (found.in_range.expect("in range"), found.out_again.expect("and out"));
    assert!(window.likely.value() > 0.1 && window.likely.value() < 1.5, "{window:?}");
    assert!(gone.likely > window.likely);
    let warming = outlook(
        ale,
        &[look(0.0, 22.0), look(0.5, 26.0)],
        Some(&Bath::steady(Celsius::literal(30.0))),
    );
    assert!(warming.waiting_is_vain && warming.in_range.is_none());
}

#[test]
fn the_ways_stand_side_by_side() {
    // 15 L at 26 °C in a vessel of 30 L: water of 6 °C fits, ice fits, waiting takes a while.
    let found = ways(&scene(15.0, 26.0, 30.0));
    assert_eq!(found.len(), 3);
    let of = |kind| found.iter().find(|way| way.means == kind).expect("there");
    assert!(found.iter().all(|way| way.reach == Reach::There), "{found:#?}");
    // Ice does with less than water and so weakens less.
    assert!(of(Means::Ice).volume < of(Means::ColdWater).volume);
    assert!(of(Means::Ice).weaker < of(Means::ColdWater).weaker);
    assert_eq!(of(Means::Wait).weaker.value(), 0.0);
}

#[test]
fn water_that_was_due_anyway_comes_first_and_a_full_vessel_stops_it() {
    let kit =
        Scene { planned: Some(Litres::literal(23.0)), waiting: None, ..scene(13.0, 30.0, 23.5) };
    let first = &ways(&kit)[0];
    assert_eq!(
        (first.means, first.reach, first.within_plan),
        (Means::ColdWater, Reach::There, true)
    );
    let tight = Scene { waiting: None, ice: None, ..scene(20.0, 40.0, 23.0) };
    let only = &ways(&tight)[0];
    assert_eq!(only.reach, Reach::VesselFull);
    assert!(only.volume.value() > 22.98 && only.temperature.value().value() > 20.0, "{only:?}");
}

#[test]
fn too_cold_is_warmed_with_water() {
    let cold = Scene { waiting: None, ..scene(15.0, 12.0, 23.0) };
    let found = ways(&cold);
    assert!(
        matches!(found[..], [ref way] if way.means == Means::WarmWater && way.reach == Reach::There)
    );
    let ready = Scene { waiting: None, ..scene(15.0, 18.0, 23.0) };
    assert!(ways(&ready).is_empty());
}
