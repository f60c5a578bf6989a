//! Laws of quantities in the brewer's units: what is written reads back.

use crate::support::{cases, near_numbers};
use fermentside::quantity::{
    BottleUnit, Bounds, CountUnit, GasUnit, LengthUnit, MassUnit, Measured, PressureUnit,
    ReadError, TemperatureUnit, Unit, VolumeUnit, read, write, write_bare_own,
};
use proptest::prelude::*;

/// A place in a range, its ends among them and small values more often than a straight draw has them.
fn places() -> impl Strategy<Value = f64> {
    prop_oneof![
        1 => Just(0.0),
        1 => Just(1.0),
        4 => 0.0..1.0,
        4 => (0.0..1.0).prop_map(|share: f64| share.powi(4)),
    ]
}

fn at<Q: Measured>(place: f64) -> Q {
    Q::nearest(Q::MIN + place * (Q::MAX - Q::MIN))
}

/// Half of the last place that a unit is written to.
fn half_place<U: Unit>(unit: U) -> f64 {
    0.5 * 0.1_f64.powi(i32::try_from(unit.places()).expect("few places"))
}

fn reads_back<U: Unit>(place: f64) -> Result<(), TestCaseError> {
    let quantity: U::Quantity = at(place);
    for &unit in U::ALL {
        let written = write(quantity, unit);
        // The unit behind the number wins over whichever is chosen beside the field.
        for &chosen in U::ALL {
            let back = read(&written, chosen, Bounds::all());
            let Ok(back) = back else {
                return Err(TestCaseError::fail(format!("{written:?}: {back:?}")));
            };
            let off = unit.express(back.value()) - unit.express(quantity.value());
            prop_assert!(off.abs() <= half_place(unit) + 1e-9, "{written:?} is off by {off}");
            prop_assert_eq!(write(back, unit), written.clone());
        }
        // As a field shows it, and as it is typed where a comma is the decimal mark.
        let bare_of = |quantity: U::Quantity| write_bare_own(quantity.value(), unit.row());
        let bare = bare_of(quantity);
        let back = read(&bare, unit, Bounds::all()).map(bare_of);
        prop_assert_eq!(back, Ok(bare.clone()));
        let with_comma = read(&bare.replace('.', ","), unit, Bounds::all());
        match with_comma {
            Ok(back) => prop_assert_eq!(bare_of(back), bare),
            Err(ReadError::Ambiguous { small, .. }) => {
                // Written without the zeros at its end, the smaller reading is what was meant.
                let small: f64 = small.parse().expect("a plain number");
                prop_assert!((small - unit.express(quantity.value())).abs() <= 1e-3);
            }
            Err(other) => return Err(TestCaseError::fail(format!("{bare:?}: {other:?}"))),
        }
    }
    Ok(())
}

/// A limit told in a refusal is itself taken, in every unit.
fn takes_the_limits_it_tells<U: Unit>(one: f64, other: f64) -> Result<(), TestCaseError> {
    let (min, max) = (at(one.min(other)), at(one.max(other)));
    let bounds: Bounds<U::Quantity> = Bounds::new(min, max);
    for &unit in U::ALL {
        let told = match read("999999999", unit, bounds) {
            Err(ReadError::OutOfRange { min, max }) => [min, max],
            other => return Err(TestCaseError::fail(format!("{other:?}"))),
        };
        for limit in told {
            let back = read(&limit, unit, bounds);
            let inside = back.as_ref().is_ok_and(|back| (min..=max).contains(back));
            prop_assert!(inside, "{limit:?} of {min:?} to {max:?}: {back:?}");
        }
    }
    Ok(())
}

fn never_stops<U: Unit>(text: &str) {
    for &unit in U::ALL {
        if let Ok(quantity) = read(text, unit, Bounds::all()) {
            assert!(quantity.value().is_finite(), "{text:?}");
        }
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn what_is_written_reads_back(place in places()) {
        reads_back::<TemperatureUnit>(place)?;
        reads_back::<VolumeUnit>(place)?;
        reads_back::<MassUnit>(place)?;
        reads_back::<PressureUnit>(place)?;
        reads_back::<GasUnit>(place)?;
        reads_back::<LengthUnit>(place)?;
        reads_back::<BottleUnit>(place)?;
        reads_back::<CountUnit>(place)?;
    }

    #[test]
    fn a_limit_that_is_told_is_taken(one in places(), other in places()) {
        takes_the_limits_it_tells::<TemperatureUnit>(one, other)?;
        takes_the_limits_it_tells::<VolumeUnit>(one, other)?;
        takes_the_limits_it_tells::<MassUnit>(one, other)?;
        takes_the_limits_it_tells::<PressureUnit>(one, other)?;
        takes_the_limits_it_tells::<GasUnit>(one, other)?;
        takes_the_limits_it_tells::<LengthUnit>(one, other)?;
        takes_the_limits_it_tells::<BottleUnit>(one, other)?;
        takes_the_limits_it_tells::<CountUnit>(one, other)?;
    }

    #[test]
    fn no_text_stops_the_reading(text in prop_oneof![any::<String>(), near_numbers()]) {
        never_stops::<TemperatureUnit>(&text);
        never_stops::<VolumeUnit>(&text);
        never_stops::<MassUnit>(&text);
        never_stops::<PressureUnit>(&text);
        never_stops::<GasUnit>(&text);
        never_stops::<LengthUnit>(&text);
        never_stops::<BottleUnit>(&text);
        never_stops::<CountUnit>(&text);
    }
}
