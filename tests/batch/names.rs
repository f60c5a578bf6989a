//! A name can be read: it shows, and it is no longer than a row.

use crate::support::{heading, id};
use fermentside::advice::bottle::kinds::Bottle;
use fermentside::advice::bottle::stock::Bottles;
use fermentside::batch::{
    BatchHeading, BottlesItem, Change, Entry, HydrometerItem, Journal, LONGEST_NAME, Rejected,
    SugarItem,
};
use fermentside::quantity::{Litres, Share};
use fermentside::science::priming::OwnSugar;
use proptest::prelude::*;

/// Everything that has a name, with that one.
fn named(name: &str) -> [Entry; 4] {
    let name = name.to_owned();
    let bottles = Bottles { size: Litres::literal(0.5), class: Bottle::ReusableGlass, count: 40 };
    let sugar = OwnSugar { fermentable: Share::literal(1.0), water: Share::literal(0.0) };
    [
        Entry::Batch(BatchHeading { name: name.clone(), ..heading() }),
        Entry::Hydrometer(HydrometerItem { name: name.clone(), ..HydrometerItem::usual() }),
        Entry::Bottles(BottlesItem { name: name.clone(), bottles }),
        Entry::Sugar(SugarItem { name, sugar }),
    ]
}

/// What every one of them answers.
fn refusal(name: &str) -> Option<Rejected> {
    let answers = named(name).map(|entry| Journal::default().apply(Change::put(id("n"), entry)));
    let refused = answers.map(Result::err);
    assert!(refused.iter().all(|one| *one == refused[0]), "{name:?}: {refused:?}");
    refused[0]
}

#[test]
fn a_name_of_reasonable_length_that_shows_is_taken() {
    for name in ["Brown ale", "7", "Пиво", "地ビール", "  Stout \t", "é", "🍺 no. 3", "ب\u{200F}"]
    {
        assert_eq!(refusal(name), None, "{name:?}");
    }
    assert_eq!(refusal(&"ä".repeat(LONGEST_NAME)), None);
    assert_eq!(refusal(&format!(" {} ", "W".repeat(LONGEST_NAME))), None);
}

#[test]
fn one_that_is_too_long_or_does_not_show_is_refused() {
    assert_eq!(refusal(""), Some(Rejected::NoName));
    assert_eq!(refusal(" \u{A0}\n"), Some(Rejected::NoName));
    assert_eq!(refusal(&"W".repeat(LONGEST_NAME + 1)), Some(Rejected::NameTooLong));
    assert_eq!(refusal(&"a ".repeat(200)), Some(Rejected::NameTooLong));
    for name in [
        "\u{200B}",
        "\u{200E}\u{202E}",
        "\u{FEFF} \u{2060}",
        "\u{3164}",
        "\u{2800}",
        "--",
        "\u{301}",
    ] {
        assert_eq!(refusal(name), Some(Rejected::NameUnseen), "{name:?}");
    }
}

#[test]
fn a_name_stored_before_still_opens_and_is_let_be() {
    for name in ["W".repeat(400), "\u{200B}".to_owned()] {
        for entry in named(&name) {
            let text = entry.to_text().expect("written");
            let entry = Entry::from_text(entry.kind(), &text).expect("read");
            let mut journal = Journal::of([(id("n"), entry.clone())]);
            // Saved again, as when its volume is changed.
            journal.apply(Change::put(id("n"), entry.clone())).expect("taken");
            assert!(journal.apply(Change::put(id("other"), entry)).is_err());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 1000, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn what_is_taken_shows_and_fits(name in prop_oneof![
        ".{0,80}",
        "[\u{200B}-\u{200F}\u{2060}\u{FEFF}\u{3164} .\u{301}]{0,70}",
        "[\u{200B}\u{202E} ]{0,40}[a-z0-9]?[\u{200B}\u{202E} ]{0,40}",
    ]) {
        let name = name.as_str();
        let length = name.trim().chars().count();
        match refusal(name) {
            None => {
                prop_assert!((1..=LONGEST_NAME).contains(&length));
                prop_assert!(name.chars().any(char::is_alphanumeric));
            }
            Some(Rejected::NoName) => prop_assert_eq!(length, 0),
            Some(Rejected::NameTooLong) => prop_assert!(length > LONGEST_NAME),
            Some(why) => {
                prop_assert_eq!(why, Rejected::NameUnseen);
                prop_assert!(!name.contains(|c: char| c.is_ascii_alphanumeric()));
            }
        }
    }
}
