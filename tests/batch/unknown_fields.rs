//! What a later version noted stays in a record that this one reads, changes and writes again.

use crate::any::entry;
use fermentside::batch::{Entry, Kind, Theme};
use fermentside::quantity::Litres;
use proptest::prelude::*;
use serde_json::{Value, json};

/// Reads a text, has it changed, and gives what is then written.
fn rewritten(kind: Kind, text: &Value, change: impl FnOnce(&mut Entry)) -> Value {
    let (mut entry, unknown) = Entry::read(kind, &text.to_string()).expect("read");
    change(&mut entry);
    serde_json::from_str(&entry.to_text_with(&unknown).expect("written")).expect("JSON")
}

fn released(kind: Kind) -> Value {
    serde_json::from_str(&crate::released::text(kind.name())).expect("JSON")
}

#[test]
fn choosing_night_keeps_settings_of_a_later_version() {
    let mut text = released(Kind::Settings);
    text["shelves"] = json!({"cellar": [1, 2.5, null, true]});
    text["units"]["pressure"] = json!("bar");
    let night = |entry: &mut Entry| {
        let Entry::Settings(settings) = entry else { panic!("settings") };
        settings.theme = Theme::Night;
    };
    let mut wanted = text.clone();
    wanted["theme"] = json!("night");
    assert_eq!(rewritten(Kind::Settings, &text, night), wanted);
}

#[test]
fn a_changed_record_keeps_what_is_unknown_within_its_parts() {
    let mut text = released(Kind::Batch);
    text["packet"]["made_by"] = json!("a \"house\"");
    let change = |entry: &mut Entry| {
        let Entry::Batch(heading) = entry else { panic!("a heading") };
        heading.volume = Litres::literal(23.0);
        heading.expected_end = None;
    };
    let mut wanted = text.clone();
    wanted["volume"] = json!(23.0);
    wanted.as_object_mut().expect("an object").remove("expected_end");
    assert_eq!(rewritten(Kind::Batch, &text, change), wanted);
    // A part that goes takes what was unknown of it along.
    let without = |entry: &mut Entry| {
        let Entry::Batch(heading) = entry else { panic!("a heading") };
        heading.packet = None;
    };
    wanted = text.clone();
    wanted.as_object_mut().expect("an object").remove("packet");
    assert_eq!(rewritten(Kind::Batch, &text, without), wanted);
}

#[test]
fn what_is_unknown_of_an_item_in_a_list_follows_that_item() {
    let grounds = json!({
        "filled": [
            {"size": 0.5, "class": "reusable_glass", "count": 20, "colour": "brown"},
            {"size": 0.33, "class": "reusable_glass", "count": 12},
            {"size": 0.75, "class": "reusable_glass", "count": 3, "colour": "green"},
        ],
        "past": {"seal": "airlock", "when_chilled": "quiet", "moved_by": "hand"},
        "by_whom": "two",
    });
    let mut text = released(Kind::Bottling);
    text["grounds"] = grounds;
    assert_eq!(rewritten(Kind::Bottling, &text, |_| {}), text);
    let without_first = |entry: &mut Entry| {
        let Entry::Bottling(record) = entry else { panic!("a bottling") };
        let grounds = record.grounds.as_mut().expect("grounds");
        grounds.filled.remove(0);
    };
    let found = rewritten(Kind::Bottling, &text, without_first);
    text["grounds"]["filled"].as_array_mut().expect("a list").remove(0);
    assert_eq!(found, text);
}

#[test]
fn another_sugar_is_not_mixed_with_what_was_unknown_of_the_one_before() {
    let mut text = released(Kind::Bottling);
    text["sugar"] = json!({"wort": {"gravity": 1.048, "end": 1.01, "boiled": true}});
    assert_eq!(rewritten(Kind::Bottling, &text, |_| {}), text);
    let own = fermentside::science::priming::OwnSugar {
        fermentable: fermentside::quantity::Share::literal(0.9),
        water: fermentside::quantity::Share::literal(0.1),
    };
    let change = |entry: &mut Entry| {
        let Entry::Bottling(record) = entry else { panic!("a bottling") };
        record.sugar = fermentside::science::priming::Sugar::Own(own);
    };
    let found = rewritten(Kind::Bottling, &text, change);
    assert_eq!(found["sugar"], json!({"own": {"fermentable": 0.9, "water": 0.1}}));
    assert!(Entry::from_text(Kind::Bottling, &found.to_string()).is_ok());
}

/// Anything that may stand in a text. Whole numbers of 64 bits at most.
fn value() -> impl Strategy<Value = Value> {
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<i64>().prop_map(Value::from),
        any::<u64>().prop_map(Value::from),
        (-1e300..1e300_f64).prop_map(Value::from),
        ".{0,9}".prop_map(Value::from),
    ];
    leaf.prop_recursive(3, 12, 4, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..4).prop_map(Value::from),
            prop::collection::hash_map("[a-z]{1,6}", inner, 0..4)
                .prop_map(|all| Value::Object(all.into_iter().collect())),
        ]
    })
}

/// Puts a member into every object of a tree.
fn into_every_object(tree: &mut Value, name: &str, value: &Value) {
    match tree {
        Value::Object(all) => {
            // An enum's value is an object of one member, and stays one.
            let is_value = all.len() == 1 && all.keys().all(|name| VARIANTS.contains(&&**name));
            all.values_mut().for_each(|inner| into_every_object(inner, name, value));
            if !is_value {
                all.insert(name.to_owned(), value.clone());
            }
        }
        Value::Array(all) => all.iter_mut().for_each(|inner| into_every_object(inner, name, value)),
        _ => {}
    }
}

/// Names of values that hold something.
const VARIANTS: [&str; 4] = ["specific", "plato", "own", "wort"];

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 2000, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn whatever_is_unknown_is_written_again(entry in entry(), more in value()) {
        let text = entry.to_text().expect("written");
        let mut tree: Value = serde_json::from_str(&text).expect("JSON");
        into_every_object(&mut tree, "of_a_later_version", &more);
        let (read, unknown) = Entry::read(entry.kind(), &tree.to_string()).expect("read");
        prop_assert_eq!(&read, &entry);
        let again = read.to_text_with(&unknown).expect("written");
        prop_assert_eq!(&serde_json::from_str::<Value>(&again).expect("JSON"), &tree);
        // And what is known stands first, byte for byte as before, where nothing else is unknown.
        let (_, none) = Entry::read(entry.kind(), &text).expect("read");
        prop_assert!(none.is_empty(), "{none:?}");
        prop_assert_eq!(read.to_text_with(&none).expect("written"), text);
    }
}
