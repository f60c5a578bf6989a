//! How long one waits: for the answer to a key, for a long log, and for a full cellar.
//!
//! The figures are said; the bounds are wide, since the machine may be busy with other things.

use fermentside::store::{Key, Revision};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use thirtyfour::Key as Press;

use crate::brewing::opened;
use crate::cellar::bitter;
use crate::phone::Phone;
use crate::server::Server;
use crate::start_up::{NOTE, SLOWER, median, say, slow_down, start};

/// Milliseconds, several times what a quiet machine needs: as a rule, and at worst.
const AS_A_RULE: f64 = 600.0;
const AT_WORST: f64 = 2500.0;
/// The same for a verdict of thirty and of two hundred readings, at full speed.
const VERDICT: f64 = 20.0;
const LONG_VERDICT: f64 = 60.0;

/// Says how long something took, and that it was not long.
fn is_quick(what: &str, times: Vec<f64>) {
    let most = worst(&times);
    let middle = median(times);
    say(&format!("{what}, at {SLOWER} x slower: median {middle:.1} ms, worst {most:.1} ms"));
    assert!(middle < AS_A_RULE && most < AT_WORST, "{what}: {middle} ms, {most} ms");
}

/// In the page: how long something done takes until the screen shows what came of it, laid out.
const TIMED: &str = "
  const turn = () => new Promise((go) => setTimeout(go));
  window.timed = async (act) => {
    let shown = 0, changes = 0;
    const look = new MutationObserver(() => {
      document.body.getBoundingClientRect();
      shown = performance.now();
      changes += 1;
    });
    look.observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true });
    const from = performance.now();
    await act();
    const done = performance.now();
    for (let n = 0; n < 3; n += 1) await turn();
    look.disconnect();
    return { changes, took: Math.max(done, shown) - from };
  };";

/// In the page: how long it takes from each key until the answer that stands at `.answer` has changed.
const KEYS: &str = "
  window.keys = [];
  const look = new MutationObserver(() => {
    document.body.getBoundingClientRect();
    const key = window.keys.at(-1);
    if (key) key.took = performance.now() - key.at;
  });
  look.observe(document.querySelector('.answer'), { subtree: true, childList: true, characterData: true });
  addEventListener('keydown', (event) => window.keys.push({ at: event.timeStamp, took: null }), true);";

fn figures(found: &Value) -> Vec<f64> {
    found.as_array().unwrap_or_else(|| panic!("{found}")).iter().filter_map(Value::as_f64).collect()
}

fn worst(all: &[f64]) -> f64 {
    all.iter().copied().fold(0.0, f64::max)
}

/// A hundred keys into what has the attention: a digit on, a digit off, each once the last one is drawn, as
/// the quickest thumb does; else a key is charged with the drawing of the one before it.
async fn a_hundred_keys(phone: &Phone, field: &str) -> Vec<f64> {
    phone.type_into(field, "1.04").await;
    phone.says(".answer", "1.04").await;
    phone.run(KEYS).await;
    for n in 0..50 {
        phone.press((n % 9 + 1).to_string()).await;
        phone.draws().await;
        phone.press(Press::Backspace).await;
        phone.draws().await;
    }
    let times = figures(&phone.run("return window.keys.map((key) => key.took)").await);
    assert_eq!(times.len(), 100, "each key has its answer");
    times
}

#[tokio::test]
async fn each_key_has_its_answer_at_once() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    slow_down(&phone, SLOWER).await;
    for (place, name) in
        [("#/bench/gravity", "the gravity sum"), (&format!("{batch}watch"), "Watch")]
    {
        phone.go(place).await;
        if place.ends_with("watch") {
            phone.tap("Add a reading").await;
            phone.type_into("Sample temperature", "20").await;
        }
        let times = a_hundred_keys(&phone, "Hydrometer reads").await;
        is_quick(&format!("100 keys into {name}"), times);
    }
}

/// What a phone has stored, by key.
async fn stored(phone: &Phone) -> BTreeMap<String, Revision> {
    let found = phone.run("return { ...localStorage }").await;
    let all = found.as_object().unwrap_or_else(|| panic!("{found}")).iter();
    let records = all.filter_map(|(key, text)| {
        let revision = Revision::decode_under(&Key::read(key)?, text.as_str()?).ok()?;
        Some((key.clone(), revision))
    });
    records.collect()
}

/// Puts records into the phone's store, beside what is there.
async fn put(phone: &Phone, records: &[Revision]) {
    let texts: BTreeMap<String, String> = records
        .iter()
        .map(|revision| (revision.record.key().to_string(), revision.encode().unwrap()))
        .collect();
    phone.run(&format!("Object.assign(localStorage, {})", json!(texts))).await;
}

