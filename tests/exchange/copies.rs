//! Copies: written by the published schema, read back as they were, and refused as a whole.

use fermentside::batch::{Change, Entry, Id, Journal, Kind, Settings, Theme};
use fermentside::exchange::bring::{LeftOut, compare};
use fermentside::exchange::copy::{
    Copy, DEEPEST, LONGEST, LONGEST_RECORD, MOST, Refused, Thing, read, write,
};
use fermentside::quantity::Moment;
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_owned()
}

fn at(text: &str) -> Moment {
    text.parse().expect("a moment")
}

fn schema() -> jsonschema::Validator {
    let text = fs::read_to_string(root().join("src/exchange/copy.schema.json")).expect("a schema");
    let schema: Value = serde_json::from_str(&text).expect("JSON");
    jsonschema::draft202012::meta::validate(&schema).expect("a schema by its own rules");
    jsonschema::validator_for(&schema).expect("a schema")
}

pub fn thing(kind: &str, id: &str, body: &str) -> Thing {
    Thing {
        kind: kind.to_owned(),
        id: id.to_owned(),
        revision: 1,
        token: "00000000000000a1".to_owned(),
        replaces: vec![],
        saved: at("2026-03-07T09:00+01:00"),
        body: body.to_owned(),
    }
}

/// A thing of every form ever released.
fn released() -> Vec<Thing> {
    let mut files: Vec<PathBuf> = fs::read_dir(root().join("tests/released/1/bodies"))
        .expect("a folder")
        .map(|file| file.expect("a file").path())
        .collect();
    files.sort();
    let all = files.iter().map(|file| {
        let name = file.file_stem().expect("a name").to_str().expect("text");
        let kind = name.split('-').next().expect("a kind");
        let body = fs::read_to_string(file).expect("text");
        thing(kind, name, body.trim_end())
    });
    all.collect()
}

pub fn copy(things: Vec<Thing>) -> Copy {
    let made = at("2026-11-27T12:00+01:00");
    Copy { made, batch: None, things, beside: vec![], set_aside: vec![] }
}

const READING: &str = r#"{"batch":"b","at":"2026-03-09T18:00+01:00","vessel":"main","as_read":{"specific":1.014},"condition":"still","hydrometer":"h"}"#;
const BATCH: &str = r#"{"name":"Kit","started":"2026-03-01T09:30+01:00","volume":20.5,"family":"unknown","hydrometer":"h"}"#;

#[test]
fn what_is_written_is_as_the_schema_says_and_reads_back_the_same() {
    let mut all = copy(released());
    assert!(all.things.len() > 20, "{} forms", all.things.len());
    all.batch = Some("b".to_owned());
    all.beside = vec![thing("reading", "r", READING)];
    all.set_aside = vec![("fermentside/odd".to_owned(), "a \"text\"\n of no form".to_owned())];
    all.things[0].replaces = vec!["00000000000000a0".to_owned()];
    let text = write(&all).expect("it is written");
    let value: Value = serde_json::from_str(&text).expect("JSON");
    let wrong: Vec<_> = schema().iter_errors(&value).map(|e| e.to_string()).collect();
    assert!(wrong.is_empty(), "{wrong:?}");
    assert_eq!(read(&text), Ok(all.clone()));
    assert_eq!(read(&format!("\u{FEFF}{text}")), Ok(all));
    // A person reads a line for a record and one for what it says.
    assert!(text.lines().all(|line| line.len() < 1200), "{text}");
}

#[test]
fn the_schema_refuses_what_the_page_refuses() {
    let good = write(&copy(vec![thing("reading", "r", READING)])).expect("it is written");
    let schema = schema();
    for (path, wrong) in [
        ("/format", json!("another")),
        ("/version", json!(2)),
        ("/records/0/kind", json!("Reading")),
        ("/records/0/id", json!("../r")),
        ("/records/0/revision", json!(0)),
        ("/records/0/token", json!("A1")),
        ("/records/0/saved", json!("yesterday")),
        ("/records/0/is", json!([])),
        ("/records", json!({})),
    ] {
        let mut value: Value = serde_json::from_str(&good).expect("JSON");
        *value.pointer_mut(path).expect("it is there") = wrong;
        assert!(!schema.is_valid(&value), "{path} by the schema");
        assert!(read(&value.to_string()).is_err(), "{path} by the page");
    }
}

