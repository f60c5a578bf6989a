//! Stored JSON is read by way of a tree: it takes and refuses what the plain reader does.

use fermentside::batch::{HydrometerItem, Reading, Settings};
use fermentside::json;
use fermentside::json_texts::{write_lines, write_texts};
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

#[test]
fn objects_of_texts_are_written_as_the_plain_writer_does() {
    let mut texts = std::collections::BTreeMap::new();
    assert_eq!(write_texts(texts.iter()).expect("written"), "{}");
    for (name, text) in [("a/b", "x"), ("", "\"\\\n\u{1}ü\u{1f37a}"), ("z", "")] {
        texts.insert(name.to_owned(), text.to_owned());
    }
    let written = write_texts(texts.iter()).expect("written");
    assert_eq!(written, serde_json::to_string(&texts).expect("written"));
    let read = json::read_texts(&written).expect("read");
    assert!(read.iter().map(|(name, text)| (name, text)).eq(texts.iter()));
    for wrong in ["", "[]", "{\"a\":1}", "{\"a\":null}", "\"a\"", "{\"a\":\"b\""] {
        assert!(json::read_texts(wrong).is_err(), "{wrong}");
    }
}

#[test]
fn objects_of_lines_are_written_as_the_plain_writer_does() {
    let mut texts = std::collections::BTreeMap::new();
    for more in [None, Some(("a", Some("x\ny"))), Some(("b", None)), Some(("c\"", Some("")))] {
        texts.extend(more);
        let written = write_lines(texts.iter().map(|(name, text)| (*name, *text)));
        let plain = serde_json::to_string_pretty(&texts).expect("written");
        assert_eq!(written.expect("written"), plain);
    }
}
