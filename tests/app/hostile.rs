//! Every stored field set to every hostile value in turn: what this version reads of it, every screen bears.

use crate::paper::{Paper, Shelf, brewing_day};
use fermentside::app::Keeper;
use fermentside::batch::{Change, Edit, Entry, Id, Kind};
use fermentside::quantity::{Moment, Zone};
use fermentside::store::Token;
use serde_json::{Value, json};
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

/// The batch of the released bodies, and its hydrometer.
const BATCH: &str = "7Q-a1";

fn hostile() -> Vec<Value> {
    let numbers = [
        0.0,
        -0.0,
        1.0,
        -1.0,
        0.5,
        1e-308,
        5e-324,
        1e308,
        -1e308,
        1e15,
        4_294_967_295.0,
        4_294_967_296.0,
        1.000_000_1,
        0.999_999,
        100.0,
        -273.15,
        1.7,
        30.0,
        1e7,
    ];
    let texts = [
        "",
        " ",
        "a",
        "\u{202E}\u{2067}",
        "<script>alert(1)</script>",
        "nan",
        "٠٫٥",
        "\u{0}",
        "🍺🍺🍺",
        "9999-12-31T23:59-12:00",
        "9999-12-31T23:59+14:00",
        "0001-01-01T00:00+14:00",
        "0001-01-01T00:00-12:00",
        "2026-02-28T23:59+00:00",
        "1970-01-01T00:00+00:00",
        "main",
        "satellite",
        "unknown",
        "plato",
        "none",
    ];
    let mut all: Vec<Value> = numbers.iter().map(|number| json!(number)).collect();
    all.extend([json!(u64::MAX), json!(i64::MIN), json!(u32::MAX), json!(0), json!(5), json!(99)]);
    all.extend(texts.iter().map(|text| json!(text)));
    all.extend([
        json!("x".repeat(400)),
        json!("x".repeat(60)),
        Value::Null,
        json!(true),
        json!(false),
    ]);
    all.extend([json!([]), json!({}), json!([1]), json!({"value": 1e308, "sigma": 1e308})]);
    all
}

/// Every text that comes of putting a value in place of one field, wherever it stands.
fn each_field(whole: &Value, of: &Value, path: &mut Vec<String>, all: &mut Vec<(String, String)>) {
    let inner: Vec<(String, &Value)> = match of {
        Value::Object(fields) => fields.iter().map(|(name, value)| (name.clone(), value)).collect(),
        Value::Array(items) => items.iter().enumerate().map(|(n, v)| (n.to_string(), v)).collect(),
        _ => vec![],
    };
    for (name, value) in inner {
        path.push(name);
        let pointer = format!("/{}", path.join("/"));
        for hostile in hostile() {
            let mut changed = whole.clone();
            *changed.pointer_mut(&pointer).expect("it is there") = hostile.clone();
            let mut what = format!("{pointer} = {hostile}");
            what.truncate(what.char_indices().nth(80).map_or(what.len(), |(at, _)| at));
            all.push((what, changed.to_string()));
        }
        each_field(whole, value, path, all);
        path.pop();
    }
}

fn body(name: &str) -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released/1/bodies");
    fs::read_to_string(folder.join(format!("{name}.json"))).expect("a body")
}

fn entry(kind: Kind, text: &str) -> Option<(Id, Entry)> {
    let id = match kind {
        Kind::Batch => BATCH,
        Kind::Hydrometer => "6879-h1",
        Kind::Settings => "73657474696e6773",
        _ => kind.name(),
    };
    Some((Id::new(id).ok()?, Entry::from_text(kind, text).ok()?))
}