#[test]
fn fields_of_a_later_version_come_back() {
    let body = READING.replace("{\"batch\"", "{\"smell\":{\"of\":[\"bread\",1e2]},\"batch\"");
    let text = write(&copy(vec![thing("reading", "r", &body)])).expect("it is written");
    let back = read(&text).expect("it is read");
    let (_, unknown) = Entry::read(Kind::Reading, &back.things[0].body).expect("a reading");
    let (_, before) = Entry::read(Kind::Reading, &body).expect("a reading");
    assert!(!unknown.is_empty());
    assert_eq!(unknown, before);
}

#[test]
fn what_is_no_copy_is_refused_with_its_reason() {
    let good = write(&copy(vec![thing("reading", "r", READING), thing("batch", "b", BATCH)]))
        .expect("it is written");
    let deep = "[".repeat(DEEPEST + 1);
    let many: Vec<Thing> = (0..=MOST).map(|n| thing("note", &n.to_string(), "{}")).collect();
    let long = format!("{{\"note\":\"{}\"}}", "x".repeat(LONGEST_RECORD));
    for (text, why) in [
        (String::new(), Refused::Empty),
        (" \n\u{FEFF}".replace('\u{FEFF}', ""), Refused::Empty),
        ("x".repeat(LONGEST + 1), Refused::TooLong),
        (deep, Refused::TooDeep),
        ("half a file {".to_owned(), Refused::NoJson),
        (good[..good.len() / 2].to_owned(), Refused::NoJson),
        (good.replace("1.014", "NaN"), Refused::NoJson),
        (good.replace("1.014", "1e999"), Refused::NoJson),
        ("[]".to_owned(), Refused::NotACopy),
        ("{}".to_owned(), Refused::NotACopy),
        (good.replace("fermentside-copy", "something"), Refused::NotACopy),
        (good.replace("\"version\": 1", "\"version\": 0"), Refused::NotACopy),
        (good.replace("\"version\": 1", "\"version\": 1, \"version\": 1"), Refused::NotACopy),
        (good.replace("\"version\": 1", "\"version\": 7"), Refused::Newer(7)),
        (write(&copy(many)).expect("it is written"), Refused::TooMany),
        (good.replace("\"id\": \"b\"", "\"id\": \"<b>\""), Refused::BadRecord(2)),
        (write(&copy(vec![thing("note", "n", &long)])).expect("written"), Refused::BadRecord(1)),
        (
            write(&copy(vec![thing("batch", "b", BATCH), thing("batch", "b", "{}")]))
                .expect("written"),
            Refused::Twice(2),
        ),
    ] {
        let told = text.chars().take(60).collect::<String>();
        assert_eq!(read(&text), Err(why), "{told}");
    }
}

fn journal(things: &[Thing]) -> Journal {
    Journal::of(things.iter().map(|thing| {
        let kind = Kind::named(&thing.kind).expect("a kind");
        (Id::new(&*thing.id).expect("an id"), Entry::from_text(kind, &thing.body).expect("read"))
    }))
}

fn version(revision: u32, token: u8, hour: u8, body: &str) -> Thing {
    Thing {
        revision,
        token: format!("{token:016x}"),
        saved: at(&format!("2026-03-07T{hour:02}:00+01:00")),
        ..thing("reading", "r", body)
    }
}

