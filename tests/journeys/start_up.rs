//! How long it takes on a slow phone: to the usable page, and from a key press to the answer.

use serde_json::json;
use std::io::Write;
use std::time::{Duration, Instant};

use crate::brewing::opened;
use crate::build;
use crate::phone::Phone;
use crate::server::Server;

/// A processor this much slower than the machine's own.
pub const SLOWER: f64 = 4.0;
const RUNS: usize = 5;
/// Beyond this something is badly wrong, even on a busy machine.
const START_LIMIT: f64 = 6000.0;
const KEY_LIMIT: f64 = 300.0;

pub async fn slow_down(phone: &Phone, rate: f64) {
    phone.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": rate })).await;
}

/// Notes in the page itself when it became usable, so that looking does not disturb it.
pub const NOTE: &str = "
  new MutationObserver((_, all) => {
    if (!document.documentElement || !('ready' in document.documentElement.dataset)) return;
    all.disconnect();
    window.usable = performance.now();
  }).observe(document, { attributes: true, childList: true, subtree: true });";

/// Milliseconds from asking for the address until the page says it is usable.
pub async fn start(phone: &Phone, address: &str) -> f64 {
    phone.driver().goto("about:blank").await.unwrap();
    phone.driver().goto(address).await.unwrap();
    phone.wait_until("the page has noted when it was usable", "return window.usable > 0").await;
    phone.run("return window.usable").await.as_f64().unwrap()
}

/// Whether more is tried than a run of all tests has time for.
pub fn at_length() -> bool {
    std::env::var_os("AT_LENGTH").is_some()
}

/// Says a figure whether the journey ends well or not; what is only printed is kept back when it does.
pub fn say(figure: &str) {
    let _ = writeln!(std::io::stdout(), "{figure}");
}

pub fn median(mut all: Vec<f64>) -> f64 {
    all.sort_by(f64::total_cmp);
    all[all.len() / 2]
}

#[tokio::test]
async fn it_starts_soon_on_a_slow_phone() {
    let folder = build::scratch("blank");
    let blank = "<!doctype html><html lang=en data-ready><title>Blank</title>";
    std::fs::write(folder.join("index.html"), blank).unwrap();
    let blank = Server::serving(&folder, "/");
    let mut server = Server::new();

    let mut cold = Vec::new();
    let mut beside = Vec::new();
    let mut phone = Phone::new().await;
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": NOTE })).await;
    slow_down(&phone, SLOWER).await;
    for _ in 0..RUNS {
        let forget = json!({ "origin": server.address(), "storageTypes": "all" });
        phone.devtools("Storage.clearDataForOrigin", forget).await;
        phone.devtools("Network.clearBrowserCache", json!({})).await;
        cold.push(start(&phone, &server.address()).await);
        beside.push(start(&phone, &blank.address()).await);
    }
    slow_down(&phone, 1.0).await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;

    server.stop();
    phone.restart().await;
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": NOTE })).await;
    slow_down(&phone, SLOWER).await;
    let mut kept = Vec::new();
    for _ in 0..RUNS {
        kept.push(start(&phone, &server.address()).await);
        beside.push(start(&phone, &blank.address()).await);
    }
    let (cold, kept, beside) = (median(cold), median(kept), median(beside));
    say(&format!(
        "usable at {SLOWER} x slower, median of {RUNS}: first visit {cold:.0} ms, kept with no network {kept:.0} ms, a blank page {beside:.0} ms"
    ));
    assert!(cold < START_LIMIT && kept < START_LIMIT, "{cold} ms, {kept} ms");
}

#[tokio::test]
async fn an_answer_follows_the_key_at_once() {
    let (_server, phone) = opened().await;
    phone.go("#/bench/gravity").await;
    phone.type_into("Sample temperature", "31").await;
    slow_down(&phone, SLOWER).await;
    let begun = Instant::now();
    let found = phone
        .settle(
            "{ const field = document.querySelector('input[inputmode=decimal]');
               const answer = document.querySelector('.answer-main');
               const times = [];
               for (let n = 0; n < 60; n += 1) {
                 const before = answer.innerText;
                 const from = performance.now();
                 field.value = `1.0${10 + n}`;
                 field.dispatchEvent(new InputEvent('input', { bubbles: true }));
                 await new Promise(requestAnimationFrame);
                 await new Promise(requestAnimationFrame);
                 times.push(performance.now() - from);
                 if (answer.innerText === before) throw new Error(`no answer to ${field.value}`);
               }
               return times; }",
        )
        .await;
    assert!(begun.elapsed() < Duration::from_secs(15));
    let times = found.as_array().unwrap_or_else(|| panic!("{found}"));
    let mut times: Vec<f64> = times.iter().filter_map(serde_json::Value::as_f64).collect();
    times.sort_by(f64::total_cmp);
    let (middle, p95) = (times[times.len() / 2], times[times.len() * 95 / 100]);
    say(&format!(
        "from key to answer at {SLOWER} x slower: median {middle:.0} ms, p95 {p95:.0} ms"
    ));
    assert!(p95 < KEY_LIMIT, "{p95} ms");
}
