//! Stored JSON is read by way of a tree: it takes and refuses what the plain reader does.

// A test may stop.
#![allow(clippy::expect_used)]

use fermentside::batch::{HydrometerItem, Reading, Settings};
use fermentside::json;
use serde::{Serialize, de::DeserializeOwned};

fn same<T: Serialize + DeserializeOwned>(text: &str) {
    let straight = serde_json::from_str::<T>(text).ok().map(|t| serde_json::to_string(&t).ok());
    let by_tree = json::read::<T>(text).ok().map(|t| serde_json::to_string(&t).ok());
    assert_eq!(straight, by_tree, "{text}");
}

#[test]
fn reads_and_refuses_what_the_plain_reader_does() {
    let numbers =
        ["1", "-1", "1.5", "1e300", "0.1", "256", "1e999", "\"1\"", "null", "true", "[1]"];
    for text in numbers.into_iter().chain(["", "{", "{}", "[", "1 2", "\"\\ud800\"", "\"a\\n\""]) {
        same::<f64>(text);
        same::<u8>(text);
        same::<Option<bool>>(text);
        same::<Vec<String>>(text);
        same::<String>(text);
    }
    for released in ["reading", "hydrometer", "settings"] {
        let path =
            format!("{}/tests/released/1/bodies/{released}.json", env!("CARGO_MANIFEST_DIR"));
        let text = std::fs::read_to_string(path).expect("a released text");
        let text = text.trim_end();
        let twice = text.replacen(
            '{',
            "{\"name\":\"a\",\"name\":\"b\",\"note\":\"\",\"theme\":\"day\",",
            1,
        );
        for text in [text, &twice, &text.replace("\"note\"", "\"other\""), &text.replace('5', "[]")]
        {
            same::<Reading>(text);
            same::<HydrometerItem>(text);
            same::<Settings>(text);
        }
    }
}