/// A phone with one of each, the hostile one in its place; the journal takes it as it takes what is stored.
fn phone(hostile: (Id, Entry), now: Moment, zone: &Zone) -> Paper {
    let usual = [
        (Kind::Hydrometer, "hydrometer"),
        (Kind::Batch, "batch"),
        (Kind::Pitch, "pitch"),
        (Kind::Reading, "reading"),
        (Kind::Bottling, "bottling-judged"),
        (Kind::Opening, "opening"),
        (Kind::Bottles, "bottles"),
        (Kind::Sugar, "sugar"),
    ];
    let kind = hostile.1.kind();
    let usual = usual.iter().filter(|(other, _)| *other != kind);
    let usual = usual.filter_map(|(kind, name)| entry(*kind, &body(name)));
    let edits = std::iter::once(hostile).chain(usual).map(|(id, entry)| Edit::Put(id, entry));
    let shelf = Shelf::of_others();
    let mut keeper = Keeper::new(shelf.clone());
    keeper.load().expect("it is read");
    let change = Change::all(edits);
    let mut count = 0_u64;
    let mut token = || {
        count += 1;
        Token::from_random(count.to_be_bytes())
    };
    keeper.save(1, (&change, &Change::default()), brewing_day(), &mut token);
    Paper::with(shelf, now, zone.clone(), 7)
}

/// Looks at every place, with everything folded away opened. No figure is none, unless the brewer `named_so`.
fn looks_round(phone: &mut Paper, named_so: bool) {
    let stages = ["pitch", "watch", "bottle", "open", "edit"];
    let places = ["#/now".to_owned(), "#/batches".to_owned(), "#/gear".to_owned()];
    let places = places.into_iter().chain(stages.map(|stage| format!("#/batch/{BATCH}/{stage}")));
    for place in places {
        phone.go(&place);
        let text = phone.text();
        assert!(named_so || !text.contains("NaN"), "{place}: {text}");
    }
}

fn wish(name: &str, usual: usize) -> usize {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

#[test]
fn whatever_stands_in_a_stored_field_every_screen_is_shown() {
    // One in so many: all of them with HOSTILE=1.
    let one_in = wish("HOSTILE", 4);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/released/1/bodies");
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("the bodies")
        .filter_map(|file| Some(file.ok()?.path().file_stem()?.to_str()?.to_owned()))
        .collect();
    names.sort();
    let (mut tried, mut read, mut stopped) = (0, 0, vec![]);
    for name in names {
        let kind = name.split('-').next().and_then(Kind::named).expect("a kind");
        let whole: Value = serde_json::from_str(&body(&name)).expect("JSON");
        let mut all = vec![];
        each_field(&whole, &whole, &mut vec![], &mut all);
        for (what, text) in all {
            tried += 1;
            let Some(hostile) = entry(kind, &text) else { continue };
            read += 1;
            if read % one_in != 0 {
                continue;
            }
            let bears = catch_unwind(AssertUnwindSafe(|| {
                let named_so = what.ends_with("= \"NaN\"");
                looks_round(&mut phone(hostile, brewing_day(), &Zone::fixed(60)), named_so);
            }));
            if bears.is_err() {
                stopped.push(format!("{name}: {what}"));
            }
        }
    }
    println!("{tried} hostile texts, {read} of them read, one in {one_in} looked at");
    assert!(read > 500, "{read}");
    assert!(stopped.is_empty(), "{} stopped the page:\n{}", stopped.len(), stopped.join("\n"));
}

#[test]
fn times_at_the_edge_of_the_calendar_stop_no_screen() {
    let edges = [
        "0001-01-01T00:00+14:00",
        "0001-01-01T00:00-12:00",
        "0001-01-02T12:00+00:00",
        "1969-12-31T23:59-08:00",
        "9999-12-30T12:00+00:00",
        "9999-12-31T23:59-08:00",
        "9999-12-31T23:59+14:00",
    ];
    let zones = [Zone::fixed(60), Zone::fixed(-480), Zone::fixed(840), Zone::fixed(-720)];
    for edge in edges {
        let at: Moment = edge.parse().expect("a moment");
        for zone in &zones {
            for (kind, name, field) in [
                (Kind::Batch, "batch", "started"),
                (Kind::Pitch, "pitch", "at"),
                (Kind::Reading, "reading", "at"),
                (Kind::Bottling, "bottling-judged", "at"),
                (Kind::Opening, "opening", "at"),
            ] {
                let mut whole: Value = serde_json::from_str(&body(name)).expect("JSON");
                whole[field] = json!(edge);
                let hostile = entry(kind, &whole.to_string()).expect("it is read");
                // Looked at today, and by a phone whose own clock stands there.
                for now in [brewing_day(), zone.shown(at)] {
                    let mut phone = phone(hostile.clone(), now, zone);
                    looks_round(&mut phone, false);
                    phone.hours(0.5);
                }
            }
        }
    }
}
