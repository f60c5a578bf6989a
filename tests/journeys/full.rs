//! A store with twenty years in it: nothing is slow, nothing is lost, and old batches make room.

use fermentside::store::Revision;
use serde_json::{Map, Value, json};

use crate::brewing::opened;
use crate::keeping::{FILL, FREE};
use crate::script::HANDS;
use crate::start_up::say;

/// As many as a browser has room for.
const BATCHES: usize = 460;
const READINGS: usize = 20;
/// A save that is refused must not make anyone wait, milliseconds.
const REFUSED: f64 = 100.0;
/// Fifty batches with their logs are rarely taken away, and the page says that it does so, milliseconds.
const TAKEN_AWAY: f64 = 10_000.0;

/// Of what the page stored of one batch: that batch again, so many years before, with so many readings.
fn again(stored: &Map<String, Value>, n: usize, year: i32) -> Map<String, Value> {
    let back = 1 + n as i32 / 24;
    let mut all = Map::new();
    let mut put = |mut revision: Revision, id: String, old: &str| {
        let body = &revision.record.body;
        let mut body = body
            .replace(old, &format!("{old}-{n}"))
            .replace("Cellar bitter", &format!("Bitter {n}"));
        for of in [year, year - 1] {
            body = body.replace(&format!("\"{of}-"), &format!("\"{}-", of - back));
        }
        revision.record.body = body.replace("-02-29T", "-02-28T");
        revision.record.id = id;
        let text = revision.encode().expect("it is a record");
        all.insert(revision.record.key().to_string(), json!(text));
    };
    let records: Vec<Revision> = stored
        .iter()
        .filter(|(key, _)| key.starts_with("fermentside/"))
        .map(|(_, text)| Revision::decode(text.as_str().unwrap()).expect("it is whole"))
        .filter(|revision| revision.record.kind != "settings")
        .collect();
    let old = records.iter().find(|one| one.record.kind == "batch").expect("a batch");
    let old = old.record.id.clone();
    let mut readings = 0;
    for revision in records.iter().cycle() {
        let is_reading = revision.record.kind == "reading";
        if readings == READINGS || (!is_reading && readings > 3) {
            if readings == READINGS {
                break;
            }
            continue;
        }
        readings += usize::from(is_reading);
        let id = if revision.record.kind == "batch" {
            format!("{old}-{n}")
        } else {
            format!("{}-{n}-{readings}", revision.record.id)
        };
        put(revision.clone(), id, &old);
    }
    all
}

#[tokio::test]
async fn with_460_batches_a_refused_save_is_quick_and_old_ones_make_room() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    phone.go(&format!("{batch}bottle")).await;
    phone.bottles().await;
    let stored = phone.run("return { ...localStorage }").await;
    let year = phone.run("return new Date().getFullYear()").await.as_i64().unwrap() as i32;
    for some in (0..BATCHES).collect::<Vec<_>>().chunks(40) {
        let mut chunk = Map::new();
        for n in some {
            chunk.extend(again(stored.as_object().unwrap(), *n, year));
        }
        phone.run(&format!("Object.assign(localStorage, {})", Value::Object(chunk))).await;
    }
    phone.reload().await;
    let opening = phone.run("return performance.now()").await.as_f64().unwrap();
    phone.go("#/gear").await;
    phone.sees("of the room in this browser is used").await;

    phone.go("#/batches/new").await;
    phone.type_into("Name", "One more").await;
    phone.run(FILL).await;
    phone.type_into("Volume in the fermenter", "20").await;
    phone.sees("There is hardly any room left").await;
    let script = format!(
        "{{ {HANDS}
         const times = [];
         for (let n = 0; n < 7; n += 1) {{
           put('Name', `One more ${{n}}`);
           await soon();
           const from = performance.now();
           press('Start');
           await soon();
           times.push(performance.now() - from);
           if (!document.body.innerText.includes('Not saved')) throw new Error(document.body.innerText);
         }}
         return times; }}"
    );
    let found = phone.settle(&script).await;
    let times = found.as_array().unwrap_or_else(|| panic!("{found}"));
    let times: Vec<f64> = times.iter().filter_map(Value::as_f64).collect();
    // The quickest, since the machine may be busy with something else.
    let quickest = times.iter().copied().fold(f64::INFINITY, f64::min);
    say(&format!(
        "with {BATCHES} batches: opened after {opening:.0} ms; a refused save takes {quickest:.0} ms ({times:.0?})"
    ));
    assert!(quickest < REFUSED, "{times:?} ms");

    phone.tap("Make room in Gear").await;
    phone.sees("Old batches").await;
    phone.tap("Copy 28 batches out").await;
    phone.sees_no("Take 28 batches away").await;
    phone.tap("Hand the copy over").await;
    phone.sees("28 batches take").await;
    let script = format!(
        "{{ {HANDS}
         const from = performance.now();
         press('Take 28 batches away');
         await until('they are gone', () => document.body.innerText.includes('28 batches taken away'));
         return performance.now() - from; }}"
    );
    let took = phone.settle(&script).await;
    let took = took.as_f64().unwrap_or_else(|| panic!("{took}"));
    say(&format!("28 batches are taken away from a full store in {took:.0} ms"));
    assert!(took < TAKEN_AWAY, "{took} ms");

    // There is room again, though what filled the store is still there.
    phone.go("#/batches/new").await;
    phone.tap("Start").await;
    phone.is_at("/pitch").await;
    phone.reload().await;
    let count = "const ids = Object.keys(localStorage).filter((key) => key.startsWith('fermentside/batch/'))
        .filter((key) => !/\"deleted\":true/.test(localStorage[key])).map((key) => key.split('/')[2]);
        return new Set(ids).size;";
    let left = phone.run(count).await.as_u64().unwrap();
    assert!(left >= 414, "{left}");
    phone.run(FREE).await;
    phone.is_well().await;
}
