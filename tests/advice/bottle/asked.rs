//! From the answers of bottling day to the plan.

use fermentside::advice::bottle::asked::{Asked, Cold, DoseFor, Ended, Glass, SugarGoes, WarmFor};
use fermentside::advice::bottle::dosing::Dosing;
use fermentside::advice::bottle::history::{Doubt, Past, Seal, Working};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::{Bottles, fill_all};
use fermentside::advice::bottle::{Over, plan};
use fermentside::advice::family::Family;
use fermentside::advice::standing::{Hazard, Record, Standing, State, WhatIsLeft};
use fermentside::quantity::{
    CarbonDioxideVolumes, Celsius, Grams, GravityChange, Litres, MassUnit, Measured, Metres, Moment,
};
use fermentside::science::priming::Sugar;

/// Level, and a point at the most left.
const ENDED: Ended = Ended {
    over: Over::Judged,
    points_left: GravityChange::literal(0.001),
    yeast_may_go_on: false,
};

fn usual() -> Asked {
    Asked {
        ended: ENDED,
        beer: Litres::literal(19.0),
        target: CarbonDioxideVolumes::literal(2.4),
        warmest: Celsius::literal(20.0),
        cold: None,
        dose_for: DoseFor::Rule,
        sugar: Sugar::Sucrose,
        sugar_goes: SugarGoes::Vessel,
        scale: Grams::literal(1.0),
        unit: MassUnit::Grams,
        glass: Glass { weakest: Bottle::ReusableGlass, smallest: Litres::literal(0.33) },
        hottest: Celsius::literal(30.0),
        height: Metres::literal(0.0),
    }
}

fn chilled(seal: Seal, working: Working, warm_for: WarmFor) -> Asked {
    let cold = Cold { coldest: Celsius::literal(2.0), seal, working, warm_for };
    Asked { cold: Some(cold), ..usual() }
}

#[test]
fn what_the_log_says_counts_before_what_the_brewer_says() {
    let record = Record::of(Family::CleanAle, Moment::EPOCH);
    let states = [
        State::NotStarted,
        State::Falling,
        State::Slow,
        State::Level,
        State::LooksStuck,
        State::Finished,
        State::CannotTell,
    ];
    for state in states {
        let level = matches!(state, State::Finished | State::Level);
        for (bounded, because_stated) in
            [(true, false), (true, true), (false, false), (false, true)]
        {
            let mut standing = Standing::of(&record, Moment::EPOCH);
            let over = |standing: &Standing| standing.ended(&record, because_stated).over;
            standing.state = state;
            standing.left = WhatIsLeft { bounded, fermented: true, ..standing.left };
            let expected = match (level && bounded, because_stated) {
                (true, _) => Over::Judged,
                (false, true) => Over::Stated,
                (false, false) => Over::No,
            };
            assert_eq!(over(&standing), expected, "{state:?} {bounded} {because_stated}");
            // No word makes safe bottles of those that gush, nor beer of what is not known to ferment.
            standing.hazards = vec![Hazard::Gushed(Moment::EPOCH)];
            assert_eq!(over(&standing), Over::No);
            standing.hazards.clear();
            standing.left.fermented = false;
            assert_eq!(over(&standing), Over::No);
        }
    }
}

#[test]
fn volume_and_temperatures_carry_the_doubt_of_how_they_are_known() {
    let ready = usual().ready().expect("in range");
    assert!((ready.bottling.beer.sigma() - 0.57).abs() < 1e-9);
    let already = ready.bottling.already_in;
    assert!((already.value().value() - 0.82).abs() < 0.01 && already.sigma() > 0.0, "{already:?}");
    assert_eq!(usual().past(), Past::PLAIN);
    assert_eq!(ready.held.may_hold, None);
}

#[test]
fn a_chilled_beer_has_two_ends_where_its_gas_may_have_stayed() {
    let ends = |seal, working, warm_for| {
        let held = chilled(seal, working, warm_for).ready().expect("in range").held;
        held.may_hold.map(|(_, why)| why)
    };
    let (long, short) = (WarmFor::Long, WarmFor::Short);
    assert_eq!(ends(Seal::Airlock, Working::Quiet, long), None);
    assert_eq!(ends(Seal::Sealed, Working::Quiet, long), Some(Doubt::ColdSealed));
    assert_eq!(ends(Seal::Airlock, Working::Still, long), Some(Doubt::ColdWorking));
    let still = chilled(Seal::Airlock, Working::Still, long).ready().expect("in range").bottling;
    assert_eq!((still.over, plan(still).expect("in range").dose()), (Over::ColdStopped, None));
    assert_eq!(ends(Seal::Unsure, Working::Quiet, long), Some(Doubt::NotKnown));
    let shortly = Some(Doubt::ShortWarmth(WarmFor::Short.at_least()));
    assert_eq!(ends(Seal::Airlock, Working::Quiet, short), shortly);
}

#[test]
fn the_dose_is_for_the_end_that_was_chosen_and_the_guard_for_the_worse() {
    let asked = chilled(Seal::Sealed, Working::Quiet, WarmFor::Long);
    let ready = |dose_for| Asked { dose_for, ..asked }.ready().expect("in range").bottling;
    let (rule, more) = (ready(DoseFor::Rule), ready(DoseFor::More));
    assert!(more.already_in.value() > rule.already_in.value());
    assert_eq!(more.may_hold, rule.may_hold);
    // Where there is but one end, the choice changes nothing.
    let one = Asked { dose_for: DoseFor::More, ..usual() }.ready().expect("in range").bottling;
    assert_eq!(one, usual().ready().expect("in range").bottling);
}

#[test]
fn a_scale_finer_than_the_unit_helps_only_bottle_by_bottle() {
    let weighing = |sugar_goes, unit| {
        let scale = Grams::literal(0.1);
        Asked { sugar_goes, unit, scale, ..usual() }.ready().expect("in range").bottling.weighing
    };
    assert_eq!(weighing(SugarGoes::Vessel, MassUnit::Grams).scale, Grams::literal(0.1));
    assert!(weighing(SugarGoes::Vessel, MassUnit::Ounces).scale > Grams::literal(0.2));
    let each = weighing(SugarGoes::Bottles, MassUnit::Ounces);
    assert_eq!(each.scale, Grams::literal(0.1));
    assert_eq!(each.dosing, Dosing::Bottles { smallest: Litres::literal(0.33) });
}

#[test]
fn the_weakest_and_the_smallest_of_the_bottles_count() {
    let own = |size, class| Bottles { size: Litres::literal(size), class, count: 10 };
    let both = [own(0.33, Bottle::HeavyGlass), own(0.5, Bottle::UnknownGlass)];
    let glass = Glass { weakest: Bottle::UnknownGlass, smallest: Litres::literal(0.33) };
    assert_eq!(Glass::of(&both), Some(glass));
    assert_eq!(Glass::of(&[]), None);
    let strict = Asked { glass, ..usual() }.ready().expect("in range").bottling;
    assert!(plan(strict).expect("in range").dose().is_none());
    let filling = fill_all(Litres::literal(1.2), Litres::literal(0.5), Bottle::ReusableGlass);
    assert_eq!((filling.filled[0].count, filling.short), (2, false));
}
