//! Entries are written and read back whole; what can't be is refused.

use crate::any::entry;
use fermentside::batch::{Entry, Id, Kind};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 4096, failure_persistence: None, ..ProptestConfig::default()
    })]

    #[test]
    fn an_entry_is_read_back_as_it_was_written(entry in entry()) {
        let text = entry.to_text().expect("written");
        let read = Entry::from_text(entry.kind(), &text).expect("read");
        prop_assert_eq!(&read, &entry);
        prop_assert_eq!(read.to_text().expect("written"), text);
    }

    #[test]
    fn fields_of_a_later_version_are_let_pass(entry in entry()) {
        let text = entry.to_text().expect("written");
        let more = text.replacen('{', "{\"of_a_later_version\":{\"deep\":[1,null,\"x\"]},", 1);
        prop_assert_eq!(Entry::from_text(entry.kind(), &more).expect("read"), entry);
    }

    #[test]
    fn an_entry_cut_short_is_refused(entry in entry(), cut in 0.0..1.0) {
        let text = entry.to_text().expect("written");
        let mut at = (text.len() as f64 * cut) as usize;
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        prop_assert!(Entry::from_text(entry.kind(), &text[..at]).is_err());
    }
}

/// The body with one field's text replaced, which must stand in it.
fn with(kind: Kind, field: &str, value: &str) -> Result<Entry, serde_json::Error> {
    let mut body: serde_json::Value =
        serde_json::from_str(&crate::released::text(kind.name())).expect("JSON");
    let place = body.pointer_mut(field).unwrap_or_else(|| panic!("no {field} in {kind:?}"));
    *place = serde_json::from_str(value).expect("JSON");
    Entry::from_text(kind, &body.to_string())
}

#[test]
fn out_of_range_is_refused() {
    for (kind, field, values) in [
        (Kind::Batch, "/volume", &["-1.0", "1e6", "null", "\"20\""][..]),
        (Kind::Batch, "/started", &["\"2026-02-30T10:00+01:00\"", "\"yesterday\"", "0"]),
        (Kind::Batch, "/family", &["\"moonshine\"", "null"]),
        (Kind::Batch, "/packet/from", &["-300.0", "null"]),
        (Kind::Batch, "/expected_end", &["0.5", "1.5", "10.0"]),
        (Kind::Batch, "/hydrometer", &["\"\"", "\"a/b\"", "7"]),
        (Kind::Pitch, "/wort", &["200.0"]),
        (Kind::Pitch, "/yeast", &["-11.0"]),
        (Kind::Reading, "/as_read", &["{\"specific\":2.0}", "{\"plato\":90.0}", "{}", "1.05"]),
        (Kind::Reading, "/vessel", &["\"bucket\""]),
        (Kind::Reading, "/condition", &["\"good\""]),
        (Kind::Reading, "/sample", &["500.0"]),
        (Kind::Bottling, "/beer/value", &["-2.0"]),
        (Kind::Bottling, "/beer", &["19.0", "{\"value\":19.0}"]),
        (Kind::Bottling, "/target", &["-0.1", "61.0"]),
        (Kind::Bottling, "/weakest", &["\"jam_jar\""]),
        (Kind::Bottling, "/sugar", &["\"lactose\""]),
        (Kind::Opening, "/fizz", &["0", "6", "2.5", "-1"]),
        (Kind::Hydrometer, "/reference", &["131.0"]),
        (Kind::Hydrometer, "/offset", &["0.2"]),
        (Kind::Settings, "/height", &["9000.0"]),
        (Kind::Settings, "/units/volume", &["\"gallons\""]),
    ] {
        for value in values {
            assert!(with(kind, field, value).is_err(), "{kind:?} {field} {value}");
        }
    }
}

#[test]
fn a_doubt_that_is_none_is_taken_as_endless() {
    for wrong in ["-1.0", "null"] {
        let Ok(Entry::Bottling(record)) = with(Kind::Bottling, "/beer/sigma", wrong) else {
            panic!("{wrong}");
        };
        assert_eq!(record.beer.sigma(), f64::INFINITY);
    }
}

#[test]
fn a_span_is_read_in_order() {
    let Ok(Entry::Batch(heading)) = with(Kind::Batch, "/packet", "{\"from\":22.0,\"to\":15.0}")
    else {
        panic!("read");
    };
    let packet = heading.packet.expect("a packet");
    assert!(packet.from < packet.to, "{packet:?}");
}

#[test]
fn identities_are_plain() {
    for wrong in ["", "a b", "a/b", "ä", "a\n", &"x".repeat(65)] {
        assert!(Id::new(wrong).is_err(), "{wrong:?}");
    }
    assert_eq!(Id::random([0, 1, 2, 3, 4, 250, 251, 255]).as_str(), "0001020304fafbff");
}
