//! A cellar that is on the phone already, made by the types that the page keeps, on a day that stands still.

use serde_json::json;

use fermentside::advice::family::Family;
use fermentside::app::{Event, Keeper};
use fermentside::batch::{BatchHeading, Change, Entry, HydrometerItem, Id, PitchRecord, Reading};
use fermentside::quantity::{Celsius, Hours, Litres, Measured, Moment};
use fermentside::store::{MemoryStore, Store, Token};

use crate::phone::Phone;
use crate::records::{self, id};

/// The day it is, on a phone whose clock stands still.
const TODAY: &str = "2026-11-27T10:00+00:00";

/// A clock that stands still there.
const STILL: &str = "
  const There = Date, now = There.parse('2026-11-27T10:00:00Z');
  window.Date = class extends There {
    constructor(...given) { given.length ? super(...given) : super(now); }
    static now() { return now; }
  };";

fn ago(days: f64) -> Moment {
    let today: Moment = TODAY.parse().expect("a moment");
    today.after(Hours::nearest(-24.0 * days))
}

/// A batch of 20 litres that began so many days ago.
fn heading(name: &str, days: f64) -> Entry {
    Entry::Batch(BatchHeading {
        name: name.to_owned(),
        started: ago(days),
        volume: Litres::literal(20.0),
        family: Family::CleanAle,
        packet: None,
        expected_start: None,
        expected_end: None,
        hydrometer: HydrometerItem::usual_id(),
        target: None,
        own_ends: vec![],
    })
}

fn reading(batch: &str, days: f64, sg: f64) -> Reading {
    let sg = (sg * 1000.0).round() / 1000.0;
    let beer = Some(Celsius::literal(19.5 + 0.5 * (days * 2.0).sin()));
    Reading { beer, ..records::reading(batch, ago(days), sg) }
}

/// A bitter of a clean ale yeast from 1.048, pitched so many days ago, with so many readings from then on.
pub fn bitter(name: &str, days: f64, readings: u32) -> Vec<(Id, Entry)> {
    let own = |part: &str| id(&format!("{name}-{part}"));
    let mut all = vec![(id(name), heading("Cellar bitter", days + 0.1))];
    all.push((own("p"), Entry::Pitch(PitchRecord::new(id(name), ago(days)))));
    for n in 0..readings {
        // From the yeast's going in to an hour ago.
        let since = (days - 0.05) * f64::from(n) / f64::from(readings.max(2) - 1);
        let sg = 1.0105 + 0.0375 * (-since / 1.9).exp();
        all.push((own(&format!("r{n}")), Entry::Reading(reading(name, days - since, sg))));
    }
    all
}

/// A batch of that name, pitched so many days ago, with these readings: days ago and gravity.
pub fn read_as(name: &str, days: f64, readings: &[(f64, f64)]) -> Vec<(Id, Entry)> {
    let mut all = bitter(name, days, 0);
    for (n, (ago, sg)) in readings.iter().enumerate() {
        all.push((id(&format!("{name}-r{n}")), Entry::Reading(reading(name, *ago, *sg))));
    }
    all
}

/// The same, where something of each reading is otherwise.
pub fn but(mut all: Vec<(Id, Entry)>, otherwise: fn(&mut Reading)) -> Vec<(Id, Entry)> {
    for (_, entry) in &mut all {
        if let Entry::Reading(reading) = entry {
            otherwise(reading);
        }
    }
    all
}

/// A batch in bottles for so many days.
pub fn in_bottles(name: &str, days: f64) -> Vec<(Id, Entry)> {
    let start = days + 20.0;
    let read = [(start, 1.050), (days + 15.0, 1.018), (days + 8.0, 1.011), (days + 2.0, 1.011)];
    let mut all = read_as(name, start, &read);
    let bottled = records::bottling(name, ago(days));
    all.push((id(&format!("{name}-bottled")), Entry::Bottling(bottled)));
    all
}

/// Batches at each stage: one fallen level, one in bottles, one whose wort still cools.
pub fn full() -> Vec<(Id, Entry)> {
    let mut all = bitter("b", 9.0, 12);
    let mut stout = bitter("s", 30.0, 12);
    let mut pale = bitter("o", 60.0, 6);
    for (batch, name) in [(&mut stout, "Hedgerow stout"), (&mut pale, "Harvest pale")] {
        if let Some((_, Entry::Batch(heading))) = batch.first_mut() {
            name.clone_into(&mut heading.name);
        }
    }
    pale.push((id("o-bottled"), Entry::Bottling(records::bottling("o", ago(5.0)))));
    all.extend(stout);
    all.extend(pale);
    all.push((id("w"), heading("Winter mild", 0.05)));
    all
}

impl Phone {
    /// Stands the clock still on one day, in one zone, with nothing that moves by itself.
    pub async fn stands_still(&self) {
        let source = json!({ "source": STILL });
        self.devtools("Page.addScriptToEvaluateOnNewDocument", source).await;
        self.devtools("Emulation.setTimezoneOverride", json!({ "timezoneId": "UTC" })).await;
    }

    /// Puts these things into the phone's store in place of what is there, and opens the page anew.
    pub async fn holds(&self, entries: Vec<(Id, Entry)>) {
        // From a place beside the page, which would write back what is taken from under it.
        let page = self.run("return location.href").await;
        let beside = self.run("return new URL('icon-192.png', location.href).href").await;
        let clear = "{ localStorage.clear();
            const gone = (name) => new Promise((go) => {
              const asked = indexedDB.deleteDatabase(name);
              asked.onsuccess = asked.onerror = asked.onblocked = go;
            });
            for (const { name } of await indexedDB.databases()) await gone(name);
            return true; }";
        let goto = |address: &serde_json::Value| address.as_str().unwrap_or_default().to_owned();
        self.driver().goto(goto(&beside)).await.expect("the icon is there");
        self.settle(clear).await;
        self.texts(entries, 0).await;
        self.open(&goto(&page)).await;
    }

    /// Saves the first of these things once more, under another name and knowing nothing of the first.
    pub async fn differs(&self, mut entries: Vec<(Id, Entry)>, name: &str) {
        entries.truncate(1);
        if let Some((_, Entry::Batch(heading))) = entries.first_mut() {
            name.clone_into(&mut heading.name);
        }
        self.texts(entries, 1000).await;
        self.reload().await;
    }

    /// Writes things beside what is there; their tokens begin with a number of their own.
    async fn texts(&self, entries: Vec<(Id, Entry)>, first: u64) {
        let mut keeper = Keeper::new(MemoryStore::new());
        keeper.load().expect("an empty store is read");
        for ((id, entry), at) in entries.into_iter().zip(first..) {
            let change = Change::put(id, entry);
            let mut token = || Token::from_random(at.to_be_bytes());
            let kept = keeper.save(1, (&change, &change), ago(0.01), &mut token);
            assert_eq!(kept, Event::Saved(1));
        }
        let store = keeper.store();
        let keys = store.keys().expect("the keys are there");
        let text = |key: &String| (key.clone(), json!(store.read(key).expect("it is read")));
        let texts: serde_json::Map<_, _> = keys.iter().map(text).collect();
        self.run(&format!("Object.assign(localStorage, {})", json!(texts))).await;
    }
}