/// The batch's records, made another batch's.
fn copied(of: &BTreeMap<String, Revision>, number: usize) -> Vec<Revision> {
    let parts = of.values().filter(|r| {
        ["batch", "pitch", "reading", "bottling", "opening"].contains(&&*r.record.kind)
    });
    let ids: Vec<String> = parts.clone().map(|r| r.record.id.clone()).collect();
    let mut all: Vec<Revision> = parts.cloned().collect();
    for revision in &mut all {
        for id in &ids {
            let other = format!("{id}-{number}");
            let quoted = |id: &str| format!("\"{id}\"");
            revision.record.body = revision.record.body.replace(&quoted(id), &quoted(&other));
        }
        revision.record.id = format!("{}-{number}", revision.record.id);
    }
    all
}

/// Does things in the page by turns, six times, and says how long each took: its name and the words on the
/// button that does it.
async fn by_turns(phone: &Phone, what: &str, turns: &[(&str, &str)]) {
    phone.run(TIMED).await;
    let script = format!(
        "{{ const turns = {};
            const took = turns.map(() => []);
            const named = (words) => [...document.querySelectorAll('main button, .undo button')]
              .find((b) => (b.ariaLabel ?? b.innerText).startsWith(words));
            for (let n = 0; n < 6; n += 1) for (const [at, [name, words]] of turns.entries()) {{
              // What was saved is called so once it is on the disk.
              for (let wait = 0; wait < 200 && !named(words); wait += 1) await new Promise(requestAnimationFrame);
              const button = named(words);
              if (!button) throw new Error(`nothing says ${{words}}`);
              const found = await window.timed(() => button.click());
              if (!found.changes) throw new Error(`${{name}} changes nothing`);
              took[at].push(found.took);
            }}
            return took; }}",
        json!(turns)
    );
    slow_down(phone, SLOWER).await;
    let found = phone.settle(&script).await;
    slow_down(phone, 1.0).await;
    assert!(found.is_array(), "{found}");
    for (at, (name, _)) in turns.iter().enumerate() {
        is_quick(&format!("{what}, {name}"), figures(&found[at]));
    }
}

#[tokio::test]
async fn a_log_of_sixty_readings_is_drawn_anew_at_once() {
    let (_server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    let records = stored(&phone).await;
    let first = records.values().find(|r| r.record.body.contains("1.048")).unwrap();
    let many = (10..67).map(|n| {
        let mut reading = first.clone();
        reading.record.id = format!("{}-{n}", first.record.id);
        // One a minute, on its way down.
        let gravity = format!("1.0{}", 47 - (n - 10) / 2);
        reading.record.body = first.record.body.replace("1.048", &gravity);
        reading
    });
    put(&phone, &many.collect::<Vec<_>>()).await;
    phone.reload().await;
    phone.go(&format!("{batch}watch")).await;
    assert_eq!(phone.count(".log-line").await, 5);
    phone.tap("55 earlier").await;
    phone.open_rows().await;
    assert_eq!(phone.count(".log-line").await, 60);
    let what = "Watch with 60 readings";
    let turns =
        [("a form opened", "Add a reading"), ("left", "Not now"), ("a step back", "Earlier")];
    by_turns(&phone, what, &turns).await;
    let turns = [("a reading deleted", "Delete the reading of"), ("taken back", "Undo")];
    by_turns(&phone, what, &turns).await;
    assert_eq!(phone.count(".log-line").await, 60);
    phone.is_well().await;
}

/// Starts of the page that are tried.
const STARTS: usize = 5;

/// Milliseconds by which a list of so many batches, of so many readings each, takes longer to be looked at for
/// the first time after a start, when each is judged, than later, when none is: the quickest of each, which other
/// work on the machine disturbs the least.
async fn first_look(phone: &Phone, batches: u32, readings: u32) -> f64 {
    let all = (0..batches).flat_map(|n| bitter(&format!("b{n}"), 25.0, readings));
    phone.go("#/bench/gravity").await;
    phone.holds(all.collect()).await;
    let (mut first, mut again) = (f64::MAX, f64::MAX);
    for _ in 0..STARTS {
        phone.reload().await;
        phone.run(TIMED).await;
        let found = phone
            .settle(
                "{ const gone = (to) => window.timed(() => new Promise((go) => {
                     addEventListener('hashchange', go, { once: true });
                     location.hash = to;
                   }));
                   const found = { judged: 0, took: [] };
                   for (let n = 0; n < 4; n += 1) {
                     found.took.push((await gone('#/batches')).took);
                     found.judged = document.querySelectorAll('.batch-row .heard').length;
                     await gone('#/bench/gravity');
                   }
                   return found; }",
            )
            .await;
        assert_eq!(found["judged"], json!(batches), "{found}");
        for (n, took) in figures(&found["took"]).into_iter().enumerate() {
            let quickest = if n == 0 { &mut first } else { &mut again };
            *quickest = quickest.min(took);
        }
    }
    first - again
}

