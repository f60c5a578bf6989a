//! Laws of numbers as they are typed and written, and of values with a doubt.

use crate::support::{cases, near_numbers};
use fermentside::quantity::{Celsius, Estimate, Grams, Measured, read_numeral, write_number};
use proptest::prelude::*;

/// Groups the whole part of a plain number by threes.
fn grouped(plain: &str, mark: char) -> String {
    let (whole, rest) = plain.split_at(plain.find('.').unwrap_or(plain.len()));
    let mut text = String::new();
    for (at, c) in whole.chars().enumerate() {
        let left = whole.len() - at;
        if at > 0 && left.is_multiple_of(3) {
            text.push(mark);
        }
        text.push(c);
    }
    text + rest
}

fn meanings(text: &str) -> Result<Vec<f64>, TestCaseError> {
    match read_numeral(text) {
        Ok((numeral, unit)) if unit.is_empty() => Ok(numeral.meanings().collect()),
        other => Err(TestCaseError::fail(format!("{text:?} read as {other:?}"))),
    }
}

proptest! {
    #![proptest_config(cases())]

    #[test]
    fn a_written_number_reads_as_itself(value in -1e7..1e7, places in 0_usize..6) {
        let written = write_number(value, places);
        let exact: f64 = written.replace('\u{2212}', "-").parse().expect("a number");
        prop_assert_eq!(meanings(&written)?, vec![exact]);
        let half = 0.5 * 0.1_f64.powi(i32::try_from(places).expect("few"));
        prop_assert!((exact - value).abs() <= half * (1.0 + 1e-9) + 1e-9);
        // A decimal comma is always one of the meanings, and the first to be tried.
        prop_assert_eq!(meanings(&written.replace('.', ","))?.first().copied(), Some(exact));
    }

    #[test]
    fn grouping_by_spaces_changes_nothing(value in 0.0..1e9, places in 0_usize..4) {
        let plain = write_number(value, places);
        for mark in [' ', '\u{A0}', '\u{202F}'] {
            prop_assert_eq!(meanings(&grouped(&plain, mark))?, meanings(&plain)?);
        }
        // Commas group whole numbers; a single one leaves both readings open.
        let whole = write_number(value, 0);
        let exact: f64 = whole.parse().expect("a number");
        prop_assert!(meanings(&grouped(&whole, ','))?.contains(&exact));
    }

    #[test]
    fn no_text_stops_the_reading(text in prop_oneof![any::<String>(), near_numbers()]) {
        if let Ok((numeral, unit)) = read_numeral(&text) {
            prop_assert!(numeral.meanings().all(|value| !value.is_nan()), "{text:?} {unit:?}");
        }
    }

    #[test]
    fn a_stored_value_is_the_same_to_the_last_bit(celsius in -40.0..130.0, grams in 0.0..1e7) {
        let warm = Celsius::literal(celsius);
        let stored = serde_json::to_string(&warm).expect("stored");
        prop_assert_eq!(serde_json::from_str::<Celsius>(&stored).expect("read"), warm);
        let heavy = Estimate::new(Grams::literal(grams), grams / 3.0);
        let stored = serde_json::to_string(&heavy).expect("stored");
        prop_assert_eq!(serde_json::from_str::<Estimate<Grams>>(&stored).expect("read"), heavy);
    }

    #[test]
    fn a_doubt_lies_on_both_sides(
        value in -40.0..130.0, sigma in any::<f64>(), sigmas in 0.0..10.0, more in any::<f64>(),
    ) {
        let narrow = Estimate::new(Celsius::literal(value), sigma);
        let wide = narrow.widened(more);
        for estimate in [narrow, wide] {
            prop_assert!(estimate.sigma() >= 0.0);
            prop_assert!(estimate.lower(sigmas) <= estimate.value());
            prop_assert!(estimate.value() <= estimate.upper(sigmas));
            prop_assert!(estimate.lower(sigmas).value().is_finite());
        }
        prop_assert!(wide.sigma() >= narrow.sigma());
        prop_assert_eq!(Estimate::exact(narrow.value()).upper(sigmas), narrow.value());
    }
}