#[test]
fn the_later_saving_wins_and_a_true_difference_stays() {
    let other = READING.replace("1.014", "1.020");
    let brought = |copied: Thing, mut here: Thing, replaced: Vec<&str>| {
        here.replaces = replaced.into_iter().map(str::to_owned).collect();
        let stands = [thing("batch", "b", BATCH), here];
        let found = compare(&[copied], &stands, &journal(&stands));
        assert!(found.left_out.is_empty() && found.added.is_empty());
        (found.changed.len(), found.older, found.differ.len(), found.same)
    };
    let a = |revision, hour| version(revision, 1, hour, READING);
    let b = |revision, hour| version(revision, 2, hour, &other);
    let is = |copied, here| brought(copied, here, vec![]);
    assert_eq!(is(a(1, 9), version(5, 9, 9, READING)), (0, 0, 0, 1), "the same");
    assert_eq!(is(b(2, 10), a(1, 9)), (1, 0, 0, 0), "later in time and number");
    assert_eq!(is(b(1, 9), a(2, 10)), (0, 1, 0, 0), "earlier in both");
    assert_eq!(is(b(2, 9), a(2, 9)), (0, 0, 1, 0), "neither");
    assert_eq!(is(b(3, 8), a(2, 9)), (0, 0, 1, 0), "a clock that went wrong");
    assert_eq!(is(b(1, 12), a(2, 9)), (0, 0, 1, 0), "both went on from the first");
    assert_eq!(brought(b(9, 12), a(2, 9), vec!["0000000000000002"]), (0, 1, 0, 0), "replaced here");
    let mut known = b(2, 9);
    known.replaces = vec!["0000000000000001".to_owned()];
    assert_eq!(is(known, a(2, 9)), (1, 0, 0, 0), "known to replace it");
    assert_eq!(is(version(7, 1, 20, &other), a(2, 9)), (0, 0, 1, 0), "one saving says two things");
}

#[test]
fn each_record_passes_its_own_checks_or_is_left_out() {
    let hot = READING.replace("1.014", "9.9");
    let unseen = BATCH.replace("Kit", "\u{200B}\u{202E}");
    let long = BATCH.replace("Kit", &"x".repeat(400));
    let things = vec![
        thing("reading", "r", READING),
        thing("reading", "hot", &hot),
        thing("batch", "unseen", &unseen),
        thing("batch", "long", &long),
        thing("from_the_future", "x", "{}"),
        thing("batch", "b", BATCH),
    ];
    let found = compare(&things, &[], &Journal::default());
    assert_eq!(found.added.len(), 2, "{found:?}");
    let numbers: Vec<_> = found.left_out.iter().map(|(at, _)| *at).collect();
    assert_eq!(numbers, [2, 5, 3, 4]);
    assert!(matches!(found.left_out[0].1, LeftOut::Unreadable));
    assert!(matches!(found.left_out[2].1, LeftOut::Rejected(_)));
    // The batch comes before its reading, wherever it stands in the file.
    let mut journal = Journal::default();
    assert!(journal.apply(found.change()).is_ok());
    assert_eq!(journal.readings(&Id::new("b").expect("an id")).len(), 1);
}

#[test]
fn the_preferences_of_another_phone_do_not_replace_ones_own() {
    let settings = |theme, revision, hour| {
        let settings = Settings { theme, ..Settings::default() };
        let body = Entry::Settings(settings).to_text().expect("text");
        let at = version(revision, revision as u8, hour, &body);
        Thing { kind: "settings".to_owned(), id: Settings::id().as_str().to_owned(), ..at }
    };
    let here = [settings(Theme::Night, 1, 9)];
    let found = compare(&[settings(Theme::Day, 5, 20)], &here, &journal(&here));
    assert_eq!((found.changed.len(), found.differ.len()), (0, 1));
    let found = compare(&[settings(Theme::Day, 5, 20)], &[], &Journal::default());
    assert_eq!(found.added.len(), 1);
    let mut journal = journal(&here);
    let undo = journal.apply(Change::all([])).expect("nothing");
    assert!(undo.edits().is_empty());
}