/// What a start costs beside its verdicts is the same for a few batches and for many, so that their
/// difference is what the verdicts take.
#[tokio::test]
async fn a_verdict_takes_no_time_to_speak_of() {
    let (_server, phone) = opened().await;
    // The list shows twelve at once.
    let (few, many) = (4, 12);
    for (readings, most) in [(30, VERDICT), (200, LONG_VERDICT)] {
        let with_few = first_look(&phone, few, readings).await;
        let with_many = first_look(&phone, many, readings).await;
        let took = (with_many - with_few) / f64::from(many - few);
        say(&format!(
            "a verdict of {readings} readings: {took:.2} ms; {few} and {many} at a start {with_few:.0} and {with_many:.0} ms"
        ));
        assert!(took > 0.1 && took < most, "{took} ms");
    }
    phone.is_well().await;
}

/// In the page, before its first line: a clock that is moved on by hand.
const CLOCK: &str = "
  window.ahead = 0;
  window.ticks = [];
  const Today = Date;
  window.Date = class extends Today {
    constructor(...given) { given.length ? super(...given) : super(Today.now() + window.ahead); }
    static now() { return Today.now() + window.ahead; }
  };
  const wait = window.setInterval;
  window.setInterval = (what, each, ...rest) => {
    if (each === 30000) window.ticks.push(what);
    return wait(what, each, ...rest);
  };";

/// A cellar is looked at: how long the page takes to be usable, and to show the list.
async fn looked_at(phone: &Phone, server: &Server, batches: usize) -> (f64, f64) {
    let mut started = vec![];
    slow_down(phone, SLOWER).await;
    for _ in 0..5 {
        started.push(start(phone, &server.address()).await);
    }
    phone.run(TIMED).await;
    let found = phone
        .settle(
            "{ const gone = (to) => window.timed(() => new Promise((go) => {
                 addEventListener('hashchange', go, { once: true });
                 to();
               }));
               const took = { listed: [], opened: [], ticked: [] };
               for (let n = 0; n < 5; n += 1) {
                 took.listed.push((await gone(() => { location.hash = '#/batches'; })).took);
                 const row = document.querySelectorAll('.batch-row')[n];
                 took.opened.push((await gone(() => row.click())).took);
                 await gone(() => { location.hash = '#/now'; });
               }
               for (const place of ['#/now', '#/batches']) {
                 if (location.hash !== place) await gone(() => { location.hash = place; });
                 for (let n = 0; n < 5; n += 1) {
                   window.ahead += 60000;
                   took.ticked.push((await window.timed(() => window.ticks.forEach((tick) => tick()))).took);
                 }
               }
               document.querySelector('main details > summary')?.click();
               await new Promise((go) => setTimeout(go, 500));
               took.rows = document.querySelectorAll('.batch-row').length;
               return took; }",
        )
        .await;
    slow_down(phone, 1.0).await;
    assert_eq!(found["rows"], json!(batches), "{found}");
    is_quick(&format!("{batches} batches, one opened"), figures(&found["opened"]));
    is_quick(&format!("{batches} batches, a tick of the clock"), figures(&found["ticked"]));
    let (started, listed) = (median(started), median(figures(&found["listed"])));
    say(&format!(
        "{batches} batches, at {SLOWER} x slower: usable after {started:.0} ms, listed in {listed:.1} ms"
    ));
    (started, listed)
}

/// Bottles the batch and notes one bottle.
async fn bottle_and_open(phone: &Phone, batch: &str) {
    phone.go(&format!("{batch}bottle")).await;
    phone.bottles().await;
    phone.go(&format!("{batch}open")).await;
    phone.tap("3 right").await;
    phone.tap("Save").await;
    phone.sees("Bottle noted").await;
}

/// Four batches are in the fermenter, the others in bottles.
#[tokio::test]
async fn a_full_cellar_is_as_quick_as_a_small_one() {
    let (server, phone) = opened().await;
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    let watched = stored(&phone).await;
    bottle_and_open(&phone, &batch).await;
    let opened = stored(&phone).await;
    for source in [NOTE, CLOCK] {
        phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await;
    }
    put(&phone, &(1..5).flat_map(|n| copied(&watched, n)).collect::<Vec<_>>()).await;
    put(&phone, &(5..10).flat_map(|n| copied(&opened, n)).collect::<Vec<_>>()).await;
    let (start, list) = looked_at(&phone, &server, 10).await;
    put(&phone, &(10..300).flat_map(|n| copied(&opened, n)).collect::<Vec<_>>()).await;
    let (full_start, full_list) = looked_at(&phone, &server, 300).await;
    let (start, list) = (full_start / start, full_list / list);
    say(&format!("300 batches beside 10: start {start:.2} times as long, list {list:.2} times"));
    assert!(start < 4.0 && list < 4.0, "start {start}, list {list}");
    phone.is_well().await;
}
