//! Every stored form ever shipped still loads, to the byte.
use fermentside::store::{Archive, MemoryStore, Revision, Store};
use std::fs;
use std::path::Path;

/// Key and text of each file of one schema.
fn released(schema: u32) -> Vec<(String, String)> {
    let folder =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released").join(schema.to_string());
    let files = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    // Bodies alone lie in a folder of their own, which other tests read.
    let texts = files.filter(|path| path.is_file()).map(|path| fs::read_to_string(path).unwrap());
    texts.map(|t| t.split_once('\n').map(|(k, t)| (k.to_owned(), t.to_owned())).unwrap()).collect()
}

#[test]
fn schema_1_loads_as_it_was_saved() {
    let mut store = MemoryStore::new();
    for (key, text) in released(1) {
        store.write(&key, &text).unwrap();
    }
    let kept = store.clone();
    let mut archive = Archive::new(store);
    let loaded = archive.load().unwrap();
    assert_eq!(loaded.set_aside, []);
    assert_eq!(archive.store(), &kept, "looking changes nothing");
    let found: Vec<_> = loaded
        .records
        .iter()
        .map(|r| (r.key().to_string(), r.at.to_string(), r.deleted, r.body.as_str()))
        .collect();
    let expected = [
        (
            "fermentside/batch/7Q-a1/3/00000000000000ff",
            "2026-03-29T12:00+02:00",
            false,
            "{\"name\":\"Brown ale, drier\"}",
        ),
        (
            "fermentside/gear_item/g/2/7777777777777777",
            "2026-05-01T10:01+02:00",
            false,
            "{\"litres\":25}",
        ),
        (
            "fermentside/gear_item/h/3/aaaaaaaaaaaaaaaa",
            "2026-05-02T10:00+02:00",
            false,
            "{\"litres\":5}",
        ),
        (
            "fermentside/reading/r1/1/1111111111111111",
            "2024-02-29T23:59-03:30",
            false,
            "{\"note\":\"18 \u{b0}C, \u{5564}\u{9152} \u{1f37a}\",\n \"gravity\":1.012}\n",
        ),
        ("fermentside/reading/r2/4/2222222222222222", "2026-04-01T07:00+00:00", true, ""),
    ];
    let expected = expected.map(|(k, at, d, b)| (k.to_owned(), at.to_owned(), d, b));
    assert_eq!(found, expected);
    assert_eq!(loaded.conflicts.len(), 1);
    assert_eq!(loaded.conflicts[0].others[0].body, "{\"litres\":23}");
    let before: Vec<_> =
        archive.earlier("batch", "7Q-a1").unwrap().into_iter().map(|r| r.body).collect();
    assert_eq!(before, ["{\"name\":\"Brown ale, dry\"}", "{\"name\":\"Brown ale\"}"]);
}

#[test]
fn schema_1_is_still_what_is_written() {
    for (key, text) in released(1) {
        let revision = Revision::decode(&text).unwrap();
        assert_eq!(revision.encode().unwrap(), text, "{key}");
    }
}
