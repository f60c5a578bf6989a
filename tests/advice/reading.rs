//! One reading made true: by the same sums everywhere, and less sure where less was noted.

use fermentside::advice::pitch::start_gravity::{GoesBy, Known, OriginalFrom, start};
use fermentside::advice::reading::{NO_TEMPERATURE, Taken, corrected};
use fermentside::quantity::{Celsius, Estimate, Gravity, Measured, SpecificGravity};
use fermentside::science::hydrometer::Hydrometer;
use fermentside::science::hydrometer_sample::{Condition, Sample, correct_beer, correct_wort};
use fermentside::science::sucrose;

const READ: Gravity = Gravity::Specific(SpecificGravity::literal(1.012));
const OLD: Hydrometer = Hydrometer { reference: Celsius::literal(15.56), ..Hydrometer::USUAL };

fn taken(sample: Option<f64>, original: Option<f64>) -> Taken {
    Taken {
        reading: READ,
        sample: sample.map(Celsius::literal),
        condition: Condition::Still,
        original: original.map(SpecificGravity::literal),
    }
}

#[test]
fn with_a_start_it_is_beer_and_without_one_wort() {
    let temperature = Celsius::literal(26.0);
    let sample = Sample { reading: READ, temperature, condition: Condition::Still };
    let plato = sucrose::plato(SpecificGravity::literal(1.048));
    let of = |original| corrected(taken(Some(26.0), original), &OLD);
    assert_eq!(of(None), correct_wort(sample, &OLD));
    assert_eq!(of(Some(1.048)), correct_beer(sample, &OLD, plato));
    assert_ne!(of(None), of(Some(1.048)));
}

#[test]
fn a_sample_whose_temperature_was_not_noted_is_the_instruments_own_and_less_sure() {
    for original in [None, Some(1.048)] {
        let noted = corrected(taken(Some(15.56), original), &OLD).expect("in range");
        let not = corrected(taken(None, original), &OLD).expect("in range");
        assert_eq!(not.gravity.value(), noted.gravity.value());
        let both = noted.gravity.sigma().hypot(NO_TEMPERATURE.value());
        assert!((not.gravity.sigma() - both).abs() < 1e-12);
        // What widened it is told.
        assert_eq!(not.worked.doubts.len(), noted.worked.doubts.len() + 1);
    }
}

#[test]
fn a_start_goes_by_what_was_chosen_then_by_the_other_then_by_what_is_stated() {
    let sg = |value| Estimate::new(SpecificGravity::literal(value), 0.001);
    let (read, weighed, stated) = (sg(1.048), sg(1.051), SpecificGravity::literal(1.050));
    let of = |sample: bool, ingredients: bool, goes_by| {
        let known = Known {
            sample: sample.then_some(read),
            ingredients: ingredients.then_some(weighed),
            stated: Some(stated),
        };
        start(known, goes_by).expect("something is known")
    };
    let (by_sample, by_weight) =
        ((read, OriginalFrom::Sample), (weighed, OriginalFrom::Ingredients));
    assert_eq!(of(true, true, GoesBy::Sample), by_sample);
    assert_eq!(of(true, true, GoesBy::Ingredients), by_weight);
    for goes_by in GoesBy::ALL {
        assert_eq!(of(true, false, goes_by), by_sample);
        assert_eq!(of(false, true, goes_by), by_weight);
        let (gravity, from) = of(false, false, goes_by);
        assert_eq!((gravity.value(), from), (stated, OriginalFrom::Stated));
        // Less sure than what was read.
        assert!(gravity.sigma() > read.sigma());
    }
}
