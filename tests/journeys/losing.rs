//! What a browser may do to what is kept: die, clear it, or clear the page itself away.

use serde_json::json;

use crate::brewing::opened;
use crate::build;
use crate::phone::Phone;
use crate::server::Server;

async fn has_readings(phone: &Phone, count: u32) {
    let script = format!("return document.querySelectorAll('.log-line').length === {count}");
    phone.wait_until(&format!("{count} readings are there"), &script).await;
}

/// Kept to the last letter.
const STORED: &str = "return { ...localStorage }";

#[tokio::test]
async fn a_browser_killed_as_soon_as_it_says_saved_has_what_it_said() {
    let (server, mut phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 9.0).await;
    // The one quick writing of the browser is spent by now; each reading comes right after it.
    let readings = [("1.048", 8.0), ("1.030", 6.0), ("1.020", 4.0)];
    for (n, (gravity, days)) in (1..).zip(readings) {
        phone.log_reading(&batch, gravity, days).await;
        phone.dies().await;
        phone.open(&format!("{}{batch}watch", server.address())).await;
        has_readings(&phone, n).await;
    }
    phone.sees_no("changed in two places").await;
    phone.is_well().await;
}

/// Waits until what is half typed lies there with this in it, less than a second after it was typed.
pub async fn lies_on_the_second_shelf(phone: &Phone, typed: &str) {
    let script = format!(
        "{{
          const done = (asked) => new Promise((go, stop) => {{ asked.onsuccess = () => go(asked.result); asked.onerror = stop; }});
          const shelf = await done(indexedDB.open('fermentside-second-shelf'));
          for (let n = 0; n < 600; n += 1) {{
            const text = await done(shelf.transaction('texts').objectStore('texts').get('fermentside-drafts'));
            if (text?.includes({})) {{ shelf.close(); return 'there'; }}
            await new Promise(requestAnimationFrame);
          }}
          return 'not there'; }}",
        json!(format!("\"{typed}\""))
    );
    assert_eq!(phone.settle(&script).await, "there");
}

#[tokio::test]
async fn what_is_half_typed_outlives_a_browser_that_dies() {
    let (server, mut phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 9.0).await;
    phone.go(&format!("{batch}watch")).await;
    phone.type_into("Hydrometer reads", "1.03").await;
    lies_on_the_second_shelf(&phone, "1.03").await;
    phone.dies().await;
    phone.open(&format!("{}{batch}watch", server.address())).await;
    let back = "return [...document.querySelectorAll('.reading-form input')].some((f) => f.value === '1.03')";
    phone.wait_until("what was typed is there", back).await;
    phone.is_well().await;
}

#[tokio::test]
async fn nothing_is_written_before_there_is_something_to_keep() {
    let server = Server::new();
    let phone = Phone::new().await;
    let source = "
      window.written = [];
      const set = Storage.prototype.setItem;
      Storage.prototype.setItem = function (key, text) { window.written.push(key); set.call(this, key, text); };";
    phone.devtools("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await;
    phone.open(&server.address()).await;
    phone.go("#/gear").await;
    phone.go("#/bench/gravity").await;
    assert_eq!(phone.run("return window.written").await, json!([]));
    phone.start_batch("Cellar bitter", 1.0).await;
    let written = phone.run("return window.written").await;
    assert!(written.to_string().contains("fermentside/batch/"), "{written}");
}

#[tokio::test]
async fn a_store_cleared_under_the_page_is_written_back_and_told() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.log_reading(&batch, "1.048", 3.0).await;
    let before = phone.run(STORED).await;
    phone.run("localStorage.clear()").await;
    phone.log_reading(&batch, "1.030", 1.0).await;
    phone.sees("This browser's storage was cleared while the page was open.").await;
    let after = phone.run(STORED).await;
    let (before, after) = (before.as_object().unwrap(), after.as_object().unwrap());
    let records = before.iter().filter(|(key, _)| key.starts_with("fermentside/"));
    for (key, text) in records {
        assert_eq!(after.get(key), Some(text), "{key}");
    }
    phone.reload().await;
    has_readings(&phone, 2).await;
    phone.is_well().await;
}

#[tokio::test]
async fn a_page_that_has_stopped_offers_all_that_is_stored() {
    let (_server, phone) = opened().await;
    let batch = phone.start_batch("Cellar bitter", 3.0).await;
    phone.log_reading(&batch, "1.048", 3.0).await;
    let trap = "
      const trap = new Uint8Array([0,97,115,109,1,0,0,0,1,4,1,96,0,0,3,2,1,0,8,1,0,10,5,1,3,0,0,11]);
      setTimeout(() => new WebAssembly.Instance(new WebAssembly.Module(trap)));";
    phone.run(trap).await;
    phone.sees("Something went wrong. What you saved is safe.").await;
    phone.sees("Take a copy of everything").await;
    let copy = phone.run("return document.querySelector('#stopped button').dataset.text").await;
    let stored = phone.run(STORED).await;
    let copy: serde_json::Value = serde_json::from_str(copy.as_str().unwrap()).unwrap();
    let copied = copy.as_object().unwrap();
    assert_eq!(copied.len(), 3, "{copy}");
    for (key, text) in copied {
        assert_eq!(stored.get(key), Some(text));
    }
}

/// How many files are kept for use without a network.
const KEPT: &str = "{
  let count = 0;
  for (const name of await caches.keys()) count += (await (await caches.open(name)).keys()).length;
  return count; }";
/// Takes something away from every cache of the page, or changes it.
fn each_cache(act: &str) -> String {
    format!(
        "{{ for (const name of await caches.keys()) {{
             const cache = await caches.open(name);
             {act}
           }} return 'done'; }}"
    )
}

#[tokio::test]
async fn a_cache_that_was_cleared_is_filled_again_and_promises_nothing_before() {
    let mut server = Server::serving(&build::release("cleared-cache"), "/");
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    let whole = phone.settle(KEPT).await;
    assert!(whole.as_u64().unwrap() > 5, "{whole}");
    let clear = each_cache("for (const key of await cache.keys()) await cache.delete(key);");
    phone.settle(&clear).await;
    phone.reload().await;
    phone.is_kept_for_offline().await;
    assert_eq!(phone.settle(KEPT).await, whole, "filled again");

    // Without a network it says so, and does not send itself round for ever.
    phone.settle("{ for (const name of await caches.keys()) await caches.delete(name); }").await;
    server.stop();
    let _ = phone.driver().refresh().await;
    phone.sees("This browser has cleared the page away").await;
    server.start();
    phone.reload().await;
    phone.is_kept_for_offline().await;
    assert_eq!(phone.settle(KEPT).await, whole);
}

#[tokio::test]
async fn what_a_neighbour_put_into_the_cache_is_not_served() {
    let mut server = Server::serving(&build::release("neighbour"), "/");
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    phone.is_kept_for_offline().await;
    let change = each_cache(
        "for (const key of await cache.keys()) {
           if (!key.url.endsWith('index.html')) continue;
           const text = await (await cache.match(key)).text();
           const changed = text.replace('<html ', '<html data-changed=yes ');
           await cache.put(key, new Response(changed, { headers: { 'content-type': 'text/html' } }));
         }",
    );
    phone.settle(&change).await;
    phone.reload().await;
    assert_eq!(phone.count("html[data-changed]").await, 0);
    phone.is_kept_for_offline().await;
    // The sound file was fetched and is kept in its place.
    server.stop();
    phone.reload().await;
    assert_eq!(phone.count("html[data-changed]").await, 0);
    phone.is_well().await;
}
